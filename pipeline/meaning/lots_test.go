package meaning

import (
	"testing"

	"wakeledger/pipeline/plan"
)

// TestLots holds that a weight beside several fish is of all of them where it is as many times what one weighs, of
// one where it is as much, and asked about where no fish of the kind stands alone.
func TestLots(t *testing.T) {
	for what, c := range map[string]struct {
		heading, first, second, kind string
		want                         plan.Lot
	}{
		"together":        {"Weight (kg)", "31", "22", "dorado", plan.OfAll},
		"of one":          {"Weight (kg)", "11", "9", "dorado", plan.OfOne},
		"no other to see": {"Weight (kg)", "31", "22", "skipjack", plan.OfEither},
	} {
		p := planOf(t, "", "Date|Fish|How many|"+c.heading+"\n2026-06-03|dorado|1|9.5\n2026-06-03|"+c.kind+"|3|"+
			c.first+"\n2026-06-04|dorado|1|11\n2026-06-05|"+c.kind+"|2|"+c.second+"\n2026-06-06|dorado|1|8.7")
		b := p.Find("scale_kg")
		if b == nil || !p.Binds("count") {
			t.Errorf("%s: no weight or count: %s", what, summary(p))
		} else if b.Lot != c.want {
			t.Errorf("%s: %q, expected %q", what, b.Lot, c.want)
		}
	}
}
