package meaning

import (
	"regexp"

	"wakeledger/pipeline/phrase"
	"wakeledger/pipeline/plan"
	"wakeledger/pipeline/words"
)

// How often a log of events must say speed or lines anew as lines go in again for each time that it does not, and
// how often where they are as they were.
const (
	saidPerNot = 4
	saidAsWas  = 2
)

// saidAfresh tells a log of events that says the speed, or the number of lines, each time that lines go in again on a
// day, also where they are as before: where they are not said, nobody knows them.
func (x *builder) saidAfresh() {
	if x.plan.Kind != plan.Events {
		return
	}
	lines, speed := x.neverTaken()
	x.plan.SpeedAfresh = x.afresh("speed_kn", "strike_speed_kn") || speed
	x.plan.LinesAfresh = x.afresh("lines_out") || lines
	x.plan.BiteSpeeds = x.biteSpeeds()
	x.plan.NoneUp = x.noneUp()
}

// neverTaken tells a log that says of all its rows without lines, or without a speed, that nobody wrote these down:
// "where the number of lines is not given I forgot it". It may say so under its rows.
func (x *builder) neverTaken() (lines, speed bool) {
	lines, speed = x.said.forgotLines, x.said.forgotSpeed
	event := x.plan.Find("event")
	if event == nil {
		return lines, speed
	}
	for _, row := range x.rows {
		if text := cellOf(row, event.Index); whereNone.MatchString(text) {
			lines, speed = lines || words.ForgotLines(text), speed || words.SpeedNotTaken(text)
		}
	}
	return lines, speed
}

// whereNone begins a saying of all rows.
var whereNone = regexp.MustCompile(
	`(?i)^\W*(?:where|if|when|wo|wenn|donde|cuando|si|o[uù]|quand|se|onde|quando|dove)\s`)

// leastChanges is how many rows of a log of events must change the speed, and tell no bite, for a speed in the row of
// a bite to be no change.
const leastChanges = 2

// biteSpeeds tells a log of events that has rows of their own for changes of speed: a speed in the row of a bite is
// that of the bite there, and the stretch goes on as it was.
func (x *builder) biteSpeeds() bool {
	at, event, outcome := x.plan.Find("speed_kn", "strike_speed_kn"), x.plan.Find("event"), x.plan.Find("outcome")
	if at == nil || event == nil {
		return false
	}
	was, changes := "", 0
	for _, row := range x.rows {
		text, now := cellOf(row, event.Index), cellOf(row, at.Index)
		if now == "" || words.NotLogged(now) || words.Ditto(now) || phrase.TellsBite(text) ||
			outcome != nil && cellOf(row, outcome.Index) != "" {
			continue
		}
		if said := words.EntryOf(text).Event; now != was && (said == words.EventNone || said > words.EventOut) {
			changes++
		}
		was = now
	}
	return changes >= leastChanges
}

// fewDaysUp is on how many days the column of lines must end with none out before it is taken to say when lines are in.
const fewDaysUp = 3

// noneUp tells a log of events that counts, day by day, the lines that are out, and none where they are up: on nine
// days of ten on which it counts some, the last count is none.
func (x *builder) noneUp() bool {
	at, day := x.plan.Find("lines_out"), outingOf(x.plan)
	if at == nil || at.Index < 0 || day == nil {
		return false
	}
	days, ended, last, was := 0, 0, -1.0, ""
	end := func() {
		if last >= 0 {
			days++
		}
		if last == 0 {
			ended++
		}
		last = -1
	}
	for _, row := range x.rows {
		if d := cellOf(row, day.Index); d != "" && d != was {
			end()
			was = d
		}
		if n, ok := number(cellOf(row, at.Index)); ok {
			last = n
		}
	}
	end()
	return ended >= fewDaysUp && 10*ended >= 9*days
}

func (x *builder) afresh(names ...string) bool {
	at, event := x.plan.Find(names...), x.plan.Find("event")
	day := outingOf(x.plan)
	if at == nil || event == nil || day == nil {
		return false
	}
	was, fished, said, same, not := "", false, 0, 0, 0
	for _, row := range x.rows {
		if cellOf(row, day.Index) != "" {
			was, fished = "", false
		}
		text, now := cellOf(row, event.Index), cellOf(row, at.Index)
		if words.EntryOf(text).Event == words.EventIn {
			set := phrase.Settings(text)
			switch told := now != "" && !words.NotLogged(now) || len(set.Speeds)+len(set.Lines) > 0; {
			case !fished:
			case !told:
				not++
			default:
				if said++; now == was || words.Ditto(now) {
					same++
				}
			}
			fished = true
		}
		if now != "" && !words.Ditto(now) {
			was = now
		}
	}
	return said >= saidPerNot*not && same >= saidAsWas
}
