package reports

import (
	"fmt"
	"io"
	"strings"
	"time"

	"wakeledger/pipeline/estimate"
	"wakeledger/pipeline/sentence"
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
	Tracks     Tracks // empty: the report says nothing of it
	Fates      []queries.Fate
	Pairs      []queries.Pair  // speed bands across lure weights, as the season file names them
	Doubts     []queries.Doubt // rows that are kept and may be wrong
	Checks     []queries.ScaleCheck
	Own        map[string]estimate.Own // of the boat, by species (estimate.FitOwn)

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
	thin     map[string]bool  // levels with little effort
	doubtful map[place]string // fish whose measures are doubted, and by which check

	tag string   // what it is called where two seasons stand on one chart; empty: it is alone
	ink page.Ink // its colour there
}

// tagged is the name of a row with the season's behind it, where two stand on one chart;
// what stands under the name stays as it is.
func (s *season) tagged(name string) string {
	head, under, more := strings.Cut(name, "\n")
	if s.tag != "" && !strings.HasSuffix(head, " "+s.tag) {
		head += ", " + s.tag
	}
	if more {
		return head + "\n" + under
	}
	return head
}

// row is a row of a chart.
func (s *season) row(name string, counts ...string) page.Level {
	return page.Level{Name: s.tagged(name), Counts: strings.Join(counts, "\n"), Ink: s.ink}
}

// Season writes the season report as one HTML file. It fails where Units is not
// known or w fails; an empty season gives a page that says so.
func Season(w io.Writer, in SeasonInput) error {
	s, err := newSeason(in)
	if err != nil {
		return err
	}
	pictures, left, err := drawn("season report", s.pictures())
	if err != nil {
		return err
	}
	p := page.Page{
		Report: page.SeasonReport, Title: in.Title, Subtitle: s.subtitle(), Lang: "en-GB", Generated: in.Generated,
		Open: notSettled(s.Open), Tiles: s.tiles(), Box: s.nextBox(pictures), Left: left, Sections: pictures,
		Footer: []string{
			"A weight from the tape is an estimate: not for records, sale or legal size.",
		},
	}
	if len(pictures) > 0 {
		p.Sections = append(p.Sections, s.readingSection(pictures))
	}
	for _, f := range s.folds() {
		fold := page.Fold{Heading: f.heading}
		for _, build := range f.builders {
			section, err := build()
			if err != nil {
				return fmt.Errorf("season report, %s: %w", section.ID, err)
			}
			fold.Sections = append(fold.Sections, section)
		}
		p.Folds = append(p.Folds, fold)
	}
	return page.Render(w, p)
}

// fold is what stands behind one heading.
type fold struct {
	heading  string
	builders []func() (page.Section, error)
}

// folds are what the page shows only when asked; those with nothing to show are left out.
func (s *season) folds() []fold {
	type build = func() (page.Section, error)
	var out []fold
	add := func(on bool, heading string, builders ...build) {
		if on {
			out = append(out, fold{heading, builders})
		}
	}
	factors := []build{}
	if s.boatHours > 0 {
		factors = append(factors, s.effortSection, s.strikesSection)
	}
	if len(s.Worked.Findings) > 0 {
		factors = append(factors, s.factorSections()...)
	}
	add(len(factors) > 0, "Each factor by itself", factors...)
	add(len(s.Worked.Findings) > 0, "Next season in full: trips, and what was changed together",
		s.nextSection, s.mixedSection)
	add(s.strikes > 0, "Hook-ups, gear and spread", s.outcomesSection, s.gearSection, s.spreadSection)
	add(len(s.Fish) > 0, "Every fish", s.classesSection, s.fishSection)
	add(len(s.Trips) > 0, "Trip by trip", s.tripsSection)
	add(len(s.Tracks.Files) > 0, "Tracks", s.tracksSection)
	add(true, "Rows set aside, and rows in doubt", s.setAsideSection)
	add(true, "How these numbers were worked out", s.methodsSection)
	add(true, "Cautions", s.cautionsSection)
	return out
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
	s := &season{SeasonInput: in, units: u, totals: addUp(in), thin: map[string]bool{}, doubtful: doubtsOf(in.Doubts)}
	for _, r := range in.StrikeRate {
		s.thin[r.Level] = r.LineHours < s.enough()
	}
	s.setHeaviest()
	return s, nil
}

// subtitle is the boats, where the title does not name them, the trips and their days.
func (s *season) subtitle() string {
	var parts []string
	if names := sentence.List(s.Boats); names != "" && !strings.HasPrefix(s.Title, names) {
		parts = append(parts, names)
	}
	if n := int64(len(s.Trips)); n > 0 {
		parts = append(parts, page.Plural(n, "trip", "trips"))
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
