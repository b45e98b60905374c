package store

import (
	"errors"
	"fmt"
	"os"
	"path/filepath"
	"regexp"
	"slices"
	"strings"

	"github.com/marcboeker/go-duckdb"

	"wakeledger/pipeline/infile"
)

// What stands in the way of a season file.
var (
	ErrInUse   = errors.New("the season file is in use")
	ErrNoFile  = errors.New("this is no season file of wakeledger")
	ErrBroken  = errors.New("the season file is damaged")
	ErrLeft    = errors.New("what a season file that is gone had not yet written down")
	ErrFull    = errors.New("there is no room left on the disk")
	ErrNoPass  = errors.New("the season file may not be written")
	ErrMemory  = errors.New("there is not enough memory for this")
	ErrStopped = errors.New("stopped")
)

// cause is what stands in the way, and what helps, by what the database says of it.
type cause struct {
	kind  error
	help  string
	marks []string
}

var causes = []cause{
	{ErrInUse, "try again when that is done", []string{"Could not set lock", "set lock on file", "already open in"}},
	{ErrFull, "nothing was changed; make room and give the command again",
		[]string{"No space left", "File too large", "Disk quota exceeded", "Failed to write"}},
	{ErrMemory, "close other programs, or load fewer logs at once", []string{"Out of Memory", "could not allocate"}},
	{ErrNewer, "", []string{"newer version of DuckDB"}},
	{ErrNoFile, "--db names another",
		[]string{"not a valid DuckDB database", "older version number", "serialized with", "storage version"}},
	{ErrBroken, "part of it is missing or was changed; take a copy of it, or load the logs anew into another file",
		[]string{"Could not read enough bytes", "Corrupt database", "checksum", "Failed to load metadata",
			"Failure while replaying WAL"}},
	{ErrNoPass, "see who may write it, its folder and its disk",
		[]string{"read-only", "Read-only", "Permission denied", "Cannot open file"}},
	{ErrStopped, "", []string{"Interrupt"}},
}

// causeOf is what an error of the database is about. One that it does not know has no kind.
func causeOf(err error) cause {
	text := err.Error()
	i := slices.IndexFunc(causes, func(c cause) bool {
		return slices.ContainsFunc(c.marks, func(m string) bool { return strings.Contains(text, m) })
	})
	switch {
	case i >= 0:
		return causes[i]
	case errors.Is(err, os.ErrPermission), errors.Is(err, os.ErrNotExist):
		return causes[slices.IndexFunc(causes, func(c cause) bool { return errors.Is(c.kind, ErrNoPass) })]
	}
	return cause{}
}

// inWords is one sentence of what is wrong and what helps; it wraps the cause's kind.
func (c cause) inWords(text string) error {
	switch {
	case errors.Is(c.kind, ErrInUse):
		return fmt.Errorf("%w by %s: %s", c.kind, holderOf(text), c.help)
	case c.help == "":
		return c.kind
	}
	return fmt.Errorf("%w: %s", c.kind, c.help)
}

// trouble is an error of opening or writing a season file in a sentence that names it. One
// that it does not know stays as it is.
func trouble(file string, err error) error {
	if err == nil {
		return nil
	}
	if errors.Is(err, ErrForeign) || errors.Is(err, ErrEmpty) || errors.Is(err, ErrNewer) {
		return fmt.Errorf("%s: %w", file, err)
	}
	c := causeOf(err)
	if errors.Is(c.kind, ErrNoPass) && held(file) {
		c = cause{kind: ErrInUse, help: causes[0].help}
	}
	if errors.Is(c.kind, ErrNoPass) {
		if _, e := os.Stat(filepath.Dir(file)); e != nil {
			return fmt.Errorf("%s: there is no folder %s to keep it in", file, filepath.Dir(file))
		}
	}
	if c.kind == nil {
		return fmt.Errorf("season file %s: %w", file, err)
	}
	return fmt.Errorf("%s: %w", file, c.inWords(err.Error()))
}

// held tells a season file that another program has open, where the system says so in its
// own language alone.
func held(file string) bool {
	f, err := os.OpenFile(file, os.O_RDWR, 0)
	if err == nil {
		err = f.Close()
	}
	return infile.Held(err)
}

// said is an error in the captain's words, with the database's own behind it.
type said struct{ sentence, err error }

func (s *said) Error() string   { return s.sentence.Error() }
func (s *said) Unwrap() []error { return []error{s.sentence, s.err} }

var errUnknown = errors.New("the season file could not be used: it may be damaged. " +
	"Take the last copy of it, or load the logs into a new one")

// InWords is an error in sentences for a captain: what the database says in its own words,
// with its file names, its statements and its addresses, is replaced. Other errors stay.
func InWords(err error) error {
	if _, done := err.(*said); done || err == nil || !ofDatabase(err) { //nolint:errorlint // the error itself is meant
		return err
	}
	if many, ok := err.(interface{ Unwrap() []error }); ok { //nolint:errorlint // the join itself is meant
		var all []error
		for _, e := range many.Unwrap() {
			all = append(all, InWords(e))
		}
		return errors.Join(all...)
	}
	if c := causeOf(err); c.kind != nil {
		return &said{c.inWords(err.Error()), err}
	}
	return &said{errUnknown, err}
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

// The database's words for who has a file, on Linux and on Windows.
var holder = regexp.MustCompile(
	`Conflicting lock is held in (?:(\S.*?) )?\(?(?:PID (\d+))?\)?(?: by user (\S+?))?(?:\.|$)`)

var holderWindows = regexp.MustCompile(`already open in\s+(?:\S.*[\\/])?([^\\/\n]+) \(PID (\d+)\)`)

// holderOf names the program that has a season file, from the database's words.
func holderOf(text string) string {
	m := holder.FindStringSubmatch(text)
	if m == nil {
		m = holderWindows.FindStringSubmatch(text)
	}
	if m == nil || m[2] == "" {
		return "another program"
	}
	name := "another program"
	if m[1] != "" {
		name = strings.TrimSuffix(filepath.Base(m[1]), ".exe")
	}
	if name == "wakeledger" {
		name = "another wakeledger"
	}
	return fmt.Sprintf("%s (process %s)", name, m[2])
}
