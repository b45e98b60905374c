package logbook

import (
	"bytes"
	_ "embed"
	"encoding/csv"
	"errors"
	"fmt"
	"io"

	"github.com/xuri/excelize/v2"
)

//go:embed columns.csv
var columnsCSV []byte

// lists are the words of the drop-downs; the loader understands each of them.
var lists = map[string][]string{
	"outcome":     {"missed", "lost", "landed", "released"},
	"loss":        {"pulled hook", "broke off", "leader cut", "knot failed", "hook broke", "sharked"},
	"kept":        {"kept", "released"},
	"yesno":       {"yes", "no"},
	"lengthkind":  {"fork length", "curved fork length", "total length", "lower jaw to fork"},
	"weightstate": {"round", "bled", "gutted", "gilled and gutted", "dressed"},
	"approach":    {"straight", "circling a school", "working a temperature break", "along an edge", "prospecting"},
}

// open lists are suggestions: another word is accepted too.
var open = map[string]bool{"approach": true, "loss": true}

// filled is how many rows the drop-downs reach down.
const filled = 2000

type column struct{ sheet, heading, list, example, explains string }

// Blank writes an empty logbook, its headings in "us" or "metric" units.
func Blank(w io.Writer, units string) error {
	columns, err := load(units)
	if err != nil {
		return err
	}
	f := excelize.NewFile()
	b := &builder{f: f}
	var sheet string
	for _, c := range columns {
		if c.sheet != sheet {
			sheet = c.sheet
			b.startSheet(sheet)
		}
		b.addColumn(c)
	}
	b.explain(columns)
	if b.err == nil {
		b.err = f.DeleteSheet("Sheet1")
	}
	f.SetActiveSheet(0)
	if b.err == nil {
		b.err = f.Write(w)
	}
	return errors.Join(b.err, f.Close())
}

func load(units string) ([]column, error) {
	example := map[string]int{"us": 4, "metric": 5}[units]
	if example == 0 {
		return nil, fmt.Errorf("units %q: expected us or metric", units)
	}
	rows, err := csv.NewReader(bytes.NewReader(columnsCSV)).ReadAll()
	if err != nil {
		return nil, fmt.Errorf("columns.csv: %w", err)
	}
	var columns []column
	for _, r := range rows[1:] {
		columns = append(columns, column{r[0], r[example-3], r[3], r[example], r[6]})
	}
	return columns, nil
}

// builder writes sheets and keeps the first error.
type builder struct {
	f     *excelize.File
	sheet string
	at    int
	err   error
	head  int
	text  int
	grey  int
}

func (b *builder) do(err error) {
	if b.err == nil {
		b.err = err
	}
}

func (b *builder) style(s *excelize.Style) int {
	id, err := b.f.NewStyle(s)
	b.do(err)
	return id
}

func (b *builder) startSheet(name string) {
	if b.head == 0 {
		b.head = b.style(&excelize.Style{Font: &excelize.Font{Bold: true},
			Alignment: &excelize.Alignment{WrapText: true, Vertical: "top"},
			Border:    []excelize.Border{{Type: "bottom", Style: 1, Color: "444444"}}})
		b.text = b.style(&excelize.Style{NumFmt: 49}) // text: what is typed stays as typed
		b.grey = b.style(&excelize.Style{Font: &excelize.Font{Italic: true, Color: "777777"}, NumFmt: 49})
	}
	_, err := b.f.NewSheet(name)
	b.do(err)
	b.sheet, b.at = name, 0
	b.do(b.f.SetPanes(name, &excelize.Panes{Freeze: true, YSplit: 1, TopLeftCell: "A2", ActivePane: "bottomLeft"}))
}

func (b *builder) addColumn(c column) {
	b.at++
	letter, err := excelize.ColumnNumberToName(b.at)
	b.do(err)
	b.do(b.f.SetCellStr(b.sheet, letter+"1", c.heading))
	b.do(b.f.SetCellStyle(b.sheet, letter+"1", letter+"1", b.head))
	b.do(b.f.SetColWidth(b.sheet, letter, letter, float64(max(11, len(c.heading)+2))))
	if isClock(c.heading) {
		b.do(b.f.SetCellStyle(b.sheet, letter+"3", fmt.Sprintf("%s%d", letter, filled), b.text))
	}
	if c.example != "" {
		b.do(b.f.SetCellStr(b.sheet, letter+"2", c.example))
	}
	b.do(b.f.SetCellStyle(b.sheet, letter+"2", letter+"2", b.grey))
	if words := lists[c.list]; words != nil {
		b.dropDown(letter, words, open[c.list])
	}
}

// isClock tells the columns that are kept as text, so that no program turns
// what was typed into a date of its own.
func isClock(heading string) bool {
	switch heading {
	case "Trip", "Leg", "Line", "Date", "Start", "End", "Depart", "Return", "Time":
		return true
	}
	return false
}

func (b *builder) dropDown(letter string, words []string, open bool) {
	v := excelize.NewDataValidation(true)
	v.Sqref = fmt.Sprintf("%s3:%s%d", letter, letter, filled)
	b.do(v.SetDropList(words))
	if open {
		v.ShowErrorMessage = false
	} else {
		v.SetError(excelize.DataValidationErrorStyleStop, "Not on the list", "Choose one of the words in the list.")
	}
	b.do(b.f.AddDataValidation(b.sheet, v))
}

// explain adds the sheet that says what each column is. Its headings are none
// that the loader knows.
func (b *builder) explain(columns []column) {
	const name = "About this book"
	_, err := b.f.NewSheet(name)
	b.do(err)
	lines := [][]string{
		{"An empty logbook. Fill in what you know and leave the rest empty; an empty cell is never read as zero."},
		{"Rows that begin with # are examples and are passed over. Add columns of your own: they are kept under " +
			"their names."},
		{},
	}
	for _, c := range columns {
		lines = append(lines, []string{c.sheet + ": " + c.heading, c.explains})
	}
	for i, l := range lines {
		for j, text := range l {
			cell, err := excelize.CoordinatesToCellName(j+1, i+1)
			b.do(err)
			b.do(b.f.SetCellStr(name, cell, text))
		}
	}
	b.do(b.f.SetColWidth(name, "A", "A", 34))
	b.do(b.f.SetColWidth(name, "B", "B", 90))
}
