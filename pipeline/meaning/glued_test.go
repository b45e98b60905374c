package meaning

import (
	"testing"

	"wakeledger/pipeline/layout"
)

// TestGluedLetters holds that letters written right behind each figure say what it is: a unit of speed, or lines.
func TestGluedLetters(t *testing.T) {
	l := lexicon(t)
	for _, test := range []struct{ letters, name string }{{"k", "speed_kn"}, {"kts", "speed_kn"}, {"L", "lines_out"},
		{"r", "lines_out"}, {"x", ""}} {
		got := ""
		s := l.said(layout.Label{Text: test.letters, Glued: true})
		for c, of := range s.columns {
			if (c.Name == "speed_kn" || c.Name == "lines_out") && of.weight >= gluedLines {
				got = c.Name
			}
		}
		if got != test.name {
			t.Errorf("%s: %q, expected %q", test.letters, got, test.name)
		}
	}
	if s := l.said(layout.Label{Text: "L"}); s.says("lines_out") {
		t.Error("a heading of the letter alone says as much as one behind figures")
	}
}
