package sheet

import (
	"encoding/csv"
	"errors"
	"fmt"
	"slices"
	"strings"
	"testing"
	"unicode/utf8"
)

// maxFuzz bounds the inputs, so that a slow one is a fault.
const maxFuzz = 1 << 16

// FuzzCSV reads any bytes as a log: it must not fail in any other way than by a
// refusal, number its rows in order, and give only valid UTF-8. Where
// encoding/csv reads the file without complaint, it must give the same records.
func FuzzCSV(f *testing.F) {
	for _, s := range []string{"a,b\n1,2\n", "sep=;\na;b\n", "\"x\ny\",1\n\n6'2\",\"74\"\n",
		"\"74,1\n2,3\n\"", "\xff\xfea\x00,\x00b\x00",
		"caf\xe9;1\r\n\r\n", "a\rb\r", "\xef\xbb\xbf\"\",\xff\n", "PK\x03\x04", "a,b\x00\n", "\"a\"\"\nb\" ,\n"} {
		f.Add([]byte(s))
	}
	f.Fuzz(func(t *testing.T, content []byte) {
		if len(content) > maxFuzz {
			return
		}
		path := write(t, "log.csv", string(content))
		b, err := Open(path, Options{})
		if err != nil {
			var r *Refusal
			if !errors.As(err, &r) {
				t.Fatalf("not a refusal: %v", err)
			}
			return
		}
		defer func() { _ = b.Close() }()
		list, err := read(b, 0)
		if err != nil && !b.Sheets()[0].Workbook {
			t.Fatal(err)
		}
		checkRows(t, list)
		checkAgainstStandard(t, b, list, content)
	})
}

// checkRows checks what holds for the rows of any sheet.
func checkRows(t *testing.T, list []got) {
	t.Helper()
	last := 0
	for _, g := range list {
		if g.num <= last {
			t.Fatalf("row %d comes after row %d", g.num, last)
		}
		last = g.num
		if g.problem != nil && (len(g.cells) > 0 || g.problem.Pos.Row != g.num || g.problem.Reason == "") {
			t.Fatalf("row %d: %+v", g.num, g)
		}
		for _, c := range g.cells {
			if !utf8.ValidString(c) || strings.IndexByte(c, 0) >= 0 || tooLong(c) {
				t.Fatalf("row %d: %q", g.num, c)
			}
		}
	}
}

// checkAgainstStandard compares with encoding/csv, where that reads all.
func checkAgainstStandard(t *testing.T, b Book, list []got, content []byte) {
	t.Helper()
	tb, ok := b.(*textBook)
	if !ok || tb.form.enc != nil || tb.form.cr || tb.form.bad || tb.head > 0 {
		return
	}
	r := csv.NewReader(strings.NewReader(string(content[tb.form.skip:])))
	r.Comma, r.FieldsPerRecord = rune(tb.sep), -1
	all, err := r.ReadAll()
	if err != nil || slices.ContainsFunc(list, func(g got) bool { return g.problem != nil }) {
		return
	}
	list = slices.DeleteFunc(list, func(g got) bool { return len(g.cells) == 0 })
	var have [][]string
	for _, g := range list {
		have = append(have, g.cells)
	}
	if fmt.Sprintf("%q", have) != fmt.Sprintf("%q", all) {
		t.Fatalf("got %q, encoding/csv gives %q", have, all)
	}
}

// FuzzWorkbook reads any XML as the sheet and the shared texts of a workbook.
func FuzzWorkbook(f *testing.F) {
	texts := `<sst><si><t>a</t></si><si><r><t>b</t></r></si></sst>`
	f.Add(
		sheetXML(
			`<row r="1"><c r="A1" t="s"><v>0</v></c><c r="B1" t="b"><v>1</v></c></row><row r="4"><c r="A4"><f>B1</f></c></row>`, `<mergeCells><mergeCell ref="A1:A3"/></mergeCells>`), texts)
	f.Add(sheetXML(`<row><c t="inlineStr"><is><t>x</t></is></c><c t="str"><f>A1</f><v></v></c></row>`, ""), texts)
	f.Add(sheetXML(`<row r="2"/><row r="1"/>`, "<!-- > -->"), "")
	f.Add(`<worksheet><sheetData/></worksheet>`, "<sst/>")
	f.Add(`<worksheet><sheetData><row r="3"><c r="A3" t="e"><v>#N/A</v></c><c r="XFD3"><v>1</v>`, texts)
	f.Fuzz(func(t *testing.T, sheet, texts string) {
		if len(sheet)+len(texts) > maxFuzz {
			return
		}
		p := parts(sheet)
		p[stringsPart] = texts
		b, err := Open(writeZip(t, "log.xlsx", p), Options{})
		if err != nil {
			return
		}
		defer func() { _ = b.Close() }()
		list, err := read(b, 0)
		checkRows(t, list)
		if err == nil && len(list) > 0 && isBlank(list[len(list)-1].cells) && list[len(list)-1].problem == nil &&
			!strings.Contains(texts, "t") {
			t.Fatalf("the last row is blank: %+v", list[len(list)-1])
		}
	})
}

// FuzzODS reads any XML as the content and the styles of an OpenDocument sheet.
func FuzzODS(f *testing.F) {
	cell := `<t:table-cell o:value-type="date" o:date-value="2026-07-01" t:style-name="a" t:number-columns-repeated="2"/>`
	f.Add(odsParts(`<s:style s:name="a" s:data-style-name="b"/><n:date-style s:name="b"><n:day/></n:date-style>`,
		oneTable(`<t:table-column/><t:table-row t:number-rows-repeated="2">`+cell+`</t:table-row>`))[odsContent],
		"<a/>")
	f.Add(
		odsParts("",
			oneTable(
				`<t:table-row><t:table-cell t:number-rows-spanned="2"><o:annotation><x:p>c</x:p></o:annotation><x:p>a<x:s x:c="3"/></x:p></t:table-cell></t:table-row>`))[odsContent], "")
	f.Fuzz(func(t *testing.T, content, styles string) {
		if len(content)+len(styles) > maxFuzz {
			return
		}
		p := map[string]string{"mimetype": odsMedia, odsContent: content}
		if styles != "" {
			p["styles.xml"] = styles
		}
		checkBook(t, writeZip(t, "log.ods", p))
	})
}

// FuzzDocx reads any XML as the words of a text document.
func FuzzDocx(f *testing.F) {
	f.Add(docxParts(para("a\tb") + "<w:p/>" + tableOf([]string{`<w:gridSpan w:val="2"/><w:vMerge w:val="restart"/>|a`, "b"},
		[]string{`<w:gridSpan w:val="2"/><w:vMerge/>|`, "c"}))[docxPart])
	f.Add("<body><tbl><tr><tc><tbl><tr><tc><p><br/></p></tc></tr></tbl></tc></tr></tbl></body>")
	f.Fuzz(func(t *testing.T, content string) {
		if len(content) <= maxFuzz {
			checkBook(t, writeZip(t, "log.docx", map[string]string{docxPart: content}))
		}
	})
}

// FuzzXLS reads any bytes as a compound file.
func FuzzXLS(f *testing.F) {
	f.Add(fixture(f, "sums-libreoffice.xls"))
	f.Add(fixture(f, "legs-gnumeric.xls"))
	f.Fuzz(func(t *testing.T, content []byte) {
		if len(content) <= maxFuzz {
			checkBook(t, write(t, "log.xls", string(content)))
		}
	})
}

// FuzzBIFF reads any bytes as the stream of a workbook.
func FuzzBIFF(f *testing.F) {
	f.Add(stream(rec(recTexts, "\x01\x00\x00\x00\x01\x00\x00\x00\x02\x00\x00a")+rec(recContinue, "\x01b\x00"),
		rec(recTextCell, strings.Repeat("\x00", 10))))
	f.Add(stream(rec(recXF, "\x00\x00\x16\x00"), rec(recFormula, strings.Repeat("\x00", 12)+"\xff\xff")+
		rec(recString, "\x01\x00\x00x")+rec(recMerge, "\x01\x00\x00\x00\x01\x00\x00\x00\x01\x00")))
	f.Fuzz(func(t *testing.T, content []byte) {
		if len(content) > maxFuzz {
			return
		}
		sheets, _, _ := readBIFF(content, true)
		for i := range sheets {
			list, _ := read(&gridBook{name: "log.xls", sheets: sheets}, i)
			checkRows(t, list)
		}
	})
}

// checkBook checks that a file is refused, or its sheets are or give good rows.
func checkBook(t *testing.T, path string) {
	b, err := Open(path, Options{Details: true})
	for i := 0; err == nil && i < len(b.Sheets()); i++ {
		var list []got
		list, err = read(b, i)
		checkRows(t, list)
	}
	var r *Refusal
	if err != nil && !errors.As(err, &r) {
		t.Fatalf("not a refusal: %v", err)
	}
	if b != nil {
		_ = b.Close()
	}
}
