package proof

import (
	"slices"
	"testing"

	"wakeledger/pipeline/entry"
	"wakeledger/pipeline/plan"
)

// row is an entry of values "name=number", in hours where they are times.
func row(kind plan.Kind, num int64, values map[string]float64) Row {
	r := Row{Kind: kind, Num: num, Values: map[string]entry.Value{}}
	for name, v := range values {
		switch name {
		case "start_s", "end_s":
			r.Values[name] = entry.OfInt(int64(v * 3600))
		case "duration_s", "stopped_s":
			r.Values[name] = entry.OfReal(v * 3600)
		case "speed_kn":
			r.Values[name] = entry.OfReal(v)
		case "species_logged":
			r.Values[name] = entry.OfText("Wahoo")
		default:
			r.Values[name] = entry.OfInt(int64(v))
		}
	}
	return r
}

func added(rows ...Row) Stats {
	s := Stats{}
	for _, r := range rows {
		s.Add(r)
	}
	return s
}

type day = map[string]float64

func TestEffort(t *testing.T) {
	s := added(
		row(plan.Legs, 2, day{"date": 1, "start_s": 6, "end_s": 8, "lines_out": 4, "speed_kn": 8}),
		row(plan.Legs, 3, day{"date": 1, "start_s": 9, "end_s": 12, "stopped_s": 0.5}),
		row(plan.Flat, 4, day{"date": 2, "duration_s": 4, "lines_out": 4}),
		row(plan.Legs, 5, day{"date": 2, "start_s": 6}),
		row(plan.Strikes, 6, day{"date": 3, "start_s": 6, "end_s": 9}), // is no effort
	)
	if s.Stretches != 3 || s.Hours != 2+2.5+4 || len(s.Half) != 1 || s.NoLines != 1 || s.NoLinesH != 2.5 ||
		s.NoSpeed != 2 || len(s.Days) != 2 {
		t.Errorf("%+v", s)
	}
	own := added(row(plan.Legs, 2, day{"date": 1, "start_s": 6, "end_s": 9, "duration_s": 2.5}))
	if own.Own != 2.5 || own.OwnClock != 3 || own.Hours != 3 {
		t.Errorf("hours of its own: %+v", own)
	}
}

// TestEnteredTwice holds that two rows of one stretch which count the same bites are noted, and that rows of other
// bites, of none, or of other rods are not.
func TestEnteredTwice(t *testing.T) {
	at := func(num int64, bites int64, line string) Row {
		r := row(plan.Flat, num, day{"date": 1, "start_s": 6, "end_s": 8})
		r.Values["strikes_n"], r.Values["line"] = entry.OfInt(bites), entry.OfText(line)
		return r
	}
	for _, c := range []struct {
		what string
		rows []Row
		want int
	}{
		{"the same", []Row{at(2, 3, ""), at(3, 3, "")}, 1}, {"others", []Row{at(2, 3, ""), at(3, 2, "")}, 0},
		{"none", []Row{at(2, 0, ""), at(3, 0, "")}, 0}, {"two rods", []Row{at(2, 3, "L"), at(3, 3, "R")}, 0},
	} {
		if s := added(c.rows...); len(s.Twice) != c.want {
			t.Errorf("%s: %v", c.what, s.Twice)
		}
	}
}

// TestAgain holds that a stretch told again counts once, and one that overlaps is noted.
func TestAgain(t *testing.T) {
	at := func(num int64, date, from, to float64) Row {
		return row(plan.Legs, num, day{"date": date, "start_s": from, "end_s": to})
	}
	for _, c := range []struct {
		what     string
		rows     []Row
		hours    float64
		overlaps []Overlap
	}{
		{"told again", []Row{at(2, 1, 6, 8), at(3, 1, 6, 8)}, 2, nil},
		{"another day", []Row{at(2, 1, 6, 8), at(3, 2, 6, 8)}, 4, nil},
		{"one after the other", []Row{at(2, 1, 6, 8), at(3, 1, 8, 9)}, 3, nil},
		{"over the other", []Row{at(2, 1, 6, 8), at(3, 1, 7, 9)}, 4, []Overlap{{2, 3}}},
	} {
		if s := added(c.rows...); s.Hours != c.hours || !slices.Equal(s.Overlaps, c.overlaps) {
			t.Errorf("%s: %.1f h, overlaps %v", c.what, s.Hours, s.Overlaps)
		}
	}
}

func TestStrikes(t *testing.T) {
	s := added(
		row(plan.Strikes, 2, day{"time_s": 7}), row(plan.Fish, 3, day{"length_cm": 120}),
		row(plan.Flat, 4, day{"strikes_n": 5, "landed_n": 2}), row(plan.Flat, 5, day{"landed_n": 2, "lost_n": 1}),
		row(plan.Flat, 6, day{"species_logged": 1}), row(plan.Flat, 7, day{"strikes_n": 0}),
		row(plan.Legs, 8, day{"strikes_n": 4}),
	)
	if s.Listed != 3 || s.ByCount != 8 || s.Strikes != 11 {
		t.Errorf("listed %d, by count %d, all %d", s.Listed, s.ByCount, s.Strikes)
	}
}
