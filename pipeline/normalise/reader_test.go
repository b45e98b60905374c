package normalise

import (
	"math"
	"strconv"
	"strings"
	"testing"

	"wakeledger/pipeline/entry"
	"wakeledger/pipeline/plan"
	"wakeledger/pipeline/record"
	"wakeledger/pipeline/sheet"
	"wakeledger/pipeline/species"
	"wakeledger/pipeline/unit"
)

// log is a small sheet in memory: lines of cells between bars, the header first.
type log struct {
	text     string
	name     string // of the sheet
	workbook bool
	set      Settings
	merged   map[int]map[int]string // by line, from 0
}

// result is what came of one row of it.
type result struct {
	values   map[string]string
	skip     Skip
	problems []record.Problem
}

func (l log) read(t testing.TB) []result {
	t.Helper()
	var rows [][]string
	for _, line := range strings.Split(l.text, "\n") {
		rows = append(rows, strings.Split(line, "|"))
	}
	table, err := recognise.Default()
	if err != nil {
		t.Fatal(err)
	}
	layout, ok := table.Sheet(l.name, rows)
	if !ok {
		t.Fatalf("not recognised: %q", l.text)
	}
	if l.set.Species, err = species.Default(); err != nil {
		t.Fatal(err)
	}
	ev := &Evidence{}
	ev.Headings(layout)
	for _, r := range rows[layout.Header+1:] {
		ev.Observe(layout, &sheet.Row{Cells: r})
	}
	r, err := New(layout, sheet.Info{Name: l.name, Workbook: l.workbook}, record.Pos{File: "log", Sheet: l.name}, ev, l.set)
	if err != nil {
		t.Fatal(err)
	}
	var out []result
	for i, cells := range rows {
		if i > layout.Header {
			values, skip, problems := r.Row(&sheet.Row{Num: i + 1, Cells: cells, Merged: l.merged[i]})
			out = append(out, result{shown(r.Fields(), values), skip, problems})
		}
	}
	return out
}

// shown are an entry's values as text, by column.
func shown(fields []entry.Field, values []entry.Value) map[string]string {
	m := map[string]string{}
	for i, v := range values {
		if !v.Known {
			continue
		}
		switch f := fields[i]; f.Type {
		case entry.Text:
			m[f.Name] = v.Text
		case entry.Real:
			m[f.Name] = strconv.FormatFloat(math.Round(v.Real*1e6)/1e6, 'f', -1, 64)
		case entry.Day:
			m[f.Name] = unit.Date(v.Int).String()
		case entry.Flag:
			m[f.Name] = strconv.FormatBool(v.Int == 1)
		default:
			m[f.Name] = strconv.FormatInt(v.Int, 10)
		}
	}
	return m
}

const fishHead = "Date|Species|Angler|"

// TestCells reads one cell under one heading in a sheet of fish, legs or strikes.
func TestCells(t *testing.T) {
	legs, strikes, lines := "Date|Start|End|", "Date|Time|Outcome|", "Trip|Line|Hooks|"
	fishRow, legRow, strikeRow, lineRow := "2026-06-03|Wahoo|Ansa|", "2026-06-03|06:00|08:00|", "2026-06-03|06:40|lost|", "1|2|single|"
	for _, c := range []struct {
		head, row, heading, cell, column string
		want                             string // the value, or part of the reason after "!"
	}{
		{fishHead, fishRow, "Length (in)", "74", "length_cm", "187.96"}, {fishHead, fishRow, "Length", `6'2"`, "length_cm", "187.96"}, {fishHead, fishRow, "Length", "188cm", "length_cm", "188"},
		{fishHead, fishRow, "Length (in)", "188 cm", "length_cm", "188"}, {fishHead, fishRow, "Length (in)", "74 1/2", "length_cm", "189.23"},
		{fishHead, fishRow, "Length", "74", "length_cm", "!--log-units"}, {fishHead, fishRow, "Length (in)", "big", "length_cm", "!not a length"},
		{fishHead, fishRow, "Length (in)", "400", "length_cm", "!not possible"}, {fishHead, fishRow, "Length (in)", "~74", "length_cm", ""},
		{fishHead, fishRow, "Curved FL (cm)", "120", "length_kind", "CFL"}, {fishHead, fishRow, "LJFL (cm)", "220", "length_kind", "LJFL"}, {fishHead, fishRow, "Tape (cm)", "120", "length_kind", ""},
		{fishHead, fishRow, "Weight", "212#", "scale_kg", "96.161582"}, {fishHead, fishRow, "Dressed weight (kg)", "80", "weight_state", "dressed"}, {fishHead, fishRow, "Weight (gutted, lb)", "80", "weight_state", "gutted"},
		{fishHead, fishRow, "Weight (lb)", "80", "weight_state", ""}, {fishHead, fishRow, "Kept", "n", "kept", "false"}, {fishHead, fishRow, "Released", "x", "kept", "false"}, {fishHead, fishRow, "Kept", "✓", "kept", "true"},
		{fishHead, fishRow, "Kept", "perhaps", "kept", "!yes or a no"}, {fishHead, fishRow, "Certified", "Y", "certified", "true"}, {fishHead, fishRow, "Fight time", "25", "fight_s", "1500"},
		{fishHead, fishRow, "Fight", "1:05", "fight_s", "3900"}, {fishHead, fishRow, "Sandwiches", "2", "extra", `{"Sandwiches":"2"}`}, {fishHead, fishRow, "Girth (cm)", "n/a", "girth_cm", ""},
		{fishHead, fishRow, "Position", "32 15.2N 127 30.6W", "lon", "-127.51"}, {fishHead, fishRow, "Position", "S33 10 E151 30", "lat", "-33.166667"}, {fishHead, fishRow, "GPS", "32.25, -127.5", "lat", "32.25"},
		{fishHead, fishRow, "GPS", "off the point", "lat", "!not a position"}, {fishHead, fishRow, "GPS", "32.25, -227.5", "lon", "!not a longitude"}, {fishHead, fishRow, "Lon W", "127.5", "lon", "-127.5"},
		{legs, legRow, "Speed", "12", "speed_kn", "12"}, {legs, legRow, "Speed", "14 mph", "speed_kn", "12.165667"}, {legs, legRow, "Speed km/h", "23", "speed_kn", "12.419006"}, {legs, legRow, "Speed", "55", "speed_kn", "!not possible"},
		{legs, legRow, "SST", "68", "sea_temp_c", "20"}, {legs, legRow, "SST", "20.5", "sea_temp_c", "20.5"}, {legs, legRow, "SST F", "20 C", "sea_temp_c", "20"}, {legs, legRow, "Lines out", "5", "lines_out", "5"},
		{legs, legRow, "Rods", "2.5", "lines_out", "!whole number"}, {legs, legRow, "Tangle", "none", "tangle", "false"}, {legs, legRow, "Tangle", "2 & 3", "tangled_lines", "2 & 3"}, {legs, legRow, "Zone", "UTC-9", "zone", "UTC-9"},
		{legs, legRow, "Zone", "boat time", "zone", "!zone"}, {legs, legRow, "Notes", "#REF!", "notes", "!spreadsheet error"}, {legs, legRow, "Heading", "270", "heading_deg", "270"},
		{strikes, strikeRow, "Speed", "12.5", "strike_speed_kn", "12.5"}, {strikes, strikeRow, "Fish", "Bluefin", "species_logged", "Bluefin"}, {strikes, strikeRow, "Fish", "Bluefin", "species", ""}, {strikes, strikeRow, "Fish", "YFT", "species", "YFT"},
		{lines, lineRow, "Setback (yd)", "80", "setback_m", "73.152"}, {lines, lineRow, "Setback", "80", "setback_m", "!no unit"}, {lines, lineRow, "Setback ft", "200", "setback_m", "60.96"}, {lines, lineRow, "Lure oz", "8", "lure_weight_g", "226.796185"},
		{lines, lineRow, "Lure weight", "300", "lure_weight_g", "300"}, {lines, lineRow, "Drag #", "18", "drag_kg", "8.164663"}, {lines, lineRow, "Count", "25", "count_s", "25"},
	} {
		got := log{text: c.head + c.heading + "\n" + c.row + c.cell}.read(t)[0]
		reason, bad := strings.CutPrefix(c.want, "!")
		switch {
		case bad && (len(got.problems) != 1 || !strings.Contains(got.problems[0].Reason, reason)):
			t.Errorf("%q under %q: %v, expected a fault with %q", c.cell, c.heading, got, reason)
		case !bad && (len(got.problems) > 0 || got.values[c.column] != c.want):
			t.Errorf("%q under %q: %s is %q, expected %q %v", c.cell, c.heading, c.column, got.values[c.column], c.want, got.problems)
		}
	}
}

// TestFormulaWithoutValue holds that a formula that was never calculated is not
// taken for its text.
func TestFormulaWithoutValue(t *testing.T) {
	got := log{text: "Date|Start|End\n46000|0.25|=B2+C2/24", workbook: true}.read(t)[0]
	if len(got.problems) == 0 || !strings.Contains(got.problems[0].Reason, "formula") {
		t.Errorf("%v", got)
	}
}

func TestTimes(t *testing.T) {
	for _, c := range []struct{ date, start, end, want string }{ // want: date, start, end
		{"2026-06-03", "06:10", "16:40", "2026-06-03 22200 60000"}, {"2026-06-03", "0610", "4:40 pm", "2026-06-03 22200 60000"},
		{"2026-06-03", "22:30", "01:15", "2026-06-03 81000 90900"}, {"2026-06-03", "20:00", "24:00", "2026-06-03 72000 86400"},
		{"2026-06-03", "22:30", "2026-06-04 01:15", "2026-06-03 81000 90900"}, {"", "2026-06-03 22:30", "01:15", "2026-06-03 81000 90900"},
		{"", "2026-06-03 22:30", "2026-06-04 01:15", "2026-06-03 81000 90900"}, {"2026-06-03", "2026-06-04 00:30", "02:00", "2026-06-03 88200 93600"},
	} {
		got := log{text: "Date|Start|End|Leg\n" + c.date + "|" + c.start + "|" + c.end + "|1"}.read(t)[0]
		v := got.values
		if s := v["date"] + " " + v["start_s"] + " " + v["end_s"]; s != c.want {
			t.Errorf("%s %s to %s: %s %v, expected %s", c.date, c.start, c.end, s, got.problems, c.want)
		}
	}
}

func TestSerials(t *testing.T) {
	// 46000 is 2025-12-09 in the 1900 system; 0.25 is 06:00 and 1.0625 is 25:30.
	got := log{text: "Date|Start|End\n46000|0.25|1.0625", workbook: true}.read(t)[0].values
	if got["date"] != "2025-12-09" || got["start_s"] != "21600" || got["end_s"] != "91800" {
		t.Errorf("%v", got)
	}
}

func TestTimesThatCannotBe(t *testing.T) {
	for _, c := range []struct{ row, reason string }{
		{"2026-06-03|06:10|06:10", "no length"}, {"2026-06-03|2026-06-03 09:00|2026-06-03 08:00", "before the start"}, {"2026-06-03|06:00|2026-06-05 08:00", "more than a day"},
		{"2026-06-03|06:10|", "a start and an end"}, {"2026-06-31|06:10|07:00", "no such day"}, {"2026-06-03|6|07:00", "date or time"}, {"06:00|06:10|07:00", "a date was expected"},
		{"2026-06-03|2026-06-03|07:00", "a time of day was expected"}, {"2026-06-03|06:00Z|07:00", "time zone"}, {"1850-06-03|06:00|07:00", "year"},
	} {
		got := log{text: "Date|Start|End\n2026-06-02|06:00|07:00\n" + c.row}.read(t)[1]
		if len(got.problems) == 0 || !strings.Contains(got.problems[0].Reason, c.reason) {
			t.Errorf("%s: %v, expected %q", c.row, got.problems, c.reason)
		}
	}
}

func TestOrderOfDayAndMonth(t *testing.T) {
	for _, c := range []struct {
		dates string
		set   unit.Order
		want  string
	}{
		{"03/04/2026", unit.OrderUnknown, "!--dates day-first or --dates month-first"}, {"03/04/2026", unit.DayFirst, "2026-04-03"}, {"03/04/2026", unit.MonthFirst, "2026-03-04"},
		{"03/04/2026 25/04/2026", unit.OrderUnknown, "2026-04-03"}, {"03/04/2026 04/25/2026", unit.OrderUnknown, "2026-03-04"}, {"03/04/2026 25/04/2026 04/25/2026", unit.OrderUnknown, "!--dates"},
		{"04/04/2026", unit.OrderUnknown, "2026-04-04"}, {"03/04/2026 04/25/2026", unit.DayFirst, "2026-04-03"},
	} {
		text := "Date|Start|End"
		for _, d := range strings.Fields(c.dates) {
			text += "\n" + d + "|06:00|08:00"
		}
		got := log{text: text, set: Settings{Order: c.set}}.read(t)[0]
		reason, bad := strings.CutPrefix(c.want, "!")
		if bad && (len(got.problems) != 1 || !strings.Contains(got.problems[0].Reason, reason)) || !bad && got.values["date"] != c.want {
			t.Errorf("%s: %v %v, expected %s", c.dates, got.values, got.problems, c.want)
		}
	}
}

// TestSystem holds that a unit somewhere settles cells without one, unless the
// file is mixed, and that the flag stands above both.
func TestSystem(t *testing.T) {
	for _, c := range []struct{ heading, units, want string }{
		{"Girth (in)", "", "157.48"}, {"Girth (cm)", "", "62"}, {"Girth", "", "!--log-units"}, {"Girth", "us", "157.48"}, {"Girth", "metric", "62"}, {"Girth (cm)", "us", "157.48"},
	} {
		got := log{text: "Date|Species|Length|" + c.heading + "\n2026-06-03|Wahoo|62|", set: Settings{Units: c.units}}.read(t)[0]
		reason, bad := strings.CutPrefix(c.want, "!")
		if bad && (len(got.problems) != 1 || !strings.Contains(got.problems[0].Reason, reason)) || !bad && got.values["length_cm"] != c.want {
			t.Errorf("length beside %q, units %q: %v, expected %s", c.heading, c.units, got, c.want)
		}
	}
}

func TestCountsNest(t *testing.T) {
	for _, c := range []struct{ row, reason string }{
		{"5|4|2|1|1|1", ""}, {"2|||||", ""}, {"|2|1|||", ""}, {"||1|1||", ""}, {"0|0|0|0|0|0", ""}, {"y|y|n|y||", ""},
		{"3|4||||", "4 hooked or missed"}, {"5|2|2|1||", "2 hooked, but 3"}, {"2|||||3", "3 hooked or missed"}, {"1||1|1||", "1 strikes, but 2"}, {"2|1|1||1|", "1 hooked, but 2"},
		{"-1|||||", "not a count"}, {"1.5|||||", "not a count"}, {"300|||||", "not a count"}, {"lots|||||", "not a count"},
	} {
		got := log{text: "Date|Start|End|Line|Strikes|Hooked|Landed|Released|Lost|Missed\n2026-06-03|06:00|08:00|1|" + c.row}.read(t)[0]
		if c.reason == "" && len(got.problems) > 0 || c.reason != "" && (len(got.problems) != 1 || !strings.Contains(got.problems[0].Reason, c.reason)) {
			t.Errorf("%s: %v, expected %q", c.row, got.problems, c.reason)
		}
	}
}

// TestClosedLists holds that every spelling of words.csv is read as it means.
func TestClosedLists(t *testing.T) {
	w, err := loadWords()
	if err != nil {
		t.Fatal(err)
	}
	columns := map[string]struct{ heading, column string }{
		"outcome": {"Outcome", "outcome"}, "lengthkind": {"Measured as", "length_kind"}, "weightstate": {"Weight state", "weight_state"},
	}
	for list, c := range columns {
		if len(w[list]) == 0 {
			t.Errorf("%s: no words", list)
		}
		for word, means := range w[list] {
			for _, cell := range []string{word, strings.ToUpper(word), " " + strings.ReplaceAll(word, " ", "-") + "."} {
				got := log{text: "Date|Species|Length (cm)|" + c.heading + "\n2026-06-03|Wahoo|120|" + cell, name: "fish"}.read(t)[0]
				if got.values[c.column] != means {
					t.Errorf("%s %q: %q %v, expected %q", list, cell, got.values[c.column], got.problems, means)
				}
			}
		}
		got := log{text: "Date|Species|Length (cm)|" + c.heading + "\n2026-06-03|Wahoo|120|who knows", name: "fish"}.read(t)[0]
		if len(got.problems) != 1 || !strings.Contains(got.problems[0].Reason, "not understood") {
			t.Errorf("%s: %v", list, got)
		}
	}
}

// TestBlankAndTotals holds that the shortcuts by first letter pass no word of
// the lists over.
func TestBlankAndTotals(t *testing.T) {
	w, err := loadWords()
	if err != nil {
		t.Fatal(err)
	}
	for word := range w["blank"] {
		if !w.blank(word) {
			t.Errorf("%q is not blank", word)
		}
	}
	for word := range w["total"] {
		got := log{text: "Date|Start|End|Lines\n2026-06-03|06:00|08:00|4\n" + word + "|||4"}.read(t)[1]
		if got.skip != Totals {
			t.Errorf("%q: %v", word, got)
		}
	}
	for word := range w["ditto"] {
		got := log{text: "Date|Start|End|Area\n2026-06-03|06:00|08:00|the Shelf\n2026-06-03|09:00|10:00|" + word}.read(t)[1]
		if got.values["area"] != "the Shelf" {
			t.Errorf("%q: %v", word, got)
		}
	}
}
