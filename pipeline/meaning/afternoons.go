package meaning

import (
	"regexp"

	"wakeledger/pipeline/phrase"
	"wakeledger/pipeline/plan"
)

// Clocks of a day, in seconds.
const (
	halfDay  = 12 * 3600
	firstUse = 3 * 3600 // what begins earlier may be a night's fishing, or an afternoon's
)

// afternoons finds strikes and fish of the afternoon in a log whose clock is of twelve hours and says neither am nor
// pm: stretches end before they begin, no clock is past noon, and a strike before the earliest lines of the log
// would be, half a day later, before the last were up.
func (l *Log) afternoons() {
	first, last, twelve := l.hoursFished()
	if !twelve || first < firstUse || first >= halfDay {
		return
	}
	var early []*Understood
	for _, u := range l.Data() {
		b := u.Plan.Find("time_s")
		if u.Plan.Kind != plan.Strikes && u.Plan.Kind != plan.Fish || b == nil || u.Plan.Binds("start_s") {
			continue
		}
		some := false
		for _, row := range u.Block.Rows {
			at, ok := clock(u.b.group, row, b.Index)
			switch {
			case !ok:
			case at >= first && saysPart(row.Cells[b.Index].Text): // 5:15 pm is what it says
			case at >= halfDay+3600 || saysHalf(row.Cells[b.Index]) || at < first && at+halfDay > last:
				return
			default:
				some = some || at < first
			}
		}
		if some {
			early = append(early, u)
		}
	}
	for _, u := range early {
		u.Plan.Early = first
		u.b.note("%s: times of twelve hours without am or pm: those before the earliest lines are of the afternoon",
			u.Plan.Find("time_s").Heading)
	}
}

// partOfDay is the am or pm of a clock time.
var partOfDay = regexp.MustCompile(`(?i)\d\s*[ap]\.?m?\b`)

// saysPart tells a text with a clock time of twelve hours that says its half of the day.
func saysPart(text string) bool { return partOfDay.MatchString(text) }

// hoursFished are the earliest start and the latest end of the log's stretches; twelve is false where their clocks go
// past noon, or none of their ends is of the afternoon by a clock of twelve hours.
func (l *Log) hoursFished() (first, last int, twelve bool) {
	first, past := 2*halfDay, false
	take := func(start, end int) {
		past = past || start >= halfDay+3600 || end >= halfDay+3600
		if end < start {
			twelve, end = true, end+halfDay
		}
		first, last = min(first, start), max(last, end)
	}
	for _, u := range l.Data() { // a text that says am and pm leaves nothing open
		s, e := u.Plan.Find("start_s"), u.Plan.Find("end_s")
		for _, row := range u.Block.Rows {
			if s != nil && e != nil {
				a, okA := clock(u.b.group, row, s.Index)
				b, okB := clock(u.b.group, row, e.Index)
				if okA && okB {
					take(a, b)
				}
			}
			for _, w := range u.Plan.Bindings {
				if w.Column.Parse != "stretches" && w.Column.Parse != "story" || w.Index >= len(row.Cells) ||
					saysPart(row.Cells[w.Index].Text) {
					continue
				}
				for _, x := range phrase.Stretches(row.Cells[w.Index].Text) {
					if x.HasStart && x.HasEnd {
						take(x.Start.Seconds, x.End.Seconds)
					}
				}
			}
		}
	}
	return first, last, twelve && !past
}
