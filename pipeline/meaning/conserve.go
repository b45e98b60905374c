package meaning

import (
	"math"
	"regexp"
	"slices"
	"strings"

	"wakeledger/pipeline/layout"
	"wakeledger/pipeline/plan"
	"wakeledger/pipeline/unit"
	"wakeledger/pipeline/words"
)

// mostMay is how many meanings a column without one is asked about with.
const mostMay = 5

// leastKn and mostKn are between which speeds tuna are trolled for (common practice, no source).
const leastKn, mostKn = 4.0, 20.0

// accounted is from which weight on the words of a heading say what it holds.
const accounted = 1.6

// unaccounted are columns with numbers, clock times or words of a fate of which nothing was
// made, that no word of their heading puts beside the totals, and that other columns of the
// row do not add up to.
func (l *Log) unaccounted(u *Understood, g *group) []Open {
	var out []Open
	for _, x := range u.Plan.Unknown {
		i := slices.IndexFunc(u.Block.Labels, func(b layout.Label) bool { return b.Col == x.Index })
		if i < 0 || u.pseudo(x.Index) {
			continue
		}
		j := u.columns[i]
		if x.Aside == "best" && g.values[j].named() {
			o := l.openOf(u, g, j) // a fish that is named with its measure is no number once more
			o.Others = []string{"fishlist"}
			out = append(out, o)
			continue
		}
		if x.Aside != "" || g.cands[j][u.choice[j]].column == catchColumn ||
			l.noTotal(g.values[j]) && !u.likeSpread(g.values[j]) || u.derived(x.Index) || u.countsTold(x.Index) {
			continue // counted already
		}
		o := l.openOf(u, g, j)
		if o.Others = l.mayBe(u, g, j); len(o.Others) > 0 {
			out = append(out, o)
		}
	}
	return out
}

// named tells cells of a name with a figure behind it: "tuna 31.5".
func (v *Values) named() bool {
	return len(v.cells) > 2 && v.texts() > 0.6 &&
		v.share("named", func(c layout.Cell) bool { return namedFigure.MatchString(c.Text) }) >= 0.8
}

// sized is the unit of length in the heading of a column whose cells name a fish with a figure behind it; "" where
// there is none, or fewer than half of the cells have one.
func (v *Values) sized() unit.Unit {
	figures := v.share("named", func(c layout.Cell) bool { return namedFigure.MatchString(c.Text) })
	if len(v.cells) < 3 || v.texts() <= 0.6 || figures < 0.5 {
		return ""
	}
	return unitAmong(v.Label.Text, unit.Length)
}

var namedFigure = regexp.MustCompile(`^\pL[\pL .'?-]{1,20}\s\d+(?:[.,]\d+)?(?:\s?(?:cm|in|kg|lbs?|#|"))?$`)

// noTotal reports whether no total rests on a column without a meaning, by its heading or its cells.
func (l *Log) noTotal(v *Values) bool {
	m, how := words.Method(v.Label.Text)
	return how && m != "troll" || !v.tellsSomething() && v.fishes(l.lexicon) < 0.5 ||
		isID(v.Label.Text) || l.lexicon.elsewhere(v)
}

// pseudo reports whether a column is read as a count of its species, a rod or a lure's place.
func (u *Understood) pseudo(index int) bool {
	at := func(x plan.Unknown) bool { return x.Index == index }
	return slices.ContainsFunc(u.Plan.Catch, at) || slices.ContainsFunc(u.Plan.Rods, at) ||
		slices.ContainsFunc(u.Plan.Spread, at)
}

// tellsSomething reports whether a column holds anything that a total may rest on: a running
// number, noughts alone and one number in every row tell nothing.
func (v *Values) tellsSomething() bool {
	if v.clockShare() > 0.6 {
		return true
	}
	marks := v.ticks() > 0.9 && v.distinct()*float64(len(v.cells)) > 1.5
	if v.texts() > 0.4 && (v.fates() >= 0.5 || marks || storyProfile(v, -1) > 0) {
		return true
	}
	if v.orNone() <= 0.6 || v.rising() && v.distinct() > 0.9 && len(v.cells) > 2 && v.whole(0, 1e6) > 0.9 {
		return false
	}
	return slices.ContainsFunc(v.numbers, func(x float64) bool { return x != 0 })
}

// elsewhere reports whether a heading's words say that its cells are no part of a total: a
// guess, the weather, who was aboard.
func (t *Lexicon) elsewhere(v *Values) bool {
	said := t.said(v.Label)
	if said.guess || said.asideWeight >= accounted {
		return true
	}
	best, weight := "", accounted
	for c, s := range said.columns {
		if s.weight > weight || s.weight == weight && c.Name < best {
			best, weight = c.Name, s.weight
		}
	}
	return best != "" && best != "count" && !slices.Contains(weighty, best)
}

// derived reports whether a column is another one again, or the sum, the difference or the
// product of two others, in all of its rows.
func (u *Understood) derived(index int) bool {
	filled := 0
	for _, row := range u.rowNumbers() {
		if index < len(row) && row[index] != 0 {
			filled++
		}
	}
	if filled < 3 {
		return false
	}
	bound := []int{}
	for _, b := range u.Plan.Bindings {
		if b.Index >= 0 && b.Index != index && !slices.Contains(bound, b.Index) {
			bound = append(bound, b.Index)
		}
	}
	all := func(test func(x float64, at func(int) float64) bool) bool {
		for _, row := range u.rowNumbers() {
			at := func(i int) float64 {
				if i >= len(row) {
					return 0
				}
				return row[i]
			}
			if !test(at(index), at) {
				return false
			}
		}
		return true
	}
	near := func(a, b float64) bool { return math.Abs(a-b) <= 0.006*math.Max(1, math.Abs(a)) }
	for k, a := range bound {
		if all(func(x float64, at func(int) float64) bool { return near(x, at(a)) }) {
			return true
		}
		for _, b := range bound[k+1:] {
			if all(func(x float64, at func(int) float64) bool { return near(x, at(a)+at(b)) }) ||
				all(func(x float64, at func(int) float64) bool { return near(x, math.Abs(at(a)-at(b))) }) ||
				all(func(x float64, at func(int) float64) bool { return near(x, at(a)*at(b)) }) {
				return true
			}
		}
	}
	return u.inOtherUnit(index) || u.partOfSum(index, bound, all, near) || u.partOfFamily(index, bound, all, near)
}

// partOfFamily reports whether the columns that are numbered as one is add up to another: "Hits 1" and "Hits 2" beside
// "Hits".
func (u *Understood) partOfFamily(index int, bound []int,
	all func(func(float64, func(int) float64) bool) bool, near func(a, b float64) bool) bool {
	i := slices.IndexFunc(u.Block.Labels, func(l layout.Label) bool { return l.Col == index })
	if i < 0 {
		return false
	}
	var family []int
	for k, l := range u.Block.Labels {
		if u.columns[k] == u.columns[i] {
			family = append(family, l.Col)
		}
	}
	return len(family) > 1 && slices.ContainsFunc(bound, func(b int) bool {
		return all(func(_ float64, at func(int) float64) bool {
			sum := 0.0
			for _, c := range family {
				sum += at(c)
			}
			return near(at(b), sum)
		})
	})
}

// rowNumbers are the numbers of each row, 0 where a cell has none.
func (u *Understood) rowNumbers() [][]float64 {
	if u.numbers == nil {
		u.numbers = make([][]float64, 0, len(u.Block.Rows))
		for _, r := range u.Block.Rows {
			row := make([]float64, len(r.Cells))
			for i, c := range r.Cells {
				row[i], _ = number(c.Text)
			}
			u.numbers = append(u.numbers, row)
		}
	}
	return u.numbers
}

// mostParts is how many columns side by side may add up to another.
const mostParts = 12

// partOfSum reports whether a column is one of several side by side, all without a meaning, that
// add up to one that has one: fish by class beside their number.
func (u *Understood) partOfSum(index int, bound []int,
	all func(func(float64, func(int) float64) bool) bool, near func(a, b float64) bool) bool {
	unknown := func(i int) bool {
		return slices.ContainsFunc(u.Plan.Unknown, func(x plan.Unknown) bool { return x.Index == i && x.Aside == "" })
	}
	for from := index; from >= 0 && index-from < mostParts && unknown(from); from-- {
		for to := index; to-from < mostParts && unknown(to); to++ {
			for _, b := range bound {
				if to > from && all(func(_ float64, at func(int) float64) bool {
					sum := 0.0
					for i := from; i <= to; i++ {
						sum += at(i)
					}
					return near(at(b), sum)
				}) {
					return true
				}
			}
		}
	}
	return false
}

// once are the meanings of which a row has one column: hours, lines and speed.
var once = map[string][]string{
	"start_s": {"start_s", "stretches", "event"}, "end_s": {"end_s", "stretches", "event"},
	"duration_s": {"duration_s", "end_s", "stretches", "event"},
	"lines_out":  {"lines_out"}, "speed_kn": {"speed_kn"}, "strike_speed_kn": {"strike_speed_kn", "speed_kn"},
	"outcome":   {"outcome"},
	"story":     {"strikes_n", "hooked_n", "landed_n", "outcome", "species"},
	"length_cm": {"length_cm"}, "girth_cm": {"girth_cm"}, "scale_kg": {"scale_kg"},
	"strikes_n": {"strikes_n"}, "hooked_n": {"hooked_n"}, "landed_n": {"landed_n"}, "kept_n": {"kept_n"},
	"released_n": {"released_n"}, "lost_n": {"lost_n"}, "missed_n": {"missed_n"},
}

// mayBe are the meanings that totals rest on, that the cells of an unused column fit, and that
// no other column has: the likeliest first.
func (l *Log) mayBe(u *Understood, g *group, column int) []string {
	a := g.assigned(u.choice)
	v := g.values[column]
	type option struct {
		name  string
		score float64
	}
	var all []option
	if headingUnit(v.Label) == "" && v.orNone() > 0.6 && v.whole(0, 60) > 0.95 && len(u.Plan.Catch) > 0 &&
		!words.IsTotal(v.Label.Text) {
		all = append(all, option{"catch", 99})
	}
	if whole := headingUnit(v.Label) == "" && v.orNone() > 0.6 && v.whole(0, 60) > 0.95; whole &&
		(g.kind == plan.Legs || g.kind == plan.Trips) && !l.tellsStrikes() {
		all = append(all, option{"strikes_n", 96}, option{"landed_n", 95})
	}
	marks := v.ticks() > 0.9 && v.texts() > 0.4
	if in, _ := l.lexicon.concepts.found(normalise(v.Label.Text)); marks && len(in) == 0 &&
		u.ofFish(a) && !a.has("kept") {
		all = append(all, option{"kept", 98}, option{"released", 97})
	}
	if v.fates() >= 0.5 && a.has("outcome") && !a.has("kept") && u.ofFish(a) {
		all = append(all, option{"kept", 98})
	}
	if u.likeSpread(v) {
		all = append(all, option{"spread", 99})
	}
	_, now := g.best(u.choice, -1)
	for _, x := range l.lexicon.Columns {
		c := candidate{column: x}
		name := meaningOf(c)
		others, ok := once[name]
		held := slices.ContainsFunc(others, func(n string) bool { return len(a[n]) > 0 })
		if !ok || !x.In(g.kind) || held || slices.ContainsFunc(all, func(o option) bool { return o.name == name }) {
			continue
		}
		if u := headingUnit(v.Label); u != "" && u.Dimension() != x.Dimension {
			continue // of centimetres no count is made
		}
		if name == "outcome" && g.lettersAlone(a, column) && l.tellsStrikes() {
			continue // what became of the bites stands elsewhere
		}
		fits := profile(l.lexicon, v, x, "")
		if fits <= 0 || !l.mayHold(u, v, a, name, x) {
			continue
		}
		score := now + fits + noWord - unsaid
		if k := slices.IndexFunc(g.cands[column], func(o candidate) bool { return o.column == x }); k >= 0 {
			with := slices.Clone(u.choice)
			with[column] = k
			_, score = g.best(with, column)
		}
		all = append(all, option{name, score})
	}
	slices.SortStableFunc(all, func(x, y option) int {
		switch {
		case x.score > y.score:
			return -1
		case x.score < y.score:
			return 1
		}
		return 0
	})
	var out []string
	for _, o := range all[:min(len(all), mostMay)] {
		out = append(out, o.name)
	}
	return out
}

// mayHold reports whether a column of a block may be about what a meaning says.
func (l *Log) mayHold(u *Understood, v *Values, a assigned, name string, x *plan.Column) bool {
	switch name {
	case "length_cm", "girth_cm", "scale_kg":
		return u.ofFish(a) && v.distinct() >= 0.3
	case "speed_kn", "strike_speed_kn":
		return v.within(x, "", leastKn, mostKn) >= 0.95
	}
	return v.texts() <= 0.4 || !strings.HasSuffix(name, "_n") // a yes or a no counts nothing
}

// likeSpread reports whether a third of the cells of a column stand under places of the spread
// too: it is one more place.
func (u *Understood) likeSpread(v *Values) bool {
	if len(u.Plan.Spread) < 2 {
		return false
	}
	seen := map[string]bool{}
	for _, p := range u.Plan.Spread {
		for _, c := range column(u.b.rows, p.Index) {
			seen[strings.ToLower(c)] = true
		}
	}
	n := 0
	for _, c := range v.cells {
		if seen[strings.ToLower(c.Text)] {
			n++
		}
	}
	return n > 0 && 3*n >= len(v.cells)
}

// tellsStrikes reports whether some block of the log tells of bites or fish.
func (l *Log) tellsStrikes() bool {
	return slices.ContainsFunc(l.Data(), func(u *Understood) bool {
		p := u.Plan
		return p.Kind == plan.Strikes || p.Kind == plan.Fish || p.Kind == plan.Events ||
			len(p.Catch) > 0 || len(p.Rods) > 0 ||
			p.Binds(countNames...) || p.Binds("outcome", "species") || p.Reads("story", "fishlist")
	})
}

// ofFish reports whether the rows of a block tell of one fish each, or of their best.
func (u *Understood) ofFish(a assigned) bool {
	return u.Plan.Kind == plan.Strikes || u.Plan.Kind == plan.Fish || a.has("species") ||
		a.has("length_cm") || a.has("scale_kg") || a.has("outcome")
}

// proven is from how much evidence between columns on a meaning needs no word of its heading.
const proven = 1.5

// unworded are columns that are taken for a part of a total by their cells alone: no word of
// their heading speaks for it, and no other column.
func (l *Log) unworded(u *Understood, g *group) []Open {
	var out []Open
	for i, k := range u.choice {
		c := g.cands[i][k]
		none := slices.IndexFunc(g.cands[i], func(x candidate) bool { return x.column == nil })
		if c.column == nil || none < 0 || !slices.Contains(weighty, meaningOf(c)) ||
			!slices.Contains([]string{"quantity", "count", "moment"}, c.column.Parse) || !c.voted("no word") &&
			!c.voted(oneLetter) || c.voted("a unit for a heading") {
			continue
		}
		without := slices.Clone(u.choice)
		without[i] = none
		if g.support(u.choice)-g.support(without) >= proven {
			continue
		}
		o := l.openOf(u, g, i)
		o.Taken = meaningOf(c)
		o.Others = append(l.mayBe(u, g, i), "")
		out = append(out, o)
	}
	return out
}

// headingUnit is the unit that a heading has in brackets or under it; "" where it has none.
func headingUnit(l layout.Label) unit.Unit {
	text := l.Unit
	if _, inner, ok := brackets(l.Text); ok && text == "" {
		text = inner
	}
	u, _ := unit.Lookup(text)
	return u
}

// support is the evidence between the columns of a choice.
func (g *group) support(c choice) float64 {
	t := 0.0
	for _, v := range g.between(c) {
		t += v.Weight
	}
	return t
}

// voted reports whether a piece of evidence spoke of a meaning.
func (c *candidate) voted(evidence string) bool {
	return slices.ContainsFunc(c.votes, func(v vote) bool { return v.Evidence == evidence })
}
