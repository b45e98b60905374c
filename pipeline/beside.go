package pipeline

import (
	"fmt"
	"maps"
	"os"
	"path/filepath"
	"slices"
	"strconv"
	"strings"

	"wakeledger/pipeline/identity"
	"wakeledger/pipeline/layout"
	"wakeledger/pipeline/meaning"
	"wakeledger/pipeline/plan"
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
// days or the same numbers. They are named by file.
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

// tableOf is what a file's tables may be joined to others by.
type tableOf struct {
	path     string
	sheets   []*layout.Sheet
	headings []string
	boats    map[string]bool
	days     map[string]bool
	yearless bool // its days have no year
	keys     []keyColumn
}

// keyColumn is a column of numbers or codes; own where no two rows have the same.
type keyColumn struct {
	heading string
	values  map[string]bool
	days    map[string]string // of each value, where the row has one
	own     bool
	coded   bool // letters and figures, as in T01
	trip    bool // headed as a trip's number: several rows of a table may be of one
}

// fewTrips is how many trips two tables must both name to be of one book where neither has a row a trip.
const fewTrips = 5

func (s *Season) tableOf(path string, sheets []*layout.Sheet) tableOf {
	t := tableOf{path: path, sheets: sheets, boats: map[string]bool{}, days: map[string]bool{}}
	for _, x := range sheets {
		for i := range x.Blocks {
			b := &x.Blocks[i]
			if b.Shape != layout.Table || len(b.Rows) < 3 {
				continue
			}
			days := dayColumn(b)
			for _, d := range days {
				t.days[d] = true
				t.yearless = t.yearless || len(d) == len(anyYear)
			}
			for _, l := range b.Labels {
				h := strings.ToLower(l.Full())
				t.headings = append(t.headings, h)
				column := s.column(l.Full())
				if column != nil && column.Name == "boat" {
					for _, r := range b.Rows {
						if c := textAt(r, l.Col); c != "" {
							t.boats[c] = true
						}
					}
				}
				if k, ok := keyOf(b, l.Col, days); ok {
					k.heading, k.trip = strings.ToLower(l.Text), column != nil && column.Name == "trip"
					t.keys = append(t.keys, k)
					t.keys = append(t.keys, pairsOf(b, l, days)...)
				}
			}
		}
	}
	return t
}

func (s *Season) column(heading string) *plan.Column {
	_, column, _ := s.lexicon.Nearest(heading)
	return column
}

func textAt(r layout.Row, col int) string {
	if col >= len(r.Cells) {
		return ""
	}
	return strings.ToLower(strings.TrimSpace(r.Cells[col].Text))
}

// dayColumn is the day of each row, of the first column that is mostly days; empty where none is. A day that
// is written once is that of the rows below it too.
func dayColumn(b *layout.Block) map[int]string {
	for _, l := range b.Labels {
		days, filled, dated := map[int]string{}, 0, 0
		day := ""
		for i, r := range b.Rows {
			if textAt(r, l.Col) != "" {
				filled, day = filled+1, ""
				if c := r.Cells[l.Col]; c.Look == layout.Date {
					day = dayText(c.Text, b.Grid.Info)
				}
				if day != "" {
					dated++
				}
			}
			if day != "" {
				days[i] = day
			}
		}
		if 2*dated > filled && 2*len(days) > len(b.Rows) {
			return days
		}
	}
	return nil
}

// anyYear is how a day without a year is spelled; one with a year ends the same way.
const anyYear = "01-02"

// ofAnyYear are days without their years.
func ofAnyYear(days map[string]bool) map[string]bool {
	out := map[string]bool{}
	for d := range days {
		out[d[len(d)-len(anyYear):]] = true
	}
	return out
}

// dayText is a date in one spelling, also of a workbook's serial; "" for what is none, as hooks of 7/0.
func dayText(text string, of sheet.Info) string {
	if v, err := strconv.ParseFloat(text, 64); err == nil && of.Workbook {
		if m, err := unit.FromSerial(v, of.Date1904); err == nil && m.HasDate {
			return m.Date.String()
		}
	}
	for _, order := range []unit.Order{unit.DayFirst, unit.MonthFirst} {
		if m, err := unit.ParseMoment(text, order); err == nil && m.HasDate {
			return m.Date.String()
		}
	}
	for _, order := range []unit.Order{unit.DayFirst, unit.MonthFirst} {
		if d, err := unit.ParseDayMonth(text, order); err == nil {
			return fmt.Sprintf("%02d-%02d", d.Month, d.Day)
		}
	}
	return ""
}

// keyOf takes a column of whole numbers or codes for one that rows are known by.
func keyOf(b *layout.Block, col int, days map[int]string) (keyColumn, bool) {
	k := keyColumn{values: map[string]bool{}, days: map[string]string{}}
	filled, coded, worded := 0, 0, 0
	for i, r := range b.Rows {
		c := textAt(r, col)
		if c == "" || c == "na" {
			continue
		}
		number := strings.Trim(c, "0123456789") == ""
		if len(c) > 12 || !number && strings.ContainsAny(c, " .,:/") {
			return k, false
		}
		if !strings.ContainsAny(c, "0123456789") {
			if worded++; 5*worded > len(b.Rows) {
				return k, false
			}
			continue // why it has no number
		}
		filled++
		if !number {
			coded++
		}
		k.values[c] = true
		if k.days[c] == "" {
			k.days[c] = days[i]
		}
	}
	k.own, k.coded = len(k.values) == filled, coded == filled
	return k, len(k.values) >= 3 && 2*filled > len(b.Rows)
}

// pairsOf are the keys that a column makes with each of short codes beside it: trip and leg.
func pairsOf(b *layout.Block, with layout.Label, days map[int]string) []keyColumn {
	var out []keyColumn
	for _, l := range b.Labels {
		k := keyColumn{heading: strings.ToLower(with.Text + "+" + l.Text),
			values: map[string]bool{}, days: map[string]string{}}
		filled, short := 0, l.Col != with.Col
		for i, r := range b.Rows {
			first, c := textAt(r, with.Col), textAt(r, l.Col)
			if first == "" || c == "" || c == "na" {
				continue
			}
			short = short && len(c) <= 3
			filled++
			k.values[first+"+"+c] = true
			k.days[first+"+"+c] = days[i]
		}
		if k.own = len(k.values) == filled; short && len(k.values) >= 5 && 2*filled > len(b.Rows) {
			out = append(out, k)
		}
	}
	return out
}

// books are the files that are joined to each other, of more than one.
func books(tables []tableOf) [][]string {
	of := make([]int, len(tables))
	for i := range of {
		of[i] = i
	}
	for i := range tables {
		for j := range i {
			if !tables[i].joins(&tables[j]) {
				continue
			}
			from, to := of[i], of[j]
			for k := range of {
				if of[k] == from {
					of[k] = to
				}
			}
		}
	}
	parts := map[int][]string{}
	for i, t := range tables {
		parts[of[i]] = append(parts[of[i]], t.path)
	}
	var out [][]string
	for i := range tables {
		if len(parts[i]) > 1 {
			out = append(out, parts[i])
		}
	}
	return out
}

// joins tells whether two files are tables of one book: not of one hand, and not of two boats.
func (t *tableOf) joins(o *tableOf) bool {
	if len(t.headings) == 0 || len(o.headings) == 0 || identity.SameHand(t.headings, o.headings) ||
		identity.SameHand(o.headings, t.headings) {
		return false
	}
	if len(t.boats) > 0 && len(o.boats) > 0 && shared(t.boats, o.boats) == 0 {
		return false
	}
	days, others := t.days, o.days
	if t.yearless != o.yearless {
		days, others = ofAnyYear(days), ofAnyYear(others)
	}
	if same := shared(days, others); same >= 5 && 10*same >= 9*min(len(days), len(others)) {
		return true
	}
	for _, a := range t.keys {
		for _, b := range o.keys {
			if a.joins(&b) || t.lists(a, b) || o.lists(b, a) || t.dates(a, b, o) || o.dates(b, a, t) {
				return true
			}
		}
	}
	return false
}

// lists tells whether a file named for a column of another, outcome.csv, has the codes in it.
func (t *tableOf) lists(own, of keyColumn) bool {
	name := strings.TrimSuffix(filepath.Base(t.path), filepath.Ext(t.path))
	return own.own && meaning.SameKey(name, of.heading) && 10*shared(own.values, of.values) >= 9*len(of.values)
}

// fewDated is how many rows a table without a day must name of another before it is taken to have its days from it.
const fewDated = 5

// dates tells whether rows that are numbered, under no more than "No", have the days of another table that has none: a
// column of this one names them, several times some.
func (t *tableOf) dates(own, of keyColumn, o *tableOf) bool {
	return len(t.days) > 0 && len(o.days) == 0 && own.own && meaning.OnlyNumbers(own.heading) && !of.own &&
		len(of.values) >= fewDated && 10*shared(own.values, of.values) >= 9*len(of.values)
}

// joins tells whether one column's values are keys of the other's rows.
func (k *keyColumn) joins(o *keyColumn) bool {
	named := meaning.SameKey(k.heading, o.heading) || k.coded && o.coded
	same := shared(k.values, o.values)
	trips := k.trip && o.trip && same >= fewTrips
	if !named || !k.own && !o.own && !trips || same < 3 || 10*same < 9*min(len(k.values), len(o.values)) {
		return false
	}
	both, agree := 0, 0
	for v, day := range k.days {
		if other := o.days[v]; day != "" && other != "" {
			both++
			if day == other {
				agree++
			}
		}
	}
	return both == 0 || 2*agree > both
}

func shared(a, b map[string]bool) int {
	n := 0
	for v := range a {
		if b[v] {
			n++
		}
	}
	return n
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
