package sheet

import (
	"errors"
	"fmt"
	"math"
	"os"
	"runtime"
	"slices"
	"strconv"
	"strings"
	"testing"
	"time"
	"wakeledger/pipeline/tag"

	"github.com/xuri/excelize/v2"
)

// legsTable is what testdata/make.py puts into the sheet "Legs 2026"; serials
// are worked by hand: 46204 is 2026-07-01, 6:30 is 6.5/24 of a day, 25 hours
// 25/24, 18:45 is 0.78125, 23:59:59 is 86399/86400.
func legsTable(first, last int) [][]string {
	day := func(n float64) string { return strconv.FormatFloat(n, 'g', -1, 64) }
	start := float64(first)
	return [][]string{
		{"Sea Wren - season 2026"},
		nil,
		{"Trip", "Date", "Start", "Duration", "Speed kn", "Length", "Certified", "Notes"},
		{"T1", day(start), day(6.5 / 24), day(25.0 / 24), "8.5", "6'2\"", "TRUE", "Ťuňa, \"big\"\nsecond line"},
		{"", day(start), "0.5", "0.0625", "12", "74\"", "FALSE", "café\u00a0bar <&>"},
		{"", day(start + 1.78125), day(86399.0 / 86400), "0.03125", "0.1", "188 cm"},
		nil,
		{"T2", strconv.Itoa(last), "0", "", "-3", "", "TRUE", "5 < 6 & 7 > 6"},
	}
}

// sameCell compares numbers as numbers: programs write them to 15 or more digits.
func sameCell(a, b string) bool {
	x, errX := strconv.ParseFloat(a, 64)
	y, errY := strconv.ParseFloat(b, 64)
	if errX != nil || errY != nil {
		return a == b
	}
	return math.Abs(x-y) < 1e-9
}

func sameRow(t *testing.T, num int, have, want []string) {
	t.Helper()
	for i := range max(len(have), len(want)) {
		h, w := "", ""
		if i < len(have) {
			h = have[i]
		}
		if i < len(want) {
			w = want[i]
		}
		if !sameCell(h, w) {
			t.Errorf("row %d, cell %d: got %q, want %q", num, i+1, h, w)
		}
	}
}

// The same table must read the same whatever program saved it.
func TestWorkbooksOfOtherPrograms(t *testing.T) {
	for _, c := range []struct {
		file        string
		first, last int
		hidden      bool
	}{
		{"legs-gnumeric.ods", 46204, 46387, true},
		{"legs-gnumeric.xls", 46204, 46387, true},
		{"legs-openpyxl.xlsx", 46204, 46387, true},
		{"legs-libreoffice.xlsx", 46204, 46387, true},
		{"legs-gnumeric.xlsx", 46204, 46387, false}, // It forgets that a sheet was hidden.
		{"legs1904-openpyxl.xlsx", 44742, 44925, true},
		{"legs1904-libreoffice.xlsx", 44742, 44925, true},
		{"legs1904-gnumeric.xlsx", 44742, 44925, false},
	} {
		t.Run(c.file, func(t *testing.T) {
			b := open(t, "testdata/"+c.file)
			infos := b.Sheets()
			if len(infos) != 2 || infos[0].Name != "Legs 2026" || !infos[0].Workbook ||
				infos[0].Hidden || infos[1].Hidden != c.hidden {
				t.Errorf("sheets %+v", infos)
			}
			if infos[0].Date1904 != strings.Contains(c.file, "1904") {
				t.Errorf("Date1904 is %v", infos[0].Date1904)
			}
			checkLegs(t, readAll(t, b, 0), legsTable(c.first, c.last))
			equal(t, lines(readAll(t, b, 1)), []string{`1 ["Name"]`})
		})
	}
}

func checkLegs(t *testing.T, have []got, want [][]string) {
	t.Helper()
	if len(have) != len(want) {
		t.Fatalf("%d rows, want %d: blank formatted rows at the end are not rows", len(have), len(want))
	}
	for i, g := range have {
		if g.num != i+1 || g.problem != nil {
			t.Errorf("row %d: %+v", i+1, g)
		}
		sameRow(t, g.num, g.cells, want[i])
		switch trip := g.merged[0]; {
		case g.num == 1 && len(g.merged) != 6, g.num == 1 && g.merged[6] != "Sea Wren - season 2026":
			t.Errorf("title: %q", fmt.Sprint(g.merged))
		case (g.num == 5 || g.num == 6) != (trip == "T1"):
			t.Errorf("row %d: trip %q", g.num, trip)
		}
	}
}

// openpyxl stores no values with formulas; the other two calculated them.
func TestFormulas(t *testing.T) {
	without := []string{`1 ["a" "b" "a+b" "text" "error" "blank"]`,
		`2 ["1" "2" "=A2+B2" "=\"x\"&A2" "=A2/0" "=IF(A2=1,\"\",2)"]`,
		`3 ["3" "4.5" "=A3+B3" "=\"<\"&A3" "=NA()" "=IF(A3=1,\"\",2)"]`}
	with := []string{without[0], `2 ["1" "2" "3" "x1" "#DIV/0!" ""]`, `3 ["3" "4.5" "7.5" "<3" "#N/A" "2"]`}
	for file, want := range map[string][]string{"openpyxl": without, "libreoffice": with, "gnumeric": with} {
		t.Run(file, func(t *testing.T) {
			equal(t, lines(readAll(t, open(t, "testdata/sums-"+file+".xlsx"), 0)), want)
		})
	}
}

// readXML reads a workbook whose sheet is made of the given rows and tail.
func readXML(t *testing.T, rows, tail string) ([]got, error) {
	t.Helper()
	return read(open(t, writeZip(t, "log.xlsx", parts(sheetXML(rows, tail)))), 0)
}

func TestSheetXML(t *testing.T) {
	for _, c := range []struct {
		name, rows, tail string
		want             []string
	}{
		{"rows and cells without names", `<row><c><v>1</v></c><c><v>2</v></c></row><row><c/><c><v>3</v></c></row>`, "",
			[]string{`1 ["1" "2"]`, `2 ["" "3"]`}},
		{"gaps", `<row r="3"><c r="B3"><v>1</v></c></row><row r="5"><c r="A5"><v>2</v></c></row>`, "",
			[]string{`1 []`, `2 []`, `3 ["" "1"]`, `4 []`, `5 ["2"]`}},
		{"no rows", "", "", nil},
		{"blank rows", `<row r="1"/><row r="2"><c r="A2" s="1"/></row>`, "", nil},
		{"shared formula", `<row r="1"><c r="A1"><f t="shared" si="0"/></c></row>`, "", []string{`1 ["="]`}},
		{"formula that gives an empty text",
			`<row r="1"><c r="A1" t="str"><f>B1</f><v></v></c><c r="B1"><v>1</v></c></row>`, "",
			[]string{`1 ["" "1"]`}},
		{"booleans", `<row r="1"><c r="A1" t="b"><v>1</v></c><c r="B1" t="b"><v>0</v></c><c r="C1"><v>1</v></c></row>`,
			"",
			[]string{`1 ["TRUE" "FALSE" "1"]`}},
		{"comments, CDATA and > in quotes",
			`<!-- <row> --><row r="1"><c r="A1" t="inlineStr"><is><t><![CDATA[a <v> b]]></t></is></c></row>`,
			`<dataValidations a="1 > 0" b='"'/>`, []string{`1 ["a <v> b"]`}},
		{"merged block",
			`<row r="1"><c r="A1"><v>7</v></c><c r="B1"><v>9</v></c><c r="C1"><v>1</v></c></row><row r="2"><c r="C2"><v>2</v></c></row><row r="3"><c r="C3"><v>3</v></c></row>`,
			`<mergeCells><mergeCell ref="A1:B2"/></mergeCells>`,
			[]string{`1 ["7" "" "1"] map[1:7]`, `2 ["" "" "2"] map[0:7 1:7]`, `3 ["" "" "3"]`}},
		{"merged beyond the data", `<row r="1"><c r="A1"><v>7</v></c></row><row r="3"><c r="B3"><v>2</v></c></row>`,
			`<mergeCells><mergeCell ref="A1:XFD1048576"/></mergeCells>`,
			[]string{`1 ["7"] map[1:7]`, `2 []`, `3 ["" ""] map[0:7 1:7]`}},
		{"merged boolean", `<row r="1"><c r="A1" t="b"><v>1</v></c></row><row r="2"><c r="B2"><v>2</v></c></row>`,
			`<mergeCells><mergeCell ref="A1:A2"/></mergeCells>`, []string{`1 ["TRUE"]`, `2 ["" "2"] map[0:TRUE]`}},
		{"merged blanks", `<row r="1"><c r="B1"><v>1</v></c></row><row r="2"><c r="B2"><v>2</v></c></row>`,
			`<mergeCells><mergeCell ref="A1:A2"/></mergeCells>`, []string{`1 ["" "1"]`, `2 ["" "2"]`}},
	} {
		t.Run(c.name, func(t *testing.T) {
			have, err := readXML(t, c.rows, c.tail)
			if err != nil {
				t.Fatal(err)
			}
			equal(t, lines(have), c.want)
		})
	}
}

// Prefixes and the strict name space are other ways of writing the same.
func TestPrefixedXML(t *testing.T) {
	p := parts(
		`<x:worksheet xmlns:x="http://purl.oclc.org/ooxml/spreadsheetml/main"><x:sheetData><x:row r="1"><x:c r="A1" t="b"><x:v>1</x:v></x:c></x:row>` +
			`<x:row r="2"><x:c r="B2"><x:v>5</x:v></x:c></x:row></x:sheetData><x:mergeCells><x:mergeCell ref="A1:A2"/></x:mergeCells></x:worksheet>`)
	equal(t, lines(readAll(t, open(t, writeZip(t, "log.xlsx", p)), 0)),
		[]string{`1 ["TRUE"]`, `2 ["" "5"] map[0:TRUE]`})
}

// What is faulty must not read as a shorter sheet.
func TestFaultySheets(t *testing.T) {
	row := `<row r="1"><c r="A1"><v>1</v></c></row>`
	for _, c := range []struct{ name, rows, tail, want string }{
		{"rows out of order", `<row r="2"><c r="A2"><v>1</v></c></row>` + row, "", "row 1 comes after row 2"},
		{"cells out of order", `<row r="1"><c r="B1"><v>1</v></c><c r="A1"><v>1</v></c></row>`, "", "out of order"},
		{"cell of another row", `<row r="1"><c r="A7"><v>1</v></c></row>`, "", "a cell named"},
		{"row beyond the last", `<row r="1048577"/>`, "", "a row numbered"},
		{"column beyond the last", `<row r="1"><c r="XFE1"/></row>`, "", "a cell named"},
		{"bare ampersand in the last row", row + `<row r="2"><c r="A2" t="str"><v>rod & reel</v></c></row>`, "",
			"after row 1"},
		{"bare ampersand before",
			`<row r="1"><c r="A1" t="str"><v>a & b</v></c></row><row r="2"><c r="A2"><v>1</v></c></row>`, "",
			"after row"},
		{"tags that do not match", row + `<row r="2"><c r="A2"></row><row r="3"><c r="A3"><v>1</v></c></row>`, "",
			"after row"},
		{"text that is not there", `<row r="1"><c r="A1" t="s"><v>0</v></c></row>`, "", "refers to a text"},
		{"merged area without sense", row, `<mergeCell ref="B2:A1"/>`, "a merged area named"},
		{"too many merged areas", row, strings.Repeat(`<mergeCell ref="A1:A2"/>`, maxMerges+1), "merged areas"},
		{"merged areas too large", row + `<row r="1048576"><c r="E1048576"><v>1</v></c></row>`,
			`<mergeCell ref="A1:XFD1048576"/>`, "cover"},
		{"tag that does not end", row, `<a b="` + strings.Repeat("x", 2*tag.Most), "does not end"},
	} {
		t.Run(c.name, func(t *testing.T) {
			_, err := readXML(t, c.rows, c.tail)
			if err == nil || !strings.Contains(err.Error(), c.want) ||
				!strings.HasPrefix(err.Error(), `log.xlsx: sheet "Legs" cannot be read: `) {
				t.Errorf("got %v, want %q", err, c.want)
			}
		})
	}
	whole := sheetXML(row, "")
	for _, cut := range []string{"</worksheet>", "</sheetData></worksheet>", "v></c></row></sheetData></worksheet>"} {
		b := open(t, writeZip(t, "log.xlsx", parts(strings.TrimSuffix(whole, cut))))
		if _, err := read(b, 0); err == nil {
			t.Errorf("a sheet without %s was read", cut)
		}
	}
}

func TestWorkbookLongCell(t *testing.T) {
	have, err := readXML(t, `<row r="1"><c r="A1"><v>1</v></c><c r="B1" t="inlineStr"><is><t>`+strings.Repeat("é",
		maxCell+1)+`</t></is></c></row>`+
		`<row r="2"><c r="A2"><v>2</v></c></row>`, "")
	if err != nil || len(have) != 2 || have[0].problem == nil || have[0].problem.Pos.String() != "log.xlsx!Legs!B1" {
		t.Fatalf("%v, %+v", err, have)
	}
	equal(t, lines(have[1:]), []string{`2 ["2"]`})
}

// A workbook of excelize's own, read twice and both at once, with a chart sheet
// between the others and a name that says it is text.
func TestWorkbookReadTwice(t *testing.T) {
	f := excelize.NewFile()
	rows := []any{"a", true, 2.5}
	err := f.SetSheetRow("Sheet1", "A1", &rows)
	if err == nil {
		err = f.AddChartSheet("Chart", &excelize.Chart{Type: excelize.Col,
			Series: []excelize.ChartSeries{{Values: "Sheet1!$A$1:$C$1"}}})
	}
	if err == nil {
		_, err = f.NewSheet("Last")
	}
	if err == nil {
		err = f.SetCellStr("Last", "A2", "=1+1")
	}
	path := t.TempDir() + "/log.xlsx"
	if err == nil {
		err = f.SaveAs(path)
	}
	if err == nil {
		err = os.Rename(path, strings.TrimSuffix(path, "xlsx")+"csv")
	}
	if err != nil {
		t.Fatal(err)
	}
	b := open(t, strings.TrimSuffix(path, "xlsx")+"csv")
	infos := b.Sheets()
	if len(infos) != 2 || infos[1].Name != "Last" || len(infos[0].Notes) != 1 {
		t.Fatalf("sheets %+v", infos)
	}
	r, err := b.Rows(0)
	if err != nil {
		t.Fatal(err)
	}
	defer func() { _ = r.Close() }()
	want := []string{`1 ["a" "TRUE" "2.5"]`}
	equal(t, lines(readAll(t, b, 0)), want)
	if !r.Next() || fmt.Sprintf("1 %q", r.Row().Cells) != want[0] {
		t.Errorf("the first reading was disturbed: %+v", r.Row())
	}
	equal(t, lines(readAll(t, b, 1)), []string{`1 []`, `2 ["=1+1"]`})
	if _, err := b.Rows(2); err == nil {
		t.Error("a third sheet was given")
	}
}

// Above inMemory, sheets and shared texts go through temporary files, which are
// gone once the book is closed.
func TestWorkbookInTemporaryFiles(t *testing.T) {
	t.Setenv("TMPDIR", t.TempDir())
	const n = 60000
	var rows, texts strings.Builder
	for i := range n {
		fmt.Fprintf(&rows, `<row r="%d"><c r="A%d" t="s"><v>%d</v></c><c r="B%d"><v>%d</v></c></row>`, i+1, i+1, n-1-i,
			i+1, i)
		fmt.Fprintf(&texts,
			`<si><t xml:space="preserve">lure %d, a text that takes its share of room &amp; more</t></si>`, i)
	}
	p := parts(sheetXML(rows.String(), `<mergeCells><mergeCell ref="A1:A2"/></mergeCells>`))
	p[stringsPart] = `<sst xmlns="http://schemas.openxmlformats.org/spreadsheetml/2006/main">` + texts.String() +
		`</sst>`
	if len(p[stringsPart]) < inMemory || len(p["xl/worksheets/sheet1.xml"]) < inMemory {
		t.Fatal("the parts are too small for what is tested")
	}
	b, err := Open(writeZip(t, "log.xlsx", p), Options{})
	if err != nil {
		t.Fatal(err)
	}
	have := readAll(t, b, 0)
	if err := b.Close(); err != nil {
		t.Error(err)
	}
	if len(have) != n || have[1].merged[0] != have[0].cells[0] {
		t.Fatalf("%d rows, second %+v", len(have), have[1])
	}
	for i := 2; i < n; i++ {
		text := fmt.Sprintf("lure %d, a text that takes its share of room & more", n-1-i)
		if have[i].cells[0] != text || have[i].cells[1] != strconv.Itoa(i) {
			t.Fatalf("row %d: %q", i+1, have[i].cells)
		}
	}
	if left, err := os.ReadDir(os.TempDir()); err != nil || slices.ContainsFunc(left, isExcelizeFile) {
		t.Errorf("left behind: %v, %v", left, err)
	}
}

func isExcelizeFile(e os.DirEntry) bool { return strings.HasPrefix(e.Name(), "excelize-") }

// A million blank rows, formatted or left out, cost next to nothing.
func TestBlankRows(t *testing.T) {
	var rows strings.Builder
	rows.WriteString(`<row r="1"><c r="A1"><v>1</v></c></row>`)
	for i := 2; i <= maxRow; i++ {
		n := strconv.Itoa(i)
		rows.WriteString(`<row r="` + n + `" s="1" customFormat="1"><c r="A` + n + `" s="1"/></row>`)
	}
	b := open(t, writeZip(t, "log.xlsx", parts(sheetXML(rows.String(), ""))))
	start := time.Now()
	var before, after runtime.MemStats
	runtime.ReadMemStats(&before)
	equal(t, lines(readAll(t, b, 0)), []string{`1 ["1"]`})
	runtime.ReadMemStats(&after)
	if took := time.Since(start); took > 30*time.Second {
		t.Errorf("took %v", took)
	}
	if grown := after.TotalAlloc - before.TotalAlloc; grown > 16<<20 {
		t.Errorf("%d bytes were asked for", grown)
	}
	b = open(t, writeZip(t, "log.xlsx", parts(sheetXML(`<row r="1048576"><c r="A1048576"><v>2</v></c></row>`, ""))))
	r, err := b.Rows(0)
	if err != nil {
		t.Fatal(err)
	}
	n := 0
	for r.Next() {
		n++
	}
	if err := errors.Join(r.Err(), r.Close()); err != nil || n != maxRow || len(r.Row().Cells) != 1 {
		t.Errorf("%d rows, %v", n, err)
	}
}
