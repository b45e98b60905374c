package proof

import (
	"slices"
	"testing"

	"wakeledger/pipeline/plan"
)

// TestFigureCodes asks about codes with figures among fish in words that nobody explains, and not about fish whose
// measures are read.
func TestFigureCodes(t *testing.T) {
	const head = "Date|Lines in|Lines up|Lines|Remarks\n"
	for rows, want := range map[string]bool{
		"2026-06-03|06:00|11:00|4|A79*\n2026-06-04|06:00|11:00|4|skipjack, L58" +
			"\n2026-06-05|06:00|11:00|4|A73": true,
		"2026-06-03|06:00|11:00|4|wahoo 79 cm\n2026-06-04|06:00|11:00|4|2 skipjack" +
			"\n2026-06-05|06:00|11:00|4|mahi 80 cm": false,
	} {
		l := inferred(t, "log", head+rows)
		b := l.Data()[0].Plan.Find("notes")
		if b == nil {
			t.Fatalf("%s: no words: %+v", rows, l.Data()[0].Plan.Bindings)
		}
		b.Column = fishInWords(t)
		qs := asked(t, l, Stats{Stretches: 3, Hours: 15, ByCount: 2, Strikes: 2})
		if got := slices.ContainsFunc(qs, func(q Question) bool { return q.Kind == "codes" }); got != want {
			t.Errorf("%s: asked are %v", rows, kinds(qs))
		}
	}
}

// fishInWords is the column of fish in words.
func fishInWords(t *testing.T) *plan.Column {
	t.Helper()
	all, err := plan.Columns()
	if err != nil {
		t.Fatal(err)
	}
	return all[slices.IndexFunc(all, func(c *plan.Column) bool { return c.Name == "notes" && c.Parse == "fishlist" })]
}
