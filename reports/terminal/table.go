package terminal

import (
	"io"
	"reflect"
	"strings"

	"github.com/rivo/uniseg"
)

// View is how rows are shown.
type View struct {
	Columns []string // as Column says; nil for every field
	Once    string   // a column that is left out where it says the same in every row
	Width   int      // in which the table is to fit, by wrapping texts; 0 for one line a row
	US      bool     // pounds, inches and yards
	// Text puts a text of a row into words: its column, the text, and the other texts of the
	// row by column. May be nil.
	Text func(column, text string, row func(column string) string) string
	// Clean makes a cell safe to show; Paint colours what is shown of one, by its column.
	// Neither changes how wide it is. May be nil.
	Clean func(string) string
	Paint func(column, cell string) string
}

// between is the room between columns.
const between = 2

// table is cells on their way to a terminal.
type table struct {
	columns []Column
	heads   []string
	cells   [][]string
	numeric []bool
	breaks  []bool
	paint   func(column, cell string) string
}

// Write writes rows, a slice of structs whose json tags are the columns, under their
// headings. A column that is empty in every row is left out, where Columns has others and
// the table is to fit a width.
func Write(w io.Writer, rows any, v View) error {
	t := build(reflect.ValueOf(rows), v)
	_, err := io.WriteString(w, t.text(t.widths(v.Width)))
	return err
}

func build(rows reflect.Value, v View) table {
	t := table{paint: v.Paint}
	of := rows.Type().Elem()
	specs := v.Columns
	if specs == nil {
		specs = Names(rows.Interface())
	}
	clean := func(s string) string {
		s = strings.Join(strings.Fields(s), " ")
		if v.Clean != nil {
			s = v.Clean(s)
		}
		return s
	}
	t.cells = make([][]string, rows.Len())
	for _, spec := range specs {
		c := parse(spec)
		column := make([]string, rows.Len())
		empty, same := true, rows.Len() > 1
		for i := range column {
			column[i] = clean(c.cell(rows.Index(i), v))
			empty, same = empty && column[i] == "", same && column[i] == column[0]
		}
		if v.Width > 0 && len(specs) > 1 && rows.Len() > 0 && (empty || same && spec == v.Once) {
			continue
		}
		for i, cell := range column {
			t.cells[i] = append(t.cells[i], cell)
		}
		t.columns, t.heads = append(t.columns, c), append(t.heads, clean(c.head(v.US)))
		t.numeric, t.breaks = append(t.numeric, c.numeric(of)), append(t.breaks, c.breakable(of))
	}
	return t
}

// widths are those of the columns: as wide as they like, or in all no wider than limit,
// first by headings of several lines, then by texts of several. What cannot be broken
// stays, so that a table may be wider still.
func (t *table) widths(limit int) []int {
	w, soft, hard := make([]int, len(t.heads)), make([]int, len(t.heads)), make([]int, len(t.heads))
	headed := make([]int, len(t.heads))
	for i, h := range t.heads {
		widest, word := 0, 0
		for _, row := range t.cells {
			widest, word = max(widest, wide(row[i])), max(word, longestWord(row[i]))
		}
		w[i] = max(widest, wide(h))
		headed[i] = max(widest, longestWord(h))
		soft[i], hard[i] = headed[i], headed[i]
		if t.breaks[i] {
			soft[i] = max(min(widest, max(word, 14)), longestWord(h))
			hard[i] = max(min(widest, max(8, min(word, 14))), longestWord(h))
		}
	}
	if limit > 0 {
		for _, floor := range [][]int{headed, soft, hard} {
			shrink(w, floor, limit)
		}
	}
	return w
}

// shrink takes room from the widest columns that have some to give.
func shrink(w, floor []int, limit int) {
	total := between * (len(w) - 1)
	for _, x := range w {
		total += x
	}
	for ; total > limit; total-- {
		widest := -1
		for i := range w {
			if w[i] > floor[i] && (widest < 0 || w[i] > w[widest]) {
				widest = i
			}
		}
		if widest < 0 {
			return
		}
		w[widest]--
	}
}

func (t *table) text(widths []int) string {
	var b strings.Builder
	t.row(&b, t.heads, widths, true)
	tall := false
	for _, row := range t.cells {
		for i, cell := range row {
			tall = tall || len(wrap(cell, widths[i])) > 2
		}
	}
	for _, row := range t.cells {
		if tall {
			b.WriteByte('\n')
		}
		t.row(&b, row, widths, false)
	}
	return b.String()
}

// row writes the lines of a row; those of the headings stand at the bottom.
func (t *table) row(b *strings.Builder, cells []string, widths []int, heading bool) {
	lines := make([][]string, len(cells))
	most := 1
	for i, cell := range cells {
		lines[i] = wrap(cell, widths[i])
		most = max(most, len(lines[i]))
	}
	for n := range most {
		line, room := "", 0
		for i := range cells {
			at := n
			if heading {
				at = n - most + len(lines[i])
			}
			text := ""
			if at >= 0 && at < len(lines[i]) {
				text = lines[i][at]
			}
			pad := strings.Repeat(" ", max(widths[i]-wide(text), 0))
			shown := text
			if t.paint != nil && !heading && text != "" {
				shown = t.paint(t.columns[i].names[0], text)
			}
			if text != "" {
				if t.numeric[i] {
					shown, pad = pad+shown, ""
				}
				line += strings.Repeat(" ", room) + shown
				room = 0
			}
			room += len(pad) + between
		}
		b.WriteString(line + "\n")
	}
}

func wide(s string) int { return uniseg.StringWidth(s) }

func longestWord(s string) int {
	most := 0
	for _, w := range strings.Fields(s) {
		most = max(most, wide(w))
	}
	return most
}

// wrap breaks a text between words, and a word that is wider than the lines within.
func wrap(s string, width int) []string {
	if wide(s) <= width {
		return []string{s}
	}
	var lines []string
	line := ""
	for _, word := range strings.Fields(s) {
		for wide(word) > width {
			if line != "" {
				lines, line = append(lines, line), ""
			}
			head := cut(word, width)
			lines, word = append(lines, head), word[len(head):]
		}
		switch {
		case line == "":
			line = word
		case wide(line)+1+wide(word) <= width:
			line += " " + word
		default:
			lines, line = append(lines, line), word
		}
	}
	if line != "" {
		lines = append(lines, line)
	}
	return lines
}

// cut is the beginning of a word that fits in width, of one character at least.
func cut(word string, width int) string {
	room, end := 0, 0
	g := uniseg.NewGraphemes(word)
	for g.Next() {
		room += g.Width()
		_, to := g.Positions()
		if end > 0 && room > width {
			break
		}
		end = to
	}
	return word[:end]
}
