package proof

import (
	"fmt"
	"math"
	"strconv"
	"strings"

	"wakeledger/pipeline/layout"
	"wakeledger/pipeline/plan"
	"wakeledger/pipeline/unit"
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
var summed = map[string]bool{"duration_s": true, "line_hours": true, "strikes_n": true, "hooked_n": true, "landed_n": true, "kept_n": true, "released_n": true, "lost_n": true, "missed_n": true}

// sums holds rows of totals against the rows that they are the sums of, and asks where
// they differ.
func (q *inquiry) sums() {
	for i, s := range q.subjects {
		q.now = &q.subjects[i]
		for _, t := range s.Block.Totals {
			for i := range s.Plan.Bindings {
				b := &s.Plan.Bindings[i]
				if summed[b.Column.Name] && b.Index < len(t.Cells) {
					q.sum(s, t, b)
				}
			}
		}
	}
}

func (q *inquiry) sum(s Subject, total layout.Row, b *plan.Binding) {
	want, ok := figure(total.Cells[b.Index].Text)
	if !ok || strings.Contains(strings.ToLower(labelOf(total)), "average") || strings.Contains(strings.ToLower(labelOf(total)), "per ") {
		return
	}
	above, here, before := 0.0, 0.0, 0.0
	last := 0
	for _, t := range s.Block.Totals {
		if t.Num < total.Num {
			last = t.Num
		}
	}
	for _, r := range s.Block.Rows {
		v := 0.0
		if b.Index < len(r.Cells) {
			v, _ = figure(r.Cells[b.Index].Text)
		}
		above += v
		if r.Num < total.Num {
			before += v
			if r.Num > last {
				here += v
			}
		}
	}
	for _, x := range []float64{above, here, before} {
		if math.Abs(x-want) < 0.06+0.005*math.Abs(want) {
			q.log.Agreed = append(q.log.Agreed, fmt.Sprintf("%s: its total of %s, %s, is the sum of the rows", rowOf(s, total), b.Heading, strconv.FormatFloat(math.Round(want*100)/100, 'f', -1, 64)))
			return
		}
	}
	q.ask("total", s.Plan.Name, fmt.Sprintf("row %d", total.Num), fmt.Sprintf("%s: its total of %s is %s, and the rows add up to %s. Which is right?", rowOf(s, total), b.Heading,
		total.Cells[b.Index].Text, strconv.FormatFloat(here, 'f', -1, 64)), []string{"the rows", "the total"}, effectOf(b.Column.Name), b.Heading, total.Cells[b.Index].Text)
	q.last().Brief = fmt.Sprintf("A total of %q is not the sum of its rows.", b.Heading)
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
