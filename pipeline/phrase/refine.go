package phrase

import (
	"regexp"
	"slices"
	"strings"

	"wakeledger/pipeline/words"
)

// refine reads a clause that goes on with the bite told before: "..., turned it loose",
// "..., 45 in and 19.9 lb on the scale", "..., lost both". It reports false where the
// clause does not.
func (t *teller) refine(c clause) bool {
	cur := t.last()
	if cur == nil || cur.Session != c.session || t.blocked {
		return false
	}
	same := !t.fresh
	own := c.fish != nil && c.fish.text != "" || c.count > 0
	if gone := c.fate == words.Lost || c.fate == words.Missed; gone && !same && !own && !c.pronoun && cur.LengthCm > 0 {
		return false // a fish that was taped is not the one that got away
	}
	switch {
	case c.many && c.fate != 0 && !own, c.many && c.fate != 0 && c.count > 1 && c.count == cur.N:
		return t.all(c)
	case same && c.many && c.fate == 0 && c.count == 1 && cur.N > 1 &&
		(c.fish == nil || c.fish.text == "") && c.kg+c.length > 0:
		t.another(cur, c) // two mahi in the box, one of them 16 lb
	case c.fate == 0 && !own && same:
		return t.moreMeasures(cur, c)
	case c.fate == 0 && !own && (cur.Fate == words.Landed || cur.Fate == words.Released ||
		cur.Fate == words.FateUnknown && cur.Name != "") && cur.N == 1 &&
		c.onlyMeasures() && !taken(cur, c):
		return t.moreMeasures(cur, c) // bluefin aboard. 47 in, girth 33
	case c.fate == 0 && !own:
		return c.scaled && c.kg > 0 && cur.Kg == 0 && t.moreMeasures(cur, c)
	case c.share && t.takeShare(c):
	case t.ofRest(c), same && t.ofSeveral(c):
	case t.isPart(cur, c, same):
		t.split(cur, c)
	case !own && c.clock == nil && t.goesOn(cur, c, same):
		if taken(cur, c) && cur.N < 2 {
			return false
		}
		if taken(cur, c) {
			cur.Fate, cur.Cause = c.fate, c.cause // 2 BFT 52", 55" released
			t.another(cur, c)
		} else {
			t.turn(cur, c)
			t.notes[len(t.notes)-1].ended = c.fateWord
		}
	case own && (same || t.next(cur, c)) && t.sameFish(cur, c):
		if c.fish != nil && cur.Name == "" {
			cur.Name = c.fish.text
		}
		t.turn(cur, c)
		if c.fate != 0 && c.fateBehind() {
			t.notes[len(t.notes)-1].ended = c.fateWord // bite, wahoo boated, kept
		}
	default:
		return false
	}
	return true
}

// onlyMeasures reports whether a clause says nothing but a length, a girth or a weight.
func (c *clause) onlyMeasures() bool {
	return c.length+c.girth+c.kg > 0 && c.unknown+c.loose == 0 && c.clock == nil && !c.idle && !c.setting
}

// open reports whether it is not told yet how a bite ended.
func open(b *Bite) bool {
	return b.Fate == words.Hooked || b.Fate == words.Bit || b.Fate == words.FateUnknown
}

// somethingElse begins a clause that tells of a fish nobody saw, and not of the one before it.
var somethingElse = regexp.MustCompile(
	`(?i)^\W*(?:something|somebody|algo|quelque chose|qualcosa|qualcuno|alguma coisa|irgendwas|` +
		`etwas)\b`)

// ofSomething tells a clause of a fish nobody saw.
var ofSomething = regexp.MustCompile(
	`(?i)\b(?:something|algo|quelque chose|qualcosa|alguma coisa|irgendwas|etwas)\b`)

// knockWord tells a word of a miss that says how it bit, of which a bare miss behind it says no more.
func knockWord(word string) bool {
	return word == "short" || strings.HasPrefix(word, "knock") || strings.HasPrefix(word, "blow")
}

// goesOn reports whether a bare fate is that of the bite before it.
func (t *teller) goesOn(cur *Bite, c clause, same bool) bool {
	switch {
	case c.unknown > 0 && !c.pronoun && !same:
		return false
	case same && c.join == aColon: // LDR - lost at the rail
		return true
	case cur.Fate == words.Missed && c.fate != words.Missed && somethingElse.MatchString(c.text):
		return false // missed one; something on and spat it
	case !same && !c.pronoun && cur.Name != "" && c.fate == words.Lost && ofSomething.MatchString(c.text):
		return false // ono 15 lb; lost something big
	case c.pronoun:
		return cur.Fate != words.Lost && cur.Fate != words.Released || c.fate == cur.Fate
	case same && c.join == aComma && cur.Fate == words.Missed && cur.N == 1 && c.fate == words.Missed &&
		len(c.items) == 1 && knockWord(t.notes[len(t.notes)-1].word) && !knockWord(c.fateWord):
		return true // knocked down, missed; short strike, missed
	case open(cur) && c.fate == words.Lost && c.unknown > 0 && (cur.LengthCm > 0 || cur.Exact):
		return false // kingfish 38 in, broke off something mean
	case open(cur):
		return same || c.fate >= words.Landed && !c.after || c.after && c.unknown == 0
	case same && c.after:
		return true
	case same && t.putAway(cur, c):
		return true
	case same && cur.Fate == words.Landed:
		return c.fate == words.Released || c.fate == words.Lost && c.after
	case same && cur.Fate == c.fate && c.cause != "" && cur.Cause == "":
		return true // lost at the boat, pulled hook
	case (same || c.join == aComma) && cur.Fate == words.Released && c.fate == words.Released && c.place == "" &&
		c.kg+c.length == 0:
		return true // tagged and let go, swam off strongly
	case same && cur.Fate == words.Lost:
		return c.fate == words.Released && c.place == "" || c.fate == words.Hooked
	}
	return false
}

// putAway tells a clause of one other word of what became of a fish whose name and fate stand before its comma: "wahoo
// 41 in kept, freezer".
func (t *teller) putAway(cur *Bite, c clause) bool {
	n := t.notes[len(t.notes)-1]
	if n.behind {
		n.ended = n.word
	}
	return n.ended != "" && cur.N == 1 && cur.Name != "" && cur.Fate == words.Landed && c.fate == words.Landed &&
		c.join == aComma && len(c.items) == 1 && !strings.EqualFold(c.fateWord, n.ended)
}

// turn gives a bite its further fate, cause and measures.
func (t *teller) turn(cur *Bite, c clause) {
	switch {
	case c.fate == words.FateUnknown || c.fate == words.Hooked && cur.Fate >= words.Landed || c.fate == words.Bit:
	case c.after && cur.Fate > c.fate && cur.Fate != words.Landed:
	default:
		cur.Fate = c.fate
	}
	if cur.Fate == words.Lost && cur.Cause == "" {
		cur.Cause = c.cause
	}
	if cur.Fate != words.Lost {
		cur.Cause = ""
	}
	cur.measure(c)
}

// sameFish reports whether a clause with a fish of its own tells what the bite before it
// was: "strike at 9:20, boated a wahoo".
func (t *teller) sameFish(cur *Bite, c clause) bool {
	if c.join == aColon && cur.Name == "" && cur.N == 1 && c.count == 0 && (c.fate == 0 || open(cur)) &&
		c.clock == nil && cur.Fate != words.Missed &&
		(cur.Fate != words.Lost || c.length == 0 && (c.kg == 0 || c.guess)) {
		return true // one tagged - striped marlin
	}
	if (cur.Fate == words.Landed || cur.Fate == words.Released) && cur.N == 1 && cur.Name == "" && cur.Kg+
		cur.LengthCm == 0 && cur.At == nil &&
		c.count == 0 && c.fate == 0 && c.clock == nil && c.kg+c.length > 0 {
		return true // kept 1, a comma, 27.5in blackfin
	}
	if cur.Fate == words.Lost && cur.N == 1 && cur.Name == "" && c.join == aComma && c.article && c.fate == 0 &&
		c.clock == nil && c.kg+c.length == 0 {
		return true // jumped and threw it, a sailfish we think
	}
	if cur.Fate == words.FateUnknown && cur.N == 1 && cur.Name == "" && cur.Kg+cur.LengthCm == 0 && c.count == 0 {
		return true // one fish, a comma, 22 lb mahi
	}
	if cur.N != 1 || c.count > 1 || !open(cur) || cur.Fate == words.FateUnknown ||
		c.clock != nil || c.count == 1 && !c.article {
		return false
	}
	if c.fish != nil && c.fish.text != "" && cur.Name != "" && c.fish.text != cur.Name {
		return false
	}
	return c.fate == words.FateUnknown || c.fate >= words.Landed || c.fate == words.Hooked && cur.Fate == words.Bit
}

// moreMeasures gives a bite the measures of a clause that has nothing else. A second
// weight or length is that of the next fish of several.
func (t *teller) moreMeasures(cur *Bite, c clause) bool {
	if c.blank && cur.N > 1 {
		behind := cur.Kg+cur.LengthCm+cur.GirthCm > 0 // of one that was told
		if t.another(cur, c); behind && t.last().N > 1 {
			t.another(t.last(), c)
		}
		return true
	}
	if c.onScale && c.kg == 0 && cur.Kg > 0 {
		cur.Scaled = !cur.Guess
		return true
	}
	if c.length+c.girth+c.kg == 0 && !c.scaled && c.place == "" && c.clock == nil && c.kindOf == "" {
		return false
	}
	if taken(cur, c) && cur.N < 2 {
		if c.join != anAnd || cur.Name == "" || c.clock != nil {
			return false
		}
		cur.N = 2 // wahoo 41# & 35#
	}
	if c.clock != nil && cur.At != nil || cur.Fate == words.Missed && c.kg+c.length > 0 {
		return false // what was missed cannot be measured
	}
	if taken(cur, c) {
		t.another(cur, c)
	} else {
		cur.measure(c)
		if n := len(t.notes) - 1; cur.N > 1 && c.join == aColon && !ofEach.MatchString(c.text) {
			t.notes[n].bracket = c.text
		}
	}
	if c.twice {
		t.story.Left = append(t.story.Left, c.text) // of which fish is the other?
	}
	return true
}

// taken reports whether a bite has measures of its own already.
func taken(cur *Bite, c clause) bool {
	return c.kg > 0 && cur.Kg > 0 || c.length > 0 && cur.LengthCm > 0 || c.girth > 0 && cur.GirthCm > 0
}

// another parts the rest of a group from the fish whose measures were told.
func (t *teller) another(cur *Bite, c clause) {
	next := *cur
	next.N, cur.N = cur.N-1, 1
	next.Kg, next.LengthCm, next.GirthCm = 0, 0, 0
	next.measure(c)
	t.story.Bites = append(t.story.Bites, next)
	t.notes = append(t.notes, note{one: c.length+c.girth+c.kg > 0})
}

// unmeasured parts from the last fish of a list of measures those for which it has none: of "4 wahoo 14 kg, 16 kg"
// two were not weighed.
func (t *teller) unmeasured() {
	for i := range t.notes {
		if b := &t.story.Bites[i]; t.notes[i].one && b.N > 1 {
			rest := *b
			rest.N, b.N = b.N-1, 1
			rest.Kg, rest.LengthCm, rest.GirthCm = 0, 0, 0
			rest.Guess, rest.Scaled, rest.Exact, rest.LengthKind = false, false, false, ""
			t.story.Bites = append(t.story.Bites, rest)
			t.notes = append(t.notes, note{})
		}
	}
}

// next reports whether a sentence of a fish's name and measures alone tells what the bite
// right before it was: "Fish on at 7:20! Nice 41 lb wahoo".
func (t *teller) next(cur *Bite, c clause) bool {
	return c.join == aBreak && c.count == 0 && c.fate == 0 && c.kg+c.length > 0 && cur.Name == "" && cur.N == 1
}

// isPart reports whether a count is of those told before: caught 5 blackfin, released 3;
// hooked 2 wahoo, lost 1 of them.
func (t *teller) isPart(cur *Bite, c clause, same bool) bool {
	if c.fate == 0 || c.count == 0 || c.article || c.count > cur.N || c.fish != nil &&
		c.fish.text != "" || c.clock != nil {
		return false
	}
	if c.many && (same || open(cur)) {
		return true
	}
	if t.list && same && cur.N > 1 && cur.Name != "" && cur.Fate == words.FateUnknown && c.bareFate() {
		return true // 5 albies, released 3; 3 yft, kept 2
	}
	return same && cur.N > c.count && cur.Fate == words.Landed && c.fate == words.Released && cur.Name != "" &&
		t.notes[len(t.notes)-1].word == "caught"
}

// ofRest gives the fish of a list that were left as others of them were kept the fate that the clause behind tells of
// as many: "3 yft, kept two, let one go".
func (t *teller) ofRest(c clause) bool {
	k := len(t.story.Bites) - 2
	if k < 0 || !t.notes[k].rest || c.fate == words.FateUnknown || c.count != t.story.Bites[k].N ||
		c.fish != nil && c.fish.text != "" {
		return false
	}
	t.notes[k].rest = false
	t.turn(&t.story.Bites[k], c)
	return true
}

// bareFate reports whether a clause says how many were kept or let go, and nothing else.
func (c *clause) bareFate() bool {
	return (c.fate == words.Landed || c.fate == words.Released) && c.count > 0 && !c.article &&
		(c.fish == nil || c.fish.text == "") && c.unknown+c.loose == 0 && c.kg+c.length+c.girth == 0 && c.clock == nil
}

// ofSeveral lets some fish of a list of several kinds go, where the clause behind them all says how many were let go,
// or kept: "2 wahoo, 1 mahi, released 1". Of which kind is not said: those named last.
func (t *teller) ofSeveral(c clause) bool {
	first := len(t.story.Bites)
	total := 0
	for first > t.sentence && t.story.Bites[first-1].Name != "" && t.story.Bites[first-1].Fate == words.FateUnknown &&
		t.story.Bites[first-1].Kg+t.story.Bites[first-1].LengthCm == 0 {
		first--
		total += t.story.Bites[first].N
	}
	fateFirst := c.counted > 0 && slices.ContainsFunc(c.items[:c.counted],
		func(it item) bool { return it.kind == aFate })
	if !t.list || c.join == aColon || len(t.story.Bites)-first < 2 || !c.bareFate() || c.count > total || !fateFirst {
		return false
	}
	free := c.count
	if c.fate == words.Landed {
		free = total - c.count
	}
	for k := len(t.story.Bites) - 1; k >= first && free > 0; k-- {
		gone := t.story.Bites[k]
		if gone.N = min(free, gone.N); gone.N == t.story.Bites[k].N {
			t.story.Bites[k].Fate = words.Released
		} else {
			t.story.Bites[k].N -= gone.N
			gone.Fate = words.Released
			t.story.Bites, t.notes = append(t.story.Bites, gone), append(t.notes, note{word: c.fateWord})
		}
		free -= gone.N
	}
	return true
}

// split parts a count of its bites off, with a fate of their own.
func (t *teller) split(cur *Bite, c clause) {
	part := *cur
	part.N = c.count
	cur.N -= c.count
	t.turn(&part, c)
	if cur.N == 0 {
		*cur = part
		return
	}
	if t.list && c.fate == words.Landed {
		cur.Fate = words.Released // what came to the boat and was not kept
		t.notes[len(t.notes)-1].rest = true
	}
	t.story.Bites = append(t.story.Bites, part)
	t.notes = append(t.notes, note{word: c.fateWord})
}

// all gives all bites of the sentence a fate: a wahoo and a mahi, both released.
func (t *teller) all(c clause) bool {
	from := t.sentence
	if from >= len(t.story.Bites) {
		from = len(t.story.Bites) - 1
	}
	for i := from; i < len(t.story.Bites); i++ {
		if b := &t.story.Bites[i]; t.totalOfBites(i) {
			continue
		} else if open(b) || b.Fate == words.Landed || b.Fate == c.fate {
			t.turn(b, c)
		}
	}
	return true
}

// ofEach are words that give a measure to each of several fish.
var ofEach = regexp.MustCompile(`(?i)\b(?:each|apiece|both|all|cada|ambos|ambas|todos|todas|chacune?s?|tous|toutes|` +
	`ciascun[oa]|tutt[ie]|entramb[ie]|je|jeweils|beide|alle|avg|average|media|moyenne|schnitt)\b`)

// ofOneOnly leaves a measure that stands in a bracket behind several fish, and of which nothing says that each had it:
// "2 sail released (64 in)".
func (t *teller) ofOneOnly() {
	for i := range t.notes {
		b := &t.story.Bites[i]
		if t.notes[i].bracket == "" || b.N < 2 || b.LengthCm == 0 && b.GirthCm == 0 && (b.Kg == 0 || b.Guess) {
			continue
		}
		if t.list {
			t.notes[i].one = true // a list has no place for doubts: one of them had it
			continue
		}
		b.LengthCm, b.GirthCm, b.Kg, b.Scaled, b.Exact, b.LengthKind = 0, 0, 0, false, false, ""
		t.story.Left = append(t.story.Left, t.notes[i].bracket)
	}
}

// aloneBehind gives a bite the miss that the clause behind it tells in words that tell it only where they are all of a
// text: "strike on the left rigger, tapped".
func (t *teller) aloneBehind(c clause) bool {
	cur := t.last()
	if t.fresh || t.blocked || cur == nil || cur.Session != c.session ||
		cur.Fate != words.Bit && cur.Fate != words.Hooked || c.join != aComma && c.join != aColon ||
		c.fate != words.FateUnknown || c.fish != nil {
		return false
	}
	fate := words.FateAlone(c.text)
	if fate != words.Missed && (fate != words.Lost || cur.Fate != words.Hooked) {
		return false // "gone" does not say whether it was on
	}
	cur.Fate = fate
	return true
}
