package meaning

import "testing"

// TestAlwaysFree holds that fish which the log says are let go whenever they are caught are counted as such under the
// heads of their species, and others are not.
func TestAlwaysFree(t *testing.T) {
	const table = "Date|In|Up|Lines|Knots|Bites|Hooked|Wahoo|Striped marlin|Sailfish|Remarks\n" +
		"2026-05-09|06:00|09:00|5|8|4|3|1|1||calm\n2026-05-16|06:00|09:00|5|8|3|2|1||1|\n" +
		"2026-05-17|06:00|09:00|4|8|2|1|1|||\n2026-05-23|06:00|09:00|5|8|5|4|2|1|1|calm"
	for above, want := range map[string]struct {
		marlin, sail string
		unless       bool
	}{
		"":                          {},
		"Marlins always released.":  {marlin: "released"},
		"Billfish always released.": {marlin: "released", sail: "released"},
		"All sailfish let go. The rest kept unless noted.": {sail: "released", unless: true},
		"Marlin not always released.":                      {},
	} {
		p := inferred(t, "log.csv", nil, "Log", above+"\n\n"+table).Data()[0].Plan
		if len(p.Catch) != 3 || p.Catch[0].Fate != "" || p.Catch[1].Fate != want.marlin ||
			p.Catch[2].Fate != want.sail || p.KeptUnless != want.unless {
			t.Errorf("%q: %v, but for remarks %v", above, p.Catch, p.KeptUnless)
		}
	}
}
