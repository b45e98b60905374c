package meaning

import (
	"regexp"
	"strings"

	"wakeledger/pipeline/layout"
	"wakeledger/pipeline/words"
)

var overRows = regexp.MustCompile(`(?i)\(\$?([A-Z]{1,3})\$?(\d+):\$?([A-Z]{1,3})\$?(\d+)`)

// sumsRows tells a formula over several rows of one column.
func sumsRows(formula string) bool {
	m := overRows.FindStringSubmatch(formula)
	return m != nil && m[1] == m[3] && m[2] != m[4] || strings.Count(formula, "+") >= 2 && worksOut.MatchString("sum(") && sameColumn.MatchString(formula)
}

// sameColumn is a sum of cells such as I11+I17+I26.
var sameColumn = regexp.MustCompile(`^=?([A-Z]{1,3}\d+\+)+[A-Z]{1,3}\d+$`)

// stripTotals takes rows of totals out of a block's rows, to be held against them.
func stripTotals(b *layout.Block) {
	if b.Shape != layout.Table {
		return
	}
	var rows []layout.Row
	for _, r := range b.Rows {
		if isTotals(&r) {
			b.Totals = append(b.Totals, r)
			continue
		}
		rows = append(rows, r)
	}
	b.Rows = rows
}

// isTotals tells a row of totals: most of its numbers are sums over rows, or a word for
// it stands before its numbers and no day.
func isTotals(r *layout.Row) bool {
	numbers, sums, dated, word, first := 0, 0, false, false, true
	for i, c := range r.Cells {
		switch c.Look {
		case layout.Number, layout.Duration, layout.Clock:
			numbers++
			if sumsRows(c.Formula) {
				sums++
			}
		case layout.Date:
			dated = dated || i < 2 && c.Formula == ""
		case layout.Text:
			if (first || i < 4) && numbers == 0 && len(c.Text) < 40 && words.IsTotal(c.Text) {
				word = true
			}
		}
		first = first && c.Look == layout.Blank
	}
	return word && !dated && numbers > 0 || sums >= 2 && 2*sums >= numbers
}
