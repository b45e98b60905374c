package meaning

import (
	"strings"
	"testing"

	"wakeledger/pipeline/unit"
)

// TestRests holds that a column of ounces or inches behind one of pounds or feet is the rest of it, and that one
// headed for another thing, or with numbers that are none, is not.
func TestRests(t *testing.T) {
	for _, c := range []struct {
		what, heads, cells string
		want               bool
	}{
		{"units alone", "lb|oz", "41|8", true},
		{"behind the same words", "Weight lbs|Weight oz", "41|8", true},
		{"more than a pound", "lb|oz", "41|18", false},
		{"of the lure", "Weight lb|Lure oz", "41|8", false},
		{"in kilograms", "kg|oz", "41|8", false},
	} {
		text := "Date|Fish|" + c.heads + "\n2026-06-03|wahoo|" + c.cells + "\n2026-06-04|wahoo|38|2\n" +
			"2026-06-05|dorado|17|\n2026-06-06|dorado|9|15\n2026-06-07|wahoo|52|0"
		p := planOf(t, "", text)
		b := p.Find("scale_kg")
		if b == nil {
			t.Errorf("%s: no weight: %s", c.what, summary(p))
		} else if got := b.Rest != nil; got != c.want {
			t.Errorf("%s: one weight %v, expected %v: %s", c.what, got, c.want, summary(p))
		}
	}
}

// TestPaired holds that two numbers in a cell of weights are pounds and ounces where the second is always less than
// sixteen and some are smaller than the first, as no range is written, or where the log says so.
func TestPaired(t *testing.T) {
	for what, c := range map[string]struct {
		heads, first, second, key string
		want                      bool
	}{
		"pounds and ounces":  {"Weight", "31-14", "9-12", "", true},
		"in pounds":          {"Weight (lb)", "31 - 14", "9–12", "", true},
		"in kilograms":       {"Weight (kg)", "31-14", "9-12", "", false},
		"ranges":             {"Weight (lb)", "10-14", "9-12", "", false},
		"ranges, but a slip": {"Weight (lb)", "14-10", "9-12", "", false},
		"more than a pound":  {"Weight (lb)", "31-25", "22-18", "", false},
		"said":               {"Wt", "10-14", "9-12", "Wt|pounds and ounces", true},
	} {
		text := "Date|Fish|" + c.heads + "\n2026-06-03|wahoo|" + c.first + "\n2026-06-04|wahoo|" + c.first +
			"\n2026-06-05|dorado|" + c.second + "\n2026-06-06|dorado|\n2026-06-07|wahoo|" + c.second
		if what == "ranges, but a slip" {
			text = strings.Replace(text, c.first, "10-14", 1)
		}
		tables := []string{"Fish", text}
		if c.key != "" {
			tables = append(tables, "Key", "Date|the day\nFish|what we caught\n"+c.key)
		}
		p := blockOf(inferred(t, "log", nil, tables...), "Fish").Plan
		b := p.Find("scale_kg")
		if b == nil {
			t.Errorf("%s: no weight: %s", what, summary(p))
		} else if got := b.Paired == unit.Pound; got != c.want {
			t.Errorf("%s: pounds and ounces %v, expected %v: %s", what, got, c.want, summary(p))
		}
	}
}

// TestExcerpts holds that a list of fish that all stand in a longer one is no data, and that one with a fish or a
// heading of its own is.
func TestExcerpts(t *testing.T) {
	const all = "Date|Fish|kg|Outing\n2026-06-03|wahoo|14.2|1\n2026-06-03|dorado|6.1|1\n2026-06-04|wahoo|18.9|2\n" +
		"2026-06-05|yellowfin|31|3\n2026-06-05|dorado|8.4|3\n2026-06-06|wahoo|11|4"
	const best = "Biggest of the season\nFish|kg|Outing\nWahoo|18.9|2\nDorado|8.4|3\nYellowfin|31|3"
	angler := strings.NewReplacer("Outing", "Outing|Angler", "|2\n", "|2|Ana\n")
	for what, c := range map[string]struct {
		list string
		want bool
	}{
		"the best of each kind": {best, true},
		"one of its own":        {strings.ReplaceAll(best, "18.9|2", "19.9|2"), false},
		"who caught it":         {angler.Replace(best), false},
		"kinds and weights":     {strings.NewReplacer("|Outing", "", "9|2", "9", "|3", "").Replace(best), false},
	} {
		l := inferred(t, "log", nil, "Weighed", all, "Best", c.list)
		if u := blockOf(l, "Best"); u == nil || u.Proof != c.want {
			t.Errorf("%s: no data %v, expected %v", what, u != nil && u.Proof, c.want)
		}
		if u := blockOf(l, "Weighed"); u == nil || u.Proof {
			t.Errorf("%s: the longer list is no data", what)
		}
	}
}
