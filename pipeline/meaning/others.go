package meaning

import (
	"regexp"
	"slices"

	"wakeledger/pipeline/phrase"
	"wakeledger/pipeline/plan"
	"wakeledger/pipeline/words"
)

// othersWord is a word for fish beside those that have columns of their own.
var othersWord = regexp.MustCompile(`(?i)\b(?:others?|otr[oa]s?|autres?|altr[ie]|outr[oa]s?|andere|sonstige|rest)\b`)

// others takes a list of fish headed by such a word for counts beside those of the columns of species:
// "2 skipjack" under "others aboard". Its fish are no part of the albacore beside them.
func (x *builder) others() {
	p := x.plan
	if p.Binds("landed_n", "kept_n", "hooked_n") {
		return // these count all
	}
	for _, b := range p.Bindings {
		if b.Column.Parse != "fishlist" && b.Column.Parse != "story" || b.Index < 0 ||
			!othersWord.MatchString(b.Heading) {
			continue
		}
		cells, counted := column(x.rows, b.Index), 0
		for _, c := range cells {
			if _, ok := phrase.CountFish(c); ok || words.Nothing(c) {
				counted++
			}
		}
		if len(cells) == 0 || counted < len(cells) {
			continue
		}
		f, _, _, ok := words.FateOf(b.Heading)
		if !ok || f != words.Landed {
			continue // "other" alone may say again what the counts have: "BFT let go"
		}
		fate := f.String()
		if slices.ContainsFunc(p.Catch, func(u plan.Unknown) bool { return u.Fate == fate }) {
			p.Catch = append(p.Catch, plan.Unknown{Index: b.Index, Heading: b.Heading, Fate: fate, Named: true})
			x.note("%s: counted with the fish of the other columns", b.Heading)
		}
	}
}
