package words

import "testing"

// TestLinesAt holds that lines counted by their place are added up, and that nothing else is.
func TestLinesAt(t *testing.T) {
	for text, want := range map[string]int{
		"2 long, 2 short, 1 shotgun": 5, "2 riggers + 2 flat": 4, "1 left & 1 right and 1 center": 3,
		"tangão BB, tangão EB, curta BB, curta EB, centro": 5, "tangón babor, corta estribor, plana babor, puente": 4,
		"4": 0, "1 longue + 1 courte + 2 arrière": 4, "1 long + 1 short + 1 whatsit": 3, "2 long": 0,
		"2 long, one short": 0, "2 wahoo, 1 short": 0, "4+2": 0, "": 0,
	} {
		n, ok := LinesAt(text)
		if ok != (want > 0) || ok && n != want {
			t.Errorf("%q: %d lines, %t; expected %d", text, n, ok, want)
		}
	}
}

// TestLuresAtPlaces holds that each place that a lure is named at is a line, a teaser none, and that nothing else is
// counted: a place named twice may be a change of lure.
func TestLuresAtPlaces(t *testing.T) {
	for text, want := range map[string]int{
		"LL: pink jet; SR: cedar plug, ballyhoo; SG: bird": 3,
		"left long = plug | [T] squids | shotgun = jet":    2,
		"LL: pink jet; LL: cedar plug":                     0,
		"LL: pink jet; somewhere":                          0,
		"hook: J; LL: plug":                                0,
	} {
		if n, ok := LinesAt(text); ok != (want > 0) || n != want {
			t.Errorf("%q: %d lines, %t; expected %d", text, n, ok, want)
		}
	}
}

func TestSummed(t *testing.T) {
	for text, want := range map[string]int{"2+1": 3, "2 + 2": 4, "3+1+1": 5, "2": 0, "2+": 0, "me + 2": 0, "2-1": 0} {
		if n, ok := Summed(text); n != want || ok != (want > 0) {
			t.Errorf("%q: %d %t, want %d", text, n, ok, want)
		}
	}
}

// TestPlacesListed holds that places named one after the other are a line each, and that one place alone counts none.
func TestPlacesListed(t *testing.T) {
	for text, want := range map[string]int{
		"LR, RR, C": 3, "P1 S1 P2": 3, "no.1, no.2": 2, "left rigger, right rigger": 2,
		"LR": 0, "LR, LR": 0, "left rigger": 0, "LR, wahoo": 0,
	} {
		if n, ok := LinesAt(text); ok != (want > 0) || ok && n != want {
			t.Errorf("%q: %d lines, %t; expected %d", text, n, ok, want)
		}
	}
}
