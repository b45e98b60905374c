package reports

import (
	"fmt"
	"math"
	"strings"

	"wakeledger/pipeline/unit"
	"wakeledger/reports/page"
)

// units are the units a report is shown in; rows come in kg and cm.
type units struct {
	weight, length, far string // far: of setbacks
	perKG, perCM, perM  float64
}

var unitSets = map[string]units{
	"metric": {"kg", "cm", "m", 1, 1, 1},
	"us":     {"lb", "in", "yd", 1 / unit.KgPerPound, 1 / unit.CmPerInch, 1 / unit.MetresPerYard},
}

func unitsOf(name string) (units, error) {
	u, ok := unitSets[name]
	if !ok {
		return units{}, fmt.Errorf("units %q: not metric or us", name)
	}
	return u, nil
}

func scaled(v *float64, by float64) *float64 {
	if v == nil {
		return nil
	}
	x := *v * by
	return &x
}

// weightDecimals is what a weight on a scale is shown with: a tenth where any of
// the values has one, in the unit shown.
func weightDecimals(values []float64) int {
	for _, v := range values {
		if math.Abs(v-math.Round(v)) > 0.04 {
			return 1
		}
	}
	return 0
}

// estimateDecimals: an estimate is a tenth wide at best, so its units digit is
// the last that can mean something; below ten, one decimal.
func estimateDecimals(v float64) int {
	if v < 10 {
		return 1
	}
	return 0
}

// IsScale tells a weight from a scale from an estimate, by the method's name
// ("certified scale", "dock scale").
func IsScale(method *string) bool {
	return method != nil && strings.HasSuffix(*method, "scale")
}

// hours prints hours in a sentence: tenths below ten, whole above.
func hours(h float64) string {
	if h < 10 {
		return page.Number(h, 1)
	}
	return page.Number(h, 0)
}
