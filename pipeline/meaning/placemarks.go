package meaning

import (
	"regexp"
	"slices"
	"strings"

	"wakeledger/pipeline/layout"
	"wakeledger/pipeline/words"
)

// Marks under the places of a spread say of each line whether it was out and what struck there: "- = out, no bite;
// m missed, l hooked and lost; empty = line not out".

// underLines is the beginning of a text that explains them.
var underLines = regexp.MustCompile(`(?i)^\s*(?:under|in|for|below|at)\s+(?:each|every|the|all)\s+` +
	`(?:lines?|rods?|places?|positions?|columns?|cells?|boxes)(?:\s+columns?)?\s*[:=-]\s*(.+)$`)

// placeCode is a mark or a short word with what it means, and placeBlank an empty cell with what it means.
var (
	placeCode  = regexp.MustCompile(`^(\pL{1,5}|[.\-–—0/*+?#✓]{1,2})(?:\s*[=:]\s*|\s+)(\pL.*)$`)
	placeBlank = regexp.MustCompile(`(?i)^(?:empty|blank|nothing|left (?:empty|blank)|no mark)\s*(?:cells?)?` +
		`\s*(?:=|:|means?|is)\s*(\pL.*)$`)
)

// fewPlaceCodes is how many marks such a text explains at the least.
const fewPlaceCodes = 2

// placeCodes are the marks that a text explains of the lines; those of empty cells stand under "". nil: it explains
// none. What follows a comma and explains no mark goes on with the one before.
func placeCodes(text string) map[string]string {
	m := underLines.FindStringSubmatch(text)
	if m == nil {
		return nil
	}
	codes, last := map[string]string{}, ""
	for _, part := range strings.FieldsFunc(m[1], func(c rune) bool { return c == ';' || c == ',' }) {
		part = strings.TrimSpace(part)
		blank, code := placeBlank.FindStringSubmatch(part), placeCode.FindStringSubmatch(part)
		switch {
		case blank != nil:
			codes[""], last = blank[1], ""
		case code != nil && tellsOfLine(code[2]) && (last == "" || codes[strings.ToLower(code[1])] == ""):
			last = strings.ToLower(code[1])
			codes[last] = strings.TrimSpace(code[2])
		case last != "":
			codes[last] += ", " + part
		default:
			return nil
		}
	}
	if len(codes) < fewPlaceCodes {
		return nil
	}
	for code, means := range codes {
		if !words.NotOut(means) && !isFate(means) {
			codes[code] = "no bite"
		}
	}
	return codes
}

// tellsOfLine tells what may become of a line: something struck, nothing did, or it was not out.
func tellsOfLine(text string) bool {
	return isFate(text) || words.Nothing(text) || words.NotOut(text) ||
		slices.Contains(strings.Fields(strings.ToLower(text)), "out")
}

// blankRods finds what an empty cell under a place of the spread says where no legend tells: beside marks for a line on
// which nothing struck, that no line was out there. Proof asks.
func (x *builder) blankRods() {
	p := x.plan
	if len(p.Rods) < 2 {
		return
	}
	if _, told := p.Rods[0].Codes[""]; told {
		return
	}
	quiet, blank := 0, 0
	for _, row := range x.rows {
		for _, u := range p.Rods {
			switch text := cellOf(row, u.Index); {
			case text == "":
				blank++
			case words.QuietMark(text):
				quiet++
			}
		}
	}
	p.RodsBlank = quiet > 0 && blank > 0 && 2*quiet >= len(x.rows)
}

// ofPlace are the cells under a place of the spread with the first of their marks written out; the column as it is
// where a cell holds anything else.
func (l *legend) ofPlace(v *Values) *Values {
	rows := make([]layout.Cell, len(v.Rows))
	for i, c := range v.Rows {
		for _, mark := range strings.FieldsFunc(strings.ToLower(c.Text), betweenPlaceMarks) {
			means, ok := l.places[mark]
			if !ok {
				return v
			}
			if rows[i].Text == "" {
				rows[i] = layout.Cell{Text: means, Look: layout.Text}
			}
		}
	}
	out := newValues(v.Label, rows, v.workbook, v.monthly)
	out.spelledOut = true
	return out
}

func betweenPlaceMarks(c rune) bool { return strings.ContainsRune(" ,;/+&\n", c) }
