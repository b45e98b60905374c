package phrase

import (
	"strconv"
	"strings"
	"testing"
)

// More captains; what is left is asked about, the rest is what a careful human reads.
func TestTellMoreCaptains(t *testing.T) {
	checkTold(t, []saying{
		{"dorado 99 cm, 8.6 kg luggage scale kept, freezer, port", "dorado landed 99cm 8.6kg*"},
		{"albacore 75 cm kept, freezer, the middle one", "albacore landed 75cm"},
		{"ono ~15 lb, I was at 9 kts when it hit; lost something big, half the spool and pulled the hook",
			"ono landed 6.8kg~; lost (pulled hook)"},
		{"hooked, gone after 5 min", "lost"}, {"2 kept, 1 kept", "2 landed; landed"},
		{"One 30 in, kept. One 25 in mahi let go", "landed 76.2cm; mahi released 63.5cm"},
		{"Two wahoo on. One 52 in, kept, 41 lb whole on the dealer's scale. Lost the other one alongside.",
			"wahoo landed 132.1cm 18.6kg*; wahoo lost"},
		{"Two mahi. 30 in, kept. Other 25 in, let go", "mahi landed 76.2cm; mahi released 63.5cm"},
		{"Two mahi. One 30 in, kept.", "2 mahi landed | left: One 30 in"},
		{"2 tuna. 47 in, kept", "2 tuna landed | left: 47 in"},
		{"Landed two, 40 in and 33 in. Let the 33 go, kept the 40", "landed 101.6cm; released 83.8cm"},
		{"Came tight at noon, fought it a while, gone", "lost 12:00"},
		{"0715 44 in, released", "released 111.8cm"},
		{"3 for 5 on yellowfin, best 62 lbs", "yellowfin landed 28.1kg | 3 for 5"},
		{"Had a double on the riggers at 0815, landed one mahi 22#, other one threw the hook",
			"mahi landed 10kg; lost (spat hook)"},
		{"7:50 am white marlin on the right rigger, came off after 3 jumps", "white marlin lost @right rigger 7:50"},
		{"8:30 wahoo 38#, 8:45 wahoo 41#, 9:10 cut off", "wahoo landed 17.2kg 8:30; wahoo landed 18.6kg 8:45; lost " +
			"9:10 (cut off)"},
		{"One bite at 10:40, never saw it", "bite 10:40"},
		{"2 bites no hookups", "2 missed"},
		{"raised a blue marlin on the left teaser, wouldn't eat", ""},
		{"Big blue crashed the short left and missed the hook twice", "blue missed @short left"},
		{"Got covered up with blackfin, boxed 6 and let the rest go", "6 landed | left: let the rest go"},
		{"Blue alongside, est. 60 kg. Tagged and released, swam off strongly", "Blue released 60kg~"},
		{"Wahoo! Lost it at the rail", "Wahoo lost (at the boat)"},
		{"Mahi landed. Sailfish! Line snapped", "Mahi landed; Sailfish lost (broke off)"},
		{"Mahi, wahoo. Lost two", "2 lost | left: wahoo / Mahi"},
		{"Thun im Drill, Vorfach durchgebissen", "Thun lost (broke off)"},
		{"Bonito 61 cm, zurück", "Bonito released 61cm"},
		{"Um vier zurück im Hafen", ""},
		{"3 dourados, 1 deles solto. 2 falhados", "2 dourados landed; dourados released; 2 missed"},
		{"1 serra medida 88 cm solta", "serra released 88cm"},
		{"1 atum ferrado, saltou e foi", "atum lost"},
		{"1 atum partiu linha, 1 dourado cortou", "atum lost (broke off); dourado lost (cut off)"},
		{"White marlin 3 for 5 (1 pulled off, 1 never came tight). All let go.",
			"White marlin lost (pulled hook); White marlin missed; 3 White marlin released"},
		{"Bluefin 2 for 3: kept one 46 in, let one go, third one pulled off",
			"Bluefin landed 116.8cm; Bluefin released; Bluefin lost (pulled hook)"},
		{"Sail 0 for 1, jumped off. 1 mahi", "Sail lost; mahi landed"},
		{"2 mahi, big one 27.5 in, 2 knockdowns no hookup", "mahi landed; mahi landed 69.8cm; 2 missed"},
		{"mahi 31 in, broke off something mean", "mahi landed 78.7cm; lost (broke off)"},
		{"Hooked up: blue marlin", "blue marlin hooked"},
		{"Lost at the boat (mahi, maybe 10)", "mahi lost (at the boat) | left: maybe 10"},
		{"Hits: wahoo, mahi", "wahoo bite | left: mahi"},
		{"Sail tagged and released, swam off strongly", "Sail released"},
		{"1/3 on sails", "left: 1/3 on sails"},
		{"0 for 2 on wahoo. Both pulled hooks.", "2 lost (pulled hook) | 0 for 2 | left: on wahoo"},
		{"missed strike on center rigger @ 0940", "missed @center rigger 9:40"},
		{"Landed 4 mahi (biggest 18 lb), lost 2", "3 mahi landed; mahi landed 8.2kg; 2 lost"},
		{"mahi x3, 12-15 lbs each", "3 mahi landed 6.1kg~"},
		{"Wahoo - 45 lb (on scale at marina)", "Wahoo landed 20.4kg*"},
		{"dropped a nice one at the boat, heartbreaker", "lost (at the boat)"},
		{"Yellowfin 47\" released, Yellowfin 51\" 88 lb kept",
			"Yellowfin released 119.4cm; Yellowfin landed 129.5cm 39.9kg"},
		{"blackfin tuna 18 lb, false albacore released", "blackfin tuna landed 8.2kg; false albacore released"},
		{"hooked 3 wahoo landed 2 (31# and 44#)", "wahoo hooked; wahoo landed 14.1kg; wahoo landed 20kg"},
		{"6 hits, 4 fish: 3 dolphin and 1 wahoo 29lb", "2 bite; 3 dolphin landed; wahoo landed 13.2kg | of 6"},
		{"Quiet morning. One knock on the lumo sprocket, no stick.", "missed"},
		{"First fish 9:12am - YFT 38kg T+R", "YFT released 38kg 9:12"},
		{"lost a good fish after an hour, hook straightened", "lost (straightened hook)"},
		{"sharks got 2 of 3 tuna", "left: sharks got 2 of 3 tuna"},
		{"Bit off on the shotgun, 8:05", "lost @shotgun 8:05 (cut off)"},
		{"caught and released 2 sailfish", "2 sailfish released"},
		{"tagged two stripes est 60 and 75 kg", "stripes released 60kg~; stripes released 75kg~"},
		{"Striped marlin hooked 11:05 lost 11:30", "Striped marlin lost 11:05"},
		{"One YFT 24kg, 1 skipjack, lost another YFT at the gaff",
			"YFT landed 24kg; skipjack landed; YFT lost (at the boat)"},
		{"two kahawai kept for bait", "2 kahawai landed"},
		{"Perdido un peto grande a las 9:15, rompió el bajo de línea", "peto lost 9:15 (broke off)"},
		{"Dos picadas falladas y un bonito de 3 kg", "2 missed; bonito landed 3kg"},
		{"1 patudo 28 kg embarcado, 2 bonitos sueltos", "patudo landed 28kg; 2 bonitos released"},
		{"marlin azul soltado a las 11:40, estimado 120 kg", "marlin azul released 120kg~ 11:40"},
		{"Tres atunes: 12, 14 y 15,5 kg", "atunes landed 12kg; atunes landed 14kg; atunes landed 15.5kg"},
		{"Nos picó un marlin en el tangón de babor pero no se clavó", "marlin missed @tangón de babor"},
		{"ninguna picada, mucho sargazo", "nothing"},
		{"2 thons rouges relâchés (30 et 45 kg environ)", "thons rouges released 30kg~; thons rouges released 45kg~"},
		{"Départ sur la canne de gauche à 10h05, décroché", "lost @canne de gauche 10:05"},
		{"Une bonite de 4 kg gardée, une touche manquée", "bonite landed 4kg; missed"},
		{"3 départs: 1 germon 8 kg, 2 décrochés", "germon landed 8kg; 2 lost | of 3"},
		{"espadon voilier relâché, 25 kg estimé", "espadon voilier released 25kg~"},
		{"Rien, juste des dauphins", "nothing"},
		{"Strike alle 9:40, slamato subito", "lost 9:40"},
		{"Preso un tonno di 35 kg, rilasciati due tonnetti", "tonno landed 35kg; 2 tonnetti released"},
		{"2 alletterati e 1 lampuga 4 kg", "2 alletterati landed; lampuga landed 4kg"},
		{"nessuna abboccata, mare mosso", "nothing"},
		{"una ricciola 18 kg a bordo, persa un'altra", "ricciola landed 18kg; lost"},
		{"1 atum 20 kg, 2 gaiados devolvidos", "atum landed 20kg; 2 gaiados released"},
		{"Marlin azul cravado às 11:20, soltou-se ao fim de 20 min", "Marlin azul lost 11:20"},
		{"três batidas, uma ferrada, wahoo 15 kg", "2 bite; wahoo landed 15kg | of 3"},
		{"nada, mar muito picado", "nothing"},
		{"Ein Biss auf der linken Rute um 9.30 Uhr, nicht gehakt", "missed @linken Rute 9:30"},
		{"atún 97 cm 14 kg; perdí uno en la línea", "atún landed 97cm 14kg; lost"},
		{"thon 12 kg; perdu un sur la ligne", "thon landed 12kg; lost"},
		{"atum 3 kg, perdemos um no costado", "atum landed 3kg; lost"},
		{"doblete, los dos a bordo", "2 landed"}, {"doublé, les deux à bord", "2 landed"},
		{"Doppel, beide im Boot", "2 landed"}, {"doppietta, tutti e due in barca", "2 landed"},
		{"2 Bonitos 3 kg, 1 Thun 25 kg verloren", "2 Bonitos landed 3kg; Thun lost 25kg"},
		{"Blauer Marlin ca. 150 kg released", "Blauer Marlin released 150kg~"},
		{"nichts, nur Delfine gesehen", "nothing"},
		{"3 Bisse, 1 gelandet (Goldmakrele 7 kg), 2 verloren", "Goldmakrele landed 7kg; 2 lost | of 3"},
		{"Mahi 36\", mahi 34\", both released", "Mahi released 91.4cm; mahi released 86.4cm"},
		{"Nice wahoo! 52 lbs on the boga. Lost its buddy.", "wahoo landed 23.6kg* | left: Lost its buddy"},
		{"found a pallet with mahi on it, put 5 in the box, lost 3", "5 landed; 3 lost"},
		{"4 strikes, 3 hookups, 2 landed (mahi 12, mahi 15)",
			"bite; hooked; 2 landed | of 4 | left: mahi 12 / mahi 15"},
		{"Bite 0705 SR YFT 34\" rel", "YFT released 86.4cm @SR 7:05"},
		{"0912 - LS - wahoo - 47in/28lb - boxed", "wahoo landed 119.4cm 12.7kg 9:12"},
		{"yft x2 ~25 lb", "2 yft landed 11.3kg~"},
		{"2 YFT, 1 BET lost", "2 YFT landed; BET lost"},
		{"#1 8:10 yft 40in 35lb, #2 9:30 yft miss", "yft landed 101.6cm 15.9kg 8:10; yft missed 9:30"},
		{"Wahoo bit on the stinger, chopped the skirt, no hook up", "Wahoo missed @stinger"},
		{"Ate a green lure, tight for a minute then pulled", "lost (pulled hook)"},
		{"Trip 4: one blackfin 14lb, 2 short strikes", "blackfin landed 6.4kg; 2 missed"},
		{"just one knockdown", "missed"},
		{"1 miss, off dodo", "missed; dodo lost"}, {"dodo off the point", ""},
		{"short strike, missed", "missed"}, {"bite, yellowfin boated, kept", "yellowfin landed"},
		{"bite on C, missed", "missed @C"}, {"bite on middle, lost it", "lost @middle"},
		{"knocked down, missed", "missed"}, {"knocked down, missed; knocked down, missed", "missed; missed"},
		{"mahi 42in box; king 30in let go", "mahi landed 106.7cm; king released 76.2cm"},
		{"12 in box, 2 in the box", "12 landed; 2 landed"},
		{"Fish on at 7:20! nice 41 lb wahoo", "wahoo landed 18.6kg 7:20"},
		{"quick bite right after lines in, missed. Dead after that", "missed"},
		{"got a 27\" schoolie yft, tossed it back", "yft released 68.6cm"},
		{"12:40 double header mahi, 14 and 16 lbs", "mahi landed 6.4kg 12:40; mahi landed 7.3kg 12:40"},
		{"double hookup 2 yft 45# and 52#", "yft landed 20.4kg; yft landed 23.6kg"},
		{"Landed one, lost one", "landed; lost"},
		{"landed 1 lost 1 missed 3", "landed; lost; 3 missed"},
		{"hkd 3 ldd 2", "hooked; 2 landed"},
		{"1 blue 300 est, rel at boat", "blue released | left: 1 blue 300 est"},
		{"3 whites 1 sail all released", "3 whites released; sail released"},
		{"1-1-0", ""},
		{"lost 2 lures to wahoo", "left: lost 2 lures to wahoo"},
		{"wahoo cut off 2 lures", "left: wahoo cut off 2 lures"},
		{"Spooled by something big", "lost (line wrap)"},
		{"Biggest fish of the year, YFT 142 lb on certified scale", "YFT landed 64.4kg*"},
		{"no fish but saw 2 marlin free jumping", "nothing"},
		{"marked fish at 200 ft but no bites", "nothing"},
		{"had 3 on, landed 2", "hooked; 2 landed"},
		{"5 yft: 18, 22, 25, 31, 40 lb", "yft landed 8.2kg; yft landed 10kg; yft landed 11.3kg; yft landed 14.1kg; " +
			"yft landed 18.1kg"},
		{"one and only bite at 3:15pm, spit it at the boat", "lost 15:15 (spat hook)"},
		{"yellowfin tuna (released)", "yellowfin tuna released"},
		{"Ono 32.5 lb @ 9:40 on long rigger", "Ono landed 14.7kg @long rigger 9:40"},
		{"hit on shotgun, no hook", "missed @shotgun"},
		{"2 BFT 52\", 55\" released", "BFT released 132.1cm; BFT released 139.7cm"},
		{"Three good bites, went 1 for 3, wahoo 33lb", "2 bite; wahoo landed 15kg | 1 for 3"},
		{"first fish of the season, albie 24 lb!", "albie landed 10.9kg"},
		{"let the first one go (38\"), kept the second (44\", 41 lb)", "released 96.5cm; landed 111.8cm 18.6kg"},
		{"wahoo tail wrapped, 44 lbs", "left: 44 lbs"},
		{"lost him right at the gaff", "lost (at the boat)"},
		{"Pulled the hook on a big mahi", "mahi lost (pulled hook)"},
		{"2 dorados de unos 6 kg cada uno", "2 dorados landed 6kg~"},
		{"Picó un atún grande en la línea central, se desclavó a los 5 minutos", "atún lost @línea central"},
		{"Primera picada 8:15, marlin rayado, soltado", "marlin rayado released 8:15"},
		{"9h20: thon jaune 22 kg. 10h40: raté. 11h15: dorade coryphène 6 kg",
			"thon jaune landed 22kg 9:20; missed 10:40; dorade coryphène landed 6kg 11:15"},
		{"12:30 strike sulla canna lunga, tonno 28 kg in barca", "tonno landed 28kg @canna lunga 12:30"},
		{"08h50 dourado 5,5 kg; 10h15 wahoo perdido; 11h00 toque",
			"dourado landed 5.5kg 8:50; wahoo lost 10:15; bite 11:00"},
		{"9:15 Goldmakrele 6 kg, 10:40 Fehlbiss, 11:20 Bonito released",
			"Goldmakrele landed 6kg 9:15; missed 10:40; Bonito released 11:20"},
		{"Un marlin a vista, no picó", ""},
		{"dos petos perdidos, uno embarcado de 18 kg", "2 petos lost; landed 18kg"},
		{"aucune touche mais une chasse de bonites", "nothing"},
		{"2 hits 1 landed yft 52lb", "bite; yft landed 23.6kg | of 2"},
		{"Knocked down twice on the left long, neither stuck", "2 missed @left long"},
		{"got the skunk", "nothing"},
		{"mahi-mahi 14 lb, 22 lb and one lost boatside", "mahi-mahi landed 6.4kg; lost (at the boat) | left: 22 lb"},
		{"Slow pick, 4 albacore in 3 hours, biggest 31 lb", "3 albacore landed; albacore landed 14.1kg"},
		{"Albies everywhere but no bft", ""},
		{"tripled up on skipjack, let em all go", "3 skipjack released"},
		{"11:10 blue one shotgun 250ish, tail wrapped & released",
			"blue released @shotgun 11:10 | left: 11:10 blue one shotgun 250ish"},
		{"wahoo 8:05 and 8:40, both boxed, 33 and 29 lb", "wahoo landed 13.2kg 8:05 | left: 33"},
		{"Short corner got slammed 10:30 - pulled hook", "lost @Short corner 10:30 (pulled hook)"},
		{"one YFT (95 lb by tape), one lost to a seal", "YFT landed 43.1kg~; lost (seal)"},
		{"No joy. Lots of weed.", "nothing"},
		{"10:25 long rigger - wahoo - spat hook", "wahoo lost 10:25 (spat hook)"},
		{"Sail 1 for 2", "1 for 2 | left: Sail"},
		{"lost 1, broke off at leader; kept 1, 27.5in blackfin", "lost (broke off); blackfin landed 69.8cm"},
		{"caught a 52 inch wahoo and a 30 inch mahi", "wahoo landed 132.1cm; mahi landed 76.2cm"},
		{"3 small dolphin thrown back", "3 dolphin released"},
		{"only action was a knockdown at noon", "missed 12:00"},
		{"Big mako ate the hooked albacore", "left: Big mako ate the hooked albacore"},
		{"2 marlin up, 1 bite, 0 hooked", "bite | of 1"},
		{"Double on white marlin, released one, other jumped off", "white marlin released; white marlin lost"},
		{"yellowfin 61 lb scale; bigeye 84 lb scale; lost bigeye",
			"yellowfin landed 27.7kg*; bigeye landed 38.1kg*; bigeye lost"},
		{"hooked and released a sailfish at 1:45", "sailfish released 1:45"},
		{"missed a bite on the right short, then boated a wahoo on the same rod at 9:50, 38 lb",
			"missed @right short; wahoo landed 17.2kg 9:50"},
		{"4 for 4 mahi to 20 lb", "mahi landed 9.1kg | 4 for 4"},
		{"Un dorado perdido y otro de 9 kg", "dorado lost; landed 9kg"},
		{"3 picadas: 1 perdida, 1 soltado, 1 a bordo (atún 22 kg)", "lost; released; atún landed 22kg | of 3"},
		{"Bonitos pequeños, soltamos 6", "6 released | left: Bonitos pequeños"},
		{"marlin blanco de 28 kg, marcado y liberado, 12:15", "marlin blanco released 28kg 12:15"},
		{"Deux touches sur le tangon, pas ferré", "2 missed @tangon"},
		{"Thon 45 kg (pesé), 2 bonites relâchées", "Thon landed 45kg*; 2 bonites released"},
		{"Raté un espadon à 11h", "espadon missed 11:00"},
		{"1 thazard 12 kg cassé au bateau", "thazard lost 12kg"},
		{"Tonno da 60 kg circa, perso dopo un'ora per rottura del terminale", "Tonno lost 60kg~ (broke off)"},
		{"2 strike, 1 ferrata, 1 tonno 18,4 kg", "bite; tonno landed 18.4kg | of 2"},
		{"rilasciata un'aguglia imperiale di 15 kg", "aguglia imperiale released 15kg"},
		{"Um marlin branco solto, 25 kg a olho", "marlin branco released 25kg~"},
		{"Wahoo 14 kg, atum 8 kg, dois dourados 3 kg", "Wahoo landed 14kg; atum landed 8kg; 2 dourados landed 3kg"},
		{"perdemos um peixe grande às 13h15", "lost 13:15"},
		{"2 Anbisse, 1 Wahoo 16 kg gelandet, 1 ausgestiegen", "Wahoo landed 16kg; lost | of 2"},
		{"Thun 31,5 kg gewogen, Länge 118 cm", "Thun landed 118cm 31.5kg*"},
		{"Segelfisch markiert und freigelassen um 11:30 Uhr", "Segelfisch released 11:30"},
		{"2 for 3, wahoo 41# & 35#, third one sharked",
			"wahoo landed 18.6kg; wahoo landed 15.9kg; lost (shark) | 2 for 3"},
		{"Hooked up short left 7:42 - YFT 36\" 28 lb. Hooked up LL 8:15, broke off",
			"YFT landed 91.4cm 12.7kg @short left 7:42; lost @LL 8:15 (broke off)"},
		{"one mahi about 15 lb and a blackfin for sushi", "mahi landed 6.8kg~; blackfin landed"},
		{"2 misses early then nothing", "2 missed"},
		{"2 thazards (16,75 kg / -) + 1 dorade 4,8 kg", "thazards landed 16.8kg; thazards landed; dorade landed 4.8kg"},
		{"2 thazards (- / 16,75 kg)", "thazards landed; thazards landed 16.8kg"},
		{"3 wahoo (31 lb / - / 28 lb)", "wahoo landed 14.1kg; wahoo landed; wahoo landed 12.7kg"},
		{"7:15 strike, pulled hook. 7:40 strike, 50 lb yft. 9:02 missed.",
			"lost 7:15 (pulled hook); yft landed 22.7kg 7:40; missed 9:02"},
		{"boated 2 of 4 bites: 31lb wahoo, 12lb mahi",
			"wahoo landed 14.1kg; mahi landed 5.4kg | left: boated 2 of 4 bites"},
		{"had a sail on for a few jumps", "sail hooked"},
		{"small wahoo on the stbd flat, released at boat 9:35", "wahoo released @stbd flat 9:35"},
		{"yellowfin double, 38 and 41 pounds", "yellowfin landed 17.2kg; yellowfin landed 18.6kg"},
		{"wahoo (43\", 18lb), mahi (rel), missed one", "wahoo landed 109.2cm 8.2kg; mahi released; missed"},
		{"Lost a big one on the shotgun when the leader chafed, then 2 mahi 6 and 9 lbs",
			"lost @shotgun (chafed leader); mahi landed 2.7kg; mahi landed 4.1kg"},
		{"3 king, 1 cuda (released)", "3 king landed; cuda released"},
		{"Nothing till 11, then a nice 62 lb yft on the long rigger. Missed one right after.",
			"yft landed 28.1kg @long rigger; missed"},
		{"a las 8:10 perdimos uno en la corta derecha", "lost @corta derecha 8:10"},
		{"Dorado de 7 kilos y dos toques más", "Dorado landed 7kg; 2 bite"},
		{"1 thon rouge 55 kg gardé, 1 cassé", "thon rouge landed 55kg; lost"},
		{"9h40 double touche, 1 germon 7,5 kg, 1 décroché", "germon landed 7.5kg; lost | of 2"},
		{"12.10 abboccata a vuoto, 13.05 tonno 22 kg", "missed 12:10; tonno landed 22kg 13:05"},
		{"1 wahoo de 17 kg às 9h40, outro perdido ao lado do barco", "wahoo landed 17kg 9:40; lost (at the boat)"},
		{"Um ataque falhado na cana direita", "missed @cana direita"},
		{"10:05 Uhr Doppelbiss, 1 Bonito 4 kg, 1 verloren", "Bonito landed 4kg; lost"},
		{"Gelbflossenthun 22 kg um 7:50, ein Fehlbiss", "Gelbflossenthun landed 22kg 7:50; missed"},
		{"Se nos fue un wahoo grande después de 15 minutos", "wahoo lost"},
		{"got bit off twice by wahoo on mono", "2 wahoo lost (cut off)"},
		{"one bite, one fish, 22 lb mahi", "mahi landed 10kg | of 1"},
		{"Nothing on first pass. Second pass wahoo 28 lb and one that pulled",
			"wahoo landed 12.7kg; lost (pulled hook)"},
		{"lost 3 fish, all pulled hooks", "3 lost (pulled hook)"},
		{"one striped marlin, estimated 130 lbs, released in good shape", "striped marlin released 59kg~"},
		{"dos doradas de 4 y 6 kg, una perdida", "doradas landed 4kg; doradas landed 6kg; lost"},
		{"1 marlin blanc marqué relâché 11h20", "marlin blanc released 11:20"},
		{"Strike 6:55 shotgun, hooked up, wahoo 37 lb in the box", "wahoo landed 16.8kg @shotgun 6:55"},
		{"skipjack on the left corner 9:20 (kept), bigeye 10:05 lost at gaff",
			"skipjack landed @left corner 9:20; bigeye lost 10:05 (at the boat)"},
		{"2 YFT both about 40 lbs, 1 missed", "2 YFT landed 18.1kg~; missed"},
		{"2 boats near us caught mahi", "left: 2 boats near us caught mahi"},
		{"bigeye! 31.5 kg on the long rigger. next one pulled",
			"bigeye landed 31.5kg @long rigger; lost (pulled hook)"},
		{"dorado!! first for two years. 9.2 kg", "dorado landed 9.2kg"},
		{"Marlin! Thirty minutes of it, released", "Marlin released"},
		{"skipjack everywhere, kept 3 for bait. lost count of the birds", "3 landed"},
		{"sailfish released, est 30", "sailfish released"},
		{"sailfish released, maybe 2", "sailfish released | left: maybe 2"},
		{"albacore 14.2 kg, and two more lost on the same pass (triple)", "albacore landed 14.2kg; 2 lost"},
		{"2 lost, 2 more hooked later", "2 lost; 2 hooked"},
		{"bonito for bait x 4", "4 bonito landed"},
		{"something else on for a while, spat it", "lost (spat hook)"},
		{"missed one; something on and spat it", "missed; lost (spat hook)"},
		{"a strike on the long rigger, never came tight", "missed @long rigger"},
	})
}

// TestBracketedMethod holds that a fish of a list with another way of fishing in brackets behind it is none of those
// trolled.
func TestBracketedMethod(t *testing.T) {
	for text, want := range map[string]int{"1 amberjack (jig), 2 wahoo": 2, "snapper 4 kg (bottom)": 0,
		"wahoo 12 kg (fat)": 1} {
		n := 0
		for _, f := range FishList(text, Defaults{}) {
			n += f.N
		}
		if n != want {
			t.Errorf("%q: %d fish, expected %d", text, n, want)
		}
	}
	for _, f := range FishList("two wahoo in the box, 30 and 34.5 lb on the scale", Defaults{}) {
		if !f.Scaled {
			t.Errorf("%v: the scale is that of both", f)
		}
	}
	if fish := FishList("double wahoo, both boxed, 30 and 34.5 lb", Defaults{}); len(fish) != 2 || fish[0].Kg == 0 {
		t.Errorf("%v: expected two weights", fish)
	}
}

// A bite on another method is told with it, so that it is not counted for trolling.
func TestTellMethod(t *testing.T) {
	for text, want := range map[string]string{"kids caught 3 bonito on jigs at the buoy": "jig",
		"1 YFT 40# on the kite": "kite", "1 YFT 40# on the troll": "",
		"bottom fishing 7h-9h. One snapper": "bottom", "bottom fishing 7h-9h. Moved. 10h-12h 6 kn. One tuna": "",
		"isco vivo, 1 lírio": "live bait", "jigged the weed for mahi: 11 mahi": "jig", "boxed a wahoo": ""} {
		s := Tell(text, Defaults{})
		if len(s.Bites) != 1 || s.Bites[0].Method != want {
			t.Errorf("%q gives %+v, want one bite on %q", text, s.Bites, want)
		}
	}
}

// A number before a word for the scale is a weight, where the unit of the log's scale is known.
func TestScaleUnit(t *testing.T) {
	for text, want := range map[string]float64{"1 dourado 6,5 na balança": 6.5, "1 dourado 6,5": 0,
		"wahoo weighed 17.4": 17.4, "landed 1 wahoo, weighed 17.4 at home": 0,
		"2 dourados na balança": 0} {
		s := Tell(text, Defaults{ScaleUnit: "kg"})
		if len(s.Bites) != 1 || s.Bites[0].Kg != want {
			t.Errorf("%q gives %+v, want %g kg", text, s.Bites, want)
		}
	}
}

// TestOneOfEach holds that numbers behind so many fish are each of one of them, in the heading's unit, and that the
// biggest is one fish.
func TestOneOfEach(t *testing.T) {
	for text, want := range map[string]string{
		"3 albacore 9,4 / 7.5 / 8": "9.4 7.5 8", "3 albacore: 9.4 - 7.5 - 8": "9.4 7.5 8",
		"3 germons 9,4, 7,5 et 8": "9.4 7.5 8",
		"3 albacore 18/21/24":     "18 21 24", "2 albacore 9.4": "9.4 9.4", "2 wahoo 14 / 16, 1 mahi 5": "14 16 5",
		"4 wahoo 14 / 16": "14 16 0 0", "2 germons, le plus gros 6,1": "0 6.1",
		"3 wahoo the biggest 14": "0 0 14", "2 wahoo 14 / 16 / 18": "14 14",
	} {
		var got []string
		for _, f := range FishList(text, Defaults{WeightUnit: "kg"}) {
			for range max(1, f.N) {
				got = append(got, strconv.FormatFloat(f.Kg, 'f', -1, 64))
			}
		}
		if s := strings.Join(got, " "); s != want {
			t.Errorf("%q: %s, expected %s", text, s, want)
		}
	}
	for _, f := range FishList("2 wahoo 14,0 / 16.0; 1 mahi 7.0", Defaults{WeightUnit: "kg"}) {
		if !f.Exact {
			t.Errorf("%g kg of %s is not written to a fraction", f.Kg, f.Name)
		}
	}
}

// TestGirthBehindItsSign holds that a girth follows its letter or its word, where a bare length stands before.
func TestGirthBehindItsSign(t *testing.T) {
	for text, girth := range map[string]float64{"cobia 97 G41": 41, "cobia 97 girth 41": 41, "cobia 97 G41 7.5kg": 41,
		"cobia 97": 0} {
		fish := FishList(text, Defaults{LengthUnit: "cm"})
		if len(fish) != 1 || fish[0].LengthCm != 97 || fish[0].GirthCm != girth {
			t.Errorf("%s: %+v", text, fish)
		}
	}
}
