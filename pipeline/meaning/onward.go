package meaning

import (
	"cmp"
	"fmt"
	"slices"
	"strings"

	"wakeledger/pipeline/layout"
	"wakeledger/pipeline/phrase"
	"wakeledger/pipeline/plan"
)

// stripOnward takes the lines of words out of a table that say how the boat trolls from there on, "down to 5 lines, the
// holder cracked": they hold for the rows below until the next one says otherwise. Below the last of its days such a
// line is of no row, and where there are as many of them as rows each is of the row above it.
func stripOnward(b *layout.Block, s *layout.Sheet) {
	if b.Shape != layout.Table || b.Open {
		return
	}
	days, first, last := 0, 0, 0
	for i := range b.Rows {
		if r := &b.Rows[i]; timed(r) {
			if days++; first == 0 {
				first = r.Num
			}
			last = r.Num
		}
	}
	var found []layout.Note
	for i := range b.Rows {
		if r := &b.Rows[i]; r.Num < last && loneText(r) {
			if text := firstText(*r); saysOnward(text) {
				found = append(found, layout.Note{Row: r.Num, Text: text})
			}
		}
	}
	for _, n := range s.Notes { // that the table was taken to be without
		if first < n.Row && n.Row < last && saysOnward(n.Text) &&
			!slices.ContainsFunc(found, func(o layout.Note) bool { return o.Row == n.Row }) {
			found = append(found, n)
		}
	}
	slices.SortFunc(found, func(x, y layout.Note) int { return x.Row - y.Row })
	if len(found) == 0 || days == 0 || found[0].Row > first && 2*len(found) > days ||
		len(found) == 1 && phrase.Settings(found[0].Text).Usual {
		return
	}
	taken := func(row int) bool {
		return slices.ContainsFunc(found, func(n layout.Note) bool { return n.Row == row })
	}
	b.Onward = append(b.Onward, found...)
	b.Rows = slices.DeleteFunc(b.Rows, func(r layout.Row) bool { return taken(r.Num) })
	s.Notes = slices.DeleteFunc(s.Notes, func(n layout.Note) bool { return n.Row > 0 && taken(n.Row) })
}

func saysOnward(text string) bool {
	_, ok := phrase.Onwards(text)
	return ok && !statesDay(text)
}

// notKnown stands for a setting of which nothing is known.
const notKnown = "-"

// onward gives the rows what the lines of words above them say of how the boat trolls, where they say nothing of it
// themselves.
func (x *builder) onward(t *Lexicon) {
	var lines, speeds []plan.Since
	out := 0 // lines, where their number is known
	for _, n := range x.block.Onward {
		o, _ := phrase.Onwards(n.Text)
		if out = max(out, 0); o.Lines > 0 || o.By != 0 && out > 0 {
			out = cmp.Or(o.Lines, out+o.By)
		}
		if o.Lines > 0 || o.By != 0 {
			text := notKnown
			if out > 0 {
				text = short(float64(out))
			}
			lines = append(lines, plan.Since{Row: int64(n.Row), Text: text})
		}
		switch {
		case o.Speed > 0:
			speeds = append(speeds, plan.Since{Row: int64(n.Row), Text: short(o.Speed) + " kn"})
		case o.Paced && len(speeds) > 0:
			speeds = append(speeds, plan.Since{Row: int64(n.Row), Text: notKnown})
		}
	}
	x.since("lines out", t.named("lines_out", ""), lines)
	x.since("speed", t.named("speed_kn", ""), speeds)
}

// since adds to what is usual what holds from some rows on.
func (x *builder) since(label string, c *plan.Column, said []plan.Since) {
	if c == nil || len(said) == 0 || !c.In(x.plan.Kind) {
		return
	}
	i := slices.IndexFunc(x.plan.Given, func(g plan.Given) bool { return g.Column.Name == c.Name })
	if i < 0 {
		i = len(x.plan.Given)
		x.plan.Given = append(x.plan.Given, plan.Given{Heading: label, Column: c, Text: notKnown, Default: true})
	}
	if !x.plan.Given[i].Default {
		return
	}
	x.plan.Given[i].Since = said
	var parts []string
	for _, s := range said {
		text := s.Text
		if text == notKnown {
			text = "not known"
		}
		parts = append(parts, fmt.Sprintf("%s from row %d on", text, s.Row))
	}
	x.note("%s, as lines among the rows say: %s", label, strings.Join(parts, ", "))
}
