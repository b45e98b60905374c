package meaning

import (
	_ "embed"
	"fmt"
	"strconv"
)

// How much pieces of evidence are worth, by name, as a factor of what their functions say;
// those that are not listed are worth 1. They were learned from the logs of the corpus that
// are read right, with headings hidden: see TestWorth.
//
//go:embed worth.csv
var worthCSV []byte

var worths = mustWorths()

func mustWorths() map[string]float64 {
	rows, err := csvRows(worthCSV)
	if err != nil {
		panic("worth.csv: " + err.Error())
	}
	out := map[string]float64{}
	for i, r := range rows {
		if out[r[0]], err = strconv.ParseFloat(r[1], 64); err != nil {
			panic(fmt.Sprintf("worth.csv:%d: %v", i+2, err))
		}
	}
	return out
}

// worthOf is the factor of a piece of evidence.
func worthOf(evidence string) float64 {
	if w, ok := worths[evidence]; ok {
		return w
	}
	return 1
}
