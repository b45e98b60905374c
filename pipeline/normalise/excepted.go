package normalise

import (
	"slices"
	"strconv"
	"strings"

	"wakeledger/pipeline/entry"
	"wakeledger/pipeline/phrase"
	"wakeledger/pipeline/plan"
	"wakeledger/pipeline/record"
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

// onward takes what a line of words above the row says to hold from there on in place of what is usual.
func (r *Reader) onward() {
	for i := range r.targets {
		t := &r.targets[i]
		for _, s := range t.since {
			if s.Row <= int64(r.row.Num) {
				t.given = s.Text
			}
		}
	}
}

// linesOfRow takes the number of lines that a remark says was out on its row in place of what is usual: "5 rods today".
// Where it says more than that, the usual number stays, and the remark is asked about.
func (r *Reader) linesOfRow() {
	at := slices.IndexFunc(r.targets, func(t target) bool { return t.usual && t.Column.Name == "lines_out" })
	if at < 0 || r.saysOwn(&r.targets[at]) || r.layout.Reads("stretches") || r.layout.Kind == plan.Events {
		return
	}
	usual := r.value("lines_out")
	for i := range r.targets {
		t := &r.targets[i]
		if t.given != "" || t.text == "" || t.Column.Parse != "story" && t.Column.Parse != "fishlist" &&
			t.Column.Name != "notes" {
			continue
		}
		if slices.ContainsFunc(phrase.Turns(t.text, int(usual.Int)), func(x phrase.Turn) bool { return x.At != nil }) {
			continue // of a part of the row's time
		}
		n, sure, ok := phrase.LinesOfRow(t.text, int(usual.Int))
		switch {
		case !ok || sure && entry.OfInt(int64(n)) == usual:
		case sure:
			r.values[r.targets[at].field] = entry.OfInt(int64(n))
		case usual.Known:
			r.aside = append(r.aside, r.problem(t, t.text,
				record.OfLines+", "+strconv.Itoa(n)+", not how long they were out: the usual number was taken"))
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
