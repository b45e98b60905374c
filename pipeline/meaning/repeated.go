package meaning

import (
	"strconv"
	"strings"

	"wakeledger/pipeline/layout"
)

// fullRow is how many cells of a row must be filled for it to be known again.
const fullRow = 5

// repeated leaves out rows of a sheet that stand in an earlier one too, cell for cell and with
// their whole date, as where a page was copied for the next season and not wiped to its foot.
func (l *Log) repeated() {
	for _, g := range l.groups {
		if g.sheets() < 2 {
			continue
		}
		seen := map[string]*layout.Grid{}
		for _, u := range l.Blocks {
			if u.b.group != g || u.Proof || u.Block.Open {
				continue
			}
			again, from := []int{}, ""
			for _, r := range u.Block.Rows {
				key, ok := wholeRow(r)
				if !ok {
					continue
				}
				if first := seen[key]; first == nil {
					seen[key] = u.Block.Grid
				} else if first != u.Block.Grid {
					again, from = append(again, r.Num), first.Info.Name
				}
			}
			u.drop(again, from)
		}
	}
}

// wholeRow is what a row with a whole date says in all of its cells.
func wholeRow(r layout.Row) (string, bool) {
	dated, filled := false, 0
	var b strings.Builder
	for _, c := range r.Cells {
		b.WriteString(c.Text)
		b.WriteByte(0)
		if c.Look != layout.Blank {
			filled++
		}
		dated = dated || c.Look == layout.Date && !yearless(c.Text) && !ofMonth(c.Text)
	}
	return b.String(), dated && filled >= fullRow
}

func (u *Understood) drop(rows []int, from string) {
	if len(rows) == 0 {
		return
	}
	if u.Plan.Drop == nil {
		u.Plan.Drop = map[int64]bool{}
	}
	var names []string
	for _, n := range rows {
		u.Plan.Drop[int64(n)] = true
		names = append(names, strconv.Itoa(n))
	}
	u.b.note("rows %s stand in %q too, cell for cell: counted once", strings.Join(names, ", "), from)
}
