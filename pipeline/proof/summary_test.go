package proof

import (
	"slices"
	"strings"
	"testing"
)

// TestSummaries holds that a form that sums the season up is held against what was read where one of
// its figures shows that it is of these rows, and that what differs is asked about.
func TestSummaries(t *testing.T) {
	read := with(func(s *Stats) { s.Hours, s.LineHours = 31, 140 })
	for _, c := range []struct {
		what, form    string
		asked, agreed bool
	}{
		{"all the same", "Hours trolled:|31\nLine-hours:|140\nStrikes:|8", false, true},
		{"other line-hours", "Hours trolled:|31\nLine-hours:|200\nStrikes:|8", true, true},
		{"of another boat", "Hours trolled:|95\nLine-hours:|600\nStrikes:|44", false, false},
	} {
		l := inferred(t, "2026", days, "Totals", c.form)
		qs := asked(t, l, read)
		if got := slices.Contains(kinds(qs), "summary"); got != c.asked {
			t.Errorf("%s: asked %v of %v", c.what, got, qs)
		}
		if got := strings.Contains(strings.Join(l.Agreed, "; "), "is what was read"); got != c.agreed {
			t.Errorf("%s: agrees %v: %v", c.what, got, l.Agreed)
		}
	}
}
