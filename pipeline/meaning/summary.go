package meaning

import (
	"maps"
	"math"
	"regexp"
	"slices"
	"strconv"
	"time"

	"wakeledger/pipeline/layout"
	"wakeledger/pipeline/words"
)

// summed tells a table that was worked out from another of the log and typed or pasted
// without its formulas: it has no day and fewer rows, and the sums of two of its columns are
// the sums of two columns of the other; or it has a row a month and no hours. It is held to be no data.
func (l *Log) summed(columns map[*layout.Block][]int) {
	for _, u := range l.Blocks {
		if u.Proof || u.Block.Open || len(u.Block.Rows) > 40 {
			continue
		}
		if u.statistics(l) {
			u.Proof = true
			u.Plan.Notes = append(u.Plan.Notes, "it has no day, and its figures are sums of another table: taken "+
				"for statistics, and not counted again")
			continue
		}
		if u.Block.Shape != layout.Table {
			continue
		}
		if yearly(u.Block) && l.daysBeside(u.Block) {
			u.Proof = true
			u.Plan.Notes = append(u.Plan.Notes,
				"it has a row a year or a season: taken for a look back, and not counted")
			continue
		}
		if dated(u.Block) {
			continue
		}
		sums := columnSums(u.Block.Rows)
		for _, g := range l.groups {
			of, rows := map[int]float64{}, 0
			for _, b := range g.blocks {
				if b == u.Block || b.Open || !dated(b) && !l.clocked(b) {
					continue
				}
				rows += len(b.Rows)
				sums := columnSums(b.Rows)
				for i, label := range b.Labels {
					of[columns[b][i]] += sums[label.Col]
				}
			}
			note := ""
			switch {
			case rows < 2*len(u.Block.Rows):
			case sameSums(sums, of) >= 2:
				note = "its columns add up to those of another table: taken for its sums, and not counted again"
			case u.withoutDay() && l.stretches(g):
				note = "its hours are of no day, and another table has the stretches: taken for its sums, and not " +
					"counted again"
			case monthly(u.Block) && !u.Plan.Binds("start_s", "end_s", "duration_s"):
				note = "it has a row a month, and another table has the days: taken for its sums, and not counted again"
			}
			if note != "" {
				u.Proof = true
				u.Plan.Notes = append(u.Plan.Notes, note)
				break
			}
		}
	}
}

// statistics tells a form that sums the season up beside a table that has its days: one of its
// figures that is not whole is the sum of one of the table's columns, or two that are, or it has
// more hours than a day.
func (u *Understood) statistics(l *Log) bool {
	if u.Block.Shape != layout.Form || u.Plan.Binds("date", "start_s", "end_s", "time_s") ||
		u.Plan.Gives("date") || !l.daysBeside(u.Block) {
		return false
	}
	hours := u.Plan.Find("duration_s", "line_hours")
	for _, r := range u.Block.Rows {
		own := map[int]float64{}
		for i := range r.Cells {
			if v, err := strconv.ParseFloat(cellAt(r, i), 64); err == nil {
				own[i] = v
			}
		}
		if hours != nil && own[hours.Index] > 24 {
			return true
		}
		for _, o := range l.Blocks {
			if o.Block == u.Block || o.Proof || !dated(o.Block) {
				continue
			}
			sums := columnSums(o.Block.Rows)
			broken := maps.Clone(own)
			maps.DeleteFunc(broken, func(_ int, v float64) bool { return v == math.Trunc(v) })
			if sameSums(broken, sums) > 0 || sameSums(own, sums) > 1 {
				return true
			}
		}
	}
	return false
}

func cellAt(r layout.Row, i int) string {
	if i < len(r.Cells) {
		return r.Cells[i].Text
	}
	return ""
}

// withoutDay tells a block with hours of which no row says a day, a trip or a time.
func (u *Understood) withoutDay() bool {
	p := u.Plan
	return p.Binds("duration_s", "line_hours") &&
		!p.Binds("date", "trip", "leg", "start_s", "end_s", "time_s", "depart_s") &&
		dayOf(p.Name) == "" && len(u.Block.Above) == 0 && !monthly(u.Block)
}

// stretches tells a group whose rows are stretches of a day or a trip.
func (l *Log) stretches(g *group) bool {
	return slices.ContainsFunc(l.Blocks, func(u *Understood) bool {
		return slices.Contains(g.blocks, u.Block) && u.Plan.Binds("date", "trip") &&
			u.Plan.Binds("start_s", "duration_s")
	})
}

// dated tells a block with a clock time or a day in its rows; "OCT 23" may be a month.
func dated(b *layout.Block) bool {
	for _, r := range b.Rows {
		for _, c := range r.Cells {
			if c.Look == layout.Clock || c.Look == layout.Date && !yearless(c.Text) && !ofMonth(c.Text) {
				return true
			}
		}
	}
	return false
}

// clocked tells a block whose rows have clock times written as bare numbers: 0656.
func (l *Log) clocked(b *layout.Block) bool {
	return slices.ContainsFunc(l.Blocks, func(u *Understood) bool {
		return u.Block == b && u.Plan.Binds("start_s", "time_s")
	})
}

func ofMonth(text string) bool {
	_, ok := words.Month(text)
	return ok
}

// monthly tells a block with a column that names another month in each of its rows, but for
// a last one that sums them.
func monthly(b *layout.Block) bool {
	for _, l := range b.Labels {
		months := map[time.Month]bool{}
		for _, r := range b.Rows {
			if l.Col < len(r.Cells) {
				if m, ok := words.Month(r.Cells[l.Col].Text); ok {
					months[m] = true
				}
			}
		}
		if len(months) >= 3 && len(months) >= len(b.Rows)-1 {
			return true
		}
	}
	return false
}

// ofYear is a year or a season alone: 2023, 2023-24, 2023/2024, season 2023.
var ofYear = regexp.MustCompile(
	`^(?i:(?:season|saison|temporada|stagione|época|epoca|year) )?(?:19|20)\d\d(?: ?[-/–] ?(?:(?:19|20)?\d\d))?$`)

// yearly tells a block with a column that names another year or season in each of its rows,
// but for one that sums them.
func yearly(b *layout.Block) bool {
	for _, l := range b.Labels {
		years := map[string]bool{}
		for _, r := range b.Rows {
			if l.Col < len(r.Cells) && ofYear.MatchString(r.Cells[l.Col].Text) {
				years[r.Cells[l.Col].Text] = true
			}
		}
		if len(years) >= 3 && len(years) >= len(b.Rows)-1 {
			return true
		}
	}
	return false
}

// daysBeside tells whether another table of the log has days, and more rows.
func (l *Log) daysBeside(b *layout.Block) bool {
	return slices.ContainsFunc(l.Blocks, func(o *Understood) bool {
		return o.Block != b && !o.Proof && len(o.Block.Rows) > len(b.Rows) && o.Plan.Binds("date") &&
			dated(o.Block) && !yearly(o.Block)
	})
}

// columnSums are the sums of the columns with two numbers or more; a last row that is the sum
// of those above counts for nothing.
func columnSums(rows []layout.Row) map[int]float64 {
	sums, numbers, last := map[int]float64{}, map[int]int{}, map[int]float64{}
	for n, r := range rows {
		for i, c := range r.Cells {
			x, ok := number(c.Text)
			if !ok || c.Look == layout.Date || c.Look == layout.Clock {
				continue
			}
			sums[i] += x
			numbers[i]++
			if n == len(rows)-1 {
				last[i] = x
			}
		}
	}
	for i := range sums {
		if numbers[i] < 2 {
			delete(sums, i)
		} else if numbers[i] > 2 && math.Abs(sums[i]-2*last[i]) < 0.001*math.Abs(sums[i]) {
			sums[i] = last[i]
		}
	}
	return sums
}

// sameSums counts the columns whose sums are those of columns of the other, each of its own.
func sameSums(a, b map[int]float64) int {
	n, used := 0, map[int]bool{}
	for _, x := range a {
		if math.Abs(x) < 5 {
			continue
		}
		for j, y := range b {
			if !used[j] && math.Abs(x-y) < 0.002*math.Abs(x) {
				used[j] = true
				n++
				break
			}
		}
	}
	return n
}
