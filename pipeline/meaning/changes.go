package meaning

import (
	"slices"

	"wakeledger/pipeline/layout"
	"wakeledger/pipeline/unit"
	"wakeledger/pipeline/words"
)

// Of rows that each say what was changed: on how many days at least the last one says that no lines are
// out, and of how many in ten.
const (
	fewUp  = 3
	mostUp = 8
)

// changes gives a table of changes - a day, one clock time, the number of lines, which is nought at the
// end of each day - the times from and until which each row holds. It says so, "" where b is none.
func (t *Lexicon) changes(b *layout.Block) string {
	if b.Shape != layout.Table || b.Open || len(b.Rows) < 2*fewUp {
		return ""
	}
	date, time, lines := t.changeColumns(b)
	if date < 0 || time < 0 || lines < 0 {
		return ""
	}
	days, up, last := 0, 0, -1
	for i := range b.Rows {
		next := i + 1
		same := next < len(b.Rows) && cellText(b.Rows[next], date) == cellText(b.Rows[i], date)
		if same {
			a, okA := clockOf(b.Rows[i], time)
			z, okZ := clockOf(b.Rows[next], time)
			if !okA || !okZ || z <= a {
				return ""
			}
			continue
		}
		if days++; cellText(b.Rows[i], lines) == "0" && i > last+1 {
			up++
		}
		last = i
	}
	if up < fewUp || 10*up < mostUp*days || len(b.Rows) < 3*days {
		return ""
	}
	holdUntil(b, date, time)
	return heldUntil
}

// heldUntil is what is said of a table of changes.
const heldUntil = "each row holds until the next one of its day: from and until were taken from there, " +
	"and speed and lines that are blank from the row above"

// holdUntil adds to each row from and until when it holds.
func holdUntil(b *layout.Block, date, time int) {
	from := 0
	for _, l := range b.Labels {
		from = max(from, l.Col+1)
	}
	b.Labels = append(slices.Clone(b.Labels), layout.Label{Col: from, Text: "from"},
		layout.Label{Col: from + 1, Text: "until"})
	for i := range b.Rows {
		r := &b.Rows[i]
		cells := append(make([]layout.Cell, 0, from+2), r.Cells...)
		for len(cells) < from {
			cells = append(cells, layout.Cell{})
		}
		start, end := cellAtCol(b.Rows[i], time), layout.Cell{}
		if i+1 < len(b.Rows) && cellText(b.Rows[i+1], date) == cellText(*r, date) {
			end = cellAtCol(b.Rows[i+1], time)
		}
		r.Cells = append(cells[:from], start, end)
	}
}

// changeColumns are the columns of the day, of the clock time and of the number of lines, -1 where there
// is none, or several, or words that say when lines went in and came up.
func (t *Lexicon) changeColumns(b *layout.Block) (date, time, lines int) {
	date, time, lines = -1, -1, -1
	for _, l := range b.Labels {
		x := seenIn(b, l.Col)
		switch full := 10*x.n >= 9*len(b.Rows); {
		case x.n == 0:
		case x.durations > 0 || 25*x.in > x.n && 25*x.up > x.n:
			return -1, -1, -1
		case full && 10*x.dates >= 9*x.n:
			if date >= 0 {
				return -1, -1, -1
			}
			date = l.Col
		case 10*x.clocks >= 9*x.n:
			if time >= 0 || !full {
				return -1, -1, -1
			}
			time = l.Col
		case x.noughts >= fewUp && lines < 0 && t.speaksOf(l, "lines_out"):
			lines = l.Col
		case t.speaksOf(l, "duration_s"), t.speaksOf(l, "end_s"), t.speaksOf(l, "start_s"):
			return -1, -1, -1
		}
	}
	return date, time, lines
}

// seen is how many cells of a column are filled, and what they look like.
type seen struct{ n, dates, clocks, durations, noughts, in, up int }

func seenIn(b *layout.Block, col int) (x seen) {
	for _, r := range b.Rows {
		c := cellAtCol(r, col)
		if c.Look == layout.Blank {
			continue
		}
		x.n++
		switch c.Look {
		case layout.Date:
			x.dates++
		case layout.Clock:
			x.clocks++
		case layout.Duration:
			x.durations++
		}
		if c.Text == "0" {
			x.noughts++
		}
		switch words.EntryOf(c.Text).Event {
		case words.EventIn:
			x.in++
		case words.EventUp:
			x.up++
		}
	}
	return x
}

// speaksOf reports whether the words of a heading say most of all that it holds a column.
func (t *Lexicon) speaksOf(l layout.Label, name string) bool {
	best, weight := "", accounted
	for c, s := range t.said(l).columns {
		if s.weight > weight || s.weight == weight && c.Name < best {
			best, weight = c.Name, s.weight
		}
	}
	return best == name
}

func cellAtCol(r layout.Row, col int) layout.Cell {
	if col < len(r.Cells) {
		return r.Cells[col]
	}
	return layout.Cell{}
}

// clockOf is a cell's time of day in seconds.
func clockOf(r layout.Row, col int) (int, bool) {
	text := cellText(r, col)
	if x, ok := number(text); ok && x >= 0 && x < 1 {
		return int(x*24*3600 + 0.5), true
	}
	m, err := unit.ParseMoment(text, unit.OrderUnknown)
	return int(m.Seconds), err == nil && m.HasTime && !m.HasDate
}
