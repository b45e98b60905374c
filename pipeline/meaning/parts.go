package meaning

import (
	"regexp"
	"slices"
	"strconv"
	"strings"

	"wakeledger/pipeline/layout"
	"wakeledger/pipeline/phrase"
	"wakeledger/pipeline/plan"
	"wakeledger/pipeline/words"
)

// figures is what a log says of cells that hold several counts: which each of them is, and what
// one figure alone stands for.
type figures struct {
	names []string // of the counts, in their order
	alone bool     // one figure is so many bites that all came aboard
}

var (
	partedBy   = regexp.MustCompile(`\s*[-–/]\s*`)
	partedCell = regexp.MustCompile(`^\d{1,3}(?:\s*[-–/]\s*\d{1,3})+$`)
	oneFigure  = regexp.MustCompile(
		`(?i)\b(?:one|single|lone|bare) (?:number|figure|digit)\b[^=]*(?:=|\bmeans?\b|\bis\b|:)(.*)`)
	allOfThem = regexp.MustCompile(`(?i)\b(?:all|every one|each)\b`)
	saysParts = regexp.MustCompile(`[=:](.*)`)
)

// mostFigures is how many counts one cell holds at the most.
const mostFigures = 4

// figuresIn finds what texts say of such cells: "fish cols = bites-hooked-boated". nil: nothing.
func (t *Lexicon) figuresIn(texts []string) *figures {
	var out *figures
	alone := false
	for _, text := range texts {
		for _, sentence := range sentences.Split(text, -1) {
			if m := oneFigure.FindStringSubmatch(sentence); m != nil {
				fate, _, _, ok := words.FateOf(m[1])
				alone = alone || ok && fate == words.Landed && allOfThem.MatchString(m[1])
				continue
			}
			m := saysParts.FindStringSubmatch(sentence)
			if m == nil {
				continue
			}
			if names := t.countsNamed(partedBy.Split(strings.Trim(m[1], " ."), -1)); names != nil {
				out = &figures{names: names}
			}
		}
	}
	if out != nil {
		out.alone = alone
	}
	return out
}

// countsNamed are the counts that words name, each another; nil where one names none.
func (t *Lexicon) countsNamed(parts []string) []string {
	if len(parts) < 2 || len(parts) > mostFigures {
		return nil
	}
	var out []string
	for _, p := range parts {
		c := t.countOf(layout.Label{Text: p})
		if c == nil || slices.Contains(out, c.Name) {
			return nil
		}
		out = append(out, c.Name)
	}
	return out
}

// countOf is the count that a heading names best: bites, hooked, boated. nil: it names none.
func (t *Lexicon) countOf(head layout.Label) *plan.Column {
	var best *plan.Column
	weight := loosely
	for _, c := range t.Columns { // in their order
		if s := t.said(head).columns[c]; slices.Contains(countNames, c.Name) && s.weight > weight {
			best, weight = c, s.weight
		}
	}
	return best
}

// inFigures tells a column whose cells are such counts, or one figure alone.
func (l *legend) inFigures(v *Values) bool {
	if l.figures == nil || len(v.cells) == 0 {
		return false
	}
	several := 0
	for _, c := range v.cells {
		switch n := len(partedBy.Split(c.Text, -1)); {
		case partedCell.MatchString(c.Text) && n == len(l.figures.names):
			several++
		case partedCell.MatchString(c.Text) || !onlyDigits(c.Text):
			return false
		}
	}
	return several > 0
}

func onlyDigits(text string) bool {
	return text != "" && len(text) < 4 && strings.Trim(text, "0123456789") == ""
}

// weighFigures holds the boated among the figures of a row, and the fish let go, against those hooked:
// where the two are more than these, the boated count the fish let go too.
func (x *builder) weighFigures() (v landedVotes) {
	landed := slices.Index(x.plan.Figures, "landed_n")
	all := slices.Index(x.plan.Figures, "hooked_n")
	if all < 0 {
		all = slices.Index(x.plan.Figures, "strikes_n")
	}
	b := x.plan.Find("released_n")
	if landed < 0 || all < 0 || b == nil {
		return v
	}
	for _, row := range x.rows {
		text := cellOf(row, b.Index)
		released, ok := phrase.Count(text)
		if !ok {
			released, ok = phrase.CountFish(text)
		}
		if !ok || released == 0 {
			continue
		}
		v.both++
		aboard, hooked := x.figureSum(row, landed), x.figureSum(row, all)
		switch {
		case released > aboard:
			v.without += surely
		case aboard+released > hooked:
			v.with += surely
		}
	}
	return v
}

// figureSum adds up the k-th figures of a row.
func (x *builder) figureSum(row []string, k int) int {
	sum := 0
	for _, c := range x.plan.Catch {
		parts, at := partedBy.Split(strings.TrimSpace(cellOf(row, c.Index)), -1), k
		if len(parts) == 1 && x.plan.Alone {
			at = 0
		}
		if at < len(parts) {
			n, _ := strconv.Atoi(parts[at])
			sum += n
		}
	}
	return sum
}
