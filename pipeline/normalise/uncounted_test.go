package normalise

import "testing"

// TestBitesNobodyCounted holds that a row with a word in place of the number of its bites keeps the fish that it names,
// beside those that it counts as lost.
func TestBitesNobodyCounted(t *testing.T) {
	rows := log{text: "Date|Hours|Lines|Knots|Bites|Lost|Fish (kg)\n2026-06-03|4|5|7|3|1|dorado 2.3 + wahoo 16\n" +
		"2026-06-04|3.5|4|7|several|2|dorado 2.3\n2026-06-05|4|5|6.5|1|0|wahoo 18.5\n" +
		"2026-06-06|5|5|6.5|2|1|wahoo 12.4"}.read(t)
	if got := rows[1]; got.skip != NotASkip || got.sides != 1 || got.told("the counts stand") {
		t.Errorf("%+v", got)
	}
}

// TestNoLuresOut holds that a day without hours whose remark says that no lures were out was not trolled.
func TestNoLuresOut(t *testing.T) {
	got := log{text: under("Date|In|Out|Rods|Knots|Bites|Boated|Fish|Remarks",
		"2026-06-03|06:00|09:00|5|7|2|1|wahoo 64cm 3.1kg|calm",
		"2026-06-04|||||||geelbek 81cm|anchored on the reef with pilchard, no lures out")}.last(t)
	if got.skip != Elsewise {
		t.Errorf("%q %v", got.skip, got.problems)
	}
}
