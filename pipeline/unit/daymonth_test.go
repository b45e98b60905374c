package unit_test

import (
	"errors"
	"testing"
	"time"

	"wakeledger/pipeline/unit"
)

func TestParseDayMonth(t *testing.T) {
	for _, c := range []struct {
		text  string
		order unit.Order
		day   int
		month time.Month
		err   error
	}{
		{"3-Jul", unit.OrderUnknown, 3, time.July, nil}, {"Jul 3", unit.OrderUnknown, 3, time.July, nil},
		{"9 sept.", unit.OrderUnknown, 9, time.September, nil}, {"7.12.", unit.DayFirst, 0, 0, unit.ErrNotDate},
		{"domenica 9 giugno", unit.OrderUnknown, 9, time.June, nil}, {"3 ott", unit.OrderUnknown, 3, time.October, nil},
		{"Sat 6 Dec", unit.OrderUnknown, 6, time.December, nil},
		{"29 Feb", unit.OrderUnknown, 29, time.February, nil}, {"30 Feb", unit.OrderUnknown, 0, 0, unit.ErrNoSuchDay},
		{"7/13", unit.OrderUnknown, 13, time.July, nil},
		{"7/12", unit.OrderUnknown, 0, 0, unit.ErrAmbiguousDate}, {"7/12", unit.MonthFirst, 12, time.July, nil},
		{"7/12", unit.DayFirst, 7, time.December, nil}, {"7/7", unit.OrderUnknown, 7, time.July, nil},
		{"7/12(Sat)", unit.MonthFirst, 12, time.July, nil}, {"7/13", unit.DayFirst, 0, 0, unit.ErrDateOrder},
		{"13/14", unit.OrderUnknown, 0, 0, unit.ErrNoSuchDay},
		{"7.12", unit.DayFirst, 0, 0, unit.ErrNotDate}, {"7-12", unit.DayFirst, 0, 0, unit.ErrNotDate},
		{"2026-06-03", unit.OrderUnknown, 0, 0, unit.ErrNotDate}, {"July", unit.OrderUnknown, 0, 0, unit.ErrNotDate},
		{"July 2026", unit.OrderUnknown, 0, 0, unit.ErrNotDate}, {"", unit.OrderUnknown, 0, 0, unit.ErrNotDate},
		{"(Sat)", unit.OrderUnknown, 0, 0, unit.ErrNotDate}, {"7/12(x)", unit.MonthFirst, 0, 0, unit.ErrNotDate},
	} {
		d, err := unit.ParseDayMonth(c.text, c.order)
		if !errors.Is(err, c.err) || err == nil && (d.Day != c.day || d.Month != c.month) {
			t.Errorf("%q, %v: %d %v, %v; expected %d %v, %v", c.text, c.order, d.Day,
				d.Month, err, c.day, c.month, c.err)
		}
	}
}

func TestDayMonthOrder(t *testing.T) {
	for text, want := range map[string]unit.Order{"7/13": unit.MonthFirst, "7/13(Sun)": unit.MonthFirst,
		"13/7": unit.DayFirst, "7/12": unit.OrderUnknown, "13/14": unit.OrderUnknown, "0/13": unit.OrderUnknown,
		"40/2": unit.OrderUnknown, "3-Jul": unit.OrderUnknown} {
		if got := unit.DayMonthOrder(text); got != want {
			t.Errorf("%q: %v, expected %v", text, got, want)
		}
	}
}

// TestYearsDate: 6 December 2025 is a Saturday, 3 January 2026 one too (calendar of those years).
func TestYearsDate(t *testing.T) {
	season := unit.Years{From: 2025, To: 2026}
	for _, c := range []struct {
		text  string
		years unit.Years
		want  string
	}{
		{"3-Jul", unit.Years{From: 2025, To: 2025}, "2025-07-03"}, {"6 Dec", season, "2025-12-06"},
		{"3 Jan", season, "2026-01-03"}, {"Sat 6 Dec", season, "2025-12-06"},
		{"Sat 3 Jan", season, "2026-01-03"}, {"Sun 6 Dec", season, "2026-12-06"}, {"Mon 6 Dec", season, ""},
		{"29 Feb", unit.Years{From: 2025, To: 2025}, ""}, {"3-Jul", unit.Years{}, ""},
	} {
		d, err := unit.ParseDayMonth(c.text, unit.OrderUnknown)
		if err != nil {
			t.Fatal(err)
		}
		got := ""
		if date, ok := c.years.Date(d); ok {
			got = date.String()
		}
		if got != c.want {
			t.Errorf("%s in %v: %q, expected %q", c.text, c.years, got, c.want)
		}
	}
}

func TestYearsIn(t *testing.T) {
	for text, want := range map[string]unit.Years{
		"Log 2025": {2025, 2025}, "baja2025.csv": {2025, 2025}, "2025-26": {2025, 2026}, "2025/2026": {2025, 2026},
		"2025 - 26.xlsx": {2025, 2026}, "Season 25/26": {2025, 2026},
		"Stagione 24/25": {2024, 2025}, "ÉPOCA 23-24": {2023, 2024},
		"25/26": {}, "2005-06": {}, "season 05/06": {2005, 2006},
		"Bonito, summer 22/23": {2022, 2023}, "summer trips from 6/7": {}, "Summer 24": {},
		"2026-06-03": {2026, 2026}, "Trip 7/5/25": {},
		"1998 and 2025": {}, "2025 (2025)": {2025, 2025}, "20250703": {}, "": {}, "1500 g": {},
	} {
		if got := unit.YearsIn(text); got != want {
			t.Errorf("%q: %v, expected %v", text, got, want)
		}
	}
}

func TestMonthIn(t *testing.T) {
	for _, c := range []struct {
		text  string
		month time.Month
		years unit.Years
		ok    bool
	}{
		{"Jan 26", time.January, unit.Years{From: 2026, To: 2026}, true}, {"July", time.July, unit.Years{}, true},
		{"2026 March", time.March, unit.Years{From: 2026, To: 2026}, true},
		{"Aug'25", time.August, unit.Years{From: 2025, To: 2025}, true}, {"Jan-Feb", 0, unit.Years{}, false},
		{"Set 2", 0, unit.Years{}, false}, {"Marlin", 0, unit.Years{}, false}, {"", 0, unit.Years{}, false},
	} {
		m, y, ok := unit.MonthIn(c.text)
		if ok != c.ok || ok && (m != c.month || y != c.years) {
			t.Errorf("%q: %v %v %t", c.text, m, y, ok)
		}
	}
}

// TestShortMeridiem: a letter alone counts behind minutes; behind an hour it may be a name.
func TestShortMeridiem(t *testing.T) {
	for text, want := range map[string]int{"6:20a": 6*3600 + 20*60, "1:40p": 13*3600 + 40*60, "6.30a": 6*3600 + 1800,
		"12.40p": 12*3600 + 2400, "630a": 6*3600 + 1800, "6:20 p": 18*3600 + 1200, "6a": -1,
		"2P": -1, "6:20x": -1, "13:20a": -1} {
		m, err := unit.ParseMoment(text, unit.OrderUnknown)
		if want < 0 {
			if err == nil {
				t.Errorf("%q: read as %v", text, m)
			}
			continue
		}
		if err != nil || m.Seconds != want {
			t.Errorf("%q: %v, %v; expected %d s", text, m, err, want)
		}
	}
}

// FuzzDayMonth: what is read without an order or with it is a day of some year, and an
// order that is proved reads it.
func FuzzDayMonth(f *testing.F) {
	for _, s := range []string{"3-Jul", "Jul 3", "Sat 6 Dec", "7/12(Sat)", "7/13", "29 Feb", "(Sat)", "7/12)"} {
		f.Add(s, uint8(0))
	}
	f.Fuzz(func(t *testing.T, s string, o uint8) {
		if proved := unit.DayMonthOrder(s); proved != unit.OrderUnknown {
			if _, err := unit.ParseDayMonth(s, proved); err != nil && !errors.Is(err, unit.ErrNoSuchDay) {
				t.Fatalf("DayMonthOrder(%q) = %v, but then %v", s, proved, err)
			}
		}
		d, err := unit.ParseDayMonth(s, unit.Order(o%3))
		if err != nil {
			return
		}
		d.HasWeekday = false
		if _, ok := d.In(2024); !ok {
			t.Fatalf("ParseDayMonth(%q) = %+v, no day of a leap year", s, d)
		}
	})
}

// TestOnlyMonth holds that a month alone, or with its whole year, is told from a day and from words.
func TestOnlyMonth(t *testing.T) {
	for text, want := range map[string]bool{"JUNE 2025": true, "- août -": true, "Mayo": true,
		"Jan 26": false, "26 Jan": false,
		"June trip": false, "Marlin": false, "": false, "June July": false, "2025": false} {
		if got := unit.OnlyMonth(text); got != want {
			t.Errorf("OnlyMonth(%q) = %v", text, got)
		}
	}
}
