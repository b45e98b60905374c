package proof

import (
	"fmt"
	"slices"
	"strings"

	"wakeledger/pipeline/layout"
	"wakeledger/pipeline/phrase"
	"wakeledger/pipeline/plan"
	"wakeledger/pipeline/words"
)

// fewRemarks is how many remarks of days without strikes tell of bites before it is asked.
const fewRemarks = 2

// remarked asks about remarks beside stretches that tell of bites on days of which the log's
// rows of strikes say nothing: somebody stopped to fill the other table.
func (q *inquiry) remarked(s Subject) {
	if s.Stats.Stretches == 0 || s.Stats.ByCount+s.Stats.Listed > 0 {
		return
	}
	told := q.strikeKeys()
	if len(told) == 0 {
		return
	}
	date := s.Plan.Find("date")
	days, rows := map[string]bool{}, 0 // that the rows of strikes tell of
	for _, r := range s.Block.Rows {
		for _, c := range r.Cells {
			if told[strings.ToLower(strings.TrimSpace(c.Text))] {
				days[cellOf(r, date)] = true
				rows++
				break
			}
		}
	}
	if rows < 3 {
		return // the tables have no key by which one tells of the other
	}
	n, first := 0, ""
	for _, r := range s.Block.Rows {
		for _, b := range s.Plan.Bindings {
			if b.Column.Name != "notes" || days[cellOf(r, date)] || b.Index < 0 || b.Index >= len(r.Cells) {
				continue
			}
			bites := phrase.Tell(r.Cells[b.Index].Text, phrase.Defaults{}).Bites
			if slices.ContainsFunc(bites, func(x phrase.Bite) bool { return x.Fate > words.FateUnknown }) {
				if n++; first == "" {
					first = r.Cells[b.Index].Text
				}
			}
		}
	}
	if n < fewRemarks {
		return
	}
	q.ask("remarks", s.Plan.Name, "remarks", fmt.Sprintf("%s of bites on days of which the rows of "+
		"strikes say nothing, the first %q. They are not counted: write them with the other strikes, or leave them.",
		subject(n, "remark", "tell", s.Plan.Name), first), nil, listing)
	q.last().Brief = "Remarks tell of bites that no row of strikes has: they are not counted."
}

// bitesRemarked asks about remarks beside stretches that say how many bites there were, on days of which no row tells a
// bite: "he told me: 4 bites, 3 on".
func (q *inquiry) bitesRemarked(s Subject) {
	if s.Stats.Stretches == 0 || s.Stats.ByCount+s.Stats.Listed > 0 || len(q.struck) == 0 {
		return
	}
	days, elsewhere := map[int64]string{}, map[string]bool{}
	for _, w := range s.Stats.Worked {
		days[w.Row] = w.Day
	}
	for _, o := range q.book {
		for key := range o.Stats.Told {
			elsewhere[key] = elsewhere[key] || o.Stats != s.Stats
		}
	}
	n, first := 0, ""
	for _, r := range s.Block.Rows {
		day, text := days[int64(r.Num)], remarksOf(&s, r)
		if day == "" || elsewhere[day] || elsewhere["day "+day] || phrase.Tell(text, phrase.Defaults{}).Strikes < 1 {
			continue
		}
		if n++; first == "" {
			first = text
		}
	}
	if n > 0 && !slices.ContainsFunc(q.out, func(x Question) bool {
		return x.Kind == "remarks" && x.Sheet == s.Plan.Name
	}) {
		q.ask("remarks", s.Plan.Name, "bites", fmt.Sprintf("%s how many bites there were, on days of which no row "+
			"tells any, the first %q. They are not counted: write them with the other strikes, or leave them.",
			subject(n, "remark", "say", s.Plan.Name), first), nil, listing)
		q.last().Brief = "Remarks say how many bites there were: they are not counted."
	}
}

// letGoRemarks asks about remarks of fish that were let go, beside a count of those in the boat that does not tell
// these apart, where no list has as many let go on that day and the remark does not say that the row counts them.
func (q *inquiry) letGoRemarks(s Subject) {
	notes := s.Plan.Find("notes")
	if s.Plan.Kind != plan.Flat || notes == nil || notes.Column.Parse != "text" || s.Plan.Freed ||
		!s.Plan.Binds("landed_n") || s.Plan.Binds("released_n", "kept_n", "kept", "outcome") || len(s.Plan.Catch) > 0 {
		return
	}
	freed := map[string]int{}
	for _, o := range q.subjects {
		for key, told := range o.Stats.Told {
			freed[key] += told.Freed
		}
	}
	days := map[int64]string{}
	for _, w := range s.Stats.Worked {
		days[w.Row] = w.Day
	}
	n, first := 0, ""
	for _, r := range s.Block.Rows {
		day := days[int64(r.Num)]
		if day == "" || notes.Index < 0 || notes.Index >= len(r.Cells) {
			continue
		}
		text := r.Cells[notes.Index].Text
		told := letGoTold(phrase.OfCount(text, int(figureOf(r, s.Plan.Find("landed_n")))))
		if told > max(freed["day "+day], freed[day]) && !full(r, s.Plan) {
			if n++; first == "" {
				first = text
			}
		}
	}
	if n > 0 {
		q.ask("remarks", s.Plan.Name, "let go", fmt.Sprintf("%s of fish let go that no count and no list "+
			"tells apart, the first %q. They are read as counted: give those let go a column of their own, or "+
			"leave them.",
			subject(n, "remark", "tell", s.Plan.Name), first), nil,
			[]string{"strikes", "landed", "released", "fish"})
		q.last().Brief = "Remarks tell of fish let go that no count tells apart."
	}
}

// full reports whether a row tells what became of all the bites that it counts: what a remark says was let go is among
// those in the boat.
func full(r layout.Row, p *plan.Block) bool {
	bites, ok := figure(cellOf(r, p.Find("strikes_n")))
	told := 0.0
	for _, name := range []string{"landed_n", "lost_n", "missed_n"} {
		told += figureOf(r, p.Find(name))
	}
	return ok && told == bites
}

// figureOf is the figure of a row's cell; 0 where it has none.
func figureOf(r layout.Row, b *plan.Binding) float64 {
	v, _ := figure(cellOf(r, b))
	return v
}

// letGoTold is how many fish a remark says were let go, where it does not say that the row counts them.
func letGoTold(text string) int {
	if phrase.Counted(text) || words.Otherwise(text) {
		return 0
	}
	n := 0
	for _, b := range phrase.Tell(text, phrase.Defaults{}).Bites {
		if b.Fate == words.Released {
			n += max(1, b.N)
		}
	}
	return n
}

// measuredRemarks asks about remarks that tell how long or heavy a fish was, beside counts of fish
// of days of which the log lists no fish elsewhere.
func (q *inquiry) measuredRemarks(s Subject) {
	if s.Stats.ByCount == 0 {
		return
	}
	listed := map[string]bool{} // days of which fish are listed elsewhere, by a table with measures
	for _, o := range q.subjects {
		for key, told := range o.Stats.Told {
			listed[key] = listed[key] || told.Listed.Held > 0 && o.Stats.Measures > 0
		}
	}
	days := map[int64]string{}
	for _, w := range s.Stats.Worked {
		days[w.Row] = w.Day
	}
	n, first := 0, ""
	for _, r := range s.Block.Rows {
		if day := days[int64(r.Num)]; day == "" || listed["day "+day] || listed[day] {
			continue
		}
		for _, b := range s.Plan.Bindings {
			if b.Column.Name != "notes" || b.Column.Parse != "text" || b.Measured ||
				b.Index < 0 || b.Index >= len(r.Cells) {
				continue
			}
			text := r.Cells[b.Index].Text
			if fish := phrase.FishList(text, phrase.Defaults{}); slices.ContainsFunc(fish,
				func(f phrase.Fish) bool { return f.LengthCm+f.Kg > 0 && !f.Guess }) { // a guess is no measure
				if n++; first == "" {
					first = text
				}
			}
		}
	}
	if n > 0 {
		q.ask("measured remarks", s.Plan.Name, "remarks", fmt.Sprintf("%s how long or heavy a fish was, "+
			"the first %q. They are not used: give these fish a table of their own, or leave them.",
			subject(n, "remark", "tell", s.Plan.Name), first), nil, []string{"fish"})
		q.last().Brief = "Remarks tell how long or heavy fish were: they are not used."
	}
}

// strikeKeys are the days, trips and stretches that rows of strikes name.
func (q *inquiry) strikeKeys() map[string]bool {
	told := map[string]bool{}
	for _, s := range q.subjects {
		if s.Plan.Kind != plan.Strikes || s.Stats.Listed == 0 {
			continue
		}
		for _, r := range s.Block.Rows {
			for i := range s.Plan.Bindings {
				b := &s.Plan.Bindings[i]
				if slices.Contains([]string{"date", "trip", "leg"}, b.Column.Name) && len(cellOf(r, b)) > 1 {
					told[cellOf(r, b)] = true
				}
			}
		}
	}
	return told
}
