package meaning

import (
	"math"
	"slices"
	"strconv"
	"strings"

	"wakeledger/pipeline/layout"
)

// said is how much the words of a column's heading speak for a meaning.
func (g *group) said(column int, name string) float64 {
	for _, c := range g.cands[column] {
		if c.column == nil || c.column.Name != name {
			continue
		}
		for _, v := range c.votes {
			if v.Evidence == "words" {
				return v.Weight
			}
		}
	}
	return 0
}

// running tells whole numbers that count the rows: each one more than the one before.
func (v *Values) running() bool {
	steps, numbers := 0, v.forward()
	for i := 1; i < len(numbers); i++ {
		if numbers[i] == numbers[i-1]+1 {
			steps++
		}
	}
	return len(v.numbers) > 4 && 10*steps >= 9*(len(v.numbers)-1)
}

// tripOfDay holds that a trip's number changes with the day and with nothing else, in a table
// of several rows a day; a few trips may last over a night. Of numbers that no word says to be a trip's,
// all else is nothing.
func tripOfDay(g *group, a assigned) float64 {
	t, d := a.first("trip"), a.first("date")
	if t < 0 || g.worded(t, "trip") {
		return 0
	}
	none := -3.0
	if g.voted(t, "trip", shortened) {
		none = 0
	}
	if d < 0 {
		return none
	}
	return g.cached("tripday", []int{t, d}, func() float64 {
		days, trips := map[string]string{}, map[string]string{}
		rows := 0
		for r, c := range g.values[t].Rows {
			day := g.values[d].Rows[r]
			if !told(c) || !told(day) {
				continue
			}
			rows++
			if x, ok := days[day.Text]; ok && x != c.Text {
				return none
			}
			days[day.Text] = c.Text
			if _, ok := trips[c.Text]; !ok {
				trips[c.Text] = day.Text
			}
		}
		if len(trips) < 4 || 3*(len(days)-len(trips)) > len(trips) || 10*len(trips) > 9*rows {
			return none
		}
		return 2.5
	})
}

// linesEach holds that lines out are as many as the lures that another column lists; and that
// small whole numbers, never none and often the same, beside the hours and the speed of a
// stretch are its lines where no other column can be.
func linesEach(g *group, a assigned) float64 {
	l := a.first("lines_out")
	if l < 0 {
		return 0
	}
	if g.cached("listed", []int{l}, func() float64 { return g.listed(l) }) > 0 {
		return 3
	}
	if a.first("speed_kn") < 0 || a.first("start_s") < 0 && a.first("duration_s") < 0 ||
		!g.values[l].likeLines(g.rows) {
		return 0
	}
	taken := map[int]bool{}
	for _, columns := range a {
		for _, i := range columns {
			taken[i] = true
		}
	}
	for i, v := range g.values {
		if !taken[i] && v.likeLines(g.rows) {
			return 0
		}
	}
	return 1.2
}

// likeLines tells whole numbers from 1 to 12 in nearly every row, a few of them again and again.
func (v *Values) likeLines(rows int) bool {
	return v.once("lines of a stretch", func() float64 {
		if v.fewLines(rows) {
			return 1
		}
		return 0
	}) > 0
}

func (v *Values) fewLines(rows int) bool {
	return len(v.cells) > 5 && 5*len(v.cells) >= 4*rows && v.whole(1, 12) > 0.97 && !v.rising() &&
		v.distinct()*float64(len(v.cells)) <= 8 && v.distinct() <= 0.5
}

// listed is 1 where a column is in nearly all rows the number of words or parts that a column
// of texts lists.
func (g *group) listed(column int) float64 {
	for i, v := range g.values {
		if i == column || v.texts() < 0.6 {
			continue
		}
		n, same := 0, 0
		counts := map[int]bool{}
		for r, c := range v.Rows {
			x := g.value(column, r)
			if c.Look != layout.Text || math.IsNaN(x) {
				continue
			}
			n++
			for _, parts := range [][]string{strings.Fields(c.Text),
				strings.FieldsFunc(c.Text, func(r rune) bool { return strings.ContainsRune(",;/+|", r) })} {
				if len(parts) > 1 && float64(len(parts)) == x {
					same++
					counts[len(parts)] = true
					break
				}
			}
		}
		if n > 4 && 10*same >= 8*n && len(counts) > 1 {
			return 1
		}
	}
	return 0
}

// meterHours holds that hours are the engine's where they are the difference of two readings
// of a meter, numbers that go on from row to row.
func meterHours(g *group, a assigned) float64 {
	t := 0.0
	for _, name := range []string{"duration_s", "line_hours"} {
		for _, h := range a[name] {
			t += g.cached("meter", []int{h}, func() float64 {
				var meters []int
				for i, v := range g.values {
					if i != h && v.onMeter() && len(meters) < mostMeters {
						meters = append(meters, i)
					}
				}
				for _, from := range meters {
					if slices.ContainsFunc(meters, func(to int) bool { return to != from && g.differ(h, from, to) }) {
						return -8
					}
				}
				return 0
			})
		}
	}
	return t
}

// mostMeters is how many columns of a table are tried as readings of a meter.
const mostMeters = 6

// onMeter tells readings of a meter: numbers over a day's hours that never go back.
func (v *Values) onMeter() bool {
	return len(v.numbers) > 3 && v.numeric() > 0.9 && v.rising() && slices.Min(v.numbers) > 24 && v.dates() < 0.5
}

// differ tells whether a column is in nearly all rows the difference of two others.
func (g *group) differ(h, from, to int) bool {
	n, same := 0, 0
	for r := range g.rows {
		d := g.value(to, r) - g.value(from, r)
		x := g.hours(h, r)
		if math.IsNaN(d) || math.IsNaN(x) {
			continue
		}
		n++
		if math.Abs(d-x) < 0.06 {
			same++
		}
	}
	return n > 3 && 10*same >= 9*n
}

// entriesTimes holds that what stands beside a start and an end is told of that stretch: an entry of a
// log of events has one time.
func entriesTimes(g *group, a assigned) float64 {
	if len(a["event"]) == 0 || !a.has("start_s", "end_s") || startBeforeEnd(g, a) <= 0 {
		return 0
	}
	return -4
}

// offTheClock holds that hours fished in another way are taken off clock times, and off no hours of trolling.
func offTheClock(g *group, a assigned) float64 {
	i := a.first("stopped_s")
	if i < 0 || !otherHours(g.values[i].Label.Text) || a.has("start_s", "end_s") && !a.has("duration_s") {
		return 0
	}
	return -8
}

// lettersOfStretch holds that letters beside the hours of a stretch say nothing of fish where no word of their heading
// does and the table names no fish: who was aboard, more likely.
func lettersOfStretch(g *group, a assigned) float64 {
	i := a.first("outcome")
	if i < 0 || !g.lettersAlone(a, i) || !a.has("start_s") && !a.has("duration_s") {
		return 0
	}
	return -4
}

// lettersAlone tells a column of letters whose heading speaks of no fate, in a table that says nothing else of a fish.
func (g *group) lettersAlone(a assigned, column int) bool {
	return g.values[column].length() <= 1 && !g.worded(column, "outcome") &&
		!slices.ContainsFunc(append([]string{"species", "time_s", "line", "lure", "strike", "length_cm", "scale_kg"},
			countNames...), func(name string) bool { return len(a[name]) > 0 })
}

// clockFollows holds that stretches of one day, each with one clock time and its hours, come one after the other: the
// hours of each fit between its time and the next one's where it is when the lines went in, and between the last one's
// time and its own where it is when they came up or the boat was back.
func clockFollows(g *group, a assigned) float64 {
	d, h := a.first("date"), a.first("duration_s")
	if d < 0 || h < 0 || a.has("start_s", "end_s") || a.has("depart_s", "return_s") {
		return 0
	}
	t := 0.0
	for _, name := range []string{"start_s", "depart_s", "end_s", "return_s"} {
		c := a.first(name)
		if c < 0 {
			continue
		}
		before := name == "start_s" || name == "depart_s"
		t += g.cached("follows "+strconv.FormatBool(before), []int{d, c, h}, func() float64 {
			return g.follows(d, c, h, before)
		})
	}
	return t
}

// follows counts the stretches that leave no room for their hours where their times are those before, or behind, them.
func (g *group) follows(d, c, h int, before bool) float64 {
	n, off := 0, 0
	day, last, lasted := "", -1, 0.0
	for r, at := range g.values[c].seconds() {
		hours := g.hours(h, r)
		if cell := g.values[d].Rows[r]; told(cell) && cell.Text != day {
			day, last = cell.Text, -1
		}
		if at < 0 || math.IsNaN(hours) {
			continue
		}
		if last >= 0 && at != last {
			n++
			between := math.Mod(float64(at-last)/3600+24, 12)
			if before && lasted > between+0.1 || !before && hours > between+0.1 {
				off++
			}
		}
		last, lasted = at, hours
	}
	if n > 2 && 4*off > n {
		return -3
	}
	return 0
}

// homeOnce holds that the boat comes home once a day, as a rule: a column alone with several times of most days tells
// of stretches.
func homeOnce(g *group, a assigned) float64 {
	d, c := a.first("date"), a.first("return_s")
	if d < 0 || c < 0 || a.has("depart_s") {
		return 0
	}
	return g.cached("home", []int{d, c}, func() float64 {
		times := map[string]int{}
		day, several := "", 0
		for r, at := range g.values[c].seconds() {
			if cell := g.values[d].Rows[r]; told(cell) {
				day = cell.Text
			}
			if at < 0 || day == "" {
				continue
			}
			if first, ok := times[day]; !ok {
				times[day] = at
			} else if first >= 0 && first != at {
				several++
				times[day] = -1
			}
		}
		if several > 1 && 4*several > len(times) {
			return -3
		}
		return 0
	})
}

// risingHours holds that hours which rise from row to row of each day, and are together more than a day has, are times
// by the clock.
func risingHours(g *group, a assigned) float64 {
	h, d := a.first("duration_s"), a.first("date")
	if h < 0 || d < 0 {
		return 0
	}
	return g.cached("rising", []int{h, d}, func() float64 {
		day, last, sum, n, over := "", 0.0, 0.0, 0, false
		all, same := 0, 0
		for r := range g.rows {
			x := g.hours(h, r)
			if t := g.values[d].Rows[r].Text; t != "" && t != day {
				day, last, sum, n = t, 0, 0, 0
			}
			if math.IsNaN(x) {
				continue
			}
			if x < last {
				return 0
			}
			if all++; x == last {
				same++ // two may strike at once
			}
			last, sum, n = x, sum+x, n+1
			over = over || n > 2 && sum > 24
		}
		if over && 2*same < all {
			return -4
		}
		return 0
	})
}
