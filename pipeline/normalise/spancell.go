package normalise

import (
	"fmt"
	"regexp"
	"slices"
	"strconv"
	"strings"

	"wakeledger/pipeline/entry"
	"wakeledger/pipeline/phrase"
	"wakeledger/pipeline/words"
)

const clockInSpan = `\d{1,2}(?:[:.h]\d{2})?\s*(?:[ap]\.?m\.?)?`

var (
	// spanOfTwo is a cell of two clock times, "6 to 10:30".
	spanOfTwo = regexp.MustCompile(`(?i)^\s*(` + clockInSpan + `)\s*(?:-|–|to|till|until|a|à|bis|al?le)\s*(` +
		clockInSpan + `)\s*$`)
	betweenSpans = regexp.MustCompile(`(?i)\s*(?:&|\+|;|,|/|\band\b|\bthen\b|\by\b|\bet\b)\s*`)
	hourOnly     = regexp.MustCompile(`^\d{1,2}`)
)

// spansIn are the starts and the ends of stretches that a text gives as pairs of clock times: "6:30 to 8:30 & 9:30 to
// 1:00"; none where it holds anything else. Hours alone are full hours.
func spansIn(text string) (starts, ends []string) {
	full := func(clock string) string {
		if strings.ContainsAny(clock, ":.h") && !strings.ContainsAny(clock, "pPaA") {
			return clock
		}
		hour := hourOnly.FindString(clock)
		if rest := clock[len(hour):]; !strings.ContainsAny(rest, ":.h") || strings.Trim(rest, " apmAPM.") == "" {
			return hour + ":00" + rest
		}
		return clock
	}
	for _, part := range betweenSpans.Split(text, -1) {
		m := spanOfTwo.FindStringSubmatch(part)
		if m == nil {
			return nil, nil
		}
		starts, ends = append(starts, full(strings.TrimSpace(m[1]))), append(ends, full(strings.TrimSpace(m[2])))
	}
	return starts, ends
}

// spanCell keeps the clock times of a cell of starts that holds the ends too, where the cell of the ends is blank.
func (r *Reader) spanCell(t *target, text string, wrong error) bool {
	i := slices.IndexFunc(r.targets, func(o target) bool { return o.Column.Name == "end_s" && o.Set == 0 })
	if t.Column.Name != "start_s" || t.Set > 0 || t.given != "" || i < 0 || r.targets[i].text != "" {
		return false
	}
	starts, ends := spansIn(text)
	if starts == nil {
		return false
	}
	r.doubts = append(r.doubts, r.problem(t, text, "read as when the lines went in and when they came up"))
	r.several = append(r.several, several{t, text, wrong, starts}, several{&r.targets[i], text, wrong, ends})
	return true
}

// endBeside is the stretch of a cell of spans that holds its beginning alone, where the end stands in a cell of its
// own.
func (r *Reader) endBeside(text string) []phrase.Stretch {
	end := r.value("end_s")
	m, err := r.moment(text)
	if !end.Known || err != nil || !m.HasTime || m.HasDate {
		return nil
	}
	at := func(seconds int) phrase.Clock { return phrase.Clock{Seconds: seconds, Sure: seconds >= 13*3600} }
	return []phrase.Stretch{{Start: at(m.Seconds), End: at(int(end.Int)), HasStart: true, HasEnd: true, Lines: -1}}
}

// countAndFate is a number of bites with what became of some behind it: "2, one stuck", "3 (all stuck)".
var countAndFate = regexp.MustCompile(`^(\d{1,3})\s*[,;(:-]\s*(.*?)\)?\s*$`)

// bitesTold takes a number of bites with words behind it that say how many of them were hooked, or missed.
func (r *Reader) bitesTold(t *target, text string) (n int, ok bool) {
	m := countAndFate.FindStringSubmatch(text)
	if m == nil || t.Column.Name != "strikes_n" {
		return 0, false
	}
	n, _ = strconv.Atoi(m[1])
	told := phrase.Tell(m[2], phrase.Defaults{})
	fate, _, _, said := words.FateOf(m[2])
	hooked := -1
	switch {
	case said && fate == words.Hooked && words.Glued(m[2], "all") && len(told.Bites) <= 1:
		hooked = n
	case said && fate == words.Missed && len(told.Bites) == 0 && n == 1:
		hooked = 0
	case len(told.Bites) != 1 || len(told.Left) > 0 || told.Bites[0].N > n:
		return 0, false
	case told.Bites[0].Fate == words.Hooked:
		hooked = max(told.Bites[0].N, 1)
	case told.Bites[0].Fate == words.Missed:
		hooked = n - max(told.Bites[0].N, 1)
	default:
		return 0, false
	}
	r.put("hooked_n", entry.OfInt(int64(hooked)))
	r.doubts = append(r.doubts, r.problem(t, text,
		fmt.Sprintf("read as %s, %d hooked", plural(n, "a bite", "bites"), hooked)))
	return n, true
}
