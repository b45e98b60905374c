package meaning

import (
	"strings"
	"testing"
	"time"

	"wakeledger/pipeline/layout"
	"wakeledger/pipeline/unit"
	"wakeledger/testdata/memory"
)

// onDay infers a log of one sheet on a day.
func onDay(t *testing.T, today unit.Date, text string) *Log {
	t.Helper()
	l, err := Default(lexicon(t).Species)
	if err != nil {
		t.Fatal(err)
	}
	l.Today = today
	s := layout.Take(gridOf(t, 0, memory.Lines("log", text)),
		layout.Likeness{Label: l.Label, Key: l.Key, Event: l.Event})
	return l.Infer("log", []*layout.Sheet{s}, nothingSaid, nil)
}

// Days that nowhere have a year are of the last that fits: with the weekdays beside them, not after today, and over the
// new year where the months go on.
func TestTakenYear(t *testing.T) {
	today := unit.DateOf(2026, time.September, 10)
	for days, want := range map[string]unit.Years{
		"16 May|18 May|8 Jun|16 Jul":                  {From: 2026, To: 2026},
		"16 May|18 May|8 Jun|16 Nov":                  {From: 2025, To: 2025},
		"Tue 18 May|Wed 26 May|Sat 29 May|8 Jun":      {From: 2021, To: 2021},
		"7 Nov|12 Dec|9 Jan|3 Feb":                    {From: 2025, To: 2026},
		"7 Nov 2024|12 Dec|9 Jan|3 Feb":               {From: 2024, To: 2024},
		"1 Jan 2000|2 Jan 2000|3 Jan 2000|4 Jan 2000": {},
	} {
		text := "Date|Hours|Lines|Bites"
		for i, day := range strings.Split(days, "|") {
			text += "\n" + day + "|" + []string{"4", "3", "5", "2"}[i] + "|5|1"
		}
		l := onDay(t, today, text)
		if got := l.Data()[0].Plan.Years; got != want {
			t.Errorf("%s: %v, want %v", days, got, want)
		}
		if asked := l.NoYear != nil; asked != !strings.Contains(days, " 20") {
			t.Errorf("%s: asked about %t", days, asked)
		}
	}
}
