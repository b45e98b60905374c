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

// letterRuns are cells that tell the bites of a stretch by a letter each, in the order they came, "KLx" and "K L x",
// written out by the legend that says what became of each; nil unless nearly all cells of the column are such.
func (l *legend) letterRuns(v *Values) map[string]string {
	out, several := map[string]string{}, false
	n := 0
	for _, cell := range v.cells {
		text := strings.ToLower(cell.Text)
		var told []string
		for _, r := range text {
			means := fateSaid(l.words[string(r)])
			if means == "" && r != ' ' {
				told = nil
				break
			}
			if means != "" {
				told = append(told, means)
			}
		}
		if len(told) > 0 {
			n++
			several = several || len(told) > 1
			out[text] = strings.Join(told, "; ")
		}
	}
	if !several || 10*n < 9*len(v.cells) {
		return nil
	}
	return out
}

// fateSaid is what became of a bite as a legend's words say it, in one of our own where they tell of no cause.
func fateSaid(means string) string {
	fate, cause, _, ok := words.FateOf(means)
	switch {
	case !ok || fate <= words.Bit:
		return ""
	case cause != "":
		return strings.Join(strings.FieldsFunc(means, func(r rune) bool { return strings.ContainsRune(",;&", r) }), " ")
	}
	return fate.String()
}

// entriesSaid are the entries of a column of events that the legend explains, each as all of a cell, where it says
// what became of a bite or that a fish was not trolled: "hit off = was on and we lose".
func (l *legend) entriesSaid(v *Values) map[string]string {
	out := map[string]string{}
	for _, cell := range v.cells {
		text := strings.ToLower(cell.Text)
		means := l.words[normalise(text)]
		if words.Otherwise(means) {
			out[text] = means
		} else if fate := fateSaid(means); fate != "" && !ofLines(means) {
			out[text] = fate
		}
	}
	return out
}

// ofLines are words that tell that lines went in or came up, of which some alone would be of a fish: "lineas al agua".
func ofLines(means string) bool {
	e := words.EntryOf(means)
	_, _, at, _ := words.FateOf(means)
	return e.Event >= words.EventIn && e.Rest == "" && at[1]-at[0] < len(means)
}
