package phrase

import "testing"

// TestGroups holds what sentences say of several fish, or of one in several words.
func TestGroups(t *testing.T) {
	checkTold(t, []saying{
		{"Two wahoo on at 6:40, one in the cooler, one broke off", "wahoo landed 6:40; wahoo lost 6:40 (broke off)"},
		// one more than those in the cooler
		{"Two wahoo in the cooler, one broke off", "2 wahoo landed; lost (broke off)"},
		{"Four yellowfin, let three go", "yellowfin landed; 3 yellowfin released"},
		{"Kept 2 wahoo, lost 1", "2 wahoo landed; lost"},
		{"Yellowfin at the buoy 8:30: three bites, two boated, one spit the hook",
			"2 Yellowfin landed 8:30; Yellowfin lost 8:30 (spat hook)"},
		{"Yellowfin, yellowfin, skipjack, all in the box", "Yellowfin landed; yellowfin landed; skipjack landed"},
		{"Yellowfin, wahoo. Nothing else", "left: wahoo / Yellowfin"},
		{"One mahi 9:05, a bull, 41 inches, 17 lb", "mahi landed 104.1cm 7.7kg 9:05"},
		{"One yellowfin at 7 something, he let it go himself", "yellowfin released 7:00"},
		{"Wahoo 7:00 in the box. Mahi 7:30 came off. The wahoo was 33 lb", "Wahoo landed 15kg 7:00; Mahi lost 7:30"},
		{"Two mahi in the box, one of them 12 lb", "mahi landed; mahi landed 5.4kg"},
		{"Bite 10:40, nothing on it", "missed 10:40"},
	})
	for text, want := range map[string]string{
		"Then we drifted and cast poppers with the spinning rods, two mahi, kept them": "cast",
		"Trolled the edge, two mahi, kept them":                                        "",
	} {
		s := Tell(text, Defaults{})
		if len(s.Bites) != 1 || s.Bites[0].Method != want {
			t.Errorf("%q: %+v, expected fish by %q", text, s.Bites, want)
		}
	}
}

// TestStretchesInSentences holds how a diary tells when lines were out, and how many.
func TestStretchesInSentences(t *testing.T) {
	for text, want := range map[string]string{
		"Lines in 6:25, four, 7 kt. Up 11:30.": "6:25? to 11:30? 4 lines at 7",
		"Fished 6:25 to 8:40. Again 9:05 to 11:30, 4 lines. Did not note how many lines on the first.": "" +
			"6:25? to 8:40?; 9:05? to 11:30? 4 lines",
		"Let out at 6:25, picked up 8:40, 7 kt. Third spot 9:05 - 11:30, 8 kt. 4 lines all day.": "" +
			"6:25? to 8:40? 4 lines at 7; 9:05? to 11:30? 4 lines at 8",
		"Lines in 6:25. Six. 8 kt till 9:00, then 9.5 kt and up at 11:30.": "6:25? to 9:00? 6 lines at 8; " +
			"9:00? to 11:30? 6 lines at 9.5",
		"Six lines 6:25, 8 kt. Glassy. Up 11:30.":                                 "6:25? to 11:30? 6 lines at 8",
		"Lines in 6:25 to 11:30, 7 kt. Three or four lines, who knows.":           "6:25? to 11:30? at 7",
		"Lines in 6:25, 7 kt, up 11:30, five lines. 7:10 two rods go off, tunas.": "6:25? to 11:30? 5 lines at 7",
	} {
		if got := showStretches(Stretches(text)); got != want {
			t.Errorf("%q\n  read %q\n  want %q", text, got, want)
		}
	}
}

// TestHoursInSentences holds that hours of trolling alone in their sentence are a stretch, to which a sentence of lines
// and speed right behind belongs.
func TestHoursInSentences(t *testing.T) {
	for text, lines := range map[string]int{
		"Trolled 2 1/2 hrs. 4 lines, 8 kn. Bite: wahoo came off. Bite: mahi in the box.": 4,
		"Lines in the water 2 1/2 h. 8 kn. Bite: wahoo boated.":                          -1,
		"Trolled 2.5 hours. 8 kn. No bites all day.":                                     -1,
	} {
		all := Stretches(text)
		if len(all) != 1 || all[0].Hours != 2.5 || all[0].SpeedLo != 8 || all[0].Lines != lines {
			t.Errorf("%q: %+v", text, all)
		}
	}
}
