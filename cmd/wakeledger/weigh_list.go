package main

import (
	"fmt"
	"strings"

	"wakeledger/pipeline/estimate"
	"wakeledger/reports/terminal"
)

// relationRow is a relation as --list prints it.
type relationRow struct {
	Species  string `json:"species"`
	Relation string `json:"relation"`
	Stock    string `json:"stock"`
	Sex      string `json:"sex"`
	A        string `json:"a"`
	B        string `json:"b"`
	Length   string `json:"length"`
	Weight   string `json:"weight"`
	Fish     string `json:"fish"`
	RangeCM  string `json:"range_cm"`
	Spread   string `json:"residual_s"` // of ln W, where published
	Default  bool   `json:"default"`
	Citation string `json:"citation"`
	Document string `json:"document"`
	Seen     string `json:"seen"`
}

// writeRelations writes what a reader of the list needs; the sources in full are in the
// relations' table in pipeline/estimate.
func (a *app) writeRelations(rows []relationRow) error {
	columns := strings.Fields("relation species stock a b length fish range_cm citation")
	return terminal.Write(a.out, rows, terminal.View{Columns: columns, Width: widthFor(a.stdout)})
}

func relationRows(cat *estimate.Catalogue) []relationRow {
	var rows []relationRow
	for _, r := range cat.Relations() {
		row := relationRow{Species: r.Species, Relation: r.ID, Stock: r.Stock, Sex: r.Sex,
			A: fmt.Sprintf("%.6g", r.A), B: fmt.Sprintf("%.7g", r.B),
			Length: r.LengthKind, Weight: r.WeightState, Default: r.Default, Citation: r.Citation,
			Document: r.Document, Seen: r.Seen}
		if r.N > 0 {
			row.Fish = fmt.Sprint(r.N)
		}
		switch {
		case r.MinCM > 0 && r.MaxCM > 0:
			row.RangeCM = fmt.Sprintf("%g to %g", r.MinCM, r.MaxCM)
		case r.MaxCM > 0:
			row.RangeCM = fmt.Sprintf("up to %g", r.MaxCM)
		case r.MinCM > 0:
			row.RangeCM = fmt.Sprintf("from %g", r.MinCM)
		}
		if r.ResidualS > 0 {
			row.Spread = fmt.Sprintf("%g", r.ResidualS)
		}
		rows = append(rows, row)
	}
	return rows
}
