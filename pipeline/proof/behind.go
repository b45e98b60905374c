package proof

import (
	"fmt"
	"maps"
	"slices"
	"strings"

	"wakeledger/pipeline/meaning"
	"wakeledger/pipeline/phrase"
	"wakeledger/pipeline/plan"
	"wakeledger/pipeline/words"
)

// fewCodes is behind how many fish a code stands at least before it is asked about: one may be a slip.
const fewCodes = 2

// behind asks what codes of capital letters mean that stand behind fish told in words and that nothing explains: they
// may say that these were let go.
func (q *inquiry) behind(s Subject) {
	found, in := map[string][]int64{}, map[string]*plan.Binding{}
	for i := range s.Plan.Bindings {
		b := &s.Plan.Bindings[i]
		if !tellsFish(b) {
			continue
		}
		for _, r := range s.Block.Rows {
			if b.Index >= len(r.Cells) {
				continue
			}
			for _, code := range phrase.CodesBehind(words.WrittenOut(r.Cells[b.Index].Text, b.Codes)) {
				found[code] = append(found[code], int64(r.Num))
				if in[code] == nil {
					in[code] = b
				}
			}
		}
	}
	for _, code := range slices.Sorted(maps.Keys(found)) {
		rows, b := found[code], in[code]
		if len(rows) < fewCodes {
			continue
		}
		q.ask("behind", s.Plan.Name, b.Heading, fmt.Sprintf("What does %q mean behind a fish under %q (%d times, the "+
			"first %s)?", code, b.Heading, len(rows), rowName(&s, rows[0])),
			[]string{"let go", "kept", "hooked and lost", "nothing of what became of it"},
			effectOf(b.Column.Parse), b.Heading, code)
		x := q.last()
		x.Brief = "Letters behind a fish are not known here: they may say that it was let go."
		x.Choices = []string{asCell("released"), asCell("kept"), asCell("lost"), Leave}
		x.column, x.word, x.rows = b, strings.ToLower(code), rows
	}
}

// tellsFish tells a column of fish in words.
func tellsFish(b *plan.Binding) bool {
	return b.Index >= 0 && (b.Column.Parse == "fishlist" || b.Column.Parse == "story")
}

// tellBehind has a code behind fish read as what it was answered to mean, in all columns that tell fish in words.
func tellBehind(_ *meaning.Log, q *Question, choice string) {
	text, ok := strings.CutPrefix(choice, "=")
	if !ok {
		return
	}
	for _, u := range q.of {
		u.Plan.Bindings = slices.Clone(u.Plan.Bindings)
		for i := range u.Plan.Bindings {
			if b := &u.Plan.Bindings[i]; tellsFish(b) {
				if b.Codes = maps.Clone(b.Codes); b.Codes == nil {
					b.Codes = map[string]string{}
				}
				b.Codes[q.word] = text
			}
		}
	}
}
