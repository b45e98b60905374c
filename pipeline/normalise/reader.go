package normalise

import (
	"encoding/json"
	"fmt"
	"slices"
	"strings"
	"time"

	"wakeledger/pipeline/entry"
	"wakeledger/pipeline/plan"
	"wakeledger/pipeline/record"
	"wakeledger/pipeline/sheet"
	"wakeledger/pipeline/species"
	"wakeledger/pipeline/unit"
	"wakeledger/pipeline/words"
)

// Settings are what the user settles for all logs of a load.
type Settings struct {
	Units   string     // "us", "metric" or "": the system of cells that state no unit
	Order   unit.Order // of day and month, where the user says
	Mark    unit.Mark  // the decimal mark, where the user says
	Ocean   string     // settles local names that mean several species
	Species *species.List
	Zone    *time.Location // of the boat's clock, where the user says; nil
}

// Reader turns rows of one sheet into entries. It is not safe for concurrent use.
type Reader struct {
	set    Settings
	ev     *Evidence
	layout *plan.Block
	words  closed
	pos    record.Pos // of the sheet
	info   sheet.Info // a workbook's cells may be serial dates

	fields   []entry.Field
	public   int      // of fields, those of the season file; the rest are this reader's own
	targets  []target // one per binding
	date     int      // index of the field "date", -1 where the sheet has no time at all
	letGo    int      // index of the field of those released that a row of kept fish tells in words; -1
	released int      // index of the field "kept" where no column has it but a weight's cell may say so; -1
	fate     int      // index of the field "outcome" that a fish's notes may tell; -1
	extra    int      // index of the field "extra", -1 without unknown columns
	index    map[string]int

	month time.Month // of the last date that was read without a year

	slots     slots
	spread    *spread    // nil where no column is a place in the spread
	headers   [][]headed // of the header, to know one that is given again
	figures   []int      // indexes of the fields that the figures of a cell add up to; -1: counted elsewhere
	catch     int        // index of the field, of those hooked or landed, that species' counts add up to; -1
	notMissed int        // index of the field of fish hooked, where only bites and those missed are counted; -1
	// missedTold is the index of the field of bites missed that remarks tell, where no column counts them; -1.
	missedTold int
	letGoIn    int // index of the field of those released that remarks tell among those boated; -1
	letGoTold  int // index of the field of those released that remarks tell beside counts of species; -1
	freed      int // index of the field of those released that species' counts add up to; -1
	values     []entry.Value
	moments    []placed // moments of this row, whose seconds wait for the date
	problems   []record.Problem
	aside      []record.Problem // cells that the row does without
	doubts     []record.Problem
	forgetful  bool // read each cell anew, also where it says what the one above says
	row        *sheet.Row
	sets       int      // of strikes for which a row has columns
	lists      bool     // fish and their measures stand in lists
	side       []Side   // what the row tells beside its own entry
	nameless   int      // so many of these are told before the lists of fish, and none names a fish; 0 where one does
	num        int      // of the row
	parts      int64    // sides that earlier entries of the same row had
	awayTold   bool     // a column of those that got away does
	fatesTold  bool     // lists of fish tell what became of the bites that a column counts
	nothing    bool     // the row says that nothing struck
	elsewise   bool     // the row was not trolled
	heads      []string // headings of the columns that told its fish, without the numbers at their ends
	livebait   bool     // its lure is a live bait
	last       lastLeg
	several    []several // cells of the row that hold what several would
	// speeds and lines of the stretches that the row tells in words, where it has one for each
	paces, linesEach []float64
	worded           []several // counts of the row that name their fish
	spell            spell     // what a row of a log of events tells of a whole stretch
	lain             lain
	above            map[string]string // what the row above says of its stretch, by column
	sameHours        bool              // the row says the same again
	beyond           bool              // the rows stand under a title that says that they were not trolled
	lastRows         [][]string        // the cells of the last rows, in turn
	rowsSeen         int               // how many have been among them
	besideBite       map[int]bool      // columns, by index, that say nothing of what was fished
	sentAt           int               // index of the column of when an answer was sent, -1 where there is none
	like             int               // fish of the species that the row names with a number
	each             []measures        // cells with those of several fish
	unweighed        int               // weights in words that nobody says are from a scale
	open             lastOpen          // the stretch above that has no end
	toldUp           toldUp            // the stretch above whose end a remark told
	under            bool              // the row tells of a fish alone: it is of what stands above
	events           eventLog
}

// target is where a binding's cells go.
type target struct {
	plan.Binding
	field     int
	cell      func(r *Reader, t *target, text string) error
	negative  bool   // of a position: headed as degrees west or south
	given     string // the text of every row, where it stands above the table
	text      string // of this row
	last      string // of the last row that had one
	above     string // of the row above, as it was taken
	raw       string // the last cell that spoke for itself, as it stands in its row
	said      string // and what it said
	rank      int    // of a key column, see carry.go; -1 for the others
	beside    int    // the field that keeps the cell's words or second number; -1
	spare     bool   // the row is kept without a cell that cannot be read
	usual     bool   // given for rows that say nothing themselves
	but       []plan.But
	since     []plan.Since
	withTimes bool // of words that tell bites: the times of trolling stand in them too
	memo      memo
	brackets  []bracket // what numbers in brackets are, as the log says
}

// beside are the fields that a cell fills besides its own: the words whose
// meaning is kept, or a position's second half.
var beside = map[string]entry.Field{
	"species":  {Name: "species_logged", Type: entry.Text},
	"tangle":   {Name: "tangled_lines", Type: entry.Text},
	"position": {Name: "lon", Type: entry.Real},
	"outcome":  {Name: "loss_cause", Type: entry.Text},
}

type placed struct {
	field int
	m     unit.Moment
	next  bool // of the day after the row's, as its words say
	on    int  // of the weekday of that name, one for Sunday, 0 where none stands before it
}

// New makes a reader for one sheet. pos names the file and sheet.
func New(l *plan.Block, info sheet.Info, pos record.Pos, ev *Evidence, set Settings) (*Reader, error) {
	w, err := loadClosed()
	if err != nil {
		return nil, err
	}
	r := &Reader{set: set, ev: ev, layout: l, words: w, pos: pos, info: info,
		date: -1, extra: -1, released: -1, fate: -1, catch: -1, freed: -1, letGo: -1, letGoTold: -1, letGoIn: -1,
		notMissed: -1, missedTold: -1,
		index: map[string]int{}}
	r.sets, r.lists = l.StrikeSets(), l.Lists()
	r.add("row", entry.Int)
	for _, g := range l.Given {
		b := plan.Binding{Index: -1, Heading: g.Heading, Column: g.Column}
		if err := r.target(b, g.Text); err != nil {
			return nil, err
		}
		last := &r.targets[len(r.targets)-1]
		last.usual, last.but, last.since = g.Default, g.But, g.Since
	}
	for _, own := range []bool{false, true} { // the reader's own fields come last
		if own {
			r.settled()
		}
		for _, b := range l.Bindings {
			if r.isOwn(b) != own || l.NoEffort && len(l.OnlyHere) == 0 && isEffort(b) {
				continue
			}
			if err := r.target(b, ""); err != nil {
				return nil, err
			}
		}
	}
	r.besideTheBite()
	r.values = make([]entry.Value, len(r.fields))
	r.findSlots()
	r.headers = headersOf(l.Heads)
	return r, nil
}

// settled adds the last of the season file's fields.
func (r *Reader) settled() {
	r.implied()
	if len(r.layout.Unknown) > len(r.layout.Spread) {
		r.extra = r.add("extra", entry.Text)
	}
	r.findSpread()
	r.public = len(r.fields)
}

// target adds a binding's fields, and where its cells go.
func (r *Reader) target(b plan.Binding, given string) error {
	p, ok := parsers[b.Column.Parse]
	if !ok {
		return fmt.Errorf("column %s: no way to read %q", b.Column.Name, b.Column.Parse)
	}
	if b.Column.Parse == "moment" || b.Column.Parse == "date" {
		r.date = r.add("date", entry.Day)
	}
	name := b.Column.Name
	if r.isOwn(b) {
		name = r.ownName(b)
		p = r.ownParser(b, p)
	}
	t := target{Binding: b, field: r.add(name, p.typ), cell: p.cell,
		negative: headedNegative(b.Column.Parse, b.Heading), given: given, rank: -1, beside: -1,
		spare: spare(b.Column), withTimes: b.Column.Parse == "story" && r.layout.Timed(b.Index)}
	if b.Column.Parse == "fishlist" || b.Column.Parse == "story" {
		t.brackets = bracketsIn(b.Said)
	}
	if at, ok := rank[b.Column.Name]; ok {
		t.rank = at
	}
	if also, ok := beside[b.Column.Parse]; ok && !(r.sets > 0 && b.OfStrike()) &&
		!(also.Name == "loss_cause" && r.layout.Binds(also.Name)) {
		t.beside = r.add(also.Name, also.Type)
	}
	r.targets = append(r.targets, t)
	return nil
}

// hadSome are the counts of which a question mark says that there were some: it is no nought, nor a blank.
var hadSome = []string{"strikes_n", "hooked_n", "landed_n"}

// implied adds the fields that a heading settles for the whole sheet.
func (r *Reader) implied() {
	if r.layout.OwnHours {
		r.add("stopped_s", entry.Real)
	}
	if r.layout.Outings || r.layout.Half > 0 || r.layout.Trips != nil {
		r.add("trip", entry.Text)
	}
	if r.layout.Binds("start_s") && r.layout.Binds("end_s") &&
		(r.layout.Reads("story", "fishlist") || r.layout.Binds("notes")) {
		r.add("stopped_s", entry.Real) // a remark may tell of a pause
	}
	if slices.ContainsFunc(r.layout.Bindings, sized) || r.layout.Binds("species") && r.has("scale_kg") {
		r.add("length_cm", entry.Real)
	}
	if r.has("length_cm") && !r.has("length_kind") {
		r.add("length_kind", entry.Text)
	}
	if r.has("length_cm") {
		r.add("girth_cm", entry.Real) // a cell may tell both: 62x38
	}
	if r.has("species") && r.has("notes") && (r.layout.Kind == plan.Strikes ||
		r.layout.Kind == plan.Fish || r.layout.Kind == plan.Flat) {
		r.add("length_cm", entry.Real) // a remark may tell them
		r.add("girth_cm", entry.Real)
	}
	if timed := r.layout.Binds("duration_s") || r.layout.Binds("notes") && r.layout.Binds("start_s"); timed &&
		!r.layout.Binds("outcome", "time_s") && (r.layout.Kind == plan.Legs || r.layout.Kind == plan.Flat) {
		for _, name := range []string{"speed_kn", "lines_out"} {
			if !r.has(name) {
				r.add(name, TypeOf(name)) // a remark may tell it, or the cell of the hours
			}
		}
	}
	if r.has("notes") && (r.layout.Kind == plan.Strikes && !r.has("speed_kn") || r.layout.Kind == plan.Flat) {
		r.add("strike_speed_kn", entry.Real) // a remark may tell it
	}
	if r.has("scale_kg") && !r.has("kept") && !r.has("outcome") {
		r.released = r.add("kept", entry.Flag)
	}
	if r.layout.Kind != plan.Trips && r.has("notes") && r.has("species") && !r.has("outcome") &&
		(r.released >= 0 || !r.has("kept")) && !r.counts() {
		r.fate = r.add("outcome", entry.Text)
	}
	if r.layout.Kind != plan.Trips && r.has("species") && !r.has("outcome") && (!r.counts() || r.layout.Fated) {
		r.add("outcome", entry.Text) // "lost" may stand where others have the fish
	}
	if r.layout.Reads("story", "fishlist") {
		r.add("notes", entry.Text)
	}
	if r.layout.Kind == plan.Fish && r.has("kept") && !r.has("outcome") {
		r.add("outcome", entry.Text) // a fish that never came to the boat
	}
	if r.layout.Reads("stretches") && !r.layout.NoEffort {
		for _, name := range []string{"start_s", "end_s", "duration_s", "stopped_s", "speed_kn", "lines_out"} {
			r.add(name, TypeOf(name))
		}
	}
	if r.layout.Binds("kept_n") {
		r.add("landed_n", entry.Int)
	}
	if r.layout.LureLines {
		r.add("line", entry.Text)
	}
	if r.layout.Binds("line_hours") && !r.has("lines_out") {
		r.add("lines_out", entry.Int)
	}
	if len(r.layout.Rods) > 0 {
		r.add("lines_out", entry.Int)
	}
	if len(r.layout.Others) > 0 {
		for _, name := range []string{"landed_n", "released_n", "lost_n", "missed_n"} {
			r.add(name, entry.Int)
		}
	}
	besides := func(u plan.Unknown) bool { return (u.Named || u.Among) && u.Fate == "" }
	if !r.layout.Freed && !r.has("released_n") && slices.ContainsFunc(r.layout.Catch,
		func(u plan.Unknown) bool { return u.Fate == "released" }) {
		r.freed = r.add("released_n", entry.Int)
	} else if r.layout.Freed || slices.ContainsFunc(r.layout.Catch, besides) {
		r.add("released_n", entry.Int)
	}
	sum := "hooked_n"
	if r.layout.Caught {
		sum = "landed_n"
	}
	for _, name := range r.layout.Figures {
		i := -1
		if !r.layout.Binds(name) {
			i = r.add(name, entry.Int)
		}
		r.figures = append(r.figures, i)
	}
	if len(r.layout.Catch) > 0 && len(r.figures) == 0 && !r.layout.Binds(sum, "landed_n", "kept_n") {
		r.catch = r.add(sum, entry.Int)
	}
	if r.catch >= 0 && r.freed >= 0 && r.layout.Binds("notes") {
		r.letGoTold = r.freed
	} else if r.catch >= 0 && r.layout.Caught && r.layout.Binds("notes") && !r.has("released_n") {
		r.letGoTold = r.add("released_n", entry.Int)
	}
	if r.layout.Kind == plan.Flat && r.catch < 0 && r.layout.Binds("landed_n") && r.layout.Binds("notes") &&
		!r.has("released_n") {
		r.letGoIn = r.add("released_n", entry.Int)
	}
	r.fatesTold = r.layout.Reads("fishlist") && r.layout.Binds("strikes_n") &&
		!r.layout.Binds("hooked_n", "lost_n", "missed_n") && (r.layout.ListsAll || !r.layout.Binds("released_n") &&
		(!r.layout.Binds("landed_n", "kept_n") || r.listsFish()))
	r.awayTold = slices.ContainsFunc(r.layout.Bindings, func(b plan.Binding) bool { return b.Away })
	if r.fatesTold || r.awayTold {
		r.add("lost_n", entry.Int)
		r.add("missed_n", entry.Int)
	}
	if r.layout.Binds("kept_n") && !r.has("released_n") && r.layout.Reads("fishlist") {
		r.letGo = r.add("released_n", entry.Int)
	}
	if r.layout.Kind == plan.Flat && r.layout.Binds("strikes_n") && r.layout.Binds("missed_n") &&
		!r.layout.Binds("hooked_n", "lost_n") && !r.has("hooked_n") {
		r.notMissed = r.add("hooked_n", entry.Int)
	}
	if p := r.layout; p.Kind == plan.Flat && p.Binds("lost_n", "hooked_n") && p.Binds("landed_n", "kept_n") &&
		!p.Binds("strikes_n", "missed_n") && !p.Reads("story") && p.Binds("notes") && r.catch < 0 &&
		!r.has("missed_n") {
		r.missedTold = r.add("missed_n", entry.Int)
	}
	if r.answering() {
		r.add("missed_n", entry.Int)
		r.add("released_n", entry.Int)
	}
	if r.layout.Kind == plan.Flat && r.has("strikes_n") && (r.has("scale_kg") || r.has("length_cm")) {
		r.add("landed_n", entry.Int)
	}
	if r.has("scale_kg") && !r.has("weight_state") && r.headingMeans("weightstate", "scale_kg") != "" {
		r.add("weight_state", entry.Text)
	}
}

func (r *Reader) add(name string, t entry.Type) int {
	if i, ok := r.index[name]; ok {
		return i
	}
	r.index[name] = len(r.fields)
	r.fields = append(r.fields, entry.Field{Name: name, Type: t})
	return len(r.fields) - 1
}

func (r *Reader) has(name string) bool { _, ok := r.index[name]; return ok }

// Fields are the columns of the entries, in the order of their values; the
// first is the row's number in its sheet.
func (r *Reader) Fields() []entry.Field { return r.fields[:r.public] }

// Skip is why a row is no entry and no problem either.
type Skip string

// The rows that are passed over.
const (
	Blank    Skip = "blank"
	Header   Skip = "repeated header"
	Totals   Skip = "totals"
	Again    Skip = "rows entered twice" // set aside by its problem, and nothing is missing by it
	Foot     Skip = "rows under the table, of no day"
	Comment  Skip = "comment"
	NotGone  Skip = "days not gone"
	NoStrike Skip = "rows that say nothing struck"
	Trial    Skip = "tests"
	Elsewise Skip = "not trolled"
	Told     Skip = "told elsewhere in the log"
	LeftOut  Skip = "left out, as you answered"
	NotASkip Skip = ""
)

// Row normalises one row. It returns the entry's values (valid until the next
// call), or why the row is passed over, or the problems for which it is to be
// set aside. Values and problems together are a row that is kept without the
// cells of the problems.
func (r *Reader) Row(row *sheet.Row) ([]entry.Value, Skip, []record.Problem) {
	row = r.asSaid(row)
	if r.parts += int64(len(r.side) + r.spread.most()); r.num != row.Num {
		r.num, r.parts = row.Num, 0 // a line of a text may hold several entries
	}
	r.row, r.problems, r.aside, r.doubts, r.moments = row, nil, nil, nil, r.moments[:0]
	r.side, r.nothing, r.elsewise, r.livebait, r.unweighed = r.side[:0], false, false, false, 0
	r.several, r.worded, r.like, r.each, r.spell = nil, nil, 0, nil, spell{}
	r.paces, r.linesEach, r.sameHours = nil, nil, false
	if row.Problem != nil {
		return nil, NotASkip, []record.Problem{*row.Problem}
	}
	if s := r.skip(); s != NotASkip {
		if s == Comment {
			r.beyond = words.Otherwise(strings.Join(row.Cells, " ")) // a heading of what follows
		}
		return nil, s, nil
	}
	if r.layout.Foot[int64(row.Num)] {
		return nil, Foot, nil
	}
	if r.layout.Drop[int64(row.Num)] {
		return nil, LeftOut, nil
	}
	if r.sentTwice() {
		r.faultRow("a row above again: counted once")
		return nil, Again, r.problems
	}
	clear(r.values)
	r.values[0] = entry.OfInt(int64(row.Num))
	r.onward()
	r.gather()
	r.hoursAgain()
	r.boatsHours()
	for i := range r.targets {
		t := &r.targets[i]
		text := t.text
		if text == "" || t.usual && r.values[t.field].Known || t.recall(r, text) ||
			words.NotLogged(text) && !(text == "?" && slices.Contains(hadSome, t.Column.Name)) {
			continue
		}
		if t.Column.Parse == "date" && words.SomeDay(text) {
			r.doubts = append(r.doubts, r.problem(t, text, "the day is not known: kept without one"))
			continue
		}
		if r.layout.NoEffort && !r.layout.OnlyHere[int64(row.Num)] && isEffort(t.Binding) {
			continue
		}
		if strings.HasPrefix(text, sheet.FormulaNoValue) && r.info.Workbook {
			r.unread(t, text, "a formula without a stored value: open the workbook in the program that made it and "+
				"save it again")
			continue
		}
		before := r.saidBut(t)
		if err := t.cell(r, t, text); err != nil && r.severally(t, text, err) {
			continue
		} else if err != nil {
			r.unread(t, text, err.Error())
			continue
		}
		if r.saidBut(t) == before { // each cell that says more than its value is looked at
			t.remember(r, text)
		}
	}
	r.excepted()
	r.linesOfRow()
	r.unknowns()
	r.added()
	r.othersBeside()
	r.caught()
	if r.layout.Mends[int64(row.Num)] {
		r.mendsAnother()
	}
	r.place()
	r.rodLines()
	r.lureLine()
	r.ofStretches()
	r.parted()
	r.phrases()
	r.likened()
	r.bitesOfTrip()
	r.hookedOf()
	if s := r.answered(); s != NotASkip {
		return nil, s, nil
	}
	if s := r.idle(); s != NotASkip {
		r.side = r.side[:0]
		if s == NoStrike {
			r.quietTrip()
		}
		return nil, s, nil
	}
	if len(r.problems) == 0 {
		r.check()
	}
	if len(r.problems) > 0 {
		r.side = r.side[:0]
		return nil, NotASkip, append(r.problems, r.aside...)
	}
	r.untimedTrip()
	if r.spread != nil {
		r.run()
	}
	if r.layout.Kind == plan.Events {
		return nil, NotASkip, r.kept()
	}
	return r.values[:r.public], NotASkip, r.kept()
}

// Doubts are what the last row was kept with, but may be wrong. It is valid until
// the next call of Row.
func (r *Reader) Doubts() []record.Problem { return r.doubts }

func (r *Reader) fault(t *target, text, reason string) {
	p := r.problem(t, text, reason)
	p.Whole = true
	r.problems = append(r.problems, p)
}

func (r *Reader) problem(t *target, text, reason string) record.Problem {
	p := r.pos
	p.Row, p.Col = r.row.Num, t.Index+1
	return record.Problem{Pos: p, Column: t.Heading, Cell: text, Reason: reason}
}

// faultRow is a problem of the row as a whole.
func (r *Reader) faultRow(reason string) {
	p := r.pos
	p.Row = r.row.Num
	r.problems = append(r.problems, record.Problem{Pos: p, Cell: r.excerpt(), Reason: reason, Whole: true})
}

func (r *Reader) excerpt() string {
	var parts []string
	for _, c := range r.row.Cells {
		if c = strings.TrimSpace(c); c != "" {
			parts = append(parts, c)
		}
	}
	s := []rune(strings.Join(parts, " | "))
	if len(s) > 120 {
		return string(s[:119]) + "…"
	}
	return string(s)
}

// unknowns keeps the cells of columns that were not understood, by heading.
func (r *Reader) unknowns() {
	if r.extra < 0 {
		return
	}
	var kept map[string]string
	for _, u := range r.layout.Unknown {
		if r.inSpread(u.Index) {
			continue
		}
		if u.Index < len(r.row.Cells) {
			if s := strings.TrimSpace(r.row.Cells[u.Index]); s != "" {
				if kept == nil {
					kept = map[string]string{}
				}
				kept[u.Heading] = s
			}
		}
	}
	if kept != nil {
		b, err := json.Marshal(kept)
		if err != nil {
			r.faultRow(err.Error())
			return
		}
		r.values[r.extra] = entry.OfText(string(b))
	}
}
