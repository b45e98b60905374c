package normalise

import (
	"strconv"
	"testing"
)

// TestExcepted holds that a trip or a day of which the log says so has another number of lines than is usual.
func TestExcepted(t *testing.T) {
	for said, want := range map[string]string{"Only on trip 2 it was 3": "4 3 4", "Only on 5 June it was 3": "4 4 3",
		"Only on trip 9 (2026-06-05) it was 3": "4 4 4"} {
		got := ""
		for _, row := range (log{text: "We always pull 4 lines. " + said + ".\n\nTrip|Date|Start|End\n" +
			"1|2026-06-03|06:00|08:00\n2|2026-06-04|06:30|09:00\n3|2026-06-05|07:00|09:00"}).read(t) {
			if v := row.values["lines_out"]; v != "" {
				got += " " + v
			}
		}
		if got != " "+want {
			t.Errorf("%s: lines%s, expected %s", said, got, want)
		}
	}
}

// TestLinesOfRow holds that a remark which says how many lines were out on its row stands above what is usual, and that
// one which says more is set aside.
func TestLinesOfRow(t *testing.T) {
	for said, want := range map[string]string{"5 rods today": "5 0", "6 rods after 10": "4 1", "nothing": "4 0"} {
		rows := (log{text: "4 rods unless noted\n\nDate|Start|End|Bites|Remarks\n2026-06-03|06:00|08:00|1|" + said +
			"\n2026-06-04|06:00|08:00|1|calm"}).read(t)
		if got := rows[0].values["lines_out"] + " " + strconv.Itoa(len(rows[0].problems)); got != want {
			t.Errorf("%s: %s, expected %s", said, got, want)
		}
	}
}
