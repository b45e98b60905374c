package phrase

import (
	"fmt"
	"testing"
)

type saying struct{ text, want string }

func checkTold(t *testing.T, sayings []saying) {
	t.Helper()
	for _, c := range sayings {
		if got := show(Tell(c.text, Defaults{})); got != c.want {
			t.Errorf("%q\n  read %q\n  want %q", c.text, got, c.want)
		}
	}
}

// Sayings of the brief and of the training logs, with what a careful human reads.
func TestTell(t *testing.T) {
	checkTold(t, []saying{
		{"High-speed for wahoo, nothing but weed", "nothing"},
		{"missed 2, 1 mahi 8# way back", "2 missed; mahi landed 3.6kg @way back"},
		{"1st: missed 1, a 179# BFT. 2nd: nothing", "[1] missed; [1] BFT landed 81.2kg"},
		{"Knockdown on the flat line at 10:57, never came tight", "missed @flat line 10:57"},
		{"Put a 49 inch wahoo in the box", "wahoo landed 124.5cm"},
		{"Hooked a wahoo on the right short at 10:03 and pulled the hook. 0 for 1",
			"wahoo lost @right short 10:03 (pulled hook) | 0 for 1"},
		{"Short strike on the long corner, tail bit off the ballyhoo", "missed @long corner"},
		{"Rain, kept on", ""}, {"kept going; 2 wahoo kept on ice", "2 wahoo landed"},
		{"8:02 sailfish jumped twice, threw the hook", "sailfish lost 8:02 (spat hook)"},
		{"8h02 marlin saltou duas vezes e cuspiu", "marlin lost 8:02 (spat hook)"},
		{"9:10 marlin jumping behind us", ""},
		{"9h14 dourado perdido ao pé do bote", "dourado lost 9:14 (at the boat)"},
		{"7h53 ferrado, partiu o fio sem se ver", "lost 7:53 (broke off)"},
		{"agulhão solto, 190 cm medidos à borda", "agulhão released 190cm"},
		{"lost one at the boat", "lost (at the boat)"},
		{"had one on 20 min, line parted", "lost (broke off)"},
		{"1 knockdown no hookup", "missed"}, {"2 knockdowns no hookup, 1 BFT 306# on the flat line",
			"2 missed; BFT landed 138.8kg @flat line"},
		{"missed 2, lost 1 at the boat", "2 missed; lost (at the boat)"},
		{"Bluefin aboard. 50 in, girth 36, 80 lb.", "Bluefin landed 127cm x91.4 36.3kg"},
		{"Lost a wahoo. 3 ft seas", "wahoo lost"},
		{"knock on the left rod, nothing", "missed @left rod"}, {"bite, nothing else all day", "bite"},
		{"zip", "nothing"}, {"zip :(", "nothing"}, {"Not one bite all day.", "nothing"},
		{"0 for 0. Good boat ride.", "0 for 0 | nothing"},
		{"skunked", "nothing"}, {"", ""},
	})
}

// Remarks of the training logs and others that tell of no bite.
func TestTellRemarks(t *testing.T) {
	for _, text := range []string{
		"Flying fish all day but nothing chasing them", "Bait balls at 180 ft, nothing under them",
		"porpoise at the Grounds, no takers, lumpy",
		"Saw a free swimming turtle and a big hammerhead", "two other boats on it", "bird on every pole",
		"temp break, 3 deg", "porpoise school",
		"dolphin under a pallet", "tuna busting, wouldnt eat", "wheel watch: Earl", "147 gal, $684", "home by 4",
		"sonar marks 20 fathoms", "fog till 9",
		"crossed blue water at 28 deg 20", "supply boat ran us off", "no weedline at all", "turned on the edge",
		"blue/wht feather did it", "white/blue diver way back", "left the good camera at home", "Dom forgot the gaff",
		"bird schools, wouldnt go on the troll", "pots had mahi but wouldn't eat",
		"First session 8 kts, second session 14 kts", "Left engine running hot again, watch it.",
		"Bumped into a sunfish the size of a door.", "worked the same number twice", "bait stacked at 180",
		"switched to 36 oz leads", "owe Kimo $40",
		"need more 8/0 hooks", "came home early, seasick", "mucha agua verde, delfines", "beaucoup d'oiseaux",
		"água suja", "viele Delfine, kein Wind", "tanti gabbiani sul posto", "two marlin jumping off the ledge",
		"Hank dropped his phone overboard", "broke the outrigger in the inlet", "2 boats near us caught mahi",
		"heard on the radio that others boxed 8 yellowfin", "released the drogue at noon", "boat limit by 9",
		"lost an hour to a bad fuel filter", "missed the morning bite", "turned around at 40 miles, blown out",
		"wahoo season is on", "need to buy 2 new rods and tuna clips", "gaff broke on the second fish",
		"hot bite at the ledge, limits of blackfin by 10", "caught bait for an hour, 2 dozen blue runners",
		"water 78, blue", "birds diving on skipjack, could not get a bite",
		"vimos dos marlines saltando", "whale shark under the boat",
	} {
		if s := Tell(text, Defaults{}); len(s.Bites) > 0 || s.Strikes > 0 {
			t.Errorf("%q is read as %q", text, show(s))
		}
	}
}

// What speaks of fish or fates and is not understood is left, not guessed and not dropped.
func TestTellLeaves(t *testing.T) {
	checkTold(t, []saying{
		{"lost the teaser", "left: lost the teaser"},
		{"lost a rigger halyard", "left: lost a rigger halyard"},
		{"lost track of time, never wrote down when we pulled them", "left: lost track of time"},
		{"released some skipjacks", "left: released some skipjacks"},
		{"missed the tide, 2 mahi 8#", "2 mahi landed 3.6kg | left: missed the tide"},
		{"landed 3, released 2", "3 landed; 2 released"},
		{"kelp broke off a plug", "left: kelp broke off a plug"},
	})
}

// What became of each of several fish, of another like it, and what is said of a fish a mark further on.
func TestTellShares(t *testing.T) {
	checkTold(t, []saying{
		{"Three wahoo at the ledge, two kept, one let go", "2 wahoo landed; wahoo released"},
		{"3 tuna before lunch: boxed two, 70 cm; the other came off at the rail", "2 tuna landed 70cm; tuna lost"},
		{"dos dorados, uno embarcado, otro perdido", "dorados landed; dorados lost"},
		{"2 wahoo 30 & 41 lb, one lost, one missed", "wahoo landed 13.6kg; wahoo landed 18.6kg; lost; missed"},
		{"deux bonites, une relâchée, une de 4 kg", "bonites released; bonites landed 4kg"},
		{"Tuna x4, kept 3.", "4 Tuna landed | left: kept 3"},
		{"Four mahi came in, hooked three, landed two", "4 mahi landed | left: hooked three / landed two"},
		{"2 tuna: 80 and 71 cm, kept one", "tuna landed 80cm; tuna landed 71cm | left: kept one"},
		{"Mahi released. Another mahi at noon, same.", "Mahi released; mahi released 12:00"},
		{"Bonito on the green squid, 61 cm, kept", "Bonito landed 61cm"},
		{"Nice wahoo! 120 cm, 11 kg on the spring scale", "wahoo landed 120cm 11kg*"},
		{"A second one cut off the rig", "lost (cut off)"},
		{"Tuna took it in the end, 88 cm", "Tuna landed 88cm"},
		{"One thump on the rigger, nothing there", "missed @rigger"},
		{"Bite at 0900, ran and threw it, a marlin we think", "marlin lost 9:00 (spat hook)"},
		{"Wahoo 90 cm kept, and its buddy took the long one, lost it at the boat",
			"Wahoo landed 90cm; Wahoo lost (at the boat)"},
		{"Fridge full, no more fish today", ""}, {"new 30s spooled", "left: new 30s spooled"},
		{"8:40 AM miss; 11:30 AM came off", "missed 8:40; lost 11:30"},
		{"2 BFT on the black diver 58 and 61 inches", "BFT landed 147.3cm; BFT landed 154.9cm"},
		{"2 BFT 58 and 61 inches on the black diver", "BFT landed 147.3cm; BFT landed 154.9cm"},
		{"wahoo on the dark diver, 42 lb", "wahoo landed 19.1kg"}, {"lost one on the black diver", "lost"},
		{"lost on the gaff", "lost (at the boat)"},
	})
	for text, want := range map[string]string{
		"Lines up 0930-1015 for weed": "9:30 to 10:15", "stopped 10:30-11:00, then 2 wahoo": "10:30? to 11:00?",
		"fished 0930-1015": "", "líneas arriba de 1200 a 1330 para comer": "12:00 to 13:30", "two bites 0930-1015": "",
	} {
		if got := showStretches(Pauses(text)); got != want {
			t.Errorf("%q: pauses %q, expected %q", text, got, want)
		}
	}
}

// Fifty captains of many tongues and what a careful human reads.
func TestTellCaptains(t *testing.T) {
	checkTold(t, []saying{
		// United States
		{"3 bites: missed 1, lost 1 on the leader, boated a 62\" wahoo",
			"missed; lost (at the boat); wahoo landed 157.5cm | of 3"},
		{"Doubled up on yellowfin at 7:15, got both, 44# and 51#",
			"yellowfin landed 20kg 7:15; yellowfin landed 23.1kg 7:15"},
		{"Blind strike on the shotgun 8:40, gone. Then a 28 lb mahi at 9:05.",
			"bite @shotgun 8:40; mahi landed 12.7kg 9:05"},
		{"went 2-for-4: two yellowfin 35 & 41 lb, one spit the hook, one missed",
			"yellowfin landed 15.9kg; yellowfin landed 18.6kg; lost (spat hook); missed | 2 for 4"},
		{"Released a small blue on the left long, ~150 lb. Lost a white at the leader.",
			"blue released 68kg~ @left long; white lost (at the boat)"},
		{"caught 5 blackfin, released 3", "2 blackfin landed; 3 blackfin released"},
		{"5 bites, 2 missed, 1 pulled hook", "2 bite; 2 missed; lost (pulled hook) | of 5"},
		{"lost a wahoo and a mahi", "wahoo lost; mahi lost"},
		{"Two mahi in the box, one tossed back", "2 mahi landed; released"},
		{"Hooked up at 11:20, fought it 40 minutes, straightened the hook", "lost 11:20 (straightened hook)"},
		{"sailfish on the left rigger at 9:15, jumped off", "sailfish lost @left rigger 9:15"},
		{"Wahoo sharked at the boat. Nothing else.", "Wahoo lost (shark)"},
		{"one short strike, one good one about 60 lbs on the corner (gaffed)", "missed; landed 27.2kg~ @corner"},
		{"No bites in the morning. 1 YFT 55# at 2:30pm", "YFT landed 24.9kg 14:30"},
		{"boxed 3 wahoo 28, 31 and 40 lb", "wahoo landed 12.7kg; wahoo landed 14.1kg; wahoo landed 18.1kg"},
		{"a 40 pounder on the shotgun, tagged it", "released 18.1kg @shotgun"},
		{"missed, missed, boated", "missed; missed; landed"},
		{"had a nice wahoo on for 5 min, came unbuttoned", "wahoo lost (pulled hook)"},
		{"1 hooked 1 lost", "lost"},
		{"let 2 small bluefin go, kept one 47 in, 61 lb on the scale", "2 bluefin released; landed 119.4cm 27.7kg*"},
		// United Kingdom, Australia, South Africa
		{"Two strikes, one dropped, one tagged - striped marlin est 85kg",
			"lost; striped marlin released 85kg~ | of 2"},
		{"Black marlin T&R approx 120kg, 10:20am", "Black marlin released 120kg~ 10:20"},
		{"bust off by a big one on the short corner", "lost @short corner (broke off)"},
		{"2 yellowfin (18.4kg, 22.1kg), 1 skippy let go", "yellowfin landed 18.4kg; yellowfin landed 22.1kg; skippy " +
			"released"},
		{"couple of knockdowns but no hook-ups", "2 missed"},
		// Spanish
		{"Picada en la caña izquierda a las 10:20, se soltó", "lost @caña izquierda 10:20"},
		{"2 picadas, un dorado de 8 kg a bordo", "bite; dorado landed 8kg | of 2"},
		{"Perdimos un atún junto al barco", "atún lost"},
		{"marlin blanco liberado, unos 30 kg", "marlin blanco released 30kg~"},
		{"sin picadas", "nothing"}, {"nada de nada", "nothing"},
		{"dos bonitos y un atún rojo de 45 kg en báscula", "2 bonitos landed; atún rojo landed 45kg*"},
		{"a las 9:40 peto de 12,5 kg, largo 110 cm", "peto landed 110cm 12.5kg 9:40"},
		// French
		{"1 touche ratée à 9h15", "missed 9:15"},
		{"Thon rouge 38 kg relâché, un autre décroché", "Thon rouge released 38kg; lost"},
		{"2 germons de 9 et 11 kg, rien l'après-midi", "germons landed 9kg; germons landed 11kg"},
		{"bredouille", "nothing"}, {"pas une touche de la journée", "nothing"},
		{"3 touches, 1 listao remis à l'eau, 2 ratées", "listao released; 2 missed | of 3"},
		{"espadon env. 60 kg, bas de ligne cassé", "espadon lost 60kg~ (broke off)"},
		// Italian
		{"Due abboccate, un tonno rilasciato circa 40 kg, uno slamato", "tonno released 40kg~; lost | of 2"},
		{"alletterato 5 kg in barca", "alletterato landed 5kg"},
		{"niente", "nothing"},
		{"1 aguglia imperiale slamata sottobordo", "aguglia imperiale lost"},
		{"tonno rosso 120 cm, 32,5 kg pesato", "tonno rosso landed 120cm 32.5kg*"},
		// Portuguese
		{"Um dourado 6 kg, um toque sem ferrar", "dourado landed 6kg; missed"},
		{"espadim azul libertado, mais ou menos 150 kg", "espadim azul released 150kg~"},
		{"perdeu-se um wahoo, partiu a linha", "wahoo lost (broke off)"},
		{"sem toques", "nothing"},
		{"2 batidas às 10h30, 1 atum patudo 35 kg", "bite 10:30; atum patudo landed 35kg | of 2"},
		// German
		{"2 Fehlbisse, 1 Thunfisch 18 kg gelandet", "2 missed; landed 18kg"},
		{"Biss um 10:15 Uhr, ausgestiegen", "lost 10:15"},
		{"Goldmakrele 92 cm zurückgesetzt", "Goldmakrele released 92cm"},
		{"kein Biss", "nothing"},
		{"ein Wahoo verloren, Vorfach gerissen", "Wahoo lost (broke off)"},
		{"Schneider, nichts gefangen", "nothing"},
	})
}

// One that was lost is another fish than the one told before it, in each tongue.
func TestLostOne(t *testing.T) {
	checkTold(t, []saying{
		{"wahoo 61 in 38 lb; lost one", "wahoo landed 154.9cm 17.2kg; lost"},
		{"cavala 155 cm 17,6 kg; perdi um na linha", "cavala landed 155cm 17.6kg; lost"},
		{"bonito 43 cm; perdimos uno", "bonito landed 43cm; lost"}, {"thon 80 cm; perdu un", "thon landed 80cm; lost"},
		{"tonno 80 cm; perso uno", "tonno landed 80cm; lost"},
		{"dorado 80 cm; einen verloren", "dorado landed 80cm; lost"},
		{"wahoo 12 kg; perdi uma cana na linha", "wahoo landed 12kg | left: perdi uma cana na linha"},
	})
}

// A word for the girth that is cut short ends no sentence.
func TestCutGirth(t *testing.T) {
	for text, want := range map[string]string{"tonno rosso 81 cm circ. 57 (R)": "81 57",
		"atum 92 cm perím. 60, 12 kg": "92 60",
		"wahoo 140 cm. 2 mahi":        "140 0"} {
		f := FishList(text, Defaults{})
		if len(f) == 0 || fmt.Sprintf("%.0f %.0f", f[0].LengthCm, f[0].GirthCm) != want {
			t.Errorf("%s: %+v, want %s", text, f, want)
		}
	}
}

// A length times a girth without a unit, and a girth, are in the log's; where nothing says which, they are
// not told.
func TestTapeUnit(t *testing.T) {
	for unit, want := range map[string]string{"in": "132.1 55.9", "cm": "52.0 22.0", "": "0.0 0.0"} {
		for _, text := range []string{"wahoo 52x22 ~30", "wahoo 52 x 22"} {
			fish := FishList(text, Defaults{TapeUnit: unit})
			if len(fish) != 1 || fmt.Sprintf("%.1f %.1f", fish[0].LengthCm, fish[0].GirthCm) != want {
				t.Errorf("%s in %q: %+v, want %s", text, unit, fish, want)
			}
		}
	}
}

// Weights that only spaces part are one of each of so many fish; what stands behind the last is said of all.
func TestMeasuresInTurn(t *testing.T) {
	checkTold(t, []saying{
		{"2 wahoo (31lb 27lb scale)", "wahoo landed 14.1kg*; wahoo landed 12.2kg*"},
		{"3 mahi (9lb 12lb 8lb guess), 1 miss", "mahi landed 4.1kg~; mahi landed 5.4kg~; mahi landed 3.6kg~; missed"},
		{"3 mahi 80cm 74cm", "mahi landed 80cm; mahi landed 74cm; mahi landed"},
		{"2 wahoo 120cm 18kg", "2 wahoo landed 120cm 18kg"},
		{"2 sail rel (64in taped)", "2 sail released | left: 64in taped"},
		{"2 mahi (80cm each)", "2 mahi landed 80cm"},
		{"1 wahoo (31lb 27lb scale)", "wahoo landed 14.1kg* | left: 31lb 27lb scale"},
	})
}

// So many of a word that tells a fate only where it is all of a text are so many bites; of a place it tells none.
func TestCountedAlone(t *testing.T) {
	checkTold(t, []saying{
		{"2 off, 3 kings", "2 lost; 3 kings landed"}, {"4 mahi + 1 off", "4 mahi landed; lost"},
		{"2 tapped", "2 missed"},
		{"strike on the left rigger, off", "bite @left rigger"}, {"bite, tapped", "missed"},
		{"wahoo 3 miles off the point", ""}, {"2 wahoo, 1 off the ledge", "2 wahoo landed"},
	})
}

// A fate behind its fish is not that of the next one, which has a count of its own.
func TestFateBehind(t *testing.T) {
	checkTold(t, []saying{
		{"1 wahoo pulled hook + 2 mahi", "wahoo lost (pulled hook); 2 mahi landed"},
		{"lost a wahoo and a mahi", "wahoo lost; mahi lost"},
		{"4 mahi big one 18lb guess. 1 mahi lost", "3 mahi landed; mahi landed 8.2kg~; mahi lost"},
		{"tonno rosso 109 cm ca. 21 kg", "tonno rosso landed 109cm 21kg~"},
		{"1 sail rel (64in taped)", "sail released 162.6cm"},
	})
}

// A count of bites, and the fish that came of them, are no bites twice; nor is the biggest, or one, of fish told before
// another fish.
func TestOfThoseTold(t *testing.T) {
	checkTold(t, []saying{
		{"6 bites for 4 mahi, all released", "2 bite; 4 mahi released | of 6"},
		{"5 wahoo 1 mahi, all kept. Biggest wahoo 21 kg on the scales",
			"4 wahoo landed; mahi landed; wahoo landed 21kg*"},
		{"3 mahi and 2 wahoo kept, one mahi 88cm", "2 mahi landed; 2 wahoo landed; mahi landed 88cm"},
		{"3 mahi kept. One mahi 88cm", "3 mahi landed; mahi landed 88cm"},
		{"1 mahi kept, lost a third mahi", "mahi landed; mahi lost"},
		{"Wahoo 120cm. Lost one earlier", "Wahoo landed 120cm; lost"},
		{"here she comes, 1 mahi", "mahi landed"},
	})
}

// Fish of a stop for another way of fishing are of it.
func TestStopForBottomFish(t *testing.T) {
	told := Tell("2 wahoo kept. Stopped for a bottom fish, 4 snapper 3 cod, then trolled home, 1 mahi", Defaults{})
	if got := show(told); got != "2 wahoo landed; 4 snapper landed; 3 cod landed; mahi landed" {
		t.Error(got)
	}
	for _, b := range told.Bites {
		if want := map[string]string{"snapper": "bottom", "cod": "bottom"}[b.Name]; b.Method != want {
			t.Errorf("%s: of %q, want %q", b.Name, b.Method, want)
		}
	}
}

// A measure in a bracket behind several fish of a list is that of one of them.
func TestOneOfAList(t *testing.T) {
	for text, want := range map[string]string{
		"2 sail rel (64in taped)":                       "sail released 162.6cm; sail released",
		"2 mahi (80cm each)":                            "2 mahi 80cm",
		"2 wahoo, stopped for a bottom fish, 4 snapper": "2 wahoo",
	} {
		if got := showList(FishList(text, Defaults{})); got != want {
			t.Errorf("%s: %s, want %s", text, got, want)
		}
	}
}

// One more of which no more is told is left; what a later clause says of it is a bite of its own.
func TestOneMore(t *testing.T) {
	checkTold(t, []saying{
		{"Lost a mahi, then another, came off.", "mahi lost; lost"},
		{"Lost a mahi, then another.", "mahi lost | left: another"},
		{"Perdimos un dorado y luego otro, igual, se soltó", "dorado lost; lost"},
		{"Un altro wahoo perso", "wahoo lost"},
		{"Une touche pour rien. Une bonite perdue dans un saut.", "missed; bonite lost"},
		{"Una picada para nada, un peto perdido en un salto", "missed; peto lost"},
		{"Décrochée sans qu'on la voie", "lost"},
		{"Lost a beast at the boat", "lost (at the boat)"},
	})
}
