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
	"strings"
	"time"

	"golang.org/x/text/encoding/unicode"
	"golang.org/x/text/transform"

	"wakeledger/pipeline/infile"
	"wakeledger/pipeline/record"
)

// MaxUnpacked is how many bytes a packed track may unpack to, all files of a
// zip together: some 400 days of fixes each second.
const MaxUnpacked = 8 << 30

const headSize = 4096

// ErrTooLarge is returned while reading a packed track that unpacks to more than
// MaxUnpacked.
var ErrTooLarge = errors.New("unpacks to more than 8 GiB: is it a track?")

// Is tells whether a file is a track, by its first bytes or, of a zip, those of
// its first file. A file that cannot be opened is none.
func Is(file string) bool {
	if infile.Check(file) != nil {
		return false
	}
	f, err := os.Open(file)
	if err != nil {
		return false
	}
	defer f.Close()
	head, _ := bufio.NewReaderSize(f, headSize).Peek(headSize)
	if !bytes.HasPrefix(head, []byte("PK\x03\x04")) {
		r, err := unpacked(bytes.NewReader(head))
		return err == nil && format(peek(r)) != ""
	}
	z, err := zip.OpenReader(file)
	if err != nil {
		return false
	}
	defer z.Close()
	found := members(&z.Reader)
	if len(found) == 0 {
		return false
	}
	r, err := found[0].Open()
	if err != nil {
		return false
	}
	defer r.Close()
	u, err := unpacked(r)
	return err == nil && format(peek(u)) != ""
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
	head, _ := r.Peek(headSize)
	return head
}

const bufferSize = 256 << 10

// unpacked is the text of a file that may be gzipped, in UTF-8.
func unpacked(r io.Reader) (*bufio.Reader, error) {
	b := bufio.NewReaderSize(r, bufferSize)
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

// format is GPX, NMEA or CSV, by a file's beginning; "" for none of them.
func format(head []byte) string {
	head = bytes.TrimLeft(head, " \t\r\n")
	if bytes.HasPrefix(head, []byte("<")) {
		if bytes.Contains(head, []byte("<gpx")) || bytes.Contains(head, []byte(":gpx")) {
			return "GPX"
		}
		return ""
	}
	for i, line := range bytes.SplitN(head, []byte("\n"), 40) {
		if i == 0 {
			if _, _, _, ok := heading(string(line)); ok {
				return "CSV"
			}
		}
		if at := bytes.IndexByte(line, '$'); at >= 0 && len(line) > at+7 && line[at+6] == ',' && bytes.IndexByte(line, '*') > at {
			return "NMEA"
		}
	}
	return ""
}

// File is one track of a log: the log itself, or a file of a zip.
type File struct {
	Name   string // in the zip; "" otherwise
	Format string
	Reader Reader
}

// Each opens a log's tracks one after the other and gives each to do. zone is
// the clock of times that name none, UTC where it is nil.
func Each(file string, zone *time.Location, bad Keeper, do func(File) error) error {
	if err := infile.Check(file); err != nil {
		return err
	}
	f, err := os.Open(file)
	if err != nil {
		return err
	}
	defer f.Close()
	o := opening{base: filepath.Base(file), zone: zone, bad: bad, do: do}
	var magic [4]byte
	if _, err := io.ReadFull(f, magic[:]); err != nil {
		return fmt.Errorf("%s: %w", o.base, err)
	}
	if _, err := f.Seek(0, io.SeekStart); err != nil {
		return err
	}
	if string(magic[:]) != "PK\x03\x04" {
		return o.one(f, "")
	}
	z, err := zip.OpenReader(file)
	if err != nil {
		return fmt.Errorf("%s: %w", o.base, err)
	}
	defer z.Close()
	for _, m := range members(&z.Reader) {
		r, err := m.Open()
		if err != nil {
			return fmt.Errorf("%s: %s: %w", o.base, m.Name, err)
		}
		err = o.one(&capped{r, MaxUnpacked}, m.Name)
		r.Close()
		if err != nil {
			return err
		}
	}
	return nil
}

type opening struct {
	base string
	zone *time.Location
	bad  Keeper
	do   func(File) error
}

func (o *opening) one(r io.Reader, member string) error {
	b, err := unpacked(r)
	if err != nil {
		return fmt.Errorf("%s: %w", o.base, err)
	}
	t := File{Name: member, Format: format(peek(b))}
	pos := record.Pos{File: o.base, Sheet: member}
	switch t.Format {
	case "GPX":
		t.Reader = newGPX(b, pos, o.bad)
	case "NMEA":
		t.Reader = newNMEA(b, pos, o.bad)
	case "CSV":
		if t.Reader, err = newTable(b, pos, o.zone, o.bad); err != nil {
			return fmt.Errorf("%s: %w", o.base, err)
		}
	default:
		return o.bad(record.Problem{Pos: pos, Reason: "is no track: neither GPX nor NMEA 0183 nor a CSV of time, lat and lon"})
	}
	if err := o.do(t); err != nil {
		return fmt.Errorf("%s: %w", o.base, err)
	}
	return nil
}
