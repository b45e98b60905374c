package normalise

import "strconv"

// afterNoon moves clock times of columns of the afternoon there: a start from one to ten o'clock, and an end that
// is before its start, or alone, where the afternoon's is behind it. A start at ten or later is of the morning or of
// the night, as it is written.
func (r *Reader) afterNoon() {
	for i := range r.targets {
		if t := &r.targets[i]; t.PM && t.Column.Name == "start_s" {
			r.byAfternoon(t)
		}
	}
	for i := range r.targets {
		t := &r.targets[i]
		if !t.PM || t.Column.Name != "end_s" {
			continue
		}
		name := "start_s"
		if t.Set > 0 {
			name += "#" + strconv.Itoa(t.Set)
		}
		end := &r.values[t.field]
		switch start := r.value(name); {
		case !start.Known:
			r.byAfternoon(t)
		case end.Known && end.Int < start.Int && end.Int < day/2 && end.Int+day/2 > start.Int && !r.dated(t.field):
			end.Int += day / 2
		}
	}
}

// byAfternoon moves a clock time from one to ten o'clock to the afternoon.
func (r *Reader) byAfternoon(t *target) {
	if v := &r.values[t.field]; v.Known && v.Int >= 3600 && v.Int < 10*3600 && !r.dated(t.field) {
		v.Int += day / 2
	}
}

// dated tells a clock time with a day of its own.
func (r *Reader) dated(field int) bool {
	for _, p := range r.moments {
		if p.field == field && p.m.HasDate {
			return true
		}
	}
	return false
}
