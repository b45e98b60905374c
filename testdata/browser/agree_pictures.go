package browser

import (
	"math"
	"regexp"
	"strconv"
	"strings"
)

// printedNumber is a number as a page prints it within words.
var printedNumber = regexp.MustCompile(`\d[\d\x{202f}]*(?:\.\d+)?`)

// beside says which numbers printed beside a row stand in none of the row's cells.
func (d *disagreement) beside(row []Cell, printed string) {
	for _, n := range printedNumber.FindAllString(printed, -1) {
		if !holds(row, n) {
			d.say("%s: %s beside it is not in its row of the table", name(row), n)
		}
	}
}

// holds tells whether one of the cells is the number, rounded as printed.
func holds(row []Cell, printed string) bool {
	for _, c := range row {
		if key, err := strconv.ParseFloat(c.Key, 64); err == nil && prints(printed, key) {
			return true
		}
	}
	return false
}

// ratios: a row's ratio and interval stand in the table's row of the same name.
func (d *disagreement) ratios() {
	o, t := d.f.Option, d.f.Tables[0]
	at := t.column(true, "times")
	if at < 0 {
		d.say("the table has no ratio with an interval beside it")
		return
	}
	drawn := map[string]bool{}
	for i, label := range o.YAxis[0].Data {
		level, _ := level(label)
		drawn[level] = true
		row := t.row(level)
		if row == nil || i >= len(o.Series[0].Data) {
			d.say("the table has not one row %q", level)
			continue
		}
		m := o.Series[0].Data[i]
		if m.whole(0) != i || !row[at].value(m, 1, 1) || !row[at+1].spans(m, 2, 3, 1) {
			d.say("%s: %v in the chart, %s (%s) in the table", level, m.Value, row[at].Text, row[at+1].Text)
		}
		d.beside(row, o.YAxis[1].Data[i])
	}
	for _, r := range t.Rows {
		if !drawn[name(r)] && r[at].Text != unknown {
			d.say("the chart leaves out %q", name(r))
		}
	}
}

// days: a day of the chart is a row of the table, in order.
func (d *disagreement) days() {
	o, t := d.f.Option, d.f.Tables[0]
	strikes, boated, hours := t.exact("Strikes"), t.exact("Landed or released"), t.exact("Line-hours")
	if strikes < 0 || boated < 0 || hours < 0 {
		d.say("the table has no strikes, landed or released, or line-hours")
		return
	}
	if len(t.Rows) != len(o.Series[0].Data) {
		d.say("%d days in the chart, %d in the table", len(o.Series[0].Data), len(t.Rows))
		return
	}
	for i, m := range o.Series[0].Data {
		row, month := t.Rows[i], className(o.YAxis[0].Data, m.whole(1))
		if w := dayWords(m.whole(0)+1, month); w != row[0].Text || !row[strikes].value(m, 2, 1) ||
			!row[boated].value(m, 3, 1) || !row[hours].value(m, 4, 1) {
			d.say("day %s: %v in the chart, %v in the table", w, m.Value, row)
		}
	}
}

// sizes: the dots are the table's fish, of the row's speed; medians stand in the second.
func (d *disagreement) sizes() {
	o, t := d.f.Option, d.f.Tables[0]
	speed, weight := t.column(false, "speed"), t.exact("Round weight")
	if speed < 0 || weight < 0 || len(t.Rows) != len(o.Series[0].Data) {
		d.say("%d fish in the chart, %d in the table", len(o.Series[0].Data), len(t.Rows))
		return
	}
	for i, m := range o.Series[0].Data {
		if row := t.Rows[i]; row[speed].Text != className(o.YAxis[0].Data, m.whole(1)) || !row[weight].value(m, 0, 1) {
			d.say("fish %v is %v in the table", m.Value, row)
		}
	}
	for _, m := range o.Series[1].Data {
		if !d.median(className(o.YAxis[0].Data, m.whole(1)), m) {
			d.say("the median %v is in no table", m.Value)
		}
	}
}

func (d *disagreement) median(speed string, m Mark) bool {
	for _, t := range d.f.Tables[1:] {
		band, at := t.column(false, "speed"), t.column(true, "median")
		for _, r := range t.Rows {
			if band >= 0 && at >= 0 && r[band].Text == speed && r[at].value(m, 0, 1) && r[at+1].spans(m, 2, 3, 1) {
				return true
			}
		}
	}
	return false
}

// fates: the parts of a season's bar follow each other without a gap, each as long as its
// row of the table says, once on the season's row and once on its own; of two seasons as
// shares of each.
func (d *disagreement) fates() {
	o, t := d.f.Option, d.f.Tables[0]
	strikes, share := t.exact("Strikes"), t.exact("Share")
	seasons := len(o.YAxis[0].Data) - len(t.Rows)
	if strikes < 0 || share < 0 || len(t.Rows)*2 != len(o.Series[0].Data) || seasons < 1 {
		d.say("%d parts in the chart, %d rows in the table", len(o.Series[0].Data), len(t.Rows))
		return
	}
	at := make([]float64, seasons)
	for i, row := range t.Rows {
		long, _, _ := number(row[strikes].Text)
		if seasons > 1 {
			long, _ = strconv.ParseFloat(row[share].Key, 64)
			long *= 100
		}
		whole, own := o.Series[0].Data[2*i], o.Series[0].Data[2*i+1]
		season := whole.whole(0)
		if season < 0 || season >= seasons || own.whole(0) != seasons+i ||
			className(o.YAxis[0].Data, seasons+i) != name(row) {
			d.say("%s: on the wrong row: %v, %v", name(row), whole.Value, own.Value)
			continue
		}
		for _, m := range []Mark{whole, own} {
			from, _ := m.at(1)
			to, _ := m.at(2)
			if math.Abs(from-at[season]) > 1e-9 || math.Abs(to-at[season]-long) > 1e-9 {
				d.say("%s: %v in the chart, %s strikes in the table", name(row), m.Value, row[strikes].Text)
			}
		}
		d.beside(row, o.YAxis[1].Data[seasons+i])
		at[season] += long
	}
	for i, sum := range at {
		switch {
		case seasons == 1 && (len(t.Foot) <= strikes || !t.Foot[strikes].is(sum, 1)):
			d.say("the parts add up to %v, the table to %v", sum, t.Foot)
		case seasons > 1 && math.Abs(sum-100) > 1e-6:
			d.say("%s adds up to %v per cent", className(o.YAxis[0].Data, i), sum)
		}
	}
}

// pairs: each cell is a row of the table, in order.
func (d *disagreement) pairs() {
	o, t := d.f.Option, d.f.Tables[0]
	hours, strikes := t.exact("Line-hours"), t.exact("Strikes")
	if hours < 0 || strikes < 0 || len(t.Rows) != len(o.Series[0].Data) {
		d.say("%d cells in the chart, %d rows in the table", len(o.Series[0].Data), len(t.Rows))
		return
	}
	for i, m := range o.Series[0].Data {
		row := t.Rows[i]
		if name(row) != className(o.YAxis[0].Data, m.whole(1)) ||
			row[1].Text != className(o.XAxis[0].Data, m.whole(0)) || !row[hours].value(m, 2, 1) ||
			!row[strikes].value(m, 3, 1) {
			d.say("cell %v is %v in the table", m.Value, row)
		}
	}
}

// heaviest: each fish of the chart is the table's row of its number.
func (d *disagreement) heaviest() {
	o, t := d.f.Option, d.f.Tables[0]
	weight, doubt, from := t.column(true, "round weight"), t.exact("Doubtful"), t.column(false, "weight from")
	if weight < 0 || doubt < 0 || from < 0 || len(t.Rows) != len(o.Series[0].Data) {
		d.say("%d fish in the chart, %d in the table", len(o.Series[0].Data), len(t.Rows))
		return
	}
	for i, m := range o.Series[0].Data {
		row := t.Rows[i]
		if m.whole(3) != i || name(row) != className(o.YAxis[0].Data, i) || !row[weight].value(m, 0, 1) ||
			!row[weight+1].spans(m, 1, 2, 1) ||
			(m.whole(4) == 1) != strings.HasSuffix(row[from].Text, "scale") ||
			(m.whole(5) == 1) != (row[doubt].Text != unknown) {
			d.say("fish %v is %v in the table", m.Value, row)
		}
		d.beside(row, o.YAxis[1].Data[i])
	}
}
