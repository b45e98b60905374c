package proof

import (
	"fmt"
	"math"
	"slices"
	"strconv"
	"strings"

	"wakeledger/pipeline/layout"
	"wakeledger/pipeline/phrase"
	"wakeledger/pipeline/plan"
	"wakeledger/pipeline/unit"
	"wakeledger/pipeline/words"
)

// overEdge tells a range of speeds, such as 7-8 kn or 8+, whose ends lie in two of the
// usual speed bands, or of which one end is open.
func overEdge(text string) bool {
	if lo, hi, err := unit.ParseRange(text, unit.Speed, unit.Knot, unit.MarkPoint); err == nil {
		a, errA := lo.In(unit.Knot)
		b, errB := hi.In(unit.Knot)
		return errA == nil && errB == nil && band(a) != band(b)
	}
	return strings.Contains(text, "+")
}

func band(v float64) int {
	n := 0
	for _, edge := range []float64{6, 8, 10, 12, 14, 16} {
		if v >= edge {
			n++
		}
	}
	return n
}

// summed are the meanings whose rows of totals are held against the rows.
var summed = map[string]bool{"duration_s": true, "line_hours": true, "strikes_n": true, "hooked_n": true,
	"landed_n": true, "kept_n": true, "released_n": true, "lost_n": true, "missed_n": true}

// sums holds rows of totals against the rows that they are the sums of, and asks where
// they differ.
func (q *inquiry) sums() {
	for i, s := range q.subjects {
		q.now = &q.subjects[i]
		for _, t := range s.Block.Totals {
			if label := strings.ToLower(labelOf(t)); strings.Contains(label, "average") ||
				strings.Contains(label, "per ") {
				continue
			}
			var off []differing
			for i := range s.Plan.Bindings {
				b := &s.Plan.Bindings[i]
				if !summed[b.Column.Name] || b.Index >= len(t.Cells) {
					continue
				}
				d, differs := q.sum(s, t, b, amount)
				if differs && b.Column.Name == "duration_s" { // a sheet's own sum passes over words
					_, differs = q.sum(s, t, b, plainAmount)
				}
				if differs {
					off = append(off, d)
				}
			}
			q.differ(s, t, off)
		}
	}
}

// differing is a total that is not the sum of its rows.
type differing struct {
	b    *plan.Binding
	cell string
	sum  float64
	left map[int]bool // by how many of the last rows it falls short
}

// sum holds one total of a row of them against its column, whose cells amount reads, and tells where they differ.
func (q *inquiry) sum(s Subject, total layout.Row, b *plan.Binding,
	amount func(b *plan.Binding, text string) (float64, bool)) (differing, bool) {
	want, ok := amount(b, total.Cells[b.Index].Text)
	if !ok {
		return differing{}, false
	}
	near := func(x float64) bool { return math.Abs(x-want) < 0.06+0.005*math.Abs(want) }
	above, here, before, trolled := 0.0, 0.0, 0.0, 0.0
	method, untrolled := s.Plan.Find("method"), map[int64]bool{}
	for _, num := range s.Stats.Untrolled {
		untrolled[num] = true
	}
	last := 0
	for _, t := range s.Block.Totals {
		if t.Num < total.Num {
			last = t.Num
		}
	}
	d := differing{b: b, cell: total.Cells[b.Index].Text, left: map[int]bool{}}
	var part []float64 // the sums from the last total down to each row
	for _, r := range s.Block.Rows {
		v := 0.0
		if b.Index < len(r.Cells) {
			v, _ = amount(b, r.Cells[b.Index].Text)
		}
		above += v
		if !otherMethod(method, r) && !untrolled[int64(r.Num)] {
			trolled += v
		}
		if r.Num < total.Num {
			before += v
			if r.Num > last {
				here += v
				part = append(part, here)
			}
		}
	}
	if near(above) || near(here) || near(before) || near(trolled) {
		q.log.Agreed = append(q.log.Agreed, fmt.Sprintf("%s: its total of %s, %s, is the sum of the rows",
			rowOf(s, total), b.Heading, short(want)))
		return d, false
	}
	for i, x := range part {
		if near(x) {
			d.left[len(part)-1-i] = true
		}
	}
	d.sum = here
	return d, true
}

// otherMethod tells a row whose method is another one than trolling.
func otherMethod(b *plan.Binding, r layout.Row) bool {
	if b == nil {
		return false
	}
	text := strings.ToLower(cellOf(r, b))
	if means := b.Codes[text]; means != "" {
		text = means
	}
	how, ok := words.Method(text)
	return ok && how != "troll"
}

// differ asks which is right where totals of one row are not the sums of theirs. Totals that
// all fall short by the same last rows were made before those: the rows stand, and that is told.
func (q *inquiry) differ(s Subject, total layout.Row, off []differing) {
	if len(off) == 0 {
		return
	}
	for n := range len(s.Block.Rows) {
		if len(off) > 1 && !slices.ContainsFunc(off, func(d differing) bool { return !d.left[n] }) {
			q.log.Agreed = append(q.log.Agreed, fmt.Sprintf(
				"%s: its totals are the sums of the rows without the last %d", rowOf(s, total), n))
			return
		}
	}
	var heads, keys, effect []string
	for _, d := range off {
		heads = append(heads, fmt.Sprintf("%s is %s, and the rows add up to %s", d.b.Heading, d.cell, short(d.sum)))
		keys = append(keys, d.b.Heading, d.cell)
		for _, e := range effectOf(d.b.Column.Name) {
			if !slices.Contains(effect, e) {
				effect = append(effect, e)
			}
		}
	}
	q.ask("total", s.Plan.Name, fmt.Sprintf("row %d", total.Num), fmt.Sprintf("%s: its total of %s. Which is right?",
		rowOf(s, total), some(heads)),
		[]string{"the rows", "the total"}, effect, keys...)
	q.last().Brief = fmt.Sprintf("A total of %q is not the sum of its rows.", off[0].b.Heading)
}

func short(x float64) string { return strconv.FormatFloat(math.Round(x*100)/100, 'f', -1, 64) }

// amount is a cell's figure; of a duration also where it is told by clock times or about.
func amount(b *plan.Binding, text string) (float64, bool) {
	v, ok := plainAmount(b, text)
	if ok || b.Column.Name != "duration_s" {
		return v, ok
	}
	if h, ok := phrase.HoursBetween(text); ok {
		return h, true
	}
	return phrase.HoursAbout(text)
}

// plainAmount is a cell's figure; of a duration also where it is written with its units.
func plainAmount(b *plan.Binding, text string) (float64, bool) {
	if n, ok := phrase.CountFish(text); ok && b.Column.Parse == "count" {
		return float64(n), true
	}
	if v, ok := figure(text); ok || b.Column.Name != "duration_s" {
		return v, ok
	}
	d, err := unit.ParseQuantity(text, b.Column.Dimension, unit.Hour, unit.MarkPoint)
	if err != nil {
		return 0, false
	}
	h, err := d.In(unit.Hour)
	return h, err == nil
}

func rowOf(s Subject, r layout.Row) string {
	return strings.TrimSpace(fmt.Sprintf("%s row %d", s.Plan.Name, r.Num))
}

func labelOf(r layout.Row) string {
	for _, c := range r.Cells {
		if c.Look == layout.Text {
			return c.Text
		}
	}
	return ""
}

func figure(text string) (float64, bool) {
	v, err := strconv.ParseFloat(strings.Replace(strings.TrimSpace(text), ",", ".", 1), 64)
	return v, err == nil
}
