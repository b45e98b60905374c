package meaning

import (
	"errors"
	"fmt"
	"math"
	"slices"
	"strconv"
	"strings"
	"unicode"

	"wakeledger/pipeline/layout"
	"wakeledger/pipeline/phrase"
	"wakeledger/pipeline/plan"
	"wakeledger/pipeline/unit"
	"wakeledger/pipeline/words"
)

// builder makes the plan of one block from what its group was understood as.
type builder struct {
	t     *Lexicon
	plan  *plan.Block
	block *layout.Block
	group *group
	rows  [][]string // the block's cells
	said  *legend
}

func (t *Lexicon) build(g *group, c choice, why string, b *layout.Block, columns []int, l *legend) *builder {
	p := &plan.Block{Sheet: b.Grid.Index, Name: b.Grid.Info.Name, Kind: g.kind, Why: why, Shape: string(b.Shape)}
	for _, r := range b.Heads {
		var texts []string
		for _, cell := range b.Grid.Rows[r].Cells {
			texts = append(texts, cell.Text)
		}
		p.Heads = append(p.Heads, texts)
		p.Row = b.Grid.Rows[r].Num
	}
	x := &builder{t: t, plan: p, block: b, group: g, said: l}
	for _, row := range b.Rows {
		texts := make([]string, len(row.Cells))
		for i, cell := range row.Cells {
			texts[i] = cell.Text
		}
		x.rows = append(x.rows, texts)
	}
	x.bind(c, columns, l)
	if l.figures != nil && len(p.Catch) > 0 {
		p.Figures, p.Alone = l.figures.names, l.figures.alone
		p.Inclusive = p.Inclusive || l.figures.among
	}
	for _, r := range b.Foot {
		if p.Foot == nil {
			p.Foot = map[int64]bool{}
		}
		p.Foot[int64(r.Num)] = true
	}
	return x
}

// bind gives each label of the block the meaning of its group's column.
func (x *builder) bind(c choice, columns []int, l *legend) {
	p := x.plan
	seen := map[*plan.Column]int{}
	keys, _ := keysOf(x.block)
	for i, label := range x.block.Labels {
		first := slices.Index(columns, columns[i]) // of its family
		set := 0
		if first < i {
			set = keys[i].nth - keys[first].nth
		}
		j := columns[i]
		cand := x.group.cands[j][c[j]]
		u := plan.Unknown{Index: label.Col, Heading: headingOf(label)}
		if u.Heading == "" {
			u.Heading = "column " + ColumnName(label.Col)
		}
		switch {
		case cand.column == nil:
			p.Unknown = append(p.Unknown, u)
		case cand.column == asideColumn:
			u.Aside = cand.aside
			p.Unknown = append(p.Unknown, u)
		case cand.column == catchColumn:
			if fate, _, _, ok := words.FateOf(label.Group); ok && len(label.Group) < prose {
				u.Fate = fate.String()
			} else if goneBack(label.Group) {
				u.Fate = words.Released.String()
			}
			if fate, _ := x.t.speciesFate(label.Text); fate != "" {
				u.Fate = fate
			}
			if u.Fate == "" && l.alwaysFree(x.t, label.Text) {
				u.Fate = words.Released.String()
				x.note("%s: let go, as the log says of all of them", label.Text)
			}
			u.Among = x.group.values[j].share("let go among them", letGoAmongThem) > 0
			p.Unknown, p.Catch = append(p.Unknown, u), append(p.Catch, u)
		case cand.column == rodColumn:
			if u.Codes = l.places; u.Codes == nil {
				u.Codes = l.abbreviations()
			}
			p.Unknown, p.Rods = append(p.Unknown, u), append(p.Rods, u)
		case cand.column == spreadColumn:
			p.Unknown, p.Spread = append(p.Unknown, u), append(p.Spread, u)
		case cand.column.Name == "speed_kn" && seen[cand.column] > 0 && x.t.ofBite(label.Text):
			p.Bindings = append(p.Bindings, plan.Binding{Index: label.Col, Heading: u.Heading,
				Column: x.t.named("strike_speed_kn", "quantity"), Unit: cand.unit})
		case first == i && seen[cand.column] > 0 && !x.mayBeSet(c, cand.column) && !x.addsTo(c, cand.column):
			p.Unknown = append(p.Unknown, u)
		default:
			v := x.group.values[j]
			x.tellMended(label, v.Label, cand.column)
			adds := first == i && seen[cand.column] > 0 && x.addsTo(c, cand.column)
			if first == i && !adds {
				set = seen[cand.column]
			}
			p.Bindings = append(p.Bindings, plan.Binding{Index: label.Col, Heading: u.Heading,
				Column: cand.column, Unit: cand.unit,
				Set: set, Adds: adds, Codes: l.codesOf(v, cand.column), Said: l.more(label.Text),
				Guess: x.t.said(label).guess})
			if cand.column.Parse == "event" {
				p.Bindings[len(p.Bindings)-1].Alone = l.alone
			}
			if cand.column.Name == "species" {
				p.Bindings[len(p.Bindings)-1].Sized = v.sized()
			}
			x.paired(&p.Bindings[len(p.Bindings)-1], v)
			seen[cand.column]++
			if slices.Contains(x.group.timed, j) && cand.column.Parse == "story" {
				p.Bindings = append(p.Bindings, plan.Binding{Index: label.Col, Heading: u.Heading,
					Column: x.t.named("start_s", "stretches")})
			}
		}
	}
}

// ofBite reports whether a heading speaks of a bite: "kts when bit".
func (t *Lexicon) ofBite(heading string) bool {
	in, _ := t.concepts.found(normalise(heading))
	return in["bite"]
}

// mayBeSet tells whether the columns of one meaning are those of a first, a second stretch.
func (x *builder) mayBeSet(c choice, column *plan.Column) bool {
	if column.Parse == "story" || column.Parse == "fishlist" || column.Parse == "stretches" || column.Name == "notes" {
		return true
	}
	return slices.Contains(mayRepeat, column.Name) && x.group.sets(x.columnsOf(c, column))
}

// addsTo tells whether the columns of one meaning are parts of one count: the fish lost in several ways.
func (x *builder) addsTo(c choice, column *plan.Column) bool {
	same := x.columnsOf(c, column)
	return !x.group.sets(same) && x.group.waysOf(column.Name, same)
}

// columnsOf are the group's columns of one meaning.
func (x *builder) columnsOf(c choice, column *plan.Column) []int {
	var same []int
	for i, k := range c {
		if x.group.cands[i][k].column == column {
			same = append(same, i)
		}
	}
	return same
}

// headingOf is a label as users see it.
func headingOf(l layout.Label) string {
	if l.Group != "" {
		return l.Group + " " + l.Text
	}
	return l.Text
}

// ColumnName is the letter of a column, or its letters, of its index from 0: A, B, AA.
func ColumnName(col int) string {
	if col < 26 {
		return string(rune('A' + col))
	}
	return string(rune('A'+col/26-1)) + string(rune('A'+col%26))
}

func (x *builder) note(format string, args ...any) {
	if say := fmt.Sprintf(format, args...); !slices.Contains(x.plan.Notes, say) { // a block may be settled anew
		x.plan.Notes = append(x.plan.Notes, say)
	}
}

// often says how many times.
func often(n int) string {
	switch n {
	case 1:
		return "once"
	case 2:
		return "twice"
	}
	return strconv.Itoa(n) + " times"
}

// settle works out what the block's own cells and titles say beyond its columns' meanings.
func (x *builder) settle() {
	x.section()
	x.rests()
	x.ownHours()
	x.unsigned()
	x.onlyUnits(x.rows)
	x.lots()
	x.carried(x.rows)
	x.carriedStop()
	x.carriedHours(x.rows)
	x.filledDown()
	x.caught()
	x.plan.MissedBlank = x.missedBlank()
	x.blankFates()
	x.hoursAlone()
	x.plan.Hashed = hashed(x.block.Grid)
	x.twelve()
	x.laterSets()
	x.timeOff()
	x.nextDays()
	x.outings()
	x.saidAfresh()
	x.plan.Guesses = x.said.bare
	x.fated()
	x.wordDays()
	x.overnights()
	x.twoClients()
	x.onceAnOuting()
	x.numbered()
	x.departs()
	x.yearRows()
	x.wrongYears()
	x.inclusive()
	x.tagged()
	x.noStretches()
	x.noStrikes()
	x.quietRods()
	x.blankRods()
	x.fishInWords()
	if len(x.plan.Spread) > 0 && !(x.plan.Kind == plan.Flat || x.plan.Kind == plan.Legs) {
		x.plan.Spread = nil
	}
}

// quietRods takes a place of the spread on whose line nothing struck all season, and whose cells say so, for a line as
// its neighbours are.
func (x *builder) quietRods() {
	p := x.plan
	if len(p.Rods) < 2 {
		return
	}
	places := slices.Clone(p.Unknown)
	for i := range p.Bindings { // "Flat port" is no port
		if b := p.Bindings[i]; b.Index >= 0 {
			places = append(places, plan.Unknown{Index: b.Index, Heading: b.Heading})
		}
	}
	for _, u := range places {
		if among(p.Rods, u) || among(p.Spread, u) || among(p.Catch, u) || !words.IsPlace(u.Heading) {
			continue
		}
		nothing := 0
		for _, row := range x.rows {
			switch text := cellOf(row, u.Index); {
			case text == "":
			case words.QuietMark(text) || words.Nothing(text):
				nothing++
			default:
				nothing = -len(x.rows)
			}
		}
		beside := slices.ContainsFunc(p.Rods, func(o plan.Unknown) bool {
			return o.Index == u.Index-1 || o.Index == u.Index+1
		})
		if nothing > 0 && (beside || 2*nothing >= len(x.rows)) {
			p.Unknown = slices.DeleteFunc(p.Unknown, func(o plan.Unknown) bool { return o.Index == u.Index })
			p.Bindings = slices.DeleteFunc(p.Bindings, func(b plan.Binding) bool { return b.Index == u.Index })
			u.Codes, u.Aside = p.Rods[0].Codes, ""
			p.Unknown = append(p.Unknown, u)
			p.Rods = append(p.Rods, u)
		}
	}
}

// ownHours keeps the hours of a row of several stretches by name: its clock times tell them.
func (x *builder) ownHours() {
	first, second := x.plan.Find("duration_s"), false
	for _, b := range x.plan.Bindings {
		second = second || b.Set > 0 && b.Column.Name == "start_s"
		if b.Set > 0 && b.Column.Name == "duration_s" {
			return
		}
	}
	if first == nil || !second {
		return
	}
	at := first.Index
	x.plan.Unknown = append(x.plan.Unknown, plan.Unknown{Index: at, Heading: first.Heading,
		Aside: "hours of all its stretches"})
	x.plan.Bindings = slices.DeleteFunc(x.plan.Bindings, func(b plan.Binding) bool { return b.Index == at })
}

// outings tells a block whose rows say when the boat left and was back, twice on some days.
func (x *builder) outings() {
	p := x.plan
	date, leave, back := p.Find("date"), p.Find("depart_s"), p.Find("return_s")
	if p.Kind == plan.Events {
		x.leavings()
		return
	}
	if date == nil || leave == nil || back == nil || p.Binds("trip") || p.Gives("trip") ||
		p.Kind != plan.Flat && p.Kind != plan.Legs {
		return
	}
	last, twice := "", 0
	for _, row := range x.rows {
		day, left := cellOf(row, date.Index), cellOf(row, leave.Index)
		if day == "" || left == "" || cellOf(row, back.Index) == "" {
			continue
		}
		if strings.HasPrefix(last, day+" ") && last != day+" "+left {
			twice++
		}
		last = day + " " + left
	}
	if twice > 0 {
		p.Outings = true
		x.note("%s: the boat left twice on %d days: two trips each", leave.Heading, twice)
	}
}

// numbered tells a table of trips in which nearly each has its number: days without one were not gone.
func (x *builder) numbered() {
	trip := x.plan.Find("trip")
	if trip == nil || x.plan.Kind != plan.Trips || trip.Carried {
		return
	}
	x.plan.Numbered = mostlyNumbered(x.rows, trip.Index)
}

// departs tells a table of stretches or bites in which each departure begins a trip: the last ones
// have no number any more, or nearly all have one.
func (x *builder) departs() {
	trip, left := x.plan.Find("trip"), x.plan.Find("depart_s")
	if trip == nil || left == nil || !trip.Carried || x.plan.Kind == plan.Trips {
		return
	}
	named, blank, since := 0, 0, 0
	for _, row := range x.rows {
		switch {
		case cellOf(row, left.Index) == "" || isTotal(row):
		case cellOf(row, trip.Index) != "":
			named, since = named+1, 0
		default:
			blank, since = blank+1, since+1
		}
	}
	if blank > 0 && named > 1 && (since >= 3 && since == blank || 10*named >= 7*(named+blank)) {
		x.plan.Departs = true
		x.note("%s: %s the boat left without a number: trips of their own", trip.Heading, often(blank))
	}
}

// leavings tells a log of events in which the boat left twice on a day.
func (x *builder) leavings() {
	date, event := x.plan.Find("date"), x.plan.Find("event")
	if date == nil || event == nil || x.plan.Binds("trip") || x.plan.Gives("trip") {
		return
	}
	last, left, home, twice, nights := "", 0, false, 0, 0
	out := false // at the end of the last day
	for _, row := range x.rows {
		if day := cellOf(row, date.Index); day != "" && day != last {
			out = left > 0 && !home
			last, left, home = day, 0, false
		}
		what := words.EntryOf(cellOf(row, event.Index)).Event
		if what == words.EventClear && (left == 0 || home) {
			what = words.EventLeave
		}
		switch what {
		case words.EventLeave:
			home, out = false, false
			if left++; left == 2 {
				twice++
			}
		case words.EventWeigh:
			home, out, left = false, false, max(left, 1)
		case words.EventHome, words.EventDrop:
			if home = true; out && left == 0 {
				nights++
			}
			out = false
		}
	}
	if x.plan.Outings = twice+nights > 0; twice > 0 {
		x.note("%s: the boat left twice on %d days: two trips each", event.Heading, twice)
	}
	if nights > 0 {
		x.note("%s: %s the boat was back the day after it left: one trip each", event.Heading, often(nights))
	}
}

// timeOff takes a row's own hours for true where they are less than its clock times, in a
// block whose other rows agree: somebody took time off, and did so with care.
func (x *builder) timeOff() {
	s, e, h := x.plan.Find("start_s"), x.plan.Find("end_s"), x.plan.Find("duration_s")
	if s == nil || e == nil || h == nil || x.plan.Binds("stopped_s") {
		return
	}
	same, less, most := 0, 0, 0.0
	for _, row := range x.block.Rows {
		from, okA := clock(x.group, row, s.Index)
		to, okB := clock(x.group, row, e.Index)
		own := x.ownHour(row, h)
		if !okA || !okB || math.IsNaN(own) {
			continue
		}
		by := math.Mod(float64(to-from)/3600+24, 24)
		switch {
		case math.Abs(by-own) < 0.06:
			same++
		case own < by && own > 0:
			less++
			most = math.Max(most, by-own)
		default:
			return
		}
	}
	if less > 0 && same >= 4*less {
		x.plan.OwnHours = true
		x.note("%s: %d rows have less than their clock times, %s h at most: taken for time off", h.Heading, less,
			short(math.Round(most*100)/100))
	}
}

// ownHour is a row's cell of hours; NaN where it has none.
func (x *builder) ownHour(row layout.Row, h *plan.Binding) float64 {
	if h.Index >= len(row.Cells) {
		return math.NaN()
	}
	text := row.Cells[h.Index].Text
	from := h.Unit
	if from == "" {
		from = unit.Hour
	}
	q, err := unit.ParseQuantity(text, unit.Duration, from, unit.MarkOf(text))
	if err != nil {
		return math.NaN()
	}
	v, err := q.In(unit.Hour)
	if err != nil {
		return math.NaN()
	}
	return v
}

// hashed tells a log in which # begins comments: a few rows start so, one of
// them with words after it. In a log that numbers its rows #1, #2, #3 most do.
func hashed(g *layout.Grid) bool {
	words, numbers, filled := 0, 0, 0
	for _, row := range g.Rows {
		c := ""
		if len(row.Cells) > 0 {
			c = row.Cells[0].Text
		}
		rest, hash := strings.CutPrefix(c, "#")
		switch {
		case c == "":
		case !hash:
			filled++
		case rest == "" || rest[0] < '0' || rest[0] > '9':
			words++
		default:
			numbers++
		}
	}
	return words > 0 && 3*numbers < filled
}

// section takes a title such as "Tag & release" for the fate of each row's fish.
func (x *builder) section() {
	if x.plan.Binds("outcome", "kept") || len(x.block.Above) == 0 || x.plan.Binds("start_s", "duration_s") ||
		x.plan.Kind == plan.Trips || x.plan.Kind == plan.Lines {
		return
	}
	title := x.block.Above[0]
	if fate, _, _, ok := words.FateOf(title); ok && fate == words.Released && len(title) < 40 &&
		!words.Negated(title) && !phrase.KeptUnlessTold(title) { // "kept unless the remark says let go"
		x.give(title, x.t.named("kept", "kept"), "released", false)
	}
}

// saysUsual tells a text of the speed or the lines that are usual: "6-7 kts, every trip" names no trip.
func saysUsual(text string) bool {
	said := phrase.Settings(text)
	return said.Usual && len(said.Speeds)+len(said.Lines) > 0
}

func (x *builder) give(label string, c *plan.Column, text string, usual bool) {
	if c == nil || !c.In(x.plan.Kind) || x.plan.Gives(c.Name) || !usual && x.plan.Binds(c.Name) ||
		c.Name == "trip" && (x.countsTrips(text) || saysUsual(text)) {
		return
	}
	x.plan.Given = append(x.plan.Given, plan.Given{Heading: label, Column: c, Text: text, Default: usual})
	if usual {
		x.note("%s %s is usual, as the log says: taken where a row says nothing", label, text)
	} else {
		x.note("%s %q stands once for all rows", c.Name, text)
	}
}

// longestTrip is the most days that one trip may last, and longestLull the most from one of its
// days with lines in to the next.
const longestTrip, longestLull = 21, 5

// countsTrips tells a number that is how many trips the rows are, and not the name of one: their
// days are as many, or lie too far apart for one trip.
func (x *builder) countsTrips(text string) bool {
	n, err := strconv.Atoi(text)
	date := x.plan.Find("date")
	if err != nil || date == nil || date.Column.Parse != "date" {
		return false
	}
	var days []unit.Date
	for _, d := range x.daysOf(date.Index) {
		if d != 0 {
			days = append(days, d)
		}
	}
	slices.Sort(days)
	days = slices.Compact(days)
	if len(days) < 3 {
		return false
	}
	ashore := unit.Date(0)
	for i := range days[1:] {
		ashore = max(ashore, days[i+1]-days[i])
	}
	return len(days) == n || days[len(days)-1]-days[0] > longestTrip || ashore > longestLull
}

// statesDay tells a text that is a whole date, with its year, even if the order
// of its day and month is open.
func statesDay(text string) bool {
	m, err := unit.ParseMoment(text, unit.OrderUnknown)
	return err == nil && m.HasDate || errors.Is(err, unit.ErrAmbiguousDate)
}

// unsigned keeps coordinates by name whose degrees and minutes have neither a sign nor a
// letter, here or in the heading: 88 22.0 lies on both sides of Greenwich.
func (x *builder) unsigned() {
	open := func(b plan.Binding) bool {
		if b.Column.Parse != "latitude" && b.Column.Parse != "longitude" {
			return false
		}
		w := strings.Fields(normalise(b.Heading))
		if len(w) == 0 || slices.Contains([]string{"n", "s", "e", "w", "north", "south", "east", "west"}, w[len(w)-1]) {
			return false
		}
		cells := column(x.rows, b.Index)
		return len(cells) > 0 && !slices.ContainsFunc(cells, func(c string) bool {
			return strings.ContainsAny(c, "NSEWnsew-\u2212") ||
				len(strings.FieldsFunc(c, func(r rune) bool { return strings.ContainsRune(" °º'′:", r) })) < 2
		})
	}
	for _, b := range x.plan.Bindings {
		if open(b) {
			x.plan.Unknown = append(x.plan.Unknown, plan.Unknown{Index: b.Index, Heading: b.Heading, Aside: "position"})
			x.note(
				"%s: degrees and minutes without a sign or a letter are kept by name: head the column %s N, S, E or W",
				b.Heading, b.Heading)
		}
	}
	x.plan.Bindings = slices.DeleteFunc(x.plan.Bindings, open)
}

// caught tells what became of fish that are counted by species.
func (x *builder) caught() {
	p := x.plan
	x.othersThan()
	if len(p.Catch) == 0 {
		return
	}
	x.others()
	x.freedBeside()
	if p.Binds("landed_n", "kept_n") {
		// these count them already, but for what a group says became of some
		released := p.Binds("landed_n") && !p.Binds("released_n", "kept_n")
		p.Catch = slices.DeleteFunc(p.Catch, func(u plan.Unknown) bool { return !released || u.Fate != "released" })
		p.Inclusive = p.Inclusive || len(p.Catch) > 0
		p.Caught = true
		return
	}
	said := append([]string{p.Name}, x.block.Above...)
	for _, c := range p.Catch {
		said = append(said, c.Heading)
	}
	p.KeptUnless = x.said.kept
	p.Caught = len(p.Figures) > 0 || p.Binds("missed_n", "lost_n", "hooked_n", "strikes_n") ||
		!slices.ContainsFunc(p.Catch, func(u plan.Unknown) bool { return u.Fate == "" }) ||
		slices.ContainsFunc(said, func(s string) bool {
			in, _ := x.t.concepts.found(normalise(s))
			return in["land"] || in["keep"]
		})
	p.CatchBlank = x.blankIsNone()
	w := x.weighCatch()
	p.Inclusive = p.Inclusive || w.with > w.without || p.Binds("released_n") && w.without == 0 &&
		slices.ContainsFunc(x.block.Above, x.t.includesLetGo)
}

// freedBeside adds fish of a species that were all let go to a column of others that were, "Small mahi let go": more of
// them than it counts on some row are not among these.
func (x *builder) freedBeside() {
	p := x.plan
	released := p.Find("released_n")
	if released == nil {
		return
	}
	beside := func(u plan.Unknown) bool {
		return u.Fate == words.Released.String() && slices.ContainsFunc(x.rows, func(row []string) bool {
			n, _ := number(cellOf(row, u.Index))
			all, _ := number(cellOf(row, released.Index))
			return n > all
		})
	}
	column := released.Column
	for _, u := range p.Catch {
		if beside(u) {
			more := plan.Binding{Index: u.Index, Heading: u.Heading, Column: column, Adds: true}
			p.Bindings = append(p.Bindings, more)
		}
	}
	p.Catch = slices.DeleteFunc(p.Catch, beside)
	p.Unknown = slices.DeleteFunc(p.Unknown, beside)
}

// weighCatch holds counts by species against the fish that another column says were let go:
// with them, or without, the row's strikes add up; fewer than were let go cannot have these in them.
func (x *builder) weighCatch() (v landedVotes) {
	if len(x.plan.Figures) > 0 {
		return x.weighFigures()
	}
	released := x.plan.Find("released_n")
	if released == nil {
		return v
	}
	get := func(row []string, name string) int {
		sum := 0
		for _, b := range x.plan.Bindings {
			if b.Column.Name != name || b.Set > 0 {
				continue
			}
			n, ok := number(cellOf(row, b.Index))
			if named, fish := phrase.CountFish(cellOf(row, b.Index)); !ok && fish {
				n = float64(named)
			}
			sum += int(n)
		}
		return sum
	}
	for _, row := range x.rows {
		r := get(row, "released_n")
		if r == 0 {
			continue
		}
		v.both++
		sum := 0
		for _, c := range x.plan.Catch {
			n, _ := number(cellOf(row, c.Index))
			sum += int(n)
		}
		if sum < r {
			v.without += surely
		}
		if !x.plan.Binds("strikes_n", "hooked_n") {
			continue
		}
		sum += get(row, "lost_n")
		all := get(row, "hooked_n")
		if !x.plan.Binds("hooked_n") {
			all = get(row, "strikes_n") - get(row, "missed_n")
		}
		switch {
		case all > 0 && all >= sum && all < sum+r: // there is no room for them beside
			v.with += surely
		case all == sum+r: // or some were missed, where no column says so
			v.without++
		}
	}
	return v
}

// blankIsNone tells a table that never writes a nought: of several species only those
// that were caught have a number.
func (x *builder) blankIsNone() bool {
	beside := false
	for _, row := range x.rows {
		filled := 0
		for _, c := range x.plan.Catch {
			switch cell := cellOf(row, c.Index); {
			case cell != "" && strings.Trim(cell, "0") == "":
				return false
			case cell != "" && cell != "-":
				filled++
			}
		}
		beside = beside || filled > 0 && filled < len(x.plan.Catch)
	}
	return beside
}

// missedBlank tells a log that writes no nought under the bites that were missed: a blank there is one.
func (x *builder) missedBlank() bool {
	some := false
	for _, b := range x.plan.Bindings {
		if b.Column.Name != "missed_n" {
			continue
		}
		for _, row := range x.rows {
			cell := cellOf(row, b.Index)
			if n, ok := number(cell); ok && n == 0 || words.Nothing(cell) || words.QuietMark(cell) {
				return false
			}
			some = some || cell != ""
		}
	}
	return some
}

// twelve tells clock times of twelve hours that say neither am nor pm: none is past
// noon, and some end before they start.
func (x *builder) twelve() {
	g := x.group
	s, e := x.plan.Find("start_s"), x.plan.Find("end_s")
	if s == nil || e == nil {
		return
	}
	sure, all, back := 0, 0, false
	for _, row := range x.block.Rows {
		a, okA := clock(g, row, s.Index)
		b, okB := clock(g, row, e.Index)
		for _, i := range []int{s.Index, e.Index} {
			if c, ok := clock(g, row, i); ok {
				all++
				if c >= 13*3600 || saysHalf(row.Cells[i]) {
					sure++
				}
			}
		}
		back = back || okA && okB && b < a
	}
	x.plan.Twelve = all > 0 && back && 5*sure < all
	if x.plan.Afternoon = x.afternoons(s.Index, e.Index) || x.neverPastOne(s.Index, e.Index); x.plan.Afternoon {
		x.note("%s: times of twelve hours without am or pm: too many stretches would else go on into the next night",
			e.Heading)
	}
}

// fewAfternoons is how many stretches must end in the afternoon by a clock of twelve hours before all do.
const fewAfternoons = 4

// afternoons tells ends that are of twelve hours though the file knows them as times: most stretches
// begin in the morning and would end in the small hours of the next day, none begins in the evening,
// and half a day earlier each is of usual length.
func (x *builder) afternoons(start, end int) bool {
	both, next := 0, 0
	for _, row := range x.block.Rows {
		a, okA := clock(x.group, row, start)
		b, okB := clock(x.group, row, end)
		if !okA || !okB {
			continue
		}
		both++
		switch {
		case a < 3*3600 || a >= 13*3600:
			return false
		case b < a && b+12*3600 <= a:
			return false
		case b < a:
			next++
		}
	}
	return next >= fewAfternoons && 2*next > both
}

// neverPastOne tells ends that are of twelve hours because no clock of a long log is past one in the afternoon:
// stretches end in the small hours, before they begin, and none from one o'clock to midnight. Half a day earlier
// each is of usual length.
func (x *builder) neverPastOne(start, end int) bool {
	next := 0
	for _, row := range x.block.Rows {
		a, okA := clock(x.group, row, start)
		b, okB := clock(x.group, row, end)
		if okA && a >= 13*3600 || okB && b >= 13*3600 || okA && okB && b < a && b+12*3600 <= a {
			return false
		}
		if okA && okB && b < a {
			next++
		}
	}
	return next >= fewAfternoons
}

func clock(g *group, row layout.Row, i int) (int, bool) {
	if i >= len(row.Cells) || len(g.values) == 0 {
		return 0, false
	}
	v := g.values[0] // of a group of blocks, the columns may be others
	if k := slices.IndexFunc(g.values, func(v *Values) bool { return v.Label.Col == i }); k >= 0 {
		v = g.values[k]
	}
	return v.clockOf(row.Cells[i])
}

// saysHalf tells a clock time that says which half of the day it is of: by am or pm, by
// a nought before its hour, or because the file knows it as a time.
func saysHalf(c layout.Cell) bool {
	if c.Look == layout.Clock && strings.IndexFunc(c.Text,
		func(r rune) bool { return !unicode.IsDigit(r) && r != '.' }) < 0 {
		return true
	}
	return strings.ContainsAny(c.Text, "apAP") || strings.HasPrefix(c.Text, "0")
}

// inclusive tells whether landed counts the fish that were let go too, where both are counted.
func (x *builder) inclusive() {
	p := x.plan
	l, r := p.Find("landed_n"), p.Find("released_n")
	if l == nil || r == nil || p.Binds("kept_n") {
		return
	}
	w := x.weighLanded(l, r)
	ofThose, _ := x.t.concepts.found(normalise(r.Heading + " " + r.Said))
	parts, _ := x.t.partsIn(l.Heading)
	said := ofThose["ofthose"] || ofThose["including"] && !ofThose["land"] || slices.Contains(parts, "release") ||
		slices.ContainsFunc(x.block.Above, x.t.includesLetGo)
	p.Inclusive = p.Inclusive || w.with > w.without || said && w.without == 0
	if p.Inclusive {
		x.note("%s counts the fish let go too", l.Heading)
	}
}

// surely is what a row weighs that can be read in one way alone, beside one that only adds up so.
const surely = 10

// landedVotes are rows that say whether landed counts the released.
type landedVotes struct {
	with, without int
	both          int // rows in which some were released
}

// weighLanded holds landed and released against hooked, lost and each other.
func (x *builder) weighLanded(l, r *plan.Binding) landedVotes {
	var v landedVotes
	get := func(row []string, name string) (sum int, told bool) {
		for _, b := range x.plan.Bindings {
			if b.Column.Name != name || b.Set > 0 {
				continue
			}
			n, ok := number(cellOf(row, b.Index))
			sum, told = sum+int(n), told || ok
		}
		return sum, told
	}
	rows, with, without := 0, 0, 0 // rows of a whole account, and those that come out even
	for _, row := range x.rows {
		landed, _ := get(row, l.Column.Name)
		released, ok := get(row, r.Column.Name)
		if total, parts := x.account(func(name string) int { n, _ := get(row, name); return n }); total > 0 {
			rows++
			with += truth(total == parts+landed)
			without += truth(total == parts+landed+released)
		}
		if !ok || released == 0 {
			continue
		}
		v.both++
		hooked, told := get(row, "hooked_n")
		if !told {
			hooked, told = get(row, "strikes_n")
		}
		lost, _ := get(row, "lost_n")
		switch {
		case released > landed:
			v.without += surely
		case told && landed+released+lost > hooked:
			v.with += surely
		}
	}
	if rows >= fewAccounts {
		v.with += surely * truth(with == rows)
		v.without += surely * truth(without == rows)
	}
	for _, b := range x.plan.Bindings {
		if b.Index >= 0 && b.Set == 0 && b.Column.Parse == "fishlist" {
			with, without := x.listedIn(b.Index, l.Index, r.Index)
			v.with += surely * truth(with)
			v.without += surely * truth(without)
		}
	}
	return v
}

// listedIn holds counts of fish landed and let go against the fish that a column of words names, where it names
// all of them on each row: "2, 1, YFT 18 kg, YFT 12 kg let go" counts the one let go among the landed.
func (x *builder) listedIn(index, landed, released int) (with, without bool) {
	rows, either := 0, 0
	with, without = true, true
	for _, row := range x.rows {
		all, _ := number(cellOf(row, landed))
		freed, _ := number(cellOf(row, released))
		kept, let := 0, 0
		for _, b := range phrase.FishList(cellOf(row, index), phrase.Defaults{}) {
			switch {
			case b.Name == "" || b.Fate == words.Lost || b.Fate == words.Missed:
			case b.Fate == words.Released:
				let += max(b.N, 1)
			default:
				kept += max(b.N, 1)
			}
		}
		if kept+let == 0 {
			continue
		}
		rows++
		either += truth(let > 0)
		with = with && let == int(freed) && kept+let == int(all)
		without = without && let == int(freed) && kept == int(all)
	}
	return with && rows >= fewAccounts && either > 0, without && rows >= fewAccounts && either > 0
}

// fewAccounts is how many rows of a whole account show at the least how it is kept.
const fewAccounts = 3

func truth(ok bool) int {
	if ok {
		return 1
	}
	return 0
}

// account is a row's count of all bites, or of all fish hooked, and of those among them that did not come to the boat,
// where columns count them all; 0 where they do not.
func (x *builder) account(of func(name string) int) (total, gone int) {
	switch p := x.plan; {
	case p.Binds("strikes_n") && p.Binds("missed_n") && p.Binds("lost_n"):
		return of("strikes_n"), of("missed_n") + of("lost_n")
	case p.Binds("hooked_n") && p.Binds("lost_n"):
		return of("hooked_n"), of("lost_n")
	}
	return 0, 0
}

// tagged takes T in a column of kept fish, beside Y and N, for tagged.
func (x *builder) tagged() {
	b := x.plan.Find("kept")
	if b == nil || b.Column.Parse != "kept" {
		return
	}
	seen := map[string]bool{}
	for _, c := range column(x.rows, b.Index) {
		seen[strings.ToLower(c)] = true
	}
	x.plan.Tagged = seen["t"] && seen["y"] && seen["n"]
}

// LandedOpen tells whether nothing in the block's rows says if landed counts the fish let go.
func (u *Understood) LandedOpen() bool {
	l, r := u.Plan.Find("landed_n"), u.Plan.Find("released_n")
	if r == nil || u.Plan.Inclusive || u.b.said.without {
		return false
	}
	var w landedVotes
	switch {
	case l != nil:
		w = u.b.weighLanded(l, r)
	case len(u.Plan.Catch) > 0:
		w = u.b.weighCatch()
	}
	return w.both > 0 && w.with == w.without
}

// Sold tells a block about fish that were sold: one of its columns is a price.
func (u *Understood) Sold() bool {
	return u.Plan.Binds("species") && slices.ContainsFunc(u.Plan.Unknown,
		func(x plan.Unknown) bool { return x.Aside == "money" }) && !u.Plan.Binds("date", "time_s")
}

// Money tells a block that is about money or fuel: two of its columns are.
func (u *Understood) Money() bool {
	n := 0
	for _, x := range u.Plan.Unknown {
		if x.Aside == "money" || x.Aside == "engine" {
			n++
		}
	}
	return n > 1
}

// List tells a block that lists things, with neither a day nor a time, and is no record.
func (u *Understood) List() bool { return u.b.group.list }
