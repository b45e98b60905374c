package phrase

import (
	"strconv"

	"wakeledger/pipeline/words"
)

// LinesOfRow is how many lines a remark says were out on its own row: "only 3 lines, short crew", "5 rods today". It is
// sure where the clause says nothing else; "6 rods after 10" is not. Lines of a clause that tells of a bite, or of one
// or two that something befell, are none.
func LinesOfRow(text string) (n int, sure, ok bool) {
	sure = true
	for _, clause := range clauseEnd.Split(text, -1) {
		told := Settings(clause).Lines
		if _, _, _, bite := words.FateOf(clause); len(told) == 0 || bite || TellsBite(clause) {
			continue
		}
		only := saysOnlyLines(clause)
		if told[0] <= fewBefell && !only {
			continue
		}
		sure = sure && only && len(told) == 1 && (!ok || n == told[0])
		n, ok = told[0], true
	}
	return n, sure && ok, ok
}

// fewBefell is the most lines that tangle or break at once.
const fewBefell = 2

// saysOnlyLines tells a clause with a number of lines and nothing but words that may stand beside it.
func saysOnlyLines(clause string) bool {
	toks := words.Scan(clause)
	for i := 0; i < len(toks); {
		next, ok := i+1, false
		if _, err := strconv.Atoi(toks[i].Text); err == nil {
			ok = true
		} else if _, named := words.Number(toks[i].Text); named {
			ok = true
		}
		for _, kind := range []string{"line", "plural", "pull", "ofrow"} {
			if end, found := words.LineAt(toks, i, kind); found {
				next, ok = end, true
			}
		}
		if !ok {
			return false
		}
		i = next
	}
	return true
}
