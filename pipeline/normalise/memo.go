package normalise

import (
	"wakeledger/pipeline/entry"
	"wakeledger/pipeline/unit"
)

// memo is what the cell above was read as. In a log most cells say what the one
// above says (the trip, the date, the lure), and need not be read again.
type memo struct {
	text   string
	done   bool // the evidence was complete
	value  entry.Value
	beside entry.Value
	moment unit.Moment
	next   bool // of the day after
	on     int  // of a weekday
}

// recall reads a cell as the one above where their texts are the same and the
// file's evidence has not grown since.
func (t *target) recall(r *Reader, text string) bool {
	if text != t.memo.text || t.memo.done != r.ev.done || r.forgetful {
		return false
	}
	if t.Column.Parse == "moment" {
		r.moments = append(r.moments, placed{t.field, t.memo.moment, t.memo.next, t.memo.on})
		return true
	}
	r.values[t.field] = t.memo.value
	if t.beside >= 0 {
		r.values[t.beside] = t.memo.beside
	}
	return true
}

// said is how much a row has said so far, by cells read and yet to be told apart.
type said struct {
	fields, moments, side, doubts, aside, several, worded, each, like, unweighed int
	nothing, elsewise, livebait                                                  bool
}

// saidBut is what a row has said beyond a target's own fields.
func (r *Reader) saidBut(t *target) said {
	x := said{moments: len(r.moments), side: len(r.side), doubts: len(r.doubts), aside: len(r.aside),
		several: len(r.several), worded: len(r.worded), each: len(r.each), like: r.like,
		unweighed: r.unweighed, nothing: r.nothing, elsewise: r.elsewise, livebait: r.livebait}
	if t.Column.Parse == "moment" {
		x.moments = 0
	}
	for i := range r.values {
		if r.values[i].Known && i != t.field && i != t.beside {
			x.fields++
		}
	}
	return x
}

// remember keeps what a cell was read as; text is not blank, and said nothing beyond the target's
// own fields.
func (t *target) remember(r *Reader, text string) {
	t.memo.text, t.memo.done = text, r.ev.done
	if t.Column.Parse == "moment" {
		last := r.moments[len(r.moments)-1]
		t.memo.moment, t.memo.next, t.memo.on = last.m, last.next, last.on
		return
	}
	if t.memo.value = r.values[t.field]; !t.memo.value.Known && t.beside < 0 {
		t.memo.text = "" // it said something of another field
	}
	if t.beside >= 0 {
		t.memo.beside = r.values[t.beside]
	}
}
