package proof

import (
	"fmt"
	"regexp"
	"strings"

	"wakeledger/pipeline/phrase"
)

// figureCode is a letter or two with a figure behind it: "A79*", "S46".
var figureCode = regexp.MustCompile(`(?:^|[\s,;/])(\pL{1,2}\d{2,3}(?:\pL|[*'+])?)(?:$|[\s,;/])`)

// fewCoded is how many cells with such codes are a way of writing.
const fewCoded = 2

// figureCodes asks about codes with figures in a column of fish in words of which no fish with a measure came: "A79*"
// for an albacore of 79 cm that was let go.
func (q *inquiry) figureCodes(s Subject) {
	for i := range s.Plan.Bindings {
		b := &s.Plan.Bindings[i]
		if p := b.Column.Parse; p != "fishlist" && p != "story" || b.Index < 0 {
			continue
		}
		n, first := 0, ""
		for _, r := range s.Block.Rows {
			text := textOf(r, b)
			if said := b.Codes[strings.ToLower(text)]; said != "" {
				text = said
			}
			m := figureCode.FindStringSubmatch(text)
			if m == nil || tellsMeasure(text) {
				continue
			}
			if n++; first == "" {
				first = m[1]
			}
		}
		if n < fewCoded {
			continue
		}
		q.ask("codes", s.Plan.Name, b.Heading, fmt.Sprintf("%d cells under %q have codes such as %q, which were not "+
			"understood: the fish and the bites that they tell are not counted, or not all.", n, b.Heading, first),
			nil, listing, b.Heading)
		q.last().Brief = "Codes of fish were not understood: their fish and bites are not counted, or not all."
	}
}

// tellsMeasure tells a text of which a fish with a length or a weight is read.
func tellsMeasure(text string) bool {
	for _, f := range phrase.FishList(text, phrase.Defaults{LengthUnit: "cm"}) {
		if f.LengthCm > 0 || f.Kg > 0 {
			return true
		}
	}
	return false
}
