package queries

import (
	"context"
	"embed"
	"encoding/csv"
	"fmt"
	"strings"

	"wakeledger/pipeline/estimate"
	"wakeledger/pipeline/store"
)

//go:embed methods.csv
var methodsFile embed.FS

// Method is how one kind of figure is worked out.
type Method struct {
	Method  string `json:"method"`
	Words   string `json:"words"`
	Formula string `json:"formula"`
	Source  string `json:"source"`
}

// ClubMethod is the method of what a boat shares: no figure of a season's report rests on it.
const ClubMethod = "Club summary"

// Methods lists the methods behind the evidence, with formulas and sources.
func Methods() ([]Method, error) {
	f, err := methodsFile.Open("methods.csv")
	if err != nil {
		return nil, err
	}
	defer f.Close()
	rows, err := csv.NewReader(f).ReadAll()
	if err != nil {
		return nil, fmt.Errorf("methods: %w", err)
	}
	var out []Method
	for _, r := range rows[1:] {
		out = append(out, Method{r[0], r[1], r[2], r[3]})
	}
	return out, nil
}

// AskMethods answers methods; it asks nothing of the season file.
func AskMethods(context.Context, *store.DB) ([]Method, error) { return Methods() }

// WeighedBy is a way to weigh a fish as a captain says it: own divisor, girth rule, length
// alone. A scale is as it is.
func WeighedBy(method string) string {
	way, rest, more := strings.Cut(method, ", ")
	if more {
		return estimate.Words(way) + ", " + rest
	}
	return estimate.Words(way)
}
