package reports

import (
	"fmt"
	"math"

	"wakeledger/pipeline/sentence"
	"wakeledger/queries"
	"wakeledger/queries/evidence"
	"wakeledger/queries/stats"
	"wakeledger/reports/page"
)

// totals are the season's sums, all taken from the rows.
type totals struct {
	boatHours, lineHours                float64
	strikeHours                         float64 // line-hours of the strike-rate rows
	without                             int64   // strikes that have no line-hours to belong to
	strikes, hookups, landed, released  int64
	tripStrikes, tripLanded, tripReturn int64
	tripLineHours                       float64
	scale, tape                         *queries.Fish // the heaviest of each; nil for none
}

func addUp(in SeasonInput) totals {
	var t totals
	for _, r := range in.Effort {
		t.boatHours += r.BoatHours
		t.lineHours += r.LineHours
	}
	for _, r := range in.StrikeRate {
		t.strikeHours += r.LineHours
		t.strikes += r.Strikes
		t.without += r.WithoutHours
		t.hookups += r.Hookups
		t.landed += r.Landed
		t.released += r.Released
	}
	for _, r := range in.Trips {
		t.tripStrikes += r.Strikes
		t.tripLanded += r.Landed
		t.tripReturn += r.Released
		t.tripLineHours += r.LineHours
	}
	return t
}

// rate is the season's strikes per line-hour, of the strikes that have
// line-hours; nil without line-hours.
func (t totals) rate() *float64 {
	if t.strikeHours <= 0 {
		return nil
	}
	r := float64(t.strikes-t.without) / t.strikeHours
	return &r
}

// enough is how many line-hours a level needs not to be called thin: those in
// which the season's rate would bring three strikes. Below, even no strike at
// all is within what chance gives at that rate (the rule of three: the upper
// 95 % limit of a rate after none in h hours is 3/h; Hanley and Lippman-Hand
// 1983, JAMA 249:1743-1745). Zero, so that nothing is thin, without strikes.
func (t totals) enough() float64 {
	return evidence.Enough(stats.Count{Events: t.strikes - t.without, Effort: t.strikeHours})
}

// disagreements says where the same sum comes out differently from two answers.
func (t totals) disagreements(trips int) []string {
	if trips == 0 {
		return nil
	}
	var out []string
	if math.Abs(t.lineHours-t.tripLineHours) > 0.05 {
		out = append(out, fmt.Sprintf("The speed bands add up to %s line-hours, the trips to %s: rows of the log "+
			"disagree.",
			page.Number(t.lineHours, 1), page.Number(t.tripLineHours, 1)))
	}
	for _, c := range []struct {
		what        string
		bands, trip int64
	}{{"strikes", t.strikes, t.tripStrikes}, {"landed fish", t.landed, t.tripLanded},
		{"released fish", t.released, t.tripReturn}} {
		if c.bands != c.trip {
			out = append(out, fmt.Sprintf("The speed bands add up to %s %s, the trips to %s: rows of the log disagree.",
				page.Count(c.bands), c.what, page.Count(c.trip)))
		}
	}
	return out
}

// setHeaviest finds the heaviest fish on a scale and by tape; one that is doubtful is
// neither.
func (s *season) setHeaviest() {
	for i := range s.Fish {
		f := &s.Fish[i]
		best := &s.tape
		if IsScale(f.Method) {
			best = &s.scale
		}
		if f.WeightKG != nil && s.doubtful[placeOf(*f)] == "" && (*best == nil || *f.WeightKG > *(*best).WeightKG) {
			*best = f
		}
	}
}

// tiles are the four figures at the top.
func (s *season) tiles() []page.Tile {
	without := ""
	if s.without > 0 {
		without = page.Count(s.without) + " of them outside line-hours"
	}
	tiles := []page.Tile{
		{Label: "Strikes", Value: page.Count(s.strikes), Note: joined(without, s.doubtfulStrikes())},
		{Label: "Fish to the boat", Value: page.Count(s.landed + s.released),
			Note: page.Count(s.landed) + " landed, " + page.Count(s.released) + " released"},
		{Label: "Line-hours", Value: hours(s.lineHours), Unit: "h", Note: "hours × lines out"},
	}
	if s.scale != nil || s.tape == nil {
		return append(tiles, s.heaviestTile("Heaviest on a scale", s.scale))
	}
	return append(tiles, s.heaviestTile("Heaviest by tape", s.tape))
}

func (s *season) heaviestTile(label string, f *queries.Fish) page.Tile {
	if f == nil {
		return page.Tile{Label: "Heaviest", Value: page.Unknown, Note: "no weight"}
	}
	note := ""
	if f.Species != nil {
		note = sentence.Capital(fishNames(*f.Species))
	}
	if !IsScale(f.Method) {
		note = joined("an estimate", note)
	}
	return page.Tile{Label: label, Value: s.weightText(f), Unit: s.weight, Note: note}
}

// weightText is the fish's weight in the unit shown, to the digits it has.
func (s *season) weightText(f *queries.Fish) string {
	w := *f.WeightKG * s.perKG
	if IsScale(f.Method) {
		return page.Number(w, weightDecimals([]float64{w}))
	}
	return page.Number(w, estimateDecimals(w))
}

func joined(a, b string) string {
	if a == "" || b == "" {
		return a + b
	}
	return a + ", " + b
}
