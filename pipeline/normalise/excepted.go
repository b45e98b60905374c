package normalise

import (
	"strconv"
	"strings"

	"wakeledger/pipeline/plan"
	"wakeledger/pipeline/unit"
	"wakeledger/pipeline/words"
)

// excepted takes what the log says of the row's trip or day alone in place of what is usual: "only on trip 2 it was 5".
func (r *Reader) excepted() {
	for i := range r.targets {
		t := &r.targets[i]
		if !t.usual || len(t.but) == 0 || r.saysOwn(t) {
			continue
		}
		for _, b := range t.but {
			if !r.isOf(b) {
				continue
			}
			if err := t.cell(r, t, b.Text); err != nil {
				r.unread(t, b.Text, err.Error())
			}
		}
	}
}

// saysOwn tells a row that says itself what a usual value would stand for.
func (r *Reader) saysOwn(usual *target) bool {
	for i := range r.targets {
		if t := &r.targets[i]; t.field == usual.field && !t.usual && t.text != "" && !words.NotLogged(t.text) {
			return true
		}
	}
	return false
}

// isOf tells a row of the trip or the day of an exception. A day without a year is of the row's.
func (r *Reader) isOf(b plan.But) bool {
	if trip := r.value("trip"); b.Trip != "" && trip.Known {
		return strings.EqualFold(trip.Text, b.Trip) || trip.Text == "" && strconv.FormatInt(trip.Int, 10) == b.Trip
	}
	date := r.value("date")
	if b.Day == "" || !date.Known {
		return false
	}
	year, _, _ := unit.Date(date.Int).Civil()
	for _, text := range []string{b.Day, b.Day + " " + strconv.Itoa(year)} {
		if m, err := unit.ParseMoment(text, r.order()); err == nil && m.HasDate {
			return int64(m.Date) == date.Int
		}
	}
	return false
}
