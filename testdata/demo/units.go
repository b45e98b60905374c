package main

import (
	"fmt"
	"math"
)

// Exact by definition.
const (
	cmPerIn = 2.54
	kgPerLb = .45359237
	mPerFt  = .3048
	gPerOz  = kgPerLb * 1000 / 16
)

// half rounds to the nearest half, as a tape is read.
func half(x float64) float64 { return math.Round(x*2) / 2 }

func fahrenheit(c float64) float64 { return round(c*9/5+32, 1) }

// feetInches writes a length as 6'2", or 34" below three feet.
func feetInches(cm float64) string {
	in := int(math.Round(cm / cmPerIn))
	if in < 36 {
		return fmt.Sprintf(`%d"`, in)
	}
	return fmt.Sprintf(`%d'%d"`, in/12, in%12)
}

// degreesMinutes writes an angle as 33°14.2'N.
func degreesMinutes(deg float64, positive, negative string) string {
	side := positive
	if deg < 0 {
		side, deg = negative, -deg
	}
	tenths := int(math.Round(deg * 600))
	return fmt.Sprintf("%d°%02d.%d'%s", tenths/600, tenths%600/10, tenths%10, side)
}
