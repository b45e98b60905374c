package meaning

import (
	"math"
	"slices"
	"strings"
	"unicode"

	"wakeledger/pipeline/layout"
	"wakeledger/pipeline/phrase"
	"wakeledger/pipeline/plan"
	"wakeledger/pipeline/unit"
)

// corrections reads the remarks that mend their own row, and the rows of a journal that mend another row or take it
// back, which they name by its number: where that row says what they say that it did, it is read as they say.
func (l *Log) corrections() {
	for _, u := range l.Data() {
		u.ownCorrections()
		kinds := []plan.Kind{plan.Flat, plan.Legs, plan.Trips}
		if !slices.Contains(kinds, u.Plan.Kind) || u.Plan.Find("notes") == nil {
			continue
		}
		notes := u.Plan.Find("notes").Index
		for i, row := range u.b.rows {
			c, ok := phrase.CorrectionIn(cellOf(row, notes))
			if !ok {
				continue
			}
			of := u.rowNumbered(c.Of, i)
			switch {
			case of < 0:
			case c.Undo && u.undone(of, i):
				u.leaveOut(of, i)
				u.b.note("row %d takes row %d back: both were left out", u.Block.Rows[i].Num, u.Block.Rows[of].Num)
			case c.Whole && u.mended(of, c):
				u.mendedBy(i)
				u.b.note("row %d: %s %s was read in place of %s, as row %d says", u.Block.Rows[of].Num, c.What, c.Is,
					c.Not, u.Block.Rows[i].Num)
			case c.Fish != "" && l.fateMended(u, of, c, cellOf(row, notes)):
			default:
				if u.Plan.Mends == nil {
					u.Plan.Mends = map[int64]bool{}
				}
				u.Plan.Mends[int64(u.Block.Rows[i].Num)] = true
			}
		}
	}
}

// fateMended has a bite of the trip that a correction names be what it says, where the bite that it names by its number
// is one alone and says what the correction says that it did.
func (l *Log) fateMended(u *Understood, of int, c phrase.Correction, text string) bool {
	trip := u.Plan.Find("trip")
	if trip == nil {
		return false
	}
	in, row := l.biteNumbered(u, cellOf(u.b.rows[of], trip.Index), c.Fish)
	if in == nil {
		return false
	}
	fate := in.Plan.Find("outcome").Index
	was := in.b.now(row, fate)
	if was == "" || !slices.ContainsFunc(strings.FieldsFunc(text, func(r rune) bool { return !unicode.IsLetter(r) }),
		func(w string) bool { return strings.EqualFold(w, was) }) {
		return false
	}
	in.b.say(row, fate, c.Fate.String())
	in.b.note("row %d: %s was read in place of %s, as a remark says", in.Block.Rows[row].Num, c.Fate, was)
	return true
}

// biteNumbered is the one row of another table that a trip and a number beside it name; nil where none or several do.
func (l *Log) biteNumbered(u *Understood, trip, number string) (in *Understood, row int) {
	found := 0
	for _, o := range l.Data() {
		own, bites := o.Plan.Find("trip"), o.Plan.Kind == plan.Strikes || o.Plan.Kind == plan.Fish
		if o == u || own == nil || !bites || o.Plan.Find("outcome") == nil {
			continue
		}
		for i, r := range o.b.rows {
			names := func(x plan.Unknown) bool { return cellOf(r, x.Index) == number }
			if cellOf(r, own.Index) == trip && slices.ContainsFunc(o.Plan.Unknown, names) {
				in, row = o, i
				found++
			}
		}
	}
	if found != 1 {
		return nil, 0
	}
	return in, row
}

// ownCorrections has rows say what their own remarks say that they should, where they say what the remark says is
// wrong.
func (u *Understood) ownCorrections() {
	var remarks []int
	if b := u.Plan.Find("notes"); b != nil {
		remarks = append(remarks, b.Index)
	}
	for _, x := range u.Plan.Unknown {
		remarks = append(remarks, x.Index)
	}
	for i, row := range u.b.rows {
		for _, at := range remarks {
			if c, ok := phrase.OwnCorrection(cellOf(row, at)); ok && u.mended(i, c) {
				u.b.note("row %d: %s %s was read in place of %s, as its remark says", u.Block.Rows[i].Num, c.What, c.Is,
					c.Not)
			}
		}
	}
}

// rowNumbered is the one row that a number names, above the row that names it; -1 where none or several do.
func (u *Understood) rowNumbered(number string, before int) int {
	keys := []int{}
	for _, name := range []string{"leg", "trip"} {
		if b := u.Plan.Find(name); b != nil && b.Index >= 0 {
			keys = append(keys, b.Index)
		}
	}
	for _, x := range u.Plan.Unknown {
		keys = append(keys, x.Index)
	}
	for _, at := range keys {
		found, all := -1, map[string]bool{}
		for i, row := range u.b.rows {
			cell := cellOf(row, at)
			if cell == "" || all[cell] {
				found = -1
				break
			}
			if all[cell] = true; cell == number && i < before {
				found = i
			}
		}
		if found >= 0 && len(all) == len(u.b.rows) {
			return found
		}
	}
	return -1
}

// undone tells whether the figures of a row that are less than nothing are those of another, and it has no others.
func (u *Understood) undone(of, by int) bool {
	n := 0
	for _, b := range u.Plan.Bindings {
		if b.Column.Parse != "count" && b.Column.Parse != "quantity" || b.Column.Name == "count" {
			continue
		}
		x, ok := number(cellOf(u.b.rows[by], b.Index))
		if !ok || x == 0 {
			continue
		}
		if y, ok := number(cellOf(u.b.rows[of], b.Index)); !ok || math.Abs(x+y) > 0.005*math.Abs(y) {
			return false
		}
		n++
	}
	return n > 0
}

// leaveOut leaves rows out.
func (u *Understood) leaveOut(rows ...int) {
	if u.Plan.Drop == nil {
		u.Plan.Drop = map[int64]bool{}
	}
	for _, i := range rows {
		u.Plan.Drop[int64(u.Block.Rows[i].Num)] = true
	}
}

// mended has a row say what a correction says, where one of its columns that the correction may mean says what it was.
func (u *Understood) mended(of int, c phrase.Correction) bool {
	said := u.b.t.said(layout.Label{Text: c.What})
	at, most := -1, 0.0
	for _, b := range u.Plan.Bindings {
		if b.Index < 0 || !sameValue(u.b.now(of, b.Index), c.Not) {
			continue
		}
		weight := 0.0
		for column, s := range said.columns {
			if column.Name == b.Column.Name {
				weight = max(weight, s.weight)
			}
		}
		if strings.EqualFold(normalise(b.Heading), normalise(c.What)) {
			weight = asSpelled
		}
		if weight > most {
			at, most = b.Index, weight
		}
	}
	if at < 0 {
		return false
	}
	u.b.say(of, at, c.Is)
	return true
}

// mendedBy leaves a row out that only mends another.
func (u *Understood) mendedBy(row int) {
	for _, b := range u.Plan.Bindings {
		effort := b.Column.Name == "start_s" || b.Column.Name == "end_s" || b.Column.Name == "duration_s"
		if (effort || b.Column.Parse == "count") && cellOf(u.b.rows[row], b.Index) != "" {
			return
		}
	}
	u.leaveOut(row)
}

// now is what a row's cell says, or what it is read as in its place.
func (x *builder) now(row, index int) string {
	if text, ok := x.plan.Cells[plan.Cell{Row: int64(x.block.Rows[row].Num), Index: index}]; ok {
		return text
	}
	return cellOf(x.rows[row], index)
}

// sameValue tells whether a cell says a figure or a clock time, however it is written.
func sameValue(cell, said string) bool {
	if a, ok := number(cell); ok {
		b, ok := number(said)
		return ok && math.Abs(a-b) < 0.0005
	}
	a, errA := unit.ParseMoment(cell, unit.DayFirst)
	b, errB := unit.ParseMoment(said, unit.DayFirst)
	return errA == nil && errB == nil && a.HasTime && b.HasTime && a.Seconds == b.Seconds ||
		cell != "" && strings.EqualFold(cell, said)
}
