package phrase

import (
	"strings"

	"wakeledger/pipeline/words"
)

// partGroup takes counts without a name that follow a counted group in one sentence for its parts, where
// they come to as many: "two mahi at 6:40, one in the box, one pulled the hook" are two. Those let go are
// of the group too where they are fewer.
func (t *teller) partGroup() {
	if t.list || t.sentence >= len(t.story.Bites)-1 {
		return
	}
	t.headed()
	if t.sentence >= len(t.story.Bites)-1 {
		return
	}
	g, sum := t.story.Bites[t.sentence], 0
	if g.N < 2 || g.Fate == words.Landed || g.Fate == words.Released || g.Fate == words.Lost || g.Fate == words.Missed {
		return // its own end was told
	}
	parts, back := t.story.Bites[t.sentence+1:], true
	for i, b := range parts {
		if b.Name != "" || b.At != nil || b.Fate <= words.Bit || b.Fate == words.Hooked && i+1 < len(parts) {
			return // of 5 bites, 3 hooked, 2 landed those landed are among those hooked
		}
		back = back && b.Fate == words.Released
		sum += b.N
	}
	switch {
	case sum == g.N:
	case back && sum < g.N && g.Fate == words.FateUnknown && g.Name != "":
		t.story.Bites[t.sentence].N -= sum // three skipjack, let two go
		for i := range parts {
			parts[i].Name = g.Name
		}
		return
	default:
		return
	}
	for i := range parts {
		parts[i].Name, parts[i].At = g.Name, g.At
		if parts[i].Place == "" {
			parts[i].Place = g.Place
		}
	}
	t.story.Bites = append(t.story.Bites[:t.sentence], parts...)
	t.notes = append(t.notes[:t.sentence], t.notes[t.sentence+1:]...)
}

// headed takes a fish's name and clock before a colon and a group for those of the group: "Mahi at the log
// 8:30: four bites, ...".
func (t *teller) headed() {
	head, g := t.story.Bites[t.sentence], &t.story.Bites[t.sentence+1]
	if !t.notes[t.sentence+1].tells || head.N != 1 || head.Name == "" || head.Fate != words.FateUnknown || head.Kg+
		head.LengthCm > 0 || g.N < 2 || g.Name != "" {
		return
	}
	g.Name, g.At = head.Name, head.At
	t.story.Bites = append(t.story.Bites[:t.sentence], t.story.Bites[t.sentence+1:]...)
	t.notes = append(t.notes[:t.sentence], t.notes[t.sentence+1:]...)
}

// sizeOf reads a word for a fish of some size or sex behind one that was named: "a mahi, a bull, 19 lb".
func (t *teller) sizeOf(c clause) bool {
	cur := t.last()
	if cur == nil || t.fresh || t.blocked || c.join != aComma || !c.article || c.fish == nil || cur.N != 1 ||
		cur.Name == "" || c.clock != nil {
		return false
	}
	m := fishes().Find(c.fish.text, "")
	if m.Found || len(m.Candidates) > 0 || c.fish.text == "" {
		return false
	}
	if c.fate != words.FateUnknown {
		t.turn(cur, c)
	} else {
		cur.measure(c)
	}
	return true
}

// backTo reads a sentence that weighs or tapes a fish told before: "The wahoo was 25 lb".
func (t *teller) backTo(c clause) bool {
	if c.join != aBreak || c.fish == nil || c.fish.text == "" || c.count > 0 ||
		c.fate != words.FateUnknown || c.kg+c.length == 0 ||
		!strings.HasPrefix(words.Fold(strings.TrimSpace(c.text)), "the ") {
		return false
	}
	var of *Bite
	for i := range t.story.Bites {
		b := &t.story.Bites[i]
		aboard := b.Fate == words.FateUnknown || b.Fate == words.Landed || b.Fate == words.Released
		if !aboard || b.N != 1 || b.Kg+b.LengthCm > 0 || !sameKind(b.Name, c.fish.text) {
			continue
		}
		if of != nil {
			return false // which of them is not said
		}
		of = b
	}
	if of == nil {
		return false
	}
	c.clock = nil
	of.measure(c)
	return true
}

// sameKind reports whether two names are of one kind of fish.
func sameKind(a, b string) bool {
	if strings.EqualFold(a, b) {
		return true
	}
	x, y := fishes().Find(a, ""), fishes().Find(b, "")
	return x.Found && y.Found && x.Species.Code == y.Species.Code
}
