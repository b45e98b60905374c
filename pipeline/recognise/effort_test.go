package recognise

import (
	"strings"
	"testing"
)

// TestStartAndEndWhateverTheyAreCalled holds that two columns of clock times in turn
// are a stretch of trolling beside lines out or a speed, and that those of a strike, of
// the dock or in no order are not.
func TestStartAndEndWhateverTheyAreCalled(t *testing.T) {
	table, err := Default()
	if err != nil {
		t.Fatal(err)
	}
	for _, c := range []struct {
		head, rows string
		start, end string // headings, "" where there is no effort
	}{
		{"Date|Start|Quit|Lines|Catch", "12/6/25|0530|2045|4|3;13/6/25|0515|2050|4|1", "Start", "Quit"},
		{"Date|Trolled from|to|Rods|Outcome", "12/6/25|6h15|13h|4|lost;15/6/25|6h30|14h10|4|", "Trolled from", "to"},
		{"Date|Set|Hauled|Speed (kt)|Lines|Time of hit|Outcome", "5/9/25|0630|1500|4|3|0915|landed;12/9/25|0615|1610|4|3||", "Set", "Hauled"},
		{"Date|Set|Hauled|Speed (kt)|Lines", "5/9/25|2230|0415|4|3;12/9/25|2200|0510|4|3", "Set", "Hauled"},
		{"Date|Wet|Dry|Speed (kt)|Notes", "5/9/25|0630|1500|4|;12/9/25|0615|1610|4|slow", "Wet", "Dry"},
		{"Date|Set|Hauled|Lines|Outcome", "5/9/25|0630|0625|3|lost;12/9/25|0615|0610|3|lost", "", ""},
		{"Date|Time of hit|Gaffed at|Speed (kt)|Outcome", "5/9/25|0630|0745|4|landed;12/9/25|0615|0710|4|landed", "", ""},
		{"Date|Hooked up|Aboard at|Lines|Outcome", "5/9/25|0630|0635|4|landed;12/9/25|0615|0624|4|landed", "", ""},
		{"Date|Left dock|Back at dock|Speed (kt)|Lines", "5/9/25|0630|1500|4|3;12/9/25|0615|1610|4|3", "", ""},
	} {
		rows := [][]string{strings.Split(c.head, "|")}
		for _, r := range strings.Split(c.rows, ";") {
			rows = append(rows, strings.Split(r, "|"))
		}
		l, _ := table.Sheet("log", rows)
		got := map[string]string{}
		for _, b := range l.Bindings {
			got[b.Column.Name] = b.Heading
		}
		if got["start_s"] != c.start || got["end_s"] != c.end {
			t.Errorf("%s: start %q, end %q, expected %q and %q", c.head, got["start_s"], got["end_s"], c.start, c.end)
		}
		notes := strings.Join(l.Notes, "\n")
		if said := strings.Contains(notes, "taken for start and end"); said != (c.start != "") {
			t.Errorf("%s: notes %q", c.head, notes)
		}
		if lost := c.start == "" && strings.Contains(c.head, "Lines"); lost != strings.Contains(notes, "no effort is counted") {
			t.Errorf("%s: notes %q, expected a word on lines without effort: %t", c.head, notes, lost)
		}
	}
}
