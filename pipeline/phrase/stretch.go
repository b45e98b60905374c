package phrase

import "wakeledger/pipeline/words"

// Stretches reads the times that lines were in the water, with the speed, lines and stops
// told beside each: "0625-0925 6 lines @ 14 kn; 1040-1315 4 lines @ 14". A stretch may
// have only one end, or only a duration ("3 h @ 8 kn").
func Stretches(text string) []Stretch {
	s := scan(text)
	spans := s.spans()
	if len(spans) == 0 {
		if c, ok := s.openEnded(); ok {
			return []Stretch{{Start: c, HasStart: true, Open: true, Lines: -1}}
		}
		return s.untimed()
	}
	var out []Stretch
	others := s.otherSpells(spans)
	for k, sp := range spans {
		if _, other := others[k]; other {
			continue // bottom 7-12
		}
		st := Stretch{Start: sp.start, End: sp.end, HasStart: sp.hasStart, HasEnd: sp.hasEnd, Lines: -1}
		from, to := 0, len(s.items)
		if k+1 < len(spans) {
			to = s.border(sp.to, spans[k+1].from)
		}
		if k > 0 {
			from = s.border(spans[k-1].to, sp.from)
		}
		begin := sp.from
		if at := s.changed(sp, from, to); at > 0 {
			first := st
			first.End, first.Place = s.items[at].clock, s.toks[s.items[s.sentence(begin, from)].tok].At
			s.fill(&first, from, at)
			out = append(out, first)
			st.Start, begin, from = first.End, at, at
		}
		s.fill(&st, from, to)
		st.Open = st.HasStart && !st.HasEnd && len(spans) == 1 && s.endUnknown(sp.to)
		st.Apart = k > 0 && s.bitesBetween(spans[k-1].to, sp.from)
		st.Place = s.toks[s.items[s.sentence(begin, from)].tok].At
		out = append(out, st)
	}
	own := make([]int, len(out))
	for k := range out {
		own[k] = out[k].Lines
	}
	carry(out)
	if len(out) > 1 && words.ForgotLines(text) {
		for k := range out {
			out[k].Lines = own[k] // how many were out on one of them is not known
		}
	}
	return out
}

// changed is the clock, between the ends of a stretch, at which the boat went to another speed: "at 0800 we went up to
// 7 kt". 0 where there is none, or more than one.
func (s *scanner) changed(sp timed, from, to int) (at int) {
	for i := from; i < to; i++ {
		c := s.items[i].clock.Seconds
		if s.items[i].kind != aClock || !sp.hasStart || !sp.hasEnd || c <= sp.start.Seconds || c >= sp.end.Seconds {
			continue
		}
		for j := i + 1; j < to && s.items[j].kind != aBreak && s.items[j].kind != aClock; j++ {
			if s.items[j].kind == aSpeed && s.paced(j) && at > 0 {
				return 0
			} else if s.items[j].kind == aSpeed && s.paced(j) {
				at = i
			}
		}
	}
	return at
}

// endUnknown tells a text in which a question mark stands where the end of the stretch before item from would:
// "lines in 6:20, up ??".
func (s *scanner) endUnknown(from int) bool {
	for i := s.items[from-1].end; i < len(s.toks); i++ {
		if next, ok := words.LineAt(s.toks, i, "stop"); ok {
			return s.tok(next) == "?"
		}
	}
	return false
}

// bitesBetween tells whether a fish or a fate was told between two spans of clocks, and a sentence ended there.
func (s *scanner) bitesBetween(from, to int) bool {
	bite, end := false, false
	for _, it := range s.items[from:to] {
		bite = bite || it.kind == aFish || it.kind == aFate
		end = end || it.kind == aBreak
	}
	return bite && end
}

// sentence is the item with which the sentence of item i begins, not before item from.
func (s *scanner) sentence(i, from int) int {
	for i > from && s.items[i-1].kind != aBreak {
		i--
	}
	return i
}

// Span reads the first start and end of a text.
func Span(text string) (start, end Clock, ok bool) {
	for _, sp := range scan(text).spans() {
		if sp.hasStart && sp.hasEnd {
			return sp.start, sp.end, true
		}
	}
	return Clock{}, Clock{}, false
}

// Clocks are the times of day that a text names, in its order: "at 9:03", "0730", "about 7".
func Clocks(text string) []Clock {
	s := scan(text)
	s.sure()
	var out []Clock
	for i, it := range s.items {
		switch {
		case it.kind == aClock:
			out = append(out, it.clock)
		case it.kind == aNumber && it.digits && it.num == float64(int(it.num)) && it.num >= 1 && it.num <= 24 &&
			(len(s.items) == 1 || s.hourWord(it.tok) || it.hedged && i == len(s.items)-1):
			out = append(out, Clock{Seconds: int(it.num) * 3600 % day, Sure: it.num > 12})
		}
	}
	return out
}

// hourWord reports whether "at", "around" or the like stands before a bare hour.
func (s *scanner) hourWord(tok int) bool {
	switch s.tok(tok - 1) {
	case "at", "around", "about", "till", "until", "las", "alle", "ore", "um", "gegen", "vers", "as", "~", "by":
		return true
	}
	return false
}

// border parts what stands between two stretches: at the first mark or word that ends a
// clause; without one all of it belongs to the first.
func (s *scanner) border(from, to int) int {
	for i := from; i < to; i++ {
		switch k := s.items[i].kind; k {
		case aBreak, aSession:
			return i + 1
		case anAnd:
			if s.tok(s.items[i].tok) != "+" {
				return i + 1
			}
		case aComma:
			if s.onlyEffort(i+1, to) {
				return i + 1
			}
		}
	}
	return to
}

// onlyEffort reports whether lines or a speed stand right before the next stretch, whose
// they are: "0640-0900, 5 lines 1030-1120".
func (s *scanner) onlyEffort(from, to int) bool {
	for i := from; i < to; i++ {
		if k := s.items[i].kind; k == aComma || k == aBreak {
			return false
		}
	}
	return from < to && (s.items[from].kind == aLines || s.items[from].kind == aSpeed)
}

// fill takes speed, lines, stops and hours from items.
func (s *scanner) fill(st *Stretch, from, to int) {
	for i := from; i < to; i++ {
		switch it := s.items[i]; it.kind {
		case aSpeed:
			switch fits := !s.windy(i) && it.num > 0 && it.num <= 25; {
			case fits && st.SpeedLo == 0:
				st.SpeedLo, st.SpeedHi = it.num, max(it.num, it.hi)
			case fits && it.num != st.SpeedLo:
				st.More = append(st.More, s.raw(it.tok, it.end))
			}
		case aLines:
			if s.struck(i) || s.eitherOf(i) {
				continue
			}
			switch fits := it.hi <= it.num && !s.takenIn(i); {
			case fits && st.Lines < 0:
				st.Lines = int(it.num)
			case it.hi <= it.num && int(it.num) != st.Lines:
				st.More = append(st.More, s.raw(it.tok, it.end))
			}
		case aNumber:
			switch bare := it.hi == 0 && st.SpeedLo == 0; {
			case st.Lines < 0 && (s.pulled(i) || s.putOut(i) || s.ofThem(i) || st.HasStart && s.alone(i)):
				st.Lines = int(it.num)
			case !bare && it.hi == 0 && s.paced(i) && it.num != st.SpeedLo:
				st.More = append(st.More, s.raw(it.tok, it.end))
			case bare && (s.paced(i) || st.HasStart && st.HasEnd && s.atPace(i)):
				st.SpeedLo, st.SpeedHi = it.num, it.num
			case it.hi > it.num && it.hi-it.num <= widestPace && st.SpeedLo == 0 && st.HasStart && st.HasEnd &&
				s.atPace(i):
				st.SpeedLo, st.SpeedHi = it.num, it.hi
			}
		case aTime:
			if s.pauseNear(i) {
				st.StopMinutes += it.num
			} else if st.Hours == 0 {
				st.Hours = it.num / 60
			}
		}
	}
}

// ofThem reports whether a number counts the lines just spoken of: lines in 6:30, four of them.
func (s *scanner) ofThem(i int) bool {
	return s.tok(s.items[i].end) == "of" && s.tok(s.items[i].end+1) == "them" && !s.biting(i)
}

// struck reports whether the lines of an item went off: "two rods go together".
func (s *scanner) struck(i int) bool {
	switch s.tok(s.items[i].end) {
	case "go", "goes", "went", "going", "fired", "screamed", "doubled":
		return true
	}
	return false
}

// eitherOf reports whether a number of lines is one of two that somebody was not sure of: "four or five lines".
func (s *scanner) eitherOf(i int) bool {
	return i > 0 && s.tok(s.items[i].tok-1) == "or" && s.items[i-1].kind != aLines
}

// mostAlone is the most lines that a number alone may count.
const mostAlone = 15

// alone reports whether a number stands between commas, in a sentence of no fish, behind the clock at which
// lines went in: "lines in 6:15, five, 8 kt".
func (s *scanner) alone(i int) bool {
	it := s.items[i]
	if it.hi > 0 || it.article || it.num < 2 || it.num > mostAlone || it.num != float64(int(it.num)) || s.biting(i) ||
		i == 0 {
		return false
	}
	parts := func(k kind) bool { return k == aComma || k == aBreak }
	if !parts(s.items[i-1].kind) || i+1 < len(s.items) && !parts(s.items[i+1].kind) &&
		!(s.tok(it.end) == "this" && s.tok(it.end+1) == "time") {
		return false
	}
	for j := i - 1; j >= 0 && j >= i-4; j-- {
		if s.items[j].kind == aClock {
			return true
		}
	}
	return false
}

// atPace reports whether a bare number is a speed: behind "at", after so many lines or the
// clocks of a stretch ("4 lines at 8.5", "9:25 to 12:25 at 8").
func (s *scanner) atPace(i int) bool {
	it := s.items[i]
	if t := s.tok(it.tok - 1); t != "at" && t != "a" && t != "bei" || it.article ||
		!it.digits || it.num < 2 || it.num > 25 {
		return false
	}
	j := i - 1
	for j >= 0 && s.items[j].kind == aGlue {
		j--
	}
	return j >= 0 && (s.items[j].kind == aLines || s.items[j].kind == aClock)
}

// pauseNear reports whether a duration is one of lines out of the water: "less 20 min
// stop", "45 min lunch".
func (s *scanner) pauseNear(i int) bool {
	for j := s.items[i].tok - 1; j >= 0 && j >= s.items[i].tok-3 && !words.Stops(s.toks[j]); j-- {
		if _, ok := words.LineAt(s.toks, j, "pause"); ok {
			return true
		}
	}
	for j := s.items[i].end; j < len(s.toks) && j < s.items[i].end+3 && !words.Stops(s.toks[j]); j++ {
		if _, ok := words.LineAt(s.toks, j, "pause"); ok {
			return true
		}
	}
	return s.tok(s.items[i].tok-1) == "-" && i > 0 && s.items[i].unit == "min"
}

// windy reports whether a speed is that of wind or current.
func (s *scanner) windy(i int) bool {
	for _, j := range []int{s.items[i].tok - 1, s.items[i].tok - 2, s.items[i].end} {
		if j < 0 || j >= len(s.toks) || j < s.items[i].tok && words.Stops(s.toks[j]) {
			continue
		}
		if s.tok(j+1) == "/" { // w/ 5 lines
			continue
		}
		if _, ok := words.LineAt(s.toks, j, "wind"); ok && (j < s.items[i].tok || !s.isTo(j)) {
			return true
		}
	}
	return false
}

func (s *scanner) isTo(j int) bool {
	_, ok := words.LineAt(s.toks, j, "to")
	return ok
}

// untimed reads stretches that have a duration and no clocks: "2 h at 8 kts then 1.5 h at
// 12". A duration alone is one only where nothing else stands in the text.
func (s *scanner) untimed() []Stretch {
	if len(s.items) == 0 {
		return nil
	}
	if s.biting(len(s.items) - 1) {
		return s.sentences()
	}
	var out []Stretch
	how, said := words.Method(s.text)
	from, effort := 0, len(s.items) == 1 || said && how == "troll" // trolled 140 min
	for i := range s.items {
		last := i == len(s.items)-1
		if k := s.items[i].kind; !last && k != anAnd && k != aBreak {
			continue
		}
		st := Stretch{Lines: -1}
		if s.fill(&st, from, i+1); st.Hours == 0 && s.goesOn(&out, from, i+1) {
			from, effort = i+1, true
			continue
		}
		if st.Hours > 0 && !otherMethod(s.raw(s.items[from].tok, s.items[i].end)) {
			out = append(out, st)
		}
		if st.Hours > 0 {
			from = i + 1
		}
		effort = effort || st.SpeedLo > 0 || st.Lines >= 0
	}
	if !effort {
		return nil
	}
	carry(out)
	return out
}

// sentences reads those of a text that tell how long lines were out, with how many or at which speed,
// and nothing of fish or of another way of fishing: "Trolled 3 h with 4 lines. One wahoo."
func (s *scanner) sentences() []Stretch {
	var out []Stretch
	for from := 0; from < len(s.items); {
		to := from
		for to < len(s.items) && s.items[to].kind != aBreak {
			to++
		}
		st := Stretch{Lines: -1}
		s.fill(&st, from, to)
		if to > from && !s.biting(to-1) && st.Hours > 0 && (st.SpeedLo > 0 || st.Lines >= 0 || s.trolls(from, to)) {
			first, last := s.items[from], s.items[to-1]
			st.Place = s.toks[first.tok].At
			if !otherMethod(s.raw(first.tok, last.end)) {
				out = append(out, st)
			}
		} else if st.Hours == 0 {
			s.goesOn(&out, from, to)
		}
		from = to + 1
	}
	return out
}

// trolls reports whether the words of a sentence say that it is of trolling, or that it begins with lines in the water.
func (s *scanner) trolls(from, to int) bool {
	first := s.items[from].tok
	how, ok := words.Method(s.raw(first, s.items[to-1].end))
	_, lines := words.LineAt(s.toks, first, "plural")
	_, in := words.LineAt(s.toks, first+1, "start")
	return ok && how == "troll" || lines && in
}

// goesOn gives the last stretch the speed or the lines of a sentence right behind it that holds nothing else: "Trolled
// 3 h. 4 lines, 8 kn." It reports whether there is one.
func (s *scanner) goesOn(out *[]Stretch, from, to int) bool {
	told := 0
	for _, it := range s.items[from:to] {
		switch it.kind {
		case aSpeed, aLines:
			told++
		case aComma, anAnd, aGlue, aHedge, aBreak:
		default:
			return false
		}
	}
	n := len(*out) - 1
	if n < 0 || told == 0 || (*out)[n].Lines >= 0 && (*out)[n].SpeedLo > 0 {
		return false
	}
	s.fill(&(*out)[n], from, to)
	return true
}

// otherMethod reports whether a sentence of hours speaks of another way of fishing than trolling.
func otherMethod(text string) bool {
	m, ok := words.Method(text)
	return words.Otherwise(text) || ok && m != "troll" && m != "kite"
}

// carry gives a stretch the speed and lines of the one before where it tells none, and the
// first those that are told only once, behind the last.
func carry(out []Stretch) {
	own := make([]bool, len(out)) // a speed of its own, and no number of lines
	for k := range out {
		own[k] = out[k].SpeedLo > 0 && out[k].Lines < 0
	}
	last := len(out) - 1
	for k := 1; k < len(out); k++ {
		if out[k].Lines < 0 {
			out[k].Lines = out[k-1].Lines
		}
		if out[k].SpeedLo == 0 {
			out[k].SpeedLo, out[k].SpeedHi = out[k-1].SpeedLo, out[k-1].SpeedHi
		}
	}
	for k := len(out) - 2; k >= 0; k-- {
		if out[k].Lines < 0 && !(own[k] && out[last].SpeedLo != out[k].SpeedLo && out[last].Apart) {
			out[k].Lines = out[k+1].Lines
		}
		if out[k].SpeedLo == 0 {
			out[k].SpeedLo, out[k].SpeedHi = out[k+1].SpeedLo, out[k+1].SpeedHi
		}
	}
}

// Duration reads a duration in hours, with what is to be taken off: "2h45 less 20 min
// stop", "5 1/2 hrs", "45 min", "4:30".
func Duration(text string) (hours float64, ok bool) {
	s := scan(text)
	total, found := 0., false
	for i, it := range s.items {
		switch {
		case it.kind == aTime && found && s.pauseNear(i):
			total -= it.num
		case it.kind == aTime && (!found || i > 0 && s.items[i-1].kind == aGlue || i > 0 && s.items[i-1].kind == anAnd):
			total, found = total+it.num, true
		case it.kind == aClock && len(s.items) == 1 && !it.compact && s.tok(it.tok+1) == ":" && it.end == it.tok+3:
			total, found = float64(it.clock.Seconds)/60, true
		case it.kind == aGlue, it.kind == anAnd, it.kind == aBreak, it.kind == aComma,
			it.kind == aHedge, it.kind == aClose:
		case it.kind == aWord, it.kind == aTime, it.kind == aPlace, it.kind == aFate, it.kind == aNo:
		default:
			return 0, false
		}
	}
	return total / 60, found && total > 0
}
