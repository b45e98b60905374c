package recognise

import (
	"fmt"
	"strconv"
	"strings"

	"wakeledger/pipeline/unit"
)

// onlyUnits settles columns whose numbers state no unit, where of the two usual
// ones only one is possible: no sea that is trolled has 68 degrees C. Lengths
// of 60 to 80 may be inches or centimetres, and stay open.
func (l *Layout) onlyUnits(rows [][]string) {
	for i := range l.Bindings {
		b := &l.Bindings[i]
		c := b.Column
		if b.Unit != "" || !c.HasUnit || c.Bare != "" || c.US == "" || c.Metric == "" {
			continue
		}
		lo, hi, n := bareRange(column(rows, b.Index), c)
		if n == 0 {
			continue
		}
		us, metric := c.possible(lo, c.US) && c.possible(hi, c.US), c.possible(lo, c.Metric) && c.possible(hi, c.Metric)
		if us == metric {
			continue
		}
		b.Only = c.Metric
		if us {
			b.Only = c.US
		}
		l.Notes = append(l.Notes, fmt.Sprintf("%s: no unit is stated; %s to %s is possible only in %s",
			b.Heading, number(lo), number(hi), b.Only))
	}
}

// bareRange is the range of the numbers without a unit among cells.
func bareRange(cells []string, c *Column) (lo, hi float64, n int) {
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

func (c *Column) possible(v float64, u unit.Unit) bool {
	w, err := unit.Convert(v, u, c.Unit)
	return err == nil && !(w < c.Min) && !(w > c.Max)
}

func number(v float64) string { return strconv.FormatFloat(v, 'f', -1, 64) }

// carried finds key columns that are written once for the rows under it, as by
// merged cells that a text export has lost: many blanks, and never the same
// value on two rows that follow each other.
func (l *Layout) carried(rows [][]string) {
	together := l.blankTogether(rows)
	for i := range l.Bindings {
		b := &l.Bindings[i]
		if together[b.Index] {
			b.Carried = true
			l.Notes = append(l.Notes, b.Heading+": left out for another strike of the row above, and was taken from there")
			continue
		}
		if !b.Column.Key || b.Column.Name == "line" || (b.Column.Parse == "moment" && !l.binds("line", "lure")) {
			continue
		}
		if l.mayCarry(b.Column.Name, rows) && writtenOnce(rows, b.Index) {
			b.Carried = true
			l.Notes = append(l.Notes, b.Heading+": written once for the rows under it, and was taken for each of them")
		}
	}
}

// mayCarry keeps a leg from being filled down where its absence says something:
// a strike's clock tells its leg, and a line that names its trip but no leg is
// out on every leg of that trip.
func (l *Layout) mayCarry(name string, rows [][]string) bool {
	if name != "leg" {
		return true
	}
	if l.binds("time_s") {
		return false
	}
	for _, b := range l.Bindings {
		if b.Column.Name == "trip" && l.Kind == Lines {
			return writtenOnce(rows, b.Index)
		}
	}
	return true
}

func writtenOnce(rows [][]string, index int) bool {
	before, under, blanks, filled := "", false, 0, 0
	for _, row := range rows {
		if len(column([][]string{row}, index)) == 0 {
			if cells(row) > 1 && filled > 0 && !isTotal(row) {
				blanks++
				under = true
			}
			continue
		}
		if cells(row) < 2 || isTotal(row) {
			continue // a note, or a day's totals
		}
		v := strings.ToLower(cellOf(row, index))
		if filled > 0 && !under && v == before {
			return false
		}
		before, under = v, false
		filled++
	}
	return filled > 0 && 4*blanks >= filled+blanks
}

// isTotal tells a row of totals by the word in its first cell.
func isTotal(row []string) bool {
	for i := range row {
		if c := cellOf(row, i); c != "" {
			return speaksOf(normalise(c), "total", "totals", "subtotal", "sum")
		}
	}
	return false
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
