package normalise_test

import (
	"encoding/csv"
	"fmt"
	"os"
	"path/filepath"
	"strconv"
	"strings"
	"testing"

	"wakeledger/pipeline/normalise"
	"wakeledger/pipeline/record"
	"wakeledger/pipeline/unit"
)

func readBlind(t *testing.T) map[string]blind {
	t.Helper()
	b, err := os.ReadFile(filepath.Join(corpus, "blind.csv"))
	if err != nil {
		t.Fatal(err)
	}
	rows, err := csv.NewReader(strings.NewReader(string(b))).ReadAll()
	if err != nil {
		t.Fatal(err)
	}
	all := map[string]blind{}
	for _, r := range rows[1:] {
		if _, err := os.Stat(filepath.Join(corpus, r[0])); err != nil {
			t.Error(err)
		}
		switch r[1] {
		case "right", "asks", "column left", "set aside", "wrong":
		default:
			t.Errorf("%s: first run %q is not known", r[0], r[1])
		}
		all[r[0]] = blind{first: r[1], left: r[3]}
	}
	return all
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
		at := place{row[0], n, 0}
		for _, taken := want[at]; taken; _, taken = want[at] {
			at.part++ // a line that the row describes
		}
		want[at] = w
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
