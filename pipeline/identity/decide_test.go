package identity

import (
	"reflect"
	"testing"
)

// of is a likeness of a log of so many rows on one day of each letter: before, now, found
// again and equal.
func of(log int64, days ...Day) Likeness {
	return Likeness{Log: log, SameHand: true, Rows: Sum(days).Before, Days: days}
}

func with(x Likeness, change func(*Likeness)) Likeness {
	change(&x)
	return x
}

func TestDecide(t *testing.T) {
	grown := of(1, Day{"2026-07-04", 3, 3, 3, 2}, Day{"2026-07-05", 0, 2, 0, 0})
	copied := of(2, Day{"2026-07-04", 3, 3, 3, 3})
	nextYear := of(3, Day{"2025-07-04", 3, 0, 0, 0}, Day{"2026-07-04", 0, 3, 0, 0})
	part := of(4, Day{"2026-07-04", 3, 3, 3, 3}, Day{"2026-07-05", 9, 0, 0, 0})
	few := of(5, Day{"2026-07-04", 3, 3, 1, 1}, Day{"2026-07-05", 3, 9, 0, 0})
	undated := of(6, Day{"", 9, 9, 9, 9})
	for _, c := range []struct {
		name string
		all  []Likeness
		want Verdict
	}{
		{"the first log", nil, Verdict{}},
		{"a log that has grown", []Likeness{grown}, Verdict{Act: Replace, Logs: []int64{1}}},
		{"next year's log", []Likeness{nextYear}, Verdict{}},
		{"next year's log of the same name", []Likeness{
			with(nextYear, func(x *Likeness) { x.SameFile, x.SameName = true, true })}, Verdict{}},
		{"grown, beside last year's", []Likeness{grown, nextYear}, Verdict{Act: Replace, Logs: []int64{1}}},
		{"an older file", []Likeness{with(grown, func(x *Likeness) { x.Older = true })},
			Verdict{Act: Ask, Logs: []int64{1}, Why: OlderFile}},
		{"the same file, put back", []Likeness{with(grown, func(x *Likeness) { x.Older, x.SameFile = true, true })},
			Verdict{Act: Replace, Logs: []int64{1}}},
		{"a copy of each of two", []Likeness{grown, copied}, Verdict{Act: Ask, Logs: []int64{1, 2}, Why: Several}},
		{"of two that are different, the nearer", []Likeness{
			with(grown, func(x *Likeness) { x.ApartFrom = []int64{2} }),
			with(copied, func(x *Likeness) { x.ApartFrom = []int64{1} })},
			Verdict{Act: Replace, Logs: []int64{2}}},
		{"a week of a season", []Likeness{part}, Verdict{Act: Ask, Logs: []int64{4}, Why: PartOf}},
		{"a few rows in common", []Likeness{few}, Verdict{}},
		{"a few rows in common, under one name", []Likeness{with(few, func(x *Likeness) { x.SameName = true })},
			Verdict{Act: Ask, Logs: []int64{5}, Why: SamePath}},
		{"one sheet of three", []Likeness{with(copied, func(x *Likeness) { x.Rows = 9 })},
			Verdict{Act: Ask, Logs: []int64{2}, Why: PartOf}},
		{"no days", []Likeness{undated}, Verdict{Act: Ask, Logs: []int64{6}, Why: NoDays}},
		{"no days, the same file, hardly changed", []Likeness{with(undated, func(x *Likeness) { x.SameFile = true })},
			Verdict{Act: Replace, Logs: []int64{6}}},
		{"the year put right", []Likeness{with(nextYear, func(x *Likeness) { x.Rows, x.Moved = 8, 7 })},
			Verdict{Act: Ask, Logs: []int64{3}, Why: NewDays}},
		{"two rows alike by chance", []Likeness{with(nextYear, func(x *Likeness) { x.Rows, x.Moved = 3, 3 })},
			Verdict{}},
		{"the same days, other starts", []Likeness{of(7, Day{"2026-07-04", 3, 3, 0, 0})},
			Verdict{Act: Ask, Logs: []int64{7}, Why: SameDays}},
		{"a second receiver on the same days", []Likeness{with(of(7, Day{"2026-07-04", 3, 3, 0, 0}),
			func(x *Likeness) { x.Track = true })}, Verdict{}},
		{"another hand, the same legs", []Likeness{with(copied,
			func(x *Likeness) { x.SameHand, x.Legs, x.NewLegs, x.Same = false, 3, 3, 3 })}, Verdict{}},
		{"another hand, other figures", []Likeness{with(copied,
			func(x *Likeness) { x.SameHand, x.Legs, x.NewLegs, x.Same, x.Differ = false, 3, 3, 2, 1 })},
			Verdict{Act: Ask, Logs: []int64{2}, Why: Retold}},
		{"another hand, the same hours", []Likeness{{Log: 8, Legs: 3, NewLegs: 3, Overlaps: 1}},
			Verdict{Act: Ask, Logs: []int64{8}, Why: Clash}},
		{"hours without a start", []Likeness{{Log: 8, Loose: 2}}, Verdict{Act: Ask, Logs: []int64{8}, Why: NoStart}},
		{"two boats, the same legs", []Likeness{with(copied,
			func(x *Likeness) { x.Boats, x.Legs, x.NewLegs, x.Twin = OtherBoat, 3, 3, 3 })},
			Verdict{Act: Ask, Logs: []int64{2}, Why: TwoBoats}},
		{"two boats, other legs", []Likeness{with(copied,
			func(x *Likeness) { x.Boats, x.Legs, x.NewLegs, x.Twin = OtherBoat, 3, 3, 1 })}, Verdict{}},
		{"different by their owner's word", []Likeness{with(grown, func(x *Likeness) { x.Apart = true })}, Verdict{}},
		{"what was settled for the earlier log", []Likeness{with(grown, func(x *Likeness) { x.ApartFrom = []int64{8} }),
			{Log: 8, Overlaps: 1}}, Verdict{Act: Replace, Logs: []int64{1}}},
		{"nothing could be used of the same file", []Likeness{{Log: 9, SameHand: true, SameFile: true}},
			Verdict{Act: Replace, Logs: []int64{9}}},
		{"nothing could be used of another file", []Likeness{{Log: 9, SameHand: true}}, Verdict{}},
	} {
		if got := Decide(c.all); !reflect.DeepEqual(got, c.want) {
			t.Errorf("%s: got %+v, want %+v", c.name, got, c.want)
		}
	}
}

func TestSameHand(t *testing.T) {
	mine := []string{"date", "end", "lines", "speed", "start", "strikes"}
	for _, c := range []struct {
		later []string
		want  bool
	}{
		{mine, true},
		{append([]string{"sea temp"}, mine...), true},
		{mine[:4], true},
		{mine[:3], false},
		{[]string{"day", "knots", "lines in", "lines up", "bites", "rods"}, false},
		{append([]string{"a", "b", "c", "d", "e", "f", "g"}, mine...), false},
		{nil, true},
	} {
		if got := SameHand(mine, c.later); got != c.want {
			t.Errorf("%v: %v, want %v", c.later, got, c.want)
		}
	}
}

func TestCompare(t *testing.T) {
	for _, c := range []struct {
		a, b []string
		want Boats
	}{{nil, []string{"Tern"}, BoatOpen}, {[]string{"Tern"}, []string{"Tern"}, SameBoat},
		{[]string{"Tern"}, []string{"Petrel"}, OtherBoat},
		{[]string{"Tern", "Petrel"}, []string{"Petrel", "Fulmar"}, SameBoat}} {
		if got := Compare(c.a, c.b); got != c.want {
			t.Errorf("%v and %v: %v, want %v", c.a, c.b, got, c.want)
		}
	}
}

func TestNear(t *testing.T) {
	for _, c := range []struct {
		a, b string
		want bool
	}{
		{"Sea Wren", "sea wren", true}, {"Sea Wren", "SeaWren", true}, {"Sea-Wren ", "Sea Wren", true},
		{"Sea Wrem", "Sea Wren", true}, {"Sea Wern", "Sea Wren", true}, {"Sea Wre", "Sea Wren", true},
		{"Tansy Raech", "Tansy Reech", true}, {"Sea Wren", "Sea Wren", false},
		{"Tern", "Fern", false}, {"Petrel", "Petrol", true}, {"Petrel", "Fulmar", false},
		{"Boat 1", "Boat 2", false}, {"Boat 12", "Boat 1", false}, {"Tern 2", "Tern2", true},
		{"Sea Wren II", "Sea Wren III", false}, {"Sea Wren", "Sea Wren II", false},
		{"Båra", "Bara", false}, {"Señora", "Senora", true},
	} {
		if got := Near(c.a, c.b); got != c.want || Near(c.b, c.a) != c.want {
			t.Errorf("%q and %q: %v, want %v", c.a, c.b, got, c.want)
		}
	}
}
