package normalise

import (
	"fmt"
	"slices"

	"wakeledger/pipeline/entry"
	"wakeledger/pipeline/phrase"
	"wakeledger/pipeline/plan"
)

// endTold takes the end of a stretch whose cell is blank from a remark of the row that says when the lines came up: "we
// took the lines out at half past four". A time that may be of either half of the day is the first behind the start.
func (r *Reader) endTold() {
	start, end := r.at(r.slots.start), r.slots.end
	if end < 0 || !start.Known || r.values[end].Known || r.at(r.slots.duration).Known {
		return
	}
	i := slices.IndexFunc(r.targets, func(t target) bool { return t.field == end && t.Set == 0 })
	if i < 0 || r.targets[i].text != "" {
		return
	}
	if above := r.toldUp; !r.ownEffort() { // a row of the same stretch
		if above.date == r.value("date") && above.start == start {
			r.values[end] = above.end
		}
		return
	}
	for k := range r.targets {
		t := &r.targets[k]
		if t.Column.Name != "notes" || t.Column.Parse != "text" {
			continue
		}
		at, ok := phrase.LinesUpAt(t.text)
		up := int64(at.Seconds)
		if ok && !at.Sure && up <= start.Int {
			up += day / 2
		}
		if !ok || up <= start.Int || up >= day {
			continue
		}
		r.values[end] = entry.OfInt(up)
		r.toldUp = toldUp{r.value("date"), start, r.values[end]}
		r.doubts = append(r.doubts, r.problem(t, t.text,
			fmt.Sprintf("lines up at %d:%02d, as the remark says", up/3600, up/60%60)))
		return
	}
}

// stretchTold takes the hours of a row whose cells say nothing of them from a remark that tells when the lines went in
// and came up.
func (r *Reader) stretchTold() {
	i, ok := r.index["duration_s"]
	told := slices.ContainsFunc(r.side, func(s Side) bool { return s.Kind == plan.Legs })
	if !ok || !r.layout.Binds("duration_s") || r.values[i].Known || r.ownEffort() || r.effort() || told ||
		!r.value("date").Known {
		return
	}
	for k := range r.targets {
		t := &r.targets[k]
		if t.Column.Name != "notes" || t.Column.Parse != "text" && t.Column.Parse != "fishlist" || t.given != "" {
			continue
		}
		st, ok := phrase.StretchIn(t.text)
		length := int64(st.End.Seconds - st.Start.Seconds)
		if length <= 0 && !st.End.Sure {
			length += day / 2
		}
		if !ok || length <= 0 || length >= day/2 {
			continue
		}
		r.values[i] = entry.OfReal(float64(length))
		r.doubts = append(r.doubts, r.problem(t, t.text,
			fmt.Sprintf("%.4g h with lines in, as the remark says", float64(length)/3600)))
		return
	}
}

// toldUp is the last stretch whose end a remark told.
type toldUp struct{ date, start, end entry.Value }
