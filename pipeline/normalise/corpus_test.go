package normalise_test

import (
	"encoding/json"
	"fmt"
	"math"
	"os"
	"path/filepath"
	"reflect"
	"strconv"
	"strings"
	"testing"

	"wakeledger/pipeline/entry"
	"wakeledger/pipeline/normalise"
	"wakeledger/pipeline/plan"
	"wakeledger/pipeline/record"
	"wakeledger/pipeline/sheet"
	"wakeledger/pipeline/species"
	"wakeledger/pipeline/unit"
)

// corpus holds logs as people keep them, with the entries expected of each.
const corpus = "../../testdata/corpus"

// needed is the least share of the logs that must load right with no setting at
// all: 23 in 25.
const needed = 23.0 / 25

// blind is what blind.csv says of a log that was written before its reader was
// looked at.
type blind struct {
	first string // its first run: right, asks, column left, set aside, wrong
	left  string // what is not read as a clerk would enter it; "" where all is
}

// TestCorpus reads every log of the corpus with no settings and holds its
// entries cell for cell against those expected. A log with a file named flags
// is one that leaves something open: without them some of its rows must be set
// aside with a reason that names the flag, and with them all must be right. A log
// of which something is left must not load right, and nothing that it does load
// may differ from what is expected.
func TestCorpus(t *testing.T) {
	dirs, err := filepath.Glob(filepath.Join(corpus, "[0-9]*"))
	if err != nil || len(dirs) == 0 {
		t.Fatalf("no logs in %s: %v", corpus, err)
	}
	blinds := readBlind(t)
	var all share
	for _, dir := range dirs {
		name := filepath.Base(dir)
		t.Run(name, func(t *testing.T) { all.add(loadsPlain(t, dir, blinds[name].left)) })
	}
	var first share
	how := map[string]int{}
	for _, b := range blinds {
		first.add(b.first == "right")
		how[b.first]++
	}
	t.Logf("corpus: %v of all logs load right with no setting now; of those written blind, %v did on their first run (%v)", all, first, how)
	if float64(all.right) < needed*float64(all.of) {
		t.Errorf("%v of the logs load right with no setting: expected at least 23 in 25", all)
	}
}

// share counts those of several that are right.
type share struct{ right, of int }

func (s *share) add(right bool) {
	s.of++
	if right {
		s.right++
	}
}

func (s share) String() string { return fmt.Sprintf("%d of %d", s.right, s.of) }

// loadsPlain holds one log against what is expected of it, and tells whether it
// loads right with no setting. left is what is known not to.
func loadsPlain(t *testing.T, dir, left string) bool {
	t.Helper()
	want := readWant(t, filepath.Join(dir, "want.csv"))
	flags := readFlags(t, dir)
	got := readLog(t, dir, normalise.Settings{})
	switch {
	case left != "":
		if len(differences(want, got)) == 0 {
			t.Errorf("loads right now: blind.csv says that this is left: %s", left)
		}
		report(t, wrongValues(want, got))
		return false
	case len(flags) == 0:
		return report(t, differences(want, got))
	}
	asksFor(t, got.problems, flags)
	report(t, differences(want, readLog(t, dir, settings(t, flags))))
	return false
}

func report(t *testing.T, wrong []string) bool {
	t.Helper()
	for _, w := range wrong {
		t.Error(w)
	}
	return len(wrong) == 0
}

// place is an entry's place in its log. part is 0 for a row's own entry, and counts
// the lines that it describes beside it.
type place struct {
	sheet string
	row   int64
	part  int64
}

type cells map[string]any

type reading struct {
	entries  map[place]cells
	problems []record.Problem
	doubts   []record.Problem
	passed   map[normalise.Skip]int
}

func readLog(t *testing.T, dir string, set normalise.Settings) reading {
	t.Helper()
	var path string
	files, err := os.ReadDir(dir)
	if err != nil {
		t.Fatal(err)
	}
	for _, f := range files {
		if n := f.Name(); n != "want.csv" && n != "flags" {
			path = filepath.Join(dir, n)
		}
	}
	got, err := readFile(path, set)
	if err != nil {
		t.Fatal(err)
	}
	return got
}

// readFile drives the stages before the database as the pipeline does.
func readFile(path string, set normalise.Settings) (got reading, err error) {
	got = reading{entries: map[place]cells{}, passed: map[normalise.Skip]int{}}
	table, err := recognise.Default()
	if err != nil {
		return got, err
	}
	if set.Species, err = species.Default(); err != nil {
		return got, err
	}
	table.Names = func(name string) bool {
		m := set.Species.Find(name, set.Ocean)
		return m.Found || len(m.Candidates) > 0
	}
	book, err := sheet.Open(path, sheet.Options{})
	if err != nil {
		return got, err
	}
	defer func() { err = closeAfter(book, err) }()
	layouts := map[int]plan.Block{}
	ev := &normalise.Evidence{}
	for i, info := range book.Sheets() {
		var first [][]string
		err := eachRow(book, i, func(r *sheet.Row) bool {
			first = append(first, append([]string(nil), r.Cells...))
			return len(first) < recognise.Lookahead
		})
		if err != nil {
			return got, err
		}
		l, ok := table.Sheet(info.Name, first)
		if !ok {
			continue
		}
		l.Dated(filepath.Base(path))
		layouts[i] = l
		ev.First(table, l, posOf(path, info), first)
	}
	ev.Rest = func() error { return observe(book, path, layouts, ev) }
	for i, info := range book.Sheets() {
		l, ok := layouts[i]
		if !ok {
			continue
		}
		rows, err := book.Rows(i)
		if err != nil {
			return got, err
		}
		tables := normalise.NewTables(rows, table, l, posOf(path, info), l.Header+1)
		for ok := true; ok; {
			reader, err := normalise.New(l, info, posOf(path, info), ev, set)
			if err != nil {
				return got, err
			}
			if err := got.table(info.Name, tables, reader); err != nil {
				return got, err
			}
			var looked [][]string
			if l, looked, ok = tables.Below(); ok {
				ev.First(table, l, posOf(path, info), looked)
			}
		}
		if err := rows.Close(); err != nil {
			return got, err
		}
	}
	return got, nil
}

func posOf(path string, info sheet.Info) record.Pos {
	return record.Pos{File: filepath.Base(path), Sheet: info.Name}
}

func closeAfter(book sheet.Book, err error) error {
	if cerr := book.Close(); err == nil {
		err = cerr
	}
	return err
}

func eachRow(book sheet.Book, i int, do func(*sheet.Row) bool) error {
	rows, err := book.Rows(i)
	if err != nil {
		return err
	}
	for rows.Next() && do(rows.Row()) {
	}
	if err := rows.Err(); err != nil {
		return err
	}
	return rows.Close()
}

func observe(book sheet.Book, path string, layouts map[int]plan.Block, ev *normalise.Evidence) error {
	table, err := recognise.Default()
	if err != nil {
		return err
	}
	for i, l := range layouts {
		rows, err := book.Rows(i)
		if err != nil {
			return err
		}
		if err := ev.Tables(normalise.NewTables(rows, table, l, posOf(path, book.Sheets()[i]), l.Header+1), l); err != nil {
			return err
		}
		if err := rows.Close(); err != nil {
			return err
		}
	}
	return nil
}

func (g *reading) table(name string, rows *normalise.Tables, reader *normalise.Reader) error {
	for rows.Next() {
		values, skip, problems := reader.Row(rows.Row())
		g.problems = append(g.problems, problems...)
		switch {
		case values == nil && len(problems) > 0:
		case skip != normalise.NotASkip:
			g.passed[skip]++
		default:
			g.doubts = append(g.doubts, reader.Doubts()...)
			at := place{name, values[0].Int, 0}
			g.entries[at] = asCells(reader.Fields(), values)
			for values, ok := reader.Line(); ok; values, ok = reader.Line() {
				at.part++
				line := asCells(reader.Fields(), values)
				delete(line, "part") // a name for the line, which a place that is blank makes no less
				g.entries[at] = line
			}
		}
	}
	return rows.Err()
}

func asCells(fields []entry.Field, values []entry.Value) cells {
	c := cells{}
	for i, f := range fields[1:] {
		v := values[i+1]
		if !v.Known {
			continue
		}
		switch f.Type {
		case entry.Text:
			c[f.Name] = v.Text
		case entry.Real:
			c[f.Name] = v.Real
		case entry.Day:
			c[f.Name] = unit.Date(v.Int).String()
		case entry.Flag:
			c[f.Name] = strconv.FormatBool(v.Int == 1)
		default:
			c[f.Name] = v.Int
		}
	}
	return c
}

// differences are those between the entries and what is expected, no more and no
// less, and what was set aside.
func differences(want map[place]map[string]string, got reading) (diff []string) {
	for _, p := range got.problems {
		diff = append(diff, fmt.Sprintf("set aside: %v", p))
	}
	diff = append(diff, wrongValues(want, got)...)
	for at, w := range want {
		g, ok := got.entries[at]
		if !ok {
			diff = append(diff, fmt.Sprintf("%v: no entry, expected %v", at, w))
			continue
		}
		for name, text := range w {
			if _, ok := g[name]; !ok {
				diff = append(diff, fmt.Sprintf("%v: %s is unknown, expected %s", at, name, text))
			} else if name == "extra" && !same(text, g[name]) {
				diff = append(diff, fmt.Sprintf("%v: %s is %v, expected %s", at, name, g[name], text))
			}
		}
		for name, v := range g {
			if _, ok := w[name]; !ok {
				diff = append(diff, fmt.Sprintf("%v: %s is %v, expected none", at, name, v))
			}
		}
	}
	return diff
}

// wrongValues are the entries that nobody expects, and values other than those
// expected.
func wrongValues(want map[place]map[string]string, got reading) (wrong []string) {
	for at, g := range got.entries {
		w, ok := want[at]
		if !ok {
			wrong = append(wrong, fmt.Sprintf("%v: an entry that is not expected: %v", at, g))
			continue
		}
		for name, text := range w {
			if v, ok := g[name]; ok && name != "extra" && !same(text, v) {
				wrong = append(wrong, fmt.Sprintf("%v: %s is %v, expected %s", at, name, v, text))
			}
		}
	}
	return wrong
}

func same(want string, got any) bool {
	switch g := got.(type) {
	case string:
		if strings.HasPrefix(want, "{") {
			return sameJSON(want, g)
		}
		return want == g
	case int64:
		return want == strconv.FormatInt(g, 10)
	case float64:
		w, err := strconv.ParseFloat(want, 64)
		return err == nil && math.Abs(w-g) <= 1e-9*math.Max(1, math.Abs(w))
	}
	return false
}

func sameJSON(a, b string) bool {
	var x, y map[string]string
	return json.Unmarshal([]byte(a), &x) == nil && json.Unmarshal([]byte(b), &y) == nil && reflect.DeepEqual(x, y)
}
