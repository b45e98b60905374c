package meaning

import (
	"slices"
	"strings"

	"wakeledger/pipeline/species"
)

// alwaysFree tells a fish that the log says is let go whenever it is caught: "sailfish always released". Its name there
// may be short of the heading's ("marlins" for "Blue marlin"), or be that of its family.
func (l *legend) alwaysFree(t *Lexicon, heading string) bool {
	return slices.ContainsFunc(l.freed, func(name string) bool {
		if shortOf(normalise(name), normalise(heading)) {
			return true
		}
		of := t.Species.Find(name, "")
		return len(speciesCodes(of)) > 0 && mayBeOne(of, t.Species.Find(heading, ""))
	})
}

func speciesCodes(m species.Match) []string {
	if m.Found {
		return []string{m.Species.Code}
	}
	return m.Candidates
}

// shortOf tells a name in one word that is a word of a longer one, but for the mark of several.
func shortOf(name, of string) bool {
	one := func(w string) string { return strings.TrimSuffix(strings.TrimSuffix(w, "s"), "e") }
	return len(name) > 3 && slices.ContainsFunc(strings.Fields(of), func(w string) bool { return one(w) == one(name) })
}
