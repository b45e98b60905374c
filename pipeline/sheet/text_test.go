package sheet

import (
	"bytes"
	"slices"
	"strings"
	"testing"
	"unicode/utf8"

	"golang.org/x/text/encoding/charmap"
	"golang.org/x/text/encoding/unicode"
)

// The same table must read the same in every encoding. All its letters are in
// Windows-1252.
func TestEncodings(t *testing.T) {
	const table = "date;length;notes\n2026-07-01;6'2\";café – “naïve”\n"
	utf16le := unicode.UTF16(unicode.LittleEndian, unicode.IgnoreBOM)
	utf16be := unicode.UTF16(unicode.BigEndian, unicode.IgnoreBOM)
	encode := func(s string, err error) string {
		if err != nil {
			t.Fatal(err)
		}
		return s
	}
	le, be := encode(utf16le.NewEncoder().String(table)), encode(utf16be.NewEncoder().String(table))
	for _, c := range []struct{ name, content, encoding string }{
		{"UTF-8", table, "UTF-8"},
		{"UTF-8, marked", "\xef\xbb\xbf" + table, "UTF-8"},
		{"UTF-16LE, marked", "\xff\xfe" + le, "UTF-16LE"},
		{"UTF-16BE, marked", "\xfe\xff" + be, "UTF-16BE"},
		{"UTF-16LE", le, "UTF-16LE"},
		{"UTF-16BE", be, "UTF-16BE"},
		{"Windows-1252", encode(charmap.Windows1252.NewEncoder().String(table)), "Windows-1252"},
	} {
		t.Run(c.name, func(t *testing.T) {
			info, have := readCSV(t, c.content)
			if info.Encoding != c.encoding || info.Workbook || info.Name != "" {
				t.Errorf("%+v", info)
			}
			if said := slices.ContainsFunc(info.Notes, func(n string) bool {
				return strings.Contains(n, "Windows-1252")
			}); said != (c.encoding == "Windows-1252") {
				t.Errorf("notes %q", info.Notes)
			}
			equal(t, have, []string{`1 ["date" "length" "notes"]`, `2 ["2026-07-01" "6'2\"" "café – “naïve”"]`})
		})
	}
}

// The whole file decides, not its beginning.
func TestEncodingDecidedLate(t *testing.T) {
	plain := strings.Repeat("1,2\n", 200000)
	if info, _ := readCSV(t, plain+"caf\xe9,1\n"); info.Encoding != "Windows-1252" {
		t.Errorf("encoding %s", info.Encoding)
	}
	if info, _ := readCSV(t, plain+"café,1\n"); info.Encoding != "UTF-8" {
		t.Errorf("encoding %s", info.Encoding)
	}
}

func TestMarkedUTF8WithBadRow(t *testing.T) {
	info, have := readCSV(t, "\xef\xbb\xbfa,b\ncaf\xe9,1\ncafé,2\n")
	if info.Encoding != "UTF-8" || len(info.Notes) != 1 {
		t.Errorf("%+v", info)
	}
	equal(t, have, []string{`1 ["a" "b"]`, `2 ! log.csv:2:1: "caf�": the text is not valid UTF-8`, `3 ["café" "2"]`})
}

// A character may be cut by the end of any block that is read.
func TestValidUTF8AcrossBlocks(t *testing.T) {
	for shift := range 4 {
		text := strings.Repeat("x", shift) + strings.Repeat("🐟é–", 100000)
		ok, err := validUTF8(strings.NewReader(text))
		if err != nil || !ok {
			t.Errorf("shift %d: %v, %v", shift, ok, err)
		}
		if ok, err := validUTF8(strings.NewReader(text[:len(text)-1])); err != nil || ok {
			t.Errorf("shift %d, last character cut: %v, %v", shift, ok, err)
		}
	}
}

func TestWholeRunes(t *testing.T) {
	for text, want := range map[string]int{"": 0, "ab": 2, "aé": 3, "a\xc3": 1,
		"a\xf0\x9f\x90": 1, "\x80\x80\x80\x80\x80": 5} {
		if got := wholeRunes([]byte(text)); got != want {
			t.Errorf("%q: %d, want %d", text, got, want)
		}
	}
}

func TestExcerpt(t *testing.T) {
	s := excerpt(strings.Repeat("é\x00", 1000) + "\r\n")
	if len(s) > 2*maxExcerpt || !utf8.ValidString(s) || bytes.IndexByte([]byte(s), 0) >= 0 {
		t.Errorf("%d bytes: %q", len(s), s)
	}
}
