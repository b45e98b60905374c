package reports

import (
	"fmt"
	"math"
	"slices"
	"strings"

	"wakeledger/queries"
	"wakeledger/queries/stats"
	"wakeledger/reports/page"
)

// condition is one weighed fish's condition.
type condition struct {
	species, month string
	cm             float64
	k              float64 // Fulton's 10^5 W / L^3, kg and cm
	relative       float64 // per cent of the relation's weight at its length; NaN without one
}

// conditions are the fish with a scale weight and a straight length to the fork.
func (r *scaleReport) conditions() (out []condition, curved int) {
	for _, f := range r.Fish {
		if f.RoundKG == nil || f.LengthCM == nil {
			continue
		}
		if kind := text(f.LengthKind); kind != "FL" && kind != "LJFL" && kind != "" {
			curved++
			continue
		}
		c := condition{species: text(f.Name), month: "not logged", cm: *f.LengthCM,
			k: 1e5 * *f.RoundKG / math.Pow(*f.LengthCM, 3), relative: math.NaN()}
		if d := text(f.Date); len(d) >= 7 {
			c.month = d[:7]
		}
		if f.LengthKG != nil {
			c.relative = 100 * *f.RoundKG / *f.LengthKG
		}
		out = append(out, c)
	}
	return out, curved
}

// conditionSection is Fulton's condition factor and the relative weight by month and
// by size. Scale weights only: an estimate's condition is its formula's.
func (r *scaleReport) conditionSection() (page.Section, error) {
	s := page.Section{ID: "condition", Heading: "Condition"}
	all, curved := r.conditions()
	if len(all) == 0 {
		s.Sentences = []string{"No fish with a scale weight has a straight length: there is no condition to give."}
		return s, nil
	}
	t := &page.Table{Caption: "condition by month and by size", Columns: []page.Column{
		{Head: "Species"}, {Head: "By"}, {Head: "Level", Kind: page.Token}, {Head: "Fish", Kind: page.Measure},
		{Head: "K, median", Kind: page.Measure, Decimals: 2},
		{Head: "K, least to most", Kind: page.Interval, Decimals: 2},
		{Head: "Relative weight, median", Unit: "%", Kind: page.Measure, Decimals: 0}}}
	for _, species := range speciesOf(all) {
		fish := slices.DeleteFunc(slices.Clone(all), func(c condition) bool { return c.species != species })
		if s.Sentences == nil || len(fish) >= 5 {
			s.Sentences = append(s.Sentences, conditionSentence(species, fish))
		}
		t.Rows = append(t.Rows, conditionRow(species, "all", "all", fish))
		t.Rows = append(t.Rows, conditionRows(species, "month", fish,
			func(c condition) (string, float64) { return c.month, 0 })...)
		t.Rows = append(t.Rows, conditionRows(species, "length", fish, r.lengthClass)...)
	}
	s.Table = t
	s.Notes = []string{
		"K is Fulton's condition factor, 100 000 × W / L³ in kg and cm. Relative weight is W in per cent of the " +
			"relation's weight at the same length. Fish on a scale only.",
		"Medians of few fish: differences between months and sizes are not tested here.",
	}
	if curved > 0 {
		s.Notes = append(s.Notes, fmt.Sprintf("%s left out: the length is not a straight one to the fork, and K "+
			"would come out low.", wasWere(curved)))
	}
	return s, nil
}

// speciesOf are the species by number of fish, most first.
func speciesOf(all []condition) []string {
	count := map[string]int{}
	var names []string
	for _, c := range all {
		if count[c.species] == 0 {
			names = append(names, c.species)
		}
		count[c.species]++
	}
	slices.SortStableFunc(names, func(a, b string) int { return count[b] - count[a] })
	return names
}

// lengthClass is the class of length of a fish in the unit shown, 25 cm or 10 in wide,
// and its order.
func (r *scaleReport) lengthClass(c condition) (string, float64) {
	width := 25.0
	if r.perCM != 1 {
		width = 10
	}
	lo := math.Floor(c.cm*r.perCM/width) * width
	return fmt.Sprintf("%.0f to %.0f %s", lo, lo+width, r.length), lo
}

func conditionRows(species, by string, fish []condition, level func(condition) (string, float64)) []page.Row {
	type class struct {
		name  string
		order float64
		fish  []condition
	}
	var classes []class
	for _, f := range fish {
		name, order := level(f)
		at := slices.IndexFunc(classes, func(c class) bool { return c.name == name })
		if at < 0 {
			at = len(classes)
			classes = append(classes, class{name: name, order: order})
		}
		classes[at].fish = append(classes[at].fish, f)
	}
	slices.SortStableFunc(classes, func(a, b class) int {
		switch {
		case a.order != b.order:
			return int(math.Copysign(1, a.order-b.order))
		case a.name < b.name:
			return -1
		case a.name > b.name:
			return 1
		}
		return 0
	})
	var rows []page.Row
	for _, c := range classes {
		rows = append(rows, conditionRow(species, by, c.name, c.fish))
	}
	return rows
}

func conditionRow(species, by, level string, fish []condition) page.Row {
	k, relative := conditionValues(fish)
	lo, hi := slices.Min(k), slices.Max(k)
	return page.Row{Thin: len(fish) < 3, Cells: []page.Cell{page.Words(species), page.Words(by),
		page.Words(level), page.Whole(int64(len(fish))),
		page.Value(stats.Quantile(k, 0.5)), page.Span(&lo, &hi), page.Value(stats.Quantile(relative, 0.5))}}
}

func conditionValues(fish []condition) (k, relative []float64) {
	for _, f := range fish {
		k = append(k, f.k)
		if !math.IsNaN(f.relative) {
			relative = append(relative, f.relative)
		}
	}
	return k, relative
}

func conditionSentence(species string, fish []condition) string {
	k, relative := conditionValues(fish)
	out := fmt.Sprintf("%s: K %s (median of %s on a scale)", species, page.Number(stats.Quantile(k, 0.5), 2),
		page.Plural(int64(len(fish)), "fish", "fish"))
	if len(relative) > 0 {
		out += fmt.Sprintf(", %s %% of the relation's weight at their length",
			page.Number(stats.Quantile(relative, 0.5), 0))
	}
	return out + "."
}

// scaleFishSection lists every fish that was on a scale.
func (r *scaleReport) scaleFishSection() (page.Section, error) {
	s := page.Section{ID: "fish", Heading: "Every fish on a scale"}
	if len(r.Fish) == 0 {
		s.Sentences = []string{"No fish of this season was on a scale."}
		return s, nil
	}
	measure := func(head, unit string, decimals int) page.Column {
		return page.Column{Head: head, Unit: unit, Kind: page.Measure, Decimals: decimals}
	}
	t := &page.Table{Caption: "every fish on a scale, weighed by every method", Columns: []page.Column{
		{Head: "Date", Kind: page.Token}, {Head: "Species"}, measure("Length", r.length, 1),
		{Head: "Length kind", Kind: page.Token}, measure("Girth", r.length, 1),
		measure("As read", r.weight, 1), {Head: "State"}, measure("Round, scale", r.weight, 1),
		{Head: "Scale", Kind: page.Token},
		measure("Own divisor", r.weight+", estimate", 1), measure("Girth rule", r.weight+", estimate", 1),
		measure("Length alone", r.weight+", estimate", 1),
		{Head: "Relation"}, {Head: "Left out because"}, {Head: "Row of the log", Kind: page.Source}}}
	for _, f := range r.Fish {
		t.Rows = append(t.Rows, page.Row{Thin: f.LeftOut != nil, Cells: r.scaleFishCells(f)})
	}
	s.Sentences = []string{fmt.Sprintf("%s on a scale, %d compared with the tape.", wasWere(len(r.Fish)), len(r.used))}
	s.Table = t
	return s, nil
}

func (r *scaleReport) scaleFishCells(f queries.ScaleFish) []page.Cell {
	kg := func(v *float64) page.Cell { return page.ValueOf(scaled(v, r.perKG)) }
	state := text(f.WeightState)
	if state == "" {
		state = "not logged"
	}
	species := f.Species // the short name of 3 letters, for a table this wide
	if text(species) == "" {
		species = f.Name
	}
	return []page.Cell{
		page.WordsOf(f.Date), page.WordsOf(species), page.ValueOf(scaled(f.LengthCM, r.perCM)),
		page.WordsOf(f.LengthKind), page.ValueOf(scaled(f.GirthCM, r.perCM)),
		page.Value(f.ScaleKG * r.perKG), page.Words(state), kg(f.RoundKG),
		page.Words(strings.TrimSuffix(text(f.Scale), " scale")),
		kg(f.OwnKG), kg(f.GirthKG), kg(f.LengthKG), page.WordsOf(f.Relation), page.WordsOf(f.LeftOut),
		page.Words(r.Logs.place(f.File, f.Row)),
	}
}

func (r *scaleReport) scaleNotesSection() (page.Section, error) {
	return page.Section{ID: "methods", Heading: "What stands behind this", Notes: []string{
		"Length and girth: W (lb) = L (in) × G (in)² / 800 is a rule of thumb, older than any test of it. No " +
			"peer-reviewed test on tunas was found; on more than 1,100 tarpon it read over 15 % light (Ault and Luo " +
			"2013, Fisheries Research 139:110-117). Only the boat's own scale can judge it.",
		"Length alone: published relations differ. Two curves for eastern Atlantic bluefin lie 9 % apart at 200 cm " +
			"(ICCAT SCRS 2015; Cort et al. 2015), and one fish is not the average of its length.",
		"A weight from the tape is a median: half of such fish are heavier. No factor from the median to the mean " +
			"is applied (Sprugel 1983, Ecology 64:209-210).",
		"A curved tape taken as a straight length is a known bias. On Atlantic bluefin a curved length is some 4 % " +
			"longer (ratio of size limits, from memory): 4 % in a weight by the girth rule, some 13 % by length alone.",
		"Fish that were bled, gutted or dressed are converted to round weight by published factors before they are " +
			"compared, or left out; the table says which. Such a factor is an average.",
		"A dock scale that is not certified has an error of its own, which is in every figure here.",
		"Mercury, histamine, size limits and records: a weight on this page says nothing about any of them. The " +
			"local authority's rules, in force that day, stand above it.",
		"Colours: Okabe and Ito 2008, Color Universal Design.",
	}}, nil
}
