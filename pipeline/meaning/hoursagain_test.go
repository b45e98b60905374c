package meaning

import "testing"

// TestHoursAgain holds when the hours on rows of bites are those of the row above, each row's own, or asked about.
func TestHoursAgain(t *testing.T) {
	heads := "Date|Hours|Lines|Speed kn|Species|Result|Length in\n"
	alone := "9/6/26|6|4|8|||\n10/6/26|4|4|8|Dorado|lost|\n" +
		"11/6/26|5.5|4|8|Dorado|lost|\n12/6/26|7|5|8|Wahoo|landed|51\n"
	for name, c := range map[string]struct {
		rows        string
		once, asked bool
	}{
		"hours of the day on each row": {"3/6/26|6.5|4|8|Wahoo|landed|40\n3/6/26|6.5|4|8|Wahoo|lost|\n" +
			"3/6/26|6.5|4|8|Dorado|landed|30\n4/6/26|5|4|8|Wahoo|landed|44\n4/6/26|5|4|8|Wahoo|lost|\n", true, false},
		"three times nine hours are no day": {"3/6/26|9|4|8|Wahoo|landed|40\n3/6/26|9|4|8|Wahoo|lost|\n" +
			"3/6/26|9|4|8|Dorado|landed|30\n", true, false},
		"once alike, once not": {"3/6/26|2|4|8|Wahoo|landed|40\n3/6/26|2|4|8|Wahoo|lost|\n" +
			"4/6/26|3|4|8|Wahoo|landed|44\n4/6/26|1.5|4|8|Wahoo|lost|\n", true, true},
		"two speeds": {"3/6/26|9|4|8|Wahoo|landed|40\n3/6/26|9|4|7.5|Wahoo|lost|\n" +
			"3/6/26|9|4|8|Dorado|landed|30\n", true, true},
		"never alike": {"3/6/26|2|4|8|Wahoo|landed|40\n3/6/26|1|4|8|Wahoo|lost|\n" +
			"4/6/26|3|4|8|Wahoo|landed|44\n4/6/26|1.5|4|8|Wahoo|lost|\n", false, false},
	} {
		u := inferred(t, "log", nil, "Log", heads+c.rows+alone).Data()[0]
		if u.Plan.EffortOnce != c.once || u.Again.Unsure() != c.asked {
			t.Errorf("%s: once %t, asked %t (%+v)", name, u.Plan.EffortOnce, u.Again.Unsure(), u.Again)
		}
	}
}
