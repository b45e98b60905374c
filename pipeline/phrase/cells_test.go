package phrase

import (
	"fmt"
	"math"
	"strings"
	"testing"

	"wakeledger/pipeline/words"
)

func TestFishList(t *testing.T) {
	lb := Defaults{WeightUnit: "lb", Scaled: true}
	for _, c := range []struct {
		text string
		d    Defaults
		want string
	}{
		{"wahoo 51in 29lb; wahoo 49in 24lb", Defaults{}, "wahoo 129.5cm 13.2kg; wahoo 124.5cm 10.9kg"},
		{`BFT 48.5" x 37.5 girth, 84 lb on the scale`, Defaults{}, "BFT 123.2cm x95.2 38.1kg*"},
		{`mahi 31-1/2" 9 lb, mahi 28-3/4"`, Defaults{}, "mahi 80cm 4.1kg; mahi 73cm"},
		{"atum 88 cm, à volta 61 cm", Defaults{}, "atum 88cm x61"}, {"atum à volta de 30 kg", Defaults{}, "atum 30kg~"},
		{"weighed 3: 21, 19.5 and 24 lb", Defaults{}, "9.5kg*; 8.8kg*; 10.9kg*"},
		{"a good one 41 in, 33.5 on the scale", Defaults{ScaleUnit: "lb"}, "104.1cm 15.2kg*"},
		{"thon 29,4 kg au retour", Defaults{}, "thon 29.4kg"}, {"1 a'u 200 lb", Defaults{}, "a'u 90.7kg"},
		{"wahoo 88 let go; mahi 61", Defaults{LengthUnit: "cm"}, "wahoo released 88cm; mahi 61cm"},
		{"wahoo 3 let go", Defaults{LengthUnit: "cm"}, "wahoo; 3 released"},
		{"Wahoo 47.4, blackfin ~7", lb, "Wahoo 21.5kg*; blackfin 3.2kg~"},
		{"Blackfin, mahi ~11", lb, "Blackfin; mahi 5kg~"},
		{"king 18.7, wahoo (rel), Wahoo ~31", lb, "king 8.5kg*; wahoo released; Wahoo 14.1kg~"},
		{"Blackfin (rel)", Defaults{}, "Blackfin released"}, {"Sail (rel)", lb, "Sail released"}, {"hoo", lb, "hoo"},
		{"striped marlin T/R ~80kg", Defaults{Scaled: true}, "striped marlin released 80kg~"},
		{"34.5 in yft", Defaults{}, "yft 87.6cm"}, {"42.5 in bft", Defaults{}, "bft 108cm"},
		{"Blue marlin rel c.100 kg", Defaults{}, "Blue marlin released 100kg~"},
		{"Bigeye 50,1 kg, Blue marlin rel c.100 kg, Skipjack", Defaults{Scaled: true},
			"Bigeye 50.1kg*; Blue marlin released 100kg~; Skipjack"},
		{"1 wahoo 30 lb; on the jig: 2 amberjack", Defaults{}, "wahoo 13.6kg"},
		{"2 mahi. 4 snapper (not in the count)", Defaults{}, "2 mahi"},
		{"listado 3,1 kg 58 cm", Defaults{}, "listado 58cm 3.1kg"},
		{"1 patudo 120 cm (cinta 90) 33 kg", Defaults{}, "patudo 120cm x90 33kg"},
		{"wahoo, girth 24, 30 lb", Defaults{LengthUnit: "in"}, "wahoo x61 13.6kg"},
		{"wahoo cm 98 kg 7,1; dorado cm 70 rilasciato", Defaults{},
			"wahoo 98cm 7.1kg; dorado released 70cm"},
		{"tonno cm 120, giro 80", Defaults{}, "tonno 120cm x80"},
		{"albacore kg 12,1; wahoo 90 cm kg 5,2; albacore ~9 kg", Defaults{},
			"albacore 12.1kg; wahoo 90cm 5.2kg; albacore 9kg~"},
		{"2 albacore, 1 BFT 138#", Defaults{}, "2 albacore; BFT 62.6kg"},
		{"albacore 13.1kg, albacore 6kg", Defaults{}, "albacore 13.1kg; albacore 6kg"},
		{`mako 6'2"`, Defaults{}, "mako 188cm"}, {"Wahoo 5 ft 3 in, 41 lb", Defaults{}, "Wahoo 160cm 18.6kg"},
		{"yellowfin 36 in, 37 lb; mahi 30\"", Defaults{}, "yellowfin 91.4cm 16.8kg; mahi 76.2cm"},
		{"mahi 30\"\nlongfin 31\"", Defaults{}, "mahi 76.2cm; longfin 78.7cm"},
		{"YFT 40 in, 38 lb\nYFT 33 in released", Defaults{}, "YFT 101.6cm 17.2kg; YFT released 83.8cm"},
		{"YFT tagged (est 20 kg), dorado 5 kg", Defaults{}, "YFT released 20kg~; dorado 5kg"},
		{"blue marlin tagged (est 110 kg), wahoo 25.5 kg, dogtooth", Defaults{},
			"blue marlin released 110kg~; wahoo 25.5kg; dogtooth"},
		{"YFT 24.5 kg, wahoo 12 kg, bonito, birds at the drop off", Defaults{}, "YFT 24.5kg; wahoo 12kg; bonito"},
		{"sailfish tagged, striped marlin tagged", Defaults{}, "sailfish released; striped marlin released"},
		{"southern bluefin T/R ~20kg, good bait up", Defaults{}, "southern bluefin released 20kg~"},
		{"skippy, dirty water", Defaults{}, "skippy"}, {"lost the teaser", Defaults{}, ""},
		{"sloppy", Defaults{}, ""}, {"", Defaults{}, ""},
		{"wahoo; wahoo 44 in", Defaults{}, "wahoo; wahoo 111.8cm"}, {"whaoo", Defaults{}, "whaoo"},
		{"cuda 10lb", Defaults{}, "cuda 4.5kg"},
		{"YFT 70", lb, "YFT 31.8kg*"}, {"Dodo 33.5\"", Defaults{}, "Dodo 85.1cm"},
		{"striped marlin 69.8kg", Defaults{}, "striped marlin 69.8kg"},
		{"wahoo 51 29", Defaults{LengthUnit: "in", WeightUnit: "lb"}, "wahoo 129.5cm 13.2kg"},
		{"wahoo 29 51", Defaults{LengthUnit: "in", WeightUnit: "lb"}, "wahoo 129.5cm 13.2kg"},
		{"3 mahi 8, 10 and 12 lb", Defaults{}, "mahi 3.6kg; mahi 4.5kg; mahi 5.4kg"},
		{"T. alalunga 94.5 cm", Defaults{}, "T. alalunga 94.5cm"}, {"Thunnus thynnus FL 152 cm, 69,7 kg", Defaults{},
			"Thunnus thynnus 152cmFL 69.7kg"},
		{"atún rojo 1,52 m", Defaults{}, "atún rojo 152cm"}, {"2 x YFT 20kg", Defaults{}, "2 YFT 20kg"},
		{"bluefin 118 cm about 30 let go", Defaults{WeightUnit: "kg"}, "bluefin released 118cm 30kg~"},
		{"mahi ~6 let go", Defaults{WeightUnit: "kg"}, "mahi released 6kg~"},
		{"kingfish 96 cm; something, spat it at the boat", Defaults{}, "kingfish 96cm"},
		{"mahi 61 cm / mahi 88 cm, 7,2 kg / Fehlbiss", Defaults{}, "mahi 61cm; mahi 88cm 7.2kg"},
		{"kingfish 96 cm; qualcosa, perso sotto la barca", Defaults{}, "kingfish 96cm"},
		{"kingfish / lost", Defaults{}, "kingfish lost"},
		{"mahi grabbed by a shark", Defaults{}, "mahi lost"},
		{"wahoo 40-50 lb", Defaults{Scaled: true}, "wahoo 20.4kg~"}, {"Dorado 6", lb, "Dorado 2.7kg*"},
	} {
		if got := showList(FishList(c.text, c.d)); got != c.want {
			t.Errorf("%q\n  read %q\n  want %q", c.text, got, c.want)
		}
	}
}

// A weight that is a guess is never one from a scale.
func TestGuessIsNotScaled(t *testing.T) {
	for _, hedge := range []string{"~80 lb", "about 80 lb", "80 lb est", "80lb?", "maybe 80 lb", "(est 80 lb)",
		"80 lb by eye", "c. 80 lb", "80 lbs or so", "unas 80 lb", "environ 80 lb", "circa 80 lb",
		"ca. 80 lb", "80ish lb", "80 lb ish"} {
		fish := FishList("YFT "+hedge, Defaults{Scaled: true})
		if len(fish) != 1 || fish[0].Kg < 36 || !fish[0].Guess || fish[0].Scaled {
			t.Errorf("%q is read as %+v", hedge, fish)
		}
	}
	if fish := FishList("YFT 80 lb", Defaults{Scaled: true}); len(fish) != 1 || fish[0].Guess || !fish[0].Scaled {
		t.Errorf("a plain weight is read as %+v", fish)
	}
}

func showClock(c Clock) string {
	s := fmt.Sprintf("%d:%02d", c.Seconds/3600, c.Seconds/60%60)
	if !c.Sure {
		s += "?"
	}
	return s
}

// TestEndUnknown holds that a question mark in the place of the end leaves a stretch open, and nothing else does.
func TestEndUnknown(t *testing.T) {
	for text, want := range map[string]bool{"lines in 6:20, up ??, 4 lines": true, "in 0710 and out at ?": false,
		"start fishing 7:05 stop ? 6 rods": true, "lines in 6:20, up 9:10": false, "lines in 6:20, 4 lines?": false} {
		all := Stretches(text)
		if got := len(all) == 1 && all[0].Open && all[0].HasStart; got != want {
			t.Errorf("%q: open is %v, expected %v: %+v", text, got, want, all)
		}
	}
}

func showStretches(ss []Stretch) string {
	var out []string
	for _, s := range ss {
		var p []string
		if s.HasStart {
			p = append(p, showClock(s.Start))
		}
		if s.HasEnd {
			p = append(p, "to "+showClock(s.End))
		}
		if s.Lines >= 0 {
			p = append(p, fmt.Sprint(s.Lines, " lines"))
		}
		if s.SpeedLo > 0 {
			p = append(p, "at "+strings.TrimSuffix(fmt.Sprintf("%.1f", s.SpeedLo), ".0"))
		}
		if s.SpeedHi > s.SpeedLo {
			p = append(p, "-"+strings.TrimSuffix(fmt.Sprintf("%.1f", s.SpeedHi), ".0"))
		}
		if s.StopMinutes > 0 {
			p = append(p, fmt.Sprint("less ", s.StopMinutes))
		}
		if s.Hours > 0 {
			p = append(p, fmt.Sprint(s.Hours, " h"))
		}
		out = append(out, strings.Join(p, " "))
	}
	return strings.Join(out, "; ")
}

func TestStretches(t *testing.T) {
	for text, want := range map[string]string{
		"0625-0925 6 lines @ 14 kn; 1040-1315 4 lines @ 14": "6:25 to 9:25 6 lines at 14; 10:40 to 13:15 4 lines at 14",
		"7:55 - 1:50":                                "7:55? to 1:50?",
		"6:45 to 10:25 then 10:45 to 12:55":          "6:45? to 10:25?; 10:45? to 12:55?",
		"7:35 to 10:30 & 11:05 to 12:45":             "7:35? to 10:30?; 11:05? to 12:45?",
		"5 lines 0640-1120 @10":                      "6:40 to 11:20 5 lines at 10",
		"7 lines 0650-1030 @8-9":                     "6:50 to 10:30 7 lines at 8 -9",
		"0715-1320 4 lines 12-13 kts":                "7:15 to 13:20 4 lines at 12 -13",
		"lines in 6:10 out at 2:55 less 20 min stop": "6:10? to 2:55? less 20",
		"08h25-11h20":                                "8:25 to 11:20",
		"0730-1330, 4 lines @ 10 kn":                 "7:30 to 13:30 4 lines at 10",
		"7am-1:30pm":                                 "7:00 to 13:30",
		"6:05a to 9:40a, 8 kts":                      "6:05 to 9:40 at 8",
		"640-1120 5 rods":                            "6:40? to 11:20? 5 lines",
		"de 7:30 a 13:15, 5 cañas a 8 nudos":         "7:30 to 13:15 5 lines at 8",
		"de 7h30 à 11h45, 6 lignes à 7,5 noeuds":     "7:30 to 11:45 6 lines at 7.5",
		"dalle 6:30 alle 11:15, 4 canne, 6 nodi":     "6:30? to 11:15? 4 lines at 6",
		"das 7h15 às 12h40, 6 linhas":                "7:15 to 12:40 6 lines",
		"von 7:30 bis 13:15 Uhr, 5 Ruten, 6 Knoten":  "7:30 to 13:15 5 lines at 6",
		"Sat: in 4:15 pm to 8:20 pm, 9 rods, 7 kts. One tuna. Sun: lines in 5:05 am out 9:45 am, 8 rods": "" +
			"16:15 to 20:20 9 lines at 7; 5:05 to 9:45 8 lines at 7",
		"7:10 in, 2:20 out, 9 rods":                      "7:10? to 2:20? 9 lines",
		"6:55 in 2:30 out 8 rods 7 kts. A marlin":        "6:55? to 2:30? 8 lines at 7",
		"Start 06:40, stop 10:20":                        "6:40 to 10:20",
		"lines wet 7:10":                                 "7:10?",
		"Set 1 0630-0900 @ 8; Set 2 0930-1200 @ 12":      "6:30 to 9:00 at 8; 9:30 to 12:00 at 12",
		"3 h @ 8 kn":                                     "at 8 3 h",
		"6.45-10.25":                                     "6:45? to 10:25?",
		"0650-0900, 0930-1030 7 lines @8":                "6:50 to 9:00 7 lines at 8; 9:30 to 10:30 7 lines at 8",
		"7:00-11:00 minus 30 min lunch, 9 mph":           "7:00? to 11:00? at 7.8 less 30",
		"two hours at 8 kts then 1.5 hrs at 12 kts":      "at 8 2 h; at 12 1.5 h",
		"6:20a-11:40a trolled 6 @ 8":                     "6:20 to 11:40 6 lines at 8",
		"bottom fishing 7h-9h. 4 snapper. 9h30-11h 6 kn": "9:30 to 11:00 at 6",
		"6h-8h 7 kn. One tuna. 9h-11h 8 kn 3 lines":      "6:00 to 8:00 at 7; 9:00 to 11:00 3 lines at 8",
		"lines 0640":                                     "6:40", "linhas 6h40": "6:40", "linhas 9h": "9:00?",
		"5 lines 9h": "5 lines 9 h",

		"in 0700 out 1310, 45 min lunch":                                        "7:00 to 13:10 less 45",
		"7:15 AM to 2:05 PM (stopped 30 min to fight fish), 5 lines, 8.5 knots": "7:15 to 14:05 5 lines at 8.5 less 30",
		"0600 to noon": "6:00 to 12:00",
		"Rained. Towed for 2 and a half hours with 5 rods at 6 kn. One tuna, 9 kg.": "5 lines at 6 2.5 h",
		"five lines from 6:40 to 10:20, eight knots":                                "6:40? to 10:20? 5 lines at 8",
		"Anchored 3 hours with 4 lines. One snapper.":                               "",
		"Fought a tuna 2 hours on 4 lines":                                          "",
		"had one on 20 min, line parted":                                            "", "45 min fight": "",
		"lines in at 6:40, lines out at 12:15": "6:40? to 12:15?",
		"de 7h à 11h":                          "7:00 to 11:00",
		"6-11":                                 "6:00? to 11:00?",
		"5,30-8,00 / 8,45-12,00":               "5:30? to 8:00?; 8:45? to 12:00?",
		"9h00-11h":                             "9:00 to 11:00",
		"6h-8h, 9h-11h30":                      "6:00 to 8:00; 9:00 to 11:30",
		"7.00-9.00, 9.30-11.15":                "7:00? to 9:00?; 9:30? to 11:15?",
		"0720-":                                "7:20", "7,20 -": "7:20?", "0720-?": "7:20", "8-": "",
		"trolled 6:30 till noonish": "", "SW 10, 2-3 ft": "", "": "", "8.5": "", "Fingers": "",
	} {
		if got := showStretches(Stretches(text)); got != want {
			t.Errorf("%q\n  read %q\n  want %q", text, got, want)
		}
	}
}

func TestDuration(t *testing.T) {
	for text, want := range map[string]float64{
		"2h45 less 20 min stop": 2 + 25./60, "5 1/2 hrs": 5.5, "3h": 3, "4.5 hours": 4.5, "45 min": .75, "4:30": 4.5,
		"2h45": 2.75, "2 h 15 min": 2.25,
		"3 hours and 20 minutes": 3 + 20./60, "5½ h": 5.5, "2 horas y media": 2.5, "3,5 Stunden": 3.5, "4 heures": 4,
		"about 4 hrs": 4, "": 0, "wahoo": 0, "5": 0, "8 kts": 0,
	} {
		if got, ok := Duration(text); math.Abs(got-want) > 1e-9 || ok != (want > 0) {
			t.Errorf("%q is %g h (%v), want %g", text, got, ok, want)
		}
	}
}

func TestClocks(t *testing.T) {
	for text, want := range map[string]string{
		"at 9:03": "9:03?", "10:57": "10:57?", "0730": "7:30", "about 7": "7:00?", "7:59": "7:59?", "2:40 pm": "14:40",
		"6:20a": "6:20", "around 12:46": "12:46?", "1315": "13:15",
		"07:45:00": "7:45", "9": "9:00?", "2 lines": "", "2022": "", "8.5 kts": "", "a las 10:20": "10:20?",
		"9 a.m.": "9:00", "12:05 am": "0:05",
	} {
		var got []string
		for _, c := range Clocks(text) {
			got = append(got, showClock(c))
		}
		if strings.Join(got, " ") != want {
			t.Errorf("%q has the clocks %q, want %q", text, got, want)
		}
	}
}

// TestTellsBite tells entries of bites from others.
func TestTellsBite(t *testing.T) {
	for text, want := range map[string]bool{"Bite": true, "strike": true, "hit, missed": true, "wahoo in the box": true,
		"up a bit faster": false, "Change": false, "lines in": false} {
		if TellsBite(text) != want {
			t.Errorf("%q: %t", text, !want)
		}
	}
}

// TestBiteSpeed holds that the speed of a bite is that of the one clause that says so.
func TestBiteSpeed(t *testing.T) {
	for text, want := range map[string]float64{
		"wahoo 13.4 kg, bit at 7.5 kn": 7.5, "peto 13,4 kg, picó a 7,5 nudos": 7.5,
		"dourado 9,2 kg, pegou a 8,1 nós": 8.1, "wahoo 20 lb, 7 knots all day": 0, "wahoo, bit at 8 kn. Then 9 kn": 0,
		"mahi": 0} {
		if got := BiteSpeed(text); got != want {
			t.Errorf("%s: %g, expected %g", text, got, want)
		}
	}
}

// TestNumberedSpeeds holds that a bite named by its number has the speed of its clause.
func TestNumberedSpeeds(t *testing.T) {
	for text, want := range map[string]string{
		"No log. Strike 2 came at 6.3 kt on the handheld":    "map[2:6.3]",
		"bite #1 at 7 kn, bite 3 at 8.5 kn; 4 lines all day": "map[1:7 3:8.5]", "strikes at 7 kt": "map[]",
		"picada 2 a 7,5 nudos": "map[2:7.5]", "strike 7 kt": "map[]", "strike 2, then ran at 8 kt": "map[]"} {
		if got := fmt.Sprint(NumberedSpeeds(text)); got != want {
			t.Errorf("%s: %s, expected %s", text, got, want)
		}
	}
}

func TestSettings(t *testing.T) {
	for text, want := range map[string]string{
		"First session 8 kts, second session 14 kts":                                          "[8 14] [] false",
		"6 lines to start, 4 after the break. 8 kts before the break, 10 after.":              "[8 10] [6 4] false",
		"5 lines to start, 3 after the break.\n10 kts before the break, 8 after. Zero bites.": "[10 8] [5 3] false",
		"Ran 7 kts the whole time":                                                            "[7] [] false",
		"4 lines all day":                                                                     "[] [4] false",
		"Unless I write different: 6 lines out, 8 kts.":                                       "[8] [6] true",
		"cruise 22 kts, trolled 8 kts w/ 5 lines":                                             "[8] [5] false",
		"burned a lot of fuel, 22 kn run out":                                                 "[] [] false",
		"Took one line in":                                                                    "[] [] false",
		"Took in one line. Three now.":                                                        "[] [3] false",
		"Speeded up to 7":                                                                     "[7] [] false",
		"6 rods first pass, 4 rods second":                                                    "[] [6 4] false",
		"usual 6 lines at 8 kn":                                                               "[8] [6] true",
		"normally 5 rods, 7-8 kts":                                                            "[7.5] [5] true",
		"always pull 6":                                                                       "[] [6] true",
		"we run 6 unless noted":                                                               "[] [6] true",
		"spread of 6":                                                                         "[] [6] false",
		"5 lines, 3 left 2 right":                                                             "[] [5] false",
		"one line in the boat, 3 left":                                                        "[] [3] false",
		"pulled 6 all day at 9 kts":                                                           "[9] [6] false",
		"ran 5, 8 knots":                                                                      "[8] [5] false",
		"wind 15 kts, SW 20 kts later":                                                        "[] [] false",
		"25 kn SE":                                                                            "[] [] false",
		"1 BFT 138# at 10:15":                                                                 "[] [] false",
		"Siempre 6 cañas a 7 nudos":                                                           "[7] [6] true",
		"toujours 5 lignes, 8 noeuds":                                                         "[8] [5] true",
		"sempre 4 canne":                                                                      "[] [4] true",
		"immer 6 Ruten":                                                                       "[] [6] true",
		"sempre 6 linhas, 8 nós":                                                              "[8] [6] true",
		"1 rod more on the left, 5 rods now":                                                  "[] [5] false",
		"una caña menos hoy":                                                                  "[] [] false",
		"6 lines less 20 min at lunch":                                                        "[] [6] false",
		"4 lines, more wind":                                                                  "[] [4] false",
		"rods 4 unless noted":                                                                 "[] [4] true",
		"7 knots the whole year":                                                              "[7] [] true",
		"All trolling at 8.5 knots":                                                           "[8.5] [] true",
		"6 rods all year, never changed":                                                      "[] [6] true",
		"two lines":                                                                           "[] [2] false",
		"10 km/h":                                                                             "[5.4] [] false",
		"":                                                                                    "[] [] false",
	} {
		s := Settings(text)
		for i := range s.Speeds {
			s.Speeds[i] = math.Round(s.Speeds[i]*10) / 10
		}
		if got := fmt.Sprint(s.Speeds, s.Lines, s.Usual); got != strings.ReplaceAll(want, "] [", "] [") {
			t.Errorf("%q is %s, want %s", text, got, want)
		}
	}
}

// TestByStrokes holds that strokes part fish where one of them has its length and its weight, and else the
// length from the weight of one.
func TestByStrokes(t *testing.T) {
	for text, want := range map[string]int{"70 cm 6.2 kg / 5.8 kg / 64 cm": 3, "6.2 kg / 70 cm": 1,
		"70 cm / 6.2 kg; a good one": 1, "70 cm 6.2 kg / 68 cm 5.9 kg; green squid": 2} {
		if got := FishList(text, Defaults{}); len(got) != want {
			t.Errorf("%q: %d fish, expected %d: %v", text, len(got), want, got)
		}
	}
}

// TestPlusAnotherBite holds that a bite behind a plus sign which was lost or missed is none of the fish before it that
// has its length.
func TestPlusAnotherBite(t *testing.T) {
	for text, want := range map[string]words.Fate{"bonito 61 cm 3.2 kg + one missed": words.FateUnknown,
		"bonito 61 cm 3.2 kg + pulled the hook, never seen": words.FateUnknown,
		"bonito 61 cm + let go":                             words.Released, "bonito + pulled the hook": words.Lost} {
		if got := FishList(text, Defaults{}); len(got) != 1 || got[0].Fate != want {
			t.Errorf("%q: %+v, expected the fate %q", text, got, want)
		}
	}
}

// TestCountFish holds how many fish a cell names: no number for all of a kind, and one for a fish with
// two names.
func TestCountFish(t *testing.T) {
	for text, want := range map[string]int{"2 mahi, wahoo": 3, "1 mahi, peanut": 1, "wahoo": 1, "both wahoo": 2,
		"all the mahi": 0, "mahi, all": 0, "all wahoo and a mahi": 0} {
		if n, ok := CountFish(text); n != want || ok != (want > 0) {
			t.Errorf("%q: %d %v, expected %d", text, n, ok, want)
		}
	}
	for text, want := range map[string][2]int{"1 bluefin, 2 bonito let go": {1, 2}, "1 hammerhead released": {0, 1},
		"2 mahi": {2, 0}, "1 wahoo lost": {}} {
		if kept, letGo, _ := CountFates(text); kept != want[0] || letGo != want[1] {
			t.Errorf("%q: %d kept, %d let go, expected %v", text, kept, letGo, want)
		}
	}
	for text, want := range map[string]string{"all the mahi": "mahi", "mahi, all": "mahi", "tutti i tonni": "tonni",
		"both wahoo": "", "all wahoo and a mahi": "", "all of 3 mahi": "", "mahi": ""} {
		if name, ok := AllOf(text); (ok || want != "") && name != want {
			t.Errorf("all of %q: %q %v, expected %q", text, name, ok, want)
		}
	}
}

func TestCount(t *testing.T) {
	for text, want := range map[string]int{
		"2": 2, "two": 2, "none": 0, "0": 0, "3 (1 lost)": 3, "2 fish": 2, "zero": 0, "nothing": 0, "dos": 2,
		"3 bites": 3, "1 missed": 1, "no bites": 0, "~4": 4, "2?": 2, "skunked": 0,
		"2.0": 2, "one": 1, "3, one lost": 3,
		"": -1, "-": -1, "a few": -1, "2-3": -1, "lots": -1, "2.5": -1, "wahoo": -1, "6/4": -1, "8 kts": -1,
		"20 lb": -1, "x": -1, "missed": -1, "2, 3": -1, "10:15": -1,
	} {
		n, ok := Count(text)
		if ok != (want >= 0) || ok && n != want {
			t.Errorf("Count(%q) = %d %v, want %d", text, n, ok, want)
		}
	}
}
