package normalise_test

import (
	"strings"
	"testing"
)

// Under each day a paragraph, whose words tell the times and the bites.
func TestParagraphsUnderTheirDay(t *testing.T) {
	got := readText(t, "carnet.txt", `Carnet de bord 2025

12/07/2025
Lignes à l'eau de 6h30 à 11h00, 5 lignes à 8 noeuds. Une touche manquée à 7h15.

13/07/2025
5 lignes à 8 noeuds de 6h00 à 10h30. Rien du tout, pas une touche de la journée.

26/07/2025
6 lignes à 8,5 noeuds de 5h45 à 12h15. Un germon de 71 cm à bord à 9h40.
`)
	expect(t, "start", got.field("start_s", 3, 6, 9), int64(23400), int64(21600), int64(20700))
	expect(t, "end", got.field("end_s", 3, 6, 9), int64(39600), int64(37800), int64(44100))
	expect(t, "lines", got.field("lines_out", 3, 6, 9), int64(5), int64(5), int64(6))
	expect(t, "speed", got.field("speed_kn", 3, 6, 9), 8.0, 8.0, 8.5)
}

// A paragraph in a cell: the times, the speed and the lines are in the words that tell the
// bites; what no stretch takes, and a weight that may be a guess, are set aside.
func TestParagraphInACell(t *testing.T) {
	got := readText(t, "trips.csv", `Date,Who,What happened
2025-06-07,Ned,"Trolled 6:30 to 11:00, 5 lines, 8.5 kts. Two knockdowns, one stuck: bluefin, 51 in, 78 lb at the dock."
2025-06-08,Ned,"Same again, 6:15 to 10:45, 5 lines, 8.5 kts, slowed to 7 off the hump. Zip."
2025-06-20,Dora,"On my own, 3 lines at 8 kts from 6 to 9:30. One bluefin hooked and landed, 34 in, 30 lb."
`)
	expect(t, "start", got.field("start_s", 2, 3, 4), int64(23400), int64(22500), int64(21600))
	expect(t, "lines", got.field("lines_out", 2, 3, 4), int64(5), int64(5), int64(3))
	var reasons []string
	for _, p := range got.problems {
		reasons = append(reasons, p.Reason)
	}
	all := strings.Join(reasons, "\n")
	if len(reasons) != 2 || !strings.Contains(all, "not used: 7") ||
		!strings.Contains(all, "a weight: from a scale, or a guess?") {
		t.Errorf("set aside: %s", all)
	}
}

// A column of words that tells the times and the bites, and is headed by neither, is read for both where nothing else
// in the table tells of bites.
func TestTimesAndBitesInOneColumn(t *testing.T) {
	const book = `Date,Party,Fare,Skipper says
2026-06-07,Bo,900,"In 6:30, out 11:00, 5 rods, 7 kts. Two mahi kept, lost one at the boat."
2026-06-08,Li,900,"6:15 in, 10:45 out, 5 rods, 7 kts. Nothing."
2026-06-09,Al,900,"In 6:10 out 11:30, 4 rods, 7 kts. White marlin 1 for 2, let go, 1 missed."
2026-06-10,Su,900,"6:30 to 9:00, 5 rods, 7 kts, 1 wahoo. Jigged the weed after that: 4 mahi."
`
	got := readText(t, "book.csv", book)
	expect(t, "start", got.field("start_s", 2, 3, 4, 5), int64(23400), int64(22500), int64(22200), int64(23400))
	expect(t, "end", got.field("end_s", 2, 3, 4, 5), int64(39600), int64(38700), int64(41400), int64(32400))
	told, aside := readEvents(t, "book.csv", book)
	if len(aside) > 0 {
		t.Errorf("set aside: %v", aside)
	}
	expectTold(t, told, `
0:00 landed mahi
0:00 landed mahi
0:00 lost at the boat
0:00 released White marlin
0:00 missed White marlin
0:00 landed wahoo
`)
}

// TestWeightsThatAreGuesses holds that a weight among fish in words is a guess where the log says that those without a
// word for the scale are, and is asked about where it says nothing.
func TestWeightsThatAreGuesses(t *testing.T) {
	const rows = "Date,In,Up,Lines,Knots,Boated,Fish\n2026-06-03,06:00,09:00,4,7,2,\"mahi 12#, wahoo 31.5# scale\"\n" +
		"2026-06-04,06:00,09:00,4,7,1,wahoo 40.5#\n2026-06-05,06:00,09:00,4,7,0,\n" +
		"2026-06-06,06:00,09:00,4,7,1,mahi 20#\n"
	for above, want := range map[string]int{"# = eyeball unless it says scale\n": 0, "": 2} {
		got := readText(t, "log.csv", above+rows)
		n := 0
		for _, p := range got.problems {
			if strings.Contains(p.Reason, "from a scale, or a guess?") {
				n++
			}
		}
		if n != want {
			t.Errorf("%q: %d weights set aside, expected %d", above, n, want)
		}
	}
}
