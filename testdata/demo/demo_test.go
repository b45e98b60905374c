package main

import (
	"bytes"
	"encoding/json"
	"os"
	"path/filepath"
	"reflect"
	"testing"

	"github.com/xuri/excelize/v2"
)

// TestCommittedFilesAreCurrent makes the demo season anew and holds it against
// the committed one: text files by their bytes, workbooks by their cells.
func TestCommittedFilesAreCurrent(t *testing.T) {
	dir := t.TempDir()
	if err := generate(filepath.Join(dir, "logs")); err != nil {
		t.Fatal(err)
	}
	for _, name := range []string{"truth.json", "truth-fish.csv", "logs/2026-late-trips.csv", "logs/2026-late-legs.csv",
		"logs/2026-late-lines.csv", "logs/2026-late-strikes.csv", "logs/2026-late-fish.csv", "tracks/" + fileTracks} {
		if !bytes.Equal(read(t, filepath.Join(dir, name)), read(t, name)) {
			t.Errorf("%s is not what the generator writes: run go run ./testdata/demo", name)
		}
	}
	for _, name := range []string{"logs/" + file2025, "logs/" + fileEarly} {
		if !reflect.DeepEqual(cells(t, filepath.Join(dir, name)), cells(t, name)) {
			t.Errorf("%s is not what the generator writes: run go run ./testdata/demo", name)
		}
	}
}

// TestMistakesStandWhereTheTruthSays looks every workbook mistake up by its
// row and column letter.
func TestMistakesStandWhereTheTruthSays(t *testing.T) {
	var got truth
	if err := json.Unmarshal(read(t, "truth.json"), &got); err != nil {
		t.Fatal(err)
	}
	aside := 0
	for _, m := range mistakes {
		if m.how != guess {
			aside++
		}
	}
	if len(got.Aside) != aside {
		t.Errorf("truth.json lists %d mistakes, the generator makes %d", len(got.Aside), aside)
	}
	for _, a := range got.Aside {
		if a.Sheet == "" {
			continue
		}
		f, err := excelize.OpenFile(filepath.Join("logs", a.File))
		if err != nil {
			t.Fatal(err)
		}
		at, err := excelize.JoinCellName(a.Letter, a.Row)
		if err != nil {
			t.Fatal(err)
		}
		if cell, err := f.GetCellValue(a.Sheet, at); err != nil || cell != a.Cell {
			t.Errorf("%s!%s!%s holds %q (%v), want %q", a.File, a.Sheet, at, cell, err, a.Cell)
		}
		if err := f.Close(); err != nil {
			t.Error(err)
		}
	}
}

func read(t *testing.T, path string) []byte {
	t.Helper()
	data, err := os.ReadFile(filepath.FromSlash(path))
	if err != nil {
		t.Fatal(err)
	}
	return data
}

// cells reads all sheets of a workbook, raw, with their merged cells.
func cells(t *testing.T, path string) map[string]any {
	t.Helper()
	f, err := excelize.OpenFile(filepath.FromSlash(path), excelize.Options{RawCellValue: true})
	if err != nil {
		t.Fatal(err)
	}
	defer f.Close()
	all := map[string]any{}
	for _, sheet := range f.GetSheetList() {
		rows, err := f.GetRows(sheet)
		if err != nil {
			t.Fatal(err)
		}
		merged, err := f.GetMergeCells(sheet)
		if err != nil {
			t.Fatal(err)
		}
		all[sheet], all[sheet+" merged"] = rows, merged
	}
	return all
}
