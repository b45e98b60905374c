package meaning

import (
	"slices"
	"testing"

	"wakeledger/pipeline/plan"
)

// TestTheDayTheyLeft holds that of two days of a trip the first is its day.
func TestTheDayTheyLeft(t *testing.T) {
	p := planOf(t, "log", "Trip|Left|Back|Crew\n1|2026-06-03|2026-06-03|us\n2|2026-06-08|2026-06-10|us, Ansa\n"+
		"3|2026-06-14|2026-06-15|us\n4|2026-06-20|2026-06-20|me\n")
	if got := summary(p); got != "trips: trip date ?Back anglers" {
		t.Error(got)
	}
}

// TestCountsOfAnotherMethod holds that fish counted under another way of fishing are kept by name.
func TestCountsOfAnotherMethod(t *testing.T) {
	p := planOf(t, "log", "Date|In|Up|Lines|Knots|Bites|Boated|More on the jig\n2026-06-03|06:10|09:00|4|7|3|2|\n"+
		"2026-06-04|06:10|09:00|4|7|5|3|4\n2026-06-08|06:10|09:00|4|7|2|2|\n2026-06-09|06:10|09:00|4|7|1|0|7\n")
	if i := slices.IndexFunc(p.Unknown, func(x plan.Unknown) bool { return x.Aside == "not trolled" }); i < 0 {
		t.Error(summary(p))
	}
}

// TestUndated holds that a column of days of which none is understood is asked about where nothing else tells one row's
// trip from another's.
func TestUndated(t *testing.T) {
	const rows = "|06:10|09:00|4|7\n"
	asks := func(text string) bool {
		return slices.ContainsFunc(inferred(t, "log", nil, "log", text).Open(), func(o Open) bool {
			return o.Heading == "Date" && slices.Equal(o.Others, []string{"date"})
		})
	}
	const odd = "the new moon" + rows + "the day after" + rows + "Ana's day" + rows + "late" + rows
	if !asks("Date|In|Up|Lines|Knots\n" + odd) {
		t.Error("days that nobody understands are not asked about")
	}
	if asks("Date|In|Up|Lines|Knots\n2026-06-03" + rows + "2026-06-04" + rows +
		"2026-06-05" + rows + "2026-06-08" + rows) {
		t.Error("days that are understood are asked about")
	}
}

// TestSameKey holds which headings number the same things.
func TestSameKey(t *testing.T) {
	for _, c := range []struct {
		a, b string
		want bool
	}{{"Run", "Run no", true}, {"No. entry", "Entry", true}, {"N. voce", "voce", true}, {"Run", "Trip no", false},
		{"No", "Nr", false}} {
		if got := SameKey(c.a, c.b); got != c.want {
			t.Errorf("%q and %q: %t", c.a, c.b, got)
		}
	}
}
