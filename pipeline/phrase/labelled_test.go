package phrase

import (
	"fmt"
	"strings"
	"testing"
)

// TestLabelled holds what labels with numbers and lists behind them tell, and that counts of which each is of the one
// before it are no parts of one.
func TestLabelled(t *testing.T) {
	for text, want := range map[string]string{
		"bites: 4; landed: 2 yellowfin; lost: 1; missed: 1": "2 yellowfin landed, 1  lost, 1  missed",
		"bites: 0":                         "",
		"bites 0":                          "",
		"Caught: 2 wahoo. Weather: calm":   "2 wahoo landed",
		"lost: 2 wahoo, 1 mahi; missed: 1": "2 wahoo lost, 1 mahi lost, 1  missed",
		"Kept: 2 wahoo, 1 mahi. Released: 3 skipjack. Lost: 1": "2 wahoo landed, 1 mahi landed, " +
			"3 skipjack released, 1  lost",
		"bites: 5; kept: 1 wahoo, 1 mahi; lost: 2":        "1 wahoo landed, 1 mahi landed, 2  lost, 1  bite",
		"Released: none. Kept: 1 wahoo":                   "1 wahoo landed",
		"6 bites: miss, bft 91in rel, miss, 3 bonito rel": "1  missed, 1 bft released, 1  missed, 3 bonito released",
		"2 bites: lost at the boat, wahoo 30 lb kept":     "1  lost, 1 wahoo landed",
		"5 bites: 2 missed, 1 lost":                       "2  bite, 2  missed, 1  lost",
		"in 6:18. 2 bites: missed, wahoo kept. whales":    "1  missed, 1 wahoo landed",
		"2 bites: missed":                                 "2  missed",
		"5 bites, 3 hooked, 2 landed":                     "2  bite, 1  hooked, 2  landed",
		"5 bites, landed 2, lost 2, missed 1":             "2  landed, 2  lost, 1  missed",
	} {
		s := Tell(text, Defaults{})
		var got []string
		for _, b := range s.Bites {
			got = append(got, fmt.Sprint(b.N, " ", b.Name, " ", b.Fate))
		}
		if all := strings.Join(got, ", "); all != want || len(s.Left) > 0 {
			t.Errorf("%q: %q, left %q, expected %q", text, all, s.Left, want)
		}
	}
}
