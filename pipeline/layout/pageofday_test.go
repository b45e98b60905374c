package layout

import "testing"

// TestPagesOfDays holds that rows under the page of an outing get its day, that a text alone under its row is said of
// it, and that a first row of words under headings that come again is none of them.
func TestPagesOfDays(t *testing.T) {
	const day, bites = "Date|Start|Lines|Notes\n", "|Time|Species|Fate\n"
	s := take(t, day+"3/6/26|06:00|4|\n"+bites+"||wahoo|lost\n|07:00|mahi|landed\n"+
		day+"4/6/26|06:00|4|\n|nothing||\n"+
		day+"8/6/26|06:00|4|\n"+bites+"|08:00|mahi|landed\n")
	var days []string
	for _, b := range s.Blocks {
		if b.Labels[len(b.Labels)-1].Text == "Date" {
			for _, r := range b.Rows {
				days = append(days, r.at(4).Text)
			}
		}
	}
	if len(days) != 3 || days[0] != "3/6/26" || days[1] != "3/6/26" || days[2] != "8/6/26" {
		t.Errorf("days of bites: %q", days)
	}
	if b := s.Blocks[2]; len(b.Rows) != 1 || b.Rows[0].at(4).Text != "nothing" {
		t.Errorf("said alone: %+v %s %+v", b.Rows, shown(s), s.Notes)
	}
	two := ""
	for _, d := range []string{"3", "4", "8"} {
		two += "Date|Speed||\n" + d + "/6/26|7||\n" + bites + "|07:00|mahi|landed\n|\n"
	}
	if s := take(t, two); len(s.Blocks) != 6 || s.Blocks[1].Rows[0].at(4).Text != "3/6/26" {
		t.Errorf("headings of two words: %s", shown(s))
	}
}
