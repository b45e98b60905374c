package phrase

import (
	"strings"
	"sync"

	"wakeledger/pipeline/species"
	"wakeledger/pipeline/words"
)

// fishes is the species list; it is an embedded table, so it fails in every test or never.
var fishes = sync.OnceValue(func() *species.List {
	l, err := species.Default()
	if err != nil {
		panic(err)
	}
	return l
})

// phrase reads the longest phrase of the word lists at token i. Of equally long ones the
// first in the order below holds: a fate rather than a fish, a fish rather than a place.
func (s *scanner) phrase(i int) item {
	best := item{kind: aWord, end: i}
	take := func(it item, ok bool) {
		if ok && it.end > best.end {
			best = it
		}
	}
	f, used, ok := s.fate(i)
	take(f, ok)
	if next, nothing, ok := words.NothingAt(s.toks, i); ok && nothing {
		take(item{kind: aNothing, end: next}, true)
	} else if ok {
		take(item{kind: aGlue, end: next}, true)
	}
	take(s.sessionWord(i))
	take(s.fish(i))
	if next, ok := words.PlaceAt(s.toks, i, words.AfterOn(s.toks, i)); ok {
		take(item{kind: aPlace, end: next, text: s.raw(i, next)}, true)
	}
	take(s.hedge(i))
	if next, ok := words.ScaleAt(s.toks, i); ok {
		take(item{kind: aScale, end: next}, true)
	}
	if kind, next, ok := words.KindAt(s.toks, i); ok {
		take(item{kind: aKind, end: next, text: kind}, true)
	}
	take(s.numberWord(i))
	take(s.glue(i))
	take(s.dressed(i))
	if best.end == i {
		best.text, best.end = s.tok(i), i+1
	}
	if best.kind == aFate {
		for _, u := range used {
			s.taken[u] = true
		}
		best.end = i + 1
	}
	return best
}

// fate reads the words of a fate. Its item ends behind the last word, so that lengths
// compare; a phrase with a gap counts only if a fish, a count or a pronoun fills it.
func (s *scanner) fate(i int) (item, []int, bool) {
	h, ok := words.FateAt(s.toks, i)
	if !ok {
		return item{}, nil, false
	}
	last := h.Used[len(h.Used)-1]
	if h.Fate == words.FateUnknown {
		return item{kind: aGlue, end: last + 1}, nil, true // kept on
	}
	filled := !h.Open
	for j := i + 1; j < last && !filled; j++ {
		if _, inner := words.FateAt(s.toks, j); inner && j != h.Used[1] && j != last &&
			len(h.Used) > 1 && !isUsed(h.Used, j) {
			return item{}, nil, false
		}
		_, fish := s.fish(j)
		_, number := s.numberWord(j)
		_, pronoun := words.GlueIs(s.toks, j, "pronoun")
		_, many := words.GlueIs(s.toks, j, "many")
		_, tackle := words.GlueIs(s.toks, j, "tackle") // grabbed the skirt but no hook
		filled = fish || number || pronoun || many || tackle || s.digits(j) || s.tok(j) == "the" && last == i+2
	}
	had := s.tok(i) == "had" && last+1 < len(s.toks) && s.toks[last+1].Kind == words.Word && s.tok(last+1) != "for"
	if !filled || had && !s.digits(last+1) {
		return item{}, nil, false // "had a bite on the flat line"
	}
	return item{kind: aFate, end: last + 1, until: last, fate: h, text: s.tok(i)}, h.Used, true
}

func isUsed(used []int, j int) bool {
	for _, u := range used {
		if u == j {
			return true
		}
	}
	return false
}

// codes are FAO codes that captains write in small letters; other codes are words too
// (lot, bet, com), and count in capitals only.
var codes = map[string]bool{"bft": true, "yft": true, "alb": true, "skj": true, "sbt": true, "blf": true, "pbf": true,
	"bum": true, "mls": true, "whm": true, "swo": true, "wah": true, "kgm": true, "gt": true, "dol": true}

// never are codes and names that are no fish in prose, however written.
var never = map[string]bool{"lot": true, "fri": true, "com": true, "mas": true, "dot": true, "tar": true, "barry": true,
	"spanish": true, "buri": true, "mac": true, "silver king": true, "ahi": false}

// fish reads the name of a fish or of a creature, the longest that there is.
func (s *scanner) fish(i int) (item, bool) {
	var best item
	if kind, next, ok := words.FishAt(s.toks, i); ok {
		best = item{kind: aFish, end: next, text: s.raw(i, next)}
		switch kind {
		case "idle":
			best.kind = anIdle
		case "any":
			best.text = ""
		case "several":
			best.text, best.several = "", true
		case "short":
			best.article = true // a name only in company
			if next == len(s.toks) {
				break
			}
			kind, end, ok := words.FishAt(s.toks, next)
			if ok && kind != "short" && kind != "any" && kind != "several" && kind != "idle" {
				return item{kind: aFish, end: end, text: s.raw(i, end)}, true // black rockfish is no marlin
			}
		}
	}
	if s.toks[i].Kind != words.Word {
		return best, best.end > 0
	}
	for end := min(i+4, len(s.toks)); end > i && end >= best.end; end-- {
		if end == best.end && !best.article || !s.oneName(i, end) {
			continue
		}
		name := s.raw(i, end)
		if strings.EqualFold(name, "au") && letters(s.tok(end)) {
			continue // au port is French; the marlin of Hawaii is a'u
		}
		if s.isSpecies(name) {
			return item{kind: aFish, end: end, text: name}, true
		}
	}
	if best.end == 0 && s.slip(i) {
		best = item{kind: aFish, end: i + 1, text: s.raw(i, i+1)}
	}
	return best, best.end > 0
}

func (s *scanner) isSpecies(name string) bool {
	folded := words.Fold(name)
	if never[folded] || len(folded) < 2 {
		return false
	}
	m := fishes().Find(name, "")
	if !m.Found && len(m.Candidates) == 0 {
		return false
	}
	for _, end := range []string{"s", "es"} { // "she comes" is no COM
		code := strings.TrimSuffix(folded, end)
		if _, isCode := fishes().ByCode(code); isCode && len(code) == 3 && !codes[code] {
			return name == strings.ToUpper(name) && !never[code]
		}
	}
	return true
}

// oneName reports whether tokens may be one name: words, with hyphens and full stops within.
func (s *scanner) oneName(i, end int) bool {
	if s.toks[end-1].Kind != words.Word {
		return false
	}
	for j := i; j < end; j++ {
		t := s.toks[j]
		if t.Kind == words.Digits || t.Kind == words.Mark && (t.Text != "-" || t.Gap) && t.Text != "'" &&
			(t.Text != "." || s.toks[j-1].End-s.toks[j-1].At > 1) {
			return false
		}
	}
	return true
}

// common are the names that a slip of the pen is looked for in.
var common = []string{"wahoo", "yellowfin", "bluefin", "blackfin", "skipjack", "albacore", "dorado", "bigeye",
	"sailfish", "marlin", "swordfish", "kingfish", "barracuda", "spearfish", "mahimahi", "dolphinfish"}

func (s *scanner) slip(i int) bool {
	for _, name := range common {
		if words.Similar(name, s.tok(i)) {
			return true
		}
	}
	return false
}

// dressed reads a lure by its colours, of which one may be short for a fish: blue/wht feather.
func (s *scanner) dressed(i int) (item, bool) {
	j, hues := i, 0
	for {
		next, ok := words.HueAt(s.toks, j)
		if !ok || next+1 >= len(s.toks) {
			return item{}, false
		}
		if j, hues = next, hues+1; s.tok(j) != "/" && s.tok(j) != "-" {
			break
		}
		j++
	}
	end, ok := words.GlueIs(s.toks, j, "tackle")
	if !ok {
		end, ok = words.LureAt(s.toks, j)
	}
	return item{kind: aTackle, end: end, text: s.tok(i)}, ok && hues > 1
}

func (s *scanner) hedge(i int) (item, bool) {
	if next, ok := words.HedgeAt(s.toks, i, true); ok {
		after := next
		if s.tok(after) == "." && s.near(after) {
			if after++; !s.afterFigure() {
				next = after // env. 16, and not of 18 lb guess. 1 mahi lost
			}
		}
		if s.tok(after) == "@" || s.tok(after) == "a" || s.tok(after) == "to" || s.tok(after) == "$" {
			after++
		}
		if s.digits(after) || s.tok(i) == "~" {
			return item{kind: aHedge, end: next, text: "before"}, true
		}
		if _, ok := s.numberWord(after); ok && after < len(s.toks) {
			return item{kind: aHedge, end: next, text: "before"}, true
		}
	}
	if next, ok := words.HedgeAt(s.toks, i, false); ok && s.tok(i) != "plus" && s.tok(i) != "+" {
		return item{kind: aHedge, end: next}, true
	}
	return item{}, false
}

// afterFigure reports whether the last item is a number or a measure, which a hedge behind it may be of.
func (s *scanner) afterFigure() bool {
	if len(s.items) == 0 {
		return false
	}
	switch s.items[len(s.items)-1].kind {
	case aNumber, aWeight, aLength, aGirth:
		return true
	}
	return false
}

// articles are words for one that say no more than that a fish follows.
var articles = map[string]bool{"a": true, "an": true, "un": true, "una": true, "uno": true, "une": true, "um": true,
	"uma": true, "ein": true, "eine": true, "einen": true, "einer": true, "another": true, "other": true, "otro": true,
	"otra": true, "autre": true, "outro": true, "outra": true, "altro": true, "altra": true}

// other tells a word for one more of its kind.
func (s *scanner) other(i int) bool {
	t := s.tok(i)
	return articles[t] && (t == "another" || t == "other" || t == "autre" || strings.HasSuffix(t, "tro") ||
		strings.HasSuffix(t, "tra"))
}

func (s *scanner) numberWord(i int) (item, bool) {
	if i >= len(s.toks) || s.toks[i].Kind != words.Word {
		return item{}, false
	}
	n, ok := words.Number(s.tok(i))
	if !ok || n == 0 {
		return item{}, false
	}
	end := i + 1
	if s.tok(i) == "couple" && s.tok(end) == "of" {
		end++
	}
	if s.tok(i) == "a" && s.tok(end) == "couple" || s.tok(i) == "a" && s.tok(end) == "pair" {
		n, end = 2, end+1
		if s.tok(end) == "of" {
			end++
		}
		return item{kind: aNumber, end: end, num: 2}, true
	}
	it := item{kind: aNumber, end: end, num: float64(n), article: articles[s.tok(i)]}
	it.alone = it.article && s.tok(i) != "a" && s.tok(i) != "an"
	if it.article && s.other(end) { // une autre
		i, end, it.end = end, end+1, end+1
	}
	if it.article && s.other(i) {
		it.text = "other"
	}
	if s.andHalf(end) && !it.article {
		it.num, end = it.num+.5, end+3
		it.end = end
	}
	if end < len(s.toks) { // after an hour, two hours, seven knots
		if unit, next, ok := words.UnitAt(s.toks, end); ok &&
			(unit == "min" || unit == "h" || unit == "kn" && !it.article) {
			return item{kind: unitKind[unit], end: next, num: it.num * factor[unit],
				hi: it.num * factor[unit], unit: unit}, true
		}
	}
	if doubles[s.tok(i)] {
		it.text = "double"
		if s.tok(end) == "up" {
			it.end++
		}
		return it, true
	}
	only := it.article && onlyOne[s.tok(end)] // une seule ligne
	if only {
		end++
	}
	if next, ok := words.LineAt(s.toks, min(end, len(s.toks)-1), "line"); ok &&
		end < len(s.toks) && (!it.article || only) && n < 20 {
		return item{kind: aLines, end: next, num: it.num}, true
	}
	if s.tok(i) == "both" {
		it.kind = aMany
	}
	return it, true
}

// doubles are numbers that say that so many were hooked at a time.
var doubles = map[string]bool{"double": true, "doblete": true, "doppietta": true, "doublet": true, "dupla": true,
	"doubled": true, "triple": true, "tripled": true, "quad": true}

// onlyOne are words behind an article that make it a number.
var onlyOne = map[string]bool{"single": true, "seule": true, "seul": true, "sola": true, "solo": true, "so": true,
	"einzige": true, "einzigen": true, "unica": true, "unique": true}

// noons are the words for twelve o'clock.
var noons = map[string]bool{"noon": true, "midday": true, "mediodia": true, "midi": true, "mezzogiorno": true,
	"mittag": true, "mittags": true}

// ands are the words that join clauses.
var ands = map[string]bool{"and": true, "then": true, "but": true, "y": true, "e": true, "et": true, "und": true,
	"puis": true, "luego": true, "poi": true, "depois": true, "dann": true, "pero": true, "mais": true, "aber": true,
	"plus": true, "despues": true, "ensuite": true, "ed": true}

func (s *scanner) glue(i int) (item, bool) {
	if next, ok := words.GlueIs(s.toks, i, "biggest"); ok && (s.digits(next) || s.digits(next+1)) {
		return item{kind: aGlue, end: next, text: s.tok(i)}, true // le plus gros 6.1
	}
	if ands[s.tok(i)] {
		return item{kind: anAnd, end: i + 1}, true
	}
	if noons[s.tok(i)] && ands[s.tok(i+1)] && (s.tok(i+2) == "demi" || s.tok(i+2) == "demie") {
		return item{kind: aClock, end: i + 3, clock: Clock{day/2 + 1800, true}}, true // midi et demi
	}
	if noons[s.tok(i)] {
		return item{kind: aClock, end: i + 1, clock: Clock{day / 2, true}}, true
	}
	if s.tok(i) == "midnight" {
		return item{kind: aClock, end: i + 1, clock: Clock{0, true}}, true
	}
	if s.tok(i) == "twice" {
		return item{kind: aNumber, end: i + 1, num: 2, text: "twice"}, true
	}
	if s.tok(i) == "x" {
		return item{kind: aTimes, end: i + 1}, true
	}
	unit, end, isUnit := words.UnitAt(s.toks, i)
	if isUnit && unit == "girth" || s.tok(i) == "g" && s.near(i+1) && s.digits(i+1) && s.afterMeasure(i) { // 112 G45
		unit, end = "girth", max(end, i+1)
		return item{kind: aUnit, end: end, unit: unit}, true
	}
	var best item // the longest, of equally long ones the first
	for _, g := range []struct {
		name string
		kind kind
	}{{"else", anElse}, {"seen", aSeen}, {"many", aMany}, {"no", aNo}, {"pronoun", aPronoun},
		{"tackle", aTackle}, {"glue", aGlue}} {
		if next, ok := words.GlueIs(s.toks, i, g.name); ok && next > best.end {
			best = item{kind: g.kind, end: next, text: s.tok(i)}
			if g.kind == aMany && s.ofTwo(i, next) {
				best.num = 2
			}
		}
	}
	if best.end > 0 {
		return best, true
	}
	return item{kind: aGlue, end: end}, isUnit
}

// ofTwo tells words that point back at two: ambos, les deux.
func (s *scanner) ofTwo(from, to int) bool {
	for i := from; i < to; i++ {
		if n, ok := words.Number(s.tok(i)); ok && n == 2 || bothWords[s.tok(i)] {
			return true
		}
	}
	return false
}

// bothWords say of two that it is each of them.
var bothWords = map[string]bool{"both": true, "ambos": true, "ambas": true, "entrambi": true, "entrambe": true,
	"ambedue": true, "beide": true, "beides": true}

// sessionWord reads "first session:", "second set", "set 2:" - the session that what
// follows belongs to, where a colon ends it.
func (s *scanner) sessionWord(i int) (item, bool) {
	n, j := 0, i
	if k, ok := ordinals[s.tok(i)]; ok {
		n, j = k, i+1
		if next, ok := words.LineAt(s.toks, min(j, len(s.toks)-1), "session"); ok && j < len(s.toks) {
			j = next
		}
	} else if next, ok := words.LineAt(s.toks, i, "session"); ok && s.digits(next) && len(s.tok(next)) == 1 {
		n, j = int(s.tok(next)[0]-'0'), next+1
	}
	if n == 0 || s.tok(j) != ":" && (s.tok(j) != "-" || !s.near(j)) {
		return item{}, false
	}
	if s.tok(j) == ":" && s.digits(j-1) && s.digits(j+1) && len(s.tok(j+1)) == 2 && s.near(j) && s.near(j+1) {
		return item{}, false // second spot 9:05
	}
	return item{kind: aSession, num: float64(n), end: j + 1}, true
}

var ordinals = map[string]int{"first": 1, "second": 2, "third": 3, "fourth": 4, "primera": 1, "primero": 1,
	"segunda": 2, "segundo": 2, "tercera": 3, "premier": 1, "premiere": 1, "deuxieme": 2, "seconde": 2, "troisieme": 3,
	"prima": 1, "seconda": 2, "terza": 3, "primeira": 1, "terceira": 3, "erste": 1, "erster": 1, "zweite": 2,
	"zweiter": 2, "dritte": 3, "dritter": 3, "morning": 1, "afternoon": 2}
