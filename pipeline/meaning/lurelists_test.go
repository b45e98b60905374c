package meaning

import "testing"

// TestLureLists holds that lures named together in the cells of stretches are lines where as many are counted, or the
// heading says that they were out; that it is open where nothing counts the lines; and that lures of their own stay.
func TestLureLists(t *testing.T) {
	rows := func(heads string, rows ...string) string {
		for _, r := range rows {
			heads += "\n" + r
		}
		return heads
	}
	for name, c := range map[string]struct {
		text           string
		each, lure, un bool // a line each, still a lure of the row, open
	}{
		"as many lines": {rows("Date|Start|End|Lines|Lures|Bites", "2026-05-03|06:00|08:00|3|jet, plug, bird|1",
			"2026-05-04|06:00|08:00|2|jet, plug|0", "2026-05-05|06:00|08:00|3|jet, plug, spoon|0"), true, false, false},
		"out": {rows("Date|Start|End|Lures out|Bites", "2026-05-03|06:00|08:00|jet, plug, bird|1",
			"2026-05-04|06:00|08:00|jet, plug|0", "2026-05-05|06:00|08:00|jet, plug, spoon|0"), true, false, false},
		"nothing counted": {rows("Date|Start|End|Lures used|Bites", "2026-05-03|06:00|08:00|jet, plug, bird|1",
			"2026-05-04|06:00|08:00|jet, plug|0", "2026-05-05|06:00|08:00|jet, plug, spoon|0"), false, false, true},
		"other lines": {rows("Date|Start|End|Lines|Lures|Bites", "2026-05-03|06:00|08:00|5|jet, plug, bird|1",
			"2026-05-04|06:00|08:00|5|jet, plug|0", "2026-05-05|06:00|08:00|5|jet, plug, spoon|0"), false, true, false},
		"one lure": {rows("Date|Start|End|Lines|Lure|Bites", "2026-05-03|06:00|08:00|3|jet|1",
			"2026-05-04|06:00|08:00|2|plug|0", "2026-05-05|06:00|08:00|3|jet|0"), false, true, false},
	} {
		u := inferred(t, "log", nil, "log.csv", c.text).Data()[0]
		if each, lure := u.Plan.Lures != nil, u.Plan.Binds("lure"); each != c.each || lure != c.lure ||
			u.Listed.Unsure != c.un {
			t.Errorf("%s: a line each %t, a lure %t, open %t", name, each, lure, u.Listed.Unsure)
		}
	}
}

// TestHoursOfLines holds that hours on the first of a stretch's rows of lines are those of each, and that rows which
// name a line twice are of bites.
func TestHoursOfLines(t *testing.T) {
	const head = "Date|Hours|Knots|Line|Lure|Bites\n2026-05-03|2|8|Short|jet|1\n|||Long|plug|0\n|||Shotgun|bird|0\n" +
		"2026-05-05|3|8|Short|jet|0\n|||Long|plug|2\n"
	for last, want := range map[string]bool{"|||Shotgun|bird|0": true, "|||Long|plug|1": false} {
		if got := planOf(t, "log.csv", head+last).Find("duration_s").Carried; got != want {
			t.Errorf("%q: carried %t", last, got)
		}
	}
}

// TestSpeedWhenBit holds that a second column of speeds that speaks of the bite has the speed of the bite.
func TestSpeedWhenBit(t *testing.T) {
	text := "Date|Hours|Rods|Kts|Time|What|Result|Kts when bit\n2026-05-03|4|4|8|7:10|wahoo|landed|\n" +
		"||||9:30|mahi|lost|6.5\n2026-05-05|3|5|9|8:15|wahoo|lost|8\n2026-05-07|5|4|7|7:45|mahi|landed|10.5\n"
	if p := planOf(t, "log.csv", text); !p.Binds("strike_speed_kn") || p.Find("speed_kn").Heading != "Kts" {
		t.Errorf("the speed of the bite is not read: %s", summary(p))
	}
}
