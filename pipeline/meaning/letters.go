package meaning

import (
	"maps"
	"strings"

	"wakeledger/pipeline/words"
)

// Unexplained stands for a letter whose meaning is asked about.
const Unexplained = "not explained"

// landsNothing tells a column of fates in which L stands and nothing says of a fish that it was landed: L may be
// lost or landed then.
func landsNothing(v *Values, codes map[string]string) bool {
	found := false
	for _, cell := range v.cells {
		text := strings.ToLower(cell.Text)
		found = found || text == "l"
		if means := codes[text]; means != "" {
			text = means
		}
		if f, _, _, ok := words.FateOf(text); ok && f == words.Landed || text == "boat" {
			return false
		}
	}
	return found
}

// scaleContested tells a column of how fish were weighed in which S stands beside a code that may be the scale's,
// and nothing says of a weight that it was guessed: S may be scale, stima or Schätzung.
func scaleContested(v *Values, codes map[string]string) bool {
	found, other := false, false
	for _, cell := range v.cells {
		text := strings.ToLower(cell.Text)
		if text == "s" {
			found = true
			continue
		}
		means := codes[text]
		if means == "" {
			means = text
		}
		if scale, told := words.ByScale(means); told && !scale || words.MayBeGuess(text) {
			return false
		}
		other = other || text != "" && len(text) <= longestOfSeveral
	}
	return found && other
}

// fatesSaid are the words in a column of fates that the legend explains and no list of codes has: "Off = hooked,
// then gone". What a lone letter is short for is the log's to say: where two words are explained so, whatever it
// says of a letter stands.
func (l *legend) fatesSaid(v *Values, codes map[string]string) map[string]string {
	out, letters := map[string]string{}, map[string]string{}
	for _, cell := range v.cells {
		word := strings.ToLower(cell.Text)
		said := l.words[normalise(word)]
		_, _, _, known := words.FateOf(word)
		short := len(word) <= longestOfSeveral
		switch {
		case said == "" || codes[word] != "" || known && !short:
		case isFate(said):
			out[word] = said
		case short:
			letters[word] = said
		}
	}
	if len(out) > 1 {
		maps.Copy(out, letters)
	}
	return out
}
