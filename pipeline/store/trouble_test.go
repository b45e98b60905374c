package store

import (
	"context"
	"errors"
	"os"
	"os/exec"
	"path/filepath"
	"strconv"
	"strings"
	"testing"
)

// What stands in the way of a season file is said in one sentence, and changes nothing.
func TestTrouble(t *testing.T) {
	ctx := context.Background()
	dir := t.TempDir()
	whole := filepath.Join(dir, "whole.duckdb")
	db := open(t, whole)
	if _, err := bring(ctx, db, "a.csv", &legs{n: 10}); err != nil {
		t.Fatal(err)
	}
	if err := db.Close(); err != nil {
		t.Fatal(err)
	}
	b, err := os.ReadFile(whole)
	if err != nil {
		t.Fatal(err)
	}
	for _, c := range []struct {
		name  string
		bytes []byte
		want  error
	}{{"cut.duckdb", b[:20000], ErrBroken}, {"text.duckdb", []byte("Date,Start,End\n2026-07-04,07:00,09:00\n"),
		ErrNoFile}} {
		path := filepath.Join(dir, c.name)
		if err := os.WriteFile(path, c.bytes, 0o644); err != nil {
			t.Fatal(err)
		}
		_, err := Open(ctx, path)
		if !errors.Is(err, c.want) || strings.Contains(err.Error(), "duckdb error") ||
			strings.Contains(err.Error(), "\n") {
			t.Errorf("%s: %v, want %v", c.name, err, c.want)
		}
		if now, err := os.ReadFile(path); err != nil || string(now) != string(c.bytes) {
			t.Errorf("%s was changed", c.name)
		}
	}
	if _, err := Open(ctx, filepath.Join(dir, "nowhere", "season.duckdb")); err == nil ||
		!strings.Contains(err.Error(), "there is no folder") {
		t.Errorf("a folder that is not there: %v", err)
	}
}

// The second program at a season file is told at once who has it.
func TestInUse(t *testing.T) {
	if path := os.Getenv("HOLD_SEASON"); path != "" {
		db, err := Open(context.Background(), path)
		if err == nil {
			err = db.Close()
		}
		if !errors.Is(err, ErrInUse) || !strings.Contains(err.Error(), "process "+os.Getenv("HELD_BY")+")") {
			t.Fatalf("got %v, want that process %s has it", err, os.Getenv("HELD_BY"))
		}
		return
	}
	path := filepath.Join(t.TempDir(), "season.duckdb")
	open(t, path)
	c := exec.Command(os.Args[0], "-test.run=^TestInUse$")
	c.Env = append(os.Environ(), "HOLD_SEASON="+path, "HELD_BY="+strconv.Itoa(os.Getpid()))
	if out, err := c.CombinedOutput(); err != nil {
		t.Errorf("%v\n%s", err, out)
	}
}

// The database's words for what a test cannot bring about, as it wrote them.
func TestTroubleWords(t *testing.T) {
	for text, want := range map[string]error{
		"IO Error: Could not write file \"season.duckdb\": No space left on device": ErrFull,
		"IO Error: Cannot open file \"season.duckdb\": Permission denied":           ErrNoPass,
	} {
		if err := trouble("season.duckdb", errors.New(text)); !errors.Is(err, want) {
			t.Errorf("%s: %v, want %v", text, err, want)
		}
	}
	// on Windows, where the system's own words are in the language of the computer
	held := trouble("season.duckdb", errors.New("IO Error: Cannot open file \"c:\\logs\\season.duckdb\": Der "+
		"Prozess kann nicht ...\r\n"+
		"File is already open in \nC:\\Program Files\\Boat\\wakeledger.exe (PID 4711)"))
	if !errors.Is(held, ErrInUse) || !strings.Contains(held.Error(), "in use by another wakeledger (process 4711)") {
		t.Errorf("a season file that another program holds, on Windows: %v", held)
	}
	other := errors.New("something else")
	if err := trouble("season.duckdb", other); !errors.Is(err, other) {
		t.Errorf("an error that is not known: %v", err)
	}
}
