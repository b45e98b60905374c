package phrase

import (
	"math"
	"slices"
	"strings"

	"wakeledger/pipeline/words"
)

// nameBehind gives a bite without a name the one that stands alone behind its colon or in its bracket: "fish
// on: sailfish", "lost at the boat (wahoo)".
func (t *teller) nameBehind(c clause) bool {
	cur := t.last()
	if t.list || cur == nil || c.join != aColon || !c.alone() || c.fish.several || c.count > 0 || c.none || t.fresh ||
		t.blocked || cur.Session != c.session || cur.N != 1 || cur.Name != "" || c.kg+c.length+c.girth > 0 {
		return false
	}
	cur.Name = c.fish.text
	t.seen = t.seen || c.seen
	return true
}

// wentBack lets a fish go that was named or measured, where all that is said of it behind a comma is that it is
// back: "mahi 40 cm, zurück".
func (t *teller) wentBack(c clause) bool {
	cur := t.last()
	if cur == nil || c.join != aComma || c.fish != nil || c.fate != words.FateUnknown || t.fresh || t.blocked ||
		cur.Name == "" || cur.Fate != words.FateUnknown && cur.Fate != words.Landed ||
		words.FateAlone(c.text) != words.Released {
		return false
	}
	cur.Fate = words.Released
	return true
}

// byMeasure gives a fish that was measured before, and that its measure alone names, its end: "51 in and 47 in. Let the
// 51 go, kept the 47".
func (t *teller) byMeasure(c clause) bool {
	if c.fate < words.Landed || c.fish != nil || c.kg+c.length > 0 {
		return false
	}
	var of *Bite
	for i, it := range c.items {
		if it.kind != aNumber || !it.digits || i == 0 || c.items[i-1].kind != aGlue && c.items[i-1].kind != aMany ||
			!definite[strings.ToLower(c.items[i-1].text)] {
			continue
		}
		for k := range t.story.Bites {
			if b := &t.story.Bites[k]; b.N == 1 && (isMeasure(it.num, b.LengthCm) || isMeasure(it.num, b.Kg)) {
				if of != nil {
					return false // which of them is not said
				}
				of = b
			}
		}
	}
	if of == nil || of.Fate == words.Released || of.Fate == words.Lost {
		return false
	}
	of.Fate, of.Cause = c.fate, c.cause
	return true
}

// definite are articles before the measure of a fish that is known already.
var definite = map[string]bool{"the": true, "el": true, "la": true, "le": true, "il": true, "o": true, "a": true,
	"der": true, "die": true, "den": true, "das": true}

// isMeasure tells a bare number that is a measure in one of the units that people use for it.
func isMeasure(bare, measure float64) bool {
	for _, u := range []string{"cm", "in", "kg", "lb"} {
		if measure > 0 && math.Abs(bare*factor[u]-measure) < 0.05 {
			return true
		}
	}
	return false
}

// namedAlone tells a sentence of what became of a fish whose name alone was the sentence before it: "Marlin! Line
// snapped after ten minutes."
func (t *teller) namedAlone(c clause) bool {
	return !t.list && len(t.story.Bites) == t.sentence && len(t.names) == 0 && !t.bare.fish.several && !c.many &&
		(c.fate == words.Lost || c.fate == words.Released)
}

// saysNothing tells a clause that speaks of no fish, fate, count or measure.
func (c *clause) saysNothing() bool {
	return c.fish == nil && c.fate == words.FateUnknown && c.count == 0 && c.others == 0 && c.kg+c.length+c.girth == 0
}

// measureFirst tells a sentence that begins with the measure of a fish and goes on with where it bit: "41 kg on the
// long one".
func (c *clause) measureFirst() bool {
	if len(c.items) < 2 || c.loose > 0 || c.setting || c.idle || c.fate != words.FateUnknown {
		return false
	}
	first, next := c.items[0].kind, c.items[1].kind
	return (first == aWeight || first == aLength) && (next == aGlue || next == aPlace) &&
		!slices.ContainsFunc(c.items, func(it item) bool { return it.kind == aTackle || it.kind == aMeasure })
}

// leastGuess is the least bare number that is a guess of a fish's size, not how many there were.
const leastGuess = 20

// guessBehind passes over a guess without a unit behind a bite that is told: "sailfish released, est 30". It is no
// measure, and no count.
func (t *teller) guessBehind(c clause) bool {
	if t.list || t.last() == nil || t.fresh || t.blocked || c.join == aBreak || c.fish != nil ||
		c.fate != words.FateUnknown || c.kg+c.length+c.girth > 0 {
		return false
	}
	hedged, n := false, 0
	for _, it := range c.items {
		switch {
		case it.kind == aHedge:
			hedged = true
		case it.kind == aNumber && it.digits && it.num >= leastGuess:
			n++
			hedged = hedged || it.hedged
		default:
			return false
		}
	}
	return hedged && n == 1
}

// afterLeap gives a clause that tells what became of a bite, and of which, the fish and the clock of the one before
// it, which said no more than that the fish was seen: "8:02 sailfish jumped and threw the hook".
func (t *teller) afterLeap(c *clause) {
	of := t.leapt
	t.leapt = nil
	switch {
	case t.list:
	case c.seen && c.clock != nil && c.alone() && c.fate == words.FateUnknown && !c.none && c.count <= 1:
		leap := *c
		t.leapt = &leap
	case of != nil && (c.join == anAnd || c.join == aComma) && c.fish == nil && c.clock == nil && c.count == 0 &&
		c.fate >= words.Missed && !c.stranger && !c.many:
		c.fish, c.clock = of.fish, of.clock
		if c.place == "" {
			c.place = of.place
		}
	}
}
