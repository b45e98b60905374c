package meaning

import (
	"strings"
	"testing"
)

// TestTellsAll holds that a list which tells as many bites as its rows count tells what became of them, and one that
// tells fewer does not; and that numbers alone in its brackets are lengths where others have their unit, and are as
// long.
func TestTellsAll(t *testing.T) {
	const head = "Date|In|Up|Lines|Knots|Bites|Boated|Let go|What\n"
	const list = "2026-05-09|06:00|09:00|5|8|2|1||1 mahi (88) + 1 lost\n" +
		"2026-05-10|06:00|09:00|5|8|3|1|1|1 mahi let go + 1 wahoo lost + 1 short strike\n" +
		"2026-05-11|06:00|09:00|5|8|1|1||1 wahoo 112 cm 9.5 kg on the scale\n" +
		"2026-05-16|06:00|10:00|5|7|2|2||1 wahoo 121 cm + 1 mahi (106)\n" +
		"2026-05-17|06:00|10:00|4|7|2|1||1 wahoo 104 cm + 1 lost\n2026-05-18|06:00|10:00|4|7|1|1||1 mahi (79)"
	remarks := planOf(t, "", strings.Replace(head, "What", "Remarks", 1)+list)
	if !remarks.ListsAll {
		t.Errorf("remarks that list the fish: %s", summary(remarks))
	}
	for what, c := range map[string]struct {
		rows    string
		all, cm bool
	}{
		"all":   {list, true, true},
		"fewer": {strings.ReplaceAll(list, " + 1 lost", ""), false, true},
		"weights": {strings.NewReplacer("(88)", "(11)", "(106)", "(13)", "(79)", "(10)").Replace(list), true,
			false},
		"no unit is said": {strings.ReplaceAll(list, " cm", " long"), true, false},
	} {
		p := planOf(t, "", head+c.rows)
		b := p.Find("fish")
		for i := range p.Bindings {
			if p.Bindings[i].Heading == "What" {
				b = &p.Bindings[i]
			}
		}
		if b == nil || p.ListsAll != c.all || (b.Said == "(cm)") != c.cm {
			t.Errorf("%s: tells all %v; %s, %+v", what, p.ListsAll, summary(p), b)
		}
	}
}

// TestListBesideWeights holds that a list of fish stays one where a column of weights, but none of a fish or a fate,
// stands in the table.
func TestListBesideWeights(t *testing.T) {
	const rows = "Date|In|Up|Lines|Knots|Bites|What|Kg\n2026-05-09|06:00|09:00|5|8|3|wahoo, wahoo lost, 1 miss|13\n" +
		"2026-05-10|06:00|09:00|5|8|1|skipjack|\n2026-05-11|06:00|09:00|5|8|0|nothing|\n" +
		"2026-05-16|06:00|10:00|5|7|1|mahi|\n2026-05-17|06:00|10:00|4|7|1|mahi|9\n" +
		"2026-05-18|06:00|10:00|4|7|2|2 skipjack|\n2026-05-19|06:00|10:00|4|7|1|wahoo|14"
	if p := planOf(t, "", rows); !p.Reads("fishlist") {
		t.Errorf("%s", summary(p))
	}
}
