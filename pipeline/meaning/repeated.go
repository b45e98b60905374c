package meaning

import (
	"slices"
	"strconv"
	"strings"

	"wakeledger/pipeline/layout"
	"wakeledger/pipeline/plan"
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

// fewSame are how many cells two rows of fish share at the least for them to be of one fish.
const fewSame = 3

// excerpts takes a table of fish each of whose rows stands in a longer and wider one, under the same headings,
// for what it chose from there: the heaviest of each kind.
func (l *Log) excerpts() {
	for _, u := range l.Blocks {
		if u.Proof || !u.listsFish() {
			continue
		}
		for _, o := range l.Blocks {
			if o != u && !o.Proof && o.listsFish() && len(o.Block.Rows) > len(u.Block.Rows) &&
				len(o.Block.Labels) > len(u.Block.Labels) && u.chosenFrom(o) {
				u.Proof = true
				u.Plan.Notes = append(u.Plan.Notes,
					"its fish stand in another table too, cell for cell: not counted again")
				break
			}
		}
	}
}

// listsFish tells a table of fish with their kinds and weights or lengths, which says of no effort.
func (u *Understood) listsFish() bool {
	p := u.Plan
	return u.Block.Shape == layout.Table && !u.Block.Open && (p.Kind == plan.Fish || p.Kind == plan.Strikes) &&
		p.Binds("species") && p.Binds("scale_kg", "length_cm", "girth_cm")
}

// chosenFrom tells a table all of whose rows stand in another one, by the headings that it has.
func (u *Understood) chosenFrom(o *Understood) bool {
	var at, from []int
	for _, l := range u.Block.Labels {
		i := slices.IndexFunc(o.Block.Labels, func(x layout.Label) bool {
			return l.Text != "" && normalise(x.Text) == normalise(l.Text)
		})
		if i < 0 {
			return false
		}
		at, from = append(at, l.Col), append(from, o.Block.Labels[i].Col)
	}
	rows := map[string]bool{}
	for _, r := range o.Block.Rows {
		key, _ := cellsAt(r, from)
		rows[key] = true
	}
	for _, r := range u.Block.Rows {
		if key, filled := cellsAt(r, at); filled < fewSame || !rows[key] {
			return false
		}
	}
	return len(u.Block.Rows) > 1
}

// cellsAt is what some cells of a row say, and how many say anything; a nought is none.
func cellsAt(r layout.Row, columns []int) (key string, filled int) {
	for _, col := range columns {
		text := ""
		if col < len(r.Cells) && r.Cells[col].Text != "0" {
			text = normalise(r.Cells[col].Text)
		}
		if text != "" {
			filled++
		}
		key += text + "\x00"
	}
	return key, filled
}
