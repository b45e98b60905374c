package phrase

import (
	"regexp"
	"strings"

	"wakeledger/pipeline/words"
)

// countedList is a number of bites with a list of them behind a colon: "6 bites: miss, wahoo kept, miss".
var countedList = regexp.MustCompile(`(?i)(^\s*|[.;]\s+)(\d{1,2}\s+\pL+)\s*:\s*((?:[^;:.,\n]|\.\d)+,(?:[^;:.\n]|\.\d)+)`)

// eachOfCount writes a list behind a number of bites as sentences have it, where each part of it is one or has a number
// of its own: "2 bites: off at the boat, wahoo kept" is "2 bites. one off at the boat, wahoo kept".
func eachOfCount(text string) string {
	return countedList.ReplaceAllStringFunc(text, func(list string) string {
		m := countedList.FindStringSubmatch(list)
		fate, only := words.FateOnly(strings.TrimLeft(m[2], "0123456789 "))
		if !only || fate != words.Bit {
			return list
		}
		parts, bare := strings.Split(m[3], ","), false
		for i, part := range parts {
			parts[i] = strings.TrimSpace(part)
			toks := words.Scan(parts[i])
			if len(toks) == 0 {
				return list
			}
			_, told := words.FateAt(toks, 0)
			if _, many := words.GlueIs(toks, 0, "many"); told && !many {
				parts[i], bare = "one "+parts[i], true
			}
		}
		if !bare {
			return list
		}
		return m[1] + m[2] + ". " + strings.Join(parts, ", ")
	})
}
