package meaning

import (
	"strings"
	"testing"
)

// TestTally holds that counts over the lures, or the fish, of rows of bites are no bites of their own, and that a
// table of which one name is no such lure, or that counts more than there are, is asked about.
func TestTally(t *testing.T) {
	const bites = "Date|Time|Lure|Fish|Result\n" +
		"2026-05-03|06:40|blue plug|wahoo|landed\n2026-05-03|07:10|gold spoon|mahi|lost\n" +
		"2026-05-04|06:15|blue plug|mahi|landed\n" +
		"2026-05-05|08:30|ragged squid|tuna|landed\n2026-05-06|08:40|blue plug|tuna|missed"
	const runs = "Date|In|Out|Lines|Knots\n2026-05-03|06:00|09:00|4|8\n2026-05-04|06:00|09:00|4|8\n" +
		"2026-05-05|06:00|09:00|5|8\n2026-05-06|06:30|09:00|5|7"
	for counts, want := range map[string]bool{
		"Blue plug|2\ngold spoon|1\nragged squid|1": true,
		"wahoo|1\nmahi|2\ntuna|2":                   true,
		"blue plug|4\ngold spoon|1\nragged squid|1": false,
		"blue plug|2\ngold spoon|1\ngreen skirt|1":  false,
	} {
		u := blockOf(inferred(t, "log.xlsx", nil, "Runs", runs, "Bites", bites, "Best",
			"Lure|boated\n"+counts), "Best")
		if u == nil || u.Proof != want {
			t.Errorf("%s: %s, proof %v", strings.ReplaceAll(counts, "\n", ", "), summary(u.Plan), u.Proof)
		}
	}
}

// TestAfterwards holds that what was made of the fish is no fate, where the strikes that they name have their own.
func TestAfterwards(t *testing.T) {
	const bites = "Bite|Date|Time|Fish|Result\n1|2026-05-03|06:40|wahoo|landed\n2|2026-05-03|07:10|mahi|lost\n" +
		"3|2026-05-04|06:15|mahi|landed\n4|2026-05-05|08:30|tuna|landed\n5|2026-05-06|08:40|tuna|landed"
	for words, want := range map[string]bool{"in a pie,ceviche,jar of chutney,grill": false,
		"landed,kept,gaffed,released": true} {
		w := strings.Split(words, ",")
		u := blockOf(inferred(t, "log.xlsx", nil, "Bites", bites, "Scale",
			"Bite|Fish|kg|How it went\n1|wahoo|14.2|"+w[0]+
				"\n3|mahi|6.1|"+w[1]+"\n4|tuna|18|"+w[2]+"\n5|tuna|21.5|"+w[3]), "Scale")
		if u == nil || u.Plan.Binds("outcome") != want {
			t.Errorf("%s: %s", words, summary(u.Plan))
		}
	}
}
