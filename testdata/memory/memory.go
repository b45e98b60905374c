// Package memory has books of sheets that lie in memory and no file, for the tests of
// what reads sheets.
package memory

import (
	"strings"

	"wakeledger/pipeline/sheet"
)

// Sheet is one sheet: what a file would say of it, and its rows.
type Sheet struct {
	Info sheet.Info
	All  []sheet.Row
}

// Book is several of them.
type Book []Sheet

// Lines is a sheet of lines of cells, which bars part.
func Lines(name, text string) Sheet {
	s := Sheet{Info: sheet.Info{Name: name}}
	for i, line := range strings.Split(text, "\n") {
		s.All = append(s.All, sheet.Row{Num: i + 1, Cells: strings.Split(line, "|")})
	}
	return s
}

// Sheets lists the sheets.
func (b Book) Sheets() []sheet.Info {
	var all []sheet.Info
	for _, s := range b {
		all = append(all, s.Info)
	}
	return all
}

// Rows gives a sheet's rows.
func (b Book) Rows(i int) (sheet.Rows, error) { return &rows{all: b[i].All}, nil }

// Close does nothing.
func (b Book) Close() error { return nil }

type rows struct {
	all []sheet.Row
	now sheet.Row
}

func (r *rows) Next() bool {
	if len(r.all) == 0 {
		return false
	}
	r.now.CopyOf(&r.all[0])
	r.all = r.all[1:]
	return true
}

func (r *rows) Row() *sheet.Row { return &r.now }
func (r *rows) Err() error      { return nil }
func (r *rows) Close() error    { return nil }
