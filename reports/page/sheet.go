package page

import (
	"bytes"
	"fmt"
	"html/template"
	"io"
	"time"
)

// Sheet is one printed page: panels of small tables side by side, with no script and
// no chart. Every string is plain text and is escaped on rendering.
type Sheet struct {
	Report    Report
	Title     string
	Subtitle  string
	Lang      string    // BCP 47 tag, "en" where empty
	Generated time.Time // printed in the foot
	Open      []string  // paragraphs at the top: what is not settled
	Panels    []Panel
	Footer    []string
}

// Panel is one table of a Sheet and what must be known to read it.
type Panel struct {
	Heading string
	Wide    bool // over the whole width, else over half of it
	Next    bool // begins the next sheet of paper
	Blank   bool // its rows are to be written in
	Table   *Table
	Notes   []string
}

type sheetView struct {
	Sheet
	Policy   string
	Style    template.CSS
	Stamp    string
	StampISO string
	Views    []panelView
}

type panelView struct {
	Panel
	Table *tableView
}

// RenderSheet writes the sheet as one HTML file. It fails where a row has not as
// many cells as its table has columns, or where w does.
func RenderSheet(w io.Writer, s Sheet) error {
	css, err := assets.ReadFile("assets/sheet.css")
	if err != nil {
		return fmt.Errorf("sheet asset: %w", err)
	}
	if s.Lang == "" {
		s.Lang = "en"
	}
	style := paletteCSS() + string(css)
	v := sheetView{Sheet: s, Policy: policy(nil, style), Style: template.CSS(style),
		Stamp: s.Generated.Format("2 January 2006"), StampISO: s.Generated.Format(time.RFC3339)}
	for _, p := range s.Panels {
		if err := p.Table.check(); err != nil {
			return fmt.Errorf("panel %q: %w", p.Heading, err)
		}
		v.Views = append(v.Views, panelView{Panel: p, Table: p.Table.view()})
	}
	tmpl, err := template.ParseFS(assets, "assets/sheet.html.tmpl")
	if err != nil {
		return fmt.Errorf("sheet template: %w", err)
	}
	var buf bytes.Buffer
	if err := tmpl.Execute(&buf, v); err != nil {
		return fmt.Errorf("render sheet: %w", err)
	}
	if _, err := w.Write(buf.Bytes()); err != nil {
		return fmt.Errorf("write sheet: %w", err)
	}
	return nil
}
