package words

import (
	"regexp"
	"slices"
	"strconv"
	"strings"
	"time"
)

var (
	hedges    = mustLoad("hedges")
	totals    = mustLoad("totals")
	nothings  = mustLoad("nothing")
	notGone   = mustLoad("notgone")
	planned   = mustLoad("planned")
	outThere  = mustLoad("outthere")
	nights    = mustLoad("nights")
	again     = mustLoad("again")
	dittos    = mustLoad("ditto")
	numbers   = mustLoad("numbers")
	events    = mustLoad("events")
	forgots   = mustLoad("forgot")
	methods   = mustLoad("methods")
	alones    = mustLoad("fatealone")
	elsewise  = mustLoad("otherwise")
	scales    = mustLoad("scale")
	months    = mustLoad("months")
	weekdays  = mustLoad("weekdays")
	fishes    = mustLoad("fish")
	glues     = mustLoad("glue")
	units     = mustLoad("units")
	lineWords = mustLoad("lines")
	kinds     = mustLoad("kinds")
	halves    = mustLoad("halves")
)

// IsTotal reports whether a cell names a row of sums: Total, November total, carried fwd.
func IsTotal(text string) bool {
	toks := trimmed(text)
	if key, ok := totals.whole(toks); ok && key != "beside" && key != "span" {
		return true
	}
	found := false
	for i := 0; i < len(toks); {
		if next, ok := totals.atKey(toks, i, "with"); ok {
			found, i = true, next
			continue
		}
		if _, ok := totals.atKey(toks, i, "beside"); !ok && !beside(toks[i]) {
			return false
		}
		i++
	}
	return found
}

// beside reports whether a token may stand in the name of a row of sums.
func beside(t Token) bool {
	_, month := Month(t.Text)
	_, day := Weekday(t.Text)
	return t.Kind != Word || month || day
}

// SumsUp reports whether a sentence tells of a whole month, season or year with a figure: "out on 6 days this month, 11
// fish".
func SumsUp(text string) bool {
	return strings.ContainsAny(text, "0123456789") && totals.anyKey(Scan(text), "span")
}

// Hedged reports whether a text marks what it says as a guess.
func Hedged(text string) bool {
	toks := Scan(text)
	for i := range toks {
		if _, ok := HedgeAt(toks, i, true); ok {
			return true
		}
		if _, ok := HedgeAt(toks, i, false); ok && i > 0 {
			return true
		}
	}
	return false
}

// OnlyGuess reports whether a text says nothing but that something was guessed: "guess", "est. weight".
func OnlyGuess(text string) bool {
	toks, guess := Scan(strings.TrimRight(text, ". ")), false
	for i := 0; i < len(toks); {
		next, ok := HedgeAt(toks, i, false)
		switch {
		case ok && toks[i].Kind == Word:
			guess, i = true, next
		case toks[i].Text == "weight" || toks[i].Text == "wt" || toks[i].Text == ".":
			i++
		default:
			return false
		}
	}
	return guess
}

// GuessedCell reports whether a cell is a number with the mark of a guess behind it that is one in a cell alone:
// "28 st."
func GuessedCell(text string) bool {
	toks := Scan(strings.TrimRight(text, ". "))
	if len(toks) != 2 || toks[0].Kind == Word || strings.Trim(toks[0].Text, "0123456789.,") != "" {
		return false
	}
	next, ok := hedges.atKey(toks, 1, "cell")
	return ok && next == len(toks)
}

// HedgeAt finds the mark of a guess at token i, of those that stand before or after a number.
func HedgeAt(toks []Token, i int, before bool) (next int, ok bool) {
	if before {
		return hedges.atKey(toks, i, "before")
	}
	return hedges.atKey(toks, i, "after")
}

// Nothing reports whether a cell, or one of its sentences where no other tells a fate,
// says that there was no bite: zip, skunked, no bites.
func Nothing(text string) bool {
	if _, _, _, fate := FateOf(text); fate {
		return false
	}
	for _, clause := range strings.FieldsFunc(text, func(r rune) bool { return strings.ContainsRune(".;!\n", r) }) {
		if onlyNothing(trimmed(clause)) {
			return true
		}
	}
	return false
}

func onlyNothing(toks []Token) bool {
	found := false
	for i := 0; i < len(toks); {
		h, ok := nothings.at(toks, i)
		if !ok && found && toks[i].Text == "," {
			i++ // said twice: "nada, not a touch"
			continue
		}
		if !ok {
			return false
		}
		found = found || h.Key == "nothing"
		i = h.Next()
	}
	return found
}

// NothingAt finds words for no bite at token i, or words that may stand beside them.
func NothingAt(toks []Token, i int) (next int, nothing, ok bool) {
	h, ok := nothings.at(toks, i)
	if !ok {
		return 0, false, false
	}
	return h.Next(), h.Key == "nothing", true
}

// NotGone reports whether a cell says that the boat did not go fishing.
func NotGone(text string) bool {
	toks := trimmed(text)
	if key, ok := notGone.whole(toks); ok && (key == "start" || key == "alone") {
		return true
	}
	if notGone.anyKey(toks, "any") {
		return true
	}
	for i := range toks {
		if i > 0 && !Stops(toks[i-1]) && toks[i-1].Text != "-" {
			continue
		}
		if h, ok := notGone.at(toks, i); ok && h.Key == "start" {
			return true
		}
	}
	return false
}

// Night is what a text says of a trip of several days: "second" on a further day of it, "over"
// of a night out, "contest" of days that begin and end at the dock.
func Night(text, kind string) bool { return nights.anyKey(Scan(text), kind) }

// OfNextDay parts the words behind a clock time that say it is of the day after: "06:10 (next day)".
func OfNextDay(text string) (clock string, ok bool) {
	toks := Scan(text)
	for i := 1; i < len(toks); i++ {
		if next, ok := nights.atKey(toks, i, "next"); ok && strings.Trim(text[toks[next-1].End:], " ).!") == "" {
			return strings.TrimRight(text[:toks[i].At], " (,;"), true
		}
	}
	return "", false
}

// AboutClock parts a clock time from the word before or behind it that says that it is not exact: "abt 2:20", "vers
// 14h20". What asks whether it is so, "14:20?", is none, nor is a zone in capitals, "7:00 EST".
func AboutClock(text string) (clock string, ok bool) {
	toks := Scan(text)
	if len(toks) < 2 {
		return "", false
	}
	if next, ok := HedgeAt(toks, 0, true); ok && next < len(toks) && !toks[0].Caps {
		return text[toks[next].At:], true
	}
	for i := 1; i < len(toks); i++ {
		if next, ok := HedgeAt(toks, i, false); ok && next == len(toks) && toks[i].Kind == Word && !toks[i].Caps {
			return strings.TrimRight(text[:toks[i].At], " (,;"), true
		}
	}
	return "", false
}

// OnWeekday parts the name of a weekday from the clock time behind it: "Sat 5:15 pm".
func OnWeekday(text string) (day time.Weekday, clock string, ok bool) {
	toks := Scan(text)
	if len(toks) < 2 {
		return 0, "", false
	}
	if day, ok = Weekday(toks[0].Text); !ok {
		return 0, "", false
	}
	return day, strings.TrimLeft(text[toks[0].End:], " .,"), true
}

// notLogged are cells that say that nothing was logged, in lower case.
var notLogged = map[string]bool{"-": true, "--": true, "—": true, "–": true, ".": true, "...": true, "…": true,
	"?": true, "??": true, "n/a": true, "na": true, "n.a.": true,
	"n/l": true, "nr": true, "n/r": true, "not recorded": true, "unk": true, "unknown": true, "not logged": true,
	"not known": true, "not taken": true, "not weighed": true,
	"not identified": true, "unidentified": true, "not measured": true,
	"s/d": true, "sin dato": true, "sin datos": true, "n.d.": true, "nc": true, "k.a.": true,
	"not noted": true, "no anotado": true, "no anotada": true, "sin anotar": true, "non noté": true, "non notée": true,
	"non annotato": true, "non annotata": true, "não anotado": true, "não anotada": true, "nicht notiert": true}

// longestNotLogged is the bytes of the longest of them: most cells are no such word, and end here.
const longestNotLogged = 14

// NotLogged reports whether a cell is blank, or says that nothing was logged.
func NotLogged(cell string) bool {
	return cell == "" || len(cell) <= longestNotLogged && strings.IndexByte("-.?nNuUsSkK", cell[0]) >= 0 &&
		notLogged[strings.ToLower(cell)] ||
		cell == "—" || cell == "–" || cell == "…"
}

// AnyFish reports whether a text is a word for fish of any kind, and no more.
func AnyFish(text string) bool {
	key, ok := fishes.whole(trimmed(text))
	return ok && key == "any"
}

// Again reports whether a remark says that its row was entered before.
func Again(text string) bool { return again.anyKey(Scan(text), "again") }

// Uncounted reports whether a remark says, in a clause of its own, that its row is not to be counted.
func Uncounted(text string) bool {
	toks := trimmed(text)
	for i := range toks {
		if i > 0 && !Stops(toks[i-1]) {
			continue
		}
		if next, ok := again.atKey(toks, i, "uncounted"); ok && (next == len(toks) || Stops(toks[next])) {
			return true
		}
	}
	return false
}

// Ditto reports whether a cell stands for the one above it.
func Ditto(text string) bool {
	if _, ok := dittos.whole(Scan(text)); ok {
		return true
	}
	_, ok := dittos.whole(trimmed(text))
	return ok
}

// Number is the number that a token says, in digits or in words.
func Number(token string) (int, bool) {
	token = Fold(token)
	if plainWord(token) && numbers.by()[token] == nil {
		return 0, false // most words are none
	}
	if n, err := strconv.Atoi(token); err == nil && n >= 0 {
		return n, true
	}
	key, ok := numbers.whole(Scan(token))
	if !ok {
		return 0, false
	}
	n, err := strconv.Atoi(key)
	return n, err == nil
}

// ScaleAt finds words for a scale at token i of prose.
func ScaleAt(toks []Token, i int) (next int, ok bool) {
	h, ok := scales.at(toks, i)
	if !ok || h.Key != "sure" {
		return 0, false
	}
	return h.Next(), true
}

// Scaled reports whether a heading or a remark says that a weight is from a scale.
func Scaled(text string) bool {
	_, ok := scales.any(Scan(text))
	return ok
}

// OnScale is the figure, with its unit, beside nothing but words for a scale: "12.5 scale", "balança 7,7 kg". "" where
// there is none.
func OnScale(text string) string {
	best, fields := "", strings.Fields(text)
	for k := 1; k < len(fields) && !Hedged(text); k++ {
		head, tail := strings.Join(fields[:k], " "), strings.Join(fields[k:], " ")
		for _, x := range [][2]string{{head, tail}, {tail, head}} {
			figure, scale := strings.Trim(x[0], " ,;:-"), x[1]
			if figureAlone.MatchString(figure) && onlyScale(scale) && len(figure) > len(best) {
				best = figure
			}
		}
	}
	return best
}

// onlyScale tells words for a scale with no more than short ones beside them: "on the scale", "(na balança)".
func onlyScale(text string) bool {
	toks, found := Scan(text), false
	for i := 0; i < len(toks); {
		next, ok := ScaleAt(toks, i)
		switch {
		case ok:
			found, i = true, next
		case len(toks[i].Text) > 3 || strings.ContainsAny(toks[i].Text, "0123456789"):
			return false
		default:
			i++
		}
	}
	return found
}

// figureAlone is a figure, with its unit perhaps.
var figureAlone = regexp.MustCompile(`^\d+(?:[.,]\d+)?\s*(?:#|kgs?|kilos?|lbs?|pounds?|g)?$`)

// ByScale reports whether a cell beside a weight says that a scale gave it, and whether it says
// either way: in words, or by the letter of a code, S for scale and E for estimate.
func ByScale(text string) (scale, told bool) {
	switch strings.ToLower(strings.Trim(text, " .")) {
	case "s":
		return true, true
	case "e":
		return false, true
	}
	toks := Scan(text)
	for i := range toks {
		no := denied(toks, i) || i > 0 && !Stops(toks[i-1]) && denied(toks, i-1) // never on the scale
		if _, ok := scales.at(toks, i); ok && !no {
			return true, true
		}
	}
	if Scaled(text) || Hedged(text) { // not weighed
		return false, true
	}
	for _, tok := range toks {
		if means := weighedWords[Fold(tok.Text)]; means != "" { // Formula, L x G x G / 800
			return means == "scale", true
		}
	}
	return false, false
}

// Event is what an entry of an event log says of the lines.
type Event int

// The events. EventOut is "lines out", which some write for lines in the water and
// others for lines out of it.
const (
	EventNone  Event = iota
	EventQuiet       // known, and nothing of the lines
	EventLeave       // the harbour
	EventHome
	EventClear // the harbour's mouth: told behind the leaving, or instead of it
	EventWeigh // the anchor: the boat leaves, or has lain for a while
	EventDrop
	EventIn
	EventUp
	EventOut
	EventChange // of course, or of lines by a figure that stands elsewhere
	EventPace   // another speed
	EventMore   // so many lines more
	EventFewer
)

var eventOf = map[string]Event{"in": EventIn, "up": EventUp, "out": EventOut, "change": EventChange, "pace": EventPace,
	"more": EventMore, "fewer": EventFewer,
	"only in": EventIn, "only up": EventUp, "only out": EventOut, "none": EventQuiet, "leave": EventLeave,
	"home": EventHome, "clear": EventClear, "weigh": EventWeigh, "drop": EventDrop}

// Entry is an entry of an event log, understood.
type Entry struct {
	Event Event
	Lines int    // of EventMore and EventFewer, 1 where it tells none
	Rest  string // what it says beside
}

// EntryOf is what an entry says of the lines.
func EntryOf(text string) Entry {
	toks := trimmed(text)
	if key, ok := events.whole(toks); ok && key != "more" && key != "fewer" {
		return Entry{Event: eventOf[key]}
	}
	quiet := EventNone
	for i := range toks {
		h, ok := events.at(toks, i)
		e := eventOf[h.Key]
		if !ok || strings.HasPrefix(h.Key, "only") || (i > 0 || e != EventQuiet) && e < EventIn &&
			!(i == 0 && len(h.Used) > 1) || i > 0 && len(h.Used) == 1 {
			continue
		}
		if i > 0 && e >= EventIn && otherLines(toks[i-1]) && text[toks[i-1].End:toks[i].At] == " " {
			continue // bottom lines down
		}
		if forgotten(toks, i) || longerFate(toks, i, h) {
			continue
		}
		out := Entry{Event: e, Rest: text[:toks[i].At] + text[toks[h.Next()-1].End:]}
		switch {
		case e < EventIn: // what follows may say more: cast off, lines in
			quiet = e
		case e != EventMore && e != EventFewer:
			return out
		case len(h.Used) > 1 || len(toks) == 1:
			out.Lines = numberIn(toks[i:h.Next()])
			return out
		}
	}
	return Entry{Event: quiet, Rest: text}
}

// longerFate tells words of an event that begin a longer phrase of what became of a fish: turned, turned loose.
func longerFate(toks []Token, i int, event Hit) bool {
	f, ok := FateAt(toks, i)
	return ok && f.Fate >= Missed && len(f.Used) > len(event.Used)
}

// forgotten tells a token in a clause that says that something was not written down: forgot to log lines out.
func forgotten(toks []Token, i int) bool {
	from, to := i, i
	for from > 0 && !Stops(toks[from-1]) {
		from--
	}
	for to < len(toks) && !Stops(toks[to]) {
		to++
	}
	return forgots.anyKey(toks[from:to], "forgot")
}

// ForgotUp reports whether a text says that somebody did not write down when the lines came up.
func ForgotUp(text string) bool {
	toks := Scan(text)
	for i := range toks {
		if h, ok := events.at(toks, i); ok && eventOf[h.Key] == EventUp && forgotten(toks, i) {
			return true
		}
	}
	return false
}

// ForgotHours reports whether a text says that nobody wrote down how long the lines were out: "hours not kept".
func ForgotHours(text string) bool { return forgots.anyKey(Scan(text), "hours") }

// ForgotSpeed reports whether a text says that nobody wrote down the speed.
func ForgotSpeed(text string) bool { return forgots.anyKey(Scan(text), "speed") }

// SpeedNotTaken reports whether a clause of a text says that nobody looked at the speed or wrote it down.
func SpeedNotTaken(text string) bool {
	toks := Scan(text)
	if ForgotSpeed(text) {
		return true
	}
	for i, t := range toks {
		if speedWords[t.Text] && forgotten(toks, i) {
			return true
		}
	}
	return false
}

var speedWords = set("speed speeds velocidad vitesse velocita velocidade geschwindigkeit fahrt")

// Unsure reports whether a text says that its writer does not know if something was so: "cannot say if it was on".
func Unsure(text string) bool { return forgots.anyKey(Scan(text), "fate") }

// ForgotLines reports whether a clause of a text says that somebody did not write down how many lines were out.
func ForgotLines(text string) bool {
	toks := Scan(text)
	if forgots.anyKey(toks, "lines") {
		return true
	}
	for i, t := range toks {
		if !howMany[t.Text] || i+1 == len(toks) || !forgotten(toks, i) {
			continue
		}
		next := i + 1
		if of := toks[next].Text; (of == "of" || of == "de") && next+1 < len(toks) {
			next++
		}
		if _, ok := LineAt(toks, next, "line"); ok {
			return true
		}
	}
	return false
}

// howMany are the words right before lines that ask for their number.
var howMany = set("many number cuántas cuantas cuántos cuantos quante quanti quantas quantos viele combien")

// otherLines tells a word before lines that are not trolled: bottom lines, jig rods.
func otherLines(before Token) bool {
	m, ok := methods.whole([]Token{before})
	return ok && m != "troll" && m != "kite"
}

// numberIn is the first number of some tokens, 1 where there is none.
func numberIn(toks []Token) int {
	for _, t := range toks {
		if n, ok := Number(t.Text); ok && n > 0 {
			return n
		}
	}
	return 1
}

// HalfOfDay is the half of the day that a cell names, and no more: "am" or "pm".
func HalfOfDay(text string) (half string, ok bool) {
	toks := trimmed(text)
	if len(toks) == 0 || len(toks) > 3 {
		return "", false
	}
	h, ok := halves.whole(toks)
	return h, ok
}

// InAfternoon reports whether a heading says that what stands under it is of the afternoon or evening: "PM lines in".
func InAfternoon(heading string) bool {
	toks := Scan(heading)
	return halves.anyKey(toks, "pm") && !halves.anyKey(toks, "am") && !slices.ContainsFunc(toks, func(t Token) bool {
		return t.Text == "half" // the second half of the day begins before noon
	})
}

// Method is the way of fishing that a text names: troll, jig, chunk, kite, live bait,
// drift, bottom, cast, pop, fly or spear.
func Method(text string) (method string, ok bool) {
	h, ok := methods.any(Scan(text))
	return h.Key, ok
}

// OnlyOther reports whether a text says of somebody that he fished in another way, and nothing of trolling:
// "drifting with the grandchildren". A lone word may be another's: cast off, a pop, the bottom.
func OnlyOther(text string) bool {
	found := false
	toks := Scan(text)
	for i := range toks {
		h, ok := methods.at(toks, i)
		if ok && (h.Key == "troll" || h.Key == "kite") {
			return false
		}
		found = found || ok && (len(h.Used) > 1 || strings.HasSuffix(toks[i].Text, "ing"))
	}
	return found
}

// NeverTrolled reports whether a text says that there was no trolling at all.
func NeverTrolled(text string) bool { return elsewise.anyKey(Scan(text), "never") }

// Planned reports whether the title of a table says that it is of what is to be fished.
func Planned(title string) bool {
	_, ok := planned.any(Scan(title))
	return ok
}

// NamesOther reports whether a text names another way of fishing, or says that the boat lay still, without a word of
// trolling or of its lures: "bottom after lunch", "at anchor, 3 snapper".
func NamesOther(text string) bool {
	if NeverTrolled(text) || Otherwise(text) {
		return true
	}
	found, toks := false, Scan(text)
	for i := range toks {
		h, ok := methods.at(toks, i)
		if ok && (h.Key == "troll" || h.Key == "kite") {
			return false
		}
		found = found || ok
	}
	return (found || elsewise.anyKey(toks, "moored")) && !Lure(text)
}

// Otherwise reports whether what stands beside a fish or a strike says that it was not trolled:
// "on livebait, not the lures". Where the text speaks of trolling too it does not.
func Otherwise(text string) bool {
	toks := Scan(text)
	if elsewise.anyKey(toks, "not") || leftOut(toks) {
		return true
	}
	h, ok := methods.any(toks)
	return elsewise.anyKey(toks, "other") && !(ok && h.Key == "troll")
}

// NotTrolled reports whether a text says outright that something was not trolled.
func NotTrolled(text string) bool {
	toks := Scan(text)
	return elsewise.anyKey(toks, "not") || leftOut(toks)
}

// leftOut reports whether a text says of fish that no count has them: those were caught otherwise. A bite that was
// missed or lost and is "not counted" is one that the counts lack.
func leftOut(toks []Token) bool {
	if !elsewise.anyKey(toks, "uncounted") {
		return false
	}
	gone := false
	for i := range toks {
		if _, _, fish := FishAt(toks, i); fish {
			return true
		}
		f, ok := FateAt(toks, i)
		gone = gone || ok && (f.Fate == Missed || f.Fate == Lost || f.Fate == Bit)
	}
	return !gone
}

var boatParts = mustLoad("boat")

// OfBoat reports whether a text names a part of the boat or what lies about on it, and no fish.
func OfBoat(text string) bool {
	toks := Scan(text)
	for i := range toks {
		if _, _, ok := FishAt(toks, i); ok {
			return false
		}
	}
	_, ok := boatParts.any(toks)
	return ok
}

// OfBest is the figure beside which a cell says no more than that it is of the biggest of several fish: "47 best",
// "best 47 in". "" where it does not.
func OfBest(text string) string {
	toks := trimmed(text)
	for i := range toks {
		next, ok := glues.atKey(toks, i, "biggest")
		switch {
		case !ok || i > 0 && next < len(toks):
		case i > 0:
			return strings.TrimSpace(text[:toks[i].At])
		case next < len(toks):
			return strings.TrimSpace(text[toks[next].At:])
		}
	}
	return ""
}

// Lure reports whether a text names a lure that is trolled, whatever fish or bait it is made to
// look like.
func Lure(text string) bool { return elsewise.anyKey(Scan(text), "lure") }

// LureAt reads the name of a trolling lure at token i.
func LureAt(toks []Token, i int) (next int, ok bool) { return elsewise.atKey(toks, i, "lure") }

// Still reports whether what stands in place of a speed says that the boat lay still, or fished in another
// way: nothing was trolled.
func Still(text string) bool {
	toks := trimmed(text)
	if h, ok := elsewise.whole(toks); ok && (h == "still" || h == "other") {
		return true
	}
	how, ok := methods.whole(toks)
	return ok && how != "troll" && how != "kite" && how != "live bait" // those are towed, slowly
}

// Month is the month that a token names.
func Month(token string) (time.Month, bool) {
	n, ok := named(months, token)
	return time.Month(n), ok
}

// SomeDay reports whether a cell of days tells a month of which the day is not known, and no more: sometime in June.
func SomeDay(text string) bool {
	toks := trimmed(text)
	if len(toks) == 0 {
		return false
	}
	next, ok := forgots.atKey(toks, 0, "day")
	if !ok || next >= len(toks) {
		return false
	}
	if _, ok := Month(toks[next].Text); !ok {
		return false
	}
	return next+1 == len(toks) || next+2 == len(toks) && toks[next+1].Kind == Digits && len(toks[next+1].Text) == 4
}

// Weekday is the day of the week that a token names. "mar" is Tuesday here and March in Month.
func Weekday(token string) (time.Weekday, bool) {
	n, ok := named(weekdays, token)
	return time.Weekday(n), ok
}

func named(l list, token string) (int, bool) {
	key, ok := l.whole(trimmed(token))
	if !ok {
		return 0, false
	}
	n, err := strconv.Atoi(key)
	return n, err == nil
}

// FishAt finds a fish's name or a creature's at token i; the kind is that of fish.txt.
func FishAt(toks []Token, i int) (kind string, next int, ok bool) {
	if i > 0 && toks[i].Text == "bar" && toks[i-1].Text == "the" {
		return "", 0, false // of a harbour: who calls the fish so says "le bar"
	}
	return keyAt(fishes, toks, i)
}

// UnitAt finds a unit's spelling at token i: "in", "kg", "kn" ..., or "other".
func UnitAt(toks []Token, i int) (symbol string, next int, ok bool) { return keyAt(units, toks, i) }

func keyAt(l list, toks []Token, i int) (string, int, bool) {
	h, ok := l.at(toks, i)
	if !ok {
		return "", 0, false
	}
	return h.Key, h.Next(), true
}

// NotOut reports whether a text says that a line was not out: "rod not out".
func NotOut(text string) bool {
	toks := Scan(text)
	for i := range toks {
		if _, ok := LineAt(toks, i, "notout"); ok {
			return true
		}
	}
	return false
}

// LineAt reports whether token i starts a phrase of a kind of lines.txt: line, by, pull, usual,
// wind, part, session, to, start, stop, pause.
func LineAt(toks []Token, i int, kind string) (next int, ok bool) {
	return lineWords.atKey(toks, i, kind)
}

// GlueIs reports whether a phrase of a kind of glue.txt starts at token i: words that change
// nothing, point back, deny, or tell of what was only seen.
func GlueIs(toks []Token, i int, kind string) (next int, ok bool) {
	return glues.atKey(toks, i, kind)
}

// Glued reports whether a text has a phrase of a kind of glue.txt: "biggest" names the biggest of several fish.
func Glued(text, kind string) bool {
	toks := Scan(text)
	for i := range toks {
		if _, ok := GlueIs(toks, i, kind); ok {
			return true
		}
	}
	return false
}

// KindAt finds how a length was taken at token i: FL, CFL, TL, LJFL or EFL.
func KindAt(toks []Token, i int) (kind string, next int, ok bool) { return keyAt(kinds, toks, i) }

// Negations counts how often a text says no, not or without of something.
func Negations(text string) (n int) {
	toks := Scan(text)
	for i := range toks {
		if _, ok := glues.atKey(toks, i, "no"); ok {
			n++
		}
	}
	return n
}

// Negated reports whether a text says no, not or without of something.
func Negated(text string) bool { return Negations(text) > 0 }

// GirthTold is the figure that a remark gives behind a word for the girth, with its unit where it
// has one: "girth 26 in", "circonf. 92". "" where there is none, or more than one.
func GirthTold(text string) (figure string) {
	toks := Scan(text)
	for i := range toks {
		u, next, ok := UnitAt(toks, i)
		if !ok || u != "girth" {
			continue
		}
		for next < len(toks) && (toks[next].Text == "." || toks[next].Text == ":" || toks[next].Text == "=") {
			next++
		}
		if next == len(toks) || toks[next].Kind != Digits {
			continue
		}
		if figure != "" {
			return ""
		}
		from, end := toks[next].At, toks[next].End
		if next++; next < len(toks) {
			if _, after, ok := UnitAt(toks, next); ok {
				end = toks[after-1].End
			}
		}
		figure = text[from:end]
	}
	return figure
}

// Taped reports whether a remark says that a fish was measured.
func Taped(text string) bool { return elsewise.anyKey(Scan(text), "taped") }

// AnotherMethod reports whether a text is the name of a way of fishing other than trolling, or of several,
// and no more: "fondo", "drift and chunk".
func AnotherMethod(text string) bool {
	toks := trimmed(text)
	if key, ok := elsewise.whole(toks); ok && key == "alone" {
		return true
	}
	for i := 0; i < len(toks); {
		h, ok := methods.at(toks, i)
		if !ok || h.Key == "troll" || h.Key == "kite" {
			return false
		}
		if i = h.Used[len(h.Used)-1] + 1; i+1 < len(toks) && joins[toks[i].Text] {
			i++
		}
	}
	return len(toks) > 0
}

// AsideOther reports whether a remark has, between its commas, the name of another way of fishing that no trolled line
// is called by, and no more, without a word of trolling or of its lures: "bottom, last hour", "late, from the beach".
func AsideOther(text string) bool {
	if methods.anyKey(Scan(text), "troll") || Lure(text) {
		return false
	}
	return slices.ContainsFunc(strings.FieldsFunc(text, func(c rune) bool { return strings.ContainsRune(",;.:", c) }),
		func(part string) bool {
			m, _ := Method(part)
			key, _ := elsewise.whole(trimmed(part))
			return key == "shore" || unlikeTrolling[m] && AnotherMethod(part)
		})
}

// unlikeTrolling are ways of fishing whose words name no line that is trolled, as jig and live bait may.
var unlikeTrolling = set("bottom drift chunk cast spear")

// joins are the words and marks between things that go together.
var joins = set("and y e et und & + / , then")
