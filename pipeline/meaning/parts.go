package meaning

import (
	"maps"
	"regexp"
	"slices"
	"strings"

	"wakeledger/pipeline/layout"
	"wakeledger/pipeline/phrase"
	"wakeledger/pipeline/plan"
	"wakeledger/pipeline/unit"
	"wakeledger/pipeline/words"
)

// figures is what a log says of cells that hold several counts: which each of them is, and what
// one figure alone stands for.
type figures struct {
	names []string // of the counts, in their order
	words []string // for them
	alone bool     // one figure is so many bites that all came aboard
	over  bool     // the heading over them says what they are
	among bool     // the fish let go are some of those boated: "to the boat / of those released"
}

var (
	partedBy  = regexp.MustCompile(`\s*[-–/]\s*`)
	oneFigure = regexp.MustCompile(
		`(?i)\b(?:one|single|lone|bare) (?:number|figure|digit)\b[^=]*(?:=|\bmeans?\b|\bis\b|:)(.*)`)
	allOfThem  = regexp.MustCompile(`(?i)\b(?:all|every one|each)\b`)
	inBrackets = regexp.MustCompile(`\(([^()]*)\)`)
	saysParts  = regexp.MustCompile(`[=:](.*)`)
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
			if words := t.countsTold(sentence); words != nil {
				names := t.countsNamed(words)
				out = &figures{names: names, words: words, among: t.letGoAmong(names, words)}
			}
		}
	}
	if out != nil {
		out.alone = alone
	}
	return out
}

// countsTold are the words of a sentence that say what each of several figures counts, behind a sign or alone: "Order:
// bites | hooked | landed", "first bites, then hooked, then all landed". nil: it says nothing of them.
func (t *Lexicon) countsTold(sentence string) []string {
	said := []string{sentence}
	if m := saysParts.FindStringSubmatch(sentence); m != nil {
		said = []string{m[1], sentence}
	}
	for k, text := range said {
		text = strings.Trim(inBrackets.ReplaceAllString(text, ""), " .")
		for _, by := range figuresBy {
			parts := by.Split(text, -1)
			for i, p := range parts {
				parts[i] = strings.TrimSpace(inTurn.ReplaceAllString(p, ""))
			}
			sure := k+1 < len(said) && by == partedBy // a comma parts what is said of one word too
			if t.countsNamed(parts) != nil && (sure || len(parts) > 2) {
				return parts
			}
		}
	}
	return nil
}

// figuresBy are the ways in which words for figures are parted, and inTurn what stands before one of them.
var (
	figuresBy = []*regexp.Regexp{partedBy, regexp.MustCompile(`\s*\|\s*`), regexp.MustCompile(`\s*:\s*`),
		regexp.MustCompile(`\s*,\s*`)}
	inTurn = regexp.MustCompile(`(?i)^\s*(?:(?:and|y|et|e|und)\s+)?(?:first|then|last(?:ly)?|primero|luego|despu[eé]s|` +
		`d'abord|puis|ensuite|prima|poi|infine|primeiro|depois|zuerst|dann|zuletzt)\s+`)
)

// betweenFigures are the signs that stand between the figures of a cell.
var betweenFigures = []string{"-", "/", "|", ":"}

// partedFigures is the sign between the figures of a column whose cells have as many as the log says; "" where they
// have not.
func (f *figures) partedFigures(b *layout.Block, col int) string {
	for _, sign := range betweenFigures {
		if inParts(b, col, sign, len(f.words), fewParted) && !slices.ContainsFunc(b.Rows, func(r layout.Row) bool {
			return f.denies(strings.Split(cellText(r, col), sign))
		}) {
			return sign
		}
	}
	return ""
}

// denies tells figures that cannot be what the log says of them: more hooked than bit, as of a day 04-30-25.
func (f *figures) denies(parts []string) bool {
	if len(parts) < 2 || len(f.names) < 2 || f.names[0] != "strikes_n" || f.names[1] != "hooked_n" &&
		f.names[1] != "landed_n" {
		return false
	}
	all, ok := number(strings.TrimSpace(parts[0]))
	some, told := number(strings.TrimSpace(parts[1]))
	return ok && told && some > all
}

// letGoAmong tells words for counts of which those for the fish let go say that they are of the count before, the
// boated.
func (t *Lexicon) letGoAmong(names, words []string) bool {
	k := slices.Index(names, "released_n")
	if k < 1 || names[k-1] != "landed_n" {
		return false
	}
	in, _ := t.concepts.found(normalise(words[k]))
	return in["ofthose"]
}

// mostlyParted is from which share of its cells on a column is of several counts.
const mostlyParted = 0.8

// figuresOver finds the counts that headings of fish name in brackets, "YFT (bites/landed)" over 2/1. nil: none.
func (t *Lexicon) figuresOver(blocks []*layout.Block) *figures {
	for _, b := range blocks {
		cells, parted := map[string]int{}, map[string]int{} // by the counts that their headings name
		for _, head := range b.Labels {
			names := t.countsOver(head)
			key := strings.Join(names, " ")
			for _, r := range b.Rows {
				text := cellText(r, head.Col)
				if names == nil || words.Nothing(text) || words.NotLogged(text) {
					continue
				}
				cells[key]++
				if len(phrase.Figures(text)) == len(names) {
					parted[key]++
				}
			}
		}
		for _, key := range slices.Sorted(maps.Keys(parted)) {
			if n := parted[key]; n >= fewParted && float64(n) >= mostlyParted*float64(cells[key]) {
				return &figures{names: strings.Fields(key), over: true}
			}
		}
	}
	return nil
}

// countsOver are the counts that the brackets of a heading name.
func (t *Lexicon) countsOver(head layout.Label) []string {
	m := inBrackets.FindStringSubmatch(head.Full())
	if m == nil {
		return nil
	}
	return t.countsNamed(partedBy.Split(m[1], -1))
}

// countsNamed are the counts that words name, each another; nil where one names none.
func (t *Lexicon) countsNamed(parts []string) []string {
	if len(parts) < 2 || len(parts) > mostFigures {
		return nil
	}
	var out []string
	for _, p := range parts {
		c := t.countOf(layout.Label{Text: p})
		if c == nil {
			return nil
		}
		name := c.Name
		if name == "kept_n" {
			name = "landed_n" // of the figures of a cell those kept are those boated
		}
		if slices.Contains(out, name) {
			return nil
		}
		out = append(out, name)
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
	named := slices.Equal(t.countsOver(v.Label), l.figures.names)
	if !named && (l.figures.over || t.countOf(v.Label) != nil) {
		return false
	}
	several := 0
	for _, c := range v.cells {
		switch n := len(phrase.Figures(c.Text)); {
		case n > 1 && l.figures.denies(partedBy.Split(c.Text, -1)):
			return false
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

// partColumns parts a column of several figures into one for each: 5 @ 8.5 under "Rods @ kn", 2 for 3 under any
// heading, and 5-3-2 under one that names no fish, where the log says that these are bites, fish hooked and fish
// boated.
func (t *Lexicon) partColumns(b *layout.Block, f *figures) {
	if b.Shape != layout.Table || b.Open {
		return
	}
	t.partSpans(b)
	var counted []layout.Label // columns of what the log says of figures
	for _, l := range b.Labels {
		few := fewParted
		if numberedSet.MatchString(l.Text) {
			few = 1 // a third stretch is rare
		}
		if heads, sep := t.partsNamed(l.Text); heads != nil && inParts(b, l.Col, sep, len(heads), few) {
			partColumn(b, l, heads, sep)
		} else if t.ofSoMany(b, l) {
			l.Group = l.Full()
			partColumn(b, l, []string{"Landed", "Bites"}, "for")
		} else if f != nil && f.partedFigures(b, l.Col) != "" {
			counted = append(counted, l)
		}
	}
	if len(counted) == 1 && !t.isSpecies(t.fishOf(counted[0].Text)) {
		partColumn(b, counted[0], f.words, f.partedFigures(b, counted[0].Col))
	}
}

// spanOfClock is a cell with when lines went in and came up.
var spanOfClock = regexp.MustCompile(`(?i)^(\d{1,2}(?:[:.h]?\d{2})?\s*(?:[ap]\.?m?\.?)?)\s*(?:-|–|—|to|till?|until|a|à|bis)\s*` +
	`(\d{1,2}(?:[:.h]?\d{2})?\s*(?:[ap]\.?m?\.?)?)$`)

// setNamed is what the start and the end of one of several stretches are headed with, whose number stands behind its
// heading or whose word before it: "Lines in - up 1", "2nd lines in - up".
func setNamed(heading string) (startEnd []string, ok bool) {
	if m := numberedSet.FindStringSubmatch(heading); m != nil {
		return []string{"lines in " + m[2], "lines up " + m[2]}, true
	}
	first, _, more := strings.Cut(strings.ToLower(strings.TrimSpace(heading)), " ")
	return []string{first + " lines in", first + " lines up"}, more && slices.Contains(setWords, first)
}

// partSpans parts columns of when lines went in and came up, one for each stretch of a row, "Lines in - up 1", into two
// each: their speeds and counts stand beside them.
func (t *Lexicon) partSpans(b *layout.Block) {
	var sets []layout.Label
	for _, l := range b.Labels {
		if _, ok := setNamed(l.Text); ok && spansIn(b, l.Col) {
			sets = append(sets, l)
		}
	}
	if len(sets) < 2 {
		return
	}
	for _, l := range sets {
		heads, _ := setNamed(l.Text)
		for i := range b.Rows {
			if col := l.Col; col < len(b.Rows[i].Cells) {
				if span := spanOfClock.FindStringSubmatch(b.Rows[i].Cells[col].Text); span != nil {
					b.Rows[i].Cells = slices.Clone(b.Rows[i].Cells)
					b.Rows[i].Cells[col].Text = span[1] + betweenClocks + span[2]
				}
			}
		}
		partColumn(b, l, heads, betweenClocks)
	}
}

// betweenClocks stands between the two clock times of a cell before it is parted.
const betweenClocks = " - "

// spansIn tells a column whose filled cells are spans of clock times.
func spansIn(b *layout.Block, col int) bool {
	n := 0
	for _, r := range b.Rows {
		text := cellText(r, col)
		if text == "" || text == "-" || words.NotLogged(text) || loneText(&r) {
			continue
		}
		if !spanOfClock.MatchString(text) {
			return false
		}
		n++
	}
	return n > 0
}

// ofSoMany tells a column of so many fish boated of so many bites, "2 for 3" (common practice, no source), in a table
// that counts neither elsewhere.
func (t *Lexicon) ofSoMany(b *layout.Block, l layout.Label) bool {
	return inParts(b, l.Col, "for", 2, fewParted) && !slices.ContainsFunc(b.Rows, func(r layout.Row) bool {
		got, all, ok := strings.Cut(cellText(r, l.Col), "for")
		landed, _ := number(strings.TrimSpace(got))
		bites, _ := number(strings.TrimSpace(all))
		return ok && landed > bites
	}) && !slices.ContainsFunc(b.Labels, func(o layout.Label) bool {
		c := t.countOf(o)
		return o.Col != l.Col && c != nil && (c.Name == "landed_n" || c.Name == "strikes_n")
	})
}

// partsNamed are the words of a heading for several figures, each of another meaning, and what parts them.
func (t *Lexicon) partsNamed(heading string) (heads []string, sep string) {
	if m := numberedSet.FindStringSubmatch(heading); m != nil {
		if heads, sep = t.partsNamed(m[1]); heads != nil {
			for i := range heads {
				heads[i] = strings.TrimSpace(heads[i]) + " " + m[2] // each is of that stretch
			}
			return heads, sep
		}
	}
	if m := someOf.FindStringSubmatch(heading); m != nil {
		heading = m[1] + " of " + m[2]
	}
	for _, sep := range []string{"@", "/", "×", " x ", " at ", "-", " of "} {
		if heads := t.eachNamed(strings.Split(heading, sep), sep, nil); len(heads) > 1 {
			return heads, sep
		}
	}
	return nil, ""
}

// someOf is a heading of some of others, "Hooked (of bites)", over 1 of 2.
var someOf = regexp.MustCompile(`(?i)^(\pL[^()]*\S)\s*\(of (?:the )?(\pL[^()]*)\)$`)

// numberedSet is a heading with the number of its stretch behind it: "Bites / hooked / kept 2".
var numberedSet = regexp.MustCompile(`^(.*\pL)\s+#?([1-9])$`)

// mostPieces is into how many pieces a heading of several figures falls at the most.
const mostPieces = 6

// eachNamed are the words of a heading's pieces, each with a meaning of its own that none of names is. Pieces may be of
// one word: the "hook-ups" of "bites-hook-ups-boated". nil: there are none.
func (t *Lexicon) eachNamed(pieces []string, sep string, names []string) []string {
	if len(pieces) > mostPieces {
		return nil
	}
	for n := 1; n <= len(pieces); n++ {
		head := strings.TrimSpace(strings.Join(pieces[:n], sep))
		c := t.figureOf(layout.Label{Text: head})
		if c == nil || slices.Contains(names, c.Name) {
			continue
		}
		if n == len(pieces) {
			return []string{head}
		}
		if rest := t.eachNamed(pieces[n:], sep, append(slices.Clone(names), c.Name)); rest != nil {
			return append([]string{head}, rest...)
		}
	}
	return nil
}

// figureOf is the column of counts, hours or speeds that a heading names best; nil: none.
func (t *Lexicon) figureOf(head layout.Label) *plan.Column {
	var best *plan.Column
	weight := loosely
	for _, c := range t.Columns { // in their order
		figure := c.Parse == "count" || c.HasUnit && (c.Dimension == unit.Speed || c.Dimension == unit.Duration)
		if s := t.said(head).columns[c]; figure && s.weight >= weight && (best == nil || s.weight > weight) {
			best, weight = c, s.weight
		}
	}
	return best
}

// partOfCell is one of several figures in a cell, with its unit or without; a range is of one.
var partOfCell = regexp.MustCompile(`^(?:\d{1,3}(?:[.,]\d+)?(?:[-–]\d{1,3}(?:[.,]\d+)?)?\s?\pL{0,6}|\?)$`)

// fewParted is how many cells of several figures a column has at the least.
const fewParted = 3

// inParts tells a column whose filled cells, few at the least, have n figures each.
func inParts(b *layout.Block, col int, sep string, n, few int) bool {
	parted := 0
	for _, r := range b.Rows {
		text := cellText(r, col)
		if text == "" || text == "-" || words.NotLogged(text) || loneText(&r) {
			continue
		}
		parts := strings.Split(text, sep)
		if len(parts) != n || slices.ContainsFunc(parts, func(p string) bool {
			return !partOfCell.MatchString(strings.TrimSpace(p))
		}) {
			return false
		}
		parted++
	}
	return parted >= few
}

// lookOfPart is how the parts of a cell look.
func lookOfPart(sep string) layout.Look {
	if sep == betweenClocks {
		return layout.Clock
	}
	return layout.Number
}

// partColumn puts the first figure of each cell of a column into its place, and the others into columns behind all.
func partColumn(b *layout.Block, l layout.Label, heads []string, sep string) {
	width := 0
	for _, o := range b.Labels {
		width = max(width, o.Col+1)
	}
	for i := range b.Rows {
		width = max(width, len(b.Rows[i].Cells))
	}
	b.Labels = slices.Clone(b.Labels)
	for k, head := range heads {
		label := layout.Label{Col: width + k - 1, Text: strings.TrimSpace(head), Group: l.Group}
		if k > 0 {
			b.Labels = append(b.Labels, label)
			continue
		}
		label.Col = l.Col
		b.Labels[slices.IndexFunc(b.Labels, func(o layout.Label) bool { return o.Col == l.Col })] = label
	}
	for i := range b.Rows {
		r := &b.Rows[i]
		parts := strings.Split(cellText(*r, l.Col), sep)
		if len(parts) != len(heads) {
			continue
		}
		cells := append(make([]layout.Cell, 0, width+len(parts)), r.Cells...)
		for len(cells) < width {
			cells = append(cells, layout.Cell{})
		}
		for _, p := range parts {
			cells = append(cells, layout.Cell{Text: strings.TrimSpace(p), Look: lookOfPart(sep)})
		}
		cells[l.Col] = cells[width]
		r.Cells = slices.Delete(cells, width, width+1)
	}
}
