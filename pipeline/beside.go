package pipeline

import (
	"maps"
	"os"
	"path/filepath"
	"slices"
	"strings"

	"wakeledger/pipeline/layout"
	"wakeledger/pipeline/meaning"
	"wakeledger/pipeline/sheet"
	"wakeledger/pipeline/unit"
)

// Of a folder, so many files that are loaded together are held against each other, and so many may be the tables of
// one book.
const (
	mostFiles  = 48
	mostBeside = 20
)

// beside finds, for each of the files that are loaded together, those that are tables of the same
// book, as where each sheet of a workbook was saved as text, or one keeps the runs and another the fish: small
// text files and workbooks of one sheet, of one folder, each with headings of its own, that name the same
// days or the same numbers, or no day at all. They are named by file.
func (s *Season) beside(paths []string, isTrack func(string) bool) map[string][]string {
	folders := map[string][]string{}
	for _, p := range paths {
		st, err := os.Stat(p)
		if err == nil && st.Mode().IsRegular() && st.Size() <= smallLog && !isTrack(p) {
			folders[filepath.Dir(p)] = append(folders[filepath.Dir(p)], p)
		}
	}
	out := map[string][]string{}
	for _, files := range folders {
		if len(files) < 2 || len(files) > mostFiles {
			continue
		}
		var tables []tableOf
		for _, p := range files {
			if sheets, err := s.tablesIn(p); err == nil && len(sheets) > 0 {
				tables = append(tables, s.tableOf(p, sheets))
			}
		}
		keys := takeKeys(&tables)
		for _, book := range withDateless(withKeys(books(tables), tables, keys), slices.Concat(tables, keys)) {
			if len(book) > mostBeside {
				continue
			}
			for _, p := range book {
				for _, o := range book {
					if o != p && !slices.Contains(out[p], filepath.Base(o)) {
						out[p] = append(out[p], filepath.Base(o))
					}
				}
				slices.Sort(out[p])
			}
		}
	}
	return out
}

// takeKeys takes out of the tables those that say what headings and codes of the others mean, and
// hold no record: a code-book saved beside them.
func takeKeys(tables *[]tableOf) (keys []tableOf) {
	var sheets []*layout.Sheet
	for _, t := range *tables {
		for _, x := range t.sheets {
			x.Grid.Info.File = x.Grid.Info.Title()
			x.Grid.Info.Name = filepath.Base(t.path)
			sheets = append(sheets, x)
		}
	}
	isKey := func(t tableOf) bool {
		return !slices.ContainsFunc(t.sheets, func(x *layout.Sheet) bool { return !meaning.IsKey(x, sheets) })
	}
	for _, t := range *tables {
		if isKey(t) {
			keys = append(keys, t)
		}
	}
	*tables = slices.DeleteFunc(*tables, isKey)
	return keys
}

// withKeys adds to each book, and to each table that is a book alone, the keys to its headings.
// A key to the tables of two boats makes them no book of one.
func withKeys(books [][]string, tables, keys []tableOf) [][]string {
	if len(keys) == 0 {
		return books
	}
	for _, t := range tables {
		if !slices.ContainsFunc(books, func(b []string) bool { return slices.Contains(b, t.path) }) {
			books = append(books, []string{t.path})
		}
	}
	for i, book := range books {
		for _, k := range keys {
			if slices.ContainsFunc(tables, func(t tableOf) bool {
				return slices.Contains(book, t.path) && k.explains(&t)
			}) {
				books[i] = append(books[i], k.path)
			}
		}
	}
	return books
}

// withDateless adds the files in which no day stands to those with days that are loaded with them, where they are
// of one boat: sums of the season, a list of fish, a key. They are no log by themselves.
func withDateless(books [][]string, tables []tableOf) [][]string {
	var dated, loose []string
	boats := map[string]bool{}
	for i := range tables {
		t := &tables[i]
		switch {
		case len(t.days) > 0:
			if len(t.boats) > 0 && len(boats) > 0 && shared(t.boats, boats) == 0 {
				return books
			}
			maps.Copy(boats, t.boats)
			dated = append(dated, t.path)
		case t.dateless():
			loose = append(loose, t.path)
		}
	}
	joined := func(path string) bool {
		return slices.ContainsFunc(books, func(b []string) bool {
			return slices.Contains(b, path) && slices.ContainsFunc(b, func(p string) bool {
				return slices.Contains(dated, p)
			})
		})
	}
	loose = slices.DeleteFunc(loose, joined)
	if len(dated) == 0 || len(loose) == 0 {
		return books
	}
	one := append(dated, loose...)
	for _, b := range books {
		if !slices.ContainsFunc(b, func(p string) bool { return slices.Contains(one, p) }) {
			continue
		}
		for _, p := range b {
			if !slices.Contains(one, p) {
				one = append(one, p)
			}
		}
	}
	return append(slices.DeleteFunc(books, func(b []string) bool { return slices.Contains(one, b[0]) }), one)
}

// dateless tells a file in which no day stands, nor in its name.
func (t *tableOf) dateless() bool {
	name := strings.TrimSuffix(filepath.Base(t.path), filepath.Ext(t.path))
	if _, _, month := unit.MonthIn(name); month || dayText(name, sheet.Info{}) != "" {
		return false
	}
	return !slices.ContainsFunc(t.sheets, func(x *layout.Sheet) bool {
		return slices.ContainsFunc(x.Grid.Rows, func(r layout.Row) bool {
			return slices.ContainsFunc(r.Cells, func(c layout.Cell) bool { return c.Look == layout.Date })
		})
	})
}

// explains tells a key that names headings of a table.
func (t *tableOf) explains(o *tableOf) bool {
	said := map[string]bool{}
	for _, x := range t.sheets {
		for _, r := range x.Grid.Rows {
			for _, c := range r.Cells {
				for _, part := range strings.Split(c.Text, "/") {
					said[strings.ToLower(strings.TrimSpace(part))] = true
				}
				heads, _ := meaning.KeyLine(c.Text)
				for _, h := range heads {
					said[h] = true
				}
			}
		}
	}
	name := strings.TrimSuffix(filepath.Base(t.path), filepath.Ext(t.path)) // outcome.csv
	return slices.ContainsFunc(o.headings, func(h string) bool { return said[h] || meaning.SameKey(name, h) })
}

// sumsOf are the hashes of files of a folder, in order.
func sumsOf(folder string, files []string) []string {
	var out []string
	for _, f := range files {
		if sum, err := hash(filepath.Join(folder, f)); err == nil { // else loading that file tells of it
			out = append(out, sum)
		}
	}
	slices.Sort(out)
	return out
}

// tablesIn takes a text file or a workbook of one sheet apart; none where it is another, or a long one.
func (s *Season) tablesIn(path string) ([]*layout.Sheet, error) {
	book, err := sheet.Open(path, sheet.Options{Details: true})
	if err != nil {
		return nil, err
	}
	defer book.Close()
	var out []*layout.Sheet
	for i, info := range book.Sheets() {
		if info.Workbook && len(book.Sheets()) > 1 {
			return nil, nil
		}
		g, err := layout.Read(book, i, mostRows)
		if err != nil || g.More {
			return nil, err
		}
		if len(g.Rows) > 0 {
			out = append(out, layout.Take(g, s.likeness()))
		}
	}
	return out, nil
}

// besideSheets are the sheets of the files that are read beside a log, numbered from first on and
// named for their files. One that is not there any more is left out.
func (s *Season) besideSheets(path string, first int) []*layout.Sheet {
	var out []*layout.Sheet
	for _, name := range s.cfg.beside {
		sheets, err := s.tablesIn(filepath.Join(filepath.Dir(path), name))
		if err != nil {
			continue // loading that file tells of it
		}
		for _, x := range sheets {
			x.Grid.Info.File = x.Grid.Info.Title()
			x.Grid.Index, x.Grid.Info.Name = first+len(out), name
			out = append(out, x)
		}
	}
	return out
}

// parted leaves a log what its own sheets tell, and returns the blocks of the others.
func parted(l *meaning.Log, sheets []*layout.Sheet) (others []*meaning.Understood) {
	own := func(g *layout.Grid) bool {
		return slices.ContainsFunc(sheets, func(x *layout.Sheet) bool { return x.Grid == g })
	}
	var blocks []*meaning.Understood
	for _, u := range l.Blocks {
		if own(u.Block.Grid) {
			blocks = append(blocks, u)
		} else {
			others = append(others, u)
		}
	}
	l.Sheets, l.Blocks = sheets, blocks
	l.Keys = slices.DeleteFunc(l.Keys, func(x *layout.Sheet) bool { return !own(x.Grid) })
	return others
}
