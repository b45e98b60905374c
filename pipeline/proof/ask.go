package proof

import (
	"fmt"
	"slices"
	"strings"

	"wakeledger/pipeline/layout"
	"wakeledger/pipeline/meaning"
	"wakeledger/pipeline/plan"
	"wakeledger/pipeline/record"
	"wakeledger/pipeline/unit"
)

// Subject is a block with what its rows came to.
type Subject struct {
	*meaning.Understood
	Stats  *Stats
	Beside bool // of another file of the same book: it counts, and is not asked about
}

// inquiry gathers the questions of one log.
type inquiry struct {
	log      *meaning.Log
	subjects []Subject
	book     []Subject        // the same, and those of other files of the book
	counted  map[string]*Told // what counts tell, here and beside
	beside   int              // bites that other files of the book count
	both     int              // bites of counts and of lists of others than these count; 0 where they tell the same
	fished   map[string]bool  // days and trips of which a stretch is told, here and beside
	struck   map[string]bool  // days and trips of which a strike is told, here and beside
	total    Stats            // of all blocks
	now      *Subject         // the block that is asked about; nil: the whole log
	out      []Question
}

// Questions are what is open after a log was read, what moves the totals most first.
func Questions(l *meaning.Log, subjects []Subject) []Question {
	q := &inquiry{log: l, book: subjects, counted: countedOf(subjects), fished: map[string]bool{},
		struck: map[string]bool{}}
	for _, s := range subjects {
		if s.Beside && s.Stats.Listed == 0 {
			q.beside += s.Stats.ByCount
		}
		for key := range s.Stats.Fished {
			q.fished[key] = true
		}
		for key := range s.Stats.Told {
			q.struck[key] = true
		}
	}
	q.subjects = slices.DeleteFunc(slices.Clone(subjects), func(s Subject) bool { return s.Beside })
	subjects = q.subjects
	for _, s := range subjects {
		q.total.Stretches += s.Stats.Stretches
		q.total.Hours += s.Stats.Hours
		q.total.NoLines += s.Stats.NoLines
		q.total.NoLinesH += s.Stats.NoLinesH
		if s.Stats.SameClock == 0 { // else lures of one stretch stand on rows of their own
			q.total.NoLines += s.Stats.LureOnly
			q.total.NoLinesH += s.Stats.LureOnlyH
		}
		q.total.NoSpeed += s.Stats.NoSpeed
		q.total.Strikes += s.Stats.Strikes
		q.total.Listed += s.Stats.Listed
		q.total.ByCount += s.Stats.ByCount
	}
	q.columns()
	q.effort()
	q.strikes()
	q.unwritten()
	q.unhooked()
	q.told()
	q.noDays()
	q.score()
	q.sheetDays()
	for i := range subjects {
		q.now = &subjects[i]
		q.block(subjects[i])
	}
	q.now = nil
	q.atOnce()
	q.order()
	q.noYear()
	q.years()
	q.untrolled()
	q.aside()
	q.leftOver()
	q.onlyTrips()
	q.sums()
	q.summaries()
	q.toldAlready()
	return ordered(q.out)
}

func (q *inquiry) ask(kind, sheet, about, text string, options, effect []string, key ...string) {
	of, hand := q.about()
	brief, _, cut := strings.Cut(text, ", the first: ") // whose place and cell no page shows
	if cut {
		brief += "."
	}
	x := Question{ID: id(kind, append(append([]string{about}, key...), hand...)...), Kind: kind,
		Sheet: sheet, About: about, Text: text,
		Options: options, Effect: effect, Brief: brief, Choices: options, of: of}
	q.out = append(q.out, x)
}

// last is the question asked last.
func (q *inquiry) last() *Question { return &q.out[len(q.out)-1] }

// about is the blocks that are asked about, and the headings by which their hand is known:
// what was answered for one hand says nothing of another.
func (q *inquiry) about() (of []*meaning.Understood, hand []string) {
	if q.now != nil {
		return []*meaning.Understood{q.now.Understood}, q.now.Hand()
	}
	for _, u := range q.log.Data() {
		of = append(of, u)
		hand = append(hand, strings.Join(u.Hand(), "\x00"))
	}
	slices.Sort(hand)
	return of, slices.Compact(hand)
}

// effectOf is what rests on a meaning.
func effectOf(name string) []string {
	switch name {
	case "start_s", "end_s", "duration_s", "stopped_s", "stretches":
		return hours
	case "lines_out", "spread", "line_hours":
		return lines
	case "speed_kn", "strike_speed_kn":
		return []string{"bands"}
	case "event":
		return []string{"boat_hours", "line_hours", "strikes", "hooked", "landed", "released", "bands", "fish"}
	case "strikes_n":
		return bites
	case "story", "fishlist":
		return append([]string{"fish"}, bites...)
	case "hooked_n", "landed_n", "kept_n", "released_n", "lost_n", "missed_n", "outcome":
		return []string{"strikes", "hooked", "landed", "released", "bands"}
	case "catch":
		return listing
	case "kept", "released":
		return []string{"hooked", "landed", "released"}
	case "scale_kg", "length_cm", "girth_cm", "species", "weighed":
		return []string{"fish"}
	case "date", "trip", "method":
		return all
	}
	return nil
}

// columns asks about headings.
func (q *inquiry) columns() {
	for _, o := range q.log.Open() {
		var options, effect []string
		names := slices.Clone(o.Others)
		if o.Taken != "" || len(o.Others) == 1 && o.Others[0] != "" {
			names = append([]string{o.Taken}, o.Others...)
		} else {
			names = append(names, "")
		}
		for _, n := range names {
			options = append(options, meaning.Words(n))
			for _, e := range effectOf(n) {
				if !slices.Contains(effect, e) {
					effect = append(effect, e)
				}
			}
		}
		text := fmt.Sprintf("What stands under %q (%s)?", o.Heading, strings.Join(o.Samples, ", "))
		if o.Taken != "" {
			text += " I take it for " + meaning.Words(o.Taken) + "."
		} else {
			text += " I make nothing of it."
		}
		q.out = append(q.out, Question{ID: ColumnID(o.Heading, o.Nth, o.Labels), Kind: "column",
			Sheet: o.Sheet, About: o.Heading, Text: text,
			Options: options, Effect: effect, Brief: fmt.Sprintf("What stands under %q?", o.Heading),
			Choices: names, Taken: o.Taken, unread: o.Unread})
	}
}

// effort asks about hours and lines of the whole log.
func (q *inquiry) effort() {
	t := &q.total
	if t.Stretches == 0 {
		unread := slices.ContainsFunc(q.subjects, func(s Subject) bool {
			return s.Block.Shape == layout.Records && s.Plan.Kind == plan.Trips
		})
		if t.Strikes == 0 && unread {
			q.ask("no effort", "", "hours", "I read the days of this diary, and made nothing of its lines: no hours "+
				"of trolling, no bites.", nil, all)
		}
		if t.Strikes > 0 && q.lookedForEffort() || q.clocksLeft() {
			q.ask("no effort", "", "hours", "I found no times or hours of trolling: nothing can be said per hour.", nil,
				append([]string{"trips"}, hours...)) // on which days lines were in is not known either
		}
		return
	}
	switch {
	case slices.ContainsFunc(q.subjects, listed):
	case t.NoLines == t.Stretches:
		q.ask("no lines", "", "lines out", fmt.Sprintf("How many lines were out? The log does not say (%.1f h).",
			t.NoLinesH), []string{"a usual number", "leave line-hours out"}, lines)
	case 4*t.NoLines > t.Stretches:
		q.ask("few lines", "", "lines out", fmt.Sprintf("%d of %d stretches have no number of lines (%.1f h): their "+
			"line-hours are left out.", t.NoLines, t.Stretches, t.NoLinesH),
			[]string{"a usual number", "leave them out"}, lines)
	}
	if 2*t.NoSpeed > t.Stretches && t.NoSpeed < t.Stretches {
		q.ask("few speeds", "", "speed", fmt.Sprintf("%d of %d stretches have no speed.", t.NoSpeed, t.Stretches),
			[]string{"a usual speed", "leave them out"}, []string{"bands"})
	}
}

// lookedForEffort tells a log that should have effort: one with more than lists of fish, or with days of which not
// all was understood.
func (q *inquiry) lookedForEffort() bool {
	return slices.ContainsFunc(q.subjects, func(s Subject) bool {
		return s.Plan.Kind == plan.Flat || s.Plan.Kind == plan.Events || s.Plan.Kind == plan.Legs ||
			s.Plan.Kind == plan.Trips && len(s.Plan.Unknown) > 0
	})
}

// clocksLeft tells a log with a column of clock times of which nothing was made.
func (q *inquiry) clocksLeft() bool {
	return slices.ContainsFunc(q.subjects, func(s Subject) bool {
		return slices.ContainsFunc(s.Plan.Unknown, func(u plan.Unknown) bool {
			clocks, filled := 0, 0
			for _, r := range s.Block.Rows {
				if u.Index >= len(r.Cells) || r.Cells[u.Index].Look == layout.Blank {
					continue
				}
				filled++
				m, err := unit.ParseMoment(r.Cells[u.Index].Text, unit.OrderUnknown)
				if err == nil && m.HasTime && !m.HasDate {
					clocks++
				}
			}
			return u.Aside == "" && filled >= leastClocks && 10*clocks >= 6*filled
		})
	})
}

// leastClocks is from how many cells on a column of clock times is one.
const leastClocks = 3

// strikes asks about bites of the whole log.
func (q *inquiry) strikes() {
	t := &q.total
	if t.Strikes == 0 && t.Stretches >= 5 &&
		!slices.ContainsFunc(q.book, func(s Subject) bool { return s.Beside && s.Stats.Strikes > 0 }) {
		q.ask("no strikes", "", "strikes", "I found hours of trolling, but no bites.", nil, listing)
		return
	}
	if t.ByCount > 0 && t.Listed > 0 {
		q.compare(t)
	}
	q.compareBeside()
	q.uncounted()
}

// compareBeside holds rows of strikes against the counts of other files of the same book.
func (q *inquiry) compareBeside() {
	for _, s := range q.subjects {
		t := s.Stats
		if q.beside == 0 || s.Plan.Kind != plan.Strikes || s.Plan.Among || s.Plan.NoStrikes || t.Listed == 0 ||
			t.ByCount > 0 || t.Listed == q.beside {
			continue
		}
		shared := false
		for key, told := range t.Told {
			c := q.counted[key]
			shared = shared || c != nil && c.Bites+c.Counted.Held > 0 && told.Listed.Held > 0
		}
		if !shared {
			continue
		}
		q.ask("beside", s.Plan.Name, "strikes", fmt.Sprintf("The counts of the other file add up to %d bites, the "+
			"rows here to %d: which is right? Until it is mended, both count where they do not agree.", q.beside,
			t.Listed), nil, listing, q.log.File)
	}
}

// compare holds counts against rows of strikes where a log has both.
func (q *inquiry) compare(t *Stats) {
	var counts, rows string
	var counted, listed []*meaning.Understood
	struck := 0 // of fish there are rows beside, of the same bites
	for _, s := range q.subjects {
		if s.Plan.Kind != plan.Fish && !s.Plan.Among {
			struck += s.Stats.Listed
		}
		if s.Stats.ByCount > 0 && s.Stats.Listed == 0 {
			counts, counted = s.Plan.Name, append(counted, s.Understood)
		}
		if s.Plan.Kind == plan.Strikes && s.Stats.Listed > 0 && !s.Plan.Among {
			rows, listed = s.Plan.Name, append(listed, s.Understood)
		}
	}
	if len(counted) == 0 || len(listed) == 0 || t.ByCount == t.Listed || t.ByCount == struck {
		return
	}
	if onlyOthers(counted, listed, q.subjects) {
		q.log.Agreed = append(q.log.Agreed, fmt.Sprintf("%s: it counts %s missed or lost alone, and none of those in "+
			"%s is such: they stand beside these", counts, plural(t.ByCount, "bite", "bites"), rows))
		q.both = t.ByCount + struck
		return
	}
	if missedUnlisted(counted, listed, q.subjects) {
		q.log.Agreed = append(q.log.Agreed, fmt.Sprintf("the list%s tells what was hooked, lost ones too, and on no "+
			"day or trip more than the bites counted%s: the other %d were missed, or nobody wrote what came of them",
			within(rows), within(counts), t.ByCount-struck))
		return
	}
	options := []string{counts, rows}
	if counts == rows {
		options = []string{"the counts", "the rows"}
	}
	q.ask("two tellings", counts, rows, fmt.Sprintf("The counts%s add up to %d bites, the rows of strikes%s "+
		"to %d: which is right?", within(counts), t.ByCount, within(rows), struck), options, q.listingOf(listed))
	x := q.last()
	x.Brief = fmt.Sprintf("The counts add up to %d bites, the rows of strikes to %d.", t.ByCount, struck)
	x.Choices, x.of, x.listed = []string{"counts", "rows"}, counted, listed
}

// missedUnlisted reports whether counts are of bites alone, and the lists of those that were hooked: none of them was
// missed, some were lost, and no day or trip has more than are counted.
func missedUnlisted(counted, listed []*meaning.Understood, subjects []Subject) bool {
	bites, told, lost := map[string]int{}, map[string]int{}, false
	for _, s := range subjects {
		t := s.Stats
		switch {
		case slices.Contains(counted, s.Understood):
			if t.Hooked+t.Lost+t.Landed > 0 {
				return false
			}
			for key, c := range t.Told {
				bites[key] += c.Bites
			}
		case slices.Contains(listed, s.Understood):
			if t.Held != t.Listed || len(t.Unsaid) > 0 || len(t.Told) == 0 {
				return false
			}
			lost = lost || t.Boated < t.Listed
			for key, c := range t.Told {
				told[key] += c.Listed.Held
			}
		}
	}
	for key, n := range told {
		if n > bites[key] {
			return false
		}
	}
	return lost
}

// onlyOthers tells counts of nothing but bites that were missed, or lost, beside lists of strikes none of which was:
// what the captain counts is what he does not list.
func onlyOthers(counted, listed []*meaning.Understood, subjects []Subject) bool {
	lost := false
	for _, s := range subjects {
		if slices.Contains(counted, s.Understood) {
			if s.Stats.Lost != s.Stats.ByCount {
				return false
			}
			lost = lost || s.Stats.Hooked > 0
		}
	}
	for _, s := range subjects {
		if t := s.Stats; slices.Contains(listed, s.Understood) && (t.Held != t.Listed || len(t.Unsaid) > 0 ||
			lost && t.Boated != t.Listed) {
			return false
		}
	}
	return true
}

// block asks about the rows of one block.
func (q *inquiry) block(s Subject) {
	p, t := s.Plan, s.Stats
	q.ends(&s)
	q.long(&s)
	q.outcomes(&s)
	q.guessed(&s)
	q.blankFates(&s)
	q.blankBites(&s)
	q.bareWeights(&s)
	q.behind(s)
	q.bitten(s)
	q.freed(s)
	q.remarked(s)
	q.bitesRemarked(s)
	q.letGoRemarks(s)
	q.tripRemarks(s)
	q.moreRemarks(s)
	q.measuredRemarks(s)
	q.stray(s)
	q.dayless(s)
	q.planned(s)
	q.struckOut(s)
	q.jigged(s)
	q.unpaced(s)
	q.hoursInRemarks(s)
	q.otherwise(s)
	q.hoursAgain(s)
	q.luresTogether(s)
	q.menTogether(s)
	q.underDays(s)
	q.figureCodes(s)
	q.notCounted(&s)
	q.blankRods(s)
	q.lureLists(s)
	q.longDays(s)
	q.keptBeside(s)
	q.moreTold(s)
	q.unfished(s)
	q.besideBites(s)
	q.idleDays(s)
	q.unnamed(s)
	q.repeats(s)
	q.outings(s)
	q.unnumbered(s)
	q.parts(s)
	q.entered(s, t.Overlaps, "are for the same time of one day, and differ%s")
	q.entered(s, t.Twice, "say the same hours of one day and the same bites%s")
	q.staggered(s)
	if t.OwnClock > 0 && abs(t.Own-t.OwnClock) > 0.2+0.01*t.Own {
		q.ask("own hours", p.Name, "hours", fmt.Sprintf("Your hours add up to %.1f, the clock times to %.1f: was "+
			"time taken off?", t.Own, t.OwnClock), []string{"your hours", "the clock times"}, hours)
	}
	if s.Block.Shape == layout.Prose || p.Paragraphs() {
		q.ask("prose", p.Name, "the paragraphs", fmt.Sprintf(
			"I read %s and %s out of sentences: is that all, and right?", plural(t.Stretches, "stretch", "stretches"),
			plural(t.Strikes, "bite", "bites")), nil, all, q.log.File, fmt.Sprint(t.Stretches, t.Strikes))
	}
	q.ranges(s)
	q.landed(s)
	q.caught(s)
}

// entered asks about pairs of rows of which one may have been entered twice.
func (q *inquiry) entered(s Subject, of []Overlap, say string) {
	of = slices.DeleteFunc(slices.Clone(of), func(o Overlap) bool { // a wrong end is asked about
		return slices.ContainsFunc(s.Stats.Long, func(l Long) bool { return l.Row == o.Row || l.Row == o.Other })
	})
	if len(of) == 0 {
		return
	}
	o := of[0]
	q.ask("overlap", s.Plan.Name, fmt.Sprintf("rows %d and %d", o.Row, o.Other), fmt.Sprintf("Rows %d and %d "+say+
		": was one entered twice?", o.Row, o.Other, pairsOf(len(of))), []string{"count the later", "count both"},
		all, pairs(s, of)...)
	for _, o := range of {
		q.last().rows = append(q.last().rows, o.Row)
	}
}

func plural(n int, one, many string) string {
	if n == 1 {
		return "one " + one
	}
	return fmt.Sprintf("%d %s", n, many)
}

func pairsOf(n int) string {
	if n == 1 {
		return ""
	}
	return fmt.Sprintf(" (%d such pairs)", n)
}

func abs(x float64) float64 {
	if x < 0 {
		return -x
	}
	return x
}

// ranges asks where speeds are ranges that reach over a band's edge.
func (q *inquiry) ranges(s Subject) {
	b := s.Plan.Find("speed_kn", "strike_speed_kn")
	if b == nil {
		return
	}
	ranges, n := 0, 0
	for _, row := range s.Block.Rows {
		if b.Index < len(row.Cells) && row.Cells[b.Index].Look != layout.Blank {
			n++
			if overEdge(row.Cells[b.Index].Text) {
				ranges++
			}
		}
	}
	if 10*ranges > 3*n {
		q.ask("ranges", s.Plan.Name, b.Heading,
			"Speeds are ranges, not figures: what fell into which band is not known.", nil, []string{"bands"})
	}
}

// landed asks whether landed counts the fish let go, where no row tells.
func (q *inquiry) landed(s Subject) {
	l, r := s.Plan.Find("landed_n"), s.Plan.Find("released_n")
	if r == nil || s.Plan.Binds("kept_n") || !s.LandedOpen() {
		return
	}
	heading := ""
	if l != nil {
		heading = l.Heading
	} else {
		heading = s.Plan.Catch[0].Heading
	}
	q.ask("inclusive", s.Plan.Name, heading, fmt.Sprintf("Does %q count the fish under %q too? Until you say, it is "+
		"read as no.", heading, r.Heading), []string{"no", "yes"}, []string{"landed", "hooked", "strikes", "bands"})
}

// caught asks what became of fish that are counted by species.
func (q *inquiry) caught(s Subject) {
	if len(s.Plan.Catch) == 0 || s.Plan.Caught {
		return
	}
	q.ask("caught", s.Plan.Name, s.Plan.Catch[0].Heading, "Fish are counted by species: were they all brought to "+
		"the boat?", []string{"yes", "hooked, some lost"}, listing)
}

// aside asks where cells or rows that totals rest on could not be used.
func (q *inquiry) aside() {
	effect := map[string]bool{}
	var first string
	n := 0
	for i := range q.subjects {
		s := &q.subjects[i]
		q.now = s
		left := q.odd(s)
		if s.useless() {
			q.unused(s.Understood, " The first row: "+s.Stats.Aside[0].Error())
			left = nil
		}
		q.now = nil
		for _, p := range left {
			of := s.rests(p)
			if len(of) == 0 {
				continue
			}
			if n++; first == "" {
				first = p.Error()
			}
			for _, e := range of {
				effect[e] = true
			}
		}
	}
	if n == 0 {
		return
	}
	var of []string
	for _, e := range all {
		if effect[e] {
			of = append(of, e)
		}
	}
	many := fmt.Sprintf("%d cells or rows", n)
	if n == 1 {
		many = "One cell or row"
	}
	q.ask("aside", "", "what could not be used", fmt.Sprintf("%s could not be used, the first: %s", many, first), nil,
		of, q.log.File, fmt.Sprint(n))
}

// useless tells a block of which no row could be used.
func (s *Subject) useless() bool {
	t := s.Stats
	return t.Rows+t.Strikes+t.Stretches+len(t.Half) == 0 && len(t.Aside) > 0 && len(t.First) == 0
}

// rests are the totals that rest on a cell or a row that was set aside.
func (s *Subject) rests(p record.Problem) []string {
	b := s.heading(p.Column)
	if p.Whole && s.Plan.Kind == plan.Legs && b != nil {
		return append([]string{"trips"}, hours...)
	}
	if b == nil || p.Whole || p.Pos.Col == 0 || s.Plan.Kind == plan.Events &&
		slices.Contains([]string{"time_s", "event"}, b.Column.Name) {
		return all // of an event nothing is left without them
	}
	if notCounted(p) {
		return []string{"strikes", "bands"}
	}
	switch { // what these say moves, in whatever column
	case strings.HasPrefix(p.Reason, record.OfStop):
		return hours
	case strings.HasPrefix(p.Reason, record.OfLines), strings.HasPrefix(p.Reason, record.OfSettings):
		return lines
	case strings.HasPrefix(p.Reason, record.OfEither):
		return []string{"bands"}
	}
	if of := effectOf(b.Column.Name); of != nil {
		return of
	}
	if of := effectOf(b.Column.Parse); of != nil || b.Column.Name != "notes" {
		return of
	}
	return listing // a remark that tells of fish or bites
}

// heading is the binding under a heading.
func (s *Subject) heading(text string) *plan.Binding {
	for i := range s.Plan.Bindings {
		if s.Plan.Bindings[i].Heading == text {
			return &s.Plan.Bindings[i]
		}
	}
	return nil
}
