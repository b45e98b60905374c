package page

import (
	"bytes"
	"embed"
	"encoding/json"
	"fmt"
	"html/template"
	"io"
	"regexp"
	"slices"
	"strings"
	"time"
)

//go:embed assets
var assets embed.FS

// idPattern is what a section's ID may be: it becomes part of identifiers.
var idPattern = regexp.MustCompile(`^[a-z][a-z0-9-]*$`)

// Render writes the page as one HTML file. The same page gives the same bytes.
// It fails where a section's ID is malformed or used twice, where a row has
// not as many cells as its table has columns, or where w does.
func Render(w io.Writer, p Page) error {
	if err := check(p); err != nil {
		return err
	}
	view, err := newView(p)
	if err != nil {
		return err
	}
	tmpl, err := template.ParseFS(assets, "assets/page.html.tmpl")
	if err != nil {
		return fmt.Errorf("page template: %w", err)
	}
	// Whole or not at all: half a page looks like a page.
	var buf bytes.Buffer
	if err := tmpl.Execute(&buf, view); err != nil {
		return fmt.Errorf("render page: %w", err)
	}
	if _, err := w.Write(buf.Bytes()); err != nil {
		return fmt.Errorf("write page: %w", err)
	}
	return nil
}

func check(p Page) error {
	seen := map[string]bool{}
	for _, s := range p.all() {
		if !idPattern.MatchString(s.ID) {
			return fmt.Errorf("section %q: the ID %q is not lower-case letters, digits and hyphens", s.Heading, s.ID)
		}
		if seen[s.ID] {
			return fmt.Errorf("section %q: the ID %q is used twice", s.Heading, s.ID)
		}
		seen[s.ID] = true
		for _, t := range append([]*Table{s.Table}, s.Tables...) {
			if err := t.check(); err != nil {
				return fmt.Errorf("section %q: %w", s.Heading, err)
			}
		}
	}
	return nil
}

// all are the sections, folded or not.
func (p Page) all() []Section {
	all := slices.Clone(p.Sections)
	for _, f := range p.Folds {
		all = append(all, f.Sections...)
	}
	return all
}

func (t *Table) check() error {
	if t == nil {
		return nil
	}
	for i, r := range t.Rows {
		if len(r.Cells) != len(t.Columns) {
			return fmt.Errorf("table %q, row %d: %d cells under %d columns", t.Caption,
				i+1, len(r.Cells), len(t.Columns))
		}
	}
	if t.Total != nil && len(t.Total) != len(t.Columns) {
		return fmt.Errorf("table %q, total: %d cells under %d columns", t.Caption, len(t.Total), len(t.Columns))
	}
	return nil
}

// view is the page as the template takes it: all text decided.
type view struct {
	Page
	Policy    string
	Style     template.CSS
	Library   template.JS
	Script    template.JS
	Palette   template.JS
	Stamp     string
	StampISO  string
	Views     []sectionView
	FoldViews []foldView
	Licence   string
	HasCharts bool
}

type foldView struct {
	Heading string
	Views   []sectionView
}

type sectionView struct {
	Section
	Data   template.JS // the chart's options; empty without a chart
	Tables []*tableView
}

type tableView struct {
	*Table
	Heads []headView
	Body  []rowView
	Foot  []cellView
	Count string
	Dense bool // of so many columns that paper takes a smaller letter
}

type headView struct {
	Column
	Class string
}

type rowView struct {
	Thin  bool
	Cells []cellView
}

type cellView struct {
	Text, Key, Class string
	First            bool
}

func newView(p Page) (*view, error) {
	v := &view{Page: p, Stamp: p.Generated.Format("2 January 2006, 15:04 MST"),
		StampISO: p.Generated.Format(time.RFC3339)}
	if v.Lang == "" {
		v.Lang = "en"
	}
	files := map[string]string{}
	for _, name := range []string{"echarts.min.js", "page.js", "page.css", "LICENSE", "NOTICE",
		"LICENSE-d3", "LICENSE-zrender"} {
		b, err := assets.ReadFile("assets/" + name)
		if err != nil {
			return nil, fmt.Errorf("page asset: %w", err)
		}
		files[name] = string(b)
	}
	style := paletteCSS() + files["page.css"]
	palette, err := json.Marshal(paletteData())
	if err != nil {
		return nil, fmt.Errorf("palette: %w", err)
	}
	v.Style, v.Library, v.Script = template.CSS(style),
		template.JS(files["echarts.min.js"]), template.JS(files["page.js"])
	v.Palette = template.JS(palette)
	v.Policy = policy([]string{files["echarts.min.js"], files["page.js"]}, style)
	v.Licence = strings.Join([]string{files["NOTICE"], files["LICENSE"], "d3:\n" + files["LICENSE-d3"], "ZRender:\n" +
		files["LICENSE-zrender"]}, "\n\n")
	if v.Views, err = v.sections(p.Sections); err != nil {
		return nil, err
	}
	for _, f := range p.Folds {
		views, err := v.sections(f.Sections)
		if err != nil {
			return nil, err
		}
		v.FoldViews = append(v.FoldViews, foldView{f.Heading, views})
	}
	return v, nil
}

// sections are made ready, and the page knows whether it has a chart.
func (v *view) sections(all []Section) ([]sectionView, error) {
	var out []sectionView
	for _, s := range all {
		sv := sectionView{Section: s}
		for _, t := range append([]*Table{s.Table}, s.Tables...) {
			if t != nil {
				sv.Tables = append(sv.Tables, t.view())
			}
		}
		if s.Chart != nil {
			v.HasCharts = true
			data, err := json.Marshal(s.Chart)
			if err != nil {
				return nil, fmt.Errorf("chart of section %q: %w", s.Heading, err)
			}
			sv.Data = template.JS(data)
		}
		out = append(out, sv)
	}
	return out, nil
}

// denseColumns are as many as a sheet of paper does not hold in the usual letter.
const denseColumns = 10

func (t *Table) view() *tableView {
	if t == nil {
		return nil
	}
	v := &tableView{Table: t, Dense: len(t.Columns) >= denseColumns, Count: Plural(int64(len(t.Rows)), "row", "rows")}
	for _, c := range t.Columns {
		v.Heads = append(v.Heads, headView{Column: c, Class: c.class()})
	}
	for _, r := range t.Rows {
		v.Body = append(v.Body, rowView{Thin: r.Thin, Cells: t.cells(r.Cells)})
	}
	if t.Total != nil {
		v.Foot = t.cells(t.Total)
	}
	return v
}

func (t *Table) cells(row []Cell) []cellView {
	out := make([]cellView, len(row))
	for i, c := range row {
		col := t.Columns[i]
		out[i] = cellView{Text: c.print(col), Key: c.key(col), Class: col.class(), First: i == 0}
	}
	return out
}
