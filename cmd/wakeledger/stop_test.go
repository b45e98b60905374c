package main

import (
	"bytes"
	"os"
	"os/exec"
	"path/filepath"
	"strings"
	"syscall"
	"testing"
	"time"
)

// A load that is told to end, or whose window is closed, ends as with Ctrl-C: it says so,
// leaves nothing lying about, and the season file as it was.
func TestStopSignals(t *testing.T) {
	for _, sig := range []os.Signal{syscall.SIGTERM, syscall.SIGHUP, os.Interrupt} {
		dir := t.TempDir()
		writeFlat(t, filepath.Join(dir, "small.csv"), 40)
		writeFlat(t, filepath.Join(dir, "large.csv"), 600_000)
		wakeledger(t, dir, "load", "small.csv")
		before := wakeledger(t, dir, "ask", "trips", "--format", "csv")
		c := exec.Command("wakeledger", "load", "large.csv")
		var notes bytes.Buffer
		c.Dir, c.Stderr, c.Env = dir, &notes, append(os.Environ(), "TMPDIR="+dir)
		if err := c.Start(); err != nil {
			t.Fatal(err)
		}
		time.Sleep(400 * time.Millisecond)
		if err := c.Process.Signal(sig); err != nil {
			t.Fatal(err)
		}
		if err := c.Wait(); err == nil || exitCode(err) != "1" {
			t.Errorf("%v: %v, want exit code 1", sig, err)
		}
		if !strings.Contains(notes.String(), "stopped") {
			t.Errorf("%v: it says %q", sig, notes.String())
		}
		if after := wakeledger(t, dir, "ask", "trips", "--format", "csv"); !bytes.Equal(before, after) {
			t.Errorf("%v: the season file holds part of the log", sig)
		}
		left, err := os.ReadDir(dir)
		if err != nil {
			t.Fatal(err)
		}
		for _, f := range left {
			if strings.Contains(f.Name(), "wakeledger-") {
				t.Errorf("%v: %s is left", sig, f.Name())
			}
		}
	}
}
