package layout

import (
	"regexp"
	"slices"
	"strconv"
	"strings"
)

const (
	leastHours = 3 // columns of a table whose rows are hours
	hoursLabel = "hours trolled"
	bitesLabel = "bites"
)

var (
	// hourHead is an hour of the day, told by its begin: "5am", "05-06h", "5 o'clock", "05:00".
	hourHead = regexp.MustCompile(`(?i)^(\d{1,2})(?:[:.]00(?::00)?)?\s*` +
		`(am|pm|a|p|h|hrs?|uhr|o'?clock|-\s*\d{1,2}(?:[:.]00)?\s*(?:h|am|pm)?)?$`)
	// strokes are bites, a mark each.
	strokes = regexp.MustCompile(`^(?:[xX]+|I+|\|+|/+)$`)
	// noBite is an hour in which nothing bit.
	noBite = regexp.MustCompile(`^(?:\.|-|–|0)$`)
	// hourOf stands over the hours of rows of an hour each.
	hourOf = regexp.MustCompile(`(?i)^hour\b`)
)

// hourly makes hours trolled, and bites, of tables whose hours of the day stand side by side or one below the other,
// where a line of the log says how these are meant.
func (g *Grid) hourly(like Likeness) {
	if g.More || like.Hourly == nil {
		return
	}
	said := map[string]bool{}
	for r := range g.Rows {
		if cells := g.Rows[r].filled(0, g.Width); len(cells) == 1 {
			said[like.Hourly(g.Rows[r].at(cells[0]).Text)] = true
		}
	}
	for r := range g.Rows {
		if said["until"] && g.untilNext(r, like) {
			return
		}
		if said["columns"] && g.hourColumns(r) || said["rows"] && g.hourRows(r, like) {
			return
		}
	}
}

// hourColumns adds up the hours of a table whose heading at row r has columns of hours.
func (g *Grid) hourColumns(r int) bool {
	var cols []int
	last := -1
	for i := range g.Rows[r].Cells {
		m := hourHead.FindStringSubmatch(g.Rows[r].Cells[i].Text)
		if m == nil {
			continue
		}
		h, _ := strconv.Atoi(m[1])
		if h %= 12; last >= 0 && h != (last+1)%12 {
			return false
		}
		cols, last = append(cols, i), h
	}
	if len(cols) < 2 {
		return false
	}
	type sum struct{ hours, bites int }
	sums := map[int]sum{}
	for q := r + 1; q < len(g.Rows); q++ {
		var s sum
		for _, i := range cols {
			text := g.Rows[q].at(i).Text
			n, err := strconv.Atoi(text)
			switch {
			case text == "":
				continue
			case noBite.MatchString(text):
			case strokes.MatchString(text):
				s.bites += len(text)
			case err == nil && n > 0:
				s.bites += n
			default:
				return false
			}
			s.hours++
		}
		if s.hours > 0 {
			sums[q] = s
		}
	}
	if len(sums) == 0 {
		return false
	}
	for q := r; q < len(g.Rows); q++ {
		for _, i := range cols {
			if i < len(g.Rows[q].Cells) {
				g.Rows[q].Cells[i] = Cell{}
			}
		}
		if s, ok := sums[q]; ok {
			put(&g.Rows[q], cols[0], Cell{Text: strconv.Itoa(s.hours), Look: Number})
			put(&g.Rows[q], cols[1], Cell{Text: strconv.Itoa(s.bites), Look: Number})
		}
	}
	put(&g.Rows[r], cols[0], Cell{Text: hoursLabel, Look: Text})
	put(&g.Rows[r], cols[1], Cell{Text: bitesLabel, Look: Text})
	return true
}

// hourRows gives each row of a table under the heading at row r, in which rows are hours, the hour that it is.
func (g *Grid) hourRows(r int, like Likeness) bool {
	head := g.Rows[r].filled(0, g.Width)
	i := slices.IndexFunc(head, func(i int) bool { return hourOf.MatchString(g.Rows[r].at(i).Text) })
	if i < 0 || len(head) < leastHours {
		return false
	}
	col := head[i]
	clock := false
	for q := r + 1; q < len(g.Rows); q++ {
		text := g.Rows[q].at(col).Text
		if text == "" {
			continue
		}
		if !hourHead.MatchString(text) {
			return false
		}
		clock = clock || strings.Trim(text, "0123456789") != ""
	}
	end := g.Width
	put(&g.Rows[r], end, Cell{Text: hoursLabel, Look: Text})
	for q := r + 1; q < len(g.Rows); q++ {
		if cell := g.Rows[q].at(col); cell.Text != "" && !g.idle(q, like) {
			put(&g.Rows[q], end, Cell{Text: "1", Look: Number})
		}
		if !clock && col < len(g.Rows[q].Cells) {
			g.Rows[q].Cells[col] = Cell{} // only the count of the hours
		}
	}
	if g.Rows[r].Cells[col] = (Cell{Text: "start", Look: Text}); !clock {
		g.Rows[r].Cells[col] = Cell{}
	}
	g.Width = end + 1
	return true
}

// idle tells a row of an hour in which, as it says, no lines were out.
func (g *Grid) idle(r int, like Likeness) bool {
	return slices.ContainsFunc(g.Rows[r].Cells, func(c Cell) bool {
		return c.Look == Text && like.Hourly(c.Text) == "idle"
	})
}

// fewUntil is how many rows a table has at the least whose rows hold until the next one.
const fewUntil = 4

// untilNext gives each row of the table under the heading at row r its end, which is the time of the next one, as the
// log says. A row that says no more than that the lines came up only ends the one above it.
func (g *Grid) untilNext(r int, like Likeness) bool {
	col, rows := g.clocks(r)
	if col < 0 {
		return false
	}
	ups := map[int]bool{}
	for _, q := range rows {
		for _, c := range g.Rows[q].Cells {
			ups[q] = ups[q] || c.Look == Text && like.Event(c.Text) == "lines up"
		}
		if ups[q] && len(g.Rows[q].filled(0, g.Width)) > 3 {
			return false // it counts bites, or more
		}
	}
	if len(ups) == 0 || !slices.ContainsFunc(rows, func(q int) bool { return ups[q] }) {
		return false
	}
	end := g.Width
	put(&g.Rows[r], end, Cell{Text: "end", Look: Text})
	g.Rows[r].Cells[col] = Cell{Text: "start", Look: Text}
	for k, q := range rows[:len(rows)-1] {
		next := rows[k+1]
		if !ups[q] && (ups[next] || !g.dayBegins(next, q, col)) {
			put(&g.Rows[q], end, g.Rows[next].at(col))
		}
	}
	g.Width = end + 1
	for _, q := range slices.Backward(rows) {
		if ups[q] {
			g.Rows = slices.Delete(g.Rows, q, q+1)
		}
	}
	return true
}

// clocks are the column of a table under the heading at row r that has a time of day in each row, and those rows.
func (g *Grid) clocks(r int) (col int, rows []int) {
	head := g.Rows[r].filled(0, g.Width)
	other := func(i int) bool { return g.Rows[r].Cells[i].Look != Text }
	if len(head) < leastHours || slices.ContainsFunc(head, other) {
		return -1, nil
	}
	for _, col := range head {
		rows = rows[:0]
		for q := r + 1; q < len(g.Rows); q++ {
			if len(g.Rows[q].filled(0, g.Width)) < 2 {
				continue // a note
			}
			if c := g.Rows[q].at(col); c.Look != Clock && !clockFigure.MatchString(c.Text) {
				rows = nil
				break
			}
			rows = append(rows, q)
		}
		if len(rows) >= fewUntil {
			return col, rows
		}
	}
	return -1, nil
}

// clockFigure is a time of day without a colon: 0615, 745.
var clockFigure = regexp.MustCompile(`^(?:[01]?\d|2[0-3])[0-5]\d$`)

// dayBegins tells a row that names another day than the one above it does.
func (g *Grid) dayBegins(r, above, col int) bool {
	for i := range col {
		if c := g.Rows[r].at(i); c.Look == Date && c.Text != g.Rows[above].at(i).Text {
			return true
		}
	}
	return false
}
