package meaning

import (
	"math"
	"slices"
	"strings"

	"wakeledger/pipeline/plan"
	"wakeledger/pipeline/words"
)

// Again is what speaks for rows of bites that repeat the hours, or the counts, of the stretch that they are of.
type Again struct {
	Row, Other int     // numbers of the first two rows of one day that say the same
	Pairs      int     // such pairs of neighbours
	Counts     bool    // it is counts that they repeat: their stretch is known by its clock times
	Odds       float64 // natural logarithm of how much likelier one stretch is than one each
}

// Bounds of these odds: above sure they are counted once, below never on each row; between, the log's owner is
// asked.
const (
	sureAgain  = 4
	neverAgain = -2
)

// LongestDay is how many hours nobody trolls on one day (common practice, no source).
const LongestDay = 16

// hoursAgain finds tables with a row a bite in which hours without clock times, or counts, stand again on each row of a
// stretch. Neighbours of one stretch then say the same far more often than others do.
func (l *Log) hoursAgain() {
	said := slices.ContainsFunc(l.sentences(), words.DayOnEachRow)
	for _, u := range l.Data() {
		u.Again = u.again(said)
		if u.Again.Pairs > 0 && u.Again.Odds >= 0 {
			u.Plan.EffortOnce = true
			what := "hours"
			if u.Again.Counts {
				what = "counts"
			}
			u.b.note("rows with a bite that say the same %s as the row above, on the same day, are of one stretch",
				what)
		}
		u.Men = u.sideBySide("angler", "line", "start_s", "end_s", "leg", "outcome", "time_s", "lure")
		if u.Men.Pairs > 0 && u.Men.Odds >= 0 {
			u.Plan.HoursOnce = true
			u.b.note("%s: the hours of a day are the boat's, written for each man", u.titled("angler"))
		}
		u.Beside = u.sideBySide("lure", "line", "lines_out", "start_s", "end_s", "leg", "outcome", "time_s")
		if u.Beside.Pairs > 0 && u.Beside.Odds >= 0 {
			u.Plan.LureLines = true
			u.b.note("%s: lures of one day with the same hours were out together, each on its line", u.titled("lure"))
		}
	}
}

// titled is the heading of a column of a block that has it.
func (u *Understood) titled(name string) string { return strings.TrimSpace(u.Plan.Find(name).Heading) }

// Unsure tells whether it must be asked.
func (a Again) Unsure() bool { return a.Pairs > 0 && a.Odds > neverAgain && a.Odds < sureAgain }

// hoursOf is a row as far as it matters here.
type hoursOf struct {
	row, at                      int // its number, and its index
	day, clock, hours, lines, kn string
	counts                       []string
	bite                         bool
}

// repeats tells a row that may be of the same stretch as another and says the same of it.
func (x hoursOf) repeats(o hoursOf) bool {
	return x.hours == o.hours && x.lines == o.lines && slices.Equal(x.counts, o.counts)
}

// most is the largest of a row's counts.
func (x hoursOf) most() (n float64) {
	for _, c := range x.counts {
		n = max(n, numberIn(c))
	}
	return n
}

// again compares the rows of a table of stretches with what struck on them. said is that the log itself says so.
func (u *Understood) again(said bool) Again {
	p := u.Plan
	clocked := p.Binds("start_s", "end_s") || p.Binds("leg") && p.Binds("trip")
	counted := p.Binds(countNames...)
	// a count of misses alone holds none of the fish that have the rows
	holding := slices.ContainsFunc(countNames, func(n string) bool { return n != "missed_n" && p.Binds(n) })
	switch {
	case p.Kind != plan.Flat || p.StrikeSets() > 0 || len(p.Catch)+len(p.Rods) > 0 || p.Reads("stretches"),
		p.OfSet("duration_s", 1) != nil || p.OfSet("start_s", 1) != nil,
		p.Binds("line") && !p.Binds("lines_out") && !u.linesAgain(), // a row a line
		!clocked && !p.Binds("duration_s"), clocked && !counted:
		return Again{}
	}
	out := Again{Counts: clocked}
	same, within, sameAcross, across, long, paced := 0, 0, 0, 0, false, false
	var last hoursOf
	sum, single, group := 0.0, 0.0, 1
	for i, row := range u.effortRows(clocked) {
		equal := i > 0 && row.repeats(last)
		switch {
		case i > 0 && (row.day != last.day || row.clock != last.clock):
			across++
			if equal {
				sameAcross++
			}
			fallthrough
		case i == 0:
			sum, single, group = numberIn(row.hours), numberIn(row.hours), 1
		case !row.bite || !last.bite || !equal:
			within++ // a stretch of its own
			sum, single, group = sum+numberIn(row.hours), single+numberIn(row.hours), 1
		default:
			within++
			sum += numberIn(row.hours)
			if same++; same == 1 {
				out.Row, out.Other = last.row, row.row
			}
			paced = paced || row.kn != "" && row.kn != last.kn
			if group++; holding && !said && float64(group) > row.most() {
				return Again{} // more bites than the count has: each row counts its own
			}
		}
		long = long || sum > LongestDay && single <= LongestDay
		last = row
	}
	out.Pairs, out.Odds = same, likelier(same, within, (float64(sameAcross)+1)/(float64(across)+2))
	if long && !clocked {
		out.Odds += sureAgain
	}
	switch {
	case said:
		out.Odds = max(out.Odds, sureAgain)
	case paced: // of one stretch they would have one speed
		out.Odds = min(out.Odds, sureAgain/2)
	}
	return out
}

// linesAgain tells whether a line stands on several rows of one day and stretch: its rows are of bites, not of lines.
func (u *Understood) linesAgain() bool {
	line := u.Plan.Find("line")
	seen := map[string]bool{}
	for _, row := range u.effortRows(u.Plan.Binds("start_s")) {
		name := strings.ToLower(cellOf(u.b.rows[row.at], line.Index))
		key := row.day + "|" + row.clock + "|" + name
		if name != "" && seen[key] {
			return true
		}
		seen[key] = true
	}
	return false
}

// effortRows are the rows with hours, or, of stretches that are known by their clock times, those with counts.
func (u *Understood) effortRows(clocked bool) []hoursOf {
	p := u.Plan
	day := p.Find("trip")
	if day == nil {
		day = p.Find("date")
	}
	if day == nil {
		return nil
	}
	var out []hoursOf
	on := ""
	for i, row := range u.b.rows {
		cell := func(b *plan.Binding) string {
			if b == nil {
				return ""
			}
			return strings.ToLower(cellOf(row, b.Index))
		}
		if d := cell(day); d != "" {
			on = d
		}
		x := hoursOf{row: u.Block.Rows[i].Num, at: i, day: on, hours: cell(p.Find("duration_s")),
			lines: cell(p.Find("lines_out")), kn: cell(p.Find("speed_kn"))}
		if at := u.Listed.At; at.Heading != "" {
			x.lines += "|" + strings.ToLower(cellOf(row, at.Index))
		}
		filled := false
		for _, name := range countNames {
			c := cell(p.Find(name))
			x.counts, filled = append(x.counts, c), filled || c != ""
		}
		if clocked {
			x.clock = cell(p.Find("start_s")) + "-" + cell(p.Find("end_s")) + "-" + cell(p.Find("leg"))
		}
		for j := range p.Bindings {
			x.bite = x.bite || p.Bindings[j].OfStrike() && cellOf(row, p.Bindings[j].Index) != ""
		}
		if !clocked && x.hours != "" || clocked && filled {
			out = append(out, x)
		}
	}
	return out
}

// numberIn is the number of a cell; 0 where it has none.
func numberIn(text string) float64 {
	v, _ := number(text)
	return v
}

// likelier is the logarithm of how much likelier it is to see so many of n when any share may be than when it is q.
func likelier(k, n int, q float64) float64 {
	if n == 0 {
		return 0
	}
	a, _ := math.Lgamma(float64(n + 1))
	b, _ := math.Lgamma(float64(k + 1))
	c, _ := math.Lgamma(float64(n - k + 1))
	return -math.Log(float64(n+1)) - (a - b - c + float64(k)*math.Log(q) + float64(n-k)*math.Log(1-q))
}

// sideBySide compares the rows of a table of lures, or of men, with their hours and counts: neighbours of one day with
// the same hours and different lures were out at the same time, each on a line of its own; men were on one boat.
// A table with one of the columns in but is no such one.
func (u *Understood) sideBySide(of string, but ...string) Again {
	p := u.Plan
	what := p.Find(of)
	if what == nil || p.Kind != plan.Flat || !p.Binds("duration_s") || !p.Binds(countNames...) ||
		p.Binds(but...) || p.StrikeSets() > 0 {
		return Again{}
	}
	var out Again
	within, sameAcross, across, long := 0, 0, 0, false
	var last hoursOf
	seen, sum := map[string]bool{}, 0.0
	for i, row := range u.effortRows(false) {
		name := strings.ToLower(cellOf(u.b.rows[row.at], what.Index))
		equal := i > 0 && row.hours == last.hours
		switch {
		case i > 0 && row.day != last.day:
			across++
			if equal {
				sameAcross++
			}
			fallthrough
		case i == 0:
			seen, sum = map[string]bool{}, 0
		case equal && !seen[name]:
			if out.Pairs++; out.Pairs == 1 {
				out.Row, out.Other = last.row, row.row
			}
			fallthrough
		default:
			within++
		}
		if name == "" || seen[name] {
			return Again{} // a lure that went in again
		}
		seen[name], sum = true, sum+numberIn(row.hours)
		long, last = long || sum > LongestDay, row
	}
	out.Odds = likelier(out.Pairs, within, (float64(sameAcross)+1)/(float64(across)+2))
	if long {
		out.Odds += sureAgain
	}
	return out
}
