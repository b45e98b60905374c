package sheet

import (
	"path/filepath"
	"slices"
	"testing"

	"github.com/xuri/excelize/v2"
)

// TestStruck holds that a row is told as struck through where each of its cells that hold something is, in a workbook
// and in an OpenDocument sheet, whose styles may have it from another.
func TestStruck(t *testing.T) {
	f := excelize.NewFile()
	through, err := f.NewStyle(&excelize.Style{Font: &excelize.Font{Strike: true}})
	if err != nil {
		t.Fatal(err)
	}
	for i, row := range [][]any{{"Date", "Bites"}, {"3/6", 2}, {"4/6", 1}, {"5/6", 4}} {
		if err := f.SetSheetRow("Sheet1", "A"+string(rune('1'+i)), &row); err != nil {
			t.Fatal(err)
		}
	}
	for _, cell := range []string{"A2", "B2", "C2", "B3"} {
		if err := f.SetCellStyle("Sheet1", cell, cell, through); err != nil {
			t.Fatal(err)
		}
	}
	path := filepath.Join(t.TempDir(), "log.xlsx")
	if err := f.SaveAs(path); err != nil {
		t.Fatal(err)
	}
	cell := func(style, value string) string {
		return `<t:table-cell t:style-name="` + style + `" o:value-type="float" o:value="` + value + `"/>`
	}
	ods := writeZip(t, "log.ods", odsParts(
		`<s:style s:name="out"><s:text-properties s:text-line-through-style="solid"/></s:style>`+
			`<s:style s:name="child" s:parent-style-name="out"/><s:style s:name="plain"/>`,
		oneTable(`<t:table-row>`+cell("plain", "1")+cell("plain", "2")+`</t:table-row><t:table-row>`+cell("out", "1")+
			cell("child", "2")+`</t:table-row><t:table-row>`+cell("plain", "1")+cell("out", "2")+`</t:table-row>`)))
	for _, file := range []string{path, ods} {
		r, err := open(t, file).Rows(0)
		if err != nil {
			t.Fatal(err)
		}
		var struck []int
		for r.Next() {
			if r.Row().Struck {
				struck = append(struck, r.Row().Num)
			}
		}
		if err := r.Close(); err != nil || !slices.Equal(struck, []int{2}) {
			t.Errorf("%s: rows %v, %v", filepath.Base(file), struck, err)
		}
	}
}
