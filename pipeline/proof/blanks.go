package proof

import (
	"fmt"
	"maps"
	"regexp"
	"slices"
	"strings"

	"wakeledger/pipeline/layout"
	"wakeledger/pipeline/meaning"
	"wakeledger/pipeline/plan"
	"wakeledger/pipeline/words"
)

// blankFates asks what became of fish that a list of bites names with nothing under its outcome and no measure: it may
// mean the usual fate, and nothing says which. So it does where the captain wrote that he does not know.
func (q *inquiry) blankFates(s *Subject) {
	b, fish := s.Plan.Find("outcome"), s.Plan.Find("species")
	if b == nil || b.Index < 0 {
		return
	}
	var blank, doubted, unsure []int64
	for _, num := range s.Stats.Fateless {
		i := slices.IndexFunc(s.Block.Rows, func(r layout.Row) bool { return int64(r.Num) == num })
		switch {
		case i < 0:
		case doubtMark(textOf(s.Block.Rows[i], b)):
			doubted = append(doubted, num)
		case s.Plan.Kind == plan.Strikes && fish != nil && !s.Plan.Binds("kept") &&
			words.NotLogged(textOf(s.Block.Rows[i], b)) && !words.NotLogged(textOf(s.Block.Rows[i], fish)):
			blank = append(blank, num)
		case words.Unsure(remarksOf(s, s.Block.Rows[i])):
			unsure = append(unsure, num)
		}
	}
	if len(blank) > 0 {
		q.fateOf(s, b, blank, fmt.Sprintf("%s a fish, and nothing under %q, the first: %s. What became of it?",
			subject(len(blank), "row", "name", s.Plan.Name), b.Heading, rowName(s, blank[0])), effectOf("outcome"))
	}
	if len(doubted) > 0 {
		q.fateOf(s, b, doubted, fmt.Sprintf("%s \"?\" under %q, the first: %s. What became of that bite?",
			subject(len(doubted), "row", "say", s.Plan.Name), b.Heading, rowName(s, doubted[0])),
			[]string{"hooked", "landed", "released"}, "?")
	}
	if len(unsure) > 0 {
		q.fateOf(s, b, unsure, fmt.Sprintf("%s that you do not know what came of the bite, the first: %s. Was it "+
			"hooked?", subject(len(unsure), "remark", "say", s.Plan.Name), rowName(s, unsure[0])),
			[]string{"hooked", "landed", "released"}, "unsure")
	}
}

// remarksOf are the remarks of a row.
func remarksOf(s *Subject, r layout.Row) string {
	var out []string
	for i := range s.Plan.Bindings {
		if b := &s.Plan.Bindings[i]; b.Column.Name == "notes" {
			out = append(out, textOf(r, b))
		}
	}
	return strings.Join(out, "; ")
}

// doubtMark tells a cell that says no more than that its writer does not know.
func doubtMark(text string) bool {
	return strings.Contains(text, "?") && strings.Trim(text, "? ()") == ""
}

// fateOf asks what became of the bites of some rows.
func (q *inquiry) fateOf(s *Subject, b *plan.Binding, rows []int64, text string, effect []string, key ...string) {
	q.ask("blank", s.Plan.Name, b.Heading, text,
		[]string{"landed", "let go", "hooked and lost", "missed", "not known"}, effect, append(key, b.Heading)...)
	x := q.last()
	x.Brief = "Some bites have nothing that says what became of them."
	x.Choices = []string{asCell("landed"), asCell("released"), asCell("lost"), asCell("missed"), Leave}
	x.column, x.rows = b, rows
}

// fillBlanks has the blank cells of some rows read as they were answered to be.
func fillBlanks(_ *meaning.Log, q *Question, choice string) {
	text, ok := strings.CutPrefix(choice, "=")
	if len(q.of) == 0 || !ok {
		return
	}
	p := q.of[0].Plan
	if p.Cells = maps.Clone(p.Cells); p.Cells == nil {
		p.Cells = map[plan.Cell]string{}
	}
	for _, row := range q.rows {
		p.Cells[plan.Cell{Row: row, Index: q.column.Index}] = text
	}
}

// fewBare is how many weights with a word for the scale, and how many without, are in a column at least for the
// others to be asked about.
const fewBare = 2

// bareFigure is a weight of which a cell says nothing more.
var bareFigure = regexp.MustCompile(`^\d+(?:[.,]\d+)?\s*(?:kgs?|kilos?|lbs?|#)?$`)

// bareWeights asks about weights of which nothing is said, in a column that says of others that they are from a scale.
func (q *inquiry) bareWeights(s *Subject) {
	b := s.Plan.Find("scale_kg")
	if b == nil || b.Index < 0 || words.Scaled(b.Heading) || s.Plan.Binds("weighed", "certified") || q.log.Scaled() {
		return
	}
	scaled := 0
	var rows []int64
	var bare []string
	for _, r := range s.Block.Rows {
		switch text := strings.ToLower(textOf(r, b)); {
		case words.Scaled(text) && !figureless(text):
			scaled++
		case bareFigure.MatchString(text) && b.Codes[text] == "":
			rows, bare = append(rows, int64(r.Num)), append(bare, text)
		}
	}
	if scaled < fewBare || len(rows) < fewBare {
		return
	}
	q.ask("bare", s.Plan.Name, b.Heading, fmt.Sprintf("Under %q %d weights say that they are from a scale, and %d say "+
		"nothing, the first: %s, %s. Are these from a scale too?", b.Heading, scaled, len(rows),
		rowName(s, rows[0]), bare[0]), []string{"yes", "no, guesses"}, []string{"fish"}, b.Heading)
	x := q.last()
	x.Brief, x.Choices = "Some weights do not say whether they are from a scale.", []string{"yes", "no"}
	x.column, x.words = b, bare
}

// guessBare has weights of which nothing is said read as guesses.
func guessBare(_ *meaning.Log, q *Question, choice string) {
	if choice != "no" {
		return
	}
	for _, u := range q.of {
		u.Plan.Bindings = slices.Clone(u.Plan.Bindings)
		b := u.Plan.Find("scale_kg")
		if b == nil {
			continue
		}
		if b.Codes = maps.Clone(b.Codes); b.Codes == nil {
			b.Codes = map[string]string{}
		}
		for _, text := range q.words {
			b.Codes[text] = "~" + text
		}
	}
}
