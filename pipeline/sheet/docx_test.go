package sheet

import (
	"slices"
	"strings"
	"testing"
)

// docxParts are those of a text document with the given body.
func docxParts(body string) map[string]string {
	return map[string]string{docxPart: `<w:document xmlns:w="w"><w:body>` + body + `<w:sectPr/></w:body></w:document>`}
}

// para is a paragraph of one run.
func para(text string) string {
	return `<w:p><w:r><w:t xml:space="preserve">` + text + `</w:t></w:r></w:p>`
}

// tableOf is a table of rows of cells, of which each may have settings before a bar.
func tableOf(rows ...[]string) string {
	out := "<w:tbl><w:tblPr><w:tblStyle/></w:tblPr><w:tblGrid/>"
	for _, r := range rows {
		out += "<w:tr><w:trPr/>"
		for _, c := range r {
			set, text, ok := strings.Cut(c, "|")
			if !ok {
				set, text = "", c
			}
			out += "<w:tc><w:tcPr>" + set + "</w:tcPr>" + para(text) + "</w:tc>"
		}
		out += "</w:tr>"
	}
	return out + "</w:tbl>"
}

func TestDocx(t *testing.T) {
	for _, c := range []struct {
		name, body string
		want       []string
	}{
		{"lines", para("Trip 3 on 4 June") + "<w:p/>" + para("in 06:10") +
			`<w:p><w:r><w:t>up </w:t></w:r><w:r><w:t>09:20</w:t><w:br/><w:t>2 wahoo</w:t></w:r></w:p>`,
			[]string{` 1|"Trip 3 on 4 June`, " 2", ` 3|"in 06:10`, ` 4|"up 09:20`, ` 5|"2 wahoo`}},
		{"columns by tabs", `<w:p><w:pPr><w:tabs><w:tab/></w:tabs></w:pPr><w:r><w:tab/><w:t>06:10</w:t><w:tab/>` +
			`<w:t>wahoo</w:t></w:r></w:p>`, []string{` 1|"06:10"|"wahoo`}},
		{"a table", para("Runs") + tableOf([]string{"In", "Up"}, []string{"06:10", ""}, []string{"", "09:20"}) +
			para("calm"),
			[]string{` 1|"Runs`, ` 2|"In"|"Up`, ` 3|"06:10`, ` 4|""|"09:20`, ` 5|"calm`}},
		{"as a text file", para("Day;In;Up") + para("4 June;06:10;09:20"), []string{` 1|"Day"|"In"|"Up`,
			` 2|"4 June"|"06:10"|"09:20`}},
		{"lines and a table in a cell", "<w:tbl><w:tr><w:tc>" + para("wahoo") + para("31 lb") +
			tableOf([]string{"a", "b"}) +
			"</w:tc><w:tc>" + para("x") + "</w:tc></w:tr></w:tbl>", []string{` 1|"wahoo\n31 lb\na\nb"|"x`}},
		{"merged", tableOf([]string{`<w:gridSpan w:val="2"/>|Hours`, "Fish"},
			[]string{`<w:vMerge w:val="restart"/>|4 June`, "06:10", "a"}, []string{`<w:vMerge/>|`, "07:20", "b"},
			[]string{"5 June", "06:30", "c"}),
			[]string{` 1|"Hours"|"" of "Hours"|"Fish`, ` 2|"4 June"|"06:10"|"a`, ` 3|"" of "4 June"|"07:20"|"b`,
				` 4|"5 June"|"06:30"|"c`}},
		{"what is no text of it", `<w:p><w:del><w:r><w:t>no</w:t></w:r></w:del><w:ins><w:r><w:t>yes</w:t></w:r></w:ins>` +
			`<w:r><w:drawing><w:txbxContent>` + para("no") + `</w:txbxContent></w:drawing><w:instrText>PAGE</w:instrText>` +
			`</w:r>` +
			`<w:hyperlink><w:r><w:t> and all</w:t><w:noBreakHyphen/></w:r></w:hyperlink></w:p>`, []string{` 1|"yes and all-`}},
		{"cells outside of rows", "<w:tbl><w:tc>" + para("a") + "</w:tc></w:tbl><w:tc/>", nil},
	} {
		t.Run(c.name, func(t *testing.T) {
			_, rows, _ := fullBook(t, writeZip(t, "log.docx", docxParts(c.body)), Options{})
			equal(t, rows, c.want)
		})
	}
	elsewhere := map[string]string{"_rels/.rels": relsHead + `<Relationship Id="r1" Type="` + relType +
		`officeDocument" Target="word/document2.xml"/></Relationships>`, "word/document2.xml": docxParts(para("a"))[docxPart]}
	infos, rows, _ := fullBook(t, writeZip(t, "log.docx", elsewhere), Options{})
	equal(t, rows, []string{` 1|"a`})
	if len(infos) != 1 || strings.Contains(infos[0], "Workbook:true") {
		t.Errorf("a text document is no workbook: %v", infos)
	}
}

// TestDocxTables holds that rows say in which table they stand.
func TestDocxTables(t *testing.T) {
	b := open(t, writeZip(t, "log.docx", docxParts(para("a")+tableOf([]string{"b", "c"}, []string{"d", "e"})+para("f")+
		"<w:p/>"+tableOf([]string{"g"}))))
	r, err := b.Rows(0)
	if err != nil {
		t.Fatal(err)
	}
	var got []int
	for r.Next() {
		got = append(got, r.Row().Table)
	}
	if want := []int{0, 1, 1, 0, 0, 2}; !slices.Equal(got, want) || r.Err() != nil || r.Close() != nil {
		t.Errorf("tables %v, expected %v", got, want)
	}
}

func TestDocxRefused(t *testing.T) {
	whole := docxParts(para("a") + tableOf([]string{"b"}))[docxPart]
	row := `<w:tr><w:tc><w:tcPr><w:gridSpan w:val="16383"/></w:tcPr></w:tc><w:tc>` + para("a") + `</w:tc></w:tr>`
	for _, c := range []struct {
		name  string
		parts map[string]string
		want  string
	}{
		{"none.docx", docxParts("<w:p/>" + para(" ")), "is empty"},
		{"cut.docx", map[string]string{docxPart: whole[:len(whole)-40]}, "is damaged: its part word/document.xml"},
		{"other.docx", map[string]string{docxPart: "<a/>"}, "it has no text"},
		{"bytes.docx", map[string]string{docxPart: "x"}, "it has no text"},
		{"wide.docx", docxParts("<w:tbl><w:tr>" + strings.Repeat("<w:tc>"+para("a")+"</w:tc>", maxCol+1) +
			"</w:tr></w:tbl>"), "beyond the last of a sheet"},
		{"cells.docx", docxParts("<w:tbl>" + strings.Repeat(row, maxGridCells/maxCol+1) + "</w:tbl>"),
			"more than 8388608 cells"},
		{"bomb.docx", docxParts(strings.Repeat(" ", ratioFrom+1)), "is packed more than"},
	} {
		t.Run(c.name, func(t *testing.T) { refused(t, writeZip(t, c.name, c.parts), c.want) })
	}
	path := writeZip(t, "log.docx", docxParts(para("a")))
	_, err := Open(path, Options{MaxUnzipped: 50})
	if err == nil || !strings.Contains(err.Error(), "more than the 0 MiB") {
		t.Errorf("got %v, want it refused for its size", err)
	}
	long := docxParts(para(strings.Repeat("é", maxCell+1)) + para("after"))
	list := readAll(t, open(t, writeZip(t, "log.docx", long)), 0)
	if len(list) != 2 || list[0].problem == nil || list[1].problem != nil {
		t.Errorf("a line that is too long: %d rows", len(list))
	}
}
