package meaning

import (
	"strings"
	"testing"
)

// TestBoatedAlone holds that fish counted by species were at the boat where the log says that it has no others, and
// that "2 (rel 1)" is such a count, under a name that no list has too.
func TestBoatedAlone(t *testing.T) {
	rows := "Day|Lines in|Lines up|Rods|Kn|quibbet|wahoo|Notes\n7/4/23|07:00|11:50|4|8|0|0|\n" +
		"11/4/23|06:05|08:10|4|8|0|1|\n" +
		"19/4/23|07:30|11:10|4|8|2 (rel 1)||\n25/4/23|05:20|08:50|4|8|1|2|"
	for said, want := range map[string]bool{
		"Only fish brought aboard are written down, bites and lost ones not": true,
		"Wind from the north": false,
	} {
		p := inferred(t, "log", nil, "Log", said+"\n\n"+rows).Data()[0].Plan
		if p.Caught != want || len(p.Catch) != 2 || !p.Catch[0].Among || p.Catch[1].Among {
			t.Errorf("%q: caught %t, %+v", said, p.Caught, p.Catch)
		}
	}
}

// TestLetGoAmongTheListed holds that a column of words which names all fish of each row says whether the count of
// landed fish has those in it that were let go; a list of some of them says nothing.
func TestLetGoAmongTheListed(t *testing.T) {
	rows := "Date|Start|Stop|Lines|Bites|Landed|Released|Fish\n" +
		"12-6-2026|06:15|11:40|4|5|2|1|YFT 18 kg, YFT 12 kg released\n" +
		"20-6-2026|07:10|12:00|5|6|3|0|YFT 22.5 kg, wahoo 9 kg, bonito\n" +
		"27-6-2026|06:30|09:30|5|4|1|0|wahoo 14 kg"
	for _, c := range []struct {
		rows            string
		inclusive, open bool
	}{
		{rows, true, false},
		{strings.Replace(rows, "|2|1|", "|1|1|", 1), false, false},
		{strings.Replace(rows, "wahoo 9 kg, bonito", "wahoo 9 kg", 1), false, true},
		{strings.Replace(rows, " released", "", 1), false, true},
	} {
		u := inferred(t, "log", nil, "Log", c.rows).Data()[0]
		if u.Plan.Inclusive != c.inclusive || u.LandedOpen() != c.open {
			t.Errorf("%s: counts those let go too %t, open %t", c.rows, u.Plan.Inclusive, u.LandedOpen())
		}
	}
}
