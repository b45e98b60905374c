package phrase

import (
	"regexp"
	"slices"
	"strconv"
	"unicode"

	"wakeledger/pipeline/words"
)

// Settings reads what a text says of speed and lines apart from clocks: "First session 8
// kts, second session 14 kts", "6 lines to start, 4 after the break".
func Settings(text string) Setting {
	s := scan(text)
	var out Setting
	last := aWord
	for i, it := range s.items {
		switch {
		case it.kind == aSpeed && it.num > 0 && it.num <= 25 && !s.windy(i):
			out.addSpeed(it)
			last = aSpeed
		case it.kind == aLines && s.byLines(i):
			out.By = true
		case it.kind == aNumber && last == aLines && whole(it) && s.remains(i):
			out.Lines = []int{int(it.num)} // one line in the boat, 3 left
		case it.kind == aLines && it.hi <= it.num && !s.takenIn(i) && !s.struck(i) && !s.eitherOf(i):
			out.Lines = append(out.Lines, int(it.num))
			last = aLines
		case it.kind == aNumber && s.linesAt(i) >= 0:
			out.Lines = append(out.Lines, int(it.num))
			last = aLines
		case it.kind == aNumber && s.afterLines(i):
			out.addSpeed(it)
			last = aSpeed
		case it.kind == aNumber && it.hi == 0 && s.paced(i):
			out.addSpeed(it)
			last = aSpeed
		case it.kind == aNumber && it.hi == 0 && (s.pulled(i) || s.putOut(i) || s.linesNamed(i)):
			out.Lines = append(out.Lines, int(it.num))
			last = aLines
		case it.kind == aNumber && s.elliptic(i) && last == aSpeed:
			out.addSpeed(it)
		case it.kind == aNumber && s.elliptic(i) && last == aLines && it.num == float64(int(it.num)):
			out.Lines = append(out.Lines, int(it.num))
		}
	}
	for i := range s.toks {
		if _, ok := words.LineAt(s.toks, i, "usual"); ok && (len(out.Speeds) > 0 || len(out.Lines) > 0) {
			out.Usual = true
		}
	}
	return out
}

// TellsBite tells an entry of a bite from one whose words are a bite's by chance: "up a bit faster".
func TellsBite(text string) bool {
	_, only := words.FateOnly(text)
	return only || len(Tell(text, Defaults{}).Bites) > 0
}

// BiteSpeed is the speed in knots at which a bite came, where one clause of a text says so and no other names a speed:
// "wahoo 20 lb, bit at 9 kn"; else 0.
func BiteSpeed(text string) float64 {
	speed := 0.0
	for _, clause := range clauseEnd.Split(text, -1) {
		told := Settings(clause).Speeds
		if len(told) == 0 {
			continue
		}
		fate, _, _, ok := words.FateOf(clause)
		if !ok || fate != words.Bit && fate != words.Hooked || len(told) > 1 || speed > 0 {
			return 0
		}
		speed = told[0]
	}
	return speed
}

// NumberedSpeeds are the speeds in knots at which bites came that a text names by their number: "strike 2 came at
// 6.3 kt".
func NumberedSpeeds(text string) map[int]float64 {
	out := map[int]float64{}
	for _, clause := range clauseEnd.Split(text, -1) {
		toks := words.Scan(clause)
		for i := 0; i+1 < len(toks); i++ {
			at := i + 1
			if toks[at].Text == "#" && at+1 < len(toks) {
				at++
			}
			n, err := strconv.Atoi(toks[at].Text)
			if h, ok := words.FateAt(toks, i); !ok || h.Fate != words.Bit || err != nil {
				continue
			}
			if told := Settings(clause[toks[at].End:]).Speeds; len(told) == 1 {
				out[n] = told[0]
			}
		}
	}
	return out
}

// clauseEnd is where clauses part; a comma within a figure does not.
var clauseEnd = regexp.MustCompile(`[;()\n]|[,.](?:\s|$)`)

// takenIn reports whether lines are those by which a spread is changed: took one line in.
func (s *scanner) takenIn(i int) bool {
	at := s.items[i].tok - 1
	if t := s.tok(at); t == "in" || t == "up" {
		at-- // took in one line
	}
	switch s.tok(at) {
	case "took", "added", "put", "dropped", "lost", "cut", "brought", "add", "drop":
		return true
	}
	return false
}

// remains reports whether a number of lines is of those that were left out: "3 left".
// "5 lines, 3 left 2 right" tells of the boat's sides.
func (s *scanner) remains(i int) bool {
	next, ok := words.LineAt(s.toks, s.items[i].end, "remain")
	if !ok || slices.ContainsFunc(s.toks, func(t words.Token) bool { return t.Text == "right" }) {
		return false
	}
	_, place := words.PlaceAt(s.toks, next-1, false)
	return !place || next == len(s.toks)
}

// byLines reports whether lines are those by which a spread differs from the usual: "1 rod more in the middle".
func (s *scanner) byLines(i int) bool {
	at := s.items[i].end
	if at >= len(s.toks) || s.items[i].hi > s.items[i].num {
		return false
	}
	next, ok := words.LineAt(s.toks, at, "more")
	if !ok {
		next, ok = words.LineAt(s.toks, at, "fewer")
	}
	return ok && !unicode.IsDigit([]rune(s.tok(next) + " ")[0]) // 6 lines less 20 min
}

func (t *Setting) addSpeed(it item) {
	hi := max(it.num, it.hi)
	t.Speeds = append(t.Speeds, (it.num+hi)/2)
	t.Ranges = append(t.Ranges, [2]float64{it.num, hi})
}

// linesAt finds the speed of lines that are told without their noun, or it without its unit:
// "7 at 7.5 kts", "pulling 5 at 15", "7 of em at 7-7.5". It is the item of the speed, -1 where
// the number at i is none of lines.
func (s *scanner) linesAt(i int) int {
	it := s.items[i]
	if it.article || it.hi > 0 || it.num < 1 || it.num > 12 || it.num != float64(int(it.num)) {
		return -1
	}
	tok, of := it.end, false
	for ; s.tok(tok) == "of" || s.tok(tok) == "em" || s.tok(tok) == "them"; tok++ {
		of = true
	}
	if s.tok(tok) != "at" && s.tok(tok) != "@" {
		return -1
	}
	j := i + 1
	for j < len(s.items) && s.items[j].tok <= tok {
		j++
	}
	if j >= len(s.items) || s.items[j].num < 2 || s.items[j].num > 25 {
		return -1
	}
	pulls := false
	if it.tok > 0 {
		_, pulls = words.LineAt(s.toks, it.tok-1, "pull")
	}
	switch s.items[j].kind {
	case aNumber:
		if pulls || of {
			return j
		}
	case aSpeed:
		for k := i - 1; k >= 0 && s.items[k].kind != aBreak && s.items[k].kind != aComma; k-- {
			if s.items[k].kind == aFish || s.items[k].kind == aFate {
				return -1 // missed 2 at 8 kts
			}
		}
		return j
	}
	return -1
}

// afterLines reports whether the number at i is the speed of lines before it.
func (s *scanner) afterLines(i int) bool {
	for k := i - 1; k >= 0 && k >= i-5; k-- {
		if s.items[k].kind == aNumber && s.linesAt(k) == i {
			return true
		}
	}
	return false
}

// pulled reports whether a bare number is one of lines: "pulled 6".
func (s *scanner) pulled(i int) bool {
	it := s.items[i]
	if it.tok == 0 || it.article || it.num < 1 || it.num > 20 || it.num != float64(int(it.num)) {
		return false
	}
	_, ok := words.LineAt(s.toks, it.tok-1, "pull")
	if next, two := words.LineAt(s.toks, max(it.tok-2, 0), "pull"); !ok && (!two || next != it.tok) {
		return false
	}
	if _, usual := words.LineAt(s.toks, it.end, "usual"); usual {
		return true // run 6 unless noted
	}
	j := significant(s.items, i+1)
	return j >= len(s.items) || s.items[j].kind == aBreak || s.items[j].kind == aComma || s.items[j].kind == aSpeed ||
		s.items[j].kind == anAnd || s.tok(it.end) == "all" || s.tok(it.end) == "the"
}

// putOut reports whether a bare number is of lines that are out: "three out".
func (s *scanner) putOut(i int) bool {
	it := s.items[i]
	if it.article || it.num < 1 || it.num > 20 || it.num != float64(int(it.num)) {
		return false
	}
	if k := s.tok(it.tok - 1); k == "makes" || k == "making" || k == "now" {
		return true
	}
	if s.tok(it.end) == "now" && !it.digits {
		return true // four now
	}
	if s.tok(it.end) != "out" {
		return false
	}
	j := significant(s.items, i+1)
	return j >= len(s.items) || s.tok(it.end+1) != "of"
}

// linesNamed reports whether a bare number is of the lines named right before it: "wahoo rods in, 3 of them",
// "lines: 5", "rods out = 5".
func (s *scanner) linesNamed(i int) bool {
	it := s.items[i]
	if at := it.tok - 2; (s.tok(it.tok-1) == ":" || s.tok(it.tok-1) == "=") && at >= 0 && it.num >= 1 && it.num <= 20 &&
		it.num == float64(int(it.num)) && !it.article {
		if t := s.tok(at); t == "in" || t == "out" {
			at--
		}
		if at >= 0 {
			_, ok := words.LineAt(s.toks, at, "plural")
			return ok
		}
	}
	if s.usualBehind(it) {
		return true
	}
	next := s.tok(it.end + 1)
	if it.article || it.num < 1 || it.num > 20 || it.num != float64(int(it.num)) || s.tok(it.end) != "of" ||
		next != "em" && next != "them" {
		return false
	}
	at := it.tok - 1
	for ; s.tok(at) == ","; at-- {
	}
	if t := s.tok(at); t == "in" || t == "out" || t == "down" {
		at--
	}
	if at < 0 {
		return false
	}
	_, ok := words.LineAt(s.toks, at, "line")
	return ok
}

// paced reports whether a bare number is the speed that a boat went to: "slowed to 4".
func (s *scanner) paced(i int) bool {
	it := s.items[i]
	if it.article || it.num < 1 || it.num > 25 || it.tok < 2 {
		return false
	}
	switch s.tok(it.tok - 1) {
	case "doing":
		return true
	case "at":
		return s.tok(it.tok-2) == "now" || s.tok(it.tok-2) == "still"
	case "to", "down", "up", "a":
	default:
		return false
	}
	for k := it.tok - 2; k >= max(0, it.tok-4); k-- {
		switch s.tok(k) {
		case "slowed", "slow", "sped", "speeded", "speed", "quickened", "eased", "bumped", "throttled", "backed",
			"dropped", "came", "went", "pushed", "picked", "bajamos", "subimos", "ralenti", "accelere":
			return true
		}
	}
	return false
}

// usualBehind reports whether a number is of the lines before it, and a word for what is usual stands behind it:
// "rods 4 unless noted".
func (s *scanner) usualBehind(it item) bool {
	if it.article || it.num < 1 || it.num > 20 || it.num != float64(int(it.num)) || it.tok == 0 ||
		it.end >= len(s.toks) {
		return false
	}
	_, lines := words.LineAt(s.toks, it.tok-1, "plural")
	_, usual := words.LineAt(s.toks, it.end, "usual")
	return lines && usual
}

// elliptic reports whether a number leaves out the noun that the one before it had: "8 kts
// before the break, 10 after".
func (s *scanner) elliptic(i int) bool {
	it := s.items[i]
	if it.num < 1 || it.num > 25 || it.article || i == 0 || s.items[i-1].kind != aComma && s.items[i-1].kind != anAnd &&
		s.items[i-1].kind != aGlue && s.items[i-1].kind != aBreak || it.end >= len(s.toks) {
		return false
	}
	_, ok := words.LineAt(s.toks, it.end, "part")
	if !ok && s.tok(it.end) == "on" {
		return true
	}
	return ok
}
