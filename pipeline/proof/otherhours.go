package proof

import (
	"fmt"
	"maps"
	"regexp"
	"strings"

	"wakeledger/pipeline/meaning"
	"wakeledger/pipeline/phrase"
	"wakeledger/pipeline/plan"
	"wakeledger/pipeline/words"
)

// forSoLong is a length of time in a remark.
var forSoLong = regexp.MustCompile(`(?i)(?:^|[^\d.,:])((?:\d{1,2}(?:[.,]\d+)?|\ban|\bone|\bhalf an)\s*(?:h|hrs?|hours?|horas?|heures?|ore|std|` +
	`stunden|m|mins?|minutes?|minutos?|minuti|minuten))(?:$|[^\pL\d])`)

// notMeanwhile are words for what was done before or after the lines were in.
var notMeanwhile = regexp.MustCompile(`(?i)(?:^|\PL)(?:after|afterwards|later|before|then|first|luego|` +
	`despu[eé]s|antes|apr[eè]s|avant|ensuite|puis|dopo|poi|prima|depois|danach|nachher|vorher)(?:$|\PL)`)

// stood are words for a boat that did not troll meanwhile.
var stood = regexp.MustCompile(`(?i)(?:^|\PL)(?:stopped|lines (?:were )?(?:up|in|out)|drifted|broke down|breakdown|engine off|` +
	`engine trouble|dead in the water|paused|hove to|parad[oa]s?|paramos|arr[eê]t|arr[eê]t[eé]s?|fermi|fermat[oi]|` +
	`parad[oa]s|gestoppt|angehalten|gestanden)(?:$|\PL)`)

// otherHours are the seconds that a remark says were fished in another way, "jigged the bank 40 min", or not at all,
// "stopped 30 min", where it does not say that this was before or after.
func otherHours(text string) float64 {
	if notMeanwhile.MatchString(text) {
		return 0
	}
	for _, part := range strings.FieldsFunc(text, func(c rune) bool { return c == ';' || c == '(' || c == ')' }) {
		m := forSoLong.FindAllStringSubmatch(part, -1)
		if how, ok := words.Method(part); len(m) == 1 && (ok && how != "troll" && how != "kite" ||
			!ok && stood.MatchString(part)) {
			if h, ok := phrase.Duration(strings.ReplaceAll(m[0][1], ",", ".")); ok {
				return h * 3600
			}
		}
	}
	return 0
}

// hoursInRemarks asks about hours of another way of fishing, or of none, that remarks tell of beside the clock times of
// a stretch: they may be among those.
func (q *inquiry) hoursInRemarks(s Subject) {
	p, notes := s.Plan, s.Plan.Find("notes")
	if p.Kind != plan.Legs && p.Kind != plan.Flat || notes == nil || notes.Column.Parse != "text" || notes.Index < 0 ||
		!p.Binds("start_s") || !p.Binds("end_s") || p.Binds("duration_s", "stopped_s", "method") {
		return
	}
	worked := s.Stats.worked()
	off, first, sum := map[int64]float64{}, "", 0.0
	for _, r := range s.Block.Rows {
		text := textOf(r, notes)
		taken := !p.Again && phrase.StoppedLinesUp(text) > 0 // off already
		if v := otherHours(text); v > 0 && worked[int64(r.Num)] && !taken {
			off[int64(r.Num)], sum = v, sum+v/3600
			if first == "" {
				first = text
			}
		}
	}
	if len(off) == 0 {
		return
	}
	q.ask("other hours", p.Name, notes.Heading, fmt.Sprintf("%s of time without trolling (%.1f h), the first: %q. "+
		"Was that between your times of lines in and lines up?",
		subject(len(off), "remark", "tell", p.Name), sum, first), []string{"yes, take it off", "no"}, hours, first)
	x := q.last()
	x.Brief, x.Choices, x.off = "Some remarks tell of time without trolling.", []string{"yes", "no"}, off
}

// takeOff takes hours of another way of fishing off the stretches of some rows.
func takeOff(_ *meaning.Log, q *Question, choice string) {
	if choice == "yes" && len(q.of) > 0 {
		q.of[0].Plan.Off = maps.Clone(q.off)
	}
}

// otherAt is a clock time from which, or until which, a remark says that something was done: "bottom fished from 11".
var otherAt = regexp.MustCompile(`(?i)(?:^|\PL)(?:from|since|until|till|desde|hasta|[aà] partir d[eu]|dès|depuis|jusqu|dalle|` +
	`fino|ab|seit|bis|das|até)\s*(?:\pL{1,3}\s)?(?:\d{1,2}(?:[:.h]\d{2}|\s*[ap]m|\s*h)(?:$|[^\pL\d])|\d{1,2}\s*$)`)

// otherwiseIn reports whether a remark tells of another way of fishing by the clock.
func otherwiseIn(text string) bool {
	if notMeanwhile.MatchString(text) || otherHours(text) > 0 {
		return false
	}
	for _, part := range strings.FieldsFunc(text, func(c rune) bool { return strings.ContainsRune(";,()", c) }) {
		how, ok := words.Method(part)
		if ok && how != "troll" && how != "kite" && otherAt.MatchString(part) {
			return true
		}
	}
	return false
}

// otherwise asks about remarks that tell of another way of fishing from or until some time, on rows whose clock times
// are taken for trolling.
func (q *inquiry) otherwise(s Subject) {
	p, notes := s.Plan, s.Plan.Find("notes")
	if p.Kind != plan.Legs && p.Kind != plan.Flat || notes == nil || notes.Column.Parse != "text" || notes.Index < 0 ||
		!p.Binds("start_s") || !p.Binds("end_s") || p.Binds("method") {
		return
	}
	worked := s.Stats.worked()
	n, first := 0, ""
	for _, r := range s.Block.Rows {
		if text := textOf(r, notes); worked[int64(r.Num)] && otherwiseIn(text) {
			if n++; first == "" {
				first = text
			}
		}
	}
	if n == 0 {
		return
	}
	q.ask("otherwise", p.Name, notes.Heading, fmt.Sprintf("%s that you fished another way for part of the "+
		"time, the first: %q. The whole time is counted as trolled: mend the times in the log, or leave them.",
		subject(n, "remark", "say", p.Name), first), nil, hours, first)
	q.last().Brief = "Remarks say that you fished another way for part of the time: all of it is counted as trolled."
}
