package reports

import (
	"fmt"
	"math"
	"slices"
	"strings"

	"wakeledger/pipeline/factors"
	"wakeledger/pipeline/sentence"
	"wakeledger/queries"
	"wakeledger/queries/evidence"
	"wakeledger/reports/page"
)

// nextBox is what to do next season, at most five lines; a line with nothing to say is
// left out. A line leads to its picture where that is drawn.
func (s *season) nextBox(pictures []page.Section) *page.Box {
	box := &page.Box{Heading: "Next season"}
	for _, line := range []func() page.BoxLine{s.speedLine, s.settleLine, s.luresLine, s.tapeLine, s.logLine} {
		l := line()
		if l.Words == "" {
			continue
		}
		if !slices.ContainsFunc(pictures, func(p page.Section) bool { return p.ID == l.To }) {
			l.To = ""
		}
		box.Lines = append(box.Lines, l)
	}
	if len(box.Lines) == 0 {
		box.Lines = []page.BoxLine{{Head: "Log", Words: "speed, lines out and every strike. This season has too " +
			"little of them to say more."}}
	}
	return box
}

// speedLine is the speed to run.
func (s *season) speedLine() page.BoxLine {
	line := page.BoxLine{Head: "Speed", To: "speed"}
	e, f := s.Worked.evidenceOn(factors.Speed), s.Worked.findingOf(factors.Speed)
	switch {
	case len(s.Trips) < 2 || e == nil || f == nil:
		return line
	case f.Better == nil:
		if e.Finding.Levels > 1 {
			line.Words = "no evidence yet. Fish two speeds on each trip."
		}
		return line
	}
	for _, r := range speedRatios(e) {
		switch {
		case !r.told || r.ratio == nil:
		case r.level == nil:
			line.Words = fmt.Sprintf("towards %s. From end to end of the speeds strikes change %s times%s. %s",
				factors.Text(factors.Speed, *f.Better), ratioText(*r.ratio), ratioSpan(r.lo, r.hi), verdictTail(f))
		case *r.ratio < 1 && !leans(f):
			line.Words = fmt.Sprintf(
				"no evidence yet. Best guess: not %s, %s times the strikes of %s on the same days%s.", r.name,
				ratioText(*r.ratio), others(e), ratioSpan(r.lo, r.hi))
		case *r.ratio < 1:
			line.Words = fmt.Sprintf("not %s. On the same days it brought %s times the strikes of %s%s. %s", r.name,
				ratioText(*r.ratio), others(e), ratioSpan(r.lo, r.hi), verdictTail(f))
		case !leans(f):
			line.Words = fmt.Sprintf("no evidence yet. Best guess: %s, %s times the strikes of %s on the same days%s.",
				r.name, ratioText(*r.ratio), others(e), ratioSpan(r.lo, r.hi))
		default:
			line.Words = fmt.Sprintf("%s. On the same days it brought %s times the strikes of %s%s. %s", r.name,
				ratioText(*r.ratio), others(e), ratioSpan(r.lo, r.hi), verdictTail(f))
		}
	}
	return line
}

// settleLine is what to try, and how many trips it takes.
func (s *season) settleLine() page.BoxLine {
	line := page.BoxLine{Head: "To settle it", To: "mattered"}
	if len(s.Trips) < 2 || len(s.Worked.Next) == 0 {
		return line
	}
	q := s.Worked.Next[0]
	for _, other := range s.Worked.Next {
		if other.Leaning && !q.Leaning || other.Leaning == q.Leaning && other.Factor == factors.Speed {
			q = other
		}
	}
	text := func(level string) string { return factors.Text(q.Factor, level) }
	a, b := text(q.SettingA), text(q.SettingB)
	how := "each split between"
	if q.SideBySide {
		how = "with both out, side by side,"
	}
	if q.Factor != factors.Speed {
		line.Head = "To try"
	}
	trips := fmt.Sprintf("more than %d trips", evidence.MostPlanTrips)
	if q.Trips != nil {
		trips = page.Plural(*q.Trips, "trip", "trips")
	}
	line.Words = fmt.Sprintf("%s, %s %s and %s, if one brings %s the strikes of the other.", trips, how,
		a, b, evidence.Times(q.Ratio))
	if n := len(s.Worked.Plan); n > 0 {
		last := s.Worked.Plan[n-1]
		switch {
		case !q.SideBySide && last.BoatChance != nil && slices.Contains([]string{a, b}, last.FirstHalf):
			line.Words += " " + chances(n, *last.BoatChance)
		case q.SideBySide && last.LineChance != nil && slices.Contains([]string{a, b}, last.Port):
			line.Words += " " + chances(n, *last.LineChance)
		}
	}
	return line
}

var smallNumbers = []string{"No", "One", "Two", "Three", "Four", "Five", "Six", "Seven", "Eight", "Nine", "Ten"}

// chances is how likely a number of trips is to settle it: "Ten trips: 3 chances in 10."
func chances(trips int, chance float64) string {
	many := fmt.Sprint(trips)
	if trips < len(smallNumbers) {
		many = smallNumbers[trips]
	}
	if trips == 1 {
		many += " trip: "
	} else {
		many += " trips: "
	}
	switch n := int(math.Round(10 * chance)); {
	case chance < 0.03:
		return many + "hardly a chance."
	case chance < 0.08:
		return many + "1 chance in 20."
	case n == 1:
		return many + "1 chance in 10."
	case n == 10:
		return many + "almost surely."
	default:
		return many + fmt.Sprintf("%d chances in 10.", n)
	}
}

// gearFactors are what is chosen line by line.
var gearFactors = []string{"lure", "lure-weight", "colour", "hooks", "setback"}

// luresLine is what the season says of lures and setback.
func (s *season) luresLine() page.BoxLine {
	line := page.BoxLine{Head: "Lures and setback", To: "mattered"}
	var told, silent []string
	compared := false
	for _, factor := range gearFactors {
		f := s.Worked.findingOf(factor)
		if f == nil || f.Better == nil {
			continue
		}
		compared = true
		if leans(f) && f.Ratio != nil {
			told = append(told, fmt.Sprintf("%s: %s brought %s times the strikes side by side%s. %s",
				factors.Noun(factor), setting(*f), ratioText(*f.Ratio),
				ratioSpan(f.RatioLo, f.RatioHi), verdictTail(f)))
		} else {
			silent = append(silent, factors.Noun(factor))
		}
	}
	switch {
	case !compared || len(s.Trips) < 2:
		return line
	case len(told) == 0:
		line.Words = "no evidence yet that " + strings.Replace(sentence.List(silent), " and ", " or ", 1) +
			" makes a difference. Buy what lasts."
	case len(silent) == 0:
		line.Words = sentence.Capital(strings.Join(told, " "))
	default:
		line.Words = sentence.Capital(strings.Join(told, " ")) + " No evidence yet on " + sentence.List(silent) + "."
	}
	return line
}

// tapeLine is whether to trust the tape.
func (s *season) tapeLine() page.BoxLine {
	line := page.BoxLine{Head: "Tape", To: "heaviest"}
	check := func(method string) *queries.ScaleCheck {
		for i := range s.Checks {
			if s.Checks[i].Method == method && s.Checks[i].N > 0 {
				return &s.Checks[i]
			}
		}
		return nil
	}
	c := check(queries.ByGirth)
	if c == nil || c.Ratio == nil || c.RatioLo == nil || c.RatioHi == nil || c.MedianAbsKG == nil {
		return line
	}
	// no scale at the dock is finer than a tenth
	within := func(kg float64) string { return page.Number(max(0.1, kg*s.perKG), 1) + " " + s.weight }
	line.Words = fmt.Sprintf("on average it matches the scale. Half of %d fish were within %s.", c.N,
		within(*c.MedianAbsKG))
	if *c.RatioLo > 1 || *c.RatioHi < 1 {
		line.Words = fmt.Sprintf("reads %s %% %s by the girth rule. Half of %d fish were within %s.", off(*c.Ratio),
			lightOrHeavy(*c.Ratio), c.N, within(*c.MedianAbsKG))
	}
	var used []queries.ScaleCheck
	if own := check(queries.ByOwn); own != nil && own.MedianAbsKG != nil {
		used = append(used, *own)
	}
	var divisors []string
	for _, o := range s.Own {
		if o.Used {
			divisors = append(divisors, page.Number(divisor(o.K), 0)+" for "+fishNames(o.Species))
		}
	}
	slices.Sort(divisors)
	if len(divisors) > 0 && len(used) > 0 {
		line.Words += fmt.Sprintf(" Divide by %s instead of 800: half then within %s.",
			sentence.List(divisors), within(*used[0].MedianAbsKG))
	}
	return line
}

// gap is something that a log should hold and does not.
type gap struct {
	words    string
	missing  float64
	of       float64
	counting string // what is missing, for the brackets
}

// logLine is what was missing most.
func (s *season) logLine() page.BoxLine {
	gaps := s.gaps()
	slices.SortStableFunc(gaps, func(a, b gap) int {
		switch x, y := a.missing/a.of, b.missing/b.of; {
		case x > y:
			return -1
		case x < y:
			return 1
		}
		return 0
	})
	if len(gaps) == 0 {
		return page.BoxLine{}
	}
	return page.BoxLine{Head: "Log more", Words: fmt.Sprintf("%s (%s without).", gaps[0].words, gaps[0].counting),
		To: "fates"}
}

// leastGap is the share that must be missing to be named.
const leastGap = 0.02

// gaps are what the logs leave out by leastGap or more.
func (s *season) gaps() []gap {
	var out []gap
	add := func(words string, missing, of float64, counting string) {
		if of > 0 && missing/of >= leastGap {
			out = append(out, gap{words, missing, of, counting})
		}
	}
	var legs, unlined int64
	unsped := 0.0
	for _, r := range s.Effort {
		unlined, unsped = unlined+r.UnlinedLegs, unsped+r.UnspedHours
	}
	for _, t := range s.Trips {
		legs += t.Legs
	}
	var lost, noCause, unsaid int64
	for _, f := range s.Fates {
		switch fateKind(f.Fate) {
		case page.LostOff:
			lost += f.Strikes
		case page.LostUnsaid:
			lost, noCause = lost+f.Strikes, noCause+f.Strikes
		case page.Unsaid:
			unsaid += f.Strikes
		}
	}
	noWeight := int64(0)
	for _, f := range s.Fish {
		if f.WeightKG == nil {
			noWeight++
		}
	}
	add("lines out", float64(unlined), float64(legs), page.Plural(unlined, "stretch", "stretches"))
	add("speed", unsped, s.boatHours, hours(unsped)+" boat-hours")
	add("why a fish was lost", float64(noCause), float64(lost), page.Plural(noCause, "fish", "fish"))
	add("how a strike ended", float64(unsaid), float64(s.strikes), page.Plural(unsaid, "strike", "strikes"))
	add("length and girth", float64(noWeight), float64(len(s.Fish)), page.Plural(noWeight, "fish", "fish"))
	if e := s.Worked.evidenceOn("lure"); e != nil {
		for _, r := range e.Rows {
			if r.Level == factors.NotLogged {
				add("the line of a strike", float64(r.Strikes), float64(s.strikes),
					page.Plural(r.Strikes, "strike", "strikes"))
			}
		}
	}
	return out
}
