package meaning

import (
	"strings"

	"wakeledger/pipeline/plan"
	"wakeledger/pipeline/spelling"
)

// Nearest suggests, for a heading that was not understood, the known spelling
// that is most like it: one that differs by a slip of the pen, or else shares
// its words. It reports false where nothing is near.
func (t *Lexicon) Nearest(heading string) (spelling string, column *plan.Column, ok bool) {
	name := normalise(heading)
	if len(name) > maxHeading {
		return "", nil, false
	}
	best := 0.5
	for _, c := range t.Columns {
		for _, a := range c.Aliases {
			if s := resembles(name, a); s > best {
				best, spelling, column = s, a, c
			}
		}
	}
	return spelling, column, column != nil
}

// resembles is 1 for the same text, and above one half where the texts differ by a
// quarter of their letters or share most of their words.
func resembles(a, b string) float64 {
	long := max(len(a), len(b))
	if long == 0 {
		return 0
	}
	score := 0.0
	if apart := long - min(len(a), len(b)); long >= 5 && 4*apart <= long { // else too far apart by their lengths
		if d := spelling.Distance(a, b); 4*d <= long {
			score = 1 - float64(d)/float64(long)
		}
	}
	return max(score, 0.9*sharedWords(a, b))
}

// sharedWords is the share of letters of both texts that stand in words of both.
func sharedWords(a, b string) float64 {
	all, shared := 0, 0
	in := map[string]bool{}
	for _, w := range strings.Fields(b) {
		in[w] = true
		all += len(w)
	}
	for _, w := range strings.Fields(a) {
		all += len(w)
		if in[w] {
			shared += 2 * len(w)
		}
	}
	if all == 0 {
		return 0
	}
	return float64(shared) / float64(all)
}
