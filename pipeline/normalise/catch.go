package normalise

import (
	"wakeledger/pipeline/entry"
	"wakeledger/pipeline/plan"
	"wakeledger/pipeline/record"
)

// caught adds up the counts of columns that are headed by a species.
func (r *Reader) caught() {
	if r.catch < 0 && r.freed < 0 {
		return
	}
	sum, known := int64(0), false
	released := int64(0)
	for _, c := range r.layout.Catch {
		text := ""
		if c.Index < len(r.row.Cells) {
			text = trimmed(r.row.Cells[c.Index])
		}
		if r.words.blank(text) {
			continue
		}
		v, ok := plainNumber(text)
		if !ok || v != float64(int64(v)) || v > 200 {
			p := r.pos
			p.Row, p.Col = r.row.Num, c.Index+1
			r.problems = append(r.problems, record.Problem{Pos: p, Column: c.Heading, Cell: text, Reason: "not a count: expected a whole number from 0 to 200"})
			continue
		}
		if known = true; c.Fate == "released" && r.freed >= 0 {
			released += int64(v)
		} else if c.Fate != "lost" {
			sum += int64(v)
		}
	}
	if known && r.freed >= 0 {
		r.values[r.freed] = entry.OfInt(released)
	}
	if r.catch >= 0 && (known || r.layout.CatchBlank) {
		r.values[r.catch] = entry.OfInt(sum)
	}
}

// measured holds that of several strikes, of which nothing else is counted, one was
// landed where the row has a fish's weight or length.
func (r *Reader) measured() {
	s := &r.slots
	if r.layout.Kind != plan.Flat || s.landed < 0 || r.at(s.strikes).Int < 2 || r.at(s.hooked).Known || r.at(s.landed).Known || r.at(s.released).Known {
		return
	}
	kept := r.value("kept")
	if (r.value("scale_kg").Known || r.value("length_cm").Known) && !r.value("outcome").Known && (!kept.Known || kept.Int == 1) {
		r.values[s.landed] = entry.OfInt(1)
	}
}
