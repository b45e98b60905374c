package phrase

import "wakeledger/pipeline/words"

// scored is a fish of which so many were caught for so many bites, "white marlin 3 for 5": what is told behind it
// parts these.
type scored struct {
	name         string
	caught, rest int  // not told of yet
	told         bool // something was
	at           clause
}

// scoreOf takes the score of a fish that is named before it. It reports false where that is of no one fish.
func (t *teller) scoreOf(c clause) bool {
	t.flushScore()
	if it := c.score; !t.list && c.fish != nil && c.fish.text != "" && !c.fish.several && it.hi >= it.num &&
		it.hi <= mostScored && c.count == 0 {
		t.scored = &scored{name: c.fish.text, caught: int(it.num), rest: int(it.hi - it.num), at: c}
		return true
	} else if c.fish != nil && c.fish.text != "" {
		t.leave(clause{fish: c.fish, text: c.fish.text})
	}
	return false
}

// mostScored is the most bites of one fish that a score is taken apart for.
const mostScored = 20

// ofScore takes a clause for what became of fish that a score counted. It reports false where it is of others.
func (t *teller) ofScore(c clause) bool {
	s := t.scored
	if s == nil {
		return false
	}
	if c.fish != nil && c.fish.text != "" || c.score != nil || c.session != s.at.session || c.clock != nil ||
		c.join == aBreak && !c.many {
		t.flushScore()
		return false
	}
	from, n := &s.rest, max(c.count, 1)
	switch {
	case c.fate == words.Landed || c.fate == words.Released:
		if from = &s.caught; c.many || c.count == 0 && c.length+c.kg == 0 && !ofOne(c.text) {
			n = s.caught
		}
	case c.fate == words.Missed || c.fate == words.Lost:
		if c.many {
			n = s.rest
		}
	default:
		return false
	}
	if n == 0 || n > *from {
		return false
	}
	*from -= n
	s.told = true
	t.tellScored(n, c.fate, c)
	return true
}

// tellScored tells n bites of the score's fish.
func (t *teller) tellScored(n int, fate words.Fate, c clause) {
	if n == 0 {
		return
	}
	b := Bite{Session: c.session, Told: c.at, Method: t.scored.at.method}
	b.N, b.Fate, b.Name = n, fate, t.scored.name
	if fate == words.Lost {
		b.Cause = c.cause
	}
	b.measure(c)
	t.story.Bites, t.notes = append(t.story.Bites, b), append(t.notes, note{word: c.fateWord, counted: true})
	t.fresh = false
}

// flushScore tells of those that nothing more was said of: the others were caught, or bit.
func (t *teller) flushScore() {
	s := t.scored
	if s == nil {
		return
	}
	t.scored = nil
	if !s.told {
		t.leave(clause{fish: s.at.fish, text: s.name}) // what became of them is not told
		t.score(s.at.score)
		return
	}
	t.scored = s
	at := s.at
	at.kg, at.length, at.girth, at.clock, at.place = 0, 0, 0, nil, ""
	t.tellScored(s.caught, words.Landed, at)
	t.tellScored(s.rest, words.Bit, at)
	t.scored = nil
}

// ofOne tells words of one fish without a count: "let one go".
func ofOne(text string) bool {
	for _, t := range words.Scan(text) {
		if n, ok := words.Number(t.Text); ok && n == 1 {
			return true
		}
	}
	return false
}
