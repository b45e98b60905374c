package normalise

import (
	"strings"
	"testing"

	"wakeledger/pipeline/meaning"
	"wakeledger/testdata/memory"
)

// TestFishLetGoInWords holds that fish that only the remarks say were let go count beside those
// kept, as far as fish were hooked.
func TestFishLetGoInWords(t *testing.T) {
	rows := log{text: "Date|Hours|Rods|Bites|Hooked|In the box|Remarks\n2026-06-03|4|5|4|3|2|2 wahoo 20 & 31 lb. " +
		"Turned one mahi loose. Came home wet and glad of it.\n" +
		"2026-06-04|5|5|2|1|1|Blackfin 9 lb. Sailfish released, and another sailfish released, so we say at the " +
		"bar.\n2026-06-05|5|5|0|0|0|Nada, and the bilge pump stuck on again all day long."}.read(t)
	for i, want := range []string{"1", "", ""} {
		if got := rows[i].values["released_n"]; got != want {
			t.Errorf("row %d: %q let go, expected %q: %v", i, got, want, rows[i])
		}
	}
}

// TestStretchWithoutAnEnd holds that the strikes under a stretch whose end nobody wrote down
// have its speed, and those of the next one have not.
func TestStretchWithoutAnEnd(t *testing.T) {
	rows := log{
		text: "Trip|Date|In|Up|Knots|Bite|Fish|Result\n1|2026-06-03|06:00||7|06:40|wahoo|landed\n" +
			"|||||07:10|mahi|lost\n||08:00|09:00|9|08:10|mahi|landed\n|||||08:30|mahi|lost\n" +
			"2|2026-06-04|06:00|08:00|8|06:40|wahoo|landed\n|||||07:10|mahi|lost"}.read(t)
	for i, want := range []string{"7", "7", "9", ""} {
		if got := rows[i].values["speed_kn"]; got != want {
			t.Errorf("row %d: speed %q, expected %q: %v", i, got, want, rows[i])
		}
	}
}

// TestBoatThatLayStill holds that a row whose speed is that the boat lay still is no stretch.
func TestBoatThatLayStill(t *testing.T) {
	rows := log{
		text: "Date|Start|End|Knots|Rods\n2026-06-03|06:00|08:00|7|5\n2026-06-03|08:10|09:00|anchored|\n" +
			"2026-06-03|09:10|11:00|8|5"}.read(t)
	if rows[0].skip != NotASkip || rows[1].skip != Elsewise || rows[2].skip != NotASkip {
		t.Errorf("%v", rows)
	}
	short := log{
		text: "Slip|Date|Start|End|Knots|Rods\n1|2026-06-03|06:00|08:00|7|5\n2|2026-06-05|08.10|09.00|anch.|\n" +
			"2|2026-06-05|9.10|11.00|8|4\n3|2026-06-07|9.10|11.00|8|5\n||11.15|13.00|8|7"}.read(t)
	for i, want := range []string{"1 5", "", "2 4", "3 5", "7"} {
		v := short[i].values
		if got := strings.TrimSpace(v["trip"] + " " + v["lines_out"]); (short[i].skip == Elsewise) != (want == "") ||
			want != "" && got != want {
			t.Errorf("row %d: trip and lines %q, skipped %q, expected %q", i, got, short[i].skip, want)
		}
	}
}

// TestPoundsAndOunces holds that pounds and ounces of two columns are one weight.
func TestPoundsAndOunces(t *testing.T) {
	rows := log{text: "Date|Fish|lb|oz\n2026-06-03|wahoo|41|8\n2026-06-04|wahoo|38|\n2026-06-05|dorado||15\n" +
		"2026-06-06|dorado|9|2"}.read(t)
	for i, want := range []string{"18.824", "17.236", "0.425", "4.139"} {
		if got := rows[i].values["scale_kg"]; !strings.HasPrefix(got, want) {
			t.Errorf("row %d: %q kg, expected %q", i, got, want)
		}
	}
}

// TestWeightFromNoScale holds that a weight that the column beside it says was worked out is
// not logged.
func TestWeightFromNoScale(t *testing.T) {
	rows := log{text: "Date|Species|Length (cm)|Weight (kg)|How " +
		"weighed\n2026-06-03|wahoo|120|14|scale\n2026-06-03|wahoo|118|13|by formula\n2026-06-04|wahoo|110|9|est by " +
		"eye\n2026-06-04|wahoo|112|10|scale"}.read(t)
	for i, want := range []string{"14", "", "", "10"} {
		if got := rows[i].values["scale_kg"]; got != want {
			t.Errorf("row %d: %q kg, expected %q", i, got, want)
		}
	}
}

// TestFateForAFish holds that a fate which stands where other rows have their fish is the bite's, where no column of
// its own says what became of it.
func TestFateForAFish(t *testing.T) {
	rows := log{text: "Date|Species|Length (cm)|Kept|Lure\n2026-06-03|wahoo|120|Y|jet\n2026-06-03|lost|||jet\n" +
		"2026-06-04|missed|||plug\n2026-06-04|mahi|88|N|plug"}.read(t)
	for i, want := range []string{"", "lost", "missed", ""} {
		got, fish := rows[i].values["outcome"], rows[i].values["species_logged"]
		if got != want || (fish == "") != (want != "") {
			t.Errorf("row %d: outcome %q, expected %q; a fish %q", i, got, want, fish)
		}
	}
}

// TestTickedWeight holds that a tick under a word for a guess, or for the scale, says it of the weight beside it, and
// that a blank beside the ticks of the scale leaves it unsaid.
func TestTickedWeight(t *testing.T) {
	const fish = "Date|Species|Length (cm)|Weight (kg)|%\n2026-06-03|wahoo|120|14|x\n2026-06-03|wahoo|118|13|\n" +
		"2026-06-04|wahoo|110|9|x\n2026-06-04|wahoo|112||"
	for head, want := range map[string]string{"Est": " 13  ", "On scale": "14  9 "} {
		rows := log{text: strings.Replace(fish, "%", head, 1)}.read(t)
		var got []string
		for i := range rows {
			got = append(got, rows[i].values["scale_kg"])
		}
		if g := strings.Join(got, " "); g != want {
			t.Errorf("%s: %q, expected %q", head, g, want)
		}
	}
}

// TestLinesUp holds that a row with no lines out is no trolling, whatever hours stand beside it, and
// that one with a bite stays.
func TestLinesUp(t *testing.T) {
	rows := log{text: "Date|Start|End|Lines|Speed " +
		"(kn)|Strikes|Landed\n2026-06-03|06:00|08:00|4|8|1|1\n2026-06-03|08:00|09:00|0|24|0|0\n" +
		"2026-06-03|09:00|10:00|5|8|1|0\n2026-06-03|10:00|11:00|0|8|1|0"}.read(t)
	if rows[0].skip != NotASkip || rows[1].skip != Elsewise || rows[2].skip != NotASkip || rows[3].skip != NotASkip {
		t.Errorf("%+v", rows)
	}
	// a stretch with a number that counts no bites has none in another table either
	rows = log{text: "Date|Leg|Start|End|Lines|Speed (kn)|Strikes|Landed\n2026-06-03|1|06:00|08:00|0|24|0|0\n" +
		"2026-06-03|2|08:00|09:00|4|8|0|0\n2026-06-03|3|09:00|10:00|0|8||"}.read(t)
	if rows[0].skip != Elsewise || rows[1].skip != NotASkip || rows[2].skip != NotASkip {
		t.Errorf("numbered stretches: %+v", rows)
	}
}

// TestOtherHalfOfTheDay holds that an afternoon of another way of fishing leaves the morning, beside which
// its columns stand, trolled.
func TestOtherHalfOfTheDay(t *testing.T) {
	rows := log{text: "Date|AM In|AM Up|AM Rods|AM Kts|AM Strikes|PM In|PM Up|PM Rods|PM Kts|PM Strikes\n" +
		"2026-06-03|06:00|08:00|4|8|1|13:00|15:00|5|7|2\n2026-06-04|06:10|08:20|4|8|0|||bottom||\n" +
		"2026-06-05|||bottom|||||||\n2026-06-06|06:00|09:00|5|8|1|13:10|15:00|4|7|0\n" +
		"2026-06-07|06:00|09:00|4|8|1|||||"}.read(t)
	for i, want := range []Skip{NotASkip, NotASkip, Elsewise, NotASkip, NotASkip} {
		if rows[i].skip != want {
			t.Errorf("row %d: %q, expected %q", i, rows[i].skip, want)
		}
	}
}

// TestDayOfAnotherWay holds that what stands below the first row of a day that was not trolled was not
// either, and that a day told in words of drifting alone is none.
func TestDayOfAnotherWay(t *testing.T) {
	rows := log{
		text: "Date|In|Out|Lines|Knots|Time|Fish|Result|Notes\n2026-06-03|06:00|09:00|5|7|06:40|wahoo|landed|\n" +
			"|||||07:10|mahi|lost|\n" +
			"2026-06-04||||||rooster|released|beach day, casting only, no trolling\n|||||08:10|rooster|lost|\n" +
			"2026-06-05|06:00|09:00|4|7|06:40|wahoo|landed|\n|||||07:20|wahoo|landed|\n" +
			"2026-06-06|||||06:30|mahi|landed|on livebait, not the lures\n|||||07:20|wahoo|landed|"}.read(t)
	for i, want := range []Skip{NotASkip, NotASkip, Elsewise, Elsewise, NotASkip, NotASkip, Elsewise, NotASkip} {
		if rows[i].skip != want {
			t.Errorf("row %d: %q, expected %q", i, rows[i].skip, want)
		}
	}
}

// TestDayOnTheBottom holds that a day without hours all of whose fish were taken in another way was not trolled.
func TestDayOnTheBottom(t *testing.T) {
	rows := log{text: "Date|Hours|Rods|Knots|What happened\n" +
		"2026-06-03|3.5|5|7|10:30 wahoo on, came off. 11:05 dorado landed, 108 cm\n" +
		"2026-06-04|||| bottom: snapper 4.1 kg. bottom: snapper\n" +
		"2026-06-05|4|4|7|10:36 skipjack landed, 61 cm. 11:31 missed one on the shotgun"}.read(t)
	for i, want := range []Skip{NotASkip, Elsewise, NotASkip} {
		if rows[i].skip != want {
			t.Errorf("row %d: %q %v, expected %q", i, rows[i].skip, rows[i].problems, want)
		}
	}
}

// TestStretchWithoutCounts holds that hours for which a captain who writes speeds and counts wrote neither, with words
// for another way of fishing, were not trolled; without such words, or with a count, they were.
func TestStretchWithoutCounts(t *testing.T) {
	rows := log{text: "Date|Lines in|Lines up|Rods|Knots|Bites|Boated|Where|Comments\n" +
		"2026-06-03|06:00|09:00|5|7|2|1|the ridge|\n2026-06-03|09:30|11:00|3||||bottom after lunch|\n" +
		"2026-06-04|06:00|09:00|5|7|0|0|the ridge|\n2026-06-04|09:30|11:00|||||the bay|anchored, 3 snapper\n" +
		"2026-06-05|06:00|09:00|5||2|1|bottom of the canyon|\n2026-06-06|06:00|09:00|5||||the ridge|forgot the rest\n" +
		"2026-06-07|06:00|09:00|5|8|1|1|the ridge|"}.read(t)
	for i, want := range []Skip{NotASkip, Elsewise, NotASkip, Elsewise, NotASkip, NotASkip, NotASkip} {
		if rows[i].skip != want {
			t.Errorf("row %d: %q, expected %q", i, rows[i].skip, want)
		}
	}
}

// TestFishBelowAStretch holds that a fish on a row of its own below a stretch, whose remark is a word that may be a way
// of fishing, is one of the stretch: "vif", lively.
func TestFishBelowAStretch(t *testing.T) {
	rows := log{text: "Date|Technique|Début|Fin|Lignes|Vitesse|Touches|Sort|Espèce|Longueur|Remarques\n" +
		"2026-06-03|traîne|06:00|09:00|5|7|2|relâché|thon rouge|95|\n|||||||relâché|thon rouge|88|vif\n" +
		"2026-06-04|traîne|06:00|09:00|5|7|0||||\n2026-06-05|traîne|06:00|09:00|5|7|1|pris|germon|70|"}.read(t)
	for i, r := range rows {
		if r.skip != NotASkip {
			t.Errorf("row %d: %q", i, r.skip)
		}
	}
}

// TestMethodInBrackets holds that a fish with another way of fishing in brackets was not trolled.
func TestMethodInBrackets(t *testing.T) {
	rows := log{text: "Date|Time|Species|Length (cm)|Result\n2026-06-03|06:40|wahoo " +
		"(drifting)|120|landed\n2026-06-03|07:10|wahoo|118|landed\n2026-06-04|07:10|mahi (bull)|100|landed\n" +
		"2026-06-05|07:10|tuna (jig)|70|landed"}.read(t)
	for i, want := range []Skip{Elsewise, NotASkip, NotASkip, Elsewise} {
		if rows[i].skip != want {
			t.Errorf("row %d: %q, expected %q", i, rows[i].skip, want)
		}
	}
}

// TestPauseInWords holds that what a remark says of lines that were up is taken off the stretch around
// it, and said, and that times outside of it are not.
func TestPauseInWords(t *testing.T) {
	rows := log{text: "Date|Start|End|Lines|Knots|Remarks\n2026-06-03|06:00|12:00|4|6|Lines up 0930-1015 for weed. " +
		"1 mahi kept.\n2026-06-04|06:00|09:00|4|6|stopped 11:30-12:00, one wahoo lost before\n" +
		"2026-06-05|06:00|09:00|4|6|2 tuna kept\n2026-06-06|06:00|09:00|4|6|nothing"}.read(t)
	for i, want := range []string{"2700", "", "", ""} {
		if got := rows[i].values["stopped_s"]; got != want {
			t.Errorf("row %d: %q s without lines, expected %q", i, got, want)
		}
	}
}

// TestLinesOfAnotherKind holds that a row whose lines or times name another way of fishing is no
// stretch, and neither are its fish.
func TestLinesOfAnotherKind(t *testing.T) {
	rows := log{text: "Date|Times|Lines|Knots|Bites in words\n2026-06-03|06:00-08:00|5|7|wahoo " +
		"kept\n2026-06-03|08:30-09:30|2 livebait drift||tuna kept\n2026-06-04|06:00-08:00|4 flat|7|nil\n" +
		"2026-06-05|bottom all day|||3 snapper kept\n2026-06-06|06:00-08:00|jig||mahi " +
		"kept\n2026-06-07|06:00-09:00|5|8|mahi lost"}.read(t)
	for i, want := range []Skip{NotASkip, Elsewise, NotASkip, Elsewise, Elsewise, NotASkip} {
		if rows[i].skip != want {
			t.Errorf("row %d: %q, expected %q", i, rows[i].skip, want)
		}
	}
}

// TestSpeedWithoutHours holds that bites told in words on a row whose hours nobody wrote down have the
// row's speed, and that those of other rows take that of their stretch.
func TestSpeedWithoutHours(t *testing.T) {
	x, u := only(t, csvOf("Date,Start,End,Lines,Knots,What happened\n2026-06-03,06:00,12:00,4,6,1 mahi "+
		"kept\n2026-06-04,,,4,7,one wahoo lost\n2026-06-05,06:00,09:00,4,6,2 tuna "+
		"kept\n2026-06-06,06:00,09:00,4,6,nothing"))
	y, told := only(t, memory.Lines("", "Date|What happened\n2026-06-03|In 0600 out 1100. 5 rods 6 kn. 1 mahi kept\n"+
		"2026-06-04|In 0545. 5 rods 7 kn. One wahoo lost. No idea when we quit\n"+
		"2026-06-05|In 0600 out 1100. 5 rods 6 kn. nothing"))
	speeds(t, y, told)
	speeds(t, x, u)
}

// speeds holds that the second row alone has bites with a speed of their own, of 7 knots.
func speeds(t *testing.T, x Taken, u *meaning.Understood) {
	t.Helper()
	r, err := x.Reader(u, Settings{})
	if err != nil {
		t.Fatal(err)
	}
	for i, row := range u.Block.Rows {
		r.Row(RowOf(row))
		for _, s := range r.Sides() {
			if got := s.Values["strike_speed_kn"]; got.Known != (i == 1) || i == 1 && got.Real != 7 {
				t.Errorf("row %d: a bite at %v", i, got)
			}
		}
	}
}

// TestOtherWayAmongRemarks holds that a bite whose remark names another way of fishing between its commas was not
// trolled.
func TestOtherWayAmongRemarks(t *testing.T) {
	rows := log{text: "Date|Hours|Rods|Knots|Fish|Result|Remarks\n2026-06-03|4|5|7|wahoo|landed|rain, calm later\n" +
		"2026-06-03||||snapper|landed|bottom, on the way home\n2026-06-03||||wahoo|lost|bottom of the tide, at noon\n" +
		"2026-06-04|3|4|7|mahi|landed|\n2026-06-04||||mahi|released|at the buoy line, drifting\n" +
		"2026-06-05|5|4|7|mahi|lost|drifting weeds, rain"}.read(t)
	for i, want := range []Skip{NotASkip, Elsewise, NotASkip, NotASkip, Elsewise, NotASkip} {
		if rows[i].skip != want {
			t.Errorf("row %d: %q, expected %q", i, rows[i].skip, want)
		}
	}
}
