package layout

import (
	"testing"

	"wakeledger/pipeline/sheet"
)

func TestLookOf(t *testing.T) {
	for look, texts := range map[Look][]string{
		Blank:    {"", "-", "--", "—"},
		Number:   {"4", "8.5", "7,5", "~8", "120 cm", "5 lines", "$40", "74 1/2", "7-8 kn", "9?"},
		Clock:    {"06:10", "6.10 am", "7am", "6h15", "2h45", "4:40 p.m.", "noon"},
		Date:     {"3/6/26", "2026-06-03", "3-Jun", "Sat, June 25, 2026", "12 juin", "2026-06-03 06:10", "lun 8/6"},
		Duration: {"3 hours", "40 min", "1 hr 20 min"},
		Text: {"Wahoo", "UTC-9", "Pass 2", "2 wahoo", "lost at the boat",
			"a text that is longer than any number or any clock time"},
	} {
		for _, text := range texts {
			if got := lookOf(text, sheet.Plain); got != look {
				t.Errorf("%q looks like %d, expected %d", text, got, look)
			}
		}
	}
}

// TestClasses holds that what a workbook says of a number stands above how it looks.
func TestClasses(t *testing.T) {
	for class, want := range map[sheet.Class]Look{sheet.Plain: Number, sheet.Date: Date, sheet.DateTime: Date,
		sheet.Clock: Clock, sheet.Duration: Duration} {
		if got := lookOf("0.25", class); got != want {
			t.Errorf("class %d: %d, expected %d", class, got, want)
		}
	}
	if got := lookOf("Wahoo", sheet.Clock); got != Text {
		t.Errorf("a word in a cell of clock format looks like %d", got)
	}
}
