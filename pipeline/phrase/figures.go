package phrase

import (
	"regexp"
	"strconv"
)

// Several counts in one cell, and what parts them.
var (
	figures  = regexp.MustCompile(`^\d{1,3}(?:\s*[-–/]\s*\d{1,3})*$`)
	partedBy = regexp.MustCompile(`\s*[-–/]\s*`)
)

// Figures are the counts that stand in one cell: 3-2-1, 3/2. nil: it holds something else.
func Figures(text string) []int {
	if !figures.MatchString(text) {
		return nil
	}
	var out []int
	for _, part := range partedBy.Split(text, -1) {
		n, _ := strconv.Atoi(part)
		out = append(out, n)
	}
	return out
}
