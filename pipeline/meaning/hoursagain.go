package meaning

import (
	"math"
	"strings"

	"wakeledger/pipeline/plan"
)

// Again is what speaks for rows of bites that repeat the hours of the stretch that they are of.
type Again struct {
	Row, Other int     // numbers of the first two rows of one day with the same hours
	Pairs      int     // such pairs of neighbours
	Odds       float64 // natural logarithm of how much likelier one stretch is than one each
}

// Bounds of these odds: above sure the hours are counted once, below never on each row; between, the log's owner is
// asked.
const (
	sureAgain  = 4
	neverAgain = -2
)

// longestDay is how many hours nobody trolls on one day (common practice, no source).
const longestDay = 16

// hoursAgain finds tables with a row a bite whose hours stand without clock times and again on each row of a
// stretch. Neighbours of one day then have the same hours far more often than neighbours of two days.
func (l *Log) hoursAgain() {
	for _, u := range l.Data() {
		u.Again = u.again()
		if u.Again.Pairs > 0 && u.Again.Odds >= 0 {
			u.Plan.EffortOnce = true
			u.b.note("rows with a bite that say the same hours as the row above, on the same day, are of one stretch")
		}
	}
}

// Unsure tells whether it must be asked.
func (a Again) Unsure() bool { return a.Pairs > 0 && a.Odds > neverAgain && a.Odds < sureAgain }

// hoursOf is a row as far as it matters here.
type hoursOf struct {
	row                   int
	day, hours, lines, kn string
	bite                  bool
}

// again compares the rows of a table of stretches with what struck on them.
func (u *Understood) again() Again {
	p := u.Plan
	hours := p.Find("duration_s")
	if p.Kind != plan.Flat || hours == nil || hours.Index < 0 || p.Binds("start_s", "end_s", "leg", "line",
		"strikes_n", "hooked_n", "landed_n", "stretches") || len(p.Catch)+len(p.Rods) > 0 ||
		p.StrikeSets() > 0 || p.OfSet("duration_s", 1) != nil {
		return Again{}
	}
	var out Again
	same, within, sameAcross, across, long, paced := 0, 0, 0, 0, false, false
	var last hoursOf
	sum, single := 0.0, 0.0
	for _, row := range u.effortRows(hours) {
		switch equal := row.hours == last.hours; {
		case last.hours == "":
			sum, single = hoursIn(row.hours), hoursIn(row.hours)
		case row.day != last.day:
			across++
			if equal {
				sameAcross++
			}
			sum, single = hoursIn(row.hours), hoursIn(row.hours)
		case !row.bite || !last.bite:
			within++ // a stretch of its own, and so are the others of its hours
			sum, single = sum+hoursIn(row.hours), single+hoursIn(row.hours)
		default:
			within++
			sum += hoursIn(row.hours)
			if equal = equal && row.lines == last.lines; equal {
				if same++; same == 1 {
					out.Row, out.Other = last.row, row.row
				}
				paced = paced || row.kn != "" && row.kn != last.kn
			} else {
				single += hoursIn(row.hours)
			}
		}
		long = long || sum > longestDay && single <= longestDay
		last = row
	}
	out.Pairs, out.Odds = same, likelier(same, within, (float64(sameAcross)+1)/(float64(across)+2))
	if long {
		out.Odds += sureAgain
	}
	if paced { // of one stretch they would have one speed
		out.Odds = min(out.Odds, sureAgain/2)
	}
	return out
}

// effortRows are the rows with hours.
func (u *Understood) effortRows(hours *plan.Binding) []hoursOf {
	p := u.Plan
	day, lines, kn := p.Find("trip"), p.Find("lines_out"), p.Find("speed_kn")
	if day == nil {
		day = p.Find("date")
	}
	if day == nil {
		return nil
	}
	cell := func(row []string, b *plan.Binding) string {
		if b == nil {
			return ""
		}
		return strings.ToLower(cellOf(row, b.Index))
	}
	var out []hoursOf
	on := ""
	for i, row := range u.b.rows {
		if d := cell(row, day); d != "" {
			on = d
		}
		x := hoursOf{row: u.Block.Rows[i].Num, day: on, hours: cell(row, hours), lines: cell(row, lines),
			kn: cell(row, kn)}
		for j := range p.Bindings {
			x.bite = x.bite || p.Bindings[j].OfStrike() && cellOf(row, p.Bindings[j].Index) != ""
		}
		if x.hours != "" {
			out = append(out, x)
		}
	}
	return out
}

// hoursIn are the hours of a cell that says no more than a number of them; 0 of others.
func hoursIn(text string) float64 {
	v, _ := number(text)
	return v
}

// likelier is the logarithm of how much likelier it is to see so many of n when any share may be than when it is q.
func likelier(k, n int, q float64) float64 {
	if n == 0 {
		return 0
	}
	any := -math.Log(float64(n + 1))
	a, _ := math.Lgamma(float64(n + 1))
	b, _ := math.Lgamma(float64(k + 1))
	c, _ := math.Lgamma(float64(n - k + 1))
	return any - (a - b - c + float64(k)*math.Log(q) + float64(n-k)*math.Log(1-q))
}
