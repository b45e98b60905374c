package proof

import (
	"fmt"
	"math"
	"slices"

	"wakeledger/pipeline/layout"
	"wakeledger/pipeline/meaning"
)

// leastAnchor is from which figure on one that is the same in a summary and in what was read shows that
// the summary is of these rows.
const leastAnchor = 5

// summaries holds forms that sum the season up ("Line-hours | 398.5") against what was read: where one of
// a form's figures is what was read, hours, line-hours and bites that are not are asked about.
func (q *inquiry) summaries() {
	for _, u := range q.log.Blocks {
		p := u.Plan
		form := u.Block.Shape == layout.Form && len(u.Block.Rows) == 1 && (p.Kind == "" || u.Proof)
		if !form || p.Binds("date", "start_s", "end_s", "time_s") {
			continue
		}
		anchored := false
		var off []differing
		for i := range p.Bindings {
			b := &p.Bindings[i]
			if b.Index < 0 || b.Index >= len(u.Block.Rows[0].Cells) || !summed[b.Column.Name] {
				continue
			}
			cell := u.Block.Rows[0].Cells[b.Index].Text
			want, ok := amount(b, cell)
			if !ok || want < leastAnchor {
				continue
			}
			near := func(x float64) bool { return math.Abs(x-want) < 0.06+0.005*want }
			switch read := q.read(b.Column.Name); {
			case slices.ContainsFunc(read, near):
				anchored = true
				where := rowOf(Subject{Understood: u}, u.Block.Rows[0])
				q.log.Agreed = append(q.log.Agreed, fmt.Sprintf("%s: its %s, %s, is what was read",
					where, b.Heading, short(want)))
			case len(read) == 1 && read[0] > 0:
				off = append(off, differing{b: b, cell: cell, sum: read[0]})
			}
		}
		if anchored && len(off) > 0 {
			q.unlike(u, off)
		}
	}
}

// unlike asks which is right where a summary is not what was read.
func (q *inquiry) unlike(u *meaning.Understood, off []differing) {
	var heads, keys, effect []string
	for _, d := range off {
		heads = append(heads, fmt.Sprintf("%s is %s, and I read %s", d.b.Heading, d.cell, short(d.sum)))
		keys = append(keys, d.b.Heading, d.cell)
		of := effectOf(d.b.Column.Name)
		if d.b.Column.Name == "line_hours" {
			of = lines
		}
		for _, e := range of {
			if !slices.Contains(effect, e) {
				effect = append(effect, e)
			}
		}
	}
	q.ask("summary", u.Plan.Name, "your totals", fmt.Sprintf("In your summary %s. Which is right?", some(heads)),
		[]string{"what was read", "the summary"}, effect, keys...)
	q.last().Brief = "Totals of a summary are not what was read."
}

// read is what was read of a total; several figures where a log may mean either by it.
func (q *inquiry) read(name string) []float64 {
	var t Stats
	for _, s := range q.subjects {
		if s.Plan.Among || s.Plan.NoStrikes {
			continue
		}
		t.Hours += s.Stats.Hours
		t.LineHours += s.Stats.LineHours
		t.Strikes += s.Stats.Strikes
		t.Hooked += s.Stats.Hooked + s.Stats.Held
		t.Landed += s.Stats.Landed + s.Stats.Boated
		t.Released += s.Stats.Released + s.Stats.Freed
	}
	landed, released := float64(t.Landed), float64(t.Released)
	switch name {
	case "duration_s":
		return []float64{t.Hours}
	case "line_hours":
		return []float64{t.LineHours}
	case "strikes_n":
		return []float64{float64(t.Strikes)}
	case "hooked_n":
		return []float64{float64(t.Hooked), -1}
	case "landed_n", "kept_n":
		return []float64{landed, landed - released}
	case "released_n":
		return []float64{released, -1}
	}
	return nil
}
