package normalise_test

import (
	"strings"
	"testing"
)

// TestEventSpreads holds that the number of high-speed rods is not that of the spread that follows, that the speed at
// one bite changes none, and that a fish alone is what the log says of it.
func TestEventSpreads(t *testing.T) {
	const text = "Deck log 2024, just the fish = boxed\n\nSat 4 May\n5:30 untied\n" +
		"6:40 high speed rods in, 3 of them, 14 kts\n7:10 wahoo\n7:30 picked them up\n7:45 lines in, 7 kts\n" +
		"8:20 mahi\n8:40 mahi boxed, doing 8.5 then\n9:30 lines up\n\n" +
		"Sun 5 May\n5:30 untied\n6:40 lines in, 5 rods, 7 kts\n8:20 mahi released\n9:30 lines up\n"
	told, aside := readEvents(t, "deck.txt", text)
	all := strings.Join(told, "\n")
	for _, want := range []string{"7:10 landed wahoo", "8:20 landed mahi", "8:40 landed mahi", "6:40-7:30 3 at 14",
		"7:45-9:30 0 at 7", "6:40-9:30 5 at 7"} {
		if !strings.Contains(all, want) {
			t.Errorf("expected %s:\n%s", want, all)
		}
	}
	if len(aside) > 0 {
		t.Errorf("set aside: %v", aside)
	}
}

// TestSpeedsOfBites holds that a speed in the row of a bite is that of the bite alone where changes of the stretch's
// speed have rows of their own, and a change of it where they have none.
func TestSpeedsOfBites(t *testing.T) {
	const rows = "Date,Time,Event,Lines,Knots,Fish,Result\n2025-06-12,06:00,lines in,5,7,,\n" +
		",07:00,strike,,8,wahoo,lost\n,09:00,lines up,,,,\n" +
		"2025-06-13,06:00,lines in,5,7,,\n,08:00,change,5,9,,\n,10:00,lines up,,,,\n" +
		"2025-06-14,06:00,lines in,5,7,,\n,08:00,change,5,9,,\n,10:00,lines up,,,,\n"
	told, _ := readEvents(t, "bites.csv", rows)
	if told[0] != "7:00 lost wahoo" || told[1] != "6:00-9:00 5 at 7" {
		t.Errorf("changes have rows: %q", told)
	}
	told, _ = readEvents(t, "bites.csv", strings.ReplaceAll(rows, ",08:00,change,5,9,,\n", ""))
	if told[0] != "6:00-7:00 5 at 7" {
		t.Errorf("changes have none: %q", told)
	}
}
