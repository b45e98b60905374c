package store

import (
	"io/fs"
	"regexp"
	"strings"
	"testing"
)

// A season's tables are filled by the names of their columns: a column that is moved or added cannot
// take another's values.
func TestTablesAreFilledByName(t *testing.T) {
	schema, err := fs.Glob(files, "schema/*.sql")
	if err != nil || len(schema) == 0 {
		t.Fatal(err)
	}
	tables := map[string]bool{}
	for _, name := range schema {
		b, err := fs.ReadFile(files, name)
		if err != nil {
			t.Fatal(err)
		}
		for _, m := range regexp.MustCompile(`CREATE TABLE (\w+)`).FindAllStringSubmatch(string(b), -1) {
			tables[m[1]] = true
		}
	}
	steps, err := fs.Glob(files, "derive/*.sql")
	if err != nil {
		t.Fatal(err)
	}
	filled := 0
	for _, name := range steps {
		b, err := fs.ReadFile(files, name)
		if err != nil {
			t.Fatal(err)
		}
		for _, m := range regexp.MustCompile(`INSERT INTO (\w+)([^\n]*)`).FindAllStringSubmatch(string(b), -1) {
			if !tables[m[1]] {
				continue
			}
			if filled++; !strings.HasPrefix(m[2], " BY NAME") {
				t.Errorf("%s fills %s by the order of its columns", name, m[1])
			}
		}
	}
	if filled < 12 {
		t.Errorf("only %d tables are filled", filled)
	}
}
