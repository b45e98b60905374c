package main

import (
	"encoding/csv"
	"encoding/json"
	"fmt"
	"io"
	"reflect"
	"regexp"
	"strconv"

	"wakeledger/queries"
)

// formats write a slice of rows whose json tags are the columns, for other programs.
var formats = map[string]func(io.Writer, any) error{"csv": writeCSV, "json": writeJSON}

func writeJSON(w io.Writer, rows any) error {
	e := json.NewEncoder(w)
	e.SetEscapeHTML(false)
	e.SetIndent("", "  ")
	return e.Encode(rows)
}

func writeCSV(w io.Writer, rows any) error {
	c := csv.NewWriter(w)
	all := cells(rows)
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

// cells is a header and one row of text for each row; nil pointers are "".
func cells(rows any) [][]string {
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
			row[f] = cell(v.Index(i).Field(f))
		}
		all = append(all, row)
	}
	return all
}

func cell(v reflect.Value) string {
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
		return exact(v.Float())
	}
	return fmt.Sprint(v.Interface())
}

func exact(v float64) string { return strconv.FormatFloat(v, 'f', -1, 64) }
