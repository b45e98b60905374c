package normalise_test

import (
	"fmt"
	"slices"
	"strings"
	"testing"

	"wakeledger/pipeline/normalise"
	"wakeledger/pipeline/recognise"
	"wakeledger/pipeline/record"
	"wakeledger/pipeline/sheet"
)

// typed is rows typed here, a line each, cells parted by bars.
type typed struct {
	lines []string
	row   sheet.Row
}

func (m *typed) Next() bool {
	if len(m.lines) == 0 {
		return false
	}
	m.row = sheet.Row{Num: m.row.Num + 1, Cells: append(m.row.Cells[:0], strings.Split(m.lines[0], "|")...)} // its room is used again, as a book's is
	m.lines = m.lines[1:]
	return true
}
func (m *typed) Row() *sheet.Row { return &m.row }
func (m *typed) Err() error      { return nil }
func (m *typed) Close() error    { return nil }

// tablesOf reads lines as one sheet and sums up each table: its kind, the rows that
// are not blank, and what stands above it.
func tablesOf(t *testing.T, lines []string) []string {
	t.Helper()
	table, err := recognise.Default()
	if err != nil {
		t.Fatal(err)
	}
	var first [][]string
	for _, l := range lines[:min(len(lines), recognise.Lookahead)] {
		first = append(first, strings.Split(l, "|"))
	}
	l, ok := table.Sheet("", first)
	if !ok {
		t.Fatal("not understood")
	}
	tables := normalise.NewTables(&typed{lines: lines}, table, l, record.Pos{File: "log 2026.csv"}, l.Header+1)
	var all []string
	for ok := true; ok; {
		s := string(l.Kind)
		for _, g := range l.Given {
			s += " " + g.Column.Name + "=" + g.Text
		}
		for tables.Next() {
			if strings.Trim(strings.Join(tables.Row().Cells, ""), " ") != "" {
				s += fmt.Sprintf(" %d", tables.Row().Num)
			}
		}
		if err := tables.Err(); err != nil {
			t.Fatal(err)
		}
		all = append(all, s)
		l, _, ok = tables.Below()
	}
	return all
}

func TestTables(t *testing.T) {
	const legs, fish = "Date|Start|End|Speed kn", "Date|Species|Length cm|Weight kg"
	const leg, wahoo = "2026-06-03|06:00|08:00|8", "2026-06-03|Wahoo|112|14"
	far := append([]string{legs}, slices.Repeat([]string{leg}, 90)...)
	farWant := "legs"
	for n := range 90 {
		farWant += fmt.Sprintf(" %d", n+2)
	}
	for _, c := range []struct {
		what  string
		lines []string
		want  []string
	}{
		{"one", []string{legs, leg, leg}, []string{"legs 2 3"}},
		{"below a gap and a title", []string{legs, leg, "|||", "FISH|||", fish, wahoo}, []string{"legs 2", "fish 6"}},
		{"right below", []string{legs, leg, fish, wahoo, wahoo}, []string{"legs 2", "fish 4 5"}},
		{"three", []string{legs, leg, "", fish, wahoo, "", legs, leg}, []string{"legs 2", "fish 5", "legs 8"}},
		{"far below", append(far, "", fish, wahoo), []string{farWant, "fish 94"}},
		{"the same header again", []string{legs, leg, "", legs, leg}, []string{"legs 2 4 5"}},
		{"the same header under another day", []string{"Date: 3 June 2026|||", "Time|Lure|Outcome|", "06:10|Cope|lost|", "|||", "Date: 4 June 2026|||", "Time|Lure|Outcome|", "06:20|Cope|lost|"},
			[]string{"strikes date=3 June 2026 3", "strikes date=4 June 2026 7"}},
		{"what stands above both", []string{"Boat: Wren|||", "Date|4 June 2026||", "Start|End|Speed kn|", "06:00|08:00|8|", "", "Time|Lure|Outcome|", "06:10|Cope|lost|"},
			[]string{"legs boat=Wren date=4 June 2026 4", "strikes boat=Wren date=4 June 2026 7"}},
		{"another day is not inherited", []string{"Boat: Wren|||", "Date: 3 June 2026|||", "Time|Lure|Outcome|", "06:10|Cope|lost|", "", "Trip: 7|||", "Time|Lure|Outcome|", "06:20|Cope|lost|"},
			[]string{"strikes boat=Wren date=3 June 2026 4", "strikes trip=7 boat=Wren 8"}},
		{"a day and its crew above each trip's tables", []string{"Sat 12 July 2025|||Crew: Jo", "Start|Stop|Kts|Rods", "06:30|10:15|7.5|5", "Time|Rod|Lure|Result", "07:12|LR|bar|lost", "Sun 20 July 2025|||Crew: Al", "Start|Stop|Kts|Rods", "06:00|11:30|7|6", "Time|Rod|Lure|Result", "08:05|LR|bar|lost"},
			[]string{"legs date=Sat 12 July 2025 3", "strikes date=Sat 12 July 2025 5", "legs date=Sun 20 July 2025 8", "strikes date=Sun 20 July 2025 10"}},
		{"a trip that names no day has none", []string{"12 July 2025|||", "Start|Stop|Kts|Rods", "06:30|10:15|7.5|5", "Time|Rod|Lure|Result", "07:12|LR|bar|lost", "", "Start|Stop|Kts|Rods", "06:00|11:30|7|6", "Time|Rod|Lure|Result", "08:05|LR|bar|lost"},
			[]string{"legs date=12 July 2025 3", "strikes date=12 July 2025 5", "legs 8", "strikes 10"}},
		{"a section says what became of its fish", []string{"TAG & RELEASE|||", "Date|Species|Angler|Length cm", "2026-06-03|Wahoo|Ansa|112", "", "WEIGHED|||", fish, wahoo}, []string{"fish kept=released 3", "fish 7"}},
		{"rows of words", []string{"Date|Line|Lure|Outcome|Species", "2026-06-03|long left|Cope|landed|wahoo", "|short left|Cope|lost|", "|rod|lure|kept|fish", "2026-06-04|long left|Cope|lost|"}, []string{"strikes 2 3 4 5"}},
		{"notes between rows", []string{legs, leg, "|||", "Engine off for an hour|||", leg, "wind up, went home|||", leg}, []string{"legs 2 4 5 6 7"}},
		{"a header over nothing", []string{legs, leg, "", fish}, []string{"legs 2 4"}},
		{"totals", []string{legs, leg, "", "Total||2|", "Average|||8"}, []string{"legs 2 4 5"}},
	} {
		if got := tablesOf(t, c.lines); !slices.Equal(got, c.want) {
			t.Errorf("%s:\n got      %q\n expected %q", c.what, got, c.want)
		}
	}
}

// TestTablesCostNothing holds that rows which begin with a number, as most do, are
// read without room of their own.
func TestTablesCostNothing(t *testing.T) {
	table, err := recognise.Default()
	if err != nil {
		t.Fatal(err)
	}
	for _, cells := range [][]string{{"2026-06-03", "06:00", "08:00", "8"}, {"A12", "2026-06-03", "06:00", "8"}, {"Cope", "long left", "pink", "8"}} {
		rows := &repeated{row: sheet.Row{Cells: cells}}
		tables := normalise.NewTables(rows, table, recognise.Layout{Rows: [][]string{{"Date"}}}, record.Pos{}, 0)
		if n := testing.AllocsPerRun(100, func() { tables.Next() }); n != 0 {
			t.Errorf("%q: %g allocations a row", cells, n)
		}
	}
}

type repeated struct{ row sheet.Row }

func (r *repeated) Next() bool      { return true }
func (r *repeated) Row() *sheet.Row { return &r.row }
func (r *repeated) Err() error      { return nil }
func (r *repeated) Close() error    { return nil }
