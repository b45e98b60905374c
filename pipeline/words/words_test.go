package words

import (
	"strings"
	"testing"
	"time"
)

func TestFateOf(t *testing.T) {
	for _, c := range []struct {
		text  string
		want  Fate
		cause string
	}{
		{"knockdown no hookup", Missed, ""}, {"LDR - lost at the rail", Lost, "at the boat"},
		{"tailed, released", Released, ""},
		{"came unbuttoned", Lost, "pulled hook"}, {"tagged", Released, ""}, {"jumped off", Lost, ""},
		{"boated", Landed, ""}, {"boxed", Landed, ""}, {"just the clip, no weight", Missed, ""},
		{"Box", Landed, ""}, {"gaffed", Landed, ""}, {"kept", Landed, ""}, {"iced", Landed, ""}, {"rel", Released, ""},
		{"let go", Released, ""}, {"let him go", Released, ""},
		{"T/R", Released, ""}, {"t&r", Released, ""}, {"pulled hook", Lost, "pulled hook"},
		{"pulled the hooks", Lost, "pulled hook"},
		{"broke off leader", Lost, "broke off"}, {"spit it", Lost, "spat hook"},
		{"spit the hook", Lost, "spat hook"}, {"sharked", Lost, "shark"},
		{"lost at boat", Lost, "at the boat"}, {"missed", Missed, ""}, {"miss", Missed, ""},
		{"no hook-up", Missed, ""}, {"Short strike", Missed, ""},
		{"picó y nada", Missed, ""}, {"ataca y nada", Missed, ""}, {"bumped then nothing", Missed, ""},
		{"tapped and gone", Missed, ""}, {"touché et rien", Missed, ""},
		{"toccato e niente", Missed, ""}, {"bateu e nada", Missed, ""},
		{"hooked", Hooked, ""}, {"bite", Bit, ""}, {"not landed", FateUnknown, ""}, {"Strike", Bit, ""},
		{"Srtike", Bit, ""}, {"Relased", Released, ""},
		{"chewed through", Lost, "chafed leader"}, {"r", Released, ""}, {"se soltó", Lost, ""},
		{"rompió la línea", Lost, "broke off"}, {"liberado", Released, ""},
		{"décroché", Lost, ""}, {"relâché", Released, ""}, {"remis à l'eau", Released, ""}, {"pris", Landed, ""},
		{"raté", Missed, ""}, {"slamato", Lost, ""}, {"rilasciata", Released, ""},
		{"mancata", Missed, ""}, {"devolvido", Released, ""}, {"partiu a linha", Lost, "broke off"},
		{"Fehlbiss", Missed, ""}, {"ausgestiegen", Lost, ""}, {"gelandet", Landed, ""}, {"zurückgesetzt", Released, ""},
		{"rendue à l'eau", Released, ""}, {"rejetés à la mer", Released, ""}, {"devolvida à água", Released, ""},
		{"devuelto al mar", Released, ""}, {"liberei", Released, ""},
		{"la devolví", Released, ""}, {"estourou a linha", Lost, "broke off"},
		{"rimessa in acqua", Released, ""}, {"picou, não agarrou", Missed, ""},
		{"lumpy on the way home", FateUnknown, ""}, {"", FateUnknown, ""}, {"blue/wht jet", FateUnknown, ""},
	} {
		f, cause, _, ok := FateOf(c.text)
		if f != c.want || cause != c.cause || ok != (c.want != FateUnknown) {
			t.Errorf("FateOf(%q) = %v %q %v, want %v %q", c.text, f, cause, ok, c.want, c.cause)
		}
	}
	text := "YFT, pulled the hook at noon"
	if _, _, at, _ := FateOf(text); text[at[0]:at[1]] != "pulled the hook" {
		t.Errorf("the fate stands at %q", text[at[0]:at[1]])
	}
}

func TestCells(t *testing.T) {
	for name, c := range map[string]struct {
		is      func(string) bool
		yes, no []string
	}{
		"total": {IsTotal, []string{"TOTAL", "Total", "per trip", "day tot", "WEEK", "November total", "SEASON",
			"total page 1", "brought fwd", "Season hrs total", "Carried forward", "sum", "Average", "Summe", "suma",
			"Totale", "à reporter", "Total:", "Totals 2024"},
			[]string{"SEASON 2021/22", "Total length", "Total bites on the troll", "summer", "Week at sea with Bob", "",
				"average day, no complaints", "Log 2023"}},
		"hedged": {Hedged, []string{"~11", "about 7", "est 20 kg", "maybe 39 lb", "80 lb ish", "by eye", "39 lb?",
			"c.100 kg", "unos 40 kg", "environ 30 kg", "circa 20 kg", "geschätzt 20 kg", "mais ou menos 50 kg",
			"al ojo 20 kg", "dans les 20 kg", "à l'œil 30 kg", "20 kg nach Augenmaß"},
			[]string{"", "39 lb", "84 lb on the scale", "T. albacares"}},
		"nothing": {Nothing, []string{"nothing", "skunked", "zip", "zip :(", "no bites", "none", "nil", "blank",
			"Zero bites.", "Not one bite all day.", "porpoise at the Grounds, no takers. Zip", "sin picadas", "rien",
			"bredouille", "niente", "nada", "nichts", "Kein Biss", "0 for 0", "No bites today", "nothing struck",
			"rien mordu", "nichts gebissen"},
			[]string{"", "zipped home", "missed 2", "nothing under them", "no weedline at all",
				"blank, lost one at the boat", "bait up, no current"}},
		"not gone": {NotGone, []string{"BLOWN OUT - didn't go", "no go, alternator", "OFF", "did not go, 25 kn SE",
			"cancelled", "boat on the hard all month", "no salimos", "pas sorti", "abgesagt", "não saímos",
			"Stayed home", "not run, gale warning", "No lines in"},
			[]string{"", "came off", "off the harbor", "10 min then off", "no goal", "going well"}},
		"ditto": {Ditto, []string{`"`, "''", "ditto", "do.", "〃", "idem", `-"-`}, []string{"", "5", "document", "-"}},
		"place": {IsPlace, []string{"long corner", "stbd flat", "center", "handline", "R short", "shotgun", "P1",
			"rod 3", "way back", "port rigger", "short", "flat", "Left long", "Rod #4", "largo", "babor"},
			[]string{"", "wahoo", "Lines", "Rod", "long ride home", "flat calm", "3", "left the dock"}},
		"lure": {Lure, []string{"swim plug, sardine", "6\" feather, squid colour", "cedar plug"},
			[]string{"", "sardine", "live mackerel", "on livebait"}},
		"scaled": {Scaled, []string{"84 lb on the scale", "weighed", "Scale (lb)", "lb = dock scale", "certified",
			"báscula", "gewogen", "sur la balance"}, []string{"", "large scaled sheet", "maybe"}},
	} {
		for _, s := range c.yes {
			if !c.is(s) {
				t.Errorf("%q is not %s", s, name)
			}
		}
		for _, s := range c.no {
			if c.is(s) {
				t.Errorf("%q is %s", s, name)
			}
		}
	}
}

// place finds the first place in the spread that prose names, as bytes of the text.
func place(text string) (at [2]int, ok bool) {
	toks := Scan(text)
	for i := range toks {
		if next, ok := PlaceAt(toks, i, AfterOn(toks, i)); ok {
			return [2]int{toks[i].At, toks[next-1].End}, true
		}
	}
	return at, false
}

func TestPlace(t *testing.T) {
	for text, want := range map[string]string{
		"Knockdown on the flat line at 10:57": "flat line", "wahoo on the right short": "right short",
		"1 BFT 163# on the long rigger": "long rigger",
		"a 127# BFT way back":           "way back", "6# down the middle": "down the middle",
		"Hooked up left long": "left long", "on the left": "left",
		"left the dock": "", "long ride": "", "flat calm": "", "lost at the boat": "", "R short, green": "R short",
	} {
		at, ok := place(text)
		if text[at[0]:at[1]] != want || ok != (want != "") {
			t.Errorf("place(%q) = %q, want %q", text, text[at[0]:at[1]], want)
		}
	}
}

func TestEntryOf(t *testing.T) {
	for text, want := range map[string]Entry{
		"lines in": {Event: EventIn}, "LINES IN": {Event: EventIn}, "in": {Event: EventIn}, "UP": {Event: EventUp},
		"Took one line in": {EventFewer, 1, ""}, "took 2 lines off, weed": {EventFewer, 2, ", weed"},
		"one more line out": {EventMore, 1, ""}, "less": {EventFewer, 1, ""},
		"quitamos una línea": {EventFewer, 1, " línea"}, "Strike": {Rest: "Strike"},
		"Lines up, clear for fish": {Event: EventUp, Rest: ", clear for fish"},
		"cambio vel":               {Event: EventPace}, "cambia líneas": {Event: EventChange},
		"changement de vitesse": {Event: EventPace}, "number of lines": {Event: EventChange},
		"lines back in":          {Event: EventIn},
		"lines back on board":    {Event: EventUp},
		"Lines up, heading home": {Event: EventUp, Rest: ", heading home"},
		"Sped up":                {Event: EventPace},
		"Stop":                   {Event: EventUp}, "change speed": {Event: EventPace},
		"stop for fuel":      {Rest: "stop for fuel"},
		"Course change, 180": {Event: EventChange, Rest: ", 180"},
		"up to 10 kn":        {Event: EventPace, Rest: " 10 kn"},
		"back in":            {Event: EventIn}, "pulled lines": {Event: EventUp}, "Lines out": {Event: EventOut},
		"Pulled a line":  {EventFewer, 1, ""},
		"líneas al agua": {Event: EventIn}, "lignes à l'eau": {Event: EventIn}, "lenze in acqua": {Event: EventIn},
		"linhas na água":   {Event: EventIn},
		"recogí las cañas": {Event: EventUp}, "j'ai remonté les lignes": {Event: EventUp},
		"subi para 9 nós": {Event: EventPace, Rest: " 9 nós"}, "joguei as iscas na água": {Event: EventIn},
		"Leinen raus": {Event: EventUp}, "left mooring": {Event: EventLeave},
		"cast off, lines in": {Event: EventIn, Rest: "cast off, "},
		"at the dock":        {Event: EventHome}, "ok": {Event: EventQuiet},
		"left rigger, fish on":   {Rest: "left rigger, fish on"},
		"Streamed 4 lines, 6 kn": {Event: EventIn, Rest: ", 6 kn"}, "Jig lines down": {Rest: "Jig lines down"},
		"After jigging, lines in": {Event: EventIn, Rest: "After jigging, "},
		"Handed two lines":        {EventFewer, 2, ""}, "All lines inboard": {Event: EventUp},
		"Singled up and let go.": {Event: EventLeave}, "Made fast": {Event: EventHome}, "let go": {Rest: "let go"},
		"turned loose": {Rest: "turned loose"}, "turned her loose": {Rest: "turned her loose"},
		"turned": {Event: EventChange}, "forgot to log lines out": {Rest: "forgot to log lines out"},
		"Leinen raus vergessen":      {Rest: "Leinen raus vergessen"},
		"lines up, forgot the clock": {Event: EventUp, Rest: ", forgot the clock"},
		"retour au ponton":           {Event: EventHome},
		"Salimos de la marina":       {Event: EventLeave}, "zurück am Steg": {Event: EventHome},
		"Cleared the jetty": {Event: EventClear}, "past the breakwater": {Event: EventClear},
		"cleared the deck, lines in": {Event: EventUp, Rest: ", lines in"}, "back in the slip": {Event: EventHome},
		"bird school": {Event: EventQuiet, Rest: "bird school"}, "": {},
	} {
		if got := EntryOf(text); got != want {
			t.Errorf("EntryOf(%q) = %+v, want %+v", text, got, want)
		}
	}
}

func TestOfNextDay(t *testing.T) {
	for text, want := range map[string]string{"06:10 (next day)": "06:10", "6:10 next morning": "6:10",
		"0610, lendemain": "0610", "07:35 (Folgetag)": "07:35",
		"next day": "", "06:10 next day early": "", "06:10": ""} {
		if got, _ := OfNextDay(text); got != want {
			t.Errorf("OfNextDay(%q) = %q, want %q", text, got, want)
		}
	}
}

func TestMistypedThe(t *testing.T) {
	for _, text := range []string{"in teh box", "In Hte box"} {
		if toks := Scan(text); toks[1].Text != "the" || text[toks[1].At:toks[1].End] == "the" {
			t.Errorf("%q: %+v", text, toks)
		}
	}
}

func TestAboutClock(t *testing.T) {
	for text, want := range map[string]string{"abt 2:20": "2:20", "~14:20": "14:20", "about 6:05 am": "6:05 am",
		"vers 14h20": "14h20", "2:20 or so": "2:20", "14:20": "", "14:20?": "", "7:00 EST": "", "abt": ""} {
		if got, _ := AboutClock(text); got != want {
			t.Errorf("AboutClock(%q) = %q, want %q", text, got, want)
		}
	}
}

func TestStill(t *testing.T) {
	for text, want := range map[string]bool{"parado": true, "Anchored": true, "drifting": true, "7": false,
		"7 kn": false, "": false, "slow": false, "bolentino": true, "fondo": true, "curricán": false, "kite": false} {
		if got := Still(text); got != want {
			t.Errorf("Still(%q) = %v", text, got)
		}
	}
}

// TestFateOfNoHookup holds that what was pulled and never hooked is missed, not lost.
func TestFateOfNoHookup(t *testing.T) {
	for text, want := range map[string]Fate{"something pulled, no hook-up": Missed, "no hook-up, pulled": Missed,
		"pulled": Lost, "pulled hook": Lost, "dropped - hit and gone, never on": Missed,
		"came off, never hooked": Missed,
		"perdu, jamais piqué":    Missed, "hooked, dropped, no hook-up the second time": Lost,
		"hooked, never on deck": Hooked} {
		if got, _, _, _ := FateOf(text); got != want {
			t.Errorf("FateOf(%q) = %v, expected %v", text, got, want)
		}
	}
}

func TestOtherwise(t *testing.T) {
	for text, want := range map[string]bool{
		"lulas ao candeio": true, "bottom fished the ledge": true, "reparti sans traîner": false,
		"on livebait, not the lures": true, "jigging not trolling": true, "bottom rig, squid": true,
		"dropped a bait for dinner": true, "ao jig (fora da conta)": true,
		"lines up, tied off to the rig for red snapper": true, "wahoo at the rig": false,
		"lo que no se pescó al curricán": true, "pesci non presi a traina": true,
		"not caught on the troll": true, "not much while trolling": false,
		"poissons à l'appât": true, "al cebo": true, "con cebo": false, "mit Köder 3": false,
		"palu, after lines were up": true, "skipjack, my one!": false, "Down sea": false,
		"bait balls off the buoy": false, "bait": false,
		"hit while trolling past live bait": false, "paint bottom": false, "black jig": false, "": false,
	} {
		if got := Otherwise(text); got != want {
			t.Errorf("Otherwise(%q) = %v", text, got)
		}
	}
}

func TestOfBest(t *testing.T) {
	for text, want := range map[string]string{"47 best": "47", "best 47 in": "47 in", "la mayor 120 cm": "120 cm",
		"47": "", "best": "", "best of 3 was 47": "of 3 was 47", "47 best, 41": ""} {
		if got := OfBest(text); got != want {
			t.Errorf("OfBest(%q) = %q, expected %q", text, got, want)
		}
	}
}

func TestNames(t *testing.T) {
	for text, want := range map[string]string{"Troll": "troll", "jig": "jig", "live blue runner on the kite": "kite",
		"Live bait": "live bait", "trolling": "troll", "popper": "pop", "fondo": "bottom", "box": "",
		"pulling jigs": "troll", "al garete, motor parado": "drift", "engodo": "chunk"} {
		if got, ok := Method(text); got != want || ok != (want != "") {
			t.Errorf("Method(%q) = %q", text, got)
		}
	}
	for text, want := range map[string]time.Month{"JUL": 7, "Août": 8, "März": 3, "ene.": 1,
		"set": 9, "out": 10, "Wahoo": 0} {
		if got, ok := Month(text); got != want || ok != (want != 0) {
			t.Errorf("Month(%q) = %d", text, got)
		}
	}
	if d, ok := Weekday("Sáb"); d != time.Saturday || !ok {
		t.Errorf("sáb is %v", d)
	}
	for text, want := range map[string]int{"2": 2, "two": 2, "None": 0, "zwei": 2, "três": 3,
		"a": 1, "wahoo": -1, "": -1} {
		if got, ok := Number(text); ok != (want >= 0) || ok && got != want {
			t.Errorf("Number(%q) = %d %v", text, got, ok)
		}
	}
}

func TestScanKeepsPlaces(t *testing.T) {
	text := "Didn’t see l'eau, 48,5\" x 1º\n"
	var got []string
	for _, k := range Scan(text) {
		got = append(got, k.Text+"="+text[k.At:k.End])
	}
	want := []string{"didnt=Didn’t", "see=see", "l=l", "eau=eau", ",=,", "48,5=48,5",
		"\"=\"", "x=x", "1=1", "o=º", "\n=\n"}
	if len(got) != len(want) {
		t.Fatalf("got %q", got)
	}
	for i := range want {
		if got[i] != want[i] {
			t.Errorf("token %d is %q, want %q", i, got[i], want[i])
		}
	}
	if Fold("  ÁGUA  suja ") != "agua suja" {
		t.Errorf("Fold gives %q", Fold("  ÁGUA  suja "))
	}
}

func TestListFaults(t *testing.T) {
	for _, text := range []string{"no key here", "lost: a, , b"} {
		if _, err := parseList(text); err == nil {
			t.Errorf("%q is taken for a list", text)
		}
	}
}

// Every key of a list must be one that the code knows.
func TestKeys(t *testing.T) {
	for _, es := range fates.by() {
		for _, e := range es {
			if h, ok := FateAt(phraseTokens(e.elems), 0); !ok || (h.Fate == FateUnknown) != (e.key == "none") {
				t.Errorf("fates.txt: %q %q has no fate", e.key, e.elems)
			}
		}
	}
	for _, es := range events.by() {
		for _, e := range es {
			if eventOf[e.key] == EventNone {
				t.Errorf("events.txt: %q is no event", e.key)
			}
		}
	}
}

func phraseTokens(elems []string) []Token {
	var toks []Token
	for _, e := range elems {
		toks = append(toks, Token{Text: e})
	}
	return toks
}

// TestFateAlone holds that words which tell a fate only in a cell of their own do, and that
// beside others they tell none.
func TestFateAlone(t *testing.T) {
	for _, c := range []struct {
		text, fate, cause string
	}{
		{"on and off", "lost", ""}, {"trace cut", "lost", "cut off"}, {"nothing on", "missed", ""},
		{"gone", "lost", ""}, {"off", "lost", ""}, {"sea lion", "lost", "seal"}, {"sharks", "lost", "shark"},
		{"dinner", "landed", ""}, {"over the rail", "landed", ""},
		{"swam strong", "released", ""}, {"tapped", "missed", ""}, {"tiburón", "lost", "shark"},
		{"bumped it", "missed", ""}, {"swiped it", "missed", ""}, {"bumped it about", "", ""},
		{"taken", "", ""}, {"relaesed", "released", ""},
		{"coupé", "lost", "broke off"}, {"missed with gaff", "lost", "at the boat"},
		{"seal took it", "lost", "seal"}, {"crimp slipped", "lost", "broke off"}, {"pulled the skirt", "missed", ""},
		{"tuna gone by noon", "", ""}, {"dinner at the club", "", ""}, {"saw a sea lion", "", ""},
		{"off the bank", "", ""}, {"seals about", "", ""},
	} {
		f, cause, _, _ := FateOf(c.text)
		if f.String() != c.fate || cause != c.cause {
			t.Errorf("%q: %s by %q, expected %s by %q", c.text, f, cause, c.fate, c.cause)
		}
	}
}

// TestShortCodes holds which codes are short for a word of a closed list, and that one that
// is short for two is none.
func TestShortCodes(t *testing.T) {
	for _, c := range []struct {
		what       string
		of         func(string) (string, bool)
		code, want string
	}{
		{"method", ShortMethod, "tr", "troll"}, {"method", ShortMethod, "JG", "jig"},
		{"method", ShortMethod, "bt", "bottom"}, {"method", ShortMethod, "dr", "drift"},
		{"method", ShortMethod, "zz", ""}, {"weighed", ShortWeighed, "s", "scale"},
		{"weighed", ShortWeighed, "e", "estimated"},
		{"weighed", ShortWeighed, "g", ""}, {"fate", ShortFate, "lnd", "landed"}, {"fate", ShortFate, "lst", "lost"},
		{"fate", ShortFate, "m", ""}, {"fate", ShortFate, "b", ""},
	} {
		if got, ok := c.of(c.code); got != c.want || ok != (c.want != "") {
			t.Errorf("%s %q: %q, expected %q", c.what, c.code, got, c.want)
		}
	}
}

// TestByScale holds what a cell beside a weight says of where it is from.
func TestByScale(t *testing.T) {
	for text, want := range map[string][2]bool{
		"scale": {true, true}, "S": {true, true}, "e": {false, true}, "by formula": {false, true},
		"x": {false, false}, "": {false, false}, "by the ruler, never weighed": {false, true},
		"nicht gewogen":               {false, true},
		"never on the scale, a guess": {false, true}, "not aboard, weighed ashore": {true, true},
	} {
		if scale, told := ByScale(text); scale != want[0] || told != want[1] {
			t.Errorf("%q: from a scale %t, told %t", text, scale, told)
		}
	}
}

// TestNotLogged holds that the shortcuts pass no word of the list over.
func TestNotLogged(t *testing.T) {
	for word := range notLogged {
		if !NotLogged(word) || !NotLogged(strings.ToUpper(word)) {
			t.Errorf("%q is logged", word)
		}
	}
	for _, word := range []string{"0", "none", "no", "x", "unknown reef"} {
		if NotLogged(word) {
			t.Errorf("%q is not logged", word)
		}
	}
}

func TestGirthTold(t *testing.T) {
	for text, want := range map[string]string{
		"circonf. 92": "92", "girth 26 in, full of squid": "26 in", "girth: 26.5": "26.5", "giro": "", "92 giri": "",
		"girth 20, the other girth 22": "", "girth ok": "", "": "",
	} {
		if got := GirthTold(text); got != want {
			t.Errorf("%q: %q, expected %q", text, got, want)
		}
	}
}

func TestWholeRemarks(t *testing.T) {
	for text, want := range map[string][2]bool{ // measured, another way of fishing
		"midió 42 pulg": {true, false}, "measured 41 in": {true, false}, "fondo": {false, true},
		"Bottom": {false, true}, "trolling": {false, false}, "fondo limpio y azul": {false, false},
		"mar de fondo": {false, false}, "bait fish": {false, true},
		"chum + live bait": {false, true}, "deriva y brumeo": {false, true}, "drift and troll": {false, false},
		"lots of bait fish": {false, false}, "": {false, false}, "horquilla 61 cm": {true, false},
		"fork 24 in, fat": {true, false}, "volantín": {false, true},
	} {
		if got := [2]bool{Taped(text), AnotherMethod(text)}; got != want {
			t.Errorf("%q: %v, expected %v", text, got, want)
		}
	}
}

// TestOnScale holds which figure stands beside words for a scale alone.
func TestOnScale(t *testing.T) {
	for text, want := range map[string]string{"12.5 scale": "12.5",
		"22.0 scale": "22.0", "4,6 kg (na balança)": "4,6 kg", "Waage 12": "12", "31 lb on the dock scale": "31 lb",
		"scale broke, ~20": "", "9 scale, gutted": "",
		"balança 7,7 kg": "7,7 kg", "18 lb on the scale": "18 lb",
		"12 kg 800 scale": "",
		"9,4 na balança":  "9,4", "12.5": "", "scale": "", "about 12 scale": "", "12 kg": ""} {
		if got := OnScale(text); got != want {
			t.Errorf("%q: %q, expected %q", text, got, want)
		}
	}
}

// TestNamesOther holds that a way of fishing or a boat that lay still is found in a remark, and none where it speaks of
// trolling or of a lure.
func TestNamesOther(t *testing.T) {
	for text, want := range map[string]bool{
		"bottom after lunch": true, "at anchor, 3 snapper": true, "fondeados en la cala": true, "all'ancora": true,
		"nada de currican": true, "niente traina, bolentino": true, "drifting with the kids": true,
		"trolled past the anchored fleet": false, "popper skirt": false, "the ridge": false, "": false,
	} {
		if got := NamesOther(text); got != want {
			t.Errorf("%q: %v, expected %v", text, got, want)
		}
	}
}

// TestOnlyOther holds that a day is taken for one of another way of fishing by words that say so, not by a
// lone word that may mean another thing.
func TestOnlyOther(t *testing.T) {
	for text, want := range map[string]bool{
		"Drifting with the grandchildren, seven kept": true, "bottom fishing only": true, "jigging all day": true,
		"Cast off at six. Both kept.": false, "let the rigger pop, kept": false, "bottom machine dead, two kept": false,
		"drifting, then trolled home": false, "": false,
	} {
		if got := OnlyOther(text); got != want {
			t.Errorf("%q: %v, expected %v", text, got, want)
		}
	}
}

// TestAsideOther holds that a remark's own part that is another way of fishing tells it, and no word within one does.
func TestAsideOther(t *testing.T) {
	for text, want := range map[string]bool{
		"drifting, first hour": true, "kite up, chunking": true, "a fondo, con la sonda": true, "late, bottom": true,
		"bottom of the canyon, weedy": false, "weedy, jig": false, "drift, then trolled": false, "on the kite": false,
		"day off, from the beach": true, "wahoo, off the beach": false, "4 miles from the beach": false,
		"bottom, plug with a dent": false, "cast off late, calm": false, "": false,
	} {
		if got := AsideOther(text); got != want {
			t.Errorf("%q: %v, expected %v", text, got, want)
		}
	}
}

// TestInAfternoon holds which headings say that what stands under them is of the afternoon.
func TestInAfternoon(t *testing.T) {
	for heading, want := range map[string]bool{"PM in": true, "Afternoon lines up": true, "Tarde: largada": true,
		"Nachmittag raus": true, "AM in": false, "Second half in": false, "Lines in (am/pm)": false, "RPM": false} {
		if got := InAfternoon(heading); got != want {
			t.Errorf("%q: %v, expected %v", heading, got, want)
		}
	}
}

// TestFateOfAnswer holds what a yes or a no before a fate says of a bite: nothing that its fate does not.
func TestFateOfAnswer(t *testing.T) {
	for text, want := range map[string]Fate{
		"yes, released": Released, "yep but turned loose": Released, "no - broke off": Lost, "no, short strike": Missed,
		"sim, solto": Released, "no": FateUnknown, "yes": FateUnknown, "not landed, broke off": Lost,
	} {
		if got, _, _, _ := FateOf(text); got != want {
			t.Errorf("FateOf(%q) = %v, expected %v", text, got, want)
		}
	}
	if !Yes("Yes.") || Yes("yes, kept") || !Answers("no, broke off") || Answers("no hookup") {
		t.Error("a yes, or an answer that goes on, is not told")
	}
}

// TestFateOnly holds which clauses tell what became of a fish and nothing else.
func TestFateOnly(t *testing.T) {
	for text, want := range map[string]string{
		"released it": "released", "let her go": "released", "lost at the leader": "lost",
		"kept for the freezer": "landed", "suelto": "released", "rilasciato": "released", "iced": "landed",
		"pulled the hooks": "lost", "no hook up": "missed",
		"lost a lure": "", "25 min": "", "kept the cedar plug out": "", "released at dusk after rain": "", "": "",
	} {
		if f, ok := FateOnly(text); f.String() != want || ok != (want != "") {
			t.Errorf("%q: %q %t, expected %q", text, f, ok, want)
		}
	}
}

func TestForgotSpeed(t *testing.T) {
	for text, want := range map[string]bool{"forgot to write the speed": true, "velocità non segnata": true,
		"forgot the bait": false, "speed 7": false} {
		if ForgotSpeed(text) != want {
			t.Errorf("%q: %t", text, !want)
		}
	}
}

func TestForgotLines(t *testing.T) {
	for text, want := range map[string]bool{"left rigger again. forgot how many out": true,
		"forgot how many lines": true, "vergessen wie viele draussen": true, "forgot the rods": false, "3 out": false} {
		if ForgotLines(text) != want {
			t.Errorf("%q: %t", text, !want)
		}
	}
}

func TestSomeDay(t *testing.T) {
	for text, want := range map[string]bool{"sometime in june": true, "mid July 2023": true, "un jour de juin": true,
		"june 4": false, "june": false, "sometime": false, "mid june, went twice": false} {
		if SomeDay(text) != want {
			t.Errorf("%q: %t", text, !want)
		}
	}
}

func TestGuessedCell(t *testing.T) {
	for text, want := range map[string]bool{"28 st.": true, "4,5 stim.": true, "28": false, "1st": true, "st. 4": false,
		"12 kg": false, "2 st 4 lb": false} {
		if GuessedCell(text) != want {
			t.Errorf("%q: %t", text, !want)
		}
	}
}

// TestOnlyGuess holds which remarks say nothing but that something was guessed.
func TestOnlyGuess(t *testing.T) {
	for text, want := range map[string]bool{"guess": true, "est. weight": true, "by eye": true, "a ojo": true,
		"guess, big fish": false, "scales": false, "over the bank": false, "?": false, "": false} {
		if got := OnlyGuess(text); got != want {
			t.Errorf("%q: %t, expected %t", text, got, want)
		}
	}
}
