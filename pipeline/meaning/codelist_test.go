package meaning

import (
	"fmt"
	"maps"
	"slices"
	"strings"
	"testing"

	"wakeledger/pipeline/plan"
)

// TestCodeLists holds that the codes of one heading are read where several stand in one cell or line, whatever
// parts them, and that other texts are none.
func TestCodeLists(t *testing.T) {
	want := map[string]string{"k": "in the box", "f": "freed", "w": "worked loose, gone"}
	for _, text := range []string{"K=in the box F=freed W=worked loose, gone",
		"K = in the box; F = freed; W = worked loose, gone",
		"(K = in the box, F = freed, W = worked loose, gone)", "kg. K=in the box / F=freed / W=worked loose, gone",
		"K = in the box F = freed W = worked loose, gone"} {
		if got := codesIn(text); !maps.Equal(got, want) {
			t.Errorf("%q: %v, expected %v", text, got, want)
		}
	}
	want = map[string]string{"b": "boated", "tl": "tagged + let go", "x": "hooked, then off",
		"n": "nipped - hit, never on", "ob": "no bites"}
	for _, text := range []string{
		"B boated, TL tagged + let go, X hooked, then off, N nipped - hit, never on.   OB = no bites.   ditto = as " +
			"above",
		"B boated; TL - tagged + let go; X hooked, then off; N nipped - hit, never on. OB = no bites. We tape all"} {
		if got := codesIn(text); !maps.Equal(got, want) {
			t.Errorf("%q: %v, expected %v", text, got, want)
		}
	}
	for _, text := range []string{"we met on the way = late, a = b", "K = kept, K = killed", "nothing here"} {
		if got := equalsCodes(text); got != nil {
			t.Errorf("%q is no list of codes: %v", text, got)
		}
	}
	l := readLegend([]string{"K=kept W=worked loose F=freed. lb off the dock scale"})
	if l.more("w") != "worked loose" ||
		l.more("f") != "freed" {
		t.Errorf("codes without a mark between them: %v", l.words)
	}
	l = readLegend([]string{"wet=lines in s=new speed n=lines changed b=bite / q=missed x=lost d=boated / ~=by eye"})
	if l.more("wet") != "lines in" || l.more("s") != "new speed" || l.more("d") != "boated" ||
		l.more("q") != "missed" || l.codes["q"] != nil {
		t.Errorf("lists of codes between slashes: %v", l.words)
	}
	l = readLegend([]string{`Weight in kg. In "how" write S for the scale, F for the formula, E for the eye. Only S is science.`})
	if how := l.codes["how"]; how["s"] != "scale" || how["e"] != "eye" {
		t.Errorf("codes told in a sentence: %v", l.codes)
	}
	l = readLegend([]string{"pounds: s after it means we hung it on the scale. No s is Dell guessing"})
	if l.scaleCodes["s"] == "" || !l.bare {
		t.Errorf("a letter behind a weight: %v, others are guesses %t", l.scaleCodes, l.bare)
	}
	if l := readLegend([]string{"k kept / w came off at the boat / f let go / q quirky"}); l.more("q") != "quirky" ||
		l.more("f") != "released" {
		t.Errorf("a code in words that nobody knows: %v", l.words)
	}
}

// TestLettersOfLegend holds that what a log says of a letter stands above what the letter is usually short for.
func TestLettersOfLegend(t *testing.T) {
	p := planOf(t, "", "L = lifted aboard and kept; F = fell off; S = short bite, missed\n\n"+
		"Date|Time|Fish|Result\n2026-06-03|06:40|Wahoo|L\n2026-06-03|07:40|Mahi|F\n2026-06-04|08:40|Mahi|landed\n"+
		"2026-06-05|08:40||S\n2026-06-06|08:40|Mahi|lost\n2026-06-07|06:40|Wahoo|L\n2026-06-07|07:40|Mahi|landed")
	b := p.Find("outcome")
	if b == nil || b.Codes["l"] != "lifted aboard and kept" || b.Codes["s"] != "short bite, missed" {
		t.Errorf("the legend's letters are not used: %s", summary(p))
	}
}

// TestHeadsOfLists holds that codes are read behind "codes", in brackets and on lines of their own.
func TestHeadsOfLists(t *testing.T) {
	const rows = "\n\nDate|Time|Fish|Fate\n2026-06-03|06:40|Wahoo|IN\n2026-06-03|07:40|Mahi|G\n" +
		"2026-06-04|08:40|Mahi|IN\n" +
		"2026-06-05|08:40||N\n2026-06-06|08:40|Mahi|G\n2026-06-07|06:40|Wahoo|N"
	for _, key := range []string{"Codes: IN in the box, G got off, N no hookup",
		"Fate codes: IN=in the box G=got off N=no hookup",
		"Fate (IN in the box; G got off; N no hookup)", "IN - in the box\nG - got off\nN - no hookup"} {
		b := planOf(t, "", key+rows).Find("outcome")
		if b == nil || b.Codes["g"] != "got off" || b.Codes["in"] != "in the box" {
			t.Errorf("%q is not used: %v", key, b)
		}
	}
}

// TestContestedLetter holds that L is asked about where nothing else in the column says landed.
func TestContestedLetter(t *testing.T) {
	const rows = "Date|Time|Fish|Result\n2026-06-03|06:40|Wahoo|L\n2026-06-03|07:40|Mahi|M\n2026-06-04|08:40|Mahi|L\n" +
		"2026-06-05|08:40||M\n2026-06-06|08:40|Mahi|R\n2026-06-07|06:40|Wahoo|"
	for last, want := range map[string]string{"L": Unexplained, "K": "", "boated": ""} {
		if b := planOf(t, "", rows+last).Find("outcome"); b == nil || b.Codes["l"] != want {
			t.Errorf("%s: L is not %q: %v", last, want, b)
		}
	}
}

// TestContestedScale holds that S beside a code that may be the scale's is asked about.
func TestContestedScale(t *testing.T) {
	const rows = "Date|Time|Fish|Kg|Scale or guess\n2026-06-03|06:40|Wahoo|12|S\n2026-06-03|07:40|Mahi|8|%[1]s\n" +
		"2026-06-04|08:40|Mahi|7|S\n2026-06-05|08:40|Mahi||\n2026-06-06|08:40|Mahi|6|%[1]s\n2026-06-07|06:40|Wahoo|9|S"
	for other, want := range map[string]bool{"W": true, "G": false, "E": false, "": false} {
		b := planOf(t, "", fmt.Sprintf(rows, other)).Find("weighed")
		if b == nil || (b.Codes["s"] == Unexplained) != want {
			t.Errorf("beside %q, asked about S is not %t: %v", other, want, b)
		}
	}
}

// mixedKey is a key that lists codes beside a heading and below one, and explains other headings and words.
const mixedKey = "Fate|\nQ|quit before it was hooked\nA|aboard, kept\nF|freed at the boat\n|\n" +
	"Inches / Round|to the fork, " +
	"and the girth\nWay|T trolled, D drifting, J jig\n" +
	"Wt|lb; S = scales; E = eyeballed\nNew pace|another speed"

// TestMixedKeys holds that a sheet of codes beside headings, codes below a heading and explanations is a key.
func TestMixedKeys(t *testing.T) {
	const rows = "Date|Time|Way|Fish|Fate|Inches|Round|Wt|S/E\n2026-06-03|06:40|T|Wahoo|A|44|18|21|S\n" +
		"2026-06-03|07:40|D|Mahi|F|30||8|E\n2026-06-04|08:10|T||Q||||\n2026-06-04|09:10|J|Mahi|A|31||9|S"
	l := inferred(t, "log", nil, "Bites", rows, "Explained", mixedKey)
	if len(l.Keys) != 1 || len(l.Data()) != 1 {
		t.Fatalf("%d key sheets, %d blocks with data: expected one of each", len(l.Keys), len(l.Data()))
	}
	p := l.Data()[0].Plan
	for column, want := range map[string]map[string]string{
		"outcome": {"q": "quit before it was hooked", "a": "aboard, kept", "f": "freed at the boat"},
		"method":  {"t": "trolled", "d": "drifting", "j": "jig"}, "weighed": {"s": "scales", "e": "eyeballed"}} {
		b := p.Find(column)
		for code, means := range want {
			if b == nil || b.Codes[code] != means {
				t.Errorf("%s %s: expected %q: %v in %s", column, code, means, b, summary(p))
			}
		}
	}
	lures := inferred(t, "log", nil, "Bites", rows, "Boxes",
		"Wahoo|top tray\nMahi|second tray\nTuna|deck box\nOther|bag")
	if len(lures.Keys) > 0 {
		t.Errorf("a list of what stands in cells explains no heading")
	}
}

// TestKeyBeside holds that a key at the right of a table is used, and is no column of it.
func TestKeyBeside(t *testing.T) {
	const rows = "Date|Time|Way|Fish|Fate||||\n2026-06-03|06:40|T|Wahoo|K||%s\n2026-06-03|07:40|D|Mahi|F||%s\n" +
		"2026-06-04|08:40|T|Mahi|W|||\n2026-06-05|08:40|J|Squid|K|||\n2026-06-05|09:40|T|Wahoo|K|||"
	for _, key := range [][2]string{{"Way|T troll, D drift, J jig", "Fate|K kept, F freed, W worked loose"},
		{"Way: T troll, D drift, J jig|", "Fate: K=kept F=freed W=worked loose|"}} {
		p := planOf(t, "", fmt.Sprintf(rows, key[0], key[1]))
		if b := p.Find("method"); b == nil || b.Codes["j"] != "jig" {
			t.Errorf("the ways of fishing: %s", summary(p))
		}
		if b := p.Find("outcome"); b == nil || b.Codes["w"] != "worked loose" {
			t.Errorf("the fates: %s", summary(p))
		}
		if slices.ContainsFunc(p.Unknown, func(u plan.Unknown) bool { return strings.HasPrefix(u.Heading, "column") }) {
			t.Errorf("the key is a column: %s", summary(p))
		}
	}
	loose := planOf(t, "", "Date|Time|Fish|Fate||\n2026-06-03|06:40|Wahoo|kept||hot "+
		"sun\n2026-06-03|07:40|Mahi|lost||rain")
	if len(loose.Unknown) != 1 {
		t.Errorf("remarks at the right are no key: %s", summary(loose))
	}
}

// TestMarks holds that a mark at a figure is what the log says: a guess, or a weight from a scale, and that
// weights without it are then from none.
func TestMarks(t *testing.T) {
	const rows = "Date|Time|Fish|Fate|Kg\n2026-06-03|06:40|Wahoo|kept|12.5\n2026-06-03|07:40|Mahi|kept|8*\n" +
		"2026-06-04|08:40|Mahi|kept|6.2\n2026-06-05|08:40|Tuna|kept|30*"
	for text, want := range map[string]map[string]string{
		"Kg on the club's scale, * = guessed": {"8*": "~8", "12.5": ""},
		"(*) a ojo":                           {"30*": "~30"}, "* weighed by eye": {"8*": "~8"},
		"* = on the scale":     {"8*": "8", "12.5": "~12.5"},
		"* = lost on the gaff": {"8*": ""}} {
		b := planOf(t, "", text+"\n\n"+rows).Find("scale_kg")
		for cell, means := range want {
			if b == nil || b.Codes[cell] != means {
				t.Errorf("%s: %s is not %q: %v", text, cell, means, b)
			}
		}
	}
}

// TestGuessExplained holds that a word for a guess stays one where the legend says so in words that are not known.
func TestGuessExplained(t *testing.T) {
	l := readLegend([]string{`kg = galley scale; "about" = Mario's word for it`, "abt = lost", "sar = sardine"})
	short := l.abbreviations()
	if short["about"] != "" || short["abt"] != "lost" || short["sar"] != "sardine" {
		t.Errorf("what is written out: %v", short)
	}
	l = readLegend([]string{`"como" = a puro tanteo`, `"ish" = the boss says`})
	if short := l.abbreviations(); short["como"]+short["ish"] != "" {
		t.Errorf("a guess is written out: %v", short)
	}
}

// TestToldOfHeadings holds that a list behind words that head nothing says what the headings of a table mean.
func TestToldOfHeadings(t *testing.T) {
	const rows = "date|in|up|rods|bite|on|boat|let go\n2026-06-15|6:00|14:30|5|6|4|1|0\n" +
		"2026-06-22|6:45|14:45|5|7|3|2|1\n2026-06-29|6:15|14:15|5|5|5|3|0\n2026-07-06|6:30|15:00|4|1|0|0|0"
	p := planOf(t, "", "How I count: bite = all that hit a rod. on = came tight. boat = got it to the boat "+
		"(kept OR let go). let go = out of those.\n\n"+rows)
	if l := p.Find("landed_n"); l == nil || l.Said != "got it to the boat" || !p.Inclusive {
		t.Errorf("%s, inclusive: %t", summary(p), p.Inclusive)
	}
}

// TestPointBeforeEquals holds that the point of a word cut short ends no sentence before its equals sign.
func TestPointBeforeEquals(t *testing.T) {
	l := readLegend([]string{
		"one row a pass. str. = every bite, hooked or not. brd. = brought alongside, freed ones too"})
	if l.more("str") != "every bite, hooked or not" || l.more("brd") != "brought alongside, freed ones too" {
		t.Errorf("%v", l.words)
	}
}

// TestAlsoCounted holds that a key's words for what is among a count are none for the count.
func TestAlsoCounted(t *testing.T) {
	for said, want := range map[string]string{"all bites, missed too": "all bites",
		"tutti i colpi, anche a vuoto": "tutti i colpi", "every fish on deck (incl. those freed)": "every fish on deck",
		"bites missed": "bites missed",
		"kept, lost":   "kept, lost"} {
		if got := withoutAlso(said); got != want {
			t.Errorf("%q: %q, expected %q", said, got, want)
		}
	}
}

// TestCodesUnderATable holds that sentences under a table explain its codes, where each of two or more tells a fate or
// a way to weigh.
func TestCodesUnderATable(t *testing.T) {
	const rows = "Date|Time|Fish|Fate|Kg|How\n2026-06-03|06:40|tuna|landed|6.2|B\n2026-06-03|07:10|tuna|lost||\n" +
		"2026-06-04|08:10|tuna|landed|5|V\n2026-06-05|08:10|tuna|landed|7.1|B\n"
	p := planOf(t, "", rows+"\nB: on the dock scale. V: guessed by eye. Every bite is here.|||||")
	if b := p.Find("weighed"); b == nil || b.Codes["b"] != "on the dock scale" {
		t.Errorf("codes under the table: %v of %s", b, summary(p))
	}
	if codes := codesEach("N: wind from the north. V: guessed by eye."); codes != nil {
		t.Errorf("the wind's letters are codes: %v", codes)
	}
}

// TestHowItWasWeighed holds that a column of scales and guesses is read under a heading whose word for weight is that
// for money too.
func TestHowItWasWeighed(t *testing.T) {
	for _, head := range []string{"Peso como", "Peso", "Gewicht wie", "Poids comment", "Weight method"} {
		p := planOf(t, "", "Date|Fish|Cm|Kg|"+head+"\n2026-06-03|tuna|80|6.2|scales\n2026-06-03|tuna||4|by eye\n"+
			"2026-06-04|mahi|90|5|scales\n2026-06-05|tuna||9|by eye")
		if p.Find("weighed") == nil {
			t.Errorf("%s: %s", head, summary(p))
		}
	}
}

// TestCodesOfTwoLists holds that a code which stands for two things in two lists of one legend is read in each column
// as the list says that has all of its cells.
func TestCodesOfTwoLists(t *testing.T) {
	p := inferred(t, "log.csv", nil, "log",
		"g=lines in v=new speed a=bite s=all up / m=missed s=shook off, lost p=kept\n"+
			"Date|Time|Ev|Knots|Rods|Fish|End\n2026-06-03|06:00|g|7|4||\n2026-06-03|07:00|a||||m\n"+
			"2026-06-03|07:30|v|8|||\n2026-06-03|07:40|a|||wahoo|p\n2026-06-03|08:00|s||||\n2026-06-04|06:00|g|7|4||\n"+
			"2026-06-04|07:20|a||||s\n2026-06-04|09:00|s||||\n2026-06-05|06:00|g|7|5||\n2026-06-05|09:00|s||||").Data()
	if len(p) != 1 {
		t.Fatalf("%d tables of records, expected 1", len(p))
	}
	event, outcome := p[0].Plan.Find("event"), p[0].Plan.Find("outcome")
	if event == nil || event.Codes["s"] != "all up" || outcome == nil ||
		!strings.HasPrefix(outcome.Codes["s"], "shook off") {
		t.Errorf("%s", summary(p[0].Plan))
	}
	if codeGroups("k=kept l=lost / s=scale e=by eye") != nil {
		t.Error("lists that do not differ are one")
	}
}
