package sheet

import (
	"bytes"
	"errors"
	"os"
	"strings"
	"testing"
)

func fixture(t testing.TB, name string) []byte {
	t.Helper()
	b, err := os.ReadFile("testdata/" + name)
	if err != nil {
		t.Fatal(err)
	}
	return b
}

func TestXLSRefused(t *testing.T) {
	good := fixture(t, "legs-libreoffice.xls")
	swap := func(old, with string) string {
		if n := bytes.Count(good, []byte(old)); n == 0 {
			t.Fatalf("the fixture has no %q", old)
		}
		return string(bytes.Replace(good, []byte(old), []byte(with), 1))
	}
	for _, c := range []struct{ name, content, want string }{
		{"five.xls", swap("\x09\x08\x10\x00\x00\x06", "\x09\x08\x10\x00\x00\x05"), "is a workbook from before 1997"},
		{"five.xls", swap(streamName("Workbook"), streamName("Book")), "is a workbook from before 1997"},
		{"four.xls", "\x09\x04\x06\x00\x00\x00\x10\x00", "is a workbook from before 1997"},
		{"secret.xls", swap("\x5c\x00\x70\x00", "\x2f\x00\x70\x00"), "is protected by a password"},
		{"letter.xls", swap("W\x00o\x00r\x00k", "W\x00o\x00r\x00d"), "is an old office document, not a sheet"},
		{"cut.xls", string(good[:len(good)/2]), "damaged or not complete"},
		{"head.xls", oleMagic, "damaged or not complete"},
	} {
		t.Run(c.name, func(t *testing.T) { refused(t, write(t, c.name, c.content), c.want) })
	}
	_, err := Open("testdata/legs-libreoffice.xls", Options{MaxUnzipped: 1000})
	if err == nil || !strings.Contains(err.Error(), "more than the 0 MiB allowed") {
		t.Errorf("got %v", err)
	}
}

// streamName is a name as it stands in a compound file, with its length.
func streamName(name string) string {
	var b []byte
	for _, c := range name {
		b = le.AppendUint16(b, uint16(c))
	}
	return string(le.AppendUint16(append(b, make([]byte, 64-len(b))...), uint16(len(b)+2)))
}

// Whatever byte is changed, a workbook is read or refused.
func TestXLSDamaged(t *testing.T) {
	good := fixture(t, "sums-libreoffice.xls")
	refusals := 0
	for at := range good {
		if at%3 != 0 && at > 600 {
			continue
		}
		bad := bytes.Clone(good)
		bad[at] ^= 0xff
		b, err := Open(write(t, "log.xls", string(bad)), Options{})
		if err == nil {
			var list []got
			for i := range b.Sheets() {
				if list, err = read(b, i); err != nil {
					break
				}
				checkRows(t, list)
			}
			_ = b.Close()
		}
		var r *Refusal
		if err != nil && !errors.As(err, &r) {
			t.Fatalf("byte %d: not a refusal: %v", at, err)
		}
		if err != nil {
			refusals++
		}
	}
	if refusals < 200 {
		t.Errorf("only %d of the changes were noticed", refusals)
	}
}

// rec makes a record; stream makes a workbook stream of one sheet, with what
// stands before the sheet and in it.
func rec(typ uint16, body string) string {
	return string(le.AppendUint16(le.AppendUint16(nil, typ), uint16(len(body)))) + body
}

func stream(global, sheet string) []byte {
	bof, end := rec(recBOF, "\x00\x06\x05\x00"), rec(recEOF, "")
	at := len(bof) + len(global) + len(rec(recSheet, "1234567\x00L")) + 1 + len(end)
	name := rec(recSheet, string(le.AppendUint32(nil, uint32(at)))+"\x00\x00\x02\x00LL")
	return []byte(bof + global + name + end + bof + sheet + end)
}

func readStream(t *testing.T, global, sheet string) ([]string, error) {
	t.Helper()
	sheets, reason, err := readBIFF(stream(global, sheet), false)
	if err != nil || reason != "" || len(sheets) != 1 {
		return nil, errors.Join(err, errors.New(reason))
	}
	b := gridBook{name: "log.xls", sheets: sheets}
	r, err := b.Rows(0)
	if err != nil {
		return nil, err
	}
	var rows []string
	for r.Next() {
		rows = append(rows, fullRow(r.Row()))
	}
	return rows, nil
}

func TestBIFF(t *testing.T) {
	at := func(row, col, xf byte) string { return string([]byte{row, 0, col, 0, xf, 0}) }
	format := rec(recFormat, "\xa4\x00\x06\x00\x00[h]:mm") + rec(recXF, "\x00\x00\x00\x00") +
		rec(recXF, "\x00\x00\xa4\x00")
	// the rest of the second goes on in two bytes each
	texts := rec(recTexts, "\x03\x00\x00\x00\x03\x00\x00\x00\x01\x00\x00a\x05\x00\x00b\xe9") +
		rec(recContinue, "\x01c\x00\x0d\x01d\x00\x02\x00\x0c\x01\x00\x05\x00\x00\x00ef1234.....")
	for _, c := range []struct {
		name, global, sheet string
		want                []string
	}{
		{"numbers", format, rec(recRK, at(0, 0, 1)+"\x02\x00\x00\x00") +
			rec(recMulRK,
				"\x00\x00\x01\x00\x00\x00\xf6\xff\xff\xff\x00\x00\x0b\x00\x00\x00\x00\x00\x00\x00\x04\x40\x03\x00") +
			rec(recNumber, at(2, 1, 9)+"\x00\x00\x00\x00\x00\x00\xe0\x3f") +
			rec(recNumber, at(3, 0, 1)+"\x00\x00\x00\x00\x00\x00\xf8\x7f"),
			[]string{`1|"0" duration|"-3"|"0.02"|"2.5`, "2", `3|""|"0.5`, `4|"#NUM!" duration`}},
		{"texts", texts, rec(recTextCell, at(0, 0, 0)+"\x00\x00\x00\x00") +
			rec(recTextCell, at(0, 1, 0)+"\x01\x00\x00\x00") + rec(recTextCell, at(0, 2, 0)+"\x02\x00\x00\x00") +
			rec(recLabel, at(1, 0, 0)+"\x02\x00\x00x\x00"), []string{`1|"a"|"béc` + "č" + `d"|"ef`, `2|"x␀`}},
		{"formulas", "", rec(recFormula, at(0, 0, 0)+"\x00\x00\x00\x00\x00\x00\xff\xff") + rec(0x04bc, "") +
			rec(recString, "\x02\x00\x00x") + rec(recContinue, "\x00y") +
			rec(recFormula, at(0, 1, 0)+"\x02\x00\x2a\x00\x00\x00\xff\xff") +
			rec(recFormula, at(0, 2, 0)+"\x01\x00\x01\x00\x00\x00\xff\xff") +
			rec(recBoolErr, at(0, 3, 0)+"\x07\x01") + rec(recBoolErr, at(0, 4, 0)+"\x00\x00") +
			rec(recFormula, at(1, 0, 0)+"\x03\x00\x00\x00\x00\x00\xff\xff"),
			[]string{`1|"xy"|"#N/A"|"TRUE"|"#DIV/0!"|"FALSE`, "2"}},
		{"a chart within, and a merged area", "", rec(recBOF, "\x00\x06\x20\x00") +
			rec(recBoolErr, at(7, 0, 0)+"\x00\x00") + rec(recEOF, "") + rec(recBoolErr, at(0, 0, 0)+"\x01\x00") +
			rec(recMerge, "\x01\x00\x00\x00\x00\x00\x00\x00\x01\x00") + rec(recBoolErr, at(0, 1, 0)+"\x00\x00"),
			[]string{`1|"TRUE"|"" of "TRUE`}},
	} {
		t.Run(c.name, func(t *testing.T) {
			rows, err := readStream(t, c.global, c.sheet)
			if err != nil {
				t.Fatal(err)
			}
			equal(t, rows, c.want)
		})
	}
	for _, c := range []struct{ name, global, sheet, want string }{
		{"rows out of order", "", rec(recBoolErr, at(1, 0, 0)+"\x00\x00") + rec(recBoolErr, at(0, 0, 0)+"\x00\x00"),
			"row 1 comes after row 2"},
		{"text that is not there", texts, rec(recTextCell, at(0, 0, 0)+"\x03\x00\x00\x00"), "does not hold"},
		{"short record", "", rec(recNumber, at(0, 0, 0)), "too short"},
		{"merged areas cut short", "", rec(recMerge, "\x02\x00\x00\x00\x00\x00\x00\x00\x01\x00"), "cut short"},
		{"column beyond the last", "", rec(recBoolErr, "\x00\x00\xff\xff\x00\x00\x00\x00"), "beyond the last"},
		{"text cut short", "", rec(recLabel, at(0, 0, 0)+"\x09\x00\x00x"), "cut short"},
		{"half a character", "", rec(recLabel, at(0, 0, 0)+"\x02\x00\x01x\x00y"), "cut short"},
		{"shared texts cut short", rec(recTexts, "\x03\x00\x00\x00\x03\x00\x00\x00\x01\x00\x04\xff\xff\xff\x7fa"), "",
			"cut short"},
	} {
		if rows, err := readStream(t, c.global, c.sheet); err == nil || !strings.Contains(err.Error(), c.want) {
			t.Errorf("%s: got %q, %v", c.name, rows, err)
		}
	}
}
