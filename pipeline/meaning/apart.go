package meaning

import (
	"regexp"
	"strings"

	"wakeledger/pipeline/words"
)

// headIs is a heading with one of its codes, and what that means: "POS = NT (not trolled)".
var headIs = regexp.MustCompile(`([\pL\d][\pL\d #./_-]*?)["”]?\s*=\s*["“]?(\pL[\pL\d]{0,5})["”]?\s*` +
	`(?:\(([^()]+)\)|(?:,|:|\bis\b|\bmeans\b)\s*([^,;.]+))`)

// longestHeading is how many words a heading has at the most before its code.
const longestHeading = 3

// addApart takes the codes that a text says are of what was not trolled. Of the words before the code, the heading may
// be the last alone: "Bait fish have POS = NT (not trolled)".
func (l *legend) addApart(text string) {
	for _, m := range headIs.FindAllStringSubmatch(text, -1) {
		if means := m[3] + m[4]; words.Otherwise(means) {
			before := strings.Fields(m[1])
			for n := 1; n <= min(longestHeading, len(before)); n++ {
				head := normalise(strings.Join(before[len(before)-n:], " "))
				if l.apart[head] == nil {
					l.apart[head] = map[string]string{}
				}
				l.apart[head][strings.ToLower(m[2])] = means
			}
		}
	}
}
