package normalise

import (
	"regexp"
	"strings"

	"wakeledger/pipeline/words"
)

// bracket is what a number in brackets of a kind stands for in a list of fish: a girth in cm, a weight in kg.
type bracket struct {
	number *regexp.Regexp
	unit   string
}

var bracketPart = regexp.MustCompile(`\[[^\]\d]*\]|\([^)\d]*\)|\{[^}\d]*\}|<[^>\d]*>`)

// bracketsIn reads what a log says of its lists of fish: "name, fork length in cm, [girth in cm], (kg on the scale)".
// Brackets of one kind that stand for two things are none.
func bracketsIn(said string) []bracket {
	var out []bracket
	for _, in := range bracketPart.FindAllString(said, -1) {
		unit := unitIn(in[1 : len(in)-1])
		if unit != "" && words.Scaled(in) {
			unit += " scale"
		}
		if unit == "" || strings.Count(said, in[:1]) > 1 {
			continue
		}
		open, end := regexp.QuoteMeta(in[:1]), regexp.QuoteMeta(in[len(in)-1:])
		out = append(out, bracket{regexp.MustCompile(open + `\s*(\d+(?:[.,]\d+)?)\s*` + end), unit})
	}
	return out
}

// unitIn is the unit that words say, behind it that it is a girth's where they say so.
func unitIn(text string) string {
	toks := words.Scan(text)
	found, girth := "", ""
	for i := range toks {
		symbol, _, ok := words.UnitAt(toks, i)
		switch {
		case !ok:
		case symbol == "girth":
			girth = " girth"
		default:
			found = symbol
		}
	}
	if found == "" {
		return ""
	}
	return found + girth
}

// unbracketed writes the numbers of a list's brackets with what the log says that they are.
func (t *target) unbracketed(text string) string {
	for _, b := range t.brackets {
		text = b.number.ReplaceAllString(text, " $1 "+b.unit+" ")
	}
	return text
}

// withoutBrackets is what a log says of a heading without what it says of brackets.
func withoutBrackets(said string) string { return bracketPart.ReplaceAllString(said, " ") }
