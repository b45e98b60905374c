package normalise

import (
	"errors"
	"fmt"

	"wakeledger/pipeline/entry"
	"wakeledger/pipeline/phrase"
	"wakeledger/pipeline/unit"
	"wakeledger/pipeline/words"
)

// hoursTold reads a cell of hours that holds no plain figure, and says how: two clock times (6:40-1:10), or a hedged
// number (about 4), which is the captain's own best figure of his effort; wrong is what the cell is as a figure.
func (r *Reader) hoursTold(t *target, text string, wrong error) bool {
	h, ok := phrase.HoursBetween(text)
	if v, n := about(text); !ok && n && (words.Hedged(text) || errors.Is(wrong, unit.ErrApproximate)) &&
		len(phrase.Clocks(text)) <= 1 && r.fallback(t) != "" {
		s, err := unit.Convert(v, r.fallback(t), unit.Hour)
		h, ok = s, err == nil
	}
	if s := h * 3600; ok && s > 0 && s >= t.Column.Min && s <= t.Column.Max {
		r.doubts = append(r.doubts, r.problem(t, text, fmt.Sprintf("read as %.4g h", h)))
		r.values[t.field] = entry.OfReal(s)
		return true
	}
	return false
}
