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
		if err := os.WriteFile(f, []byte("Boat,Date,Start,End,Speed (kn),Lines,Strikes\nTern,2026-07-"+day+",07:00,09:00,8,4,1\n"), 0o644); err != nil {
			t.Fatal(err)
		}
	}
	t.Setenv("DISPLAY", "")
	t.Setenv("WAYLAND_DISPLAY", "")
	if !filesOnly([]string{first, dir}) || filesOnly([]string{first, "--help"}) || filesOnly([]string{first, "season"}) {
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

// Who double-clicks the program is told what to do in five lines, and has time to read them.
func TestDoubleClick(t *testing.T) {
	in, key, err := os.Pipe()
	if err != nil {
		t.Fatal(err)
	}
	was := os.Stdin
	os.Stdin = in
	defer func() { os.Stdin = was }()
	var out, notes bytes.Buffer
	ended := make(chan int)
	go func() { ended <- inWindow(context.Background(), nil, &out, &notes) }()
	if _, err := key.Write([]byte("x")); err != nil {
		t.Fatal(err)
	}
	if code := <-ended; code != done {
		t.Errorf("exit code %d", code)
	}
	if err := key.Close(); err != nil {
		t.Fatal(err)
	}
	if rest, err := io.ReadAll(in); err != nil || len(rest) > 0 {
		t.Errorf("the window closes without a key: %q is left, %v", rest, err)
	}
	if lines := strings.Count(out.String(), "\n"); lines != 5 || !strings.Contains(out.String(), "Drop your logs") {
		t.Errorf("%d lines:\n%s", lines, out.String())
	}
	if !strings.Contains(notes.String(), "Press any key to close this window.") {
		t.Errorf("it says: %s", notes.String())
	}
}
