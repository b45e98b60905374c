package estimate

import (
	"encoding/csv"
	"errors"
	"fmt"
	"io"
	"math"
	"slices"
	"strconv"
	"strings"
)

// table is a CSV file with a fixed header.
type table struct {
	file    string
	columns []string
	rows    [][]string
	lines   []int // line of each row in the file, counted from 1
}

// readTable reads file from r and checks that its header is columns.
func readTable(r io.Reader, file string, columns []string) (table, error) {
	t := table{file: file, columns: columns}
	cr := csv.NewReader(r)
	header, err := cr.Read()
	if err != nil {
		return t, fmt.Errorf("%s: reading the header: %w", file, err)
	}
	if !slices.Equal(header, columns) {
		return t, fmt.Errorf("%s row 1: columns are %q, want %q", file, header, columns)
	}
	for {
		row, err := cr.Read()
		if errors.Is(err, io.EOF) {
			return t, nil
		}
		if err != nil {
			return t, fmt.Errorf("reading %s: %w", file, err)
		}
		line, _ := cr.FieldPos(0)
		t.rows, t.lines = append(t.rows, row), append(t.lines, line)
	}
}

// cursor reads the cells of one row and keeps every problem that it meets.
type cursor struct {
	table table
	row   int
	errs  []error
}

func (c *cursor) fail(column, format string, args ...any) {
	where := fmt.Sprintf("%s row %d column %s: ", c.table.file, c.table.lines[c.row], column)
	c.errs = append(c.errs, errors.New(where+fmt.Sprintf(format, args...)))
}

// text is the cell of a column, trimmed.
func (c *cursor) text(column string) string {
	i := slices.Index(c.table.columns, column)
	return strings.TrimSpace(c.table.rows[c.row][i])
}

// need is text that may not be blank.
func (c *cursor) need(column string) string {
	s := c.text(column)
	if s == "" {
		c.fail(column, "is blank")
	}
	return s
}

// oneOf is text out of a closed list.
func (c *cursor) oneOf(column string, allowed ...string) string {
	s := c.text(column)
	if !slices.Contains(allowed, s) {
		c.fail(column, "%q is none of %q", s, allowed)
	}
	return s
}

// number is any finite number.
func (c *cursor) number(column string) float64 {
	s := c.text(column)
	v, err := strconv.ParseFloat(s, 64)
	if err != nil || math.IsNaN(v) || math.IsInf(v, 0) {
		c.fail(column, "%q is not a number", s)
		return 0
	}
	return v
}

// positive is a number above zero.
func (c *cursor) positive(column string) float64 {
	v := c.number(column)
	if v <= 0 {
		c.fail(column, "%q is not above zero", c.text(column))
	}
	return v
}

// optional is a positive number, or 0 for a blank cell.
func (c *cursor) optional(column string) float64 {
	if c.text(column) == "" {
		return 0
	}
	return c.positive(column)
}

// count is a whole number above zero, or 0 for a blank cell.
func (c *cursor) count(column string) int {
	v := c.optional(column)
	if v != math.Trunc(v) {
		c.fail(column, "%q is not a whole number", c.text(column))
	}
	return int(v)
}
