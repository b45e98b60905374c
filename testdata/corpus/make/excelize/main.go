// Command excelize writes one workbook of the corpus from the cells that it
// reads as JSON from standard input.
package main

import (
	"encoding/json"
	"fmt"
	"os"
	"strings"
	"time"

	"github.com/xuri/excelize/v2"
)

type sheet struct {
	Name   string   `json:"name"`
	Hidden bool     `json:"hidden"`
	Merges []string `json:"merges"`
	Rows   [][]cell `json:"rows"`
}

type cell struct {
	Type  string `json:"t"` // plain, date, time or datetime
	Value any    `json:"v"`
}

// Built-in number formats of SpreadsheetML.
var formats = map[string]int{"date": 14, "time": 20, "datetime": 22}

func main() {
	if err := write(os.Args[1]); err != nil {
		fmt.Fprintln(os.Stderr, err)
		os.Exit(1)
	}
}

func write(path string) error {
	var sheets []sheet
	if err := json.NewDecoder(os.Stdin).Decode(&sheets); err != nil {
		return fmt.Errorf("cells: %w", err)
	}
	f := excelize.NewFile()
	styles := map[string]int{}
	for t, n := range formats {
		id, err := f.NewStyle(&excelize.Style{NumFmt: n})
		if err != nil {
			return err
		}
		styles[t] = id
	}
	for _, s := range sheets {
		if err := add(f, s, styles); err != nil {
			return fmt.Errorf("sheet %s: %w", s.Name, err)
		}
	}
	if err := f.DeleteSheet("Sheet1"); err != nil {
		return err
	}
	return f.SaveAs(path)
}

func add(f *excelize.File, s sheet, styles map[string]int) error {
	if _, err := f.NewSheet(s.Name); err != nil {
		return err
	}
	for i, row := range s.Rows {
		for j, c := range row {
			if c.Value == nil {
				continue
			}
			at, err := excelize.CoordinatesToCellName(j+1, i+1)
			if err != nil {
				return err
			}
			if err := put(f, s.Name, at, c, styles); err != nil {
				return err
			}
		}
	}
	for _, m := range s.Merges {
		from, to, _ := strings.Cut(m, ":")
		if err := f.MergeCell(s.Name, from, to); err != nil {
			return err
		}
	}
	return f.SetSheetVisible(s.Name, !s.Hidden)
}

func put(f *excelize.File, sheet, at string, c cell, styles map[string]int) error {
	v := c.Value
	layout := map[string]string{"date": "2006-01-02", "datetime": "2006-01-02T15:04:05"}[c.Type]
	if layout != "" {
		t, err := time.Parse(layout, fmt.Sprint(c.Value))
		if err != nil {
			return err
		}
		v = t
	}
	if err := f.SetCellValue(sheet, at, v); err != nil {
		return err
	}
	if c.Type == "plain" {
		return nil
	}
	return f.SetCellStyle(sheet, at, at, styles[c.Type])
}
