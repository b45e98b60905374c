package normalise

import (
	"errors"
	"fmt"
	"regexp"

	"wakeledger/pipeline/entry"
	"wakeledger/pipeline/phrase"
	"wakeledger/pipeline/unit"
	"wakeledger/pipeline/words"
)

// longestSpan is the most hours that two clock times under a heading of hours stand for: trolling through more than
// half a day is asked about.
const longestSpan = 14

// hoursTold reads a cell of hours that holds no plain figure, and says how: two clock times (6:40-1:10), or a hedged
// number (about 4), which is the captain's own best figure of his effort; wrong is what the cell is as a figure.
func (r *Reader) hoursTold(t *target, text string, wrong error) bool {
	h, ok := spanned(text)
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

// clockSpan is a clock time and another behind it.
var clockSpan = regexp.MustCompile(`^\D{0,6}\d{1,2}[:.h]?\d\d\D{1,9}\d{1,2}[:.h]?\d\d(\s?[ap]\.?m\.?)?$`)

// spanned is the hours from one clock time to another, where a cell holds these two and no more. By a clock of
// twelve hours the end may be of the afternoon.
func spanned(text string) (hours float64, ok bool) {
	all := phrase.Stretches(text)
	if len(all) != 1 || !clockSpan.MatchString(text) || !all[0].HasStart || !all[0].HasEnd {
		return 0, false
	}
	s := all[0]
	seconds := s.End.Seconds - s.Start.Seconds
	for seconds <= 0 && !(s.Start.Sure && s.End.Sure) {
		seconds += day / 2
	}
	if seconds < 0 {
		seconds += day
	}
	hours = float64(seconds-int(s.StopMinutes*60)) / 3600
	return hours, hours > 0 && hours <= longestSpan
}
