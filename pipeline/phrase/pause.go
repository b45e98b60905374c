package phrase

import "wakeledger/pipeline/words"

// pauseWords is how many words before a span of time may say that lines were up during it, and longPause how many words
// such a saying has at the most.
const pauseWords, longPause = 3, 6

// Pauses are the times between which a remark says that the lines were up: "lines up 1120-1300 for a
// squall".
func Pauses(text string) []Stretch {
	s := scan(text)
	var out []Stretch
	for _, sp := range s.spans() {
		if tok := s.items[sp.from].tok; sp.hasStart && sp.hasEnd && s.pausedBefore(tok) {
			out = append(out, Stretch{Start: sp.start, End: sp.end, HasStart: true, HasEnd: true, Lines: -1,
				Place: s.toks[tok].At})
		}
	}
	return out
}

// pausedBefore reports whether a word right before a token says that lines came up or were not fished.
func (s *scanner) pausedBefore(tok int) bool {
	for j := tok - 1; j >= 0 && j >= tok-longPause && (!words.Stops(s.toks[j]) || s.tok(j) == ":"); j-- {
		for _, kind := range []string{"stop", "pause"} {
			if next, ok := words.LineAt(s.toks, j, kind); ok && (j >= tok-pauseWords || next > tok-pauseWords) {
				return true
			}
		}
	}
	return false
}

// Stopped are the minutes of stops that a remark tells of without their clock times: "stopped 40 min to clear weed".
// Whether lines were up meanwhile it need not say. What is told with a bite is of that: "lost him 20 min in".
func Stopped(text string) (minutes float64) {
	for _, clause := range clauseEnd.Split(text, -1) {
		if TellsBite(clause) {
			continue
		}
		s := scan(clause)
		for i, it := range s.items {
			if it.kind == aTime && it.num > 0 && s.pauseNear(i) {
				minutes += it.num
			}
		}
	}
	return minutes
}

// StoppedLinesUp are the minutes of stops of which a remark says that the lines were up meanwhile: "stopped one hour
// with lines up", "drifted 40 min with everything aboard".
func StoppedLinesUp(text string) (minutes float64) {
	for _, sentence := range sentence.Split(text, -1) {
		if !hasLine(sentence, "aboard") || TellsBite(sentence) {
			continue
		}
		if stopped := Stopped(sentence); stopped > 0 {
			minutes += stopped
			continue
		}
		for _, clause := range clauseEnd.Split(sentence, -1) {
			minutes += meanwhile(clause)
		}
	}
	return minutes
}

// StopIncluded are the minutes of stops with the lines up which a remark says that the hours include: "the hours
// include half an hour with the lines in the boat".
func StopIncluded(text string) (minutes float64) {
	for _, said := range sentence.Split(text, -1) {
		if hasLine(said, "include") {
			minutes += StoppedLinesUp(said)
		}
	}
	return minutes
}

// meanwhile are the minutes for which a clause says that the lines were up: the only time that it tells, and not how
// much earlier or later than another they came up.
func meanwhile(clause string) float64 {
	s := scan(clause)
	at, times := -1, 0
	for i, it := range s.items {
		if it.kind == aTime && it.num > 0 {
			at, times = i, times+1
		}
	}
	if times != 1 || !hasLine(clause, "aboard") || hasLine(clause, "sooner") {
		return 0
	}
	before := s.items[at].tok - 1
	if articles[s.tok(before)] {
		before--
	}
	if !whileWords[s.tok(before)] && !hasLine(clause, "whilst") {
		return 0
	}
	return s.items[at].num
}

// whileWords stand before how long something lasted.
var whileWords = map[string]bool{"for": true, "durante": true, "pendant": true, "per": true, "por": true, "fur": true}

// hasLine reports whether a text has a phrase of a kind of lines.txt: "aboard" says that lines are out of the water.
func hasLine(text, kind string) bool {
	toks := scan(text).toks
	for i := range toks {
		if _, ok := words.LineAt(toks, i, kind); ok {
			return true
		}
	}
	return false
}

// LinesUpAt is the time of day at which a remark says that the lines came up: "we took the lines out at half past
// four". Where it tells of other times of trolling too, it is none.
func LinesUpAt(text string) (at Clock, ok bool) {
	for _, clause := range clauseEnd.Split(text, -1) {
		told, up := Stretches(clause), words.EntryOf(clause).Event == words.EventUp
		c, clocks := clocksIn(clause)
		switch {
		case clocks == 0 && len(told) == 0 || TellsBite(clause) && !up:
		case clocks > 1 || len(told) > 1 || ok && (up || len(told) > 0):
			return Clock{}, false
		case len(told) == 1 && told[0].HasEnd && !told[0].HasStart && (up || hasLine(clause, "line")):
			at, ok = told[0].End, true
		case up && clocks == 1: // brought the rods in at four
			at, ok = c, true
		case len(told) == 1 && told[0].HasStart:
			return Clock{}, false
		}
	}
	return at, ok
}

// StretchIn is the one stretch whose beginning and end a remark tells, where it speaks of lines or of trolling: "the
// lines went over at a quarter past six, and we pulled them at noon".
func StretchIn(text string) (st Stretch, ok bool) {
	for _, said := range sentence.Split(text, -1) {
		how, trolled := words.Method(said)
		if !hasLine(said, "line") && !(trolled && how == "troll") || len(Pauses(said)) > 0 || TellsBite(said) {
			continue
		}
		told := Stretches(said)
		switch {
		case len(told) == 0:
			continue
		case ok || len(told) > 1 || !told[0].HasStart || !told[0].HasEnd:
			return Stretch{}, false
		}
		st, ok = told[0], true
	}
	return st, ok
}

// clocksIn is how many times of day a clause tells, and the last of them.
func clocksIn(clause string) (last Clock, n int) {
	for _, it := range scan(clause).items {
		if it.kind == aClock {
			last, n = it.clock, n+1
		}
	}
	return last, n
}
