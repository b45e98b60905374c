package layout

import (
	"regexp"
	"strconv"
	"strings"

	"wakeledger/pipeline/sheet"
)

// pair is a label with the value beside it or behind its colon.
type pair struct {
	row   int // of the grid
	col   int
	label string
	value Cell
}

// outside takes what lies outside tables: pairs of labels and values, which make a
// form or, where the labels come again, records; and notes.
func (s *Sheet) outside(used map[int]bool, like Likeness) {
	if s.told(used, like) {
		return
	}
	var pairs []pair
	for r := range s.Grid.Rows {
		if !used[r] {
			pairs = append(pairs, s.line(r, like)...)
		}
	}
	if s.explained(pairs, like) {
		return
	}
	count := map[string]int{}
	most := 0
	for _, p := range pairs {
		k := strings.ToLower(p.label)
		count[k]++
		most = max(most, count[k])
	}
	again, of := 0, 0
	for _, n := range count {
		if n > 1 {
			again++
			of += n
		}
	}
	if again >= 2 && 10*of >= 6*len(pairs) {
		s.records(pairs, count, most)
		return
	}
	b := Block{Grid: s.Grid, Shape: Form}
	row := Row{Num: s.Grid.Rows[pairs[0].row].Num}
	b.put(&row, pairs)
	b.Rows = []Row{row}
	s.Blocks = append(s.Blocks, b)
}

// asPair is the label and the value of a row that has nothing else: in two cells, or with a colon between.
func (r *Row) asPair(at int) (pair, bool) {
	cells := r.filled(0, len(r.Cells))
	switch {
	case len(cells) == 2 && r.at(cells[0]).Look == Text:
		label := strings.TrimRight(r.at(cells[0]).Text, ": ")
		return pair{at, cells[0], label, r.at(cells[1])}, !strings.Contains(label, ": ")
	case len(cells) == 1 && r.at(cells[0]).Look == Text:
		label, value, ok := cutLabel(r.at(cells[0]).Text)
		label, value = strings.TrimSpace(label), strings.TrimSpace(value)
		if ok && label != "" && len(label) <= maxLabel {
			return pair{at, cells[0], label, Cell{Text: value, Look: lookOf(value, sheet.Plain)}}, true
		}
	}
	return pair{}, false
}

// pairsOf are the pairs of rows each of which, down to the notes at their foot, is a label and its value, in records
// that begin with the trip or the day: "hit 1" and "hit 2" are one label. Nil where they are not.
func (g *Grid) pairsOf(like Likeness) []pair {
	count := map[string]int{}
	var pairs []pair
	known, long, loose := 0, 0, 0
	labels := g.labelsBeside(like)
	for r := range g.Rows {
		p, ok := g.Rows[r].asPair(r)
		if !ok {
			p, ok = g.unfilled(r, labels)
		}
		switch {
		case len(pairs) == 0 && (!ok || !like.Key(p.label) &&
			(labels[labelText(Cell{Text: p.label})] < 2 || !g.overKey(r, like))):
			continue // a note above
		case !ok:
			loose++
			continue
		case loose > 0:
			return nil // lines that go on, or of no label
		}
		if pairs = append(pairs, p); like.Label(p.label) >= 0.8 {
			known++
		}
		long += len(p.value.Text)
		count[numberBehind.ReplaceAllString(strings.ToLower(p.label), "")]++
	}
	again, several := 0, 0
	for _, n := range count {
		if n > 1 {
			again, several = again+n, several+1
		}
	}
	if len(pairs) < leastTwo || 10*again < 8*len(pairs) || several < 3 || 2*known < len(pairs) {
		return nil
	}
	if long > mostMean*len(pairs) {
		return nil // paragraphs behind a word
	}
	if first := strings.ToLower(pairs[0].label); count[first] < 2 || 3*count[first] > len(pairs) {
		return nil
	}
	return pairs
}

// labelsBeside is how often a text stands beside a value in a row of these two alone; labels that come again with
// nothing beside them are counted too.
func (g *Grid) labelsBeside(like Likeness) map[string]int {
	labels, alone := map[string]int{}, map[string]bool{}
	for r := range g.Rows {
		cells := g.Rows[r].filled(0, g.Width)
		if len(cells) == 0 || len(cells) > 2 {
			continue
		}
		text := labelText(g.Rows[r].at(cells[0]))
		if len(cells) == 2 || alone[text] && like.Label(text) >= 0.8 {
			labels[text]++
		}
		alone[text] = alone[text] || len(cells) == 1
	}
	return labels
}

// unfilled is a label alone in its row, beside which a value stands in other records: nobody filled it in.
func (g *Grid) unfilled(r int, labels map[string]int) (p pair, ok bool) {
	cells := g.Rows[r].filled(0, g.Width)
	if len(cells) != 1 || labels[labelText(g.Rows[r].at(cells[0]))] == 0 {
		return p, false
	}
	return pair{r, cells[0], strings.TrimRight(g.Rows[r].at(cells[0]).Text, ": "), Cell{}}, true
}

// overKey tells a row right above the label of a day or a trip with its value.
func (g *Grid) overKey(r int, like Likeness) bool {
	if r+1 == len(g.Rows) || g.Rows[r+1].Num != g.Rows[r].Num+1 {
		return false
	}
	p, ok := g.Rows[r+1].asPair(r + 1)
	return ok && like.Key(p.label)
}

// leastTwo is from how many rows on a text may be of labels and their values throughout.
const leastTwo = 8

// mostMean is how long the values of labels are at most, in the mean.
const mostMean = 45

var numberBehind = regexp.MustCompile(`\s*\d+:?$`)

// allPairs makes records of a sheet that is of labels and their values throughout; its other rows are notes.
func (s *Sheet) allPairs(like Likeness) bool {
	pairs := s.Grid.pairsOf(like)
	if pairs == nil {
		return false
	}
	of := map[int]bool{}
	count, most := map[string]int{}, 0
	first := map[string]bool{}
	for _, p := range pairs {
		if rest, ok := strings.CutSuffix(p.label, " 1"); ok {
			first[strings.ToLower(rest)] = true
		}
	}
	for i, p := range pairs {
		if first[strings.ToLower(p.label)] { // "fish: none" where others have fish 1 and fish 2
			pairs[i].label += " 1"
			p = pairs[i]
		}
		of[p.row] = true
		k := strings.ToLower(p.label)
		count[k]++
		most = max(most, count[k])
	}
	for r := range s.Grid.Rows {
		if row := &s.Grid.Rows[r]; !of[r] {
			s.Notes = append(s.Notes, Note{row.Num, 1, joined(*row)})
		}
	}
	s.records(pairs, count, most)
	return true
}

// explained tells pairs that are none, or of which most have a label for their value: a
// list of what headings mean ("Legs: Start"), which are notes.
func (s *Sheet) explained(pairs []pair, like Likeness) bool {
	labels := 0
	for _, p := range pairs {
		if p.value.Look == Text && like.Label(p.value.Text) >= 0.5 {
			labels++
		}
	}
	if 2*labels < len(pairs) {
		return false
	}
	for _, p := range pairs {
		s.Notes = append(s.Notes, Note{s.Grid.Rows[p.row].Num, p.col + 1, p.label + ": " + p.value.Text})
	}
	return true
}

// records parts pairs into records, each of which begins with the label that most of
// them begin with.
func (s *Sheet) records(pairs []pair, count map[string]int, most int) {
	first := ""
	for _, p := range pairs {
		if k := strings.ToLower(p.label); count[k] >= 2 && 10*count[k] >= 3*most {
			first = k
			break
		}
	}
	b := Block{Grid: s.Grid, Shape: Records}
	var now []pair
	flush := func() {
		if len(now) > 0 {
			row := Row{Num: s.Grid.Rows[now[0].row].Num}
			b.put(&row, now)
			b.Rows = append(b.Rows, row)
		}
		now = nil
	}
	for i, p := range pairs {
		gap := i > 0 && s.Grid.Rows[p.row].Num > s.Grid.Rows[pairs[i-1].row].Num+1
		if strings.ToLower(p.label) == first || gap && among(now, p.label) {
			flush()
		}
		now = append(now, p)
	}
	flush()
	s.Blocks = append(s.Blocks, b)
}

func among(pairs []pair, label string) bool {
	for _, p := range pairs {
		if strings.EqualFold(p.label, label) {
			return true
		}
	}
	return false
}

// put puts a record's values under the block's labels; of a label that comes again in
// one record the second has a label of its own.
func (b *Block) put(row *Row, pairs []pair) {
	times := map[string]int{}
	for _, p := range pairs {
		k := strings.ToLower(p.label)
		label := p.label
		if times[k]++; times[k] > 1 {
			label += " " + strconv.Itoa(times[k])
		}
		at := -1
		for i, l := range b.Labels {
			if strings.EqualFold(l.Text, label) {
				at = i
			}
		}
		if at < 0 {
			at = len(b.Labels)
			b.Labels = append(b.Labels, Label{Col: at, Text: label})
		}
		for len(row.Cells) <= at {
			row.Cells = append(row.Cells, Cell{})
		}
		row.Cells[at] = p.value
	}
}

// line takes the pairs of one row; its other texts are notes.
func (s *Sheet) line(r int, like Likeness) []pair {
	var pairs []pair
	row := &s.Grid.Rows[r]
	cells := row.filled(0, len(row.Cells))
	if s.Grid.isSentence(row, cells) {
		s.Notes = append(s.Notes, Note{row.Num, cells[0] + 1, joined(*row)})
		return nil
	}
	for k := 0; k < len(cells); k++ {
		i := cells[k]
		c := row.Cells[i]
		next := Cell{}
		if k+1 < len(cells) {
			next = row.Cells[cells[k+1]]
		}
		if several := sentences(c, like); len(several) > 1 {
			for _, p := range several {
				pairs = append(pairs, pair{r, i, p[0], Cell{Text: p[1], Look: lookOf(p[1], sheet.Plain)}})
			}
			continue
		}
		label, value, colon := key(c, like)
		switch {
		case colon && value != "":
			pairs = append(pairs, pair{r, i, label, Cell{Text: value, Look: lookOf(value, sheet.Plain)}})
		case colon && (next.Look == Blank || strings.HasSuffix(next.Text, ":")):
			// a label that nobody filled in
		case colon, c.Look == Text && len(c.Text) < 50 && like.Label(c.Text) > 0.5 && isValue(next, like) &&
			(next.Look != Text || cells[k+1] == i+1):
			pairs = append(pairs, pair{r, i, label, next})
			k++
		case c.Text != "":
			s.Notes = append(s.Notes, Note{row.Num, i + 1, c.Text})
		}
	}
	return pairs
}

var labelled = regexp.MustCompile(`(?:^|[.;,]\s+)(\pL[\pL\d #]{0,24}?)\s*:\s+`)

// sentences parts a line of several labels with their values: "Date: 3/4. Crew: me. Bites: 2".
func sentences(c Cell, like Likeness) [][2]string {
	if c.Look != Text {
		return nil
	}
	var out [][2]string
	at := labelled.FindAllStringSubmatchIndex(c.Text, -1)
	for k, m := range at {
		label := c.Text[m[2]:m[3]]
		if like.Label(label) < 0.6 {
			return nil
		}
		end := len(c.Text)
		if k+1 < len(at) {
			end = at[k+1][0]
		}
		out = append(out, [2]string{label, strings.TrimRight(strings.TrimSpace(c.Text[m[1]:end]), ".;, ")})
	}
	if len(at) == 0 || at[0][0] != 0 {
		return nil
	}
	return out
}

// isValue tells what may stand beside a label without a colon.
func isValue(c Cell, like Likeness) bool {
	return c.Look != Blank && !strings.HasSuffix(c.Text, ":") && (c.Look != Text || like.Label(c.Text) < 0.5)
}

// key parts "label: value"; a sentence that has a colon in it is none.
func key(c Cell, like Likeness) (label, value string, ok bool) {
	if c.Look != Text {
		return c.Text, "", false
	}
	label, value, ok = cutLabel(c.Text)
	label, value = strings.TrimSpace(label), strings.TrimSpace(value)
	if !ok || label == "" || strings.ContainsAny(label[:1], "0123456789") {
		return c.Text, "", false
	}
	if l := like.Label(label); len(label) > maxLabel || l < 0.5 && (len(strings.Fields(label)) > 4 || len(value) > 60) {
		return c.Text, "", false
	}
	return label, value, true
}

var clockInside = regexp.MustCompile(`\d:\d\d(?:\D|$)`)

// cutLabel parts a text at its first colon; where that stands in a clock time ("Trolled 6:20 to 7:25") there
// is no label.
func cutLabel(text string) (label, value string, ok bool) {
	at := strings.Index(text, ":")
	if in := clockInside.FindStringIndex(text); in != nil && in[0]+1 == at {
		return text, "", false
	}
	return strings.Cut(text, ":")
}
