package layout

import "testing"

// TestUnfilledLabels holds that records of labels beside values keep a label that no list has where some labels have
// nothing beside them, and begin with their number above the day.
func TestUnfilledLabels(t *testing.T) {
	card := func(no, day, crew string) string {
		return "No|" + no + "\nDate|" + day + "\nVel. (kn)|7\nLines|4\nSpeed|7\nNotes|" + crew + "\nTime|\n"
	}
	s := take(t, "Our year|\n|\n"+card("1", "3/6/26", "")+"|\n"+card("2", "4/6/26", "Ann")+"|\n"+
		card("", "8/6/26", "")+"|\n"+card("3", "9/6/26", "Ben"))
	if len(s.Blocks) != 1 || len(s.Blocks[0].Rows) != 4 || len(s.Blocks[0].Labels) != 7 ||
		s.Blocks[0].Labels[0].Text != "No" || s.Blocks[0].Labels[2].Text != "Vel. (kn)" {
		t.Errorf("%s", shown(s))
	}
}
