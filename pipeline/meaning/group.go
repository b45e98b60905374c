package meaning

import (
	"slices"
	"strings"

	"wakeledger/pipeline/layout"
	"wakeledger/pipeline/phrase"
	"wakeledger/pipeline/plan"
	"wakeledger/pipeline/spelling"
	"wakeledger/pipeline/unit"
	"wakeledger/pipeline/words"
)

// pages puts the pages of one table together: the same headings again below it, under no
// title that says of another day or another fate.
func pages(blocks []*layout.Block) []*layout.Block {
	var out []*layout.Block
	for _, b := range blocks {
		var last *layout.Block
		for _, x := range out {
			if x.Grid == b.Grid && x.Shape == layout.Table && b.Shape == layout.Table && sameKeys(x, b) &&
				x.Labels[0].Col == b.Labels[0].Col {
				last = x
			}
		}
		if last == nil || titled(b.Above) || titled(last.Above) || dayBetween(blocks, last, b) {
			out = append(out, b)
			continue
		}
		// its title again
		last.Rows = slices.DeleteFunc(last.Rows, func(r layout.Row) bool {
			return slices.Contains(last.Above, firstText(r))
		})
		last.Rows, last.Totals, last.Open = append(last.Rows, b.Rows...), append(last.Totals, b.Totals...), b.Open
		last.Foot, last.Onward = append(last.Foot, b.Foot...), append(last.Onward, b.Onward...)
		b.Rows = nil
	}
	return out
}

// dayBetween tells two tables of one sheet between which a title says of another day.
func dayBetween(blocks []*layout.Block, from, to *layout.Block) bool {
	i, j := slices.Index(blocks, from), slices.Index(blocks, to)
	return i >= 0 && i < j && slices.ContainsFunc(blocks[i+1:j+1], func(b *layout.Block) bool {
		_, _, outing := outingAbove(b.Above)
		return b.Grid == to.Grid && (outing || titleDay(b.Above) != "")
	})
}

func firstText(r layout.Row) string {
	for _, c := range r.Cells {
		if c.Look != layout.Blank {
			return c.Text
		}
	}
	return ""
}

func titled(above []string) bool {
	return titleDay(above) != "" || slices.ContainsFunc(above, func(t string) bool {
		_, _, _, fate := words.FateOf(t)
		return fate && len(t) < 40
	})
}

// grouped puts blocks of the same hand together: those that share most of their labels. says reports whether a
// label says anything: one that does not is its sisters' at its place, a slip of the pen or left out.
// means is what else a label may say: one whose meaning another table has under a word of its own is its sister too.
func grouped(blocks []*layout.Block, says func(layout.Label) bool, means meanings) ([]*group, map[*layout.Block][]int) {
	var groups []*group
	var keys [][]labelKey
	columns := map[*layout.Block][]int{}
	for _, b := range blocks {
		k, families := keysOf(b)
		at := -1
		for i := range groups {
			shared := 0
			for _, x := range k {
				if slices.Contains(keys[i], x) {
					shared++
				}
			}
			of := groups[i].blocks[0]
			same := of.Shape == b.Shape && of.Kind == b.Kind && !strikesBesideFish(of, b)
			if same && shared >= 2 && 10*shared >= 7*min(len(k), len(keys[i])) {
				at = i
				break
			}
		}
		if at < 0 {
			at = len(groups)
			groups, keys = append(groups, &group{cache: map[string]float64{}}), append(keys, nil)
		}
		of := make([]int, len(k))
		for i, x := range k {
			j := slices.IndexFunc(keys[at], func(o labelKey) bool {
				return o == x || o.text == x.text && families[x.text] > 1
			})
			if j < 0 {
				j = groups[at].sister(b, i, says)
			}
			if j < 0 {
				j = groups[at].renamed(b, i, means)
			}
			if j < 0 {
				j = len(keys[at])
				keys[at] = append(keys[at], x)
			}
			of[i] = j
		}
		columns[b] = of
		groups[at].blocks = append(groups[at].blocks, b)
		groups[at].columns = columns
	}
	for i, g := range groups {
		g.fill(columns, len(keys[i]), says)
	}
	return groups, columns
}

// strikesBesideFish tells two tables of which one is named for strikes and the other for fish: they may be of the same
// fish, under the same headings.
func strikesBesideFish(a, b *layout.Block) bool {
	x, y := nameHint(a.Grid.Info.Title()), nameHint(b.Grid.Info.Title())
	return x == plan.Strikes && y == plan.Fish || x == plan.Fish && y == plan.Strikes
}

// sister is the group's column for a label of a block where one of the two says nothing: that of a label one
// slip of the pen away, or of the only one that differs between the block and another of the group. -1 is none.
func (g *group) sister(b *layout.Block, i int, says func(layout.Label) bool) int {
	for _, o := range g.blocks {
		if j := slipOf(o, b, i, says); j >= 0 {
			return g.columns[o][j]
		}
		if len(o.Labels) != len(b.Labels) || says(o.Labels[i]) && says(b.Labels[i]) {
			continue
		}
		alike := true
		for m := range b.Labels {
			alike = alike && (m == i || sameLabel(o.Labels[m], b.Labels[m]))
		}
		if alike {
			return g.columns[o][i]
		}
	}
	return -1
}

// meanings are the moments and counts that a label may mean.
type meanings func(layout.Label) map[*plan.Column]bool

// renamed is the group's column for a label whose meaning other blocks have under another heading: Start at first, and
// Lines in later. -1 is none.
func (g *group) renamed(b *layout.Block, i int, means meanings) int {
	all := means(b.Labels[i])
	for _, o := range g.blocks {
		for j := range o.Labels {
			for c := range all {
				if only(o, c, means) == j && only(b, c, means) == i {
					return g.columns[o][j]
				}
			}
		}
	}
	return -1
}

// only is the one label of a block that may mean a moment or a count, over cells that are such; -1 where none may, or
// several.
func only(b *layout.Block, c *plan.Column, means meanings) int {
	at := -1
	for j, l := range b.Labels {
		x := seenIn(b, l.Col)
		clocks := 2*(x.clocks+x.durations) > x.n
		if !means(l)[c] || clocks != (c.Parse == "moment") {
			continue
		}
		if at >= 0 {
			return -1
		}
		at = j
	}
	return at
}

func sameLabel(a, b layout.Label) bool { return normalise(a.Full()) == normalise(b.Full()) }

// slipOf is the label of another block that a block's label is a slip of the pen away from, where the block
// has that one not itself. -1 is none.
func slipOf(o, b *layout.Block, i int, says func(layout.Label) bool) int {
	name := normalise(b.Labels[i].Full())
	for j, l := range o.Labels {
		if len(name) >= leastMistyped && spelling.Distance(name, normalise(l.Full())) == 1 &&
			!(says(l) && says(b.Labels[i])) &&
			!slices.ContainsFunc(b.Labels, func(own layout.Label) bool { return sameLabel(own, l) }) {
			return j
		}
	}
	return -1
}

// fill gathers the cells of each column of the group from its blocks.
func (g *group) fill(columns map[*layout.Block][]int, width int, says func(layout.Label) bool) {
	labels := make([]layout.Label, width)
	cells := make([][]layout.Cell, width)
	workbook, monthly := false, true
	for _, b := range g.blocks {
		of := columns[b]
		workbook = workbook || b.Grid.Info.Workbook
		_, _, month := unit.MonthIn(b.Grid.Info.Title() + " " + strings.Join(b.Above, " "))
		monthly = monthly && month
		for i, l := range b.Labels {
			if slices.Index(of, of[i]) == i && (!says(labels[of[i]]) || says(l)) {
				labels[of[i]] = l
			}
		}
		for _, row := range b.Rows {
			for j := range cells {
				cells[j] = append(cells[j], layout.Cell{})
			}
			for i, l := range b.Labels {
				if l.Col < len(row.Cells) && slices.Index(of, of[i]) == i { // the first of its family speaks for it
					cells[of[i]][g.rows] = row.Cells[l.Col]
				}
			}
			g.rows++
		}
	}
	for j := range labels {
		g.values = append(g.values, newValues(labels[j], cells[j], workbook, monthly))
	}
	g.behindPlaces()
}

// behindPlaces has columns of whole numbers mean what stands behind the places of the spread in their headings, where
// several have the same words there: "Port long bites", "Shotgun bites". Numbers under places alone are bites where
// they are few, as lines that were out are not.
func (g *group) behindPlaces() {
	of := map[string][]*Values{}
	var alone []*Values
	for _, v := range g.values {
		if words.IsPlace(v.Label.Text) && v.numeric() > 0.9 && v.whole(0, mostOnRod) > 0.99 {
			alone = append(alone, v)
		} else if rest, ok := words.BehindPlace(v.Label.Text); ok && v.whole(0, 30) > 0.9 {
			of[strings.ToLower(rest)] = append(of[strings.ToLower(rest)], v)
		}
	}
	if len(alone) >= fewestRods && sparse(alone) {
		of["bites"] = append(of["bites"], alone...)
	}
	for rest, all := range of {
		if len(all) < 2 {
			continue
		}
		for _, v := range all {
			v.behind = rest
		}
	}
}

const (
	mostOnRod  = 9 // bites on one rod of a row: a greater number is a setback or a size
	fewestRods = 3 // places beside each other whose numbers are bites
)

// sparse tells columns of counts that say nought in most of their cells, and more than one in some or nought in all of
// some row.
func sparse(all []*Values) bool {
	filled, cells, several, empty := 0, 0, false, false
	for row := range all[0].Rows {
		sum := 0.0
		for _, v := range all {
			cells++
			if x, ok := number(v.Rows[row].Text); ok && x > 0 {
				filled++
				sum += x
				several = several || x > 1
			}
		}
		empty = empty || sum == 0
	}
	return 2*filled < cells && filled > 0 && (several || empty)
}

// Said is what a user says of the columns under a heading: by a mapping file or an answer.
type Said struct {
	Kind    plan.Kind              // "" where it is not said
	Columns map[string]*SaidColumn // by heading in lower case
	Answers Answered               // nil: none
}

// SaidColumn is what a heading means. A nil Column keeps its cells by name.
type SaidColumn struct {
	Column *plan.Column
	Unit   unit.Unit // "" where it is not said
}

// infer settles what the group's columns mean and what its records are.
func (g *group) infer(t *Lexicon, l *legend, said Said, off Switches) (choice, string) {
	g.off = off
	for i := range g.values {
		g.written = append(g.written, g.values[i])
		g.cands = append(g.cands, g.candidatesOf(t, i, l, said))
		in, _ := t.concepts.found(normalise(g.values[i].Label.Text))
		g.ofThose = append(g.ofThose, in["ofthose"])
		g.ofFish = append(g.ofFish, t.fishOver(g.values[i].Label))
	}
	g.places()
	g.boatHours()
	g.siblings(t)
	now, _ := g.best(make(choice, len(g.cands)), -1)
	a := g.assigned(now)
	if g.toldTimes(a) {
		now, _ = g.best(make(choice, len(g.cands)), -1)
		a = g.assigned(now)
	}
	if a = g.timedStories(a); len(a["stretches"]) > 0 {
		g.timed = a["stretches"]
	}
	kind, why := g.kindOf(a)
	if said.Kind != "" {
		kind, why = said.Kind, "the plan says so"
	}
	if kind == "" {
		return now, ""
	}
	g.restrict(kind)
	now, _ = g.best(make(choice, len(g.cands)), -1)
	return now, why
}

// toldTimes takes a column of times in words whose cells tell of bites too for the words of both, where nothing else
// in the block tells any: "in 6:40, out 11:20, 5 rods. Two tuna."
func (g *group) toldTimes(a assigned) bool {
	f := facts{assigned: a}
	if len(a["stretches"]) != 1 || f.told() || f.counts() || f.measured() ||
		f.any("species", "outcome", "event", "time_s") {
		return false
	}
	i := a["stretches"][0]
	j := slices.IndexFunc(g.cands[i], func(c candidate) bool { return c.column != nil && c.column.Parse == "story" })
	if j < 0 || storyProfile(g.values[i], -1) <= 0 {
		return false
	}
	story := g.cands[i][j]
	story.add(g.off, "bites beside the times", sureCells)
	g.cands[i] = slices.DeleteFunc(g.cands[i], func(c candidate) bool {
		return c.column != nil && (c.column.Parse == "stretches" || c.column.Parse == "story")
	})
	g.cands[i] = append([]candidate{story}, g.cands[i]...)
	sortCandidates(g.cands[i])
	return true
}

// timedStories takes the words in which bites are told for those that tell the times of
// trolling too, where no other column does and most of them do: a paragraph a trip.
func (g *group) timedStories(a assigned) assigned {
	if f := (facts{assigned: a}); f.effort() || len(a["story"]) == 0 {
		return a
	}
	for _, i := range a["story"] {
		told := func(c layout.Cell) bool { return len(phrase.Stretches(c.Text)) > 0 }
		if g.values[i].share("stretch told", told) >= 0.4 {
			a["stretches"] = append(a["stretches"], i)
		}
	}
	return a
}

func (g *group) candidatesOf(t *Lexicon, i int, l *legend, said Said) []candidate {
	v := g.values[i]
	if s, ok := said.Columns[strings.ToLower(v.Label.Full())]; ok {
		c := candidate{column: s.Column, unit: s.Unit, score: 10, votes: []vote{{"said", 10}}}
		return []candidate{c}
	}
	if l.inFigures(t, v) {
		c := candidate{column: catchColumn}
		c.add(g.off, "counts as the log says they are written", 4)
		return []candidate{c, {score: unsaid}}
	}
	if l.codesFor(v) == nil {
		l.addShort(t, v)
	}
	g.written[i] = l.rewritten(v)
	cands := t.candidates(g.written[i], withoutAlso(l.more(v.Label.Text)), g.off)
	if said.Answers != nil {
		if means, ok := said.Answers(headingOf(v.Label), g.nth(i), g.labels()); ok {
			return t.answered(cands, v.Label.Text, means)
		}
	}
	return cands
}

// boatHours has hours that by their heading are the whole trip's be no hours with lines in the water, where another
// column has those by its heading: "Trip hrs" beside "Troll hrs".
func (g *group) boatHours() {
	trolled := slices.ContainsFunc(g.values, func(v *Values) bool {
		head := normalise(v.Label.Full())
		return fishing.MatchString(head) && v.numeric() > 0 && g.says(v, "duration_s")
	})
	if !trolled {
		return
	}
	for i, v := range g.values {
		if head := normalise(v.Label.Full()); !ofTrip.MatchString(head) || fishing.MatchString(head) {
			continue
		}
		k := slices.IndexFunc(g.cands[i], func(c candidate) bool {
			return c.column != nil && c.column.Name == "duration_s" && c.voted("words")
		})
		if k < 0 {
			continue
		}
		g.cands[i][k].add(g.off, tripBesideTrolled, -4)
		c := candidate{column: asideColumn, aside: "trip hours"}
		c.add(g.off, tripBesideTrolled, 3)
		g.cands[i] = append(g.cands[i], c)
		sortCandidates(g.cands[i])
	}
}

const tripBesideTrolled = "hours of the trip beside those trolled"

// says tells a column of which hours, counts or the like are the likeliest meaning.
func (g *group) says(v *Values, name string) bool {
	i := slices.Index(g.values, v)
	return i >= 0 && len(g.cands[i]) > 0 && g.cands[i][0].column != nil && g.cands[i][0].column.Name == name
}

// places leaves out columns headed by a place in the spread where there is only one: that
// heads a column of places. Where what struck stands under half of them, it stands under the others too.
func (g *group) places() {
	n, struck := 0, 0
	for i, c := range g.cands {
		likely := func(column *plan.Column) bool { // "L" over lengths is the left rod to few
			return slices.ContainsFunc(c, func(x candidate) bool {
				return x.column == column && x.score > c[0].score-nearTie
			})
		}
		rod := likely(rodColumn)
		if rod {
			struck++
		}
		if rod || likely(spreadColumn) {
			lure := slices.ContainsFunc(c, func(x candidate) bool { return x.column != nil && x.column.Name == "lure" })
			if n++; g.comesAgain(i) && !lure { // R1, R2, R3: of several one speaks for all
				n++
			}
		}
	}
	if struck > 1 && 2*struck >= n {
		for _, c := range g.cands {
			for k := range c {
				if c[k].column == spreadColumn {
					c[k].column = rodColumn
				}
			}
		}
	}
	if n != 1 {
		return
	}
	for i := range g.cands {
		g.cands[i] = slices.DeleteFunc(g.cands[i], func(x candidate) bool {
			return x.column == rodColumn || x.column == spreadColumn
		})
	}
}

// codes takes the codes of species that head counts for such where another species heads one too.
func (g *group) codes(isCatch func(candidate) bool) {
	var heads []int
	for i, c := range g.cands {
		if slices.ContainsFunc(c, isCatch) {
			heads = append(heads, i)
		}
	}
	if len(heads) < 2 {
		return
	}
	for _, i := range heads {
		k := slices.IndexFunc(g.cands[i], isCatch)
		if x := &g.cands[i][k]; x.voted("a code over counts") {
			x.add(g.off, "species beside", 3)
			sortCandidates(g.cands[i])
		}
	}
}

// backWords are words that over counts of fish, beside those of the fish that were kept, say
// that these went back.
var backWords = []string{"back", "returned", "out", "over the side", "free", "swam", "alive", "dehors",
	"fuera", "fuori", "fora", "zuruck"}

// goneBack tells a group heading of fish that were let go.
func goneBack(group string) bool {
	if group == "" || len(group) >= prose {
		return false
	}
	fate, _, _, ok := words.FateOf(group)
	return ok && fate == words.Released || slices.Contains(backWords, normalise(group))
}

// putBack tells a column of counts under a heading of fish that went back, where another
// heading has the species that were kept.
func (g *group) putBack(v *Values, species map[string]int) bool {
	if !goneBack(v.Label.Group) || v.whole(0, 60) < 0.9 {
		return false
	}
	for group, n := range species {
		fate, _, _, ok := words.FateOf(group)
		if ok && fate == words.Landed && n >= 2 {
			return true
		}
	}
	return false
}

// siblings takes a count under the same group heading as counts of two species or more for a
// count of fish like them: "Other".
func (g *group) siblings(t *Lexicon) {
	species := map[string]int{}
	isCatch := func(x candidate) bool { return x.column == catchColumn }
	for i, c := range g.cands {
		if group := g.values[i].Label.Group; group != "" && slices.ContainsFunc(c, isCatch) {
			species[group]++
		}
	}
	g.codes(isCatch)
	g.neverFilled(t, isCatch)
	for i, c := range g.cands {
		v := g.values[i]
		if species[v.Label.Group] < 2 && !g.putBack(v, species) || slices.ContainsFunc(c, isCatch) ||
			len(v.cells) > 0 && v.orNone() < 0.6 {
			continue
		}
		x := candidate{column: catchColumn}
		x.add(g.off, "species beside", 3.4)
		g.cands[i] = []candidate{x, {score: unsaid}}
	}
	g.namedBeside(isCatch)
}

// neverFilled takes a column in which nothing stands, headed by a species and what became of it, for a count like those
// of other columns so headed: nobody let a yellowfin go that season. It is not the count of all that were let go.
func (g *group) neverFilled(t *Lexicon, isCatch func(candidate) bool) {
	of := func(i int) string {
		fate, _ := t.speciesFate(g.values[i].Label.Text)
		return fate
	}
	counted := false
	for i, c := range g.cands {
		counted = counted || of(i) != "" && slices.ContainsFunc(c, isCatch)
	}
	for i := range g.cands {
		if counted && of(i) != "" && len(g.values[i].cells) == 0 {
			x := candidate{column: catchColumn}
			x.add(g.off, "species beside", 3.4)
			g.cands[i] = []candidate{x, {score: unsaid}}
		}
	}
}

// fewNamed is in how many rows a fish that heads a column must be named, for a name that no list has.
const fewNamed = 2

// namedBeside takes a count among those of species for that of one whose name no list has, where other cells of
// its rows name it too, and of no row in which it counts none: "School mack" in "biggest school mack 58".
func (g *group) namedBeside(isCatch func(candidate) bool) {
	first, last := -1, -1
	for i, c := range g.cands {
		if slices.ContainsFunc(c, isCatch) {
			last = i
			if first < 0 {
				first = i
			}
		}
	}
	take := func(i int) bool {
		v := g.values[i]
		bare := !slices.ContainsFunc(g.cands[i], func(x candidate) bool { return isCatch(x) || x.voted("words") })
		among := v.share("let go among them", letGoAmongThem) > 0 && v.countsFish() // "2 (rel 1)" counts fish
		if !bare || !among && (v.numeric() <= 0.9 || v.whole(0, 60) <= 0.95 || g.namedIn(i) < fewNamed) {
			return slices.ContainsFunc(g.cands[i], isCatch)
		}
		x := candidate{column: catchColumn}
		x.add(g.off, "its name in other cells", 3.4)
		g.cands[i] = append([]candidate{x}, g.cands[i]...)
		return true
	}
	for i := max(first, 0); i < last; i++ {
		take(i)
	}
	for i := first - 1; first >= 0 && i >= 0 && take(i); i-- {
	}
	for i := last + 1; first >= 0 && i < len(g.cands) && take(i); i++ {
	}
}

// namedIn is in how many of the rows that a column counts something in another cell has its heading in it; 0
// where one in which it counts nothing has too.
func (g *group) namedIn(column int) int {
	name := normalise(g.values[column].Label.Text)
	if len(name) < leastPlain {
		return 0
	}
	n := 0
	for r := range g.rows {
		told := slices.ContainsFunc(g.values, func(v *Values) bool {
			return strings.Contains(" "+normalise(v.Rows[r].Text)+" ", " "+name+" ")
		})
		count, _ := g.count(column, r)
		switch {
		case told && count == 0:
			return 0
		case told:
			n++
		}
	}
	return n
}
