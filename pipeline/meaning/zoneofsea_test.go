package meaning

import "testing"

// TestZoneOfTheSea holds that a column headed "Zone" is where the boat fished, unless its cells are time zones.
func TestZoneOfTheSea(t *testing.T) {
	for cells, want := range map[[2]string]string{
		{"le banc", "la fosse"}: "area", {"Europe/Paris", "UTC+1"}: "zone", {"AKDT", "AKST"}: "zone"} {
		p := planOf(t, "", "Date|Start|End|Lines|Zone\n2026-06-03|06:00|08:00|4|"+cells[0]+
			"\n2026-06-04|06:00|08:00|4|"+cells[1]+"\n2026-06-05|06:00|08:00|4|"+cells[0])
		if !p.Binds(want) {
			t.Errorf("%v: %s, expected %s", cells, summary(p), want)
		}
	}
}
