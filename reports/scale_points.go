package reports

import (
	"wakeledger/queries"
	"wakeledger/reports/page"
)

// againstTable is every point of the chart of tape against scale.
func (r *scaleReport) againstTable(c queries.ScaleCheck) *page.Table {
	return r.pointsTable(c, "tape against scale, every fish of the chart",
		[2]string{"Round weight on the scale", "By the tape"}, func(scale, tape float64) (x, y float64) {
			return scale, tape
		})
}

// differenceTable is every point of the chart of differences.
func (r *scaleReport) differenceTable(c queries.ScaleCheck) *page.Table {
	return r.pointsTable(c, "the differences, every fish of the chart",
		[2]string{"Mean of tape and scale", "Tape less scale"}, func(scale, tape float64) (x, y float64) {
			return (tape + scale) / 2, tape - scale
		})
}

// pointsTable is the compared fish of a chart, one a row, with what its two axes
// show; place makes these of the two weights in the unit shown.
func (r *scaleReport) pointsTable(c queries.ScaleCheck, caption string, axes [2]string,
	place func(scale, tape float64) (x, y float64)) *page.Table {
	t := &page.Table{Caption: caption, Columns: []page.Column{
		{Head: "Date", Kind: page.Token}, {Head: "Species"},
		{Head: axes[0], Unit: r.weight, Kind: page.Measure, Decimals: 1},
		{Head: axes[1], Unit: r.weight, Kind: page.Measure, Decimals: 1},
		{Head: "Scale", Kind: page.Token}, {Head: "No.", Unit: "among the worst", Kind: page.Measure}}}
	worst := r.worst(c.Method)
	for i, f := range r.used {
		w := f.ByMethod(c.Method)
		if w == nil {
			continue
		}
		x, y := place(*f.RoundKG, *w)
		rank := page.Cell{}
		if n := worst[i]; n > 0 {
			rank = page.Whole(int64(n))
		}
		t.Rows = append(t.Rows, page.Row{Cells: []page.Cell{page.WordsOf(f.Date), page.WordsOf(f.Name),
			page.Value(x * r.perKG), page.Value(y * r.perKG), page.WordsOf(f.Scale), rank}})
	}
	return t
}

// factorTable is the lines of the chart of tape against scale.
func (r *scaleReport) factorTable(c queries.ScaleCheck) *page.Table {
	t := &page.Table{Caption: "the lines of the chart",
		Columns: []page.Column{{Head: "Line"}, {Head: "Times the scale's weight", Kind: page.Measure, Decimals: 3}}}
	add := func(line string, factor float64) {
		t.Rows = append(t.Rows, page.Row{Cells: []page.Cell{page.Words(line), page.Value(factor)}})
	}
	if c.LOARatioHi != nil {
		add("upper limit of agreement", *c.LOARatioHi)
	}
	add("tape and scale agree", 1)
	if c.LOARatioLo != nil {
		add("lower limit of agreement", *c.LOARatioLo)
	}
	return t
}
