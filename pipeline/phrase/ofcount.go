package phrase

import (
	"fmt"
	"regexp"
	"slices"
	"strconv"
	"strings"

	"wakeledger/pipeline/words"
)

var (
	// clauseOf is a part of a remark between signs and words that part its clauses.
	clauseOf = regexp.MustCompile(`(?i)[^.,;()\n]+?(?:\s+(?:and|y|et|e|und|but)\s+|[.,;()\n]|$)`)
	// someOf is a number of a number: "2 of 3 released".
	someOf = regexp.MustCompile(`(?i)(\d{1,2}|\pL+) (?:of|out of|de|sur|su|von) (?:the |los |las |les |die )?(\d{1,2}|\pL+)`)
)

// OfCount writes numbers for the words of a remark that tell how many of so many boated fish were let go: "all
// released" of 3 is "3 released", "kept one, let the others go" is "kept one, 2 released", "kept 2 of 3" is "kept 2, 1
// released". What does not fit the number is left as it is.
func OfCount(text string, boated int) string {
	if boated < 1 || !words.Glued(text, "all") && !words.Glued(text, "rest") && !someOf.MatchString(text) {
		return text
	}
	var out strings.Builder
	kept := 0
	for _, part := range clauseOf.FindAllString(text, -1) {
		if n, free := ofCount(part, boated, kept); free > 0 {
			if n > 0 {
				fmt.Fprintf(&out, " %d kept,", n)
			}
			fmt.Fprintf(&out, " %d released", free)
			part = part[len(strings.TrimRight(part, ".,;()\n")):]
			out.WriteString(part)
			continue
		}
		out.WriteString(part)
		for _, b := range Tell(part, Defaults{}).Bites {
			if b.Fate == words.Landed && b.Name == "" {
				kept += max(b.N, 1)
			}
		}
	}
	return strings.TrimSpace(out.String())
}

// ofCount is how many of those boated a clause says were let go, and how many it says were kept; kept are those told
// before it.
func ofCount(clause string, boated, kept int) (n, free int) {
	fate, _, _, ok := words.FateOf(clause)
	if !ok || fate != words.Landed && fate != words.Released || namesFish(clause) {
		return 0, 0
	}
	some, of := 0, 0
	if m := someOf.FindStringSubmatch(clause); m != nil {
		some, of = numberOf(m[1]), numberOf(m[2])
	}
	switch {
	case some > 0 && of == boated && some <= boated && fate == words.Landed:
		return some, boated - some
	case some > 0 && of == boated && some <= boated:
		return 0, some
	case some > 0 || fate == words.Landed:
		return 0, 0
	case words.Glued(clause, "rest") && kept > 0:
		return 0, max(0, boated-kept) // those kept are told before
	case words.Glued(clause, "all") && kept == 0 && !scan(clause).allDay():
		return 0, boated
	}
	return 0, 0
}

func namesFish(text string) bool {
	return slices.ContainsFunc(FishList(text, Defaults{}), func(f Fish) bool { return f.Name != "" })
}

func numberOf(s string) int {
	if n, ok := words.Number(strings.ToLower(s)); ok {
		return n
	}
	n, _ := strconv.Atoi(s)
	return n
}
