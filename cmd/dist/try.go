package main

import (
	"archive/zip"
	"bytes"
	"compress/gzip"
	"errors"
	"fmt"
	"io"
	"os"
	"os/exec"
	"path/filepath"
	"slices"
	"strings"
)

// trials are the parts of what is tried, in their order.
var trials = []string{"seasons", "windows", "scripts"}

// tryAll runs what was built, each program on its runner: the demo season, seasons that
// change computers, what only Windows does, and the scripts of the command line.
func tryAll(chosen []target, out string, parts []string, scripts string) error {
	if err := errors.Join(present(chosen, compilers), present(chosen, runners)); err != nil {
		return err
	}
	dir, err := os.MkdirTemp("", "wakeledger-try-*")
	if err != nil {
		return err
	}
	defer os.RemoveAll(dir)
	all := shared{dir: dir, out: out, parts: parts, only: scripts}
	if slices.Contains(parts, "seasons") {
		if all.native, err = unpack(targets[0], out, filepath.Join(dir, "here")); err != nil {
			return err
		}
	}
	if slices.Contains(parts, "scripts") {
		if all.scripts, err = buildScripts(dir); err != nil {
			return err
		}
	}
	var failures []error
	for _, t := range chosen {
		if err := all.try(t); err != nil {
			failures = append(failures, fmt.Errorf("%s: %w", t.name(), err))
		}
	}
	return errors.Join(failures...)
}

// shared is what the trials of all targets have in common.
type shared struct {
	dir, out string
	parts    []string // of trials
	scripts  string   // what runs the scripts; "" where they are not run
	only     string   // a pattern of their names
	native   string   // this computer's program; "" where no seasons are tried
}

// try is one target's trial beside that of this computer.
func (s shared) try(t target) error {
	program, err := unpack(t, s.out, filepath.Join(s.dir, t.name()))
	if err != nil {
		return err
	}
	native := trial{command: []string{s.native}, folder: filepath.Join(s.dir, "seasons beside "+t.name())}
	foreign := trial{command: append(slices.Clone(t.runner), program),
		folder: filepath.Join(s.dir, t.name()+" seasons, in a folder with a long name")}
	if t.windows() {
		end, err := foreign.useWine(filepath.Join(s.dir, "wine"))
		if err != nil {
			return err
		}
		defer end()
	}
	var failures []error
	if slices.Contains(s.parts, "seasons") && t.runner != nil {
		failures = append(failures, trySeasons(t, native, foreign))
	}
	if slices.Contains(s.parts, "windows") && t.windows() {
		failures = append(failures, foreign.tryWindows(t, filepath.Join(s.dir, "wine")))
	}
	if slices.Contains(s.parts, "scripts") {
		failures = append(failures, foreign.tryScripts(t, s.scripts, s.only, s.out))
	}
	return errors.Join(failures...)
}

// say prints a line of what was found on a target, as it is found.
func (t target) say(format string, args ...any) {
	fmt.Printf("%s: %s\n", t.name(), fmt.Sprintf(format, args...))
}

// unpack puts the program of an archive into a folder.
func unpack(t target, out, dir string) (program string, err error) {
	if err := os.MkdirAll(dir, 0o755); err != nil {
		return "", err
	}
	archive := filepath.Join(out, t.archive())
	if _, err := os.Stat(archive); err != nil {
		return "", fmt.Errorf("%s is not there: make dist", archive)
	}
	program = filepath.Join(dir, t.program())
	if t.windows() {
		return program, unzipOne(archive, program)
	}
	f, err := os.Open(archive)
	if err != nil {
		return "", err
	}
	defer f.Close()
	unpacked, err := gzip.NewReader(f)
	if err != nil {
		return "", err
	}
	return program, firstOfTar(unpacked, program)
}

func unzipOne(archive, program string) error {
	z, err := zip.OpenReader(archive)
	if err != nil {
		return err
	}
	defer z.Close()
	r, err := z.File[0].Open()
	if err != nil {
		return err
	}
	defer r.Close()
	return save(r, program)
}

func save(r io.Reader, file string) error {
	b, err := io.ReadAll(r)
	if err != nil {
		return err
	}
	return os.WriteFile(file, b, 0o755)
}

// trial is a program, how it is run, and a folder for the seasons that it makes.
type trial struct {
	command     []string
	folder      string
	environment []string
}

// run is what the program prints; exit code 3, open questions, is well too.
func (t trial) run(args ...string) ([]byte, error) {
	code, out, notes := t.end(args...)
	if code != 0 && code != 3 {
		return nil, fmt.Errorf("%s: exit code %d\n%s", strings.Join(args, " "), code, notes)
	}
	return out, nil
}

// end runs the program and returns its exit code, -1 where it could not run, and what it
// prints.
func (t trial) end(args ...string) (code int, out, notes []byte) {
	c := exec.Command(t.command[0], append(slices.Clone(t.command[1:]), args...)...)
	c.Dir, c.Env = t.folder, append(os.Environ(), t.environment...)
	var printed, messages bytes.Buffer
	c.Stdout, c.Stderr = &printed, &messages
	if err := c.Run(); err != nil && c.ProcessState.ExitCode() < 0 {
		fmt.Fprintln(&messages, err)
	}
	return c.ProcessState.ExitCode(), printed.Bytes(), messages.Bytes()
}
