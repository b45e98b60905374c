package meaning

import (
	"slices"

	"wakeledger/pipeline/layout"
	"wakeledger/pipeline/plan"
	"wakeledger/pipeline/words"
)

// laterSets finds columns of clock times of twelve hours, none past one o'clock by a clock of twenty-four, that are of
// the afternoon: their heading says so ("PM in"), or they are of a row's second or further stretch, and most would
// else have begun before the stretch beside them had ended.
func (x *builder) laterSets() {
	p := x.plan
	for i := range p.Bindings {
		b := &p.Bindings[i]
		if b.Column.Name != "start_s" && b.Column.Name != "end_s" || b.Index < 0 {
			continue
		}
		switch {
		case words.InAfternoon(b.Heading) && !x.pastOne(b):
			b.PM = true
			x.note("%s: times of the afternoon, as the heading says", b.Heading)
		case b.Set > 0 && b.Column.Name == "start_s" && x.beforeTheFirst(b):
			b.PM = true
			if e := p.OfSet("end_s", b.Set); e != nil {
				e.PM = true
			}
			x.note("%s: times of twelve hours without am or pm, read as of the afternoon: most would else be before "+
				"the stretch beside them", b.Heading)
		}
	}
}

// pastOne tells a column with a clock time past one by a clock of twenty-four hours.
func (x *builder) pastOne(b *plan.Binding) bool {
	return slices.ContainsFunc(x.block.Rows, func(row layout.Row) bool {
		c, ok := clock(x.group, row, b.Index)
		return ok && c >= 13*3600
	})
}

// fewLater is how many second stretches must begin before the first ended, by the clock as written, before all are
// of the afternoon.
const fewLater = 3

// beforeTheFirst tells starts of a further stretch that are before the end of the one beside it in most rows, and
// never past noon by more than an hour.
func (x *builder) beforeTheFirst(start *plan.Binding) bool {
	of := x.plan.OfSet("end_s", start.Set-1)
	end := x.plan.OfSet("end_s", start.Set)
	if of == nil || end == nil || x.pastOne(start) || x.pastOne(end) {
		return false
	}
	both, before := 0, 0
	for _, row := range x.block.Rows {
		a, okA := clock(x.group, row, of.Index)
		b, okB := clock(x.group, row, start.Index)
		if okA && okB {
			both++
			if b < a {
				before++
			}
		}
	}
	return before >= fewLater && 2*before > both
}
