package phrase

import (
	"regexp"
	"slices"
	"strings"

	"wakeledger/pipeline/words"
)

// eachUnits gives the numbers behind so many fish of one kind the heading's unit, one of each fish: "3 albacore
// 7.4 / 5.4 / 8.4" under kilos.
func (s *scanner) eachUnits(d Defaults) {
	u := d.LengthUnit + d.WeightUnit
	if factor[u] == 0 {
		return // none, or both
	}
	s.strokes()
	for i, it := range s.items {
		n := s.countBefore(i)
		if it.kind != aFish || n < 2 {
			continue
		}
		if of := s.numbersFrom(i + 1); len(of) > 1 && len(of) <= n {
			for _, j := range of {
				x := &s.items[j]
				x.kind, x.unit, x.num = unitKind[u], u, x.num*factor[u]
			}
		}
	}
}

// countBefore is the number of fish that stands right before the item at i; 0 where there is none.
func (s *scanner) countBefore(i int) int {
	j := i - 1
	for j >= 0 && s.items[j].kind == aGlue {
		j--
	}
	if j < 0 || s.items[j].kind != aNumber || s.items[j].article || s.items[j].num != float64(int(s.items[j].num)) {
		return 0
	}
	return int(s.items[j].num)
}

// numbersFrom are the numbers from item i on that only marks and "and" part, and of which none counts what
// stands behind it.
func (s *scanner) numbersFrom(i int) []int {
	var of []int
	for ; i < len(s.items); i++ {
		switch it := s.items[i]; it.kind {
		case aComma, anAnd, aColon, aHedge:
		case aNumber:
			if !it.digits || it.hi > 0 {
				return nil
			}
			of = append(of, i)
		default:
			if n := len(of); n > 0 && of[n-1] == i-1 && it.kind != aBreak {
				return of[:n-1]
			}
			return of
		}
	}
	return of
}

var strokes = regexp.MustCompile(`^\d{1,3}(?:[.,]\d{1,2})?(?:/\d{1,3}(?:[.,]\d{1,2})?)+$`)

// strokes parts numbers that strokes join, where they are as many as the fish before them: "3 albacore 18/21/24".
func (s *scanner) strokes() {
	var out []item
	for i, it := range s.items {
		text := s.raw(it.tok, it.end)
		parts := strings.Split(text, "/")
		if it.kind != aMeasure || i == 0 || s.items[i-1].kind != aFish || !strokes.MatchString(text) ||
			len(parts) != s.countBefore(i-1) || it.end-it.tok != 2*len(parts)-1 {
			out = append(out, it)
			continue
		}
		for k, part := range parts {
			v, _ := parse(part)
			if k > 0 {
				out = append(out, item{kind: aComma, tok: it.tok + 2*k - 1, end: it.tok + 2*k})
			}
			out = append(out, item{kind: aNumber, tok: it.tok + 2*k, end: it.tok + 2*k + 1, num: v, digits: true,
				exact: hasPoint(part)})
		}
	}
	s.items = out
}

// biggestBehind reports whether words for the biggest of several fish, and then a figure, begin at item i: "2
// albacore the biggest 31 lb".
func (s *scanner) biggestBehind(start, i int) bool {
	if _, ok := words.GlueIs(s.toks, s.items[i].tok, "biggest"); !ok || s.items[i].kind != aGlue {
		return false
	}
	several := false
	for j := start; j < i; j++ {
		several = several || s.items[j].kind == aFish && s.countBefore(j) > 1
	}
	next := i + 1
	for next < len(s.items) && (s.items[next].kind == aGlue || s.items[next].kind == aHedge) {
		next++
	}
	if !several || next >= len(s.items) {
		return false
	}
	switch s.items[next].kind {
	case aNumber, aWeight, aLength:
		return s.items[next].digits
	}
	return false
}

// measuresInTurn parts the weights, or the lengths, behind so many fish of one kind that only spaces part, one of each
// fish: "2 mahi (6lb 21lb scale)". What a word at the end says of them, it says of all.
func (s *scanner) measuresInTurn() {
	for i := 0; i < len(s.items); i++ {
		n := s.countBefore(i)
		if s.items[i].kind != aFish || n < 2 {
			continue
		}
		from := i + 1
		for from < len(s.items) && (s.items[from].kind == aComma || s.items[from].kind == aGlue) {
			from++
		}
		to := from
		for to < len(s.items) && s.items[to].kind == s.items[from].kind && s.items[to].unit == s.items[from].unit {
			to++
		}
		if to-from < 2 || to-from > n || s.items[from].kind != aWeight && s.items[from].kind != aLength {
			continue
		}
		last := s.items[to-1]
		for j := to - 2; j >= from; j-- {
			s.items[j].borrowed, s.items[j].hedged = true, s.items[j].hedged || last.hedged
			comma := item{kind: aComma, tok: s.items[j+1].tok, end: s.items[j+1].tok}
			s.items = slices.Insert(s.items, j+1, comma)
		}
	}
}
