package recognise

import (
	"slices"
	"strings"
)

// facts are what the decision on a sheet's kind rests on.
type facts struct {
	columns map[string]bool // that the headings may mean
	hint    Kind            // of the sheet's name
	loss    bool            // an outcome in the cells tells that a fish got away
	struck  bool            // a heading speaks of strikes
}

// any tells whether the sheet may have one of the columns.
func (f facts) any(names ...string) bool {
	return slices.ContainsFunc(names, func(n string) bool { return f.columns[n] })
}

// all tells whether the sheet may have each of the columns.
func (f facts) all(names ...string) bool {
	return !slices.ContainsFunc(names, func(n string) bool { return !f.columns[n] })
}

func (f facts) measured() bool { return f.any("length_cm", "girth_cm", "scale_kg") }
func (f facts) gear() bool {
	return f.any("setback_m", "count_s", "drag_kg", "leader", "line_class_kg", "hooks", "lure_weight_g")
}
func (f facts) counts() bool {
	return f.any("strikes_n", "hooked_n", "landed_n", "released_n", "missed_n", "lost_n")
}

// effort is a start and an end, or a duration. The hours beside a departure and
// a return are the trip's, unless something was trolled in them.
func (f facts) effort() bool {
	if f.all("start_s", "end_s") {
		return true
	}
	outing := f.all("depart_s", "return_s") && !f.any("speed_kn", "lines_out", "line", "lure", "leg", "approach") && !f.counts()
	return f.any("duration_s") && !outing
}

// kindRules decide in this order what a row of a sheet is: a sheet of effort has
// a start and an end or a duration; the rest is told by what it alone can hold.
var kindRules = []struct {
	kind Kind
	why  string
	when func(facts) bool
}{
	{Flat, "it has times of effort and what was on a line or struck", func(f facts) bool {
		return f.effort() && (f.any("line", "lure", "outcome", "species") || f.counts())
	}},
	{Legs, "it has a start and an end, or a duration", facts.effort},
	{FishRow, "its name says fish and it has measures", func(f facts) bool {
		return f.any("outcome") && f.measured() && f.hint == FishRow
	}},
	{Strikes, "it has the outcome of strikes", func(f facts) bool {
		return f.any("outcome") && (!f.measured() || f.hint == Strikes || f.loss)
	}},
	{FishRow, "it has species and measures", func(f facts) bool { return f.any("species") && f.measured() }},
	{FishRow, "it has a length or a girth", func(f facts) bool { return f.any("length_cm", "girth_cm") }},
	{Strikes, "it has species, and its name or a heading speaks of strikes", func(f facts) bool {
		return f.any("species") && !f.counts() && (f.hint == Strikes || f.struck)
	}},
	{Flat, "it has times, species and gear", func(f facts) bool { return f.all("time_s", "species") && f.gear() }},
	{Flat, "it has lines or lures with counts of strikes", func(f facts) bool { return f.any("line", "lure") && f.counts() }},
	{Lines, "it has lines or lures with their gear", func(f facts) bool { return f.any("line", "lure") && f.gear() }},
	{Trips, "it has a departure, a return, a captain or a port", func(f facts) bool {
		return f.any("depart_s", "return_s", "captain", "port") && !f.counts() && !f.any("species")
	}},
	{Strikes, "it has species and a cause of loss, a strike or a fight", func(f facts) bool {
		return f.any("species") && f.any("loss_cause", "strike", "fight_s")
	}},
	{Flat, "it has counts of strikes", facts.counts},
	{FishRow, "it has species", func(f facts) bool { return f.any("species") }},
}

// kindOf decides what a row of the sheet is, and says why in plain words.
func kindOf(l *Layout, hs []heading, rows [][]string) (Kind, string) {
	f := facts{columns: map[string]bool{"hooked_n": len(l.Catch) > 0, "line": len(l.Spread) > 0}, hint: nameHint(l.name), loss: mentionsLoss(hs, rows)}
	for _, h := range hs {
		for _, c := range h.candidates {
			if h.speaksFor(c) {
				f.columns[c.Name] = true
				f.columns["end_s"] = f.columns["end_s"] || c.Parse == "span"
			}
		}
		f.struck = f.struck || len(h.candidates) > 0 && speaksOf(h.name, "strike", "bite", "hit")
	}
	for _, r := range kindRules {
		if r.when(f) {
			return r.kind, r.why
		}
	}
	return mostBound(hs), "most of its columns are of that kind"
}

// speaksFor tells whether a heading counts for a column that it may mean. A bare
// weight is a fish's rather than a lure's; where the cells are times or numbers,
// a column of text is the weaker meaning, but for a strike's own number.
func (h heading) speaksFor(c *Column) bool {
	if c.Parse == "span" {
		return c == h.candidates[0]
	}
	if c.Name == "lure_weight_g" || h.candidates[0].strict() && !c.strict() && c.Name != "strike" {
		return h.means(c.Name)
	}
	return true
}

// mostBound is the kind in which most of the headings may stand.
func mostBound(hs []heading) Kind {
	best, most := Trips, 0
	for _, k := range []Kind{Trips, Legs, Lines, Strikes, FishRow, Flat} {
		l := Layout{Kind: k}
		l.bind(hs)
		if len(l.Bindings) > most {
			best, most = k, len(l.Bindings)
		}
	}
	return best
}

func speaksOf(text string, words ...string) bool {
	return slices.ContainsFunc(strings.Fields(text), func(w string) bool { return slices.Contains(words, w) })
}

var nameWords = []struct {
	word string
	kind Kind
}{
	{"strike", Strikes}, {"bite", Strikes}, {"fish", FishRow}, {"catch", FishRow},
	{"leg", Legs}, {"line", Lines}, {"gear", Lines}, {"trip", Trips},
}

func nameHint(name string) Kind {
	name = normalise(name)
	for _, w := range nameWords {
		if strings.Contains(name, w.word) {
			return w.kind
		}
	}
	return ""
}

// mentionsLoss tells a sheet of strikes, in which some got away, from one of
// fish with an outcome.
func mentionsLoss(hs []heading, rows [][]string) bool {
	for i, h := range hs {
		if len(h.candidates) == 0 || h.candidates[0].Name != "outcome" {
			continue
		}
		for _, row := range rows {
			w := normalise(cellOf(row, i))
			for _, loss := range []string{"lost", "miss", "pulled", "broke", "spat", "threw"} {
				if strings.Contains(w, loss) {
					return true
				}
			}
		}
	}
	return false
}
