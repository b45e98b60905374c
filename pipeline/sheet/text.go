package sheet

import (
	"bytes"
	"errors"
	"io"
	"unicode/utf8"

	"golang.org/x/text/encoding"
	"golang.org/x/text/encoding/charmap"
	"golang.org/x/text/encoding/unicode"
	"golang.org/x/text/transform"
)

// sampleSize is how much of a file's beginning decides its kind, its encoding
// without a mark, and its separator.
const sampleSize = 64 << 10

// textForm says how a text file's bytes become UTF-8.
type textForm struct {
	name string            // for Info.Encoding
	skip int64             // the byte order mark
	enc  encoding.Encoding // nil: the bytes are UTF-8 already
	bad  bool              // marked as UTF-8, but some bytes are not
	cr   bool              // lines end in a lone carriage return
	note string            // what the user should be told
}

func utf16Form(order unicode.Endianness, skip int64) textForm {
	name := "UTF-16LE"
	if order == unicode.BigEndian {
		name = "UTF-16BE"
	}
	return textForm{name: name, skip: skip, enc: unicode.UTF16(order, unicode.IgnoreBOM)}
}

// inspect tells the encoding of a file that begins with head: by its byte order
// mark, by the zero bytes of UTF-16, by being valid UTF-8 throughout, and
// otherwise Windows-1252. ok is false if it is no text at all.
func inspect(f io.ReaderAt, head []byte) (form textForm, ok bool, err error) {
	switch {
	case bytes.HasPrefix(head, []byte("\xff\xfe")):
		form = utf16Form(unicode.LittleEndian, 2)
	case bytes.HasPrefix(head, []byte("\xfe\xff")):
		form = utf16Form(unicode.BigEndian, 2)
	case zerosAt(head, 1):
		form = utf16Form(unicode.LittleEndian, 0)
	case zerosAt(head, 0):
		form = utf16Form(unicode.BigEndian, 0)
	case looksBinary(head):
		return form, false, nil
	default:
		form, err = eightBitForm(f, head)
	}
	if err != nil {
		return form, false, err
	}
	sample, err := form.sample(head)
	form.cr = bytes.IndexByte(sample, '\n') < 0 && bytes.IndexByte(sample, '\r') >= 0
	return form, true, err
}

// zerosAt tells UTF-16 without a mark: most bytes at odd (or even) places are
// zero, as they are in any language written in Latin letters, and hardly any
// at the others.
func zerosAt(head []byte, at int) bool {
	var count [2]int
	for i, c := range head {
		if c == 0 {
			count[i&1]++
		}
	}
	pairs := len(head) / 2
	return pairs >= 2 && count[at]*4 > pairs*3 && count[1-at]*20 <= pairs
}

func eightBitForm(f io.ReaderAt, head []byte) (textForm, error) {
	form := textForm{name: "UTF-8"}
	if bytes.HasPrefix(head, []byte("\xef\xbb\xbf")) {
		form.skip = 3
	}
	valid, err := validUTF8(io.NewSectionReader(f, form.skip, 1<<62))
	switch {
	case err != nil || valid:
	case form.skip > 0:
		form.bad = true
		form.note = "marked as UTF-8, but some of it is not: those rows are set aside"
	default:
		form = textForm{name: "Windows-1252", enc: charmap.Windows1252,
			note: "read as Windows-1252, because it is not valid UTF-8"}
	}
	return form, err
}

// validUTF8 reads r to its end and reports whether all of it is UTF-8.
func validUTF8(r io.Reader) (bool, error) {
	buf := make([]byte, 256<<10)
	kept := 0
	for {
		n, err := r.Read(buf[kept:])
		b := buf[:kept+n]
		whole := wholeRunes(b)
		if !utf8.Valid(b[:whole]) {
			return false, nil
		}
		kept = copy(buf, b[whole:])
		if errors.Is(err, io.EOF) {
			return kept == 0, nil
		}
		if err != nil {
			return false, err
		}
	}
}

// wholeRunes is the length of b without a character that is cut off at its end.
func wholeRunes(b []byte) int {
	for i := len(b) - 1; i >= 0 && i >= len(b)-utf8.UTFMax; i-- {
		if utf8.RuneStart(b[i]) {
			if utf8.FullRune(b[i:]) {
				return len(b)
			}
			return i
		}
	}
	return len(b)
}

// sample decodes the beginning of a file.
func (t textForm) sample(head []byte) ([]byte, error) {
	return io.ReadAll(t.decode(bytes.NewReader(head[min(t.skip, int64(len(head))):])))
}

// decode gives r, which begins after the mark, as UTF-8 with line feeds. UTF-8
// itself passes without another layer.
func (t textForm) decode(r io.Reader) io.Reader {
	if t.enc != nil {
		r = transform.NewReader(r, t.enc.NewDecoder())
	}
	if t.cr {
		r = lineFeeds{r}
	}
	return r
}

// lineFeeds turns carriage returns into line feeds, for files of old programs
// that end lines in a lone carriage return.
type lineFeeds struct{ r io.Reader }

func (l lineFeeds) Read(p []byte) (int, error) {
	n, err := l.r.Read(p)
	for i := bytes.IndexByte(p[:n], '\r'); i >= 0 && i < n; i++ {
		if p[i] == '\r' {
			p[i] = '\n'
		}
	}
	return n, err
}
