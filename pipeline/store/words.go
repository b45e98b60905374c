package store

import (
	"errors"
	"strings"

	"github.com/marcboeker/go-duckdb"
)

// said is an error in the captain's words, with the database's own behind it.
type said struct {
	sentence string
	err      error
}

func (s *said) Error() string { return s.sentence }
func (s *said) Unwrap() error { return s.err }

// causes are what stands in the way, by what the database says of it.
var causes = []struct{ mark, sentence string }{
	{"set lock on file", "another program has the season file open: let it end, then give the command again"},
	{"No space left", "the disk is full: make room, then give the command again; the season file is as it was"},
	{"Out of Memory", "there is not enough memory: close other programs, or load fewer logs at once"},
	{"could not allocate", "there is not enough memory: close other programs, or load fewer logs at once"},
	{"Permission denied", "the season file may not be read or written by this user"},
	{"Read-only file system", "the season file is on a disk that cannot be written"},
	{"read-only mode", "the season file was opened to be read, and cannot be changed"},
	{"not a valid DuckDB database", "this is no season file, or it is damaged: name another with --db"},
	{"newer version of DuckDB", "the season file was made by a later version of wakeledger"},
	{"storage version", "the season file was made by another version of wakeledger"},
	{"Interrupt", "stopped"},
}

// InWords is an error in sentences for a captain: what the database says in its own words,
// with its file names, its statements and its addresses, is replaced. Other errors stay.
func InWords(err error) error {
	if err == nil || !ofDatabase(err) {
		return err
	}
	if many, ok := err.(interface{ Unwrap() []error }); ok { //nolint:errorlint // the join itself is meant
		var all []error
		for _, e := range many.Unwrap() {
			all = append(all, InWords(e))
		}
		return errors.Join(all...)
	}
	text := err.Error()
	for _, c := range causes {
		if strings.Contains(text, c.mark) {
			return &said{c.sentence, err}
		}
	}
	return &said{"the season file could not be used: it may be damaged. Take the last copy of it, or load the logs into a new one", err}
}

// ofDatabase tells whether any of an error is the database's or its driver's.
func ofDatabase(err error) bool {
	var d *duckdb.Error
	if errors.As(err, &d) {
		return true
	}
	for _, mark := range []string{"database/sql/driver", "duckdb error", "sql: "} {
		if strings.Contains(err.Error(), mark) {
			return true
		}
	}
	return false
}
