package phrase

import "wakeledger/pipeline/words"

// biggestOf gives one of the fish told last the measure of the biggest: "4 albacore, biggest 31 lb". Of those of one
// name it is one that was kept, if any was.
func (t *teller) biggestOf(c clause) bool {
	named := c.fish != nil && c.fish.text != ""
	if c.kg+c.length == 0 || c.count > 1 || c.score != nil || c.clock != nil || named ||
		c.fate != words.FateUnknown || !says(c.text, "biggest") {
		return false
	}
	last := t.last()
	if last == nil || last.Session != c.session || last.Name == "" || t.blocked {
		return false
	}
	at := -1
	for i := range t.story.Bites {
		b := &t.story.Bites[i]
		kept := b.Fate == words.Landed || b.Fate == words.FateUnknown
		bare := b.Name == last.Name && b.Session == last.Session && b.Kg+b.LengthCm == 0
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

// says tells a text with a phrase of a kind of glue.txt in it.
func says(text, kind string) bool {
	toks := words.Scan(text)
	for i := range toks {
		if _, ok := words.GlueIs(toks, i, kind); ok {
			return true
		}
	}
	return false
}
