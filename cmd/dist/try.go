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
	"strings"
)

// tryAll runs what was built: on each runner the demo season, seasons that change computers,
// and the scripts of the command line.
func tryAll(chosen []target, out, scripts string) error {
	if err := errors.Join(present(chosen, compilers), present(chosen, runners)); err != nil {
		return err
	}
	dir, err := os.MkdirTemp("", "wakeledger-try-*")
	if err != nil {
		return err
	}
	defer os.RemoveAll(dir)
	here, err := unpack(targets[0], out, filepath.Join(dir, "here"))
	if err != nil {
		return err
	}
	var failures []error
	for _, t := range chosen {
		if t.runner == nil {
			continue
		}
		native := trial{command: []string{here}, folder: filepath.Join(dir, "linux seasons")}
		if err := try(t, out, dir, native, scripts); err != nil {
			failures = append(failures, fmt.Errorf("%s: %w", t.name(), err))
		}
	}
	return errors.Join(failures...)
}

// try is one target's trial beside that of this computer.
func try(t target, out, dir string, native trial, scripts string) error {
	program, err := unpack(t, out, filepath.Join(dir, t.name()))
	if err != nil {
		return err
	}
	foreign := trial{command: append(append([]string{}, t.runner...), program),
		folder: filepath.Join(dir, t.name()+" seasons, in a folder with a long name")}
	if t.windows() {
		end, err := foreign.useWine(filepath.Join(dir, "wine"))
		if err != nil {
			return err
		}
		defer end()
	}
	return errors.Join(trySeasons(t, native, foreign), foreign.tryScripts(t, scripts))
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
	c := exec.Command(t.command[0], append(t.command[1:len(t.command):len(t.command)], args...)...)
	c.Dir, c.Env = t.folder, append(os.Environ(), t.environment...)
	var notes bytes.Buffer
	c.Stderr = &notes
	out, err := c.Output()
	if err != nil && c.ProcessState.ExitCode() != 3 {
		return nil, fmt.Errorf("%s: %w\n%s", strings.Join(args, " "), err, notes.String())
	}
	return out, nil
}

// questions whose answers must be the same on every computer.
var questions = [][]string{{"effort"}, {"strike-rate"}, {"strike-rate", "--by", "lure"}, {"outcomes"}, {"fish"},
	{"sizes"}, {"trips"}, {"scale-check"}, {"set-aside"}, {"questions"}, {"failures"}}

// answers are those to all questions of a season file.
func (t trial) answers(db string) (map[string]string, error) {
	all := map[string]string{}
	for _, q := range questions {
		out, err := t.run(append([]string{"--db", db, "ask", "--format", "json"}, q...)...)
		if err != nil {
			return nil, err
		}
		all[strings.Join(q, " ")] = string(out)
	}
	return all, nil
}

// trySeasons has both programs make the demo season and answer from their own file and from
// the other's, which each then goes on with.
func trySeasons(t target, native, foreign trial) error {
	logs, err := filepath.Abs("testdata/demo")
	if err != nil {
		return err
	}
	both := []trial{native, foreign}
	var own []map[string]string
	for _, x := range both {
		if err := os.MkdirAll(x.folder, 0o755); err != nil {
			return err
		}
		files, err := filepath.Glob(filepath.Join(logs, "logs", "*"))
		if err != nil {
			return err
		}
		files = append(files, filepath.Join(logs, "tracks", "2026-late-tracks.zip"))
		season := []string{"--db", "season.duckdb", "season", "--ocean", "pacific", "--units", "us"}
		if _, err := x.run(append(season, files...)...); err != nil {
			return err
		}
		if st, err := os.Stat(filepath.Join(x.folder, "season.html")); err != nil || st.Size() < 100_000 {
			return fmt.Errorf("no report in %s", x.folder)
		}
		a, err := x.answers("season.duckdb")
		if err != nil {
			return err
		}
		own = append(own, a)
	}
	if err := sameAnswers(own[0], own[1]); err != nil {
		return fmt.Errorf("the demo season: %w", err)
	}
	return tryChange(t, both, own[0])
}

// moreLog is a log that each program loads into the other's season file.
const moreLog = "Boat,Date,Start,End,Speed (kn),Lines,Strikes\nTansy Reach,2026-12-05,07:00,09:30,12,4,2\n"

// tryChange has each program answer from the other's season file and go on with it, and
// the other one answer again.
func tryChange(t target, both []trial, before map[string]string) error {
	var after []map[string]string
	for i, x := range both {
		other := both[1-i]
		db, more := filepath.Join(other.folder, "season.duckdb"), filepath.Join(other.folder, "more of the season.csv")
		a, err := x.answers(db)
		if err == nil {
			err = sameAnswers(before, a)
		}
		if err != nil {
			return fmt.Errorf("a season file of the other computer: %w", err)
		}
		if err := os.WriteFile(more, []byte(moreLog), 0o644); err != nil {
			return err
		}
		if _, err := x.run("--db", db, "load", more); err != nil {
			return err
		}
		if a, err = other.answers("season.duckdb"); err != nil {
			return err
		}
		after = append(after, a)
	}
	if err := sameAnswers(after[0], after[1]); err != nil {
		return fmt.Errorf("after the other computer loaded a log: %w", err)
	}
	if after[0]["effort"] == before["effort"] {
		return errors.New("the log that was loaded last changes nothing: the trial could not tell")
	}
	fmt.Printf("%s: the demo season, and seasons that changed computers both ways: %d answers the same\n",
		t.name(), 4*len(questions))
	return nil
}

func sameAnswers(a, b map[string]string) error {
	var differ []error
	for q, want := range a {
		if len(want) < 3 {
			differ = append(differ, fmt.Errorf("ask %s says nothing: it proves nothing", q))
		} else if b[q] != want {
			differ = append(differ, fmt.Errorf("ask %s differs", q))
		}
	}
	return errors.Join(differ...)
}
