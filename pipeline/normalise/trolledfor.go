package normalise

import (
	"fmt"
	"regexp"
	"strings"

	"wakeledger/pipeline/entry"
	"wakeledger/pipeline/phrase"
	"wakeledger/pipeline/words"
)

// hoursIn is a length of time in a remark, and clauseEnds where its clauses part.
var (
	hoursIn = regexp.MustCompile(`(?i)(?:^|[^\d.,:])(\d{1,2}(?:[.,]\d+)?\s*(?:h|hrs?|hours?|horas?|heures?|ore|std|` +
		`stunden))(?:$|[^\pL\d])`)
	clauseEnds = regexp.MustCompile(`[;()\n]|[,.](?:\s|$)`)
)

// trolledFor gives a stretch with one clock time the other by the hours of trolling that a remark tells: "forgot to
// write lines out, was 6.5 hrs trolling".
func (r *Reader) trolledFor() {
	i, j := r.slots.start, r.slots.end
	if i < 0 || j < 0 || r.values[i].Known == r.values[j].Known || r.at(r.slots.duration).Known || r.layout.Twelve {
		return
	}
	for k := range r.targets {
		t := &r.targets[k]
		if t.Column.Name != "notes" || t.Column.Parse != "text" {
			continue
		}
		for _, clause := range clauseEnds.Split(t.text, -1) {
			m := hoursIn.FindAllStringSubmatch(clause, -1)
			if how, ok := words.Method(clause); len(m) != 1 || !ok || how != "troll" {
				continue
			}
			h, ok := phrase.Duration(strings.ReplaceAll(m[0][1], ",", "."))
			if !ok {
				continue
			}
			if seconds := int64(h * 3600); r.values[i].Known {
				r.values[j] = entry.OfInt(r.values[i].Int + seconds)
			} else if r.values[j].Int >= seconds {
				r.values[i] = entry.OfInt(r.values[j].Int - seconds)
			} else {
				return
			}
			r.doubts = append(r.doubts, r.problem(t, t.text, fmt.Sprintf("the stretch has one clock time: the "+
				"other is by the %g hours that the remark tells", h)))
			return
		}
	}
}

// trolledTwice takes off a row's hours what lies between the stretches that a remark tells, where the first begins and
// the last ends when the row does: "trolled 4:10-8:00 pm and 5:20-9:40 am" beside lines in at 4:10 pm, up at 9:40 am.
func (r *Reader) trolledTwice() {
	to, ok := r.index["stopped_s"]
	start, end := r.at(r.slots.start), r.at(r.slots.end)
	if !ok || r.values[to].Known || !start.Known || !end.Known || r.layout.Twelve {
		return
	}
	until := end.Int
	if until <= start.Int {
		until += day
	}
	for k := range r.targets {
		t := &r.targets[k]
		if t.Column.Name != "notes" || t.Column.Parse != "text" {
			continue
		}
		off, at := int64(0), start.Int
		told := phrase.Stretches(t.text)
		for n, s := range told {
			if how, ok := words.Method(t.text[s.Place:]); !s.HasStart || !s.HasEnd || ok && n == 0 && how != "troll" {
				told = nil
				break
			}
			from := nextAt(s.Start, at)
			off, at = off+from-at, nextAt(s.End, from)
		}
		if len(told) > 1 && at == until && nextAt(told[0].Start, start.Int) == start.Int && off > 0 {
			r.values[to] = entry.OfReal(float64(off))
			r.doubts = append(r.doubts, r.problem(t, t.text, fmt.Sprintf("%d stretches, as the remark says: %.1f "+
				"hours between them were taken off", len(told), float64(off)/3600)))
			return
		}
	}
}

// nextAt is the first time from a moment on that a clock says.
func nextAt(c phrase.Clock, from int64) int64 {
	step, at := int64(day), int64(c.Seconds)
	if !c.Sure {
		step = day / 2
	}
	at %= step
	for at < from {
		at += step
	}
	return at
}
