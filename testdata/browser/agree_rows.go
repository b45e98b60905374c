package browser

import (
	"slices"
	"strings"
)

// rates: a level's rate and interval stand in its row, under a head that names what
// the axis measures; the dashed line stands in the row at the foot.
func (d *disagreement) rates() {
	o, t := d.f.Option, d.f.Tables[0]
	axis := o.XAxis[0].Name
	value := t.column(true, axis)
	if value < 0 {
		d.say("the table has no column of %s with an interval beside it", axis)
		return
	}
	d.each(t, value, func(i int, row []Cell, under string) {
		at := t.column(true, axis, under)
		if i >= len(o.Series[0].Data) || at < 0 {
			d.say("%s %s is not in chart and table both", name(row), under)
			return
		}
		m := o.Series[0].Data[i]
		if m.whole(0) != i || !row[at].value(m, 1, 1) || !row[at+1].spans(m, 2, 3, 1) {
			d.say("%s %s: %v in the chart, %s (%s) in the table", name(row), under,
				m.Value, row[at].Text, row[at+1].Text)
		}
	})
	for _, l := range o.Series[0].MarkLine.Data {
		if l.XAxis != nil && (len(t.Foot) <= value || !t.Foot[value].is(*l.XAxis, 1)) {
			d.say("the line at %v is not at the foot of the table", *l.XAxis)
		}
	}
}

// shares: two shares of a level in per cent, each under a head that has the first
// word of its key, with the interval in the next column.
func (d *disagreement) shares() {
	o, t := d.f.Option, d.f.Tables[0]
	var at [2]int
	for slot := range at {
		if slot >= len(d.f.Keys) {
			d.say("no key for each share")
			return
		}
		if at[slot] = t.column(true, "share", strings.Fields(d.f.Keys[slot])[0]); at[slot] < 0 {
			d.say("the table has no share %q with an interval beside it", d.f.Keys[slot])
			return
		}
	}
	seen := make([]int, len(o.YAxis[0].Data))
	d.each(t, at[0], func(i int, row []Cell, _ string) {
		for _, m := range o.Series[0].Data {
			slot := m.whole(4)
			if m.whole(0) != i || slot > 1 || slot < 0 {
				continue
			}
			seen[i]++
			if c := at[slot]; !row[c].value(m, 1, 0.01) || !row[c+1].spans(m, 2, 3, 0.01) {
				d.say("%s: %v in the chart, %s (%s) in the table", name(row), m.Value, row[c].Text, row[c+1].Text)
			}
		}
		if seen[i] != 2 {
			d.say("%s: %d marks in the chart", name(row), seen[i])
		}
	})
}

// effort: the bar's length and the number printed at it.
func (d *disagreement) effort() {
	o, t := d.f.Option, d.f.Tables[0]
	value := t.column(false, o.XAxis[0].Name)
	if value < 0 {
		d.say("the table has no column of %s", o.XAxis[0].Name)
		return
	}
	d.each(t, value, func(i int, row []Cell, _ string) {
		if i >= len(o.Series[0].Data) {
			d.say("%s has no bar", name(row))
			return
		}
		m := o.Series[0].Data[i]
		v, _ := m.at(0)
		if !row[value].value(m, 0, 1) || !prints(m.Label.Formatter, v) {
			d.say("%s: %v (%s) in the chart, %s in the table", name(row), m.Value, m.Label.Formatter, row[value].Text)
		}
	})
}

// onScale is what stands behind a level, or heads a column, for the fish weighed.
const onScale = "on a scale"

// histogram: the counts of a level by class, and of them those drawn solid. Classes
// are the table's columns, with a second row "level, on a scale"; or, with one level,
// its rows, with a column of those on a scale, or all are solid.
func (d *disagreement) histogram() {
	o, t := d.f.Option, d.f.Tables[0]
	if len(o.YAxis[0].Data) == 1 && t.row(className(o.XAxis[0].Data, 0)) != nil {
		d.histogramByRow()
		return
	}
	total := map[string]float64{}
	apart := slices.ContainsFunc(t.Rows, func(r []Cell) bool { return strings.HasSuffix(name(r), ", "+onScale) })
	for _, m := range o.Series[0].Data {
		class, lvl := className(o.XAxis[0].Data, m.whole(0)), className(o.YAxis[0].Data, m.whole(1))
		at, row := t.exact(class), t.row(lvl)
		if at < 0 || row == nil {
			d.say("%s, %s is not in the table", lvl, class)
			continue
		}
		n, _ := m.at(2)
		total[lvl] += n
		if !row[at].value(m, 2, 1) {
			d.say("%s, %s: %v fish in the chart, %s in the table", lvl, class, n, row[at].Text)
		}
		if scale := t.row(lvl + ", " + onScale); scale != nil {
			if !scale[at].value(m, 3, 1) {
				d.say("%s, %s: %v in the chart, on a scale %s in the table", lvl, class, m.Value, scale[at].Text)
			}
		} else if solid, _ := m.at(3); solid != n || apart {
			d.say("the table does not say how many of %s are on a scale", lvl)
		}
	}
	all := t.exact("All")
	for i, label := range o.YAxis[0].Data {
		lvl, _ := level(label)
		row := t.row(lvl)
		if row == nil || all < 0 || !row[all].is(total[lvl], 1) {
			d.say("%s: %v fish in the chart, another sum in the table", lvl, total[lvl])
			continue
		}
		d.counts(t, row, o.YAxis[1].Data[i], "")
	}
}

// histogramByRow is a histogram of one level, a class a row.
func (d *disagreement) histogramByRow() {
	o, t := d.f.Option, d.f.Tables[0]
	fish, scale := t.exact("Fish"), t.column(false, onScale)
	if fish < 0 {
		d.say("the table has no column of fish")
		return
	}
	if scale < 0 { // all are drawn alike
		scale = fish
	}
	sum := 0.0
	for _, m := range o.Series[0].Data {
		n, _ := m.at(2)
		sum += n
		row := t.row(className(o.XAxis[0].Data, m.whole(0)))
		if row == nil || !row[fish].value(m, 2, 1) || !row[scale].value(m, 3, 1) {
			d.say("class %s: %v in the chart, not so in the table", className(o.XAxis[0].Data, m.whole(0)), m.Value)
		}
	}
	if m := countForm.FindStringSubmatch(o.YAxis[1].Data[0]); m == nil || !prints(m[1], sum) ||
		len(t.Rows) != len(o.Series[0].Data) {
		d.say("%v fish in %d classes in the chart, printed as %q; %d rows in the table", sum, len(o.Series[0].Data),
			o.YAxis[1].Data[0], len(t.Rows))
	}
}

func className(names []string, i int) string {
	if i < 0 || i >= len(names) {
		return ""
	}
	level, _ := level(names[i])
	return level
}

// exact is the column of this very head; -1 where there is none.
func (t Table) exact(head string) int {
	for i, h := range t.Heads {
		if h.Text == head {
			return i
		}
	}
	return -1
}
