package phrase

import (
	"regexp"
	"slices"
	"strings"

	"wakeledger/pipeline/words"
)

// Turn is what a remark says of how a boat trolled on its row in place of what is usual: all the time, or from a
// time of day on.
type Turn struct {
	At     *Clock  // from when on; nil: all the time
	Lines  int     // 0 not told
	Speed  float64 // in knots, 0 not told
	Before bool    // the row's bites came before it
	After  bool    // they came after it
	Unsure bool    // it says more, or less: "9 kn for a while"
}

// bitesWhen is what says that bites came before a change, or after it: "(bites all before that)".
var bitesWhen = regexp.MustCompile(`(?i)\b(?:all|both|bites?|strikes?|hits?|fish|everything)\b[^.;()]{0,30}?` +
	`\b(?:(before|earlier)|(after|later|since))\b`)

// inBrackets is a remark within a remark.
var inBrackets = regexp.MustCompile(`\([^()]*\)`)

// Turns are the changes of speed and lines that a remark tells of, where so many lines are usual: "down to 3 lines at
// 10:00", "9 kn after 11:30 (bites all before that)", "slower today: 6 kn". Speeds of wind, of the run home and of
// other boats are none, nor is what is told of a bite.
func Turns(text string, usual int) []Turn {
	var out []Turn
	for _, sentence := range remarkEnd.Split(text, -1) {
		bare := withoutBites(strings.TrimSpace(inBrackets.ReplaceAllString(sentence, " ")))
		if t, ok := turn(bare, usual); ok {
			if m := bitesWhen.FindStringSubmatch(sentence); m != nil {
				t.Before, t.After = m[1] != "", m[2] != ""
			}
			out = append(out, t)
		}
	}
	return out
}

// withoutBites leaves the parts between commas that say only when the bites came: ", both strikes after that".
func withoutBites(sentence string) string {
	parts := strings.Split(sentence, ",")
	return strings.Join(slices.DeleteFunc(parts, func(part string) bool {
		return bitesWhen.MatchString(part) && !strings.ContainsAny(part, "0123456789")
	}), ",")
}

// remarkEnd is where the sentences of a remark part; the points of a clock time and of a figure part none.
var remarkEnd = regexp.MustCompile(`[;\n]|\.(?:\s|$)`)

func turn(text string, usual int) (t Turn, ok bool) {
	if text == "" || TellsBite(text) || words.NamesOther(text) {
		return t, false
	}
	s := scan(text)
	if slices.ContainsFunc(s.items, func(it item) bool { return it.kind == anElse || it.kind == aFish }) ||
		len(s.spans()) > 0 && slices.ContainsFunc(s.spans(), func(sp timed) bool { return sp.hasStart && sp.hasEnd }) {
		return t, false
	}
	lines, speeds := s.turnedLines(usual), Settings(text).Speeds
	if !slices.ContainsFunc(s.items, func(it item) bool { return it.kind == aSpeed }) {
		speeds = nil // "wind came up 11ish"
	}
	if len(speeds)+len(lines) == 0 {
		speeds = s.pacedTo()
	}
	if len(lines)+len(speeds) == 0 || s.hasLineWord("travel") {
		return t, false
	}
	var clocks []int
	for i, it := range s.items {
		if it.kind == aClock || s.bareHour(i) {
			clocks = append(clocks, i)
		}
	}
	t.Unsure = len(lines) > 1 || len(speeds) > 1 || len(clocks) > 1
	if len(lines) > 0 {
		t.Lines = lines[0]
	}
	if len(speeds) > 0 {
		t.Speed = speeds[0]
	}
	switch {
	case t.Unsure:
	case len(clocks) == 1:
		c := s.items[clocks[0]].clock
		t.At, t.Unsure = &c, !s.since(s.items[clocks[0]])
	default:
		t.Unsure = !s.onlySettings() || s.partOfDay()
	}
	return t, true
}

// pacedTo are the speeds in knots of words that tell of no other figure, without their unit: "slowed to 4.5".
func (s *scanner) pacedTo() (all []float64) {
	for i := range s.toks {
		next, ok := words.LineAt(s.toks, i, "paceto")
		if !ok {
			continue
		}
		for _, it := range s.items {
			if it.kind == aNumber && it.tok == next && it.hi <= it.num && it.num >= leastPaced && it.num <= mostPaced {
				all = append(all, it.num)
			}
		}
	}
	return all
}

// leastPaced and mostPaced are the speeds in knots between which a figure behind "slowed to" is one.
const leastPaced, mostPaced = 2, 20

// bareHour makes a clock time of an hour alone that ends a part of a sentence, behind a word for "from then on": "6 kn
// from 10".
func (s *scanner) bareHour(i int) bool {
	it := &s.items[i]
	last := i+1 == len(s.items) || slices.Contains([]kind{aComma, aBreak, aClose, aColon}, s.items[i+1].kind)
	if it.kind != aNumber || !it.digits || it.article || it.hi > it.num || it.num < 1 || it.num > 23 ||
		it.num != float64(int(it.num)) || !last || it.tok == 0 || !s.since(*it) || s.paceBefore(it.tok) {
		return false
	}
	it.kind, it.clock = aClock, Clock{Seconds: int(it.num) * 3600, Sure: it.num > 12}
	return true
}

// paceBefore reports whether words that a speed follows end right before a token.
func (s *scanner) paceBefore(tok int) bool {
	for i := max(0, tok-5); i < tok; i++ {
		if next, ok := words.LineAt(s.toks, i, "paceto"); ok && next == tok {
			return true
		}
	}
	return false
}

// turnedLines are the numbers of lines that a sentence says were out from some time on: "3 lines left", "pulled one
// line, 4 left", "put one more line out".
func (s *scanner) turnedLines(usual int) []int {
	for i, it := range s.items {
		if it.kind != aNumber || it.article && !it.digits || !whole(it) {
			continue
		}
		if s.remains(i) {
			return []int{int(it.num)} // whatever was taken in
		}
		if next, ok := words.LineAt(s.toks, it.end, "more"); ok && usual > 0 {
			if _, ok := words.LineAt(s.toks, next, "line"); ok {
				return []int{usual + int(it.num)}
			}
		}
	}
	for i, it := range s.items {
		if it.kind != aLines || !whole(it) || usual == 0 {
			continue
		}
		if _, by := words.LineAt(s.toks, it.end, "more"); by && s.byLines(i) {
			return []int{usual + int(it.num)}
		}
		if s.takenIn(i) && usual > int(it.num) {
			switch s.tok(it.tok - 1) {
			case "added", "put", "add":
				return []int{usual + int(it.num)}
			}
			return []int{usual - int(it.num)}
		}
	}
	return Settings(s.text).Lines
}

// whole reports whether an item is a possible number of lines.
func whole(it item) bool {
	return it.num >= 1 && it.num <= mostAlone && it.num == float64(int(it.num)) && it.hi <= it.num
}

// since reports whether a word for "from then on" stands before a clock time, or it stands first.
func (s *scanner) since(it item) bool {
	if it.tok == 0 {
		return true
	}
	_, ok := words.LineAt(s.toks, it.tok-1, "since")
	return ok
}

// onlySettings tells a sentence that says nothing but a speed, or lines, and that they held all the time.
func (s *scanner) onlySettings() bool {
	for _, it := range s.items {
		switch it.kind {
		case aSpeed, aLines, aNumber, aBreak, aComma, aColon, aClose, anAnd:
			continue
		case aClock, aTime:
			return false
		}
		ok := false
		for _, kind := range []string{"line", "plural", "pull", "ofrow", "pace", "usual"} {
			_, found := words.LineAt(s.toks, it.tok, kind)
			ok = ok || found
		}
		if !ok && !s.within(it.tok) {
			return s.allDay()
		}
	}
	return true
}

// within reports whether a token is inside a phrase of a kind that began before it.
func (s *scanner) within(tok int) bool {
	for j := max(0, tok-3); j < tok; j++ {
		for _, kind := range []string{"ofrow", "pace", "usual"} {
			if next, ok := words.LineAt(s.toks, j, kind); ok && next > tok {
				return true
			}
		}
	}
	return false
}

// allDay reports whether a sentence says that what it tells held all the time.
func (s *scanner) allDay() bool { return s.hasLineWord("allday") }

// partOfDay reports whether a sentence says that what it tells held for a part of the time.
func (s *scanner) partOfDay() bool { return s.hasLineWord("partly") }

func (s *scanner) hasLineWord(kind string) bool {
	for i := range s.toks {
		if _, ok := words.LineAt(s.toks, i, kind); ok {
			return true
		}
	}
	return false
}
