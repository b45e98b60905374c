package sky

import (
	"math"
	"testing"
	"time"
)

// Rise and Set for the Sun for 2008, one-year table of the U.S. Naval
// Observatory (Astronomical Applications Department) for W 121 55, N 37 24,
// Pacific Standard Time: printed to the minute.
var usno2008 = []struct {
	month     time.Month
	day       int
	rise, set string
}{
	{1, 1, "0722", "1700"}, {2, 1, "0711", "1732"}, {2, 4, "0709", "1735"}, {3, 1, "0638", "1802"},
	{4, 1, "0552", "1831"}, {5, 1, "0512", "1858"}, {6, 1, "0448", "1923"}, {6, 4, "0447", "1925"},
	{7, 1, "0451", "1932"}, {8, 1, "0512", "1915"}, {9, 1, "0539", "1836"}, {10, 1, "0604", "1750"},
	{10, 4, "0606", "1746"}, {11, 1, "0633", "1709"}, {12, 1, "0704", "1650"},
}

func TestAgainstNavalObservatoryTable(t *testing.T) {
	pst := time.FixedZone("PST", -8*3600)
	for _, row := range usno2008 {
		rise, set, ok := RiseAndSet(2008, row.month, row.day, 37+24./60, -(121 + 55./60))
		got := [2]string{rise.In(pst).Round(time.Minute).Format("1504"), set.In(pst).Round(time.Minute).Format("1504")}
		if want := [2]string{row.rise, row.set}; !ok || got != want {
			t.Errorf("%v %d: rise and set %v, the table has %v", row.month, row.day, got, want)
		}
	}
}

// Instants by PyEphem (horizon -0:50, centre of the disc, pressure 0) and by
// NOAA's calculator in its published form, which agree to two seconds.
func TestRiseAndSetElsewhere(t *testing.T) {
	for _, c := range []struct {
		date      string
		lat, lon  float64
		zone      int // hours
		rise, set string
	}{
		{"2026-07-01", 32.7157, -117.1611, -7, "05:44:30", "20:00:34"},
		{"2026-01-15", 21.3, -157.86, -10, "07:11:32", "18:10:37"},
		{"2010-06-21", 40, -105, -6, "05:31:19", "20:32:20"},
		{"2026-03-20", 0, 0, 0, "06:04:10", "18:10:41"},
		{"2026-12-21", -33.8688, 151.2093, 11, "05:40:39", "20:05:26"},
	} {
		day, err := time.Parse(time.DateOnly, c.date)
		if err != nil {
			t.Fatal(err)
		}
		rise, set, ok := RiseAndSet(day.Year(), day.Month(), day.Day(), c.lat, c.lon)
		if !ok {
			t.Errorf("%s: no event", c.date)
		}
		for what, pair := range map[string][2]any{"rise": {rise, c.rise}, "set": {set, c.set}} {
			clock, err := time.Parse(time.TimeOnly, pair[1].(string))
			if err != nil {
				t.Fatal(err)
			}
			want := day.Add(clock.Sub(clock.Truncate(24*time.Hour)) - time.Duration(c.zone)*time.Hour)
			if off := pair[0].(time.Time).Sub(want).Abs(); off > 3*time.Second {
				t.Errorf("%s at %v %v: %s off by %v", c.date, c.lat, c.lon, what, off)
			}
		}
	}
}

func TestMidnightSun(t *testing.T) {
	if _, _, ok := RiseAndSet(2026, 6, 21, 69.65, 18.96); ok {
		t.Error("Tromsø has a sunset at midsummer")
	}
	for hour := range 24 {
		june := time.Date(2026, 6, 21, hour, 0, 0, 0, time.UTC)
		if l := LightAt(june, 69.65, 18.96, Margin); l != Day {
			t.Errorf("Tromsø at midsummer, %d h: %s", hour, l)
		}
		if l := LightAt(june.AddDate(0, 6, 0), 69.65, 18.96, Margin); l != Night {
			t.Errorf("Tromsø at midwinter, %d h: %s", hour, l)
		}
	}
	if _, _, ok := RiseAndSet(2026, 6, 21, math.NaN(), 0); ok {
		t.Error("an event at no place")
	}
}

// At the events the sun's centre stands at the horizon of almanacs.
func TestAltitudeAtTheEvents(t *testing.T) {
	for lon := -180.0; lon <= 180; lon += 45 {
		rise, set, _ := RiseAndSet(2026, 9, 3, 33, lon)
		for _, at := range []time.Time{rise, set} {
			if a := Altitude(at, 33, lon); math.Abs(a-horizon) > .005 {
				t.Errorf("longitude %v: altitude %v at an event", lon, a)
			}
		}
	}
}
