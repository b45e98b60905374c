package sheet

import (
	"archive/zip"
	"encoding/xml"
	"errors"
	"fmt"
	"io"
)

// stringsPart holds the texts that cells refer to by number. excelize looks for
// it under this name only.
const stringsPart = "xl/sharedStrings.xml"

// countStrings reads the shared texts once to see that they are whole, and
// counts them: excelize passes over a damaged part, and over a number without a
// text, and would leave the cells blank. A workbook may have none.
func countStrings(z *zip.Reader) (n int, err error) {
	f := part(z, stringsPart)
	if f == nil {
		return 0, nil
	}
	r, err := f.Open()
	if err != nil {
		return 0, fmt.Errorf("its part %s: %w", stringsPart, err)
	}
	defer func() { err = errors.Join(err, r.Close()) }()
	d := xml.NewDecoder(r)
	for {
		tok, err := d.Token()
		if errors.Is(err, io.EOF) {
			return n, nil
		}
		if err != nil {
			return 0, fmt.Errorf("its part %s: %w", stringsPart, err)
		}
		if start, ok := tok.(xml.StartElement); ok && start.Name.Local == "si" {
			n++
		}
	}
}
