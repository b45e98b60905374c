package export

import (
	"bytes"
	_ "embed"
	"encoding/csv"
	"fmt"
)

//go:embed fields.csv
var fieldsCSV []byte

// Dictionary says what columns mean.
type Dictionary map[string]Meaning

// Meaning is a column's unit ("" for none) and description.
type Meaning struct{ Unit, Description string }

// Fields reads the data dictionary of the season file.
func Fields() (Dictionary, error) {
	rows, err := csv.NewReader(bytes.NewReader(fieldsCSV)).ReadAll()
	if err != nil {
		return nil, fmt.Errorf("fields.csv: %w", err)
	}
	d := Dictionary{}
	for _, r := range rows[1:] {
		d[r[0]+"."+r[1]] = Meaning{r[2], r[3]}
	}
	return d, nil
}

// Of is the meaning of a column of a table: its own entry, else that of the
// columns of this name in every table.
func (d Dictionary) Of(table, column string) (Meaning, bool) {
	if m, ok := d[table+"."+column]; ok {
		return m, true
	}
	m, ok := d["*."+column]
	return m, ok
}
