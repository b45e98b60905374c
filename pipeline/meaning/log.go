package meaning

import (
	"maps"
	"math"
	"regexp"
	"slices"
	"sort"
	"strconv"
	"strings"

	"wakeledger/pipeline/layout"
	"wakeledger/pipeline/phrase"
	"wakeledger/pipeline/plan"
	"wakeledger/pipeline/unit"
	"wakeledger/pipeline/words"
)

// Understood is a block of a log with its plan.
type Understood struct {
	Plan  *plan.Block
	Block *layout.Block
	Proof bool // worked out from the log's other cells: held against them, no data
	told  bool // a form whose remarks stand for the tables of its sheet

	b       *builder
	columns []int
	choice  choice
	numbers [][]float64 // see rowNumbers
	Again   Again       // rows that say their hours again
	Beside  Again       // rows of lures that were out together
	Men     Again       // rows of men who were on one boat
	Listed  Listed      // a column whose cells name several lures
	Under   *UnderDays  // rows of lines under those of their days; nil where there are none
}

// Log is a log, understood.
type Log struct {
	File   string
	Sheets []*layout.Sheet
	Blocks []*Understood   // in the order of the log
	Texts  []string        // what stands outside of its blocks
	pages  []page          // the same, by sheet
	Agreed []string        // what of the log agrees with its own sums
	Keys   []*layout.Sheet // sheets that say what headings and codes of the others mean
	NoYear *NoYear         // days whose year nothing says; nil where there are none
	Score  *Score          // figures of which nothing says what they count; nil where there are none

	lexicon *Lexicon
	legend  *legend
	groups  []*group
	open    []Open
	opened  bool // open is worked out
}

// Infer works out what a log's blocks mean. said gives what a user says of the blocks
// of a sheet whose heading's last row has a number.
func (t *Lexicon) Infer(file string, sheets []*layout.Sheet, said func(sheet string, row int) Said, off Switches) *Log {
	l := &Log{File: file, Sheets: sheets, lexicon: t}
	var blocks []*layout.Block
	told, changed := map[*layout.Block]string{}, map[*layout.Block]bool{}
	l.Keys = keySheets(sheets)
	for _, s := range sheets {
		if slices.Contains(l.Keys, s) {
			continue
		}
		before := len(l.Texts)
		for i := range s.Blocks {
			stripOnward(&s.Blocks[i], s)
		}
		for _, n := range s.Notes {
			l.Texts = append(l.Texts, n.Text)
		}
		for i := range s.Blocks {
			b := &s.Blocks[i]
			stripYears(b)
			stripMonths(b)
			stripTotals(b)
			if said := t.monthDays(b, false); said != "" {
				stripFoot(b)
				told[b] = said
			}
			said := weekend(b)
			if said == "" {
				years, _ := statedYears(append([]string{s.Grid.Info.Name, file}, b.Above...)...)
				said = weekendsBeside(b, years)
			}
			if said != "" {
				told[b] = said
			}
			if said := t.changes(b); said != "" {
				told[b], changed[b] = said, true
			}
			l.Texts = append(append(l.Texts, b.Above...), keyBeside(b, sheets)...)
			l.Texts = append(l.Texts, textsUnder(b)...)
			if b.Shape == layout.Form {
				l.Texts = append(l.Texts, pairTexts(b)...)
			}
			if len(b.Rows) > 0 {
				blocks = append(blocks, b)
			}
		}
		l.pages = append(l.pages, page{s.Grid.Index, l.Texts[before:len(l.Texts):len(l.Texts)]})
	}
	t.sisterDays(blocks, told)
	blocks = pages(blocks)
	l.legend = readLegend(l.Texts)
	l.legend.figures = t.figuresIn(l.Texts)
	if l.legend.figures == nil && t.figuresOver(blocks) == nil {
		l.Score, l.legend.figures = t.score(blocks)
	}
	for _, b := range blocks {
		t.partColumns(b, l.legend.figures)
	}
	if l.legend.figures == nil {
		l.legend.figures = t.figuresOver(blocks)
	}
	for _, s := range l.Keys {
		l.legend.addKey(s, sheets)
	}
	l.legend.toldApart(blocks)
	l.legend.toldOfHeadings(blocks)
	var columns map[*layout.Block][]int
	l.groups, columns = grouped(blocks, t.says, t.means)
	for _, g := range l.groups {
		c, why := g.infer(t, l.legend, said(g.blocks[0].Grid.Info.Name, headRow(g.blocks[0])), off)
		for _, b := range g.blocks {
			x := t.build(g, c, why, b, columns[b], l.legend)
			if told[b] != "" {
				x.note("%s", told[b])
			}
			if changed[b] {
				x.hold(nil, false)
			}
			l.Blocks = append(l.Blocks, &Understood{Plan: x.plan, Block: b, b: x, columns: columns[b],
				choice: c, Proof: isProof(b)})
		}
	}
	l.summed(columns)
	l.repeated()
	l.excerpts()
	l.order()
	l.settle()
	l.methodWords()
	l.untrolled()
	l.otherOutings()
	l.ashore()
	l.apart()
	return l
}

func headRow(b *layout.Block) int {
	if len(b.Heads) == 0 {
		return 0
	}
	return b.Grid.Rows[b.Heads[len(b.Heads)-1]].Num
}

func pairTexts(b *layout.Block) []string {
	var out []string
	for i, l := range b.Labels {
		if len(b.Rows) > 0 && i < len(b.Rows[0].Cells) {
			out = append(out, l.Text+": "+b.Rows[0].Cells[i].Text)
		}
	}
	return out
}

// order puts the blocks back into the order of the log.
func (l *Log) order() {
	at := map[*layout.Block]int{}
	n := 0
	for _, s := range l.Sheets {
		for i := range s.Blocks {
			at[&s.Blocks[i]] = n
			n++
		}
	}
	sort.SliceStable(l.Blocks, func(i, j int) bool { return at[l.Blocks[i].Block] < at[l.Blocks[j].Block] })
}

var worksOut = regexp.MustCompile(`(?i)!|^=?\s*(sum\w*|count\w*|max|min|average\w*|subtotal)\(`)

// conditional is a sum or a count of the rows that fulfil conditions.
var conditional = regexp.MustCompile(`(?i)^=?\s*(sum|count|average|max|min)ifs?\(`)

// isProof tells a block of numbers that are worked out from other cells: most from another sheet or
// of sums, or all, where what is not is worked out from these: =B4+C4, =B6/B4. One column may be
// typed: what the sums of each row are for, as a speed is; or two, from and to, where the sums name both.
func isProof(b *layout.Block) bool {
	numbers, formulas, worked, bounded := 0, 0, 0, 0
	typed := map[int]bool{} // columns with a cell that is not worked out
	for _, r := range b.Rows {
		for i, c := range r.Cells {
			if c.Look != layout.Blank && c.Formula == "" {
				typed[i] = true
			}
			if c.Look == layout.Number || c.Look == layout.Duration {
				numbers++
				if c.Formula != "" {
					worked++
				}
				if worksOut.MatchString(c.Formula) {
					formulas++
				}
				if conditional.MatchString(c.Formula) && strings.Contains(c.Formula, "!") {
					bounded++
				}
			}
		}
	}
	limits := len(typed) == 2 && 3*bounded >= numbers // so many between 7 and 8 knots, on another sheet
	all := worked == numbers || len(typed) == 1 && worked > 0 || limits
	return numbers > 0 && (10*formulas >= 6*numbers || all && 3*formulas >= numbers)
}

// settle works out what holds between the blocks of the log.
func (l *Log) settle() {
	for _, u := range l.Blocks {
		u.b.settle()
		u.codedAshore(l.legend)
		if u.sales() || u.upkeep() {
			u.Plan.Kind = ""
		}
	}
	l.held()
	l.parts()
	l.outingNumbers()
	l.rowNumbers()
	l.linked()
	l.sameTrips()
	l.afterwards()
	l.tripLetters()
	l.laterDays()
	l.corrections()
	l.halves()
	l.catalogues()
	l.sheetNames()
	l.weekdays()
	l.forms()
	l.days()
	l.wrongSheetYears()
	l.weekdaysOn()
	l.clients()
	l.besideOnly()
	l.boatedAlone()
	l.usual()
	l.years()
	l.lureLists()
	l.hoursAgain()
	l.ranks()
	l.afternoons()
	l.underDays()
}

// Data are the blocks whose rows are read.
func (l *Log) Data() []*Understood {
	var out []*Understood
	for _, u := range l.Blocks {
		if u.Plan.Kind != "" && !u.Proof {
			out = append(out, u)
		}
	}
	return out
}

// boatedAlone takes fish that are counted by species for fish at the boat, where the log says that it has no others.
func (l *Log) boatedAlone() {
	alone := slices.ContainsFunc(l.Texts, func(text string) bool {
		said, _ := words.UnwrittenIn(text)
		return said.Missed && said.Hooked
	})
	for _, u := range l.Data() {
		u.Plan.Caught = u.Plan.Caught || alone && len(u.Plan.Catch) > 0
	}
}

// sales tells a list of fish that were sold: a price, and neither a day nor a time.
func (u *Understood) sales() bool {
	p := u.Plan
	return p.Kind == plan.Fish && !p.Binds("date", "trip", "time_s", "length_cm") &&
		slices.ContainsFunc(p.Unknown, func(x plan.Unknown) bool { return x.Aside == "money" })
}

// fewColumns is how many columns a book of one expense has at the most beside its day.
const fewColumns = 4

// upkeep tells a list of days on which money was spent or the engine seen to, and no more.
func (u *Understood) upkeep() bool {
	spent := u.Money() || len(u.Plan.Unknown) <= fewColumns &&
		slices.ContainsFunc(u.Plan.Unknown, func(x plan.Unknown) bool {
			return x.Aside == "money" || x.Aside == "engine"
		})
	dated := u.Plan.Binds("date") // of a trip by its number alone it tells nothing that others do not
	return u.Plan.Kind == plan.Trips && spent && !slices.ContainsFunc(u.Plan.Bindings, func(b plan.Binding) bool {
		return b.Column.Name != "date" && b.Column.Name != "notes" && (b.Column.Name != "trip" || dated && u.worded(b))
	})
}

// worded tells a column of a block that the words of its heading speak for, and not its cells alone.
func (u *Understood) worded(b plan.Binding) bool {
	i := slices.IndexFunc(u.Block.Labels, func(l layout.Label) bool { return l.Col == b.Index })
	if i < 0 {
		return false
	}
	j := u.columns[i]
	return !u.b.group.cands[j][u.choice[j]].voted("no word")
}

// mayBeGiven are the columns that a form may set for the tables of its sheet.
var mayBeGiven = []string{"trip", "boat", "captain", "port", "zone", "date"}

// forms gives what a sheet's form says to the tables of that sheet. A form that tells
// of no effort and no strikes is no more than that.
func (l *Log) forms() {
	for _, f := range l.Blocks {
		if f.Block.Shape != layout.Form {
			continue
		}
		p := f.Plan
		for _, u := range l.Blocks {
			if u == f || u.Plan.Sheet != p.Sheet || u.Block.Shape == layout.Form {
				continue
			}
			for _, b := range p.Bindings {
				text := f.text(b.Index)
				switch {
				case text == "" || b.Column.Parse == "date" && !dayLike(text):
				case b.Column.Name == "trip" && plural(normalise(b.Heading)): // how many there were
				case b.Column.Name == "trip" && l.copied(f, text):
					u.b.give(b.Heading, b.Column, text+" ("+p.Name+")", false)
				case slices.Contains(mayBeGiven, b.Column.Name):
					u.b.give(b.Heading, b.Column, text, false)
					l.wholeLog(f, b, text)
				case (b.Column.Name == "speed_kn" || b.Column.Name == "lines_out") && !p.Binds("start_s", "duration_s"):
					u.b.give(b.Heading, b.Column, text, true)
				}
			}
		}
		l.toldInRemarks(f)
		effort := p.Binds("start_s", "duration_s", "line_hours") || p.Binds(countNames...)
		if !effort || !p.Binds("date", "trip") && !p.Gives("date") {
			p.Kind = ""
		}
	}
	l.oneBoat()
}

// oneBoat gives the one boat that forms of the log name to its lists of days that name none: a book
// of petrol is of the same boat.
func (l *Log) oneBoat() {
	boats, of := map[string]bool{}, plan.Given{}
	for _, u := range l.Data() {
		if u.Plan.Binds("boat") {
			return
		}
		for _, g := range u.Plan.Given {
			if g.Column.Name == "boat" {
				boats[strings.ToLower(g.Text)], of = true, g
			}
		}
	}
	if len(boats) != 1 {
		return
	}
	for _, u := range l.Data() {
		if u.Plan.Kind != plan.Trips {
			continue
		}
		u.b.give(of.Heading, l.lexicon.named("boat", ""), of.Text, false)
	}
}

// wholeLog gives the boat, or its captain or port, that one form names and no other part of the
// log, to the tables of the other sheets too: a log that names one boat is of that boat.
func (l *Log) wholeLog(form *Understood, b plan.Binding, text string) {
	name := b.Column.Name
	if name != "boat" && name != "captain" && name != "port" {
		return
	}
	others := func(u *Understood) bool {
		return u != form && (u.Plan.Binds(name) || slices.ContainsFunc(u.Plan.Given,
			func(g plan.Given) bool { return g.Column.Name == name && g.Text != text }))
	}
	if slices.ContainsFunc(l.Blocks, others) {
		return
	}
	for _, u := range l.Data() {
		if u != form && !u.Plan.Gives(name) {
			u.b.give(b.Heading, b.Column, text, false)
		}
	}
}

func dayLike(text string) bool { return isDate(layout.Cell{Text: text}) }

func (u *Understood) text(col int) string {
	if len(u.b.rows) == 0 {
		return ""
	}
	return cellOf(u.b.rows[0], col)
}

// days gives tables without a day that of their sheet's name or title.
func (l *Log) days() {
	date, trip := l.lexicon.named("date", "date"), l.lexicon.named("trip", "")
	named := map[int]string{}
	l.outingTitles(date, trip)
	for _, u := range l.Data() {
		p := u.Plan
		if p.Binds("date") || p.Gives("date") {
			continue
		}
		if day := dayOf(u.Block.Grid.Info.Title()); day != "" {
			u.b.give("sheet name", date, day, false)
		} else if day := titleDay(u.Block.Above); day != "" {
			u.b.give("title", date, day, false)
		} else if !p.Binds("trip") && !p.Gives("trip") {
			named[p.Sheet] = p.Name
		}
	}
	if len(named) < 2 {
		return
	}
	for _, u := range l.Data() {
		if name := named[u.Plan.Sheet]; name != "" && !u.Plan.Binds("date", "trip") && u.b.group.sheets() > 1 {
			u.b.give("sheet name", trip, name, false)
		}
	}
}

// dayOf is a text that is a day, with or without its year, or the first of the days that it names.
func dayOf(text string) string {
	if statesDay(text) || yearless(text) {
		return text
	}
	if first, _, ok := unit.DaySpan(text); ok {
		return first
	}
	return ""
}

// beforeDay are the words that a title may have before the day of its table.
var beforeDay = map[string]bool{"trip": true, "day": true, "date": true, "outing": true, "fishing": true, "log": true,
	"of": true, "for": true, "on": true, "no": true}

// titleDay finds the one day that titles above a table begin with, as in "Trip of 3 June 2026, Marram". Where
// titles number the outings, the nearest of them says it.
func titleDay(above []string) string {
	if _, day, ok := outingAbove(above); ok {
		return day
	}
	day := ""
	for _, text := range above {
		w := strings.Fields(text)
		i := 0
		for i < len(w) && beforeDay[strings.ToLower(strings.Trim(w[i], ":-"))] {
			i++
		}
		for n := min(5, len(w)-i); n >= 1; n-- {
			s := strings.Trim(strings.Join(w[i:i+n], " "), " ,;:-–")
			if !statesDay(s) {
				continue
			}
			if day != "" && s != day {
				return ""
			}
			day = s
			break
		}
	}
	return day
}

// ranks settles, where several blocks tell of the same hours or strikes, which one is
// believed: the finer one for hours; counts, then rows of strikes, then prose.
func (l *Log) ranks() {
	data := l.Data()
	l.linesOf(data)
	l.finerHours(data)
	counted, listed, fish := false, false, false
	for _, u := range data {
		l.lists(u)
		l.fishOfRemarks(u)
		l.goneInRemarks(u)
		u.bracketLengths()
		u.weighedTogether()
		fish = fish || u.Plan.Kind == plan.Fish || u.filled("species")
		counted = counted || u.Plan.Binds(countNames...) || len(u.Plan.Catch) > 0
		listed = listed || u.Plan.Kind == plan.Strikes || u.Plan.Kind == plan.Events || len(u.Plan.Rods) > 0 ||
			u.filled("outcome", "species") && !(u.bestOf() && l.wordsTellMore())
	}
	l.bareWeights()
	for _, u := range data {
		for i := range u.Plan.Rods {
			u.Plan.Rods[i].Scaled = l.Scaled()
		}
		for i := range u.Plan.Bindings {
			b := &u.Plan.Bindings[i]
			b.Scaled = b.Column.Parse == "count" && (words.Scaled(b.Heading) || l.Scaled()) // of the fish that it names
			if b.Column.Parse != "story" && b.Column.Parse != "fishlist" && b.Column.Parse != "event" || u.told {
				continue
			}
			b.Scaled = words.Scaled(b.Heading) || l.Scaled() || u.exact(b)
			head := l.lexicon.said(layout.Label{Text: b.Heading})
			b.Kept = head.says("kept_n") && !head.says("landed_n")
			of := u.Plan
			told := fish && l.fishTold(u) || !u.beside(b) && (u.filled("species") || // measures alone do not say of
				u.filled("length_cm", "scale_kg") && u.Plan.Binds("species", "outcome")) // which fish they are
			switch {
			case b.Column.Parse == "event":
			case b.Column.Parse == "fishlist" && !counted && !listed && !told && u.timedBites(b):
				b.Column = l.lexicon.named("notes", "story")
			case b.Column.Parse == "fishlist" && told:
				b.Column = l.lexicon.named("notes", "text")
			case b.Column.Parse == "fishlist" || !counted && !listed:
			case counted && of.Binds(countNames...) && !told && !of.Reads("fishlist"):
				b.Column = l.lexicon.named("notes", "fishlist")
			default:
				b.Away = u.tellsAway(b)
				b.Column = l.lexicon.named("notes", "text")
			}
		}
		u.tellsAll()
		u.ofTrips()
	}
}

// fishTold tells a table whose fish another one, or a column of its own, tells one by one: not one of another year or
// month, whose days are apart from all of these.
func (l *Log) fishTold(u *Understood) bool {
	days := u.wholeDays()
	return slices.ContainsFunc(l.Data(), func(o *Understood) bool {
		if o.Plan.Kind != plan.Fish && !o.filled("species") {
			return false
		}
		others := o.wholeDays()
		return o == u || len(days) == 0 || len(others) == 0 ||
			slices.Min(days) <= slices.Max(others)+longestOuting && slices.Min(others) <= slices.Max(days)+longestOuting
	})
}

// wholeDays are the days of a table's rows; none where one has no year.
func (u *Understood) wholeDays() (out []unit.Date) {
	b := u.Plan.Find("date")
	if b == nil || b.Column.Parse != "date" {
		return nil
	}
	for _, d := range u.b.daysOf(b.Index) {
		switch {
		case d != 0 && d.Time().Year() == yearlessYear:
			return nil
		case d != 0:
			out = append(out, d)
		}
	}
	return out
}

// ofTrips takes a table of which nothing but its words told of bites for one of trips, once these are remarks: it says
// when the boat left or was back, and nothing of effort or of what struck.
func (u *Understood) ofTrips() {
	p := u.Plan
	if p.Kind != plan.Flat || !p.Binds("depart_s", "return_s") || p.Reads("story", "fishlist", "stretches") ||
		p.Binds("start_s", "end_s", "duration_s", "line_hours", "species", "outcome", "time_s", "line") ||
		p.Binds(countNames...) || len(p.Catch)+len(p.Rods)+len(p.Spread) > 0 {
		return
	}
	p.Kind = plan.Trips
	for _, b := range p.Bindings {
		if !b.Column.In(plan.Trips) {
			p.Unknown = append(p.Unknown, plan.Unknown{Index: b.Index, Heading: b.Heading})
		}
	}
	p.Bindings = slices.DeleteFunc(p.Bindings, func(b plan.Binding) bool { return !b.Column.In(plan.Trips) })
	u.b.note("read as trips: other tables tell of the hours and the bites")
}

// fewTimed is how many bites with a clock a column of fish has at least for it to tell of bites.
const fewTimed = 4

// timedBites tells a column of fish whose cells tell bite by bite, most with its clock, what became of them, and of
// some that they were missed or lost: it is no list of what was caught.
func (u *Understood) timedBites(b *plan.Binding) bool {
	all, timed, gone := 0, 0, 0
	for _, c := range column(u.b.rows, b.Index) {
		for _, bite := range phrase.Tell(c, phrase.Defaults{}).Bites {
			all++
			if bite.At != nil {
				timed++
			}
			if bite.Fate == words.Missed || bite.Fate == words.Lost {
				gone++
			}
		}
	}
	return timed >= fewTimed && 3*timed > 2*all && gone > 0
}

// Scaled tells a log that says once that its weights are from a scale.
func (l *Log) Scaled() bool {
	return slices.ContainsFunc(l.sentences(), func(t string) bool {
		in, _ := l.lexicon.concepts.found(normalise(t))
		_, weight := unitIn(t)
		return words.Scaled(t) && !guessesBare(t) && (in["weight"] || weight)
	})
}

// exact tells lists of fish whose weights are mostly written to a fraction: nobody guesses
// 30.9 kg, and what is marked as a guess stays one.
func (u *Understood) exact(b *plan.Binding) bool {
	n, fractions := 0, 0
	for _, c := range column(u.b.rows, b.Index) {
		for _, m := range toldWeight.FindAllStringSubmatch(c, -1) {
			n++
			if m[1] != "" {
				fractions++
			}
		}
	}
	return n > 2 && 2*fractions > n
}

var toldWeight = regexp.MustCompile(`(?i)\d+([.,]\d+)?\s*(?:kg|kilos?|lbs?|#)`)

// lists takes a column of species that names several fish in some of its cells for lists.
func (l *Log) lists(u *Understood) {
	b := u.Plan.Find("species")
	if b == nil || !u.Plan.Binds(countNames...) && len(u.Plan.Catch) == 0 || u.Plan.StrikeSets() > 0 {
		return
	}
	cells, lists := column(u.b.rows, b.Index), 0
	for _, c := range cells {
		n := 0
		for _, f := range phrase.FishList(c, phrase.Defaults{}) {
			n += max(f.N, 1)
		}
		if n > 1 {
			lists++
		}
	}
	if 20*lists >= len(cells) && lists > 0 {
		b.Column = l.lexicon.named("notes", "fishlist")
	}
}

// weighedTogether tells a column of weights each of which is what the fish of its row's list weigh
// together: "alalunga kg 12.1; alalunga kg 11.2" and 23.3. It is of no one fish.
func (u *Understood) weighedTogether() {
	w := u.Plan.Find("scale_kg")
	i := slices.IndexFunc(u.Plan.Bindings, func(b plan.Binding) bool { return b.Column.Parse == "fishlist" })
	if w == nil || i < 0 {
		return
	}
	list, sums, several := &u.Plan.Bindings[i], 0, 0
	rows := 0
	for _, row := range u.b.rows {
		v, err := strconv.ParseFloat(strings.ReplaceAll(cellOf(row, w.Index), ",", "."), 64)
		if err != nil {
			continue
		}
		n, sum, pounds := 0, 0.0, 0.0
		for _, f := range phrase.FishList(cellOf(row, list.Index), phrase.Defaults{}) {
			if f.Kg > 0 && !f.Guess {
				n, sum = n+1, sum+f.Kg
			}
		}
		pounds = sum / 0.45359237 // NIST Handbook 44, appendix C
		if rows++; n > 0 && (math.Abs(sum-v) <= 0.02*v || math.Abs(pounds-v) <= 0.02*v) {
			if sums++; n > 1 {
				several++
			}
		}
	}
	if several < 2 || 10*sums < 8*rows {
		return
	}
	u.Plan.Unknown = append(u.Plan.Unknown, plan.Unknown{Index: w.Index, Heading: w.Heading, Aside: "weighed together"})
	u.b.note("%s: what the fish of the row weigh together", w.Heading)
	u.Plan.Bindings = slices.DeleteFunc(u.Plan.Bindings,
		func(b plan.Binding) bool { return b.Column.Name == "scale_kg" && b.Index == w.Index })
}

// beside tells a list of fish beside whose cells measures stand.
func (u *Understood) beside(b *plan.Binding) bool {
	fish, both, long := 0, 0, 0
	for _, row := range u.b.rows {
		text := cellOf(row, b.Index)
		if text == "" {
			continue
		}
		fish++
		long += len(text)
		for _, name := range []string{"length_cm", "scale_kg"} {
			if m := u.Plan.Find(name); m != nil && cellOf(row, m.Index) != "" {
				both++
				break
			}
		}
	}
	return fish > 0 && b.Column.Parse == "fishlist" && 2*both > fish && long < 40*fish
}

// filled tells whether a column of one of the meanings says something in a third of the
// rows that have anything of strikes.
func (u *Understood) filled(names ...string) bool {
	for _, name := range names {
		if b := u.Plan.Find(name); b != nil && (3*len(column(u.b.rows, b.Index)) >= len(u.b.rows) ||
			u.Plan.Kind == plan.Fish || u.Plan.Kind == plan.Strikes) {
			return true
		}
	}
	return false
}

// finerHours leaves hours that another block tells stretch by stretch to that one.
func (l *Log) finerHours(data []*Understood) {
	rows := map[*group]int{}
	keys := map[*group]keySets{}
	var groups []*group
	for _, u := range data {
		if u.Plan.Kind == plan.Lines || !u.fills("start_s", "end_s", "duration_s", "line_hours") {
			continue
		}
		g := u.b.group
		if keys[g] == nil {
			keys[g] = keySets{}
			groups = append(groups, g)
		}
		rows[g] += len(u.b.rows)
		u.keys(keys[g])
	}
	for _, g := range groups {
		for _, h := range groups {
			if g == h || !keys[g].within(keys[h]) || rows[h] < rows[g] || rows[h] == rows[g] && !finer(h, g) {
				continue
			}
			for _, u := range data {
				if u.b.group == g && !u.told {
					u.Plan.NoEffort = true
					u.onlyHere(keys[h], keys[g])
					if u.Plan.Kind == plan.Legs && u.Plan.Binds("date") && u.Plan.Binds("trip") &&
						!slices.ContainsFunc(data, func(o *Understood) bool {
							return o.b.group != g && (o.Plan.Binds("date") || o.Plan.Gives("date"))
						}) {
						u.Plan.Kind = plan.Trips // its days are told nowhere else
					}
					const elsewhere = "its hours are told stretch by stretch elsewhere in the log"
					if n := len(u.Plan.OnlyHere); n > 0 {
						u.b.note(elsewhere+", but for those of %d of its rows", n)
						continue
					}
					u.b.note(elsewhere)
				}
			}
			break
		}
	}
}

// onlyHere keeps the hours of rows of whose trip no other table tells, where that tells of no others either: one there
// that is not here may be one of these, mistyped.
func (u *Understood) onlyHere(others, own keySets) {
	keyed, told := map[int64]bool{}, map[int64]bool{}
	for _, name := range []string{"date", "trip"} {
		b := u.Plan.Find(name)
		if b == nil || !(keySets{name: own[name]}).within(others) {
			continue
		}
		for x := range others[name] {
			if !own[name][x] {
				return
			}
		}
		for i := range u.b.rows {
			row := int64(u.Block.Rows[i].Num)
			if cell := strings.ToLower(cellOf(u.b.rows[i], b.Index)); cell == "" || others[name][cell] {
				told[row] = true
			} else {
				keyed[row] = true
			}
		}
	}
	maps.DeleteFunc(keyed, func(row int64, _ bool) bool { return told[row] })
	u.Plan.OnlyHere = keyed
}

func finer(a, b *group) bool {
	clocks := func(g *group) bool { return g.blocks != nil && g.kind == plan.Legs }
	return clocks(a) && !clocks(b)
}

// keySets are the days and the trips that rows name.
type keySets map[string]map[string]bool

// within tells whether half of the days, or of the trips, are among the other's too.
func (k keySets) within(o keySets) bool {
	for name, own := range k {
		same := 0
		for x := range own {
			if o[name][x] {
				same++
			}
		}
		if 2*same >= len(own) {
			return true
		}
	}
	return false
}

// keys adds the days and trips that a block's rows name.
func (u *Understood) keys(to keySets) {
	add := func(name, text string) {
		if to[name] == nil {
			to[name] = map[string]bool{}
		}
		to[name][strings.ToLower(text)] = true
	}
	for _, name := range []string{"date", "trip"} {
		if b := u.Plan.Find(name); b != nil {
			for _, c := range column(u.b.rows, b.Index) {
				if !words.IsTotal(c) {
					add(name, c)
				}
			}
		}
		for _, g := range u.Plan.Given {
			if g.Column.Name == name {
				add(name, g.Text)
			}
		}
	}
}

// linked binds columns of two blocks by which rows of the one name rows of the other: the number of a stretch among
// strikes, that of a strike among fish.
func (l *Log) linked() {
	data := l.Data()
	for _, to := range data {
		for _, name := range keysTo[to.Plan.Kind] {
			c := l.lexicon.named(name, "")
			if !c.In(to.Plan.Kind) {
				continue
			}
			keys := to.Plan.Unknown
			if b := to.Plan.Find(name); b != nil {
				keys = []plan.Unknown{{Index: b.Index, Heading: b.Heading}}
			}
			for _, key := range keys {
				own := set(column(to.b.rows, key.Index))
				if key.Aside != "" || len(own) < 3 || len(own) != len(column(to.b.rows, key.Index)) {
					continue
				}
				for _, from := range data {
					ref, ok := from.refers(name, key)
					if !ok || from.countsOwn(ref) || from.b.group == to.b.group || !c.In(from.Plan.Kind) ||
						name == "leg" && OnlyNumbers(key.Heading) && !to.stretchesOf(key.Index, from, ref.Index) {
						continue
					}
					l.link(to, from, key, ref, c, own)
				}
			}
		}
	}
}

// keysTo are what the rows of a block may be known by in another.
var keysTo = map[plan.Kind][]string{plan.Legs: {"leg", "trip"}, plan.Flat: {"leg", "trip"},
	plan.Strikes: {"strike"}, plan.Trips: {"trip"}}

// refers finds the column that may name the rows of another block by their key: the one
// that is understood so, else one of the same heading.
func (u *Understood) refers(name string, key plan.Unknown) (plan.Unknown, bool) {
	if b := u.Plan.Find(name); b != nil {
		return plan.Unknown{Index: b.Index, Heading: b.Heading}, true
	}
	if i := slices.IndexFunc(u.Plan.Unknown, func(x plan.Unknown) bool {
		return SameKey(x.Heading, key.Heading)
	}); i >= 0 {
		return u.Plan.Unknown[i], true
	}
	// a bare number of another table's rows looks like a count
	if b := u.Plan.Find("count"); b != nil && SameKey(b.Heading, key.Heading) {
		return plan.Unknown{Index: b.Index, Heading: b.Heading}, true
	}
	return plan.Unknown{}, false
}

// SameKey tells two headings of one number: "Run" and "Run no", "N. voce" and "Voce".
func SameKey(a, b string) bool {
	bare := func(s string) string {
		w := strings.Fields(strings.ToLower(s))
		if n := len(w); n > 1 && numberWords[strings.Trim(w[n-1], ".")] {
			w = w[:n-1]
		} else if n > 1 && numberWords[strings.Trim(w[0], ".º°")] {
			w = w[1:]
		}
		return strings.Join(w, " ")
	}
	return bare(a) == bare(b)
}

// OnlyNumbers tells a heading that says no more than that its rows are numbered: "No", "Nr.".
func OnlyNumbers(heading string) bool {
	w := strings.Trim(strings.ToLower(heading), " .º°")
	return w != "" && numberWords[w]
}

func set(cells []string) map[string]bool {
	m := map[string]bool{}
	for _, c := range cells {
		m[strings.ToLower(c)] = true
	}
	return m
}

func (l *Log) link(to, from *Understood, key, ref plan.Unknown, c *plan.Column, own map[string]bool) {
	cells := column(from.b.rows, ref.Index)
	if !slices.ContainsFunc(column(to.b.rows, key.Index), wordOnly) {
		cells = slices.DeleteFunc(cells, wordOnly) // why it has no number
	}
	found := 0
	for _, x := range cells {
		if own[strings.ToLower(x)] {
			found++
		}
	}
	if len(cells) < 3 || 10*found < 9*len(cells) {
		return
	}
	for _, u := range []struct {
		*Understood
		at plan.Unknown
	}{{to, key}, {from, ref}} {
		if !u.Plan.Binds(c.Name) {
			u.Plan.Bindings = slices.DeleteFunc(slices.Clone(u.Plan.Bindings),
				func(b plan.Binding) bool { return b.Index == u.at.Index && b.Column.Name == "count" })
			u.Plan.Bindings = append(u.Plan.Bindings, plan.Binding{Index: u.at.Index, Heading: u.at.Heading, Column: c})
			u.Plan.Unknown = slices.DeleteFunc(u.Plan.Unknown,
				func(x plan.Unknown) bool { return x.Index == u.at.Index })
		}
	}
	for _, name := range []string{"trip", "date", "method"} {
		if name == "date" && c.Name == "trip" {
			continue // the trip's day is its first: a row past midnight is of the next
		}
		l.lend(to, from, key, ref, name)
	}
}

func wordOnly(cell string) bool { return !strings.ContainsAny(cell, "0123456789") }

// lend gives rows that name only a row of another block that row's trip or day, or its way of fishing.
func (l *Log) lend(to, from *Understood, key, ref plan.Unknown, name string) {
	has := to.Plan.Find(name)
	if has == nil || from.Plan.Binds(name) || from.Plan.Gives(name) || !has.Column.In(from.Plan.Kind) {
		return
	}
	by := map[string]string{}
	for _, row := range to.b.rows {
		v := cellOf(row, has.Index)
		if has.By != nil {
			v = has.By[strings.ToLower(v)]
		}
		if k := strings.ToLower(cellOf(row, key.Index)); k != "" && v != "" {
			by[k] = v
		}
	}
	from.Plan.Bindings = append(from.Plan.Bindings,
		plan.Binding{Index: ref.Index, Heading: has.Heading, Column: has.Column, By: by})
}

// sheets is in how many sheets the group has blocks.
func (g *group) sheets() int {
	seen := map[int]bool{}
	for _, b := range g.blocks {
		seen[b.Grid.Index] = true
	}
	return len(seen)
}
