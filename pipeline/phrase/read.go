package phrase

import (
	"cmp"
	"slices"
	"strings"

	"wakeledger/pipeline/words"
)

// read gathers what the clause's items say.
func (c *clause) read(d Defaults) {
	c.pointClock()
	c.findCount()
	c.findFates()
	c.countedAlone()
	c.defaults(d)
	for i := range c.items {
		it := &c.items[i]
		switch it.kind {
		case aFish:
			if i > 0 && purpose[c.items[i-1].text] && c.count == 0 && c.fate == 0 && len(c.items) == i+1 {
				continue // "high-speed for wahoo": what it was done for
			}
			c.addFish(it, i)
		case aClock:
			if c.clock == nil && !(it.compact && c.fish == nil && c.fate == 0) {
				c.clock = &Clock{it.clock.Seconds, it.clock.Sure}
			}
		case aPlace:
			if c.place == "" {
				c.place = it.text
			}
		case aLength, aGirth, aWeight:
			c.addMeasure(it)
		case aScale:
			c.scaled, c.onScale = true, true
		case aKind:
			c.kindOf = it.text
		case aGlue: // "2 marlin up" came to the spread
			c.seen = c.seen || it.text == "up" && i > 0 && c.items[i-1].kind == aFish && c.fate == words.FateUnknown
		case aHedge, aTackle:
		default:
			c.flag(it, i)
		}
	}
	c.scaled = (c.scaled || d.Scaled) && c.kg > 0 && !c.guess
	c.stranger = c.isStranger()
	if m, ok := words.Method(c.text); ok && m != "troll" && (c.fish != nil || c.fate != 0) {
		c.method = m
	}
}

// pointClock takes "13.05" before a fish or a fate for the clock that it is in Italian and
// German logs.
func (c *clause) pointClock() {
	if len(c.items) < 2 || c.items[0].kind != aNumber || !c.items[0].minutes {
		return
	}
	if k := c.items[1].kind; k == aFish || k == aFate {
		it := &c.items[0]
		h := int(it.num)
		it.kind, it.clock = aClock, Clock{h*3600 + int((it.num-float64(h))*100+.5)*60, h > 12}
	}
}

func (c *clause) flag(it *item, i int) {
	switch it.kind {
	case aPronoun:
		c.pronoun = c.pronoun || c.pointsBack(i)
	case aMany:
		c.many = c.many || !articlesToo[it.text] || c.pointsBack(i)
		c.both = c.both || it.num == 2
	case anElse:
		c.others++
	case aSeen:
		c.seen = true
	case aNo:
		j := significant(c.items, i+1)
		if j < len(c.items) && c.items[j].article {
			j = significant(c.items, j+1) // not a tuna
		}
		c.none = c.none || j < len(c.items) && c.items[j].kind == aFish
	case anIdle:
		c.idle = c.idle || i == 0 || !purpose[c.items[i-1].text] // kept for bait
	case aBlank:
		c.blank = true
	case aNothing:
		c.nothing = true
	case aLines, aSpeed:
		c.setting = true
	case aScore:
		c.score = it
	case aNumber:
		if i != c.counted && !it.article && !(it.num == 1 && !it.digits) && !c.guessedAt(i) {
			c.loose++
		}
	case aWord:
		c.unknown++
		if i > 0 && c.items[i-1].kind == aFish && c.items[i-1].text != "" {
			c.compound = true
		}
	}
}

// articlesToo are pronouns for several that are also articles.
var articlesToo = map[string]bool{"los": true, "las": true, "les": true, "le": true, "la": true, "lo": true,
	"l": true, "o": true, "alle": true}

// pointsBack reports whether a pronoun stands for a fish: not before a noun, as the
// articles of the Romance languages do.
func (c *clause) pointsBack(i int) bool {
	if !articlesToo[c.items[i].text] {
		return true
	}
	return i+1 >= len(c.items) || c.items[i+1].kind == aFate
}

func (c *clause) addFish(it *item, i int) {
	switch {
	case it.article && !c.inCompany(i):
	case c.fish == nil || c.fish.text == "":
		c.fish = it
	case it.text != "" && !it.article:
		c.others++
	}
}

// inCompany reports whether a short name (a blue) has a count or a measure beside it.
func (c *clause) inCompany(i int) bool {
	if c.counted >= 0 && c.counted < i && significant(c.items, c.counted+1) <= i {
		return true
	}
	if i+1 < len(c.items) {
		switch k := c.items[i+1].kind; k {
		case aLength, aWeight, aFate, aHedge:
			return true
		case aWord, aFish:
			return false
		}
	}
	return i > 0 && (c.items[i-1].kind == aWeight || c.items[i-1].kind == aLength || c.items[i-1].kind == aFate) ||
		c.list && len(c.items) == 1
}

func (c *clause) addMeasure(it *item) {
	switch {
	case it.kind == aLength && it.unit == "ft" && !c.hasFish(): // a sea of three feet
	case it.kind == aLength && c.length == 0:
		c.length = it.num
	case it.kind == aGirth && c.girth == 0:
		c.girth = it.num
	case it.kind == aWeight && c.kg == 0:
		c.kg, c.guess, c.exact = it.num, it.hedged, it.exact
	default:
		c.loose++
		c.twice = c.twice || it.kind == aWeight
	}
}

func (c *clause) hasFish() bool {
	for _, it := range c.items {
		if it.kind == aFish {
			return true
		}
	}
	return false
}

func hasFraction(x float64) bool { return x != float64(int(x)) }

// hasLength tells a clause that says how long something is: "big one 34 in, 29.4 on the scale".
func (c *clause) hasLength() bool {
	return slices.ContainsFunc(c.items, func(it item) bool { return it.kind == aLength && it.unit != "ft" })
}

func (c *clause) findCount() {
	for i, it := range c.items {
		if it.kind == aNumber && isCount(c.items, i, 0) && !c.guessedAt(i) {
			c.count, c.article, c.counted = int(it.num), it.article, i
			if j := significant(c.items, i+1); it.article && j < len(c.items) && c.items[j].text == "double" {
				continue // had a double
			}
			return
		}
	}
}

// guessedAt reports whether the number at item i is a guess of a weight without its unit: "skip
// in box abt 10".
func (c *clause) guessedAt(i int) bool {
	if i == 0 || c.items[i-1].kind != aHedge || !c.items[i].digits {
		return false
	}
	of := func(it item) bool { return it.kind == aFish || it.kind == aFate }
	return slices.ContainsFunc(c.items[:i], of) && !slices.ContainsFunc(c.items[i+1:], of)
}

// findFates takes the strongest fate that is not denied. Common words count only where a
// fish stands in the clause.
func (c *clause) findFates() {
	c.after = true
	for i, it := range c.items {
		if it.kind != aFate || it.fate.Weak && len(c.items) > 1 && !c.bearsWeak(i) {
			continue
		}
		if c.denies(i) {
			c.denied = true
			continue
		}
		c.after = c.after && it.fate.After
		if c.cause == "" {
			c.cause = it.fate.Cause
		}
		if f := it.fate.Fate; f > c.fate {
			c.fate, c.fateWord = f, it.text
		}
	}
	if c.fate != words.Lost {
		c.cause = ""
	}
	if c.fate == words.FateUnknown && c.counted >= 0 && c.items[c.counted].text == "double" {
		c.fate, c.after = words.Hooked, false
	}
	c.after = c.after && c.fate != words.FateUnknown
	c.denied = c.denied && c.fate == words.FateUnknown
}

// countedAlone takes a clause of a figure and words that tell a loss or a miss only where they are all of a text for so
// many bites, or for one named fish: "1 off", "2 tapped", "off dorado".
func (c *clause) countedAlone() {
	if c.fate == words.FateUnknown && len(c.items) == 2 && c.items[1].kind == aFish && c.items[1].text != "" &&
		c.count == 0 && c.items[0].kind != aNumber {
		first, _, _ := strings.Cut(c.text, " ")
		if words.FateAlone(first) == words.Lost {
			c.fate, c.fateWord = words.Lost, first // off dorado
			return
		}
	}
	if c.fate != words.FateUnknown || len(c.items) < 2 || c.items[0].kind != aNumber || !c.items[0].digits ||
		c.join == aColon || c.items[0].hi > 0 || c.items[0].num != float64(int(c.items[0].num)) || c.items[0].num < 1 {
		return
	}
	for _, it := range c.items[1:] {
		if it.kind != aWord && it.kind != aGlue {
			return
		}
	}
	_, said, _ := strings.Cut(c.text, " ")
	if f := words.FateAlone(said); f == words.Lost || f == words.Missed {
		c.fate, c.fateWord, c.count, c.counted, c.after = f, said, int(c.items[0].num), 0, false
		c.items = c.items[:1]
	}
}

// bearsWeak reports whether a common word at item i is a fate here: a fish or a place
// stands in the clause, or a count or "both" before it.
func (c *clause) bearsWeak(i int) bool {
	noClock := func(it item) bool { return it.kind != aClock }
	if i > 0 && i+1 == len(c.items) && !slices.ContainsFunc(c.items[:i], noClock) {
		return true // 8:40 miss
	}
	for _, it := range c.items {
		if it.kind == aFish && it.text != "" || it.kind == aPlace {
			return true
		}
	}
	for j := range c.items[:i] {
		if c.items[j].kind == aMany && c.items[j].num == 2 && significant(c.items, j+1) == i {
			return true
		}
	}
	return c.counted >= 0 && c.counted < i && significant(c.items, c.counted+1) == i && !c.article
}

// denies reports whether a word of denial stands before item i, near enough to mean it.
func (c *clause) denies(i int) bool {
	for j := i - 1; j >= 0 && j >= i-4; j-- {
		switch c.items[j].kind {
		case aNo, aNothing:
			if c.inPlace(j) {
				continue
			}
			return true
		case aNumber:
			if c.items[j].num == 0 {
				return true
			}
		case aFate:
			return false
		}
	}
	return false
}

// inPlace tells a "no" that is "in the", as between a fish and its place: "gaiado no shotgun dentro".
func (c *clause) inPlace(j int) bool {
	return c.items[j].text == "no" && j+1 < len(c.items) && c.items[j+1].kind == aPlace &&
		slices.ContainsFunc(c.items[:j], func(it item) bool { return it.kind == aFish || it.kind == aFate })
}

// defaults gives bare numbers beside a fish the heading's unit. Where it names two, the
// number that makes a fish of usual shape is the length.
func (c *clause) defaults(d Defaults) {
	fish := words.Glued(c.text, "biggest")
	var bare []*item
	for i := range c.items {
		it := &c.items[i]
		fish = fish || it.kind == aFish
		if (c.beforeScale(i) || c.behindScale(i)) && factor[d.ScaleUnit] > 0 && (c.hasFish() || c.hasLength() ||
			c.join == aComma && hasFraction(it.num)) {
			it.exact = hasFraction(it.num)
			it.kind, it.unit, it.num = aWeight, d.ScaleUnit, it.num*factor[d.ScaleUnit]
		}
		if (it.kind == aGirth || it.kind == aLength) && it.unit == "" {
			it.unit = cmp.Or(d.LengthUnit, d.TapeUnit)
			if it.num *= factor[it.unit]; it.num == 0 {
				it.kind = aMeasure // in a unit that nobody says
			}
		}
		if it.kind == aNumber && it.digits && i != c.counted && it.num > 0 {
			bare = append(bare, it)
		}
	}
	if !fish || len(bare) == 0 || len(bare) > 2 || factor[d.LengthUnit] == 0 && factor[d.WeightUnit] == 0 {
		return
	}
	has := func(k kind) bool {
		for _, it := range c.items {
			if it.kind == k {
				return true
			}
		}
		return false
	}
	long, heavy := factor[d.LengthUnit] > 0 && !has(aLength), factor[d.WeightUnit] > 0 && !has(aWeight)
	give := func(it *item, k kind, unit string) {
		it.exact = it.exact || hasFraction(it.num)
		it.kind, it.unit, it.num = k, unit, it.num*factor[unit]
	}
	switch {
	case len(bare) == 2 && long && heavy:
		a, b := bare[0], bare[1]
		if !usualShape(a.num*factor[d.LengthUnit], b.num*factor[d.WeightUnit]) &&
			usualShape(b.num*factor[d.LengthUnit], a.num*factor[d.WeightUnit]) {
			a, b = b, a
		}
		give(a, aLength, d.LengthUnit)
		give(b, aWeight, d.WeightUnit)
	case len(bare) == 1 && heavy && !long:
		give(bare[0], aWeight, d.WeightUnit)
	case len(bare) == 1 && long && !heavy:
		give(bare[0], aLength, d.LengthUnit)
	}
}

// beforeScale reports whether a number that counts nothing stands right before a word for the scale.
func (c *clause) beforeScale(i int) bool {
	it := &c.items[i]
	j := significant(c.items, i+1)
	return it.kind == aNumber && it.digits && it.hi == 0 && it.num > 0 && i != c.counted && j < len(c.items) &&
		c.items[j].kind == aScale
}

// behindScale reports whether a number that counts nothing stands right behind a word for the scale: "wahoo weighed
// 17.4", and no number before that word.
func (c *clause) behindScale(i int) bool {
	it := &c.items[i]
	return it.kind == aNumber && it.digits && it.hi == 0 && it.num > 0 && i != c.counted && i > 1 &&
		c.items[i-1].kind == aScale && c.items[i-2].kind == aFish && i+1 == len(c.items)
}

// usualShape reports whether a fish so long may weigh so much: 100 kg/cm3 from 0.3 for the
// slimmest to 4 for the fattest fish of the trade (common practice, no source).
func usualShape(cm, kg float64) bool {
	k := kg / (cm * cm * cm) * 1e5
	return k > .3 && k < 4
}

// isStranger reports whether an unknown word stands where the fish of a fate would: lost
// the teaser, broke off a rod tip; or before a bare fate as its subject: kelp broke off.
func (c *clause) isStranger() bool {
	if c.fate == words.FateUnknown {
		return false
	}
	if c.compound {
		return true
	}
	for i, it := range c.items {
		missed := it.fate.Fate == words.Missed // grabbed the skirt but no hook
		if it.kind == aFate && !c.brokeOff(i) && (c.strangeObject(i) || c.loseTackle(i) && !missed) {
			return true
		}
	}
	told := c.count > 0 || c.fish != nil || c.clock != nil || c.pronoun || c.many
	return !told && (c.unknown > 0 || c.idle || c.setting)
}

// brokeOff reports whether a fish or a count stands before a fate with a cause at item i: what a second
// one bit off is no fish that was lost.
func (c *clause) brokeOff(i int) bool {
	if j := significant(c.items, i+1); j < len(c.items) && (c.items[j].kind == aNumber || c.items[j].kind == aLines) {
		return false // cut off 2 lures: how many bit is not told
	}
	return c.items[i].fate.Cause != "" && (c.counted >= 0 && c.counted < i ||
		slices.ContainsFunc(c.items[:i], func(it item) bool { return it.kind == aFish && it.text != "" }))
}

// strangeObject reports whether an unknown word follows the fate at item i as its object. A
// count before the fate makes it a noun, which has none.
func (c *clause) strangeObject(i int) bool {
	if c.counted >= 0 && c.counted < i && !c.article {
		return false
	}
	for j := i + 1; j < len(c.items); j++ {
		if c.items[j].kind == aGlue && prepositions[c.items[j].text] {
			return false // at the rail, for the neighbours: no object
		}
		switch c.items[j].kind {
		case aGlue, aHedge, aPlace, aPronoun, aTimes, aTackle:
			continue
		case aNumber:
			if j != c.counted || c.article {
				continue
			}
		case aWord, anIdle, aLines:
			return true
		}
		break
	}
	return false
}

// prepositions stand before a place, a person or a time, not before what was lost.
var prepositions = func() map[string]bool {
	m := map[string]bool{}
	for _, w := range strings.Fields("at by near beside for behind under junto para chez pour pres presso sotto per " +
		"devant avant contre au delante " +
		"davanti vicino perto beim bei neben unter") {
		m[w] = true
	}
	return m
}()

// loseTackle reports whether the object of the fate at item i is a lure or the like, with
// no preposition before it.
func (c *clause) loseTackle(i int) bool {
	for j := i + 1; j < len(c.items); j++ {
		switch it := c.items[j]; {
		case it.kind == aTackle:
			return true
		case it.kind == aNumber, it.kind == aPronoun, it.kind == aGlue &&
			(it.text == "the" || it.text == "my" || it.text == "our" || it.text == "good" || it.text == "big"):
		default:
			return false
		}
	}
	return false
}
