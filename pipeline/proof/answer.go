package proof

import (
	"fmt"
	"slices"
	"strconv"
	"strings"

	"wakeledger/pipeline/layout"
	"wakeledger/pipeline/meaning"
)

// Leave is the answer to any question that the log cannot be mended for: what is read
// stays as it is.
const Leave = "leave"

// ColumnID names the question about a heading, the nth of its text, of a hand.
func ColumnID(heading string, nth int, labels []string) string {
	key := append([]string{heading}, labels...)
	if nth > 0 {
		key = append(key, strconv.Itoa(nth))
	}
	return id("column", key...)
}

// usual are the questions that a figure answers, with the least and the most that it may be.
var usual = map[string]struct {
	column   string
	min, max float64
	whole    bool
}{
	"no lines": {"lines_out", 1, 30, true}, "few lines": {"lines_out", 1, 30, true}, "few speeds": {"speed_kn", 1, 40, false},
}

// Choose reads an answer: the number of an option, from 1, its text, a usual figure where
// that is asked for, or "leave". It returns what reading makes of it and what the owner
// said, or an error that says what was expected.
func (q *Question) Choose(text string) (choice, said string, err error) {
	text = strings.TrimSpace(text)
	if u, ok := usual[q.Kind]; ok {
		v, err := strconv.ParseFloat(strings.TrimSpace(strings.TrimSuffix(strings.ToLower(text), "kn")), 64)
		switch {
		case strings.EqualFold(text, Leave) || len(q.Options) > 1 && strings.EqualFold(text, q.Options[1]):
			return Leave, q.Options[1], nil
		case err != nil || v < u.min || v > u.max || u.whole && v != float64(int(v)):
			return "", "", fmt.Errorf("expected the figure itself, %g to %g, or %q", u.min, u.max, Leave)
		}
		s := strconv.FormatFloat(v, 'f', -1, 64)
		return s, s, nil
	}
	i := slices.IndexFunc(q.Options, func(o string) bool { return strings.EqualFold(o, text) })
	if n, err := strconv.Atoi(text); err == nil && i < 0 {
		i = n - 1
	}
	switch {
	case i >= 0 && i < len(q.Options) && q.Kind == "left over" && q.Choices[i] == "yes":
		return "", "", fmt.Errorf("say what its columns are in a mapping file: 'wakeledger check --write-mapping' writes one")
	case i >= 0 && i < len(q.Options):
		return q.Choices[i], q.Options[i], nil
	case strings.EqualFold(text, Leave) && len(q.Options) == 0:
		return Leave, "leave it as it is", nil
	case len(q.Options) == 0:
		return "", "", fmt.Errorf("mend the log, or say %q to have it read as it is", Leave)
	}
	return "", "", fmt.Errorf("expected 1 to %d or one of: %s", len(q.Options), strings.Join(q.Options, "; "))
}

// Settles tells whether an answer leaves nothing to ask. What a heading was said to mean
// may not fit its block.
func (q *Question) Settles(choice string) bool { return q.Kind != "column" || q.Taken == choice }

// Settle makes a log's plan what an answer says. Those to headings are taken where the plan
// is inferred; those that are not here change nothing, and are not asked for again.
func Settle(l *meaning.Log, q *Question, choice string) {
	if u, ok := usual[q.Kind]; ok && choice != Leave {
		l.Usual(u.column, choice)
		return
	}
	if f := settles[q.Kind]; f != nil {
		f(l, q, choice)
	}
}

var settles = map[string]func(l *meaning.Log, q *Question, choice string){
	"inclusive": func(_ *meaning.Log, q *Question, choice string) {
		for _, u := range q.of {
			u.Plan.Inclusive = choice == "yes"
		}
	},
	"caught": func(_ *meaning.Log, q *Question, choice string) {
		for _, u := range q.of {
			u.Plan.Caught = choice == "yes"
		}
	},
	"own hours": func(_ *meaning.Log, q *Question, choice string) {
		for _, u := range q.of {
			u.Plan.OwnHours = choice == "your hours"
		}
	},
	"overlap":      dropEarlier,
	"two tellings": oneTelling,
}

// dropEarlier leaves out the earlier of each two rows that overlap.
func dropEarlier(_ *meaning.Log, q *Question, choice string) {
	if choice != "count the later" || len(q.of) == 0 {
		return
	}
	p := q.of[0].Plan
	if p.Drop == nil {
		p.Drop = map[int64]bool{}
	}
	for _, row := range q.rows {
		p.Drop[row] = true
	}
}

// oneTelling lets one of two tellings of the strikes stand.
func oneTelling(_ *meaning.Log, q *Question, choice string) {
	out := q.of
	if choice == "counts" {
		out = q.listed
	}
	for _, u := range out {
		u.Plan.NoStrikes = true
	}
}

// pairs are the rows of a block that overlap, as they stand: other rows are another question.
func pairs(s Subject) []string {
	var out []string
	for _, o := range s.Stats.Overlaps {
		for _, n := range []int64{o.Row, o.Other} {
			if i := slices.IndexFunc(s.Block.Rows, func(r layout.Row) bool { return int64(r.Num) == n }); i >= 0 {
				out = append(out, meaning.Text(s.Block.Rows[i]))
			}
		}
	}
	return out
}
