package track

import (
	"bufio"
	"bytes"
	"errors"
	"io"
)

// tags gives an XML document's tags one by one with the text before each. It
// checks no nesting and no entity: of a track, tags, attributes that are numbers
// and short texts are read, and it is many times faster than encoding/xml.
type tags struct {
	r     *bufio.Reader
	name  []byte // without name space prefix
	attrs []byte
	text  []byte // since the tag before, its first maxText bytes
	end   bool   // </name>
	empty bool   // <name/>
	line  int    // of the tag's end, from 1
	long  []byte
}

const (
	maxText = 64
	maxTag  = 64 << 10
)

var errLongTag = errors.New("a tag does not end")

func newTags(r *bufio.Reader) *tags { return &tags{r: r, line: 1} }

// next reads up to the next tag; at the document's end it returns io.EOF, in the
// middle of a tag io.ErrUnexpectedEOF.
func (t *tags) next() error {
	t.text = t.text[:0]
	for {
		if err := t.readText(); err != nil {
			return err
		}
		tag, err := t.readTag()
		if errors.Is(err, io.EOF) {
			return io.ErrUnexpectedEOF
		}
		if err != nil {
			return err
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

func (t *tags) readText() error {
	for {
		b, err := t.r.ReadSlice('<')
		t.line += bytes.Count(b, []byte{'\n'})
		if n := maxText - len(t.text); n > 0 {
			kept := bytes.TrimSuffix(b, []byte{'<'})
			t.text = append(t.text, kept[:min(n, len(kept))]...)
		}
		if !errors.Is(err, bufio.ErrBufferFull) {
			return err
		}
	}
}

// readTag reads to the ">" that is in no quotes.
func (t *tags) readTag() ([]byte, error) {
	b, err := t.r.ReadSlice('>')
	if err == nil && len(b) > 1 && whole(b) {
		t.line += bytes.Count(b, []byte{'\n'})
		return b[:len(b)-1], nil
	}
	t.long = append(t.long[:0], b...)
	for err == nil && !whole(t.long) || errors.Is(err, bufio.ErrBufferFull) {
		if len(t.long) > maxTag {
			return nil, errLongTag
		}
		b, err = t.r.ReadSlice('>')
		t.long = append(t.long, b...)
	}
	t.line += bytes.Count(t.long, []byte{'\n'})
	if err != nil {
		return nil, err
	}
	if len(t.long) < 2 {
		return nil, errLongTag
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

// skip passes over the rest of a comment or of text in CDATA.
func (t *tags) skip(tag []byte) error {
	var close string
	switch {
	case bytes.HasPrefix(tag, []byte("!--")):
		close = "--"
	case bytes.HasPrefix(tag, []byte("![CDATA[")):
		close = "]]"
	default:
		return nil
	}
	for !bytes.HasSuffix(tag, []byte(close)) || len(tag) < len(close)+3 {
		b, err := t.r.ReadSlice('>')
		t.line += bytes.Count(b, []byte{'\n'})
		if err != nil && !errors.Is(err, bufio.ErrBufferFull) {
			return io.ErrUnexpectedEOF
		}
		if tag = b; err == nil {
			tag = append([]byte("   "), b[:len(b)-1]...)
		}
	}
	return nil
}

func (t *tags) split(tag []byte) {
	t.end, t.empty = tag[0] == '/', tag[len(tag)-1] == '/'
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
	t.name = tag
}

// attr is the value of an attribute without a prefix.
func (t *tags) attr(name string) ([]byte, bool) {
	rest := t.attrs
	for {
		i := bytes.IndexByte(rest, '=')
		if i < 0 {
			return nil, false
		}
		key := bytes.TrimSpace(rest[:i])
		value := bytes.TrimLeft(rest[i+1:], " \t\r\n")
		if len(value) == 0 {
			return nil, false
		}
		j := bytes.IndexByte(value[1:], value[0])
		if j < 0 {
			return nil, false
		}
		if string(key) == name {
			return value[1 : 1+j], true
		}
		rest = value[j+2:]
	}
}
