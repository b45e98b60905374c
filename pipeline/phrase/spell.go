package phrase

import (
	"slices"
	"strings"

	"wakeledger/pipeline/words"
)

// otherSpell is where a text tells of times that were fished in another way than trolling, "bottom 7-12", up to
// the next times.
type otherSpell struct {
	method   string
	from, to int // bytes of the text
}

// otherSpells are those of a text, by the spans of their clocks.
func (s *scanner) otherSpells(spans []timed) map[int]otherSpell {
	out := map[int]otherSpell{}
	for k, sp := range spans {
		m := s.methodBeside(sp)
		if m == "" {
			continue
		}
		o := otherSpell{m, s.toks[s.items[sp.from].tok].At, len(s.text)}
		if k+1 < len(spans) {
			o.to = s.toks[s.items[spans[k+1].from].tok].At
		}
		out[k] = o
	}
	return out
}

// methodBeside is the way of fishing, other than trolling, whose name is all that stands before or behind a span of
// clocks in its clause.
func (s *scanner) methodBeside(sp timed) string {
	first, end := s.items[sp.from].tok, s.items[sp.to-1].end
	i, j := first, end
	for i > 0 && !words.Stops(s.toks[i-1]) {
		i--
	}
	for j < len(s.toks) && !words.Stops(s.toks[j]) {
		j++
	}
	for _, part := range [][2]int{{i, first}, {end, j}} {
		if part[0] >= part[1] {
			continue
		}
		text := s.text[s.toks[part[0]].At:s.toks[part[1]-1].End]
		if m, ok := words.Method(text); ok && words.AnotherMethod(strings.TrimSpace(text)) {
			return m
		}
	}
	return ""
}

// TrolledBeside tells a text that speaks of times of another way of fishing than trolling, and of bites that were not
// of these.
func TrolledBeside(text string) bool {
	s := scan(text)
	return len(s.otherSpells(s.spans())) > 0 && slices.ContainsFunc(Tell(text, Defaults{}).Bites,
		func(b Bite) bool { return b.Method == "" })
}

// elsewise gives the bites that were told behind such times their way of fishing.
func (t *teller) elsewise(s *scanner, others map[int]otherSpell) {
	for _, o := range others {
		if m, ok := words.Method(s.text[o.from:o.to]); ok && m == "troll" {
			continue // which of them trolled is not told
		}
		for i := range t.story.Bites {
			if b := &t.story.Bites[i]; b.Method == "" && b.Told > o.from && b.Told < o.to {
				b.Method = o.method
			}
		}
	}
}

// onTheBottom are ways of fishing whose names, alone, are no lure's.
var onTheBottom = map[string]bool{"bottom": true, "drift": true, "chunk": true, "spear": true}

// methodOf gives a clause of fish the way of fishing that its sentence spoke of before: "threw plugs with
// the spinning rods, three mahi".
func (t *teller) methodOf(c *clause) {
	switch m, ok := words.Method(c.text); {
	case t.list:
	case ok && onTheBottom[m] && c.fate == words.FateUnknown && words.AnotherMethod(c.text):
		c.method, t.method = m, m // fundo: pargo
	case ok && m != "troll" && (c.count == 0 || c.otherOuting()) && c.fate == words.FateUnknown &&
		words.Otherwise(c.text):
		c.method, t.method = m, m // jigged the pots for mahi: eleven of them
	case c.hasFish() || c.fate != words.FateUnknown:
		if c.method == "" {
			c.method = t.method
		}
	case ok && m == "troll":
		t.method = ""
	case ok && words.Otherwise(c.text):
		t.method = m
	}
}

// otherOuting tells words of another way of fishing that name no fish, and count none: "stopped for a bottom fish".
func (c *clause) otherOuting() bool {
	if c.method == "" || c.fish == nil || c.fish.text != "" || c.fate != words.FateUnknown || c.kg+c.length > 0 {
		return false
	}
	n := 0.0
	for _, it := range c.items {
		if it.kind == aFish {
			break
		}
		if it.kind == aNumber {
			n = it.num
		}
	}
	return n <= 1
}
