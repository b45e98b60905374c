package phrase

import (
	"slices"
	"strings"

	"wakeledger/pipeline/words"
)

// totals takes a count of bites or hooked fish that others of the session break down for
// the total that it is: "5 bites: 2 missed, 1 lost" leaves two bites of which no more is told.
func (t *teller) totals() {
	bites, told, sum, first := t.story.Bites, 0, 0, 0
	if len(bites) > 0 {
		first = bites[0].N
	}
	for i := len(bites) - 1; i >= 0; i-- {
		b := &bites[i]
		plain := (b.At == nil && b.Place == "" || b.N > 1) && b.Kg+b.LengthCm == 0
		if b.Fate == words.Bit && plain && t.notes[i].counted {
			told += b.N
		}
		if plain && b.Fate == words.Hooked && t.notes[i].tells && t.before(i) == b.N {
			b.N = 0 // one aboard and two lost at once (three on)
			continue
		}
		total := b.Fate == words.Bit || b.Fate == words.Hooked || b.Fate == words.FateUnknown && b.Name == "" && b.N > 1
		if n := t.named(i); n > 0 && n <= b.N {
			b.N -= n
			continue
		}
		if t.notes[i].counted && b.N > 1 && strings.HasPrefix(t.notes[i].word, "knock") && i+1 < len(t.notes) &&
			t.notes[i+1].word == "stuck" {
			total = true // two knockdowns, one stuck
		}
		if !plain || !total {
			continue
		}
		if parts := t.parts(i); parts > 0 && parts <= b.N {
			b.N -= parts
		}
	}
	t.overcounted(first)
	bites = slices.DeleteFunc(bites, func(b Bite) bool { return b.N == 0 })
	for _, b := range bites {
		sum += b.N
	}
	if t.story.Bites = bites; t.story.Strikes < 0 && told > 0 && sum <= told {
		t.story.Strikes = told
	}
}

// before counts the bites whose end is told in the session that are told before bite i.
func (t *teller) before(i int) int {
	n := 0
	for _, o := range t.story.Bites[:i] {
		if o.Session == t.story.Bites[i].Session && (o.Fate >= words.Landed || o.Kg+o.LengthCm > 0) {
			n += o.N
		}
	}
	return n
}

// overcounted takes a count of bites with which a text begins, first of them, for its total also
// where more are told behind it: the difference is for the user to settle.
func (t *teller) overcounted(first int) {
	if len(t.story.Bites) < 2 || t.story.Strikes >= 0 || t.story.Bites[0].N != first {
		return
	}
	b, sum := &t.story.Bites[0], 0
	for _, o := range t.story.Bites[1:] {
		if o.Session == b.Session {
			sum += o.N
		}
	}
	alone := b.At == nil && b.Place == "" && b.Name == "" && b.Kg+b.LengthCm == 0
	if b.Fate == words.Bit && alone && t.notes[0].counted && sum > first {
		t.story.Strikes, b.N = first, 0
	}
}

// named counts the fish by name that break a count of nameless ones of their fate down:
// "2 in the boat: bluefin 55 in, bluefin 48 in".
func (t *teller) named(i int) int {
	b, n := t.story.Bites[i], 0
	if b.Name != "" || b.Fate != words.Landed && b.Fate != words.Released || i+1 >= len(t.notes) ||
		!t.notes[i].counted || !t.notes[i+1].tells {
		return 0
	}
	for j := i + 1; j < len(t.story.Bites) && (t.story.Bites[j].Fate == b.Fate || t.story.Bites[j].Fate == 0) &&
		t.story.Bites[j].Name != ""; j++ {
		n += t.story.Bites[j].N
	}
	return n
}

// parts counts the bites behind bite i that may be among those it counts, up to the next
// count of its kind.
func (t *teller) parts(i int) int {
	b, n := t.story.Bites[i], 0
	for j := i + 1; j < len(t.story.Bites); j++ {
		o := &t.story.Bites[j]
		if o.Session != b.Session || o.Fate == b.Fate && o.Name == b.Name && o.At == nil &&
			o.Place == "" && o.Kg+o.LengthCm == 0 {
			break
		}
		if b.Fate == words.FateUnknown && o.Fate != words.Landed && o.Fate != words.Released &&
			o.Fate != words.FateUnknown || b.Fate == words.Hooked && (o.Fate == words.Bit || o.Fate == words.Missed) ||
			b.Name != "" && o.Name != "" && o.Name != b.Name {
			continue
		}
		if o.Name == "" && b.Name != "" {
			o.Name = b.Name
		}
		n += o.N
	}
	return n
}

// totalOfBites tells a count of bites of which fish that are named behind it came: what is said of all the fish is not
// said of it. "5 strikes for 3 mahi, all kept".
func (t *teller) totalOfBites(i int) bool {
	b := t.story.Bites[i]
	return b.Fate == words.Bit && b.Name == "" && t.notes[i].counted && b.N > 1 &&
		slices.ContainsFunc(t.story.Bites[i+1:], func(o Bite) bool { return o.Name != "" && o.Session == b.Session })
}
