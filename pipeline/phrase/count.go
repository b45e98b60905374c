package phrase

import (
	"regexp"
	"slices"
	"strconv"
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
			if ok || !s.counts(i) || it.article && !slices.ContainsFunc(s.items[i:], func(o item) bool {
				return o.kind == aFish && !o.several || o.kind == aFate
			}) {
				return 0, false // a bunch
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
	kept, letGo, ok := CountFates(text)
	return kept + letGo, ok
}

// CountFates is CountFish with the fish that the cell says were let go apart: "1 bluefin, 2 skipjack let go".
func CountFates(text string) (kept, letGo int, ok bool) {
	if plus := strings.TrimLeft(text, "0123456789 "); plus != text &&
		strings.ContainsAny(plus[:min(1, len(plus))], "+(") {
		return 0, 0, false // "0 + 4 snapper" counts none, and more that are not of the count
	}
	each := 1
	for _, it := range scan(text).items {
		switch {
		case it.kind == aMany && it.num != 2:
			return 0, 0, false // "all the skippy" says no number
		case it.kind == aMany:
			each = 2
		}
	}
	list := FishList(text, Defaults{})
	if each > 1 && len(list) > 1 {
		return 0, 0, false
	}
	for i, f := range list {
		if f.Name == "" || f.Fate == words.Lost || f.Fate == words.Missed {
			return 0, 0, false
		}
		switch {
		case f.N > 0 && i > 0 && again(f, list[i-1], text):
		case f.Fate == words.Released:
			letGo += max(f.N, each)
		default:
			kept += max(f.N, each)
		}
	}
	return kept, letGo, kept+letGo > 0
}

// again reports whether a fish is another name or the size of the one counted before it: "1 mahi, peanut".
func again(f, before Fish, text string) bool {
	at := strings.LastIndex(text, f.Name)
	counted := strings.TrimRight(text[:max(at, 0)], " ") // what stands before the name
	if at < 0 || !strings.HasSuffix(counted, ",") || strings.EqualFold(f.Name, before.Name) || f.Kg+f.LengthCm > 0 {
		return false
	}
	a, b := fishes().Find(f.Name, ""), fishes().Find(before.Name, "")
	size := !a.Found && len(a.Candidates) == 0 // a word for a fish of some size: peanut, rat, bull
	return b.Found && (size || a.Found && a.Species.Code == b.Species.Code)
}

// AllOf is the kind of fish that a cell says all of, in place of a number: "all the skippy", "skippy, all".
func AllOf(text string) (name string, ok bool) {
	for _, it := range scan(text).items {
		switch {
		case it.kind == aMany && it.num != 2:
			ok = true
		case it.kind == aFish && name == "":
			name = it.text
		case it.kind != aGlue && it.kind != aComma && it.kind != aBreak && it.kind != aPronoun:
			return "", false
		}
	}
	return name, ok && name != ""
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

// among is a count with a word and another count behind it in brackets, on either side of each other.
var among = regexp.MustCompile(`^(\d{1,2})\s*\((?:(\d{1,2})\s*(\pL[\pL .'’]*)|(\pL[\pL .'’]*?)\s*:?\s*(\d{1,2}))\)$`)

// CountsBoth reports whether a text is a count with a word and another count behind it in brackets: "3 (rel 1)".
func CountsBoth(text string) bool { return among.MatchString(strings.TrimSpace(text)) }

// CountAmong is a count of fish with those of them that were let go behind it: "3 (rel 1)".
func CountAmong(text string) (all, letGo int, ok bool) {
	m := among.FindStringSubmatch(strings.TrimSpace(text))
	if m == nil {
		return 0, 0, false
	}
	word := strings.TrimSpace(m[3] + m[4])
	free := func(s string) bool {
		f, _, _, ok := words.FateOf(s)
		return ok && f == words.Released
	}
	if !free(word) && !free("put "+word) && words.FateAlone(word) != words.Released { // "back"
		return 0, 0, false
	}
	all, _ = strconv.Atoi(m[1])
	letGo, _ = strconv.Atoi(m[2] + m[5])
	return all, letGo, letGo <= all
}
