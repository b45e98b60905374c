package meaning

import (
	"maps"
	"slices"
	"strings"

	"wakeledger/pipeline/layout"
	"wakeledger/pipeline/plan"
	"wakeledger/pipeline/words"
)

const (
	fewestTrolled = 3        // rows that say that they were trolled, beside which those of another word are told
	fewestOther   = 2        // rows of such a word
	notTrolled    = "bottom" // what it is taken for: which way it was otherwise, no rate asks
)

// methodWords takes the words of a column of methods for other ways of fishing where none of their rows has a speed
// or a number of lines, as those have that say they were trolled: "reef" beside "troll". What they are in a table of
// stretches they are in the log's other tables.
func (l *Log) methodWords() {
	other, trolled := map[string]*plan.Block{}, map[string]bool{}
	for _, u := range l.Data() {
		m := u.Plan.Find("method")
		if m == nil || u.Plan.Kind != plan.Legs && u.Plan.Kind != plan.Flat {
			continue
		}
		for word, is := range u.methodsOf(m) {
			if trolled[word] = trolled[word] || is; !is {
				other[word] = u.Plan
			}
		}
	}
	maps.DeleteFunc(other, func(word string, _ *plan.Block) bool { return trolled[word] })
	for _, word := range slices.Sorted(maps.Keys(other)) {
		p := other[word]
		say := "under " + p.Find("method").Heading + " has neither speed nor lines, as trolling has: taken for no " +
			"trolling"
		p.Notes = append(p.Notes, word+" "+say)
	}
	for _, u := range l.Data() {
		if m := u.Plan.Find("method"); m != nil && len(other) > 0 {
			if m.Codes = maps.Clone(m.Codes); m.Codes == nil {
				m.Codes = map[string]string{}
			}
			for word := range other {
				m.Codes[word] = notTrolled
			}
		}
	}
}

// methodsOf are the words of a table's column of methods that name no way of fishing that is known: false where they
// are none of trolling, true where they may be.
func (u *Understood) methodsOf(m *plan.Binding) map[string]bool {
	type count struct{ rows, paced int }
	known, of := count{}, map[string]*count{}
	for _, r := range u.Block.Rows {
		word := strings.ToLower(cellText(r, m.Index))
		if words.NotLogged(word) {
			continue
		}
		method, ok := words.Method(wayIn(r, m))
		c := &known
		if !ok {
			if c = of[word]; c == nil {
				c = &count{}
				of[word] = c
			}
		} else if method != "troll" {
			continue
		}
		c.rows++
		if u.paced(r) {
			c.paced++
		}
	}
	out := map[string]bool{}
	if known.rows < fewestTrolled || 10*known.paced < 9*known.rows {
		return out
	}
	for word, c := range of {
		out[word] = c.paced > 0 || c.rows < fewestOther
	}
	return out
}

// paced tells a row with a speed or a number of lines of its own.
func (u *Understood) paced(r layout.Row) bool {
	return slices.ContainsFunc([]string{"speed_kn", "lines_out"}, func(name string) bool {
		b := u.Plan.Find(name)
		return b != nil && !words.NotLogged(cellText(r, b.Index))
	})
}
