package track

import (
	"bufio"
	"bytes"
	"errors"
	"io"
)

// mostLine is how long a line of a text may be: no fix takes as much.
const mostLine = 64 << 10

// lineReader gives the lines of a text. It holds no more of one than its buffer.
type lineReader struct {
	r    *bufio.Reader
	no   int  // of the last line given, from 1
	long bool // it is longer than mostLine, and what was given is its beginning
	open bool // it is the last one and has no line end
	torn bool // the packed file that it is in ends in the middle
}

// next is the next line without its end; io.EOF after the last.
func (l *lineReader) next() ([]byte, error) {
	b, err := l.r.ReadSlice('\n')
	if errors.Is(err, io.ErrUnexpectedEOF) {
		l.torn, err = true, io.EOF
	}
	if len(b) == 0 && err != nil {
		return nil, err
	}
	l.no++
	l.long = len(b) > mostLine
	l.open = errors.Is(err, io.EOF)
	if errors.Is(err, bufio.ErrBufferFull) {
		b = bytes.Clone(b[:mostShown])
		for errors.Is(err, bufio.ErrBufferFull) {
			_, err = l.r.ReadSlice('\n')
		}
		if errors.Is(err, io.ErrUnexpectedEOF) {
			l.torn, err = true, io.EOF
		}
	}
	if err != nil && !errors.Is(err, io.EOF) {
		return nil, err
	}
	return bytes.TrimRight(b, "\r\n"), nil
}

// fields splits a line at a separator into the cells that are in it, without
// their quotes; into is used again. sep 0 is any run of spaces. whole is false
// where a quote does not end.
func fields(into [][]byte, line []byte, sep byte) (cells [][]byte, whole bool) {
	into = into[:0]
	if sep == 0 {
		return append(into, bytes.Fields(line)...), true
	}
	for {
		if cell := bytes.TrimLeft(line, " "); len(cell) > 0 && cell[0] == '"' {
			end := quoted(cell)
			if end < 0 {
				return into, false
			}
			rest := bytes.TrimLeft(cell[end+1:], " ")
			if len(rest) > 0 && rest[0] != sep {
				return into, false
			}
			into = append(into, bytes.TrimSpace(cell[1:end]))
			if len(rest) == 0 {
				return into, true
			}
			line = rest[1:]
			continue
		}
		i := bytes.IndexByte(line, sep)
		if i < 0 {
			return append(into, bytes.TrimSpace(line)), true
		}
		into, line = append(into, bytes.TrimSpace(line[:i])), line[i+1:]
	}
}

// quoted is where the quote that begins a text ends; a doubled one does not.
func quoted(s []byte) int {
	for i := 1; i < len(s); i++ {
		if s[i] != '"' {
			continue
		}
		if i+1 < len(s) && s[i+1] == '"' {
			i++
			continue
		}
		return i
	}
	return -1
}
