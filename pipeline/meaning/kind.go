package meaning

import (
	"slices"
	"strings"

	"wakeledger/pipeline/layout"
	"wakeledger/pipeline/plan"
	"wakeledger/pipeline/words"
)

// facts are what the decision on a block's kind rests on.
type facts struct {
	assigned
	hint   plan.Kind // of the sheet's name
	loss   bool      // an outcome in the cells tells that a fish got away
	ticked bool      // counts are marks: an X where it was so
	things bool      // no row has a day, a trip or a clock time, and no title gives one
}

// any tells whether the block has one of the meanings.
func (f facts) any(names ...string) bool {
	for _, n := range names {
		if len(f.assigned[n]) > 0 {
			return true
		}
	}
	return false
}

func (f facts) measured() bool { return f.any("length_cm", "girth_cm", "scale_kg") }
func (f facts) gear() bool {
	return f.any("setback_m", "count_s", "drag_kg", "leader", "line_class_kg", "hooks", "lure_weight_g")
}
func (f facts) counts() bool { return f.any(countNames...) || f.any("catch") }

// told is what phrases tell of strikes and fish.
func (f facts) told() bool { return f.any("story", "fishlist", "rod") }

// effort is a start and an end, or a duration. The hours beside a departure and
// a return are the trip's, unless something was trolled in them.
func (f facts) effort() bool {
	if f.has("start_s", "end_s") || f.any("stretches") {
		return true
	}
	outing := f.has("depart_s", "return_s") && !f.any("speed_kn", "lines_out", "line", "lure", "leg", "approach",
		"stopped_s") && !f.counts() && !f.told()
	return f.any("duration_s", "line_hours") && !outing
}

// kindRules decide in this order what a record of a block is.
var kindRules = []struct {
	kind plan.Kind
	why  string
	when func(facts) bool
}{
	{"", "it lists gear, with no day, trip or time", func(f facts) bool {
		return f.things && !f.any("line", "species", "outcome", "length_cm", "girth_cm") && !f.told() &&
			f.any("lure", "colour", "leader", "hooks", "lure_weight_g")
	}},
	{plan.Events, "its rows say when lines went in and came up", func(f facts) bool { return f.any("event") }},
	{plan.Flat, "it has times of effort and what was on a line or struck", func(f facts) bool {
		return f.effort() && (f.any("line", "lure", "outcome", "species", "spread") || f.counts() || f.told())
	}},
	{plan.Legs, "it has a start and an end, or a duration", facts.effort},
	{plan.Flat, "it marks what became of each strike", func(f facts) bool {
		n := 0
		for _, name := range countNames {
			n += len(f.assigned[name])
		}
		return n >= 2 && f.any("species", "time_s") && f.ticked
	}},
	{plan.Flat, "it has a departure and a return, how the boat trolled and what struck", func(f facts) bool {
		return f.has("depart_s", "return_s") && f.any("speed_kn", "lines_out") && f.any("outcome", "species")
	}},
	{plan.Fish, "its name says fish and it has measures", func(f facts) bool {
		return f.any("outcome") && f.measured() && f.hint == plan.Fish && !f.loss
	}},
	{plan.Strikes, "it has the outcome of strikes", func(f facts) bool {
		return f.any("outcome") && (!f.measured() || f.hint == plan.Strikes || f.loss || f.any("time_s", "line"))
	}},
	{plan.Fish, "it has species and measures", func(f facts) bool { return f.any("species") && f.measured() }},
	{plan.Fish, "it has a length or a girth", func(f facts) bool { return f.any("length_cm", "girth_cm") }},
	{plan.Strikes, "it has species, and its name speaks of strikes", func(f facts) bool {
		return f.any("species") && !f.counts() && (f.hint == plan.Strikes || f.any("strike"))
	}},
	{plan.Flat, "it has times, species and gear", func(f facts) bool { return f.has("time_s", "species") && f.gear() }},
	{plan.Flat, "it has lines or lures with counts of strikes",
		func(f facts) bool { return f.any("line", "lure") && f.counts() }},
	{plan.Lines, "it has lines or lures with their gear",
		func(f facts) bool { return f.any("line", "lure") && f.gear() }},
	{plan.Trips, "it has a departure, a return, a captain or a port", func(f facts) bool {
		return f.any("depart_s", "return_s", "captain", "port") && !f.counts() && !f.any("species") && !f.told()
	}},
	{plan.Strikes, "it has species and a cause of loss, a strike or a fight", func(f facts) bool {
		return f.any("species") && f.any("loss_cause", "strike", "fight_s")
	}},
	{plan.Flat, "it has counts of strikes", facts.counts},
	{plan.Flat, "it tells of strikes in words", facts.told},
	{plan.Fish, "it has species", func(f facts) bool { return f.any("species") }},
	{plan.Trips, "it has days or trips, and nothing of effort or strikes",
		func(f facts) bool { return f.any("date", "trip") }},
}

// kindOf decides what a record of the group's blocks is, and says why; "" where nothing tells.
func (g *group) kindOf(a assigned) (plan.Kind, string) {
	f := facts{assigned: a}
	for _, b := range g.blocks {
		if h := nameHint(b.Grid.Info.Title() + " " + strings.Join(b.Above, " ")); h != "" {
			f.hint = h
		}
	}
	for _, i := range a["outcome"] {
		f.loss = f.loss || g.values[i].share("lost or missed", func(c layout.Cell) bool {
			fate, _, _, ok := words.FateOf(c.Text)
			return ok && (fate == words.Lost || fate == words.Missed)
		}) > 0
	}
	f.ticked = g.ticked(a)
	f.things = len(g.values) > 2 && g.rows > 2 && g.sheets() == 1 && !f.any(whenNames...) &&
		!slices.ContainsFunc(g.blocks, func(b *layout.Block) bool {
			return b.Shape != layout.Table || dayOf(b.Grid.Info.Title()) != "" || titleDay(b.Above) != ""
		})
	for _, r := range kindRules {
		if r.when(f) {
			g.list = r.kind == ""
			return r.kind, r.why
		}
	}
	return "", ""
}

// whenNames are the meanings by which a row is of a day, a trip, a stretch or a moment.
var whenNames = []string{"date", "trip", "time_s", "start_s", "end_s", "depart_s", "return_s", "event",
	"stretches", "strike", "leg", "story"}

var nameWords = []struct {
	word string
	kind plan.Kind
}{
	{"strike", plan.Strikes}, {"bite", plan.Strikes}, {"fish", plan.Fish}, {"catch", plan.Fish},
	{"leg", plan.Legs}, {"line", plan.Lines}, {"gear", plan.Lines}, {"trip", plan.Trips},
}

func nameHint(name string) plan.Kind {
	name = normalise(name)
	for _, w := range nameWords {
		if strings.Contains(name, w.word) {
			return w.kind
		}
	}
	return ""
}

// ticked tells counts that are marks alone.
func (g *group) ticked(a assigned) bool {
	marks, all := 0, 0
	for _, name := range countNames {
		for _, i := range a[name] {
			all += len(g.values[i].cells)
			marks += int(g.values[i].ticks()*float64(len(g.values[i].cells)) + 0.5)
		}
	}
	return all > 0 && 10*marks >= 9*all
}
