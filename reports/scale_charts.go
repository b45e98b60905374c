package reports

import (
	"fmt"
	"math"

	"wakeledger/pipeline/estimate"
	"wakeledger/queries"
	"wakeledger/reports/page"
)

// scatter draws estimate against scale with the line of identity and the limits of
// agreement as factors.
func (r *scaleReport) scatter(c queries.ScaleCheck) (*page.Chart, error) {
	p := page.Plot{Vertical: "by the tape, " + r.weight}
	worst := r.worst(c.Method)
	for i, f := range r.used {
		if w := f.ByMethod(c.Method); w != nil {
			p.Dots = append(p.Dots, page.Dot{X: *f.RoundKG * r.perKG, Y: *w * r.perKG,
				Full: certified(f), Rank: worst[i]})
		}
	}
	right, top := p.Ends()
	end := math.Min(right, top)
	p.Strokes = []page.Stroke{{X2: end, Y2: end}}
	if c.LOARatioLo != nil {
		for _, factor := range []float64{*c.LOARatioLo, *c.LOARatioHi} {
			x := math.Min(right, top/factor)
			p.Strokes = append(p.Strokes, page.Stroke{X2: x, Y2: x * factor, Dashed: true})
		}
	}
	return p.Draw(page.Frame{
		Label: fmt.Sprintf("Every fish with tape and scale, the estimate by the %s against the scale. The tables "+
			"below hold the figures.", queries.WeighedBy(c.Method)),
		Axis: "round weight on the scale, " + r.weight,
		Keys: append(scaleKeys(), page.Key{Mark: page.MarkLine, Words: "tape and scale agree"},
			page.Key{Mark: page.MarkLimits, Words: "limits of agreement"}),
	})
}

func certified(f queries.ScaleFish) bool { return text(f.Scale) == estimate.CertifiedScale }

func scaleKeys() []page.Key {
	return []page.Key{{Mark: page.MarkDisc, Words: "certified scale"}, {Mark: page.MarkOpen, Words: "dock scale"}}
}

// differenceSection is the plot of Bland and Altman: difference against mean.
func (r *scaleReport) differenceSection() (page.Section, error) {
	s := page.Section{ID: "differences", Heading: "The differences"}
	c := r.tape()
	if c.LOALoKG == nil {
		s.Sentences = []string{"Fewer than two fish have both tape and scale: there are no limits to give."}
		return s, nil
	}
	s.Sentences = []string{fmt.Sprintf("By the %s the tape is %s %s %s the scale on average; 95 in 100 fish are "+
		"expected from %s to %s %s.",
		queries.WeighedBy(c.Method), r.small(math.Abs(*c.BiasKG)), r.weight, underOver(*c.BiasKG), r.signed(*c.LOALoKG),
		r.signed(*c.LOAHiKG), r.weight)}
	if c.TrendP != nil && *c.TrendP < 0.05 {
		s.Sentences = append(s.Sentences, fmt.Sprintf("The difference changes with size: %s %s for each 10 %s. The "+
			"limits in per cent, in the first chart, are the ones to use.",
			r.signed(10**c.Trend/r.perKG), r.weight, r.weight))
	}
	p := page.Plot{Vertical: "tape less scale, " + r.weight, Decimals: 1}
	worst := r.worst(c.Method)
	for i, f := range r.used {
		if w := f.ByMethod(c.Method); w != nil {
			p.Dots = append(p.Dots, page.Dot{X: (*w + *f.RoundKG) / 2 * r.perKG, Y: (*w - *f.RoundKG) * r.perKG,
				Full: certified(f), Rank: worst[i]})
		}
	}
	keys := append(scaleKeys(), page.Key{Mark: page.MarkLine, Words: "bias"},
		page.Key{Mark: page.MarkLimits, Words: "limits of agreement"})
	if c.LOALoLoKG != nil {
		keys = append(keys, page.Key{Mark: page.MarkBand, Words: "95 % interval of each limit"})
		p.Bands = []page.Band{{Lo: *c.LOALoLoKG * r.perKG, Hi: *c.LOALoHiKG * r.perKG},
			{Lo: *c.LOAHiLoKG * r.perKG, Hi: *c.LOAHiHiKG * r.perKG}}
	}
	right, _ := p.Ends()
	p.Strokes = []page.Stroke{
		{Y1: *c.BiasKG * r.perKG, X2: right, Y2: *c.BiasKG * r.perKG, Labelled: true},
		{Y1: *c.LOALoKG * r.perKG, X2: right, Y2: *c.LOALoKG * r.perKG, Dashed: true, Labelled: true},
		{Y1: *c.LOAHiKG * r.perKG, X2: right, Y2: *c.LOAHiKG * r.perKG, Dashed: true, Labelled: true},
	}
	chart, err := p.Draw(page.Frame{
		Label: "Tape less scale against the mean of the two, with the bias and the limits of agreement. " +
			s.Sentences[0] + " The tables below hold the figures.",
		Axis: "mean of tape and scale, " + r.weight,
		Keys: keys,
	})
	s.Chart, s.Tables = chart, []*page.Table{r.differenceTable(c)}
	s.Table = &page.Table{Caption: "the limits and their intervals", Columns: []page.Column{
		{Head: "What"}, {Head: "Tape less scale", Unit: r.weight, Kind: page.Measure, Decimals: 1},
		{Head: "95 % interval", Unit: r.weight, Kind: page.Interval, Decimals: 1}},
		Rows: []page.Row{
			r.limitRow("lower limit of agreement", c.LOALoKG, c.LOALoLoKG, c.LOALoHiKG),
			r.limitRow("bias", c.BiasKG, c.BiasLoKG, c.BiasHiKG),
			r.limitRow("upper limit of agreement", c.LOAHiKG, c.LOAHiLoKG, c.LOAHiHiKG),
		}}
	s.Notes = []string{"Bland and Altman 1986, Lancet i:307-310; the intervals of the limits as in Bland and Altman " +
		"1999, Statistical Methods in Medical Research 8:135-160."}
	if text(c.LOAForm) == queries.LOANext {
		s.Notes = []string{"Bland and Altman 1986, Lancet i:307-310. With fewer than 30 fish the limits are drawn " +
			"wider than their 1.96 standard deviations: " +
			"as the prediction interval of one more fish, so that 95 in 100 further fish are within them."}
	}
	return s, err
}

func (r *scaleReport) limitRow(what string, v, lo, hi *float64) page.Row {
	return page.Row{Cells: []page.Cell{page.Words(what), page.ValueOf(scaled(v, r.perKG)),
		page.Span(scaled(lo, r.perKG), scaled(hi, r.perKG))}}
}

func underOver(v float64) string {
	if v > 0 {
		return "over"
	}
	return "under"
}

// signed prints a difference in kg in the unit shown, with its sign.
func (r *scaleReport) signed(kg float64) string {
	if kg > 0 {
		return "+" + r.small(kg)
	}
	return r.small(kg)
}
