package normalise

import (
	"slices"
	"strings"

	"wakeledger/pipeline/record"
	"wakeledger/pipeline/words"
)

const (
	leastSame   = 10 // cells that two answers of a form have in common, if one was sent twice
	mostOthers  = 1  // and that are not the same beside when it was sent: a remark
	remarkWords = 3  // which has as many words
	leastBound  = 4  // cells with a meaning in common, where a remark says that the row stands twice
	mostAbove   = 64 // rows above among which the first of the two is looked for then
)

// sentTwice tells a row that is one above again: an answer of a form but for when it was sent
// and a remark, as somebody pressed the button twice; or one whose remark says so.
func (r *Reader) sentTwice() bool {
	now := slices.Clone(r.row.Cells)
	above := r.lastRows
	r.lastRows = append(above[max(0, len(above)-mostAbove+1):], now)
	aside, form := r.besideTheBite()
	if r.saidTwice(above, now, aside) {
		return true
	}
	if form < 0 || !r.has("start_s") || len(above) == 0 {
		return false
	}
	same, others := 0, 0
	last := above[len(above)-1]
	for i := range max(len(last), len(now)) {
		switch a, b := cellIn(last, i), cellIn(now, i); {
		case i == form:
		case a != b:
			if others++; max(len(strings.Fields(a)), len(strings.Fields(b))) < remarkWords {
				return false // a figure or a name that is another one
			}
		case a != "":
			same++
		}
	}
	return same >= leastSame && others <= mostOthers
}

// besideTheBite are the columns that say nothing of what was fished: remarks, and those without a meaning; form is
// that of when an answer was sent, -1 where there is none.
func (r *Reader) besideTheBite() (aside map[int]bool, form int) {
	aside, form = map[int]bool{}, -1
	for _, u := range r.layout.Unknown {
		aside[u.Index] = true
		if u.Aside == "form" {
			form = u.Index
		}
	}
	for _, t := range r.targets {
		if t.Column.Parse == "text" && t.Column.Name == "notes" {
			aside[t.Index] = true
		}
	}
	return aside, form
}

// saidTwice tells a row whose remark says that it stands twice, or that it is not to be counted, and that is one of
// those above in all else. One that is not to be counted, and stands nowhere above, is counted and named.
func (r *Reader) saidTwice(above [][]string, now []string, aside map[int]bool) bool {
	said, uncounted := false, ""
	for i := range now {
		if !aside[i] {
			continue
		}
		text := cellIn(now, i)
		if words.Uncounted(text) {
			uncounted = text
		}
		said = said || words.Again(text)
	}
	if !said && uncounted == "" {
		return false
	}
	if slices.ContainsFunc(above, func(row []string) bool { return sameBite(row, now, aside) }) {
		return true
	}
	if uncounted != "" {
		p := r.pos
		p.Row = r.row.Num
		r.aside = append(r.aside, record.Problem{Pos: p, Cell: uncounted,
			Reason: "says that it is not to be counted, and no " +
				"row above is the same: taken as it stands"})
	}
	return false
}

// sameBite tells two rows that are the same but for what stands beside the bite.
func sameBite(a, b []string, aside map[int]bool) bool {
	bound := 0
	for i := range max(len(a), len(b)) {
		switch x := cellIn(a, i); {
		case aside[i]:
		case x != cellIn(b, i):
			return false
		case x != "":
			bound++
		}
	}
	return bound >= leastBound
}

func cellIn(cells []string, i int) string {
	if i < len(cells) {
		return trimmed(cells[i])
	}
	return ""
}
