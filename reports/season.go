package reports

import (
	"fmt"
	"io"
	"strings"
	"time"

	"wakeledger/queries"
	"wakeledger/reports/page"
)

// SeasonInput is what the season report is made of. Rows by level are by speed
// band, in the order in which they are to be shown; a level's name is text and is
// not taken apart, except that "not logged" is moved to the end.
type SeasonInput struct {
	Title     string    // "Season 2026"
	Boats     []string  // named under the title; may be empty
	Generated time.Time // printed in the foot
	Units     string    // "metric" or "us"

	Effort     []queries.Effort
	StrikeRate []queries.StrikeRate
	Outcomes   []queries.Outcomes
	Sizes      []queries.Sizes
	Fish       []queries.Fish
	Trips      []queries.Trip
	Troubles   queries.Troubles // rows set aside or doubtful, by reason
	Logs       Logs
	Drag       []queries.Drag
	Failures   []queries.Failure
	Worked     Worked // empty: the report says nothing of it
	Beside     Beside // another season beside this one; empty: none
	Tracks     Tracks // empty: the report says nothing of it

	// Methods are notes on how the figures were come by that only the caller
	// knows: relations used, intervals widened, settings that differ.
	Methods []string

	Open queries.Open // questions on effort or strikes; zero: all is settled
}

// season is the input made ready: sorted, added up, with its units.
type season struct {
	SeasonInput
	units
	totals
	thin map[string]bool // levels with little effort
}

// Season writes the season report as one HTML file. It fails where Units is not
// known or w fails; an empty season gives a page that says so.
func Season(w io.Writer, in SeasonInput) error {
	s, err := newSeason(in)
	if err != nil {
		return err
	}
	p := page.Page{
		Report: page.SeasonReport, Title: in.Title, Kicker: "Season report", Subtitle: s.subtitle(), Lang: "en-GB", Generated: in.Generated,
		Open: notSettled(s.Open), Tiles: s.tiles(),
		Footer: []string{
			"A weight from the tape is an estimate: not for records, sale or legal size.",
		},
	}
	builders := []func() (page.Section, error){s.effortSection}
	if len(s.Tracks.Files) > 0 {
		builders = append(builders, s.tracksSection)
	}
	builders = append(builders, s.strikesSection)
	if s.Beside.Names[1] != "" {
		builders = append(builders, s.besideSection)
	}
	if len(s.Worked.Findings) > 0 {
		builders = append([]func() (page.Section, error){s.workedSection}, builders...)
		builders = append(builders, s.factorSections()...)
		builders = append(builders, s.mixedSection, s.nextSection, s.spreadSection, s.mediansSection)
	}
	builders = append(builders, s.outcomesSection, s.sizesSection, s.fishSection,
		s.gearSection, s.tripsSection, s.setAsideSection, s.methodsSection, s.cautionsSection)
	for _, build := range builders {
		section, err := build()
		if err != nil {
			return fmt.Errorf("season report, %s: %w", section.ID, err)
		}
		p.Sections = append(p.Sections, section)
	}
	return page.Render(w, p)
}

func newSeason(in SeasonInput) (*season, error) {
	u, err := unitsOf(in.Units)
	if err != nil {
		return nil, fmt.Errorf("season report: %w", err)
	}
	in.Effort = lastNotLogged(in.Effort, func(r queries.Effort) string { return r.Level })
	in.StrikeRate = lastNotLogged(in.StrikeRate, func(r queries.StrikeRate) string { return r.Level })
	in.Outcomes = lastNotLogged(in.Outcomes, func(r queries.Outcomes) string { return r.Level })
	in.Sizes = lastNotLogged(in.Sizes, func(r queries.Sizes) string { return r.Level })
	s := &season{SeasonInput: in, units: u, totals: addUp(in), thin: map[string]bool{}}
	for _, r := range in.StrikeRate {
		s.thin[r.Level] = r.LineHours < s.enough()
	}
	return s, nil
}

// subtitle is the boats and the span of days.
func (s *season) subtitle() string {
	parts := []string{}
	if len(s.Boats) > 0 {
		parts = append(parts, list(s.Boats))
	}
	first, last := "", ""
	for _, t := range s.Trips {
		d := text(t.Date)
		if d == "" {
			continue
		}
		if first == "" || d < first {
			first = d
		}
		last = max(last, d)
	}
	switch {
	case first == "":
	case first == last:
		parts = append(parts, day(first, "2 January 2006"))
	case first[:min(4, len(first))] == last[:min(4, len(last))]:
		parts = append(parts, day(first, "2 January")+" to "+day(last, "2 January 2006"))
	default:
		parts = append(parts, day(first, "2 January 2006")+" to "+day(last, "2 January 2006"))
	}
	return strings.Join(parts, ", ")
}
