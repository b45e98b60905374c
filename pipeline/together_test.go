package pipeline

import (
	"os"
	"path/filepath"
	"testing"
)

// Logs keep their order, whatever shares a transaction.
func TestGroupsKeepTheOrder(t *testing.T) {
	dir := t.TempDir()
	large := filepath.Join(dir, "large.csv")
	if err := os.WriteFile(large, make([]byte, smallLog+1), 0o600); err != nil {
		t.Fatal(err)
	}
	small := filepath.Join(dir, "small.csv")
	if err := os.WriteFile(small, []byte("Date,Start,End\n2026-07-04,07:00,09:00\n"), 0o600); err != nil {
		t.Fatal(err)
	}
	var paths []string
	var of []int
	for i := range 2*groupOf + 7 {
		if paths = append(paths, small); i == 3 || i == 2*groupOf {
			paths[i] = large
		}
		of = append(of, i)
	}
	h := &shelf{tracks: map[string]bool{}}
	next, together := 0, 0
	for _, group := range h.groups(paths, of) {
		if len(group) == groupOf {
			together++
		} else if len(group) != 1 {
			t.Errorf("a group of %d", len(group))
		}
		for _, i := range group {
			if i != next {
				t.Fatalf("log %d comes where %d should", i, next)
			}
			next++
		}
	}
	if next != len(paths) || together != 1 {
		t.Errorf("%d of %d logs, %d groups, want 1", next, len(paths), together)
	}
}
