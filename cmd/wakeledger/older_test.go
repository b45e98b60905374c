package main

import (
	"bytes"
	"compress/gzip"
	"encoding/json"
	"fmt"
	"io"
	"os"
	"path/filepath"
	"reflect"
	"strings"
	"testing"
)

// older is a folder of what earlier versions wrote, with their answers; see testdata/README.md.
const older = "../../testdata/older"

// A season file of an earlier version gives the answers that it gave then: asked as it is,
// which changes nothing, and after it was written, which keeps a copy where the schema has
// moved on since.
func TestSeasonFilesOfEarlierVersions(t *testing.T) {
	all, err := filepath.Glob(filepath.Join(older, "season-*.duckdb.gz"))
	if err != nil || len(all) == 0 {
		t.Fatalf("%d season files, %v", len(all), err)
	}
	for _, packed := range all {
		dir := t.TempDir()
		file := filepath.Join(dir, "season.duckdb")
		was := unpacked(t, packed)
		if err := os.WriteFile(file, was, 0o644); err != nil {
			t.Fatal(err)
		}
		sameAsThen(t, dir)
		if now, err := os.ReadFile(file); err != nil || !bytes.Equal(now, was) {
			t.Errorf("%s: asking changed it, %v", packed, err)
		}
		wakeledger(t, dir, "logs", "boat", "--take-back", "Tansy Reach")
		wakeledger(t, dir, "logs", "boat", "Tansy Reach", "Sea Wren")
		sameAsThen(t, dir)
		copies, err := filepath.Glob(filepath.Join(dir, "season, as it was *.duckdb"))
		if err != nil {
			t.Fatal(err)
		}
		if schemaVersion(t, packed) < len(schemaFiles(t)) != (len(copies) == 1) {
			t.Errorf("%s: copies kept: %v", packed, copies)
		}
		for _, c := range copies {
			if b, err := os.ReadFile(c); err != nil || !bytes.Equal(b, was) {
				t.Errorf("%s is not what there was, %v", c, err)
			}
		}
	}
}

func unpacked(t *testing.T, packed string) []byte {
	t.Helper()
	b, err := os.ReadFile(packed)
	if err != nil {
		t.Fatal(err)
	}
	r, err := gzip.NewReader(bytes.NewReader(b))
	if err != nil {
		t.Fatal(err)
	}
	if b, err = io.ReadAll(r); err != nil {
		t.Fatal(err)
	}
	return b
}

// schemaVersion is in the name of a season file: how many steps of the schema made it.
func schemaVersion(t *testing.T, packed string) (n int) {
	t.Helper()
	if _, err := fmt.Sscanf(filepath.Base(packed), "season-%d.duckdb.gz", &n); err != nil {
		t.Fatal(err)
	}
	return n
}

func schemaFiles(t *testing.T) []string {
	t.Helper()
	files, err := filepath.Glob("../../pipeline/store/schema/*.sql")
	if err != nil || len(files) == 0 {
		t.Fatalf("the schema: %v, %v", files, err)
	}
	return files
}

// sameAsThen holds the answers of the season file in dir against those that are kept. More
// columns may have come since.
func sameAsThen(t *testing.T, dir string) {
	t.Helper()
	kept, err := filepath.Glob(filepath.Join(older, "*.json"))
	if err != nil || len(kept) < 5 {
		t.Fatalf("kept answers: %v, %v", kept, err)
	}
	for _, k := range kept {
		question := strings.TrimSuffix(filepath.Base(k), ".json")
		b, err := os.ReadFile(k)
		if err != nil {
			t.Fatal(err)
		}
		then, now := rowsOf(t, b), rowsOf(t, wakeledger(t, dir, "ask", question, "--format", "json"))
		if len(then) == 0 || len(now) != len(then) {
			t.Errorf("ask %s: %d rows, then %d", question, len(now), len(then))
			continue
		}
		for i, row := range then {
			for column, want := range row {
				if got := now[i][column]; !reflect.DeepEqual(got, want) {
					t.Errorf("ask %s, row %d, %s: %v, then %v", question, i+1, column, got, want)
				}
			}
		}
	}
}

func rowsOf(t *testing.T, text []byte) (rows []map[string]any) {
	t.Helper()
	if err := json.Unmarshal(text, &rows); err != nil {
		t.Fatal(err)
	}
	return rows
}

// A club summary of an earlier version is read as it was then.
func TestClubSummariesOfEarlierVersions(t *testing.T) {
	all, err := filepath.Glob(filepath.Join(older, "club-*.zip"))
	if err != nil || len(all) == 0 {
		t.Fatalf("%d summaries, %v", len(all), err)
	}
	for _, summary := range all {
		whole, err := filepath.Abs(summary)
		if err != nil {
			t.Fatal(err)
		}
		dir := t.TempDir()
		wakeledger(t, dir, "report", "club", whole, "--out", "club.html")
		page, err := os.ReadFile(filepath.Join(dir, "club.html"))
		if err != nil || !bytes.Contains(page, []byte("1 boat: 16 trips")) {
			t.Errorf("%s: the page tells of no 16 trips, %v", summary, err)
		}
	}
}
