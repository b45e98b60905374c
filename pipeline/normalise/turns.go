package normalise

import (
	"slices"
	"strconv"

	"wakeledger/pipeline/entry"
	"wakeledger/pipeline/phrase"
	"wakeledger/pipeline/plan"
	"wakeledger/pipeline/record"
)

// leastPace is the slowest speed in knots that a remark on a row tells of trolling: less is of the current.
const leastPace = 4

// turned takes what a remark says of the row's speed and lines in place of what is usual: "slower today: 6 kn" for all
// of its stretch, "down to 3 lines at 10:00" from then on. What is not taken is set aside.
func (r *Reader) turned() {
	if r.layout.Kind != plan.Flat && r.layout.Kind != plan.Legs || r.layout.Reads("stretches") ||
		slices.ContainsFunc(r.side, func(s Side) bool { return s.Kind == plan.Legs }) {
		return
	}
	usual := int(r.value("lines_out").Int)
	for i := range r.targets {
		t := &r.targets[i]
		if t.given != "" || t.text == "" || t.Column.Parse != "story" && t.Column.Parse != "fishlist" &&
			t.Column.Name != "notes" {
			continue
		}
		var timed []phrase.Turn
		for _, turn := range phrase.Turns(t.text, usual) {
			switch {
			case turn.At != nil && !turn.Unsure:
				timed = append(timed, turn)
			case turn.Speed >= leastPace && turn.At == nil && !r.layout.Binds("outcome", "time_s"): // else of a bite
				r.speedOfRow(t, turn)
			}
		}
		if len(timed) > 0 && !r.splitAt(timed) {
			r.aside = append(r.aside, r.problem(t, t.text,
				record.OfSettings+" changed at a time of day, not within the row's own times: nothing was changed"))
		}
	}
}

// speedOfRow takes the speed that a remark tells for all of the row, where its cell says none.
func (r *Reader) speedOfRow(t *target, turn phrase.Turn) {
	i, ok := r.index["speed_kn"]
	if !ok || r.values[i].Known && near(r.values[i].Real, turn.Speed) {
		return
	}
	at := slices.IndexFunc(r.targets, func(t target) bool { return t.field == i })
	switch own := at >= 0 && r.saysOwn(&r.targets[at]); {
	case turn.Unsure && r.values[i].Known, own:
		r.aside = append(r.aside, r.problem(t, t.text,
			record.OfSettings+", "+short(turn.Speed)+" kn, not surely for all of the row: it was not taken"))
	case !turn.Unsure:
		r.values[i] = entry.OfReal(turn.Speed)
	}
}

// splitAt parts the row's stretch where its speed or its lines were changed; false where the times do not fit.
func (r *Reader) splitAt(turns []phrase.Turn) bool {
	start, end := r.value("start_s"), r.value("end_s")
	if !start.Known || !end.Known || r.value("stopped_s").Real > 0 && !r.pausesTold() {
		return false
	}
	type piece struct{ speed, lines entry.Value }
	at, pieces := []int64{start.Int}, []piece{{r.value("speed_kn"), r.value("lines_out")}}
	first := pieces[0].speed
	changed, bites := false, first
	for _, turn := range turns {
		when := int64(turn.At.Seconds)
		if when < start.Int && !turn.At.Sure || when < start.Int && end.Int > day {
			if when += day / 2; when < start.Int {
				when += day / 2
			}
		}
		if when <= at[len(at)-1] || when >= end.Int {
			return false
		}
		p := pieces[len(pieces)-1]
		if turn.Speed > 0 {
			changed = changed || !p.speed.Known || !near(p.speed.Real, turn.Speed)
			p.speed = entry.OfReal(turn.Speed)
			switch {
			case turn.Before && len(turns) == 1:
				bites = first
			case turn.After && len(turns) == 1:
				bites = p.speed
			default:
				bites = entry.Value{}
			}
		}
		if turn.Lines > 0 {
			p.lines = entry.OfInt(int64(turn.Lines))
		}
		at, pieces = append(at, when), append(pieces, p)
	}
	at = append(at, end.Int)
	for k, p := range pieces {
		v := map[string]entry.Value{"start_s": entry.OfInt(at[k]), "end_s": entry.OfInt(at[k+1]),
			"leg": entry.OfText(strconv.Itoa(k + 1))}
		if off := r.pausedWithin(at[k], at[k+1]); off > 0 {
			v["stopped_s"] = entry.OfReal(float64(off))
		}
		if p.speed.Known && r.has("speed_kn") {
			v["speed_kn"] = p.speed
		}
		if p.lines.Known && r.has("lines_out") {
			v["lines_out"] = p.lines
		}
		r.beside(plan.Legs, v)
	}
	for _, name := range []string{"start_s", "end_s", "duration_s", "stopped_s"} {
		if i, ok := r.index[name]; ok {
			r.values[i] = entry.Value{} // of all of them
		}
	}
	if i, ok := r.index["speed_kn"]; ok && changed {
		if r.values[i] = bites; !bites.Known && r.bitten() {
			r.aside = append(r.aside, r.problem(&r.targets[slices.IndexFunc(r.targets, func(t target) bool {
				return t.Column.Name == "notes" || t.Column.Parse == "story" || t.Column.Parse == "fishlist"
			})], "", record.OfEither))
		}
	}
	return true
}

// bitten reports whether the row counts bites, or may have some.
func (r *Reader) bitten() bool {
	for _, name := range []string{"strikes_n", "hooked_n", "landed_n"} {
		if v := r.value(name); v.Known {
			return v.Int > 0
		}
	}
	return true
}

// pausesTold reports whether the time that the row's lines were up is told by its remarks, from when to when.
func (r *Reader) pausesTold() bool {
	return float64(r.pausedWithin(r.value("start_s").Int, r.value("end_s").Int)) == r.value("stopped_s").Real
}

// pausedWithin is how many seconds of a stretch lines were up, as the row's remarks tell.
func (r *Reader) pausedWithin(start, end int64) (off int64) {
	for i := range r.targets {
		t := &r.targets[i]
		if p := t.Column.Parse; p != "story" && p != "fishlist" && t.Column.Name != "notes" {
			continue
		}
		for _, p := range phrase.Pauses(t.text) {
			from, until := int64(p.Start.Seconds), int64(p.End.Seconds)
			if from < start && !p.Start.Sure {
				from, until = from+day/2, until+day/2
			}
			off += max(0, min(until, end)-max(from, start))
		}
	}
	return off
}
