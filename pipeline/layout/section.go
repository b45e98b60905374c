package layout

import (
	"regexp"
	"slices"
	"strconv"
	"strings"
)

// sectionHead is a line among the rows of a table that says with a number which of them follow: "Cruise 3:
// out to the islands".
var sectionHead = regexp.MustCompile(
	`(?i)^(\pL[\pL .]{1,22}?)\s*(?:no\.?|nr\.?|n[°º]|#)?\s*(\d{1,3})\b\s*(?:[:.,;–—-]\s*\S.*)?$`)

// fewSections of one name, whose numbers rise, part a table.
const fewSections = 2

// sections takes the lines that part a table's rows by number for what they are: each row gets the number
// under which it stands, in a column headed by their word.
func (b *Block) sections() {
	if b.Open || len(b.Labels) == 0 || !b.ofDays() {
		return
	}
	word, number := "", map[int]string{}
	last := 0
	for i, row := range b.Rows {
		m := b.sectionOf(row)
		if m == nil {
			continue
		}
		n, _ := strconv.Atoi(m[2])
		own := strings.ToLower(strings.TrimSpace(m[1]))
		if word != "" && (own != word || n <= last) {
			return // they number something else
		}
		word, last, number[i] = own, n, m[2]
	}
	if len(number) < fewSections || number[0] == "" {
		return
	}
	col := b.Grid.Width
	b.Labels = append(b.Labels, Label{Col: col, Text: word})
	var rows []Row
	now := ""
	for i, row := range b.Rows {
		if n := number[i]; n != "" {
			now = n
			b.Beside = append(b.Beside, Note{row.Num, b.Labels[0].Col + 1, row.at(b.Labels[0].Col).Text})
			continue
		}
		cells := make([]Cell, col+1)
		copy(cells, row.Cells)
		cells[col] = Cell{Text: now, Look: Number}
		row.Cells = cells
		rows = append(rows, row)
	}
	b.Rows = rows
}

// numberHead is a cell that numbers what the rows from there are of: "outing 3".
var numberHead = regexp.MustCompile(`(?i)^(\pL{3,12})\s*(?:no\.?|nr\.?|n[°º]|#)?\s*(\d{1,3})$`)

// fewNumbered is how many cells of a column must number outings for all of them to do so.
const fewNumbered = 3

// numbered takes the cells for what they are that number outings in a column of other words: "outing 3" among what
// happened, beside no more than a day and a remark. The rows get the number that stands above them, in a column of
// its own. The first row must have one, and each that of the next outing.
func (b *Block) numbered(like Likeness) {
	if b.Open {
		return
	}
	for _, l := range b.Labels {
		word, at, last, others := "", map[int]string{}, 0, 0
		for i, row := range b.Rows {
			var m []string
			if text := row.at(l.Col).Text; strings.TrimRight(text, "0123456789") != text {
				m = numberHead.FindStringSubmatch(text)
			}
			if m == nil || !like.Key(strings.ToLower(m[1])) {
				if row.at(l.Col).Look == Text {
					others++
				}
				continue
			}
			n, _ := strconv.Atoi(m[2])
			own := strings.ToLower(m[1])
			if len(row.filled(0, len(row.Cells))) > 3 || word != "" && (own != word || n != last+1) {
				at = nil
				break
			}
			word, last, at[i] = own, n, m[2]
		}
		named := slices.ContainsFunc(b.Labels, func(o Label) bool { return strings.EqualFold(o.Text, word) })
		if len(at) < fewNumbered || at[0] == "" || others <= len(at) || named {
			continue
		}
		b.number(l.Col, word, at)
		return
	}
}

// number gives the rows of a block the numbers that stand above them, by row, in place of these.
func (b *Block) number(col int, word string, at map[int]string) {
	own := 0
	for _, l := range b.Labels {
		own = max(own, l.Col+1)
	}
	own = max(own, b.Grid.Width)
	b.Labels = append(b.Labels, Label{Col: own, Text: word})
	now := ""
	for i, row := range b.Rows {
		cells := make([]Cell, own+1)
		copy(cells, row.Cells)
		if n := at[i]; n != "" {
			now = n
			b.Beside = append(b.Beside, Note{row.Num, col + 1, row.at(col).Text})
			cells[col] = Cell{}
		}
		cells[own] = Cell{Text: now, Look: Number}
		b.Rows[i].Cells = cells
	}
}

// sectionOf takes a row for such a line: one text in the first column, whose other cells are none.
func (b *Block) sectionOf(row Row) []string {
	first := b.Labels[0].Col
	if filled := row.filled(0, len(row.Cells)); len(filled) != 1 || filled[0] != first || row.at(first).Look != Text {
		return nil
	}
	return sectionHead.FindStringSubmatch(row.at(first).Text)
}

// ofDays tells a table whose first column holds days or numbers, but for the lines that may part it.
func (b *Block) ofDays() bool {
	texts, others := 0, 0
	for _, row := range b.Rows {
		switch c := row.at(b.Labels[0].Col); {
		case c.Look == Blank || b.sectionOf(row) != nil:
		case c.Look == Text:
			texts++
		default:
			others++
		}
	}
	return others > 4*texts
}
