package meaning

import (
	"slices"
	"strings"

	"wakeledger/pipeline/layout"
	"wakeledger/pipeline/plan"
)

// catalogues tells a table that reads as fish and is none: it says of no row when it was, each
// row has a code of its own, and the rows of tables that have days name these codes, as tackle is
// named by its tag.
func (l *Log) catalogues() {
	data := l.Data()
	for _, u := range data {
		p := u.Plan
		if p.Kind != plan.Fish && p.Kind != plan.Strikes || p.Binds("date", "trip", "leg", "strike", "time_s") || p.Gives("date") || p.Gives("trip") {
			continue
		}
		for _, label := range u.Block.Labels {
			codes := column(u.b.rows, label.Col)
			own := set(codes)
			if len(own) < 3 || len(own) != len(codes) || 10*len(codes) < 9*len(u.b.rows) || !coded(codes) {
				continue
			}
			if from := l.naming(u, own); from != "" {
				u.Proof = true
				u.b.note("%q of another table names its rows: a list of tackle, and no fish", from)
				break
			}
		}
	}
}

// coded tells codes of letters and figures, such as T01: bare numbers may mean anything.
func coded(cells []string) bool {
	return !slices.ContainsFunc(cells, func(c string) bool {
		return len(c) > 12 || strings.ContainsAny(c, " .,") || digits(c) == 0 || digits(c) == len(c)
	})
}

// naming is the heading of a column of another table with days whose cells are such codes.
func (l *Log) naming(u *Understood, codes map[string]bool) string {
	for _, o := range l.Blocks {
		if o.b.group == u.b.group || o.Proof || o.Block.Shape != layout.Table || !dated(o.Block) {
			continue
		}
		for _, label := range o.Block.Labels {
			cells, found := column(o.b.rows, label.Col), 0
			for _, c := range cells {
				if codes[strings.ToLower(c)] {
					found++
				}
			}
			if found >= 3 && 10*found >= 9*len(cells) {
				return label.Text
			}
		}
	}
	return ""
}
