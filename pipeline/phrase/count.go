package phrase

import (
	"strings"

	"wakeledger/pipeline/words"
)

// Count reads a cell that holds how many: "2", "two", "none", "3 (1 lost)", "2 fish". It
// reports false for what is no one whole number: "a few", "2-3", "-".
func Count(text string) (n int, ok bool) {
	s := scan(text)
	for i, it := range s.items {
		switch it.kind {
		case aHedge, aGlue:
		case aNothing:
			if ok {
				return n, n == 0
			}
			n, ok = 0, true
		case aNumber:
			if ok || !s.counts(i) {
				return 0, false
			}
			n, ok = int(it.num), true
		case aFish, aFate, aClose, aTimes, aMany, aPlace:
			if !ok {
				return 0, false
			}
		case aComma, aBreak, aColon:
			return n, ok && s.onlyParts(i+1) // what follows breaks the count down
		default:
			return 0, false
		}
	}
	return n, ok
}

// CountFish counts the fish that a cell names where a number is due: "2 wahoo 31, 28#", "the
// skippy". It reports false where one has no name, or a fate of its own.
func CountFish(text string) (n int, ok bool) {
	if plus := strings.TrimLeft(text, "0123456789 "); plus != text && strings.ContainsAny(plus[:min(1, len(plus))], "+(") {
		return 0, false // "0 + 4 snapper" counts none, and more that are not of the count
	}
	for _, f := range FishList(text, Defaults{}) {
		if f.Name == "" || f.Fate == words.Lost || f.Fate == words.Missed {
			return 0, false
		}
		n += max(f.N, 1)
	}
	return n, n > 0
}

// counts reports whether the number at item i may be the count of a cell.
func (s *scanner) counts(i int) bool {
	it := s.items[i]
	if it.hi > 0 || it.num < 0 || it.num > 999 || it.num != float64(int(it.num)) {
		return false
	}
	return !it.article || i+1 < len(s.items) && (s.items[i+1].kind == aFish || s.items[i+1].kind == aFate)
}

// onlyParts reports whether no further number of its own follows from item i on.
func (s *scanner) onlyParts(i int) bool {
	for ; i < len(s.items); i++ {
		it := s.items[i]
		part := i+1 < len(s.items) && (s.items[i+1].kind == aFate || s.items[i+1].kind == aFish)
		if (it.digits || it.kind == aNumber && !it.article) && !part {
			return false
		}
	}
	return true
}
