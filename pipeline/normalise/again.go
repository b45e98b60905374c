package normalise

import (
	"slices"
	"strings"

	"wakeledger/pipeline/words"
)

const (
	leastSame   = 10 // cells that two answers of a form have in common, if one was sent twice
	mostOthers  = 1  // and that are not the same beside when it was sent: a remark
	remarkWords = 3  // which has as many words
	leastBound  = 4  // cells with a meaning in common, where a remark says that the row stands twice
)

// sentTwice tells a row that is the one above again: an answer of a form but for when it was
// sent and a remark, as somebody pressed the button twice; or one whose remark says so.
func (r *Reader) sentTwice() bool {
	last := r.answer
	r.answer = slices.Clone(r.row.Cells)
	aside := map[int]bool{}
	form := -1
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
	same, bound, others, said := 0, 0, 0, false
	for i := range max(len(last), len(r.answer)) {
		a, b := cellIn(last, i), cellIn(r.answer, i)
		said = said || aside[i] && words.Again(b)
		switch {
		case i == form:
		case a != b && aside[i] && form < 0:
		case a != b:
			if others++; max(len(strings.Fields(a)), len(strings.Fields(b))) < remarkWords {
				return false // a figure or a name that is another one
			}
		case a != "":
			if same++; !aside[i] {
				bound++
			}
		}
	}
	if form < 0 || !r.has("start_s") {
		return said && others == 0 && bound >= leastBound
	}
	return same >= leastSame && others <= mostOthers
}

func cellIn(cells []string, i int) string {
	if i < len(cells) {
		return trimmed(cells[i])
	}
	return ""
}
