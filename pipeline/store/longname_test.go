package store

import (
	"path/filepath"
	"strings"
	"testing"
)

// Windows counts characters of UTF-16, folders with them: one letter more is too long.
func TestLongNames(t *testing.T) {
	for _, letter := range []string{"a", "ö", "🐟"} {
		each := characters(letter)
		dir := "/" + strings.Repeat(letter, (longestOnWindows-1-len(besideSeason)-1)/each)
		if err := shortEnough(filepath.Join(dir, "season.duckdb")); err != nil {
			t.Errorf("%s: %v", letter, err)
		}
		err := shortEnough(filepath.Join(dir+letter+letter, "season.duckdb"))
		if err == nil || !strings.Contains(err.Error(), "at most 218 characters") {
			t.Errorf("%s: a folder of %d characters: %v", letter, characters(dir)+2*each, err)
		}
	}
	if err := shortEnough("/logs/" + strings.Repeat("s", 250) + ".duckdb"); err == nil {
		t.Error("a long name in a short folder is taken")
	}
}
