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
