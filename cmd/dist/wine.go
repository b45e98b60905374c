package main

import (
	_ "embed"
	"errors"
	"fmt"
	"os"
	"os/exec"
	"path/filepath"
)

//go:embed processprng.c.txt
var processPRNG string

// useWine makes a Wine prefix for the trial, and returns what ends its server. Wine 8 lacks
// a library that Go asks for random numbers: the prefix gets one.
func (t *trial) useWine(prefix string) (end func(), err error) {
	t.environment = []string{"WINEPREFIX=" + prefix, "WINEDEBUG=-all",
		"WINEDLLOVERRIDES=winemenubuilder.exe,mscoree,mshtml="}
	if err := os.MkdirAll(prefix, 0o755); err != nil {
		return nil, err
	}
	// One server and its services for all runs. They last: with a pipe of ours they would
	// hold it open.
	end = func() {
		if err := t.quietly("wineserver", "--kill"); err != nil {
			fmt.Fprintln(os.Stderr, "dist: wine's server:", err)
		}
	}
	for _, c := range [][]string{{"wineserver", "--persistent"}, {"wineboot", "--init"}} {
		if err := t.quietly(c[0], c[1:]...); err != nil {
			return nil, err
		}
	}
	library := filepath.Join(prefix, "drive_c", "windows", "system32", "bcryptprimitives.dll")
	if _, err := os.Stat(library); err != nil {
		if err := compileC(library, processPRNG, "-shared", "-ladvapi32"); err != nil {
			end()
			return nil, err
		}
	}
	return end, nil
}

// quietly runs a program of Wine, of which nothing is read.
func (t trial) quietly(name string, args ...string) error {
	c := exec.Command(name, args...)
	c.Env = append(os.Environ(), t.environment...)
	return c.Run()
}

// compileC compiles a program or library for Windows.
func compileC(to, text string, flags ...string) error {
	source := to + ".c"
	if err := os.WriteFile(source, []byte(text), 0o644); err != nil {
		return err
	}
	_, err := output(nil, "x86_64-w64-mingw32-gcc-posix", append([]string{"-o", to, source}, flags...)...)
	return errors.Join(err, os.Remove(source))
}
