package reports

import (
	"fmt"
	"slices"

	"wakeledger/queries"
	"wakeledger/reports/page"
)

func (s *season) tripsSection() (page.Section, error) {
	section := page.Section{ID: "trips", Heading: "Trip by trip"}
	if len(s.Trips) == 0 {
		section.Sentences = []string{"No trip is logged."}
		return section, nil
	}
	section.Sentences = s.tripSentences()
	marks := make([]page.OutingMark, len(s.Trips))
	for i, t := range s.Trips {
		marks[i] = page.OutingMark{Name: tripName(t), Strikes: t.Strikes, Boated: t.Landed +
			t.Released, Hours: t.LineHours}
	}
	chart, err := page.Outings("Strikes and line-hours of each trip, in order. "+section.Sentences[0]+
		" The table below holds the figures.", marks)
	section.Chart, section.Table = chart, s.tripsTable()
	return section, err
}

// tripName is short: it stands under a narrow column.
func tripName(t queries.Trip) string {
	if t.Date != nil {
		return day(*t.Date, "2 Jan")
	}
	return t.Trip
}

// tripSentences say the busiest trip, and on how few trips half of the strikes
// came: what a rate over the season hides.
func (s *season) tripSentences() []string {
	counts, busiest := make([]int64, len(s.Trips)), 0
	for i, t := range s.Trips {
		counts[i] = t.Strikes
		if t.Strikes > s.Trips[busiest].Strikes {
			busiest = i
		}
	}
	b := s.Trips[busiest]
	if b.Strikes == 0 {
		return []string{fmt.Sprintf("%s without a strike.", page.Plural(int64(len(s.Trips)), "trip", "trips"))}
	}
	name := b.Trip
	if b.Date != nil {
		name = day(*b.Date, "2 January 2006")
	}
	out := []string{fmt.Sprintf("%s: %s in %s line-hours, the most of any trip.", name,
		page.Plural(b.Strikes, "strike", "strikes"), hours(b.LineHours))}
	if n := halfOf(counts); n < len(counts) {
		out = append(out, fmt.Sprintf("Half or more of the strikes came on %s of %s.", page.Count(int64(n)),
			page.Plural(int64(len(counts)), "trip", "trips")))
	}
	return out
}

// halfOf is the fewest of the counts that add up to half of their sum or more.
func halfOf(counts []int64) int {
	sorted := slices.Clone(counts)
	slices.Sort(sorted)
	slices.Reverse(sorted)
	total, reached := sum(sorted), int64(0)
	for i, n := range sorted {
		reached += n
		if 2*reached >= total {
			return i + 1
		}
	}
	return len(sorted)
}

// heaviestFrom is how a trip's heaviest fish was weighed, and whether that is doubtful.
func (s *season) heaviestFrom(t queries.Trip) page.Cell {
	if t.HeaviestMethod == nil || t.HeaviestKG == nil {
		return page.Cell{}
	}
	for _, f := range s.Fish {
		if text(f.Trip) == t.Trip && f.WeightKG != nil && *f.WeightKG == *t.HeaviestKG && s.doubtful[placeOf(f)] != "" {
			return page.Words(queries.WeighedBy(*t.HeaviestMethod) + " (doubtful)")
		}
	}
	return weighedBy(t.HeaviestMethod)
}

func (s *season) tripsTable() *page.Table {
	t := &page.Table{Caption: "every trip", Columns: []page.Column{{Head: "Date", Kind: page.Token},
		{Head: "Trip", Kind: page.Token}}}
	boats := s.severalBoats()
	if boats {
		t.Columns = append(t.Columns, page.Column{Head: "Boat"})
	}
	t.Columns = append(t.Columns,
		page.Column{Head: "Legs", Kind: page.Measure},
		page.Column{Head: "Boat-hours", Unit: "h", Kind: page.Measure, Decimals: 1},
		page.Column{Head: "Line-hours", Unit: "h", Kind: page.Measure, Decimals: 1},
		page.Column{Head: "Strikes", Kind: page.Measure},
		page.Column{Head: "Landed", Kind: page.Measure},
		page.Column{Head: "Released", Kind: page.Measure},
		page.Column{Head: "Heaviest", Unit: s.weight, Kind: page.Measure},
		page.Column{Head: "Weight from"},
		page.Column{Head: "Doubtful"})
	var boatHours, lineHours float64
	legs := int64(0)
	for _, r := range s.Trips {
		boatHours, lineHours, legs = boatHours+r.BoatHours, lineHours+r.LineHours, legs+r.Legs
		cells := []page.Cell{page.WordsOf(r.Date), page.Words(r.Trip)}
		if boats {
			cells = append(cells, page.Words(r.Boat))
		}
		t.Rows = append(t.Rows, page.Row{Cells: append(cells, page.Whole(r.Legs),
			page.Value(r.BoatHours), page.Value(r.LineHours),
			page.Whole(r.Strikes), page.Whole(r.Landed), page.Whole(r.Released),
			page.ValueOf(scaled(r.HeaviestKG, s.perKG)), s.heaviestFrom(r), page.Words(s.tripDoubts(r)))})
	}
	t.Total = []page.Cell{page.Words("season"), {}}
	if boats {
		t.Total = append(t.Total, page.Cell{})
	}
	t.Total = append(t.Total, page.Whole(legs), page.Value(boatHours), page.Value(lineHours),
		page.Whole(s.tripStrikes), page.Whole(s.tripLanded), page.Whole(s.tripReturn),
		page.Cell{}, page.Cell{}, page.Cell{})
	return t
}
