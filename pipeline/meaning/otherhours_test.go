package meaning

import (
	"fmt"
	"strings"
	"testing"

	"wakeledger/pipeline/plan"
)

// runs are stretches of a log in which some hours were fished in another way, under a heading and cells of their own.
func runs(head string, cells ...string) string {
	text := "Date|Gear in|Gear up|Lines|Knots|" + head
	for i, c := range cells {
		text += "\n2026-06-0" + string(rune('1'+i)) + "|06:0" + string(rune('0'+i)) + "|11:00|" +
			string(rune('4'+i%2)) + "|7|" + c
	}
	return text
}

// TestOtherHours holds that hours of another way of fishing are taken off clock times and asked about, and that they
// are nothing where hours of trolling stand beside them.
func TestOtherHours(t *testing.T) {
	for _, head := range []string{"bottom hrs", "Horas de fondo", "h palangrotte", "hours (jigging)"} {
		l := inferred(t, "log", nil, "Runs", runs(head, "", "1", "", "0.5", "", "1.5", "", ""))
		p := l.Data()[0].Plan
		if b := p.Find("stopped_s"); b == nil || p.Binds("duration_s") {
			t.Errorf("%q: %s", head, summary(p))
		}
		asked := false
		for _, o := range l.Open() {
			asked = asked || o.Heading == head && o.Taken == "stopped_s"
		}
		if !asked {
			t.Errorf("%q: not asked about: %v", head, l.Open())
		}
	}
	p := planOf(t, "", strings.ReplaceAll(runs("bottom hrs|hrs trolled", "1|3.5", "|5", "|4.5", "0.5|4", "|5", "1|4",
		"2|3", "|5"), "|Gear in|Gear up", "||"))
	if p.Binds("stopped_s") || p.Find("duration_s") == nil || p.Find("duration_s").Heading != "hrs trolled" {
		t.Errorf("beside hours of trolling: %s", summary(p))
	}
}

// TestLettersOfStretch holds that letters beside a stretch, of which no word says that they are of fish, are not what
// became of a bite, and that a heading which says so is believed.
func TestLettersOfStretch(t *testing.T) {
	cells := []string{"R", "R", "L", "R", "L", "L", "R", "R"}
	for head, want := range map[string]bool{"with": false, "Outcome": true} {
		if p := planOf(t, "", runs(head, cells...)); p.Binds("outcome") != want {
			t.Errorf("%q: %s", head, summary(p))
		}
	}
}

// TestKindsOfTrips holds that texts which come again and again are no names of trips, and that a number that counts
// the trips weighs no fish.
func TestKindsOfTrips(t *testing.T) {
	text := "#|Date|Gear in|Gear up|Lines|Knots|Charter"
	for i := range 14 {
		text += fmt.Sprintf("\n%d|2026-06-%02d|06:00|11:00|4|7|%s", i+1, i+2, []string{"long day", "half", "eve"}[i%3])
	}
	l := inferred(t, "log", nil, "Runs", text)
	p := l.Data()[0].Plan
	if b := p.Find("trip"); b == nil || b.Heading != "#" || p.Kind != plan.Legs || len(l.Open()) > 0 {
		t.Errorf("kinds of trips: %s, asked: %v", summary(p), l.Open())
	}
}

// TestKindOfOtherFishing holds that rows of a kind called by another way of fishing are set apart, whatever they hold,
// and that figures with a word for the scale are weights under no heading.
func TestKindOfOtherFishing(t *testing.T) {
	const day = "\nSALIDA|%d|2026-06-%02d|Ana\nLANCE|06:00|09:00|4|7\nPIQUE|06:30|dorado|a bordo|7.%d kg báscula\n" +
		"PIQUE|07:40|peto|perdido|\n%s|11:40|mero|a bordo|4.2 kg báscula"
	for kind, want := range map[string]bool{"FONDO": true, "PALANGROTTE": true, "TARDE": false} {
		text := ""
		for i := range 6 {
			text += fmt.Sprintf(day, i+1, i+3, i, kind)
		}
		l := inferred(t, "log", nil, "", strings.TrimSpace(text))
		for _, u := range l.Data() {
			if u.Block.Kind == strings.ToLower(kind) && (len(u.Plan.Apart) == 6) != want {
				t.Errorf("%s: %d rows apart, expected %t: %s", kind, len(u.Plan.Apart), want, summary(u.Plan))
			}
			if u.Block.Kind == "pique" && !u.Plan.Binds("scale_kg") {
				t.Errorf("figures of a scale: %s", summary(u.Plan))
			}
		}
	}
}

// TestFewMethods holds that a few remarks under no heading which speak of another way of fishing are no column of ways.
func TestFewMethods(t *testing.T) {
	p := planOf(t, "", strings.Replace(runs("", "", "", "jigged at the end", "", "", "", "bottom, one hour", ""),
		"Date|Gear in|Gear up", "Date|In|Up", 1))
	if p.Binds("method") || !p.Binds("start_s") {
		t.Errorf("a few remarks: %s", summary(p))
	}
}

// TestFewWays holds that a heading which asks for another way of fishing makes its few cells ways.
func TestFewWays(t *testing.T) {
	text := "Outing|Clock|Rig|Fish|Result|Unless trolled"
	for i := range 9 {
		text += fmt.Sprintf("\n%d|07:1%d|left flat|Wahoo|Landed|%s", i/3, i,
			[]string{"", "", "jig", "", "live bait"}[i%5])
	}
	if p := planOf(t, "", text); !p.Binds("method") {
		t.Errorf("ways of a few: %s", summary(p))
	}
}
