package proof

import (
	"slices"
	"testing"

	"wakeledger/pipeline/record"
)

// TestNoDays holds that a log of bites is asked about the day where nothing says it.
func TestNoDays(t *testing.T) {
	const bites = "Run|Time|Species|Result\n1|07:10|Wahoo|landed\n1|08:10|Wahoo|lost\n2|09:10|Dorado|landed"
	for text, want := range map[string]bool{bites: true, "Date|" + "Time|Species|Result\n3/6/26|07:10|Wahoo|landed\n" +
		"3/6/26|08:10|Wahoo|lost\n4/6/26|09:10|Dorado|landed": false} {
		qs := asked(t, inferred(t, "Bites", text), Stats{Strikes: 3, Listed: 3})
		if got := slices.Contains(kinds(qs), "no days"); got != want {
			t.Errorf("%s\nasked %t: %v", text, got, kinds(qs))
		}
	}
}

// TestTold holds that the bites which rows tell are held against the season's, unless another question is of them, and
// that bites which two tables tell of each other's are added up.
func TestTold(t *testing.T) {
	l := func() []string {
		return []string{"Days",
			"Date|Start|Stop|Missed\n3/6/26|06:00|11:00|2\n4/6/26|06:00|11:00|1\n5/6/26|06:00|11:00|0",
			"Fish",
			"Date|Time|Species|Result\n3/6/26|07:10|Wahoo|landed\n4/6/26|08:10|Wahoo|lost\n5/6/26|09:10|Dorado|kept"}
	}
	for _, c := range []struct {
		days, fish Stats
		want       string
	}{
		{Stats{Stretches: 3, Strikes: 3, ByCount: 3, Lost: 3}, Stats{Strikes: 3, Listed: 3, Held: 3}, "3"},
		{Stats{Stretches: 3, Strikes: 4, ByCount: 4, Lost: 4}, Stats{Strikes: 3, Listed: 3, Held: 3}, "7"},
		{Stats{Stretches: 3, Strikes: 4, ByCount: 4}, Stats{Strikes: 3, Listed: 3, Held: 3}, ""},
	} {
		qs := asked(t, inferred(t, l()...), c.days, c.fish)
		got := ""
		if i := slices.IndexFunc(qs, func(q Question) bool { return q.Kind == "told" }); i >= 0 {
			got = qs[i].About
		}
		if got != c.want {
			t.Errorf("%d by counts: %q, expected %q (%v)", c.days.ByCount, got, c.want, kinds(qs))
		}
	}
}

// TestNoLegDays holds that stretches of no day, each of them, are asked about, and that some among others are not asked
// about here.
func TestNoLegDays(t *testing.T) {
	const runs = "Run|Start|Stop|Rods|Knots\nA|06:00|08:00|4|8\nB|09:00|11:00|4|8\nA|06:10|09:00|4|7\nA|07:00|09:00|4|7"
	rows := []Worked{{Row: 2}, {Row: 3}, {Row: 4}, {Row: 5}}
	for _, dayless := range [][]int64{{2, 3, 4, 5}, {2, 3}} {
		qs := asked(t, inferred(t, "Runs", runs), Stats{Stretches: 4, Hours: 9, Worked: rows, Dayless: dayless,
			First: map[int64]int64{20600: 4}})
		if got := slices.Contains(kinds(qs), "no leg days"); got != (len(dayless) == 4) {
			t.Errorf("of no day: %v; asked %t: %v", dayless, got, kinds(qs))
		}
	}
}

// TestNoDates holds that a log whose trips have numbers and no dates is asked about, and one with dates is not.
func TestNoDates(t *testing.T) {
	const runs = "Day|Start|Stop|Rods|Knots\n1|06:00|08:00|4|8\n2|09:00|11:00|4|8\n8|06:10|09:00|4|7"
	rows := []Worked{{2, "1"}, {3, "2"}, {4, "8"}}
	for _, first := range []map[int64]int64{nil, {20600: 2}} {
		qs := asked(t, inferred(t, "Runs", runs), Stats{Stretches: 3, Hours: 7, Worked: rows, First: first})
		if got := slices.ContainsFunc(qs, func(q Question) bool { return q.About == "dates" }); got != (first == nil) {
			t.Errorf("dates %v; asked %t: %v", first, got, kinds(qs))
		}
	}
}

// TestLongDays holds that hours which add up to more on a day than anybody fishes are asked about.
func TestLongDays(t *testing.T) {
	const rows = "Date|Hr|Rods|Knots|Bites\n2026-06-03|6|4|8|1\n2026-06-03|7|4|8|0\n2026-06-03|8|4|8|0\n" +
		"2026-06-04|5|4|8|1"
	for day, want := range map[float64]bool{21: true, 9: false} {
		qs := asked(t, inferred(t, "Days", rows), Stats{Stretches: 4, Hours: day + 5,
			DayHours: map[string]float64{"1": day, "2": 5}})
		if got := slices.Contains(kinds(qs), "long day"); got != want {
			t.Errorf("%.0f hours on one day: asked %t: %v", day, got, kinds(qs))
		}
	}
}

// TestLuresAlone holds that a stretch which names one lure does not say how many lines were out, unless lures of one
// stretch have rows of their own.
func TestLuresAlone(t *testing.T) {
	const runs = "Date|Start|Stop|Knots|Hot " +
		"lure\n3/6/26|06:00|08:00|8|Plug\n4/6/26|09:00|11:00|8|Jet\n5/6/26|06:00|09:00|8|Jet"
	for same, want := range map[int]bool{0: true, 3: false} {
		qs := asked(t, inferred(t, "Runs", runs), Stats{Stretches: 3, Hours: 7, LureOnly: 3,
			LureOnlyH: 7, SameClock: same})
		if got := slices.Contains(kinds(qs), "no lines"); got != want {
			t.Errorf("%d rows of one clock: asked %t: %v", same, got, kinds(qs))
		}
	}
}

// TestScoreAsked holds that figures of which nothing says what they count are asked about.
func TestScoreAsked(t *testing.T) {
	const rows = "\n2025-06-01|06:00|11:00|5|2-1-1-0" +
		"\n2025-06-02|06:30|12:00|5|7-3-2-1\n2025-06-03|06:15|11:30|4|5-3-2-1"
	for text, want := range map[string]bool{"Day|In|Out|Rods|Score" + rows: true,
		"Score = bites-hooked-landed-released\n\nDay|In|Out|Rods|Score" + rows: false} {
		qs := asked(t, inferred(t, "Runs", text), Stats{Stretches: 3, Strikes: 14, ByCount: 14, Hours: 16})
		if got := slices.Contains(kinds(qs), "score"); got != want {
			t.Errorf("%s: asked %t, expected %t", text, got, want)
		}
	}
}

// TestStopMovesHours holds what rests on remarks that are set aside: hours on a stop, line-hours on lines.
func TestStopMovesHours(t *testing.T) {
	u := inferred(t, "Runs", "Date|In|Out|Lines|Bites|Remarks\n2025-06-01|06:00|11:00|5|2|calm, long swell\n"+
		"2025-06-02|06:30|12:00|5|7|birds at the bank\n2025-06-03|06:15|11:30|4|5|home early").Data()[0]
	s := Subject{Understood: u, Stats: &Stats{}}
	for reason, want := range map[string]string{record.OfStop + " of 40 minutes": hours[0],
		record.OfLines + ", 6": lines[0], "tells of 2 fish": listing[0]} {
		p := record.Problem{Column: "Remarks", Reason: reason, Pos: record.Pos{Row: 2, Col: 6}}
		if got := s.rests(p); len(got) == 0 || got[0] != want {
			t.Errorf("%s: %v, expected %s", reason, got, want)
		}
	}
}
