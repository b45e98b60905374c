package layout

import (
	"regexp"
	"slices"
	"strconv"
	"strings"

	"wakeledger/pipeline/unit"
)

// Some sheets hold a sheet of paper for each outing, one below the other: a line that names the outing by labels
// and their values, "Record | 4 | Date | 3 June 2026", further such lines, and tables under headings that come
// again in each. They are parted by kind: one table of all records, and one of each heading, whose rows get what
// the line above them names.

// fewPapers is how many outings are stacked at the least.
const fewPapers = 3

// paper is the rows of one outing, by index, from its first line to before the next one's.
type paper struct{ from, to int }

// stack is how a sheet of stacked outings is taken apart.
type stack struct {
	g       *Grid
	keys    []int        // columns of the labels in an outing's first line
	places  map[int]Cell // what stands behind the day in such a line, by row
	said    map[int]Cell // and what was said of the day at its end, by row
	papers  []paper
	heads   map[string]int // how often a row of headings comes, by its texts
	labels  map[string]int // how often a label stands at the beginning of a line, or behind a value
	stretch []pair         // a line of a stretch, where some outings have several
	astray  bool           // some row of figures stands under no heading
	naming  int            // how many of the labels of a first line name the outing
	paired  bool           // the others say more of it, and stand in the table of records alone
	top     int            // a row of headings above all outings, for all of them; -1 where there is none
}

// stacked takes a sheet of stacked outings apart; ok is false for another sheet.
func (g *Grid) stacked(like Likeness) (blocks []Block, notes []Note, ok bool) {
	s := &stack{heads: map[string]int{}, labels: map[string]int{}, top: -1}
	s.g, s.places, s.said = g.openedByDays()
	var at []int
	if s.said == nil {
		s.g, at = g.openedByPairs(like)
	}
	if s.paired = at != nil; !s.paired && s.said == nil {
		s.g, s.places = g.openedByNumbers()
	}
	if g.More || !s.paired && !s.open(like) {
		return nil, nil, false
	}
	if s.naming = len(s.keys); s.paired {
		s.opened(at, like)
	}
	s.headings(like)
	again := 0
	for _, n := range s.heads {
		again = max(again, n)
	}
	if again == 0 || again < fewPapers && !s.paired {
		return nil, nil, false
	}
	blocks, notes = s.blocks()
	for i := range blocks {
		blocks[i].Grid = g
	}
	for r := range s.papers[0].from {
		if r == s.top {
			continue
		}
		notes = append(notes, Note{Row: g.Rows[r].Num, Text: g.explainedBeside(r)})
	}
	return blocks, notes, (len(blocks) > 1 || s.said != nil && len(blocks) > 0) && !s.astray
}

// opened takes the lines that say more of an outing than its number and its day, and a row of headings above them all.
func (s *stack) opened(at []int, like Likeness) {
	s.keys, s.naming = s.g.pairLabels(at[0]), 2
	for k, from := range at {
		to := len(s.g.Rows)
		if k+1 < len(at) {
			to = at[k+1]
		}
		s.papers = append(s.papers, paper{from, to})
	}
	if r := at[0] - 1; r >= 0 && s.g.words(r) && s.g.isHead(r, like) && len(s.g.Rows[r].filled(0, s.g.Width)) > 1 {
		s.top = r
		s.heads[s.g.texts(r)] = len(at)
	}
}

// pairLabels are the columns of the labels of a row in which each second cell is one.
func (g *Grid) pairLabels(r int) (keys []int) {
	for i := 0; i < len(g.Rows[r].Cells); i += 2 {
		keys = append(keys, i)
	}
	return keys
}

// open finds the lines that open an outing: the same labels in the same columns, each with a value to its right,
// of which those of one are days.
func (s *stack) open(like Likeness) bool {
	for r := range s.g.Rows {
		keys := s.g.pairColumns(r)
		if len(keys) < 2 {
			continue
		}
		var at []int
		for q := r; q < len(s.g.Rows); q++ {
			if s.g.sameAt(r, q, keys) {
				at = append(at, q)
			}
		}
		if len(at) < fewPapers || !s.g.namesDays(at, keys, like) {
			continue
		}
		s.keys = keys
		for k, from := range at {
			to := len(s.g.Rows)
			if k+1 < len(at) {
				to = at[k+1]
			}
			s.papers = append(s.papers, paper{from, to})
		}
		return true
	}
	return false
}

// pairColumns are the columns of a row's labels, where it is labels with a value to the right of each.
func (g *Grid) pairColumns(r int) []int {
	row := &g.Rows[r]
	cells := row.filled(0, g.Width)
	if len(cells)%2 != 0 {
		return nil
	}
	var keys []int
	for k := 0; k < len(cells); k += 2 {
		c := row.Cells[cells[k]]
		if c.Look != Text || len(c.Text) >= 50 || cells[k+1] != cells[k]+1 {
			return nil
		}
		keys = append(keys, cells[k])
	}
	return keys
}

// sameAt tells two rows with the same texts in some columns.
func (g *Grid) sameAt(a, b int, columns []int) bool {
	return !slices.ContainsFunc(columns, func(i int) bool {
		return !strings.EqualFold(g.Rows[a].at(i).Text, g.Rows[b].at(i).Text)
	})
}

// namesDays tells lines of which a label that may name a day or a trip has values of which most are days.
func (g *Grid) namesDays(rows, keys []int, like Likeness) bool {
	return slices.ContainsFunc(keys, func(i int) bool {
		days := 0
		for _, r := range rows {
			c := g.Rows[r].at(i + 1)
			if _, _, span := unit.DaySpan(c.Text); span || c.Look == Date {
				days++
			}
		}
		return 5*days >= 4*len(rows) && like.Key(strings.TrimRight(g.Rows[rows[0]].at(i).Text, ": "))
	})
}

// texts are what a row's cells say, each in its column.
func (g *Grid) texts(r int) string {
	var b strings.Builder
	for i := range g.Width {
		b.WriteString(strings.ToLower(g.Rows[r].at(i).Text))
		b.WriteByte(0)
	}
	return b.String()
}

// headings finds the rows of headings that come again in other outings, or are sure to be some, and the labels that do.
func (s *stack) headings(like Likeness) {
	again, head, sure := map[string]int{}, map[string]bool{}, map[string]bool{}
	labels := map[string]int{}
	for _, p := range s.papers {
		for r := p.from + 1; r < p.to; r++ {
			if s.paired && (s.top >= 0 || r > p.from+1) {
				break // its rows have no label with its value, and no headings among them
			}
			if t := s.g.texts(r); len(s.g.Rows[r].filled(0, s.g.Width)) > 2 && s.g.words(r) {
				again[t]++
				head[t] = head[t] || s.g.isHead(r, like)
				sure[t] = sure[t] || s.g.labelled(r, like)
			}
			for _, i := range s.g.pairStarts(r) {
				labels[labelText(s.g.Rows[r].at(i))]++
			}
		}
	}
	for t, n := range again {
		if head[t] && (n > 1 || sure[t]) {
			s.heads[t] = n
		}
	}
	for t, n := range labels {
		if n >= fewPapers {
			s.labels[t] = n
		}
	}
	s.stretchLine()
}

// pairStarts are the cells of a row that may be labels with a value to their right.
func (g *Grid) pairStarts(r int) []int {
	if keys := g.pairColumns(r); keys != nil {
		return keys
	}
	cells := g.Rows[r].filled(0, g.Width)
	if len(cells) == 1 && strings.HasSuffix(g.Rows[r].at(cells[0]).Text, ":") {
		return cells // nobody filled it in
	}
	return nil
}

// starts are the cells of a row that may be labels, as pairStarts has them, or those of a row whose labels come again
// in other outings but maybe for the first, some with nothing written behind them.
func (s *stack) starts(r int) (out []int) {
	if out = s.g.pairStarts(r); out != nil {
		return out
	}
	for _, i := range s.g.Rows[r].filled(0, s.g.Width) {
		switch c := s.g.Rows[r].at(i); {
		case c.Look == Text && (out == nil || s.labels[labelText(c)] > 0):
			out = append(out, i)
		case len(out) == 0 || out[len(out)-1] != i-1:
			return nil
		}
	}
	return out
}

func labelText(c Cell) string { return strings.ToLower(strings.TrimRight(oneLine(c.Text), ": ")) }

// blocks are the table of all records, and one of each heading; notes are the lines that are part of none.
func (s *stack) blocks() (out []Block, notes []Note) {
	records, stretches := Block{Grid: s.g, Shape: Records}, Block{Grid: s.g, Shape: Records}
	tables := map[string]*Block{}
	var order []*Block
	tableAt := func(r int) *Block {
		text := s.g.texts(r)
		if tables[text] == nil {
			tables[text] = s.table(r)
			order = append(order, tables[text])
		}
		return tables[text]
	}
	for _, p := range s.papers {
		pairs, before, tabled, told := s.named(p.from), len(notes), false, false
		if c, ok := s.places[p.from]; ok {
			pairs = append(pairs, pair{p.from, s.g.Width, "place", c})
		}
		if c, ok := s.said[p.from]; ok {
			pairs = append(pairs, pair{p.from, s.g.Width, "notes", c})
		}
		var now *Block
		if s.top >= 0 {
			now, tabled = tableAt(s.top), true
		}
		for r := p.from + 1; r < p.to; r++ {
			row := s.g.Rows[r]
			starts := s.starts(r)
			if now != nil && (s.said != nil || s.paired) {
				starts = nil // a rod with its hours, and no label with its value
			}
			cells := row.filled(0, s.g.Width)
			switch text := s.g.texts(r); {
			case s.heads[text] > 0:
				tabled = true
				now = tableAt(r)
			case s.isStretch(s.pairsOf(r, starts)):
				now, told = nil, true
				of, line := s.pairsOf(r, starts), Row{Num: row.Num}
				of[0].label = s.stretch[0].label
				stretches.put(&line, append(s.named(p.from), of...))
				stretches.Rows = append(stretches.Rows, line)
			case len(starts) > 0 && s.labelled(r, starts):
				now, told = nil, true
				pairs = append(pairs, s.pairsOf(r, starts)...)
			case len(cells) == 0:
			case now == nil || s.isRemark(row, cells, now) || s.said != nil && len(cells) == 2 &&
				row.at(cells[0]).Look == Date && row.at(cells[1]).Look == Text: // Sat 9/28 | stayed in
				s.astray = s.astray || now == nil && len(cells) > 2 && !s.g.words(r)
				notes = append(notes, Note{Row: row.Num, Col: cells[0] + 1, Text: joined(row)})
			default:
				line := s.under(row, p.from)
				if s.said != nil {
					c := s.said[p.from]
					line.Cells = append(line.Cells, c)
					delete(s.said, p.from) // once a day
				}
				now.Rows = append(now.Rows, line)
			}
		}
		if (!tabled || s.said == nil && !told && len(s.labels) > 0) && len(notes) > before {
			label := "notes" // what else was done that day
			if s.said != nil {
				label = "what happened"
			}
			pairs = append(pairs, pair{p.from, 0, label, Cell{Text: notes[before].Text, Look: Text}})
			notes = slices.Delete(notes, before, before+1)
		}
		if s.said != nil && tabled {
			continue // its table has all that the line tells
		}
		row := Row{Num: s.g.Rows[p.from].Num}
		records.put(&row, pairs)
		records.Rows = append(records.Rows, row)
	}
	if len(records.Rows) > 0 {
		out = append(out, records)
	}
	if s.stretch != nil {
		out = append(out, stretches)
	}
	for _, b := range order {
		notes = append(notes, b.numberRows()...)
		out = append(out, *b)
	}
	return out, notes
}

// pairsOf are the labels of a row with their values.
func (s *stack) pairsOf(r int, starts []int) (out []pair) {
	for _, i := range starts {
		c := s.g.Rows[r].at(i + 1)
		if slices.Contains(starts, i+1) {
			c = Cell{} // nothing is written behind this label
		}
		out = append(out, pair{r, i, strings.TrimRight(oneLine(s.g.Rows[r].at(i).Text), ": "), c})
	}
	return out
}

// stretchLine finds the labels of lines that come more than once in an outing, each of a stretch, but for the first
// word of the others: "then | 11:20 | up | 13:30" under "lines in | 6:00 | up | 10:35".
func (s *stack) stretchLine() {
	for _, p := range s.papers {
		var first []pair
		for r := p.from + 1; r < p.to; r++ {
			of := s.pairsOf(r, s.starts(r))
			if s.stretch = first; s.isStretch(of) && !strings.EqualFold(first[0].label, of[0].label) {
				return
			}
			if len(first) == 0 && len(of) > 1 && s.labelled(r, s.starts(r)) {
				first = of
			}
		}
	}
	s.stretch = nil
}

// isStretch tells a line of labels that are those of a stretch, but for the first.
func (s *stack) isStretch(of []pair) bool {
	return len(of) > 1 && slices.EqualFunc(of[1:], s.stretch[min(1, len(s.stretch)):],
		func(a, b pair) bool { return strings.EqualFold(a.label, b.label) })
}

// isRemark tells a line of words among the rows of a table from a row with one cell alone.
func (s *stack) isRemark(row Row, cells []int, under *Block) bool {
	if len(cells) > 1 {
		return false
	}
	headed := slices.ContainsFunc(under.Labels, func(l Label) bool { return l.Col == cells[0] })
	return !headed || len(strings.Fields(row.at(cells[0]).Text)) > 2
}

// labelled tells a row all of whose labels come again in other outings.
func (s *stack) labelled(r int, starts []int) bool {
	return !slices.ContainsFunc(starts, func(i int) bool { return s.labels[labelText(s.g.Rows[r].at(i))] == 0 })
}

// named are the labels of an outing's first line with their values.
func (s *stack) named(r int) []pair {
	var out []pair
	for _, i := range s.keys {
		row := s.g.Rows[r]
		out = append(out, pair{r, i, strings.TrimRight(oneLine(row.at(i).Text), ": "), row.at(i + 1)})
	}
	return out
}

// table is the table under a row of headings, still without rows. What the outing's first line names stands behind
// its own columns, so that these keep their place in the sheet.
func (s *stack) table(r int) *Block {
	b := &Block{Grid: s.g, Shape: Table, Heads: []int{r}}
	for i := range s.g.Width {
		if c := s.g.Rows[r].at(i); c.Look != Blank {
			b.Labels = append(b.Labels, Label{Col: i, Text: oneLine(c.Text)})
		}
	}
	for k, p := range s.named(s.papers[0].from)[:s.naming] {
		b.Labels = append(b.Labels, Label{Col: s.g.Width + k, Text: p.label})
	}
	if s.said != nil {
		b.Labels = append(b.Labels, Label{Col: s.g.Width + len(s.keys), Text: "notes"})
	}
	return b
}

// under is a row of a table with what the first line of its outing names.
func (s *stack) under(row Row, from int) Row {
	cells := make([]Cell, s.g.Width+s.naming)
	copy(cells, row.Cells[:min(len(row.Cells), s.g.Width)])
	for k, p := range s.named(from)[:s.naming] {
		cells[s.g.Width+k] = p.value
	}
	row.Cells = cells
	return row
}

// explainedBeside is the text of a row above all outings; a word with what it means beside it stands apart from that.
func (g *Grid) explainedBeside(r int) string {
	row := &g.Rows[r]
	cells := row.filled(0, g.Width)
	if len(cells) == 2 && len(row.at(cells[0]).Text) <= fewLetters {
		return row.at(cells[0]).Text + "  " + row.at(cells[1]).Text
	}
	return joined(*row)
}

// fewLetters is how long a code is at the most.
const fewLetters = 4

var (
	// wordNumber is a word with a number, and what stands behind it: "TRIP 3", "Trip 3: Sat 4 May".
	wordNumber = regexp.MustCompile(`^(\pL{3,})\s*#?(\d{1,3})\s*(?:[-–—:,.]\s*)?(.*)$`)
	bracketed  = regexp.MustCompile(`^\(.*\)$`)
)

// openedByNumbers is a grid with each line that numbers an outing and names its day, "TRIP 3 | 4 May | the bank", as
// the labels of the two with their values, and what stands behind the day.
func (g *Grid) openedByNumbers() (*Grid, map[int]Cell) {
	out, word, n, last, places := *g, "", 0, 0, map[int]Cell{}
	out.Rows, out.Width = slices.Clone(g.Rows), max(g.Width, 4)
	for r := range g.Rows {
		row := &g.Rows[r]
		cells := row.filled(0, g.Width)
		if len(cells) == 0 || len(cells) > 3 {
			continue
		}
		m := wordNumber.FindStringSubmatch(row.at(cells[0]).Text)
		if m == nil || word != "" && m[1] != word || len(cells) > 1 && m[3] != "" {
			continue
		}
		day := Cell{Text: m[3], Look: lookOf(m[3], 0)}
		if len(cells) > 1 {
			day = row.at(cells[1])
		}
		number, _ := strconv.Atoi(m[2])
		if n == 0 && day.Look != Date || number <= last || len(cells) > 2 && row.at(cells[2]).Look != Text {
			continue
		}
		if len(cells) > 2 {
			places[r] = row.at(cells[2])
		}
		word, last, n = m[1], number, n+1
		out.Rows[r].Cells = []Cell{{Text: word, Look: Text}, {Text: m[2], Look: Number},
			{Text: dayLabel, Look: Text}, day}
	}
	if n < fewPapers {
		return g, nil
	}
	return &out, places
}

// numberRows makes a column without a heading whose cells are a word and a number, "Pass 2", the numbers under that
// word. What stands in brackets behind them is a note.
func (b *Block) numberRows() (notes []Note) {
	for col := range b.Grid.Width {
		word := ""
		headed := slices.ContainsFunc(b.Labels, func(l Label) bool { return l.Col == col })
		other := slices.ContainsFunc(b.Rows, func(r Row) bool {
			m := wordNumber.FindStringSubmatch(r.at(col).Text)
			if m == nil || word != "" && m[1] != word || m[3] != "" && !bracketed.MatchString(m[3]) {
				return true
			}
			word = m[1]
			return false
		})
		if headed || other || word == "" {
			continue
		}
		for _, r := range b.Rows {
			m := wordNumber.FindStringSubmatch(r.at(col).Text)
			if m[3] != "" {
				notes = append(notes, Note{Row: r.Num, Col: col + 1, Text: m[3]})
			}
			r.Cells[col] = Cell{Text: m[2], Look: Number}
		}
		b.Labels = slices.Insert(b.Labels, 0, Label{Col: col, Text: word})
	}
	return notes
}
