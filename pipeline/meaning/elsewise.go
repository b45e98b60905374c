package meaning

import (
	"slices"
	"strings"

	"wakeledger/pipeline/layout"
	"wakeledger/pipeline/plan"
	"wakeledger/pipeline/words"
)

// untrolled says of tables of strikes and fish which stretches that they name were fished in another
// way, as the method beside the stretch in another table of the log says, and of tables of trips
// which had no other stretches.
func (l *Log) untrolled() {
	other, trolled := map[string]bool{}, map[string]bool{}
	// stretches of each name: of one that is numbered through, strikes may name no trip
	named := map[string]int{}
	still, lure := map[string]bool{}, map[string]bool{} // trips with such stretches, and with others
	for _, u := range l.Data() {
		m, trip, leg := u.Plan.Find("method"), outingOf(u.Plan), u.Plan.Find("leg")
		if u.Plan.Kind != plan.Legs && u.Plan.Kind != plan.Flat || m == nil || trip == nil {
			continue
		}
		last := ""
		for _, r := range u.Block.Rows {
			name := cellText(r, trip.Index)
			if name == "" && trip.Carried {
				name = last
			}
			last = name
			method, ok := words.Method(wayIn(r, m))
			apart := ok && method != "troll"
			still[name], lure[name] = still[name] || apart, lure[name] || !apart
			if leg == nil {
				continue
			}
			named[plan.Stretch("", cellText(r, leg.Index))]++
			if key := plan.Stretch(name, cellText(r, leg.Index)); apart {
				other[key], other[plan.Stretch("", cellText(r, leg.Index))] = true, true
			} else {
				trolled[key] = true
			}
		}
	}
	for key := range trolled {
		delete(other, key)
	}
	for key, n := range named {
		if n > 1 {
			delete(other, key)
		}
	}
	for _, u := range l.Data() {
		if trip := outingOf(u.Plan); u.Plan.Kind == plan.Trips && trip != nil {
			for _, r := range u.Block.Rows {
				if name := cellText(r, trip.Index); name != "" && still[name] && !lure[name] {
					setApart(u.Plan, r)
				}
			}
		}
		if p := u.Plan; len(other) > 0 && (p.Kind == plan.Strikes || p.Kind == plan.Fish) && p.Binds("leg") {
			p.Elsewise = other
		}
	}
}

// wayIn is what a row says of how it was fished, a code as its key explains it.
func wayIn(r layout.Row, m *plan.Binding) string {
	how := strings.ToLower(cellText(r, m.Index))
	if means := m.Codes[how]; means != "" {
		return means
	}
	return how
}

// ashore sets apart the trips of which the log's stretches tell nothing, though they do of most others, and
// whose own words say how else the day was spent: "bottom day on the reef, lines never went in".
func (l *Log) ashore() {
	fished := map[string]bool{}
	for _, u := range l.Data() {
		trip := u.Plan.Find("trip")
		if trip == nil || !u.Plan.Binds("start_s", "duration_s") {
			continue
		}
		for _, r := range u.Block.Rows {
			fished[strings.ToLower(cellText(r, trip.Index))] = true
		}
	}
	for _, u := range l.Data() {
		trip := u.Plan.Find("trip")
		if u.Plan.Kind != plan.Trips || trip == nil {
			continue
		}
		var rows []layout.Row
		for _, r := range u.Block.Rows {
			if !fished[strings.ToLower(cellText(r, trip.Index))] {
				rows = append(rows, r)
			}
		}
		if 2*len(rows) > len(u.Block.Rows) {
			continue
		}
		for _, r := range rows {
			if slices.ContainsFunc(r.Cells, func(c layout.Cell) bool {
				return words.Otherwise(c.Text) || words.NeverTrolled(c.Text)
			}) {
				setApart(u.Plan, r)
			}
		}
	}
}

// apart finds rows of strikes or fish under a title of their own that says that they were not
// trolled: "Other (stopped, on the jig)". They end at a blank row; a title above a table is of all of it.
func (l *Log) apart() {
	for _, u := range l.Data() {
		if otherKind(u) {
			for _, r := range u.Block.Rows {
				setApart(u.Plan, r)
			}
			continue
		}
		if u.Plan.Kind != plan.Strikes && u.Plan.Kind != plan.Fish {
			continue
		}
		if l.stayedOffTroll(u) {
			for _, r := range u.Block.Rows {
				setApart(u.Plan, r)
			}
			continue
		}
		if len(u.Block.Above) > 0 && otherTitle(u.Block.Above[0]) || l.stayedIn(u) || l.otherSheet(u.Plan.Name) {
			for _, r := range u.Block.Rows {
				setApart(u.Plan, r)
			}
			continue
		}
		i := slices.IndexFunc(l.Sheets, func(s *layout.Sheet) bool { return s.Grid == u.Block.Grid })
		if i < 0 {
			continue
		}
		for _, n := range l.Sheets[i].Notes {
			last := n.Row
			if !words.Otherwise(n.Text) {
				continue
			}
			for _, r := range u.Block.Rows {
				if int(r.Num) == last+1 {
					setApart(u.Plan, r)
					last++
				}
			}
		}
	}
}

// otherKind tells rows of a kind of their own that is called by another way of fishing, or that the log says was none
// of trolling.
func otherKind(u *Understood) bool {
	kind := u.Block.Kind
	return kind != "" && (words.AnotherMethod(kind) || words.Otherwise(kind) || otherTitle(u.Block.Above[0]))
}

// stayedIn tells a table under words that no line was trolled that day, on a sheet that has no stretches where other
// sheets of the log have theirs.
func (l *Log) stayedIn(u *Understood) bool {
	if !slices.ContainsFunc(u.Block.Above, words.NeverTrolled) {
		return false
	}
	here, elsewhere := false, false
	for _, o := range l.Blocks {
		if o.Plan.Binds("start_s", "end_s", "duration_s", "stretches") {
			here, elsewhere = here || o.Block.Grid == u.Block.Grid, elsewhere || o.Block.Grid != u.Block.Grid
		}
	}
	return elsewhere && !here
}

// otherSheet tells a sheet of which the log says that its fish were not trolled: "Reef: what we took at anchor".
func (l *Log) otherSheet(name string) bool {
	name = normalise(name)
	return name != "" && (otherTitle(l.legend.more(name)) || slices.ContainsFunc(l.Texts, func(text string) bool {
		i := strings.IndexAny(text, ":=")
		return i > 0 && normalise(text[:i]) == name && otherTitle(text[i+1:])
	}))
}

// stayedOffTroll tells a table of fish of a sheet whose tables of stretches say that nobody trolled, and name no
// stretch.
func (l *Log) stayedOffTroll(u *Understood) bool {
	said := false
	for _, o := range l.Blocks {
		start := o.Plan.Find("start_s", "duration_s")
		if o.Block.Grid != u.Block.Grid || o == u || start == nil {
			continue
		}
		for _, r := range o.Block.Rows {
			if cellText(r, start.Index) != "" {
				return false
			}
			said = said || slices.ContainsFunc(r.Cells, func(c layout.Cell) bool {
				return words.NotTrolled(c.Text) || words.NotGone(c.Text)
			})
		}
	}
	return said
}

// longestTitle is the most bytes of a title: what is longer explains.
const longestTitle = 80

// otherTitle tells a title of fish that were not trolled. One that says what does not belong here,
// "no bottom fish", or "days with no trolling are not in it", is no such.
func otherTitle(text string) bool {
	return len(text) <= longestTitle && words.Otherwise(text) &&
		(!words.Negated(text) || words.NotTrolled(text) && words.Negations(text) < 2)
}

// setApart says of a row that it was not trolled.
func setApart(p *plan.Block, r layout.Row) {
	if p.Apart == nil {
		p.Apart = map[int64]bool{}
	}
	p.Apart[int64(r.Num)] = true
}

// outingOf is the column that names a row's trip, or else its day.
func outingOf(p *plan.Block) *plan.Binding {
	if b := p.Find("trip"); b != nil {
		return b
	}
	return p.Find("date")
}

func cellText(r layout.Row, i int) string {
	if i < 0 || i >= len(r.Cells) {
		return ""
	}
	return strings.TrimSpace(r.Cells[i].Text)
}
