package meaning

import (
	"slices"
	"strings"

	"wakeledger/pipeline/plan"
)

// fewOf is of how many stretches a table of lines with hours of their own must tell at the least.
const fewOf = 3

// span is from when to when a row says that something was out, in seconds.
type span struct{ from, to int }

// linesOf takes a table of lines, each with the hours that it was out, for the lines of the stretches of another table,
// where these are as long as the lines of each together: a lure that is changed begins no stretch of the boat.
func (l *Log) linesOf(data []*Understood) {
	for _, u := range data {
		p := u.Plan
		timed := p.Binds("start_s") && p.Binds("end_s")
		if p.Kind != plan.Flat || !p.Binds("line") || !timed || p.StrikeSets() > 0 || p.Binds(countNames...) ||
			p.Binds("outcome", "time_s", "leg", "speed_kn", "lines_out", "duration_s", "species") ||
			len(p.Catch)+len(p.Rods)+len(p.Spread) > 0 || p.Reads("story", "fishlist", "stretches") {
			continue
		}
		for _, o := range data {
			if o != u && o.Plan.Kind == plan.Legs && o.Plan.Binds("start_s") && o.Plan.Binds("end_s") &&
				u.linesWithin(o) {
				p.Kind = plan.Lines
				u.b.note("its lines were out on the stretches of %s, each for its own hours", o.Plan.Name)
				break
			}
		}
	}
}

// linesWithin tells whether the rows of a table lie within the stretches of another, which begin with the first of
// them and end with the last, in nine stretches of ten.
func (u *Understood) linesWithin(o *Understood) bool {
	key := "trip"
	if u.Plan.Find(key) == nil || o.Plan.Find(key) == nil {
		key = "date"
	}
	if u.Plan.Find(key) == nil || o.Plan.Find(key) == nil {
		return false
	}
	lines, legs := u.spansBy(key), o.spansBy(key)
	same, told, several := 0, 0, false
	for k, of := range lines {
		leg := legs[k]
		if len(leg) != 1 {
			if len(leg) > 1 {
				return false // of which of them a line was, nobody says
			}
			continue
		}
		told++
		first := slices.MinFunc(of, func(a, b span) int { return a.from - b.from })
		last := slices.MaxFunc(of, func(a, b span) int { return a.to - b.to })
		if first.from == leg[0].from && last.to == leg[0].to {
			same++
		}
		several = several || slices.ContainsFunc(of, func(x span) bool { return x != of[0] })
	}
	return several && told >= fewOf && 10*same >= 9*told && 2*told >= len(lines)
}

// spansBy are the hours of a table's rows by what stands in a column, of rows that go past midnight on.
func (u *Understood) spansBy(name string) map[string][]span {
	key, start, end := u.Plan.Find(name), u.Plan.Find("start_s"), u.Plan.Find("end_s")
	out, on := map[string][]span{}, ""
	for i, row := range u.Block.Rows {
		if k := strings.ToLower(cellOf(u.b.rows[i], key.Index)); k != "" {
			on = k
		}
		from, okFrom := clock(u.b.group, row, start.Index)
		to, okTo := clock(u.b.group, row, end.Index)
		if !okFrom || !okTo || on == "" {
			continue
		}
		if to < from {
			to += 24 * 3600
		}
		out[on] = append(out[on], span{from, to})
	}
	return out
}
