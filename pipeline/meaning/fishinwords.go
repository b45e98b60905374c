package meaning

import (
	"regexp"
	"slices"

	"wakeledger/pipeline/plan"
)

// figureWithUnit is a length or a weight behind the name of a fish.
var figureWithUnit = regexp.MustCompile(`(?i)\d\s*(?:cm|in|inch(?:es)?|kgs?|lbs?|["#])`)

// fishInWords takes the names of fish beside counts for a list of fish in words where some have measures behind them:
// "skipjack" on one row, "skipjack 22 in, let go" on another.
func (x *builder) fishInWords() {
	p := x.plan
	b := p.Find("species")
	if b == nil || b.Index < 0 || b.Set > 0 || p.Kind != plan.Flat || !p.Binds(countNames...) || len(p.Catch) > 0 ||
		p.Binds("length_cm", "girth_cm", "scale_kg", "outcome", "kept", "time_s", "line", "count") ||
		p.Reads("fishlist") {
		return
	}
	if !slices.ContainsFunc(x.rows, func(row []string) bool {
		text := cellOf(row, b.Index)
		return figureWithUnit.MatchString(text) && len(x.t.Species.In(text)) > 0
	}) {
		return
	}
	for _, c := range x.t.Columns {
		if c.Parse == "fishlist" && slices.Contains(c.Kinds, plan.Flat) {
			b.Column, b.Unit = c, ""
			return
		}
	}
}
