package meaning

import (
	"fmt"
	"maps"
	"slices"
	"strings"
	"testing"

	"wakeledger/pipeline/plan"
	"wakeledger/pipeline/unit"
)

// blockOf is the first block of a sheet.
func blockOf(l *Log, sheet string) *Understood {
	i := slices.IndexFunc(l.Blocks, func(u *Understood) bool { return u.Plan.Name == sheet })
	if i < 0 {
		return nil
	}
	return l.Blocks[i]
}

// TestRepeated leaves out the rows that a page copied from the year before still has at its foot.
func TestRepeated(t *testing.T) {
	const head = "Date|Start|End|Knots|Bites|Kept\n"
	const old = "2025-06-03|06:00|08:00|8|3|2\n2025-06-04|06:00|08:00|9|4|1\n2025-06-05|06:00|08:00|8|5|4\n" +
		"2025-06-06|06:00|08:00|9|1|0"
	const now = "2026-06-03|06:00|08:00|8|3|2\n2026-06-04|06:00|08:00|9|4|1\n2026-06-09|06:00|08:00|9|4|1\n"
	l := inferred(t, "log.xlsx", nil, "2025", head+old, "2026",
		head+now+"2025-06-05|06:00|08:00|8|5|4\n2025-06-06|06:00|08:00|9|1|1")
	if u := blockOf(l, "2026"); u == nil || len(u.Plan.Drop) != 1 || !u.Plan.Drop[5] {
		t.Errorf("expected row 5 alone to be left out: %+v", u)
	}
	if u := blockOf(l, "2025"); u == nil || len(u.Plan.Drop) != 0 {
		t.Error("rows of the first page are left out")
	}
}

// TestCatalogues takes a list of tackle that strikes name by tags for no fish.
func TestCatalogues(t *testing.T) {
	const strikes = "Date|Time|Tag|Outcome|Species|Length " +
		"cm\n2026-06-03|06:10|T01|landed|Albacore|81\n2026-06-04|06:20|T02|lost||\n" +
		"2026-06-05|07:10|T03|landed|Wahoo|120\n2026-06-06|07:30|T01|missed||"
	for _, c := range []struct {
		what, strikes string
		want          bool
	}{
		{"tackle", strikes, true},
		{"fish whose tags no strike names", "Date|Time|Outcome|Species|Length " +
			"cm\n2026-06-03|06:10|landed|Albacore|81\n2026-06-04|06:20|lost||\n2026-06-05|07:10|landed|Wahoo|120",
			false},
	} {
		list := "Type|Tag|Weight g\nBullet|T01|70\nJet|T02|85\nSlant|T03|160"
		if !c.want {
			list = "Species|Tag|Weight g\nAlbacore|T01|7000\nWahoo|T02|8500\nWahoo|T03|16000"
		}
		l := inferred(t, "log.xlsx", nil, "Strikes", c.strikes, "List", list)
		u := blockOf(l, "List")
		if u == nil || (u.Proof || u.Plan.Kind == "") != c.want {
			t.Errorf("%s: %s, proof %v", c.what, summary(u.Plan), u.Proof)
		}
	}
}

// TestColumnsExplained holds that notes which say what a column's codes mean are used.
func TestColumnsExplained(t *testing.T) {
	l := readLegend([]string{"Fish sheet, column M (how mass obtained): S = scales at the ramp. C = calculated from " +
		"length and girth. E = by eye.", "column F: B boated, R released, L lost.",
		"Times are ship's time, 24 h."})
	for head, want := range map[string]map[string]string{"m": {"s": "scales at the ramp",
		"c": "calculated from length and girth", "e": "by eye."}, "f": {"b": "boated", "r": "released", "l": "lost."}} {
		if got := l.codes[head]; !maps.Equal(got, want) {
			t.Errorf("column %s: %v, expected %v", head, got, want)
		}
	}
}

// TestSayings holds that what a legend says of a word goes on behind a comma, in a comment too, and that
// codes behind a heading are of its column.
func TestSayings(t *testing.T) {
	l := readLegend([]string{"# rats = small ones shaken off at the stern, let go. gone = hooked, came off",
		"# way L = lures, pulled   S = still, livies on the bottom", "# end B = boated, S = shaken off", "B = bonito"})
	for word, want := range map[string]string{"rats": "small ones shaken off at the stern, let go",
		"gone": "hooked, came off", "b": "bonito", "s": "still, livies on the bottom"} {
		if got := l.more(word); got != want {
			t.Errorf("%s: %q, expected %q", word, got, want)
		}
	}
	if got := readLegend([]string{"– XX : perdu (casse)", "- OK: kept", "- wind: north"}).words; len(got) != 3 ||
		got["xx"] != "perdu (casse)" || got["ok"] != "kept" {
		t.Errorf("a list of codes: %v", got)
	}
	for head, want := range map[string]map[string]string{
		"Way": {"l": "lures, pulled", "s": "still, livies on the bottom"}, "End": {"b": "boated", "s": "shaken off"}} {
		if got := l.codesBehind(head); !maps.Equal(got, want) {
			t.Errorf("codes behind %s: %v, expected %v", head, got, want)
		}
	}
}

// TestFatesOfLegend holds that the last that a legend's words tell of a fish is what a count is of, unless its
// heading says that it is of others.
func TestFatesOfLegend(t *testing.T) {
	const rows = "\nDate|Start|End|Rods|aku|rats|gone\n2026-06-03|06:00|08:00|5|4|2|2\n2026-06-04|06:00|08:30|5|0||\n" +
		"2026-06-05|06:00|08:00|5|6|1|1\n2026-06-06|06:00|08:00|4|3||3"
	p := planOf(t, "", "# aku = skipjack in the box\n# rats = small ones shaken off at the stern, let go. gone = "+
		"hooked, came off\n"+rows)
	for name, want := range map[string]string{"released_n": "rats", "lost_n": "gone"} {
		if b := p.Find(name); b == nil || b.Heading != want {
			t.Errorf("%s is not under %q: %s", name, want, summary(p))
		}
	}
	if len(p.Catch) != 1 || p.Catch[0].Heading != "aku" {
		t.Errorf("a code that the legend says is a fish is no count of it: %s", summary(p))
	}
	counts := strings.NewReplacer("gone", "hooked", "|4|2|2", "|4|2|7", "|0||", "|0||0", "|6|1|1", "|6|1|9", "|3||3",
		"|3||6").Replace(rows)
	p = planOf(t, "", "# hooked = came tight, also those lost later\n"+counts)
	if b := p.Find("hooked_n"); b == nil || b.Heading != "hooked" || p.Binds("lost_n") {
		t.Errorf("of those hooked: %s", summary(p))
	}
}

// TestOthersBeside holds that fish named under "other" are counted beside those of the columns where these are
// too few to have them in them, and asked about where they may be among them.
func TestOthersBeside(t *testing.T) {
	const head = "Date|Start|End|Rods|albacore|let go|lost|other\n2026-06-03|06:00|08:00|5|4|2|1|1 bonito let go\n" +
		"2026-06-04|06:00|08:30|5|0|||\n2026-06-05|06:00|08:00|5|6|1|2|"
	for last, want := range map[string]int{"\n2026-06-06|06:00|08:00|4|0||3|2 bonito let go": 2,
		"\n2026-06-06|06:00|08:00|4|3|2|3|2 bonito let go": 1, "\n2026-06-06|06:00|08:00|4|1||3|2 albacore let go": 1} {
		if p := planOf(t, "", head+last); len(p.Catch) != want {
			t.Errorf("%q: %d counts of fish, expected %d: %s", last, len(p.Catch), want, summary(p))
		}
	}
	for columns, want := range map[string]int{"Wahoo|Dorado": 3, "Wahoo|Bonito": 2} {
		p := planOf(t, "", "Date|Start|End|Rods|"+columns+"|Lost|Other\n2026-06-03|06:00|08:00|5|4|2|1|1 bonito\n"+
			"2026-06-04|06:00|08:30|5|1|||\n2026-06-05|06:00|08:00|5|6|1|2|2 bonito\n2026-06-06|06:00|08:00|5|1|3|2|")
		if len(p.Catch) != want {
			t.Errorf("beside %s: %d counts of fish, expected %d: %s", columns, len(p.Catch), want, summary(p))
		}
	}
}

// TestOthersOfAHand holds that fish under "other" are not counted beside those of the columns where another table
// of the same hand has a fish of a column under it.
func TestOthersOfAHand(t *testing.T) {
	const head = "Date|Start|End|Rods|Wahoo|Dorado|Other\n"
	for other, want := range map[string]int{"Wahoo let go": 2, "1 bonito": 3} {
		l := inferred(t, "log.xlsx", nil, "May", head+"2026-05-03|06:00|08:00|5|4|2|1 "+
			"bonito\n2026-05-09|06:00|08:00|5|1||",
			"June", head+"2026-06-03|06:00|08:00|5|4|2|"+other+"\n2026-06-09|06:00|08:00|5|1||")
		if p := blockOf(l, "May").Plan; len(p.Catch) != want {
			t.Errorf("%s: %d counts of fish, expected %d: %s", other, len(p.Catch), want, summary(p))
		}
	}
}

// TestWaysOfLosing holds that fish lost in several ways are added up, unless one column may be the sum of the
// others, and that how one way is explained makes no other count of it.
func TestWaysOfLosing(t *testing.T) {
	const rows = "\n2026-06-03|06:00|08:00|5|2|0|2\n2026-06-04|06:00|08:30|5||1|1\n2026-06-05|06:00|08:00|5|1|0|\n" +
		"2026-06-06|06:00|08:00|5||1|3"
	for head, want := range map[string]int{"Pulled|Broke off|Mahi": 2, "Lost|Pulled|Mahi": 2, "Pulled|Wahoo|Mahi": 1} {
		p := planOf(t, "", "Broke off = hooked and boated by a seal\n\nDate|Start|End|Rods|"+head+rows)
		lost, adds := 0, 0
		for _, b := range p.Bindings {
			if b.Column.Name == "lost_n" {
				lost++
				adds += int(one(b.Adds))
			}
		}
		if lost != want || adds != want-1 {
			t.Errorf("%s: %d counts of fish lost, %d of them added: %s", head, lost, adds, summary(p))
		}
	}
	p := planOf(t, "", "Date|Start|End|Rods|Lost|Pulled|Mahi\n2026-06-03|06:00|08:00|5|3|1|2\n"+
		"2026-06-04|06:00|08:30|5|1|1|1\n2026-06-05|06:00|08:00|5|2|0|\n2026-06-06|06:00|08:00|5|1|0|3")
	if slices.ContainsFunc(p.Bindings, func(b plan.Binding) bool { return b.Adds }) {
		t.Errorf("some of those lost are added to them all: %s", summary(p))
	}
}

// TestSaidToBeIn holds what a log says of fish that were let go: in the counts, or not.
func TestSaidToBeIn(t *testing.T) {
	for text, want := range map[string]bool{
		"fish columns = aboard incl. those let go": true, "Released = out of the fish counted": true,
		"boated: what comes aboard (the released are in the count)": true, "los devueltos van incluidos": true,
		"Freed fish are in the count": true, "soltados = de los contados": true,
		"fish columns do not include the released": false, "Released = not out of the fish counted": false,
		"let go: over the side, alive":           false,
		"Released: out of the water for seconds": false, "los soltados van en otra columna": false,
		"Lost = out of the ones hooked": false, `All boated. "Turned loose" is out of these. Lbs by scale`: true,
		"The released are out of the box": false, "let go = out of those.": true, "let go = out of the water": false,
		"boat = got it to the boat (kept OR let go)": true, "boat = got it to the boat (kept)": false,
		"on = came tight (kept OR let go)": false,
	} {
		if got := lexicon(t).includesLetGo(text); got != want {
			t.Errorf("%q: %t, expected %t", text, got, want)
		}
	}
}

// TestSaidToBeApart holds that fish let go are said to be counted apart, and that this says nothing of the others.
func TestSaidToBeApart(t *testing.T) {
	for text, want := range map[string]bool{"arriba = subidos y muertos, los soltados van aparte.  kg = báscula": true,
		"on deck (let go fish are counted separately)": true, "à bord, les relâchés sont en plus": true,
		"a bordo, i rilasciati sono in più": true, "released fish come on top": true,
		"the lost ones are apart": false, "let go fish are not apart": false,
		"released: tied apart from the boat": false,
		"the rods are kept apart":            false} {
		if got := letGoApart(text); got != want {
			t.Errorf("%q: %t, expected %t", text, got, want)
		}
	}
	const rows = "Fecha|Inicio|Fin|Líneas|Picadas|arriba|soltados\n2026-06-03|06:00|08:00|5|4|2|1\n" +
		"2026-06-04|06:00|08:30|5|3|1|1\n2026-06-05|06:00|08:00|5|6|3|3\n2026-06-06|06:00|08:00|4|3|2|0"
	for line, open := range map[string]bool{"* arriba = subidos y muertos, los soltados van aparte": false,
		"* arriba = subidos y muertos": true} {
		u := inferred(t, "log", nil, "", line+"\n\n"+rows).Data()[0]
		if b := u.Plan.Find("landed_n"); b == nil || b.Heading != "arriba" || u.LandedOpen() != open {
			t.Errorf("%s: %s, open %t", line, summary(u.Plan), u.LandedOpen())
		}
	}
}

// TestNamedBeside holds that a count among those of species is of a fish that no list has where other cells of its
// rows name it, and that fish stand with their lengths under a heading with a unit of length.
func TestNamedBeside(t *testing.T) {
	const head = "Date|Start|End|Rods|Wahoo|Grinner|Mahi|Lost|Longest %s\n"
	const rows = "2026-06-03|06:00|08:00|5|1|2||2|%[1]s 61\n2026-06-04|06:00|08:30|5||1|1|0|%[1]s 58\n" +
		"2026-06-05|06:00|08:00|5|2|||1|Wahoo 114\n2026-06-06|06:00|08:00|5|2||1|1|Wahoo 121"
	for named, want := range map[string]int{"Grinner": 3, "Wahoo": 2} {
		p := planOf(t, "", fmt.Sprintf(head, "cm")+fmt.Sprintf(rows, named))
		if b := p.Find("species"); len(p.Catch) != want || b == nil || b.Sized != unit.Centimetre {
			t.Errorf("%s: %d counts of fish, expected %d: %s", named, len(p.Catch), want, summary(p))
		}
	}
	if p := planOf(t, "", fmt.Sprintf(head, "")+fmt.Sprintf(rows, "Wahoo")); p.Binds("species") {
		t.Errorf("lengths without a unit: %s", summary(p))
	}
}

// TestSomeOfThose holds that "of those let go" right behind a count in words for more than one thing makes it the
// fish boated, that water is its temperature, and that fish told with their kilos are no weights.
func TestSomeOfThose(t *testing.T) {
	p := planOf(t, "", "subidas: las que llegan a bordo. agarradas: todas\n\n"+
		"Fecha|Inicio|Fin|Lineas|Agua|agarradas|subidas|de ellas soltadas|Peces y kilos\n"+
		"2026-06-03|06:00|08:00|5|19,5|3|2|1|2 dorados 6,1 / 4,2\n2026-06-04|06:00|08:30|5|20,1|1|1||1 dorado 5,5\n"+
		"2026-06-05|06:00|08:00|5|20,4|2|1|0|1 dorado 70 cm\n"+
		"2026-06-06|06:00|08:00|5|20,2|4|3|1|3 dorados 4,5 / 3 / 5,1")
	for name, want := range map[string]string{"landed_n": "subidas", "released_n": "de ellas soltadas",
		"sea_temp_c": "Agua"} {
		if b := p.Find(name); b == nil || b.Heading != want {
			t.Errorf("%s is not under %q: %s", name, want, summary(p))
		}
	}
	if !p.Inclusive || !p.Reads("fishlist") || p.Binds("scale_kg") {
		t.Errorf("%t: %s", p.Inclusive, summary(p))
	}
}

// TestFatesOfALine holds that a line of nothing but codes and fates is a legend, and that short names of
// fish are.
func TestFatesOfALine(t *testing.T) {
	l := readLegend([]string{"b boated / f freed, or let go / x lost (had been on) / n missed, no hook",
		"bon bonito  alba albacore  white = white marlin"})
	short := l.abbreviations()
	for code, want := range map[string]string{"b": "landed", "x": "lost", "n": "missed", "alba": "albacore"} {
		if short[code] != want {
			t.Errorf("%s is %q, expected %q of %v", code, short[code], want, short)
		}
	}
	if got := readLegend([]string{"a boat / b crew / c bait"}).abbreviations(); len(got) > 0 {
		t.Errorf("words that are no fates: %v", got)
	}
}

// TestBitesInWords holds that a heading of bites stands over a count, or over words that tell them.
func TestBitesInWords(t *testing.T) {
	const rows = "\n2026-06-03|06:00|08:00|4|%s\n2026-06-04|06:10|09:00|5|%s\n2026-06-05|06:00|09:00|4|%s"
	for _, head := range []string{"Bites", "the strikes we had", "Touches", "Abboccate", "Bisse"} {
		for want, cells := range map[string][3]any{"count": {"2", "0", "1"},
			"story": {"yft kept 98cm, wahoo lost", "mahi released", "missed, 2 sail released"}} {
			p := inferred(t, "log.csv", nil, "Log", "Date|Start|End|Lines|"+head+
				fmt.Sprintf(rows, cells[0], cells[1], cells[2])).Blocks[0].Plan
			i := slices.IndexFunc(p.Bindings, func(b plan.Binding) bool { return b.Index == 4 })
			if i < 0 || p.Bindings[i].Column.Parse != want {
				t.Errorf("%s over %v: %s, expected a %s", head, cells, summary(p), want)
			}
		}
	}
}

// TestCountsWithThoseLetGo holds when counts by species have the fish let go in them: where a line
// above says so, or the strikes add up; else it is open, but where more were let go than counted.
func TestCountsWithThoseLetGo(t *testing.T) {
	const rows = "\n2026-06-03|06:00|11:00|6|7|4|1|3\n2026-06-04|06:00|12:00|6|8|2||1\n" +
		"2026-06-05|06:00|12:00|6|8|1|2|\n2026-06-06|06:00|12:00|6|8|3||2"
	const head = "Date|In|Out|Lines|Knots|Albacore|Skipjack|Let go"
	for _, c := range []struct {
		what, sheet     string
		inclusive, open bool
	}{
		{"nothing said", head + rows, false, true},
		{"said above", "fish columns = in the boat incl. ones let go|||||||\n|||||||\n" + head + rows, true, false},
		{"more let go than counted", head + strings.Replace(rows, "|2||1", "|2||9", 1), false, false},
		{"no room for them beside, in a row where another may have had a miss",
			"Date|In|Out|Lines|Bites|Albacore|Skipjack|Let go\n2026-06-03|06:00|11:00|6|1|1||1\n" +
				"2026-06-04|06:00|12:00|6|3|1|1|1\n2026-06-05|06:00|12:00|6|4|1|2|\n2026-06-06|06:00|12:00|6|2|||",
			true, false},
	} {
		u := inferred(t, "log.xlsx", nil, "2026", c.sheet).Data()[0]
		if u.Plan.Inclusive != c.inclusive || u.LandedOpen() != c.open {
			t.Errorf("%s: %s, inclusive %v, open %v", c.what, summary(u.Plan), u.Plan.Inclusive, u.LandedOpen())
		}
	}
}

// TestOfThose holds that fish "of which" some were let go have these in them.
func TestOfThose(t *testing.T) {
	const rows = "\n2026-06-03|06:00|11:00|6|7|9|4|3\n2026-06-04|06:00|12:00|6|8|7|3|1\n" +
		"2026-06-05|06:00|12:00|6|8|5|2|0\n2026-06-06|06:00|12:00|6|8|8|3|2"
	for head, want := range map[string]bool{
		"Date|In|Out|Lines|Knots|Bites|Landed|of which released":       true,
		"Data|Inizio|Fine|Canne|Nodi|Abboccate|A bordo|di cui ril.":    true,
		"Date|Début|Fin|Lignes|Noeuds|Touches|Au bateau|dont relâchés": true,
		"Date|In|Out|Lines|Knots|Bites|Landed|Released":                false,
	} {
		u := inferred(t, "log.xlsx", nil, "2026", head+rows).Data()[0]
		if !u.Plan.Binds("released_n") || u.Plan.Inclusive != want {
			t.Errorf("%s: %s, inclusive %v", head, summary(u.Plan), u.Plan.Inclusive)
		}
	}
}

// TestTripsNotTrolled holds that a trip all of whose stretches were fished otherwise is none, and
// that hours of trips which another table has stretch by stretch leave the trips with their days.
func TestTripsNotTrolled(t *testing.T) {
	const legs = "Leg|Trip|In|Out|Rods|kt|Mode\n1|T1|06:00|08:00|6|7|troll\n2|T1|08:10|09:00|6|8|troll\n" +
		"3|T2|06:00|08:00|4||bottom\n4|T3|06:00|08:00|6|7|troll\n5|T3|08:30|09:00|4||bottom"
	l := inferred(t, "log.xlsx", nil, "Trips",
		"Trip|Date|From|To|Crew\nT1|2026-06-03|05:30|09:30|Ansa\nT2|2026-06-04|05:30|09:30|Orla\n"+
			"T3|2026-06-05|05:30|09:30|Ansa", "Legs", legs)
	u := blockOf(l, "Trips")
	if u.Plan.Kind != plan.Trips || !maps.Equal(u.Plan.Apart, map[int64]bool{3: true}) {
		t.Errorf("%s, apart %v: expected trips without row 3", summary(u.Plan), u.Plan.Apart)
	}
}

// TestBitesUnderFish holds that a column of fish whose cells tell each bite with its clock, and that some were lost,
// is one of bites, and that a list of what was caught is not.
func TestBitesUnderFish(t *testing.T) {
	const head = "Date|Times|Lines|Knots|Fish\n"
	for text, want := range map[string]string{
		"2026-06-03|06:00-08:00|4|7|6:40 wahoo lost at the boat; 7:10 mahi boxed\n2026-06-04|06:00-09:00|4|7|6:20 " +
			"tuna missed\n2026-06-05|06:00-09:00|4|7|7:20 mahi boxed; 8:05 mahi pulled hook": "story",
		"2026-06-03|06:00-08:00|4|7|2 wahoo 12.1 kg, 14 kg; 1 mahi\n2026-06-04|06:00-09:00|4|7|1 tuna 30.5 kg\n" +
			"2026-06-05|06:00-09:00|4|7|mahi 7.5 kg, mahi 4.2 kg": "fishlist",
	} {
		if p := planOf(t, "June", head+text); !p.Reads(want) {
			t.Errorf("%q is read as %s, expected %s", text, summary(p), want)
		}
	}
}

// TestTripsOfRemarks holds that a table of which remarks alone seemed to tell of bites is one of trips where other
// tables tell of them.
func TestTripsOfRemarks(t *testing.T) {
	l := inferred(t, "log.xlsx", nil, "Trips", "Trip|Date|Left port|Back in port|Notes\n1|2026-06-03|05:00|12:00|\n"+
		"2|2026-06-04|05:00|12:00|nothing all morning\n3|2026-06-05|05:00|12:00|", "Sets",
		"Trip|Set|Start|End|Lines|Knots\n1|A|06:00|08:00|4|8\n1|B|08:00|09:00|4|9\n2|A|06:00|08:00|4|8\n"+
			"3|A|06:00|08:30|5|8", "Bites", "Trip|Set|Time|Species|Outcome\n1|A|06:40|wahoo|landed\n"+
			"1|B|08:20|mahi|lost\n3|A|07:10|mahi|landed\n3|A|07:50||missed")
	if u := blockOf(l, "Trips"); u == nil || u.Plan.Kind != plan.Trips {
		t.Errorf("the trips are read as %s", summary(u.Plan))
	}
	if u := blockOf(l, "Bites"); u == nil || !u.Plan.Binds("leg") {
		t.Errorf("the letters under Set are no stretches: %s", summary(u.Plan))
	}
}
