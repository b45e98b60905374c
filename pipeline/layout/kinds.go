package layout

import (
	"regexp"
	"slices"
	"strconv"
	"strings"
	"unicode"
)

// Some texts have lines of several kinds, each with its own cells, and the kind in the first: a line of an outing with
// its day, and beneath it lines of stretches and of bites.

const (
	fewKinds, mostKinds = 2, 8
	fewOfKind           = 2
	fewLines            = 10
	longestKind         = 16
)

// lines of one kind.
type kindOf struct {
	word   string
	rows   []Row
	above  []Row // of each row, the line of the outing above it
	labels []string
	says   string // of the kind, as the log explains it
}

// kinds takes a sheet of lines of several kinds apart: a table of each, whose rows have the number and the day of the
// outing above them.
func (g *Grid) kinds(like Likeness) ([]Block, []Note, bool) {
	all, notes := g.byKind()
	if all == nil {
		return nil, nil, false
	}
	outing := all[0]
	date := columnOf(outing.rows, Date)
	clocks := 0
	for _, k := range all[1:] {
		if columnOf(k.rows, Date) >= 0 {
			return nil, nil, false
		}
		clocks = max(clocks, clockColumns(k.rows))
	}
	explained := explain(all, notes)
	for _, k := range all {
		k.headed(like)
	}
	if date < 0 || clocks < 2 && explained < fewKinds {
		return nil, nil, false
	}
	borrow(all[1:])
	var blocks []Block
	for i, k := range all {
		blocks = append(blocks, g.tableOf(k, outing, date, i == 0))
	}
	return blocks, notes, true
}

// byKind are the lines of each kind, those of outings first, and the lines before them. nil: the sheet is no such.
func (g *Grid) byKind() (all []*kindOf, notes []Note) {
	if g.More || len(g.Rows) < fewLines {
		return nil, nil
	}
	count := map[string]int{}
	for _, r := range g.Rows {
		count[kindWord(r)]++
	}
	first := slices.IndexFunc(g.Rows, func(r Row) bool { return kindWord(r) != "" && count[kindWord(r)] >= fewOfKind })
	if first < 0 {
		return nil, nil
	}
	for i, r := range g.Rows[:first] {
		if len(r.filled(0, g.Width)) > 1 && !g.isComment(i) {
			return nil, nil // a heading
		}
		notes = append(notes, Note{Row: r.Num, Text: joined(r)})
	}
	by := map[string]*kindOf{}
	var above Row
	for _, r := range g.Rows[first:] {
		word := kindWord(r)
		if word == "" {
			if len(r.filled(0, g.Width)) > 1 {
				return nil, nil
			}
			notes = append(notes, Note{Row: r.Num, Text: joined(r)})
			continue
		}
		if by[word] == nil {
			if by[word] = (&kindOf{word: word}); len(all) == mostKinds {
				return nil, nil
			}
			all = append(all, by[word])
		}
		if word == all[0].word {
			above = r
		}
		by[word].rows, by[word].above = append(by[word].rows, r), append(by[word].above, above)
	}
	several := 0
	for _, k := range all {
		if len(k.rows) >= fewOfKind {
			several++
		}
	}
	if several < fewKinds {
		return nil, nil
	}
	return all, notes
}

// kindWord is a row's first cell in lower case, where that is a word; else "".
func kindWord(r Row) string {
	c := r.at(0)
	if c.Look != Text || len(c.Text) > longestKind || len(r.filled(1, len(r.Cells))) == 0 ||
		strings.IndexFunc(c.Text, func(r rune) bool { return !unicode.IsLetter(r) && r != '_' && r != '-' }) >= 0 {
		return ""
	}
	return strings.ToLower(c.Text)
}

// columnOf is the column in which most rows have a cell of a look; -1 where none does.
func columnOf(rows []Row, look Look) int {
	for col := 1; col < widest(rows); col++ {
		n := 0
		for i := range rows {
			if rows[i].at(col).Look == look {
				n++
			}
		}
		if 10*n >= 8*len(rows) {
			return col
		}
	}
	return -1
}

// clockColumns is in how many columns most rows have clock times.
func clockColumns(rows []Row) int {
	n := 0
	for col := 1; col < widest(rows); col++ {
		clocks := 0
		for i := range rows {
			if rows[i].at(col).Look == Clock {
				clocks++
			}
		}
		if 2*clocks > len(rows) {
			n++
		}
	}
	return n
}

func widest(rows []Row) int {
	n := 0
	for i := range rows {
		n = max(n, len(rows[i].Cells))
	}
	return n
}

// listSign parts what explains the cells of a line.
var listSign = regexp.MustCompile(`\s*[/,;|]\s*`)

// explain takes what lines before them say of the kinds, "RUN = start / end / lines; HIT = bite: time / fish", and
// counts those of which the cells are named.
func explain(all []*kindOf, notes []Note) int {
	n := 0
	for _, note := range notes {
		type place struct {
			at, end int
			of      *kindOf
		}
		var places []place
		for _, k := range all {
			at := regexp.MustCompile(`(?i)(?:^|[^\pL])` + regexp.QuoteMeta(k.word) + `\s*(?:[=:(–]|-\s)\s*`).
				FindStringIndex(note.Text)
			if at != nil {
				places = append(places, place{at[0], at[1], k})
			}
		}
		slices.SortFunc(places, func(a, b place) int { return a.at - b.at })
		for i, p := range places {
			end := len(note.Text)
			if i+1 < len(places) {
				end = max(p.end, places[i+1].at+1)
			}
			p.of.says = strings.Trim(note.Text[p.end:end], " ;,.()#")
			list := p.of.says
			if _, after, ok := strings.Cut(list, ":"); ok {
				list = after
			}
			if parts := listSign.Split(strings.TrimSpace(list), -1); len(parts) > 1 &&
				len(parts) < widest(p.of.rows) && 2*len(parts) >= widest(p.of.rows)-1 {
				p.of.labels = parts
				n++
			}
		}
	}
	return n
}

// headed takes the first line of a kind for its heading where its cells are such.
func (k *kindOf) headed(like Likeness) {
	named, filled := 0, 0
	for _, c := range k.rows[0].Cells[1:] {
		if c.Look == Text {
			filled++
			if like.Label(c.Text) >= 0.8 {
				named++
			}
		} else if c.Look != Blank {
			return
		}
	}
	if filled < 2 || 2*named < filled || len(k.rows) < 2 {
		return
	}
	k.labels = nil
	for _, c := range k.rows[0].Cells[1:] {
		k.labels = append(k.labels, c.Text)
	}
	k.rows, k.above = k.rows[1:], k.above[1:]
}

// borrow gives a kind whose cells nobody named the labels of the one that has as many cells.
func borrow(all []*kindOf) {
	for _, k := range all {
		if k.labels != nil {
			continue
		}
		var from []*kindOf
		for _, o := range all {
			if o != k && o.labels != nil && widest(o.rows) == widest(k.rows) {
				from = append(from, o)
			}
		}
		if len(from) == 1 {
			k.labels = from[0].labels
		}
	}
}

// tableOf is the table of a kind: the number and the day of the outing above, then the cells of its lines.
func (g *Grid) tableOf(k, outing *kindOf, date int, own bool) Block {
	b := Block{Grid: g, Shape: Records, Kind: k.word, Above: []string{k.says}}
	if k.says == "" {
		b.Above[0] = k.word
	}
	var keys []int
	if number := columnOf(outing.rows, Number); number > 0 && rises(outing.rows, number) {
		keys = append(keys, number)
		b.Labels = append(b.Labels, Label{Col: 0, Text: outing.word})
	}
	b.Labels = append(b.Labels, Label{Col: len(keys), Text: dayLabel})
	keys = append(keys, date)
	for i, r := range k.rows {
		cells := make([]Cell, 0, len(keys)+len(r.Cells))
		for _, col := range keys {
			cells = append(cells, k.above[i].at(col))
		}
		for col := 1; col < len(r.Cells); col++ {
			if !own || !slices.Contains(keys, col) {
				cells = append(cells, r.at(col))
			}
		}
		r.Cells = cells
		b.Rows = append(b.Rows, r)
	}
	labels := k.labels
	if own && labels != nil {
		labels = nil
		for i, text := range k.labels {
			if !slices.Contains(keys, i+1) {
				labels = append(labels, text)
			}
		}
	}
	for col := len(keys); col < widest(b.Rows); col++ {
		if !holds(b.Rows, col) {
			continue
		}
		label := Label{Col: col}
		if i := col - len(keys); i < len(labels) {
			label.Text = labels[i]
		}
		b.Labels = append(b.Labels, label)
	}
	return b
}

// rises tells a column of numbers each of which is more than the one before.
func rises(rows []Row, col int) bool {
	last := 0
	for i := range rows {
		n, err := strconv.Atoi(rows[i].at(col).Text)
		if err != nil || n <= last {
			return false
		}
		last = n
	}
	return len(rows) > 1
}
