package normalise

import (
	"math"
	"reflect"
	"slices"
	"strconv"
	"strings"
	"testing"
	"time"

	"wakeledger/pipeline/entry"
	"wakeledger/pipeline/plan"
	"wakeledger/pipeline/record"
	"wakeledger/pipeline/sheet"
	"wakeledger/pipeline/unit"
	"wakeledger/testdata/memory"
)

// log is a small sheet in memory: lines of cells between bars, the header first.
type log struct {
	text     string
	name     string // of the sheet
	workbook bool
	class    []sheet.Class // of its columns, in a workbook
	set      Settings
	merged   map[int]map[int]string // by line, from 0
}

// result is what came of one row of it.
type result struct {
	values   map[string]string
	skip     Skip
	problems []record.Problem
	sides    int // entries beside the row's own
}

// read gives the log's rows below its heading to a reader as they come, as those of a
// log are that is too long to be looked at as a whole: totals and headings among them. Read again with no
// memory of the cells above, it says the same.
func (l log) read(t testing.TB) []result {
	t.Helper()
	out := l.readAs(t, false)
	if again := l.readAs(t, true); !reflect.DeepEqual(out, again) {
		for i := range out {
			if !reflect.DeepEqual(out[i], again[i]) {
				t.Errorf("row %d: %+v with the cells above in mind, %+v without", i+1, out[i], again[i])
			}
		}
	}
	return out
}

func (l log) readAs(t testing.TB, forgetful bool) []result {
	t.Helper()
	s := memory.Lines(l.name, l.text)
	s.Info.Workbook = l.workbook
	for i := range s.All {
		s.All[i].Merged = l.merged[i]
		s.All[i].Class = l.class
	}
	x, u := only(t, s)
	r, err := x.Reader(u, l.set)
	if err != nil {
		t.Fatal(err)
	}
	r.forgetful = forgetful
	var out []result
	for i := range s.All {
		if s.All[i].Num > u.Plan.Row {
			values, skip, problems := r.Row(&s.All[i])
			out = append(out, result{shown(r.Fields(), values), skip, problems, len(r.Sides())})
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

// last is the result of a log's last row.
func (l log) last(t testing.TB) result {
	t.Helper()
	all := l.read(t)
	return all[len(all)-1]
}

// under is a row under a heading and several rows in order: what a column means is
// inferred from all of its cells, and one odd cell changes nothing of that.
func under(head, good, row string) string {
	return head + "\n" + strings.Repeat(good+"\n", 8) + row
}

// told tells whether one of a row's problems gives a reason.
func (r result) told(reason string) bool {
	return slices.ContainsFunc(r.problems, func(p record.Problem) bool { return strings.Contains(p.Reason, reason) })
}

const fishHead = "Date|Species|Angler|"

// usual is a cell in order for each heading over which TestCells has one that is not.
var usual = map[string]string{"Length (in)": "74", "Length": "74", "Kept": "yes", "Released": "no",
	"GPS": "32.25, -127.5", "Speed": "12", "Rods": "5", "Zone": "UTC-9", "Notes": "calm",
	"Setback": "80", "Fight": "25"}

// TestCells reads one cell under one heading in a sheet of fish, legs or strikes.
func TestCells(t *testing.T) {
	legs, strikes, lines := "Date|Start|End|", "Date|Time|Outcome|", "Trip|Line|Hooks|"
	fishRow, legRow, strikeRow, lineRow := "2026-06-03|Wahoo|Ansa|", "2026-06-03|06:00|08:00|",
		"2026-06-03|06:40|lost|", "1|2|single|"
	for _, c := range []struct {
		head, row, heading, cell, column string
		want                             string // the value, or part of the reason after "!"
	}{
		{fishHead, fishRow, "Length (in)", "74", "length_cm", "187.96"},
		{fishHead, fishRow, "Length", `6'2"`, "length_cm", "187.96"},
		{fishHead, fishRow, "Length", "188cm", "length_cm", "188"},
		{fishHead, fishRow, "Length (in)", "188 cm", "length_cm", "188"},
		{fishHead, fishRow, "Length (in)", "74 1/2", "length_cm", "189.23"},
		{fishHead, fishRow, "Length", "74", "length_cm", "!--log-units"},
		{fishHead, fishRow, "Length (in)", "big", "length_cm", "!expected a number"},
		{fishHead, fishRow, "Length (in)", "400", "length_cm", "!not possible"},
		{fishHead, fishRow, "Length (in)", "~74", "length_cm", ""},
		{fishHead, fishRow, "Curved FL (cm)", "120", "length_kind", "CFL"},
		{fishHead, fishRow, "LJFL (cm)", "220", "length_kind", "LJFL"},
		{fishHead, fishRow, "Tape (cm)", "120", "length_kind", ""},
		{fishHead, fishRow, "Weight", "212#", "scale_kg", "96.161582"},
		{fishHead, fishRow, "Dressed weight (kg)", "80", "weight_state", "dressed"},
		{fishHead, fishRow, "Weight (gutted, lb)", "80", "weight_state", "gutted"},
		{fishHead, fishRow, "Weight (lb)", "80", "weight_state", ""}, {fishHead, fishRow, "Kept", "n", "kept", "false"},
		{fishHead, fishRow, "Released", "x", "kept", "false"}, {fishHead, fishRow, "Kept", "✓", "kept", "true"},
		{fishHead, fishRow, "Kept", "perhaps", "kept", "!neither yes nor no"},
		{fishHead, fishRow, "Certified", "Y", "certified", "true"},
		{fishHead, fishRow, "Fight time", "25", "fight_s", "1500"},
		{fishHead, fishRow, "Fight", "1:05", "fight_s", "3900"},
		{fishHead, fishRow, "Sandwiches", "2", "extra", `{"Sandwiches":"2"}`},
		{fishHead, fishRow, "Girth (cm)", "n/a", "girth_cm", ""},
		{fishHead, fishRow, "Position", "32 15.2N 127 30.6W", "lon", "-127.51"},
		{fishHead, fishRow, "Position", "S33 10 E151 30", "lat", "-33.166667"},
		{fishHead, fishRow, "GPS", "32.25, -127.5", "lat", "32.25"},
		{fishHead, fishRow, "GPS", "off the point", "lat", "!not a position"},
		{fishHead, fishRow, "GPS", "32.25, -227.5", "lon", "!not a longitude"},
		{fishHead, fishRow, "Lon W", "127.5", "lon", "-127.5"},
		{legs, legRow, "Speed", "12", "speed_kn", "12"}, {legs, legRow, "Speed", "14 mph", "speed_kn", "12.165667"},
		{legs, legRow, "Speed km/h", "23", "speed_kn", "12.419006"},
		{legs, legRow, "Speed", "55", "speed_kn", "!not possible"},
		{legs, legRow, "SST", "68", "sea_temp_c", "20"}, {legs, legRow, "SST", "20.5", "sea_temp_c", "20.5"},
		{legs, legRow, "SST F", "20 C", "sea_temp_c", "20"}, {legs, legRow, "Lines out", "5", "lines_out", "5"},
		{legs, legRow, "Rods", "2.5", "lines_out", "!whole number"},
		{legs, legRow, "Tangle", "none", "tangle", "false"}, {legs, legRow, "Tangle", "2 & 3", "tangled_lines",
			"2 & 3"}, {legs, legRow, "Zone", "UTC-9", "zone", "UTC-9"},
		{legs, legRow, "Zone", "boat time", "zone", "!zone"},
		{legs, legRow, "Notes", "#REF!", "notes", "!spreadsheet error"},
		{legs, legRow, "Heading", "270", "heading_deg", "270"},
		{strikes, strikeRow, "Speed", "12.5", "strike_speed_kn", "12.5"},
		{strikes, strikeRow, "Fish", "Bluefin", "species_logged", "Bluefin"},
		{strikes, strikeRow, "Fish", "Bluefin", "species", ""}, {strikes, strikeRow, "Fish", "YFT", "species", "YFT"},
		{lines, lineRow, "Setback (yd)", "80", "setback_m", "73.152"},
		{lines, lineRow, "Setback", "80", "setback_m", "!no unit"}, {lines, lineRow, "Setback ft", "200", "setback_m",
			"60.96"}, {lines, lineRow, "Lure oz", "8", "lure_weight_g", "226.796185"},
		{lines, lineRow, "Lure weight", "300", "lure_weight_g", "300"},
		{lines, lineRow, "Drag #", "18", "drag_kg", "8.164663"}, {lines, lineRow, "Count", "25", "count_s", "25"},
	} {
		reason, bad := strings.CutPrefix(c.want, "!")
		text := c.head + c.heading + "\n" + c.row + c.cell
		if good, ok := usual[c.heading]; ok && good != c.cell &&
			(bad || c.heading != "Length" && c.heading != "Speed") {
			text = under(c.head+c.heading, c.row+good, c.row+c.cell)
		}
		got := log{text: text}.last(t)
		switch {
		case bad && (len(got.problems) != 1 || !got.told(reason)):
			t.Errorf("%q under %q: %v, expected a fault with %q", c.cell, c.heading, got, reason)
		case !bad && (len(got.problems) > 0 || got.values[c.column] != c.want):
			t.Errorf("%q under %q: %s is %q, expected %q %v", c.cell, c.heading, c.column,
				got.values[c.column], c.want, got.problems)
		}
	}
}

// TestFormulaWithoutValue holds that a formula that was never calculated is not
// taken for its text.
func TestFormulaWithoutValue(t *testing.T) {
	got := log{text: under("Date|Start|End", "46000|0.25|0.5", "46000|0.25|=B2+C2/24"),
		workbook: true, class: dayAndClocks}.last(t)
	if !got.told("formula") {
		t.Errorf("%v", got)
	}
}

// dayAndClocks are the classes of a workbook's columns of a day and two clock times.
var dayAndClocks = []sheet.Class{sheet.Date, sheet.Clock, sheet.Clock}

func TestTimes(t *testing.T) {
	for _, c := range []struct{ date, start, end, want string }{ // want: date, start, end
		{"2026-06-03", "06:10", "16:40", "2026-06-03 22200 60000"},
		{"2026-06-03", "0610", "4:40 pm", "2026-06-03 22200 60000"},
		{"2026-06-03", "22:30", "01:15", "2026-06-03 81000 90900"},
		{"2026-06-03", "20:00", "24:00", "2026-06-03 72000 86400"},
		{"2026-06-03", "22:30", "2026-06-04 01:15", "2026-06-03 81000 90900"},
		{"", "2026-06-03 22:30", "01:15", "2026-06-03 81000 90900"},
		{"", "2026-06-03 22:30", "2026-06-04 01:15", "2026-06-03 81000 90900"},
		{"2026-06-03", "2026-06-04 00:30", "02:00", "2026-06-03 88200 93600"},
	} {
		got := log{text: under("Date|Start|End|Leg", "2026-06-02|06:00|07:00|1", c.date+"|"+
			c.start+"|"+c.end+"|1")}.last(t)
		v := got.values
		if s := v["date"] + " " + v["start_s"] + " " + v["end_s"]; s != c.want {
			t.Errorf("%s %s to %s: %s %v, expected %s", c.date, c.start, c.end, s, got.problems, c.want)
		}
	}
}

// TestOwnClock: a time with an offset from UTC (ISO 8601) is the boat's own where the offset is
// that of its zone, in winter or in summer; without a named zone any but UTC's is. An
// instant of UTC is told by the clock of a named zone.
func TestOwnClock(t *testing.T) {
	auckland, err := time.LoadLocation("Pacific/Auckland")
	if err != nil {
		t.Fatal(err)
	}
	for _, c := range []struct {
		zone       *time.Location
		time, want string // want: seconds of the day, or part of the reason after "!"
	}{
		{nil, "2026-01-03T06:10:00+13:00", "22200"}, {nil, "2026-01-03T06:10:00Z", "!time of UTC"},
		{auckland, "2026-01-03T06:10:00+13:00", "22200"}, {auckland, "2026-07-03T06:10:00+12:00", "22200"},
		{auckland, "2026-07-03T06:10:00+13:00", "!UTC+13, where the boat's clock of Pacific/Auckland is UTC+12"},
		{auckland, "2026-01-03T06:10:00Z", "69000"}, {auckland, "2026-07-03T06:10:00Z", "65400"},
	} {
		got := log{text: under("Date|Start|End", "2026-01-02|06:00|07:00", c.time[:10]+"|"+c.time+"|07:30"),
			set: Settings{Zone: c.zone}}.last(t)
		if reason, bad := strings.CutPrefix(c.want, "!"); bad && !got.told(reason) || !bad &&
			(got.values["start_s"] != c.want || len(got.problems) > 0) {
			t.Errorf("%s: %v, expected %s", c.time, got, c.want)
		}
	}
}

func TestSerials(t *testing.T) {
	// 46000 is 2025-12-09 in the 1900 system; 0.75 is 18:00 and 1.0625 is 25:30.
	got := log{text: "Date|Start|End\n46000|0.75|1.0625", workbook: true, class: dayAndClocks}.read(t)[0].values
	if got["date"] != "2025-12-09" || got["start_s"] != "64800" || got["end_s"] != "91800" {
		t.Errorf("%v", got)
	}
}

func TestTimesThatCannotBe(t *testing.T) {
	for _, c := range []struct{ row, reason string }{
		{"2026-06-03|06:10|06:10", "no hours"}, {"2026-06-03|2026-06-03 09:00|2026-06-03 08:00", "before the start"},
		{"2026-06-03|06:00|2026-06-05 08:00", "more than a day"},
		{"2026-06-03||07:00", "a start and an end"}, {"2026-06-31|06:10|07:00", "no such day"},
		{"2026-06-03|6|07:00", "date or time"}, {"06:00|06:10|07:00", "a date was expected"},
		{"2026-06-03|2026-06-03|07:00", "a time of day was expected"}, {"2026-06-03|06:00Z|07:00", "time zone"},
		{"1850-06-03|06:00|07:00", "year"},
	} {
		got := log{text: under("Date|Start|End", "2026-06-02|06:00|07:00", c.row)}.last(t)
		if len(got.values) > 0 || !got.told(c.reason) { // a leg without a time says nothing that counts
			t.Errorf("%s: %v, expected %q", c.row, got.problems, c.reason)
		}
	}
}

// TestNoEnd: a stretch whose end nobody wrote down is kept for its speed and is no effort.
func TestNoEnd(t *testing.T) {
	got := log{text: under("Date|Start|End|Speed kn", "2026-06-02|06:00|07:00|8", "2026-06-03|06:10||9")}.last(t)
	v := got.values
	if v["start_s"] != "22200" || v["end_s"] != "" || v["duration_s"] != "" ||
		v["speed_kn"] != "9" || !got.told("no end") {
		t.Errorf("%v %v", v, got.problems)
	}
}

// TestNotTrolled passes over a strike that its row says was not trolled.
func TestNotTrolled(t *testing.T) {
	for _, c := range []struct {
		row  string
		want Skip
	}{
		{"2026-06-03|07:10|wahoo|landed|long left|", NotASkip}, {"2026-06-03|07:10|wahoo|landed|jig|", Elsewise},
		{"2026-06-03|07:10|wahoo|landed|not trolled|", Elsewise},
		{"2026-06-03|07:10|wahoo|landed||on livebait, not the lures", Elsewise},
		{"2026-06-03|07:10|wahoo|landed||bait balls about", NotASkip},
		{"2026-06-03|07:10|wahoo|landed|||sardine", Elsewise},
		{"2026-06-03|07:10|wahoo|landed|||swim plug, sardine", NotASkip},
	} {
		got := log{text: under("Date|Time|Fish|Outcome|Line|Remarks|Lure",
			"2026-06-02|06:00|wahoo|lost|short left||purple skirt", c.row)}.last(t)
		if got.skip != c.want {
			t.Errorf("%s: passed over %q, expected %q", c.row, got.skip, c.want)
		}
	}
}

func TestOrderOfDayAndMonth(t *testing.T) {
	for _, c := range []struct {
		dates string
		set   unit.Order
		want  string
	}{
		{"03/04/2026", unit.OrderUnknown, "!--dates day-first or --dates month-first"},
		{"03/04/2026", unit.DayFirst, "2026-04-03"}, {"03/04/2026", unit.MonthFirst, "2026-03-04"},
		{"03/04/2026 25/04/2026", unit.OrderUnknown, "2026-04-03"},
		{"03/04/2026 04/25/2026", unit.OrderUnknown, "2026-03-04"},
		{"03/04/2026 25/04/2026 04/25/2026", unit.OrderUnknown, "!--dates"},
		{"04/04/2026", unit.OrderUnknown, "2026-04-04"}, {"03/04/2026 04/25/2026", unit.DayFirst, "2026-04-03"},
	} {
		text := "Date|Start|End"
		for _, d := range strings.Fields(c.dates) {
			text += "\n" + d + "|06:00|08:00"
		}
		got := log{text: text, set: Settings{Order: c.set}}.read(t)[0]
		reason, bad := strings.CutPrefix(c.want, "!")
		if bad && (len(got.problems) != 1 || !strings.Contains(got.problems[0].Reason, reason)) || !bad &&
			got.values["date"] != c.want {
			t.Errorf("%s: %v %v, expected %s", c.dates, got.values, got.problems, c.want)
		}
	}
}

// TestSystem holds that a unit somewhere settles cells without one, unless the
// file is mixed, and that the flag stands above both.
func TestSystem(t *testing.T) {
	for _, c := range []struct{ heading, units, want string }{
		{"Girth (in)", "", "157.48"}, {"Girth (cm)", "", "62"}, {"Girth", "", "!--log-units"},
		{"Girth", "us", "157.48"}, {"Girth", "metric", "62"}, {"Girth (cm)", "us", "157.48"},
	} {
		got := log{text: "Date|Species|Length|" + c.heading + "\n2026-06-03|Wahoo|62|",
			set: Settings{Units: c.units}}.read(t)[0]
		reason, bad := strings.CutPrefix(c.want, "!")
		if bad && (len(got.problems) != 1 || !strings.Contains(got.problems[0].Reason, reason)) || !bad &&
			got.values["length_cm"] != c.want {
			t.Errorf("length beside %q, units %q: %v, expected %s", c.heading, c.units, got, c.want)
		}
	}
}

func TestCountsNest(t *testing.T) {
	for _, c := range []struct{ row, reason string }{
		{"5|4|2|1|1|1", ""}, {"2|||||", ""}, {"|2|1|||", ""}, {"||1|1||", ""}, {"0|0|0|0|0|0", ""}, {"y|y|n|y||", ""},
		{"3|4||||", "4 hooked or missed"}, {"5|2|2|1||", "2 hooked, but 3"}, {"2|||||3", "3 hooked or missed"},
		{"1||1|1||", "1 strikes, but 2"}, {"2|1|1||1|", "1 hooked, but 2"},
		{"-1|||||", "not a count"}, {"1.5|||||", "not a count"},
		{"300|||||", "not a count"}, {"lots|||||", "not a count"},
	} {
		const leg = "2026-06-03|06:00|08:00|1|"
		rows := strings.Join([]string{leg + "5|4|1|2|1|1", leg + "3|2|1|0|1|1", leg + "5|4|1|2|1|1"}, "\n")
		got := log{text: under("Date|Start|End|Line|Strikes|Hooked|Landed|Released|Lost|Missed", rows, leg+c.row)}.last(
			t)
		if c.reason == "" && len(got.problems) > 0 || c.reason != "" &&
			(len(got.problems) != 1 || !got.told(c.reason)) {
			t.Errorf("%s: %v, expected %q", c.row, got.problems, c.reason)
		}
	}
}

// TestClosedLists holds that every spelling of words.csv is read as it means.
func TestClosedLists(t *testing.T) {
	const row = "2026-06-03|Wahoo|120|"
	w, err := loadClosed()
	if err != nil {
		t.Fatal(err)
	}
	columns := map[string]struct{ heading, column, usual string }{
		"outcome": {"Outcome", "outcome", "lost"}, "lengthkind": {"Measured as", "length_kind", "fork"},
		"weightstate": {"Weight state", "weight_state", "round"},
	}
	for list, c := range columns {
		if len(w[list]) == 0 {
			t.Errorf("%s: no words", list)
		}
		for word, means := range w[list] {
			for _, cell := range []string{word, strings.ToUpper(word), " " + strings.ReplaceAll(word, " ", "-") + "."} {
				got := log{text: under("Date|Species|Length (cm)|"+c.heading, row+c.usual, row+cell),
					name: "fish"}.last(t)
				if got.values[c.column] != means {
					t.Errorf("%s %q: %q %v, expected %q", list, cell, got.values[c.column], got.problems, means)
				}
			}
		}
		got := log{text: under("Date|Species|Length (cm)|"+c.heading, row+c.usual, row+"who knows"),
			name: "fish"}.last(t)
		if len(got.problems) != 1 || !strings.Contains(got.problems[0].Reason, "not understood") {
			t.Errorf("%s: %v", list, got)
		}
	}
}

// TestTotalsAndDittos holds that the shortcuts by first letter pass no word of
// the lists over.
func TestTotalsAndDittos(t *testing.T) {
	w, err := loadClosed()
	if err != nil {
		t.Fatal(err)
	}
	for word := range w["total"] {
		got := log{text: "Date|Start|End|Lines\n2026-06-03|06:00|08:00|4\n" + word + "|||4"}.read(t)[1]
		if got.skip != Totals {
			t.Errorf("%q: %v", word, got)
		}
	}
	for word := range w["ditto"] {
		got := log{text: "Date|Start|End|Area\n2026-06-03|06:00|08:00|the Shelf\n2026-06-03|09:00|10:00|" +
			word}.read(t)[1]
		if got.values["area"] != "the Shelf" {
			t.Errorf("%q: %v", word, got)
		}
	}
}

// TestEveryColumnIsRead holds that there is a way to read the cells of each column of
// the catalogue, and no way that none has.
func TestEveryColumnIsRead(t *testing.T) {
	columns, err := plan.Columns()
	if err != nil {
		t.Fatal(err)
	}
	used := map[string]bool{}
	for _, c := range columns {
		if used[c.Parse] = true; parsers[c.Parse].cell == nil {
			t.Errorf("%s: no way to read %q", c.Name, c.Parse)
		}
	}
	for name := range parsers {
		if !used[name] {
			t.Errorf("%q is read, and no column has it", name)
		}
	}
}
