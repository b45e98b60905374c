package recognise

import (
	"slices"
	"strings"

	"wakeledger/pipeline/unit"
)

// alsoValues are headings that stand in the cells of a table too: a row of them
// alone is no header.
var alsoValues = map[string]bool{
	"kept": true, "released": true, "landed": true, "lost": true, "missed": true, "boated": true, "caught": true, "gaffed": true, "tagged": true,
	"retained": true, "hooked": true, "pulled": true, "dropped": true, "fork": true, "total length": true, "curved": true, "fish": true, "spread": true,
}

// MayHead tells, soon and roughly, whether a row may be a header: no cell begins
// with a digit, and of its first cells most hold words that headings are made of.
func (t *Table) MayHead(row []string) bool {
	filled, words := 0, 0
	for _, c := range row {
		if c = strings.TrimSpace(c); c == "" {
			continue
		}
		if c[0] >= '0' && c[0] <= '9' {
			return false
		}
		if filled++; filled <= 4 && t.headWord(c) {
			words++
		}
	}
	return filled > 1 && 2*words >= min(filled, 4)
}

// MayLead tells, soon and roughly, whether another table may begin at a row: with its
// header, or with a blank row, a title or a label above that.
func (t *Table) MayLead(row []string) bool {
	filled, first := 0, ""
	for _, c := range row {
		if c = strings.TrimSpace(c); c == "" {
			continue
		}
		if filled++; filled == 1 {
			first = c
		}
		if filled > 2 || strings.HasSuffix(c, ":") {
			return strings.HasSuffix(c, ":") || t.MayHead(row)
		}
	}
	return filled < 2 || t.headWord(first) || strings.ContainsAny(first, ":0123456789")
}

// headWord tells whether a cell's first word is one of any spelling's.
func (t *Table) headWord(c string) bool {
	var buf [16]byte
	n := 0
	for n < len(c) && n < len(buf) && (c[n]|0x20 >= 'a' && c[n]|0x20 <= 'z') {
		buf[n] = c[n] | 0x20
		n++
	}
	return t.inHeads[string(buf[:n])]
}

// Begins tells whether the first of rows is the header of a table: headings most of
// which are known, none of them a number or a time, over a row of data.
func (t *Table) Begins(rows [][]string) bool {
	if len(rows) < 2 || !mayBeHeadings(rows[0]) {
		return false
	}
	hs := t.headingsOf(rows[0])
	known, filled := 0, 0
	for _, h := range hs {
		if h.text != "" {
			filled++
		}
		if len(h.candidates) > 0 && !alsoValues[h.name] {
			known++
		}
	}
	if known < 2 || known < 3 && filled > 2 || 2*known <= filled {
		return false
	}
	return slices.ContainsFunc(rows[1:min(len(rows), 5)], func(row []string) bool { return isUnder(row, hs) })
}

// isUnder tells a row of data: several cells under headings, one of them with a digit.
func isUnder(row []string, hs []heading) bool {
	under, digits := 0, 0
	for i, h := range hs {
		if c := cellOf(row, i); c != "" && h.text != "" {
			under++
			if strings.ContainsAny(c, "0123456789") {
				digits++
			}
		}
	}
	return under > 1 && digits > 0
}

// Same tells whether a row gives the header's last row again, cell for cell.
func (l *Layout) Same(row []string) bool {
	head := l.Rows[len(l.Rows)-1]
	for i := range max(len(head), len(row)) {
		if !strings.EqualFold(cellOf(head, i), cellOf(row, i)) {
			return false
		}
	}
	return true
}

// HeaderReach is how many rows below one tell whether another table begins there.
const HeaderReach = maxAbove + 4

// maxAbove is how many rows may stand between a table and the header of the one
// below it.
const maxAbove = 8

// NextHeader looks, from the first of rows on, for the header of another table:
// there, or below blank rows, titles and labels. It reports false where the rows
// are this table's data, or its header again with nothing new above it.
func (l *Layout) NextHeader(t *Table, rows [][]string) (at int, ok bool) {
	titled := false
	for i, row := range rows[:min(len(rows), maxAbove+1)] {
		switch n := cells(row); {
		case n == 0:
		case t.MayHead(row) && t.Begins(rows[i:]):
			return i, titled || !l.Same(row)
		case n == 1 && !startsWithDigit(row), t.isLabel(row), l.isDay(row):
			titled = true
		default:
			return 0, false
		}
	}
	return 0, false
}

func startsWithDigit(row []string) bool {
	for i := range row {
		if c := cellOf(row, i); c != "" {
			return c[0] >= '0' && c[0] <= '9'
		}
	}
	return false
}

// isDay tells a row that begins with a day where this table's columns have none.
func (l *Layout) isDay(row []string) bool {
	for i := range row {
		if c := cellOf(row, i); c != "" {
			date := slices.ContainsFunc(l.Bindings, func(b Binding) bool { return b.Index == i && (b.Column.Parse == "date" || b.Column.Parse == "text") })
			return !date && (statesDay(c) || likeDate(c) == likely)
		}
	}
	return false
}

// isLabel tells a row such as "Date | 3 July 2026" or "Boat: Wren | Skipper: Ansa".
func (t *Table) isLabel(row []string) bool {
	first, filled := "", cells(row)
	for i := range row {
		if first = cellOf(row, i); first != "" {
			break
		}
	}
	label, _, found := strings.Cut(first, ":")
	c := t.find(normalise(label))
	return (found || filled == 2) && len(c) > 0 && mayBeGiven[c[0].Name]
}

// Below recognises the table whose header is row at of rows, below the table of l
// in one sheet. What was given above that one holds for it too, unless its own
// titles give another.
func (t *Table) Below(l Layout, name string, rows [][]string, at int) (Layout, bool) {
	h, ok := t.findHeader(rows[at:min(at+2, len(rows))])
	if !ok || h.first != 0 {
		return Layout{}, false
	}
	h.first, h.last = at, at+h.last
	below, ok := t.layout(h, name, rows)
	if ok {
		below.inherit(l)
		below.Hashed = l.Hashed
		below.above = append(below.above, l.above...)
	}
	return below, ok
}

// inherit takes what stands above the whole sheet. The day and trip above hold on
// for a table of another kind; with a day or trip of its own, or of a kind that
// these had already, it is another trip's.
func (l *Layout) inherit(above Layout) {
	outing := l.binds("date", "trip") || l.gives("date") || l.gives("trip") || above.Kind == l.Kind || slices.Contains(above.kinds, l.Kind)
	if !outing {
		l.kinds = append(slices.Clone(above.kinds), above.Kind)
	}
	for _, g := range above.Given {
		own := g.Column.Name == "date" || g.Column.Name == "trip"
		if g.Section || own && outing || !g.Column.In(l.Kind) || l.binds(g.Column.Name) || l.gives(g.Column.Name) {
			continue
		}
		l.Given = append(l.Given, g)
	}
}

// cut is the rows of the table whose header is above them: up to the next table's.
func (t *Table) cut(l *Layout, rows [][]string) [][]string {
	for i := 1; i < len(rows); i++ {
		if _, ok := l.NextHeader(t, rows[i:]); ok {
			return rows[:i]
		}
	}
	return rows
}

// sectionWords are titles that say what became of all fish below them.
var sectionWords = map[string]string{
	"tag release": "released", "tag and release": "released", "tagged": "released", "tagged and released": "released", "tagged released": "released",
	"released": "released", "releases": "released", "catch and release": "released", "released fish": "released", "tagged fish": "released",
}

// section takes a title such as "Tag & release" for the fate of each row's fish.
func (t *Table) section(l *Layout, above [][]string) {
	if l.binds("outcome", "kept") || len(above) == 0 {
		return
	}
	for _, row := range slices.Backward(above) {
		if cells(row) == 0 {
			continue
		}
		if cells(row) > 1 {
			return
		}
		text := strings.TrimSpace(strings.Join(row, ""))
		fate := sectionWords[normalise(text)]
		i := slices.IndexFunc(t.Columns, func(c *Column) bool { return c.Name == "kept" && c.Parse == "kept" })
		if fate != "" && i >= 0 && t.Columns[i].In(l.Kind) {
			l.Given = append(l.Given, Given{Heading: text, Column: t.Columns[i], Text: fate, Section: true})
			l.Notes = append(l.Notes, text+" stands above the table, and was taken for each of its fish")
		}
		return
	}
}

// Dated settles in which year the table's dates without one are: what the sheet's
// name, the rows above the table and the file's name state together. Where they
// state none or contradict each other, such dates stay open.
func (l *Layout) Dated(file string) {
	if !l.yearless {
		return
	}
	years, ok := l.Years, true
	for _, text := range append([]string{l.name, file}, l.above...) {
		if years, ok = years.And(unit.YearsIn(text)); !ok {
			return
		}
	}
	if l.Years = years; years.From == 0 {
		return
	}
	season := number(float64(years.From))
	if years.To > years.From {
		season += " to " + number(float64(years.To))
	}
	l.Notes = append(l.Notes, "dates without a year are in "+season+", as the sheet's or file's name or the title says")
}
