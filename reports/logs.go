package reports

import (
	"fmt"
	"slices"
)

// Logs are the file names of a season file's logs, in the order of loading. A page names
// none of them: it numbers them from 1, because a file's name may hold a person's or a
// place's.
type Logs []string

// name is a log as a page names it.
func (l Logs) name(file string) string {
	if i := slices.Index(l, file); i >= 0 {
		return fmt.Sprintf("log %d", i+1)
	}
	return "a log"
}

// place is where a row stands.
func (l Logs) place(file string, row int64) string {
	return fmt.Sprintf("%s, row %d", l.name(file), row)
}
