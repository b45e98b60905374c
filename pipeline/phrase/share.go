package phrase

import (
	"slices"
	"strings"

	"wakeledger/pipeline/words"
)

// mostBetween is how many clauses may lie between a count of fish and the last of its shares.
const mostBetween = 8

// shares marks the clauses that say what became of each of several fish counted before them, where
// they add up to these: "two wahoo, one kept 48 cm, one let go", "2 mahi: kept one; the other shook off".
// Where they do not, and speak of fish that were on, it is not known which of them they mean.
func shares(all []clause) {
	for i := range all {
		g := &all[i]
		if g.fish == nil || g.fish.text == "" || g.count < 2 || g.fate != words.FateUnknown {
			continue
		}
		sum, of, measured := 0, []*clause{}, g.kg+g.length > 0
		for j := i + 1; j < len(all) && j <= i+mostBetween && sum < g.count; j++ {
			c := &all[j]
			told := c.fate != words.FateUnknown || c.count > 0 && c.kg+c.length > 0
			own := c.fish != nil && c.fish.text != "" || c.clock != nil
			apart := c.join == aBreak && (len(of) == 0 || c.fate == words.Missed) // who named them had them on
			if own || (c.count > 0) != told || apart {
				break
			}
			measured = measured || len(of) == 0 && c.kg+c.length > 0 && c.count == 0
			if c.count > 0 {
				sum, of = sum+c.count, append(of, c)
			}
		}
		if len(of) == 0 {
			continue
		}
		nested := slices.ContainsFunc(of, func(c *clause) bool { return c.fate == words.Hooked })
		if sum == g.count && len(of) > 1 && !measured && !nested {
			for _, c := range of {
				c.share = true
				if c.fate == words.FateUnknown {
					c.fate = words.Landed // one of 12 kg
				}
			}
			continue
		}
		for _, c := range of {
			c.unsure = c.unsure || !c.article && (c.fate == words.Hooked || c.fate == words.Landed) && g.count > c.count
		}
	}
}

// inTurn leaves a count of fish or bites out that is a sentence of its own, where the sentences behind it tell of each
// of them in turn: "Two fish. 77 in, kept. Other 70 in, let go." Each has the name that was counted.
func inTurn(all []clause) []clause {
	for i := range all {
		g := &all[i]
		if g.count < 2 || g.join != aBreak || i+1 >= len(all) || all[i+1].join != aBreak || g.kg+g.length > 0 ||
			g.clock != nil || g.fate > words.Bit && g.fate != words.Hooked {
			continue
		}
		var each []*clause
		for j := i + 1; j < len(all); j++ {
			c := &all[j]
			if c.many || c.count > 1 || c.score != nil || c.method != "" || c.fish != nil && c.fish.text != "" {
				break
			}
			if c.turn() || j == i+1 && c.onlyMeasures() {
				each = append(each, c)
			}
		}
		whole := len(each) == g.count && each[0] == &all[i+1]
		for _, c := range each {
			c.unsure = !whole && g.fate == words.FateUnknown && c.count == 1 && c.kg+c.length > 0
		}
		if !whole {
			continue
		}
		for _, c := range each {
			if c.count = 1; g.fish != nil && g.fish.text != "" {
				c.fish = g.fish
			}
		}
		return append(all[:i:i], inTurn(all[i+1:])...)
	}
	return all
}

// turn tells the first clause of what is said of one of several fish: "one 44 in", "lost the other one".
func (c *clause) turn() bool {
	if c.fate == words.FateUnknown && c.kg+c.length == 0 {
		return false
	}
	return c.count == 1 && !c.article || slices.ContainsFunc(c.items, func(it item) bool {
		return it.text == "other" || ordinals[it.text] > 0
	})
}

// takeShare parts a clause's fish off those that were counted before without a fate.
func (t *teller) takeShare(c clause) bool {
	for i := len(t.story.Bites) - 1; i >= 0; i-- {
		if b := &t.story.Bites[i]; t.notes[i].counted && b.Fate == words.FateUnknown && b.Name != "" && b.N >= c.count {
			t.split(b, c)
			if n := t.notes[i]; b.Fate != words.FateUnknown { // its last share: in the order in which they were told
				last := *b
				t.story.Bites = append(slices.Delete(t.story.Bites, i, i+1), last)
				t.notes = append(slices.Delete(t.notes, i, i+1), n)
			}
			return true
		}
	}
	return false
}

// likewise gives a bite the fate of the one before it: "another wahoo at dusk, same".
func (t *teller) likewise(c clause) bool {
	n := len(t.story.Bites)
	if n < 2 || t.fresh || !words.Ditto(strings.Trim(c.text, " .!")) {
		return false
	}
	if cur, before := &t.story.Bites[n-1], t.story.Bites[n-2]; cur.Fate == words.FateUnknown {
		cur.Fate, cur.Cause = before.Fate, before.Cause
		return true
	}
	return false
}
