package phrase

import (
	"strings"

	"wakeledger/pipeline/words"
)

// biggestOf gives one of the fish told last the measure of the biggest: "4 albacore, biggest 31 lb", or of those of its
// name: "4 albacore and a mahi, the biggest albacore 31 lb". Of those of one name it is one that was kept, if any was.
func (t *teller) biggestOf(c clause) bool {
	if c.kg+c.length == 0 || c.count > 1 || c.score != nil || c.clock != nil ||
		c.fate != words.FateUnknown || !words.Glued(c.text, "biggest") {
		return false
	}
	return t.measureOne(c)
}

// oneOf gives one of several fish of its sentence its measure: "2 albacore and 3 mahi kept, one albacore 70 cm".
func (t *teller) oneOf(c clause) bool {
	named := c.fish != nil && c.fish.text != ""
	if !named || c.join == aBreak || c.count != 1 || c.counted < 0 || c.items[c.counted].digits || c.article ||
		c.kg+c.length == 0 || c.fate != words.FateUnknown || c.clock != nil || c.loose+c.unknown > 0 {
		return false
	}
	for i := t.sentence; i < len(t.story.Bites); i++ {
		if b := &t.story.Bites[i]; b.N > 1 && sameName(b.Name, c.fish.text) {
			return t.measureOne(c)
		}
	}
	return false
}

// measureOne gives the measures of a clause to one of the fish of its name, or of that told last.
func (t *teller) measureOne(c clause) bool {
	last := t.last()
	if last == nil || last.Session != c.session || last.Name == "" || t.blocked {
		return false
	}
	name := last.Name
	if c.fish != nil && c.fish.text != "" {
		name = c.fish.text
	}
	at := -1
	for i := range t.story.Bites {
		b := &t.story.Bites[i]
		kept := b.Fate == words.Landed || b.Fate == words.FateUnknown
		bare := sameName(b.Name, name) && b.Session == last.Session && b.Kg+b.LengthCm == 0
		if bare && (kept || b.Fate == words.Released && at < 0) {
			at = i
		}
	}
	if at < 0 {
		return false
	}
	one := t.story.Bites[at]
	one.N = 1
	one.measure(c)
	if t.story.Bites[at].N == 1 {
		t.story.Bites[at] = one
		return true
	}
	t.story.Bites[at].N--
	t.story.Bites, t.notes = append(t.story.Bites, one), append(t.notes, note{})
	return true
}

// sameName tells two names of fish that are the same but for their number.
func sameName(a, b string) bool {
	one := func(s string) string { return strings.TrimSuffix(words.Fold(s), "s") }
	return one(a) == one(b)
}
