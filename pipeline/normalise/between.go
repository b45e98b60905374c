package normalise

import (
	"fmt"
	"math"
	"slices"
	"strconv"
	"strings"

	"wakeledger/pipeline/entry"
	"wakeledger/pipeline/unit"
)

// maxBetween is how many knots a speed's two ends may be apart for its middle to
// stand for it: the width of a usual class of speeds (common practice, no source).
const maxBetween = 2

// between takes the middle of a speed such as "7-8 kn", or no speed where its ends
// are far apart, and says so.
func (r *Reader) between(t *target, text string) error {
	c := t.Column
	lo, hi, err := unit.ParseRange(text, c.Dimension, r.fallback(t), r.mark())
	if err != nil {
		return err
	}
	from, err := lo.In(c.Unit)
	if err != nil {
		return err
	}
	to, err := hi.In(c.Unit)
	if err != nil {
		return err
	}
	if from < c.Min || to > c.Max {
		return fmt.Errorf("%s to %s %s is not possible here: expected %s to %s %s", short(from), short(to), c.Unit,
			short(c.Min), short(c.Max), c.Unit)
	}
	reason := fmt.Sprintf("more than %d kn from end to end: kept without a speed", maxBetween)
	if to-from <= maxBetween {
		middle := (from + to) / 2
		r.values[t.field] = entry.OfReal(middle)
		reason = fmt.Sprintf("a range: its middle, %s kn, was taken",
			strconv.FormatFloat(math.Round(middle*100)/100, 'f', -1, 64))
	}
	r.doubts = append(r.doubts, r.problem(t, text, reason))
	return nil
}

// near tells a range of speeds whose middle may stand for it.
func (r *Reader) near(t *target, text string) bool {
	lo, hi, err := unit.ParseRange(text, t.Column.Dimension, r.fallback(t), r.mark())
	if err != nil {
		return false
	}
	from, errFrom := lo.In(t.Column.Unit)
	to, errTo := hi.In(t.Column.Unit)
	return errFrom == nil && errTo == nil && to-from <= maxBetween
}

// stroked tells a row in which strokes part several stretches: in its times, or its lines.
func (r *Reader) stroked() bool {
	return slices.ContainsFunc(r.targets, func(t target) bool {
		name := t.Column.Name
		return (name == "start_s" || name == "end_s" || name == "lines_out") && strings.Contains(t.text, "/")
	})
}
