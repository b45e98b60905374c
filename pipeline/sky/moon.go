package sky

import (
	"math"
	"time"
)

// Phase is the quarter of the moon's month about one of its four phases: within
// an eighth of a month of it, as seen from the sun's and the moon's longitudes.
type Phase string

// The phases, in the order of a month. About new moon less than 15 % of the
// disc is lit, about full moon more than 85 %.
const (
	NewMoon      Phase = "new moon"
	FirstQuarter Phase = "first quarter"
	FullMoon     Phase = "full moon"
	LastQuarter  Phase = "last quarter"
)

// Moon returns the illuminated share of the moon's disc, 0 to 1, and its phase.
// The share is within 0.002 of that from full positions.
func Moon(t time.Time) (lit float64, phase Phase) {
	i, d := phaseAngle(t)
	// The phase angle is 180 at new moon and 0 at full; d tells waxing from waning.
	age := 180 - i
	switch {
	case age < 45:
		phase = NewMoon
	case age > 135:
		phase = FullMoon
	case d < 180:
		phase = FirstQuarter
	default:
		phase = LastQuarter
	}
	return (1 + math.Cos(i*rad)) / 2, phase
}

// phaseAngle is the angle sun-moon-earth, 0 to 180, and the moon's mean
// elongation from the sun, 0 to 360, in degrees (Meeus, formula 48.4).
func phaseAngle(t time.Time) (angle, elongation float64) {
	c := centuries(t)
	d := 297.8501921 + c*(445267.1114034+c*(-.0018819+c*(1./545868-c/113065000)))
	m := 357.5291092 + c*(35999.0502909+c*(-.0001536+c/24490000))
	a := 134.9633964 + c*(477198.8675055+c*(.0087414+c*(1./69699-c/14712000)))
	d = math.Mod(math.Mod(d, 360)+360, 360)
	dr, mr, ar := d*rad, m*rad, a*rad
	i := 180 - d - 6.289*math.Sin(ar) + 2.1*math.Sin(mr) - 1.274*math.Sin(2*dr-ar) -
		.658*math.Sin(2*dr) - .214*math.Sin(2*ar) - .11*math.Sin(dr)
	i = math.Abs(math.Mod(i, 360))
	if i > 180 {
		i = 360 - i
	}
	return i, d
}
