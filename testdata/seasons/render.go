package seasons

import (
	"fmt"
	"strconv"
	"strings"
	"time"
)

// rendered is a cell as it goes into a file: text, or a number with the format
// under which a workbook shows it.
type rendered struct {
	text   string
	number float64
	isNum  bool
	show   string // a workbook's number format, "" for general
}

func asText(s string) rendered { return rendered{text: s} }

// column is a field with the heading and unit that the log gives it.
type column struct {
	field, heading string
	unit           string // of bare cells
	inCells        bool   // units stand in the cells
}

// column chooses a heading and a unit.
func (w *writer) column(name string) column {
	f := fields[name]
	c := column{field: name, heading: f.headings[w.IntN(len(f.headings))]}
	if f.us == "" {
		return c
	}
	switch w.f.Units {
	case "headings":
		c.unit = w.anyUnit(f)
		c.heading = w.withUnit(c.heading, c.unit)
	case "cells":
		c.inCells = true
	default:
		c.unit = f.unit(w.f.Units)
		if f.needsUnit(w.f.Units) {
			c.heading = w.withUnit(c.heading, c.unit)
		}
	}
	return c
}

func (w *writer) anyUnit(f field) string {
	us := []string{f.us, f.metric}
	if f.also != "" {
		us = append(us, f.also)
	}
	return us[w.IntN(len(us))]
}

func (w *writer) withUnit(heading, unit string) string {
	u := w.spelling(unit)
	return fmt.Sprintf([]string{"%s (%s)", "%s %s", "%s [%s]", "%s, %s"}[w.IntN(4)], heading, u)
}

func (w *writer) spelling(unit string) string {
	return spellings[unit][w.IntN(len(spellings[unit]))]
}

// render writes a cell of a column.
func (w *writer) render(c cell, col column) rendered {
	switch c.kind {
	case textCell:
		return asText(c.text)
	case wholeCell:
		return w.numeral(strconv.Itoa(c.n))
	case amountCell:
		return w.amountCell(c.amount, col)
	case degreesCell:
		s, _ := c.amount.decimal("deg")
		return w.numeral(s)
	case dateCell:
		return w.date(c.day)
	case clockCell:
		return w.clock(c.n)
	}
	return rendered{}
}

// numeral is a number of a workbook, or its text with the file's decimal mark.
func (w *writer) numeral(plain string) rendered {
	if !w.f.book() {
		return asText(w.marked(plain))
	}
	v, err := strconv.ParseFloat(plain, 64)
	return rendered{text: plain, number: v, isNum: err == nil}
}

func (w *writer) marked(plain string) string {
	if w.f.Separator == "semicolon" {
		return strings.ReplaceAll(plain, ".", ",")
	}
	return plain
}

func (w *writer) amountCell(a Amount, col column) rendered {
	if !col.inCells {
		s, _ := a.decimal(col.unit)
		return w.numeral(s)
	}
	f := fields[col.field]
	unit := w.anyUnit(f)
	if unit == "in" && a.whole("in") && w.IntN(2) == 0 {
		inches := a.in("in").Num().Int64()
		return asText(fmt.Sprintf([]string{`%d'%d"`, `%d ft %d in`}[w.IntN(2)], inches/12, inches%12))
	}
	s, _ := a.decimal(unit)
	return asText(w.marked(s) + []string{"", " "}[w.IntN(2)] + w.spelling(unit))
}

// serials count days from 1899-12-30 in the 1900 system, from 1904-01-01 in the other.
var (
	zero1900 = time.Date(1899, 12, 30, 0, 0, 0, 0, time.UTC)
	zero1904 = time.Date(1904, 1, 1, 0, 0, 0, 0, time.UTC)
)

func (w *writer) date(d time.Time) rendered {
	zero := zero1900
	switch w.f.Dates {
	case "day-first":
		return asText(d.Format([]string{"02/01/2006", "2/1/2006", "02-01-06"}[w.IntN(3)]))
	case "month-first":
		return asText(d.Format([]string{"01/02/2006", "1/2/2006", "01-02-06"}[w.IntN(3)]))
	case "names":
		return asText(d.Format([]string{"2 Jan 2006", "January 2, 2006", "Mon 02-Jan-06"}[w.IntN(3)]))
	case "iso":
		return asText(d.Format(time.DateOnly))
	case "real-1904":
		zero = zero1904
	}
	return rendered{number: float64(d.Sub(zero) / (24 * time.Hour)), isNum: true, show: "dd/mm/yyyy"}
}

// clock writes seconds of a day; a midnight that ends the day is 24:00 only in
// the styles that have it.
func (w *writer) clock(seconds int) rendered {
	if w.f.Clock == "real" {
		return rendered{number: float64(seconds) / 86400, isNum: true, show: "hh:mm"}
	}
	t := zero1904.Add(time.Duration(seconds%86400) * time.Second)
	switch w.f.Clock {
	case "24:00":
		if seconds == 86400 {
			return asText("24:00")
		}
	case "2230":
		if s := t.Format("1504"); !w.f.book() || s < "0100" || w.IntN(2) == 0 {
			return asText(s)
		} else {
			return w.numeral(strings.TrimLeft(s, "0")) // 730, as typed into a workbook
		}
	case "10:30 pm":
		return asText(t.Format([]string{"3:04 pm", "03:04 PM"}[w.IntN(2)]))
	}
	return asText(t.Format("15:04"))
}

// grid is a sheet as rows of cells, its header first, perhaps under a title.
func (w *writer) grid(s sheet) [][]rendered {
	order := w.Perm(len(s.fields))
	if w.IntN(3) > 0 {
		for i := range order {
			order[i] = i
		}
	}
	columns := make([]column, len(order))
	head := make([]rendered, len(order))
	for i, at := range order {
		columns[i] = w.column(s.fields[at])
		head[i] = asText(columns[i].heading)
	}
	var rows [][]rendered
	if w.IntN(4) == 0 {
		rows = append(rows, []rendered{asText(s.name + " of the season")}, nil)
	}
	rows = append(rows, head)
	for _, r := range s.rows {
		if w.IntN(20) == 0 {
			rows = append(rows, nil)
		}
		cells := make([]rendered, len(columns))
		for i, c := range columns {
			cells[i] = w.render(r[c.field], c)
		}
		rows = append(rows, cells)
	}
	return rows
}
