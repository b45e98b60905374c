package phrase

import (
	"regexp"
	"slices"
	"strings"

	"wakeledger/pipeline/words"
)

// teller puts clauses together to bites.
type teller struct {
	story    Story
	list     bool
	sentence int // index of the first bite of the sentence
	seen     bool
	away     bool // the sentence is of other boats
	mate     bool // or of another fish like the last one
	off      bool // the sentence is of fish that were not trolled
	nothing  bool
	blocked  bool     // a bite of the sentence was left: what goes on is not of the last one told
	fresh    bool     // no bite was told in the sentence yet
	notes    []note   // of each bite
	clock    *Clock   // one alone, of the clause that follows
	bare     *clause  // a fish's name alone, which the next clause may say more of
	other    *clause  // one more, of which no more was told yet: "then another"
	talked   *clause  // a fish without a fate or a count, whose measures the next clause may tell
	method   string   // of fishing, other than trolling, that the sentence speaks of before its fish
	leapt    *clause  // a fish at a clock of which no more was told than that it was seen: the next clause may end it
	names    []clause // those before it in the sentence
	scored   *scored  // a fish with its score, whose bites the next clauses tell
}

// note is how a bite was told.
type note struct {
	word    string // of its fate
	tells   bool   // its clause tells more of the one before it: behind a colon or a bracket
	counted bool
	one     bool   // its measures are of one fish of a list of measures
	bracket string // one measure in a bracket behind several fish: of which of them is not said
	ended   string // the word of its fate that a clause behind its fish tells
	behind  bool   // its fate stands behind its fish: 1 wahoo broke off
	rest    bool   // it was not among those of a list that were kept
}

// Tell reads bites told in prose: "missed 2, 1 mahi 8# way back".
func Tell(text string, d Defaults) Story {
	if s, ok := underLabels(text, d); ok {
		return s
	}
	if each := eachOfCount(text); each != text {
		s := Tell(each, d)
		for i := range s.Bites {
			s.Bites[i].Told = min(s.Bites[i].Told, len(text)) // words were put in
		}
		return s
	}
	text = labelled(text)
	if h, rest, ok := headOf(text); ok && len(biteHeads(rest)) == 0 {
		s := tell(rest, d)
		if len(s.Bites) != 1 || len(s.Left) > 0 {
			s = oneOf(rest, h.fate, d)
		}
		if h.of(&s) {
			return s
		}
	}
	s := tell(text, d)
	if m := headBracket.FindStringSubmatch(text); len(s.Bites) == 0 && len(s.Left) == 1 && m != nil &&
		(words.NotTrolled(m[1]) || otherMethod(m[1])) && !strings.ContainsAny(s.Left[0], ",;:") {
		// grouper (jig, not trolled)
		s.Bites, s.Left = []Bite{{Fish: Fish{Name: s.Left[0], N: 1}, Method: "other"}}, nil
	}
	return s
}

func tell(text string, d Defaults) Story {
	t := teller{story: Story{Landed: -1, Strikes: -1}}
	text = strokesPart(withoutHeads(text, d))
	s := scan(text)
	others := s.otherSpells(s.spans())
	s.withoutSpans()
	all := s.clauses(d, false)
	all = inTurn(all)
	shares(all)
	for _, c := range all {
		t.clause(c)
	}
	t.flushScore()
	if t.bare != nil {
		t.leave(*t.bare)
	}
	t.leaveOther()
	for _, n := range t.names {
		t.leave(n)
	}
	t.partGroup()
	t.unmeasured()
	t.ofOneOnly()
	t.totals()
	t.settle()
	t.ofNothing(text)
	t.elsewise(s, others)
	t.story.Nothing = len(t.story.Bites) == 0 && len(t.story.Left) == 0 && (t.nothing || t.story.Strikes == 0)
	return t.story
}

// ofNothing takes a bite behind which the text ends with "nothing", and no more, for one that was missed: "knock on the
// middle rod, nothing".
func (t *teller) ofNothing(text string) {
	if b := t.story.Bites; len(b) == 1 && b[0].Fate == words.Bit && b[0].N <= 1 {
		toks := words.Scan(strings.TrimRight(text[strings.LastIndexAny(text, ",;")+1:], " .!"))
		if next, nothing, ok := words.NothingAt(toks, 0); ok && nothing && next == len(toks) {
			b[0].Fate = words.Missed
		}
	}
}

// andNothing takes a bite of which its sentence says no more than "and nothing" for one that was missed.
func (t *teller) andNothing(c clause) bool {
	cur := t.last()
	if t.fresh || cur == nil || cur.Fate != words.Bit || c.join != anAnd || len(c.items) != 1 || !c.nothing {
		return false
	}
	cur.Fate = words.Missed
	return true
}

// FishList reads a list of fish with their measures: "wahoo 51in 29lb; wahoo 49in 24lb".
// What is no fish in it is passed over.
func FishList(text string, d Defaults) []Fish {
	t := teller{story: Story{Landed: -1, Strikes: -1}, list: true}
	for _, c := range scan(byStrokes(plusParts(strokesPart(labelled(severalWeights(text, d)))), d)).clauses(d, true) {
		t.clause(c)
	}
	t.ofOneOnly()
	t.unmeasured()
	var out []Fish
	for _, b := range t.story.Bites {
		if b.Name != "" || b.LengthCm > 0 || b.Kg > 0 || b.Fate == words.Landed || b.Fate == words.Released {
			out = append(out, b.Fish)
		}
	}
	return out
}

// strokesPart writes a semicolon for each stroke with spaces that parts fish and bites, where every part names a fish
// or tells a fate, and two of them a fish, or the first its length: "mahi 74 cm / mahi 115 cm / missed".
func strokesPart(text string) string {
	return parted(text, " / ", func(words.Fate) bool { return true })
}

// plusParts does the same for plus signs behind which a bite was lost or missed: what was taped was not, "mahi 74 cm +
// pulled the hook". One that was let go may be that one.
func plusParts(text string) string {
	return parted(text, " + ", func(f words.Fate) bool { return f == words.Missed || f == words.Lost })
}

func parted(text, stroke string, another func(words.Fate) bool) string {
	if !strings.Contains(text, stroke) {
		return text
	}
	fish, taped := 0, false
	for i, part := range strings.Split(text, stroke) {
		all := scan(part).clauses(Defaults{}, true)
		if len(all) == 0 || strings.Count(part, "(") != strings.Count(part, ")") {
			return text
		}
		// measures of one fish or of several stand before a stroke too: "2 wahoo 14 / 16, 1 mahi"
		named := all[0].fish != nil && all[0].fish.text != ""
		fate := slices.ContainsFunc(all, func(c clause) bool {
			return c.fate != words.FateUnknown && c.fish == nil && another(c.fate)
		})
		taped = taped || i == 0 && named && all[0].length > 0
		if !named && !fate {
			return text
		}
		if named {
			fish++
		}
	}
	if fish < 2 && !taped {
		return text
	}
	return strings.ReplaceAll(text, stroke, " ; ") // of as many bytes: places in the text stay
}

// byStrokes parts the fish of a text that strokes part, where one of them has its length and its weight: of
// "83 cm 11 kg / 9.3 kg / 61 cm" the weight and the length behind are two fish, and of "9.3 kg / 61 cm" one.
func byStrokes(text string, d Defaults) string {
	const stroke = " / "
	if strings.Count(text, stroke) == 0 {
		return text
	}
	both := false
	for _, part := range strings.Split(text, stroke) {
		list := scan(part).clauses(d, true)
		if len(list) == 0 || !list[0].onlyMeasures() {
			return text
		}
		both = both || list[0].kg > 0 && list[0].length > 0
	}
	if !both {
		return text
	}
	return strings.ReplaceAll(text, stroke, " ; ")
}

// clause adds what a clause tells to the story.
func (t *teller) clause(c clause) {
	t.name(&c)
	t.moreOf(&c)
	t.clockOf(&c)
	t.afterLeap(&c)
	if c.both && c.fate != 0 && c.count == 0 && len(t.story.Bites) == 0 {
		c.count, c.many = 2, false
	}
	if c.join == aBreak {
		t.partGroup()
		t.method = ""
		t.sentence, t.seen, t.away, t.off, t.fresh, t.blocked, t.mate = len(t.story.Bites), false,
			false, false, true, false, false
	}
	if t.list && t.untrolled(c) {
		return
	}
	t.methodOf(&c)
	switch {
	case t.speedOf(c), t.ofScore(c), t.aloneBehind(c), t.biggestOf(c), t.oneOf(c), t.guessBehind(c), c.otherOuting():
	case t.likewise(c), t.andNothing(c):
	case t.list && c.none && c.fish != nil && c.kg+c.length+c.girth == 0: // no tuna today
	case c.unsure:
		t.leave(c)
	case (t.away || c.others > 0) && t.elsewhere(c):
	case c.score != nil:
		if !t.scoreOf(c) {
			t.score(c.score)
		}
	case c.fate == words.FateUnknown && (c.nothing || c.denied):
		t.nothing = t.nothing || c.nothing && c.unknown == 0 && !c.idle
	case c.setting && c.fate == words.FateUnknown && c.fish == nil:
	case t.nameBehind(c), t.wentBack(c), t.byMeasure(c):
	case c.fate == words.FateUnknown && c.quiet(t.list):
		t.idle(c)
	case !t.list && c.fate == words.FateUnknown && t.seen && c.kg+c.length == 0:
		if c.join != anAnd {
			t.leave(c)
		}
	case c.stranger || c.others > 0 || c.plural() || c.idle && c.fate == words.FateUnknown && !t.list:
		t.leave(c)
	case !t.list && t.sizeOf(c):
	case !t.list && t.backTo(c):
	case t.refine(c):
	case c.isBite(t.list, t.fresh):
		t.add(c)
	default:
		t.leave(c)
	}
}

// whenBit are words for the moment of a bite.
var whenBit = regexp.MustCompile(`(?i)\b(?:when|as|where) (?:he|she|it|they|the fish) ` +
	`(?:ate|bit|hit|struck|took|came|went|grabbed|whacked)\b`)

// speedOf takes the speed at which the bite told last came, as the words behind it say: "(6.8 kts when he ate)",
// ", I was at 9 kts when it hit".
func (t *teller) speedOf(c clause) bool {
	cur := t.last()
	if cur == nil || t.fresh || c.join != aColon && c.join != aComma || c.fish != nil || !whenBit.MatchString(c.text) {
		return false
	}
	for _, it := range c.items {
		if it.kind == aSpeed && it.num > 0 && it.num <= 25 {
			cur.Kn = it.num
			return true
		}
	}
	return false
}

// speedAtClock is the speed that stands right behind the clock of a bite: "11:05 at 6.5 kn wahoo on the left"; else 0.
func (c *clause) speedAtClock() float64 {
	at := slices.IndexFunc(c.items, func(it item) bool { return it.kind == aClock })
	if at < 0 {
		return 0
	}
	for _, it := range c.items[at+1:] {
		if it.kind == aSpeed && it.hi <= it.num && it.num <= 25 {
			return it.num
		}
		if it.kind != aGlue && !(it.kind == aNumber && it.article) { // a 6,5 nós
			break
		}
	}
	return 0
}

// untrolled passes over the fish of a list that another way of fishing took, as their own words
// say, those of the sentence before them ("on the jig: 2 amberjack") or of the bracket behind
// them ("2 amberjack (not counted)", "1 amberjack (jig)").
func (t *teller) untrolled(c clause) bool {
	bracket := c.join == aColon && words.AnotherMethod(c.text)
	said := words.Otherwise(c.text) || bracket
	if n := len(t.story.Bites); said && c.join == aColon && !c.hasFish() && n > t.sentence {
		t.story.Bites, t.notes = t.story.Bites[:n-1], t.notes[:n-1]
	}
	t.off = t.off || said && (!c.hasFish() || c.otherOuting()) && !bracket
	return said || t.off
}

func (t *teller) score(it *item) {
	t.story.Landed = max(t.story.Landed, 0) + int(it.num)
	t.story.Strikes = max(t.story.Strikes, 0) + int(it.hi)
}

// quiet reports whether a clause without a fate speaks of no fish that was on: of what was
// only seen, or of nothing the grammar knows.
func (c *clause) quiet(list bool) bool {
	if c.blank || c.onScale && c.kg == 0 {
		return false
	}
	if c.fish == nil {
		return c.seen || c.idle || c.unknown > 0 && c.count == 0 || c.length+c.girth+c.kg == 0 &&
			(c.count == 0 || c.counted < 0) && !c.pronoun && !c.scaled && c.place == "" && c.clock == nil
	}
	if list || c.count+c.loose > 0 && slices.ContainsFunc(c.items, func(it item) bool { return it.kind == aTimes }) {
		return false // skipjack for the pot x 5: so many of them
	}
	if c.none {
		return true
	}
	if c.idle && c.kg+c.length > 0 {
		return false
	}
	return c.seen || c.idle || c.compound && c.count == 0 && c.kg+c.length == 0 || c.fish.text == "" && c.count == 0 &&
		c.clock == nil || c.count == 0 && c.length+c.girth+c.kg == 0 && c.clock == nil
}

// idle notes talk: what is only seen lasts for the sentence.
func (t *teller) idle(c clause) {
	t.seen = t.seen || c.seen || c.idle
	if c.fish != nil && c.fish.text != "" && !c.fish.several && !t.seen && !c.none && !c.compound && !c.alone() {
		t.talked = &c
	}
	switch {
	case c.seen || c.idle || c.compound || c.none:
	case c.alone():
		t.bare = &c
	case c.loose > 0 && (c.fish != nil || c.place != "" || !t.fresh && c.unknown == 0), c.kg+c.length > 0 && !t.fresh:
		t.leave(c)
	}
}

// elsewhere leaves what a sentence tells of other boats.
func (t *teller) elsewhere(c clause) bool {
	here := false
	for _, it := range c.items {
		if it.kind == anElse {
			t.away, here = true, true
			t.mate = t.mate || it.text == "its"
		}
	}
	bare := c.pronoun && c.fate >= words.Missed && c.fish == nil && c.count == 0 && !c.stranger
	if cur := t.last(); t.mate && !here && cur != nil && cur.Name != "" && bare {
		b := Bite{Session: c.session, Told: c.at, Cause: c.cause} // its mate took the other lure, lost it at the gaff
		b.N, b.Fate, b.Name = 1, c.fate, cur.Name
		b.measure(c)
		t.story.Bites, t.notes = append(t.story.Bites, b), append(t.notes, note{word: c.fateWord})
		return true
	}
	if t.away && (c.fate != words.FateUnknown || c.fish != nil) {
		t.leave(c)
	}
	return t.away
}

// alone reports whether a clause is a fish's name and nothing else.
func (c *clause) alone() bool {
	return c.fish != nil && c.fish.text != "" && c.unknown == 0 && c.loose == 0
}

// clockOf gives a clause the clock that stood alone before it: "9h20: thon 22 kg".
func (t *teller) clockOf(c *clause) {
	if c.join != aBreak && t.clock != nil && c.clock == nil && (c.fish != nil || c.fate != 0) {
		c.clock = t.clock
	}
	if c.join == aBreak || c.fish != nil || c.fate != 0 {
		t.clock = nil
	}
	if c.fish == nil && c.fate == 0 && c.unknown == 0 && c.count == 0 && c.kg+c.length == 0 {
		for _, it := range c.items {
			if it.kind == aClock {
				t.clock = &Clock{it.clock.Seconds, it.clock.Sure}
			}
		}
	}
}

// moreOf takes a fate behind "then another" for that of a bite of its own. One of which no more is told is left.
func (t *teller) moreOf(c *clause) {
	switch {
	case t.other == nil || c.join != aBreak && c.fate == words.FateUnknown && c.fish == nil && c.count == 0:
	case c.join != aBreak && (c.fate != words.FateUnknown || c.fish != nil) && !c.denied:
		c.count, c.article, t.other = max(c.count, 1), true, nil
	default:
		t.leaveOther()
	}
	if !t.list && c.oneMore() {
		t.other = c
	}
}

func (t *teller) leaveOther() {
	if t.other != nil {
		t.story.Left, t.other = append(t.story.Left, t.other.text), nil
	}
}

// oneMore tells a clause that says no more than that there was one more.
func (c *clause) oneMore() bool {
	more := false
	for _, it := range c.items {
		more = more || it.kind == aNumber && it.text == "other"
		if it.kind != aGlue && it.text != "other" {
			return false
		}
	}
	return more
}

// name gives a clause without a fish the name that stood alone before it: "Blackfin (rel)".
// A name that stays alone is left.
func (t *teller) name(c *clause) {
	if t.talked != nil && t.bare == nil && c.join == aComma && c.fish == nil && c.onlyMeasures() {
		c.fish = t.talked.fish // a wahoo hit it of course, 131 cm
	}
	t.talked = nil
	if t.bare == nil {
		return
	}
	if c.score != nil && c.join != aBreak && c.fish == nil && len(t.names) == 0 {
		c.fish, t.bare = t.bare.fish, nil // white marlin 2 for 3
		return
	}
	goesOn := c.join != aBreak || c.onlyMeasures() || c.measureFirst() || t.namedAlone(*c)
	if goesOn && c.fish == nil && c.count == 0 && (c.fate != words.FateUnknown || c.kg+c.length > 0) && !c.stranger {
		c.fish = t.bare.fish
		if c.place == "" {
			c.place = t.bare.place
		}
		if c.many && c.fate != words.FateUnknown && c.kg+c.length == 0 {
			t.each(*c)
		}
	} else if c.join != aBreak && c.alone() {
		t.names = append(t.names, *t.bare) // mahi, mahi, wahoo, all in the box
		t.bare = nil
		return
	} else if c.join == aBreak && len(t.names) == 0 && !t.list && c.saysNothing() {
		return // Wahoo! First one this year. 17.4 kg
	} else {
		t.leave(*t.bare)
	}
	for _, n := range t.names {
		t.leave(n)
	}
	t.bare, t.names = nil, nil
}

// each tells a bite of each fish whose name alone was told before a clause that speaks of all of them.
func (t *teller) each(c clause) {
	for _, n := range t.names {
		n.fate, n.fateWord, n.cause = c.fate, c.fateWord, c.cause
		t.add(n)
	}
	t.names = nil
}

// leave keeps a clause that speaks of fish or fates for the user.
func (t *teller) leave(c clause) {
	if c.fate == words.FateUnknown && c.fish == nil && c.count == 0 && c.loose == 0 && c.kg+c.length == 0 {
		return
	}
	if onTheBottom[c.method] && c.alone() {
		return // fundo: pargo
	}
	t.story.Left = append(t.story.Left, c.text)
	t.blocked = c.fate != words.FateUnknown
}

// plural reports whether a fate or a name stands for several fish without a number.
func (c *clause) plural() bool {
	if c.fish == nil || c.count > 0 || c.many || c.fate == words.FateUnknown {
		return false
	}
	if c.fish.several {
		return true
	}
	name := words.Fold(c.fish.text)
	return len(name) > 4 && name[len(name)-1] == 's' && name != "albacores" &&
		fishes().Find(name[:len(name)-1], "").Found
}

// isBite reports whether a clause tells of a bite of its own.
func (c *clause) isBite(list, fresh bool) bool {
	measured := c.length > 0 || c.kg > 0
	switch {
	case c.fish != nil && c.fish.text != "":
		return c.fate != 0 || c.count > 0 || measured || c.clock != nil || list
	case c.count > 0 && (c.fate != 0 || measured || c.fish != nil && c.unknown == 0):
		return true
	case measured && (c.article || c.fate != 0 || c.ended || list && c.unknown == 0):
		return true
	case c.fate == words.FateUnknown:
		// in a list, "something" is a fish of its own, of which the next words tell more
		return c.fish != nil && c.unknown == 0 && (c.clock != nil || list && fresh)
	case c.many:
		return false
	case c.after:
		return c.clock != nil || c.place != "" && c.unknown == 0
	}
	return c.clock != nil || c.place != "" || !c.pronoun || fresh
}

// add tells a new bite.
func (t *teller) add(c clause) {
	b := Bite{Session: c.session, Told: c.at, Cause: c.cause, Method: c.method}
	b.N, b.Fate, b.Place, b.At = max(c.count, 1), c.fate, c.place, c.clock
	b.Kn = c.speedAtClock()
	if c.fish != nil {
		b.Name = c.fish.text
	}
	if t.shared(c) {
		b.Fate, b.Cause = t.last().Fate, t.last().Cause
	}
	b.measure(c)
	t.story.Bites = append(t.story.Bites, b)
	t.notes = append(t.notes, note{word: c.fateWord, tells: c.join == aColon, counted: c.count > 0 && !c.article,
		behind: c.fateBehind()})
	t.fresh, t.blocked = false, false
	if c.many { // 3 whites, 1 sail, all released
		for i := t.sentence; i < len(t.story.Bites); i++ {
			if o := &t.story.Bites[i]; o.Fate == words.FateUnknown && !t.totalOfBites(i) {
				o.Fate, o.Cause = c.fate, c.cause
			}
		}
	}
	if c.loose > 0 && b.Name != "" && !t.list { // a number that is likely a measure
		t.story.Left = append(t.story.Left, c.text)
	}
}

// fateBehind tells a clause whose fate stands behind its fish.
func (c *clause) fateBehind() bool {
	fate := slices.IndexFunc(c.items, func(it item) bool { return it.kind == aFate })
	fish := slices.IndexFunc(c.items, func(it item) bool { return it.kind == aFish })
	return fish >= 0 && fate > fish
}

// shared reports whether a fish takes the fate of the one before it: lost a wahoo and a mahi, and not of 1 wahoo broke
// off + 1 mahi.
func (t *teller) shared(c clause) bool {
	if len(t.notes) > 0 && t.notes[len(t.notes)-1].behind && c.count > 0 && !c.article {
		return false
	}
	return c.join == anAnd && !t.fresh && c.fate == 0 && c.kg+c.length == 0 && c.clock == nil &&
		t.last() != nil && t.last().Fate != 0 &&
		t.last().Name != "" && t.last().Kg+t.last().LengthCm == 0
}

func (b *Bite) measure(c clause) {
	fill := func(to *float64, v float64) {
		if *to == 0 {
			*to = v
		}
	}
	if c.kg > 0 && b.Kg == 0 {
		b.Guess, b.Scaled, b.Exact = c.guess, c.scaled, c.exact
	}
	fill(&b.LengthCm, c.length)
	fill(&b.GirthCm, c.girth)
	fill(&b.Kg, c.kg)
	if c.kindOf != "" {
		b.LengthKind = c.kindOf
	}
	if b.Place == "" {
		b.Place = c.place
	}
	if b.At == nil {
		b.At = c.clock
	}
}

// last is the bite told last in the session, nil if there is none.
func (t *teller) last() *Bite {
	if n := len(t.story.Bites); n > 0 {
		return &t.story.Bites[n-1]
	}
	return nil
}

// settle gives the fates that go without saying: a fish that is named with a count, a
// clock or a measure was landed, and one that was measured too.
func (t *teller) settle() {
	for i := range t.story.Bites {
		b := &t.story.Bites[i]
		measured := b.LengthCm > 0 || b.Kg > 0 && !b.Guess
		if b.Fate == words.FateUnknown || measured && (b.Fate == words.Hooked || b.Fate == words.Bit) {
			b.Fate = words.Landed
		}
	}
}
