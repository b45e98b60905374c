package main

import (
	"encoding/csv"
	"encoding/json"
	"fmt"
	"io"
	"reflect"
	"regexp"
	"strconv"
	"strings"
	"text/tabwriter"

	"wakeledger/queries"
)

// formats write a slice of rows whose json tags are the columns.
var formats = map[string]func(io.Writer, any) error{"table": writeTable, "csv": writeCSV, "json": writeJSON}

// forFormat is where a format goes: tables are for reading, the others for programs.
func (a *app) forFormat(format string) io.Writer {
	if format == "table" {
		return a.out
	}
	return a.plain
}

func writeJSON(w io.Writer, rows any) error {
	e := json.NewEncoder(w)
	e.SetEscapeHTML(false)
	e.SetIndent("", "  ")
	return e.Encode(rows)
}

func writeCSV(w io.Writer, rows any) error {
	c := csv.NewWriter(w)
	all := cells(rows, exact)
	for i, row := range all[1:] {
		for f := range row {
			if isText(rows, i, f) {
				row[f] = noFormula(row[f])
			}
		}
	}
	if err := c.WriteAll(all); err != nil {
		return err
	}
	c.Flush()
	return c.Error()
}

// formula is how a text begins that a spreadsheet would run; see store's escape of the
// same name, which does this for exports.
var formula = regexp.MustCompile(`^'*[-=+@\t\r\n\x{ff1d}\x{ff0b}\x{ff0d}\x{ff20}]`)

// noFormula puts a ' before a text that a spreadsheet would take for a formula. Taking one
// ' off a text that begins so gives back what was there.
func noFormula(s string) string {
	if formula.MatchString(s) {
		return "'" + s
	}
	return s
}

// isText tells a cell of text from one of a number.
func isText(rows any, row, column int) bool {
	t := reflect.ValueOf(rows).Index(row).Field(column).Type()
	if t.Kind() == reflect.Pointer {
		t = t.Elem()
	}
	switch t.Kind() {
	case reflect.String, reflect.Slice:
		return true
	}
	return false
}

func writeTable(w io.Writer, rows any) error {
	t := tabwriter.NewWriter(w, 0, 4, 2, ' ', 0)
	for _, r := range cells(rows, rounded) {
		if _, err := fmt.Fprintln(t, strings.Join(r, "\t")); err != nil {
			return err
		}
	}
	return t.Flush()
}

// cells is a header and one row of text for each row; nil pointers are "".
func cells(rows any, number func(float64) string) [][]string {
	v := reflect.ValueOf(rows)
	typ := v.Type().Elem()
	var head []string
	for i := range typ.NumField() {
		head = append(head, typ.Field(i).Tag.Get("json"))
	}
	all := [][]string{head}
	for i := range v.Len() {
		row := make([]string, typ.NumField())
		for f := range row {
			row[f] = cell(v.Index(i).Field(f), number)
		}
		all = append(all, row)
	}
	return all
}

func cell(v reflect.Value, number func(float64) string) string {
	if v.Kind() == reflect.Pointer {
		if v.IsNil() {
			return ""
		}
		v = v.Elem()
	}
	if place, ok := v.Interface().(queries.Degrees); ok {
		return exact(float64(place))
	}
	if v.Kind() == reflect.Float64 {
		return number(v.Float())
	}
	return fmt.Sprint(v.Interface())
}

func exact(v float64) string { return strconv.FormatFloat(v, 'f', -1, 64) }

// rounded shows three significant digits or one decimal, whichever is more.
func rounded(v float64) string {
	if v >= 100 || v <= -100 || v == 0 {
		return strconv.FormatFloat(v, 'f', 1, 64)
	}
	return strconv.FormatFloat(v, 'g', 3, 64)
}
