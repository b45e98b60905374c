package phrase

import (
	"regexp"
	"slices"
	"strconv"
	"strings"

	"wakeledger/pipeline/words"
)

// LinesOfRow is how many lines a remark says were out on its own row, where so many are usual: "only 3 lines, short
// crew", "5 rods today", "one line short". It is sure where the clause says nothing else; "6 rods after 10" is not.
// Lines of a clause that tells of a bite, or of one or two that something befell, are none.
func LinesOfRow(text string, usual int) (n int, sure, ok bool) {
	sure = true
	of := false // lines are named before
	for _, clause := range clauseEnd.Split(text, -1) {
		told, only := linesOf(clause, usual, of)
		of = of || namesLines(clause)
		if _, _, _, bite := words.FateOf(clause); len(told) == 0 || bite || TellsBite(clause) {
			continue
		}
		sure = sure && only && len(told) == 1 && (!ok || n == told[0])
		n, ok = told[0], true
	}
	return n, sure && ok, ok
}

// fewBefell is the most lines that tangle or break at once.
const fewBefell = 2

// linesOf are the numbers of lines of a clause, and whether it leaves no doubt that these were out.
func linesOf(clause string, usual int, of bool) (told []int, only bool) {
	s := scan(clause)
	for i, it := range s.items {
		if it.kind == aLines && s.byLines(i) && usual > int(it.num) && it.num >= 1 {
			if _, fewer := words.LineAt(s.toks, it.end, "fewer"); fewer {
				return []int{usual - int(it.num)}, saysOnlyLines(clause)
			}
			return []int{usual + int(it.num)}, saysOnlyLines(clause)
		}
		if it.kind == aLines && s.atMost(it) {
			return []int{int(it.num)}, true
		}
		if it.kind == aNumber && s.takenIn(i) && s.forHours(i) && usual > int(it.num) && it.num >= 1 {
			return []int{usual - int(it.num)}, false // "took three in for the last 2 hours"
		}
		if it.kind == aNumber && of && s.remains(i) && whole(it) {
			return []int{int(it.num)}, saysOnlyLines(clause) // one line in the boat, 4 left
		}
		if it.kind == aNumber && of && it.end == len(s.toks) && it.tok > 0 && whole(it) {
			if next, left := words.LineAt(s.toks, 0, "left"); left && next == it.tok {
				return []int{int(it.num)}, true // "left the center line in, so four"
			}
		}
	}
	told, only = Settings(clause).Lines, saysOnlyLines(clause)
	if len(told) > 0 && told[0] <= fewBefell && !only {
		return nil, false
	}
	return told, only
}

// forHours reports whether lines that were taken in or put out were so for hours that are told behind them.
func (s *scanner) forHours(i int) bool {
	if next := s.tok(s.items[i].end); next != "in" && next != "up" && next != "out" {
		return false
	}
	return slices.ContainsFunc(s.items[i+1:], func(it item) bool { return it.kind == aTime })
}

// atMost reports whether so many lines were out and no more: "no more than two lines", "too rough for more than two".
func (s *scanner) atMost(it item) bool {
	for i := range s.toks[:it.tok] {
		if next, ok := words.LineAt(s.toks, i, "atmost"); ok && next == it.tok {
			return true
		}
	}
	before := strings.Join(texts(s.toks[:it.tok]), " ")
	return strings.HasSuffix(before, " more than") && tooMuch.MatchString(before)
}

// tooMuch is what comes before "for more than two lines".
var tooMuch = regexp.MustCompile(`\b(?:too|not|cant|can t|couldn?t|couldn t|hard)\b`)

func texts(toks []words.Token) (out []string) {
	for _, t := range toks {
		out = append(out, t.Text)
	}
	return out
}

// namesLines tells a text with a word for lines.
func namesLines(text string) bool {
	toks := words.Scan(text)
	for i := range toks {
		if _, ok := words.LineAt(toks, i, "line"); ok {
			return true
		}
	}
	return false
}

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
		for _, kind := range []string{"line", "plural", "pull", "ofrow", "more", "fewer", "remain"} {
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
		case aFate:
			if _, ok := words.LineAt(s.toks, it.tok, "pull"); !ok || i+1 == len(s.items) ||
				s.items[i+1].kind != aLines && !s.pulled(i+1) {
				return false // not "we pull 5 lines"
			}
		case aClock, aTime, aLength, aWeight, aGirth, aMeasure, aFish, aNothing:
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
