package queries_test

import (
	"context"
	"encoding/csv"
	"encoding/json"
	"fmt"
	"math"
	"os"
	"path/filepath"
	"reflect"
	"slices"
	"strconv"
	"strings"
	"testing"

	"wakeledger/pipeline"
)

// place is a row of a log. A row may tell of several things, each an entry.
type place struct {
	sheet string
	row   int64
}

// cells are an entry's values by name, in the season file's units.
type cells map[string]string

// readClerk reads what a careful clerk would enter of a log (want.csv); nothing where there
// is no such file.
func readClerk(t testing.TB, dir string) map[place][]cells {
	t.Helper()
	f, err := os.Open(filepath.Join(dir, "want.csv"))
	if os.IsNotExist(err) {
		return nil
	}
	if err != nil {
		t.Fatal(err)
	}
	defer f.Close()
	rows, err := csv.NewReader(f).ReadAll()
	if err != nil || len(rows) < 2 {
		t.Fatalf("%s: nothing is expected: %v", dir, err)
	}
	want := map[place][]cells{}
	for _, row := range rows[1:] {
		n, err := strconv.ParseInt(row[1], 10, 64)
		if err != nil {
			t.Fatalf("%s: %v", dir, err)
		}
		c := cells{}
		for i, cell := range row[2:] {
			if cell != "" {
				c[rows[0][i+2]] = cell
			}
		}
		at := place{row[0], n}
		want[at] = append(want[at], c)
	}
	return want
}

// readEntries are the entries of a season file as they were stored.
func readEntries(t testing.TB, ctx context.Context, s *pipeline.Season) map[place][]cells {
	t.Helper()
	rows,
		err := s.DB.Query(ctx,
		`SELECT sheet, "row", CAST(to_json(entry) AS VARCHAR) FROM entry ORDER BY sheet_no, "row", part NULLS FIRST, 3`)
	if err != nil {
		t.Fatal(err)
	}
	defer rows.Close()
	got := map[place][]cells{}
	for rows.Next() {
		var at place
		var text string
		if err := rows.Scan(&at.sheet, &at.row, &text); err != nil {
			t.Fatal(err)
		}
		var all map[string]any
		if err := json.Unmarshal([]byte(text), &all); err != nil {
			t.Fatal(err)
		}
		c := cells{}
		for name, v := range all {
			if v == nil || slices.Contains([]string{"sheet", "row", "part", "log_id", "sheet_no", "kind"}, name) {
				continue
			}
			switch x := v.(type) {
			case float64:
				c[name] = strconv.FormatFloat(x, 'g', -1, 64)
			default:
				c[name] = fmt.Sprint(x)
			}
		}
		got[at] = append(got[at], c)
	}
	if err := rows.Err(); err != nil {
		t.Fatal(err)
	}
	return got
}

func sameCell(want, got string) bool {
	if strings.HasPrefix(want, "{") {
		var x, y map[string]string
		return json.Unmarshal([]byte(want), &x) == nil &&
			json.Unmarshal([]byte(got), &y) == nil && reflect.DeepEqual(x, y)
	}
	w, err := strconv.ParseFloat(want, 64)
	g, err2 := strconv.ParseFloat(got, 64)
	if err == nil && err2 == nil {
		return math.Abs(w-g) <= 1e-9*math.Max(1, math.Abs(w))
	}
	return want == got
}

// clerkDiffs are the rows in which the entries differ from the clerk's, by how they differ.
func clerkDiffs(want, got map[place][]cells) map[string][]string {
	diffs := map[string][]string{}
	say := func(kind string, format string, args ...any) {
		diffs[kind] = append(diffs[kind], fmt.Sprintf(format, args...))
	}
	for at, ws := range want {
		gs := got[at]
		for i, w := range ws {
			if i >= len(gs) {
				say("no entry", "%v %v", at, w)
				continue
			}
			for name, text := range w {
				g, ok := gs[i][name]
				switch {
				case !ok:
					say("missing "+name, "%v: %s", at, text)
				case !sameCell(text, g):
					say("other "+name, "%v: %s, got %s", at, text, g)
				}
			}
			for name, g := range gs[i] {
				if _, ok := w[name]; !ok {
					say("more "+name, "%v: %s", at, g)
				}
			}
		}
	}
	for at, gs := range got {
		for i := len(want[at]); i < len(gs); i++ {
			say("more entries", "%v %v", at, gs[i])
		}
	}
	return diffs
}

// knownOfClerk are the differences from the clerk that are known (clerk.csv), by log: how
// many rows differ so.
func knownOfClerk(t *testing.T, root string) map[string]map[string]int {
	t.Helper()
	all := map[string]map[string]int{}
	for _, r := range listed(t, filepath.Join(root, "clerk.csv")) {
		n, err := strconv.Atoi(r[2])
		if err != nil {
			t.Fatalf("clerk.csv: %v", err)
		}
		if all[r[0]] == nil {
			all[r[0]] = map[string]int{}
		}
		all[r[0]][r[1]] = n
	}
	return all
}

// agreesWithClerk fails where a log's rows differ from the clerk's in another way than is
// known, in more rows or in fewer.
func agreesWithClerk(t *testing.T, name string, diffs map[string][]string, allowed map[string]int) {
	t.Helper()
	for kind, d := range diffs {
		if len(d) != allowed[kind] {
			t.Errorf("%s: %s: %d rows differ so from the clerk's, %d are known: %s", name, kind, len(d), allowed[kind],
				strings.Join(d[:min(3, len(d))], "; "))
		}
	}
	for kind, n := range allowed {
		if len(diffs[kind]) == 0 {
			t.Errorf("%s: %s: agrees with the clerk now in the %d rows that clerk.csv names", name, kind, n)
		}
	}
}
