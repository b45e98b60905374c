package proof

import (
	"fmt"
	"maps"
	"slices"
	"strings"

	"wakeledger/pipeline/entry"
	"wakeledger/pipeline/layout"
	"wakeledger/pipeline/meaning"
	"wakeledger/pipeline/plan"
	"wakeledger/pipeline/spelling"
	"wakeledger/pipeline/words"
)

// Told is what is told of the strikes of a day or a trip.
type Told struct {
	Counted, Listed Fates
	Freed           int  // of those listed, let go
	Bites           int  // that are counted, those that were missed too
	Blank           bool // a stretch of it leaves all counts blank, in a table that writes 0 where nothing bit
}

// Fates are how many fish were hooked, and of them brought to the boat.
type Fates struct{ Held, Boated int }

func (f *Fates) add(o Fates) { f.Held, f.Boated = f.Held+o.Held, f.Boated+o.Boated }

// tell takes what a row tells for its day and for its trip.
func (s *Stats) tell(v map[string]entry.Value, told Told) {
	if s.Told == nil {
		s.Told = map[string]*Told{}
	}
	for _, key := range keysOf(v) {
		if s.Told[key] == nil {
			s.Told[key] = &Told{}
		}
		s.Told[key].Counted.add(told.Counted)
		s.Told[key].Listed.add(told.Listed)
		s.Told[key].Freed += told.Freed
		s.Told[key].Bites += told.Bites
		s.Told[key].Blank = s.Told[key].Blank || told.Blank
	}
}

func keysOf(v map[string]entry.Value) []string {
	var out []string
	if d := v["date"]; d.Known {
		out = append(out, fmt.Sprint("day ", d.Int))
	}
	if t := v["trip"]; t.Known {
		out = append(out, "trip "+spelling.Trip(t.Text))
	}
	return out
}

func countedTold(v map[string]entry.Value) Told {
	boated := v["landed_n"].Int + v["released_n"].Int
	held := max(v["hooked_n"].Int, boated+v["lost_n"].Int)
	if !v["hooked_n"].Known || v["missed_n"].Known { // else the bites that were not hooked are the missed ones
		held = max(held, v["strikes_n"].Int-v["missed_n"].Int)
	}
	bites := max(v["strikes_n"].Int, held+v["missed_n"].Int)
	effort := v["duration_s"].Known || v["start_s"].Known && v["end_s"].Known
	return Told{Counted: Fates{int(held), int(boated)}, Bites: int(bites), Blank: effort && !countsKnown(v)}
}

// countsKnown tells a row that says a number of bites or fish, none too.
func countsKnown(v map[string]entry.Value) bool {
	return slices.ContainsFunc([]string{"strikes_n", "hooked_n", "landed_n", "released_n", "lost_n", "missed_n"},
		func(name string) bool { return v[name].Known })
}

func listedTold(v map[string]entry.Value) Told {
	f, freed := Fates{Held: 1}, 0
	switch outcome := v["outcome"].Text; {
	case outcome == "missed":
		f.Held = 0
	case outcome == "landed" || outcome == "released":
		f.Boated = 1
		if outcome == "released" {
			freed = 1
		}
	}
	return Told{Listed: f, Freed: freed}
}

// fewAmong is of how many fish a list must be for its days to tell what it is.
const fewAmong = 4

// Among finds lists of strikes that are fish of which the counts of other tables tell already: no
// row of them is a bite that was missed, and day by day, or trip by trip, nine in ten of them find
// as many fish counted. It has their plans say so. Lists with the same headings, a month each, are
// one list.
func Among(subjects []Subject) {
	counted := countedOf(subjects)
	hands := map[string][]Subject{}
	for _, s := range subjects {
		if t := s.Stats; s.Plan.Kind == plan.Strikes && !s.Plan.Among && t.ByCount == 0 &&
			t.Stretches == 0 && t.Listed > 0 {
			hand := fmt.Sprint(s.Plan.Heads)
			hands[hand] = append(hands[hand], s)
		}
	}
	for _, lists := range hands {
		listed, held, over, of := 0, 0, 0, 0
		for _, s := range lists {
			o, n := beyond(s.Stats.Told, counted)
			listed, held, over, of = listed+s.Stats.Listed, held+s.Stats.Held, over+o, of+n
		}
		if listed < fewAmong || held < listed || of == 0 || 10*over > of {
			continue
		}
		for _, s := range lists {
			s.Plan.Among = true
		}
	}
}

// Twice finds tables of counts whose bites are, trip by trip or day by day, those of a table with
// more rows: a book's page of trips beside its page of stretches. It has their plans leave them to
// the finer one, and reports whether it found any. Where only the coarser one tells what became of
// the bites, rows of strikes must tell it too.
func Twice(subjects []Subject) bool {
	found, listed := false, 0
	for _, s := range subjects {
		listed += s.Stats.Listed
	}
	counts := func(s Subject) bool { return s.Plan.Kind == plan.Flat && s.Stats.ByCount > 0 && s.Stats.Listed == 0 }
	for _, coarse := range subjects {
		for _, fine := range subjects {
			c, f := coarse.Stats, fine.Stats
			if coarse.Plan == fine.Plan || coarse.Plan.NoStrikes || fine.Plan.NoStrikes || !counts(coarse) ||
				!counts(fine) || c.Rows >= f.Rows ||
				c.Landed+c.Lost > 0 && f.Landed+f.Lost == 0 && listed != c.ByCount || !sameBites(c.Told, f.Told) {
				continue
			}
			if found = true; coarse.Plan.NoEffort {
				ofTrips(coarse, f.Told)
			} else {
				coarse.Plan.NoStrikes = true
			}
		}
	}
	return found
}

// Otherwise finds fish of lists that their words say were caught in another way, on days or trips whose
// counts have no room for them: "bottom, on the way in". It has their plans set these rows apart, and
// reports whether it found any.
func Otherwise(subjects []Subject) bool {
	counted, found := countedOf(subjects), false
	for _, s := range subjects {
		if s.Plan.Kind != plan.Strikes && s.Plan.Kind != plan.Fish || s.Stats.ByCount > 0 || s.Stats.Stretches > 0 ||
			s.Plan.Binds("method") || s.Understood.Block == nil {
			continue
		}
		rows := s.beyondByWords(counted)
		if len(rows) == 0 || 3*len(rows) > len(s.Stats.Rowwise) {
			continue
		}
		found = true
		s.Plan.Apart = maps.Clone(s.Plan.Apart)
		if s.Plan.Apart == nil {
			s.Plan.Apart = map[int64]bool{}
		}
		for _, row := range rows {
			s.Plan.Apart[row] = true
		}
		s.Plan.Notes = append(s.Plan.Notes, fmt.Sprintf("%s with words for another way of fishing, more than the "+
			"counts of their trips or days: left out", plural(len(rows), "row", "rows")))
	}
	return found
}

// beyondByWords are the rows of a list whose words name another way of fishing, of days or trips that list
// more than they count, where they are the ones that are too many.
func (s *Subject) beyondByWords(counted map[string]*Told) []int64 {
	said := map[int64]bool{}
	for _, r := range s.Block.Rows {
		said[int64(r.Num)] = otherWay(r, s.Plan)
	}
	for _, kind := range []string{"trip ", "day "} {
		listed, other := map[string]int{}, map[string]int{}
		of := map[string][]int64{}
		for _, l := range s.Stats.Rowwise {
			for _, key := range l.Keys {
				if !strings.HasPrefix(key, kind) {
					continue
				}
				listed[key] += l.Held
				if said[l.Row] {
					other[key] += l.Held
					of[key] = append(of[key], l.Row)
				}
			}
		}
		var rows []int64
		over, left := 0, 0
		for key, n := range listed {
			c := counted[key]
			if c == nil || c.Counted.Held == 0 || n <= c.Counted.Held {
				continue
			}
			if over++; n-other[key] > c.Counted.Held {
				left++
			}
			rows = append(rows, of[key]...)
		}
		if over > 0 && left == 0 {
			slices.Sort(rows)
			return slices.Compact(rows)
		}
	}
	return nil
}

// otherWay reports whether a row's words name another way of fishing, beside its fish and its fate.
func otherWay(r layout.Row, p *plan.Block) bool {
	for i, c := range r.Cells {
		if slices.ContainsFunc(p.Bindings, func(b plan.Binding) bool {
			return b.Index == i && (b.Column.Name == "species" || b.Column.Name == "outcome")
		}) {
			continue
		}
		m, ok := words.Method(c.Text)
		first, _, _ := strings.Cut(c.Text, ",") // "casting, soft plug": how, and with what
		if ok && m != "troll" && m != "kite" && (!words.Lure(c.Text) || words.AnotherMethod(first)) {
			return true
		}
	}
	return false
}

// ofTrips has a table of trips whose hours and bites others tell say the rest of them: their days,
// their crews. A trip of which the others know nothing was not gone.
func ofTrips(s Subject, told map[string]*Told) {
	p := s.Plan
	if trip := p.Find("trip"); trip != nil && s.Understood.Block != nil {
		p.Ashore = map[int64]bool{}
		for _, r := range s.Block.Rows {
			if ownHours(r, p) {
				continue
			}
			name := cellOf(r, trip)
			if name == "" && !trip.Carried || name != "" && told["trip "+spelling.Trip(name)] == nil {
				p.Ashore[int64(r.Num)] = true
			}
		}
	}
	p.Kind = plan.Trips
	for _, b := range p.Bindings {
		if !b.Column.In(plan.Trips) {
			p.Unknown = append(p.Unknown, plan.Unknown{Index: b.Index, Heading: b.Heading, Aside: "told elsewhere"})
		}
	}
	p.Bindings = slices.DeleteFunc(p.Bindings, func(b plan.Binding) bool { return !b.Column.In(plan.Trips) })
}

// ownHours reports whether a row tells of hours of its own.
func ownHours(r layout.Row, p *plan.Block) bool {
	for _, name := range []string{"start_s", "duration_s", "line_hours"} {
		if c := cellOf(r, p.Find(name)); c != "" && c != "0" && !words.NotLogged(c) {
			return true
		}
	}
	return false
}

// sameBites reports whether two tables count as many bites on each trip, or else on each day.
func sameBites(a, b map[string]*Told) bool {
	for _, kind := range []string{"trip ", "day "} {
		of := func(told map[string]*Told) map[string]int {
			out := map[string]int{}
			for key, t := range told {
				if strings.HasPrefix(key, kind) && t.Bites > 0 {
					out[key] = t.Bites
				}
			}
			return out
		}
		if x := of(a); len(x) >= fewAmong && maps.Equal(x, of(b)) {
			return true
		}
	}
	return false
}

// countedOf is what the counts of a log tell, by day and by trip.
func countedOf(subjects []Subject) map[string]*Told {
	counted := map[string]*Told{}
	for _, s := range subjects {
		for key, t := range s.Stats.Told {
			if counted[key] == nil {
				counted[key] = &Told{}
			}
			counted[key].Counted.add(t.Counted)
			counted[key].Blank = counted[key].Blank || t.Blank && s.Stats.None
		}
	}
	return counted
}

// say notes something of a block once, however often it is asked about.
func say(p *plan.Block, note string) {
	if !slices.Contains(p.Notes, note) {
		p.Notes = append(p.Notes, note)
	}
}

// asListed are the counts, where a stretch of a day or a trip leaves them blank raised to what a list tells of it.
func asListed(listed, counted map[string]*Told) map[string]*Told {
	out := maps.Clone(counted)
	for key, c := range counted {
		if l := listed[key]; c.Blank && l != nil {
			out[key] = &Told{Counted: Fates{max(c.Counted.Held, l.Listed.Held),
				max(c.Counted.Boated, l.Listed.Boated)}}
		}
	}
	return out
}

// uncounted asks about fish of lists that are among those counted, but for a few: of these the
// counts of their day or trip know nothing.
func (q *inquiry) uncounted() {
	for _, s := range q.subjects {
		if s.Stats.Listed == 0 || s.Plan.StoredAs(s.Plan.Kind) != plan.Fish || s.Stats.ByCount > 0 {
			continue
		}
		over, of := beyond(s.Stats.Told, q.counted)
		if over == 0 && s.Plan.Among {
			q.log.Agreed = append(q.log.Agreed, fmt.Sprintf("%s: its %s are among those that the counts tell of "+
				"their days: not counted again", s.Plan.Name, plural(of, "fish", "fish")))
		}
		if over == 0 || over == of {
			continue // without counts, or of days that have none
		}
		all := over
		if over, _ = beyond(s.Stats.Told, asListed(s.Stats.Told, q.counted)); over < all {
			say(s.Plan, fmt.Sprintf("%s of stretches whose counts are blank: counted as listed; bites that were missed"+
				" there are not known", plural(all-over, "fish is", "fish are")))
		}
		if over == 0 {
			continue
		}
		q.ask("uncounted", s.Plan.Name, "fish", fmt.Sprintf("A list%s tells of %s, %d more than the counts of their "+
			"days. They are counted beside: were they trolled, or told twice?", within(s.Plan.Name),
			plural(of, "fish", "fish"), over),
			nil, q.listingOf([]*meaning.Understood{s.Understood}))
		q.last().Brief = "A list tells of more fish than the counts of their days."
	}
}

// listingOf is what rests on lists of strikes and fish: trips too where one of them has a day or a trip of which
// no counts tell, which is one of their own.
func (q *inquiry) listingOf(lists []*meaning.Understood) []string {
	for _, s := range q.subjects {
		if !slices.Contains(lists, s.Understood) {
			continue
		}
		for key, told := range s.Stats.Told {
			if c := q.counted[key]; told.Listed.Held > 0 && (c == nil || c.Counted.Held == 0) {
				return append([]string{"trips"}, listing...)
			}
		}
	}
	return listing
}

// beyond is how many listed fish the counts of their days, or else of their trips, do not tell, of
// how many.
func beyond(listed, counted map[string]*Told) (over, of int) {
	for _, kind := range []string{"day ", "trip "} {
		o, n := 0, 0
		for key, l := range listed {
			if !strings.HasPrefix(key, kind) {
				continue
			}
			c := counted[key]
			if c == nil {
				c = &Told{}
			}
			n += l.Listed.Held
			o += max(0, l.Listed.Held-c.Counted.Held, l.Listed.Boated-c.Counted.Boated)
		}
		if n > 0 && (of == 0 || 10*o <= n) {
			over, of = o, n
		}
		if of > 0 && 10*over <= of {
			break
		}
	}
	return over, of
}
