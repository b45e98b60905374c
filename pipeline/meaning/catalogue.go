package meaning

import (
	"slices"
	"strings"

	"wakeledger/pipeline/layout"
	"wakeledger/pipeline/plan"
)

// catalogues tells a table of tackle, which may read as fish: it says of no row when it was, each
// row has a name of its own, and the rows of tables that have days name these: codes, or lures
// in words.
func (l *Log) catalogues() {
	for _, u := range l.Blocks {
		p := u.Plan
		if u.Proof || u.Block.Shape != layout.Table || p.Kind != plan.Fish && p.Kind != plan.Strikes && p.Kind != "" ||
			p.Binds("date", "trip", "leg", "strike", "time_s") || p.Gives("date") || p.Gives("trip") {
			continue
		}
		if l.allowed(u) {
			u.Proof = true
			u.b.note("the words that the cells of other tables are chosen from: no bites and no fish")
			continue
		}
		for _, label := range u.Block.Labels {
			codes := column(u.b.rows, label.Col)
			own := set(codes)
			if len(own) < 3 || len(own) != len(codes) || 10*len(codes) < 9*len(u.b.rows) {
				continue
			}
			tackle := []string{"lure", "line"}
			if coded(codes) {
				tackle = nil
			} else if slices.ContainsFunc(codes, func(c string) bool { return digits(c) == len(c) }) {
				continue // bare numbers may mean anything
			}
			if from := l.naming(u, own, tackle); from != "" {
				u.Proof = true
				u.b.note("%q of another table names its rows: a list of tackle, and no fish", from)
				break
			}
		}
	}
}

// coded tells codes of letters and figures, such as T01.
func coded(cells []string) bool {
	return !slices.ContainsFunc(cells, func(c string) bool {
		return len(c) > 12 || strings.ContainsAny(c, " .,") || digits(c) == 0 || digits(c) == len(c)
	})
}

// naming is the heading of a column of another table with days whose cells are such names: one
// that is understood as one of those given, or any where none are.
func (l *Log) naming(u *Understood, codes map[string]bool, as []string) string {
	for _, o := range l.Blocks {
		if o.b.group == u.b.group || o.Proof || o.Block.Shape != layout.Table || !dated(o.Block) {
			continue
		}
		for _, label := range o.Block.Labels {
			if as != nil && !slices.ContainsFunc(as, func(name string) bool {
				b := o.Plan.Find(name)
				return b != nil && b.Index == label.Col
			}) {
				continue
			}
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
