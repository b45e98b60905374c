package main

import (
	"bytes"
	"encoding/csv"
	"errors"
	"fmt"
	"math"
	"strconv"
)

// closeEnough is how far a figure of another computer may be off, as a part of it. ARM rounds a
// product and its sum once, Intel's twice (The Go Programming Language Specification,
// "Floating-point operators"), and each C library has logarithms of its own: the last of 16 digits
// may differ, and what is found step by step from it in the last four.
const closeEnough = 1e-12

// sameAnswers fails where one of the answers of a is not that of b, but for the last digits
// of figures. off counts those that are not the same byte for byte.
func sameAnswers(a, b map[string][]byte) (off int, err error) {
	var differ []error
	for q, want := range a {
		if len(want) == 0 {
			differ = append(differ, fmt.Errorf("ask %s says nothing: it proves nothing", q))
			continue
		}
		if bytes.Equal(b[q], want) {
			continue
		}
		off++
		if err := sameFigures(want, b[q]); err != nil {
			differ = append(differ, fmt.Errorf("ask %s differs: %w", q, err))
		}
	}
	return off, errors.Join(differ...)
}

// sameFigures fails at the first field of two tables in CSV that is not the same.
func sameFigures(a, b []byte) error {
	x, errX := csv.NewReader(bytes.NewReader(a)).ReadAll()
	y, errY := csv.NewReader(bytes.NewReader(b)).ReadAll()
	if err := errors.Join(errX, errY); err != nil {
		return err
	}
	if len(x) != len(y) {
		return fmt.Errorf("%d rows, %d rows", len(x), len(y))
	}
	for i := range x {
		if len(x[i]) != len(y[i]) {
			return fmt.Errorf("row %d: %d fields, %d fields", i+1, len(x[i]), len(y[i]))
		}
		for j := range x[i] {
			if !sameField(x[i][j], y[i][j]) {
				return fmt.Errorf("row %d, %s: %q, %q", i+1, x[0][j], x[i][j], y[i][j])
			}
		}
	}
	return nil
}

func sameField(x, y string) bool {
	if x == y {
		return true
	}
	p, errP := strconv.ParseFloat(x, 64)
	q, errQ := strconv.ParseFloat(y, 64)
	return errP == nil && errQ == nil && math.Abs(p-q) <= closeEnough*max(math.Abs(p), math.Abs(q), 1e-3)
}
