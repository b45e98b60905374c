package sheet

import (
	"archive/zip"
	"errors"
	"fmt"
	"os"
	"path/filepath"
	"strings"

	"github.com/xuri/excelize/v2"
)

// inMemory is the size up to which excelize keeps a sheet in memory, in bytes;
// larger ones are unpacked to a temporary file that Close removes.
const inMemory = 4 << 20

// workbook is a workbook read through excelize, with a look of our own at what
// excelize's rows leave out.
type workbook struct {
	file    *os.File
	name    string
	sheets  []sheetPart
	layouts map[int]*layout // made when a sheet's rows are first asked for
	facts   bookFacts
	zip     *zip.Reader // for the comments, nil where they were not asked for
	xl      *excelize.File
}

// openZip opens a workbook that is a zip archive, of either kind.
func openZip(f *os.File, name string, opt Options) (Book, error) {
	b := &workbook{file: f, name: name, layouts: map[int]*layout{}}
	st, err := f.Stat()
	if err != nil {
		return b, &Refusal{name, "cannot be read: " + err.Error(), err}
	}
	z, err := zip.NewReader(f, st.Size())
	if err != nil {
		return b, &Refusal{name, "is damaged or not complete, as after a broken download; get it again", err}
	}
	if reason := checkZip(z, opt.MaxUnzipped); reason != "" {
		return b, &Refusal{name, reason, nil}
	}
	if isODS(z) {
		return openODS(f, name, z, opt)
	}
	if main := docxMain(z); main != nil {
		return openDocx(f, name, main)
	}
	return b, b.read(z, opt)
}

func (b *workbook) read(z *zip.Reader, opt Options) (err error) {
	if b.sheets, err = listSheets(z); err != nil {
		return damaged(b.name, err)
	}
	if b.facts.texts, err = countStrings(z); err != nil {
		return damaged(b.name, err)
	}
	if reason := b.sheetReason(); reason != "" {
		return &Refusal{b.name, reason, nil}
	}
	b.facts.details, b.zip = opt.Details, z
	if b.facts.styles, b.facts.struck, err = cellStyles(z); err != nil {
		return damaged(b.name, err)
	}
	for i := range b.sheets {
		b.sheets[i].info.describe(b.name)
	}
	if b.xl, err = openExcelize(b.file.Name(), opt); err != nil {
		return damaged(b.name, err)
	}
	return nil
}

// sheetReason refuses workbooks that excelize could not tell the sheets of.
func (b *workbook) sheetReason() string {
	if len(b.sheets) == 0 {
		return noSheets
	}
	seen := map[string]bool{}
	for _, s := range b.sheets {
		key := strings.ToLower(s.info.Name)
		if seen[key] {
			return fmt.Sprintf("has two sheets named %q", s.info.Name)
		}
		seen[key] = true
	}
	return ""
}

// describe adds the notes on a workbook's sheet.
func (i *Info) describe(file string) {
	if i.Hidden {
		i.Notes = append(i.Notes, "hidden sheet")
	}
	if i.Date1904 {
		i.Notes = append(i.Notes, "dates count from 1904")
	}
	if strings.EqualFold(filepath.Ext(file), ".csv") {
		i.Notes = append(i.Notes, "named as a text file, but it is a workbook and was read as one")
	}
}

// openExcelize opens the file with excelize. excelize is not ours, and a file
// made to confuse it must not end the program.
func openExcelize(path string, opt Options) (f *excelize.File, err error) {
	defer func() { err = errors.Join(err, recovered(recover())) }()
	return excelize.OpenFile(path, excelize.Options{
		RawCellValue:      true,
		UnzipSizeLimit:    opt.MaxUnzipped,
		UnzipXMLSizeLimit: min(inMemory, opt.MaxUnzipped),
	})
}

func recovered(r any) error {
	if r == nil {
		return nil
	}
	return fmt.Errorf("it cannot be understood (%v)", r)
}

func (b *workbook) Sheets() []Info {
	list := make([]Info, len(b.sheets))
	for i, s := range b.sheets {
		list[i] = s.info
	}
	return list
}

// Close removes excelize's temporary files and closes the workbook.
func (b *workbook) Close() error {
	var err error
	if b.xl != nil {
		err = b.xl.Close()
	}
	return errors.Join(err, b.file.Close())
}

func (b *workbook) Rows(i int) (Rows, error) {
	if i < 0 || i >= len(b.sheets) {
		return nil, fmt.Errorf("%s: there is no sheet %d", b.name, i+1)
	}
	name := b.sheets[i].info.Name
	lay, err := b.layout(i)
	if err != nil {
		return nil, sheetError(b.name, name, err)
	}
	rows, err := b.xl.Rows(name)
	if err != nil {
		return nil, sheetError(b.name, name, err)
	}
	r := &bookRows{rowMaker: rowMaker{file: b.name, sheet: name}, rows: rows, lay: lay, marks: lay.marks}
	r.merges.coming = lay.merges
	return r, nil
}

func (b *workbook) layout(i int) (*layout, error) {
	if l := b.layouts[i]; l != nil {
		return l, nil
	}
	l, err := scan(b.sheets[i].file, b.facts)
	if err != nil {
		return nil, err
	}
	if b.facts.details {
		if l.comments, err = readComments(b.zip, b.sheets[i].file.Name); err != nil {
			return nil, err
		}
	}
	b.layouts[i] = l
	return l, nil
}

// bookRows reads a sheet's rows.
type bookRows struct {
	rowMaker
	rows  *excelize.Rows
	lay   *layout
	marks []mark // those still to come
	num   int
	err   error
}

func (r *bookRows) Err() error { return r.err }

// Close implements Rows. What ended the reading is Err's to say.
func (r *bookRows) Close() error {
	err := r.rows.Close()
	if err != nil && r.err != nil {
		return nil
	}
	return err
}

var errUnreadable = errors.New("the XML is faulty")

// Next implements Rows. excelize ends its rows at faulty XML as at a sheet's end,
// so what the layout knows of the last row decides which of the two it was.
func (r *bookRows) Next() bool {
	if r.err != nil || r.num >= r.lay.lastRow {
		return false
	}
	cells, err := r.columns()
	if err == nil && r.num+1 == r.lay.lastRow && len(cells) < r.lay.lastCol {
		err = errUnreadable
	}
	if err != nil {
		r.err = sheetError(r.file, r.sheet, fmt.Errorf("after row %d: %w", r.num, err))
		return false
	}
	r.num++
	cells, class := r.marked(cells), r.lay.classOf(r.num)
	shown(cells, class)
	r.take(Row{Num: r.num, Cells: cells, Class: class, Formula: r.lay.formulas[r.num],
		Comment: r.lay.comments[r.num], Struck: r.lay.struck[r.num]})
	return true
}

func (r *bookRows) columns() (cells []string, err error) {
	defer func() { err = errors.Join(err, recovered(recover())) }()
	if !r.rows.Next() {
		if err := r.rows.Error(); err != nil {
			return nil, err
		}
		return nil, errUnreadable
	}
	return r.rows.Columns()
}

// marked puts the texts that excelize does not give among the cells that it gave.
func (r *bookRows) marked(cells []string) []string {
	for len(r.marks) > 0 && r.marks[0].row <= r.num {
		m := r.marks[0]
		r.marks = r.marks[1:]
		for len(cells) < m.col {
			cells = append(cells, "")
		}
		cells[m.col-1] = m.text
	}
	return cells
}
