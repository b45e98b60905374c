package browser

import (
	"math"
	"slices"
	"strconv"
	"strings"
	"time"
)

// plot: every point stands in a table that has both its axes as columns, under its
// number where it has one; every line and strip in another table under it.
func (d *disagreement) plot() {
	o := d.f.Option
	across, up := quantity(o.XAxis[0].Name), quantity(o.YAxis[0].Name)
	at := slices.IndexFunc(d.f.Tables, func(t Table) bool { return t.exactly(across) >= 0 && t.exactly(up) >= 0 })
	if at < 0 {
		d.say("no table has columns %q and %q", across, up)
		return
	}
	t := d.f.Tables[at]
	x, y, rank, full := t.exactly(across), t.exactly(up), t.exact("No."), t.exact("Scale")
	left := slices.Clone(t.Rows)
	for _, m := range o.Series[len(o.Series)-1].Data {
		i := slices.IndexFunc(left, func(r []Cell) bool {
			return r[x].value(m, 0, 1) && r[y].value(m, 1, 1) && rank >= 0 && full >= 0 &&
				(m.whole(2) == 1) == (r[full].Text == "certified scale") &&
				(m.whole(3) == 0 && r[rank].Text == unknown ||
					prints(r[rank].Text, float64(m.whole(3))) && m.whole(3) > 0)
		})
		if i < 0 {
			d.say("the point %v is not in the table", m.Value)
			continue
		}
		left = slices.Delete(left, i, i+1)
	}
	for _, r := range left {
		d.say("the chart leaves out %v", r)
	}
	for _, s := range o.Series[:len(o.Series)-1] {
		for _, m := range s.Data {
			if !slices.ContainsFunc(d.f.Tables, func(t Table) bool { return t.hasLine(s.RenderItem, m, up) }) {
				d.say("%s %v is in no table", s.RenderItem, m.Value)
			}
		}
	}
}

// quantity is an axis's name without its unit.
func quantity(axis string) string {
	words, _, _ := strings.Cut(axis, ", ")
	return words
}

// exactly is the column whose head is the words, capitals aside; -1 where none is.
func (t Table) exactly(words string) int {
	return slices.IndexFunc(t.Heads, func(h Head) bool { return strings.EqualFold(h.Text, words) })
}

// hasLine tells whether a reference line stands in a table: a level one as a value of
// the vertical axis, one from the origin as a multiple ("Times ..."), a strip as an
// interval beside such a value.
func (t Table) hasLine(kind string, m Mark, up string) bool {
	level, times := t.exactly(up), t.column(false, "times the")
	for _, r := range t.Rows {
		if kind == "plotBand" {
			if level >= 0 && level+1 < len(r) && r[level+1].spans(m, 1, 2, 1) {
				return true
			}
			continue
		}
		x1, _ := m.at(0)
		y1, _ := m.at(1)
		x2, _ := m.at(2)
		y2, _ := m.at(3)
		switch {
		case y1 == y2 && level >= 0:
			if r[level].is(y2, 1) {
				return true
			}
		case x1 == 0 && y1 == 0 && x2 > 0 && times >= 0:
			key, err := strconv.ParseFloat(r[times].Key, 64)
			if err == nil && math.Abs(key-y2/x2) < 1e-9 && prints(r[times].Text, key) {
				return true
			}
		}
	}
	return false
}

// outings: a column of the chart is a row of the table, in order. A row that is no
// trip and no month ("other months") is not drawn, nor is one whose strikes are not known.
func (d *disagreement) outings() {
	o, t := d.f.Option, d.f.Tables[0]
	strikes, landed, released, hours := t.exact("Strikes"), t.exact("Landed"),
		t.exact("Released"), t.exact("Line-hours")
	both := t.exact("Landed or released") // in the place of the two
	if strikes < 0 || both < 0 && (landed < 0 || released < 0) || hours < 0 {
		d.say("the table has no strikes, landed, released or line-hours")
		return
	}
	// the upper panel shows none
	names := o.XAxis[len(o.XAxis)-1].Data
	// there is nothing to draw
	rows := slices.DeleteFunc(slices.Clone(t.Rows), func(r []Cell) bool { return r[strikes].Text == unknown })
	for i, r := range rows {
		if i >= len(names) {
			if when(r[0].Text) != "" {
				d.say("the chart leaves out %s", r[0].Text)
			}
			continue
		}
		boated, other := o.Series[0].Data, o.Series[1].Data
		if i >= len(boated) || i >= len(other) || i >= len(o.Series[2].Data) {
			d.say("%s has no bars", names[i])
			continue
		}
		a, _ := boated[i].at(0)
		b, _ := other[i].at(0)
		h, _ := o.Series[2].Data[i].at(0)
		atBoat := 0.0
		for _, c := range []int{landed, released, both} {
			if c >= 0 {
				n, _, _ := number(r[c].Text)
				atBoat += n
			}
		}
		if !r[strikes].is(a+b, 1) || atBoat != a || !r[hours].is(h, 1) || !prints(other[i].Label.Formatter, a+b) ||
			!prints(o.Series[2].Data[i].Label.Formatter, h) {
			d.say("%s: %v boated, %v other, %v h in the chart; %s strikes, %v landed or released, %s h in the table",
				names[i], a, b, h, r[strikes].Text, atBoat, r[hours].Text)
		}
		if w := when(r[0].Text); w != "" && w != names[i] {
			d.say("column %s of the chart is row %s of the table", names[i], r[0].Text)
		}
	}
	if len(names) > len(rows) {
		d.say("%d columns in the chart, %d rows in the table", len(names), len(rows))
	}
}

// when is a day or a month of a table as a chart writes it; "" where it is neither.
func when(text string) string {
	if at, err := time.Parse(time.DateOnly, text); err == nil {
		return at.Format("2 Jan")
	}
	if at, err := time.Parse("2006-01", text); err == nil {
		return at.Format("Jan 2006")
	}
	return ""
}
