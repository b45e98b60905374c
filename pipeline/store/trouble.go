package store

import (
	"errors"
	"fmt"
	"os"
	"path/filepath"
	"regexp"
	"strings"
)

// What stands in the way of a season file.
var (
	ErrInUse  = errors.New("the season file is in use")
	ErrNoFile = errors.New("this is no season file of wakeledger")
	ErrBroken = errors.New("the season file is damaged")
	ErrFull   = errors.New("there is no room left on the disk")
	ErrNoPass = errors.New("the season file may not be written")
)

var holder = regexp.MustCompile(`Conflicting lock is held in (?:(\S.*?) )?\(?(?:PID (\d+))?\)?(?: by user (\S+?))?\.`)

// trouble is an error of the database in a sentence: what is wrong, and what helps. One
// that it does not know stays as it is.
func trouble(file string, err error) error {
	if err == nil {
		return nil
	}
	text := err.Error()
	says := func(words ...string) bool {
		for _, w := range words {
			if strings.Contains(text, w) {
				return true
			}
		}
		return false
	}
	switch {
	case errors.Is(err, ErrForeign), errors.Is(err, ErrEmpty), errors.Is(err, ErrNewer):
		return fmt.Errorf("%s: %w", file, err)
	case says("Could not set lock"):
		return fmt.Errorf("%s: %w by %s: try again when that is done", file, ErrInUse, holderOf(text))
	case says("No space left on device", "File too large", "Disk quota exceeded", "Failed to write"):
		return fmt.Errorf("%s: %w: nothing was changed; make room and give the command again", file, ErrFull)
	case says("not a valid DuckDB database file", "older version number", "serialized with"):
		return fmt.Errorf("%s: %w: --db names another", file, ErrNoFile)
	case says("Could not read enough bytes", "Corrupt database", "checksum", "Failed to load metadata", "Failure while replaying WAL"):
		return fmt.Errorf("%s: %w: part of it is missing or was changed; take a copy of it, or load the logs anew into another file", file, ErrBroken)
	case says("read-only", "Read-only", "Permission denied", "Cannot open file"), errors.Is(err, os.ErrPermission), errors.Is(err, os.ErrNotExist):
		if _, e := os.Stat(filepath.Dir(file)); e != nil {
			return fmt.Errorf("%s: there is no folder %s to keep it in", file, filepath.Dir(file))
		}
		return fmt.Errorf("%s: %w: see who may write it and its folder", file, ErrNoPass)
	}
	return fmt.Errorf("season file %s: %w", file, err)
}

// holderOf names the program that has a season file, from the database's words.
func holderOf(text string) string {
	m := holder.FindStringSubmatch(text)
	if m == nil || m[2] == "" {
		return "another program"
	}
	name := "another program"
	if m[1] != "" {
		name = filepath.Base(m[1])
	}
	if name == "wakeledger" {
		name = "another wakeledger"
	}
	return fmt.Sprintf("%s (process %s)", name, m[2])
}
