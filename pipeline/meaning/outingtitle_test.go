package meaning

import "testing"

// TestOutingTitle holds that a title which numbers an outing says its number and its one day.
func TestOutingTitle(t *testing.T) {
	for text, want := range map[string][2]string{
		"SALIDA N.º 4 – sábado 13 de junio de 2026": {"4", "13 de junio de 2026"},

		"Trip 12: 3 June 2026": {"12", "3 June 2026"}, "Outing #3, Sat 6 June 2026": {"3", "Sat 6 June 2026"},

		"Ausfahrt Nr. 2 - 6. Juni 2026 und 7. Juni 2026": {"2", ""},

		"Trip of 3 June 2026": {}, "Trip 4 sold 260 lb": {}, "Trip 3 June 2026": {},
		"Bites of trip 3, 4 June 2026": {},
	} {
		number, day, ok := outingTitle(text)
		if got := [2]string{number, day}; ok != (want[0] != "") || ok && got != want {
			t.Errorf("%q: %q, %v, expected %q", text, got, ok, want)
		}
	}
}

// TestNumberOfOuting holds that a sheet may be named by the number of its outing.
func TestNumberOfOuting(t *testing.T) {
	for text, want := range map[string]string{"trip 4": "4", "Outing no 12": "12", "Trips 2026": "", "trip list": "",
		"June": ""} {
		if got := numberOfOuting(text); got != want {
			t.Errorf("%q: %q, expected %q", text, got, want)
		}
	}
}

// TestOutingTitles holds that tables under numbered outings are of these, down to the next one, and that an outing
// without tables gives its day to none.
func TestOutingTitles(t *testing.T) {
	const legs, bites = "|\nIn|Up|Lines|Knots\n06:10|09:00|4|7\n09:20|10:40|5|7.5\n", "|\nBites|\nTime|Fish|Fate|cm\n" +
		"06:50|wahoo|lost|\n07:40|bonito|landed|61\n"
	l := inferred(t, "log", nil, "", "Our season|\nTRIP No 1 - 3 June 2026|\n"+legs+bites+
		"|\nTRIP No 2 - 5 June 2026|\nno wind|\n|\nTRIP No 3 - 6 June 2026|\n"+legs+bites+
		"|\nTRIP No 4 - 8 June 2026 and 9 June 2026|\n"+legs)
	want := [][2]string{{"1", "3 June 2026"}, {"1", "3 June 2026"}, {"3", "6 June 2026"}, {"3", "6 June 2026"},
		{"4", ""}}
	data := l.Data()
	if len(data) != len(want) {
		t.Fatalf("%d tables, expected %d", len(data), len(want))
	}
	for i, u := range data {
		got := [2]string{}
		for _, g := range u.Plan.Given {
			switch g.Column.Name {
			case "trip":
				got[0] = g.Text
			case "date":
				got[1] = g.Text
			}
		}
		if got != want[i] {
			t.Errorf("table %d: %q, expected %q", i, got, want[i])
		}
	}
}
