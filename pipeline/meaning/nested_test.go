package meaning

import (
	"slices"
	"strings"
	"testing"
)

// askedOf are the headings of a table that are asked about, with what each may be.
func askedOf(t *testing.T, text string) map[string]string {
	out := map[string]string{}
	for _, o := range inferred(t, "log.csv", nil, "Days", text).Open() {
		out[o.Heading] = strings.Join(o.Others, " ")
	}
	return out
}

// TestNested holds that small numbers under a word for something else, which are never more than the bites, are asked
// about as a count of fish, and that minutes of a fight are not.
func TestNested(t *testing.T) {
	table := func(head string, numbers ...string) string {
		rows := "Date|Start|Stop|Lines|Knots|Bites|" + head + "|Boated"
		bites := []string{"3", "0", "5", "2", "4", "6", "1"}
		for i, n := range numbers {
			rows += "\n2026-06-0" + string(rune('1'+i)) + "|06:30|11:10|4|7|" + bites[i] + "|" + n + "|1"
		}
		return rows
	}
	for _, c := range []struct {
		text string
		want bool
	}{
		{table("Fight", "2", "0", "4", "1", "3", "5", "1"), true},
		{table("Fight min", "12", "", "25", "8", "30", "15", "40"), false},
		{table("Fight", "12", "0", "25", "8", "30", "15", "40"), false},
		{table("Seen", "3", "2", "4", "6", "3", "5", "4"), false},
	} {
		asked := askedOf(t, c.text)
		if got := slices.ContainsFunc([]string{asked["Fight"], asked["Fight min"], asked["Seen"]},
			func(s string) bool { return strings.Contains(s, "hooked_n") }); got != c.want {
			t.Errorf("%s\nasked: %v", c.text, asked)
		}
	}
}

// TestCodesUnderBites holds that codes which nobody explains, under a heading of bites, are asked about.
func TestCodesUnderBites(t *testing.T) {
	const rows = "\n2026-06-01|06:30|11:10|4|7|K\n2026-06-02|06:10|11:00|4|7|qK\n2026-06-03|06:20|11:30|4|7|zz\n" +
		"2026-06-04|06:20|11:30|4|7|K\n2026-06-05|06:20|11:30|4|7|q"
	asked := askedOf(t, "Date|Start|Stop|Lines|Knots|Hookups"+rows)
	if !strings.Contains(asked["Hookups"], "hooked_n") {
		t.Errorf("asked: %v", asked)
	}
	const events = "Date|Time|What|Knots|Bites\n2026-05-25|07:00|lines in|8|0\n2026-05-25|08:00|changed course|8|2\n" +
		"2026-05-25|11:00|lines up||1\n2026-06-01|06:30|lines in|8|0\n2026-06-01|08:30|wahoo landed|8|1\n" +
		"2026-06-01|09:30|lines up||0"
	if asked := askedOf(t, events); !strings.Contains(asked["Bites"], "strikes_n") {
		t.Errorf("asked: %v", asked)
	}
	if asked := askedOf(t, "Date|Start|Stop|Lines|Knots|Skipper"+rows); asked["Skipper"] != "" {
		t.Errorf("asked: %v", asked)
	}
}

// TestAroundTheFish holds that a heading of a girth may begin with a word of guesses.
func TestAroundTheFish(t *testing.T) {
	l := inferred(t, "log.csv", nil, "Fish", "Date|Species|Result|Length cm|Around|Weight (around)\n"+
		"2026-06-01|wahoo|landed|128|52|14\n2026-06-02|wahoo|landed|121|49|13\n2026-06-03|tuna|landed|96|71|16")
	u := l.Data()[0]
	if b := u.Plan.Find("girth_cm"); b == nil || b.Heading != "Around" || b.Guess {
		t.Errorf("girth: %+v", b)
	}
	if b := u.Plan.Find("scale_kg"); b != nil {
		t.Errorf("a guess is no scale's weight: %+v", b)
	}
}

// TestPortions holds that a count of which another column has the word is asked about, unless that column is bare and
// has it in each row; and that the two are added up where the captain says so.
func TestPortions(t *testing.T) {
	table := func(one, other string) string {
		return "Date|Start|Stop|Lines|Knots|" + one + "|" + other + "|Boated\n2026-06-01|06:30|11:10|4|7|1|2|1\n" +
			"2026-06-02|06:30|11:10|4|7|1|1|1\n2026-06-03|06:30|11:10|4|7|2|0|2\n2026-06-04|06:30|11:10|4|7|0|0|0"
	}
	for _, c := range []struct {
		one, other string
		want       bool
	}{
		{"Bites deep", "Bites on top", true},
		{"Bites", "Best bites", true}, // more than all of them
		{"Bites", "Top score", false},
	} {
		asked := askedOf(t, table(c.one, c.other))
		if got := strings.Contains(asked[c.other], "strikes_n"); got != c.want {
			t.Errorf("%s, %s: asked %v", c.one, c.other, asked)
		}
	}
	within := strings.ReplaceAll(table("Bites", "Top bites"), "|1|2|1\n", "|3|2|1\n")
	if asked := askedOf(t, within); strings.Contains(asked["Top bites"], "strikes_n") {
		t.Errorf("a part of the bites: asked %v", asked)
	}
	yes := func(string, int) Said {
		return Said{Answers: func(heading string, _ int, _ []string) (string, bool) {
			return "strikes_n", heading == "Bites on top"
		}}
	}
	p := inferredAs(t, "log.csv", yes, nil, "Days", table("Bites deep", "Bites on top")).Data()[0].Plan
	added := 0
	for _, b := range p.Bindings {
		if b.Column.Name == "strikes_n" && b.Adds {
			added++
		}
	}
	if added != 1 {
		t.Errorf("%d counts of bites are added to the other: %s", added, summary(p))
	}
}
