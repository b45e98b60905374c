package sheet

import (
	"archive/zip"
	"encoding/xml"
	"errors"
	"fmt"
	"io"
	"path"
	"strings"
)

const (
	// maxParts bounds the parts of a workbook; one of a hundred sheets with a
	// hundred pictures has a few hundred.
	maxParts = 10000
	// maxRatio bounds how far one part may grow when unpacked, for parts above
	// ratioFrom bytes. Sheets grow some 5 to 30 times; deflate can do 1,032.
	maxRatio  = 250
	ratioFrom = 16 << 20
	// maxSmallPart bounds the parts that list the sheets, in bytes.
	maxSmallPart = 16 << 20
)

// foreign are the archives that are not workbooks, by a part that they hold.
func foreign() [][2]string {
	return [][2]string{
		{"xl/workbook.bin", "is a binary workbook (.xlsb)" + saveAs},
		{"ppt/presentation.xml", "is a presentation, not a sheet"},
		{"Index/Document.iwa", "is a Numbers sheet" + saveAs},
		{"doc.kml", "is a map (KMZ), not a sheet"},
		{"AndroidManifest.xml", "is a program, not a log"},
	}
}

// checkZip looks at the archive's list of parts, before anything is unpacked,
// and says why it is refused, if it is. archive/zip gives no more bytes of a
// part than the list declares, so the declared sizes can be relied on.
func checkZip(z *zip.Reader, maxUnzipped int64) string {
	if len(z.File) > maxParts {
		return fmt.Sprintf("holds %d parts, more than any workbook", len(z.File))
	}
	var total uint64
	for _, f := range z.File {
		if f.Flags&1 != 0 {
			return "is protected by a password; unpack it and save the log without one"
		}
		if f.UncompressedSize64 > ratioFrom && f.UncompressedSize64/maxRatio > f.CompressedSize64 {
			return fmt.Sprintf("is packed more than %d times over, as no workbook is, and was not unpacked", maxRatio)
		}
		total += min(f.UncompressedSize64, 1<<50) // The sum cannot overflow.
	}
	if total > uint64(maxUnzipped) {
		return fmt.Sprintf("would unpack to %d MiB, more than the %d MiB allowed; save its sheets as CSV", total>>20,
			maxUnzipped>>20)
	}
	return foreignReason(z)
}

func foreignReason(z *zip.Reader) string {
	if is, sheet := openDocument(z); is && !sheet {
		return "is an OpenDocument file, but not a sheet"
	}
	for _, k := range foreign() {
		if part(z, k[0]) != nil {
			return k[1]
		}
	}
	return ""
}

// part finds a part by name as spreadsheet programs do: case does not matter,
// and some writers use backslashes.
func part(z *zip.Reader, name string) *zip.File {
	for _, f := range z.File {
		if strings.EqualFold(strings.ReplaceAll(f.Name, `\`, "/"), name) {
			return f
		}
	}
	return nil
}

// readPart reads one of the small parts.
func readPart(f *zip.File) ([]byte, error) {
	if f.UncompressedSize64 > maxSmallPart {
		return nil, fmt.Errorf("%s: too large", f.Name)
	}
	r, err := f.Open()
	if err != nil {
		return nil, err
	}
	b, err := io.ReadAll(r)
	return b, errors.Join(err, r.Close())
}

// workbookPart is what is read of a workbook's main part (ECMA-376 part 1,
// 18.2.27). Names match in the transitional and the strict name space.
type workbookPart struct {
	Properties struct {
		Date1904 string `xml:"date1904,attr"`
	} `xml:"workbookPr"`
	Sheets []struct {
		Name  string `xml:"name,attr"`
		State string `xml:"state,attr"`
		Rel   string `xml:"id,attr"`
	} `xml:"sheets>sheet"`
}

// relations is a part that says where other parts are.
type relations struct {
	List []struct {
		ID     string `xml:"Id,attr"`
		Type   string `xml:"Type,attr"`
		Target string `xml:"Target,attr"`
	} `xml:"Relationship"`
}

// sheetPart is a worksheet and the part that holds it.
type sheetPart struct {
	info Info
	file *zip.File
}

var errNoWorkbook = errors.New("holds no workbook")

// listSheets reads the names and parts of the worksheets. Sheets of other kinds
// (charts, dialogs) are left out.
func listSheets(z *zip.Reader) ([]sheetPart, error) {
	main, err := mainPart(z)
	if err != nil {
		return nil, err
	}
	var book workbookPart
	if err := decodePart(z, main, &book); err != nil {
		return nil, err
	}
	var rels relations
	if err := decodePart(z, path.Join(path.Dir(main), "_rels", path.Base(main)+".rels"), &rels); err != nil {
		return nil, err
	}
	var list []sheetPart
	for _, s := range book.Sheets {
		kind, target := rels.find(s.Rel, path.Dir(main))
		if kind != "worksheet" {
			continue
		}
		f := part(z, target)
		if f == nil {
			return nil, fmt.Errorf("sheet %q: its part %s is missing", s.Name, target)
		}
		info := Info{Name: s.Name, Workbook: true, Hidden: s.State == "hidden" || s.State == "veryHidden"}
		info.Date1904 = isTrue(book.Properties.Date1904)
		list = append(list, sheetPart{info, f})
	}
	return list, nil
}

// mainPart finds the workbook's main part.
func mainPart(z *zip.Reader) (string, error) {
	const usual = "xl/workbook.xml"
	if part(z, usual) != nil {
		return usual, nil
	}
	var rels relations
	if part(z, "_rels/.rels") == nil {
		return "", errNoWorkbook
	}
	if err := decodePart(z, "_rels/.rels", &rels); err != nil {
		return "", err
	}
	for _, r := range rels.List {
		if path.Base(r.Type) == "officeDocument" && path.Base(r.Target) == "workbook.xml" {
			return resolve(r.Target, "."), nil
		}
	}
	return "", errNoWorkbook
}

// find gives the kind of a relation, as the last word of its type, and the name
// of the part that it points to.
func (r relations) find(id, dir string) (kind, target string) {
	for _, rel := range r.List {
		if rel.ID == id {
			return path.Base(rel.Type), resolve(rel.Target, dir)
		}
	}
	return "", ""
}

// resolve makes a relation's target, relative to dir or from the root, a name
// in the archive.
func resolve(target, dir string) string {
	target = strings.ReplaceAll(target, `\`, "/")
	if strings.HasPrefix(target, "/") {
		return strings.TrimPrefix(path.Clean(target), "/")
	}
	return path.Join(dir, target)
}

func decodePart(z *zip.Reader, name string, v any) error {
	f := part(z, name)
	if f == nil {
		return fmt.Errorf("its part %s is missing", name)
	}
	b, err := readPart(f)
	if err != nil {
		return fmt.Errorf("its part %s: %w", name, err)
	}
	if err := xml.Unmarshal(b, v); err != nil {
		return fmt.Errorf("its part %s: %w", name, err)
	}
	return nil
}

func isTrue(s string) bool { return s == "1" || s == "true" }
