package phrase

import (
	"regexp"
	"strconv"
	"strings"

	"wakeledger/pipeline/words"
)

// longestSpan is the most hours that two clock times under a heading of hours stand for: trolling through more than
// half a day is asked about.
const longestSpan = 14

// clockSpan is a clock time and another behind it.
var clockSpan = regexp.MustCompile(`^\D{0,6}\d{1,2}[:.h]?\d\d\D{1,9}\d{1,2}[:.h]?\d\d(\s?[ap]\.?m\.?)?$`)

// hourSpan is two times of which one at least is an hour alone: 7:30 to 2, 7 to 1.
var hourSpan = regexp.MustCompile(`^(\d{1,2})(:\d\d)?( ?[-–] ?| \p{L}{1,5} )(\d{1,2})(:\d\d)?$`)

// shortestSpan in hours is of times of which one is an hour alone: 5:30-6 may be about so many hours.
const shortestSpan = 1.0

// hoursApart is the hours between clock times of which one is an hour alone: one with minutes beside it, or the later
// the smaller figure, which no estimate is (5-6).
func hoursApart(text string) (hours float64, ok bool) {
	m := hourSpan.FindStringSubmatch(text)
	if m == nil || m[2] != "" && m[5] != "" {
		return 0, false
	}
	from, err := strconv.ParseFloat(m[1], 64)
	to, err2 := strconv.ParseFloat(m[4], 64)
	if err != nil || err2 != nil || from <= to && m[2] == "" && m[5] == "" {
		return 0, false
	}
	minutes := func(text string) float64 {
		n, _ := strconv.ParseFloat(strings.TrimPrefix(text, ":"), 64) // none is 0
		return n / 60
	}
	hours = to + minutes(m[5]) - from - minutes(m[2])
	if hours <= 0 {
		hours += 12
	}
	return hours, from <= 12 && to <= 12 && hours > shortestSpan
}

// HoursBetween is the hours from one clock time to another, where a cell holds these two and no more. By a clock of
// twelve hours the end may be of the afternoon.
func HoursBetween(text string) (hours float64, ok bool) {
	if hours, ok = hoursApart(text); ok {
		return hours, true
	}
	all := Stretches(text)
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

var oneFigure = regexp.MustCompile(`\d+([.,]\d+)?`)

// HoursAbout is the one figure of a cell of hours that hedges it, and has no unit: about 4.
func HoursAbout(text string) (float64, bool) {
	all := oneFigure.FindAllString(text, 2)
	if len(all) != 1 || !words.Hedged(text) || strings.ContainsAny(text, ":/+") {
		return 0, false
	}
	v, err := strconv.ParseFloat(strings.Replace(all[0], ",", ".", 1), 64)
	return v, err == nil
}
