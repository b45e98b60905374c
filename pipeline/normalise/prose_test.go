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
