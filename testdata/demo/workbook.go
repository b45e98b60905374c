package main

import (
	"fmt"
	"math"
	"os"
	"strconv"
	"time"

	"github.com/xuri/excelize/v2"
)

// book is a workbook being written, with the styles that its cells share.
type book struct {
	*excelize.File
	bold, date, clock int
}

// Built-in number formats of SpreadsheetML: short date and h:mm.
const (
	formatDate  = 14
	formatClock = 20
)

// writeWorkbook writes the tables as sheets of one workbook.
func writeWorkbook(path string, tables []*table) (err error) {
	b, err := newBook()
	if err != nil {
		return fmt.Errorf("styling %s: %w", path, err)
	}
	defer func() {
		if cerr := b.Close(); err == nil {
			err = cerr
		}
	}()
	for i, t := range tables {
		if err := b.addSheet(i, t); err != nil {
			return fmt.Errorf("writing sheet %s: %w", t.sheet, err)
		}
	}
	buf, err := b.WriteToBuffer()
	if err != nil {
		return fmt.Errorf("packing %s: %w", path, err)
	}
	return os.WriteFile(path, buf.Bytes(), 0o644)
}

func newBook() (*book, error) {
	b := &book{File: excelize.NewFile()}
	var err error
	for _, s := range []struct {
		id    *int
		style excelize.Style
	}{
		{&b.bold, excelize.Style{Font: &excelize.Font{Bold: true}}},
		{&b.date, excelize.Style{NumFmt: formatDate}},
		{&b.clock, excelize.Style{NumFmt: formatClock}},
	} {
		if *s.id, err = b.NewStyle(&s.style); err != nil {
			return nil, err
		}
	}
	return b, nil
}

func (b *book) addSheet(index int, t *table) error {
	if index == 0 {
		if err := b.SetSheetName("Sheet1", t.sheet); err != nil {
			return err
		}
	} else if _, err := b.NewSheet(t.sheet); err != nil {
		return err
	}
	if err := b.putHead(t); err != nil {
		return err
	}
	hidden := coveredCells(t)
	for r, cells := range t.rows {
		for c, cell := range cells {
			if hidden[[2]int{r, c}] {
				continue
			}
			if err := b.put(t.sheet, c+1, t.firstRow()+r, cell); err != nil {
				return err
			}
		}
	}
	if err := b.merge(t); err != nil {
		return err
	}
	return b.putTotal(t)
}

// putHead writes the title, merged over the first columns, and the header.
func (b *book) putHead(t *table) error {
	if t.title != "" {
		if err := b.SetCellStr(t.sheet, "A1", t.title); err != nil {
			return err
		}
		if err := b.MergeCell(t.sheet, "A1", "F1"); err != nil {
			return err
		}
	}
	head := t.firstRow() - 1
	for c, h := range t.header {
		if err := b.put(t.sheet, c+1, head, h); err != nil {
			return err
		}
	}
	return b.SetRowStyle(t.sheet, head, head, b.bold)
}

// coveredCells are the cells that a merged cell covers, by row and column.
func coveredCells(t *table) map[[2]int]bool {
	covered := map[[2]int]bool{}
	for _, s := range t.merged {
		for r := s.first + 1; r <= s.last; r++ {
			covered[[2]int{r, s.column}] = true
		}
	}
	return covered
}

func (b *book) merge(t *table) error {
	for _, s := range t.merged {
		top, err := excelize.CoordinatesToCellName(s.column+1, t.firstRow()+s.first)
		if err != nil {
			return err
		}
		bottom, err := excelize.CoordinatesToCellName(s.column+1, t.firstRow()+s.last)
		if err != nil {
			return err
		}
		if err := b.MergeCell(t.sheet, top, bottom); err != nil {
			return err
		}
	}
	return nil
}

// putTotal writes the totals row: a formula with its stored value.
func (b *book) putTotal(t *table) error {
	for c, h := range t.header {
		if t.totalled == "" || h != t.totalled {
			continue
		}
		var sum float64
		for _, cells := range t.rows {
			if x, ok := cells[c].(float64); ok {
				sum += x
			}
		}
		row := t.firstRow() + len(t.rows)
		if err := b.put(t.sheet, 1, row, "Total"); err != nil {
			return err
		}
		if err := b.put(t.sheet, c+1, row, round(sum, 2)); err != nil {
			return err
		}
		letter, err := excelize.ColumnNumberToName(c + 1)
		if err != nil {
			return err
		}
		formula := fmt.Sprintf("SUM(%s%d:%s%d)", letter, t.firstRow(), letter, row-1)
		return b.SetCellFormula(t.sheet, letter+strconv.Itoa(row), formula)
	}
	return nil
}

// put writes one cell. Text that is a number alone, as a mistake may be, is
// written as a number: a person's spreadsheet would have made it one.
func (b *book) put(sheet string, column, row int, cell any) error {
	name, err := excelize.CoordinatesToCellName(column, row)
	if err != nil {
		return err
	}
	switch v := cell.(type) {
	case nil:
		return nil
	case date:
		return b.putSerial(sheet, name, math.Floor(serial(v.Time)), b.date)
	case clock:
		_, fraction := math.Modf(serial(v.Time))
		return b.putSerial(sheet, name, math.Round(fraction*1440)/1440, b.clock)
	case string:
		if x, err := strconv.ParseFloat(v, 64); err == nil {
			return b.SetCellFloat(sheet, name, x, -1, 64)
		}
	}
	return b.SetCellValue(sheet, name, cell)
}

func (b *book) putSerial(sheet, name string, x float64, style int) error {
	if err := b.SetCellFloat(sheet, name, x, -1, 64); err != nil {
		return err
	}
	return b.SetCellStyle(sheet, name, name, style)
}

// serial is a spreadsheet's day number in the 1900 system.
func serial(t time.Time) float64 {
	epoch := time.Date(1899, 12, 30, 0, 0, 0, 0, time.UTC)
	return t.Sub(epoch).Hours() / 24
}
