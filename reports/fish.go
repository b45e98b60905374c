package reports

import (
	"wakeledger/pipeline/factors"
	"wakeledger/pipeline/sentence"
	"wakeledger/queries"
	"wakeledger/reports/page"
)

func (s *season) fishSection() (page.Section, error) {
	section := page.Section{ID: "fish", Heading: "The fish"}
	if len(s.Fish) == 0 {
		section.Sentences = []string{"No fish is logged."}
		return section, nil
	}
	section.Sentences = []string{page.Plural(int64(len(s.Fish)), "fish", "fish") +
		", each with the weight that its row supports best."}
	section.Table = s.fishTable()
	return section, nil
}

func speciesName(f queries.Fish) string {
	if f.Species == nil || *f.Species == "" {
		return factors.NotLogged
	}
	return *f.Species
}

// fishColumns takes the decimals of lengths, scale weights and estimates.
func (s *season) fishColumns(length, scale, tape int) []page.Column {
	columns := []page.Column{
		{Head: "Date", Kind: page.Token}, {Head: "Species"},
		{Head: "Length", Unit: s.length, Kind: page.Measure, Decimals: length}, {Head: "Measured", Kind: page.Token},
		{Head: "Girth", Unit: s.length, Kind: page.Measure, Decimals: length},
		{Head: "On a scale", Unit: s.weight, Kind: page.Measure, Decimals: scale},
		{Head: "By tape", Unit: s.weight + ", estimate", Kind: page.Measure, Decimals: tape},
		{Head: "90 % interval", Unit: s.weight, Kind: page.Interval, Decimals: tape},
		{Head: "Weight from"},
		{Head: "Speed", Unit: "kn", Kind: page.Measure, Decimals: 1},
		{Head: "Fate", Kind: page.Token}, {Head: "Trip", Kind: page.Token},
	}
	if s.severalBoats() {
		columns = append(columns, page.Column{Head: "Boat"})
	}
	return append(columns, page.Column{Head: "Row of the log", Kind: page.Source})
}

func (s *season) fishTable() *page.Table {
	t := &page.Table{Caption: "every fish"}
	var lengths, scale []float64
	tape := 0
	for _, f := range s.Fish {
		for _, v := range []*float64{f.LengthCM, f.GirthCM} {
			if v != nil {
				lengths = append(lengths, *v*s.perCM)
			}
		}
		switch {
		case f.WeightKG == nil:
		case IsScale(f.Method):
			scale = append(scale, *f.WeightKG*s.perKG)
		default:
			tape = max(tape, estimateDecimals(*f.WeightKG*s.perKG))
		}
		t.Rows = append(t.Rows, page.Row{Cells: s.fishCells(f)})
	}
	t.Columns = s.fishColumns(weightDecimals(lengths), weightDecimals(scale), tape)
	return t
}

func (s *season) fishCells(f queries.Fish) []page.Cell {
	weight := page.ValueOf(scaled(f.WeightKG, s.perKG))
	scale, tape := page.ValueOf(scaled(f.ScaleKG, s.perKG)), weight
	if IsScale(f.Method) {
		scale, tape = weight, page.Cell{}
	}
	cells := []page.Cell{
		page.WordsOf(f.Date), s.speciesCell(f),
		page.ValueOf(scaled(f.LengthCM, s.perCM)), page.WordsOf(f.LengthKind), page.ValueOf(scaled(f.GirthCM, s.perCM)),
		scale, tape, page.Span(scaled(f.WeightLoKG, s.perKG), scaled(f.WeightHiKG, s.perKG)),
		weighedBy(f.Method), page.ValueOf(f.SpeedKn), fate(f.Kept), page.WordsOf(f.Trip),
	}
	if s.severalBoats() {
		cells = append(cells, page.WordsOf(f.Boat))
	}
	return append(cells, page.Words(s.Logs.place(f.File, f.Row)))
}

// weighedBy is how a fish was weighed, in the captain's words.
func weighedBy(method *string) page.Cell {
	if method == nil {
		return page.Cell{}
	}
	return page.Words(queries.WeighedBy(*method))
}

// speciesCell names the species, and what is doubtful of the fish.
func (s *season) speciesCell(f queries.Fish) page.Cell {
	if f.Species == nil || *f.Species == "" {
		if why := s.doubtsAt(placeOf(f)); why != "" {
			return page.Words("not logged (doubtful: " + why + ")")
		}
		return page.Cell{}
	}
	name := sentence.Capital(fishNames(*f.Species))
	if why := s.doubtsAt(placeOf(f)); why != "" {
		name += " (doubtful: " + why + ")"
	}
	return page.Words(name)
}

func fate(kept *bool) page.Cell {
	switch {
	case kept == nil:
		return page.Cell{}
	case *kept:
		return page.Words("kept")
	}
	return page.Words("released")
}

// severalBoats tells whether the boat must be named in tables.
func (s *season) severalBoats() bool {
	for _, t := range s.Trips {
		if t.Boat != s.Trips[0].Boat {
			return true
		}
	}
	return false
}
