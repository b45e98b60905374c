package reports

import (
	"fmt"

	"wakeledger/pipeline/sentence"
	"wakeledger/reports/page"
)

func (s *season) effortSection() (page.Section, error) {
	section := page.Section{ID: "effort", Heading: "Effort by speed band"}
	if s.boatHours == 0 {
		section.Sentences = []string{"No effort is logged."}
		return section, nil
	}
	most, unlinedLegs, unlined, unsped := 0, int64(0), 0.0, 0.0
	marks := make([]page.EffortMark, len(s.Effort))
	for i, r := range s.Effort {
		if r.LineHours > s.Effort[most].LineHours {
			most = i
		}
		unlinedLegs, unlined, unsped = unlinedLegs+r.UnlinedLegs, unlined+r.UnlinedHours, unsped+r.UnspedHours
		marks[i] = page.EffortMark{Hours: r.LineHours, Level: page.Level{Name: r.Level, Thin: s.thin[r.Level],
			Counts: page.Plural(r.Trips, "trip", "trips") + "\n" + hours(r.BoatHours) + " boat-h"}}
	}
	lead := s.Effort[most]
	if s.lineHours > 0 {
		section.Sentences = append(section.Sentences, fmt.Sprintf("%s: %s of the season's %s line-hours (%s), the "+
			"most of any level.",
			sentence.Capital(lead.Level), hours(lead.LineHours), hours(s.lineHours),
			page.Percent(lead.LineHours/s.lineHours)))
	}
	if unlinedLegs > 0 {
		section.Sentences = append(section.Sentences, fmt.Sprintf("On %s (%s boat-hours) the number of lines is not "+
			"logged; they add no line-hours.",
			page.Plural(unlinedLegs, "leg", "legs"), hours(unlined)))
	}
	if unsped > 0 {
		section.Sentences = append(section.Sentences,
			fmt.Sprintf("For %s boat-hours the speed is not logged.", hours(unsped)))
	}
	chart, err := page.Effort(page.Frame{
		Label: fmt.Sprintf("Bar chart of line-hours by speed band, %s levels. The most, %s line-hours, at %s. The "+
			"table below holds the figures.",
			page.Count(int64(len(marks))), hours(lead.LineHours), lead.Level),
		Axis: "line-hours", Counts: "trips and boat-hours",
	}, marks)
	section.Chart, section.Table, section.Notes = chart, s.effortTable(), s.effortNotes()
	return section, err
}

func (s *season) effortTable() *page.Table {
	t := &page.Table{
		Caption: "effort by speed band",
		Columns: []page.Column{
			{Head: "Speed over ground"},
			{Head: "Trips", Kind: page.Measure}, {Head: "Legs", Kind: page.Measure},
			{Head: "Boat-hours", Unit: "h", Kind: page.Measure, Decimals: 1},
			{Head: "Line-hours", Unit: "h", Kind: page.Measure, Decimals: 1},
			{Head: "Distance", Unit: "nmi", Kind: page.Measure},
		},
	}
	// A trip, and with a track a leg, may fish several bands: only the trips' own
	// list can be counted.
	legs := int64(0)
	for _, r := range s.Trips {
		legs += r.Legs
	}
	for _, r := range s.Effort {
		t.Rows = append(t.Rows, page.Row{Thin: s.thin[r.Level], Cells: []page.Cell{
			s.levelCell(r.Level), page.Whole(r.Trips), page.Whole(r.Legs),
			page.Value(r.BoatHours), page.Value(r.LineHours), page.ValueOf(r.DistanceNmi),
		}})
	}
	t.Total = []page.Cell{page.Words("season"), page.Whole(int64(len(s.Trips))), page.Whole(legs),
		page.Value(s.boatHours), page.Value(s.lineHours), {}}
	return t
}

func (s *season) levelCell(level string) page.Cell {
	if s.thin[level] {
		return page.Words(level + " (" + page.LittleEffort + ")")
	}
	return page.Words(level)
}

func (s *season) effortNotes() []string {
	notes := []string{"Speed is over ground: a current of a knot shifts a whole band."}
	if enough := s.enough(); enough > 0 {
		notes = append(notes, fmt.Sprintf("Little effort: fewer than %s line-hours, which bring three strikes at "+
			"the season's rate. Too little fishing to judge.", hours(enough)))
	}
	return append(notes,
		"A trip that ran in several bands counts in each; distance is boat-hours times the logged speed.")
}
