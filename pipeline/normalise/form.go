package normalise

import (
	"slices"
	"strings"

	"wakeledger/pipeline/plan"
)

const (
	leastSame   = 10 // cells that two answers of a form have in common, if one was sent twice
	mostOthers  = 1  // and that are not the same beside when it was sent: a remark
	remarkWords = 3  // which has as many words
)

// sentTwice tells an answer of a form that is the one above again, but for when it was sent and
// a remark: somebody pressed the button twice.
func (r *Reader) sentTwice() bool {
	form := slices.IndexFunc(r.layout.Unknown, func(u plan.Unknown) bool { return u.Aside == "form" })
	if form < 0 || !r.has("start_s") {
		return false
	}
	last := r.answer
	r.answer = slices.Clone(r.row.Cells)
	sent := r.layout.Unknown[form].Index
	same, others := 0, 0
	for i := range max(len(last), len(r.answer)) {
		a, b := cellIn(last, i), cellIn(r.answer, i)
		switch {
		case i == sent:
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

func cellIn(cells []string, i int) string {
	if i < len(cells) {
		return trimmed(cells[i])
	}
	return ""
}
