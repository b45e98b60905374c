package sheet

import (
	"archive/zip"
	"fmt"
	"io"
	"maps"
	"os"
	"path/filepath"
	"slices"
	"testing"

	"wakeledger/pipeline/record"
)

// got is a row that may be kept.
type got struct {
	num     int
	cells   []string
	merged  map[int]string
	problem *record.Problem
}

// write puts a file into a folder of the test.
func write(t testing.TB, name, content string) string {
	t.Helper()
	path := filepath.Join(t.TempDir(), name)
	if err := os.WriteFile(path, []byte(content), 0o600); err != nil {
		t.Fatal(err)
	}
	return path
}

// open opens a log that must be good.
func open(t testing.TB, path string) Book {
	t.Helper()
	b, err := Open(path, Options{})
	if err != nil {
		t.Fatal(err)
	}
	t.Cleanup(func() {
		if err := b.Close(); err != nil {
			t.Error(err)
		}
	})
	return b
}

// readAll reads a sheet that must be read to its end.
func readAll(t testing.TB, b Book, i int) []got {
	t.Helper()
	list, err := read(b, i)
	if err != nil {
		t.Fatal(err)
	}
	return list
}

func read(b Book, i int) ([]got, error) {
	r, err := b.Rows(i)
	if err != nil {
		return nil, err
	}
	var list []got
	for r.Next() {
		w := r.Row()
		list = append(list, got{w.Num, slices.Clone(w.Cells), maps.Clone(w.Merged), w.Problem})
	}
	if err := r.Err(); err != nil {
		_ = r.Close() // What ended the reading says more.
		return list, err
	}
	return list, r.Close()
}

// lines shows rows as text, one a line, for comparison.
func lines(list []got) []string {
	var out []string
	for _, g := range list {
		s := fmt.Sprintf("%d %q", g.num, g.cells)
		if g.problem != nil {
			s = fmt.Sprintf("%d ! %s", g.num, g.problem.Error())
		}
		if len(g.merged) > 0 {
			s += fmt.Sprintf(" %v", g.merged)
		}
		out = append(out, s)
	}
	return out
}

func equal(t *testing.T, have, want []string) {
	t.Helper()
	for i := range max(len(have), len(want)) {
		h, w := "nothing", "nothing"
		if i < len(have) {
			h = have[i]
		}
		if i < len(want) {
			w = want[i]
		}
		if h != w {
			t.Errorf("row %d of the list:\n got %s\nwant %s", i+1, h, w)
		}
	}
}

// sheetXML is a workbook's sheet around the given rows; tail follows the rows.
func sheetXML(rows, tail string) string {
	return `<?xml version="1.0" encoding="UTF-8"?><worksheet xmlns="http://schemas.openxmlformats.org/spreadsheetml/2006/main"><sheetData>` +
		rows + `</sheetData>` + tail + `</worksheet>`
}

const (
	relsHead = `<Relationships xmlns="http://schemas.openxmlformats.org/package/2006/relationships">`
	relType  = `http://schemas.openxmlformats.org/officeDocument/2006/relationships/`
)

// parts are those of a workbook of one sheet, named Legs, with the given XML.
func parts(sheet string) map[string]string {
	return map[string]string{
		"[Content_Types].xml": `<Types xmlns="http://schemas.openxmlformats.org/package/2006/content-types"><Default Extension="xml" ContentType="application/xml"/>` +
			`<Default Extension="rels" ContentType="application/vnd.openxmlformats-package.relationships+xml"/>` +
			`<Override PartName="/xl/workbook.xml" ContentType="application/vnd.openxmlformats-officedocument.spreadsheetml.sheet.main+xml"/></Types>`,
		"_rels/.rels": relsHead + `<Relationship Id="r1" Type="` + relType +
			`officeDocument" Target="xl/workbook.xml"/></Relationships>`,
		"xl/workbook.xml": `<workbook xmlns="http://schemas.openxmlformats.org/spreadsheetml/2006/main" xmlns:r="http://schemas.openxmlformats.org/officeDocument/2006/relationships">` +
			`<sheets><sheet name="Legs" sheetId="1" r:id="r1"/></sheets></workbook>`,
		"xl/_rels/workbook.xml.rels": relsHead + `<Relationship Id="r1" Type="` + relType +
			`worksheet" Target="worksheets/sheet1.xml"/></Relationships>`,
		"xl/worksheets/sheet1.xml": sheet,
	}
}

// writeZip packs parts in the order of their names.
func writeZip(t testing.TB, name string, parts map[string]string) string {
	t.Helper()
	path := filepath.Join(t.TempDir(), name)
	f, err := os.Create(path)
	if err != nil {
		t.Fatal(err)
	}
	z := zip.NewWriter(f)
	for _, part := range slices.Sorted(maps.Keys(parts)) {
		w, err := z.Create(part)
		if err != nil {
			t.Fatal(err)
		}
		if _, err := io.WriteString(w, parts[part]); err != nil {
			t.Fatal(err)
		}
	}
	if err := z.Close(); err != nil {
		t.Fatal(err)
	}
	if err := f.Close(); err != nil {
		t.Fatal(err)
	}
	return path
}
