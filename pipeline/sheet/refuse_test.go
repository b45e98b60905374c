package sheet

import (
	"archive/zip"
	"bytes"
	"encoding/binary"
	"errors"
	"io/fs"
	"os"
	"path/filepath"
	"strings"
	"testing"

	"github.com/xuri/excelize/v2"
)

// refused checks that a file is refused, in one sentence that names the file
// and holds want.
func refused(t *testing.T, path, want string) {
	t.Helper()
	b, err := Open(path, Options{})
	if err == nil {
		t.Fatalf("%s was opened: %+v", filepath.Base(path), b.Sheets())
	}
	var r *Refusal
	if !errors.As(err, &r) {
		t.Fatalf("not a refusal: %v", err)
	}
	text := err.Error()
	if !strings.HasPrefix(text, filepath.Base(path)+": ") || !strings.Contains(text, want) ||
		strings.ContainsAny(text, "\n") {
		t.Errorf("got %q, want it to hold %q", text, want)
	}
	if strings.Contains(text, filepath.Dir(path)) {
		t.Errorf("it names a folder: %q", text)
	}
}

func TestRefusedByContent(t *testing.T) {
	noise := make([]byte, 4096)
	for i := range noise {
		noise[i] = byte(i * i >> 3)
	}
	for _, c := range []struct{ name, content, want string }{
		{"empty.csv", "", "is empty"},
		{"blank.csv", "\n \r\n", "is empty"},
		{"mark.csv", "\xef\xbb\xbf", "is empty"},
		{"mark16.csv", "\xff\xfe", "is empty"},
		{"log.pdf", "%PDF-1.7\n", "is a PDF"},
		{"log.csv", "%PDF-1.7\n", "is a PDF"},
		{"photo.jpg", "\xff\xd8\xff\xe0\x00\x10JFIF", "is a picture"},
		{"photo.png", "\x89PNG\r\n\x1a\n\x00\x00\x00\rIHDR", "is a picture"},
		{"photo.heic", "\x00\x00\x00\x18ftypheic", "is a picture"},
		{"log.csv.gz", "\x1f\x8b\x08\x00", "is a packed archive"},
		{"page.xls", "\n<!DOCTYPE html><html><table>", "is a web page"},
		{"old.xml", "<?xml version=\"1.0\"?><Workbook xmlns=\"urn:schemas-microsoft-com:office:spreadsheet\">",
			"is a sheet in XML"},
		{"track.gpx", "<?xml version=\"1.0\"?>\n<gpx version=\"1.1\">", "is a GPX track"},
		{"other.xml", "<?xml version=\"1.0\"?><a/>", "is an XML document"},
		{"utf32.csv", "\xff\xfe\x00\x00a\x00\x00\x00", "UTF-32"},
		{"noise.csv", string(noise), "is not text"},
		{"cut.xlsx", "PK\x03\x04\x14\x00", "is damaged or not complete"},
		{"none.xlsx", "PK\x05\x06" + strings.Repeat("\x00", 18), "is an empty zip archive"},
	} {
		t.Run(c.name, func(t *testing.T) { refused(t, write(t, c.name, c.content), c.want) })
	}
}

// A few odd bytes are no reason to refuse a log.
func TestNotRefused(t *testing.T) {
	for _, content := range []string{"a,b\n1\x00,2\n", "a", "BM,PK\n", "\x01\x02,\x03\n"} {
		b, err := Open(write(t, "log.csv", content), Options{})
		if err != nil {
			t.Errorf("%q: %v", content, err)
			continue
		}
		if err := b.Close(); err != nil {
			t.Error(err)
		}
	}
}

func TestRefusedPaths(t *testing.T) {
	dir := t.TempDir()
	refused(t, dir, "is a folder")
	missing := filepath.Join(dir, "none.csv")
	refused(t, missing, "there is no such file")
	if _, err := Open(missing, Options{}); !errors.Is(err, fs.ErrNotExist) {
		t.Errorf("the cause is lost: %v", err)
	}
	refused(t, os.DevNull, "is not an ordinary file")
}

func TestRefusedDocument(t *testing.T) {
	refused(t, write(t, "letter.doc", oleMagic+strings.Repeat("\x00", 600)), "is an old office document")
}

func TestRefusedPassword(t *testing.T) {
	f := excelize.NewFile()
	path := filepath.Join(t.TempDir(), "secret.xlsx")
	if err := f.SaveAs(path, excelize.Options{Password: "wren"}); err != nil {
		t.Fatal(err)
	}
	if err := f.Close(); err != nil {
		t.Fatal(err)
	}
	refused(t, path, "is protected by a password")
}

func TestRefusedArchives(t *testing.T) {
	good := sheetXML(`<row r="1"><c r="A1"><v>1</v></c></row>`, "")
	with := func(name, content string) map[string]string {
		p := parts(good)
		p[name] = content
		return p
	}
	without := func(name string) map[string]string {
		p := parts(good)
		delete(p, name)
		return p
	}
	many := parts(good)
	for i := range maxParts {
		many["xl/media/"+strings.Repeat("x", i%7)+string(rune(0x4e00+i))] = ""
	}
	for _, c := range []struct {
		name  string
		parts map[string]string
		want  string
	}{
		{"photos.zip", map[string]string{"a.txt": "x"}, "without a workbook"},
		{"talk.pptx", map[string]string{"ppt/presentation.xml": "x"}, "is a presentation"},
		{"binary.xlsb", map[string]string{"xl/workbook.bin": "x"}, "is a binary workbook (.xlsb)"},
		{"bomb.xlsx", with("xl/media/a.png", strings.Repeat("\x00", ratioFrom+1)), "is packed more than"},
		{"many.xlsx", many, "holds 10005 parts"},
		{"nosheet.xlsx", without("xl/worksheets/sheet1.xml"), "is missing"},
		{"norels.xlsx", without("xl/_rels/workbook.xml.rels"), "is missing"},
		{"badbook.xlsx", with("xl/workbook.xml", "<workbook><sheets>"), "is damaged"},
		{"chart.xlsx", with("xl/_rels/workbook.xml.rels", relsHead+`<Relationship Id="r1" Type="`+relType+
			`chartsheet" Target="worksheets/sheet1.xml"/></Relationships>`), "has no sheets with cells"},
	} {
		t.Run(c.name, func(t *testing.T) { refused(t, writeZip(t, c.name, c.parts), c.want) })
	}
}

// The limit counts what the archive declares, before unpacking.
func TestRefusedUnzippedSize(t *testing.T) {
	path := writeZip(t, "log.xlsx", parts(sheetXML(`<row r="1"><c r="A1"><v>1</v></c></row>`, "")))
	_, err := Open(path, Options{MaxUnzipped: 1000})
	if err == nil || !strings.Contains(err.Error(), "more than the 0 MiB allowed") {
		t.Errorf("got %v", err)
	}
}

// A part that unpacks to more than it declares is cut off by archive/zip.
func TestFalseSize(t *testing.T) {
	rows := strings.Repeat(" ", 12000) + `<row r="1"><c r="A1"><v>1</v></c></row>`
	p := parts(sheetXML(rows, ""))
	content, err := os.ReadFile(writeZip(t, "log.xlsx", p))
	if err != nil {
		t.Fatal(err)
	}
	size := binary.LittleEndian.AppendUint32(nil, uint32(len(p["xl/worksheets/sheet1.xml"])))
	if n := bytes.Count(content, size); n != 2 {
		t.Fatalf("the size stands %d times in the archive", n)
	}
	small := binary.LittleEndian.AppendUint32(nil, 100)
	checkDamage(t, bytes.ReplaceAll(content, size, small), "the size")
}

// checkDamage checks that a damaged workbook is not read as if it were whole.
func checkDamage(t *testing.T, content []byte, what string) {
	t.Helper()
	b, err := Open(write(t, "log.xlsx", string(content)), Options{})
	if err == nil {
		_, err = read(b, 0)
		if err := b.Close(); err != nil {
			t.Error(err)
		}
	}
	var r *Refusal
	if !errors.As(err, &r) {
		t.Errorf("damage to %s: got %v", what, err)
	}
}

func TestRefusedCutWorkbook(t *testing.T) {
	content, err := os.ReadFile("testdata/legs-libreoffice.xlsx")
	if err != nil {
		t.Fatal(err)
	}
	for _, n := range []int{5, 100, len(content) / 2, len(content) - 1} {
		refused(t, write(t, "log.xlsx", string(content[:n])), "is damaged or not complete")
	}
}

// A changed byte in any part that holds the log or leads to it is noticed,
// though excelize looks over it.
func TestDamagedParts(t *testing.T) {
	content, err := os.ReadFile("testdata/legs-libreoffice.xlsx")
	if err != nil {
		t.Fatal(err)
	}
	z, err := zip.NewReader(bytes.NewReader(content), int64(len(content)))
	if err != nil {
		t.Fatal(err)
	}
	for _, name := range []string{"xl/workbook.xml", "xl/_rels/workbook.xml.rels",
		"xl/worksheets/sheet1.xml", stringsPart} {
		f := part(z, name)
		if f == nil {
			t.Fatalf("no part %s", name)
		}
		at, err := f.DataOffset()
		if err != nil {
			t.Fatal(err)
		}
		bad := bytes.Clone(content)
		bad[at+int64(f.CompressedSize64)*3/4] ^= 0x10
		checkDamage(t, bad, name)
	}
}
