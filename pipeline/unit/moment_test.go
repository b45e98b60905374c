package unit_test

import (
	"errors"
	"math"
	"strconv"
	"strings"
	"testing"
	"time"

	"wakeledger/pipeline/unit"
)

// TestParseMoment gives what was read in the form of Moment.String.
func TestParseMoment(t *testing.T) {
	want := map[string][]string{
		"22:30:00": {"22:30", "22:30:00", "2230", "22h30", "22 h 30", "22H30", "22.30", "10:30 pm", "10:30PM",
			"10:30 p.m.", "10.30 pm", "1030pm", " 22:30 ",
			"2230 h", "2230 hrs", "22:30 Uhr", "22:30h", "10:30\u202fPM"},
		"22:30:15":       {"22:30:15", "10:30:15 pm", "22:30:15.2", "22:30:14.500", "22:30:14,7"},
		"07:05:00":       {"7:05 am", "07:05", "7:05", "705", "0705", "7.05", "7h05", "7:05 A.M."},
		"07:00:00":       {"7am", "7 am", "7 a.m.", "7h", "0700", "07:00"},
		"00:25:00":       {"00.25", "12:25 am", "0025", "0:25"},
		"24:00:00":       {"24:00", "2400", "24:00:00", "24h", "23:59:59.9"},
		"00:00:00":       {"0:00", "0000", "000", "midnight", "12 am", "Midnight"},
		"12:00:00":       {"noon", "NOON", "midday", "12 pm", "12:00"},
		"22:30:00+00:00": {"22:30Z", "22:30 UTC", "2230Z", "22:30 GMT", "22:30z"},
		"22:30:00+02:00": {"22:30+02:00", "22:30 +0200", "22:30+02"},
		"2026-06-25":     {"2026-06-25", "25/06/2026", "20260625", "25 Jun 2026"},
		"2026-06-25 22:30:00": {"2026-06-25 22:30", "2026-06-25T22:30", "2026-06-25t22:30", "2026-06-25 22:30:00",
			"2026/06/25 22:30", "25/06/2026 10:30 pm", "25/06/2026 2230", "25.6.2026 22.30", "25 Jun 2026 22h30",
			"25 Jun 2026, 22:30", "Jun 25, 2026 10:30 PM", "Thu Jun 25 2026 22:30", "20260625T2230", "20260625 2230",
			"22:30 25/06/2026", "2230 25 Jun 2026", "25/06/2026\n22:30", "25/06/2026\u00a022:30"},
		"2026-06-25 24:00:00":       {"2026-06-25 24:00", "25 Jun 2026 2400"},
		"2026-06-26 00:00:00":       {"2026-06-25 23:59:59.6", "2026-06-26 midnight"},
		"2026-06-25 22:30:00+00:00": {"2026-06-25T22:30:00Z", "2026-06-25 22:30 UTC"},
		"2026-06-25 22:30:00+02:00": {"2026-06-25T22:30:00+02:00", "25/06/2026 22:30+02:00"},
		"2026-06-25 22:30:00-07:00": {"2026-06-25T22:30:00-07:00", "2026-06-25 22:30-0700", "2026-06-25 22:30 −07:00",
			"2026/06/25 22:30-07:00", "20260625T2230-07"},
		"2026-06-25 22:30:00-03:30": {"2026-06-25T22:30:00-03:30"},
	}
	for s, texts := range want {
		for _, text := range texts {
			if got, err := unit.ParseMoment(text, unit.OrderUnknown); err != nil || got.String() != s {
				t.Errorf("ParseMoment(%q) = %v, %v; want %s", text, got, err, s)
			}
		}
	}
}

func TestParseMomentFields(t *testing.T) {
	m, err := unit.ParseMoment("2026-06-25T22:30:00-07:00", unit.OrderUnknown)
	if err != nil || !m.HasDate || !m.HasTime || m.Offset == nil {
		t.Fatalf("ParseMoment = %+v, %v", m, err)
	}
	if m.Date != unit.DateOf(2026, time.June, 25) || m.Seconds != 81000 || *m.Offset != -25200 {
		// 22.5 x 3600; -7 x 3600
		t.Errorf("ParseMoment = %v %d %d", m.Date, m.Seconds, *m.Offset)
	}
	m, err = unit.ParseMoment("22:30", unit.OrderUnknown)
	if want := (unit.Moment{Seconds: 81000, HasTime: true}); err != nil || m != want {
		t.Errorf("ParseMoment(22:30) = %+v, %v", m, err)
	}
	m, err = unit.ParseMoment("3/4/2026 7:05 am", unit.MonthFirst)
	if err != nil || m.String() != "2026-03-04 07:05:00" {
		t.Errorf("ParseMoment = %v, %v", m, err)
	}
}

func TestParseMomentRefuses(t *testing.T) {
	tests := []struct {
		text  string
		order unit.Order
		want  error
	}{
		{"03/04/2026 22:30", unit.OrderUnknown, unit.ErrAmbiguousDate},
		{"03/04/2026", unit.OrderUnknown, unit.ErrAmbiguousDate},
		{"25/06/2026 22:30", unit.MonthFirst, unit.ErrDateOrder},
		{"31 Feb 2026 22:30", unit.OrderUnknown, unit.ErrNoSuchDay},
		{"2026-02-30 22:30", unit.OrderUnknown, unit.ErrNoSuchDay},
		{"2026-02-30", unit.OrderUnknown, unit.ErrNoSuchDay},
		{"1926-02-03 22:30", unit.OrderUnknown, unit.ErrYear},
		{"2100-12-31 23:59:59.9", unit.OrderUnknown, unit.ErrYear}, // rounds into 2101
	}
	for _, s := range []string{"", " ", "7", "22", "22:", "22:3", "22:301", "22:60", "24:01", "2401", "25:00", "25:30",
		"1260", "22300", "22:30:6", "22:30:60", "22:30:15.", "22.3", "22.305", "24.30", "0.25", "0.9375", "22,30",
		"13 pm", "0 am", "22:30 pm", "7 xm", "7a", "7 amx", "22h3", "22h305", "7 hrs", "2h15min", "22:30 PST",
		"22:30+2", "22:30+02:07", "22:30+15:00", "22:30+02:60", "22:30+02:00x", "22:30-07:00",
		"0700-1500", "07:00 - 15:00", "0730 1530",
		"25/06/2026 06:00-11:00", "2026-06-25 06:00-13:00", "x", "2026-06-25 22", "2026-06-25x22:30",
		"2026-06-25 22:30 x", "2026-06-25Tnoonish", "46204.5", "noonish", "22:30 22:30", "T22:30", "25/06/2026" +
			strings.Repeat(" ", 80) + "22:30", "\xff", "22:30\xff", "2026-06-25T"} {
		tests = append(tests, struct {
			text  string
			order unit.Order
			want  error
		}{s, unit.OrderUnknown, unit.ErrNotMoment})
	}
	for _, tt := range tests {
		if got, err := unit.ParseMoment(tt.text, tt.order); !errors.Is(err, tt.want) || got != (unit.Moment{}) {
			t.Errorf("ParseMoment(%q, %v) = %v, %v; want %v", tt.text, tt.order, got, err, tt.want)
		}
	}
}

// TestEverySecond writes every second of a day with the standard library's layouts and
// reads it back.
func TestEverySecond(t *testing.T) {
	day := time.Date(2026, time.June, 25, 0, 0, 0, 0, time.UTC)
	for s := range 86400 {
		at := day.Add(time.Duration(s) * time.Second)
		for _, layout := range []string{"15:04:05", "3:04:05 PM", "03:04:05pm",
			time.DateTime, "2 Jan 2006 3:04:05 PM"} {
			got, err := unit.ParseMoment(at.Format(layout), unit.OrderUnknown)
			if err != nil || got.Seconds != s || !got.HasTime {
				t.Fatalf("ParseMoment(%q) = %v, %v", at.Format(layout), got, err)
			}
		}
		if s%60 != 0 {
			continue
		}
		for _, layout := range []string{"15:04", "1504", "3:04 PM", "15.04", "15h04"} {
			got, err := unit.ParseMoment(at.Format(layout), unit.OrderUnknown)
			if err != nil || got.Seconds != s {
				t.Fatalf("ParseMoment(%q) = %v, %v", at.Format(layout), got, err)
			}
		}
	}
}

// TestFromSerial: the serials of 2020-01-01 and 2026-07-01 in both systems, and 1.0416667
// shown as 25:00 under [h]:mm, are those that a workbook library gave (excelize v2.11.1).
func TestFromSerial(t *testing.T) {
	tests := []struct {
		v        float64
		date1904 bool
		want     string
	}{
		{43831, false, "2020-01-01"},
		{46204, false, "2026-07-01"},
		{46204.5, false, "2026-07-01 12:00:00"},
		{44742, true, "2026-07-01"}, // 46204 - 1462
		{44742.9375, true, "2026-07-01 22:30:00"},
		{20000, false, "1954-10-03"},
		{25569, false, "1970-01-01"},
		{73415, false, "2100-12-31"},
		{0, false, "00:00:00"},
		{0.5, false, "12:00:00"},
		{0.5, true, "12:00:00"},
		{0.9375, false, "22:30:00"}, // 22.5/24
		{0.0104166666666667, false, "00:15:00"},
		{0.99999999, false, "24:00:00"},
		{1, false, "24:00:00"},
		{1.0416667, false, "25:00:00"},
		{1.04166666666666, false, "25:00:00"}, // float noise
		{1.99999999, false, "48:00:00"},
		{46203.9999999, false, "2026-07-01 00:00:00"}, // rounds into the next day
		{46204.0000001, false, "2026-07-01"},          // less than half a second is no time
		{46203.99999, false, "2026-06-30 23:59:59"},   // 0.864 s before midnight
	}
	for _, tt := range tests {
		got, err := unit.FromSerial(tt.v, tt.date1904)
		if err != nil || got.String() != tt.want {
			t.Errorf("FromSerial(%v, %v) = %v, %v; want %s", tt.v, tt.date1904, got, err, tt.want)
		}
	}
	want := map[error][]float64{
		unit.ErrSerial: {-1, -0.5, math.NaN(), math.Inf(-1), 2, 2.5, 59, 60, 61, 187, 2026, 19999.99},
		unit.ErrYear:   {73416, 73415.9999999, 1e6, 1e12, 20260625, math.MaxFloat64, math.Inf(1)},
	}
	for sentinel, values := range want {
		for _, v := range values {
			if got, err := unit.FromSerial(v, false); !errors.Is(err, sentinel) || got != (unit.Moment{}) {
				t.Errorf("FromSerial(%v) = %v, %v; want %v", v, got, err, sentinel)
			}
		}
	}
}

// TestSerialDays checks every dateful serial against a count of days by the standard
// library from 1899-12-30, the day that serial 0 would be if 1900 had no false leap day.
func TestSerialDays(t *testing.T) {
	for serial := 20000; serial <= 73415; serial++ {
		want := time.Date(1899, time.December, 30+serial, 0, 0, 0, 0, time.UTC).Format(time.DateOnly)
		for shift, date1904 := range map[int]bool{0: false, 1462: true} {
			if serial-shift < 20000 {
				continue
			}
			got, err := unit.FromSerial(float64(serial-shift), date1904)
			if err != nil || got.String() != want {
				t.Fatalf("FromSerial(%d, %v) = %v, %v; want %s", serial-shift, date1904, got, err, want)
			}
		}
	}
}

// TestSerialSeconds: every second of a day survives being stored as a fraction of it, with
// 15 significant digits as a workbook writes it.
func TestSerialSeconds(t *testing.T) {
	for s := range 86400 {
		v, err := strconv.ParseFloat(strconv.FormatFloat(46204+float64(s)/86400, 'g', 15, 64), 64)
		if err != nil {
			t.Fatal(err)
		}
		got, err := unit.FromSerial(v, false)
		if err != nil || got.Seconds != s || got.HasTime != (s > 0) || got.Date.String() != "2026-07-01" {
			t.Fatalf("FromSerial(%v) = %v, %v; want second %d", v, got, err, s)
		}
	}
}
