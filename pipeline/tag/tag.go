// Package tag reads the tags of an XML document one by one, of sheets and of tracks.
package tag

import (
	"bufio"
	"bytes"
	"errors"
	"io"
)

// Reader gives a document's tags one by one with the text before each. It checks no nesting and
// no entity, and is many times faster than encoding/xml: it is for tags, attributes and short texts
// that are looked at again, or that are numbers.
type Reader struct {
	Name  []byte // without name space prefix; valid until the next tag, as all of it
	Text  []byte // since the tag before, CDATA included, its first bytes
	End   bool   // </name>
	Empty bool   // <name/>
	Line  int    // of the tag's end, from 1

	r        *bufio.Reader
	mostText int
	attrs    []byte
	long     []byte
}

// Most bounds a tag, in bytes.
const Most = 64 << 10

// ErrLong is a tag that does not end within Most bytes, or has nothing in it.
var ErrLong = errors.New("a tag does not end")

// NewReader reads tags of r, and keeps up to so many bytes of the text before each.
func NewReader(r *bufio.Reader, mostText int) *Reader {
	return &Reader{r: r, Line: 1, mostText: mostText}
}

// Next reads up to the next tag; at the document's end it returns io.EOF, in the
// middle of a tag io.ErrUnexpectedEOF.
func (t *Reader) Next() error {
	t.Text = t.Text[:0]
	for {
		if err := t.readText(); err != nil {
			return err
		}
		tag, err := t.readTag()
		if err != nil {
			return unexpected(err)
		}
		if tag[0] == '!' || tag[0] == '?' {
			if err := t.skip(tag); err != nil {
				return err
			}
			continue
		}
		t.split(tag)
		return nil
	}
}

func unexpected(err error) error {
	if errors.Is(err, io.EOF) {
		return io.ErrUnexpectedEOF
	}
	return err
}

func (t *Reader) keep(b []byte) {
	t.Text = append(t.Text, b[:min(len(b), t.mostText-len(t.Text))]...)
}

// read reads up to and with a delimiter, or what the buffer holds (bufio.ErrBufferFull).
func (t *Reader) read(delimiter byte) ([]byte, error) {
	b, err := t.r.ReadSlice(delimiter)
	t.Line += bytes.Count(b, []byte{'\n'})
	return b, err
}

func (t *Reader) readText() error {
	for {
		b, err := t.read('<')
		t.keep(bytes.TrimSuffix(b, []byte{'<'}))
		if !errors.Is(err, bufio.ErrBufferFull) {
			return err
		}
	}
}

// readTag reads to the ">" that is in no quotes.
func (t *Reader) readTag() ([]byte, error) {
	b, err := t.read('>')
	if err == nil && len(b) > 1 && whole(b) {
		return b[:len(b)-1], nil
	}
	t.long = append(t.long[:0], b...)
	for err == nil && !whole(t.long) || errors.Is(err, bufio.ErrBufferFull) {
		if len(t.long) > Most {
			return nil, ErrLong
		}
		b, err = t.read('>')
		t.long = append(t.long, b...)
	}
	if err != nil {
		return nil, err
	}
	if len(t.long) < 2 {
		return nil, ErrLong
	}
	return t.long[:len(t.long)-1], nil
}

// whole tells whether a tag's quotes are closed; a comment has none.
func whole(tag []byte) bool {
	if tag[0] == '/' || tag[0] == '!' || tag[0] == '?' {
		return true
	}
	var quote byte
	for _, c := range tag {
		switch {
		case quote != 0 && c == quote:
			quote = 0
		case quote == 0 && (c == '"' || c == '\''):
			quote = c
		}
	}
	return quote == 0
}

// skip passes over the rest of a comment, and keeps the rest of text in CDATA.
func (t *Reader) skip(tag []byte) error {
	cdata, isText := bytes.CutPrefix(tag, []byte("![CDATA["))
	comment, isComment := bytes.CutPrefix(tag, []byte("!--"))
	if !isText && !isComment {
		return nil
	}
	body, mark := comment, []byte("--")
	if isText {
		body, mark = cdata, []byte("]]")
	}
	t.long = append(t.long[:0], body...)
	for ended := true; !ended || !bytes.HasSuffix(t.long, mark); {
		if ended {
			t.long = append(t.long, '>')
		}
		if n := len(t.long) - len(mark); n > Most {
			if isText {
				t.keep(t.long[:n])
			}
			t.long = append(t.long[:0], t.long[n:]...)
		}
		b, err := t.read('>')
		if ended = err == nil; !ended && !errors.Is(err, bufio.ErrBufferFull) {
			return unexpected(err)
		}
		t.long = append(t.long, bytes.TrimSuffix(b, []byte{'>'})...)
	}
	if isText {
		t.keep(bytes.TrimSuffix(t.long, mark))
	}
	return nil
}

func (t *Reader) split(tag []byte) {
	t.End, t.Empty = tag[0] == '/', tag[len(tag)-1] == '/'
	tag = bytes.TrimSuffix(bytes.TrimPrefix(tag, []byte{'/'}), []byte{'/'})
	t.attrs = nil
	for i, c := range tag {
		if c == ' ' || c == '\n' || c == '\t' || c == '\r' {
			tag, t.attrs = tag[:i], tag[i:]
			break
		}
	}
	if i := bytes.IndexByte(tag, ':'); i >= 0 {
		tag = tag[i+1:]
	}
	t.Name = tag
}

// Attr is the value of an attribute without a prefix; nil if there is none.
func (t *Reader) Attr(name string) []byte {
	rest := t.attrs
	for {
		i := bytes.IndexByte(rest, '=')
		if i < 0 {
			return nil
		}
		key := bytes.TrimSpace(rest[:i])
		value := bytes.TrimLeft(rest[i+1:], " \t\r\n")
		if len(value) == 0 {
			return nil
		}
		j := bytes.IndexByte(value[1:], value[0])
		if j < 0 {
			return nil
		}
		if string(key) == name {
			return value[1 : 1+j]
		}
		rest = value[j+2:]
	}
}
