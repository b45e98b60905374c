package normalise

import (
	"testing"

	"wakeledger/pipeline/plan"
	"wakeledger/pipeline/sheet"
	"wakeledger/pipeline/unit"
)

// TestOrderOfDates holds what the rows beside a date, and the name of its sheet, say of the order
// of its day and month.
func TestOrderOfDates(t *testing.T) {
	for _, c := range []struct {
		name, sheet string
		cells       []string
		want        unit.Order
	}{
		{"between two days", "", []string{"2026-07-02", "4/7/2026", "2026-07-09"}, unit.DayFirst},
		{"before a day of a workbook", "", []string{"7/4/2026", "46209"}, unit.MonthFirst}, // 46209 is 2026-07-06
		{"near in both ways", "", []string{"2026-04-20", "4/5/2026", "2026-05-09"}, unit.OrderUnknown},
		{"neighbours that disagree", "", []string{"2026-07-02", "4/7/2026", "2026-11-01", "11/4/2026"},
			unit.OrderUnknown},
		{"no neighbour", "", []string{"4/7/2026", "5/8/2026"}, unit.OrderUnknown},
		{"a day of the sheet's month", "April 26", []string{"06/04"}, unit.DayFirst},
	} {
		e := Evidence{}
		p := &plan.Block{Name: c.sheet, Bindings: []plan.Binding{{Heading: "Date",
			Column: &plan.Column{Name: "date", Parse: "date"}}}}
		for _, cell := range c.cells {
			e.Observe(p, &sheet.Row{Cells: []string{cell}})
		}
		if got := e.Order(); got != c.want {
			t.Errorf("%s: %v, want %v", c.name, got, c.want)
		}
	}
}

// TestSystemOfCells holds that units in the cells of a column say in which the bare ones are where
// they are habit, and that one among many bare numbers says nothing.
func TestSystemOfCells(t *testing.T) {
	for _, c := range []struct {
		what  string
		cells []string
		want  string
	}{
		{"each with its unit", []string{"31 lb", "22lb", "18 lb"}, "us"},
		{"the first with its unit", []string{"31 lb", "22", "18", "40"}, "us"},
		{"one of many", []string{"25", "2.2", "18", "4", "4.3", "9.1", "4.9", "3.1", "7.9", "17lb"}, ""},
		{"both", []string{"31 lb", "22 kg"}, ""}, {"none", []string{"31", "22"}, ""},
	} {
		e := Evidence{}
		p := &plan.Block{Bindings: []plan.Binding{{Heading: "w",
			Column: &plan.Column{Name: "scale_kg", Parse: "quantity", Dimension: unit.Mass, Unit: unit.Kilogram,
				US: unit.Pound, Metric: unit.Kilogram, HasUnit: true}}}}
		for _, cell := range c.cells {
			e.Observe(p, &sheet.Row{Cells: []string{cell}})
		}
		if got := e.System(); got != c.want {
			t.Errorf("%s: %q, want %q", c.what, got, c.want)
		}
	}
}
