package meaning

import (
	"fmt"
	"testing"

	"wakeledger/pipeline/plan"
)

// TestCorrections holds that a row which mends another one, or takes it back, does so where the other says what it says
// that it did.
func TestCorrections(t *testing.T) {
	const head = "No|Date|In|Up|Hours|Lines|Knots|Bites|Remarks\n"
	const rows = "1|2026-06-03|06:00|08:30|2.5|4|17|3|\n2|2026-06-04|06:00|09:00|3|4|7|2|\n" +
		"3|2026-06-04|06:00|09:00|3|4|7|2|\n4|2026-06-09|06:30|08:00|1.5|5|7|1|\n"
	p := planOf(t, "log", head+rows+"5|2026-06-10||||||"+"|Amends no 1: knots were 7, not 17\n"+
		"6|2026-06-10|||-3|||-2|void no 3, which is no 2 again\n7|2026-06-11||||||"+
		"|Amends no 4: bites were 2, not 6\n")
	if got := p.Cells[plan.Cell{Row: 2, Index: 6}]; got != "7" {
		t.Errorf("the speed of the first row: %q", got)
	}
	for row, want := range map[int64]bool{2: false, 4: true, 5: false, 6: true, 7: true, 8: false} {
		if p.Drop[row] != want {
			t.Errorf("row %d is left out: %t", row, p.Drop[row])
		}
	}
	if !p.Mends[8] || len(p.Mends) != 1 {
		t.Errorf("rows to be asked about: %v", p.Mends)
	}
}

// TestFateMended holds that a trip's remark mends what became of a fish of an earlier trip, which it names by its
// number and of which it says what is written there; else it is asked about.
func TestFateMended(t *testing.T) {
	const trips = "Trip|Date|Left|Back|Remarks\n1|2026-06-03|06:00|12:00|\n2|2026-06-09|06:00|12:00|" +
		"Corrects trip 1: wahoo no. 2 was released; it says %s\n3|2026-06-12|06:00|12:00|"
	fish := "Trip|Nr|Time|Species|Fate"
	for trip := range 3 {
		for n := range 4 {
			fish += fmt.Sprintf("\n%d|%d|%02d:00|wahoo|kept", trip+1, n+1, n+7)
		}
	}
	for says, want := range map[string]bool{"kept": true, "lost": false} {
		l := inferred(t, "log", nil, "Trips", fmt.Sprintf(trips, says), "Fish", fish)
		mended, asked := false, false
		for _, u := range l.Data() {
			for cell, text := range u.Plan.Cells {
				mended = mended || cell.Row == 3 && text == "released"
			}
			asked = asked || u.Plan.Mends[3]
		}
		if mended != want || asked == want {
			t.Errorf("it says %s: mended %t, asked about %t", says, mended, asked)
		}
	}
}

// TestOwnCorrections holds that a remark mends the figure of its own row that it says is wrong, and no other one.
func TestOwnCorrections(t *testing.T) {
	p := planOf(t, "log", "No|Date|In|Up|Lines|Knots|Remarks\n1|2026-06-03|06:00|08:30|4|6|make it 5 lines, not 4\n"+
		"2|2026-06-04|06:00|09:00|5|7|5 lines, and not 4\n3|2026-06-09|06:30|08:00|4|7|calm")
	if got := p.Cells[plan.Cell{Row: 2, Index: 4}]; got != "5" || len(p.Cells) != 1 {
		t.Errorf("cells read in place of others: %v", p.Cells)
	}
}
