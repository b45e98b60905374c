package meaning

import (
	"fmt"
	"slices"
	"strconv"
	"strings"

	"wakeledger/pipeline/plan"
	"wakeledger/pipeline/unit"
	"wakeledger/pipeline/words"
)

// onlyUnits settles columns whose numbers state no unit, where of the two usual
// ones only one is possible: no sea that is trolled has 68 degrees C. Lengths
// of 60 to 80 may be inches or centimetres, and stay open.
func (l *builder) onlyUnits(rows [][]string) {
	for i := range l.plan.Bindings {
		b := &l.plan.Bindings[i]
		c := b.Column
		if b.Unit != "" || !c.HasUnit || c.Bare != "" || c.US == "" || c.Metric == "" {
			continue
		}
		lo, hi, n := bareRange(column(rows, b.Index), c)
		if n == 0 {
			continue
		}
		us, metric := c.Possible(lo, c.US) && c.Possible(hi, c.US), c.Possible(lo, c.Metric) && c.Possible(hi, c.Metric)
		if us == metric {
			continue
		}
		b.Only = c.Metric
		if us {
			b.Only = c.US
		}
		l.plan.Notes = append(l.plan.Notes, fmt.Sprintf("%s: no unit is stated; %s to %s is possible only in %s",
			b.Heading, short(lo), short(hi), b.Only))
	}
}

// bareRange is the range of the numbers without a unit among cells.
func bareRange(cells []string, c *plan.Column) (lo, hi float64, n int) {
	for _, cell := range cells {
		q, err := unit.ParseQuantity(cell, c.Dimension, c.Unit, unit.MarkOf(cell))
		if err != nil || q.Stated {
			continue
		}
		if n == 0 || q.Value < lo {
			lo = q.Value
		}
		if n == 0 || q.Value > hi {
			hi = q.Value
		}
		n++
	}
	return lo, hi, n
}

func short(v float64) string { return strconv.FormatFloat(v, 'f', -1, 64) }

// carried finds key columns that are written once for the rows under it, as by
// merged cells that a text export has lost: many blanks, and never the same
// value on two rows that follow each other.
func (l *builder) carried(rows [][]string) {
	together := l.blankTogether(rows)
	for i := range l.plan.Bindings {
		b := &l.plan.Bindings[i]
		if together[b.Index] {
			b.Carried = true
			l.note("%s: left out for another strike of the row above, and was taken from there", b.Heading)
			continue
		}
		if b.Set > 0 {
			continue // a second stretch is blank where there was none
		}
		if !b.Column.Key || b.Column.Name == "line" || (b.Column.Parse == "moment" && !l.plan.Binds("line", "lure")) {
			continue
		}
		if b.Column.Name == "trip" && l.plan.Kind == plan.Trips &&
			(mostlyNumbered(rows, b.Index) || jumpsOver(rows, b.Index)) {
			continue // the number was forgotten, or nobody went
		}
		if l.mayCarry(b.Column.Name, rows) && writtenOnce(rows, l.withItsClock(b)...) {
			b.Carried = true
			l.note("%s: written once for the rows under it, and was taken for each of them", b.Heading)
		} else if (b.Column.Name == "trip" || b.Column.Name == "date") && onceFromHere(rows, b.Index) {
			b.Carried = true
			l.note("%s: written on each row at first, later once for the rows under it, and was taken for each of them",
				b.Heading)
		} else if (b.Column.Name == "trip" || b.Column.Name == "date") && gapsWithin(rows, b.Index) {
			b.Carried = true
			l.note("%s: left out between two rows that say the same, and was taken from them", b.Heading)
		} else if trip := l.plan.Find("trip"); b.Column.Name == "date" && trip != nil &&
			withinTrip(rows, b.Index, trip.Index) {
			b.Carried = true
			l.note("%s: left out where the trip is that of the row above, and was taken from there", b.Heading)
		} else if leg := l.plan.Find("leg"); b.Column.Name == "trip" && leg != nil && runsOn(rows, b.Index, leg.Index) {
			b.Carried = true
			l.note("%s: left out where the numbers under %s go on, and was taken from above", b.Heading, leg.Heading)
		}
	}
}

// withItsClock are the columns in which a column is written once: that of a stretch's start with its end's, so that two
// days which end at the same time are no stretch that is written twice.
func (l *builder) withItsClock(b *plan.Binding) []int {
	s, e := l.plan.Find("start_s"), l.plan.Find("end_s")
	if s == nil || e == nil || b != s && b != e {
		return []int{b.Index}
	}
	return []int{s.Index, e.Index}
}

// carriedStop has the time stopped written once where the clocks of its stretch are.
func (l *builder) carriedStop() {
	s, e, stop := l.plan.Find("start_s"), l.plan.Find("end_s"), l.plan.Find("stopped_s")
	if s != nil && e != nil && stop != nil && s.Carried && e.Carried {
		stop.Carried = true
	}
}

// carriedHours has hours without clock times written once for the lines of a stretch, a row each: rows under those with
// hours name another line each and no hours, and none of them is of a bite.
func (l *builder) carriedHours(rows [][]string) {
	hours, line := l.plan.Find("duration_s"), l.plan.Find("line")
	if hours == nil || line == nil || l.plan.Kind != plan.Flat || l.plan.Binds("start_s") && l.plan.Binds("end_s") ||
		l.plan.Binds("lines_out", "outcome", "time_s") || !l.plan.Binds(countNames...) {
		return
	}
	named, under, fished := map[string]bool{}, 0, 0
	species := l.plan.Find("species")
	for _, row := range rows {
		name := strings.ToLower(cellOf(row, line.Index))
		switch filled := cellOf(row, hours.Index) != ""; {
		case cells(row) < 2 || isTotal(row):
			continue
		case name == "":
			return
		case filled:
			named = map[string]bool{}
		case named[name] || len(named) == 0:
			return
		default:
			if under++; species != nil && cellOf(row, species.Index) != "" {
				fished++
			}
		}
		named[name] = true
	}
	if under >= fewOnce && 2*fished < under { // else they may be of bites
		hours.Carried = true
		l.note("%s: written once for the lines under it, and was taken for each of them", hours.Heading)
	}
}

// mayCarry keeps a leg from being filled down where its absence says something:
// a strike's clock tells its leg, and a line that names its trip but no leg is
// out on every leg of that trip.
func (l *builder) mayCarry(name string, rows [][]string) bool {
	if name != "leg" {
		return true
	}
	if l.plan.Binds("time_s") {
		return false
	}
	for _, b := range l.plan.Bindings {
		if b.Column.Name == "trip" && l.plan.Kind == plan.Lines {
			return writtenOnce(rows, b.Index)
		}
	}
	return true
}

// withinTrip finds a column of days that is blank in rows which name the trip of the last one with a day, and in no
// other: the fish of a trip below it.
func withinTrip(rows [][]string, date, trip int) bool {
	last, blanks := "", 0
	for _, row := range rows {
		name := strings.ToLower(cellOf(row, trip))
		switch filled := cellOf(row, date) != ""; {
		case cells(row) < 2 || isTotal(row):
		case filled:
			last = name
		case name == "" || name != last:
			return false
		default:
			blanks++
		}
	}
	return blanks >= fewOnce
}

// gapsWithin finds a column whose blank cells all stand between two that say the same.
func gapsWithin(rows [][]string, index int) bool {
	last, gap, found := "", false, false
	for _, row := range rows {
		v := strings.ToLower(cellOf(row, index))
		switch {
		case v == "" && cells(row) == 0:
		case v == "" && last == "":
			return false
		case v == "":
			gap = true
		case gap && v != last:
			return false
		default:
			found, gap, last = found || gap, false, v
		}
	}
	return found && !gap
}

// writtenOnce tells columns that are filled together once for the rows under them.
func writtenOnce(rows [][]string, columns ...int) bool {
	before, under, blanks, filled := "", false, 0, 0
	for _, row := range rows {
		v, opens := "", false
		for _, index := range columns {
			if c := strings.ToLower(cellOf(row, index)); !words.Ditto(c) {
				v += c
			}
			opens = opens || opensAlone(row, index)
		}
		if v == "" {
			if cells(row) > 1 && filled > 0 && !isTotal(row) {
				blanks++
				under = true
			}
			continue
		}
		if cells(row) < 2 && !opens || isTotal(row) {
			continue // a note, or a day's totals
		}
		if filled > 0 && !under && v == before {
			return false
		}
		before, under = v, false
		filled++
	}
	return filled > 0 && 4*blanks >= filled+blanks
}

// fewOnce is how often a value must be written once for the rows under it to be a habit.
const fewOnce = 3

// onceFromHere finds a column that is filled on each row at first, and written once for the rows under it from
// some row on: who keeps a long log grows tired of writing the day.
func onceFromHere(rows [][]string, index int) bool {
	blank := slices.IndexFunc(rows, func(row []string) bool {
		return cellOf(row, index) == "" && cells(row) > 1 && !isTotal(row)
	})
	if blank < 1 {
		return false
	}
	later := rows[blank-1:]
	return len(column(later, index)) > fewOnce && writtenOnce(later, index)
}

// opensAlone tells a row that holds nothing but a column's figure: a day above its stretches.
func opensAlone(row []string, index int) bool {
	return strings.ContainsAny(cellOf(row, index), "0123456789")
}

// runsOn reports whether the stretches of each trip are numbered from 1, and those of rows that name
// no trip go on from the row above: they are of its trip, on another day too.
func runsOn(rows [][]string, trip, leg int) bool {
	last, label, blanks := 0, "", 0
	for _, row := range rows {
		v := cellOf(row, trip)
		n, err := strconv.Atoi(cellOf(row, leg))
		if err != nil {
			if v != "" && v != label {
				return false
			}
			continue
		}
		switch {
		case v == "" && (label == "" || n != last+1):
			return false
		case v == "":
			blanks++
		case v != label && n != 1:
			return false
		default:
			label = v
		}
		last = n
	}
	return blanks > 2
}

// mostlyNumbered reports whether a table of trips gives nearly each of its rows a number.
func mostlyNumbered(rows [][]string, index int) bool {
	with := len(column(rows, index))
	return len(rows) >= 5 && with < len(rows) && 10*with >= 7*len(rows)
}

// jumpsOver reports whether running numbers leave a number free for each blank row between
// them: 5, blank, 7.
func jumpsOver(rows [][]string, index int) bool {
	last, blanks, jumps, stays := 0, 0, 0, 0
	for _, row := range rows {
		n, err := strconv.Atoi(cellOf(row, index))
		switch {
		case err != nil:
			blanks++
			continue
		case last > 0 && blanks > 0 && n == last+blanks+1:
			jumps++
		case blanks > 0:
			stays++
		}
		last, blanks = n, 0
	}
	return jumps > stays
}

// isTotal tells a row of totals by the word in its first cell.
func isTotal(row []string) bool {
	for i := range row {
		if c := cellOf(row, i); c != "" {
			return words.IsTotal(c)
		}
	}
	return false
}

func cellOf(row []string, i int) string {
	if i < len(row) {
		return strings.TrimSpace(row[i])
	}
	return ""
}

// column is the cells of a column that are not blank.
func column(rows [][]string, i int) []string {
	var cells []string
	for _, row := range rows {
		if s := cellOf(row, i); strings.Trim(s, "-–—./ ") != "" { // a dash is nothing
			cells = append(cells, s)
		}
	}
	return cells
}

func cells(row []string) int {
	n := 0
	for i := range row {
		if cellOf(row, i) != "" {
			n++
		}
	}
	return n
}

// ofStrike are columns of what struck, which a row that leaves out its day must have.
var ofStrike = []string{"outcome", "species", "length_cm", "girth_cm", "scale_kg"}

// ofDay are columns of the day and stretch that several strikes share.
var ofDay = []string{"trip", "boat", "captain", "port", "date", "leg", "start_s", "end_s"}

// blankTogether finds columns that some rows leave out all at once, because the row
// above has said them: the second fish of a day. They are the date or trip and
// another, blank in the same rows, which have something that struck, below a row
// that has both. One alone may have been forgotten. Where a row of its own opens each
// day, the others are left out together under it.
func (l *builder) blankTogether(rows [][]string) map[int]bool {
	var day, struck []int
	dated, opens, end := false, -1, -1
	for _, b := range l.plan.Bindings {
		switch name := b.Column.Name; {
		case (name == "date" || name == "trip") && opens < 0 && l.opensDays(rows, b.Index):
			opens, dated = b.Index, true
		case slices.Contains(ofDay, name):
			day = append(day, b.Index)
			dated = dated || name == "date" || name == "trip"
			if name == "end_s" {
				end = b.Index
			}
		case slices.Contains(ofStrike, name):
			struck = append(struck, b.Index)
		}
	}
	if !dated || len(day) < 2 || len(struck) == 0 {
		return nil
	}
	found := map[int]bool{}
	above := 0 // filled of day in the row above
	for _, row := range rows {
		filled := filledOf(row, day)
		switch {
		case opens >= 0 && cellOf(row, opens) != "":
			above = 0
		case filled == len(day)-1 && end >= 0 && cellOf(row, end) == "":
			above = filled // its end was forgotten
		case filled == 0 && (above == 0 || filledOf(row, struck) == 0) && cells(row) > 1,
			filled > 0 && filled < len(day) && cells(row) > 1 && !isTotal(row):
			return nil // blank for another reason
		case filled == 0 && cells(row) > 1:
			for _, i := range day {
				found[i] = true
			}
		default:
			above = filled
		}
	}
	return found
}

// opensDays reports whether a column stands in rows of its own that open a day: they tell of
// no hours and of nothing that struck.
func (l *builder) opensDays(rows [][]string, index int) bool {
	var others []int
	for _, b := range l.plan.Bindings {
		if b.Index != index && (slices.Contains(ofDay, b.Column.Name) || slices.Contains(ofStrike, b.Column.Name)) {
			others = append(others, b.Index)
		}
	}
	opened := 0
	for _, row := range rows {
		switch {
		case isTotal(row), cellOf(row, index) == "":
		case filledOf(row, others) > 0:
			return false
		default:
			opened++
		}
	}
	return opened > 1
}

func filledOf(row []string, indexes []int) int {
	n := 0
	for _, i := range indexes {
		if cellOf(row, i) != "" {
			n++
		}
	}
	return n
}
