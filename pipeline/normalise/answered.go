package normalise

import (
	"slices"

	"wakeledger/pipeline/entry"
	"wakeledger/pipeline/plan"
	"wakeledger/pipeline/sheet"
)

// asSaid is a row with the cells that the log's owner told in place of its own, what a day counts beyond the rows under
// it, and its day where that is told by the row above.
func (r *Reader) asSaid(row *sheet.Row) *sheet.Row {
	said := row
	for _, cells := range []map[plan.Cell]string{r.layout.Days, r.layout.Rest, r.layout.Cells} {
		for at, text := range cells {
			if at.Row != int64(row.Num) {
				continue
			}
			if said == row {
				c := *row
				c.Cells = slices.Clone(row.Cells)
				said = &c
			}
			for len(said.Cells) <= at.Index {
				said.Cells = append(said.Cells, "")
			}
			said.Cells[at.Index] = text
		}
	}
	return said
}

// answered does what the log's owner said of whole blocks: that their own hours stand, or
// that their strikes are told better elsewhere.
func (r *Reader) answered() Skip {
	if r.layout.OwnHours {
		s, e, h := r.at(r.slots.start), r.at(r.slots.end), r.at(r.slots.duration)
		if s.Known && e.Known && h.Known {
			r.values[r.index["stopped_s"]] = entry.OfReal(float64(e.Int-s.Int) - h.Real)
		}
	}
	if !r.layout.NoStrikes {
		return NotASkip
	}
	if r.layout.Kind == plan.Strikes || r.layout.Kind == plan.Fish {
		return Told
	}
	r.side = slices.DeleteFunc(r.side, func(x Side) bool { return x.Kind == plan.Strikes || x.Kind == plan.Fish })
	for _, name := range strikeFields {
		if i, ok := r.index[name]; ok {
			r.values[i] = entry.Value{}
		}
	}
	if !r.effort() && len(r.side) == 0 {
		return Told
	}
	return NotASkip
}

// strikeFields are those that tell of strikes and fish, and of nothing else.
var strikeFields = []string{"strikes_n", "hooked_n", "landed_n", "released_n", "lost_n", "missed_n", "outcome",
	"species", "species_logged", "time_s",
	"loss_cause", "fight_s", "kept", "length_cm", "girth_cm", "scale_kg", "strike"}
