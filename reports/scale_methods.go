package reports

import (
	"fmt"
	"slices"
	"strings"

	"wakeledger/pipeline/estimate"
	"wakeledger/queries"
	"wakeledger/reports/page"
)

func (r *scaleReport) checkColumns() []page.Column {
	return []page.Column{
		{Head: "n", Kind: page.Measure},
		{Head: "Bias", Unit: r.weight, Kind: page.Measure, Decimals: 1},
		{Head: "Bias", Unit: "%", Kind: page.Measure, Decimals: 1},
		{Head: "MAE", Unit: r.weight, Kind: page.Measure, Decimals: 1},
		{Head: "MAPE", Unit: "%", Kind: page.Measure, Decimals: 1},
		{Head: "RMSE", Unit: r.weight, Kind: page.Measure, Decimals: 1},
		{Head: "Limits of agreement", Unit: r.weight, Kind: page.Interval, Decimals: 1},
		{Head: "Concordance", Kind: page.Measure, Decimals: 3},
	}
}

func (r *scaleReport) checkCells(c queries.ScaleCheck) []page.Cell {
	return []page.Cell{
		page.Whole(c.N), page.ValueOf(scaled(c.BiasKG, r.perKG)), page.ValueOf(c.BiasPct),
		page.ValueOf(scaled(c.MAEKG, r.perKG)), page.ValueOf(c.MAPEPct),
		page.ValueOf(scaled(c.RMSEKG, r.perKG)), page.Span(scaled(c.LOALoKG, r.perKG), scaled(c.LOAHiKG, r.perKG)),
		page.ValueOf(c.Concordance),
	}
}

// methodsCompared is the same fish through every method.
func (r *scaleReport) methodsCompared() (page.Section, error) {
	s := page.Section{ID: "methods-compared", Heading: "The methods side by side"}
	t := &page.Table{Caption: "every method against the scale", Open: true,
		Columns: append([]page.Column{{Head: "Method"}}, r.checkColumns()...)}
	for _, c := range r.Checks {
		t.Rows = append(t.Rows, page.Row{Thin: c.N < 5,
			Cells: append([]page.Cell{page.Words(queries.WeighedBy(c.Method))}, r.checkCells(c)...)})
	}
	s.Table = t
	s.Sentences = []string{r.best()}
	s.Notes = []string{
		"Estimate less scale. MAE, MAPE: mean absolute error, and in per cent of the scale's weight. RMSE: root of " +
			"the mean squared error. Concordance: Lin 1989, Biometrics 45:255-268; 1 is every fish alike.",
		"The own divisor never weighs a fish that it was made from: each is weighed by that of the others " +
			"(leave-one-out). The girth rule and the published relations are made from none of them.",
	}
	certified := 0
	for _, f := range r.used {
		if text(f.Scale) == estimate.CertifiedScale {
			certified++
		}
	}
	if n := len(r.used) - certified; certified < 5 || n < 5 {
		s.Notes = append(s.Notes, fmt.Sprintf("%d fish on certified and %d on dock scales: it takes 5 of each to "+
			"tell the scales apart.", certified, n))
	}
	return s, nil
}

// best says which method was nearest on the fish that all of them weigh.
func (r *scaleReport) best() string {
	same := queries.SameFish(r.used)
	if len(same) < 5 {
		return fmt.Sprintf("%s weighed by every method: too few to say which is nearest.", wasWere(len(same)))
	}
	checks := make([]queries.ScaleCheck, 0, 3)
	for _, m := range queries.ScaleMethods() {
		checks = append(checks, queries.CheckMethod(same, m))
	}
	slices.SortStableFunc(checks, func(a, b queries.ScaleCheck) int {
		switch {
		case *a.MAEKG < *b.MAEKG:
			return -1
		case *a.MAEKG > *b.MAEKG:
			return 1
		}
		return 0
	})
	var words []string
	for _, c := range checks {
		words = append(words, fmt.Sprintf("%s %s %s (%s %%)", queries.WeighedBy(c.Method), r.small(*c.MAEKG),
			r.weight, page.Number(*c.MAPEPct, 1)))
	}
	return fmt.Sprintf("On the %d fish that all three weigh, the mean error was: %s.",
		len(same), strings.Join(words, ", "))
}

// ownSection is the boat's own divisors, whether they are used and why.
func (r *scaleReport) ownSection() (page.Section, error) {
	s := page.Section{ID: "own", Heading: "The boat's own divisor"}
	var keys []string
	for k := range r.Own {
		keys = append(keys, k)
	}
	if len(keys) == 0 {
		s.Sentences = []string{"No fish has length, girth and a scale weight: the boat has no divisor of its own. " +
			"Five of a species give one."}
		return s, nil
	}
	slices.Sort(keys)
	t := &page.Table{Caption: "own divisors", Open: true, Columns: []page.Column{
		{Head: "Species"}, {Head: "Length"}, {Head: "Fish", Kind: page.Measure},
		{Head: "Divisor", Unit: "lb, in", Kind: page.Measure, Decimals: 0},
		{Head: "Taken", Unit: "of the difference", Kind: page.Share},
		{Head: "Misses by, own", Unit: r.weight, Kind: page.Measure, Decimals: 2},
		{Head: "Misses by, 800", Unit: r.weight, Kind: page.Measure, Decimals: 2}, {Head: "Used", Kind: page.Token},
		{Head: "Why", Kind: page.Prose}}}
	for _, k := range keys {
		o := r.Own[k]
		used := "no"
		if o.Used {
			used = "yes"
			s.Sentences = append(s.Sentences, fmt.Sprintf("%s, %s: divide by %s instead of 800 (L x G² in inches, "+
				"weight in lb), in metric by %s.",
				r.speciesName(o.Species), kindWords(o.LengthKind), page.Number(divisor(o.K), 0), page.Number(1/o.K, 0)))
		}
		row := []page.Cell{page.Words(r.speciesName(o.Species)), page.Words(kindWords(o.LengthKind)),
			page.Whole(int64(o.N)), page.Value(divisor(o.K)), page.Value(o.Share)}
		if o.LOOCommon > 0 {
			row = append(row, page.Value(o.LOOOwn*r.perKG), page.Value(o.LOOCommon*r.perKG))
		} else {
			row = append(row, page.Cell{}, page.Cell{})
		}
		t.Rows = append(t.Rows, page.Row{Thin: o.N < 5, Cells: append(row, page.Words(used), page.Words(o.Why))})
	}
	if len(s.Sentences) == 0 {
		s.Sentences = []string{"No own divisor is used: 800 does as well, or the fish are too few."}
	}
	s.Table = t
	s.Notes = []string{
		"One over the divisor is the geometric mean of W / (L × G²) over the boat's fish, drawn towards that of 800 " +
			"where the fish are few (positive-part rule of James and Stein 1961). It is used only where it misses " +
			"by less on fish left out. Misses by: on average, whichever way.",
		"It was chosen on the same fish, so that a plain 90 % interval is too narrow: with five fish it held 74 to " +
			"90 % of new ones in simulation. The interval used is wider, and held 88 to 93 %. Doubtful fish are " +
			"left out.",
		"An own divisor takes in how the crew holds the tape. Another crew, or a girth taken at another place, " +
			"needs its own fish.",
	}
	return s, nil
}

// speciesName is the name of a species on a scale, by its code.
func (r *scaleReport) speciesName(code string) string {
	for _, f := range r.Fish {
		if text(f.Species) == code && text(f.Name) != "" {
			return *f.Name
		}
	}
	return code
}

// divisor is the number that stands where the trade's rule has 800.
func divisor(k float64) float64 { return estimate.LengthGirthKG(1, 1) * 800 / k }
