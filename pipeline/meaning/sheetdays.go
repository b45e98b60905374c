package meaning

import (
	"time"

	"wakeledger/pipeline/layout"
	"wakeledger/pipeline/unit"
)

// OtherDay is a sheet whose name says another day than the sheet does.
type OtherDay struct {
	Name string
	Day  unit.Date
}

// minNamed is how many sheets at least have the day of their name, for another's to say anything.
const minNamed = 3

// OtherDays are the sheets whose name is another day than the one that stands in them, where at least three, and most,
// have that of their name: the day came with the sheet that was copied, or the name did.
func (l *Log) OtherDays() (out []OtherDay) {
	same, seen := 0, map[int]bool{}
	for _, u := range l.Data() {
		m, d, ok := namedDay(u.Plan.Name)
		day, told := u.sheetDay()
		if !ok || !told || seen[u.Plan.Sheet] {
			continue
		}
		seen[u.Plan.Sheet] = true
		if _, month, of := day.Civil(); month == m && of == d {
			same++
		} else {
			out = append(out, OtherDay{u.Plan.Name, day})
		}
	}
	if same < minNamed || len(out) >= same {
		return nil
	}
	return out
}

// namedDay is the day that is all of a sheet's name, its month in words: "Aug 10", "3 mai".
func namedDay(name string) (time.Month, int, bool) {
	d, err := unit.ParseDayMonth(name, unit.OrderUnknown)
	return d.Month, d.Day, err == nil
}

// sheetDay is the day that stands once for a block's rows.
func (u *Understood) sheetDay() (unit.Date, bool) {
	for _, g := range u.Plan.Given {
		if g.Column.Name == "date" && !g.Default && g.Heading != "sheet name" && !yearless(g.Text) {
			return dayIn(g.Text, unit.OrderOf(g.Text))
		}
	}
	if b := u.Plan.Find("date"); b != nil && u.Block.Shape == layout.Form && len(u.b.rows) == 1 {
		if text := u.text(b.Index); text != "" && !yearless(text) {
			return dayIn(text, unit.OrderOf(text))
		}
	}
	return 0, false
}
