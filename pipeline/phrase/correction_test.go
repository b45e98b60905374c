package phrase

import (
	"testing"

	"wakeledger/pipeline/words"
)

// TestCorrectionIn reads the remarks of a row that mend another one, or take it back.
func TestCorrectionIn(t *testing.T) {
	for text, want := range map[string]Correction{
		"Correcting line 12: hours were 3.5, not 5.3": {Of: "12", What: "hours",
			Is: "3.5", Not: "5.3", Whole: true},
		"Correction no. 4, bites should be 6 instead of 9.": {Of: "4", What: "bites", Is: "6", Not: "9", Whole: true},
		"Corrige la salida 7: cañas eran 5, no 4":           {Of: "7", What: "cañas", Is: "5", Not: "4", Whole: true},
		"Rectifie la ligne 3 : vitesse était 7, pas 17": {Of: "3", What: "vitesse",
			Is: "7", Not: "17", Whole: true},
		"Berichtigt Fahrt 9: Ruten waren 6, nicht 4": {Of: "9", What: "Ruten", Is: "6", Not: "4", Whole: true},
		"Rettifica l'uscita 4/23: il tonno n° 2 è stato rilasciato (R); segnato K": {Of: "4/23", Fish: "2",
			Fate: words.Released},
		"Corrects trip 8: wahoo no. 3 was lost at the boat":   {Of: "8", Fish: "3", Fate: words.Lost},
		"correction to 5, I had it wrong":                     {Of: "5"},
		"To void row 8, which is row 6 again":                 {Of: "8", Undo: true},
		"Anula la 14":                                         {Of: "14", Undo: true},
		"corrected the compass twice, then 6 miles to the NE": {}, "caught 6, not 5": {}, "reversed engines": {},
	} {
		got, ok := CorrectionIn(text)
		if got != want || ok != (want.Of != "") {
			t.Errorf("%q: %+v %t, expected %+v", text, got, ok, want)
		}
	}
}

// TestOwnCorrection reads remarks that mend a figure of their own row.
func TestOwnCorrection(t *testing.T) {
	for text, want := range map[string]Correction{
		"read 6 rods, not 5":               {What: "rods", Is: "6", Not: "5", Whole: true},
		"Fue un error: 7.5 nudos y no 17.": {What: "nudos", Is: "7.5", Not: "17", Whole: true},
		"Es waren 6 Ruten statt 4":         {What: "Ruten", Is: "6", Not: "4", Whole: true},
		"4 rods out, not a bite":           {}, "saw 6 boats": {}, "at 10:40 rods in, not 5": {},
	} {
		if got, ok := OwnCorrection(text); got != want || ok != want.Whole {
			t.Errorf("%q: %+v %t, expected %+v", text, got, ok, want)
		}
	}
}
