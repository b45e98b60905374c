package normalise

import (
	"strings"

	"wakeledger/pipeline/entry"
	"wakeledger/pipeline/phrase"
	"wakeledger/pipeline/plan"
	"wakeledger/pipeline/unit"
	"wakeledger/pipeline/words"
)

// spell is what a row of a log of events tells of a whole stretch, as a hand in a hurry writes
// it: "0710-1345" for its time, "1 wahoo in the box, lost 1" for what happened, "9, 23" for the
// weights of the fish boated.
type spell struct {
	timed      bool
	start, end phrase.Clock
	weights    []float64 // kg
}

// whole takes a cell of a log of events that tells of a whole stretch. It reports whether it does.
func (r *Reader) whole(t *target, text string) bool {
	x := &r.spell
	switch t.Column.Name {
	case "time_s":
		x.start, x.end, x.timed = phrase.Span(text)
		return x.timed
	case "scale_kg":
		return r.weightsOf(t, text)
	}
	return false
}

// weightsOf takes a cell of several weights.
func (r *Reader) weightsOf(t *target, text string) bool {
	r.spell.weights = r.measuresIn(t, text, ",;&/+")
	return r.spell.weights != nil
}

// measuresIn are the measures of a cell of several, with those marks between them, in the
// column's unit; nil where it is none.
func (r *Reader) measuresIn(t *target, text, marks string) []float64 {
	parts := strings.FieldsFunc(text, func(c rune) bool { return strings.ContainsRune(marks, c) })
	if len(parts) < 2 {
		return nil
	}
	var all []float64
	for _, p := range parts {
		q, err := unit.ParseQuantity(strings.TrimSpace(p), t.Column.Dimension, r.fallback(t), r.mark())
		if err != nil {
			return nil
		}
		v, err := q.In(t.Column.Unit)
		if err != nil || v < t.Column.Min || v > t.Column.Max {
			return nil
		}
		all = append(all, v)
	}
	return all
}

// wholeStretch takes a row that tells of a whole stretch: its hours, and its bites at its speed.
// Weights go to the fish boated, in their order, where they are as many.
func (r *Reader) wholeStretch(t *target, text string) {
	start, end := int64(r.spell.start.Seconds), int64(r.spell.end.Seconds)
	if end <= start {
		r.twelve(&start, &end)
	}
	speed, lines := r.setting(text)
	leg := map[string]entry.Value{"start_s": entry.OfInt(start), "end_s": entry.OfInt(end)}
	if speed.Known {
		leg["speed_kn"] = speed
	}
	if lines.Known {
		leg["lines_out"] = lines
	}
	r.beside(plan.Legs, leg)
	r.events.fished = true
	if words.Otherwise(text) {
		return
	}
	told := phrase.Tell(text, r.defaults(t))
	for _, left := range told.Left {
		r.aside = append(r.aside, r.problem(t, left, "speaks of fish or bites in words that were not understood"))
	}
	row := r.copyOf()
	delete(row, "speed_kn")
	delete(row, "lines_out")
	if speed.Known {
		row["strike_speed_kn"] = speed
	}
	var boated []map[string]entry.Value
	for _, b := range told.Bites {
		for range max(b.N, 1) {
			v := r.ofBite(t, row, b, len(told.Bites) == 1 && b.N <= 1)
			r.beside(plan.Strikes, v)
			if b.Fate == words.Landed {
				boated = append(boated, v)
			}
		}
	}
	if kgs := r.spell.weights; len(kgs) != len(boated) {
		if len(kgs) > 0 {
			r.aside = append(r.aside, r.problem(t, text, "not as many weights as fish boated"))
		}
	} else {
		for i, kg := range kgs {
			boated[i]["scale_kg"] = entry.OfReal(kg)
		}
	}
}
