package phrase

import (
	"regexp"
	"strings"
)

// bareWeights are figures behind a name with nothing but spaces between them: "ono 26 21".
var bareWeights = regexp.MustCompile(`(\pL[\pL ]*?)((?:\s+\d{1,3}(?:[.,]\d+)?\??){2,})\s*(?:$|[,;])`)

// severalWeights writes the unit of the heading behind figures that can be weights alone, one of each fish: "ono 26 21"
// under lb is "ono 26 lb & 21 lb".
func severalWeights(text string, d Defaults) string {
	if d.WeightUnit == "" || d.LengthUnit != "" || d.TapeUnit != "" && strings.ContainsAny(text, "x×*") {
		return text
	}
	return bareWeights.ReplaceAllStringFunc(text, func(part string) string {
		m := bareWeights.FindStringSubmatch(part)
		if fish := FishList(m[1], Defaults{}); len(fish) != 1 || fish[0].Name == "" {
			return part
		}
		var all []string
		for _, f := range strings.Fields(m[2]) {
			figure, guess := strings.CutSuffix(f, "?")
			if figure += " " + d.WeightUnit; guess {
				figure += "?"
			}
			all = append(all, figure)
		}
		end := strings.TrimRight(part, " ")
		return m[1] + " " + strings.Join(all, " & ") + strings.TrimLeft(end[len(end)-1:], "0123456789?")
	})
}
