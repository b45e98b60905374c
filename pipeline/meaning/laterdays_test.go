package meaning

import (
	"strings"
	"testing"

	"wakeledger/pipeline/plan"
)

// TestLaterDays holds that stretches of a trip that is written with its first and its last day are of the next day
// once the clock goes back, as often as the trip has nights, and their strikes with them.
func TestLaterDays(t *testing.T) {
	const runs = "Trip|Run|Start|End|Lines|Knots\n1|A|06:00|08:00|4|8\n2|A|06:30|08:00|4|8\n2|B|17:30|19:00|4|8\n" +
		"2|C|05:50|08:00|4|8\n2|D|08:30|09:00|4|8\n3|A|06:00|08:00|4|8"
	const bites = "Trip|Run|Time|Outcome|Species|Length cm\n1|A|06:40|landed|Wahoo|110\n2|A|06:50|landed|Wahoo|104\n" +
		"2|C|06:40|lost|Mahi|\n3|A|06:50|landed|Mahi|88"
	for day, want := range map[string]int{"13-14/7/26": 1, "13/7/26": 0, "13-15/7/26": 1} {
		l := inferred(t, "log.xlsx", nil, "Trips", "Trip|Date|Crew\n1|3/7/26|Ann\n2|"+day+"|Ann\n3|20/7/26|Ben",
			"Runs", runs, "Bites", bites)
		for _, sheet := range []string{"Runs", "Bites"} {
			p := blockOf(l, sheet).Plan
			if p.Later[plan.Stretch("2", "C")] != want || p.Later[plan.Stretch("2", "D")] != want ||
				len(p.Later) != 2*want {
				t.Errorf("%s, %s: %v", day, sheet, p.Later)
			}
		}
	}
}

// TestTripLetters holds that letters which begin anew with each trip name its stretches where the strikes have them
// under the same heading, whatever that is, and that a list of codes without a heading is of the column that holds
// them.
func TestTripLetters(t *testing.T) {
	runs := "Trip|Haul|Start|End|Lines|Knots\n1|A|06:00|08:00|4|8\n1|B|08:30|09:00|4|8\n2|A|06:30|08:00|4|8\n" +
		"2|B|17:30|19:00|4|8\n3|A|06:00|08:00|4|8"
	const bites = "Trip|Haul|Time|End|Species|Length " +
		"cm\n1|A|06:40|Q|Wahoo|110\n2|A|06:50|V|Mahi|\n2|B|18:40|Q|Mahi|77\n" +
		"3|A|06:50|Q|Mahi|88"
	const key = "Q|boated, kept\nV|hooked, pulled the hook\nN|short strike"
	for _, c := range []struct {
		runs string
		leg  bool
	}{{runs, true}, {strings.ReplaceAll(runs, "|B|", "|A|"), false}} {
		l := inferred(t, "log.xlsx", nil, "Runs", c.runs, "Bites", bites, "Key", key)
		for _, sheet := range []string{"Runs", "Bites"} {
			if b := blockOf(l, sheet).Plan.Find("leg"); (b != nil) != c.leg || b != nil && b.Heading != "Haul" {
				t.Errorf("%s of %q: the stretch is %+v", sheet, c.runs, b)
			}
		}
		if b := blockOf(l, "Bites").Plan.Find("outcome"); b == nil || b.Codes["v"] != "hooked, pulled the hook" {
			t.Errorf("codes without a heading: %+v", b)
		}
	}
}
