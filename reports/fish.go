package reports

import (
	"fmt"
	"slices"

	"wakeledger/queries"
	"wakeledger/reports/page"
)

// mostFish is how many points are drawn one by one; a drawing of more is slow
// on a phone and shows no single fish.
const mostFish = 2000

func (s *season) fishSection() (page.Section, error) {
	section := page.Section{ID: "fish", Heading: "The fish"}
	if len(s.Fish) == 0 {
		section.Sentences = []string{"No fish is logged."}
		return section, nil
	}
	section.Sentences = s.fishSentences()
	levels, marks := s.fishMarks()
	if len(marks) > mostFish {
		section.Notes = append(section.Notes, fmt.Sprintf("With more than %s weights, the points are not drawn; the table lists them all.", page.Count(mostFish)))
		levels, marks = nil, nil
	}
	chart, err := page.Weights(page.Frame{
		Label: "Every fish with a weight, one row a species, weighed fish apart from estimates. " + section.Sentences[0] + " The table below holds the figures.",
		Axis:  "round weight, " + s.weight, Counts: "fish with a weight",
	}, levels, marks)
	section.Chart, section.Table = chart, s.fishTable()
	section.Notes = append(section.Notes,
		"Where an estimate has an interval, it is a 90 % prediction interval: nine of ten such fish are expected within it. Without an interval, nothing is known of its error.",
		"A weight from the tape is an estimate: not for records, sale or legal size.")
	return section, err
}

func (s *season) fishSentences() []string {
	var out []string
	if f := s.scale; f != nil {
		out = append(out, fmt.Sprintf("Heaviest on a scale: %s %s%s.", s.weightText(f), s.weight, s.fishWords(f)))
	}
	if f := s.tape; f != nil {
		interval := ""
		if f.WeightLoKG != nil && f.WeightHiKG != nil {
			lo, hi := *f.WeightLoKG*s.perKG, *f.WeightHiKG*s.perKG
			interval = fmt.Sprintf(" (%s to %s)", page.Number(lo, estimateDecimals(lo)), page.Number(hi, estimateDecimals(lo)))
		}
		out = append(out, fmt.Sprintf("Heaviest by tape: about %s %s%s%s, an estimate.", s.weightText(f), s.weight, interval, s.fishWords(f)))
	}
	if len(out) == 0 {
		return []string{fmt.Sprintf("%s logged, none with a weight.", page.Plural(int64(len(s.Fish)), "fish", "fish"))}
	}
	return out
}

// fishWords is the species and day of a fish, as the tail of a sentence.
func (s *season) fishWords(f *queries.Fish) string {
	tail := ""
	if f.Species != nil {
		tail += ", " + *f.Species
	}
	if f.Date != nil {
		tail += ", " + day(*f.Date, "2 January 2006")
	}
	return tail
}

// fishMarks are the fish with a weight, heaviest first, one row a species in
// the order of their names, the unnamed last.
func (s *season) fishMarks() ([]page.Level, []page.WeightMark) {
	weighed := slices.DeleteFunc(slices.Clone(s.Fish), func(f queries.Fish) bool { return f.WeightKG == nil })
	slices.SortStableFunc(weighed, func(a, b queries.Fish) int {
		switch {
		case *a.WeightKG > *b.WeightKG:
			return -1
		case *a.WeightKG < *b.WeightKG:
			return 1
		}
		return 0
	})
	var names []string
	for _, f := range weighed {
		if name := speciesName(f); !slices.Contains(names, name) {
			names = append(names, name)
		}
	}
	slices.Sort(names)
	names = lastNotLogged(names, func(n string) string { return n })
	count, scale := make([]int64, len(names)), make([]int64, len(names))
	var marks []page.WeightMark
	for _, f := range weighed {
		row := slices.Index(names, speciesName(f))
		onScale := isScale(f.Method)
		count[row]++
		if onScale {
			scale[row]++
		}
		marks = append(marks, page.WeightMark{Row: row, Weight: *f.WeightKG * s.perKG, Scale: onScale,
			Lo: scaled(f.WeightLoKG, s.perKG), Hi: scaled(f.WeightHiKG, s.perKG)})
	}
	var levels []page.Level
	for i, name := range names {
		levels = append(levels, page.Level{Name: name, Counts: page.Plural(count[i], "fish", "fish") + "\n" + page.Count(scale[i]) + " on a scale"})
	}
	return levels, marks
}

func speciesName(f queries.Fish) string {
	if f.Species == nil || *f.Species == "" {
		return notLogged
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
		case isScale(f.Method):
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
	if isScale(f.Method) {
		scale, tape = weight, page.Cell{}
	}
	cells := []page.Cell{
		page.WordsOf(f.Date), page.WordsOf(f.Species),
		page.ValueOf(scaled(f.LengthCM, s.perCM)), page.WordsOf(f.LengthKind), page.ValueOf(scaled(f.GirthCM, s.perCM)),
		scale, tape, page.Span(scaled(f.WeightLoKG, s.perKG), scaled(f.WeightHiKG, s.perKG)),
		page.WordsOf(f.Method), page.ValueOf(f.SpeedKn), fate(f.Kept), page.WordsOf(f.Trip),
	}
	if s.severalBoats() {
		cells = append(cells, page.WordsOf(f.Boat))
	}
	return append(cells, page.Words(s.Logs.place(f.File, f.Row)))
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
