package normalise

import (
	"fmt"
	"slices"
	"strings"
	"time"
	"unicode"

	"wakeledger/pipeline/entry"
	"wakeledger/pipeline/plan"
	"wakeledger/pipeline/record"
	"wakeledger/pipeline/unit"
	"wakeledger/pipeline/words"
)

const day = 86400

// skip tells rows that are no data: blank ones, comments, a header given again,
// and the totals under a table.
func (r *Reader) skip() Skip {
	filled, first := 0, ""
	for _, c := range r.row.Cells {
		if c = trimmed(c); c != "" && c != "0" { // a formula of a row that nobody filled
			if filled++; filled == 2 {
				break // more than one cell is all that matters from here on
			}
			first = c
		}
	}
	switch {
	case filled == 0:
		return Blank
	case r.isComment(first) || filled == 1 && r.isNote() || r.isRemark():
		return Comment
	case filled == 1 && (r.layout.Kind == plan.Strikes || r.layout.Kind == plan.Fish) && words.Otherwise(first):
		return Elsewise // "Sat night chunked: 2 yellowfin"
	case r.isTotals():
		return Totals
	case r.isHeader():
		return Header
	}
	return NotASkip
}

// isComment tells a row that starts with a comment's mark; "#1" is a number,
// unless # begins comments in this log, and "#N/A" a spreadsheet's error.
func (r *Reader) isComment(first string) bool {
	if trimmed(r.row.Cells[0]) == "" {
		return false
	}
	if strings.HasPrefix(first, "//") {
		return true
	}
	rest, ok := strings.CutPrefix(first, "#")
	return ok && !faulty(first) && (r.layout.Hashed || rest == "" || rest[0] < '0' || rest[0] > '9')
}

// remarkHeads are what stands before a remark below a table.
var remarkHeads = map[string]bool{"remarks": true, "remark": true, "notes": true, "note": true, "comments": true,
	"comment": true, "observaciones": true, "notas": true, "nota": true, "remarques": true, "remarque": true,
	"osservazioni": true, "observacoes": true, "bemerkungen": true, "bemerkung": true}

// isRemark tells a row of a remark with its title before it, and nothing else: REMARKS | dragger fleet on the flats.
func (r *Reader) isRemark() bool {
	var cells []string
	for _, c := range r.row.Cells {
		if c = trimmed(c); c != "" {
			cells = append(cells, c)
		}
	}
	return len(cells) == 2 && remarkHeads[words.Fold(strings.Trim(cells[0], " :"))] &&
		strings.IndexFunc(cells[1], unicode.IsLetter) >= 0
}

// fewSentence is from how many words on what stands where a trip's name does, with no day beside it, is a sentence:
// no trip is called "new zincs in March".
const fewSentence = 4

// isNote tells a row whose only cell holds words where they cannot be a value of
// a row's: a note between the rows.
func (r *Reader) isNote() bool {
	i := slices.IndexFunc(r.row.Cells, func(c string) bool { return strings.TrimSpace(c) != "" })
	text := strings.TrimSpace(r.row.Cells[i])
	if strings.IndexFunc(text, unicode.IsLetter) < 0 || faulty(text) {
		return false
	}
	if unit.OnlyMonth(text) {
		return true // JUNE 2025, above the rows of the month
	}
	j := slices.IndexFunc(r.targets, func(t target) bool { return t.Index == i })
	if j < 0 {
		return true
	}
	c := r.targets[j].Column
	words := len(strings.Fields(text)) > 1
	switch {
	case c.Name == "notes":
		return true
	case c.Name == "trip" && r.layout.Kind == plan.Trips:
		return r.has("date") && len(strings.Fields(text)) >= fewSentence
	case c.Name == "species":
		return false
	case c.Parse == "date", c.Parse == "moment", c.Parse == "quantity", c.Parse == "count":
		return !strings.ContainsAny(text, "0123456789") || strings.Contains(text, " = ") // a legend
	case c.Parse == "text":
		return words && text[0] > '9'
	}
	return false
}

// isTotals looks for the word among the row's first cells, before any number,
// date or time: alone in its cell, or at the start of the row's first.
func (r *Reader) isTotals() bool {
	if r.namesASum() {
		return true
	}
	first := true
	for i, c := range r.row.Cells {
		if c = trimmed(c); c == "" {
			continue
		}
		if i > 3 || c[0] >= '0' && c[0] <= '9' {
			return false
		}
		was := first
		first = false
		if was && endsInTotal(c) && !r.holds(i, "lengthkind") {
			return true
		}
		if len(c) < 3 || len(c) > 20 || c[1] < 'A' || !strings.Contains("tsgamdyiTSGAMDYI", c[:1]) {
			continue // no word of the list begins so
		}
		name := plain(c)
		if _, ok := r.words["total"][name]; ok && !r.holds(i, "lengthkind") {
			return true
		}
		if head, _, more := strings.Cut(name, " "); was && more && (head == "total" || head == "totals") {
			return true
		}
	}
	return false
}

// namesASum tells a row of two cells, of which the first gives the heading of a column elsewhere
// and the second is a number: that column's sum.
func (r *Reader) namesASum() bool {
	at, name, sum := -1, "", ""
	for i, c := range r.row.Cells {
		switch c = trimmed(c); {
		case c == "":
		case name == "":
			at, name = i, c
		case sum == "":
			sum = c
		default:
			return false
		}
	}
	if _, number := plainNumber(sum); !number {
		return false
	}
	return slices.ContainsFunc(r.headers, func(header []headed) bool {
		return slices.ContainsFunc(header, func(h headed) bool {
			return h.index != at && strings.EqualFold(h.text, name)
		})
	})
}

// endsInTotal tells a cell such as "May total".
func endsInTotal(c string) bool {
	c = strings.TrimRight(c, ":s")
	return len(c) > len(" total") && len(c) <= 20 && strings.EqualFold(c[len(c)-len(" total"):], " total")
}

// holds tells whether the column at an index is read in the way that parse names.
func (r *Reader) holds(index int, parse string) bool {
	return slices.ContainsFunc(r.targets, func(t target) bool { return t.Index == index && t.Column.Parse == parse })
}

// isHeader tells a row that gives one of the header's rows again.
func (r *Reader) isHeader() bool {
	for _, header := range r.headers {
		same, other := 0, 0
		for _, h := range header {
			if h.index < len(r.row.Cells) && strings.EqualFold(trimmed(r.row.Cells[h.index]), h.text) {
				same++
			} else if other++; other == 3 || 2*other >= len(header) {
				break // most rows are told from a header by their first cells
			}
		}
		if same > 1 && 2*same > len(header) {
			return true
		}
	}
	return false
}

// headed is one cell of a header that is not blank.
type headed struct {
	index int
	text  string
}

func headersOf(rows [][]string) [][]headed {
	all := make([][]headed, len(rows))
	for n, row := range rows {
		for i, h := range row {
			if h = strings.TrimSpace(h); h != "" {
				all[n] = append(all[n], headed{i, h})
			}
		}
	}
	return all
}

// place gives the row its date and turns its clock times into seconds since
// that date's midnight. A time with a date of its own counts from the row's.
func (r *Reader) place() {
	if r.date < 0 {
		return
	}
	d := &r.values[r.date]
	for _, p := range r.moments {
		if !d.Known && p.m.HasDate {
			*d = entry.OfInt(int64(p.m.Date))
		}
	}
	for i := range r.moments {
		p := &r.moments[i]
		if p.next && d.Known {
			p.m.Date, p.m.HasDate = unit.Date(d.Int)+1, true
		}
		if p.on > 0 && d.Known && !r.onWeekday(p, unit.Date(d.Int)) {
			continue
		}
		s := int64(p.m.Seconds)
		if p.m.HasDate {
			s += (int64(p.m.Date) - d.Int) * day
		}
		r.values[p.field] = entry.OfInt(s)
	}
	r.afterNoon()
	r.onLaterDay()
	if s := &r.slots; r.at(s.start).Known && !r.at(s.end).Known &&
		r.at(s.duration).Known && r.at(s.duration).Real == 0 {
		r.values[s.duration] = entry.Value{} // a formula that lacks the end: nobody knows the hours
	}
	r.earlyStart()
	r.pastMidnight(r.slots.start, r.slots.end)
	r.pastMidnight(r.slots.depart, r.slots.back)
}

// mostNights is how many days after a trip's first a weekday may name.
const mostNights = 4

// onWeekday gives a clock time behind the name of a weekday its day: that of the row, or the next of that name. One
// that comes too late is set aside.
func (r *Reader) onWeekday(p *placed, first unit.Date) bool {
	days := (p.on - 1 - int(first.Time().Weekday()) + 7) % 7
	if days <= mostNights {
		p.m.Date, p.m.HasDate = first+unit.Date(days), true
		return true
	}
	for i := range r.targets {
		if t := &r.targets[i]; t.field == p.field {
			name := time.Weekday(p.on - 1).String()
			r.aside = append(r.aside, r.problem(t, name, "a weekday that is none of the trip's"))
		}
	}
	return false
}

// onLaterDay moves the clock times of a stretch of a trip's second day, and of its strikes, to that day.
func (r *Reader) onLaterDay() {
	days := r.layout.Later[plan.Stretch(r.value("trip").Text, r.value("leg").Text)]
	if n, ok := r.layout.NextDays[int64(r.row.Num)]; ok {
		days = n
	}
	for _, name := range []string{"start_s", "end_s", "time_s"} {
		if i, ok := r.index[name]; ok && days > 0 && r.values[i].Known {
			r.values[i].Int += int64(days) * day
		}
	}
}

// earliestUse is when a morning's lines go in at the earliest: by a clock of twelve hours 1:20 is of the afternoon.
const earliestUse = 3 * 3600

// earlyStart moves a stretch of the small hours to the afternoon where the log's ends are of twelve hours.
func (r *Reader) earlyStart() {
	start, end := r.at(r.slots.start), r.at(r.slots.end)
	if !r.layout.Afternoon || !start.Known || start.Int >= earliestUse || end.Known && end.Int >= day/2 {
		return
	}
	r.values[r.slots.start].Int += day / 2
	if end.Known {
		r.values[r.slots.end].Int += day / 2
	}
}

// pastMidnight moves an end that is earlier than its start to the next day, or to the afternoon where
// the log's ends are of twelve hours, unless the end was logged with a date of its own.
func (r *Reader) pastMidnight(i, j int) {
	if !r.at(i).Known || !r.at(j).Known || r.values[j].Int >= r.values[i].Int {
		return
	}
	for _, p := range r.moments {
		if p.field == j && p.m.HasDate {
			return
		}
	}
	if later := r.values[j].Int + day/2; r.layout.Afternoon && j == r.slots.end && later > r.values[i].Int {
		r.values[j].Int = later
		return
	}
	r.values[j].Int += day
}

// value is the row's value of a column, the zero Value where the sheet has none.
func (r *Reader) value(name string) entry.Value {
	if i, ok := r.index[name]; ok {
		return r.values[i]
	}
	return entry.Value{}
}

// check holds the rules over several cells of one row.
func (r *Reader) check() {
	r.impliedWords()
	r.openStretch()
	r.measured()
	r.noted()
	r.checkGirth()
	r.letGoAmong()
	r.uncountedBites()
	if r.layout.Kind == plan.Legs || r.layout.Kind == plan.Flat {
		r.checkTimes()
		r.checkCounts()
		r.unsaidLines()
		r.unsaidBites()
	}
	if need := r.missing(); need != "" && len(r.side) == 0 && !r.unended() {
		if !r.forWantOf() {
			r.faultRow(need)
		}
	} else if r.layout.Kind == plan.Strikes && r.tellsNothing() {
		r.faultRow("no strike: neither a time, an outcome, a species, a line, a lure nor a measure")
	}
}

// needs are what a row cannot do without: one of the columns, or effort (a start
// and an end, or a duration) where that counts too.
type needs struct {
	columns string
	effort  bool
	reason  string // what is told where it lacks them
}

var need = map[plan.Kind]needs{
	plan.Legs: {"", true, "a leg needs a start and an end, or a duration"},
	plan.Flat: {"outcome species species_logged strikes_n hooked_n landed_n released_n lost_n missed_n length_cm " +
		"girth_cm scale_kg", true,
		"a row needs a start and an end, or what struck"},
	plan.Lines:   {"line lure leg setback_m count_s drag_kg", false, "a line needs its position or lure"},
	plan.Trips:   {"trip date depart_s", false, "a trip needs a name or a date"},
	plan.Strikes: {"trip date time_s leg outcome", false, "a strike needs a trip or a date"},
	plan.Fish: {"species species_logged length_cm girth_cm scale_kg outcome", false,
		"a fish needs a species, a length or a weight"},
}

// slots are the fields that the rules over several cells look at, -1 for those
// that the sheet has not.
type slots struct {
	start, end, duration, depart, back              int
	strikes, hooked, landed, released, lost, missed int
	need                                            needs
	told                                            []int // fields any one of which tells of a strike
	enough                                          []int // fields any one of which makes a row
	words                                           []implied
}

// implied is a word of a field that the heading of another settles.
type implied struct {
	field, of int
	means     string
}

func (r *Reader) findSlots() {
	at := func(name string) int {
		if i, ok := r.index[name]; ok {
			return i
		}
		return -1
	}
	r.slots = slots{start: at("start_s"), end: at("end_s"), duration: at("duration_s"), depart: at("depart_s"),
		back: at("return_s"), strikes: at("strikes_n"), hooked: at("hooked_n"),
		landed: at("landed_n"), released: at("released_n"), lost: at("lost_n"), missed: at("missed_n")}
	r.slots.need = need[r.layout.Kind]
	for _, name := range strings.Fields(r.slots.need.columns) {
		if i := at(name); i >= 0 {
			r.slots.enough = append(r.slots.enough, i)
		}
	}
	for _, name := range tells {
		if i := at(name); i >= 0 {
			r.slots.told = append(r.slots.told, i)
		}
	}
	r.findWords()
}

// tells are what a strike is known by: a day with none may stand in its sheet too.
var tells = []string{"time_s", "outcome", "species", "species_logged", "strike", "line", "lure", "loss_cause",
	"fight_s", "kept", "length_cm", "girth_cm", "scale_kg"}

// tellsNothing tells a row of strikes that holds none. A sheet that has no column for
// what a strike is known by has one in each row, as its reader was told.
func (r *Reader) tellsNothing() bool {
	return len(r.slots.told) > 0 && !slices.ContainsFunc(r.slots.told, func(i int) bool { return r.values[i].Known })
}

func (r *Reader) at(slot int) entry.Value {
	if slot < 0 {
		return entry.Value{}
	}
	return r.values[slot]
}

// missing says what a row of this kind lacks, "" where it lacks nothing.
func (r *Reader) missing() string {
	s := &r.slots
	if s.need.effort && (r.at(s.duration).Known || r.at(s.start).Known && r.at(s.end).Known) {
		return ""
	}
	for _, i := range s.enough {
		if r.values[i].Known {
			return ""
		}
	}
	return s.need.reason
}

// openStretch gives the rows under one whose stretch has no end, or that has several stretches at one speed, its speed:
// their strikes have no other stretch to take it from.
func (r *Reader) openStretch() {
	speed, ok := r.index["speed_kn"]
	if !ok || r.layout.Kind != plan.Flat {
		return
	}
	d, trip := r.value("date"), r.value("trip")
	switch {
	case r.ownEffort():
		r.open = lastOpen{date: d, trip: trip}
		if r.at(r.slots.start).Known && !r.at(r.slots.end).Known && !r.at(r.slots.duration).Known || r.atOneSpeed() {
			r.open.speed = r.values[speed]
		}
	case d != r.open.date || trip != r.open.trip:
		r.open = lastOpen{}
	case !r.values[speed].Known:
		r.values[speed] = r.open.speed
	}
}

// atOneSpeed tells a row of several stretches that were all trolled at its speed.
func (r *Reader) atOneSpeed() bool {
	legs := 0
	for _, s := range r.side {
		if s.Kind != plan.Legs {
			continue
		}
		if legs++; s.Values["speed_kn"] != r.value("speed_kn") {
			return false
		}
	}
	return legs > 0
}

// lastOpen is a stretch without an end, or several.
type lastOpen struct{ date, trip, speed entry.Value }

// unended keeps a stretch whose end nobody wrote down, and says so: it is no effort, but
// its strikes have its speed.
func (r *Reader) unended() bool {
	end := slices.IndexFunc(r.targets, func(t target) bool {
		return t.Column.Name == "end_s" && t.Set == 0 && words.NotLogged(t.text) ||
			t.Column.Parse == "stretches" && t.text != ""
	})
	dated := r.value("date").Known || r.value("trip").Known
	if dated && r.unsaidHours() {
		return true
	}
	if !r.slots.need.effort || end < 0 || !dated || !r.at(r.slots.start).Known {
		return false
	}
	if r.targets[end].Column.Name == "end_s" { // else it is asked about as it stands
		r.aside = append(r.aside, r.problem(&r.targets[end], r.targets[end].text,
			"no end: the hours of this stretch are left out"))
	}
	return true
}

// unsaidLines says of a stretch whose row tells that nobody knows how many lines were out that its line-hours are
// left out: a sum of the others is less than what was trolled.
func (r *Reader) unsaidLines() {
	i := slices.IndexFunc(r.targets, func(t target) bool { return t.Column.Name == "lines_out" && t.Set == 0 })
	if i < 0 || r.targets[i].text != "" || r.at(r.targets[i].field).Known || !r.ownEffort() ||
		!r.anyCell(words.ForgotLines) {
		return
	}
	r.aside = append(r.aside, r.problem(&r.targets[i], "",
		"no number of lines, as the row says: its line-hours are left out"))
}

// unsaidBites says of a row whose words tell that nobody counted its bites that there were more than it has: what it
// says was hooked is not all that bit.
func (r *Reader) unsaidBites() {
	i := slices.IndexFunc(r.targets, func(t target) bool { return t.Column.Name == "strikes_n" && t.Set == 0 })
	if i < 0 || r.targets[i].text != "" || r.at(r.targets[i].field).Known || !r.ownEffort() ||
		!r.anyCell(words.LostCount) {
		return
	}
	r.aside = append(r.aside, r.problem(&r.targets[i], "",
		record.NotCounted+": those that it tells of are counted, and there were more"))
}

// unsaidHours keeps a stretch whose row says that nobody wrote down its hours: nothing is left to ask.
func (r *Reader) unsaidHours() bool {
	if !r.slots.need.effort || r.slots.duration < 0 || !r.anyCell(words.ForgotHours) {
		return false
	}
	i := slices.IndexFunc(r.targets, func(t target) bool { return t.Column.Name == "duration_s" && t.Set == 0 })
	if i < 0 || r.targets[i].text != "" {
		return false
	}
	p := r.problem(&r.targets[i], r.targets[i].text, "no hours, as the row says: they are left out")
	r.doubts = append(r.doubts, p)
	return true
}

// forWantOf sets a row aside for the cells, of those that it cannot do without, that could
// not be read: each is a reason, and no other is needed.
func (r *Reader) forWantOf() bool {
	for _, p := range r.aside {
		i := slices.IndexFunc(r.targets, func(t target) bool { return t.Index+1 == p.Pos.Col })
		if i >= 0 && (r.slots.need.effort && isEffort(r.targets[i].Binding) ||
			slices.Contains(r.slots.enough, r.targets[i].field)) {
			p.Whole = true
			r.problems = append(r.problems, p)
		}
	}
	if len(r.problems) == 0 {
		return false
	}
	r.aside = nil
	return true
}

func (r *Reader) checkTimes() {
	s, e := r.at(r.slots.start), r.at(r.slots.end)
	if !s.Known || !e.Known {
		return
	}
	switch {
	case e.Int == s.Int:
		r.faultAt("end_s", "the end is the start: the leg has no hours")
	case e.Int < s.Int:
		r.faultAt("end_s", "the end is before the start")
	case e.Int-s.Int > day:
		r.faultAt("end_s", fmt.Sprintf("a leg of %.1f hours: expected no more than a day", float64(e.Int-s.Int)/3600))
	}
}

// checkCounts holds that counts nest: strikes, of them hooked, of them landed
// and released. What does not nest is not clamped.
func (r *Reader) checkCounts() {
	s := &r.slots
	hooked, strikes := r.at(s.hooked), r.at(s.strikes)
	beyond := r.at(s.landed).Int + r.at(s.released).Int + r.at(s.lost).Int
	if hooked.Known && beyond > hooked.Int {
		r.faultAt("hooked_n", fmt.Sprintf("%d hooked, but %d landed, released or lost", hooked.Int, beyond))
	}
	struck := max(hooked.Int, beyond) + r.at(s.missed).Int
	if strikes.Known && struck > strikes.Int {
		r.faultAt("strikes_n", fmt.Sprintf("%d strikes, but %d hooked or missed", strikes.Int, struck))
	}
}

// leastGirth is the least share of its length that a fish's girth can be: less is a slip of the
// unit (common practice, no source; eels aside). What is only unlikely is a doubt of the season.
const leastGirth = 0.12

// checkGirth leaves a girth out that no fish of the row's length has.
func (r *Reader) checkGirth() {
	l, g := r.value("length_cm"), r.value("girth_cm")
	if !l.Known || !g.Known || g.Real >= leastGirth*l.Real {
		return
	}
	for i := range r.targets {
		if t := &r.targets[i]; t.Column.Name == "girth_cm" && t.field == r.index["girth_cm"] && t.text != "" {
			r.aside = append(r.aside, r.problem(t, t.text, fmt.Sprintf("a girth of %s cm on a fish %s cm long: is "+
				"the unit right? Taken as not logged", short(g.Real), short(l.Real))))
			r.values[t.field] = entry.Value{}
			return
		}
	}
}

// faultAt is a problem of the column called name.
func (r *Reader) faultAt(name, reason string) {
	for i := range r.targets {
		if t := &r.targets[i]; t.Column.Name == name {
			r.fault(t, t.text, reason)
			return
		}
	}
	r.faultRow(reason)
}

// impliedWords take the length kind and the weight state from the headings
// ("Curved fork length", "LJFL", "Dressed weight") where no column states them.
func (r *Reader) impliedWords() {
	for _, w := range r.slots.words {
		if !r.values[w.field].Known && r.values[w.of].Known {
			r.values[w.field] = entry.OfText(w.means)
		}
	}
}

// findWords looks for what the headings of lengths and weights say of each.
func (r *Reader) findWords() {
	for _, w := range []struct{ field, of, list string }{
		{"length_kind", "length_cm", "lengthkind"}, {"weight_state", "scale_kg", "weightstate"},
	} {
		if means := r.headingMeans(w.list, w.of); means != "" && r.has(w.field) && r.has(w.of) {
			r.slots.words = append(r.slots.words, implied{r.index[w.field], r.index[w.of], means})
		}
	}
}

// headingMeans looks for a closed list's words in the heading of a column; the
// longest count.
func (r *Reader) headingMeans(list, column string) string {
	j := slices.IndexFunc(r.targets, func(t target) bool { return t.Column.Name == column })
	if j < 0 {
		return ""
	}
	parts := strings.Fields(plain(r.targets[j].Heading))
	for n := len(parts); n > 0; n-- {
		for from := 0; from+n <= len(parts); from++ {
			words := strings.Join(parts[from:from+n], " ")
			if k, ok := r.words[list][words]; ok && words != "tape" { // a tape may be laid straight
				return k
			}
		}
	}
	return ""
}
