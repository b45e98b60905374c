package layout

import "testing"

// TestUnderGroups holds that the same few words under several names are headings in groups, and that a table's first
// row is none.
func TestUnderGroups(t *testing.T) {
	for text, want := range map[string]string{
		"date|lines|Thon||Dorade||Bonite||notes\n||gardé|perdu|gardé|perdu|gardé|perdu|\n2026-06-03|5|1||2|1|||mer " +
			"plate\n2026-06-04|5||1|||3||\n2026-06-05|4|2||||1|1|houle": "table [date,lines,Thon gardé,Thon perdu," +
			"Dorade gardé,Dorade perdu,Bonite gardé,Bonite perdu,notes] 3=2026-06-03 4=2026-06-04 " +
			"5=2026-06-05",
		"date|lines|outcome|species|notes\nsa|x|perdu|thon|perdu\ndi|y|perdu|thon|rien\nlu|y|perdu|thon|rien": "" +
			"table [date,lines,outcome,species,notes] 2=sa 3=di 4=lu",
	} {
		if got := shown(take(t, text)); got != want {
			t.Errorf("%q:\n got %s\nwant %s", text, got, want)
		}
	}
}
