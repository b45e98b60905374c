package phrase

import (
	"regexp"
	"slices"
	"strconv"
	"strings"

	"wakeledger/pipeline/words"
)

var (
	ofThem = regexp.MustCompile(`(?i)(\pL+|\d{1,2}) (?:of (?:'?em|them|those|these)|de (?:ellos|ellas)|` +
		`d'entre (?:eux|elles)|di (?:loro|questi)|davon|del[ea]s)(?:\PL|$)`)
	also = regexp.MustCompile(`(?i)\b(?:also|plus|además|ademas|también|tambien|aussi|anche|também|tambem|auch)\b`)
)

// OfThem is how many words tell of those that something else counts: "2 of them let go".
func OfThem(text string) (n int, ok bool) {
	m := ofThem.FindStringSubmatch(text)
	if m == nil {
		return 0, false
	}
	return words.Number(strings.ToLower(m[1]))
}

// Also tells words of something beside what something else counts: "also 1 dorado".
func Also(text string) bool { return also.MatchString(text) }

// unlisted is what says of a bite that no other sheet has it: "missed one (no row for it)".
var unlisted = regexp.MustCompile(`(?i)\b(?:no row|not? (?:(?:got|have) )?(?:a )?row|not (?:on|in) (?:the|my) (?:other )?(?:sheet|tab|list|page|table)|` +
	`not listed|not on the list|aren'?t (?:on|in) (?:the|my) (?:other )?(?:sheet|tab|list|page))\b`)

// Beside is the part of a remark that tells of bites beside those of another sheet: "3 more yellowfin in the box",
// "missed one (no row for it)"; "" where none is.
func Beside(text string) string {
	var out []string
	for _, s := range remarkEnd.Split(text, -1) {
		if More(s) || unlisted.MatchString(s) {
			out = append(out, s)
		}
	}
	return strings.Join(out, "; ")
}

// More tells words of some more than what something else tells: "3 more yellowfin in the box".
func More(text string) bool {
	toks := words.Scan(text)
	for i := 1; i < len(toks); i++ {
		_, number := words.Number(toks[i-1].Text)
		_, err := strconv.Atoi(toks[i-1].Text)
		if _, more := words.LineAt(toks, i, "more"); more && (number || err == nil) {
			return true
		}
	}
	return false
}

var counted = regexp.MustCompile(`(?i)(\b(?:not|no|non|pas|n[ãa]o|nicht|never|nunca)\s+(?:\pL+\s+){0,2})?(?:` +
	`\b(?:in|part of|among) (?:the|our|my|these|those) (?:\pL+ )?(?:counts?|totals?|tally|figures|numbers)\b|\bcounted\b|\bincluded\b|` +
	`\bcontad[oa]s?\b|\bincluid[oa]s?\b|\ben (?:la cuenta|el total)\b|\bcompt[ée]e?s?(?:\PL|$)|` +
	`\bcompris(?:es)?\b|\bdans le (?:compte|total)\b|\bcontat[oaie]\b|\b(?:compres|inclus)[oaie]\b|` +
	`\bnel (?:conto|totale)\b|\binclu[ií]d[oa]s?(?:\PL|$)|\bna conta\b|\bno total\b|\bmitgez[äa]e?hlt\b|` +
	`\beingerechnet\b|\binbegriffen\b)`)

// Counted tells words that say of fish that something else counts them: "3 let go, in the counts".
func Counted(text string) bool {
	m := counted.FindStringSubmatch(text)
	return m != nil && m[1] == ""
}

// countedAs goes on after "not counted" where something is counted under another head.
var countedAs = regexp.MustCompile(`(?i)^\s*(?:as|with|among|under|in with|towards?|como|comme|come|als)\b`)

// Uncounted are the bites, missed or lost, that a remark says the row's counts do not have: "plus one missed, not
// counted". Fish that are not counted may have been caught otherwise.
func Uncounted(text string) (out []Bite) {
	for _, s := range remarkEnd.Split(text, -1) {
		m := counted.FindStringSubmatchIndex(s)
		if m == nil || m[2] < 0 || countedAs.MatchString(s[m[1]:]) {
			continue
		}
		if rest := s[:m[0]] + " " + s[m[1]:]; words.Otherwise(rest) || words.NamesOther(rest) {
			continue
		}
		for _, b := range Tell(s, Defaults{}).Bites {
			if (b.Fate == words.Missed || b.Fate == words.Lost || b.Fate == words.Bit) && b.Method == "" {
				out = append(out, b)
			}
		}
	}
	return out
}

// MissedIn are the bites that a remark says were missed, on the boat's own lures.
func MissedIn(text string) []Bite { return ownBites(text, words.Missed) }

// AwayIn are those that it says were missed or lost.
func AwayIn(text string) []Bite { return ownBites(text, words.Missed, words.Lost) }

func ownBites(text string, fates ...words.Fate) (out []Bite) {
	for _, s := range remarkEnd.Split(text, -1) {
		if words.Otherwise(s) || words.NamesOther(s) {
			continue
		}
		for _, b := range Tell(s, Defaults{}).Bites {
			if slices.Contains(fates, b.Fate) && b.Method == "" {
				out = append(out, b)
			}
		}
	}
	return out
}
