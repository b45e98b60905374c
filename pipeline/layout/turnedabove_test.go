package layout

import "testing"

// Records in columns, a day each, stand above a table with headings of its own: each is a block, and the texts beneath
// the records are none of their labels.
func TestTurnedAbove(t *testing.T) {
	s := take(t, "Date|2026-07-04|2026-07-05|2026-07-08\nStart|6:00|6:30|7:00\nEnd|10:00|11:00|9:30\nLines|5|6|5\n"+
		"Speed|8|7|7.5\nBites|2|0|1\n\nWhat bit\nDate|Time|Species|Length|Outcome\n2026-07-04|7:10|wahoo|110|landed\n"+
		"2026-07-04|8:20|mahi|80|landed\n2026-07-08|8:00|wahoo|120|released")
	if len(s.Blocks) != 2 || !s.Blocks[0].Turned || s.Blocks[1].Turned {
		t.Fatalf("%d blocks", len(s.Blocks))
	}
	a, b := s.Blocks[0], s.Blocks[1]
	if len(a.Rows) != 3 || len(a.Labels) != 6 || len(b.Rows) != 3 || len(b.Labels) != 5 {
		t.Errorf("%d records of %d labels, %d rows of %d", len(a.Rows), len(a.Labels), len(b.Rows), len(b.Labels))
	}
	s = take(t, "Date|2026-07-04|2026-07-05|2026-07-08\nStart|6:00|6:30|7:00\nEnd|10:00|11:00|9:30\nLines|5|6|5\n"+
		"Bites|2|0|1\nonly fish that we landed are written")
	if len(s.Blocks) != 1 || len(s.Blocks[0].Labels) != 5 {
		t.Errorf("%d labels", len(s.Blocks[0].Labels))
	}
}
