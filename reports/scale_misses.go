package reports

import (
	"fmt"
	"math"
	"slices"

	"wakeledger/pipeline/estimate"
	"wakeledger/pipeline/sentence"
	"wakeledger/pipeline/unit"
	"wakeledger/queries"
	"wakeledger/queries/stats"
	"wakeledger/reports/page"
)

const misses = 5

// worst ranks the compared fish by how far the method is off, in per cent: the place
// of a fish among the used ones to its rank from 1, for the worst five.
func (r *scaleReport) worst(method string) map[int]int {
	var at []int
	for i, f := range r.used {
		if f.ByMethod(method) != nil {
			at = append(at, i)
		}
	}
	slices.SortStableFunc(at, func(a, b int) int {
		x, y := r.logOff(a, method), r.logOff(b, method)
		switch {
		case x > y:
			return -1
		case x < y:
			return 1
		}
		return 0
	})
	out := map[int]int{}
	for rank, i := range at[:min(misses, len(at))] {
		out[i] = rank + 1
	}
	return out
}

func (r *scaleReport) logOff(i int, method string) float64 {
	f := r.used[i]
	return math.Abs(math.Log(*f.ByMethod(method) / *f.RoundKG))
}

func (r *scaleReport) missesSection() (page.Section, error) {
	s := page.Section{ID: "misses", Heading: "The worst misses"}
	c := r.tape()
	worst := r.worst(c.Method)
	if len(worst) == 0 {
		s.Sentences = []string{"No fish was compared."}
		return s, nil
	}
	t := &page.Table{Caption: "the worst misses and what may explain them", Open: true, Columns: []page.Column{
		{Head: "No.", Kind: page.Measure}, {Head: "Date", Kind: page.Token}, {Head: "Species"},
		{Head: "Scale", Unit: r.weight, Kind: page.Measure, Decimals: 1},
		{Head: "Tape", Unit: r.weight + ", estimate", Kind: page.Measure, Decimals: 1},
		{Head: "Off", Unit: "%", Kind: page.Measure, Decimals: 0},
		{Head: "What may explain it", Kind: page.Prose}, {Head: "Row of the log", Kind: page.Source}}}
	ordered := make([]int, len(worst))
	for i, rank := range worst {
		ordered[rank-1] = i
	}
	for rank, i := range ordered {
		f := r.used[i]
		w := *f.ByMethod(c.Method)
		t.Rows = append(t.Rows, page.Row{Cells: []page.Cell{
			page.Whole(int64(rank + 1)), page.WordsOf(f.Date), page.WordsOf(f.Name),
			page.Value(*f.RoundKG * r.perKG), page.Value(w * r.perKG), page.Value(100 * (w / *f.RoundKG - 1)),
			page.Words(r.explain(f, c)), page.Words(r.Logs.place(f.File, f.Row)),
		}})
	}
	f := r.used[ordered[0]]
	s.Sentences = []string{fmt.Sprintf("The worst miss by the %s is %.0f %%%s: %s.", queries.WeighedBy(c.Method),
		100*math.Abs(*f.ByMethod(c.Method) / *f.RoundKG - 1), dated(f), r.explain(f, c))}
	s.Table = t
	s.Notes = []string{"Ranked by the miss in per cent. An explanation is a guess from the row's own numbers: look " +
		"at the row before changing it."}
	return s, nil
}

func dated(f queries.ScaleFish) string {
	if f.Date == nil {
		return ""
	}
	return ", " + text(f.Name) + " of " + day(*f.Date, "2 January 2006")
}

// slips are the factors by which a weight by the girth rule is off where a unit was
// mistaken, and what was mistaken.
var slips = []struct {
	factor float64
	words  string
}{
	{1 / unit.KgPerPound, "the scale weight looks like kg entered as lb"},
	{unit.KgPerPound, "the scale weight looks like lb entered as kg"},
	{unit.CmPerInch, "the length looks like cm taken as inches"},
	{1 / unit.CmPerInch, "the length looks like inches taken as cm"},
	{unit.CmPerInch * unit.CmPerInch, "the girth looks like cm taken as inches"},
	{1 / (unit.CmPerInch * unit.CmPerInch), "the girth looks like inches taken as cm"},
	{unit.CmPerInch * unit.CmPerInch * unit.CmPerInch, "length and girth look like cm taken as inches"},
	{1 / (unit.CmPerInch * unit.CmPerInch * unit.CmPerInch), "length and girth look like inches taken as cm"},
}

// explain guesses at why the tape missed the scale, from the fish's own numbers.
func (r *scaleReport) explain(f queries.ScaleFish, c queries.ScaleCheck) string {
	var why []string
	ratio := *f.ByMethod(c.Method) / *f.RoundKG
	if c.Ratio != nil {
		ratio /= *c.Ratio // the boat's usual bias is not the slip
	}
	for _, s := range slips {
		if math.Abs(math.Log(ratio/s.factor)) < 0.12 {
			why = append(why, "a likely unit slip: "+s.words)
		}
	}
	if g := r.usualGirth(f); g > 0 && f.GirthCM != nil {
		if share := *f.GirthCM / *f.LengthCM; math.Abs(share/g-1) > 0.08 {
			why = append(why, fmt.Sprintf("the girth is %.2f of the length where the others of its kind are at %.2f",
				share, g))
		}
	}
	if f.LengthKG != nil {
		if wr := 100 * *f.RoundKG / *f.LengthKG; wr < 85 || wr > 115 {
			why = append(why, fmt.Sprintf("an odd condition: on the scale it is %.0f %% of the relation's weight at "+
				"its length", wr))
		}
		if outside(*f.LengthCM, f.RelationLoCM, f.RelationHiCM) {
			why = append(why, "its length is outside the lengths of the fish studied for "+text(f.Relation))
		}
	}
	if f.Doubt != nil && len(why) == 0 {
		why = append(why, "its measures may be wrong: "+*f.Doubt)
	}
	if text(f.LengthKind) == "CFL" {
		why = append(why, "its length follows the body and was taken as straight, which makes the tape some 4 % heavy")
	}
	switch state := text(f.WeightState); state {
	case "round":
	case "":
		why = append(why, "whether it was whole on the scale is not logged")
	case estimate.Bled:
		why = append(why, "it was bled: without its blood the scale reads a little low")
	default:
		why = append(why, "its scale weight was converted from "+state+" by an average factor")
	}
	if len(why) == 0 {
		if c.LOARatioLo != nil && ratio**c.Ratio >= *c.LOARatioLo && ratio**c.Ratio <= *c.LOARatioHi {
			return "an ordinary miss: nothing in the row speaks against it"
		}
		return "nothing in the row explains it"
	}
	return sentence.List(why)
}

func outside(v float64, lo, hi *float64) bool {
	return lo != nil && v < *lo || hi != nil && v > *hi
}

// usualGirth is the median of girth over length of the other compared fish of the
// species measured in the same way, 0 with fewer than 4.
func (r *scaleReport) usualGirth(f queries.ScaleFish) float64 {
	var shares []float64
	for _, o := range r.used {
		same := o.File == f.File && o.Sheet == f.Sheet && o.Row == f.Row
		if !same && o.GirthCM != nil && text(o.Name) == text(f.Name) && text(o.LengthKind) == text(f.LengthKind) {
			shares = append(shares, *o.GirthCM / *o.LengthCM)
		}
	}
	if len(shares) < 4 {
		return 0
	}
	return stats.Quantile(shares, 0.5)
}
