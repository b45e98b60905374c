package phrase

import "testing"

// TestLinesUpAt holds when a remark says that the lines came up.
func TestLinesUpAt(t *testing.T) {
	for text, want := range map[string]int{
		"sacamos las cañas a las once y media": 11*60 + 30, "rentré les cannes à midi et demi": 12*60 + 30,
		"Ruten um halb zwölf raus": 11*60 + 30, "lifted the lines at ten to three": 2*60 + 50,
		"tirámos as linhas às onze e meia": 11*60 + 30, "quit around 3": 3 * 60, "home by four": -1,
		"lines in 6:00, lines up 9:30": -1, "best bite at 10:30": -1, "lines up, mahi at 9:15": -1,
	} {
		at, ok := LinesUpAt(text)
		if got := at.Seconds / 60; ok != (want >= 0) || ok && got != want {
			t.Errorf("%q: %d %t, expected %d", text, got, ok, want)
		}
	}
}

// TestStoppedLinesUp holds for how many minutes a remark says that the lines were up.
func TestStoppedLinesUp(t *testing.T) {
	for text, want := range map[string]float64{
		"paramos una hora con las cañas a bordo": 60, "lines up for half an hour while we swam": 30,
		"stopped half an hour, everything up": 30, "arrêt d'une heure et demie, lignes à bord": 90,
		"hove to for an hour with the gear aboard": 60, "lines up 20 min early": 0, "all lines up, 2 h run home": 0,
		"stopped 20 min to clear weed": 0, "eine halbe Stunde Pause, Leinen oben": 30,
	} {
		if got := StoppedLinesUp(text); got != want {
			t.Errorf("%q: %v minutes, expected %v", text, got, want)
		}
	}
}
