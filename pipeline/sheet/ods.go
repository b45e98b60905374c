package sheet

import (
	"archive/zip"
	"encoding/xml"
	"errors"
	"fmt"
	"io"
	"os"
	"strconv"
	"strings"
)

const (
	odsContent  = "content.xml"
	odsManifest = "META-INF/manifest.xml"
)

// openDocument tells an archive that says of itself that it is an OpenDocument,
// and whether that is a sheet (OpenDocument 1.3 part 2, 3.3 and 4.8).
func openDocument(z *zip.Reader) (is, sheet bool) {
	for _, name := range []string{"mimetype", odsManifest} {
		if f := part(z, name); f != nil {
			b, err := readPart(f)
			const media = "application/vnd.oasis.opendocument"
			if err == nil && strings.Contains(string(b), media) {
				return true, strings.Contains(string(b), media+".spreadsheet")
			}
		}
	}
	return false, false
}

func isODS(z *zip.Reader) bool {
	_, sheet := openDocument(z)
	return sheet
}

func openODS(f *os.File, name string, z *zip.Reader, opt Options) (Book, error) {
	b := &gridBook{file: f, name: name}
	if m := part(z, odsManifest); m != nil {
		text, err := readPart(m)
		if err != nil {
			return b, damaged(name, fmt.Errorf("its part %s: %w", odsManifest, err))
		}
		if strings.Contains(string(text), "encryption-data") {
			return b, &Refusal{name, isProtected, nil}
		}
	}
	o := odsReader{details: opt.Details, left: maxGridCells,
		styles: odsStyles{cells: map[string]odsCellStyle{}, formats: map[string]Class{}}}
	var err error
	for _, part := range []string{"styles.xml", odsContent} {
		err = errors.Join(err, o.readPart(z, part))
	}
	b.sheets = o.sheets
	return b, b.finish(err)
}

// odsReader reads the parts of an OpenDocument sheet, tag by tag.
type odsReader struct {
	d        *xml.Decoder
	details  bool
	left     int
	styles   odsStyles
	date1904 bool
	sheets   []gridSheet

	// Of the sheet in hand:
	grid    *grid
	err     error    // its first fault; what follows of it is passed over
	columns []string // the styles of cells that name none
	row     int      // from 1
	times   int      // how many rows the row in hand stands for, 0 between rows
	style   string   // of the cells of the row that name none
	col     int      // the last column so far
}

func (o *odsReader) readPart(z *zip.Reader, name string) (err error) {
	f := part(z, name)
	if f == nil {
		if name == odsContent {
			return fmt.Errorf("its part %s is missing", name)
		}
		return nil
	}
	r, err := f.Open()
	if err == nil {
		o.d = xml.NewDecoder(r)
		err = errors.Join(o.run(), r.Close())
	}
	if err != nil {
		return fmt.Errorf("its part %s: %w", name, err)
	}
	return nil
}

// run reads the tags that hold styles, sheets and rows, and passes over others,
// such as drawings and the changes that were recorded.
func (o *odsReader) run() error {
	for {
		tok, err := o.d.Token()
		if errors.Is(err, io.EOF) {
			return nil
		}
		if err != nil {
			return err
		}
		switch t := tok.(type) {
		case xml.StartElement:
			err = o.start(t)
		case xml.EndElement:
			o.end(t.Name.Local)
		}
		if err != nil {
			return err
		}
	}
}

func (o *odsReader) start(t xml.StartElement) error {
	switch t.Name.Local {
	case "document-content", "document-styles", "body", "spreadsheet", "calculation-settings", "table-header-rows",
		"table-rows", "table-row-group", "table-columns", "table-column-group", "table-header-columns":
		return nil // what they hold is looked at
	case "styles", "automatic-styles":
		return o.styles.read(o.d, &t)
	case "null-date":
		o.date1904 = attrOf(t, "date-value") == "1904-01-01"
	case "table":
		if o.grid == nil && attrOf(t, "style-name") != "ta_extref" {
			// what another file held when it was last looked at
			o.startSheet(t)
			return nil
		}
	case "table-column":
		for range min(o.count(t, "number-columns-repeated"), maxCol-len(o.columns)) {
			o.columns = append(o.columns, attrOf(t, "default-cell-style-name"))
		}
	case "table-row":
		o.row, o.times, o.col = o.row+1, o.count(t, "number-rows-repeated"), 0
		o.style = attrOf(t, "default-cell-style-name")
		return nil
	case "table-cell", "covered-table-cell":
		if o.grid != nil && o.times > 0 {
			return o.cell(t)
		}
	}
	return o.d.Skip()
}

func (o *odsReader) end(name string) {
	if o.grid == nil {
		return
	}
	switch name {
	case "table-row":
		o.fail(o.grid.repeat(o.row, o.times))
		o.row, o.times = o.row+max(0, o.times-1), 0
	case "table":
		o.fail(o.grid.finish())
		s := &o.sheets[len(o.sheets)-1]
		s.grid, s.err, o.grid = o.grid, o.err, nil
	}
}

func (o *odsReader) startSheet(t xml.StartElement) {
	hidden := o.styles.cells[attrOf(t, "style-name")].hidden
	info := Info{Name: attrOf(t, "name"), Workbook: true, Hidden: hidden, Date1904: o.date1904}
	o.sheets = append(o.sheets, gridSheet{info: info})
	o.grid = &grid{left: &o.left, details: o.details}
	o.err, o.columns, o.row, o.times = nil, nil, 0, 0
}

func (o *odsReader) fail(err error) {
	if o.err == nil {
		o.err = err
	}
}

// count reads how often a row or cell is repeated, or how far it reaches: once,
// if nothing is said. More than a sheet has is no more than one too many.
func (o *odsReader) count(t xml.StartElement, name string) int {
	text := attrOf(t, name)
	if text == "" {
		return 1
	}
	n, err := strconv.Atoi(text)
	if err != nil || n < 1 {
		o.fail(fmt.Errorf("it has a %s of %.20q near row %d", name, text, o.row))
		return 1
	}
	return min(n, maxRow)
}

// cell reads a cell to its end.
func (o *odsReader) cell(t xml.StartElement) error {
	var c odsCell
	for _, a := range t.Attr {
		c.take(a)
	}
	if err := c.content(o.d); err != nil {
		return err
	}
	n, first := o.count(t, "number-columns-repeated"), o.col+1
	o.col = min(o.col+n, maxRow) // no sum may run over
	if o.err != nil {
		return nil
	}
	a := area{o.row, first, o.row + o.count(t, "number-rows-spanned") - 1,
		first + o.count(t, "number-columns-spanned") - 1}
	if a.bottom > a.top || a.right > a.left {
		o.fail(o.grid.merge(a))
	}
	out, number := c.grid(o.date1904)
	if number && (c.typ == "date" || c.typ == "time" || c.typ == "float") {
		out.class = o.styles.class(o.styleOf(c.style, first), c)
	}
	out.struck = o.styles.struck(o.styleOf(c.style, first))
	o.fail(o.grid.put(o.row, first, n, out))
	return nil
}

// styleOf is the style of a cell, its own or that of its row or its column.
func (o *odsReader) styleOf(own string, col int) string {
	switch {
	case own != "":
		return own
	case o.style != "":
		return o.style
	case col <= len(o.columns):
		return o.columns[col-1]
	}
	return ""
}

func attrOf(t xml.StartElement, name string) string {
	for _, a := range t.Attr {
		if a.Name.Local == name {
			return a.Value
		}
	}
	return ""
}
