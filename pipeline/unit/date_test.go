package unit_test

import (
	"errors"
	"fmt"
	"testing"
	"time"

	"wakeledger/pipeline/unit"
)

func TestDate(t *testing.T) {
	tests := []struct {
		y    int
		m    time.Month
		d    int
		want unit.Date
	}{
		{1970, time.January, 1, 0},
		{1969, time.December, 31, -1},
		{2000, time.March, 1, 11017},   // 30 x 365 + 7 leap days (1972 to 1996) + 31 + 29
		{2020, time.January, 1, 18262}, // 50 x 365 + 12 leap days
		{2026, time.February, 31, 20515},
		{2026, time.March, 3, 20515}, // as in time.Date, 31 February is 3 March
	}
	for _, tt := range tests {
		got := unit.DateOf(tt.y, tt.m, tt.d)
		if got != tt.want {
			t.Errorf("DateOf(%d, %v, %d) = %d, want %d", tt.y, tt.m, tt.d, got, tt.want)
		}
	}
	if y, m, d := unit.Date(-1).Civil(); y != 1969 || m != time.December || d != 31 {
		t.Errorf("Date(-1).Civil() = %d %v %d", y, m, d)
	}
}

func TestOrderOf(t *testing.T) {
	want := map[unit.Order][]string{
		unit.DayFirst: {"25/06/2026", "25-06-26", "25 06 2026", "25/6/2026 22:30", "25/06/2026 10:30 pm",
			"25-06-2026T22:30", "Thu 25/06/2026", "29/02/2024"},
		unit.MonthFirst: {"06/25/2026", "6-25-26", "06/25/2026 2230", "06/25/2026\u00a010:30\u202fPM"},
		unit.OrderUnknown: {"03/04/2026", "06/06/2026", "2026-06-25", "2026/06/25", "20260625", "25.6.2026",
			"25 Jun 2026", "Jun 25, 2026",
			"31/02/2026", "13/31/2026", "29/02/2026", "25/06", "25/06/1926", "25/06/20266", "22:30", "", ":",
			"25/06-2026", "25:30 06/25/2026", "notes"},
	}
	for order, texts := range want {
		for _, s := range texts {
			if got := unit.OrderOf(s); got != order {
				t.Errorf("OrderOf(%q) = %v, want %v", s, got, order)
			}
		}
	}
}

func TestParseDate(t *testing.T) {
	june25 := []string{
		"2026-06-25", "2026/06/25", "2026.06.25", "2026-6-25", "20260625", " 2026-06-25 ", "25/06/2026", "25/6/2026",
		"25-06-26", "25.6.2026", "25. 6. 2026", "25.06.2026.", "25. 6. 26.",
		"25.06.26", "06/25/2026", "6/25/26", "25 06 2026", "25 / 06 / 2026",
		"25 Jun 2026", "25 JUNE 2026", "25-Jun-26", "25-jun-2026", "25/Jun/2026", "25Jun2026", "25. Juni 2026",
		"Jun 25, 2026", "Jun 25 2026", "June 25 2026",
		"Jun. 25, 2026", "June 25th, 2026", "25th of June 2026", "2026 Jun 25", "2026-Jun-25",
		"Sat 25 Jun 2026", "Sat, 25 Jun 2026", "Thursday, June 25, 2026", "Do. 25.6.2026",
		"jue 25 jun 2026", "Thu 25/06/2026",
		"25 juin 2026", "25 de junio de 2026", "25 de junho de 2026", "25\u00a0Jun\u00a02026",
	}
	for _, s := range june25 {
		if got, err := unit.ParseDate(s, unit.OrderUnknown); err != nil || got.String() != "2026-06-25" {
			t.Errorf("ParseDate(%q) = %v, %v; want 2026-06-25", s, got, err)
		}
	}
	tests := []struct {
		text  string
		order unit.Order
		want  string
	}{
		{"03/04/2026", unit.DayFirst, "2026-04-03"},
		{"03/04/2026", unit.MonthFirst, "2026-03-04"},
		{"3-4-26", unit.DayFirst, "2026-04-03"},
		{"06/06/2026", unit.OrderUnknown, "2026-06-06"}, // day and month equal: nothing to doubt
		{"3.4.2026", unit.OrderUnknown, "2026-04-03"},   // dotted: day first
		{"3.4.2026", unit.MonthFirst, "2026-04-03"},
		{"2026-03-04", unit.MonthFirst, "2026-03-04"},
		{"1 Jan 69", unit.OrderUnknown, "2069-01-01"},
		{"1 Jan 70", unit.OrderUnknown, "1970-01-01"},
		{"1 Jan 00", unit.OrderUnknown, "2000-01-01"},
		{"1/1/1950", unit.OrderUnknown, "1950-01-01"},
		{"31/12/2100", unit.DayFirst, "2100-12-31"},
		{"29 Feb 2024", unit.OrderUnknown, "2024-02-29"},
		{"2000-02-29", unit.OrderUnknown, "2000-02-29"},
		{"3 März 2026", unit.OrderUnknown, "2026-03-03"},
		{"3 MÄRZ 2026", unit.OrderUnknown, "2026-03-03"},
		{"1er août 2026", unit.OrderUnknown, "2026-08-01"},
		{"1 DÉC. 2026", unit.OrderUnknown, "2026-12-01"},
		{"5 dez 2026", unit.OrderUnknown, "2026-12-05"},
		{"5 ene 2026", unit.OrderUnknown, "2026-01-05"},
		{"5 Okt 2026", unit.OrderUnknown, "2026-10-05"},
		{"5 set 2026", unit.OrderUnknown, "2026-09-05"},
		{"Mon 5 Oct 2026", unit.OrderUnknown, "2026-10-05"},
	}
	for _, tt := range tests {
		if got, err := unit.ParseDate(tt.text, tt.order); err != nil || got.String() != tt.want {
			t.Errorf("ParseDate(%q, %v) = %v, %v; want %s", tt.text, tt.order, got, err, tt.want)
		}
	}
}

func TestParseDateRefuses(t *testing.T) {
	tests := []struct {
		text  string
		order unit.Order
		want  error
	}{
		{"03/04/2026", unit.OrderUnknown, unit.ErrAmbiguousDate},
		{"12-11-26", unit.OrderUnknown, unit.ErrAmbiguousDate},
		{"25/06/2026", unit.MonthFirst, unit.ErrDateOrder},
		{"06/25/2026", unit.DayFirst, unit.ErrDateOrder},
		{"31/02/2026", unit.OrderUnknown, unit.ErrNoSuchDay},
		{"02/30/2026", unit.DayFirst, unit.ErrNoSuchDay},
		{"31 Feb 2026", unit.OrderUnknown, unit.ErrNoSuchDay},
		{"2026-02-29", unit.OrderUnknown, unit.ErrNoSuchDay},
		{"2100-02-29", unit.OrderUnknown, unit.ErrNoSuchDay}, // a century not divisible by 400
		{"2026-13-01", unit.OrderUnknown, unit.ErrNoSuchDay},
		{"2026-00-10", unit.OrderUnknown, unit.ErrNoSuchDay},
		{"0/0/2026", unit.OrderUnknown, unit.ErrNoSuchDay},
		{"20261301", unit.OrderUnknown, unit.ErrNoSuchDay},
		{"6.25.2026", unit.MonthFirst, unit.ErrNoSuchDay}, // dotted is day first
		{"1949-12-31", unit.OrderUnknown, unit.ErrYear},
		{"2101-01-01", unit.OrderUnknown, unit.ErrYear},
		{"1 Jan 0026", unit.OrderUnknown, unit.ErrYear},
		{"12345678", unit.OrderUnknown, unit.ErrNoSuchDay},
	}
	for _, s := range []string{"", "-", "2026", "2026-06", "25/06", "25 Jun", "Jun 2026", "25/06-2026", "25,06,2026",
		"-25/06/2026", "25/06/2026/", "25//06/2026",
		"025/06/2026", "25/006/2026", "25/06/026", "2026-06-025", "2026/25", "25 Jun Jun 2026", "25 2026 Jun",
		"25 Jun 2026 7", "Jun 2026 25", "Sat", "Sat Sun 25 Jun 2026", "25 Sat Jun 2026",
		"of 25 Jun 2026", "25 Foo 2026", "1234567890", "25/06/2026 22:30", "2026-06-25T00:00:00", "46204",
		"25Jun", "\xff", "25 \xff 2026"} {
		tests = append(tests, struct {
			text  string
			order unit.Order
			want  error
		}{s, unit.OrderUnknown, unit.ErrNotDate})
	}
	for _, tt := range tests {
		if got, err := unit.ParseDate(tt.text, tt.order); !errors.Is(err, tt.want) || got != 0 {
			t.Errorf("ParseDate(%q, %v) = %v, %v; want %v", tt.text, tt.order, got, err, tt.want)
		}
	}
}

// TestEveryDay writes every day that a log may hold with the standard library's layouts
// and reads it back.
func TestEveryDay(t *testing.T) {
	layouts := map[string]unit.Order{
		"2006-01-02": unit.OrderUnknown, "20060102": unit.OrderUnknown, "2006/1/2": unit.MonthFirst,
		"02/01/2006": unit.DayFirst, "1/2/2006": unit.MonthFirst, "2.1.2006": unit.OrderUnknown,
		"2 Jan 2006": unit.OrderUnknown, "January 2, 2006": unit.OrderUnknown, "Mon 02-Jan-2006": unit.OrderUnknown,
	}
	last := time.Date(unit.LastYear, time.December, 31, 0, 0, 0, 0, time.UTC)
	for day := time.Date(unit.FirstYear, time.January, 1, 0, 0, 0, 0, time.UTC); !day.After(last); day = day.AddDate(0,
		0, 1) {
		for layout, order := range layouts {
			got, err := unit.ParseDate(day.Format(layout), order)
			if err != nil || !got.Time().Equal(day) {
				t.Fatalf("ParseDate(%q, %v) = %v, %v", day.Format(layout), order, got, err)
			}
		}
	}
}

func ExampleParseDate() {
	_, err := unit.ParseDate("03/04/2026", unit.OrderUnknown)
	fmt.Println(err)
	d, _ := unit.ParseDate("03/04/2026", unit.OrderOf("25/06/2026"))
	fmt.Println(d)
	// Output:
	// day and month unclear: a date like 03/04/2026 may be 3 April or March 4
	// 2026-04-03
}

// TestWeekdayTellsTheOrder holds that the weekday beside a date says which of its numbers is the
// day: 7 August 2024 was a Wednesday, 8 July 2024 a Monday (the civil calendar).
func TestWeekdayTellsTheOrder(t *testing.T) {
	for text, want := range map[string]unit.Order{"Wed 8/7/24": unit.MonthFirst, "Mon 8/7/24": unit.DayFirst,
		"8/7/24": unit.OrderUnknown, "Sun 8/7/24": unit.OrderUnknown, "Wed 8/8/24": unit.OrderUnknown} {
		if got := unit.OrderOf(text); got != want {
			t.Errorf("%s: %v, want %v", text, got, want)
		}
	}
}
