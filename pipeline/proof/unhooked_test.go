package proof

import (
	"slices"
	"testing"
)

// Where a log says what it leaves out, nothing more is asked of hook-ups; where it counts bites and fish landed and
// nothing between, hook-ups are not known.
func TestUnhooked(t *testing.T) {
	const rows = "Date|Hours|Lines|Bites|Landed\n2026-07-04|4|5|4|1\n2026-07-05|5|5|3|1\n2026-07-08|3|5|2|0"
	stats := Stats{Strikes: 9, Stretches: 3, ByCount: 9, Landed: 2, Hooked: 2}
	if got := kinds(asked(t, inferred(t, "log", rows), stats)); !slices.Contains(got, "hook-ups") {
		t.Errorf("%v", got)
	}
	few, without := Stats{Strikes: 4, Stretches: 3, ByCount: 4, Landed: 1, Hooked: 1}, stats
	without.Stretches = 0
	for _, stats := range []Stats{few, without} { // most of few bites, or of a log without hours
		if got := kinds(asked(t, inferred(t, "log", rows), stats)); !slices.Contains(got, "hook-ups") {
			t.Errorf("%+v: %v", stats, got)
		}
	}
	got := kinds(asked(t, inferred(t, "log", "missed bites not counted\n"+rows), stats))
	if !slices.Contains(got, "unwritten") || slices.Contains(got, "hook-ups") {
		t.Errorf("%v", got)
	}
	told := inferred(t, "log", "Date|Hours|Lines|Bites|Missed|Landed\n2026-07-04|4|5|4|2|1\n2026-07-05|5|5|3|1|1\n"+
		"2026-07-08|3|5|2|2|0")
	if got := kinds(asked(t, told, stats)); slices.Contains(got, "hook-ups") {
		t.Errorf("%v", got)
	}
}

// Blanks among marks under places of the spread are asked about, and not where a legend says what they are.
func TestBlankPlaces(t *testing.T) {
	const rows = "Date|Hours|Speed (kn)|P1|S1|P2\n2026-07-04|4|7|-|kept|-\n2026-07-05|3|8|missed|-|\n" +
		"2026-07-06|5|7|-|-|kept\n2026-07-07|5|8|-|lost|"
	stats := Stats{Strikes: 4, Stretches: 4}
	if got := kinds(asked(t, inferred(t, "log", rows), stats)); !slices.Contains(got, "no line") {
		t.Errorf("%v", got)
	}
	legend := "under each line: - = out, no bite; empty = line not out\n"
	if got := kinds(asked(t, inferred(t, "log", legend+rows), stats)); slices.Contains(got, "no line") {
		t.Errorf("%v", got)
	}
}

// A log all of whose bites were landed, with no place for others, is asked about bites that nobody wrote down.
func TestOnlyThese(t *testing.T) {
	all := Stats{Strikes: 6, Stretches: 3, ByCount: 6, Landed: 6, Hooked: 6}
	landed := inferred(t, "log", "Date|Hours|Lines|Landed\n2026-07-04|4|5|3\n2026-07-05|5|5|2\n2026-07-08|3|5|1")
	if got := kinds(asked(t, landed, all)); !slices.Contains(got, "only these") {
		t.Errorf("%v", got)
	}
	missed := inferred(t, "log", "Date|Hours|Lines|Landed|Missed\n2026-07-04|4|5|3|0\n2026-07-05|5|5|2|0\n"+
		"2026-07-08|3|5|1|0")
	if got := kinds(asked(t, missed, all)); slices.Contains(got, "only these") {
		t.Errorf("%v", got)
	}
}
