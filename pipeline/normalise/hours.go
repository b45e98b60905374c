package normalise

import (
	"errors"
	"fmt"
	"regexp"
	"strings"

	"wakeledger/pipeline/entry"
	"wakeledger/pipeline/phrase"
	"wakeledger/pipeline/unit"
	"wakeledger/pipeline/words"
)

// hoursTold reads a cell of hours that holds no plain figure, and says how: two clock times (6:40-1:10), a hedged
// number (about 4), which is the captain's own best figure of his effort, or a figure with the row's speed or lines
// behind it (3 1/4 fast, 14 kts); wrong is what the cell is as a figure.
func (r *Reader) hoursTold(t *target, text string, wrong error) bool {
	figure, rest := figureFirst(text)
	if said := phrase.Settings(rest); rest != "" && len(said.Speeds)+len(said.Lines) > 0 && !said.By {
		return len(anyFigure.FindAllString(rest, -1)) == len(said.Speeds)+len(said.Lines) &&
			r.hoursAndSettings(t, text, figure, said)
	}
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

// figureLead is a figure at the head of a text, with a fraction or a unit of hours.
var figureLead = regexp.MustCompile(`^(\d+(?:[.,]\d+)?(?:\s+\d/\d|[¼½¾])?\s*(?:h|hrs?|hours?)?)(?:\s*[,;(]\s*|\s+)(\D.*)$`)

var anyFigure = regexp.MustCompile(`\d+(?:[.,]\d+)?`)

// figureFirst parts a text that begins with a figure from what follows it.
func figureFirst(text string) (figure, rest string) {
	if m := figureLead.FindStringSubmatch(text); m != nil {
		return strings.TrimSpace(m[1]), m[2]
	}
	return text, ""
}

// hoursAndSettings takes a figure for the row's hours, and the one speed and number of lines that are told behind it
// for its own.
func (r *Reader) hoursAndSettings(t *target, text, figure string, said phrase.Setting) bool {
	q, err := unit.ParseQuantity(figure, t.Column.Dimension, r.fallback(t), r.mark())
	if err != nil || len(said.Speeds) > 1 || len(said.Lines) > 1 {
		return false
	}
	s, err := q.In(t.Column.Unit)
	if err != nil || s < t.Column.Min || s > t.Column.Max {
		return false
	}
	told := fmt.Sprintf("read as %.4g h", s/3600)
	r.values[t.field] = entry.OfReal(s)
	for _, kn := range said.Speeds {
		r.put("speed_kn", entry.OfReal(kn))
		told += fmt.Sprintf(" at %.4g kn", kn)
	}
	for _, n := range said.Lines {
		r.put("lines_out", entry.OfInt(int64(n)))
		told += fmt.Sprintf(", %d lines", n)
	}
	r.doubts = append(r.doubts, r.problem(t, text, told))
	return true
}
