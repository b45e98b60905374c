package meaning

import (
	"strings"
	"testing"
)

// TestBoatCounts holds that few numbers under "boat" beside counts are fish in the boat, and a number on each row is
// the boat's.
func TestBoatCounts(t *testing.T) {
	const rows = "Date|in|out|rods|bites|hooked|boat\n2025-05-04|6:40|12:10|4|3|2|%1\n" +
		"2025-05-11|7:05|11:30|4|2|2|%2\n2025-05-18|6:30|11:45|4|4|3|%3\n" +
		"2025-06-01|6:15|12:00|4|2|1|%4\n2025-06-08|6:20|11:30|4|5|4|%5"
	for cells, want := range map[string]string{"1 0 2 1 3": "landed_n", "7 7 12 7 12": "boat"} {
		c := strings.Fields(cells)
		p := planOf(t, "Log", strings.NewReplacer("%1", c[0], "%2", c[1], "%3", c[2], "%4", c[3],
			"%5", c[4]).Replace(rows))
		if b := p.Find(want); b == nil || b.Heading != "boat" {
			t.Errorf("%s: expected %s: %s", cells, want, summary(p))
		}
	}
}

// TestBitesUnderPlaces holds that few numbers under several places of the spread are bites, and that a number under
// each on every row is none.
func TestBitesUnderPlaces(t *testing.T) {
	const head = "Date|Lines in|Lines out|# lures|Left long|Left short|Right long|Right short|Shotgun\n"
	for rows, want := range map[string]int{
		"2025-06-12|06:15|11:45|5|1|||2|\n2025-06-19|06:30|12:00|5|||1||1\n2025-06-26|05:55|10:30|5|||||\n" +
			"2025-07-03|06:05|13:20|5|2|1||1|1": 5,
		"2025-06-12|06:15|11:45|5|1|1|1|1|1\n2025-06-19|06:30|12:00|4|1|1|1|1|\n2025-06-26|05:55|10:30|5|1|1|1|1|1\n" +
			"2025-07-03|06:05|13:20|5|1|1|1|1|1": 0,
	} {
		p, n := planOf(t, "Log", head+rows), 0
		for _, b := range p.Bindings {
			if b.Column.Name == "strikes_n" {
				n++
			}
		}
		if n != want {
			t.Errorf("%d columns of bites, expected %d: %s", n, want, summary(p))
		}
	}
}

// TestGuessedHeading holds that weights that are guessed by their heading are of no scale, however well they go with
// the lengths.
func TestGuessedHeading(t *testing.T) {
	rows := "Date|Species|%|Fork length, in|Result"
	for _, r := range []string{"14|32", "15|33", "63|54", "55|52", "31|43",
		"29|42", "34|44", "41|47", "22|38", "12|30"} {
		rows += "\n2025-04-04|Yellowfin|" + r + "|kept"
	}
	for heading, want := range map[string]bool{"Guessed wt lb": false, "Scale wt lb": true} {
		p := planOf(t, "Log", strings.Replace(rows, "%", heading, 1))
		if got := p.Find("scale_kg") != nil; got != want {
			t.Errorf("%s: weights of a scale %t, expected %t: %s", heading, got, want, summary(p))
		}
	}
}

// TestNoStarAllSeason holds that no weight is of a scale where a star means one and none has it.
func TestNoStarAllSeason(t *testing.T) {
	for said, want := range map[string]string{"* after the weight means scale, no star is a guess": "~63", "": "63"} {
		p := planOf(t, "Log", said+"\n\nDate|Species|Lbs|Result\n2021-05-26|mahi|63|let go\n"+
			"2021-06-09|mahi|12|landed\n2021-06-11|yellowfin|14|landed\n2021-06-16|mahi|34.5|boated")
		got := "63"
		if b := p.Find("scale_kg"); b != nil && b.Codes["63"] != "" {
			got = b.Codes["63"]
		}
		if got != want {
			t.Errorf("%q: 63 is %s, expected %s: %s", said, got, want, summary(p))
		}
	}
}

// TestReleasedAsked holds that a heading that asks, over a yes or a no for each fish, counts none, and that weights
// which differ for one lure are no lure's.
func TestReleasedAsked(t *testing.T) {
	p := planOf(t, "Log", "date|species|length (in)|weight|lure|released?|hrs fished|lines|kts\n"+
		"2025-06-03|bluefin|62||black diver|N|6|5|8\n2025-06-03|bluefin|59||green machine|Y|6|5|8\n"+
		"2025-06-10|none|||||5.25|5|8.5\n2025-06-17|bluefin|58|110|black diver|N|6.5|6|8\n"+
		"2025-06-17|yellowfin|36|28|black diver|N|6.5|6|8")
	for heading, want := range map[string]string{"released?": "kept", "weight": "scale_kg"} {
		if b := p.Find(want); b == nil || b.Heading != heading {
			t.Errorf("%s: expected %s: %s", heading, want, summary(p))
		}
	}
}

// TestWaysLost holds that columns of several ways of losing a fish are all counted, that hours of the trip beside those
// trolled are none of trolling, and that an account which comes out even on each row says that the fish in the boat are
// not those let go.
func TestWaysLost(t *testing.T) {
	l := inferred(t, "log", nil, "Log", "DATE|TRIP HRS|TROLL HRS|RODS|KTS|BITES|MISSED|PULLED|CUT OFF|BOATED|LET GO\n"+
		"2025-06-06|9|6|5|8|4|1|1||2|\n2025-06-13|8.5|5.5|5|8||||||\n2025-06-20|10|7|6|8.5|7|2|1|1|2|1\n"+
		"2025-06-27|7|4|5|8|1|1|||| ")
	u, lost, hours := l.Data()[0], 0, 0
	for _, b := range u.Plan.Bindings {
		if b.Column.Name == "lost_n" {
			lost++
		}
		if b.Column.Name == "duration_s" {
			hours++
		}
	}
	if lost != 2 || hours != 1 || u.LandedOpen() || u.Plan.Inclusive {
		t.Errorf("%d ways of losing, %d of hours, open %t: %s", lost, hours, u.LandedOpen(), summary(u.Plan))
	}
}

// TestMissedBlank holds that a blank beside bites counts none missed where no cell of its column says nought.
func TestMissedBlank(t *testing.T) {
	for cell, want := range map[string]bool{"": true, "0": false} {
		p := planOf(t, "Log", "Date|In|Out|Lines|Hits|Missed|Kept\n2024-04-16|05:35|13:00|6|6|3|2\n"+
			"2024-04-25|07:05|08:55|5|2||1\n2024-04-27|08:05|09:25|6|1|"+cell+"|1\n2024-04-30|06:35|07:50|6|3|1|1")
		if p.MissedBlank != want {
			t.Errorf("%q: a blank is none missed %t, expected %t", cell, p.MissedBlank, want)
		}
	}
}

// TestFeetInches holds that lengths in feet and inches are those of the fish, whatever their heading.
func TestFeetInches(t *testing.T) {
	for _, heading := range []string{"L ft-in", "Zark"} {
		p := planOf(t, "Log", "When|Fish|"+heading+"|How it ended\n2024-04-20|dodo|2'5\"|landed\n"+
			"2024-04-28|tuna||let go\n2024-05-03|tuna|3'6\"|landed\n2024-05-18|tuna|3'0\"|let go")
		if b := p.Find("length_cm"); b == nil || b.Heading != heading {
			t.Errorf("%s: no length: %s", heading, summary(p))
		}
	}
}

// TestSpansOfStretches holds that spans under the words for a first and a second stretch give each its start and end.
func TestSpansOfStretches(t *testing.T) {
	for _, heads := range [][2]string{{"1st Lines in - up", "2nd Lines in - up"},
		{"Lines in - up 1", "Lines in - up 2"}} {
		head := "Day|Rods|" + heads[0] + "|%1|" + heads[1] + "|%2\n"
		of := strings.NewReplacer("%1", "1st Bites", "%2", "2nd Bites")
		if heads[0][0] != '1' {
			of = strings.NewReplacer("%1", "Bites 1", "%2", "Bites 2")
		}
		p := planOf(t, "Log", of.Replace(head)+"2021-06-16|6|07:00-09:10|0|09:55-13:15|1\n"+
			"2021-06-17|8|06:00-09:55|2|10:10-14:10|3\n2021-06-19|7|08:05-09:15|0|09:30-11:40|1")
		n := 0
		for _, b := range p.Bindings {
			if b.Column.Name == "start_s" || b.Column.Name == "end_s" {
				n++
			}
		}
		if n != 4 {
			t.Errorf("%v: %d starts and ends, expected 4: %s", heads, n, summary(p))
		}
	}
}

// TestLinesInTime holds that hours with fractions under "lines-in time" are how long, and clock times when.
func TestLinesInTime(t *testing.T) {
	for cells, want := range map[string]string{"4 1/4|5|5 1/4": "duration_s", "6:15|6:30|7:05": "start_s"} {
		c := strings.Split(cells, "|")
		p := planOf(t, "Log", "date|lines-in time|lines up|rods|bites\n2023-06-08|"+c[0]+"||4|2\n"+
			"2023-06-15|"+c[1]+"||4|0\n2023-06-21|"+c[2]+"||5|1")
		if b := p.Find(want); b == nil || b.Heading != "lines-in time" {
			t.Errorf("%s: expected %s: %s", cells, want, summary(p))
		}
	}
}

// TestReleasedOfLanded holds that fish let go of those landed are told by their heading, whichever of several stretches
// it is of.
func TestReleasedOfLanded(t *testing.T) {
	p := planOf(t, "Log", "day|lines|1st time h:mm|1st # strikes|1st landed (all)|1st (released of landed)|"+
		"2nd time h:mm|2nd # strikes|2nd landed (all)|2nd (released of landed)\n2022-05-06|4|2:10|0|0|0|3:30|1|1|1\n"+
		"2022-05-09|5|3:30|3|1|0|3:50|0|0|0\n2022-05-15|6|2:30|1|1|0|||||")
	n := 0
	for _, b := range p.Bindings {
		if b.Column.Name == "released_n" {
			n++
		}
	}
	if n != 2 || !p.Inclusive {
		t.Errorf("%d columns of fish let go, among those landed %t: %s", n, p.Inclusive, summary(p))
	}
}

// TestLinesByPlaces holds that lines counted at their places are the lines, whatever the heading, and that a sentence
// of four words below a table says what is usual.
func TestLinesByPlaces(t *testing.T) {
	p := planOf(t, "Log", "Date|In|Out|Pattern|Kts|Bites\n2025-07-22|07:00|13:15|2 long, 2 short, 1 shotgun|7.5|4\n"+
		"2025-07-23|07:00|14:00|1 long, 2 short, 1 shotgun|8|2\n2025-07-24|07:00|14:00|2 long, 2 short, 1 shotgun|8|0")
	if b := p.Find("lines_out"); b == nil || b.Heading != "Pattern" {
		t.Errorf("no lines under Pattern: %s", summary(p))
	}
	p = planOf(t, "Log", "Date|Hours|Lns|Kts|Bites\n2025-07-22|6||7.5|4\n2025-07-23|5|5|8|2\n2025-07-24|7||8|0\n"+
		"2025-07-25|4||8|1\n\n4 lines unless noted")
	if !p.Gives("lines_out") {
		t.Errorf("nothing is usual: %s", summary(p))
	}
}
