package normalise_test

import "testing"

// TestOpenedByPairs holds that a line which names an outing by its number and its day and goes on with labels and their
// values, in cells or in one text, tells its hours, and that the bites beneath are of it; that a line of nothing struck
// is none; and that one heading may stand above all outings.
func TestOpenedByPairs(t *testing.T) {
	for name, text := range map[string]string{
		"cells, a heading each": "Trip 1,2026-05-02,Trolled,3 h,Knots,8\n" +
			"Time,Rod,Fish,Outcome\n06:50,left,wahoo,landed\n" +
			"07:10,right,,missed\n,,,\nTrip 2,2026-05-09,Trolled,2 h,Knots,7\nno bites\n\n" +
			"Trip 3,2026-05-16,Trolled,1 h 30 min,Knots,7\nTime,Rod,Fish,Outcome\n06:50,left,wahoo,lost\n",
		"one text, a heading above all": "Time,Rod,Fish,Outcome\n" +
			"\"Trip 1, 2026-05-02; trolled 3 h; knots 8\"\n06:50,left,wahoo,landed\n" +
			"07:10,right,,missed\n\n\"Trip 2, 2026-05-09; trolled 2 h; knots abt 7\"\nno bites\n\n" +
			"\"Trip 3, 2026-05-16; trolled 1 h 30 min; knots 7\"\n06:50,left,wahoo,lost\n",
	} {
		got := readText(t, "log.csv", text)
		hours, bites := 0.0, map[any]int{}
		for _, row := range got.entries {
			if h, ok := row["duration_s"].(float64); ok {
				hours += h
			}
			bites[row["outcome"]]++
		}
		if hours != 6.5*3600 || len(got.problems) > 0 ||
			bites["landed"] != 1 || bites["missed"] != 1 || bites["lost"] != 1 {
			t.Errorf("%s: %.0f s, %v, problems %v", name, hours, bites, got.problems)
		}
	}
}

// TestAnswers holds that a row which answers that a bite was not hooked is of one that was missed, and that one whose
// fish was landed and let go released it.
func TestAnswers(t *testing.T) {
	got := readText(t, "log.csv", "Date,Time,Species,Stuck?,To boat?,Let go?\n2026-05-02,06:50,wahoo,Y,Y,\n"+
		"2026-05-02,07:20,,n,,\n2026-05-09,08:50,wahoo,Y,Y,Y\n2026-05-09,09:10,,Y,n,\n")
	expect(t, "missed", got.field("missed_n", 2, 3, 4, 5), nil, int64(1), nil, nil)
	expect(t, "landed", got.field("landed_n", 2, 3, 4), int64(1), nil, int64(0))
	expect(t, "released", got.field("released_n", 4, 5), int64(1), nil)
}
