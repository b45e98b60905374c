package proof

import (
	"slices"
	"testing"

	"wakeledger/pipeline/entry"
	"wakeledger/pipeline/layout"
	"wakeledger/pipeline/meaning"
	"wakeledger/pipeline/plan"
)

// counting is a table of counts: by day, how many were hooked and how many of them boated.
func counting(days map[int64]Fates) Subject {
	s := &Stats{}
	for day, f := range days {
		s.Add(Row{Kind: plan.Flat, Num: day, Values: map[string]entry.Value{"date": entry.OfInt(day),
			"strikes_n": entry.OfInt(int64(f.Held + 1)),
			"missed_n":  entry.OfInt(1), "landed_n": entry.OfInt(int64(f.Boated)),
			"lost_n": entry.OfInt(int64(f.Held - f.Boated))}})
	}
	return Subject{Understood: &meaning.Understood{Plan: &plan.Block{Kind: plan.Flat}}, Stats: s}
}

// listing of strikes: a day and an outcome each.
func listedFish(fish ...any) Subject {
	s := &Stats{}
	for i := 0; i < len(fish); i += 2 {
		s.Add(Row{Kind: plan.Strikes, Num: int64(i), Values: map[string]entry.Value{
			"date": entry.OfInt(int64(fish[i].(int))), "outcome": entry.OfText(fish[i+1].(string))}})
	}
	return Subject{Understood: &meaning.Understood{Plan: &plan.Block{Kind: plan.Strikes}}, Stats: s}
}

// TestAmong takes a list of fish for some of those counted only where the counts of their days
// have room for them, and no row of it is a bite that was missed.
func TestAmong(t *testing.T) {
	counts := map[int64]Fates{1: {3, 2}, 2: {2, 2}, 3: {1, 0}}
	for _, c := range []struct {
		what string
		list Subject
		want bool
	}{
		{"within the counts", listedFish(1, "landed", 1, "released", 2, "landed", 3, "lost"), true},
		{"more than were counted", listedFish(1, "landed", 1, "landed", 1, "landed", 2, "landed"), false},
		{"boated, where the day's one was lost", listedFish(3, "landed", 1, "landed", 1, "landed", 2, "landed"), false},
		{"of other days", listedFish(7, "landed", 8, "landed", 9, "landed", 7, "lost"), false},
		{"every bite", listedFish(1, "landed", 1, "released", 2, "landed", 3, "missed"), false},
		{"too few to tell", listedFish(1, "landed", 2, "landed"), false},
	} {
		Among([]Subject{counting(counts), c.list})
		if c.list.Plan.Among != c.want {
			t.Errorf("%s: among the counts %v, expected %v", c.what, c.list.Plan.Among, c.want)
		}
	}
}

// TestListingOf holds that trips rest on a list of fish of days of which no counts tell, and else do not.
func TestListingOf(t *testing.T) {
	counts := counting(map[int64]Fates{1: {3, 2}, 2: {2, 2}})
	for what, c := range map[string]struct {
		list Subject
		want bool
	}{
		"of the days that are counted": {listedFish(1, "landed", 1, "landed", 1, "landed", 2, "landed"), false},
		"of another day":               {listedFish(1, "landed", 7, "landed"), true},
	} {
		subjects := []Subject{counts, c.list}
		q := &inquiry{subjects: subjects, counted: countedOf(subjects)}
		if got := slices.Contains(q.listingOf([]*meaning.Understood{c.list.Understood}), "trips"); got != c.want {
			t.Errorf("%s: trips rest on it %v, expected %v", what, got, c.want)
		}
	}
}

// TestAmongByMonth takes a month's lists with the same headings for one: a month of two fish alone
// says too little.
func TestAmongByMonth(t *testing.T) {
	april, may := listedFish(1, "landed", 1, "released"), listedFish(2, "landed", 2, "landed")
	other := listedFish(3, "lost")
	other.Plan.Heads = [][]string{{"Day", "What"}}
	Among([]Subject{counting(map[int64]Fates{1: {3, 2}, 2: {2, 2}, 3: {1, 0}}), april, may, other})
	if !april.Plan.Among || !may.Plan.Among || other.Plan.Among {
		t.Errorf("among the counts: %v, %v, another hand's %v", april.Plan.Among, may.Plan.Among, other.Plan.Among)
	}
}

// TestTwice leaves the bites of a table of trips to one of stretches that counts as many on each
// trip, and to no other.
func TestTwice(t *testing.T) {
	table := func(rows [][2]int64, fates bool) Subject {
		s := &Stats{}
		for i, r := range rows {
			v := map[string]entry.Value{"date": entry.OfInt(r[0]), "strikes_n": entry.OfInt(r[1]),
				"duration_s": entry.OfReal(3600), "lines_out": entry.OfInt(4)}
			if fates {
				v["landed_n"] = entry.OfInt(r[1])
			}
			s.Add(Row{Kind: plan.Flat, Num: int64(i), Values: v})
		}
		return Subject{Understood: &meaning.Understood{Plan: &plan.Block{Kind: plan.Flat}}, Stats: s}
	}
	trips := [][2]int64{{1, 2}, {2, 3}, {3, 1}, {4, 4}}
	legs := [][2]int64{{1, 2}, {1, 0}, {2, 1}, {2, 2}, {3, 1}, {4, 4}, {5, 0}}
	other := [][2]int64{{1, 2}, {1, 1}, {2, 1}, {2, 2}, {3, 1}, {4, 4}}
	for _, c := range []struct {
		what         string
		coarse, fine Subject
		want         bool
	}{
		{"as many each day", table(trips, false), table(legs, false), true},
		{"one more on one day", table(trips, false), table(other, false), false},
		{"fates that nothing else tells", table(trips, true), table(legs, false), false},
		{"fates in both", table(trips, true), table(legs, true), true},
		{"too few days", table(trips[:3], false), table(legs[:5], false), false},
	} {
		got := Twice([]Subject{c.fine, c.coarse})
		if got != c.want || c.coarse.Plan.NoStrikes != c.want || c.fine.Plan.NoStrikes {
			t.Errorf("%s: %v, expected %v", c.what, got, c.want)
		}
	}
}

// TestBlankCounts holds that fish beyond the counts of their day are asked about, but where a stretch of that day
// leaves its counts blank and others of its table say 0.
func TestBlankCounts(t *testing.T) {
	for what, c := range map[string]struct {
		blank, none bool
		asked       int
	}{
		"no stretch is blank":               {false, true, 1},
		"a blank stretch, where 0 is 0":     {true, true, 0},
		"a blank stretch, where 0 is blank": {true, false, 1},
	} {
		counts := counting(map[int64]Fates{1: {2, 2}, 2: {9, 9}})
		add := func(num int64, values map[string]entry.Value) {
			values["date"], values["duration_s"] = entry.OfInt(1), entry.OfReal(7200)
			counts.Stats.Add(Row{Kind: plan.Flat, Num: num, Values: values})
		}
		if c.blank {
			add(8, map[string]entry.Value{})
		}
		if c.none {
			add(9, map[string]entry.Value{"strikes_n": entry.OfInt(0)})
		}
		list := listedFish(1, "landed", 1, "landed", 1, "released", 2, "landed", 2, "landed", 2, "landed", 2, "landed",
			2, "landed", 2, "landed", 2, "landed")
		list.Plan.Among = true
		subjects := []Subject{counts, list}
		q := &inquiry{log: &meaning.Log{}, subjects: subjects, counted: countedOf(subjects)}
		q.uncounted()
		if len(q.out) != c.asked || len(list.Plan.Notes) != 1-c.asked {
			t.Errorf("%s: %d questions, noted %q", what, len(q.out), list.Plan.Notes)
		}
	}
}

// TestOtherwise holds that a fish whose words name another way of fishing, with a lure of it, is apart where its day
// has no room for it among those hooked, and stays where it has.
func TestOtherwise(t *testing.T) {
	for lure, want := range map[string]bool{"casting, small plug": true, "green plug": false, "plug, sardine": false} {
		counts := &Stats{}
		counts.Add(Row{Kind: plan.Flat, Num: 1, Values: map[string]entry.Value{"date": entry.OfInt(1),
			"strikes_n": entry.OfInt(4), "hooked_n": entry.OfInt(2), "landed_n": entry.OfInt(2)}})
		list := listedFish(1, "landed", 1, "landed", 1, "released", 2, "landed")
		rows := make([]layout.Row, 4)
		for i := range rows {
			rows[i] = layout.Row{Num: 2 * i, Cells: []layout.Cell{{Text: "red skirt"}}}
		}
		rows[2].Cells[0].Text = lure
		list.Block = &layout.Block{Rows: rows}
		got := Otherwise([]Subject{{Understood: &meaning.Understood{Plan: &plan.Block{Kind: plan.Flat}}, Stats: counts},
			list})
		if got != want || list.Plan.Apart[4] != want {
			t.Errorf("%q: apart %v, expected %v", lure, got, want)
		}
	}
}
