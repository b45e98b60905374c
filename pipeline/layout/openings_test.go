package layout

import (
	"fmt"
	"testing"
)

// TestOpenedByDays holds that a line of a number, a day and clock times behind labels opens an outing, whose table gets
// what it says, and that an outing without a table is told by its line and the words beneath it.
func TestOpenedByDays(t *testing.T) {
	const head = "\nrod|time|bites|landed|notes\n"
	text := ""
	for i, said := range []string{"5.5 kts|me driving", "6 kts", "6.5 kts|hot"} {
		text += fmt.Sprintf("#%d Sat 6/%d|start|6:00 am|end|2:30 pm|%s", i+1, 8+7*i, said) + head +
			"long|8.5|3|1|\nshort|8.5\nall rods|17|3|1\n\n"
	}
	s := take(t, text+"#4 again Sat 6/29|start|6:00 am|end|1:30 pm\nno rods kept, 4 bites\nSun 6/30|stayed in")
	const rows = "3=long 4=short 5=all rods 9=long 10=short 11=all rods 15=long 16=short 17=all rods"
	const want = "records [trip,date,start,end,kts,what happened] 19=4; " +
		"table [rod,time,bites,landed,notes,trip,date,start,end,kts,notes] " + rows
	if got := shown(s); got != want {
		t.Errorf("%s\nwant %s", got, want)
	}
	if len(s.Blocks) != 2 {
		return
	}
	first, second := s.Blocks[1].Rows[0].Cells, s.Blocks[1].Rows[1].Cells
	n := len(first)
	if first[n-1].Text != "me driving" || first[n-2].Text != "5.5" || second[n-1].Text != "" {
		t.Errorf("%v, %v", first, second)
	}
	if s := take(t, "#1 Sat 6/8|start|6:00 am\n#2 Sat 6/15|start|7:00 am"); len(s.Blocks) > 1 {
		t.Errorf("two lines are no outings: %s", shown(s))
	}
}
