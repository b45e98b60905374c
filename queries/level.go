package queries

import (
	"fmt"
	"strings"
)

var factorUnit = map[string]string{"speed-band": "kn", "lure-weight": "g", "setback": "m", "sea-temp": "°C"}

// LevelText is a level as it is written in a sentence: "[12, 14)" of the factor
// speed-band is "12 to 14 kn". Levels that are words stay as they are.
func LevelText(factor, level string) string {
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
