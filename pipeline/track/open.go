package track

import (
	"archive/zip"
	"bufio"
	"bytes"
	"compress/gzip"
	"errors"
	"fmt"
	"io"
	"os"
	"path"
	"path/filepath"
	"regexp"
	"strings"
	"sync"
	"time"

	"golang.org/x/text/encoding/unicode"
	"golang.org/x/text/transform"

	"wakeledger/pipeline/infile"
	"wakeledger/pipeline/record"
	"wakeledger/pipeline/unit"
)

// MaxUnpacked is how many bytes a packed track may unpack to, all files of a
// zip together: some 400 days of fixes each second.
const MaxUnpacked = 8 << 30

// ErrTooLarge is returned while reading a packed track that unpacks to more than
// MaxUnpacked.
var ErrTooLarge = errors.New("unpacks to more than 8 GiB: is it a track?")

// Is tells whether a file is a track, by its beginning, or a zip that holds one. A
// file that cannot be opened is none.
func Is(file string) bool {
	found := false
	_ = parts(file, func(p part) error {
		b, closePart, err := p.open()
		if err != nil {
			return nil // not to be read, so no track
		}
		defer closePart()
		if name, _ := format(peek(b)); name != "" {
			found = true
			return errFound
		}
		return nil
	})
	return found
}

var errFound = errors.New("found")

// part is a file, or one in a zip.
type part struct {
	name string // in the zip; "" otherwise
	size int64  // in bytes, as far as the file says
	raw  func() (io.ReadCloser, error)
}

// open gives the part's text from its beginning.
func (p part) open() (*bufio.Reader, func() error, error) {
	r, err := p.raw()
	if err != nil {
		return nil, nil, err
	}
	b, err := unpacked(r, int(min(max(p.size, 4<<10), bufferSize)))
	if err != nil {
		return nil, nil, errors.Join(err, r.Close())
	}
	return b, r.Close, nil
}

// parts calls do for a file, or for each file of a zip but hidden ones and those
// of a workbook.
func parts(file string, do func(part) error) error {
	if err := infile.Check(file); err != nil {
		return err
	}
	f, err := os.Open(file)
	if err != nil {
		return err
	}
	var magic [4]byte
	_, err = io.ReadFull(f, magic[:])
	info, statErr := f.Stat()
	if err = errors.Join(err, statErr, f.Close()); err != nil {
		return err
	}
	if string(magic[:]) != "PK\x03\x04" {
		return do(part{size: info.Size(), raw: func() (io.ReadCloser, error) { return os.Open(file) }})
	}
	z, err := zip.OpenReader(file)
	if err != nil {
		return err
	}
	defer z.Close()
	for _, m := range members(&z.Reader) {
		err := do(part{name: m.Name, size: bufferSize, raw: func() (io.ReadCloser, error) {
			r, err := m.Open()
			if err != nil {
				return nil, fmt.Errorf("%s: %w", m.Name, err)
			}
			return struct {
				io.Reader
				io.Closer
			}{&capped{r, MaxUnpacked}, r}, nil
		}})
		if err != nil {
			return err
		}
	}
	return nil
}

// members are the files of a zip that may be tracks. A workbook is a zip too.
func members(z *zip.Reader) []*zip.File {
	var found []*zip.File
	for _, m := range z.File {
		if m.Name == "[Content_Types].xml" || m.Name == "mimetype" {
			return nil
		}
		base := path.Base(m.Name)
		if !m.FileInfo().IsDir() && !strings.HasPrefix(base, ".") && !strings.HasPrefix(m.Name, "__MACOSX/") {
			found = append(found, m)
		}
	}
	return found
}

func peek(r *bufio.Reader) []byte {
	head, _ := r.Peek(sniffed)
	return head
}

const bufferSize = 256 << 10

// unpacked is the text of a file that may be gzipped, in UTF-8, read size bytes at a time.
func unpacked(r io.Reader, size int) (*bufio.Reader, error) {
	b := bufio.NewReaderSize(r, size)
	if head, _ := b.Peek(2); !bytes.Equal(head, []byte("\x1f\x8b")) {
		return inUTF8(b), nil
	}
	z, err := gzip.NewReader(b)
	if err != nil {
		return nil, err
	}
	return inUTF8(bufio.NewReaderSize(&capped{z, MaxUnpacked}, bufferSize)), nil
}

// inUTF8 is a text without its byte order mark. What is in UTF-16 has one: XML
// 1.0, section 4.3.3, asks for it.
func inUTF8(b *bufio.Reader) *bufio.Reader {
	switch head, _ := b.Peek(3); {
	case bytes.HasPrefix(head, []byte("\xff\xfe")), bytes.HasPrefix(head, []byte("\xfe\xff")):
		decoder := unicode.UTF16(unicode.BigEndian, unicode.ExpectBOM).NewDecoder()
		return bufio.NewReaderSize(transform.NewReader(b, decoder), bufferSize)
	case bytes.HasPrefix(head, []byte("\xef\xbb\xbf")):
		// three bytes that were just seen can be passed over
		_, _ = b.Discard(3)
	}
	return b
}

// capped ends with an error once more than left bytes were read.
type capped struct {
	r    io.Reader
	left int64
}

func (c *capped) Read(b []byte) (int, error) {
	n, err := c.r.Read(b)
	if c.left -= int64(n); c.left < 0 {
		return n, ErrTooLarge
	}
	return n, err
}

// sentenceStart is a line that ends with a sentence. It is large: most runs read no NMEA.
var sentenceStart = sync.OnceValue(func() *regexp.Regexp {
	return regexp.MustCompile(
		`(?m)^[^\n]{0,160}?(?:\$[A-Z]{2}[A-Z]{3},|\$P[A-Z]{3,},|![A-Z]{2}VD[MO],)[^\n]*\*[0-9A-Fa-f]{2}`)
})

// format is GPX, NMEA or CSV, by a file's beginning, and how a CSV is to be read; ""
// for none of them.
func format(head []byte) (string, shape) {
	head = bytes.TrimLeft(head, " \t\r\n")
	if bytes.HasPrefix(head, []byte("<")) {
		if bytes.Contains(head, []byte("<gpx")) || bytes.Contains(head, []byte(":gpx")) {
			return "GPX", shape{}
		}
		return "", shape{}
	}
	if start := head[:min(len(head), 4096)]; bytes.ContainsAny(start, "$!") && sentenceStart().Match(start) {
		return "NMEA", shape{}
	}
	if bytes.IndexByte(head, 0) >= 0 {
		return "", shape{}
	}
	if s, ok := sniff(head); ok {
		return "CSV", s
	}
	return "", shape{}
}

// File is one track of a log: the log itself, or a file of a zip.
type File struct {
	Name   string // in the zip; "" otherwise
	Format string // "" for a file of a zip that is no track; it has no Reader
	Reader Reader
	// Days are the first days that a table without a certain order of day and month
	// may tell of; nil otherwise.
	Days *Days
}

// Options say how tracks are read.
type Options struct {
	// Zone is the clock of times that name none; nil: UTC.
	Zone *time.Location
	// Order tells the order of day and month where a table's own dates do not; nil:
	// nothing does, and such a table gives no fix.
	Order func(member string, d Days) unit.Order
}

// Each opens a log's tracks one after the other and gives each to do.
func Each(file string, o Options, bad Keeper, do func(File) error) error {
	base := filepath.Base(file)
	err := parts(file, func(p part) error { return o.one(p, record.Pos{File: base, Sheet: p.name}, bad, do) })
	if err != nil && !strings.HasPrefix(err.Error(), base) {
		return fmt.Errorf("%s: %w", base, err)
	}
	return err
}

func (o Options) one(p part, pos record.Pos, bad Keeper, do func(File) error) error {
	b, closePart, err := p.open()
	if err != nil {
		return err
	}
	defer closePart()
	f := File{Name: p.name}
	var s shape
	f.Format, s = format(peek(b))
	few := &sparing{bad: bad}
	switch f.Format {
	case "GPX":
		few.Reader = newGPX(b, pos, few.keep)
	case "NMEA":
		few.Reader = newNMEA(b, pos, few.keep)
	case "CSV":
		if s.unsure {
			if f.Days, err = o.settle(p, &s); err != nil {
				return err
			}
		}
		if few.Reader, err = newTable(b, s, pos, o.Zone, few.keep); err != nil {
			return err
		}
	default:
		return do(f)
	}
	f.Reader = few
	return do(f)
}

// sparing tells a keeper the first bad rows of each kind, and at the end how many
// more there were: a track may have as many as it has fixes.
type sparing struct {
	Reader
	bad  Keeper
	last map[string]record.Problem
	n    map[string]int
	all  []string // reasons in order
}

const mostAlike = 5

func (s *sparing) keep(p record.Problem) error {
	if s.n == nil {
		s.n, s.last = map[string]int{}, map[string]record.Problem{}
	}
	key := p.Reason
	if strings.HasPrefix(key, wrongSum) {
		key = wrongSum
	}
	if s.n[key]++; s.n[key] == 1 {
		s.all = append(s.all, key)
	}
	if s.n[key] > mostAlike {
		s.last[key] = p
		return nil
	}
	return s.bad(p)
}

func (s *sparing) Next() (Fix, bool, error) {
	f, ok, err := s.Reader.Next()
	if ok || err != nil {
		return f, ok, err
	}
	for _, key := range s.all {
		if n := s.n[key] - mostAlike; n > 0 {
			p := s.last[key]
			p.Cell, p.Reason = "", fmt.Sprintf("%s: %d more rows, this the last", key, n)
			if err := s.bad(p); err != nil {
				return f, false, err
			}
		}
	}
	s.all = nil
	return f, false, nil
}
