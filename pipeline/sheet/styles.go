package sheet

import (
	"archive/zip"
	"encoding/xml"
	"errors"
	"fmt"
	"path"
	"slices"
)

// stylesPart is what is read of the part with the formats (ECMA-376 part 1, 18.8).
type stylesPart struct {
	Formats []struct {
		ID   int    `xml:"numFmtId,attr"`
		Code string `xml:"formatCode,attr"`
	} `xml:"numFmts>numFmt"`
	Fonts []struct {
		Strike *struct {
			Val string `xml:"val,attr"`
		} `xml:"strike"`
	} `xml:"fonts>font"`
	Cells []struct {
		Format int `xml:"numFmtId,attr"`
		Font   int `xml:"fontId,attr"`
	} `xml:"cellXfs>xf"`
}

// cellStyles gives the class of each style that a cell can name by its number, nil if all are Plain, and which of them
// strike their text through, nil if none does.
func cellStyles(z *zip.Reader) (list []Class, struck []bool, err error) {
	f := part(z, "xl/styles.xml")
	if f == nil {
		return nil, nil, nil
	}
	r, err := f.Open()
	if err != nil {
		return nil, nil, fmt.Errorf("its part %s: %w", f.Name, err)
	}
	var p stylesPart
	if err := errors.Join(xml.NewDecoder(r).Decode(&p), r.Close()); err != nil {
		// years of pasting make it too large for decodePart
		return nil, nil, fmt.Errorf("its part %s: %w", f.Name, err)
	}
	codes := map[int]string{}
	for _, f := range p.Formats {
		codes[f.ID] = f.Code
	}
	list, struck = make([]Class, len(p.Cells)), make([]bool, len(p.Cells))
	for i, c := range p.Cells {
		list[i] = formatClass(c.Format, codes[c.Format])
		if c.Font >= 0 && c.Font < len(p.Fonts) {
			s := p.Fonts[c.Font].Strike
			struck[i] = s != nil && s.Val != "0" && s.Val != "false"
		}
	}
	if !slices.ContainsFunc(list, func(c Class) bool { return c != Plain }) {
		list = nil
	}
	if !slices.Contains(struck, true) {
		struck = nil
	}
	return list, struck, nil
}

// commentsPart is what is read of the part with a sheet's comments (18.7). A text
// is one piece, or one a font.
type commentsPart struct {
	List []struct {
		Ref    string   `xml:"ref,attr"`
		Text   []string `xml:"text>t"`
		Pieces []string `xml:"text>r>t"`
	} `xml:"commentList>comment"`
}

// readComments gives the comments of the sheet in a part, by row and by index of
// the cell.
func readComments(z *zip.Reader, sheet string) (map[int]map[int]string, error) {
	dir := path.Dir(resolve(sheet, "."))
	rels := path.Join(dir, "_rels", path.Base(resolve(sheet, "."))+".rels")
	if part(z, rels) == nil {
		return nil, nil
	}
	var list relations
	if err := decodePart(z, rels, &list); err != nil {
		return nil, err
	}
	var notes map[int]map[int]string
	for _, r := range list.List {
		if path.Base(r.Type) != "comments" {
			continue
		}
		var p commentsPart
		if err := decodePart(z, resolve(r.Target, dir), &p); err != nil {
			return nil, err
		}
		for _, c := range p.List {
			col, row, ok := parseRef([]byte(c.Ref))
			if !ok {
				return nil, fmt.Errorf("it has a comment on a cell named %.20q", c.Ref)
			}
			text := ""
			for _, t := range append(c.Text, c.Pieces...) {
				text += t
			}
			noteCell(&notes, row, col, text)
		}
	}
	return notes, nil
}

// noteCell keeps a text of a cell; row and column are counted from 1.
func noteCell(m *map[int]map[int]string, row, col int, text string) {
	if text == "" {
		return
	}
	if *m == nil {
		*m = map[int]map[int]string{}
	}
	cells := (*m)[row]
	note(&cells, col-1, text)
	(*m)[row] = cells
}
