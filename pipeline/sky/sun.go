package sky

import (
	"math"
	"time"
)

// horizon is the altitude in degrees of the sun's centre when its upper limb
// is seen on the horizon: refraction of 34' and a semi-diameter of 16', as
// almanacs have it.
const horizon = -0.833

const rad = math.Pi / 180

// julianDay is the Julian date of an instant.
func julianDay(t time.Time) float64 {
	return float64(t.UnixNano())/86400e9 + 2440587.5
}

// centuries are Julian centuries since 2000 January 1, 12 h.
func centuries(t time.Time) float64 { return (julianDay(t) - 2451545) / 36525 }

// sun returns the sun's declination in degrees and the equation of time, true
// less mean solar time, in minutes.
func sun(t time.Time) (declination, equation float64) {
	c := centuries(t)
	l0 := 280.46646 + c*(36000.76983+.0003032*c)
	m := (357.52911 + c*(35999.05029-.0001537*c)) * rad
	e := .016708634 - c*(.000042037+.0000001267*c)
	centre := math.Sin(m)*(1.914602-c*(.004817+.000014*c)) + math.Sin(2*m)*(.019993-.000101*c) + .000289*math.Sin(3*m)
	node := (125.04 - 1934.136*c) * rad
	lambda := (l0 + centre - .00569 - .00478*math.Sin(node)) * rad
	tilt := (23 + (26+(21.448-c*(46.815+c*(.00059-.001813*c)))/60)/60 + .00256*math.Cos(node)) * rad
	declination = math.Asin(math.Sin(tilt)*math.Sin(lambda)) / rad
	y := math.Pow(math.Tan(tilt/2), 2)
	l := 2 * l0 * rad
	equation = 4 / rad * (y*math.Sin(l) - 2*e*math.Sin(m) + 4*e*y*math.Sin(m)*math.Cos(l) -
		.5*y*y*math.Sin(2*l) - 1.25*e*e*math.Sin(2*m))
	return declination, equation
}

// Altitude is the height of the sun's centre above the true horizon in
// degrees, without refraction.
func Altitude(t time.Time, lat, lon float64) float64 {
	dec, eq := sun(t)
	u := t.UTC()
	minutes := u.Sub(u.Truncate(24*time.Hour)).Minutes() + eq + 4*lon
	hour := (minutes/4 - 180) * rad
	return math.Asin(math.Sin(lat*rad)*math.Sin(dec*rad)+math.Cos(lat*rad)*math.Cos(dec*rad)*math.Cos(hour)) / rad
}

// RiseAndSet returns sunrise and sunset of one calendar day of the place (by its
// own sun, so that near the date line the instants may bear the day before or
// after in UTC). ok is false where the sun stays up or stays down that day, and
// for a position that is none.
func RiseAndSet(year int, month time.Month, day int, lat, lon float64) (rise, set time.Time, ok bool) {
	midnight := time.Date(year, month, day, 0, 0, 0, 0, time.UTC)
	rise, up := event(midnight, lat, lon, 1)
	set, down := event(midnight, lat, lon, -1)
	return rise, set, up && down
}

// event is sunrise (side 1) or sunset (side -1) after a place's midnight, given
// as if it were UTC's. The sun's place is taken at the event itself, which three
// rounds settle to a second.
func event(midnight time.Time, lat, lon, side float64) (time.Time, bool) {
	at := midnight.Add(time.Duration((12 - lon/15) * float64(time.Hour)))
	for range 3 {
		dec, eq := sun(at)
		cos := math.Sin(horizon*rad)/(math.Cos(lat*rad)*math.Cos(dec*rad)) - math.Tan(lat*rad)*math.Tan(dec*rad)
		if !(math.Abs(cos) <= 1) {
			return time.Time{}, false
		}
		minutes := 720 - 4*(lon+side*math.Acos(cos)/rad) - eq
		at = midnight.Add(time.Duration(minutes * float64(time.Minute)))
	}
	return at, true
}
