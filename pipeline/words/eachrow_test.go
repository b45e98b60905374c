package words

import "testing"

// TestDayOnEachRow holds which sentences say that rows repeat what is of their day.
func TestDayOnEachRow(t *testing.T) {
	for text, want := range map[string]bool{
		"The day's figures are repeated on every line of that day":                         true,
		"Daily numbers shown again on each fish row, don't add twice":                      true,
		"each row carries the totals of its day (not per fish)":                            true,
		"hours and misses are per day, copied down":                                        true,
		"hours etc. are for the whole day, same on each row":                               true,
		"Tageszahlen stehen in jeder Zeile des Tages, nicht doppelt zählen":                true,
		"Les chiffres du jour sont répétés sur chaque ligne, ne pas additionner deux fois": true,
		"Los datos del día se repiten en cada fila, no sumar dos veces":                    true,
		"Os dados do dia repetem-se em cada linha, não somar duas vezes":                   true,
		"hours are not repeated, they stand on the day's first row":                        false,
		"hours go on the first line of each day":                                           false,
		"Every bite has its own row, missed ones too":                                      false,
		"one row a day":           false,
		"the same boat every day": false,
	} {
		if got := DayOnEachRow(text); got != want {
			t.Errorf("%q: %t", text, got)
		}
	}
}
