package sheet

import (
	"bytes"
	"errors"
	"io"
)

// errLongRecord is what guard gives instead of bytes beyond its limit.
var errLongRecord = errors.New("the record is too long")

// guard feeds a csv.Reader and remembers what it gave since the record in hand
// began. So a record that never ends is cut off before it fills the memory, and
// a line that was refused can be looked at again and reading taken up after it.
type guard struct {
	src   io.Reader
	again []byte // given before, to be given again from next on
	next  int
	held  []byte // what was given since offset base
	base  int64
	keep  int64 // held bytes before this offset may go
	nul   bool  // a zero byte was seen
}

// maxRecord bounds one record, in bytes. A spreadsheet's cell holds 32,767
// characters, so a log's row is far below it.
const maxRecord = 1 << 20

// Read implements io.Reader.
func (g *guard) Read(p []byte) (int, error) {
	g.held = g.held[:copy(g.held, g.held[g.keep-g.base:])]
	g.base = g.keep
	if len(g.held) >= maxRecord {
		return 0, errLongRecord
	}
	n, err := g.fetch(p)
	g.held = append(g.held, p[:n]...)
	g.nul = g.nul || bytes.IndexByte(p[:n], 0) >= 0
	return n, err
}

func (g *guard) fetch(p []byte) (int, error) {
	if g.next < len(g.again) {
		n := copy(p, g.again[g.next:])
		g.next += n
		return n, nil
	}
	g.again, g.next = nil, 0
	return g.src.Read(p)
}

// from gives the bytes held from an offset on.
func (g *guard) from(offset int64) []byte { return g.held[offset-g.base:] }

// rewind makes Read give the last n bytes once more and starts offsets at 0.
func (g *guard) rewind(n int) {
	if n <= g.next {
		g.next -= n // All of them came from again: fetch forgets it once src is read.
	} else {
		g.again = bytes.Clone(g.held[len(g.held)-n:])
		g.next = 0
	}
	g.held, g.base, g.keep = g.held[:0], 0, 0
}

// skipLine reads past the next line end, for a line longer than a record may be.
func (g *guard) skipLine() error {
	buf := make([]byte, 4096)
	for {
		n, err := g.fetch(buf)
		if i := bytes.IndexByte(buf[:n], '\n'); i >= 0 {
			g.again, g.next = append(bytes.Clone(buf[i+1:n]), g.again[g.next:]...), 0
			return nil
		}
		if err != nil {
			return err
		}
	}
}

// splitLoose splits one line that is not proper CSV because of its quotes, as
// where lengths in feet and inches were written bare: a quote counts only if it
// begins a cell and its partner ends that cell, and is a character like any
// other if not. ok is false if a quote opens a cell and nothing closes it: then
// nobody can tell where the cells after it begin.
func splitLoose(line []byte, sep byte) (cells []string, ok bool) {
	line = bytes.TrimSuffix(bytes.TrimSuffix(line, []byte("\n")), []byte("\r"))
	for {
		cell, used, state := quotedCell(line, sep)
		if state == quoteOpen {
			return nil, false
		}
		if state == quoteNone {
			used = bytes.IndexByte(line, sep)
			if used < 0 {
				used = len(line)
			}
			cell = string(line[:used])
		}
		cells = append(cells, cell)
		if used == len(line) {
			return cells, true
		}
		line = line[used+1:]
	}
}

// quoteState is what the quotes of a cell turned out to be.
type quoteState int

const (
	quoteNone quoteState = iota // not a quoted cell
	quoteDone                   // opened and closed
	quoteOpen                   // opened, never closed
)

// quotedCell reads a quoted cell at the start of line: its text and how many
// bytes it takes up to the separator or the line's end.
func quotedCell(line []byte, sep byte) (string, int, quoteState) {
	if len(line) == 0 || line[0] != '"' {
		return "", 0, quoteNone
	}
	var text []byte
	for i := 1; i < len(line); i++ {
		switch {
		case line[i] != '"':
			text = append(text, line[i])
		case i+1 == len(line) || line[i+1] == sep:
			return string(text), i + 1, quoteDone
		case line[i+1] == '"':
			text = append(text, '"')
			i++
		default:
			return "", 0, quoteNone
		}
	}
	return "", 0, quoteOpen
}
