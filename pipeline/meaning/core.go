package meaning

import (
	"regexp"
	"slices"
	"strings"

	"wakeledger/pipeline/words"
)

const alsoWord = `(?:also|including|incl\.?|inkl\.?|counting|with|con|contando|anche|compres[ie]|inclus[ie]|y compris|` +
	`avec|incluindo|incluyendo|com|auch|mit|even|m[êe]me|incluso|aun|mesmo|até|perfino|selbst|sogar)`

// What a legend adds to what a word means: that something makes no difference, and what is counted too.
var (
	orNot = regexp.MustCompile(
		`(?i)[,;(]?\s*\pL+(?:\s+up)?\s+(?:or|o|ou|oder)\s+` +
			`(?:not|no|non|n[ãa]o|nicht|sin|sem|sans|senza)\b(?:\s+\pL+)?\)?`)
	evenIf = regexp.MustCompile(`(?i)[,;(]?\s*\b(?:whether|even (?:if|when|without)|aunque|anche (?:se|senza)|` +
		`m[êe]me (?:si|sans)|mesmo (?:se|sem|que)|ainda que|auch (?:wenn|ohne)|egal ob)\b[^;.]*`)
	alsoThose = regexp.MustCompile(`(?i)[,;(]\s*` + alsoWord + `\s+[^;.,]*`)
	// in a bracket of its own, to its end: (also those that, later on, came off)
	alsoWithin = regexp.MustCompile(`(?i)\(\s*` + alsoWord + `\s+[^)]*\)`)
	// a clause of others that stand in a column of their own: "those let go are apart", "los soltados van aparte"
	apartFrom = regexp.MustCompile(`(?i)(?:^|[,;.(]\s*)([^,;.()]*\s(?:apart|separate|separately|on top|in addition|` +
		`extra|aparte|por separado|à part|a part|en plus|a parte|in più|à parte|getrennt|kommen dazu|` +
		`in another column|en otra columna))\)?\s*(?:[,;.)]|$)`)
	plus = regexp.MustCompile(`(?i)\s*(?:[+&,]|\b(?:and|plus|y|e|et|und|sowie|más|più|mais)\b)\s*`)
	// the beginnings of words for a fish that is hooked
	hooking = regexp.MustCompile(`(?i)(?:^|[^\pL])(?:hook|stuck|stick|clav|enganch|prend|peg[aoó]|ferr|fisg|crav|` +
		`allam|aggan|piqu|accroch|gehakt|hak|h[aä]ng)`)
)

// core is what a legend says that a word means, without what makes no difference to it, "hooked or not", and what is
// counted too, "also those let go". bites tells that it makes no difference whether they were hooked.
func core(means string) (rest string, bites bool) {
	for _, add := range []*regexp.Regexp{orNot, evenIf} {
		for _, part := range add.FindAllString(means, -1) {
			bites = bites || hooking.MatchString(part)
		}
		means = add.ReplaceAllString(means, " ")
	}
	if at := othersApart(means); at > 0 {
		means = means[:at]
	}
	for _, add := range []*regexp.Regexp{alsoWithin, alsoThose} {
		if slices.ContainsFunc(add.FindAllString(means, -1), isFate) {
			means = add.ReplaceAllString(means, " ")
		}
	}
	return means, bites
}

// othersApart is where a text begins to say that fish with another end are counted apart; -1 where it says so of none.
func othersApart(text string) int {
	for _, m := range apartFrom.FindAllStringSubmatchIndex(text, -1) {
		if said := text[m[2]:m[3]]; isFate(said) && !words.Negated(said) {
			return m[0]
		}
	}
	return -1
}

// letGoApart tells a text that says that the fish let go are counted apart from others, which do not have them in.
func letGoApart(text string) bool {
	at := othersApart(text)
	if at < 0 {
		return false
	}
	fate, _, _, _ := words.FateOf(text[at:])
	return fate == words.Released
}

// sumOf is the count that a legend says is the sum of two others or more, "kept + let go", in a bracket too: of all
// fish in the boat, of all that were hooked, of all bites. It is "" where that is not what it says.
func sumOf(means string) string {
	outer, inner, ok := brackets(means)
	if ok && hasLetter(outer) {
		means = inner // on deck (kept + let go)
	}
	means = strings.Trim(means, "() .")
	added := func(by string) bool { return strings.Trim(by, " ,") != "" }
	if !slices.ContainsFunc(plus.FindAllString(means, -1), added) {
		return "" // shook off at the rail, let go: one after the other
	}
	parts := plus.Split(means, -1)
	told := map[words.Fate]bool{}
	for _, part := range parts {
		fate, _, _, _ := words.FateOf(part)
		told[fate] = true
	}
	switch boated := told[words.Landed] || told[words.Released]; {
	case len(told) < 2 || len(told) != len(parts) || told[words.FateUnknown]:
		return ""
	case told[words.Missed]:
		return "strikes_n"
	case told[words.Lost] && boated:
		return "hooked_n"
	case told[words.Landed] && told[words.Released]:
		return "landed_n"
	}
	return ""
}
