package main

import (
	"fmt"
	"strings"

	"wakeledger/pipeline/sentence"
	"wakeledger/queries"
)

// mostTold ways in which rows went wrong are told in the summary; the rest are counted.
const mostTold = 5

// tellTroubles says in the summary what was set aside and what is doubtful, by reason and log.
func (a *app) tellTroubles(t queries.Troubles) {
	if n := queries.Count(t.Aside); n > 0 {
		fmt.Fprintf(a.out, "%s set aside (wakeledger ask set-aside)\n", problems(n))
		a.tellEach(t.Aside)
	}
	if n := queries.Count(t.Doubts); n > 0 {
		fmt.Fprintf(a.out, "%s kept, but doubtful (wakeledger ask doubts)\n", sentence.Count(n, "row", "rows"))
		a.tellEach(t.Doubts)
	}
}

// effectWords are totals in words; many of them need no list.
func effectWords(effect []string) string {
	if len(effect) > mostEffects {
		return "nearly every figure"
	}
	return queries.EffectWords(effect)
}

// mostEffects totals are listed.
const mostEffects = 5

func (a *app) tellEach(all []queries.Trouble) {
	for i, t := range all {
		if i == mostTold {
			fmt.Fprintf(a.out, "  and %d more\n", len(all)-i)
			return
		}
		var such []string
		for _, e := range t.Examples {
			such = append(such, strings.TrimSpace(place("", e.Sheet, e.Row)+" "+short(e.Found)))
		}
		line := fmt.Sprintf("  %d in %s: %s", t.Rows, t.File, t.Reason)
		if effect := effectWords(t.Effect); effect != "" {
			line += "; may change " + effect
		}
		fmt.Fprintf(a.out, "%s\n    %s\n", line, strings.Join(such, "; "))
	}
}
