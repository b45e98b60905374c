package meaning

import (
	"regexp"
	"strings"

	"wakeledger/pipeline/words"
)

// including are words by which a log says that a count has others in it, and partOf those by which it says
// that others are in the count.
var (
	including = regexp.MustCompile(
		`(?i)\b(?:incl|includ\w*|counting|y compris|inclu\w*|compres\w*|einschlie\w*)\b\.?(.*)`)
	partOf = regexp.MustCompile(`(?i)(?:[=:]\s*(?:parte |son )?de (?:l[oa]s contad[oa]s|es[oa]s|ell[oa]s)|` +
		`\b(?:are|is) (?:in|among|part of) (?:the|those|these) (?:\w+ )?(?:counts?|columns?|figures?|totals?|fish|` +
		`boated|landed|caught)|` +
		`(?:\b(?:is|are|come|comes)|[=:]) out of (?:those|these|them)\s*$|` +
		`\b(?:out )?of (?:the|those|these)(?: ones| fish)? (?:counted|landed|boated|caught|aboard)|` +
		`\b(?:are |is )?included|` +
		`van (?:dentro|incluid[oa]s)|est[aá]n dentro|incluid[oa]s|(?:sono )?(?:compres[ie]|inclus[ie])|` +
		`(?:sont )?(?:compris(?:es)?|inclus(?:es)?)|(?:est[aã]o|v[aã]o) (?:dentro|inclu[ií]d[oa]s)|` +
		`(?:sind )?(?:mitgez[aä]hlt|enthalten|mit drin|darin)\b)`)
	clauseEnd = regexp.MustCompile(`[;.()\n]+`)
	// both are two fates with "or" between them, of what a word counts: "(kept OR let go)"
	both = regexp.MustCompile(`(?i)(\pL+(?: \pL+)?)\s*(?:\b(?:and/or|or|and|o|y|ou|et|e|oder|und)\b|[&+/])\s*` +
		`(\pL+(?: \pL+)?)\s*$`)
	shortIncl = regexp.MustCompile(`(?i)\b(incl?|inbegr|einschl)\.`)
)

// includesLetGo tells a line above a table that says of its counts of fish that they have those
// in them that were let go: "fish columns = in the boat incl. ones let go", "let go = out of those landed".
func (t *Lexicon) includesLetGo(text string) bool {
	all := clauseEnd.Split(shortIncl.ReplaceAllString(text, "$1"), -1)
	for i, said := range all {
		if words.Negated(said) {
			continue
		}
		if i > 0 && t.landsBoth(all[i-1], said) {
			return true
		}
		others := ""
		if m := partOf.FindStringIndex(said); m != nil {
			others = said[:m[0]]
		} else if m := including.FindStringSubmatch(said); m != nil {
			others = m[1]
		}
		fate, _, _, ok := words.FateOf(others)
		if in, _ := t.concepts.found(normalise(others)); ok && fate == words.Released || !ok && in["release"] {
			return true
		}
	}
	return false
}

// landsBoth tells what a word counts to be fish in the boat and fish let go, as the bracket behind it says: "boat = got
// it to the boat (kept OR let go)".
func (t *Lexicon) landsBoth(said, bracket string) bool {
	m := both.FindStringSubmatch(bracket)
	of, _, _, landed := words.FateOf(said)
	if m == nil || !strings.ContainsAny(said, "=:") || !landed || of != words.Landed {
		return false
	}
	a, _, _, _ := words.FateOf(m[1])
	b, _, _, _ := words.FateOf(m[2])
	return a == words.Landed && b == words.Released || a == words.Released && b == words.Landed
}

// alsoCounted is the last part of what a key says of a heading, which names what is among it: ", missed too",
// ", anche a vuoto".
var alsoCounted = regexp.MustCompile(`(?i)[,;(]\s*(?:(?:also|even|incl\S*|anche|aussi|y compris|tambi[eé]n|incluso|` +
	`auch|tamb[eé]m|inkl\S*|compres[ei]|inclus\w*|incluid\w*)\s[^,;]*|` +
	`[^,;]*\s(?:too|as well|also|included|incluid\w*|compris\w*|compres\w*|inclus\w*))\)?\s*\.?\s*$`)

// withoutAlso is what a key says of a heading without what is among it: "all bites, missed too" counts no bites missed.
func withoutAlso(means string) string {
	if at := alsoCounted.FindStringIndex(means); at != nil && strings.TrimSpace(means[:at[0]]) != "" {
		return strings.TrimSpace(means[:at[0]])
	}
	return means
}
