package sheet

import (
	"bufio"
	"errors"
	"fmt"
	"io"
	"strings"
	"unicode/utf8"
)

// alignment is a text table whose columns are made of spaces: its headings stand in
// line head, and each column but the first begins at one of the cuts, characters
// from the line's start. Above a cut two characters at least are blank in every line.
type alignment struct {
	head int // from 1
	cuts []int
}

// minAligned is how many rows below the headings tell columns of spaces: two may
// stand in line by chance.
const minAligned = 3

// alignedColumns looks for a table of aligned columns in the lines of a text that no
// separator divides: three or more headings, and the same gutters of two blanks or more
// in each line below, one before each heading. It is found only where nothing else is
// possible.
func alignedColumns(sample []byte, sep byte) (alignment, bool) {
	lines := strings.Split(strings.ReplaceAll(strings.TrimRight(string(sample), "\r\n"), "\r\n", "\n"), "\n")
	if len(sample) >= sampleSize {
		lines = lines[:len(lines)-1] // the last may be cut off
	}
	filled := 0
	for _, l := range lines[:min(len(lines), sniffLines)] {
		if strings.TrimSpace(l) != "" {
			filled++
		}
	}
	if most, _ := agreeing(sample, sep); strings.IndexByte(string(sample), '\t') >= 0 || 2*most >= filled {
		return alignment{}, false
	}
	for i := range min(len(lines), 20) {
		headings := apart(lines[i])
		if len(headings) < 3 || strings.ContainsAny(lines[i], "0123456789") {
			continue
		}
		if cuts, ok := gutters(lines[i:], len(headings)); ok {
			return alignment{i + 1, cuts}, true
		}
	}
	return alignment{}, false
}

// apart are the parts of a line that two spaces or more stand between.
func apart(line string) []string {
	var parts []string
	for _, p := range strings.Split(line, "  ") {
		if p = strings.TrimSpace(p); p != "" {
			parts = append(parts, p)
		}
	}
	return parts
}

// gutters are the ends of the runs of two blanks or more that all lines share, one
// before each heading but the first; a remark without two blanks in it is no such
// line. It reports false where they part the headings into other than n.
func gutters(lines []string, n int) (cuts []int, ok bool) {
	var used []int // by character: how many lines have text there
	rows := -1     // without the headings
	for _, l := range lines {
		if len(apart(l)) < 2 {
			continue // blank, or a remark between the rows
		}
		rows++
		at := 0
		for _, c := range l {
			if at == len(used) {
				used = append(used, 0)
			}
			if c != ' ' && c != '\r' {
				used[at]++
			}
			at++
		}
	}
	if rows < minAligned {
		return nil, false
	}
	headings := []rune(lines[0])
	blanks, text := 0, false
	for i, u := range used {
		switch {
		case u == 0:
			blanks++
			continue
		case text && blanks > 1 && i <= len(headings):
			cuts = append(cuts, i)
		case text && blanks > 1 && u >= minAligned:
			return nil, false // a column that no heading names
		}
		blanks, text = 0, true
	}
	a := alignment{cuts: cuts}
	for _, cell := range a.cells(lines[0]) {
		if cell == "" || len(apart(cell)) != 1 {
			return nil, false
		}
	}
	return cuts, len(cuts) == n-1
}

// cells parts a line at the cuts.
func (a alignment) cells(line string) []string {
	text := []rune(line)
	cells := make([]string, 0, len(a.cuts)+1)
	from := 0
	for _, to := range append(a.cuts[:len(a.cuts):len(a.cuts)], len(text)) {
		to = max(from, min(to, len(text)))
		cells = append(cells, strings.TrimSpace(string(text[from:to])))
		from = to
	}
	return cells
}

// fits tells a line with a blank before each cut.
func (a alignment) fits(line string) bool {
	text := []rune(line)
	for _, cut := range a.cuts {
		if cut-1 < len(text) && text[cut-1] != ' ' {
			return false
		}
	}
	return true
}

// alignedRows reads a text whose columns are made of spaces.
type alignedRows struct {
	book  *textBook
	lines *bufio.Scanner
	num   int
	blank int // blank lines before the row that is ahead, to be given first
	ahead Row
	row   Row
	err   error
}

func (b *textBook) alignedRows(src io.Reader) *alignedRows {
	lines := bufio.NewScanner(src)
	lines.Buffer(make([]byte, 0, readSize), maxRecord)
	return &alignedRows{book: b, lines: lines}
}

func (r *alignedRows) Row() *Row    { return &r.row }
func (r *alignedRows) Err() error   { return r.err }
func (r *alignedRows) Close() error { return nil }

// Next delivers the blank lines before a row, and then the row.
func (r *alignedRows) Next() bool {
	if r.blank == 0 && r.ahead.Num == 0 && !r.read() {
		return false
	}
	if r.blank > 0 {
		r.row = Row{Num: r.ahead.Num - r.blank}
		r.blank--
		return true
	}
	r.row, r.ahead = r.ahead, Row{}
	return true
}

func (r *alignedRows) read() bool {
	for r.lines.Scan() {
		r.num++
		line := strings.TrimRight(r.lines.Text(), "\r ")
		if line == "" {
			r.blank++
			continue
		}
		r.ahead = r.split(line)
		return true
	}
	if err := r.lines.Err(); err != nil && !errors.Is(err, io.EOF) {
		r.err = fmt.Errorf("read %s after line %d: %w", r.book.name, r.num, err)
	}
	r.blank = 0
	return false
}

// split makes a row of a line: a title above the headings has its own parts, and a
// remark below is one cell.
func (r *alignedRows) split(line string) Row {
	a := r.book.aligned
	switch t := (&textRows{book: r.book}); {
	case !utf8.ValidString(line) || strings.IndexByte(line, 0) >= 0:
		return t.spoiled(r.num, 0, line, "the text is damaged there")
	case r.num < a.head:
		return Row{Num: r.num, Cells: apart(line)}
	case !a.fits(line) && len(apart(line)) == 1:
		return Row{Num: r.num, Cells: apart(line)}
	case !a.fits(line):
		return t.spoiled(r.num, 0, line, fmt.Sprintf("its columns do not stand under the headings of line %d", a.head))
	}
	return Row{Num: r.num, Cells: a.cells(line)}
}
