package meaning

import (
	"maps"
	"regexp"
	"strings"

	"wakeledger/pipeline/layout"
	"wakeledger/pipeline/plan"
	"wakeledger/pipeline/unit"
	"wakeledger/pipeline/words"
)

// A mark at a figure may say how it was found: "* = guess", and "190*" in a cell.

// markSaying is a mark with what it means, at the start of a text or behind a mark of its own.
var markSaying = regexp.MustCompile(
	`(?:^|[,;.(:|]\s*|\s{2,})\(?([*^§†°]{1,2})\)?\s*(?:=|:|-|–|—|\s)\s*(\pL[^,;.)|*]*)` +
		`|\s\(?([*^§†°]{1,2})\)?\s*(?:=|\smeans\s|\sis\s)\s*(\pL[^,;.)|*]*)`)

// marked is a figure with a mark behind it or before it.
var marked = regexp.MustCompile(`^([*^§†°]{0,2})\s*(\d[\d.,]*)\s*([*^§†°]{0,2})$`)

// marksIn are the marks that a text explains as those of figures from a scale, or of guesses.
func marksIn(text string) map[string]string {
	out := map[string]string{}
	for _, m := range markSaying.FindAllStringSubmatch(text, -1) {
		if _, told := words.ByScale(m[2] + m[4]); told {
			out[m[1]+m[3]] = m[2] + m[4]
		}
	}
	return out
}

// codeSaying is a short word with what it means: `"mb" = club scale`.
var codeSaying = regexp.MustCompile(`(?:^|[\s"'“(,;])(\pL{1,4})["'”]?(?:\s+(?:after|behind|beside|next to) (?:it|them|` +
	`the (?:number|weight|figure)s?))?\s*(?:=|:|\bmeans\b)\s*(\pL[^,;.)]*)`)

// behindFigure is a figure with a short word behind it.
var behindFigure = regexp.MustCompile(`^(\d[\d.,]*)\s*(?:kgs?|lbs?|#)?\s*(\pL{1,4})\.?$`)

// scaleCodesIn are the short words that a text explains as those of figures from a scale, or of guesses. Units are
// none.
func scaleCodesIn(text string) map[string]string {
	out := map[string]string{}
	for _, m := range codeSaying.FindAllStringSubmatch(text, -1) {
		code := strings.ToLower(m[1])
		u, isUnit := unit.Lookup(code)
		// no time, and nobody weighs a big fish in grams
		isUnit = isUnit && u.Dimension() == unit.Mass && (u != unit.Gram || !words.Hedged(m[2]))
		if _, told := words.ByScale(m[2]); told && !isUnit {
			out[code] = m[2]
		}
	}
	return out
}

// saysScale tells a figure with a word for the scale beside it: "14.2 scale".
func saysScale(c layout.Cell) bool { return words.Scaled(c.Text) && digits(c.Text) > 0 }

// markedCells are a column's cells with what the marks at their figures say: a guess is written as one. Where a
// mark is of a scale, or the log says so of a word, a weight without it is of none.
func (l *legend) markedCells(v *Values, c *plan.Column, codes map[string]string) map[string]string {
	if c.Parse == "fishlist" || c.Name == "species" {
		return l.markedLists(v, codes)
	}
	weight := c.Name == "scale_kg"
	if !weight && c.Name != "length_cm" && c.Name != "girth_cm" {
		return codes
	}
	marks := maps.Clone(l.marks)
	maps.Copy(marks, marksIn(v.Label.Text))
	maps.Copy(marks, l.scaleCodes)
	bare, ofScale := map[string]string{}, weight && l.bare && v.share("on a scale", saysScale) > 0
	if weight && !words.Scaled(v.Label.Text) {
		for _, means := range l.marks { // none weighed all season
			scale, _ := words.ByScale(means)
			ofScale = ofScale || scale && !words.Hedged(means)
		}
	}
	found := map[string]string{}
	for _, cell := range v.cells {
		m := marked.FindStringSubmatch(cell.Text)
		if code := behindFigure.FindStringSubmatch(cell.Text); code != nil &&
			l.scaleCodes[strings.ToLower(code[2])] != "" {
			m = []string{"", "", code[1], strings.ToLower(code[2])}
		}
		if m == nil {
			continue
		}
		means, ok := marks[m[1]+m[3]]
		scale, _ := words.ByScale(means)
		scale = scale && !words.Hedged(means) // weighed by eye
		switch {
		case m[1]+m[3] == "":
			bare[cell.Text] = "~" + cell.Text
		case !ok || scale && !weight:
		case scale:
			found[strings.ToLower(cell.Text)], ofScale = m[2], true
		default:
			found[strings.ToLower(cell.Text)] = "~" + m[2]
		}
	}
	if ofScale {
		maps.Copy(found, bare)
	}
	if len(found) == 0 {
		return codes
	}
	maps.Copy(found, codes)
	return found
}

// codedFigure is a figure with a short word behind it, among other words.
var codedFigure = regexp.MustCompile(`(\d[\d.,]*)(\s*(?:kgs?|lbs?|#))?\s+(\pL{1,4})\b`)

// markedLists are a column's lists of fish in which a short word that is said to mark a guess stands behind a figure,
// with the guess written as one: "wahoo 35, mahi 20 g" as "wahoo 35, mahi ~20".
func (l *legend) markedLists(v *Values, codes map[string]string) map[string]string {
	if len(l.scaleCodes) == 0 {
		return codes
	}
	found := map[string]string{}
	for _, cell := range v.cells {
		text := codedFigure.ReplaceAllStringFunc(cell.Text, func(s string) string {
			m := codedFigure.FindStringSubmatch(s)
			if !words.Hedged(l.scaleCodes[strings.ToLower(m[3])]) {
				return s
			}
			return "~" + m[1] + m[2]
		})
		if text != cell.Text {
			found[strings.ToLower(cell.Text)] = text
		}
	}
	if len(found) == 0 {
		return codes
	}
	maps.Copy(found, codes)
	return found
}
