package sheet

import (
	"archive/zip"
	"bytes"
	"cmp"
	"encoding/xml"
	"errors"
	"fmt"
	"io"
	"maps"
	"os"
	"path"
	"slices"
	"strconv"
	"strings"
	"unicode/utf8"
)

// docxPart is the usual main part of a text document (ECMA-376 part 1, 11.3.10).
const docxPart = "word/document.xml"

// docxMain is the part that holds a text document's words, nil where the archive is none.
func docxMain(z *zip.Reader) *zip.File {
	if f := part(z, docxPart); f != nil {
		return f
	}
	var rels relations
	if part(z, "_rels/.rels") == nil || decodePart(z, "_rels/.rels", &rels) != nil {
		return nil
	}
	for _, r := range rels.List {
		if path.Base(r.Type) == "officeDocument" && strings.HasPrefix(path.Base(r.Target), "document") {
			return part(z, resolve(r.Target, "."))
		}
	}
	return nil
}

// openDocx reads a text document as a book of one sheet. One without tables is read as a text file of its lines;
// else there is a row for each line, and for each row of its tables.
func openDocx(f *os.File, name string, main *zip.File) (Book, error) {
	b := &gridBook{file: f, name: name}
	left := maxGridCells
	x := docxReader{grid: &grid{left: &left}, open: map[int]area{}}
	r, err := main.Open()
	if err == nil {
		x.d = xml.NewDecoder(r)
		err = errors.Join(x.run(), r.Close())
	}
	if err == nil && x.tables == 0 {
		return openWords(f, name, x.words.Bytes())
	}
	if err == nil {
		err = x.grid.finish()
	}
	if err != nil {
		return b, damaged(name, fmt.Errorf("its part %s: %w", main.Name, err))
	}
	b.sheets = []gridSheet{{info: Info{Encoding: "UTF-8"}, grid: x.grid}}
	return b, b.finish(nil)
}

// openWords reads the lines of a text document as those of a text file.
func openWords(f *os.File, name string, words []byte) (Book, error) {
	b := &textBook{file: f, name: name, words: bytes.NewReader(words), form: textForm{name: "UTF-8"}}
	if len(bytes.TrimSpace(words)) == 0 {
		return b, &Refusal{name, "is empty", errEmpty}
	}
	b.chooseSeparator(words[:min(len(words), sampleSize)])
	b.describe()
	return b, nil
}

// docxReader reads the main part tag by tag (ECMA-376 part 1, 17.2 to 17.4). The words of a table within a cell
// are the cell's.
type docxReader struct {
	d      *xml.Decoder
	grid   *grid
	words  bytes.Buffer // the lines outside of tables
	row    int          // from 1
	depth  int          // how many tables the tag stands in
	tables int          // how many there were outside of others
	body   bool         // the document has one
	text   docxText
	col    int          // the last column of the row so far
	span   int          // how many columns the cell in hand takes
	merges string       // how the cell in hand is merged with the one above: restart, continue
	open   map[int]area // cells that may go on in the row below, by column
}

func (x *docxReader) run() error {
	for {
		tok, err := x.d.Token()
		if errors.Is(err, io.EOF) {
			if !x.body {
				return errors.New("it has no text")
			}
			return nil
		}
		if err != nil {
			return err
		}
		switch t := tok.(type) {
		case xml.StartElement:
			err = x.start(t)
		case xml.EndElement:
			err = x.end(t.Name.Local)
		case xml.CharData:
			x.text.characters(t)
		}
		if err != nil {
			return err
		}
	}
}

// start takes a tag. What was taken out of the text, and what is no text, is passed over: drawings, the
// instructions of fields, and a paragraph's settings, but for what a cell is merged with.
func (x *docxReader) start(t xml.StartElement) error {
	switch t.Name.Local {
	case "body":
		x.body = true
	case "tbl":
		if x.depth++; x.depth == 1 {
			x.tables++
		}
	case "tr":
		if x.depth == 1 {
			x.row, x.col = x.row+1, 0
		}
	case "tc":
		if x.depth == 1 {
			x.text, x.span, x.merges = docxText{}, 1, ""
		}
	case "gridSpan":
		if n, err := strconv.Atoi(attrOf(t, "val")); err == nil && n > 1 && x.depth == 1 {
			x.span = min(n, maxCol)
		}
	case "vMerge":
		if x.depth == 1 {
			x.merges = cmp.Or(attrOf(t, "val"), "continue")
		}
	case "p":
		x.text.paragraph(x.depth > 0)
	case "t":
		x.text.open = true
	case "tab", "ptab":
		x.text.add("\t")
	case "br", "cr":
		x.text.add("\n")
	case "noBreakHyphen":
		x.text.add("-")
	case "del", "moveFrom", "drawing", "pict", "object", "instrText", "delText", "pPr", "rPr", "tblPr", "trPr",
		"sectPr", "Fallback":
		return x.d.Skip()
	}
	return nil
}

func (x *docxReader) end(name string) error {
	switch name {
	case "tbl":
		if x.depth--; x.depth == 0 {
			return x.ended()
		}
	case "t":
		x.text.open = false
	case "p":
		if x.depth == 0 {
			return x.lines()
		}
	case "tc":
		if x.depth == 1 && x.row > 0 {
			err := x.cell()
			x.text = docxText{}
			return err
		}
	case "tr":
		if x.depth == 1 && x.row > 0 && x.grid.lastRow() == x.row {
			x.grid.rows[len(x.grid.rows)-1].table = x.tables
		}
	}
	return nil
}

// lines stores a paragraph outside of tables, a row for each of its lines; tabs part cells.
func (x *docxReader) lines() error {
	for _, line := range strings.Split(x.text.String(), "\n") {
		x.row++
		x.words.WriteString(strings.TrimLeft(line, "\t") + "\n")
		for i, cell := range strings.Split(strings.TrimSpace(line), "\t") {
			if err := x.grid.put(x.row, i+1, 1, gridCell{text: strings.TrimSpace(cell)}); err != nil {
				return err
			}
		}
	}
	x.text = docxText{}
	return nil
}

// cell stores a cell of a table; one that goes on with the cell above it is blank, and merged with it.
func (x *docxReader) cell() error {
	a := area{x.row, x.col + 1, x.row, x.col + x.span}
	x.col = min(x.col+x.span, maxCol)
	above, merged := x.open[a.left]
	if merged && x.merges == "continue" && above.right == a.right && above.bottom == x.row-1 {
		above.bottom = x.row
		x.open[a.left] = above
		return nil
	}
	err := x.grid.put(x.row, a.left, 1, gridCell{text: strings.TrimSpace(x.text.String())})
	if err == nil && merged {
		err = x.merge(above)
	}
	if delete(x.open, a.left); x.merges != "" {
		x.open[a.left] = a
		return err
	}
	return errors.Join(err, x.merge(a))
}

// merge stores a merged area, unless it is one cell.
func (x *docxReader) merge(a area) error {
	if a.bottom == a.top && a.right == a.left {
		return nil
	}
	return x.grid.merge(a)
}

// ended closes the areas that reach to the last row of a table.
func (x *docxReader) ended() (err error) {
	for _, col := range slices.Sorted(maps.Keys(x.open)) {
		err = errors.Join(err, x.merge(x.open[col]))
	}
	clear(x.open)
	return err
}

// docxText makes a text of the runs of paragraphs.
type docxText struct {
	strings.Builder
	open bool // within a run's text
	any  bool // after a paragraph's beginning
}

// paragraph begins one; within a cell it is a line of its own.
func (x *docxText) paragraph(inCell bool) {
	if inCell && x.any {
		x.add("\n")
	}
	x.any = true
}

// add writes no more than shows that a cell is too long.
func (x *docxText) add(s string) {
	if x.Len() <= utf8.UTFMax*maxCell {
		x.WriteString(s)
	}
}

func (x *docxText) characters(b []byte) {
	if x.open {
		x.add(string(b))
	}
}
