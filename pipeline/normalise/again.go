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
	now := r.row.Cells
	twice := r.saidTwice(now) || r.sentAgain(now)
	at := r.rowsSeen % mostAbove
	if r.rowsSeen < mostAbove {
		r.lastRows = append(r.lastRows, nil)
	}
	r.lastRows[at] = append(r.lastRows[at][:0], now...) // in the place of the oldest
	r.rowsSeen++
	return twice
}

// sentAgain tells an answer of a form that is the one above but for when it was sent and a remark.
func (r *Reader) sentAgain(now []string) bool {
	if r.sentAt < 0 || !r.has("start_s") || r.rowsSeen == 0 {
		return false
	}
	same, others := 0, 0
	last := r.lastRows[(r.rowsSeen-1)%mostAbove]
	for i := range max(len(last), len(now)) {
		switch a, b := cellIn(last, i), cellIn(now, i); {
		case i == r.sentAt:
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

// besideTheBite finds the columns that say nothing of what was fished: remarks, and those without a meaning; and that
// of when an answer was sent.
func (r *Reader) besideTheBite() {
	r.besideBite, r.sentAt = map[int]bool{}, -1
	for _, u := range r.layout.Unknown {
		r.besideBite[u.Index] = true
		if u.Aside == "form" {
			r.sentAt = u.Index
		}
	}
	for _, t := range r.targets {
		if t.Column.Parse == "text" && t.Column.Name == "notes" {
			r.besideBite[t.Index] = true
		}
	}
}

// saidTwice tells a row whose remark says that it stands twice, or that it is not to be counted, and that is one of
// those above in all else. One that is not to be counted, and stands nowhere above, is counted and named.
func (r *Reader) saidTwice(now []string) bool {
	said, uncounted := false, ""
	for i := range now {
		if !r.besideBite[i] {
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
	if slices.ContainsFunc(r.lastRows, func(row []string) bool { return sameBite(row, now, r.besideBite) }) {
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
