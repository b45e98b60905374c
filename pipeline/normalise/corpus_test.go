package normalise_test

import (
	"encoding/csv"
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
	"wakeledger/pipeline/recognise"
	"wakeledger/pipeline/record"
	"wakeledger/pipeline/sheet"
	"wakeledger/pipeline/species"
	"wakeledger/pipeline/unit"
)

// corpus holds logs as people keep them, with the entries expected of each.
const corpus = "../../testdata/corpus"

// needed is the least share of logs that must load with no setting at all: 23
// in 25.
const needed = 23.0 / 25

// TestCorpus reads every log of the corpus with no settings and holds its
// entries cell for cell against those expected. A log with a file named flags
// is one that leaves something open: without them some of its rows must be set
// aside with a reason that names the flag, and with them all must be right.
func TestCorpus(t *testing.T) {
	dirs, err := filepath.Glob(filepath.Join(corpus, "[0-9]*"))
	if err != nil || len(dirs) == 0 {
		t.Fatalf("no logs in %s: %v", corpus, err)
	}
	plain := 0
	for _, dir := range dirs {
		t.Run(filepath.Base(dir), func(t *testing.T) {
			want := readWant(t, filepath.Join(dir, "want.csv"))
			flags := readFlags(t, dir)
			got := readLog(t, dir, normalise.Settings{})
			if len(flags) == 0 {
				if compare(t, want, got) {
					plain++
				}
				return
			}
			asksFor(t, got.problems, flags)
			compare(t, want, readLog(t, dir, settings(t, flags)))
		})
	}
	t.Logf("corpus: %d of %d logs load with no mapping", plain, len(dirs))
	if float64(plain) < needed*float64(len(dirs)) {
		t.Errorf("%d of %d logs load with no mapping: expected at least 23 in 25", plain, len(dirs))
	}
}

// place is an entry's place in its log.
type place struct {
	sheet string
	row   int64
}

type cells map[string]any

type reading struct {
	entries  map[place]cells
	problems []record.Problem
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
	book, err := sheet.Open(path, sheet.Options{})
	if err != nil {
		return got, err
	}
	defer func() { err = closeAfter(book, err) }()
	layouts := map[int]recognise.Layout{}
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
		layouts[i] = l
		ev.Headings(l)
		for _, cells := range first[l.Header+1:] {
			ev.Observe(l, &sheet.Row{Cells: cells})
		}
	}
	ev.Rest = func() error { return observe(book, layouts, ev) }
	for i, info := range book.Sheets() {
		l, ok := layouts[i]
		if !ok {
			continue
		}
		reader, err := normalise.New(l, info, record.Pos{File: filepath.Base(path), Sheet: info.Name}, ev, set)
		if err != nil {
			return got, err
		}
		if err := got.sheet(book, i, reader, l.Header); err != nil {
			return got, err
		}
	}
	return got, nil
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

func observe(book sheet.Book, layouts map[int]recognise.Layout, ev *normalise.Evidence) error {
	for i, l := range layouts {
		n := 0
		err := eachRow(book, i, func(r *sheet.Row) bool {
			if n > l.Header {
				ev.Observe(l, r)
			}
			n++
			return true
		})
		if err != nil {
			return err
		}
	}
	return nil
}

func (g *reading) sheet(book sheet.Book, i int, reader *normalise.Reader, header int) error {
	n := 0
	return eachRow(book, i, func(r *sheet.Row) bool {
		if n++; n <= header+1 {
			return true
		}
		values, skip, problems := reader.Row(r)
		switch {
		case len(problems) > 0:
			g.problems = append(g.problems, problems...)
		case skip != normalise.NotASkip:
			g.passed[skip]++
		default:
			g.entries[place{book.Sheets()[i].Name, values[0].Int}] = asCells(reader.Fields(), values)
		}
		return true
	})
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

// compare reports whether the entries are those expected, no more and no less,
// and nothing was set aside.
func compare(t *testing.T, want map[place]map[string]string, got reading) bool {
	t.Helper()
	before := t.Failed()
	for _, p := range got.problems {
		t.Errorf("set aside: %v", p)
	}
	for at, w := range want {
		g, ok := got.entries[at]
		if !ok {
			t.Errorf("%v: no entry, expected %v", at, w)
			continue
		}
		for name, text := range w {
			if !same(text, g[name]) {
				t.Errorf("%v: %s is %v, expected %s", at, name, g[name], text)
			}
		}
		for name, v := range g {
			if _, ok := w[name]; !ok {
				t.Errorf("%v: %s is %v, expected none", at, name, v)
			}
		}
	}
	for at, g := range got.entries {
		if _, ok := want[at]; !ok {
			t.Errorf("%v: an entry that is not expected: %v", at, g)
		}
	}
	return before == t.Failed()
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

func readWant(t *testing.T, path string) map[place]map[string]string {
	t.Helper()
	f, err := os.Open(path)
	if err != nil {
		t.Fatal(err)
	}
	rows, err := csv.NewReader(f).ReadAll()
	if err := f.Close(); err != nil {
		t.Fatal(err)
	}
	if err != nil || len(rows) < 2 {
		t.Fatalf("%s: nothing is expected: %v", path, err)
	}
	want := map[place]map[string]string{}
	for _, row := range rows[1:] {
		n, err := strconv.ParseInt(row[1], 10, 64)
		if err != nil {
			t.Fatalf("%s: %v", path, err)
		}
		w := map[string]string{}
		for i, cell := range row[2:] {
			if cell != "" {
				w[rows[0][i+2]] = cell
			}
		}
		want[place{row[0], n}] = w
	}
	return want
}

// readFlags reads lines like "--dates day-first"; no file, no flags.
func readFlags(t *testing.T, dir string) map[string]string {
	t.Helper()
	b, err := os.ReadFile(filepath.Join(dir, "flags"))
	if os.IsNotExist(err) {
		return nil
	}
	if err != nil {
		t.Fatal(err)
	}
	flags := map[string]string{}
	for line := range strings.Lines(string(b)) {
		name, value, _ := strings.Cut(strings.TrimSpace(line), " ")
		flags[name] = value
	}
	return flags
}

func asksFor(t *testing.T, problems []record.Problem, flags map[string]string) {
	t.Helper()
	for name, value := range flags {
		found := false
		for _, p := range problems {
			found = found || strings.Contains(p.Reason, name+" ") && strings.Contains(p.Reason, value)
		}
		if !found {
			t.Errorf("no row was set aside for want of %s %s: %v", name, value, problems)
		}
	}
}

func settings(t *testing.T, flags map[string]string) normalise.Settings {
	t.Helper()
	var set normalise.Settings
	for name, value := range flags {
		switch name + " " + value {
		case "--dates day-first":
			set.Order = unit.DayFirst
		case "--dates month-first":
			set.Order = unit.MonthFirst
		case "--decimal comma":
			set.Mark = unit.MarkComma
		case "--log-units us", "--log-units metric":
			set.Units = value
		default:
			t.Fatal(fmt.Errorf("flag %s %s is not known to the test", name, value))
		}
	}
	return set
}
