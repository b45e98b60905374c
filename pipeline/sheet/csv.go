package sheet

import (
	"bufio"
	"bytes"
	"encoding/csv"
	"errors"
	"fmt"
	"io"
	"os"
	"path/filepath"
	"strings"
	"unicode/utf8"

	"wakeledger/pipeline/record"
)

const (
	// maxCell is how many characters a spreadsheet's cell can hold. More in one
	// cell means that a quote swallowed what follows.
	maxCell = 32767
	// maxLines bounds the lines of one record.
	maxLines = 1000
	// readSize is how many bytes are asked of a text file at once.
	readSize = 64 << 10
)

// textBook is a text file as a book of one sheet.
type textBook struct {
	file    *os.File
	words   io.ReaderAt // the text, where the file holds it in another form; else nil
	name    string
	form    textForm
	info    Info
	sep     byte
	aligned alignment // columns of spaces; none where cuts is empty
	head    int       // bytes of the decoded "sep=" line to pass over, 0 if none
}

func openText(f *os.File, name string, head []byte) (Book, error) {
	b := &textBook{file: f, name: name}
	form, ok, err := inspect(f, head)
	if err != nil {
		return b, &Refusal{name, "cannot be read: " + err.Error(), err}
	}
	if !ok {
		return b, &Refusal{name, "is not text and not a workbook" + saveAs, nil}
	}
	sample, err := form.sample(head)
	if err != nil {
		return b, &Refusal{name, "cannot be read as " + form.name, err}
	}
	if len(bytes.TrimSpace(sample)) == 0 && len(head) < sampleSize {
		return b, &Refusal{name, "is empty", errEmpty}
	}
	b.form = form
	b.chooseSeparator(sample)
	b.describe()
	return b, nil
}

func (b *textBook) chooseSeparator(sample []byte) {
	sep, length, ok := sepLine(sample)
	if ok {
		b.sep, b.head = sep, length
		return
	}
	var hint byte
	switch strings.ToLower(filepath.Ext(b.name)) {
	case ".tsv", ".tab":
		hint = '\t'
	}
	b.sep = sniff(sample, hint)
	if a, ok := alignedColumns(sample, b.sep); ok {
		b.aligned = a
	}
}

func (b *textBook) describe() {
	b.info = Info{Encoding: b.form.name, Separator: string(rune(b.sep)),
		File: strings.TrimSuffix(filepath.Base(b.name), filepath.Ext(b.name))}
	if len(b.aligned.cuts) > 0 {
		b.info.Separator = " "
		b.info.Notes = append(b.info.Notes, fmt.Sprintf("columns made of spaces: parted where the headings in line "+
			"%d and all lines below leave two blanks or more", b.aligned.head))
	}
	if b.form.note != "" {
		b.info.Notes = append(b.info.Notes, b.form.note)
	}
	if strings.EqualFold(filepath.Ext(b.name), ".xlsx") {
		b.info.Notes = append(b.info.Notes, "named as a workbook, but it is a text file and was read as one")
	}
}

func (b *textBook) Sheets() []Info { return []Info{b.info} }
func (b *textBook) Close() error   { return b.file.Close() }

func (b *textBook) Rows(i int) (Rows, error) {
	if i != 0 {
		return nil, fmt.Errorf("%s: there is no sheet %d", b.name, i+1)
	}
	var text io.ReaderAt = b.file
	if b.words != nil {
		text = b.words
	}
	src := bufio.NewReaderSize(b.form.decode(io.NewSectionReader(text, b.form.skip, 1<<62)), readSize)
	if _, err := src.Discard(b.head); err != nil {
		return nil, fmt.Errorf("read %s: %w", b.name, err)
	}
	if len(b.aligned.cuts) > 0 {
		return b.alignedRows(src), nil
	}
	r := &textRows{book: b, guard: &guard{src: src}}
	if b.head > 0 {
		r.end, r.last = 1, 1
	}
	r.restart()
	return r, nil
}

// textRows reads a text file's rows.
type textRows struct {
	book  *textBook
	guard *guard
	csv   *csv.Reader
	// lines is how many lines came before the first that csv sees; end is the
	// last line of the record read last; last is the last line delivered.
	lines, end, last int
	ahead            Row // read already; blank lines before it come first
	have             bool
	row              Row
	err              error
}

func (r *textRows) Row() *Row    { return &r.row }
func (r *textRows) Err() error   { return r.err }
func (r *textRows) Close() error { return nil }

// Next delivers the blank lines before a record, which csv.Reader passes over,
// and then the record.
func (r *textRows) Next() bool {
	if !r.have && (r.err != nil || !r.read()) {
		return false
	}
	r.have = true
	r.last++
	if r.last < r.ahead.Num {
		r.row = Row{Num: r.last}
		return true
	}
	r.row, r.have, r.last = r.ahead, false, r.end
	return true
}

// restart begins a csv.Reader after line r.end.
func (r *textRows) restart() {
	r.csv = csv.NewReader(r.guard)
	r.csv.Comma = rune(r.book.sep)
	r.csv.FieldsPerRecord = -1
	r.csv.ReuseRecord = true
	r.lines = r.end
}

// read reads one record into r.ahead. Quotes are read strictly: csv.Reader's
// LazyQuotes would let a stray quote swallow the rows after it without a word.
// What is refused goes through splitLoose line by line.
func (r *textRows) read() bool {
	for {
		start := r.csv.InputOffset()
		r.guard.keep = start
		cells, err := r.csv.Read()
		switch {
		case err == nil:
			r.accept(cells, start)
			return true
		case isParseError(err):
			r.mend(start, "")
			return true
		case errors.Is(err, errLongRecord):
			if r.cutOff(start) {
				return true
			}
		case errors.Is(err, io.EOF):
			return false
		default:
			r.err = fmt.Errorf("read %s after line %d: %w", r.book.name, r.end, err)
			return false
		}
	}
}

// isParseError stands apart because its variable costs an allocation.
func isParseError(err error) bool {
	var parse *csv.ParseError
	return errors.As(err, &parse)
}

// accept takes a record that csv.Reader could split.
func (r *textRows) accept(cells []string, start int64) {
	line, _ := r.csv.FieldPos(0)
	lastLine, _ := r.csv.FieldPos(len(cells) - 1)
	lastLine += strings.Count(cells[len(cells)-1], "\n")
	if lastLine-line >= maxLines {
		r.mend(start, fmt.Sprintf("a quote opens a cell and the next one closes it %d lines further on", lastLine-line))
		return
	}
	col, reason := r.fault(cells)
	if col > 0 && lastLine > line {
		r.mend(start, reason)
		return
	}
	r.ahead = Row{Num: r.lines + line, Cells: cells}
	if col > 0 {
		r.ahead = r.spoiled(r.ahead.Num, col, cells[col-1], reason)
	}
	r.end = r.lines + lastLine
}

// fault finds a cell that cannot be kept: its column from 1 and why, 0 if none.
func (r *textRows) fault(cells []string) (int, string) {
	for i, c := range cells {
		switch {
		case tooLong(c):
			return i + 1, longReason
		case r.guard.nul && strings.IndexByte(c, 0) >= 0:
			return i + 1, "the text holds zero bytes: the file is damaged there"
		case r.book.form.bad && !utf8.ValidString(c):
			return i + 1, "the text is not valid UTF-8"
		}
	}
	return 0, ""
}

const longReason = "the text is longer than the 32,767 characters that a cell can hold"

func tooLong(cell string) bool {
	return len(cell) > maxCell && utf8.RuneCountInString(cell) > maxCell
}

// mend reads the first line from offset start on by itself, and goes on with
// the line after it. reason, if not empty, says why the line is set aside even
// if it can be split.
func (r *textRows) mend(start int64, reason string) {
	blank, text := r.skipBlank(start)
	length := len(text)
	if i := bytes.IndexByte(text, '\n'); i >= 0 {
		length = i + 1
	}
	r.end++
	r.ahead = r.loose(text[:length], reason)
	if r.csv.InputOffset()-start > int64(blank+length) {
		r.guard.rewind(len(text) - length)
		r.restart()
	}
}

// cutOff deals with a record that reached maxRecord: a line of that length, or
// a quote that nothing closes. It reports whether that gave a row: if blank lines
// came first, the record itself may be short.
func (r *textRows) cutOff(start int64) bool {
	blank, text := r.skipBlank(start)
	if blank > 0 {
		r.guard.rewind(len(text))
		r.restart()
		return false
	}
	if bytes.IndexByte(text, '\n') >= 0 {
		r.mend(start, "")
		return true
	}
	r.end++
	r.ahead = r.spoiled(r.end, 0, string(text), "the line is longer than a row can be")
	r.guard.rewind(0)
	if err := r.guard.skipLine(); err != nil && !errors.Is(err, io.EOF) {
		r.err = fmt.Errorf("read %s after line %d: %w", r.book.name, r.end, err)
	}
	r.restart()
	return true
}

// skipBlank passes over the blank lines from offset start on: how many bytes
// they take, and the text after them. r.end moves to the last of them.
func (r *textRows) skipBlank(start int64) (int, []byte) {
	text := r.guard.from(start)
	blank := 0
	for {
		n := blankLine(text[blank:])
		if n == 0 {
			return blank, text[blank:]
		}
		blank += n
		r.end++
	}
}

// loose makes a row of line r.end, which is not proper CSV.
func (r *textRows) loose(line []byte, reason string) Row {
	cells, ok := splitLoose(line, r.book.sep)
	switch {
	case reason != "":
		return r.spoiled(r.end, 0, string(line), reason)
	case !ok:
		return r.spoiled(r.end, 0, string(line),
			"a quote opens a cell and nothing closes it, so the row cannot be split")
	}
	if col, why := r.fault(cells); col > 0 {
		return r.spoiled(r.end, col, cells[col-1], why)
	}
	return Row{Num: r.end, Cells: cells}
}

func (r *textRows) spoiled(num, col int, text, reason string) Row {
	pos := record.Pos{File: r.book.name, Row: num, Col: col}
	return Row{Num: num, Problem: &record.Problem{Pos: pos, Cell: excerpt(text), Reason: reason}}
}

// blankLine is the length of an empty line at the start of b, 0 if there is none.
func blankLine(b []byte) int {
	switch {
	case bytes.HasPrefix(b, []byte("\n")):
		return 1
	case bytes.HasPrefix(b, []byte("\r\n")):
		return 2
	}
	return 0
}

// maxExcerpt bounds the text of a row that is set aside, in bytes.
const maxExcerpt = 400

// excerpt is the beginning of text in a form that can be stored and shown:
// valid UTF-8, with zero bytes made visible.
func excerpt(text string) string {
	text = strings.TrimRight(text, "\r\n")
	if len(text) > maxExcerpt {
		text = text[:wholeRunes([]byte(text[:maxExcerpt]))]
	}
	return strings.ReplaceAll(strings.ToValidUTF8(text, "\uFFFD"), "\x00", "\u2400")
}
