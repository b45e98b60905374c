package sheet

import (
	"archive/zip"
	"errors"
	"fmt"
	"os"
	"path/filepath"
	"strings"

	"github.com/xuri/excelize/v2"

	"wakeledger/pipeline/record"
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
	strings int             // how many shared texts there are
	xl      *excelize.File
}

func openBook(f *os.File, name string, opt Options) (Book, error) {
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
	if b.sheets, err = listSheets(z); err != nil {
		return b, b.damaged(err)
	}
	if b.strings, err = countStrings(z); err != nil {
		return b, b.damaged(err)
	}
	if reason := b.sheetReason(); reason != "" {
		return b, &Refusal{name, reason, nil}
	}
	b.describe()
	if b.xl, err = openExcelize(f.Name(), opt); err != nil {
		return b, b.damaged(err)
	}
	return b, nil
}

func (b *workbook) damaged(err error) error {
	if errors.Is(err, errNoWorkbook) {
		return &Refusal{b.name, "is a zip archive without a workbook in it", err}
	}
	return &Refusal{b.name, "is damaged: " + err.Error(), err}
}

// sheetReason refuses workbooks that excelize could not tell the sheets of.
func (b *workbook) sheetReason() string {
	if len(b.sheets) == 0 {
		return "has no sheets with cells"
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

func (b *workbook) describe() {
	for i := range b.sheets {
		info := &b.sheets[i].info
		if info.Hidden {
			info.Notes = append(info.Notes, "hidden sheet")
		}
		if info.Date1904 {
			info.Notes = append(info.Notes, "dates count from 1904")
		}
		if strings.EqualFold(filepath.Ext(b.name), ".csv") {
			info.Notes = append(info.Notes, "named as a text file, but it is a workbook and was read as one")
		}
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
		return nil, b.sheetError(name, err)
	}
	rows, err := b.xl.Rows(name)
	if err != nil {
		return nil, b.sheetError(name, err)
	}
	r := &bookRows{book: b, sheet: name, rows: rows, lay: lay, marks: lay.marks}
	r.merges.coming = lay.merges
	return r, nil
}

func (b *workbook) sheetError(sheet string, err error) error {
	return &Refusal{b.name, fmt.Sprintf("sheet %q cannot be read: %v", sheet, err), err}
}

func (b *workbook) layout(i int) (*layout, error) {
	if l := b.layouts[i]; l != nil {
		return l, nil
	}
	l, err := scan(b.sheets[i].file, b.strings)
	if err != nil {
		return nil, err
	}
	b.layouts[i] = l
	return l, nil
}

// bookRows reads a sheet's rows.
type bookRows struct {
	book   *workbook
	sheet  string
	rows   *excelize.Rows
	lay    *layout
	marks  []mark // those still to come
	merges merger
	num    int
	row    Row
	err    error
}

func (r *bookRows) Row() *Row  { return &r.row }
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
		r.err = r.book.sheetError(r.sheet, fmt.Errorf("after row %d: %w", r.num, err))
		return false
	}
	r.num++
	r.take(cells)
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

// take makes the Row of the cells that excelize gave.
func (r *bookRows) take(cells []string) {
	for len(r.marks) > 0 && r.marks[0].row <= r.num {
		m := r.marks[0]
		r.marks = r.marks[1:]
		for len(cells) < m.col {
			cells = append(cells, "")
		}
		cells[m.col-1] = m.text
	}
	merged := r.merges.row(r.num, cells)
	r.row = Row{Num: r.num, Cells: cells, Merged: merged}
	for i, c := range cells {
		if tooLong(c) {
			pos := record.Pos{File: r.book.name, Sheet: r.sheet, Row: r.num, Col: i + 1}
			r.row = Row{Num: r.num, Problem: &record.Problem{Pos: pos, Cell: excerpt(c), Reason: longReason}}
			return
		}
	}
}
