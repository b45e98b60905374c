package reports

import (
	"fmt"
	"slices"
	"strings"

	"wakeledger/queries"
	"wakeledger/queries/evidence"
	"wakeledger/reports/page"
)

// picture builds one of the season's pictures. Where the season has nothing to draw, less
// says why, as the tail of a sentence.
type picture func() (section page.Section, less string, err error)

// pictures are those of the season, in the order in which they are shown.
func (s *season) pictures() []picture {
	return []picture{s.speedPicture, s.matteredPicture, s.daysPicture, s.sizesPicture, s.fatesPicture,
		s.pairsPicture, s.heaviestPicture}
}

// part is what one season brings to a picture: its marks, with the rows of the table
// under them, and its sentence. Where there is nothing to draw, less says why, as the
// tail of a sentence.
type part[Mark any] struct {
	levels   []page.Level // of the rows, where the marks do not bring their own
	marks    []Mark
	rows     []page.Row
	sentence string
	aside    string // a second sentence
	less     string
}

// aloneOnPage is why a picture is left out where another says why.
const aloneOnPage = " "

// drawn are the pictures of a page that are filled, and a paragraph on those left out.
func drawn(of string, pictures []picture) ([]page.Section, []string, error) {
	var out []page.Section
	var left []string
	for _, draw := range pictures {
		section, less, err := draw()
		switch {
		case err != nil:
			return nil, nil, fmt.Errorf("%s, %s: %w", of, section.ID, err)
		case less == aloneOnPage:
		case less != "":
			left = append(left, less)
		case section.Chart != nil:
			out = append(out, section)
		}
	}
	if len(left) > 0 {
		return out, []string{"Not drawn: " + strings.Join(left, "; ") + "."}, nil
	}
	return out, nil, nil
}

// readingSection is what holds for all pictures, said once.
func (s *season) readingSection(drawn []page.Section) page.Section {
	notes := []string{
		"Each trip is compared with itself, and lures on the lines of one leg with each other: good days favour no " +
			"setting.",
		"Settled: luck alone would do as much in fewer than one season in twenty, all factors allowed for. Leaning: " +
			"so for this factor by itself. Not settled does not mean that it makes no difference.",
		"A line through a mark is its 95 % interval; of a weight by tape, 90 %. One that ends in an arrow goes on.",
	}
	if slices.ContainsFunc(drawn, func(x page.Section) bool { return strings.HasPrefix(x.ID, "mattered") }) {
		notes = append(notes, "What mattered shows each factor's best kind, picked afterwards: an interval clear of "+
			"1 alone does not make it lean.")
	}
	if enough := s.enough(); enough > 0 {
		notes = append(notes, fmt.Sprintf("Pale and hatched: little effort, fewer than %s line-hours. Too little "+
			"fishing to judge.", hours(enough)))
	}
	notes = append(notes,
		"Speed is over ground: a current of a knot shifts a whole band.",
		"Look-out and local rules come before any plan on this page: see Cautions.")
	notes = append(notes, s.doubtfulLegs()...)
	return page.Section{ID: "reading", Heading: "To read the pictures", Notes: notes}
}

// ratioText is a ratio without its unit: "1.6".
func ratioText(r float64) string { return strings.TrimSuffix(evidence.Times(r), " times") }

// ratioSpan is the interval of a ratio in brackets, with a leading blank; "" without one.
func ratioSpan(lo, hi *float64) string {
	switch {
	case lo == nil && hi == nil:
		return ""
	case hi == nil:
		return " (" + ratioText(*lo) + " or more)"
	case lo == nil:
		return " (up to " + ratioText(*hi) + ")"
	}
	return fmt.Sprintf(" (%s to %s)", ratioText(*lo), ratioText(*hi))
}

// verdictTail ends a sentence on a finding.
func verdictTail(f *queries.Finding) string {
	switch f.Verdict {
	case string(evidence.Settled):
		return "Settled."
	case string(evidence.Leaning):
		return "Leaning, not settled."
	}
	return "Not settled."
}

// leans tells whether a finding leans or is settled.
func leans(f *queries.Finding) bool { return f != nil && f.Verdict != string(evidence.NotSettled) }
