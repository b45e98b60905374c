package main

import (
	"bytes"
	_ "embed"
	"errors"
	"fmt"
	"os"
	"os/exec"
	"path/filepath"
	"regexp"
	"strings"
)

var (
	scriptPassed = regexp.MustCompile(`(?m)^\s+--- PASS: TestScripts/(\S+)`)
	scriptFailed = regexp.MustCompile(`(?m)^\s+--- FAIL: TestScripts/(\S+)`)
)

// tryScripts runs the scripts of the command line with the program, and counts those that
// pass. only is a pattern of their names; "" is all.
func (t trial) tryScripts(of target, only string) error {
	run := "^TestScripts$"
	if only != "" {
		run += "/" + only
	}
	c := exec.Command("go", "test", "./cmd/wakeledger", "-run", run, "-v", "-count=1", "-timeout", "60m", "-parallel", "2")
	c.Env = append(append(os.Environ(), t.environment...), "WAKELEDGER_PROGRAM="+strings.Join(t.command, " "))
	out, err := c.CombinedOutput()
	passed, broken := scriptPassed.FindAllSubmatch(out, -1), scriptFailed.FindAllSubmatch(out, -1)
	fmt.Printf("%s: %d scripts pass, %d fail\n", of.name(), len(passed), len(broken))
	if err != nil || len(passed) == 0 {
		return errors.Join(err, fmt.Errorf("the scripts:\n%s", out))
	}
	return nil
}

//go:embed processprng.c.txt
var processPRNG string

// useWine makes a Wine prefix for the trial, and returns what ends its server. Wine 8 lacks
// a library that Go asks for random numbers: the prefix gets one.
func (t *trial) useWine(prefix string) (end func(), err error) {
	t.environment = []string{"WINEPREFIX=" + prefix, "WINEDEBUG=-all", "WINEDLLOVERRIDES=winemenubuilder.exe,mscoree,mshtml="}
	for _, c := range [][]string{{"wineboot", "--init"}, {"wineserver", "--persistent"}} { // one server for all runs
		if _, err := output(t.environment, c[0], c[1:]...); err != nil {
			return nil, err
		}
	}
	source := filepath.Join(prefix, "processprng.c")
	if err := os.WriteFile(source, []byte(processPRNG), 0o644); err != nil {
		return nil, err
	}
	library := filepath.Join(prefix, "drive_c", "windows", "system32", "bcryptprimitives.dll")
	if _, err := os.Stat(library); err != nil {
		if _, err := output(nil, "x86_64-w64-mingw32-gcc-posix", "-shared", "-o", library, source, "-ladvapi32"); err != nil {
			return nil, err
		}
	}
	return func() {
		c := exec.Command("wineserver", "--kill")
		c.Env = append(os.Environ(), t.environment...)
		var said bytes.Buffer
		c.Stderr = &said
		if err := c.Run(); err != nil {
			fmt.Fprintln(os.Stderr, "dist: wine's server:", err, said.String())
		}
	}, nil
}
