package sheet

import (
	"encoding/xml"
	"regexp"
	"strconv"
	"strings"
	"time"
	"unicode/utf8"
)

// odsStyles are the styles of an OpenDocument sheet, by name.
type odsStyles struct {
	cells   map[string]odsCellStyle // and of sheets
	formats map[string]Class
}

type odsCellStyle struct {
	parent, format string
	hidden         bool
	through        string // the line through its text: none, solid, ...; "" where its parent says
}

// odsFormat is a format of dates or times: its parts are named days, hours, ...
type odsFormat struct {
	Name     string `xml:"name,attr"`
	Overflow string `xml:"truncate-on-overflow,attr"`
	Parts    []struct {
		XMLName xml.Name
	} `xml:",any"`
}

// read takes the styles of the element that begins at t.
func (s *odsStyles) read(d *xml.Decoder, t *xml.StartElement) error {
	var list struct {
		Styles []struct {
			Name   string `xml:"name,attr"`
			Parent string `xml:"parent-style-name,attr"`
			Format string `xml:"data-style-name,attr"`
			Table  struct {
				Display string `xml:"display,attr"`
			} `xml:"table-properties"`
			Text struct {
				Through string `xml:"text-line-through-style,attr"`
			} `xml:"text-properties"`
		} `xml:"style"`
		Dates   []odsFormat `xml:"date-style"`
		Times   []odsFormat `xml:"time-style"`
		Numbers []struct {
			Name   string `xml:"name,attr"`
			Number struct {
				Places string `xml:"decimal-places,attr"`
			} `xml:"number"`
		} `xml:"number-style"`
	}
	if err := d.DecodeElement(&list, t); err != nil {
		return err
	}
	for _, c := range list.Styles {
		s.cells[c.Name] = odsCellStyle{c.Parent, c.Format, c.Table.Display == "false", c.Text.Through}
	}
	for _, f := range append(list.Dates, list.Times...) {
		s.formats[f.Name] = f.class()
	}
	for _, f := range list.Numbers {
		if f.Number.Places == "2" {
			s.formats[f.Name] = Cents
		}
	}
	return nil
}

func (f odsFormat) class() Class {
	var date, hours, short bool
	for _, p := range f.Parts {
		switch p.XMLName.Local {
		case "day", "month", "year", "era", "quarter", "day-of-week", "week-of-year":
			date = true
		case "hours":
			hours = true
		case "minutes", "seconds":
			short = true
		}
	}
	return classOf(date, hours, short, f.Overflow == "false")
}

// class is the class of a number, a date or a time by its style, or by its value if that says
// nothing.
func (s *odsStyles) class(style string, c odsCell) Class {
	class, ok := s.formatOf(style)
	timed := c.typ == "date" || c.typ == "time"
	switch {
	case ok && timed == (class != Cents):
		return class
	case !timed:
		return Plain
	case c.typ == "time":
		return Clock
	case strings.Contains(c.value, "T"):
		return DateTime
	}
	return Date
}

// formatOf is the class of a style's format, its own or another style's.
func (s *odsStyles) formatOf(style string) (Class, bool) {
	for range 10 { // ten in a row are a circle
		st := s.cells[style]
		if class, ok := s.formats[st.format]; ok {
			return class, true
		}
		style = st.parent
	}
	return Plain, false
}

// struck reports whether a style, or the one that it is made from, strikes its text through.
func (s *odsStyles) struck(style string) bool {
	for range 10 { // ten in a row are a circle
		st := s.cells[style]
		if st.through != "" {
			return st.through != "none"
		}
		style = st.parent
	}
	return false
}

// odsCell is a cell as it stands in the part.
type odsCell struct {
	style, typ, value, formula string
	isError, hasValue          bool
	text, comment              string
	calculated                 bool // a paragraph stands there, if only a blank one
}

// take keeps an attribute. The type stands twice, and only one tells of errors.
func (c *odsCell) take(a xml.Attr) {
	switch a.Name.Local {
	case "style-name":
		c.style = a.Value
	case "value-type":
		if a.Value == "error" {
			c.isError = true
		} else {
			c.typ = a.Value
		}
	case "value", "date-value", "time-value", "boolean-value", "string-value":
		c.value, c.hasValue = a.Value, true
	case "formula":
		c.formula = FormulaNoValue
		if _, text, ok := strings.Cut(a.Value, "="); ok { // "of:=" begins it
			c.formula += plainReferences(text)
		}
	}
}

// bracketed is a reference in a formula as the standard writes it (OpenFormula: OASIS
// OpenDocument 1.2, part 2, 5.8): [.F2:.F3], [$Runs.$B$2:.$B$69].
var bracketed = regexp.MustCompile(`\[[^\[\]]*\]`)

// plainReferences writes references as an .xlsx has them: F2:F3, $Runs!$B$2:$B$69.
func plainReferences(formula string) string {
	return bracketed.ReplaceAllStringFunc(formula, func(ref string) string {
		ends := strings.Split(ref[1:len(ref)-1], ":")
		for i, end := range ends {
			if dot := strings.LastIndex(end, "."); dot == 0 {
				ends[i] = end[1:]
			} else if dot > 0 {
				ends[i] = end[:dot] + "!" + end[dot+1:]
			}
		}
		return strings.Join(ends, ":")
	})
}

// grid is the cell as an .xlsx would have it, and whether it is a number there.
func (c *odsCell) grid(date1904 bool) (out gridCell, ok bool) {
	out = gridCell{text: c.text, formula: c.formula, comment: c.comment}
	serial := 0.0
	switch c.typ {
	case "float", "percentage", "currency":
		f, err := strconv.ParseFloat(c.value, 64)
		serial, ok = f, err == nil
		if ok && c.isBoolean(f) {
			out.text, ok = strings.ToUpper(strconv.FormatBool(f == 1)), false
		}
	case "date":
		serial, ok = dateSerial(c.value, date1904)
	case "time":
		serial, ok = timeSerial(c.value)
	case "boolean":
		if c.hasValue {
			out.text = strings.ToUpper(c.value)
		}
	case "string":
		if c.hasValue && !c.isError {
			out.text = c.value
		}
	case "":
		if !c.calculated {
			out.text = c.formula
		}
	}
	if c.isError {
		out.text = errorText(c.text)
	}
	if ok {
		out.text = numberText(serial)
	}
	return out, ok
}

// isBoolean tells a formula's truth that is stored as a number, as LibreOffice
// does where the cell's format is not of truths.
func (c *odsCell) isBoolean(f float64) bool {
	switch {
	case c.formula == "" || f != 0 && f != 1:
		return false
	case c.text == "TRUE", c.text == "FALSE":
		return true
	}
	return c.formula == "=TRUE()" || c.formula == "=FALSE()"
}

// errorText gives the error of a program that numbers its own one of the few
// that an .xlsx can hold.
func errorText(text string) string {
	switch {
	case text == "Err:503":
		return "#NUM!"
	case text == "Err:522", text == "Err:523":
		return "#REF!"
	case strings.HasPrefix(text, "Err:"):
		return "#VALUE!"
	}
	return text
}

// dateSerial counts the days of a date such as 2026-07-02T18:45:00.
func dateSerial(text string, date1904 bool) (float64, bool) {
	day, clock, timed := strings.Cut(text, "T")
	d, err := time.Parse(time.DateOnly, day)
	if err != nil {
		return 0, false
	}
	first := time.Date(1899, 12, 30, 0, 0, 0, 0, time.UTC)
	if date1904 {
		first = time.Date(1904, 1, 1, 0, 0, 0, 0, time.UTC)
	}
	serial := float64((d.Unix() - first.Unix()) / 86400)
	if timed {
		c, err := time.Parse(time.TimeOnly, strings.TrimSuffix(clock, "Z"))
		if err != nil {
			return 0, false
		}
		serial += c.Sub(time.Date(0, 1, 1, 0, 0, 0, 0, time.UTC)).Seconds() / 86400
	}
	return serial, true
}

// timeSerial is the share of a day of a duration such as PT25H30M00S.
func timeSerial(text string) (float64, bool) {
	rest, negative := strings.CutPrefix(text, "-")
	rest, ok := strings.CutPrefix(rest, "P")
	seconds := 0.0
	for ok && rest != "" {
		if rest = strings.TrimPrefix(rest, "T"); rest == "" {
			break
		}
		i := strings.IndexAny(rest, "DHMS")
		if i < 0 {
			return 0, false
		}
		n, err := strconv.ParseFloat(rest[:i], 64)
		if err != nil {
			return 0, false
		}
		seconds += n * map[byte]float64{'D': 86400, 'H': 3600, 'M': 60, 'S': 1}[rest[i]]
		rest = rest[i+1:]
	}
	if negative {
		seconds = -seconds
	}
	return seconds / 86400, ok
}

// content reads what stands in a cell up to its end: paragraphs, and the comment.
func (c *odsCell) content(d *xml.Decoder) error {
	var own, comment odsText
	text := &own
	for depth := 0; ; {
		tok, err := d.Token()
		if err != nil {
			return err
		}
		switch t := tok.(type) {
		case xml.StartElement:
			if t.Name.Local == "annotation" {
				text = &comment
			} else if !text.start(t) {
				if err := d.Skip(); err != nil {
					return err
				}
				continue
			}
			depth++
		case xml.EndElement:
			if depth--; depth < 0 {
				c.text, c.comment, c.calculated = own.String(), comment.String(), own.any
				return nil
			}
			switch t.Name.Local {
			case "p":
				text.open = false
			case "annotation":
				text = &own
			}
		case xml.CharData:
			text.characters(t)
		}
	}
}

// odsText makes a text of paragraphs.
type odsText struct {
	strings.Builder
	open  bool // within a paragraph
	any   bool // after a paragraph
	blank bool // white space stood before
}

// start takes a tag within a cell and reports whether what it holds is looked at.
func (x *odsText) start(t xml.StartElement) bool {
	switch t.Name.Local {
	case "p":
		if x.any {
			x.add("\n", 1)
		}
		x.open, x.any, x.blank = true, true, false
	case "list", "list-item":
		return true
	case "note", "ruby-text", "frame":
		return false
	case "s":
		n, err := strconv.Atoi(attrOf(t, "c"))
		if err != nil {
			n = 1
		}
		x.add(" ", n)
	case "tab":
		x.add("\t", 1)
	case "line-break":
		x.add("\n", 1)
	}
	return x.open
}

// add writes s n times, but no more than shows that the cell is too long.
func (x *odsText) add(s string, n int) {
	if n > 0 && x.Len() <= utf8.UTFMax*maxCell {
		x.WriteString(strings.Repeat(s, min(n, maxCell+1)))
	}
	x.blank = false
}

// characters adds a text, in which white space of any length is one space
// (OpenDocument 1.3 part 3, 6.1.2). Where a paragraph begins it should be none,
// but LibreOffice writes a first space as it is.
func (x *odsText) characters(b []byte) {
	if !x.open || x.Len() > utf8.UTFMax*maxCell {
		return
	}
	for _, c := range b {
		white := c == ' ' || c == '\t' || c == '\n' || c == '\r'
		if white && !x.blank {
			x.WriteByte(' ')
		} else if !white {
			x.WriteByte(c)
		}
		x.blank = white
	}
}
