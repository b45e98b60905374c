package phrase

import (
	"slices"
	"strings"
	"unicode"

	"wakeledger/pipeline/words"
)

// longestCode is how many letters a code behind a fish has at most.
const longestCode = 3

// CodesBehind are the codes in capital letters that stand last behind a fish of a text and that nothing here knows, as
// written: "albacore 31 in GB, bonito" has GB. One may say what became of the fish.
func CodesBehind(text string) []string {
	s := scan(text)
	s.sure()
	var out []string
	fish := false
	for i, it := range s.items {
		last := i+1 == len(s.items) || slices.Contains([]kind{aBreak, aComma, anAnd, aClose}, s.items[i+1].kind)
		switch {
		case it.kind == aBreak || it.kind == aComma || it.kind == anAnd:
			fish = false
		case it.kind == aFish:
			fish = true
		case it.kind == aWord && fish && last && it.tok < it.end && isCode(s.raw(it.tok, it.end)):
			out = append(out, s.raw(it.tok, it.end))
		}
	}
	return out
}

// codedFish takes a code of two capital letters or more that nothing here knows for the name of a fish, where it stands
// between how many there were and what became of them: "1 SJ in the box".
func (s *scanner) codedFish() {
	for i := 1; i+1 < len(s.items); i++ {
		it, n, fate := &s.items[i], s.items[i-1], s.items[i+1]
		if it.kind != aWord || it.tok >= it.end || fate.kind != aFate || n.kind != aNumber || !n.digits || n.hi > 0 ||
			n.num < 1 || n.num != float64(int(n.num)) {
			continue
		}
		switch fate.fate.Fate {
		case words.Landed, words.Released, words.Lost:
			if name := s.raw(it.tok, it.end); len(name) > 1 && isCode(name) {
				it.kind, it.text = aFish, name
			}
		}
	}
}

// isCode tells a few capital letters that are not the letter of a sex.
func isCode(word string) bool {
	return len(word) <= longestCode && len(word) > 0 && strings.IndexFunc(word, func(c rune) bool {
		return c > unicode.MaxASCII || !unicode.IsUpper(c)
	}) < 0 && word != "M" && word != "F" && word != "H"
}
