package meaning

import (
	"strings"
	"testing"
)

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

// TestCountsAgain holds that counts which rows of one stretch repeat are counted once, unless they have fewer bites
// than rows.
func TestCountsAgain(t *testing.T) {
	heads := "Date|Start|Stop|Lines|Bites|Species|Result\n"
	alone := "9/6/26|06:00|11:00|4|0||\n10/6/26|06:00|11:00|4|2|Dorado|lost\n11/6/26|06:30|11:00|4|1|Dorado|lost\n"
	three := "3/6/26|06:00|12:00|4|N|Wahoo|landed\n3/6/26|06:00|12:00|4|N|Wahoo|lost\n" +
		"3/6/26|06:00|12:00|4|N|Dorado|landed\n4/6/26|06:00|11:00|4|N|Wahoo|landed\n4/6/26|06:00|11:00|4|N|Wahoo|lost\n"
	for n, want := range map[string]bool{"5": true, "1": false} {
		u := inferred(t, "log", nil, "Log", heads+strings.ReplaceAll(three, "N", n)+alone).Data()[0]
		if u.Plan.EffortOnce != want || u.Again.Counts != want {
			t.Errorf("%s bites on each row: once %t (%+v)", n, u.Plan.EffortOnce, u.Again)
		}
	}
}

// TestSaidAgain holds that a log which says that its rows repeat their day is believed, whatever its counts, and that
// a count of misses alone is no bound for the fish of a day.
func TestSaidAgain(t *testing.T) {
	rows := "Date|Start|Stop|Lines|HEAD|Species|Result\n9/6/26|06:00|11:00|4|0||\n" +
		"10/6/26|06:00|11:00|4|2|Dorado|lost\n11/6/26|06:30|11:00|4|1|Dorado|lost\n" +
		"3/6/26|06:00|12:00|4|1|Wahoo|landed\n3/6/26|06:00|12:00|4|1|Wahoo|lost\n" +
		"3/6/26|06:00|12:00|4|1|Dorado|landed\n4/6/26|06:00|11:00|4|1|Wahoo|landed\n4/6/26|06:00|11:00|4|1|Wahoo|lost\n"
	for _, c := range []struct {
		head, above string
		once, asked bool
	}{
		{"Bites", "", false, false},
		{"Bites", "The day's figures are repeated on every line of that day\n\n", true, false},
		{"Missed", "", true, true},
		{"Missed", "Hours and misses are per day, copied down\n\n", true, false},
	} {
		u := inferred(t, "log", nil, "Log", c.above+strings.Replace(rows, "HEAD", c.head, 1)).Data()[0]
		if u.Plan.EffortOnce != c.once || u.Again.Unsure() != c.asked {
			t.Errorf("%s below %q: once %t, asked %t (%+v)", c.head,
				c.above, u.Plan.EffortOnce, u.Again.Unsure(), u.Again)
		}
	}
}

// TestLuresTogether holds that lures of one day with the same hours were out together, and that one which stands there
// twice was not.
func TestLuresTogether(t *testing.T) {
	rows := "Date|Lure|Hours|Bites|Landed\n3/6/26|Blue jet|6|1|1\n3/6/26|Pink squid|6|0|0\n3/6/26|Plug|6|2|1\n" +
		"4/6/26|Blue jet|5|0|0\n4/6/26|Pink squid|5|1|0\n4/6/26|Plug|5|1|1\n" +
		"9/6/26|Blue jet|5.5|0|0\n9/6/26|LAST|5.5|1|1\n"
	for last, want := range map[string]bool{"Plug": true, "Blue jet": false} {
		u := inferred(t, "log", nil, "Log", strings.Replace(rows, "LAST", last, 1)).Data()[0]
		if u.Plan.LureLines != want {
			t.Errorf("last %s: together %t (%+v)", last, u.Plan.LureLines, u.Beside)
		}
	}
}
