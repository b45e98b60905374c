package meaning

import (
	"slices"
	"strings"
	"testing"
)

// TestMisfits holds that a column of figures whose heading names a part of the effort is asked about where its cells
// do not read as one, and that clock times with a point are clock times, also beside those without.
func TestMisfits(t *testing.T) {
	const head = "Date|Lines in|Lines up|Rods|Knots|Bites"
	row := func(day, in, up string) string { return "\n2026-06-0" + day + "|" + in + "|" + up + "|4|7|2" }
	for _, c := range []struct{ what, rows, want string }{
		{"points", row("1", "6.45", "12.30") + row("2", "7.00", "11.15") + row("3", "6.30", "12.00") +
			row("4", "7.15", "13.20"), ""},
		{"points and plain figures", row("1", "6.45", "12.30") + row("2", "700", "1115") +
			row("3", "7.05", "12.50") + row("4", "630", "13.20") +
			row("5", "6.40", "12.00") + row("6", "650", "1245"), ""},
		{"no clock", row("1", "6.75", "12.9") + row("2", "7.88", "11.99") + row("3", "6.61", "12.7") +
			row("4", "6.92", "13.8"), "Lines in"},
	} {
		var asked []string
		for _, o := range inferred(t, "log.csv", nil, "Days", head+c.rows).Open() {
			asked = append(asked, o.Heading+": "+strings.Join(o.Others, " "))
		}
		got := slices.ContainsFunc(asked, func(s string) bool { return strings.HasPrefix(s, "Lines in:") })
		if got != (c.want != "") {
			t.Errorf("%s: asked %q, expected %q", c.what, asked, c.want)
		}
	}
}

// TestWordsTellMore holds that a short list of fish does not silence remarks that tell more bites than it has, and
// that one with as many does.
func TestWordsTellMore(t *testing.T) {
	const runs = "Date|In|Up|Lines|Knots|Remarks\n2026-06-01|06:30|10:10|4|7|wahoo in the box, lost another\n" +
		"2026-06-02|06:10|11:00|4|7|missed one on the long rigger\n2026-06-03|06:20|11:30|4|7|nothing\n" +
		"2026-06-04|06:20|11:30|4|7|2 dorado kept, one came off\n"
	const best = "Date|Fish|Length cm|Kg\n2026-06-01|wahoo|128|14.5\n2026-06-04|dorado|98|8.1\n"
	for _, c := range []struct {
		fish string
		want bool
	}{{best, true}, {best + strings.Repeat("2026-06-04|dorado|97|7.9\n", 6), false}} {
		l := inferred(t, "log", nil, "Runs", runs, "Fish", c.fish)
		if got := l.Blocks[0].Plan.Reads("story"); got != c.want {
			t.Errorf("%d fish: the remarks tell bites: %t, expected %t", strings.Count(c.fish, "\n")-1, got, c.want)
		}
	}
}

// TestExpensesAreNoTrips holds that a book of expenses is none of trips though the number of a receipt may be one.
func TestExpensesAreNoTrips(t *testing.T) {
	const spent = "Date|Slip|Payee|Account|Amount\n2026-04-22|1188|Yard|Paint|1460\n" +
		"2026-05-09|1189|Shop|Tackle|212.48\n|cash|Shop|Ice|38\n2026-06-20|1191|Marina|Berth|1275\n" +
		"2026-07-11|1194|Yard|Repairs|389.17\n"
	l := inferred(t, "log", nil, "Spent", strings.Replace(spent, "Slip", "Check", 1))
	if k := l.Blocks[0].Plan.Kind; k != "" {
		t.Errorf("a book of expenses is read as %s", k)
	}
}

// TestSentencesUnderNoHeading holds that a column of sentences without a heading is of remarks, and one of codes is
// nothing.
func TestSentencesUnderNoHeading(t *testing.T) {
	for cells, want := range map[string]bool{
		"trolled the long bank;out past the cape;bottom after lunch;along the edge": true,
		"A7;B2;A7;C1": false} {
		text := "Date|Start|End|Lines|Knots|"
		for i, c := range strings.Split(cells, ";") {
			text += "\n2026-06-0" + string(rune('1'+i)) + "|06:00|09:00|4|7|" + c
		}
		if p := planOf(t, "", text); p.Binds("notes") != want {
			t.Errorf("%q: %s", cells, summary(p))
		}
	}
}

// TestWeightByTape holds that a weight by the tape is none of a scale, and that a length by the tape is one.
func TestWeightByTape(t *testing.T) {
	for head, want := range map[string]string{"Weight by tape": "", "Length by tape": "length_cm",
		"Scale weight": "scale_kg"} {
		unit := " lb"
		if want == "length_cm" {
			unit = " in"
		}
		p := planOf(t, "", "Date|Time|Fish|Outcome|"+head+"\n2026-06-03|08:10|wahoo|landed|51"+unit+
			"\n2026-06-04|08:25|wahoo|landed|46"+unit+"\n2026-06-05|08:40|tuna|landed|38"+unit)
		if got := p.Find("length_cm", "scale_kg"); got == nil && want != "" || got != nil && got.Column.Name != want {
			t.Errorf("%q: %s", head, summary(p))
		}
	}
}
