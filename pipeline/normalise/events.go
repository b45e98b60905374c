package normalise

import (
	"wakeledger/pipeline/entry"
	"wakeledger/pipeline/phrase"
	"wakeledger/pipeline/plan"
	"wakeledger/pipeline/words"
)

// eventLog is where a log of events stands: the stretch that is open, with the speed
// and the lines that hold until they are changed.
type eventLog struct {
	date, trip   entry.Value
	open         bool
	byOut        bool // "lures out" opened it: "lures in" is their end then
	start        int64
	speed, lines entry.Value
	last         int64 // the last clock time, for those of twelve hours and past midnight
	bite         *Side // a bite whose fate may stand in a later row
	biteAt       int64
}

// waits is how long after a bite what became of it may be told, in seconds.
const waits = 75 * 60

// event takes one row of a log of events.
func (r *Reader) event(t *target, text string) {
	e := &r.events
	d, trip := r.value("date"), r.value("trip")
	if d != e.date || trip != e.trip {
		if e.open {
			r.aside = append(r.aside, r.problem(t, text, "the log never says when the lines of the day before came up: that stretch is left out"))
		}
		*e = eventLog{date: d, trip: trip}
	}
	at, timed := r.value("time_s"), r.value("time_s").Known
	if timed {
		for at.Int < e.last && at.Int+day/2 >= e.last && at.Int < day/2 && e.last < day {
			at.Int += day / 2
		}
		if at.Int < e.last {
			at.Int += day
		}
		e.last = at.Int
	}
	if !timed && r.alone() {
		return // a remark between the events, or their sum
	}
	r.lineEvent(t, text, at, timed)
	r.biteEvent(t, text, at, timed)
}

// alone tells a row of one cell.
func (r *Reader) alone() bool {
	n := 0
	for _, c := range r.row.Cells {
		if trimmed(c) != "" {
			n++
		}
	}
	return n == 1
}

// lineEvent opens, closes or changes the stretch.
func (r *Reader) lineEvent(t *target, text string, at entry.Value, timed bool) {
	e := &r.events
	set := phrase.Settings(text)
	if notes := r.value("notes").Text; notes != "" && len(set.Speeds)+len(set.Lines) == 0 {
		set = phrase.Settings(notes)
	}
	speed, lines := r.value("speed_kn"), r.value("lines_out")
	if speed = r.value("strike_speed_kn"); !speed.Known {
		speed = r.value("speed_kn")
	}
	if n := len(set.Speeds); !speed.Known && n > 0 {
		speed = entry.OfReal(set.Speeds[n-1])
	}
	if n := len(set.Lines); !lines.Known && n > 0 {
		lines = entry.OfInt(int64(set.Lines[n-1]))
	}
	what := words.EventOf(text)
	out := what == words.EventOut
	if out {
		what = words.EventIn
	}
	if what == words.EventIn && e.open && out != e.byOut {
		what = words.EventUp
	}
	changed := speed.Known && speed != e.speed || lines.Known && lines != e.lines
	if !timed && (what == words.EventIn || what == words.EventUp) {
		r.aside = append(r.aside, r.problem(t, text, "no time: when the lines went in or came up is not known"))
		return
	}
	switch {
	case what == words.EventUp && e.open:
		r.closeStretch(at)
	case what == words.EventIn && !e.open:
		e.open, e.byOut, e.start = true, out, at.Int
	case changed && e.open && timed:
		r.closeStretch(at)
		e.open, e.start = true, at.Int
	}
	if speed.Known {
		e.speed = speed
	}
	if lines.Known {
		e.lines = lines
	}
}

func (r *Reader) closeStretch(at entry.Value) {
	e := &r.events
	e.open = false
	if at.Int <= e.start {
		return
	}
	v := map[string]entry.Value{"start_s": entry.OfInt(e.start), "end_s": at}
	if e.speed.Known {
		v["speed_kn"] = e.speed
	}
	if e.lines.Known {
		v["lines_out"] = e.lines
	}
	r.beside(plan.Legs, v)
}

// biteEvent takes a strike, or what became of the one before.
func (r *Reader) biteEvent(t *target, text string, at entry.Value, timed bool) {
	e := &r.events
	if words.Otherwise(text) {
		return // five mackerel on the jig
	}
	v := r.copyOf()
	delete(v, "speed_kn")
	delete(v, "lines_out")
	told := phrase.Tell(text, t.defaults())
	outcome := v["outcome"].Text
	if len(told.Bites) == 0 && outcome == "" {
		return
	}
	if len(told.Bites) > 0 {
		for name, x := range r.fishValues(told.Bites[0].Fish) {
			if _, has := v[name]; !has {
				v[name] = x
			}
		}
		if c := told.Bites[0].Cause; c != "" {
			v["loss_cause"] = entry.OfText(c)
		}
	}
	if timed {
		v["time_s"] = at
	}
	if e.open && e.speed.Known && !v["strike_speed_kn"].Known {
		v["strike_speed_kn"] = e.speed // should nobody write down when the lines came up
	}
	outcome = v["outcome"].Text
	if e.bite != nil && timed && at.Int-e.biteAt <= waits && (outcome == "landed" || outcome == "released" || outcome == "lost") {
		for name, x := range v {
			if name == "outcome" || !e.bite.Values[name].Known {
				e.bite.Values[name] = x
			}
		}
		e.bite = nil
		return
	}
	r.beside(plan.Strikes, v)
	if e.bite = nil; outcome == "" || outcome == "hooked" {
		b := r.side[len(r.side)-1]
		e.bite, e.biteAt = &b, e.last
	}
}
