package meaning

import "testing"

// TestHoursAlone holds that a figure of one digit is an hour beside clock times without a colon, and not beside others
// or those of an evening.
func TestHoursAlone(t *testing.T) {
	for rows, want := range map[string]string{
		"2026-06-03|630|1130|3\n2026-06-04|7|11|3\n2026-06-05|545|1215|3\n2026-06-06|6:10|930|3":      "11:00",
		"2026-06-03|6:30|11:30|3\n2026-06-04|7|11|3\n2026-06-05|5:45|12:15|3\n2026-06-06|6:10|9:30|3": "",
		"2026-06-03|630|1130|3\n2026-06-04|1900|11|3\n2026-06-05|545|1215|3\n2026-06-06|6:10|930|3":   "",
	} {
		p := planOf(t, "", "Date|Start|Stop|Rods\n"+rows)
		if b := p.Find("end_s"); b == nil || b.Codes["11"] != want {
			t.Errorf("%s: %+v", rows, b)
		}
	}
}
