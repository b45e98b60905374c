package normalise

import (
	"sync"
	"testing"

	"wakeledger/pipeline/layout"
	"wakeledger/pipeline/meaning"
	"wakeledger/pipeline/record"
	"wakeledger/pipeline/sheet"
	"wakeledger/pipeline/species"
	"wakeledger/testdata/memory"
)

// Known are the lists that logs are read with.
var Known = sync.OnceValues(func() (*meaning.Lexicon, error) {
	fish, err := species.Default()
	if err != nil {
		return nil, err
	}
	return meaning.Default(fish)
})

// Taken is a book on its way through the reader: what its blocks mean, and the
// evidence of all of them.
type Taken struct {
	Log      *meaning.Log
	Evidence *Evidence
	Problems []record.Problem
}

// Take infers what a book means, as the loader does, from its first most rows.
func Take(file string, book sheet.Book, most int) (Taken, error) {
	lexicon, err := Known()
	if err != nil {
		return Taken{}, err
	}
	x := Taken{Evidence: &Evidence{}}
	var sheets []*layout.Sheet
	for i := range book.Sheets() {
		g, err := layout.Read(book, i, most)
		if err != nil {
			return x, err
		}
		x.Problems = append(x.Problems, g.Problems...)
		if len(g.Rows) > 0 {
			sheets = append(sheets, layout.Take(g, layout.Likeness{Label: lexicon.Label,
				Key: lexicon.Key, Event: lexicon.Event, Hourly: lexicon.Hourly}))
		}
	}
	x.Log = lexicon.Infer(file, sheets, func(string, int) meaning.Said { return meaning.Said{} }, nil)
	for _, u := range x.Log.Data() {
		x.Evidence.Headings(u.Plan)
		for _, row := range u.Block.Rows {
			x.Evidence.Observe(u.Plan, RowOf(row))
		}
	}
	return x, nil
}

// RowOf is a row of a block as a reader takes it.
func RowOf(row layout.Row) *sheet.Row {
	r := &sheet.Row{Num: row.Num, Merged: row.Merged}
	for _, c := range row.Cells {
		r.Cells = append(r.Cells, c.Text)
	}
	return r
}

// Reader is the reader of one of its blocks.
func (x Taken) Reader(u *meaning.Understood, set Settings) (*Reader, error) {
	lexicon, err := Known()
	if err != nil {
		return nil, err
	}
	set.Species = lexicon.Species
	info := u.Block.Grid.Info
	return New(u.Plan, info, record.Pos{File: x.Log.File, Sheet: info.Name}, x.Evidence, set)
}

// only is the one block with data of a sheet of lines.
func only(t testing.TB, s memory.Sheet) (Taken, *meaning.Understood) {
	t.Helper()
	x, err := Take("log", memory.Book{s}, 1000)
	if err != nil {
		t.Fatal(err)
	}
	data := x.Log.Data()
	if len(data) != 1 {
		t.Fatalf("%d blocks with data, expected one: %v", len(data), s.All)
	}
	return x, data[0]
}
