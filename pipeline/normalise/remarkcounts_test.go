package normalise

import "testing"

// TestCountedRemarks holds that a remark's fish are taken off those that a column of a species counts, or added to
// them, where it says which, and that others are told of.
func TestCountedRemarks(t *testing.T) {
	const head, good = "Date|In|Up|Knots|Bites|Albacore|Lost|Remarks", "2026-08-03|06:00|11:00|6.5|9|6|1|calm"
	for _, c := range []struct{ remark, landed, released, aside string }{
		{"3 of them babies, let go", "3", "3", ""}, {"also 1 bluefin", "7", "", ""},
		{"fog. also 1 bluefin, let go", "6", "1", ""}, {"also 4 bluefin", "6", "", "among those"},
		{"brume. 2 d'entre eux relâchés", "4", "2", ""},
		{"let go 2 albacore", "6", "", "among those"}, {"fog, went home", "6", "", ""},
		{"also 1 bluefin on bait", "6", "", ""},
	} {
		got := log{text: under(head, good, "2026-08-04|06:00|11:00|6.5|9|6|1|"+c.remark)}.last(t)
		if got.values["landed_n"] != c.landed || got.values["released_n"] != c.released ||
			(c.aside != "") != (len(got.problems) > 0) || c.aside != "" && !got.told(c.aside) {
			t.Errorf("%q: %s landed, %q let go, %v", c.remark, got.values["landed_n"], got.values["released_n"],
				got.problems)
		}
	}
}

// TestLetGoBeside holds that a remark which tells all fish of the boat says which of them were let go, also such as
// the column of those tagged does not count.
func TestLetGoBeside(t *testing.T) {
	const head, good = "Date|In|Up|Knots|Bites|Hooked|Boated|Tagged|Remarks", "2026-08-03|06:00|11:00|6.5|9|7|6|6|calm"
	for _, c := range []struct{ remark, landed, released string }{
		{"wahoo kept. 2 skipjack let go, no tag", "1", "2"}, {"wahoo kept", "3", "0"},
		{"wahoo kept, skipjack let go", "3", "0"}, {"3 skipjack let go", "0", "3"},
		{"2 wahoo kept. Cast at a school, 1 cobia let go (casting not counted)", "3", "0"},
	} {
		got := log{text: under(head, good, "2026-08-04|06:00|11:00|6.5|9|7|3|0|"+c.remark)}.last(t)
		if got.values["landed_n"] != c.landed || got.values["released_n"] != c.released {
			t.Errorf("%q: %s landed, %q let go", c.remark, got.values["landed_n"], got.values["released_n"])
		}
	}
}

// TestLetGoAmong holds that fish of a remark are taken off those in the boat where it says that these count them.
func TestLetGoAmong(t *testing.T) {
	const head, good = "Date|In|Up|Knots|Bites|Hooked|Boated|Remarks", "2026-08-03|06:00|11:00|6.5|9|7|6|calm"
	for _, c := range []struct{ remark, landed, released string }{
		{"4 albacore let go, in the count", "2", "4"}, {"foggy; let go 2 small ones (already counted)", "4", "2"},
		{"soltamos 2 bonitos, ya contados", "4", "2"}, {"9 albies let go, included", "6", ""},
		{"2 let go, not in the count", "6", ""}, {"counted the days", "6", ""},
		{"1 bonite relâchée, comptée", "5", "1"},
	} {
		got := log{text: under(head, good, "2026-08-04|06:00|11:00|6.5|9|7|6|"+c.remark)}.last(t)
		if got.values["landed_n"] != c.landed || got.values["released_n"] != c.released {
			t.Errorf("%q: %s landed, %q let go", c.remark, got.values["landed_n"], got.values["released_n"])
		}
	}
}

// TestReleasedAmongSpecies holds that a remark's fish let go are among those that the row's columns of species count
// where the row has no room for more on the hook, or the log says that all were kept but for what remarks say; and
// that it is told of where neither does.
func TestReleasedAmongSpecies(t *testing.T) {
	const head, good = "Date|In|Up|Knots|Bites|Hooked|Albacore|Wahoo|Remarks", "2026-08-03|06:00|11:00|6.5|9|6|2|3|calm"
	for _, c := range []struct {
		above, row, landed, released string
		aside                        bool
	}{
		{"", "9|3|2|1|1 small albacore released", "2", "1", false},
		{"", "9|4|2|1|1 small albacore released", "3", "", true},
		{"All kept unless I say so", "9|4|2|1|1 small albacore released", "2", "1", false},
		{"All kept unless I say so", "9|4|2||1 wahoo released", "2", "", true},
		{"Wahoo always released", "9|4|2|1|calm", "2", "1", false},
		{"Wahoo always released. Rest kept unless noted", "9|4|2|1|1 small albacore released", "1", "2", false},
	} {
		got := log{text: c.above + "\n" + under(head, good, "2026-08-04|06:00|11:00|6.5|"+c.row)}.last(t)
		if got.values["landed_n"] != c.landed || got.values["released_n"] != c.released ||
			c.aside != (len(got.problems) > 0) {
			t.Errorf("%q under %q: %s landed, %q let go, %v", c.row, c.above, got.values["landed_n"],
				got.values["released_n"], got.problems)
		}
	}
}

// TestOtherFishBeside holds that fish in words under "Other" are counted beside those of the columns, each of one fish
// and what became of it, also where nothing stands in one of these, and that fish which a column may count are not.
func TestOtherFishBeside(t *testing.T) {
	const head = "Date|In|Up|Lures|Knots|Bites|Wahoo kept|Wahoo let go|Mahi kept|Mahi let go|Other|Off"
	const rows = "2026-08-03|06:00|11:00|4|6.5|9|2|1|1|||3\n2026-08-04|06:00|10:00|4|7|5|1||2||1 sailfish let go|1\n" +
		"2026-08-05|06:00|10:00|4|7|4|1|1||||1"
	for other, want := range map[string][2]string{"1 cobia let go": {"1", "2"}, "1 cobia": {"2", "1"},
		"1 wahoo let go": {"1", "1"}} {
		got := log{text: under(head, rows, "2026-08-06|06:00|11:00|5|6.5|4|1|1|||"+other+"|")}.last(t)
		if got := [2]string{got.values["landed_n"], got.values["released_n"]}; got != want {
			t.Errorf("%q: kept and let go %v, expected %v", other, got, want)
		}
	}
}
