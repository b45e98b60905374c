package phrase

import (
	"slices"

	"wakeledger/pipeline/words"
)

// timed is a start and an end among the items.
type timed struct {
	start, end       Clock
	hasStart, hasEnd bool
	from, to         int // items
}

// spans finds pairs of clocks joined by a dash or a word, else a start and an end behind
// the words for them.
func (s *scanner) spans() []timed {
	s.sure()
	var out []timed
	for i := 0; i < len(s.items); i++ {
		if sp, ok := s.joined(i); ok && !s.speedOf(i, out) {
			out = append(out, sp)
			i = sp.to - 1
		}
	}
	if len(out) > 0 {
		return s.withWorded(out)
	}
	if out = s.wordsBehind(); len(out) > 0 {
		return out
	}
	return s.worded(nil)
}

// speedOf reports whether the range at i is the speed of the span right before it: "06:00-12:20 at 12-13".
func (s *scanner) speedOf(i int, before []timed) bool {
	it := s.items[i]
	if it.kind != aNumber || it.hi <= it.num || it.hi-it.num > widestPace || len(before) == 0 {
		return false
	}
	at := s.tok(it.tok - 1)
	return (at == "at" || at == "@") && s.items[before[len(before)-1].to-1].end == it.tok-1
}

// widestPace is the most knots between the ends of a range of speeds.
const widestPace = 3

// withWorded adds to spans of clocks those of others whose start and end are told in words: "Sat 4:15 to 8:20. Sun in
// 5:05, out 9:45".
func (s *scanner) withWorded(out []timed) []timed {
	used := map[int]bool{}
	for _, sp := range out {
		for i := sp.from; i < sp.to; i++ {
			used[i] = true
		}
	}
	for _, sp := range s.worded(used) {
		crosses := slices.ContainsFunc(out, func(o timed) bool { return sp.from < o.to && o.from < sp.to })
		if sp.hasStart && sp.hasEnd && !crosses {
			out = append(out, sp)
		}
	}
	slices.SortFunc(out, func(a, b timed) int { return a.from - b.from })
	return out
}

// wordsBehind reads "7:10 in, 2:20 out", where the words stand behind their clocks, each pair in one sentence.
func (s *scanner) wordsBehind() []timed {
	var out []timed
	says := func(i int, kind string) bool {
		it := s.items[i]
		if it.kind != aClock || it.end >= len(s.toks) {
			return false
		}
		_, ok := words.LineAt(s.toks, it.end, kind)
		return ok
	}
	for i := 0; i < len(s.items); i++ {
		if !says(i, "start") || s.biting(i) {
			continue
		}
		j := i + 1
		for j < len(s.items) && s.items[j].kind != aBreak && s.items[j].kind != aClock {
			j++
		}
		if j < len(s.items) && says(j, "stop") && !s.biting(j) {
			out = append(out, timed{s.items[i].clock, s.items[j].clock, true, true, i, j + 1})
			i = j
		}
	}
	return out
}

// LooseClocks are the times of day in a text, as written, that neither belong to a stretch of
// trolling nor stand in a clause of a fish or a bite.
func LooseClocks(text string) []string {
	s := scan(text)
	used := make([]bool, len(s.items))
	for _, sp := range s.spans() {
		for i := sp.from; i < sp.to; i++ {
			used[i] = true
		}
	}
	var out []string
	for from := 0; from < len(s.items); {
		to, bite := from, false
		for ; to < len(s.items) && s.items[to].kind != aBreak; to++ {
			k := s.items[to].kind
			bite = bite || k == aFish || k == aFate || k == anIdle || k == aSeen
		}
		for i := from; i < to && !bite; i++ {
			if it := s.items[i]; it.kind == aClock && !used[i] && !it.compact {
				out = append(out, s.raw(it.tok, it.end))
			}
		}
		from = to + 1
	}
	return out
}

// withoutSpans makes the clocks between which lines were out no clocks of bites.
func (s *scanner) withoutSpans() {
	for _, sp := range s.spans() {
		if !sp.hasStart || !sp.hasEnd {
			continue
		}
		for i := sp.from; i < sp.to; i++ {
			if it := &s.items[i]; it.kind == aClock && (it.clock == sp.start || it.clock == sp.end) {
				it.kind, it.text = aGlue, "clock"
			}
		}
	}
}

// joined reads clock - clock at item i. One of the two may be an hour alone: 7-11:30.
func (s *scanner) joined(i int) (timed, bool) {
	a, okA := s.end(i)
	if s.items[i].kind == aNumber && s.items[i].hi > 0 { // 6-11 was read as a range
		b, okB := s.digitsClock(s.items[i].end-1, s.items[i].hi)
		plain := !withMinutes(s.tok(s.items[i].tok)) || !withMinutes(s.tok(s.items[i].end-1))
		return timed{a, b, true, true, i, i + 1}, okA && okB && (!plain || s.wholeHours(i))
	}
	next := s.items[i].end
	if !okA || next >= len(s.toks) {
		return timed{}, false
	}
	after, ok := s.toWord(next)
	if !ok {
		return timed{}, false
	}
	for j := i + 1; j < len(s.items) && s.items[j].tok <= after; j++ {
		if s.items[j].tok != after {
			continue
		}
		b, okB := s.end(j)
		dotted := withMinutes(s.tok(s.items[i].tok)) && withMinutes(s.tok(s.items[j].tok)) && a.Seconds < b.Seconds
		if !okB || s.items[i].kind != aClock && s.items[j].kind != aClock && !dotted {
			return timed{}, false
		}
		return timed{a, b, true, true, i, j + 1}, true
	}
	return timed{}, false
}

// openEnded reads a clock and a dash or "to", and nothing behind it: 6:10-.
func (s *scanner) openEnded() (Clock, bool) {
	if len(s.items) == 0 {
		return Clock{}, false
	}
	if next, ok := words.LineAt(s.toks, 0, "line"); ok { // lines 0640
		for _, it := range s.items {
			switch whole := it.tok == next && it.end == len(s.toks); {
			case whole && it.kind == aClock:
				return it.clock, true
			case whole && it.kind == aTime && s.tok(it.end-1) == "h" && it.num <= 24*60: // linhas 9h
				return Clock{Seconds: int(it.num * 60)}, true
			}
		}
	}
	if s.items[0].end >= len(s.toks) {
		return Clock{}, false
	}
	c, ok := s.end(0)
	next, dash := s.toWord(s.items[0].end)
	for next < len(s.toks) && s.tok(next) == "?" {
		next++
	}
	return c, ok && dash && next == len(s.toks) && s.items[0].tok == 0 &&
		(s.items[0].kind == aClock || len(s.tok(0)) > 2)
}

// withMinutes reports whether a number is written as a clock may be: 6.30, 12,00.
func withMinutes(text string) bool {
	return len(text) > 3 && (text[len(text)-3] == '.' || text[len(text)-3] == ',')
}

// toWord passes a dash, "to", "until" and the like.
func (s *scanner) toWord(i int) (int, bool) {
	next, ok := words.LineAt(s.toks, i, "to")
	for ok && next < len(s.toks) {
		more, again := words.LineAt(s.toks, next, "to")
		if t := s.tok(next); !again && (t == "las" || t == "the" || t == "@") {
			more, again = next+1, true
		}
		if !again {
			break
		}
		next = more
	}
	return next, ok
}

// end reads an item as one end of a stretch.
func (s *scanner) end(i int) (Clock, bool) {
	it := s.items[i]
	if it.kind == aClock {
		return it.clock, true
	}
	if it.kind != aNumber || !it.digits {
		return Clock{}, false
	}
	return s.digitsClock(it.tok, it.num)
}

// digitsClock reads a number as a clock: 640, 6.45, 7.
func (s *scanner) digitsClock(tok int, v float64) (Clock, bool) {
	text := s.tok(tok)
	if len(text) == 3 && v == float64(int(v)) && v < 1260 && int(v)%100 < 60 {
		return Clock{Seconds: (int(v)/100*60 + int(v)%100) * 60}, true
	}
	if withMinutes(text) && v < 24 {
		m := int(v*100+.5) % 100
		return Clock{Seconds: (int(v)*60 + m) * 60, Sure: v >= 13 || text[0] == '0'}, m < 60
	}
	return hour(v)
}

func hour(v float64) (Clock, bool) {
	if v != float64(int(v)) || v < 1 || v > 24 {
		return Clock{}, false
	}
	return Clock{Seconds: int(v) * 3600 % day, Sure: v > 12}, true
}

// wholeHours reports whether a range of numbers is one of hours: "from 6-11", "6 to 11".
func (s *scanner) wholeHours(i int) bool {
	return len(s.items) == 1 || s.hourWord(s.items[i].tok) || i > 0 && s.tok(s.items[i].tok-1) == "in"
}

// sure makes all clocks sure where one of them shows that the text counts to 24.
func (s *scanner) sure() {
	day24 := false
	for _, it := range s.items {
		if it.kind == aClock && it.clock.Sure {
			last := s.tok(it.end - 1)
			day24 = day24 || last != "am" && last != "pm" && last != "a" && last != "p" && last != "m" && last != "."
		}
	}
	for i := range s.items {
		if it := &s.items[i]; day24 && it.kind == aClock {
			it.clock.Sure = true
		}
	}
}

// worded reads, of the clocks that are not used yet, "lines in 6:10 out at 2:55": each clock takes the last
// word before it that says start or end.
func (s *scanner) worded(used map[int]bool) []timed {
	var out []timed
	tok := 0
	for i, it := range s.items {
		if used[i] {
			tok = it.end
			continue
		}
		if it.kind != aClock && (it.kind != aNumber || !s.hourWord(it.tok)) {
			continue
		}
		c, ok := s.end(i)
		start, end := s.wordBefore(tok, it.tok)
		n := len(out)
		if open := n > 0 && !out[n-1].hasEnd; open && !start && !end {
			_, end = words.LineAt(s.toks, it.tok-1, "to") // back in 9:45, four lines, till 1:50
		}
		if !start && !end && i > 0 && s.items[i-1].kind == aLines && s.items[i-1].end == it.tok {
			start = true // six lines 5:50
		}
		if s.biting(i) && !s.ofLines(tok, it.tok) {
			start, end = false, false
		}
		tok = it.end
		if !ok || !start && !end {
			continue
		}
		switch {
		case end && n > 0 && !out[n-1].hasEnd:
			out[n-1].end, out[n-1].hasEnd, out[n-1].to = c, true, i+1
		case end && n > 0 && s.thenFrom(out[n-1].to, i):
			out = append(out, timed{start: out[n-1].end, hasStart: true, end: c, hasEnd: true, from: i, to: i + 1})
		case end:
			out = append(out, timed{end: c, hasEnd: true, from: i, to: i + 1})
		default:
			out = append(out, timed{start: c, hasStart: true, from: i, to: i + 1})
		}
	}
	return out
}

// thens are words for what came right after.
var thens = map[string]bool{"then": true, "puis": true, "luego": true, "poi": true, "depois": true, "dann": true}

// thenFrom reports whether what stands between two items says that the one came right after the other:
// "7 kt till 9:00, then 9 kt up to 1:30".
func (s *scanner) thenFrom(from, to int) bool {
	for i := from; i < to && s.items[i].kind != aBreak; i++ {
		if thens[s.tok(s.items[i].tok)] {
			return true
		}
	}
	return false
}

// ofLines reports whether the words right before a clock are of lines: "looking for wahoo, lines
// up 8:00".
func (s *scanner) ofLines(from, to int) bool {
	for j := to - 1; j >= from && j >= to-4 && !words.Stops(s.toks[j]); j-- {
		if _, ok := words.LineAt(s.toks, j, "line"); ok {
			return true
		}
	}
	return false
}

// biting reports whether the sentence up to item i speaks of fish, so that its clock is one
// of a bite.
func (s *scanner) biting(i int) bool {
	for ; i >= 0 && s.items[i].kind != aBreak; i-- {
		if k := s.items[i]; k.kind == aFish || k.kind == aFate && !k.fate.Weak {
			return true
		}
	}
	return false
}

// wordBefore looks for a word of start or end in the five tokens before a clock.
func (s *scanner) wordBefore(from, to int) (start, end bool) {
	for j := to - 1; j >= from && j >= to-5; j-- {
		if s.toks[j].Kind != words.Word {
			if words.Stops(s.toks[j]) && s.tok(j) != ":" && s.tok(j) != "(" {
				return false, false
			}
			continue
		}
		for k := max(j-3, from); k < j; k++ {
			if next, ok := words.LineAt(s.toks, k, "start"); ok && next > j {
				return true, false // put out at 7:10, put them out at 7:10
			}
			if next, ok := words.LineAt(s.toks, k, "stop"); ok && next > j {
				return false, true // took them in at noon
			}
		}
		if _, ok := words.LineAt(s.toks, j, "stop"); ok {
			return false, true
		}
		if _, ok := words.LineAt(s.toks, j, "start"); ok {
			return true, false
		}
	}
	return false, false
}
