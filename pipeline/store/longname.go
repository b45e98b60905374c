package store

import (
	"fmt"
	"path/filepath"
	"runtime"
	"unicode/utf16"
)

// longestOnWindows is how many characters of UTF-16 the whole name of a file has at most that the
// database opens on Windows: MAX_PATH less the one that ends it (Microsoft, "Maximum Path Length
// Limitation"). Go's own files have no such limit.
const longestOnWindows = 259

// besideSeason is the longest name that stands in a season file's folder while it is made.
const besideSeason = ".wakeledger-1234567890/season.duckdb" + walEnding

// nameFits fails where a season file's name is too long for this system.
func nameFits(file string) error {
	if runtime.GOOS != "windows" {
		return nil
	}
	whole, err := filepath.Abs(file)
	if err != nil {
		return err
	}
	return shortEnough(whole)
}

// shortEnough fails where the whole name of a season file, or of what stands beside it, is too
// long for Windows.
func shortEnough(whole string) error {
	dir := characters(filepath.Dir(whole))
	if max(characters(whole)+len(walEnding), dir+1+len(besideSeason)) <= longestOnWindows {
		return nil
	}
	return fmt.Errorf("%s: the name of the season file is too long for Windows: keep it in a folder whose name has, "+
		"with the folders above it, at most %d characters", whole, longestOnWindows-1-len(besideSeason))
}

func characters(name string) int { return len(utf16.Encode([]rune(name))) }
