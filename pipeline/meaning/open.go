package meaning

import (
	"slices"
	"strings"

	"wakeledger/pipeline/layout"
	"wakeledger/pipeline/plan"
	"wakeledger/pipeline/unit"
)

// Open is a column whose meaning is not settled.
type Open struct {
	Sheet   string
	Labels  []string // of its block, by which a hand is known
	Heading string
	Nth     int // of several of one heading, which: 0 is the first
	Samples []string
	Taken   string   // what it is read as; "" where nothing
	Others  []string // what it may be instead, the likeliest first
	Unread  bool     // its cells read as none of these: whatever is answered, they are not counted
}

const (
	nearTie = 1.0 // a runner-up nearer than this is asked about
	mostGap = 10  // columns of a group looked at for one
)

// weighty are the meanings that effort and strikes rest on.
var weighty = []string{"start_s", "end_s", "duration_s", "stopped_s", "speed_kn", "lines_out", "strikes_n", "hooked_n",
	"landed_n", "kept_n", "released_n",
	"lost_n", "missed_n", "outcome", "stretches", "date", "trip", "event", "scale_kg", "length_cm", "girth_cm", "count"}

// Open are the columns of the log's data that another reading would take otherwise, and
// those with numbers or clock times that nothing was made of.
func (l *Log) Open() []Open {
	if !l.opened {
		l.open, l.opened = l.questionable(), true
	}
	return slices.Clone(l.open)
}

func (l *Log) questionable() []Open {
	var out []Open
	seen := map[*group]bool{}
	for _, u := range l.Data() {
		g := u.b.group
		if seen[g] {
			continue
		}
		seen[g] = true
		for _, o := range slices.Concat(l.ties(u, g), l.unworded(u, g), l.unaccounted(u, g),
			l.best(u, g), l.undated(u, g), l.misfits(u, g),
			l.codesOfBites(u, g), l.rowOrTrip(u, g), l.nested(u, g), l.portions(u, g),
			l.tripHours(u, g)) {
			out = joined(out, o)
		}
	}
	return out
}

// joined adds what a column may be to what else it may be.
func joined(all []Open, o Open) []Open {
	k := slices.IndexFunc(all, func(x Open) bool {
		return x.Heading == o.Heading && x.Nth == o.Nth && slices.Equal(x.Labels, o.Labels)
	})
	if k < 0 {
		return append(all, o)
	}
	for _, may := range o.Others {
		if may != all[k].Taken && !slices.Contains(all[k].Others, may) {
			all[k].Others = append(all[k].Others, may)
		}
	}
	return all
}

// best are columns of the weight of a row's best fish, where the row names one fish and no
// scale's weight of it.
func (l *Log) best(u *Understood, g *group) []Open {
	var out []Open
	a := g.assigned(u.choice)
	if a.has("scale_kg") || !a.has("species") {
		return nil
	}
	for i, v := range g.values {
		c := g.cands[i][u.choice[i]]
		if c.column == asideColumn && c.aside == "best" && unitAmong(v.Label.Text, unit.Mass) != "" &&
			v.numeric() > 0.6 && len(v.cells) >= 3 {
			o := l.openOf(u, g, i)
			o.Others = []string{"scale_kg"}
			out = append(out, o)
		}
	}
	return out
}

// undated are columns that are headed as days and hold none that is understood, where nothing else says the day or the
// trip of a row.
func (l *Log) undated(u *Understood, g *group) []Open {
	p := u.Plan
	if p.Binds("date", "trip") || p.Gives("date") || p.Gives("trip") || p.Kind == plan.Strikes || p.Kind == plan.Fish {
		return nil
	}
	var out []Open
	for i, v := range g.values {
		if dayHeaded(g.cands[i]) && g.cands[i][u.choice[i]].column == nil && len(v.cells) >= 3 {
			o := l.openOf(u, g, i)
			o.Others = []string{"date"}
			out = append(out, o)
		}
	}
	return out
}

// fewFigures is up to which share of the cells of a column may be words for its figures to be lost.
const fewFigures = 0.4

// misfits are columns of figures whose headings name what totals rest on and whose cells do not read as that, where
// no other column tells it: "Lines in" over 6.45, 640 and noon.
func (l *Log) misfits(u *Understood, g *group) []Open {
	var out []Open
	a := g.assigned(u.choice)
	for i, v := range g.values {
		if g.cands[i][u.choice[i]].column != nil || len(v.cells) < 3 || l.lexicon.elsewhere(v) ||
			v.share("figures", func(x layout.Cell) bool { return digits(x.Text) > 0 }) < 1-fewFigures {
			continue
		}
		o := l.openOf(u, g, i)
		for _, c := range g.cands[i] {
			name := meaningOf(c)
			held := slices.ContainsFunc(once[name], func(n string) bool { return a.has(n) })
			fits := slices.Contains(weighty, name) && once[name] != nil && !held
			if fits && c.said() && !slices.Contains(o.Others, name) {
				o.Others = append(o.Others, name)
			}
		}
		if len(o.Others) > 0 {
			out = append(out, o)
		}
	}
	return out
}

// longestFate is how long a code for bites is at the most: "oRK".
const longestFate = 6

// codesOfBites are columns of short words under a heading of bites, or of fish by what became of them, which read as
// nothing, and any such column of a log of events: no table without counts may leave them out in silence.
func (l *Log) codesOfBites(u *Understood, g *group) []Open {
	var out []Open
	a := g.assigned(u.choice)
	for i, v := range g.values {
		short := v.share("as short as a fate", func(x layout.Cell) bool { return len(x.Text) <= longestFate })
		if g.cands[i][u.choice[i]].column != nil || len(v.cells) < 3 || l.lexicon.elsewhere(v) ||
			g.kind != plan.Events && (v.numeric() > fewFigures || short < 1-fewFigures) || u.countsTold(v.Label.Col) {
			continue
		}
		o := l.openOf(u, g, i)
		said := l.lexicon.said(v.Label).columns
		for _, c := range l.lexicon.Columns {
			if strings.HasSuffix(c.Name, "_n") && said[c].weight >= loosely && !a.has(c.Name) {
				o.Others, o.Unread = append(o.Others, c.Name), true
			}
		}
		if o.Unread {
			out = append(out, o)
		}
	}
	return out
}

// said tells a candidate that the words of the heading speak for.
func (c *candidate) said() bool {
	return slices.ContainsFunc(c.votes, func(x vote) bool { return x.Evidence == "words" && x.Weight >= loosely })
}

func (l *Log) openOf(u *Understood, g *group, i int) Open {
	v := g.values[i]
	o := Open{Sheet: u.Plan.Name, Heading: headingOf(v.Label), Nth: g.nth(i), Labels: g.labels()}
	for _, c := range v.cells[:min(3, len(v.cells))] {
		o.Samples = append(o.Samples, c.Text)
	}
	return o
}

// ties are columns whose next best meaning is nearly as likely, where either matters.
func (l *Log) ties(u *Understood, g *group) []Open {
	var out []Open
	_, score := g.best(u.choice, -1)
	for i := range g.cands {
		if len(g.cands[i]) < 2 || len(g.values[i].cells) < 2 ||
			u.choice[i] == 0 && g.cands[i][0].score-g.cands[i][1].score > near {
			continue
		}
		gap, next, _ := g.gap(u.choice, score, i)
		if gap > nearTie || len(out) == mostGap {
			continue
		}
		now, then := meaningOf(g.cands[i][u.choice[i]]), meaningOf(g.cands[i][next])
		if now == "" && (l.noTotal(g.values[i]) || u.inOtherUnit(g.values[i].Label.Col)) || now == then ||
			sameEffect(g.kind, now, then) ||
			!slices.Contains(weighty, now) && !slices.Contains(weighty, then) {
			continue
		}
		o := l.openOf(u, g, i)
		o.Taken, o.Others = now, []string{then}
		out = append(out, o)
	}
	return out
}

// sameEffect tells two readings of a cell that come to the same.
func sameEffect(kind plan.Kind, a, b string) bool {
	speeds := []string{"speed_kn", "strike_speed_kn"}
	return a == "start_s" && b == "stretches" || a == "stretches" && b == "start_s" ||
		kind == plan.Events && slices.Contains(speeds, a) && slices.Contains(speeds, b)
}

func meaningOf(c candidate) string {
	if c.column == nil {
		return ""
	}
	if c.column.Parse == "stretches" || c.column.Parse == "story" || c.column.Parse == "fishlist" {
		return c.column.Parse
	}
	return c.column.Name
}

// isID tells a heading of the numbers by which tables are joined, such as RunID.
func isID(heading string) bool {
	return strings.HasSuffix(heading, "ID") || strings.HasSuffix(heading, "_id") || strings.HasSuffix(heading, "Id")
}

// Words is what a meaning is called to users.
func Words(name string) string {
	if w, ok := meaningWords[name]; ok {
		return w
	}
	return strings.ReplaceAll(name, "_", " ")
}

var meaningWords = map[string]string{
	"": "none of these", "start_s": "when the lines went in", "end_s": "when the lines came up",
	"duration_s": "hours with lines in the water", "stopped_s": "time stopped, to take off",
	"speed_kn": "boat speed", "strike_speed_kn": "boat speed at the strike", "lines_out": "how many lines were out",
	"strikes_n": "bites", "hooked_n": "fish hooked", "landed_n": "fish landed", "kept": "whether the fish was kept",
	"released": "whether the fish was let go", "kept_n": "fish kept",
	"released_n": "fish let go", "lost_n": "fish lost", "missed_n": "bites missed",
	"outcome": "what became of the fish", "stretches": "times of trolling",
	"date": "the day", "trip": "the trip's number",
	"event": "what happened", "scale_kg": "weight on a scale", "length_cm": "length", "girth_cm": "girth",
	"story": "bites told in words", "fishlist": "fish told in words", "line": "which line",
	"time_s":   "time of the strike",
	"depart_s": "when the boat left", "return_s": "when the boat was back", "notes": "remarks",
	"count_s": "seconds let out", "leg": "number of the stretch", "aside": "something else",
	"catch": "a count of its species", "spread": "the lure at a place of the spread",
	"setback_m": "how far back", "lure_weight_g": "lure weight", "sea_temp_c": "water temperature",
	"fight_s": "fight time", "area": "where", "lure": "the lure", "species": "the fish",
	"angler": "who fought it", "drag_kg": "drag",
}
