package sheet

import (
	"fmt"
	"reflect"
	"slices"
	"strconv"
	"strings"
	"testing"
)

// fullRow shows a row with all that is told of its cells; numbers to 12 digits,
// because programs store them to 15 or more.
func fullRow(r *Row) string {
	out := strconv.Itoa(r.Num)
	for i, c := range r.Cells {
		if f, err := strconv.ParseFloat(c, 64); err == nil {
			c = strconv.FormatFloat(f, 'g', 12, 64)
		}
		s := fmt.Sprintf("%q", c)
		if m, ok := r.Merged[i]; ok {
			s += fmt.Sprintf(" of %q", m)
		}
		if i < len(r.Class) && r.Class[i] != Plain {
			s += [...]string{"", " date", " clock", " date and time", " duration", ""}[r.Class[i]]
		}
		out += "|" + s
	}
	return strings.TrimRight(out, `|"`)
}

// fullBook shows the sheets of a file that must be good, their rows, and the
// formulas and comments, each with its place.
func fullBook(t *testing.T, path string, opt Options) (infos, rows, notes []string) {
	t.Helper()
	b, err := Open(path, opt)
	if err != nil {
		t.Fatal(err)
	}
	defer func() { _ = b.Close() }()
	for i, info := range b.Sheets() {
		infos = append(infos, fmt.Sprintf("%+v", info))
		r, err := b.Rows(i)
		if err != nil {
			t.Fatal(err)
		}
		for r.Next() {
			w := r.Row()
			rows = append(rows, info.Name+" "+fullRow(w))
			for c := range 30 {
				if f, n := w.Formula[c], w.Comment[c]; f+n != "" {
					notes = append(notes, fmt.Sprintf("%d:%d %s%s", w.Num, c+1, f, n))
				}
			}
		}
		if err := r.Err(); err != nil {
			t.Fatal(err)
		}
	}
	return infos, rows, notes
}

// The three formats of one program give the same of the same book, cell for cell.
func TestSameInEveryFormat(t *testing.T) {
	for name, least := range map[string]int{"legs": 9, "legs1904": 9, "sums": 3, "forms": 23} {
		infos, rows, _ := fullBook(t, "testdata/"+name+"-libreoffice.xlsx", Options{})
		if len(rows) != least {
			t.Errorf("%s has %d rows, want %d", name, len(rows), least)
		}
		for _, kind := range []string{".ods", ".xls"} {
			t.Run(name+kind, func(t *testing.T) {
				haveInfos, have, notes := fullBook(t, "testdata/"+name+"-libreoffice"+kind, Options{})
				equal(t, haveInfos, infos)
				equal(t, have, rows)
				if len(notes) > 0 {
					t.Errorf("formulas or comments that were not asked for: %q", notes)
				}
			})
		}
		if strings.HasPrefix(name, "legs") { // without formulas, so that the first program's own file has all values
			first, own, _ := fullBook(t, "testdata/"+name+"-openpyxl.xlsx", Options{})
			equal(t, first, infos)
			if name == "legs" {
				equal(t, own, rows)
			}
		}
	}
}

// TestCents holds that a number of two decimals is written out as it is shown, without what arithmetic left, and that
// others stay as they are stored.
func TestCents(t *testing.T) {
	for text, want := range map[string]string{"6.1": "6.10", "9": "9.00", "9.050000000000001": "9.05", "10.15": "10.15",
		"1.234": "1.234", "-2.5": "-2.5", "1e3": "1e3", "": "", "1.23456789012345": "1.23456789012345"} {
		if got := cents(text); got != want {
			t.Errorf("cents(%q) is %q, expected %q", text, got, want)
		}
	}
}

// The classes that make.py's formats are meant to give, in its order.
func TestClasses(t *testing.T) {
	want := []Class{Plain, Date, Clock, DateTime, Duration, Duration, Cents, Date, Clock, DateTime,
		Duration, Duration, Date, Date}
	for _, file := range []string{"openpyxl.xlsx", "libreoffice.xlsx", "libreoffice.ods", "libreoffice.xls"} {
		r, err := open(t, "testdata/forms-"+file).Rows(0)
		if err != nil {
			t.Fatal(err)
		}
		for r.Next() {
			w := r.Row()
			if numbers := 2 <= w.Num && w.Num <= 4; numbers && !slices.Equal(w.Class, want) {
				t.Errorf("%s, row %d: %v, want %v", file, w.Num, w.Class, want)
			}
			if w.Num == 5 && len(w.Class) > 0 {
				t.Errorf("%s: texts are of classes %v", file, w.Class)
			}
		}
		if err := r.Close(); err != nil {
			t.Error(err)
		}
	}
}

func TestFormatClass(t *testing.T) {
	for code, want := range map[string]Class{
		"General": Plain, "@": Plain, "0.00": Cents, `0 "days"`: Plain, `0\d`: Plain, "[Red]0": Plain,
		"[$-409]0": Plain, "0_d": Plain, "*s0": Plain,
		"dd/mm/yyyy": Date, "mmm": Date, "[$-F800]dddd, mmmm dd, yyyy": Date, "mm-dd-yy": Date, `d "h"`: Date,
		"d;h": Date, `yyyy\-mm`: Date,
		"h:mm": Clock, "hh:mm:ss": Clock, "h AM/PM": Clock, "hh:mm A/P": Clock, "H:MM": Clock,
		"yyyy-mm-dd hh:mm": DateTime, "m/d h": DateTime, "hh:mm d/m": DateTime, `yyyy-mm-dd"T"hh`: DateTime,
		"[h]:mm": Duration, "[HH]:mm:ss": Duration, "[mm]": Duration, "mm:ss": Duration,
		"[s].00": Duration, "ss": Duration,
		`"open`: Plain, "[h": Plain, `0\`: Plain,
	} {
		if got := formatClass(0, code); got != want {
			t.Errorf("%s: class %d, want %d", code, got, want)
		}
	}
	for id, want := range map[int]Class{13: Plain, 14: Date, 17: Date, 18: Clock, 21: Clock, 22: DateTime, 23: Plain,
		44: Plain, 45: Duration, 47: Duration, 48: Plain} {
		if got := formatClass(id, ""); got != want {
			t.Errorf("format %d: class %d, want %d", id, got, want)
		}
	}
}

func TestDetails(t *testing.T) {
	comments := []string{"9:4 on a blank cell", "10:1 first line\nsecond line"}
	sums := []string{"7:2 =B2+1", "7:3 =C2", "7:4 =TRUE()", "7:5 =1/0", "7:6 =NA()", "7:9 =D2/2",
		`8:2 ="a"&"🐟"`, `8:3 =IF(B2>0,"",1)`, "8:4 =B2>0", `8:5 =REPT("word ",2000)`}
	end := []string{"10:11 =TRUE()", "10:12 =FALSE()"}
	var unread, ods []string
	for _, s := range slices.Concat(sums, end) {
		unread = append(unread, s[:strings.Index(s, "=")+1])
	}
	for _, s := range sums {
		ods = append(ods, strings.NewReplacer("B2", "B2", "C2", "C2", "D2", "D2", ",", ";").Replace(s))
	}
	for kind, want := range map[string][]string{
		"xlsx": slices.Concat(sums, comments, end), "ods": slices.Concat(ods, comments, end), "xls": unread,
	} {
		_, _, have := fullBook(t, "testdata/forms-libreoffice."+kind, Options{Details: true})
		equal(t, have, want)
	}
}

// A class that a merged area's value has is that of all cells which show it, and
// a kept row keeps it.
func TestMergedClass(t *testing.T) {
	m := merger{coming: []area{{1, 1, 2, 2}}}
	var kept Row
	for num, cells := range [][]string{1: {"7", "9", "1"}, 2: {"", "", "2"}} {
		if num == 0 {
			continue
		}
		row := Row{Num: num, Cells: cells}
		row.Merged, row.Class = m.row(num, cells, []Class{Date, Clock, Duration}[:4-num])
		if num == 1 {
			kept.CopyOf(&row)
		}
		if want := []Class{Date, Date, Duration}[:4-num]; !slices.Equal(row.Class, want) {
			t.Errorf("row %d: %v, want %v", num, row.Class, want)
		}
	}
	if !reflect.DeepEqual(kept.Class, []Class{Date, Date, Duration}) {
		t.Errorf("the kept row has %v", kept.Class)
	}
}

// A style that the workbook lacks is none.
func TestStyles(t *testing.T) {
	p := parts(sheetXML(`<row r="1"><c r="A1"><v>1</v></c><c r="B1" s="1"><v>1</v></c><c r="C1" s="2"><v>1</v></c>`+
		`<c r="E1" s="1" t="str"><v>1</v></c><c r="F1" s="1"/><c r="G1" s="1" t="n"><v>1</v></c></row><row r="2"><c r="A2" s="99"><v>1</v></c></row>`, ""))
	p["xl/styles.xml"] = `<styleSheet xmlns="http://schemas.openxmlformats.org/spreadsheetml/2006/main"><numFmts><numFmt numFmtId="164" formatCode="[h]:mm"/></numFmts>` +
		`<cellXfs><xf numFmtId="164"/><xf numFmtId="14"/></cellXfs></styleSheet>`
	_, rows, _ := fullBook(t, writeZip(t, "log.xlsx", p), Options{})
	equal(t, rows, []string{`Legs 1|"1" duration|"1" date|"1"|""|"1"|""|"1" date`, `Legs 2|"1`})
	p["xl/styles.xml"] = `<styleSheet><cellXfs><xf numFmtId="x"/></cellXfs></styleSheet>`
	refused(t, writeZip(t, "log.xlsx", p), "its part xl/styles.xml")
}

func TestNumberText(t *testing.T) {
	zero := 0.0
	for want, f := range map[string]float64{"0": -zero, "45433.25": 45433.25, "0.1": 0.1, "1E-10": 1e-10,
		"100000000000000000000": 1e20, "1E+21": 1e21,
		"-0.3": -0.3, "#NUM!": zero / zero} {
		if got := numberText(f); got != want {
			t.Errorf("%g: %s, want %s", f, got, want)
		}
	}
}
