package layout

import (
	"regexp"
	"strings"
	"unicode"
)

// fewLoose is in how many rows of a text file cells must go on behind the last heading for them to be
// what its text was parted into.
const fewLoose = 2

var (
	explaining   = regexp.MustCompile(`\S\s*=\s*\pL`)
	inBrackets   = regexp.MustCompile(`\([^)]*\)`)
	codeWritten  = regexp.MustCompile(`(?:^|[\s/,;:(])[\pL\d]{1,3}\s*=`) // its number is no figure: 1=missed
	decimalPoint = regexp.MustCompile(`\d\.\d`)
)

// comment begins a line of a text file that is no row.
var comment = regexp.MustCompile(`^\s*(?:#+|//+|;+)\s+\pL`)

// joinComments puts the comments at the top of a text file back into one text each, which its separators parted:
// "# k kept, r released". One line alone may be a heading: "# trip".
func (g *Grid) joinComments() {
	n := 0
	for n < len(g.Rows) && comment.MatchString(g.Rows[n].at(0).Text) {
		n++
	}
	if g.Info.Workbook || n < fewLoose || n == len(g.Rows) {
		return
	}
	for i := range n {
		g.Rows[i].Cells = []Cell{{Text: joined(g.Rows[i]), Look: Text}}
	}
}

// explains tells a line of a text file that says what words of the log mean, whose commas made cells of
// it: "kg = port scale, abt = by eye", "k kept / r released / m missed, no hookup".
func (g *Grid) explains(r int) bool {
	if g.Info.Workbook {
		return false
	}
	said := 0
	for _, i := range g.Rows[r].filled(0, g.Width) {
		c := g.Rows[r].Cells[i]
		if c.Look != Text || digits(codeWritten.ReplaceAllString(c.Text, "")) > 0 {
			return false
		}
		text := inBrackets.ReplaceAllString(c.Text, "") // "Kept (y = yes)" is a heading
		if n := strings.Count(text, " / "); n > 1 {
			said += n
		}
		said += len(explaining.FindAllString(text, -1))
	}
	return said >= 2
}

// explained are the rows right under a heading that explain words, with lines of one text among them, and those at the
// foot of its table.
func (g *Grid) explained(h head, end int) map[int]bool {
	out, some := map[int]bool{}, false
	for r := h.last + 1; r < end && g.Rows[r].Num == g.Rows[r-1].Num+1; r++ {
		alone := len(g.Rows[r].filled(0, g.Width)) == 1 && g.Rows[r].at(0).Look == Text
		explains := g.explains(r)
		if !explains && !alone {
			break
		}
		out[r], some = true, some || explains
	}
	if !some {
		clear(out)
	}
	for r := end - 1; r > h.last && g.explains(r); r-- {
		out[r] = true // at the table's foot
	}
	return out
}

// joinLoose puts the cells behind the last heading back into the text that the separators of a text file
// parted: "wahoo kept,mahi lost" under the last of five headings.
func (b *Block) joinLoose() {
	sep := b.Grid.Info.Separator
	if b.Grid.Info.Workbook || sep == "" || sep == " " || b.Open {
		return
	}
	n := len(b.Labels)
	for n > 0 && b.Labels[n-1].Text == "" && b.Labels[n-1].Group == "" {
		n--
	}
	if n == 0 || n == len(b.Labels) {
		return
	}
	last := b.Labels[n-1].Col
	point, ok := b.looseTail(last)
	if !ok {
		return
	}
	b.Labels = b.Labels[:n]
	for k := range b.Rows {
		row := &b.Rows[k]
		if len(row.filled(last+1, len(row.Cells))) == 0 {
			continue
		}
		tail := Row{Cells: row.Cells[last:]}
		text := joined(tail)
		if sep != "," || point { // a comma is none of a figure's
			var parts []string
			for _, i := range tail.filled(0, len(tail.Cells)) {
				parts = append(parts, strings.TrimSpace(tail.Cells[i].Text))
			}
			mark := ", "
			if sep != "," {
				mark = "; "
			}
			text = strings.Join(parts, mark)
		}
		row.Cells = append(append([]Cell{}, row.Cells[:last]...), Cell{Text: text, Look: Text})
	}
}

// looseTail reports whether the cells behind the last heading go on with its text, in some rows and
// without gaps, and whether figures of the table have a decimal point.
func (b *Block) looseTail(last int) (point, ok bool) {
	rows, texts, cells := 0, 0, 0
	own, worded := 0, 0 // cells under the last heading, and those with words
	for _, row := range b.Rows {
		if c := row.at(last); c.Look != Blank {
			own++
			if lettered(c.Text) {
				worded++
			}
		}
		behind := row.filled(last+1, len(row.Cells))
		for k, i := range behind {
			if i != last+1+k || row.at(last).Look == Blank {
				return false, false // a column of its own, with gaps
			}
			cells++
			if lettered(row.Cells[i].Text) {
				texts++
			}
		}
		rows += min(1, len(behind))
		for _, c := range row.Cells {
			point = point || decimalPoint.MatchString(c.Text)
		}
	}
	return point, rows >= fewLoose && 10*texts >= 8*cells && 10*worded >= 8*own
}

// isSentence tells a line of a text file whose cells are what commas parted of a sentence, with a space
// behind each: "the season's log, kept by the mate, typed at night". They are no pairs.
func (g *Grid) isSentence(row *Row, cells []int) bool {
	if g.Info.Workbook || g.Info.Separator != "," || len(cells)%2 == 0 || len(cells) < 3 {
		return false
	}
	for k, i := range cells {
		if c := row.Cells[i]; k > 0 && !c.Spaced || c.Look != Text || strings.Contains(c.Text, ":") {
			return false
		}
	}
	return true
}

func lettered(text string) bool { return strings.IndexFunc(text, unicode.IsLetter) >= 0 }
