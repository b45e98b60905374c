package meaning

import "testing"

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
