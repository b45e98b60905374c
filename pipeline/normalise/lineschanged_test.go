package normalise

import (
	"strings"
	"testing"
)

// TestLinesChangedInRemarks parts a stretch where a remark says at what time one of two numbers of lines became the
// other, and leaves it alone where that is not said.
func TestLinesChangedInRemarks(t *testing.T) {
	text := "Date,In,Up,Lines,Knots,Remarks\n2026-06-03,06:00,08:00,5,7,\n2026-06-04,06:00,08:00,5,7,\n" +
		"2026-06-05,06:30,11:00,7 / 5,7,7 lines until 08:10 then 5 (a tangle)\n" +
		"2026-06-06,06:30,11:00,7 / 5,7,a tangle at 08:10\n" +
		"2026-06-07,06:30,11:00,7 til 0810 then 5L,7,\n2026-06-08,06:30,11:00,7 lines until 8:10; 5,7,\n" +
		"2026-06-09,06:30,11:00,7 til 1210 then 5,7,\n" + strings.Repeat("2026-06-10,06:00,08:00,5,7,\n", 9)
	x, u := only(t, csvOf(text))
	r, err := x.Reader(u, Settings{})
	if err != nil {
		t.Fatal(err)
	}
	for _, row := range u.Block.Rows {
		_, _, problems := r.Row(RowOf(row))
		sides := r.Sides()
		switch {
		case (row.Num == 4 || row.Num == 6 || row.Num == 7) && (len(sides) != 2 || len(problems) > 0 ||
			sides[0].Values["end_s"].Int != 8*3600+600 ||
			sides[0].Values["lines_out"].Int != 7 || sides[1].Values["lines_out"].Int != 5):
			t.Errorf("told in the remark: %v %v", sides, problems)
		case (row.Num == 5 || row.Num == 8) && (len(sides) > 0 || len(problems) == 0):
			t.Errorf("not told: %v %v", sides, problems)
		}
	}
}
