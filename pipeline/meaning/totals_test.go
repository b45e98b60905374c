package meaning

import "testing"

// TestCodesNoTotals holds that a fish whose code looks like a word for sums is none, where no time stands before it,
// and that a row of sums with such a word is.
func TestCodesNoTotals(t *testing.T) {
	for what, c := range map[string]struct {
		row  string
		want int
	}{
		"a fish without a time": {"Sat 22||T|BF|30|K", 6},
		"a row of sums":         {"BF||||86|", 5},
		"sums behind a label":   {"|Total|||86|", 5},
	} {
		p := inferred(t, "log", nil, "June 2024", "Day|Time|How|Sp|FL (in)|K/L\nSat 1|07:27|T|KF|41|K\n"+
			"Sat 1|07:33|T|WH|45|K\nSat 8|11:40|T|BF|22|L\nSat 15|10:03|T|KF|36|K\n"+c.row+"\nSat 29|08:29|T|WH|35|K")
		if got := len(p.Data()[0].Block.Rows); got != c.want {
			t.Errorf("%s: %d rows, expected %d", what, got, c.want)
		}
	}
	p := inferred(t, "log", nil, "June 2024", "Day|Sp|FL (in)|K/L\nSat 1|KF|41|K\nSat 1|WH|45|K\nSat 8|BF|22|L\n"+
		"Sat 15|BF|36|K\nSat 22|WH|30|K")
	if got := len(p.Data()[0].Block.Rows); got != 5 {
		t.Errorf("without times: %d rows, expected 5", got)
	}
}

// TestNotesUnderBites holds that sentences under a table which say what bites nobody wrote down are none of its rows.
func TestNotesUnderBites(t *testing.T) {
	l := inferred(t, "log", nil, "Bites", "Species|Length in|Lure|Result\n"+
		"Wahoo|41|red skirt|boated\nBonito|22|plug|lost\n"+
		"Wahoo|52|feather|boated\n\nBites that did not hook are not in here.\nWe keep all fish that we land.")
	if got := len(l.Data()[0].Block.Rows); got != 3 {
		t.Errorf("%d rows, expected 3", got)
	}
}

// TestMonthSummedUp holds that a sentence of what a month came to, under its table, is none of its rows.
func TestMonthSummedUp(t *testing.T) {
	const rows = "Day|In|Up|Lines|Bites\n3|06:00|08:00|4|1\n4|06:00|08:00|4|0\n9|06:00|08:00|5|2\n|||||\n"
	for text, want := range map[string]int{
		"Out on 3 days this month, 3 fish to the boat": 3, "Two wahoo on the way home": 4} {
		l := inferred(t, "log", nil, "June 2024", rows+text)
		if u := l.Data()[0]; len(u.Block.Rows) != want {
			t.Errorf("%s: %d rows, expected %d", text, len(u.Block.Rows), want)
		}
	}
}
