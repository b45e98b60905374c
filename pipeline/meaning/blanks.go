package meaning

import (
	"regexp"
	"strings"

	"wakeledger/pipeline/plan"
	"wakeledger/pipeline/words"
)

// A log may say what it means that something was not written: "blank under Result = in the box", "no word scale = a
// guess".

// blankSaying is what a saying says of blank cells, of one heading or of any.
var blankSaying = regexp.MustCompile(`(?i)^\W*(?:an? |left |if |when |where |si |se |wenn )?` +
	`(?:blank|blanks|empty|nothing|no (?:word|entry|mark|code|letter)|vac[ií]o|vac[ií]a|en blanco|vide|rien|vuot[oa]|` +
	`vazi[oa]|em branco|leer|nichts)(?:\s+(?:cell|box|field|casilla|case|casella|feld))?` +
	`(?:\s+(?:under|in|at|for|en|bajo|sous|dans|sotto|em|sob|unter|bei)\s+(?:the\s+)?["'«“]?(.{1,40}?)["'»”]?)?` +
	`\s*(?:=|:|\bmeans\b|\bsignifica\b|\bsignifie\b|\bheisst\b|\bheißt\b)\s*(\S.*)$`)

// blanksIn are the fates that a text gives to blank cells, by heading in normal form; "" is any heading.
func blanksIn(text string) map[string]string {
	out := map[string]string{}
	for _, part := range sayingsIn(text) {
		if m := blankSaying.FindStringSubmatch(part); m != nil && isFate(m[2]) {
			out[normalise(m[1])] = strings.Trim(m[2], " .")
		}
	}
	return out
}

// saidOf parts a saying at its last sign or verb.
var saidOf = regexp.MustCompile(`^\s*(.{1,60})\s*(?:=|:|\bare\b|\bis\b|\bmeans?\b)\s*(\S.*)$`)

// unlessScale tells weights that are guesses but for those of a scale: "guesses unless it says scale".
var unlessScale = regexp.MustCompile(`(?i)^(.*)\b(?:unless|except|sauf|salvo|tranne|exceto|au(?:ss|ß)er)\b(.*)$`)

// restWords are what is left when those with a word of their own are told.
var restWords = set(strings.Fields(
	"rest others other else otherwise bare alone resto demas autres altri outros andere"))

// guessesBare tells a text that says of weights without a word for the scale that they are guesses.
func guessesBare(text string) bool {
	for _, part := range sayingsIn(text) {
		if m := unlessScale.FindStringSubmatch(part); m != nil && words.Hedged(m[1]) && words.Scaled(m[2]) {
			return true
		}
		m := saidOf.FindStringSubmatch(part)
		if m == nil {
			continue
		}
		if scale, told := words.ByScale(m[2]); scale || !told {
			continue
		}
		said := strings.Fields(m[1])
		code := len(said) > 0 && scaleCodesIn(text)[strings.ToLower(strings.Trim(said[len(said)-1], `"'`))] != ""
		if (words.Scaled(m[1]) || code) && words.Negated(m[1]) || anyIn(restWords, normalise(m[1])) {
			return true
		}
	}
	return false
}

func anyIn(words map[string]bool, text string) bool {
	for _, w := range strings.Fields(text) {
		if words[w] {
			return true
		}
	}
	return false
}

// blankFates gives the blank cells of a column of what became of bites the fate that the log says they have, where a
// row is a bite.
func (x *builder) blankFates() {
	b := x.plan.Find("outcome")
	if b == nil || b.Index < 0 || x.plan.Kind != plan.Strikes && x.plan.Kind != plan.Fish {
		return
	}
	means := x.said.blanks[normalise(b.Heading)]
	if means == "" {
		means = x.said.blanks[""]
	}
	if means == "" {
		return
	}
	codes := map[string]string{"": means}
	for code, of := range b.Codes {
		codes[code] = of
	}
	b.Codes = codes
	x.note("%s: a blank cell is %q, as the log says", b.Heading, means)
}

// aloneSaying is what a saying says of a fish that is named and nothing more: "just the fish = in the box".
var aloneSaying = regexp.MustCompile(`(?i)^\W*(?:just|only|merely|solo|s[oó]lo|seul(?:ement)?|soltanto|apenas|s[oó]|nur)\s+` +
	`(?:the |a |el |la |un |le |il |o |der |den |ein )?(?:name of the |name of a )?` +
	`(?:fish|name|species|pez|nombre|especie|poisson|nom|pesce|nome|peixe|fisch|name)(?:'s name)?(?:\s+alone)?` +
	`\s*(?:=|:|\bmeans\b|\bsignifica\b|\bsignifie\b|\bheisst\b|\bheißt\b)\s*(\S.*)$`)

// aloneIn is the fate that a text gives to fish that are named and nothing more; "" where it gives none.
func aloneIn(text string) string {
	for _, part := range sayingsIn(text) {
		if m := aloneSaying.FindStringSubmatch(part); m != nil {
			return fateSaid(strings.Trim(m[1], " ."))
		}
	}
	return ""
}
