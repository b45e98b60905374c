package sheet

import (
	"math"
	"strings"
	"testing"
)

const odsMedia = "application/vnd.oasis.opendocument.spreadsheet"

// odsParts are those of an OpenDocument sheet: styles, and what stands in the
// spreadsheet.
func odsParts(styles, sheets string) map[string]string {
	return map[string]string{"mimetype": odsMedia,
		odsContent: `<o:document-content xmlns:o="o" xmlns:t="t" xmlns:x="x" xmlns:s="s" xmlns:n="n" xmlns:c="c">` +
			`<o:automatic-styles>` + styles + `</o:automatic-styles><o:body><o:spreadsheet>` + sheets +
			`</o:spreadsheet></o:body></o:document-content>`}
}

// oneTable is a sheet named Legs of the given rows.
func oneTable(rows string) string { return `<t:table t:name="Legs">` + rows + `</t:table>` }

func TestODS(t *testing.T) {
	row := func(cells string) string { return `<t:table-row>` + cells + `</t:table-row>` }
	text := func(p string) string {
		return row(`<t:table-cell o:value-type="string">` + p + `</t:table-cell>`)
	}
	for _, c := range []struct {
		name, sheets string
		want         []string
	}{
		{"no rows", oneTable(""), nil},
		{"blank rows", oneTable(row(`<t:table-cell t:number-columns-repeated="16384"/>`) +
			`<t:table-row t:number-rows-repeated="1048575"/>`), nil},
		{"a cell without a row", oneTable(`<t:table-cell o:value-type="float" o:value="1"/>` + text(`<x:p>a</x:p>`) +
			`<t:table-cell o:value-type="float" o:value="1"/>`), []string{`Legs 1|"a`}},
		{"repeated",
			oneTable(
				`<t:table-row t:number-rows-repeated="2"/><t:table-row t:number-rows-repeated="2"><t:table-cell t:number-columns-repeated="2"/>` +
					`<t:table-cell t:number-columns-repeated="3" o:value-type="float" o:value="7"/></t:table-row>` +
					row(`<t:table-cell o:value-type="float" o:value="1.50"/>`)),
			[]string{"Legs 1", "Legs 2", `Legs 3|""|""|"7"|"7"|"7`, `Legs 4|""|""|"7"|"7"|"7`, `Legs 5|"1.5`}},
		{"header rows and groups", oneTable(`<t:table-header-rows>` + text(`<x:p>a</x:p>`) +
			`</t:table-header-rows><t:table-row-group><t:table-rows>` + text(`<x:p>b</x:p>`) +
			`</t:table-rows></t:table-row-group>`),
			[]string{`Legs 1|"a`, `Legs 2|"b`}},
		{"texts", oneTable(text("<x:p>a \n\t b<x:s/>c<x:s " +
			"x:c=\"2\"/>d<x:tab/>e<x:line-break/><x:span>f<x:a>g</x:a></x:span></x:p><x:p/><x:p>h</x:p>")),
			[]string{`Legs 1|"a b c  d\te\nfg\n\nh`}},
		{"drawings and notes",
			oneTable(
				text(
					`<x:frame><x:p>no</x:p></x:frame><x:p>a<x:note><x:p>no</x:p></x:note>b</x:p><t:table><t:table-row><t:table-cell o:value="1"/></t:table-row></t:table>`)), []string{`Legs 1|"ab`}},
		{"values",
			oneTable(
				row(
					`<t:table-cell o:value-type="boolean" o:boolean-value="true"/><t:table-cell o:value-type="percentage" o:value="0.5"/><t:table-cell o:value-type="currency" o:value="12"/>` +
						`<t:table-cell o:value-type="string" o:string-value="x"><x:p>y</x:p></t:table-cell><t:table-cell o:value-type="string" c:value-type="error" o:string-value=""><x:p>Err:502</x:p></t:table-cell>` +
						`<t:table-cell o:value-type="float" o:value="bad"><x:p>seen</x:p></t:table-cell><t:table-cell t:formula="of:=[.A1]"/><t:table-cell t:formula="of:=[.A1]"><x:p/></t:table-cell>` +
						`<t:table-cell t:formula="of:=[.A1]>0" o:value-type="float" o:value="1"><x:p>TRUE</x:p></t:table-cell>`)),
			[]string{`Legs 1|"TRUE"|"0.5"|"12"|"x"|"#VALUE!"|"seen"|"=A1"|""|"TRUE`}},
		{"classes without a style",
			oneTable(
				row(
					`<t:table-cell o:value-type="date" o:date-value="2026-07-01"/><t:table-cell o:value-type="date" o:date-value="2026-07-01T12:00:00Z"/><t:table-cell o:value-type="time" o:time-value="PT12H"/>` +
						`<t:table-cell o:value-type="date" o:date-value="soon"><x:p>soon</x:p></t:table-cell>`)),
			[]string{`Legs 1|"46204" date|"46204.5" date and time|"0.5" clock|"soon`}},
		{"classes of cell, row and column", oneTable(
			`<t:table-column t:number-columns-repeated="2" t:default-cell-style-name="of-day"/>` +
				`<t:table-row><t:table-cell o:value-type="time" o:time-value="PT12H"/><t:table-cell o:value-type="time" o:time-value="PT12H" t:style-name="long"/></t:table-row>` +
				`<t:table-row t:default-cell-style-name="child"><t:table-cell o:value-type="time" o:time-value="PT12H"/></t:table-row>`),
			[]string{`Legs 1|"0.5" date|"0.5" duration`, `Legs 2|"0.5" duration`}},
		{"counted from 1904",
			`<t:calculation-settings><t:null-date t:date-value="1904-01-01"/></t:calculation-settings>` +
				oneTable(row(`<t:table-cell o:value-type="date" o:date-value="1904-01-02"/>`)),
			[]string{`Legs 1|"1" date`}},
		{"merged",
			oneTable(
				row(
					`<t:table-cell t:number-columns-spanned="2" t:number-rows-spanned="2" o:value-type="float" o:value="7"/><t:covered-table-cell o:value-type="float" o:value="9"/><t:table-cell o:value-type="float" o:value="1"/>`) +
					row(
						`<t:covered-table-cell t:number-columns-repeated="2"/><t:table-cell o:value-type="float" o:value="2"/>`)),
			[]string{`Legs 1|"7"|"" of "7"|"1`, `Legs 2|"" of "7"|"" of "7"|"2`}},
		{"recorded changes and other files",
			`<t:tracked-changes><t:table-cell o:value="9"/></t:tracked-changes><t:dde-links><t:table><t:table-row/></t:table></t:dde-links>` +
				`<t:table t:name="'file:///x'#A" t:style-name="ta_extref"/>` +
				oneTable(text(`<x:p>a</x:p>`)), []string{`Legs 1|"a`}},
	} {
		t.Run(c.name, func(t *testing.T) {
			styles := `<n:date-style s:name="D"><n:day/></n:date-style><n:time-style s:name="L" n:truncate-on-overflow="false"><n:hours/></n:time-style><s:style s:name="of-day" s:data-style-name="D"/>` +
				`<s:style s:name="long" s:data-style-name="L"/><s:style s:name="child" s:parent-style-name="long"/><s:style s:name="circle" s:parent-style-name="circle"/>`
			_, rows, _ := fullBook(t, writeZip(t, "log.ods", odsParts(styles, c.sheets)), Options{})
			equal(t, rows, c.want)
		})
	}
}

func TestODSRefused(t *testing.T) {
	with := func(name, content string) map[string]string {
		p := odsParts("", oneTable(`<t:table-row><t:table-cell o:value-type="float" o:value="1"/></t:table-row>`))
		p[name] = content
		return p
	}
	missing := with("", "")
	delete(missing, odsContent)
	whole := with("", "")[odsContent]
	for _, c := range []struct {
		name  string
		parts map[string]string
		want  string
	}{
		{"letter.odt", map[string]string{"mimetype": "application/vnd.oasis.opendocument.text"},
			"is an OpenDocument file, but not a sheet"},
		{"secret.ods", with(odsManifest, `<manifest:encryption-data>`), "is protected by a password"},
		{"missing.ods", missing, "its part content.xml is missing"},
		{"cut.ods", with(odsContent, whole[:len(whole)-60]), "is damaged: its part content.xml"},
		{"styles.ods", with("styles.xml", "<a>"), "is damaged: its part styles.xml"},
		{"none.ods", odsParts("", ""), noSheets},
		{"bomb.ods", with("big.png", strings.Repeat("\x00", ratioFrom+1)), "is packed more than"},
	} {
		t.Run(c.name, func(t *testing.T) { refused(t, writeZip(t, c.name, c.parts), c.want) })
	}
	unnamed := with(odsManifest, odsMedia)
	delete(unnamed, "mimetype")
	fullBook(t, writeZip(t, "log.ods", unnamed), Options{})
}

// A sheet that cannot be held leaves the book's other sheets alone.
func TestODSFaultySheets(t *testing.T) {
	cell := `<t:table-cell o:value-type="float" o:value="1"/>`
	for _, c := range []struct{ name, rows, want string }{
		{"cells without end",
			`<t:table-row t:number-rows-repeated="1048576"><t:table-cell t:number-columns-repeated="16384" o:value-type="float" o:value="1"/></t:table-row>`, "more than 8388608 cells"},
		{"rows beyond the last",
			`<t:table-row t:number-rows-repeated="1048575"/><t:table-row t:number-rows-repeated="2">` + cell +
				`</t:table-row>`, "repeated beyond the last"},
		{"a row beyond the last", `<t:table-row t:number-rows-repeated="1048576"/><t:table-row>` + cell +
			`</t:table-row>`, "beyond the last of a sheet"},
		{"a cell beyond the last", `<t:table-row><t:table-cell t:number-columns-repeated="99999999"/>` + cell +
			`</t:table-row>`, "beyond the last of a sheet"},
		{"not a number", `<t:table-row t:number-rows-repeated="-1">` + cell + `</t:table-row>`,
			`number-rows-repeated of "-1"`},
		{"merged areas too large",
			`<t:table-row><t:table-cell t:number-columns-spanned="16384" t:number-rows-spanned="1048576" o:value-type="float" o:value="1"/><t:table-cell t:number-columns-repeated="9" o:value-type="float" o:value="1"/></t:table-row>` +
				`<t:table-row t:number-rows-repeated="500000"/><t:table-row>` + cell +
				`</t:table-row>`, "merged areas cover"},
	} {
		t.Run(c.name, func(t *testing.T) {
			b := open(t, writeZip(t, "log.ods", odsParts("", oneTable(c.rows)+
				`<t:table t:name="Good"><t:table-row>`+cell+`</t:table-row></t:table>`)))
			_, err := read(b, 0)
			if err == nil || !strings.Contains(err.Error(), c.want) ||
				!strings.HasPrefix(err.Error(), `log.ods: sheet "Legs" cannot be read: `) {
				t.Errorf("got %v, want %q", err, c.want)
			}
			if list, err := read(b, 1); c.name != "cells without end" && (err != nil || len(list) != 1) {
				t.Errorf("the other sheet: %v, %v", list, err)
			}
			if _, err := b.Rows(2); err == nil {
				t.Error("a third sheet was given")
			}
		})
	}
}

// Formulas that are kept take more room than their cells.
func TestODSManyFormulas(t *testing.T) {
	p := odsParts("",
		oneTable(
			strings.Repeat(
				`<t:table-row><t:table-cell t:number-columns-repeated="16384" t:formula="of:=1" o:value-type="float" o:value="1"/></t:table-row>`, 60)))
	for details, refused := range map[bool]bool{false: false, true: true} {
		b, err := Open(writeZip(t, "log.ods", p), Options{Details: details})
		if err == nil {
			_, err = b.Rows(0)
			_ = b.Close()
		}
		if refused != (err != nil) {
			t.Errorf("with Details %v: %v", details, err)
		}
	}
}

// Blanks by the milliard in one cell make one bad row.
func TestODSLongCell(t *testing.T) {
	p := odsParts("", oneTable(`<t:table-row><t:table-cell o:value-type="string"><x:p>`+strings.Repeat(
		`<x:s x:c="999999999"/>`, 1000)+`</x:p></t:table-cell></t:table-row>`))
	list := readAll(t, open(t, writeZip(t, "log.ods", p)), 0)
	if len(list) != 1 || list[0].problem == nil || list[0].problem.Pos.String() != "log.ods!Legs!A1" {
		t.Errorf("%+v", list)
	}
}

// Worked by hand: 36526 is 2000-01-01, 1462 days lie between the two beginnings.
func TestSerials(t *testing.T) {
	for text, want := range map[string]float64{"2000-01-01": 36526, "2000-01-01T06:00:00": 36526.25, "1899-12-30": 0,
		"1899-12-29": -1, "2000-01-01T00:00:00.864": 36526.00001} {
		if got, ok := dateSerial(text, false); !ok || math.Abs(got-want) > 1e-9 {
			t.Errorf("%s: %v %v, want %v", text, got, ok, want)
		}
		if got, ok := dateSerial(text, true); !ok || math.Abs(got-want+1462) > 1e-9 {
			t.Errorf("%s from 1904: %v %v", text, got, ok)
		}
	}
	for text, want := range map[string]float64{"PT25H30M00S": 25.5 / 24, "P1DT12H": 1.5, "-PT6H": -0.25,
		"PT0.864S": 0.00001, "P2D": 2} {
		if got, ok := timeSerial(text); !ok || math.Abs(got-want) > 1e-9 {
			t.Errorf("%s: %v %v, want %v", text, got, ok, want)
		}
	}
	for _, text := range []string{"", "T", "2000-13-01", "2000-01-01T25:00:00", "P1Y", "PTH", "PT1"} {
		_, day := dateSerial(text, false)
		if _, span := timeSerial(text); day || span {
			t.Errorf("%q was taken", text)
		}
	}
}

func TestPlainReferences(t *testing.T) {
	for in, want := range map[string]string{
		"SUM([.F2:.F3])": "SUM(F2:F3)", "[.A1]*24": "A1*24",
		"SUM([$Runs.$B$2:.$B$69])/[.C7]": "SUM($Runs!$B$2:$B$69)/C7",
		"['trip log'.A2]":                "'trip log'!A2", "1+2": "1+2",
	} {
		if got := plainReferences(in); got != want {
			t.Errorf("%s: %s, expected %s", in, got, want)
		}
	}
}
