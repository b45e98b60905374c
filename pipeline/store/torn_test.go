package store

import (
	"context"
	"fmt"
	"os"
	"path/filepath"
	"strings"
	"testing"
)

// A season file that was killed over twice: what the first kill left half written must not
// stand before what was written down whole after it.
func TestTornChanges(t *testing.T) {
	ctx := context.Background()
	dir := t.TempDir()
	at := func(name string) string { return filepath.Join(dir, name+".duckdb") }
	// killed is what would be left of an open season file if its program ended now
	killed := func(db *DB, as string) []byte {
		t.Helper()
		for _, ending := range []string{"", walEnding} {
			_ = os.Remove(at(as) + ending)
			if err := copyFile(db.file+ending, at(as)+ending); err != nil {
				t.Fatal(err)
			}
		}
		wal, err := os.ReadFile(at(as) + walEnding)
		if err != nil {
			t.Fatal(err)
		}
		return wal
	}
	open := func(name string) *DB {
		t.Helper()
		db, err := Open(ctx, at(name))
		if err != nil {
			t.Fatal(err)
		}
		t.Cleanup(func() { _ = db.Close() })
		return db
	}
	put := func(db *DB, name, value string) {
		t.Helper()
		if err := db.PutSetting(ctx, name, value); err != nil {
			t.Fatal(err)
		}
	}

	first := open("first")
	put(first, "first", "kept")
	one := len(killed(first, "once"))
	put(first, "second", strings.Repeat("long ", 200))
	two := killed(first, "once")
	if err := first.Close(); err != nil {
		t.Fatal(err)
	}
	for _, n := range []int{0, 3, len(walHead), len(walHead) + 5, one / 2, one - 1, one, one + 1, one + walBefore,
		(one + len(two)) / 2, len(two) - 1, len(two)} {
		name := fmt.Sprintf("cut at %d", n)
		if err := copyFile(at("once"), at(name)); err != nil {
			t.Fatal(err)
		}
		if err := os.WriteFile(at(name)+walEnding, two[:n], 0o600); err != nil {
			t.Fatal(err)
		}
		db := open(name)
		put(db, "third", "kept")
		killed(db, name+" twice")
		if err := db.Close(); err != nil {
			t.Fatal(err)
		}
		again, err := OpenRead(ctx, at(name+" twice"), false)
		if err != nil {
			t.Errorf("%s of %d bytes, then killed again: %v", name, len(two), err)
			continue
		}
		for setting, want := range map[string]bool{"first": n >= one, "second": n == len(two), "third": true} {
			if v, err := again.Setting(ctx, setting); err != nil || (v != "") != want {
				t.Errorf("%s of %d bytes: the %s setting is %q, error %v; there: %v wanted", name,
					len(two), setting, v, err, want)
			}
		}
		if err := again.Close(); err != nil {
			t.Error(err)
		}
	}
}
