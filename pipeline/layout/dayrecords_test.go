package layout

import (
	"strings"
	"testing"

	"wakeledger/testdata/memory"
)

// TestDayRecords holds that a line a day with labels that come again is a record: the labels are columns, in whatever
// order a line has them, and what stands behind a colon or a slash is listed, or a remark.
func TestDayRecords(t *testing.T) {
	for name, test := range map[string]struct{ text, want string }{
		"capitals, figures with letters": {"my boat\n4 jun WI 0630 WO 1030 4L 9k TB 0 / wx good\n" +
			"7 jun WI 0630 WO 1030 4L 9k TB 6 OB 1: 1 yft / clean 82\n" +
			"9 jun WI 0620 WO 1020 6L til 0850 then 4L 8k TB 5 OB 2: x, y\n" +
			"11 jun blown out\n14 jun WO 1215 WI 0615 5L TB 3 OB 2: x\n" +
			"21 jun WI 0620 WO 1320 6L wide open, no count. OB 9: z",
			"date|WI|WO|L|k|TB|OB|fish|notes\n4 jun|0630|1030|4|9|0|||wx good\n" +
				"7 jun|0630|1030|4|9|6|1|1 yft|clean 82\n" +
				"9 jun|0620|1020|6 til 0850 then 4L|8|5|2|x, y\n11 jun||||||||blown out\n14 jun|0615|1215|5||3|2|x\n" +
				"21 jun|0620|1320|6|||9|z|wide open, no count."},
		"signs": {"3/6/25 in=0630 up: 1030; rods:4 bites=3. One mahi.\n5/6/25 in=0615 up: 1130; rods:5 bites=0.\n" +
			"6/6/25 in=6:15 am up: 1130; rods:5 bites=0.\n7/6/25 in=0615 up: 1130; rods:5 bites=1. Birds\n" +
			"8/6/25 in=0615 up: 1130; rods:5 bites=0.",
			"date|in|up|rods|bites|what happened\n3/6/25|0630|1030|4|3|One mahi.\n5/6/25|0615|1130|5|0\n" +
				"6/6/25|6:15 am|1130|5|0\n7/6/25|0615|1130|5|1|Birds\n8/6/25|0615|1130|5|0"},
		"two stretches": {strings.Repeat("3 jun in=0630 up=0830 in=0900 up=1100 rods=4 bites=3\n", 5),
			"date|in 1|up 1|rods|bites|in 2|up 2" + strings.Repeat("\n3 jun|0630|0830|4|3|0900|1100", 5)},
		"dashes between, a label among the fish": {strings.Repeat(
			"3 jun WI 6:30a WO 1:30p - TB 3 OB 2 SF 1 - mahi, x sf\n"+
				"4 jun WI 6:30a WO 1:30p - TB 0 OB 0 SF 0 - zip\n", 3),
			"date|WI|WO|TB|OB|SF|what happened" + strings.Repeat("\n3 jun|6:30a|1:30p|3|2|1|mahi, x sf\n"+
				"4 jun|6:30a|1:30p|0|0|0|zip", 3)},
		"a line of the afternoon, one that goes on": {strings.Repeat("3 jun in=0630 up=0830 rods=4 bites=3\n"+
			"in=0900 up=1100 rods=4 bites=0\n", 5) + "cold all day",
			"date|in|up|rods|bites|notes" + strings.Repeat("\n3 jun|0630|0830|4|3\n"+
				"3 jun|0900|1100|4|0", 5) + "|cold all day"},
		"the day in a line of its own": {strings.Repeat("3 jun in=0630 up=0830 rods=4 bites=3\n\n4 jun\n"+
			"in=0900 up=1100 rods=4 bites=0\n", 3), "date|in|up|rods|bites" +
			strings.Repeat("\n3 jun|0630|0830|4|3\n4 jun|0900|1100|4|0", 3)},
		"figures before their words": {strings.Repeat("3 jun 0630 1030 4 lines 7 knots 3 bites 2 landed\n", 6), ""},
		"prose": {strings.Repeat("3 jun we trolled from 0630 to 1030 with 4 lines, 7 knots and had 3 bites\n", 6),
			""},
	} {
		g, err := Read(memory.Book{memory.Lines("log", strings.TrimSpace(test.text))}, 0, 1000)
		if err != nil {
			t.Fatal(err)
		}
		g.Info.Workbook = false
		b, ok := g.dayRecords(like)
		var lines []string
		if ok {
			var labels []string
			for _, l := range b.Labels {
				labels = append(labels, l.Text)
				if l.Glued != (len(l.Text) == 1) {
					t.Errorf("%s: %s: glued %t", name, l.Text, l.Glued)
				}
			}
			lines = append(lines, strings.Join(labels, "|"))
			for _, row := range b.Rows {
				var cells []string
				for _, l := range b.Labels {
					cells = append(cells, row.at(l.Col).Text)
				}
				lines = append(lines, strings.TrimRight(strings.Join(cells, "|"), "|"))
			}
		}
		if got := strings.Join(lines, "\n"); got != test.want {
			t.Errorf("%s:\n%s\nwant\n%s", name, got, test.want)
		}
	}
}

// TestDayBeforeLabels holds that words behind a day that end in a number are no year, and that a day of three parts
// before a word that is a unit, too, is no figure of it.
func TestDayBeforeLabels(t *testing.T) {
	for text, want := range map[string]string{"7 jun WI 0630 / clean blue 82": "WI 0630 / clean blue 82",
		"3/6/25 in 0630": "in 0630", "2 Jan 24": ""} {
		if _, what, ok := dayLine(text, ""); !ok || what != want {
			t.Errorf("%q: %t %q", text, ok, what)
		}
	}
}
