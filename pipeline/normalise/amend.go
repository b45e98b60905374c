package normalise

import (
	"fmt"
	"regexp"
	"strings"

	"wakeledger/pipeline/entry"
	"wakeledger/pipeline/unit"
	"wakeledger/pipeline/words"
)

// wroteDown are words for what somebody put into his log himself, with the figure behind.
const wroteDown = `\b(?:(?:i|we)(?: had)? (?:put|wrote|entered|logged)|puse|puso|apunté|escribí|` +
	`ho (?:scritto|segnato)|(?:j'ai|j’ai) (?:noté|écrit|mis)|escrevi|pus|schrieb ich|` +
	`ich schrieb)(?: down)?\s+(\d+(?:[.,]\d+)?)\s*(?:\pL+|")?`

// What somebody says of a figure that he wrote down wrong: the right one before it or behind it.
var (
	rightFirst = regexp.MustCompile(`(?i)(\d+(?:[.,]\d+)?)\s*(\pL+|")?[^\d]{0,40}?` + wroteDown)
	wrongFirst = regexp.MustCompile(`(?i)` + wroteDown + `[^\d]{0,40}?(\d+(?:[.,]\d+)?)\s*(\pL+|")?`)
)

// measure is a measure of a fish.
type measure struct {
	name string
	of   unit.Dimension
	unit unit.Unit
}

// amendable are the measures that a line may mend, with the units in which they are kept.
var amendable = []measure{{"length_cm", unit.Length, unit.Centimetre}, {"girth_cm", unit.Length, unit.Centimetre},
	{"scale_kg", unit.Mass, unit.Kilogram}}

// unitOf is the unit of a measure's column; of a log that has none it is that of its tape or its scale.
func (r *Reader) unitOf(name string) unit.Unit {
	for i := range r.targets {
		if t := &r.targets[i]; t.Column.Name == name {
			if t.Unit != "" {
				return t.Unit
			}
			return r.fallback(t)
		}
	}
	switch us := r.system() == "us"; {
	case name == "scale_kg":
		return r.scaleUnit()
	case us:
		return unit.Inch
	case r.system() == "metric":
		return unit.Centimetre
	}
	return ""
}

// amends takes a line without a time that mends a length or a weight of the day: "the wahoo was 52 inches, I put
// 42". It reports whether the line is such; one whose wrong figure no fish or several of that day have is told.
func (r *Reader) amends(t *target, text string) bool {
	right, wrong, of := "", "", ""
	if m := rightFirst.FindStringSubmatch(text); m != nil {
		right, of, wrong = m[1], m[2], m[3]
	} else if m := wrongFirst.FindStringSubmatch(text); m != nil {
		wrong, right, of = m[1], m[2], m[3]
	} else {
		return false
	}
	symbol := ""
	if toks := words.Scan(of); len(toks) > 0 {
		symbol, _, _ = words.UnitAt(toks, 0)
	}
	var found map[string]entry.Value
	n, name, now := 0, "", 0.0
	for _, v := range r.events.struck {
		for _, m := range amendable {
			from := unit.Unit(symbol)
			if from == "" {
				from = r.unitOf(m.name)
			}
			was, errWas := measureIn(wrong, m.of, from, m.unit)
			is, errIs := measureIn(right, m.of, from, m.unit)
			if v[m.name].Known && errWas == nil && errIs == nil && near(v[m.name].Real, was) {
				found, name, now = v, m.name, is
				n++
			}
		}
	}
	if n != 1 {
		r.aside = append(r.aside, r.problem(t, text, "seems to mend what another row says: mend it there"))
		return true
	}
	found[name] = entry.OfReal(now)
	r.doubts = append(r.doubts, r.problem(t, text, fmt.Sprintf("mends a row of that day: %s was taken where it says %s",
		right, wrong)))
	return true
}

// measureIn reads a bare figure of a unit in another.
func measureIn(figure string, of unit.Dimension, from, to unit.Unit) (float64, error) {
	q, err := unit.ParseQuantity(strings.TrimSpace(figure), of, from, unit.MarkOf(figure))
	if err != nil {
		return 0, err
	}
	return q.In(to)
}

func near(a, b float64) bool { return a-b < 1e-6 && b-a < 1e-6 }
