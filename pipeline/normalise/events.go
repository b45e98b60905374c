package normalise

import (
	"fmt"
	"regexp"
	"slices"
	"strings"

	"wakeledger/pipeline/entry"
	"wakeledger/pipeline/phrase"
	"wakeledger/pipeline/plan"
	"wakeledger/pipeline/record"
	"wakeledger/pipeline/words"
)

// eventLog is where a log of events stands: the stretch that is open, with the speed
// and the lines that hold until they are changed.
type eventLog struct {
	date, trip   entry.Value
	open         bool
	fished       bool           // the day had a stretch
	byOut        bool           // "lures out" opened it: "lures in" is their end then
	opened       record.Problem // what is said of the stretch if it never ends
	start        int64
	speed, lines entry.Value
	at           entry.Value              // the time of the last event, in turn
	row          int                      // its row
	last         int64                    // the last clock time, for those of twelve hours and past midnight
	bites        []bite                   // whose fate may stand in a later row
	struck       []map[string]entry.Value // all strikes of the day, whose weight may be told at its end
	outing       string                   // names the trip, where the boat leaves twice on some days
	away         bool                     // the boat left, and nobody said that it is back
	off          bool                     // what follows is not trolled: on the jig
	up           int64                    // when the last stretch ended
	fast         bool                     // the lines that are out, or were, are a spread for high speed
	none         bool                     // the last stretch ended with no line out, by the column of lines
}

// bite is a strike that was told without what became of it.
type bite struct {
	values map[string]entry.Value
	at     int64
}

// Of a bite and what became of it, and of rows that somebody wrote down out of turn, in seconds.
const (
	waits     = 75 * 60 // what became of a bite may be told so long after it
	soon      = 5 * 60  // a miss so soon after a bite is that bite
	outOfTurn = 60 * 60
)

// neverUp is what is said of a stretch that nobody ends.
const neverUp = "the lines of that day were never said to be up: the stretch from here is left out"

// event takes one row of a log of events.
func (r *Reader) event(t *target, text string) {
	e := &r.events
	d, trip := r.value("date"), r.value("trip")
	if !r.value("time_s").Known && (r.upTold(t, text) || r.amends(t, text)) {
		return
	}
	if r.pastNight(text) {
		d = e.date
	} else if d != e.date || trip != e.trip {
		r.aside = append(r.aside, r.Finish()...)
		next := eventLog{date: d, trip: trip}
		if e.away && trip == e.trip && d.Int == e.date.Int+1 {
			next.outing, next.away = e.outing, true // out over night
		}
		*e = next
	}
	if r.spell.timed {
		r.wholeStretch(t, text)
		return
	}
	if n := len(r.spell.weights); n > 0 {
		r.aside = append(r.aside, r.problem(t, text, plural(n, "one weight", "weights")+
			" beside one event: of which fish?"))
	}
	at := r.value("time_s")
	timed := at.Known
	if timed {
		at.Int = r.inTurn(t, text, at.Int)
		e.at, e.row = at, r.row.Num
	}
	if !timed && r.alone() {
		return // a remark between the events, or their sum
	}
	switch {
	case timed:
	case words.NotGone(text):
		return
	case r.onScale(t, text):
		return
	case r.layout.Shape == "records" && corrected(text) && strings.ContainsAny(text, "0123456789"):
		r.aside = append(r.aside, r.problem(t, text, "seems to mend what another row says: mend it there"))
		return
	}
	entry := words.EntryOf(text)
	if entry.Event == words.EventIn && r.events.open && len(phrase.Tell(text, r.defaults(t)).Bites) > 0 {
		entry = words.Entry{} // a tuna, al agua: it is the fish that goes in
	}
	r.outingEvent(entry.Event, d, at)
	ofLines, changed := r.lineEvent(t, text, entry, at, timed)
	if text == "" {
		e.off = e.off && !e.open
		return // its columns tell all
	}
	if entry.Event != words.EventNone {
		text = entry.Rest
	}
	told := r.biteEvent(t, text, at, timed, changed) || ofLines
	switch _, _, _, fate := words.FateOf(text); {
	case told:
	case !e.open && entry.Event == words.EventNone && words.NotGone(text): // "no fishing", with the hour of it
	case timed && e.open && fate:
		r.aside = append(r.aside, r.problem(t, text, "may tell of a bite, in words that were not understood"))
	case !e.open && words.NotGone(r.value("notes").Text): // "n", and beside it "no salimos, viento"
	case r.code(text):
		r.aside = append(r.aside, r.problem(t, text, "not known: neither lines in or up, nor a change, nor a bite; "+
			"read as a remark"))
	}
}

// quietEvent takes a row of a log of events that says in its columns alone, at its time, what speed or how many lines
// there are now.
func (r *Reader) quietEvent(t *target) {
	if r.value("time_s").Known && (r.owns("speed_kn") || r.owns("lines_out")) {
		r.event(t, "")
	}
}

// owns tells whether the row has a value of a name in a cell of its own.
func (r *Reader) owns(name string) bool {
	return r.value(name).Known && r.cellIs(func(string) bool { return true }, name)
}

// shortNight is the longest time without an entry, in seconds, after which lines that were out before midnight are
// taken to be out still; up to longNight where the entry has them up before the day begins.
const (
	shortNight = 6 * 3600
	longNight  = 12 * 3600
	dayBegins  = 5 * 3600
)

// pastNight counts a row of the small hours of the next day on from the day before where lines are out since then: they
// were never said to be up, and they do not go in.
func (r *Reader) pastNight(text string) bool {
	e := &r.events
	d, at, what, most := r.value("date"), r.value("time_s"), words.EntryOf(text).Event, int64(shortNight)
	if what == words.EventUp && at.Int < dayBegins {
		most = longNight
	}
	if !e.open || !at.Known || !d.Known || !e.date.Known || d.Int != e.date.Int+1 || r.value("trip") != e.trip ||
		what == words.EventIn || what == words.EventOut || what == words.EventLeave || what == words.EventClear ||
		at.Int >= day/2 || at.Int+day-e.last > most {
		return false
	}
	r.values[r.index["date"]] = e.date
	return true
}

// outingEvent parts the trips of a day on which the boat left twice.
func (r *Reader) outingEvent(what words.Event, date, at entry.Value) {
	e := &r.events
	leaves := what == words.EventLeave || what == words.EventWeigh && e.outing == "" ||
		what == words.EventClear && !e.away
	if leaves && r.layout.Outings && date.Known && at.Known {
		r.aside = append(r.aside, r.Finish()...)
		*e = eventLog{date: e.date, trip: e.trip, last: e.last, outing: outingName(date, at), away: true}
	}
	switch what {
	case words.EventWeigh:
		e.away = true
	case words.EventHome, words.EventDrop:
		e.away = false
	}
	if e.outing != "" {
		r.put("trip", entry.OfText(e.outing))
	}
}

// Finish is what the last row leaves open: lines that were never said to be up.
func (r *Reader) Finish() []record.Problem {
	if !r.events.open {
		return nil
	}
	r.events.open = false
	return []record.Problem{r.events.opened}
}

// inTurn puts a clock time behind the last one: of twelve hours, past midnight, or, a few
// minutes before it, where it stands.
func (r *Reader) inTurn(t *target, text string, at int64) int64 {
	e := &r.events
	if by := e.last%day - at; by > 0 && by <= outOfTurn {
		r.doubts = append(r.doubts, r.problem(t, text, "its time is before that of the row above: taken as it stands"))
		return at + e.last - e.last%day
	}
	for at < e.last && at+day/2 >= e.last && at < day/2 && e.last < day {
		at += day / 2
	}
	if at < e.last {
		at += day
	}
	e.last = at
	return at
}

// code reports whether an entry is one that a log of events repeats: a word or
// three, which should be known. Longer ones are remarks.
func (r *Reader) code(text string) bool {
	toks := words.Scan(text)
	return (r.layout.Shape == "table" || r.value("time_s").Known) && len(toks) > 0 && len(toks) <= 3
}

// alone tells a row of one cell.
func (r *Reader) alone() bool {
	n := 0
	for _, c := range r.row.Cells {
		if trimmed(c) != "" {
			n++
		}
	}
	return n == 1
}

// lineEvent opens, closes or changes the stretch. It reports whether the entry is known to
// speak of lines, of speed, or of nothing that counts, and whether it changes them.
func (r *Reader) lineEvent(t *target, text string, said words.Entry, at entry.Value, timed bool) (known, changed bool) {
	e, what, by := &r.events, said.Event, said.Lines
	speed, lines := r.setting(text)
	if e.open && what == words.EventNone && (speedThen.MatchString(text) || r.ofBiteAlone(text)) {
		speed = entry.Value{} // of that bite
	}
	if by > 0 && !lines.Known && e.lines.Known {
		lines = entry.OfInt(e.lines.Int + int64(by))
		if what == words.EventFewer {
			lines = entry.OfInt(max(0, e.lines.Int-int64(by)))
		}
	}
	if lines.Known && lines.Int == 0 {
		e.none = r.value("lines_out").Known
		what, lines = words.EventUp, entry.Value{}
	}
	// where no line out says each time that they are up, some say that they are in
	if r.layout.NoneUp && !e.open && timed && what == words.EventNone && r.owns("lines_out") && lines.Int > 0 {
		what = words.EventIn
	}
	again := e.none && r.value("lines_out").Int > 0 || speed.Known && lines.Known && what == words.EventNone
	if again && e.fished && !e.open && timed && what != words.EventUp {
		what = words.EventIn // "back out, 4 lines, 7 kts", where there was none
	}
	out := what == words.EventOut
	if out {
		what = words.EventIn
	}
	if what == words.EventIn && e.open && out != e.byOut {
		what = words.EventUp
	}
	if !timed && (what == words.EventIn || what == words.EventUp) {
		r.aside = append(r.aside, r.problem(t, text, "no time: when the lines went in or came up is not known"))
		return true, false
	}
	if !speed.Known && e.open && timed && e.speed.Known && words.ForgotSpeed(text+"; "+r.value("notes").Text) {
		r.endStretch(at)
		r.beginStretch(t, text, at)
		e.speed = entry.Value{}
	}
	paceless := what == words.EventPace && !speed.Known && (!lines.Known || lines == e.lines) && e.open
	if paceless {
		r.aside = append(r.aside,
			r.problem(t, text, "the speed changes, and to what is not said: not logged from here"))
	}
	changed = speed.Known && speed != e.speed || lines.Known && lines != e.lines || paceless && e.speed.Known
	switch {
	case what == words.EventUp && e.open:
		if lines.Known && corrected(text) {
			e.lines = lines // only had 4 out, not 5
		}
		r.endStretch(at)
	case what == words.EventUp && !e.fished:
		r.aside = append(r.aside, r.problem(t, text, "lines up, and nobody said when they went in: that stretch is "+
			"left out"))
	case what == words.EventIn && !e.open:
		e.byOut = out
		r.afresh(t, text, speed, lines)
		r.beginStretch(t, text, at)
	case changed && e.open && timed:
		r.endStretch(at)
		r.beginStretch(t, text, at)
	}
	if speed.Known || paceless {
		e.speed = speed
	}
	if lines.Known {
		e.lines = lines
	}
	return what != words.EventNone || speed.Known || lines.Known, changed
}

// speedThen tells the speed at one bite, which is no change: "wahoo, doing 8 then".
var speedThen = regexp.MustCompile(`(?i)\b(?:doing|going|making|at)\s+[\d.,]*\d(?:\s*-\s*[\d.,]*\d)?\s*` +
	`(?:kts?|kn|knots)?\s+(?:then|at the time|when (?:he|she|it) (?:hit|bit|struck))(?:\W*$|\))`)

// ofBiteAlone tells a speed in a column of the row of a bite that is none of the stretch.
func (r *Reader) ofBiteAlone(text string) bool {
	return r.layout.BiteSpeeds && (r.value("outcome").Text != "" || phrase.TellsBite(text)) &&
		(r.value("speed_kn").Known || r.value("strike_speed_kn").Known)
}

// highSpeed tells a spread of its own: "high speed rods in".
var highSpeed = regexp.MustCompile(`(?i)\bhigh[ -]?speed\b`)

// setting is the speed and the number of lines that a row tells: in columns, else in its words.
func (r *Reader) setting(text string) (speed, lines entry.Value) {
	if speed = r.value("strike_speed_kn"); !speed.Known {
		speed = r.value("speed_kn")
	}
	lines = r.value("lines_out")
	set := phrase.Settings(text)
	if notes := r.value("notes").Text; notes != "" && len(set.Speeds)+len(set.Lines) == 0 {
		set = phrase.Settings(notes)
	}
	if n := len(set.Speeds); !speed.Known && n > 0 {
		speed = entry.OfReal(set.Speeds[n-1])
	}
	if n := len(set.Lines); !lines.Known && n > 0 {
		lines = entry.OfInt(int64(set.Lines[n-1]))
	}
	return speed, lines
}

// afresh forgets the speed and the lines of the stretch before where lines go in again and a mark stands in their
// place, or nothing where the log else says them each time.
func (r *Reader) afresh(t *target, text string, speed, lines entry.Value) {
	e := &r.events
	if !e.fished {
		return
	}
	forget := func(now entry.Value, was *entry.Value, always bool, what string, names ...string) {
		if now.Known || !was.Known || !always && !r.cellIs(words.NotLogged, names...) ||
			r.cellIs(words.Ditto, names...) {
			return
		}
		*was = entry.Value{}
		r.doubts = append(r.doubts, r.problem(t, text, "lines go in again and "+what+
			" is not said, as it is else: not logged"))
	}
	forget(speed, &e.speed, r.layout.SpeedAfresh, "their speed", "speed_kn", "strike_speed_kn")
	forget(lines, &e.lines, r.layout.LinesAfresh || e.fast != highSpeed.MatchString(text), "how many", "lines_out")
}

// cellIs tells whether what stands in a column of one of the names is of a kind: "?", or "same".
func (r *Reader) cellIs(kind func(string) bool, names ...string) bool {
	return slices.ContainsFunc(r.targets, func(t target) bool {
		text := r.logged(&t)
		return slices.Contains(names, t.Column.Name) && t.given == "" && text != "" && kind(text)
	})
}

func (r *Reader) beginStretch(t *target, text string, at entry.Value) {
	e := &r.events
	e.none = false
	e.open, e.fished, e.start = true, true, at.Int
	if said := words.EntryOf(text).Event; said == words.EventIn || said == words.EventOut {
		e.fast = highSpeed.MatchString(text)
	}
	e.opened = r.problem(t, text, neverUp)
}

func (r *Reader) endStretch(at entry.Value) {
	e := &r.events
	e.open, e.up = false, at.Int
	if at.Int <= e.start {
		return
	}
	v := map[string]entry.Value{"start_s": entry.OfInt(e.start), "end_s": at}
	if e.speed.Known {
		v["speed_kn"] = e.speed
	}
	if e.lines.Known {
		v["lines_out"] = e.lines
	}
	r.beside(plan.Legs, v)
}

// upTold takes a line without a time, of that day or the next, that says when the lines came up which nobody wrote
// down: "forgot to log lines up yesterday, it was 2:15p". It reports whether the line does.
func (r *Reader) upTold(t *target, text string) bool {
	e, d := &r.events, r.value("date")
	said := text + "; " + r.value("notes").Text
	clocks := phrase.Clocks(said)
	if !e.open || !d.Known || !e.date.Known || d.Int < e.date.Int || d.Int > e.date.Int+1 || len(clocks) != 1 ||
		!words.ForgotUp(said) {
		return false
	}
	at := int64(clocks[0].Seconds)
	if !clocks[0].Sure && at < e.last && at < day/2 {
		at += day / 2
	}
	if at <= e.last {
		return false // before what that day tells last
	}
	r.endStretch(entry.OfInt(at))
	if n := len(r.side); n > 0 {
		v := r.side[n-1].Values
		v["date"] = e.date
		if e.outing == "" {
			v["trip"] = e.trip
		} else {
			v["trip"] = entry.OfText(e.outing)
		}
	}
	r.doubts = append(r.doubts, r.problem(t, said, fmt.Sprintf("the lines of that stretch came up at %d:%02d, as this "+
		"line says", at/3600, at/60%60)))
	return true
}

// biteEvent takes strikes, or what became of those before. It reports whether the row tells
// of any. Words that were not understood where the lines or the speed change tell of that.
func (r *Reader) biteEvent(t *target, text string, at entry.Value, timed, changed bool) bool {
	e := &r.events
	notes := r.value("notes").Text
	off := words.Otherwise(text+"; "+notes) || words.AnotherMethod(text) || words.AnotherMethod(notes) ||
		e.fished && !e.open && words.NamesOther(text) // on the wreck, jig: 3 amberjack, between two stretches
	if e.off = !e.open && (e.off || off); e.off || off {
		r.like = 0
		return true // five mackerel on the jig
	}
	v := r.copyOf()
	delete(v, "speed_kn")
	delete(v, "lines_out")
	if timed {
		v["time_s"] = at
	}
	if now, _ := r.setting(text); !v["strike_speed_kn"].Known {
		switch {
		case e.open && timed && now.Known && (speedThen.MatchString(text) || r.ofBiteAlone(text)):
			v["strike_speed_kn"] = now
		case e.open && e.speed.Known:
			v["strike_speed_kn"] = e.speed // should nobody write down when the lines came up
		case !e.open && !timed && now.Known:
			v["strike_speed_kn"] = now // of a spell whose hours nobody wrote down
		}
	}
	told := r.tell(t, text, timed)
	if changed && len(told.Bites) == 0 {
		told.Left = nil
	}
	for _, left := range told.Left {
		r.aside = append(r.aside, r.problem(t, left, "speaks of fish or bites in words that were not understood"))
	}
	if len(told.Bites) == 0 {
		switch {
		case v["outcome"].Text != "":
			told.Bites = []phrase.Bite{{}}
		// its columns measure a fish
		case e.open && timed && (v["length_cm"].Known || v["girth_cm"].Known || v["scale_kg"].Known):
			told.Bites = []phrase.Bite{{Fish: phrase.Fish{Fate: words.Landed}}}
			if fish := phrase.FishList(text, r.defaults(t)); len(fish) == 1 {
				told.Bites[0].Name = fish[0].Name
			}
		default:
			return told.Nothing || len(told.Left) > 0
		}
	}
	if several := r.bitesBeside(t, told.Bites, notes); several != nil {
		told.Bites = several
	}
	one := len(told.Bites) == 1 && told.Bites[0].N <= 1
	ashore := timed && !e.open && e.fished && at.Int > e.up+soon
	// "strike" with what became of it beside is one of its own
	anew := v["outcome"].Text != "" && len(told.Bites) > 0 && told.Bites[0].Fate == words.Bit
	several := 1
	if one { // a column counts fish that came alike
		several = max(1, int(r.value("count").Int))
	}
	for _, b := range told.Bites {
		for k := range max(b.N, several) {
			x := r.ofBite(t, v, b, one)
			if one && k > 0 {
				r.further(x, k)
			}
			if r.like > 1 && one {
				r.put("outcome", x["outcome"]) // of each of them
			}
			own := anew || b.Fate == words.Bit && x["outcome"].Text != "" // its remark ends it
			if !own && r.ended(x, timed) {
				continue
			}
			if r.newBite(x); ashore {
				ashore = false
				r.aside = append(r.aside, r.problem(t, text,
					"the lines were up by then, as the log says: was it trolled?"))
			}
		}
	}
	r.weights(t, text)
	return true
}

// bitesBeside are the bites of the notes beside a bare "bite", where they tell of several and of each what became of
// it: "double tuna, both in the box, 17 and 12.5 lb". nil: they do not.
func (r *Reader) bitesBeside(t *target, told []phrase.Bite, notes string) []phrase.Bite {
	if len(told) != 1 || told[0].N > 1 || told[0].Name != "" || told[0].Fate > words.Bit || notes == "" ||
		r.value("outcome").Known || r.value("species_logged").Known {
		return nil
	}
	n, beside := 0, phrase.Tell(notes, r.defaults(t))
	for _, b := range beside.Bites {
		if b.Fate < words.Missed || b.At != nil {
			return nil
		}
		n += max(1, b.N)
	}
	if n < 2 || len(beside.Left) > 0 {
		return nil
	}
	r.doubts = append(r.doubts, r.problem(t, notes, fmt.Sprintf("%d bites, as the words beside it say", n)))
	return beside.Bites
}

// further has a bite be one of several alike that a row counts: what was measured is that of the first, or of each
// in a list.
func (r *Reader) further(v map[string]entry.Value, k int) {
	for _, name := range ofOne {
		delete(v, name)
	}
	r.measure(v, k)
}

// ofBite is one bite of a row with the values that all of the row's have. Its columns stand
// above its words; a remark beside one bite says more of it.
func (r *Reader) ofBite(t *target, row map[string]entry.Value, b phrase.Bite, one bool) map[string]entry.Value {
	v := map[string]entry.Value{}
	for name, x := range row {
		v[name] = x
	}
	fill := func(more map[string]entry.Value) {
		for name, x := range more {
			if !v[name].Known {
				v[name] = x
			}
		}
	}
	if !one {
		delete(v, "outcome") // of each its own
	}
	fill(r.fishValues(b.Fish))
	if b.Cause != "" {
		v["loss_cause"] = entry.OfText(b.Cause)
	}
	if one {
		r.remark(t, v, fill)
	}
	return v
}

// remark adds what the notes beside a bite say of it: its fate where the row tells none, and
// the fish's measures.
func (r *Reader) remark(t *target, v map[string]entry.Value, fill func(map[string]entry.Value)) {
	notes := r.value("notes").Text
	if notes == "" {
		return
	}
	fate, cause, at, ok := words.FateOf(notes)
	toks := words.Scan(strings.TrimRight(notes, "!. "))
	switch hooked := v["outcome"].Text == "hooked"; {
	case !hooked && v["outcome"].Text != "":
	case !hooked && toks[len(toks)-1].Text == "on": // long corner - on!
		v["outcome"] = entry.OfText("hooked")
	case !hooked && fate == words.Lost && strings.Contains(strings.ToLower(notes[at[0]:at[1]]), "drop"):
		r.aside = append(r.aside, r.problem(t, notes, "dropped: was it hooked and lost, or never hooked? Its "+
			"outcome is not logged"))
	case ok && fate >= words.Missed:
		v["outcome"] = entry.OfText(outcomeOf(fate))
		if cause != "" {
			v["loss_cause"] = entry.OfText(cause)
		}
	case ok && fate == words.Hooked && !hooked: // hooked, gone after 5 min
		if told := phrase.Tell(notes, phrase.Defaults{}).Bites; len(told) == 1 && told[0].Fate > words.Bit {
			v["outcome"] = entry.OfText(outcomeOf(told[0].Fate))
		}
	}
	fish := ofOneBite(phrase.FishList(notes, phrase.Defaults{}))
	if len(fish) == 1 && fish[0].N <= 1 {
		of := r.fishValues(fish[0])
		delete(of, "outcome")
		fill(of)
	}
	if name := v["species_logged"].Text; len(fish) == 0 && name != "" { // girth 57 cm, of the fish that the row names
		if fish = phrase.FishList(name+", "+notes, phrase.Defaults{}); len(fish) == 1 && fish[0].GirthCm > 0 {
			fill(map[string]entry.Value{"girth_cm": r.fishValues(fish[0])["girth_cm"]})
		}
	}
}

// ofOneBite leaves out of a remark's fish those that are but a name behind one of which more is told: of "tuna in the
// boat, 40 lb, blue jet" the lure.
func ofOneBite(fish []phrase.Fish) []phrase.Fish {
	told := func(f phrase.Fish) bool { return f.Fate != words.FateUnknown || f.Kg+f.LengthCm > 0 }
	if len(fish) < 2 || !told(fish[0]) || slices.ContainsFunc(fish[1:], func(f phrase.Fish) bool {
		return told(f) || f.N > 1
	}) {
		return fish
	}
	return fish[:1]
}

// ended gives what became of it to a bite of an earlier row, if there is one.
func (r *Reader) ended(v map[string]entry.Value, timed bool) bool {
	e := &r.events
	outcome := v["outcome"].Text
	if !timed || outcome == "" || outcome == "hooked" {
		return false
	}
	found := -1
	for i, b := range e.bites {
		since, hooked := e.last-b.at, b.values["outcome"].Text == "hooked"
		missed := outcome == "missed" && (since > soon || hooked)
		if since > waits || missed || otherFish(b.values, v) {
			continue
		}
		if found < 0 || hooked && e.bites[found].values["outcome"].Text != "hooked" {
			found = i
		}
	}
	if found < 0 {
		return false
	}
	of := e.bites[found].values
	for name, x := range v {
		if name == "outcome" || !of[name].Known {
			of[name] = x
		}
	}
	e.bites = slices.Delete(e.bites, found, found+1)
	return true
}

// otherFish reports whether two rows name different fish, or different lines.
func otherFish(a, b map[string]entry.Value) bool {
	return a["species"].Known && b["species"].Known && a["species"] != b["species"] ||
		otherLine(a["line"].Text, b["line"].Text)
}

// otherLine reports whether two names are of different lines: "left" may be short for "left long".
func otherLine(a, b string) bool {
	within := func(short, long string) bool {
		return !slices.ContainsFunc(words.Scan(short), func(t words.Token) bool {
			return !slices.ContainsFunc(words.Scan(long), func(o words.Token) bool { return o.Text == t.Text })
		})
	}
	return !within(a, b) && !within(b, a)
}

// newBite keeps a strike. What became of it may stand in a later row, unless it is told; of
// earlier bites that nobody called hooked nothing more is said once another one comes.
func (r *Reader) newBite(v map[string]entry.Value) {
	e := &r.events
	r.beside(plan.Strikes, v)
	e.struck = append(e.struck, v)
	e.bites = slices.DeleteFunc(e.bites, func(b bite) bool {
		return b.values["outcome"].Text == "" && e.last-b.at > soon
	})
	if outcome := v["outcome"].Text; outcome == "" || outcome == "hooked" {
		e.bites = append(e.bites, bite{v, e.last})
	}
}
