package phrase

import (
	"regexp"
	"slices"
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

// mostStanding is how many words a text has at the most that says nothing but how the boat trolls.
const mostStanding = 12

// Standing reports whether a part of a text above a table says how the boat trolls, and no more than that: a number of
// lines or a speed beside a word for lines or for trolling, and no other figure but a year: "Tuna 2025 (pulling 6, 8
// kn)".
func Standing(text string) bool {
	return slices.ContainsFunc(partOfTitle.Split(text, -1), standing)
}

// partOfTitle is where the parts of a title end.
var partOfTitle = regexp.MustCompile(`[();]|\s[-–—]\s|\.\s`)

func standing(text string) bool {
	s := scan(text)
	if told := Settings(text); len(s.toks) > mostStanding || len(told.Lines)+len(told.Speeds) == 0 ||
		len(told.Lines) > 1 || len(told.Speeds) > 1 || TellsBite(text) {
		return false
	}
	trolls := false
	for i, it := range s.items {
		switch it.kind {
		case aSpeed:
		case aLines:
			if it.num < 2 {
				return false // one line for each bite: of the sheet
			}
			trolls = true
		case aNumber:
			year := it.num >= 1990 && it.num <= 2100
			if !year && !(s.pulled(i) || s.paced(i) || s.linesNamed(i)) || it.hi > it.num {
				return false
			}
		case aClock, aTime, aLength, aWeight, aGirth, aMeasure, aFish, aFate, aNothing:
			return false
		}
	}
	for i := range s.toks {
		for _, kind := range []string{"plural", "pull"} {
			_, ok := words.LineAt(s.toks, i, kind)
			trolls = trolls || ok
		}
	}
	return trolls
}
