package unit

import "testing"

// TestDaySpan holds that the first and the last of some days are told from one day, and that what may be read in
// two ways is none.
func TestDaySpan(t *testing.T) {
	for text, want := range map[string]struct {
		first string
		days  int
	}{
		"7/13-14/24": {"7/13/24", 2}, "13-14/7/24": {"13/7/24", 2}, "13.-15.7.2024": {"13.7.2024", 3},
		"13-14 Jul": {"13 Jul", 2}, "13 y 14 de julio de 2024": {"13 de julio de 2024", 2},
		"Jul 13-14, 2024":   {"Jul 13, 2024", 2},
		"July 13th to 14th": {"July 13", 2}, "2024-07-13/14": {"2024-07-13", 2},
		"2024-07-13 - 2024-07-14": {"2024-07-13", 2},
		"13/7-14/7/24":            {"13/7/24", 2}, "7/13-7/14/24": {"7/13/24", 2}, "13/7/24-14/7/24": {"13/7/24", 2},
		"13/14 Jul 2024": {"13 Jul 2024", 2}, "del 13 al 15 de julio de 2024": {"13 de julio de 2024", 3},
		"Sat 13 and Sun 14 July (slept aboard)": {"13 July", 2},
		"8/3 - 8/4":                             {"3 Aug", 2}, "3/8 - 4/8": {"3 Aug", 2},
		"05/07 a 06/07": {"05 Jul", 2}, "07/07 a 08/07": {"07 Jul", 2},
		"7/19-20 overnite": {"19 Jul", 2},
		"6/17-18":          {"17 Jun", 2}, "8/12 - 14": {"12 Aug", 3},
		"Fri 12 - Sun 14 July 2024":            {"12 July 2024", 3},
		"du samedi 13 au dimanche 14 mai 2024": {"13 mai 2024", 2},
	} {
		if first, days, ok := DaySpan(text); !ok || first != want.first || days != want.days {
			t.Errorf("%q: %q, %d days, %t, expected %q, %d", text, first, days, ok, want.first, want.days)
		}
	}
	if m, err := ParseMoment("Jul 13-14, 2024", OrderUnknown); err == nil {
		t.Errorf("two days are the moment %v", m)
	}
	for _, text := range []string{"13/7/24", "3/8/24", "2024-07-13", "3-8-24",
		"13 Jul 2024", "8/10-11/10", "14-13/7/24",
		"6-8", "28/7-2/8/24", "Sat 7/12", "Fri 7-8", "6/7 Sat", "6/7 24", "13-14", "", "1/2", "3/8/2024"} {
		if first, days, ok := DaySpan(text); ok {
			t.Errorf("%q: %q, %d days", text, first, days)
		}
	}
}

// TestTwoDaysAreNoYear holds that the last of some days of a month is not taken for a year.
func TestTwoDaysAreNoYear(t *testing.T) {
	for _, text := range []string{"Jun 13-14", "Aug 30-31", "Sept 2-4"} {
		if m, err := ParseMoment(text, OrderUnknown); err == nil {
			t.Errorf("%s is read as %v", text, m)
		}
	}
	if m, err := ParseMoment("Jun-13-24", OrderUnknown); err != nil || m.Date != DateOf(2024, 6, 13) {
		t.Errorf("Jun-13-24 is read as %v, %v", m, err)
	}
}
