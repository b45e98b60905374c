package meaning

import (
	"strings"
	"testing"
)

// TestGearIsNoStrike holds that columns of a first and a second lure, rod or angler tell of no strike where nothing
// beside them does, and that those beside fates do.
func TestGearIsNoStrike(t *testing.T) {
	const days = "Date|In|Out|Rods|Knots|Hits|Landed|%1|%2\n2026-06-15|6:10|11:30|4|7.5|3|1|Blue jet|Pink squid\n" +
		"2026-06-16|6:30|12:15|4|8|0|0|Blue jet|Pink squid\n2026-06-22|7:00|12:00|5|7|2|2|Green|Pink squid\n" +
		"2026-06-23|6:45|13:15|4|7.5|1|0|Green|Black"
	for _, c := range []struct {
		what   string
		spread int
	}{{"Lure", 2}, {"Rod", 2}, {"Angler", 0}} {
		p := planOf(t, "Log", strings.NewReplacer("%1", c.what+" 1", "%2", c.what+" 2").Replace(days))
		if len(p.Spread) != c.spread || p.StrikeSets() != 0 {
			t.Errorf("%s: %d strikes a row, the spread %v: %s", c.what, p.StrikeSets(), p.Spread, summary(p))
		}
	}
	p := planOf(t, "Log", "Date|In|Out|Rods|Knots|Lure 1|Result 1|Lure 2|Result 2\n"+
		"2026-06-15|6:10|11:30|4|7.5|Blue jet|lost|Pink squid|landed\n2026-06-16|6:30|12:15|4|8|Green|missed||\n"+
		"2026-06-22|7:00|12:00|5|7|Green|landed|Black|lost")
	if p.StrikeSets() != 2 || len(p.Spread) > 0 {
		t.Errorf("lures and fates: %d strikes a row: %s", p.StrikeSets(), summary(p))
	}
}

// TestCountsOfOneStretch holds that counts with a number each are added up on a row of one stretch, and stay with
// theirs on a row of several; and that a count without a number beside them is not the first of them.
func TestCountsOfOneStretch(t *testing.T) {
	for _, c := range []struct {
		text string
		adds int // bindings of bites that are added to another
		all  int
	}{
		{"Date|In|Out|Lines|Hits 1|Hits 2\n2026-06-15|6:10|11:30|4|2|1\n2026-06-16|6:30|12:15|4|0|0\n" +
			"2026-06-22|7:00|12:00|5|2|0", 1, 2},
		{"Date|Start 1|Stop 1|Hits 1|Start 2|Stop 2|Hits 2\n2026-06-15|6:10|9:30|2|10:00|11:30|1\n" +
			"2026-06-16|6:30|8:15|0|9:00|10:15|0\n2026-06-22|7:00|9:00|2|9:30|11:00|0", 0, 2},
		{"Date|In|Out|Lines|Hits|Hits 1|Hits 2\n2026-06-15|6:10|11:30|4|3|2|1\n2026-06-16|6:30|12:15|4|0|0|0\n" +
			"2026-06-22|7:00|12:00|5|2|2|0", 0, 1},
	} {
		p := planOf(t, "Log", c.text)
		adds, all := 0, 0
		for _, b := range p.Bindings {
			if b.Column.Name == "strikes_n" {
				all++
				adds += int(one(b.Adds))
			}
		}
		if adds != c.adds || all != c.all {
			t.Errorf("%s\n%d counts of bites, %d added; expected %d, %d: %s", c.text, all, adds, c.all, c.adds,
				summary(p))
		}
	}
}

// TestMeterIsNoClock holds that readings which rise from day to day, each trip's from where the last one's ended, are
// no clock times, and that those of one day are.
func TestMeterIsNoClock(t *testing.T) {
	const head = "Date|Start|End|Lines|Knots|Bites\n"
	meter := head + "2026-06-01|1204|1212|4|7|2\n2026-06-02|1212|1219|4|7|0\n2026-06-03|1219|1228|4|7|1\n" +
		"2026-06-04|1228|1235|4|7|1"
	for text, want := range map[string]bool{
		meter: false,
		strings.NewReplacer("-02", "-01", "-03", "-01", "-04", "-01").Replace(meter): true,
		strings.Replace(meter, "1219|1228", "1030|1228", 1):                          true,
	} {
		if p := planOf(t, "Log", text); p.Binds("start_s") != want {
			t.Errorf("%s\nread as %s", text, summary(p))
		}
	}
}

// TestNumbersOfOtherThings holds that a line's class is no rod, a sum of pounds no count of fish, and noughts under
// "Boat" no boat.
func TestNumbersOfOtherThings(t *testing.T) {
	const head = "Date|In|Out|Rods|Knots|Hits|%\n"
	for _, c := range []struct{ heading, cells, not string }{
		{"Line", "50 80 50 80", "line"}, {"Total lb", "20 59 42 31", "landed_n"}, {"Boat", "1 0 2 0", "boat"},
	} {
		text := strings.Replace(head, "%", c.heading, 1)
		for i, cell := range strings.Fields(c.cells) {
			text += "2026-06-0" + string(rune('1'+i)) + "|6:10|11:30|4|7|3|" + cell + "\n"
		}
		if p := planOf(t, "Log", text); p.Binds(c.not) {
			t.Errorf("%s: %s", c.heading, summary(p))
		}
	}
	p := planOf(t, "Log", strings.Replace(head, "%", "Boat", 1)+"2026-06-01|6:10|11:30|4|7|3|Ana\n"+
		"2026-06-02|6:10|11:30|4|7|3|Bela\n2026-06-03|6:10|11:30|4|7|3|Ana")
	if !p.Binds("boat") {
		t.Errorf("names: %s", summary(p))
	}
}
