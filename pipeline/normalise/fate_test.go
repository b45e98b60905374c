package normalise

import "testing"

// TestFateInRemarks holds that a clause of the remarks which tells what became of a fish and nothing else is its fate,
// and that words in place of a scale's weight say that it was let go.
func TestFateInRemarks(t *testing.T) {
	rows := log{text: "Date|Start|Stop|Species|Kg|Remarks\n2026-06-03|06:00|11:00|Wahoo|14.2|iced\n" +
		"2026-06-04|06:00|11:00|Blue marlin||released it, 25 min\n2026-06-05|06:00|11:00|Dorado|8.1|lost a lure\n" +
		"2026-06-06|06:00|11:00|Wahoo||came off at the boat\n2026-06-07|06:00|11:00|Dorado|swam off|calm"}.read(t)
	for i, want := range []string{"landed", "released", "", "lost", ""} {
		if got := rows[i].values["outcome"]; got != want {
			t.Errorf("row %d: %q, expected %q", i+2, got, want)
		}
	}
	if kept := rows[4].values["kept"]; kept != "0" && kept != "false" {
		t.Errorf("kept %q, expected that it was let go: %v", kept, rows[4])
	}
}
