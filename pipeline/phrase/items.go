package phrase

import (
	"slices"
	"wakeledger/pipeline/words"
)

// kind is what an item of a text is.
type kind int

const (
	aWord    kind = iota // a word that the grammar does not know
	aGlue                // a word that changes nothing
	aBreak               // ends a sentence
	aComma               // parts clauses, as does an open bracket
	anAnd                // joins clauses
	aColon               // after a session, a name
	aClose               // closing bracket
	aNumber              // no unit
	aClock               // a time of day
	aLength              // cm
	aGirth               // cm
	aWeight              // kg
	aSpeed               // knots, num to hi
	aTime                // a duration in minutes
	aLines               // so many lines
	aMeasure             // of another kind: fathoms, degrees, dollars, dates
	aFish                // a kind of fish, or a fish
	anIdle               // a creature or thing that is no catch
	aFate
	aPlace
	aHedge
	aScale
	aKind // how a length was taken
	aNothing
	aScore // 2 for 5
	aSession
	aTimes // x between a count and a name, or two measures
	aPronoun
	aMany // them, both
	aNo
	aSeen
	anElse  // speaks of other boats
	aTackle // a lure, a rod: no fish, where it is what was lost
	aUnit   // a unit's word without a number: girth
	aBlank  // a dash in the place of one fish's measure: (16.7 kg / -)
)

// item is a piece of a text with what it means.
type item struct {
	kind     kind
	tok, end int // tokens, from and up to
	text     string
	num, hi  float64
	digits   bool // the number stands in digits
	article  bool // the number is "a": one, if a fish follows
	alone    bool // an article that may stand for a fish by itself: um, uno, einen
	several  bool // so many fish that nobody counted
	minutes  bool // the number has two decimals that may be minutes
	hedged   bool
	exact    bool   // the number is written to a fraction
	unit     string // of aLength and aWeight as written, and of aUnit
	borrowed bool   // the unit is that of the number behind
	fate     words.FateHit
	until    int // the last token of a fate
	clock    Clock
	compact  bool // a clock of three or four digits, which may be a plain number
}

// scanner cuts a text into items.
type scanner struct {
	text  string
	toks  []words.Token
	taken []bool // tokens of a phrase that began before
	items []item
}

// scan reads a text once. What a heading says of bare numbers is not used here.
func scan(text string) *scanner {
	s := &scanner{text: text, toks: words.Scan(text)}
	s.taken = make([]bool, len(s.toks))
	for i := 0; i < len(s.toks); {
		if s.taken[i] {
			i++
			continue
		}
		it := s.next(i)
		it.tok = i
		it.end = max(it.end, i+1)
		s.items = append(s.items, it)
		i = it.end
	}
	s.onLure()
	s.items = attach(s.items)
	s.codedFish()
	return s
}

// raw is the text of tokens i to j.
func (s *scanner) raw(i, j int) string { return s.text[s.toks[i].At:s.toks[j-1].End] }

// tok is the folded text of a token, empty past the end.
func (s *scanner) tok(i int) string {
	if i < 0 || i >= len(s.toks) {
		return ""
	}
	return s.toks[i].Text
}

// near reports whether token i follows the one before it without a space.
func (s *scanner) near(i int) bool { return i < len(s.toks) && !s.toks[i].Gap }

func (s *scanner) digits(i int) bool {
	return i >= 0 && i < len(s.toks) && s.toks[i].Kind == words.Digits
}

func (s *scanner) next(i int) item {
	if it, ok := s.halfHour(i); ok {
		return it
	}
	if it, ok := s.wordClock(i); ok {
		return it
	}
	switch s.toks[i].Kind {
	case words.Digits:
		return s.number(i)
	case words.Mark:
		if it, ok := s.mark(i); ok {
			return it
		}
	default:
		if it, ok := s.unitFirst(i); ok {
			return it
		}
	}
	return s.phrase(i)
}

// marks are those that mean one thing everywhere.
var marks = map[string]kind{"\n": aBreak, ";": aBreak, "!": aBreak, ",": aComma, "(": aComma, "[": aComma, ")": aClose,
	"]": aClose, ":": aColon, "x": aTimes, "&": anAnd}

// mark reads punctuation; false for marks that words know, such as "~".
func (s *scanner) mark(i int) (item, bool) {
	t := s.tok(i)
	if k, ok := marks[t]; ok {
		return item{kind: k}, true
	}
	switch t {
	case "?", "+":
		if s.near(i) && s.afterMeasure(i) {
			return item{kind: aHedge}, true
		}
		if t == "+" {
			return item{kind: anAnd}, true
		}
		return item{kind: aBreak}, true
	case ".":
		if s.endsSentence(i) {
			return item{kind: aBreak}, true
		}
		return item{kind: aGlue}, true
	case "-", "/", "|", "•", "*":
		return item{kind: s.dash(i)}, true
	case "$", "€", "£", "#": // money, and a number as a name: no counts
		if s.digits(i + 1) {
			return item{kind: aMeasure, end: i + 2}, true
		}
		return item{kind: aGlue}, t != "#"
	case "½":
		return item{kind: aNumber, num: .5}, true
	case "@":
		return s.atSpeed(i), true
	}
	return item{}, false
}

// dash is what a dash or a stroke does: within a word nothing, alone it parts clauses.
func (s *scanner) dash(i int) kind {
	switch {
	case i > 0 && s.tok(i) == "-" && (s.tok(i-1) == "/" && (s.tok(i+1) == ")" || s.tok(i+1) == "/") ||
		s.tok(i-1) == "(" && s.tok(i+1) == "/"):
		return aBlank
	case i == 0 || s.near(i) && s.near(i+1):
		return aGlue
	case s.tok(i) == "-":
		return aColon
	}
	return aComma
}

// afterMeasure reports whether the item before token i ends in a number or a unit.
func (s *scanner) afterMeasure(i int) bool {
	n := len(s.items)
	if n == 0 || s.items[n-1].end != i {
		return false
	}
	switch s.items[n-1].kind {
	case aLength, aWeight, aNumber, aClock, aGirth, aClose:
		return true
	}
	return false
}

// hedgeBehind tells a hedge before the full stop at i that stands behind the measure it is of, and before no other: "a
// big one 30 lb guess. 2 mahi", and not "120 cm ca. 30 kg".
func (s *scanner) hedgeBehind(i int) bool {
	n := len(s.items)
	if n < 2 || s.items[n-1].kind != aHedge || s.items[n-2].kind != aWeight && s.items[n-2].kind != aLength {
		return false
	}
	_, _, unit := words.UnitAt(s.toks, min(i+2, len(s.toks)-1))
	return !unit
}

// cutGirths are words for a girth that are cut short by a full stop: circ. 57.
var cutGirths = []string{"circ", "circonf", "perim", "gir", "grth"}

// endsSentence reports whether a full stop is one, not that of an abbreviation.
func (s *scanner) endsSentence(i int) bool {
	if i+1 >= len(s.toks) || i == 0 {
		return true
	}
	if s.near(i+1) && s.toks[i+1].Kind == words.Mark {
		return true
	}
	if _, ok := words.HedgeAt(s.toks, i-1, true); ok && s.digits(i+1) && !s.hedgeBehind(i) {
		return false
	}
	if t := s.toks[i-1].Text; s.digits(i+1) && slices.Contains(cutGirths, t) {
		return false
	}
	first := s.text[s.toks[i+1].At]
	capital := first >= 'A' && first <= 'Z' || s.toks[i+1].Kind == words.Digits
	if _, next, ok := words.UnitAt(s.toks, i-1); ok && next == i && s.digits(i-2) {
		_, fish := s.fish(i + 1)
		return !s.near(i+1) && (capital || !fish)
	}
	if t := s.toks[i-1]; t.Kind == words.Word && len(t.Text) < 3 && (s.near(i+1) || t.End-t.At == 1) {
		return false // T. albacares, a.m.
	}
	return !s.near(i+1) || capital
}
