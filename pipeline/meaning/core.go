package meaning

import "regexp"

// What a legend adds to what a word means: that something makes no difference, and what is counted too.
var (
	orNot = regexp.MustCompile(
		`(?i)[,;(]?\s*\pL+(?:\s+up)?\s+(?:or|o|ou|oder)\s+` +
			`(?:not|no|non|n[ãa]o|nicht|sin|sem|sans|senza)\b(?:\s+\pL+)?\)?`)
	evenIf = regexp.MustCompile(`(?i)[,;(]?\s*\b(?:whether|even (?:if|when|without)|aunque|anche (?:se|senza)|` +
		`m[êe]me (?:si|sans)|mesmo (?:se|sem|que)|ainda que|auch (?:wenn|ohne)|egal ob)\b[^;.]*`)
	alsoThose = regexp.MustCompile(`(?i)[,;(]\s*(?:also|including|incl\.?|inkl\.?|counting|with|con|contando|anche|` +
		`compres[ie]|inclus[ie]|y compris|avec|incluindo|incluyendo|com|auch|mit)\s+[^;.,]*`)
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
	for _, part := range alsoThose.FindAllString(means, -1) {
		if isFate(part) {
			means = alsoThose.ReplaceAllString(means, " ")
			break
		}
	}
	return means, bites
}
