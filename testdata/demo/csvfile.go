package main

import (
	"bytes"
	"encoding/csv"
	"fmt"
	"os"
	"strconv"
	"strings"
)

// encoding is how a CSV's text becomes bytes.
type encoding int

const (
	utf8 encoding = iota
	utf8BOM
	windows1252
)

// fixed is a number with this many decimals, written with a comma.
type fixed struct {
	x        float64
	decimals int
}

// writeCSV writes a table with semicolons.
func writeCSV(path string, t *table, enc encoding) error {
	var buf bytes.Buffer
	w := csv.NewWriter(&buf)
	w.Comma = ';'
	w.UseCRLF = enc == windows1252
	records := [][]string{t.header}
	for _, row := range t.rows {
		records = append(records, csvRecord(row))
	}
	if err := w.WriteAll(records); err != nil {
		return fmt.Errorf("laying out %s: %w", t.file, err)
	}
	data, err := encode(buf.String(), enc)
	if err != nil {
		return fmt.Errorf("encoding %s: %w", t.file, err)
	}
	return os.WriteFile(path, data, 0o644)
}

func csvRecord(row []any) []string {
	record := make([]string, len(row))
	for i, cell := range row {
		record[i] = csvCell(cell)
	}
	return record
}

func csvCell(cell any) string {
	switch v := cell.(type) {
	case nil:
		return ""
	case date:
		return v.Format("02/01/2006")
	case clock:
		return v.Format("15:04")
	case fixed:
		return strings.Replace(strconv.FormatFloat(v.x, 'f', v.decimals, 64), ".", ",", 1)
	}
	return fmt.Sprint(cell)
}

// encode turns text into bytes. Of Windows-1252 it knows what is Latin-1 too.
func encode(s string, enc encoding) ([]byte, error) {
	switch enc {
	case utf8BOM:
		return []byte("\ufeff" + s), nil
	case utf8:
		return []byte(s), nil
	}
	var out []byte
	for _, r := range s {
		if r > 0xff || r >= 0x80 && r < 0xa0 {
			return nil, fmt.Errorf("%q has no place in Latin-1", r)
		}
		out = append(out, byte(r))
	}
	return out, nil
}
