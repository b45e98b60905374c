package proof

import (
	"fmt"
	"maps"
	"slices"
	"strconv"
	"strings"

	"wakeledger/pipeline/layout"
	"wakeledger/pipeline/meaning"
	"wakeledger/pipeline/plan"
	"wakeledger/pipeline/unit"
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
	"no lines": {"lines_out", 1, 30, true}, "few lines": {"lines_out", 1, 30, true},
	"few speeds": {"speed_kn", 1, 40, false},
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
	i := slices.IndexFunc(q.Options, func(o string) bool { // as it is, or with what it makes of the totals
		return strings.EqualFold(o, text) || strings.HasPrefix(strings.ToLower(text), strings.ToLower(o)+": ")
	})
	if n, err := strconv.Atoi(text); err == nil && i < 0 {
		i = n - 1
	}
	switch {
	case i >= 0 && i < len(q.Options) && q.Kind == "left over" && q.Choices[i] == "yes":
		return "", "", fmt.Errorf("say what its columns are in a mapping file: 'wakeledger check --write-mapping' " +
			"writes one")
	case i >= 0 && i < len(q.Options):
		return q.Choices[i], q.Options[i], nil
	case strings.EqualFold(text, Leave) && (len(q.Options) == 0 || q.column != nil):
		return Leave, "leave it as it is", nil
	case q.column != nil && expects(q.column) != "":
		if err := fits(q.column, text); err != nil {
			return "", "", fmt.Errorf("%w; or one of: %s", err, strings.Join(q.Options, "; "))
		}
		return asCell(text), text, nil
	case len(q.Options) == 0:
		return "", "", fmt.Errorf("mend the log, or say %q to have it read as it is", Leave)
	}
	return "", "", fmt.Errorf("expected 1 to %d or one of: %s", len(q.Options), strings.Join(q.Options, "; "))
}

// Settles tells whether an answer leaves nothing to ask. What a heading was said to mean
// may not fit its block.
func (q *Question) Settles(choice string) bool { return q.Kind != "column" || q.Taken == choice }

// Presumes tells a question that is read as its first choice until it is answered: an
// afternoon's clock that says morning is likelier than a night of trolling.
func (q *Question) Presumes() bool { return q.Kind == "long" || q.Kind == "long ones" }

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
	"overlap":         dropEarlier,
	"two tellings":    oneTelling,
	"no end":          fillCell,
	"not counted":     fillCell,
	"long":            fillCell,
	"long ones":       fillCells,
	"year":            fillCell,
	"order":           orderDays,
	"no year":         tellYear,
	"word":            tellWord,
	"blank":           fillBlanks,
	"bare":            guessBare,
	"other hours":     takeOff,
	"under":           underAmong,
	"hours again":     countHours,
	"lures together":  countLures,
	"men together":    countMen,
	"no line":         tellBlankRods,
	"lures of a cell": countListed,
	"behind":          tellBehind,
	"bitten":          allBites,
	"freed": func(_ *meaning.Log, q *Question, choice string) {
		for _, u := range q.of {
			u.Plan.Freed = choice == "beside"
		}
	},
	"stray": func(_ *meaning.Log, q *Question, choice string) {
		for _, u := range q.of {
			u.Plan.NoStrikes = choice == "no"
		}
	},
	"untrolled":    leaveRows,
	"dayless":      leaveRows,
	"planned":      leaveRows,
	"struck":       leaveRows,
	"trip remarks": countRemarks,
	"parts": func(l *meaning.Log, _ *Question, choice string) {
		if choice == "trips" {
			l.OwnTrips()
		}
	},
	"unnumbered": func(_ *meaning.Log, q *Question, choice string) {
		for _, u := range q.of {
			u.Plan.Bindings = slices.Clone(u.Plan.Bindings)
			if b := u.Plan.Find("trip"); b != nil {
				b.Carried = choice == "above"
			}
		}
	},
	"two trips": func(_ *meaning.Log, q *Question, choice string) {
		if choice == "two" && len(q.of) > 0 {
			q.of[0].Plan.Trips = q.trips
		}
	},
}

// expects is what a column's cell may be answered to be, in words; "" where only the options
// may be.
func expects(b *plan.Binding) string {
	switch b.Column.Parse {
	case "moment":
		return "the clock time, like 13:20"
	case "quantity":
		return "the figure, with its unit where it is not the column's"
	case "count":
		return "the number"
	}
	return ""
}

// fits tells what is wrong with a cell that a column's is answered to be.
func fits(b *plan.Binding, text string) error {
	wrong := fmt.Errorf("%q does not fit: expected %s", text, expects(b))
	switch b.Column.Parse {
	case "moment":
		if m, err := unit.ParseMoment(text, unit.OrderUnknown); err != nil || !m.HasTime || m.HasDate {
			return wrong
		}
	case "count":
		if n, err := strconv.Atoi(text); err != nil || n < 0 || n > 200 {
			return wrong
		}
	case "quantity":
		q, err := unit.ParseQuantity(text, b.Column.Dimension, b.Column.Unit, unit.MarkPoint)
		if err != nil {
			return wrong
		}
		if v, err := q.In(b.Column.Unit); err != nil || v < b.Column.Min || v > b.Column.Max {
			return wrong
		}
	}
	return nil
}

// fillCell has a cell read as it was answered to be.
func fillCell(_ *meaning.Log, q *Question, choice string) {
	text, ok := strings.CutPrefix(choice, "=")
	if len(q.of) == 0 || !ok && !q.Presumes() {
		return
	}
	p := q.of[0].Plan
	cells := maps.Clone(p.Cells)
	if cells == nil {
		cells = map[plan.Cell]string{}
	}
	if cells[q.cell] = text; !ok { // as it stands after all
		delete(cells, q.cell)
	}
	p.Cells = cells
}

// fillCells has several cells read as what a question proposes, or as they stand after all.
func fillCells(_ *meaning.Log, q *Question, choice string) {
	if len(q.of) == 0 {
		return
	}
	p := q.of[0].Plan
	cells := maps.Clone(p.Cells)
	if cells == nil {
		cells = map[plan.Cell]string{}
	}
	for cell, text := range q.cells {
		if cells[cell] = text; choice != q.Choices[0] {
			delete(cells, cell)
		}
	}
	p.Cells = cells
}

// tellWord has a word of a column read as what it was answered to mean, or the rows left out
// that say it.
func tellWord(_ *meaning.Log, q *Question, choice string) {
	for _, u := range q.of {
		for i := range u.Plan.Bindings {
			b := &u.Plan.Bindings[i]
			if b.Heading != q.column.Heading || b.Column != q.column.Column {
				continue
			}
			if text, ok := strings.CutPrefix(choice, "="); ok {
				u.Plan.Bindings = slices.Clone(u.Plan.Bindings)
				b = &u.Plan.Bindings[i]
				if b.Codes = maps.Clone(b.Codes); b.Codes == nil {
					b.Codes = map[string]string{}
				}
				for _, word := range codesFor(b, q.word) {
					b.Codes[word] = text
				}
			}
			if choice == leaveOut {
				drop(u.Plan, saying(u, b.Index, codesFor(b, q.word))...)
			}
		}
	}
}

// codesFor are a word and the codes of a column that the log's legend writes out as that word.
func codesFor(b *plan.Binding, word string) []string {
	out := []string{word}
	for code, means := range b.Codes {
		if strings.ToLower(strings.TrimSpace(means)) == word {
			out = append(out, code)
		}
	}
	return out
}

// saying are the rows of a block whose cell of a column is one of some words.
func saying(u *meaning.Understood, index int, words []string) []int64 {
	var out []int64
	for _, r := range u.Block.Rows {
		if index >= 0 && index < len(r.Cells) &&
			slices.Contains(words, strings.ToLower(strings.TrimSpace(r.Cells[index].Text))) {
			out = append(out, int64(r.Num))
		}
	}
	return out
}

func drop(p *plan.Block, rows ...int64) {
	if p.Drop = maps.Clone(p.Drop); p.Drop == nil {
		p.Drop = map[int64]bool{}
	}
	for _, row := range rows {
		p.Drop[row] = true
	}
}

// dropEarlier leaves out the earlier of each two rows that overlap.
func dropEarlier(_ *meaning.Log, q *Question, choice string) {
	if choice != "count the later" || len(q.of) == 0 {
		return
	}
	drop(q.of[0].Plan, q.rows...)
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
func pairs(s Subject, all []Overlap) []string {
	var out []string
	for _, o := range all {
		for _, n := range []int64{o.Row, o.Other} {
			if i := slices.IndexFunc(s.Block.Rows, func(r layout.Row) bool { return int64(r.Num) == n }); i >= 0 {
				out = append(out, meaning.Text(s.Block.Rows[i]))
			}
		}
	}
	return out
}
