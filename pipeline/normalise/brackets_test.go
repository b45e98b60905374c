package normalise

import "testing"

// TestBrackets reads the numbers in brackets of a list of fish as the log says that it writes them.
func TestBrackets(t *testing.T) {
	b := target{brackets: bracketsIn("name, fork in inches, [girth in inches], (lb on the scale)")}
	const want = "ahi 44  31 in girth   52.5 lb scale ; ono  18 lb scale "
	if got := b.unbracketed("ahi 44 [31] (52.5); ono (18)"); got != want {
		t.Errorf("%q, expected %q", got, want)
	}
	for _, said := range []string{"name (where), kg", "name (kg) or (lb)", "remarks"} {
		if got := bracketsIn(said); len(got) > 0 {
			t.Errorf("%q: %v", said, got)
		}
	}
}
