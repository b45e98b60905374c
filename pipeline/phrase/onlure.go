package phrase

import "wakeledger/pipeline/words"

// longestLure is how many words a lure that nothing here knows has at most.
const longestLure = 3

// onLure takes the words behind "on the" for the name of a lure, where nothing here knows them and a measure, the next
// fish or nothing follows: "2 BFT on the black diver 58 in". They change nothing of what is told.
func (s *scanner) onLure() {
	for i := 1; i < len(s.items); i++ {
		if s.tok(s.items[i].tok) != "on" || s.items[i].end != s.items[i].tok+1 {
			continue
		}
		from := i + 1
		if from < len(s.items) && onArticles[s.tok(s.items[from].tok)] {
			from++
		}
		to, unknown := from, false
		for to < len(s.items) && to-from < longestLure && s.ofLure(to) {
			unknown = unknown || s.items[to].kind == aWord
			to++
		}
		if !unknown || to < len(s.items) && !s.endsLure(to) {
			continue
		}
		for k := i; k < to; k++ {
			s.items[k].kind, s.items[k].text = aGlue, "on"
		}
	}
}

// onArticles stand between "on" and a lure.
var onArticles = map[string]bool{"the": true, "a": true, "an": true, "my": true, "our": true, "his": true, "her": true}

// ofLure reports whether an item may be a word of a lure's name: one that nothing here knows, or a colour, which may be
// short for a fish.
func (s *scanner) ofLure(i int) bool {
	it := s.items[i]
	if it.kind == aWord {
		return s.toks[it.tok].Kind == words.Word
	}
	_, hue := words.HueAt(s.toks, it.tok)
	return hue || it.kind == aTackle
}

// endsLure reports whether an item may follow a lure's name.
func (s *scanner) endsLure(i int) bool {
	switch s.items[i].kind {
	case aNumber, aLength, aWeight, aGirth, aComma, aBreak, anAnd, aClose, aHedge:
		return true
	}
	return false
}
