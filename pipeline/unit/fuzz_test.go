package unit_test

import (
	"math"
	"strconv"
	"testing"

	"wakeledger/pipeline/unit"
)

// FuzzNumber: what is read is finite, does not depend on spaces around it, and is read
// back from its shortest plain form.
func FuzzNumber(f *testing.F) {
	for _, s := range []string{"12", "12,5", "1.234,5", "1,234", "1 234,567", "−117.5", "1.0416E-2", "1'234",
		".5", "1e309", "NaN", "0x1"} {
		f.Add(s, uint8(0))
	}
	f.Fuzz(func(t *testing.T, s string, m uint8) {
		mark := unit.Mark(m % 3)
		v, err := unit.ParseNumber(s, mark)
		if err != nil {
			return
		}
		if math.IsInf(v, 0) || math.IsNaN(v) {
			t.Fatalf("ParseNumber(%q, %v) = %v", s, mark, v)
		}
		plain := strconv.FormatFloat(v, 'g', -1, 64)
		if back, err := unit.ParseNumber(" "+plain+" ", unit.MarkPoint); err != nil || back != v {
			t.Fatalf("ParseNumber(%q) = %v, read back from %q as %v, %v", s, v, plain, back, err)
		}
		proved := unit.MarkOf(s)
		if proved == unit.MarkUnknown {
			return
		}
		if other, err := unit.ParseNumber(s, proved); err != nil || other != v {
			t.Fatalf("ParseNumber(%q, %v) = %v, but %v, %v under the mark it proves", s, mark, v, other, err)
		}
	})
}

// FuzzQuantity: what is read has the wanted dimension and is read back from its String.
func FuzzQuantity(f *testing.F) {
	for _, s := range []string{`6'2"`, "6 ft 2 in", "188cm", "212#", "12 lb 8 oz", "12.5 kts", "20 °C", "2 h 15 min",
		"1:30", "74½\"", "12-14", "~5", "1,234 lb"} {
		f.Add(s, uint8(1), uint8(0))
	}
	fallbacks := map[unit.Dimension]unit.Unit{unit.Length: unit.Inch, unit.Mass: unit.Pound, unit.Speed: unit.Knot,
		unit.Temperature: unit.Celsius, unit.Duration: unit.Minute, unit.Angle: unit.Degree}
	f.Fuzz(func(t *testing.T, s string, d, m uint8) {
		dim, mark := unit.Dimension(d%6+1), unit.Mark(m%3)
		q, err := unit.ParseQuantity(s, dim, fallbacks[dim], mark)
		if err != nil {
			if err.Error() == "" || q != (unit.Quantity{}) {
				t.Fatalf("ParseQuantity(%q, %v) = %+v, %v", s, dim, q, err)
			}
			return
		}
		if q.Unit.Dimension() != dim || math.IsInf(q.Value, 0) || math.IsNaN(q.Value) {
			t.Fatalf("ParseQuantity(%q, %v) = %+v", s, dim, q)
		}
		back, err := unit.ParseQuantity(q.String(), dim, "", unit.MarkPoint)
		if q.Stated = true; err != nil || back != q {
			t.Fatalf("ParseQuantity(%q, %v) = %+v, read back from %q as %+v, %v", s, dim, q, q.String(), back, err)
		}
	})
}

// FuzzDate: what is read is a year a log may hold and is read back from its String; an
// order that the cell proves reads it.
func FuzzDate(f *testing.F) {
	for _, s := range []string{"2026-06-25", "20260625", "25/06/2026", "06/25/26", "3.4.2026", "25 Jun 2026",
		"June 25th, 2026", "Sat, 25-Jun-26", "1er août 2026", "03/04/2026"} {
		f.Add(s, uint8(0))
	}
	f.Fuzz(func(t *testing.T, s string, o uint8) {
		if proved := unit.OrderOf(s); proved != unit.OrderUnknown {
			if _, err := unit.ParseMoment(s, proved); err != nil {
				t.Fatalf("OrderOf(%q) = %v, but then %v", s, proved, err)
			}
		}
		d, err := unit.ParseDate(s, unit.Order(o%3))
		if err != nil {
			return
		}
		if y, _, _ := d.Civil(); y < unit.FirstYear || y > unit.LastYear {
			t.Fatalf("ParseDate(%q) = %v", s, d)
		}
		for _, order := range []unit.Order{unit.OrderUnknown, unit.DayFirst, unit.MonthFirst} {
			if back, err := unit.ParseDate(d.String(), order); err != nil || back != d {
				t.Fatalf("ParseDate(%q) = %v, read back as %v, %v", s, d, back, err)
			}
		}
	})
}

// FuzzMoment: what is read is within its bounds and is read back from its String.
func FuzzMoment(f *testing.F) {
	for _, s := range []string{"22:30", "2230", "7:05 am", "22h30", "22.30", "24:00", "noon", "2026-06-25 22:30",
		"2026-06-25T22:30:00Z", "2026-06-25T22:30:00-07:00", "25/06/2026 10:30 pm",
		"2026-06-25 23:59:59.9", "22:30 25 Jun 2026"} {
		f.Add(s, uint8(0))
	}
	f.Fuzz(func(t *testing.T, s string, o uint8) {
		m, err := unit.ParseMoment(s, unit.Order(o%3))
		if err != nil {
			return
		}
		if m.Seconds < 0 || m.Seconds > 86400 || !m.HasDate && !m.HasTime || !m.HasTime &&
			(m.Seconds != 0 || m.Offset != nil) {
			t.Fatalf("ParseMoment(%q) = %+v", s, m)
		}
		back, err := unit.ParseMoment(m.String(), unit.OrderUnknown)
		if err != nil || back.String() != m.String() || back.Date != m.Date || back.Seconds != m.Seconds ||
			back.HasDate != m.HasDate || back.HasTime != m.HasTime {
			t.Fatalf("ParseMoment(%q) = %v, read back as %v, %v", s, m, back, err)
		}
	})
}
