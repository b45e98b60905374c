package queries_test

import (
	"context"
	"flag"
	"fmt"
	"math"
	"os"
	"slices"
	"strings"
	"testing"
	"time"

	"wakeledger/pipeline"
	"wakeledger/pipeline/unit"
	"wakeledger/queries"
	"wakeledger/testdata/seasons"
)

// firstSeed begins the seeds of the random seasons; another one makes others.
var firstSeed = flag.Uint64("seed", 1, "first seed of the random seasons")

// open opens a season in memory that is closed with the test.
func open(t *testing.T, cfg pipeline.Config) *pipeline.Season {
	t.Helper()
	s, err := pipeline.Open(context.Background(), "", cfg)
	if err != nil {
		t.Fatal(err)
	}
	t.Cleanup(func() { s.DB.Close() })
	return s
}

// config is what the owner of a written season says of it.
func config(s *seasons.Season, w seasons.Written) pipeline.Config {
	cfg := pipeline.Config{Boat: w.Boat, Zone: s.Zone, Units: w.Units}
	switch w.Order {
	case "day-first":
		cfg.Order = unit.DayFirst
	case "month-first":
		cfg.Order = unit.MonthFirst
	}
	if w.Comma {
		cfg.Mark = unit.MarkComma
	}
	return cfg
}

// load loads files and makes the season's tables.
func load(t *testing.T, s *pipeline.Season, files ...string) []pipeline.LogReport {
	t.Helper()
	ctx := context.Background()
	reports, err := s.Load(ctx, files)
	if err != nil {
		t.Fatal(err)
	}
	if err := s.Derive(ctx); err != nil {
		t.Fatal(err)
	}
	return reports
}

// loaded writes a season in a format and loads it; no row may be set aside.
func loaded(t *testing.T, s *seasons.Season, f seasons.Format) *pipeline.Season {
	t.Helper()
	w, err := seasons.Write(t.TempDir(), "log", s, f)
	if err != nil {
		t.Fatal(err)
	}
	season := open(t, config(s, w))
	load(t, season, w.Files...)
	for i, a := range answer(t, season, queries.AskSetAside) {
		if i < 3 {
			t.Errorf("set aside: %+v", a)
		}
	}
	return season
}

// table reads a table of the season file through testdata/season/NAME.sql.
func table(t *testing.T, s *pipeline.Season, name string) seasons.Table {
	t.Helper()
	q, err := os.ReadFile("testdata/season/" + name + ".sql")
	if err != nil {
		t.Fatal(err)
	}
	rows, err := s.DB.Query(context.Background(), string(q))
	if err != nil {
		t.Fatal(err)
	}
	defer rows.Close()
	got := seasons.Table{Name: name}
	if got.Columns, err = rows.Columns(); err != nil {
		t.Fatal(err)
	}
	for rows.Next() {
		cells := make([]any, len(got.Columns))
		into := make([]any, len(cells))
		for i := range cells {
			into[i] = &cells[i]
		}
		if err := rows.Scan(into...); err != nil {
			t.Fatal(err)
		}
		for i, v := range cells {
			if n, ok := v.(int64); ok {
				cells[i] = float64(n)
			}
		}
		got.Rows = append(got.Rows, cells)
	}
	if err := rows.Err(); err != nil {
		t.Fatal(err)
	}
	return got
}

// only keeps the columns named, in that order.
func only(t *testing.T, table seasons.Table, names []string) seasons.Table {
	t.Helper()
	kept := seasons.Table{Name: table.Name, Columns: names}
	at := make([]int, len(names))
	for i, n := range names {
		if at[i] = slices.Index(table.Columns, n); at[i] < 0 {
			t.Fatalf("%s has no column %s", table.Name, n)
		}
	}
	for _, r := range table.Rows {
		row := make([]any, len(at))
		for i, j := range at {
			row[i] = r[j]
		}
		kept.Rows = append(kept.Rows, row)
	}
	return kept
}

// same holds a table of the season file against what it must be, in any order
// of its rows and to 1e-9 of each number.
func same(t *testing.T, got, want seasons.Table) {
	t.Helper()
	if len(got.Rows) != len(want.Rows) {
		t.Errorf("%s: %d rows, want %d%s", want.Name, len(got.Rows), len(want.Rows), surplus(got, want))
		return
	}
	if len(want.Rows) == 0 {
		return
	}
	got = only(t, got, want.Columns)
	sortRows(got.Rows)
	sortRows(want.Rows)
	faults := 0
	for i, w := range want.Rows {
		for j := range w {
			if !equal(got.Rows[i][j], w[j]) {
				if faults++; faults <= 4 {
					t.Errorf("%s %v: %s is %v, want %v", want.Name, shown(w[:min(5, len(w))]), want.Columns[j],
						shown(got.Rows[i][j:j+1]), shown(w[j:j+1]))
				}
			}
		}
	}
	if faults > 4 {
		t.Errorf("%s: %d cells more differ", want.Name, faults-4)
	}
}

// surplus names some rows that stand on one side only, by their first five cells.
func surplus(got, want seasons.Table) string {
	count := map[string]int{}
	for _, r := range got.Rows {
		count[shown(r[:min(5, len(r))])]++
	}
	for _, r := range want.Rows {
		count[shown(r[:min(5, len(r))])]--
	}
	var b strings.Builder
	for k, n := range count {
		if n != 0 && b.Len() < 600 {
			fmt.Fprintf(&b, "\n%+d %s", n, k)
		}
	}
	return b.String()
}

func sortRows(rows [][]any) {
	slices.SortFunc(rows, func(a, b []any) int { return strings.Compare(shown(a), shown(b)) })
}

func shown(cells []any) string {
	var b strings.Builder
	for _, v := range cells {
		switch v := v.(type) {
		case time.Time:
			b.WriteString(v.Format("2006-01-02T15:04:05"))
		case float64:
			fmt.Fprintf(&b, "%.6g", v)
		case nil:
			b.WriteString("-")
		default:
			fmt.Fprint(&b, v)
		}
		b.WriteByte('|')
	}
	return b.String()
}

func equal(a, b any) bool {
	switch a := a.(type) {
	case time.Time:
		b, ok := b.(time.Time)
		return ok && a.Equal(b)
	case float64:
		b, ok := b.(float64)
		return ok && near(a, b)
	}
	return a == b
}

func near(a, b float64) bool { return math.Abs(a-b) <= 1e-9*max(math.Abs(a), math.Abs(b)) }
