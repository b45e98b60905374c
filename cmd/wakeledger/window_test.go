package main

import (
	"bytes"
	"context"
	"io"
	"os"
	"path/filepath"
	"slices"
	"strings"
	"testing"
)

// Logs dropped on the program are a season beside the first of them, wherever the program is.
func TestDropped(t *testing.T) {
	dir := filepath.Join(t.TempDir(), "Logs of the Tansy Reach, 2026")
	first, second := filepath.Join(dir, "-log.csv"), filepath.Join(t.TempDir(), "other.csv")
	if err := os.Mkdir(dir, 0o755); err != nil {
		t.Fatal(err)
	}
	for f, day := range map[string]string{first: "04", second: "05"} {
		if err := os.WriteFile(f, []byte("Boat,Date,Start,End,Speed (kn),Lines,Strikes\nTern,2026-07-"+day+
			",07:00,09:00,8,4,1\n"), 0o644); err != nil {
			t.Fatal(err)
		}
	}
	t.Setenv("DISPLAY", "")
	t.Setenv("WAYLAND_DISPLAY", "")
	if !filesOnly([]string{first, dir}) || filesOnly([]string{first, "--help"}) ||
		filesOnly([]string{first, "season"}) {
		t.Error("words that are files are told from others wrongly")
	}
	var out, notes bytes.Buffer
	if code := run(context.Background(), dropped([]string{first, second}), &out, &notes); code != done {
		t.Fatalf("exit code %d\n%s", code, notes.String())
	}
	for _, f := range []string{"season.duckdb", "season.html"} {
		if _, err := os.Stat(filepath.Join(dir, f)); err != nil {
			t.Error(err)
		}
	}
	if !slices.Contains(dropped([]string{dir}), filepath.Join(dir, "season.duckdb")) {
		t.Error("the season of a folder of logs is not in that folder")
	}
}

// withKeys has somebody press keys, and returns those that the program did not take.
func withKeys(t *testing.T, keys string, f func()) (left string) {
	t.Helper()
	in, key, err := os.Pipe()
	if err != nil {
		t.Fatal(err)
	}
	was := os.Stdin
	os.Stdin = in
	defer func() { os.Stdin = was }()
	if _, err := key.WriteString(keys); err != nil {
		t.Fatal(err)
	}
	f()
	if err := key.Close(); err != nil {
		t.Fatal(err)
	}
	rest, err := io.ReadAll(in)
	if err != nil {
		t.Fatal(err)
	}
	return string(rest)
}

const anyKey = "Press any key to close this window."

// Who double-clicks the program is told what to do in five lines, and has time to read them.
func TestDoubleClick(t *testing.T) {
	var out, notes bytes.Buffer
	left := withKeys(t, "xy", func() {
		if code := start(nil, true, &out, &notes); code != done {
			t.Errorf("exit code %d", code)
		}
	})
	if left != "y" {
		t.Errorf("%q is left of two keys, want the second: the window closes with the first", left)
	}
	if lines := strings.Count(out.String(), "\n"); lines != 5 || !strings.Contains(out.String(), "Drop your logs") {
		t.Errorf("%d lines:\n%s", lines, out.String())
	}
	if !strings.Contains(notes.String(), anyKey) {
		t.Errorf("it says: %s", notes.String())
	}
}

// Logs that are dropped on the program are read, and the window stays with what was read and
// what is asked, also where a log cannot be read. On a terminal nothing of this happens, nor
// where a command is given.
func TestDroppedInAWindow(t *testing.T) {
	t.Setenv("DISPLAY", "")
	t.Setenv("WAYLAND_DISPLAY", "")
	dir := t.TempDir()
	log, broken := filepath.Join(dir, "log.csv"), filepath.Join(dir, "broken.xlsx")
	for name, text := range map[string]string{log: "Boat,Date,Start,End,Speed " +
		"(kn),Strikes\nTern,2026-07-04,07:00,09:00,8,1\n", broken: "PK\x03\x04"} {
		if err := os.WriteFile(name, []byte(text), 0o644); err != nil {
			t.Fatal(err)
		}
	}
	for _, c := range []struct {
		args   []string
		window bool
		code   int
		stays  bool
		says   string
	}{
		{[]string{log}, true, notSettled, true, "How many lines were out?"},
		{[]string{broken}, true, failed, true, "broken.xlsx"},
		// a log alone is a season on a terminal too
		{[]string{log}, false, notSettled, false, "How many lines were out?"},
		{[]string{"--version"}, true, done, false, "wakeledger "},
	} {
		t.Chdir(t.TempDir())
		var out, notes bytes.Buffer
		left := withKeys(t, "x", func() {
			if code := start(c.args, c.window, &out, &notes); code != c.code {
				t.Errorf("%s, window %v: exit code %d, want %d", c.args, c.window, code, c.code)
			}
		})
		if stays := left == ""; stays != c.stays || strings.Contains(notes.String(), anyKey) != c.stays {
			t.Errorf("%s, window %v: it stays: %v, want %v", c.args, c.window, stays, c.stays)
		}
		again := strings.Contains(notes.String(), "drop the same logs again")
		if again != (c.stays && c.code == notSettled) {
			t.Errorf("%s, window %v: how to answer in a window is said: %v", c.args, c.window, again)
		}
		if !strings.Contains(out.String()+notes.String(), c.says) {
			t.Errorf("%s: nothing of %q in\n%s%s", c.args, c.says, out.String(), notes.String())
		}
	}
}
