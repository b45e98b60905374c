package phrase

import (
	"slices"
	"strings"

	"wakeledger/pipeline/words"
)

// clause is a part of a sentence with what it says.
type clause struct {
	text     string // as written
	at       int    // its first byte
	items    []item
	join     kind // what parts it from the one before: aBreak, aComma, anAnd or aColon
	session  int
	fate     words.Fate
	fateWord string
	cause    string
	after    bool // the fate only goes on with a bite that is told
	denied   bool // a fate that did not happen
	count    int  // 0 not told
	article  bool // the count is "a"
	counted  int  // index of the count, -1
	fish     *item
	others   int    // further named fish, and words for other boats
	method   string // of fishing, other than trolling
	list     bool
	compound bool
	clock    *Clock
	place    string
	length   float64
	girth    float64
	kg       float64
	guess    bool
	scaled   bool
	exact    bool
	kindOf   string // of length
	pronoun  bool
	many     bool
	none     bool // no such fish
	both     bool
	onScale  bool
	seen     bool
	idle     bool
	nothing  bool
	setting  bool // speaks of lines or speed
	score    *item
	stranger bool // an unknown word where a fish would stand
	unknown  int  // unknown words
	loose    int  // numbers without a meaning
	twice    bool // a second weight
	share    bool // so many of the fish counted before: two wahoo, one kept, one lost
	unsure   bool // so many of the fish counted before, or more beside them
	blank    bool // a fish without a measure, among those that have one
	ended    bool // measures, and the clause behind says what became of the fish: 76 in, kept
}

// cutter collects the clauses of a text.
type cutter struct {
	s       *scanner
	d       Defaults
	list    bool
	out     []clause
	start   int
	session int
	join    kind
}

// clauses cuts the items into clauses and reads each. In a list each fish begins one.
func (s *scanner) clauses(d Defaults, list bool) []clause {
	borrowUnits(s.items)
	s.eachUnits(d)
	s.measuresInTurn()
	if list {
		lengthsBehind(s.items, d)
	}
	c := cutter{s: s, d: d, list: list, join: aBreak}
	for i, it := range s.items {
		switch k := s.parting(i); {
		case it.kind == aSession:
			c.cut(i, i+1, aBreak)
			c.session, c.join = int(it.num), aBreak
		case k == anAnd && chained(s.items, c.start, i):
		case k != aWord:
			c.cut(i, i+1, k)
		case it.kind == aScore:
			c.cut(i, i, aComma)
			c.cut(i+1, i+1, aComma)
		case i > c.start && (begins(s.items, c.start, i, list) || s.biggestBehind(c.start, i)):
			c.cut(i, i, aComma)
		}
	}
	c.cut(len(s.items), len(s.items), aBreak)
	weighedBefore(c.out)
	endedBehind(c.out)
	weighedTogether(c.out)
	return c.out
}

// leastLength is how long in cm a fish is at the least whose length is a bare number.
const leastLength = 15

// lengthsBehind takes the bare number behind a fish's name for its length, in a list whose bare numbers are lengths:
// "dorado 52 let go".
func lengthsBehind(items []item, d Defaults) {
	if factor[d.LengthUnit] == 0 || d.WeightUnit != "" {
		return
	}
	for i := 1; i < len(items); i++ {
		it := &items[i]
		if it.kind == aNumber && it.digits && it.hi == 0 && items[i-1].kind == aFish &&
			it.num*factor[d.LengthUnit] >= leastLength && (i+1 == len(items) || items[i+1].kind != aFish) {
			it.exact = hasFraction(it.num)
			it.kind, it.unit, it.num = aLength, d.LengthUnit, it.num*factor[d.LengthUnit]
		}
	}
}

// weighedBefore takes the weights behind a colon and a word for the scale for those of it: "weighed 2: 17.4 and 33 lb".
func weighedBefore(all []clause) {
	scale := false
	for i := range all {
		c := &all[i]
		if c.join == aBreak {
			scale = false
		}
		scale = scale || c.onScale && c.kg == 0 && c.fish == nil && i+1 < len(all) && all[i+1].join == aColon
		c.scaled = c.scaled || scale && c.kg > 0 && !c.guess
	}
}

// endedBehind marks measures behind which a clause says no more than what became of their fish. Behind several fish
// they may be of one of these.
func endedBehind(all []clause) {
	several := false
	for i := 1; i < len(all); i++ {
		c, next := &all[i-1], all[i]
		several = several || c.count > 1
		c.ended = !several && c.onlyMeasures() && next.join == aComma && next.fate >= words.Landed &&
			next.count+next.others+next.unknown == 0 && next.fish == nil
	}
}

// weighedTogether takes a weight that has its unit from the one behind to be from the same scale: "30 and 34 lb on the
// scale".
func weighedTogether(all []clause) {
	for i := len(all) - 2; i >= 0; i-- {
		c, next := &all[i], all[i+1]
		borrowed := slices.ContainsFunc(c.items, func(it item) bool { return it.borrowed })
		c.scaled = c.scaled || borrowed && c.kg > 0 && !c.guess && next.scaled && next.join != aBreak
	}
}

// parting is how an item parts clauses; aWord if it does not.
func (s *scanner) parting(i int) kind {
	switch it := s.items[i]; it.kind {
	case aBreak, anAnd, aColon:
		return it.kind
	case aComma:
		if t := s.tok(it.tok); t == "(" || t == "[" {
			return aColon // a bracket, like a colon or a dash, tells more of the same
		}
		return aComma
	case aClose:
		return aComma
	}
	return aWord
}

// cut ends the clause at item end; the next begins at item next, parted by the mark given.
// Of several marks on end the strongest holds.
func (c *cutter) cut(end, next int, by kind) {
	if end > c.start {
		cl := clause{items: c.s.items[c.start:end], join: c.join, session: c.session, counted: -1, list: c.list}
		last := len(c.s.toks)
		if end < len(c.s.items) {
			last = c.s.items[end].tok
		}
		cl.text = strings.Trim(c.s.raw(cl.items[0].tok, last), " ,;")
		cl.at = c.s.toks[cl.items[0].tok].At
		cl.read(c.d)
		c.out = append(c.out, cl)
		c.join = by
	} else {
		c.join = min(c.join, by)
	}
	c.start = next
}

// borrowUnits gives a number in a list the unit at its end: 30 and 34 lb.
func borrowUnits(items []item) {
	for i := len(items) - 1; i > 0; i-- {
		if items[i].kind != aNumber || !items[i].digits || items[i-1].kind == aFate || !follows(items, i) {
			continue
		}
		j := i + 1
		for j < len(items) && (items[j].kind == aComma || items[j].kind == anAnd || items[j].kind == aGlue) {
			j++
		}
		if j == i+1 || j >= len(items) || items[j].kind != aWeight && items[j].kind != aLength || items[j].unit == "" {
			continue
		}
		if j+1 < len(items) && items[j+1].kind == aFish {
			continue
		}
		items[i].exact = hasFraction(items[i].num)
		items[i].kind, items[i].unit, items[i].borrowed = items[j].kind, items[j].unit, true
		items[i].num *= factor[items[j].unit]
		items[i].hedged = items[i].hedged || items[j].hedged
		items[j].hedged = items[i].hedged
	}
}

// follows reports whether a fish or a number stands before item i, past commas and glue.
func follows(items []item, i int) bool {
	for j := i - 1; j >= 0; j-- {
		switch items[j].kind {
		case aFish, aScale:
			return true
		case aNumber:
			if items[j].digits {
				return true
			}
		case aWeight, aLength:
			return true
		case aComma, anAnd, aGlue, aHedge, aColon, aFate, aMany:
		default:
			return false
		}
	}
	return false
}

// chained reports whether "and" at item i joins two fates of one fish: hooked and lost.
func chained(items []item, start, i int) bool {
	fate := false
	for _, it := range items[start:i] {
		if it.kind != aFate && it.kind != aGlue {
			return false
		}
		fate = fate || it.kind == aFate && !it.fate.Weak
	}
	return fate && i+1 < len(items) && items[i+1].kind == aFate
}

// begins reports whether a clause begins at item i although no mark parts it from the one
// before: 2 missed 1 lost, missed 2 lost 1, wahoo 30# mahi 8#.
func begins(items []item, start, i int, list bool) bool {
	fate, fish, count, clock, content := false, false, false, false, false
	for k, it := range items[start:i] {
		switch it.kind {
		case aFate:
			if it.until > items[i].tok {
				return false // let 2 yellowfin go
			}
			fate = fate || !it.fate.Weak
		case aFish:
			fish = true
		case aNumber:
			count = count || isCount(items, start+k, start)
		case aClock:
			clock = true
		}
		content = content || it.kind == aFate || it.kind == aFish
	}
	switch it := items[i]; it.kind {
	case aNumber:
		next := significant(items, i+1)
		if prefixed(items, start) && items[i-1].kind == aFate {
			return false
		}
		return content && (count || fish) && !it.article && !guessOf(items[start:i], it) &&
			next < len(items) && next <= i+3 &&
			(items[next].kind == aFish || items[next].kind == aFate && !items[next].fate.After) &&
			(count && fate || fish)
	case aFate:
		if !fate || !count || it.fate.After || it.fate.Weak || i+1 >= len(items) ||
			items[i+1].kind != aNumber || !items[i+1].digits {
			return false
		}
		if prefixed(items, start) {
			return true
		}
		next := significant(items, i+2)
		return next >= len(items) || items[next].kind != aFish && items[next].kind != aFate
	case aClock:
		return clock && content
	case aFish:
		return list && fish && it.text != "" && !it.article
	}
	return false
}

// prefixed reports whether a clause has its fate before the number: landed 1 lost 1, where
// others write 1 landed 1 lost.
func prefixed(items []item, start int) bool {
	i := significant(items, start)
	return i+1 < len(items) && items[i].kind == aFate && items[i+1].kind == aNumber
}

// significant is the first item from i on that is not glue.
func significant(items []item, i int) int {
	for i < len(items) && (items[i].kind == aGlue || items[i].kind == aTackle || items[i].kind == aTimes ||
		items[i].kind == aHedge || items[i].kind == aKind || items[i].kind == aUnit) {
		i++
	}
	return i
}

// guessOf tells a hedged figure right behind a fish or its length: what somebody thinks it weighed, "tuna 120 cm ca 30
// let go".
func guessOf(before []item, it item) bool {
	if !it.hedged || !it.digits {
		return false
	}
	for i := len(before) - 1; i >= 0; i-- {
		switch before[i].kind {
		case aFish, aLength, aGirth:
			return true
		case aHedge, aGlue:
		default:
			return false
		}
	}
	return false
}

// isCount reports whether the number at i counts fish or bites of the clause that begins
// at start.
func isCount(items []item, i, start int) bool {
	it := items[i]
	if i > start && items[i-1].kind == aTimes && it.digits && it.num < 61 && it.num >= 1 && it.hi == 0 {
		return it.num == float64(int(it.num)) // yft x2
	}
	if i > start && items[i-1].article && items[i-1].kind == aNumber && it.digits {
		return false // a 39 inch mahi
	}
	if it.num < 1 || it.num > 60 || it.num != float64(int(it.num)) || it.hi > 0 || guessOf(items[start:i], it) {
		return false
	}
	before := false
	for _, p := range items[start:i] {
		before = before || p.kind == aFate
	}
	if it.text == "double" || it.text == "twice" && before {
		return true
	}
	j := significant(items, i+1)
	if it.article {
		for j < len(items) && items[j].kind == aWord && ordinals[items[j].text] > 0 {
			j = significant(items, j+1) // a second one
		}
		if it.alone && i > start && items[i-1].kind == aFate && (j >= len(items) ||
			j > i+1 && items[j].kind == aPlace || where[items[i+1].text]) {
			return true // perdi um na linha, perdí uno en la cuerda
		}
		from := j
		for j < len(items) && (items[j].kind == aLength || items[j].kind == aWeight ||
			items[j].kind == aGlue || items[j].kind == aHedge) {
			j++
		}
		if j < len(items) {
			k := items[j].kind
			return k == aFish || k == aFate || k == aNumber && items[j].num == 1 &&
				!items[j].digits || hasWeight(items[from:j])
		}
		return before && it.text == "other" || hasWeight(items[from:])
	}
	if j >= len(items) {
		return before || i > start && items[i-1].kind == aTimes
	}
	if before && items[i+1].kind == aGlue && purpose[items[i+1].text] {
		return true // kept 4 for bait
	}
	switch items[j].kind {
	case aFish, aFate, aMany, aPronoun:
		return true
	case aPlace, aClock, aTime, aComma, anAnd, aBreak, aClose, aSession, aScore:
		return before
	case aLength, aWeight: // one 44 in, kept; one of 44 in may be of those that were counted
		one := !it.digits && it.num == 1 && j == i+1 && !slices.ContainsFunc(items[j:], isTalk)
		return one || it.digits && j+1 < len(items) && items[j+1].kind == aFish
	case aNumber:
		return before && items[j].digits || items[j].num == 1 && !items[j].digits // one good one
	}
	return false
}

// isTalk tells a word that nothing here knows, or that says what was only seen.
func isTalk(it item) bool {
	return it.kind == aWord || it.kind == aSeen || it.kind == anIdle || it.kind == aTackle
}

// purpose are words before what fish were kept for.
var purpose = map[string]bool{"for": true, "para": true, "pour": true, "per": true, "fur": true}

// where are words before the place at which a fish was lost.
var where = map[string]bool{"en": true, "al": true, "a": true, "junto": true, "cerca": true, "sur": true, "au": true,
	"dans": true, "pres": true, "in": true, "sul": true, "sulla": true, "sotto": true, "vicino": true,
	"em": true, "na": true, "no": true, "ao": true, "perto": true, "an": true, "am": true, "auf": true, "im": true,
	"bei": true, "beim": true, "neben": true, "kurz": true, "vor": true}

func hasWeight(items []item) bool {
	for _, it := range items {
		if it.kind == aWeight || it.kind == aLength {
			return true
		}
	}
	return false
}
