package sheet

import (
	"errors"
	"fmt"
	"io"
	"io/fs"
	"maps"
	"os"
	"path/filepath"

	"wakeledger/pipeline/infile"
	"wakeledger/pipeline/record"
)

// DefaultMaxUnzipped is how many bytes a workbook may hold once unpacked when
// Options says nothing: 256 MiB, some 300,000 rows of 20 columns. A season's
// log is a hundredth of that, and unpacking that much costs a second or two of
// work and 256 MiB of temporary disk, which no computer on a boat minds.
const DefaultMaxUnzipped = 256 << 20

// FormulaNoValue begins the text of a workbook's cell that holds a formula but
// no stored value, because the program that wrote it never calculated: the
// formula follows, if the file has it ("=SUM(C1:C2)", or "=" alone).
const FormulaNoValue = "="

// Options are limits of reading. The zero value is fit for use.
type Options struct {
	// MaxUnzipped is the most bytes that a workbook may hold once unpacked, or
	// an .xls as it is, DefaultMaxUnzipped if 0 or less. Text files are read as
	// a stream and have no limit.
	MaxUnzipped int64
	// Details asks for Row.Formula and Row.Comment, which cost memory for each
	// cell that has one.
	Details bool
}

// Book is an open log: a workbook, or a text file as a book of one sheet. It is
// for one goroutine at a time.
type Book interface {
	// Sheets lists the sheets in the book's order. Chart sheets are left out.
	Sheets() []Info
	// Rows starts reading sheet i from its first row. It may be called several
	// times, also while other Rows of the book are open. A sheet that is damaged
	// fails here, as a *Refusal; the book's other sheets can still be read.
	Rows(i int) (Rows, error)
	// Close lets go of the file. Rows must be closed before.
	Close() error
}

// Info describes a sheet.
type Info struct {
	// Name is the sheet's name, empty for a text file.
	Name string
	// File is a text file's name without its ending.
	File string
	// Hidden tells that the workbook's owner hid the sheet.
	Hidden bool
	// Date1904 tells that the workbook counts days from 1904-01-01, so that
	// serials are 1,462 less than usual.
	Date1904 bool
	// Workbook tells a workbook's sheet from a text file.
	Workbook bool
	// Encoding is a text file's encoding: UTF-8, UTF-16LE, UTF-16BE or
	// Windows-1252.
	Encoding string
	// Separator is what separates a text file's cells, as one character.
	Separator string
	// Notes are what the user should be told of how the sheet was read.
	Notes []string
}

// Title is what the one who keeps it calls a table: the name of its sheet, or of its text file.
func (i Info) Title() string {
	if i.File != "" {
		return i.File
	}
	return i.Name
}

// Rows gives a sheet's rows in order. Blank rows between others are delivered,
// blank rows after the last one that holds something are not.
type Rows interface {
	// Next reads the next row and reports whether there is one.
	Next() bool
	// Row is the row that Next read. It is the same Row every time, and its
	// slices and maps are overwritten; the strings in them may be kept.
	Row() *Row
	// Err is what ended the reading early, nil after the last row: a *Refusal
	// for a workbook, for a text file what reading it said.
	Err() error
	// Close lets go of what this reading holds.
	Close() error
}

// Row is a row as stored.
type Row struct {
	// Num is the sheet's row, or the line of a text file on which the row
	// starts, from 1.
	Num int
	// Cells is the raw text from column 1 (index 0) on. Blanks at the end may
	// be missing. In a workbook a date is a serial, a number is as the
	// program stored it, a boolean TRUE or FALSE, an error #N/A and the like,
	// and a formula without a stored value begins with FormulaNoValue.
	Cells []string
	// Merged gives, by index as in Cells, the value of a merged area's first
	// cell for every other cell of the area, whose own text is "". It holds
	// no entry where the first cell is blank, beyond the sheet's last used
	// column, or in blank rows. It may be nil.
	Merged map[int]string
	// Class gives, by index as in Cells, what a workbook's cell with a number in
	// it is by its format; a cell that Merged has a value for is of that value's
	// class. Plain cells at the end are missing, and it is nil where all are.
	Class []Class
	// Formula and Comment give, by index, the formula that a cell's value was
	// calculated by, with the "=" before it, and the remark that is pinned to a
	// cell. Both are nil without Options.Details and where there are none. A
	// formula is as the file has it, of an .xlsx its first 256 bytes at most, and
	// "=" alone where it is shared with another cell or in an .xls, which also
	// gives no comments.
	Formula, Comment map[int]string
	// Struck tells that each cell of a workbook's row that holds something is struck through.
	Struck bool
	// Table numbers the tables of a text document, from 1, for their rows; 0 for its other lines, and in every
	// other file, where nothing says where a table begins.
	Table int
	// Problem is why the row could not be read, nil if it could; Cells is
	// then empty. Its Cell is the beginning of the text in question.
	Problem *record.Problem
}

// CopyOf makes r a copy of a row, to be kept; the room of r's own cells is used again.
func (r *Row) CopyOf(from *Row) {
	cells, class := append(r.Cells[:0], from.Cells...), append(r.Class[:0], from.Class...)
	*r = *from
	r.Cells, r.Class = cells, class
	r.Merged, r.Formula, r.Comment = maps.Clone(from.Merged), maps.Clone(from.Formula), maps.Clone(from.Comment)
}

// Refusal says why a file cannot be read as a log.
type Refusal struct {
	// File is the log's base name.
	File string
	// Reason is for the user: what it is, and what to do instead.
	Reason string
	// Err is the cause, if there is one beyond the reason.
	Err error
}

// Error gives the file and the reason in one sentence.
func (r *Refusal) Error() string { return r.File + ": " + r.Reason }

// Unwrap gives the cause, nil if there is none.
func (r *Refusal) Unwrap() error { return r.Err }

// Open opens a log. The first bytes decide what it is; the name's ending is
// only a hint. Everything it refuses is a *Refusal.
func Open(path string, opt Options) (Book, error) {
	name := filepath.Base(path)
	if opt.MaxUnzipped <= 0 {
		opt.MaxUnzipped = DefaultMaxUnzipped
	}
	f, head, err := openHead(path)
	if err != nil {
		return nil, &Refusal{File: name, Reason: openReason(err), Err: err}
	}
	kind, reason := classify(head)
	if reason != "" {
		return nil, closeAfter(f, &Refusal{File: name, Reason: reason})
	}
	switch kind {
	case kindZip:
		return closeUnless(openZip(f, name, opt))
	case kindOLE:
		return closeUnless(openXLS(f, name, opt))
	}
	return closeUnless(openText(f, name, head))
}

var (
	errDirectory  = errors.New("is a folder, not a file")
	errNotRegular = errors.New("is not an ordinary file")
	errEmpty      = errors.New("is empty")
)

// openHead opens an ordinary file and reads the beginning that decides its kind.
func openHead(path string) (*os.File, []byte, error) {
	st, err := os.Stat(path)
	switch {
	case err != nil:
		return nil, nil, err
	case st.IsDir():
		return nil, nil, errDirectory
	case !st.Mode().IsRegular():
		return nil, nil, errNotRegular // It could not be read twice.
	case st.Size() == 0:
		return nil, nil, errEmpty
	}
	f, err := os.Open(path)
	if err != nil {
		return nil, nil, err
	}
	head := make([]byte, sampleSize)
	n, err := io.ReadFull(f, head)
	if err != nil && !errors.Is(err, io.ErrUnexpectedEOF) {
		return nil, nil, closeAfter(f, err)
	}
	return f, head[:n], nil
}

func openReason(err error) string {
	switch {
	case errors.Is(err, fs.ErrNotExist):
		return "there is no such file"
	case errors.Is(err, fs.ErrPermission):
		return "you may not read this file"
	case infile.Held(err):
		return "another program has it open: close it there, and give the command again"
	case errors.Is(err, errDirectory), errors.Is(err, errNotRegular), errors.Is(err, errEmpty):
		return err.Error()
	}
	var pathErr *fs.PathError
	if errors.As(err, &pathErr) {
		err = pathErr.Err // The file is named already.
	}
	return fmt.Sprintf("cannot be read: %v", err)
}

// closeAfter closes f on the way out with err, which says more than a failed
// close of a file that was only read.
func closeAfter(f io.Closer, err error) error {
	_ = f.Close()
	return err
}

// closeUnless closes a book that could not be opened wholly.
func closeUnless(b Book, err error) (Book, error) {
	if err == nil {
		return b, nil
	}
	if b != nil {
		err = closeAfter(b, err)
	}
	return nil, err
}
