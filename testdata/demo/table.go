package main

import "time"

// column is one column of a log: its header as written there, the key that a
// mistake names it by, and its value for an item (nil is an empty cell).
type column[T any] struct {
	header, key string
	value       func(T) any
}

// date and clock are cells that show one side of an instant.
type (
	date  struct{ time.Time }
	clock struct{ time.Time }
)

// table is a sheet or CSV as laid out, before any file format.
type table struct {
	file, sheet string
	title       string // a row above the header, if any
	header      []string
	rows        [][]any // an empty row stays blank
	totalled    string  // header of the column that a last row adds up, if any
	merged      []span
	mistakes    []setAside
}

// span is a run of data rows, both in, whose cells in one column are merged.
type span struct{ column, first, last int }

// setAside is a row that a loader must set aside, as `ask set-aside` names it.
type setAside struct {
	File   string `json:"file"`
	Sheet  string `json:"sheet"` // empty for a CSV
	Row    int    `json:"row"`   // 1-based in the file
	Column string `json:"column"`
	Letter string `json:"column_letter"`
	Cell   string `json:"cell"`
}

// firstRow is the row in the file of the first data row, 1-based.
func (t *table) firstRow() int {
	if t.title != "" {
		return 3
	}
	return 2
}

// lay adds the items as rows of t and keeps the place of each mistake.
func lay[T any](t *table, cols []column[T], items []T, badOf func(T) *bad) {
	t.header = nil
	for _, c := range cols {
		t.header = append(t.header, c.header)
	}
	for _, item := range items {
		cells := make([]any, len(cols))
		b := badOf(item)
		for i, c := range cols {
			cells[i] = c.value(item)
			if b != nil && b.key == c.key {
				cells[i] = b.cell
				if b.how == guess {
					continue
				}
				t.mistakes = append(t.mistakes, setAside{t.file, t.sheet, t.firstRow() + len(t.rows),
					c.header, letter(i), b.cell})
			}
		}
		t.rows = append(t.rows, cells)
	}
}

// when is v where ok, else an empty cell.
func when(ok bool, v any) any {
	if ok {
		return v
	}
	return nil
}

// text is s, or an empty cell for none.
func text(s string) any { return when(s != "", s) }

// letter names a column counted from 0, up to ZZ.
func letter(column int) string {
	if column < 26 {
		return string(rune('A' + column))
	}
	return letter(column/26-1) + letter(column%26)
}
