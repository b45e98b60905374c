package proof

import (
	"fmt"

	"wakeledger/pipeline/layout"
	"wakeledger/pipeline/plan"
	"wakeledger/pipeline/words"
)

// fewUnpaced is up to which share of the stretches of a table may have no speed for the others to be the way of the
// log.
const fewUnpaced = 0.25

// unpaced asks about stretches without a speed, where nearly all others have one, whose remarks name another way of
// fishing: their hours and what they count may be of that one.
func (q *inquiry) unpaced(s Subject) {
	speed, notes := s.Plan.Find("speed_kn"), s.Plan.Find("notes")
	if s.Plan.Kind != plan.Flat && s.Plan.Kind != plan.Legs || s.Stats.Stretches == 0 || speed == nil || notes == nil ||
		notes.Column.Parse != "text" || s.Plan.Binds("method") {
		return
	}
	hours := s.Stats.worked()
	paced, first := 0, ""
	var rows []int64
	for _, r := range s.Block.Rows {
		text := textOf(r, notes)
		switch {
		case cellOf(r, speed) != "":
			paced++
		case otherFishing(text) && hours[int64(r.Num)]:
			if rows = append(rows, int64(r.Num)); first == "" {
				first = text
			}
		}
	}
	if len(rows) == 0 || float64(len(rows)) > fewUnpaced*float64(paced) {
		return
	}
	q.ask("untrolled", s.Plan.Name, notes.Heading, fmt.Sprintf("%s no speed, and the remarks speak of another way of "+
		"fishing, the first: %q. Were these hours trolled?", subject(len(rows), "row", "have", s.Plan.Name), first),
		[]string{"no, leave them out", "yes, count them"}, all, first)
	x := q.last()
	x.Brief, x.Choices, x.left = "Some stretches may have been fished in another way: were they trolled?",
		[]string{leaveOut, "yes"}, []left{{s.Understood, rows}}
}

// otherFishing tells a remark that names another way of fishing, or says that the boat lay still.
func otherFishing(text string) bool {
	how, ok := words.Method(text)
	return ok && how != "troll" && how != "kite" || words.NamesOther(text)
}

// textOf is what a row says under a binding, as it is written.
func textOf(r layout.Row, b *plan.Binding) string {
	if b.Index < 0 || b.Index >= len(r.Cells) {
		return ""
	}
	return r.Cells[b.Index].Text
}
