package main

import (
	"archive/zip"
	"context"
	"encoding/csv"
	"encoding/json"
	"fmt"
	"os"
	"os/exec"
	"path/filepath"
	"strings"
	"testing"

	"wakeledger/pipeline"
	"wakeledger/reports/export"
	"wakeledger/reports/gather"
)

// hostileBoat is a boat's name that would leave the folder, or run in a sheet.
const hostileBoat = `=../../x y/ü%1`

// twoBoats is a season file of two boats and two years, with texts that a
// spreadsheet would run.
func twoBoats(t *testing.T) string {
	t.Helper()
	dir := t.TempDir()
	text := "Boat,Trip,Leg,Date,Start,End,Speed (kts),Lines out,Notes\n"
	for i, note := range []string{`=1+1`, `'=1`, `-2`, `plain, with a comma`, "", `@x`} {
		boat := []string{"Grey Heron", hostileBoat}[i%2]
		text += fmt.Sprintf("%s,T%d,1,202%d-07-%02d,07:00,09:00,-9,2,\"%s\"\n", boat, i, 5+i%2, i+1, note)
	}
	text = strings.ReplaceAll(text, "-9,2", "9,2")
	name := filepath.Join(dir, "legs.csv")
	if err := os.WriteFile(name, []byte(text), 0o600); err != nil {
		t.Fatal(err)
	}
	db := filepath.Join(dir, "s.duckdb")
	tell(t, "--db", db, "load", "--zone", "UTC-9", name)
	return db
}

// one is the single value that a query answers with.
func one(t *testing.T, db, query string) string {
	t.Helper()
	s, err := pipeline.Open(context.Background(), db, pipeline.Config{})
	if err != nil {
		t.Fatal(err)
	}
	defer s.DB.Close()
	got := ""
	eachValue(t, s, query, func(_ string, v any) { got += fmt.Sprint(v) + " " })
	return strings.TrimSpace(got)
}

func TestExportParquetByBoatAndSeason(t *testing.T) {
	db := twoBoats(t)
	region := t.TempDir()
	tell(t, "--db", db, "export", filepath.Join(region, "one"))
	tell(t, "--db", db, "export", filepath.Join(region, "two"))
	legs := "read_parquet('" + region + "/*/leg/*/*/*.parquet', hive_partitioning = true)"
	if got := one(t, "", "SELECT count(*) FROM "+legs); got != "12" {
		t.Errorf("%s legs of two exports of 6, want 12", got)
	}
	if got := one(t, "", "SELECT DISTINCT boat, season FROM "+legs+" ORDER BY ALL"); got != hostileBoat+
		" 2026 Grey Heron 2025" {
		t.Errorf("boats and seasons %q", got)
	}
	if got, want := one(t, "", "SELECT notes FROM "+legs+" WHERE notes LIKE '%=%' GROUP BY 1 ORDER BY 1"),
		"'=1 =1+1"; got != want {
		t.Errorf("notes %q, want %q: Parquet holds texts as they are", got, want)
	}
	entries, err := os.ReadDir(region)
	if err != nil || len(entries) != 2 {
		t.Errorf("%d folders where two were written: a boat's name left its place", len(entries))
	}
}

func TestExportCSVAndDictionary(t *testing.T) {
	db := twoBoats(t)
	dir := filepath.Join(t.TempDir(), "csv")
	tell(t, "--db", db, "export", "--format", "csv", dir)
	b, err := os.ReadFile(filepath.Join(dir, "datapackage.json"))
	if err != nil {
		t.Fatal(err)
	}
	var p struct {
		Resources []struct {
			Name, Path string
			Schema     struct {
				Fields []struct{ Name, Type, Description string }
			}
		}
	}
	if err := json.Unmarshal(b, &p); err != nil {
		t.Fatal(err)
	}
	if len(p.Resources) < 15 {
		t.Fatalf("%d tables in the dictionary", len(p.Resources))
	}
	for _, r := range p.Resources {
		f, err := os.Open(filepath.Join(dir, r.Path))
		if err != nil {
			t.Fatal(err)
		}
		rows, err := csv.NewReader(f).ReadAll()
		f.Close()
		if err != nil {
			t.Fatalf("%s: %v", r.Path, err)
		}
		for i, field := range r.Schema.Fields {
			if rows[0][i] != field.Name || field.Description == "" || field.Type == "any" {
				t.Errorf("%s, column %d is %q, the dictionary says %+v", r.Path, i+1, rows[0][i], field)
			}
		}
		for _, row := range rows[1:] {
			for i, cell := range row {
				if r.Schema.Fields[i].Type == "string" && strings.ContainsAny(cell[:min(1, len(cell))], "=+-@\t\r\n") {
					t.Errorf("%s, %s: %q would run in a spreadsheet", r.Path, rows[0][i], cell)
				}
			}
		}
	}
	// Numbers below zero stay numbers, and one ' taken off gives the text back.
	want := "''=1 '-2 '=1+1 '@x plain, with a comma"
	if got := one(t, "", "SELECT notes FROM read_csv('"+dir+
		"/leg.csv', all_varchar = true, quote = '\"') WHERE notes IS NOT NULL ORDER BY 1"); got != want {
		t.Errorf("notes %q, want %q", got, want)
	}
}

// standard is what the modules of the standard say of a descriptor.
type standard struct {
	Faults                   []string
	Tables, Rows, References int
}

// validate holds a descriptor, and the rows of its CSV tables, against the published
// standard (Frictionless Data Package and Table Schema, version 1), by the
// general-purpose modules datapackage and tableschema (npm, MIT). The environment
// variable DATAPACKAGE_JS names the folder of the module datapackage.
func validate(t *testing.T, descriptor string) (s standard) {
	t.Helper()
	module, inCI := os.Getenv("DATAPACKAGE_JS"), os.Getenv("CI") != ""
	node, err := exec.LookPath("node")
	switch {
	case module == "" && inCI:
		t.Fatal("CI is set, but DATAPACKAGE_JS names no module")
	case err != nil && inCI:
		t.Fatal("CI is set, but there is no node to run the modules of the standard: ", err)
	case module == "" || err != nil:
		t.Skip("SKIPPED, exports not held against their standard: DATAPACKAGE_JS names no module, or there is no " +
			"node to run it")
	}
	out, err := exec.Command(node, "../../reports/export/testdata/validate.js", module, descriptor).CombinedOutput()
	if err != nil {
		t.Fatalf("%v: %s", err, out)
	}
	if err := json.Unmarshal(out, &s); err != nil {
		t.Fatalf("%v: %s", err, out)
	}
	return s
}

// exportedDemo is the demo's season file, tracks included, as an export of a format.
func exportedDemo(t *testing.T, format string) string {
	t.Helper()
	dir := filepath.Join(t.TempDir(), "out")
	tell(t, "--db", demoFile(t), "export", "--format", format, dir)
	return dir
}

// What export writes is valid by its standard: the descriptors, every row of the CSV
// by its schema, and every reference to another table.
func TestExportIsValidByItsStandard(t *testing.T) {
	if got := validate(t, filepath.Join(exportedDemo(t, "parquet"), "datapackage.json")); len(got.Faults) > 0 ||
		got.Tables < 20 {
		t.Errorf("parquet: %+v", got)
	}
	got := validate(t, filepath.Join(exportedDemo(t, "csv"), "datapackage.json"))
	if len(got.Faults) > 0 || got.Tables < 20 || got.Rows < 5000 || got.References < 20 {
		t.Errorf("csv: %+v", got)
	}
	t.Logf("csv: %d tables, %d rows, %d references", got.Tables, got.Rows, got.References)
	dir := filepath.Join(t.TempDir(), "two")
	tell(t, "--db", twoBoats(t), "export", "--format", "csv", dir)
	if got := validate(t, filepath.Join(dir, "datapackage.json")); len(got.Faults) > 0 || got.Rows < 12 {
		t.Errorf("two boats: %+v", got)
	}
	// the same check sees what is wrong
	for name, edit := range map[string][3]string{
		"a type that there is not": {"datapackage.json", `"type": "integer"`, `"type": "whole"`},
		"a name that may not be":   {"datapackage.json", `"name": "leg"`, `"name": "The Legs"`},
		"a cell of another type":   {"leg.csv", ",2025-07-01T07:00:00,", ",this morning,"},
		"a trip that there is not": {"leg.csv", "\n1,1,1,2025", "\n1,99999,1,2025"},
	} {
		file := filepath.Join(dir, edit[0])
		was, err := os.ReadFile(file)
		if err != nil {
			t.Fatal(err)
		}
		bad := strings.Replace(string(was), edit[1], edit[2], 1)
		if bad == string(was) {
			t.Errorf("%s: nothing to edit", name)
		}
		if err := os.WriteFile(file, []byte(bad), 0o600); err != nil {
			t.Fatal(err)
		}
		if got := validate(t, filepath.Join(dir, "datapackage.json")); len(got.Faults) == 0 {
			t.Errorf("%s: no fault is found", name)
		}
		if err := os.WriteFile(file, was, 0o600); err != nil {
			t.Fatal(err)
		}
	}
}

// So is the manifest of what a boat shares.
func TestClubManifestIsValidByItsStandard(t *testing.T) {
	dir := t.TempDir()
	file := filepath.Join(dir, "a.zip")
	tell(t, "--db", telltale(t, 12, "Somebody"), "export", "club", "--id", "q7", file)
	z, err := zip.OpenReader(file)
	if err != nil {
		t.Fatal(err)
	}
	defer z.Close()
	if err := os.CopyFS(dir, z); err != nil {
		t.Fatal(err)
	}
	if got := validate(t, filepath.Join(dir, "datapackage.json")); len(got.Faults) > 0 || got.Tables != 8 {
		t.Errorf("%+v", got)
	}
}

// Rows of the logs and of tracks are parted as those of trips are, and none is lost.
func TestExportPartsEntriesAndTracks(t *testing.T) {
	dir := exportedDemo(t, "parquet")
	for _, table := range []string{"entry", "fix", "track", "track_piece"} {
		all := one(t, "", "SELECT season, boat, count(*) FROM read_parquet('"+dir+"/"+table+
			"/*/*/*.parquet', hive_partitioning = true) GROUP BY ALL ORDER BY ALL")
		t.Logf("%s: %s", table, all)
		if strings.Contains(all, "unknown") || !strings.Contains(all, "2026 Tacking Stitch") {
			t.Errorf("%s is parted as %s", table, all)
		}
	}
	entries := one(t, "", "SELECT count(*) FROM read_parquet('"+dir+"/entry/*/*/*.parquet', hive_partitioning = true)")
	if kept := one(t, "", "SELECT sum(rows_kept)::BIGINT FROM read_parquet('"+dir+"/log.parquet') WHERE log_id NOT "+
		"IN (SELECT log_id FROM read_parquet('"+dir+"/track/*/*/*.parquet'))"); entries != kept {
		t.Errorf("%s entries of %s rows kept", entries, kept)
	}
	other := one(t, "", `SELECT count(*) FROM read_parquet('`+dir+`/entry/*/*/*.parquet', hive_partitioning = true) e
		JOIN read_parquet('`+dir+`/leg/*/*/*.parquet', hive_partitioning = true) l USING (log_id, sheet, "row") WHERE e.season != l.season OR e.boat != l.boat`)
	if other != "0" {
		t.Errorf("%s entries are in another part than their leg", other)
	}
}

// Every column of the season file stands in the data dictionary.
func TestDictionaryIsWhole(t *testing.T) {
	s, err := pipeline.Open(context.Background(), "", pipeline.Config{})
	if err != nil {
		t.Fatal(err)
	}
	defer s.DB.Close()
	tables, err := gather.Exported(context.Background(), s.DB)
	if err != nil {
		t.Fatal(err)
	}
	if len(tables) < 15 {
		t.Fatalf("%d tables", len(tables))
	}
	var all []export.Table
	for _, table := range tables {
		e := export.Table{Name: table.Name}
		for _, c := range table.Columns {
			e.Columns = append(e.Columns, export.Column(c))
		}
		all = append(all, e)
	}
	missing, err := export.Missing(all)
	if err != nil || len(missing) > 0 {
		t.Errorf("reports/export/fields.csv lacks %q, %v", missing, err)
	}
}

func TestExportRefuses(t *testing.T) {
	db := twoBoats(t)
	full := t.TempDir()
	if err := os.WriteFile(filepath.Join(full, "mine.txt"), []byte("mine"), 0o600); err != nil {
		t.Fatal(err)
	}
	for _, c := range []struct {
		code int
		args []string
	}{
		{failed, []string{"export", full}},
		{wrongUsage, []string{"export", "--format", "xml", filepath.Join(full, "x")}},
		{wrongUsage, []string{"export"}},
		{wrongUsage, []string{"export", "club", "a.zip"}},                                          // two boats
		{wrongUsage, []string{"export", "club", "--boat", "Grey Heron", "a.zip"}},                  // no id
		{wrongUsage, []string{"export", "club", "--boat", "Grey Heron", "--id", "../x", "a.zip"}},  // no id
		{failed, []string{"export", "club", "--boat", "Nobody", "--id", "x", "a.zip"}},             // no such boat
		{failed, []string{"report", "club", db}},                                                   // no bundle
		{failed, []string{"report", "club", filepath.Join(full, "mine.txt")}},                      // no bundle
		{failed, []string{"report", "club", "--db", filepath.Join(full, "none.duckdb")}},           // no season file
		{wrongUsage, []string{"report", "club", "--units", "stone", filepath.Join(full, "a.zip")}}, // no unit
	} {
		var out, notes strings.Builder
		if got := run(context.Background(), append([]string{"--db", db}, c.args...), &out, &notes); got != c.code {
			t.Errorf("%v: exit code %d, want %d: %s", c.args, got, c.code, notes.String())
		}
	}
	if b, err := os.ReadFile(filepath.Join(full, "mine.txt")); err != nil || string(b) != "mine" {
		t.Error("a file in the folder was touched")
	}
}

func TestExportWorkbook(t *testing.T) {
	dir := filepath.Join(t.TempDir(), "book")
	db := twoBoats(t)
	tell(t, "--db", db, "export", "--format", "workbook", dir)
	info, err := os.Stat(filepath.Join(dir, "season.xlsx"))
	if err != nil || info.Size() < 5000 {
		t.Fatalf("workbook: %v, %v", info, err)
	}
	var out, notes strings.Builder
	if code := run(context.Background(), []string{"--db", db, "export", "--format", "workbook", dir},
		&out, &notes); code != failed {
		t.Errorf("over a workbook that is there: exit code %d", code)
	}
}
