package queries_test

import (
	"bytes"
	"encoding/csv"
	"os"
	"path/filepath"
	"slices"
	"strings"
	"testing"
	"unicode"
	"unicode/utf8"
)

// reshapings are ways in which the same log might have been kept. The heading is the row at index 0 of what
// they are given; a reshaping returns false where it changes nothing.
var reshapings = map[string]func(rows [][]string) ([][]string, bool){
	"in small letters": func(rows [][]string) ([][]string, bool) { return lettered(rows, strings.ToLower), true },
	"in capitals":      func(rows [][]string) ([][]string, bool) { return lettered(rows, strings.ToUpper), true },
	"a new page": func(rows [][]string) ([][]string, bool) {
		at := recordAt(rows, len(rows)/2)
		return slices.Insert(rows, max(at, 1), slices.Clone(rows[0])), at > 0
	},
	"a blank row": func(rows [][]string) ([][]string, bool) {
		at := recordAt(rows, len(rows)/2)
		return slices.Insert(rows, max(at, 1), make([]string, len(rows[0]))), at > 0
	},
	"a slip in a heading": func(rows [][]string) ([][]string, bool) {
		for i := len(rows[0]) - 1; i >= 0; i-- {
			if slip, ok := mistyped(rows[0][i]); ok {
				rows[0] = slices.Clone(rows[0])
				rows[0][i] = slip
				return rows, true
			}
		}
		return rows, false
	},
}

// lettered is all cells in other letters.
func lettered(rows [][]string, as func(string) string) [][]string {
	out := make([][]string, len(rows))
	for i, r := range rows {
		for _, c := range r {
			out[i] = append(out[i], as(c))
		}
	}
	return out
}

// recordAt is the first row from an index on that begins a record: its first cell is filled, and most others are.
func recordAt(rows [][]string, from int) int {
	for i := max(from, 2); i < len(rows); i++ {
		filled := 0
		for _, c := range rows[i] {
			if strings.TrimSpace(c) != "" {
				filled++
			}
		}
		if rows[i][0] != "" && 2*filled > len(rows[0]) {
			return i
		}
	}
	return 0
}

// mistyped is a heading with two letters of its first long word changed about, where they differ.
func mistyped(text string) (string, bool) {
	long := strings.FieldsFunc(text, func(r rune) bool { return !unicode.IsLetter(r) })
	i := slices.IndexFunc(long, func(w string) bool { return len(w) > 5 && len(w) == utf8.RuneCountInString(w) })
	if i < 0 || long[i][2] == long[i][3] {
		return "", false
	}
	w := long[i]
	return strings.Replace(text, w, w[:2]+w[3:4]+w[2:3]+w[4:], 1), true
}

// TestReshaped reads the logs of the corpus that are one table in one CSV file and are read right, each kept in
// other ways: it is right then too, or something is asked; never wrong.
func TestReshaped(t *testing.T) {
	if testing.Short() {
		t.Skip("'make prove' reads the corpus")
	}
	dirs, err := filepath.Glob(filepath.Join("..", "testdata", "corpus", "*"))
	if err != nil {
		t.Fatal(err)
	}
	read, right := 0, 0
	for _, dir := range dirs {
		if _, err := os.Stat(filepath.Join(dir, "truth.json")); err != nil {
			continue
		}
		tr := readTruth(t, dir)
		rows, comma, ok := oneTable(t, dir, tr)
		if !ok || judge(t, dir, tr, tr.config(t), nil).verdict != "right" {
			continue
		}
		for name, reshape := range reshapings {
			changed, ok := reshape(slices.Clone(rows))
			if !ok {
				continue
			}
			o := judge(t, written(t, tr.Files[0], changed, comma), tr, tr.config(t), nil)
			if read++; o.verdict == "right" {
				right++
			}
			if o.verdict == "wrong" {
				t.Errorf("%s, %s: wrong without a question: %s", filepath.Base(dir), name, strings.Join(o.diffs, "; "))
			}
		}
	}
	t.Logf("%d reshaped logs, %d right with no answer", read, right)
	if read < 60 {
		t.Errorf("only %d logs were reshaped", read)
	}
}

// oneTable are the rows of a log that is one CSV file, its heading on the first line and each line as wide.
func oneTable(t *testing.T, dir string, tr truth) (rows [][]string, comma rune, ok bool) {
	t.Helper()
	if len(tr.Files) != 1 || filepath.Ext(tr.Files[0]) != ".csv" {
		return nil, 0, false
	}
	text, err := os.ReadFile(filepath.Join(dir, tr.Files[0]))
	if err != nil {
		t.Fatal(err)
	}
	text = bytes.TrimPrefix(text, []byte("\ufeff"))
	if !utf8.Valid(text) {
		return nil, 0, false
	}
	first, _, _ := strings.Cut(string(text), "\n")
	comma = ','
	if strings.Count(first, ";") > strings.Count(first, ",") {
		comma = ';'
	}
	r := csv.NewReader(bytes.NewReader(text))
	r.Comma = comma
	rows, err = r.ReadAll()
	return rows, comma, err == nil && len(rows) > 8 && len(rows[0]) > 3
}

// written is a folder with a file of rows.
func written(t *testing.T, name string, rows [][]string, comma rune) string {
	t.Helper()
	dir := t.TempDir()
	f, err := os.Create(filepath.Join(dir, name))
	if err != nil {
		t.Fatal(err)
	}
	w := csv.NewWriter(f)
	w.Comma = comma
	if err := w.WriteAll(rows); err != nil {
		t.Fatal(err)
	}
	if err := f.Close(); err != nil {
		t.Fatal(err)
	}
	return dir
}
