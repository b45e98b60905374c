package export

import (
	"bytes"
	"encoding/json"
	"fmt"
	"strings"
	"testing"

	"github.com/xuri/excelize/v2"
)

type row struct {
	Level string   `json:"level"`
	Date  *string  `json:"date"`
	Hours float64  `json:"line_hours"`
	Rate  *float64 `json:"rate"`
	RateL *float64 `json:"rate_lo"`
	RateH *float64 `json:"rate_hi"`
	N     int64    `json:"strikes"`
	Kept  *bool    `json:"kept"`
}

func p[T any](v T) *T { return &v }

func made(t *testing.T, sheets ...Sheet) *excelize.File {
	t.Helper()
	var buf bytes.Buffer
	if err := Workbook(&buf, sheets, []string{"=note"}); err != nil {
		t.Fatal(err)
	}
	f, err := excelize.OpenReader(&buf)
	if err != nil {
		t.Fatal(err)
	}
	t.Cleanup(func() { f.Close() })
	return f
}

// Texts by which a spreadsheet is made to run something; invented, after OWASP's
// page on CSV injection.
var formulas = []string{`=1+1`, `+1`, `-1`, `@SUM(1)`, "\t=1", "\r=1", `=cmd|'/C calc'!A0`, `＝1+1`,
	`=HYPERLINK("http://example.org","x")`}

func TestWorkbookWritesTextAsText(t *testing.T) {
	var rows []row
	for _, text := range formulas {
		rows = append(rows, row{Level: text, Date: p(text)})
	}
	f := made(t, Sheet{Name: "s", About: "=about", Rows: rows})
	for _, sheet := range []string{"about", "s"} {
		table, err := f.GetRows(sheet)
		if err != nil {
			t.Fatal(err)
		}
		for r := range table {
			for c := range table[r] {
				at, err := excelize.CoordinatesToCellName(c+1, r+1)
				if err != nil {
					t.Fatal(err)
				}
				if formula, err := f.GetCellFormula(sheet, at); err != nil || formula != "" {
					t.Errorf("%s %s is the formula %q, %v", sheet, at, formula, err)
				}
			}
		}
	}
	for i, text := range formulas {
		for _, column := range []string{"A", "B"} {
			at := fmt.Sprint(column, i+2)
			got, err := f.GetCellValue("s", at)
			kind, kindErr := f.GetCellType("s", at)
			if err != nil || kindErr != nil || kind != excelize.CellTypeSharedString ||
				strings.TrimSpace(got) != strings.TrimSpace(text) {
				t.Errorf("%s: %q of type %v, want the text %q", at, got, kind, text)
			}
		}
	}
}

func TestWorkbookFormats(t *testing.T) {
	f := made(t, Sheet{Name: "rates", About: "a level",
		Rows: []row{{Level: "[8, 10)", Date: p("2026-07-04"), Hours: 148.25, Rate: p(0.2093), RateL: p(0.142),
			RateH: p(0.297), N: 1031, Kept: p(true)}, {Level: "b"}},
		Chart: &Chart{Title: "Rates", Labels: "level", Values: []string{"rate_hi", "rate_lo", "rate"},
			Interval: true, Axis: "per line-hour"}},
		Sheet{Name: "bars", About: "the same", Rows: []row{{Level: "a", Hours: 2}},
			Chart: &Chart{Title: "Hours", Labels: "level", Values: []string{"line_hours"}}},
		Sheet{Name: "empty", About: "no rows", Rows: []row{}, Chart: &Chart{Labels: "level", Values: []string{"rate"}}})
	// 4 July 2026 is day 46207 of the 1900 system: 46023 is 1 January 2026, which is
	// 184 days before.
	for at, want := range map[string][2]string{"B2": {"2026-07-04", "46207"}, "C2": {"148.3", "148.25"},
		"D2": {"0.209", "0.2093"}, "G2": {"1031", "1031"}, "D3": {"", ""}, "H2": {"TRUE", "1"}} {
		shown, err := f.GetCellValue("rates", at)
		raw, rawErr := f.GetCellValue("rates", at, excelize.Options{RawCellValue: true})
		if err != nil || rawErr != nil || shown != want[0] || raw != want[1] {
			t.Errorf("%s shows %q and holds %q, want %q", at, shown, raw, want)
		}
	}
	for _, sheet := range []string{"about", "rates", "empty"} {
		if panes, err := f.GetPanes(sheet); err != nil || !panes.Freeze || panes.YSplit != 1 {
			t.Errorf("sheet %s: header not frozen: %+v, %v", sheet, panes, err)
		}
	}
	charts := 0
	f.Pkg.Range(func(name, part any) bool {
		if strings.HasPrefix(name.(string), "xl/charts/chart") {
			charts++
			if xml := string(part.([]byte)); !strings.Contains(xml, "stockChart") &&
				!strings.Contains(xml, "barChart") || !strings.Contains(xml, "!$A$2:") {
				t.Errorf("%s is no chart of the sheet's cells: %.200s", name, xml)
			}
		}
		return true
	})
	if charts != 2 {
		t.Errorf("%d charts, want 2: none on a sheet without rows", charts)
	}
}

func TestWorkbookRefuses(t *testing.T) {
	for name, s := range map[string]Sheet{
		"no slice":      {Name: "s", Rows: row{}},
		"no column":     {Name: "s", Rows: []row{{}}, Chart: &Chart{Labels: "level", Values: []string{"nowhere"}}},
		"too long":      {Name: strings.Repeat("s", 40), Rows: []row{{}}},
		"a bad letter:": {Name: "a:b", Rows: []row{{}}},
	} {
		if err := Workbook(&bytes.Buffer{}, []Sheet{s}, nil); err == nil {
			t.Errorf("%s: no error", name)
		}
	}
}

func TestPackage(t *testing.T) {
	var buf bytes.Buffer
	tables := []Table{
		{Name: "trip", Paths: []string{"trip.csv"}, Columns: []Column{{"trip_id", "INTEGER"},
			{"start_at", "TIMESTAMP"}}},
		{Name: "leg_light", Paths: []string{"a.csv", "b.csv"},
			Columns: []Column{{"trip_id", "INTEGER"}, {"speed_kn", "DOUBLE"}, {"what", "BLOB"}}},
	}
	if err := Package(&buf, "csv", tables); err != nil {
		t.Fatal(err)
	}
	var got descriptor
	if err := json.Unmarshal(buf.Bytes(), &got); err != nil {
		t.Fatal(err)
	}
	trip, light := got.Resources[0], got.Resources[1]
	if trip.Path != "trip.csv" || trip.Schema.Fields[1].Type != "datetime" || trip.Schema.PrimaryKey[0] != "trip_id" ||
		trip.Schema.ForeignKeys != nil {
		t.Errorf("trip: %+v", trip)
	}
	if light.Name != "leg-light" || light.Schema.Fields[1].Unit != "kn" || light.Schema.Fields[2].Type != "any" ||
		light.Schema.ForeignKeys[0].Reference.Resource != "trip" {
		t.Errorf("leg_light: %+v", light)
	}
	if missing, err := Missing(tables); err != nil || len(missing) != 1 || missing[0] != "leg_light.what" {
		t.Errorf("missing %q, %v", missing, err)
	}
}
