package phrase

import "testing"

// TestOnwards holds which lines of words between the rows of a table say how the boat trolls from there on.
func TestOnwards(t *testing.T) {
	for text, want := range map[string]Onward{
		"2022 - Six lines as always. 6.5 knots. Cedar plugs + 2 green squid bars": {Lines: 6, Speed: 6.5},
		"Down to 5 lines, port holder cracked":                                    {Lines: 5},
		"2023 - Same 5 lines as end of last yr. Speed 7 this yr (new prop)":       {Lines: 5, Speed: 7},
		"8 kts from here on. lures run better":                                    {Speed: 8},
		"7 lines, put out the center rigger":                                      {Lines: 7},
		"2024 - 5 lines now, sold one rod. Still 8 kts":                           {Lines: 5, Speed: 8},
		"Going a bit faster now, swapped plugs for feathers":                      {Paced: true},
		"Back to six rods, new holder. Trolling at 7.5 now":                       {Lines: 6, Speed: 7.5},
		"ab jetzt 6 Ruten, 7 kn":                                                  {Lines: 6, Speed: 7},
		"a partir de aquí 5 cañas y 8 nudos":                                      {Lines: 5, Speed: 8},
		"a little slower, 6 kn":                                                   {Speed: 6},
		"2 wahoo on the cedar plug":                                               {},
		"7 lines, 2 wahoo on the green squid":                                     {},
		"6 lines, two wahoo":                                                      {},
		"only 4 lines today":                                                      {},
		"6:00 to 9:00, 6 lines":                                                   {},
		"7 kn, later 8 kn":                                                        {},
		"one line less, lost the outrigger":                                       {By: -1},
		"two rods less now":                                                       {By: -2},
		"one more rod from now on":                                                {By: 1},
		"added a rod":                                                             {By: 1},
		"dos cañas menos":                                                         {By: -2},
		"eine Rute weniger":                                                       {By: -1},
		"dropped a rod":                                                           {By: -1},
		"an extra line from here on":                                              {By: 1},
		"one rod more, six lines now":                                             {Lines: 6},
		"broke two rods":                                                          {},
		"new zincs in March":                                                      {},
		"wind speed 12":                                                           {},
		"JUNE 2025":                                                               {},
	} {
		if got, ok := Onwards(text); got != want || ok != (want != Onward{}) {
			t.Errorf("%q: %+v %t, expected %+v", text, got, ok, want)
		}
	}
}
