package normalise

import (
	"fmt"
	"slices"
	"strings"
	"testing"

	"wakeledger/pipeline/entry"
	"wakeledger/pipeline/plan"
	"wakeledger/pipeline/record"
	"wakeledger/pipeline/unit"
	"wakeledger/testdata/memory"
)

// TestStrikesBeneathAStretch holds that strikes on lines beneath a stretch that was not trolled
// are not trolled either, and that those of the next one are.
func TestStrikesBeneathAStretch(t *testing.T) {
	rows := log{
		text: "Trip|Date|In|Up|Knots|Bite|Fish|Result\n1|2026-06-03|06:00|07:00|7|06:40|wahoo|landed\n" +
			"|||||06:50|mahi|lost\n||08:00|09:00|chumming|08:10|mahi|landed\n" +
			"|||||08:30|mahi|lost\n||09:30|10:00|7|09:40|wahoo|lost\n|||||09:50|mahi|bite"}.read(t)
	for i, want := range []Skip{NotASkip, NotASkip, Elsewise, Elsewise, NotASkip, NotASkip} {
		if rows[i].skip != want {
			t.Errorf("row %d: %q, expected %q: %v", i, rows[i].skip, want, rows[i])
		}
	}
	if got := rows[5].values["outcome"]; got != "missed" {
		t.Errorf("a bite and no more is %q, expected missed", got)
	}
}

// TestFishNamedUnderACount holds that fish that are named where a count stands are counted.
func TestFishNamedUnderACount(t *testing.T) {
	const head, good = "Date|In|Up|Bites|Pulled off|Boated", "2026-06-03|06:00|08:00|4|1|2"
	for cell, want := range map[string]string{"1 yellowfin ~34#, 1 blackfin ~10#, 1 wahoo 20#": "3",
		"2 mahi 6.5 & 10#": "2", "the wahoo": "1", "0 + 4 snapper": "0", "2": "2"} {
		if got := (log{text: under(head, good, "2026-06-04|06:00|08:00|4|1|"+cell)}).last(
			t).values["landed_n"]; got != want {
			t.Errorf("%q: %q boated, expected %q", cell, got, want)
		}
	}
}

// TestSeveralInOneCell holds that two starts and two ends in one cell each are two stretches,
// and that other numbers of them are set aside.
func TestSeveralInOneCell(t *testing.T) {
	const text = "Date,In,Up,Lines,Knots\n2026-06-03,06:00,08:00,5,7\n2026-06-04,06:00,08:00,5,7\n2026-06-05,6:30 / " +
		"11:55,11:00 / 1:45,5,7\n2026-06-06,6:30 / 11:55,11:00,5,7\n" +
		"2026-06-07,6:30 / 8:00,7:30 / 9:00,3 / 5,14 / 7\n"
	x, u := only(t, csvOf(text))
	r, err := x.Reader(u, Settings{})
	if err != nil {
		t.Fatal(err)
	}
	var sides, aside []int
	for _, row := range u.Block.Rows {
		_, _, problems := r.Row(RowOf(row))
		sides, aside = append(sides, len(r.Sides())), append(aside, len(problems))
		if row.Num == 4 {
			if v := r.Sides()[0].Values; v["start_s"].Int != 42900 ||
				v["end_s"].Int != 49500 || v["lines_out"].Int != 5 {
				t.Errorf("the second stretch is %v, expected 11:55 to 13:45 with 5 lines", v)
			}
		}
		if row.Num == 6 {
			if v := r.Sides()[0].Values; v["lines_out"].Int != 3 || v["speed_kn"].Real != 14 {
				t.Errorf("the first stretch is %v, expected 3 lines at 14 kn", v)
			}
		}
	}
	for i, want := range []int{0, 0, 1, 0, 2} {
		if sides[i] != want {
			t.Errorf("row %d has %d further stretches, expected %d", i, sides[i], want)
		}
	}
	if aside[3] == 0 {
		t.Error("two starts and one end are read without a word")
	}
}

// TestLikeFish holds that a number beside a species makes as many strikes.
func TestLikeFish(t *testing.T) {
	x, u := only(t, csvOf("Date,Time,Fish,Result\n2026-06-03,06:40,wahoo,landed\n2026-06-03,07:40,albacore "+
		"x3,landed\n2026-06-03,09:10,albacore x3,landed\n2026-06-04,06:50,mahi,lost\n2026-06-04,08:50,mahi,missed\n"))
	r, err := x.Reader(u, Settings{})
	if err != nil {
		t.Fatal(err)
	}
	for i, row := range u.Block.Rows {
		r.Row(RowOf(row))
		if want := []int{0, 2, 2, 0, 0}[i]; len(r.Sides()) != want {
			t.Errorf("row %d: %d more, expected %d", i, len(r.Sides()), want)
		}
	}
}

// TestNoughtsAlone holds that a row in which formulas left noughts, and a stretch's hours of
// nought beside a start, are nothing.
func TestNoughtsAlone(t *testing.T) {
	rows := log{text: "Date|In|Up|Hours|Rods\n2026-06-03|06:00|08:00|2|5\n2026-06-04|06:00||0|5\n|||0|"}.read(t)
	if rows[1].values["duration_s"] != "" || rows[2].skip != Blank {
		t.Errorf("%v", rows)
	}
}

// TestSentTwice passes over an answer of a form that is the one above again.
func TestSentTwice(t *testing.T) {
	const head = "Timestamp|Day of the trip|Where|Crew|Lines in|Lines up|Rods|Knots|Bites|Missed|Lost|Wahoo " +
		"landed|Sea temp (F)|Remarks"
	a := "6/3/2026 18:00:00|2026-06-03|ledge|Ann|06:00|08:00|5|7|3|1|1|1|72|calm"
	rows := log{text: head + "\n" + a + "\n6/3/2026 18:02:00|2026-06-03|ledge|Ann|06:00|08:00|5|7|3|1|1|1|72|that " +
		"was sent twice, forget it\n" +
		"6/4/2026 18:02:00|2026-06-04|ledge|Ann|06:00|08:00|5|7|3|1|1|1|72|another day"}.read(t)
	for i, want := range []Skip{NotASkip, Again, NotASkip} {
		if rows[i].skip != want {
			t.Errorf("row %d: %q, expected %q", i, rows[i].skip, want)
		}
	}
}

// TestSaidTwice passes over a row whose remark says that it stands twice, though others stand between, and names one
// that is not to be counted where no row above is the same.
func TestSaidTwice(t *testing.T) {
	rows := log{text: "Timestamp|Date|Time|Rod|Result|Fish|Length (cm)|Notes\n" +
		"6/3/2026 18:00:00|2026-06-03|09:10|left short|boated|wahoo|104|\n" +
		"6/3/2026 18:01:00|2026-06-03|10:20|right long|pulled off|||\n" +
		"6/3/2026 18:04:00|2026-06-03|09:10|left short|boated|wahoo|104|sent twice, do not count\n" +
		"6/3/2026 18:05:00|2026-06-03|11:30|right long|boated|dorado|88|do not count the small one\n" +
		"6/3/2026 18:06:00|2026-06-03|11:40|left short|boated|wahoo|97|ne pas compter"}.read(t)
	for i, want := range []Skip{NotASkip, NotASkip, Again, NotASkip, NotASkip} {
		named := i == 2 || i == 4
		if rows[i].skip != want || (len(rows[i].problems) > 0) != named {
			t.Errorf("row %d: %q with %v, expected %q", i, rows[i].skip, rows[i].problems, want)
		}
	}
}

func csvOf(text string) memory.Sheet {
	return memory.Lines("", strings.ReplaceAll(strings.TrimSpace(text), ",", "|"))
}

// TestNotSailedForNoHours passes over a day not sailed whose hours are a nought.
func TestNotSailedForNoHours(t *testing.T) {
	rows := log{text: "Date|In|Up|Hours|Rods|Notes\n2026-06-03|06:00|08:00|2|5|calm\n2026-06-04|NA|NA|0|NA|not " +
		"sailed, wind\n2026-06-05|06:00|09:00|3|5|calm"}.read(t)
	if rows[1].skip != NotGone {
		t.Errorf("%v", rows[1])
	}
}

// TestDayOfWordsAlone passes over a day of a table of stretches whose words say that nobody fished, and a
// row of the same trip without a day is of the day above.
func TestDayOfWordsAlone(t *testing.T) {
	rows := log{text: "Passage|Date|Position|Course|Lines in|Lines up|Lines|Bites|What we caught\n" +
		"1|2026-06-03|27°35,4'N 017°34,1'W|235|06:00|08:00|2|1|14:42 wahoo 96 cm\n1|2026-06-04||240||||" +
		"|too rough\n1|2026-06-05||240|18:00|07:10 (next day)|2||\n1||||09:00|10:00|2||"}.read(t)
	if rows[1].skip != NotGone {
		t.Errorf("passed over as %q", rows[1].skip)
	}
	if v := rows[0].values; v["lat"] == "" || v["lon"] == "" {
		t.Errorf("a position with commas: %v", rows[0])
	}
	if v := rows[2].values; v["end_s"] != "112200" {
		t.Errorf("an end of the next day: %v", rows[2])
	}
	if v := rows[3].values; v["date"] != rows[2].values["date"] {
		t.Errorf("a row of the same trip without a day: %v", rows[3])
	}
}

// TestSetsAmongCounts: fish in columns of their own are among those that the row counts; where
// it counts strikes alone, they are taken out of their number.
func TestSetsAmongCounts(t *testing.T) {
	const text = "Date,Start,End,Knots,Lines,Strikes,Hooked,Kept,Missed,Lost,Put back,Fish 1,Fish 1 weight " +
		"(kg),Fish 2,Fish 2 weight (kg)\n" +
		"2026-06-02,06:00,08:00,8,5,2,1,1,1,0,0,wahoo,12,,\n" +
		"2026-06-03,06:00,08:00,7,5,3,2,2,1,0,0,wahoo,14,dorado,6\n" +
		"2026-06-04,06:00,08:00,8,5,3,,,,,,wahoo,14,dorado,6\n" +
		"2026-06-05,06:00,08:00,8,5,4,3,2,1,1,0,wahoo,9,wahoo,8\n2026-06-06,06:00,08:00,8,5,0,0,0,0,0,0,,,,\n"
	x, u := only(t, csvOf(text))
	r, err := x.Reader(u, Settings{})
	if err != nil {
		t.Fatal(err)
	}
	for i, row := range u.Block.Rows[:3] {
		want := []struct {
			strikes int64
			kind    plan.Kind
			sides   int
		}{{2, plan.Fish, 1}, {3, plan.Fish, 2}, {1, plan.Strikes, 2}}[i]
		_, _, problems := r.Row(RowOf(row))
		if len(problems) > 0 || r.value("strikes_n").Int != want.strikes || len(r.Sides()) != want.sides ||
			r.Sides()[0].Kind != want.kind {
			t.Errorf("row %d: %d strikes, beside them %+v, problems %v", row.Num,
				r.value("strikes_n").Int, r.Sides(), problems)
		}
	}
}

// TestNumberForgotten holds that beside numbered trips a day without a number is passed over only where
// nobody left the dock: a number that was forgotten loses no trip.
func TestNumberForgotten(t *testing.T) {
	text := "Trip|Date|Left|Back|Notes\n|2026-05-01|06:10|13:00|calm\n|2026-05-02|||at my sister's"
	for i := range 12 {
		text += fmt.Sprintf("\n%d|2026-05-%02d|06:00|14:00|", i+1, i+3)
	}
	rows := log{text: text}.read(t)
	if rows[0].skip != NotASkip || rows[1].skip != NotGone {
		t.Errorf("without a number: %q, %q", rows[0].skip, rows[1].skip)
	}
}

// TestStretchesThatGoOnAreOfTheTripAbove holds that stretches without a trip whose numbers go on are of
// the trip above, on another day too, where each trip begins with stretch 1; and that a trip's name
// written again ends no day.
func TestStretchesThatGoOnAreOfTheTripAbove(t *testing.T) {
	for name, c := range map[string]struct{ legs, trips string }{
		"from 1 each trip":      {"1 2 3 1 2 3 4 1 2", "A A A B B B B C C"},
		"on through the season": {"1 2 3 4 5 6 7 8 9", "A A - B B - - C -"},
	} {
		text, days := "Trip|Date|Set|In|Out|Lines|Bites", strings.Fields("1 1 2 5 5 6 6 9 9")
		for i, leg := range strings.Fields(c.legs) {
			trip, day := strings.Fields("A A - B B - - C -")[i], "2026-05-0"+days[i]
			if trip == "-" {
				trip = ""
			}
			if i > 0 && days[i] == days[i-1] {
				day = ""
			}
			text += fmt.Sprintf("\n%s|%s|%s|%02d:00|%02d:40|4|1", trip, day, leg, 8+i, 8+i)
		}
		rows := log{text: text}.read(t)
		for i, want := range strings.Fields(c.trips) {
			if want == "-" {
				want = ""
			}
			trip, date := rows[i].values["trip"], rows[i].values["date"]
			if trip != want || date != "2026-05-0"+days[i] {
				t.Errorf("%s, row %d: trip %q of %s, want %q of day %s", name, i+1, trip, date, want, days[i])
			}
		}
	}
}

// TestForgottenNumbersAreNoTripAbove holds that a day without a number, two days running, joins no trip above it.
func TestForgottenNumbersAreNoTripAbove(t *testing.T) {
	for name, numbers := range map[string][]string{
		"at the end":       {"1", "2", "3", "4", "5", "", ""},
		"the number jumps": {"1", "", "3", "", "", "6"},
	} {
		text := "Trip|Date|Left|Back"
		for i, n := range numbers {
			text += fmt.Sprintf("\n%s|2026-05-%02d|06:00|14:00", n, i+1)
		}
		for i, r := range (log{text: text}).read(t) {
			if got := r.values["trip"]; got != numbers[i] {
				t.Errorf("%s, row %d: trip %q, want %q", name, i+1, got, numbers[i])
			}
		}
	}
}

// TestNumbersGivenUp holds that a departure begins a trip where nobody wrote numbers any more: it
// is not of the last trip that has one, and its further rows are not either.
func TestNumbersGivenUp(t *testing.T) {
	text := "Trip|Date|Left dock|Lines in|Lines up|Lines|Knots|Species|Fate"
	for i := range 7 {
		number := ""
		if i < 3 {
			number = fmt.Sprint(2401 + i)
		}
		text += fmt.Sprintf("\n%s|2026-05-%02d|06:00|06:30|11:00|5|8|wahoo|landed\n|||||||mahi|lost", number, i+1)
	}
	for i, r := range (log{text: text}).read(t) {
		want := ""
		if i < 6 {
			want = fmt.Sprint(2401 + i/2)
		}
		if got := r.values["trip"]; got != want {
			t.Errorf("row %d: trip %q, want %q", i+1, got, want)
		}
	}
}

// TestGirthBesideLength: a girth that no fish of its length has is left out, with a word.
func TestGirthBesideLength(t *testing.T) {
	const text = "Date,Time,Species,Outcome,Length mm,Girth " +
		"mm,Remarks\n2026-06-02,07:10,wahoo,landed,935,390,\n2026-06-03,07:10,wahoo,landed,935,39,\n" +
		"2026-06-04,07:10,wahoo,landed,1100,,girth 410 mm\n2026-06-05,07:10,wahoo,landed,1110,420,\n"
	x, u := only(t, csvOf(text))
	r, err := x.Reader(u, Settings{})
	if err != nil {
		t.Fatal(err)
	}
	for i, want := range []float64{39, 0, 41, 42} {
		_, _, problems := r.Row(RowOf(u.Block.Rows[i]))
		if got := r.value("girth_cm").Real; got != want || (len(problems) > 0) != (want == 0) {
			t.Errorf("row %d: %v cm round, problems %v; expected %v cm", i+2, got, problems, want)
		}
	}
}

// TestFiguresOfToldStretches holds that speeds and lines parted as the times beside them are those of
// each stretch, that bites between two speeds are said to be of either, and that times that make no
// stretch are named.
func TestFiguresOfToldStretches(t *testing.T) {
	x,
		u := only(t,
		csvOf("Date,Times trolled,Lines,Knots,Bites,Landed\n2026-06-03,6:00-8:00,5,7,1,1\n2026-06-04,6:00-7:00 / "+
			"7:30-9:00,5 / 3,7 / 13,2,0\n"+
			"2026-06-05,6:00-7:00 / 7:30-9:00,5,7,1,1\n2026-06-06,6:00-8:00 / 8:30,5,7,0,0\n"+
			"2026-06-07,6:10-,5,7,0,0\n2026-06-08,6:00-7:00 / 7:30-9:00,5 / ?,? / 13,0,0\n"))
	r, err := x.Reader(u, Settings{})
	if err != nil {
		t.Fatal(err)
	}
	var aside []int
	for _, row := range u.Block.Rows {
		values, _, problems := r.Row(RowOf(row))
		aside = append(aside, len(problems))
		switch sides := r.Sides(); row.Num {
		case 3:
			if len(sides) != 2 || sides[0].Values["lines_out"].Int != 5 || sides[1].Values["lines_out"].Int != 3 ||
				sides[1].Values["speed_kn"].Real != 13 {
				t.Errorf("two stretches of two speeds are %v", sides)
			}
		case 4:
			if i := slices.IndexFunc(r.Fields(), func(f entry.Field) bool { return f.Name == "speed_kn" }); len(
				sides) != 2 || values[i].Real != 7 {
				t.Errorf("bites of two stretches of one speed have %v", values[i])
			}
		case 7:
			if len(sides) != 2 || sides[0].Values["lines_out"].Int != 5 || sides[1].Values["lines_out"].Known ||
				sides[0].Values["speed_kn"].Known || sides[1].Values["speed_kn"].Real != 13 {
				t.Errorf("two stretches of which one has no figure each are %v", sides)
			}
		case 6:
			if i := slices.IndexFunc(r.Fields(), func(f entry.Field) bool {
				return f.Name == "start_s"
			}); values == nil || values[i].Int != 22200 {
				t.Errorf("a stretch without an end is %v", values)
			}
		}
	}
	for i, want := range []bool{false, true, false, true, false, false} {
		if (aside[i] > 0) != want {
			t.Errorf("row %d: %d problems", i, aside[i])
		}
	}
}

// TestUnknownFishInAList holds that what became of something that is no fish known is named, where no
// count of the row stands for it.
func TestUnknownFishInAList(t *testing.T) {
	for heads, want := range map[string]int{"Date,Times,Lines,Knots,Catch": 1,
		"Date,Times,Lines,Knots,Landed,Catch": 0} {
		text, n := heads, ",2"
		if want > 0 {
			n = ""
		}
		for _, fish := range []string{"wahoo kept; zibble released", "wahoo kept; mahi lost",
			"2 wahoo kept", "tuna; mahi"} {
			text += "\n2026-06-03,6:00-8:00,5,7" + n + "," + fish
		}
		x, u := only(t, csvOf(text))
		r, err := x.Reader(u, Settings{})
		if err != nil {
			t.Fatal(err)
		}
		for i, row := range u.Block.Rows {
			_, _, problems := r.Row(RowOf(row))
			if i == 0 && len(problems) != want || i > 0 && len(problems) > 0 {
				t.Errorf("%s, row %d: %v", heads, i, problems)
			}
		}
	}
}

// TestLinesChanged holds that a stretch whose number of lines was changed at a time is one of each number,
// and that the time must lie within it.
func TestLinesChanged(t *testing.T) {
	x, u := only(t, csvOf("Date,In,Up,Rods,Knots,Bites\n2026-07-04,06:00,10:00,6 then 4 at "+
		"8:30,7,2\n2026-07-05,06:00,10:00,5,7,1\n2026-07-06,06:00,10:00,6 then 4 at "+
		"11:30,7,0\n2026-07-07,06:00,10:00,5,8,1\n2026-07-08,06:00,10:00,6,8,1\n2026-07-09,06:00,10:00,6,8,0\n"+
		"2026-07-10,06:00,10:00,4,8,0\n"))
	r, err := x.Reader(u, Settings{})
	if err != nil {
		t.Fatal(err)
	}
	for i, row := range u.Block.Rows {
		r.Row(RowOf(row))
		var got []int64
		for _, s := range r.Sides() {
			got = append(got, s.Values["start_s"].Int, s.Values["end_s"].Int, s.Values["lines_out"].Int)
		}
		if want := [][]int64{{21600, 30600, 6, 30600, 36000, 4}, nil, nil, nil, nil, nil, nil}[i]; !slices.Equal(got,
			want) || (r.value("start_s").Known != (want == nil)) {
			t.Errorf("row %d: %v, expected %v", row.Num, got, want)
		}
	}
}

// TestOthersBeside holds that fish under "other" count beside those of a species' column that cannot have them
// in it, each by what became of it.
func TestOthersBeside(t *testing.T) {
	const text = "Date|In|Up|Rods|Albacore|Let go|Lost|Other\n2026-06-03|06:00|10:00|5|2|1||1 bonito let go\n" +
		"2026-06-04|06:00|10:00|5|0||1|2 bonito let go\n2026-06-05|06:00|10:00|5|3|||1 dorado 4.1 kg\n" +
		"2026-06-06|06:00|10:00|5|0|||"
	x, u := only(t, memory.Lines("", text))
	r, err := x.Reader(u, Settings{})
	if err != nil {
		t.Fatal(err)
	}
	for i, row := range u.Block.Rows {
		r.Row(RowOf(row))
		want := [][2]int64{{2, 2}, {0, 2}, {4, 0}, {0, 0}}[i]
		if got := [2]int64{r.value("landed_n").Int, r.value("released_n").Int}; got != want || len(r.aside) > 0 {
			t.Errorf("row %d: kept and let go %v, expected %v, set aside %v", row.Num, got, want, r.aside)
		}
	}
}

// TestSpeciesAllLetGo holds that a species headed as all let go is let go beside others of another column, that "Best
// in." are inches, and that the figures under a sheet's total are none of its rows.
func TestSpeciesAllLetGo(t *testing.T) {
	const text = "Day|In|Up|Rods|Knots|Strikes|Missed|Wahoo|Dorado|Tuna|Marlin (all released)|Small tuna let go|" +
		"Best fish|Best lb (scale)|Best in.\n2026-06-03|06:00|10:00|5|7|4|1|2|1||||Wahoo|31|48.5\n" +
		"2026-06-04|06:00|10:00|5|7|3|0|||1|2||Tuna|12|27\n2026-06-06|06:00|11:00|5|7|3|1||1|||1|Dorado|18|41\n" +
		"2026-06-07|06:00|11:00|5|7|1|1||||||||\n\nTOTAL|||||11|3|2|2|1|2|1|||\nStrikes per hour|||||0.6\n" +
		"Ice at 3.20|||||12.8"
	x, u := only(t, memory.Lines("", text))
	r, err := x.Reader(u, Settings{})
	if err != nil {
		t.Fatal(err)
	}
	got := [][2]int64{}
	for _, row := range u.Block.Rows {
		r.Row(RowOf(row))
		got = append(got, [2]int64{r.value("landed_n").Int, r.value("released_n").Int})
	}
	want := [][2]int64{{3, 0}, {1, 2}, {1, 1}, {0, 0}, {0, 0}} // the total is passed over
	if !slices.Equal(got, want) {
		t.Errorf("kept and let go: %v, expected %v", got, want)
	}
	if b := u.Plan.Find("length_cm"); b == nil || b.Unit != unit.Inch {
		t.Errorf("best in.: %+v", b)
	}
}

// TestFirstDayOfTwo holds that a trip of two days is of the first of them, whichever column comes last.
func TestFirstDayOfTwo(t *testing.T) {
	for _, heads := range []string{"Date start|Date end", "Date départ|Date retour", "Start date|Return date"} {
		_, u := only(t, memory.Lines("", "Trip|"+heads+"|Crew|Rods|Hours|Strikes\n1|2026-06-03|2026-06-03|2|5|4|1\n"+
			"2|2026-06-05|2026-06-06|3|5|9|3\n3|2026-06-09|2026-06-09|2|5|5|0\n4|2026-06-12|2026-06-12|2|5|4|2"))
		first, _, _ := strings.Cut(heads, "|")
		if b := u.Plan.Find("date"); b == nil || b.Heading != first {
			t.Errorf("%s: %+v", heads, b)
		}
	}
}

// TestLengthByGirth holds that cells of a length and a girth are these whatever heads them, in the heading's unit.
func TestLengthByGirth(t *testing.T) {
	const rows = "\n2026-06-03|06:10|Wahoo|landed|120 x 50|\n2026-06-04|06:20|Tuna|landed|104x81|\n" +
		"2026-06-05|07:10|Tuna|lost||\n2026-06-06|08:00|Wahoo|landed|131 × 55|\n2026-06-07|08:20|Dorado|landed||9.5"
	for _, heading := range []string{"L x G (cm)", "Contorno y largo cm", "Size (cm)"} {
		x, u := only(t, memory.Lines("", "Date|Time|Fish|Result|"+heading+"|Scale kg"+rows))
		r, err := x.Reader(u, Settings{Units: "us"})
		if err != nil {
			t.Fatal(err)
		}
		r.Row(RowOf(u.Block.Rows[0]))
		if l, g := r.value("length_cm").Real, r.value("girth_cm").Real; l != 120 || g != 50 {
			t.Errorf("%s: %g by %g", heading, l, g)
		}
	}
}

// TestMeasuredRemarks holds that remarks which tell how heavy or long one fish was are of one of the fish
// that their row counts, where the log lists its fish nowhere else; one of a row without fish is set aside.
func TestMeasuredRemarks(t *testing.T) {
	const head = "Date,In,Up,Rods,Knots,Bites,Albacore boated,Notes\n"
	rows := "2026-06-03,06:00,10:00,5,7,3,2,a good one: 74 cm\n2026-06-04,06:00,10:00,5,7,1,1,one of 8.7 kg on the " +
		"scale\n2026-06-05,06:00,10:00,5,7,0,0,birds far off\n" +
		"2026-06-06,06:00,10:00,5,7,2,2,one of 81 cm\n2026-06-07,06:00,10:00,5,7,1,0,one of 80 cm went by\n"
	for text, want := range map[string][]int{head + rows: {1, 1, 0, 1, 0},
		strings.ReplaceAll(head+rows, "one of 81 cm", "81 cm 9.9 kg / 82 cm; calm"):     {1, 1, 0, 2, 0},
		strings.ReplaceAll(head+rows, "one of 81 cm", "albacore 81 cm; albacore 82 cm"): {0, 0, 0, 0, 0},
		strings.Replace(head+rows, "2026-06-07", "2026-06-06,11:00,12:00,5,7,1,1,albacore came to 8.9 on the scale\n"+
			"2026-06-07", 1): {1, 1, 0, 1, 1, 0}} {
		x, u := only(t, memory.Lines("", strings.ReplaceAll(strings.TrimSpace(text), ",", "|")))
		r, err := x.Reader(u, Settings{Units: "metric"})
		if err != nil {
			t.Fatal(err)
		}
		bites := []int64{3, 1, 0, 2, 1}
		if len(want) > len(bites) {
			bites = []int64{3, 1, 0, 2, 1, 1}
		}
		for i, row := range u.Block.Rows {
			r.Row(RowOf(row))
			if got := len(r.Sides()); got != want[i] || r.value("strikes_n").Int != bites[i] {
				t.Errorf("row %d: %d fish beside %d strikes, expected %d", row.Num, got,
					r.value("strikes_n").Int, want[i])
			}
		}
	}
}

// TestListsOfNamedFish holds that a measure in a list that begins with a fish's name is that of the fish, in whatever
// order, that a guess is none, and that a name which the row does not list, or a length that is not read, is told.
func TestListsOfNamedFish(t *testing.T) {
	const head, good = "Date,In,Up,Lines,Bites,Kept,Fish,Scale kg\n",
		"2026-06-03,06:00,08:00,4,2,2,2 wahoo,12.1 + 9\n2026-06-04,06:00,08:00,4,1,1,1 mahi,7.5\n" +
			"2026-06-05,06:00,08:00,4,2,2,1 mahi; 1 wahoo,8 + 14\n"
	for _, c := range []struct {
		fish, kg string
		want     string
		told     string
	}{
		{"1 mahi; 1 wahoo", "mahi 6.5 / wahoo 13", "mahi 6.5 wahoo 13", ""},
		{"1 mahi; 1 wahoo", "wahoo 13 / mahi 6.5", "mahi 6.5 wahoo 13", ""},
		{"1 mahi; 1 wahoo", "mahi about 6 / 13", "mahi wahoo 13", ""},
		{"1 mahi; 1 wahoo", "mahi 6.5 / albacore 13", "mahi 6.5 wahoo", "names a fish"},
		{"2 zibbles", "4.2 + 4.1", "", "2 measures for 0 fish"},
		{"1 mahi; 1 wahoo", "6.5 (scale) / 13", "mahi 6.5 wahoo 13", ""},
		{"1 mahi; 1 wahoo", "6.5 / hook 13", "mahi 6.5 wahoo", "no measure"},
		{"mahi cm 88; wahoo", "6.5 / 13", "mahi 88 6.5 wahoo 13", ""},
		{"2 mahi 88 cm 90 cm 91 cm", "6.5 / 7", "mahi 88 6.5 mahi 88 7", "names a length"},
	} {
		x, u := only(t, csvOf(head+good+good+"2026-06-08,06:00,08:00,4,2,2,"+c.fish+","+c.kg+"\n"))
		r, err := x.Reader(u, Settings{})
		if err != nil {
			t.Fatal(err)
		}
		var problems []record.Problem
		for _, row := range u.Block.Rows {
			_, _, problems = r.Row(RowOf(row))
		}
		var got []string
		for _, s := range r.Sides() {
			got = append(got, s.Values["species_logged"].Text)
			for _, name := range []string{"length_cm", "scale_kg"} {
				if v := s.Values[name]; v.Known {
					got = append(got, fmt.Sprint(v.Real))
				}
			}
		}
		if s := strings.Join(got, " "); s != c.want {
			t.Errorf("%q beside %q: %s, expected %s", c.kg, c.fish, s, c.want)
		}
		if (result{problems: problems}).told(c.told) != (c.told != "") {
			t.Errorf("%q beside %q: told %v", c.kg, c.fish, problems)
		}
	}
}

// TestRowsBelowBites holds that a remark with its title and a line of what was not trolled below a table of bites are
// no bites, and that lengths parted by commas and spaces are those of the fish of the row, and the best of one.
func TestRowsBelowBites(t *testing.T) {
	rows := log{text: "Date|Time|No.|Fish|Result|Inches\n2026-06-03|06:40|2|wahoo|landed|40, 44.5\n" +
		"2026-06-03|07:40|2|mahi|landed|33 best\n2026-06-04|07:10|1|mahi|lost|\n2026-06-04|07:20|1|mahi|missed|\n" +
		"||Sat night chunked: 2 yellowfin boxed (35 in)|||\n2026-06-04|07:30|1|mahi|landed|31\n" +
		"REMARKS||Belt squeals|||", set: Settings{Units: "us"}}.read(t)
	for i, want := range []Skip{NotASkip, NotASkip, NotASkip, NotASkip, Elsewise, NotASkip, Comment} {
		if rows[i].skip != want || len(rows[i].problems) > 0 {
			t.Errorf("row %d: %q, expected %q: %v", i, rows[i].skip, want, rows[i])
		}
	}
	for i, want := range map[int]string{0: "101.6", 1: "83.82", 5: "78.74"} {
		if got := rows[i].values["length_cm"]; !strings.HasPrefix(got, want) {
			t.Errorf("row %d: length %s, expected %s", i, got, want)
		}
	}
}

// TestFishOfSisterColumns holds that fish of one name in numbered columns are as many, and that one which two columns
// of other headings name is one where they do not measure it otherwise.
func TestFishOfSisterColumns(t *testing.T) {
	const row = "2026-06-03,06:00,09:00,5,7,4,%s,%s\n2026-06-04,06:00,09:00,5,7,4,tuna 80 cm,\n" +
		"2026-06-05,06:00,09:00,5,7,4,wahoo 90 cm,mahi released\n"
	for _, c := range []struct {
		heads, a, b string
		fish        int
	}{
		{"Fish 1,Fish 2", "mahi released", "mahi released", 2},
		{"Fish 1,Fish 2", "tuna 71 cm", "tuna 68 cm", 2},
		{"Fish,Dock weights", "1 wahoo", "wahoo 14.5 kg", 1},
		{"Fish,Dock weights", "wahoo 110 cm 9.5 kg", "wahoo 14.5 kg", 2},
	} {
		rows := log{text: strings.ReplaceAll("Date,Start,End,Lines,Knots,Strikes,"+c.heads+"\n"+
			fmt.Sprintf(row, c.a, c.b), ",", "|")}.read(t)
		if fish := rows[0].sides; fish != c.fish {
			t.Errorf("%s, %s and %s: %d fish, expected %d", c.heads, c.a, c.b, fish, c.fish)
		}
	}
}

// TestLengthInARemark holds that a fish has the length that its remark says was taped, beside a guess at its weight,
// and none that the remark guesses.
func TestLengthInARemark(t *testing.T) {
	rows := log{text: "Date|Time|Fish|Result|Kg|Remarks\n2026-06-03|06:40|tuna|landed|4.1|horquilla 61 cm\n" +
		"2026-06-03|07:40|tuna|landed||about 30 kg by eye, fork 105 cm\n2026-06-04|07:10|mahi|landed|5|no scale, la " +
		"furca 72,5 cm\n2026-06-04|07:20|mahi|landed|6|fork about 80 cm\n2026-06-05|07:20|mahi|landed|6|good one"}.
		read(t)
	for i, want := range []string{"61", "105", "72.5", "", ""} {
		if got := rows[i].values["length_cm"]; got != want {
			t.Errorf("row %d: length %q, expected %q: %v", i, got, want, rows[i])
		}
	}
}

// TestLostFishOfAList holds that a fish of a list that was lost is one of the bites which the row tells without
// names, and one of its own where these are named.
func TestLostFishOfAList(t *testing.T) {
	const head = "Date,In,Up,Lines,Strikes,Fish\n2026-06-03,06:00,08:00,4,one kept and one missed,wahoo 20 lb\n" +
		"2026-06-04,06:00,08:00,4,one lost and one missed,lost a mahi\n2026-06-05,06:00,08:00,4,missed two,\n"
	x, u := only(t, csvOf(head))
	r, err := x.Reader(u, Settings{})
	if err != nil {
		t.Fatal(err)
	}
	lost, named := 0, 0
	for _, row := range u.Block.Rows {
		r.Row(RowOf(row))
		for _, s := range r.Sides() {
			if s.Values["outcome"].Text == "lost" {
				lost++
				if s.Values["species_logged"].Text == "mahi" {
					named++
				}
			}
		}
	}
	if lost != 1 || named != 1 {
		t.Errorf("%d lost, %d of them named, expected one", lost, named)
	}
}

// TestGirthBesideABite holds that a remark tells the girth of the fish that its row names.
func TestGirthBesideABite(t *testing.T) {
	const text = "Date,Time,Event,Lines,Knots,Fish,Remarks\n2025-06-14,06:20,lines in,5,8,,\n" +
		",07:05,boated,,,wahoo,girth 57 cm\n,09:00,lines up,,,,\n"
	x, u := only(t, csvOf(text))
	r, err := x.Reader(u, Settings{})
	if err != nil {
		t.Fatal(err)
	}
	girth := 0.0
	for _, row := range u.Block.Rows {
		r.Row(RowOf(row))
		for _, s := range r.Sides() {
			girth += s.Values["girth_cm"].Real
		}
	}
	if girth != 57 {
		t.Errorf("a girth of %g cm", girth)
	}
}
