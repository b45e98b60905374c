package meaning

import (
	"maps"
	"regexp"
	"slices"
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
	of    bool     // they are written as so many of so many: "2 for 3"
	over  bool     // the heading over them says what they are
}

var (
	inBrackets = regexp.MustCompile(`\(([^()]+)\)$`)
	partedBy   = regexp.MustCompile(`\s*[-–/]\s*`)
	ofCell     = regexp.MustCompile(`(?i)^\d{1,2} ?for ?\d{1,2}$`)
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

// The least cells of several counts that tell what they are without a word of the log, and their share of a column's.
const (
	leastFigures = 3
	mostlyParted = 0.8
)

// figuresOver finds the counts that a heading names of the several figures under it, "bites-hooked-boated" over 3-2-1,
// and cells of so many fish boated of so many bites: "2 for 3" (common practice, no source).
func (t *Lexicon) figuresOver(blocks []*layout.Block) *figures {
	for _, b := range blocks {
		cells, parted := map[string]int{}, map[string]int{} // by the counts that their headings name
		for _, head := range b.Labels {
			names := t.countsOver(head)
			all, of := 0, 0
			for _, r := range b.Rows {
				text := cellText(r, head.Col)
				if words.Nothing(text) || words.NotLogged(text) {
					continue
				}
				all++
				switch counts := phrase.Figures(text); {
				case ofCell.MatchString(text) && counts[0] <= counts[1]:
					of++
				case len(counts) > 1 && len(counts) == len(names):
					parted[strings.Join(names, " ")]++
				}
			}
			if mostly(of, all) {
				return &figures{names: []string{"landed_n", "strikes_n"}, of: true}
			}
			cells[strings.Join(names, " ")] += all
		}
		for _, names := range slices.Sorted(maps.Keys(parted)) {
			if mostly(parted[names], cells[names]) {
				return &figures{names: strings.Fields(names), over: true}
			}
		}
	}
	return nil
}

// mostly tells cells of several counts from the few that look like them.
func mostly(n, of int) bool { return n >= leastFigures && float64(n) >= mostlyParted*float64(of) }

// countsOver are the counts that a heading names, or its brackets: "YFT (bites/landed)".
func (t *Lexicon) countsOver(head layout.Label) []string {
	text := head.Text
	if m := inBrackets.FindStringSubmatch(head.Full()); m != nil {
		text = m[1]
	}
	return t.countsNamed(partedBy.Split(text, -1))
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
func (l *legend) inFigures(t *Lexicon, v *Values) bool {
	if l.figures == nil || len(v.cells) == 0 {
		return false
	}
	if l.figures.of {
		none := v.share("none of any", func(c layout.Cell) bool {
			return words.Nothing(c.Text) || words.NotLogged(c.Text)
		})
		of := v.share("of so many", func(c layout.Cell) bool { return ofCell.MatchString(c.Text) })
		return of > 0 && of+none >= mostlyParted
	}
	named := slices.Equal(t.countsOver(v.Label), l.figures.names)
	if !named && (l.figures.over || t.countOf(v.Label) != nil) {
		return false
	}
	several := 0
	for _, c := range v.cells {
		switch n := len(phrase.Figures(c.Text)); {
		case n > 1 && n == len(l.figures.names):
			several++
		case n != 1:
			return false
		}
	}
	return several > 0
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
		counts, at := phrase.Figures(strings.TrimSpace(cellOf(row, c.Index))), k
		if len(counts) == 1 && x.plan.Alone {
			at = 0
		}
		if at < len(counts) {
			sum += counts[at]
		}
	}
	return sum
}
