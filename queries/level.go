package queries

import (
	"fmt"
	"slices"
	"strconv"
	"strings"
	"time"
)

var factorUnit = map[string]string{"speed-band": "kn", "lure-weight": "g", "setback": "m", "sea-temp": "°C", DragFactor: "%"}

// DragFactor is what the levels of drag are called beside the factors: they are shares of
// the line's class, and no factor of --by.
const DragFactor = "drag"

// LevelText is a level as it is written in a sentence: "[12, 14)" of the factor
// speed-band is "12 to 14 kn". Levels that are words stay as they are.
func LevelText(factor, level string) string {
	switch factor {
	case "sea-state":
		if _, err := strconv.ParseFloat(level, 64); err == nil {
			return "sea state " + level
		}
	case "month":
		if t, err := time.Parse("2006-01", level); err == nil {
			return t.Format("January 2006")
		}
	case "hour":
		if t, err := time.Parse("15:04", level); err == nil {
			return level + " to " + t.Add(time.Hour).Format("15:04")
		}
	}
	unit := factorUnit[factor]
	if unit == "" {
		return level
	}
	if from, ok := strings.CutSuffix(level, " and up"); ok {
		return from + " " + unit + " and up"
	}
	var lo, hi string
	if _, err := fmt.Sscanf(strings.NewReplacer("[", "", ",", "", ")", "").Replace(level), "%s %s", &lo, &hi); err != nil || !strings.HasPrefix(level, "[") {
		return level
	}
	return lo + " to " + hi + " " + unit
}

// ordered are the factors whose levels are numbers, so that a trend is tested.
var ordered = []string{"speed-band", "lure-weight", "setback", "hour", "sea-temp", "sea-state"}

func scores(factor string) map[string]float64 {
	if slices.Contains(ordered, factor) {
		return map[string]float64{}
	}
	return nil
}

// levelScore is the number that a level of an ordered factor stands for: the
// middle of a class, the lower edge of the one that is open above.
func levelScore(factor, level string) (float64, bool) {
	if !slices.Contains(ordered, factor) {
		return 0, false
	}
	if t, err := time.Parse("15:04", level); err == nil && factor == "hour" {
		return float64(t.Hour()), true
	}
	if from, ok := strings.CutSuffix(level, " and up"); ok {
		level = from
	}
	var lo, hi float64
	if _, err := fmt.Sscanf(level, "[%g, %g)", &lo, &hi); err == nil {
		return (lo + hi) / 2, true
	}
	v, err := strconv.ParseFloat(level, 64)
	return v, err == nil
}
