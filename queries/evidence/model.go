package evidence

import (
	"cmp"
	"maps"
	"math"
	"slices"
	"strings"

	"wakeledger/pipeline/factors"
	"wakeledger/queries/stats"
)

// Cell is effort at one level of a factor on one trip, leg and line, and the
// strikes that belong to it. Leg 0 or Line 0: not known, or all of them.
type Cell struct {
	Trip, Leg, Line int64
	Level           string
	LineHours       float64
	Strikes         int64
}

// Factor is one factor's cells.
type Factor struct {
	Name   string
	ByLeg  bool               // differs between lines fished together: compared within legs
	Levels []string           // in the order in which they are shown
	Score  map[string]float64 // of the levels of an ordered factor, for its trend; nil for none
	Cells  []Cell
}

// The rule by which a factor is held still while another is looked at. All of it
// goes by hours alone, so that the strikes do not choose what they are judged by.
const (
	MixedShare  = 0.1 // share of a factor that another accounts for within trips, above which it is held
	perColumn   = 10  // strikes for each column held (Peduzzi and others 1996, J Clin Epidemiol 49:1373-1379)
	timeColumns = 2   // of the time of day, which is always held
)

// obs is the model's counts and what their columns are.
type obs struct {
	rows   []stats.Obs
	trip   []int64  // of each count
	names  []string // the factors held, their columns first
	of     []int    // by column, the index in names; -1 for the factor's own
	level  map[string]int
	first  int // column of the factor's own
	shared map[string]float64
}

type place struct{ trip, leg, line int64 }

type tripLevel struct {
	trip  int64
	level string
}

// at is where a cell stands for a factor: the whole boat's leg, or a line on it.
func (f Factor) at(c Cell) place {
	if f.ByLeg {
		return place{c.Trip, c.Leg, c.Line}
	}
	return place{c.Trip, c.Leg, 0}
}

// merged adds up the cells of one place and level, in the order of places. A
// strike at a place and level without hours is put with the longest hours of its
// trip (where ByLeg, its leg) and level.
func (f Factor) merged() []Cell {
	cells := slices.Clone(f.Cells)
	for i := range cells {
		p := f.at(cells[i])
		cells[i].Leg, cells[i].Line = p.leg, p.line
	}
	order := func(a, b Cell) int {
		return cmp.Or(cmp.Compare(a.Trip, b.Trip), cmp.Compare(a.Leg, b.Leg), cmp.Compare(a.Line, b.Line),
			strings.Compare(a.Level, b.Level))
	}
	slices.SortStableFunc(cells, order)
	var out []Cell
	for _, c := range cells {
		if n := len(out); n > 0 && order(out[n-1], c) == 0 {
			out[n-1].LineHours += c.LineHours
			out[n-1].Strikes += c.Strikes
			continue
		}
		out = append(out, c)
	}
	type home struct {
		stratum place
		level   string
	}
	at := func(c Cell) home {
		if f.ByLeg {
			return home{place{c.Trip, c.Leg, 0}, c.Level}
		}
		return home{place{c.Trip, 0, 0}, c.Level}
	}
	longest := map[home]int{}
	for i, c := range out {
		if j, ok := longest[at(c)]; c.LineHours > 0 && (!ok || c.LineHours > out[j].LineHours) {
			longest[at(c)] = i
		}
	}
	for i, c := range out {
		if j, ok := longest[at(c)]; ok && c.LineHours <= 0 {
			out[j].Strikes += c.Strikes
			out[i].Strikes = 0
		}
	}
	return out
}

// held is a factor that may be held still: the value of its columns at a place.
type held struct {
	name    string
	columns int
	at      map[place][]float64
	mean    []float64 // over the places
}

// hold makes the columns of factor g for the places of f: the sine and cosine
// of the time of day, an ordered factor's score and its square, or the share of
// hours at each level but the one with the most. What is not logged has the
// mean of what is, or is a level of its own.
func hold(f, g Factor) held {
	h := held{name: g.Name, at: map[place][]float64{}}
	hours := map[string]float64{}
	for _, c := range g.Cells {
		hours[c.Level] += c.LineHours
	}
	values := levelValues(g, hours)
	total := map[place]float64{}
	for _, c := range g.Cells {
		v := values[c.Level]
		if c.LineHours <= 0 || v == nil {
			continue
		}
		p := f.at(c)
		if h.at[p] == nil {
			h.at[p] = make([]float64, len(v))
		}
		h.columns = len(v)
		for i := range v {
			h.at[p][i] += c.LineHours * v[i]
		}
		total[p] += c.LineHours
	}
	for p, v := range h.at {
		for i := range v {
			v[i] /= total[p]
		}
	}
	h.mean = h.means()
	return h
}

// levelValues are the columns of each level of a factor that is held.
func levelValues(g Factor, hours map[string]float64) map[string][]float64 {
	values := map[string][]float64{}
	if g.Name == "hour" {
		for l, s := range g.Score {
			values[l] = []float64{math.Sin(2 * math.Pi * s / 24), math.Cos(2 * math.Pi * s / 24)}
		}
		return values
	}
	if g.Score != nil {
		var n, mean, square float64
		for _, l := range slices.Sorted(maps.Keys(g.Score)) { // in one order: sums hang on it by a last digit
			s := g.Score[l]
			n, mean, square = n+hours[l], mean+hours[l]*s, square+hours[l]*s*s
		}
		if n == 0 {
			return values
		}
		mean /= n
		sd := math.Sqrt(math.Max(square/n-mean*mean, 1e-12))
		for l, s := range g.Score {
			z := (s - mean) / sd
			values[l] = []float64{z, z * z}
		}
		return values
	}
	var levels []string
	for _, l := range g.Levels {
		if hours[l] > 0 {
			levels = append(levels, l)
		}
	}
	slices.SortStableFunc(levels, func(a, b string) int { return cmp.Compare(hours[b], hours[a]) })
	for i, l := range levels {
		v := make([]float64, max(0, len(levels)-1))
		if i > 0 {
			v[i-1] = 1
		}
		values[l] = v
	}
	return values
}

// observe makes the counts of factor f, with the factors of rest that it is
// mixed up with held. Levels are columns, but for the reference.
func observe(f Factor, rest []Factor, reference string) obs {
	o := obs{level: map[string]int{}, shared: map[string]float64{}}
	cells := f.merged()
	strata, groups := map[place]int{}, map[tripLevel]int{}
	number := func(m map[place]int, p place) int {
		if _, ok := m[p]; !ok {
			m[p] = len(m)
		}
		return m[p]
	}
	for _, l := range f.Levels {
		if l != reference {
			o.level[l] = len(o.level)
		}
	}
	var at []place
	for _, c := range cells {
		if c.LineHours <= 0 || f.ByLeg && c.Leg == 0 {
			continue
		}
		stratum := place{trip: c.Trip}
		if f.ByLeg {
			stratum.leg = c.Leg
		}
		x := make([]float64, len(o.level))
		if c.Level != reference {
			x[o.level[c.Level]] = 1
		}
		group := tripLevel{c.Trip, c.Level}
		if _, ok := groups[group]; !ok {
			groups[group] = len(groups)
		}
		o.rows = append(o.rows, stats.Obs{Stratum: number(strata, stratum), Cell: groups[group], X: x,
			Count: stats.Count{Events: c.Strikes, Effort: c.LineHours}})
		at = append(at, f.at(c))
		o.trip = append(o.trip, c.Trip)
	}
	o.hold(f, rest, at)
	return o
}

// hold puts the columns of the factors that f is mixed up with before its own,
// the time of day first and then those that it shares most with, as long as
// strikes allow.
func (o *obs) hold(f Factor, rest []Factor, at []place) {
	var events int64
	for _, r := range o.rows {
		events += r.Events
	}
	room := int(events)/perColumn - len(o.level)
	var may []held
	for _, g := range rest {
		if factors.Related(f.Name, g.Name) || f.ByLeg && !g.ByLeg {
			continue
		}
		h := hold(f, g)
		share := 0.0
		for i := range h.columns {
			share = math.Max(share, o.sharedWith(h, i, at))
		}
		o.shared[g.Name] = share
		if g.Name == "hour" && h.columns > 0 {
			o.shared[g.Name] = math.Max(share, 1e-9)
			may = append(may, h)
		} else if share >= MixedShare {
			may = append(may, h)
		}
	}
	slices.SortStableFunc(may, func(a, b held) int {
		if (a.name == "hour") != (b.name == "hour") {
			return map[bool]int{true: -1, false: 1}[a.name == "hour"]
		}
		return cmp.Compare(o.shared[b.name], o.shared[a.name])
	})
	for _, h := range may {
		if h.columns > room && h.name != "hour" {
			continue
		}
		room -= h.columns
		o.add(h, at)
	}
	o.first = len(o.of)
}

func (o *obs) add(h held, at []place) {
	for range h.columns {
		o.of = append(o.of, len(o.names))
	}
	o.names = append(o.names, h.name)
	for i, p := range at {
		v, ok := h.at[p]
		if !ok {
			v = h.mean
		}
		n := len(o.rows[i].X) - len(o.level)
		o.rows[i].X = slices.Insert(o.rows[i].X, n, v...)
	}
}

func (h held) means() []float64 {
	m := make([]float64, h.columns)
	for _, p := range slices.SortedFunc(maps.Keys(h.at), comparePlaces) {
		for i, v := range h.at[p] {
			m[i] += v / float64(len(h.at))
		}
	}
	return m
}

func comparePlaces(a, b place) int {
	return cmp.Or(cmp.Compare(a.trip, b.trip), cmp.Compare(a.leg, b.leg), cmp.Compare(a.line, b.line))
}

// sharedWith is the share of a held column's spread within strata that the
// levels account for, less what chance alone would (adjusted R squared), by hours.
func (o *obs) sharedWith(h held, column int, at []place) float64 {
	k := len(o.level)
	z := make([]float64, len(o.rows))
	for i, p := range at {
		v, ok := h.at[p]
		if !ok {
			v = h.mean
		}
		z[i] = v[column]
	}
	own := make([][]float64, len(o.rows))
	weight, stratum := make([]float64, len(o.rows)), make([]int, len(o.rows))
	for i, r := range o.rows {
		own[i], weight[i], stratum[i] = r.X[len(r.X)-k:], r.Effort, r.Stratum
	}
	return stats.Shared(own, z, weight, stratum)
}
