package export

import (
	"errors"
	"fmt"
	"io"
	"reflect"
	"strings"
	"time"

	"github.com/xuri/excelize/v2"
)

// Sheet is one sheet of a workbook: rows whose json tags are the headings.
type Sheet struct {
	Name  string // at most 31 letters
	About string // one sentence for the first sheet
	Rows  any    // a slice of structs of text, numbers, booleans and pointers to them
	Chart *Chart // nil: none
}

// Chart is a chart beside a sheet's rows.
type Chart struct {
	Title  string
	Labels string   // heading of the column of labels
	Values []string // headings of the columns drawn
	// Interval draws Values as upper end, lower end and estimate: lines from end to
	// end with the estimate marked. Columns otherwise.
	Interval bool
	Axis     string
}

// Workbook writes sheets as a workbook, after a first sheet that says what each
// is, with notes under it. Text is written as text whatever it begins with; no
// cell is a formula.
func Workbook(w io.Writer, sheets []Sheet, notes []string) error {
	b := &book{f: excelize.NewFile(), styles: map[string]int{}}
	b.about(sheets, notes)
	for _, s := range sheets {
		b.write(s)
	}
	if b.err == nil {
		b.err = b.f.Write(w)
	}
	return errors.Join(b.err, b.f.Close())
}

// book writes sheets and keeps the first error.
type book struct {
	f      *excelize.File
	styles map[string]int
	err    error
}

func (b *book) do(err error) {
	if b.err == nil {
		b.err = err
	}
}

// formats are number formats by the end of a heading, the first that fits taken.
var formats = []struct{ suffix, format string }{
	{"date", "yyyy-mm-dd"}, {"share", "0%"}, {"_lo_share", "0%"}, {"hookup_lo", "0%"}, {"hookup_hi", "0%"},
	{"boated_lo", "0%"}, {"boated_hi", "0%"},
	{"p_value", "0.0000"}, {"rate", "0.000"}, {"rate_lo", "0.000"}, {"rate_hi", "0.000"}, {"ratio", "0.00"},
	{"ratio_lo", "0.00"}, {"ratio_hi", "0.00"},
	{"_kg", "0.0"}, {"_cm", "0.0"}, {"_kn", "0.0"}, {"_nmi", "0.0"}, {"_m", "0"}, {"hours", "0.0"}, {"_pct", "0.0"},
}

func formatOf(heading string, whole bool) string {
	if whole {
		return "0"
	}
	for _, f := range formats {
		if strings.HasSuffix(heading, f.suffix) {
			return f.format
		}
	}
	return "0.00"
}

func (b *book) style(name string, s *excelize.Style) int {
	if id, ok := b.styles[name]; ok {
		return id
	}
	id, err := b.f.NewStyle(s)
	b.do(err)
	b.styles[name] = id
	return id
}

func (b *book) number(format string) int {
	return b.style(format, &excelize.Style{CustomNumFmt: &format})
}

func (b *book) head() int {
	return b.style("head", &excelize.Style{Font: &excelize.Font{Bold: true},
		Alignment: &excelize.Alignment{WrapText: true, Vertical: "bottom"},
		Border:    []excelize.Border{{Type: "bottom", Style: 2, Color: "16202A"}},
		Fill:      excelize.Fill{Type: "pattern", Pattern: 1, Color: []string{"E6EBEF"}}})
}

func (b *book) wrapped() int {
	return b.style("wrapped", &excelize.Style{Alignment: &excelize.Alignment{WrapText: true, Vertical: "top"}})
}

// about is the first sheet.
func (b *book) about(sheets []Sheet, notes []string) {
	const name = "about"
	b.do(b.f.SetSheetName("Sheet1", name))
	b.do(b.f.SetColWidth(name, "A", "A", 30))
	b.do(b.f.SetColWidth(name, "B", "B", 110))
	row := 1
	line := func(left, right string) {
		b.do(b.f.SetCellStr(name, fmt.Sprintf("A%d", row), left))
		b.do(b.f.SetCellStr(name, fmt.Sprintf("B%d", row), right))
		b.do(b.f.SetCellStyle(name, fmt.Sprintf("A%d", row), fmt.Sprintf("B%d", row), b.wrapped()))
		row++
	}
	line("sheet", "what a row is")
	b.do(b.f.SetCellStyle(name, "A1", "B1", b.head()))
	for _, s := range sheets {
		line(s.Name, s.About)
	}
	row++
	for _, n := range notes {
		line("", n)
	}
	b.freeze(name)
}

func (b *book) freeze(sheet string) {
	b.do(b.f.SetPanes(sheet, &excelize.Panes{Freeze: true, YSplit: 1, TopLeftCell: "A2", ActivePane: "bottomLeft"}))
}

// paper prints a sheet across, as wide as it is.
func (b *book) paper(sheet string) {
	fit, across, wide, tall := true, "landscape", 1, 0
	b.do(b.f.SetSheetProps(sheet, &excelize.SheetPropsOptions{FitToPage: &fit}))
	b.do(b.f.SetPageLayout(sheet, &excelize.PageLayoutOptions{Orientation: &across,
		FitToWidth: &wide, FitToHeight: &tall}))
}

func (b *book) write(s Sheet) {
	rows := reflect.ValueOf(s.Rows)
	if rows.Kind() != reflect.Slice || rows.Type().Elem().Kind() != reflect.Struct {
		b.do(fmt.Errorf("sheet %s: rows are %s, not a slice of structs", s.Name, rows.Type()))
		return
	}
	_, err := b.f.NewSheet(s.Name)
	b.do(err)
	typ := rows.Type().Elem()
	for c := range typ.NumField() {
		b.column(s.Name, c, typ.Field(c), rows)
	}
	b.freeze(s.Name)
	b.paper(s.Name)
	last, err := excelize.ColumnNumberToName(typ.NumField())
	b.do(err)
	if rows.Len() > 0 {
		b.do(b.f.AutoFilter(s.Name, fmt.Sprintf("A1:%s%d", last, rows.Len()+1), nil))
	}
	if s.Chart != nil && rows.Len() > 0 {
		b.chart(s, typ, rows.Len())
	}
}

func (b *book) column(sheet string, c int, field reflect.StructField, rows reflect.Value) {
	letter, err := excelize.ColumnNumberToName(c + 1)
	b.do(err)
	heading := field.Tag.Get("json")
	b.do(b.f.SetCellStr(sheet, letter+"1", heading))
	b.do(b.f.SetCellStyle(sheet, letter+"1", letter+"1", b.head()))
	width := max(9, len(heading)+2)
	typ := field.Type
	if typ.Kind() == reflect.Pointer {
		typ = typ.Elem()
	}
	for r := range rows.Len() {
		v := rows.Index(r).Field(c)
		if v.Kind() == reflect.Pointer {
			if v.IsNil() {
				continue
			}
			v = v.Elem()
		}
		if v.Kind() == reflect.String {
			width = max(width, min(60, len(v.String())+2))
		}
		b.cell(sheet, fmt.Sprintf("%s%d", letter, r+2), heading, v)
	}
	if rows.Len() > 0 && (typ.Kind() == reflect.Float64 || typ.Kind() == reflect.Int64 || heading == "date") {
		b.do(b.f.SetCellStyle(sheet, letter+"2", fmt.Sprintf("%s%d", letter, rows.Len()+1),
			b.number(formatOf(heading, typ.Kind() == reflect.Int64))))
	}
	b.do(b.f.SetColWidth(sheet, letter, letter, float64(width)))
}

// cell writes one value: an ISO date as a date, all other text as text.
func (b *book) cell(sheet, at, heading string, v reflect.Value) {
	switch v.Kind() {
	case reflect.Float64:
		b.do(b.f.SetCellFloat(sheet, at, v.Float(), -1, 64))
	case reflect.Int64:
		b.do(b.f.SetCellInt(sheet, at, v.Int()))
	case reflect.Bool:
		b.do(b.f.SetCellBool(sheet, at, v.Bool()))
	default:
		if day, err := time.Parse(time.DateOnly, v.String()); err == nil && heading == "date" {
			b.do(b.f.SetCellFloat(sheet, at, serial(day), -1, 64))
			return
		}
		b.do(b.f.SetCellStr(sheet, at, v.String()))
	}
}

// serial is the number of a day in the 1900 system of workbooks, from March 1900 on.
func serial(day time.Time) float64 {
	return day.Sub(time.Date(1899, 12, 30, 0, 0, 0, 0, time.UTC)).Hours() / 24
}

// Colours of the set of Okabe and Ito (2008).
const (
	blue  = "0072B2"
	green = "009E73"
	ink   = "16202A"
)

func (b *book) chart(s Sheet, typ reflect.Type, rows int) {
	place := func(heading string) string {
		for c := range typ.NumField() {
			if typ.Field(c).Tag.Get("json") == heading {
				letter, err := excelize.ColumnNumberToName(c + 1)
				b.do(err)
				return letter
			}
		}
		b.do(fmt.Errorf("sheet %s: no column %s to draw", s.Name, heading))
		return "A"
	}
	area := func(letter string) string {
		return fmt.Sprintf("'%s'!$%s$2:$%s$%d", s.Name, letter, letter, rows+1)
	}
	vary := false
	font := excelize.Font{Color: ink}
	chart := &excelize.Chart{Type: excelize.Col, Title: excelize.ChartTitle{
		Paragraph: []excelize.RichTextRun{{Text: s.Chart.Title}}}, VaryColors: &vary,
		Legend: excelize.ChartLegend{Position: "bottom"}, Dimension: excelize.ChartDimension{Width: 760, Height: 400},
		XAxis: excelize.ChartAxis{Font: font},
		YAxis: excelize.ChartAxis{MajorGridLines: true,
			Title:   excelize.ChartTitle{Paragraph: []excelize.RichTextRun{{Text: s.Chart.Axis}}},
			Minimum: new(float64), Font: font}}
	if len(s.Chart.Values) == 1 {
		chart.Legend.Position = "none"
	}
	for i, heading := range s.Chart.Values {
		letter := place(heading)
		series := excelize.ChartSeries{Name: fmt.Sprintf("'%s'!$%s$1", s.Name, letter),
			Categories: area(place(s.Chart.Labels)), Values: area(letter),
			Fill: excelize.Fill{Type: "pattern", Pattern: 1, Color: []string{[]string{blue, green, ink}[i%3]}}}
		if s.Chart.Interval {
			series.Marker = excelize.ChartMarker{Symbol: []string{"dash", "dash", "circle"}[i%3], Size: 8,
				Fill: excelize.Fill{Type: "pattern", Pattern: 1, Color: []string{[]string{ink, ink, blue}[i%3]}}}
			series.Line = excelize.LineOptions{Type: excelize.LineNone}
			series.Fill = excelize.Fill{}
		}
		chart.Series = append(chart.Series, series)
	}
	if s.Chart.Interval {
		chart.Type = excelize.StockHighLowClose
	}
	b.do(b.f.AddChart(s.Name, fmt.Sprintf("B%d", rows+4), chart))
}
