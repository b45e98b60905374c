package meaning

import (
	"strings"
	"testing"
)

// TestKeySheets holds that a sheet that explains the headings of another, or lists its codes,
// is no data of its own, and is used.
func TestKeySheets(t *testing.T) {
	const strikes = "Trip|Date|Time|Result|Rod\n1|2026-06-03|06:40|2|1\n1|2026-06-03|07:40|1|2\n" +
		"2|2026-06-04|08:10|3|1\n2|2026-06-04|09:10|2|2"
	coded := inferred(t, "log", nil, "Bites", strikes, "Codes", "Result|Means\n1|missed\n2|landed\n3|let go")
	if len(coded.Keys) != 1 || len(coded.Data()) != 1 {
		t.Fatalf("%d key sheets, %d blocks with data: expected one of each", len(coded.Keys), len(coded.Data()))
	}
	if b := coded.Data()[0].Plan.Find("outcome"); b == nil || b.Codes["3"] != "let go" {
		t.Errorf("the codes of Result are not used: %v", b)
	}
	const trips = "Date|Wet|Dry|Rods|kt|Bumps|Up\n2026-06-03|06:00|11:00|5|7|3|1\n2026-06-04|06:00|12:00|5|8|2|0"
	explained := inferred(t, "log", nil, "2026", trips, "Key", "Wet|first line in the water\nDry|last line "+
		"up\nRods|how many we pulled\nBumps|anything that touched a bait\nBest fish|L x G x G / 800")
	if len(explained.Keys) != 1 || len(explained.Data()) != 1 {
		t.Errorf("%d key sheets, %d blocks with data: expected one of each", len(explained.Keys), len(explained.Data()))
	}
	several := inferred(t, "log", nil, "Bites", strings.ReplaceAll(strikes, "|Rod\n", "|Basis\n"), "Codes",
		"Code tables|\nResult|Means\n1|missed\n2|landed\n3|soltado: estuvo clavado y se fue\n|\nBasis|Means\n1|by "+
			"the scale\n2|by eye\n|\nArea|Name\nN|north bank\nS|south bank")
	if len(several.Keys) != 1 || several.Data()[0].Plan.Find("outcome") == nil {
		t.Fatalf("%d key sheets: expected one of several lists", len(several.Keys))
	}
	if codes := several.Data()[0].Plan.Find("outcome").Codes; codes["3"] != "estuvo clavado y se fue" {
		t.Errorf("what a list defines behind a colon is not used: %v", codes)
	}
	alone := inferred(t, "log", nil, "Bites", strings.ReplaceAll(
		strings.ReplaceAll(strings.ReplaceAll(strikes, "|Rod\n", "|How\n"), "|1\n", "|T\n"), "|2\n", "|D\n"),
		"Key", "Result|\n1|missed\n2|landed\n3|let go\n|\nHow|\nT|trolled\nD|deep drop")
	if len(alone.Keys) != 1 || len(alone.Data()) != 1 || alone.Data()[0].Plan.Find("outcome") == nil ||
		alone.Data()[0].Plan.Find("outcome").Codes["3"] != "let go" {
		t.Errorf("%d key sheets: expected one of lists below a heading alone", len(alone.Keys))
	}
	behind := inferred(t, "log", nil, "Bites", "Trip|Date|Time|Result|How\n1|2026-06-03|06:40|2|T\n"+
		"1|2026-06-03|07:40|1|D\n2|2026-06-04|08:10|3|T\n2|2026-06-04|09:10|2|D",
		"Notes to self", "Setting|Value\nResult 1|missed\nResult 2|in the box\nResult 3|tagged and let go\n"+
			"How T|trolling lures\nHow D|drifting, engine off\nDivisor|800")
	if len(behind.Keys) != 1 || len(behind.Data()) != 1 || behind.Data()[0].Plan.Find("outcome") == nil ||
		behind.Data()[0].Plan.Find("outcome").Codes["3"] != "tagged and let go" {
		t.Errorf("%d key sheets: expected one whose rows name a heading and its code", len(behind.Keys))
	} else if m := behind.Data()[0].Plan.Find("method"); m == nil || m.Codes["d"] != "drifting, engine off" {
		t.Errorf("the codes of How are not used: %v", m)
	}
	const blocks = "Trip|Date|Start|End|Lines|Strike 1 Result|Strike 1 CFL (in)|Strike 2 Result|Strike 2 CFL (in)\n" +
		"1|2026-06-03|06:00|11:00|5|K|40|P|\n2|2026-06-04|06:00|11:00|5|P||M|\n3|2026-06-05|06:00|11:00|5|R|51|P|"
	fates := inferred(t, "log", nil, "2026", blocks, "Key", "K|kept\nR|released at the boat\nP|pulled the hook or "+
		"broke off\nM|missed, rod bent and straight again\nCFL|curved fork length")
	if len(fates.Keys) != 1 || len(fates.Data()) != 1 || !strings.HasPrefix(
		fates.Data()[0].Plan.Find("outcome").Codes["p"], "pulled the hook") {
		t.Errorf("%d key sheets: expected one of codes that stand in several columns", len(fates.Keys))
	}
	for _, list := range []string{"Trip|Result\n1|missed\n2|in the box\n3|let go\n3|lost",
		"Trip|Result\nA|missed\nB|in the box\nC|let go\nC|lost"} {
		trips := strings.NewReplacer("\n1|", "\nA|", "\n2|", "\nB|", "\n3|", "\nC|")
		sheet := "Trip|Date|Start|End|Lines\n1|2026-06-03|06:00|11:00|5\n2|2026-06-04|06:00|11:00|5\n" +
			"3|2026-06-05|06:00|11:00|5"
		if strings.Contains(list, "\nA|") {
			sheet = trips.Replace(sheet)
		}
		if l := inferred(t, "log", nil, "Trips", sheet, "Strikes", list); len(l.Keys) != 0 {
			t.Errorf("%q: strikes of trips are no key", list)
		}
	}
	linked := inferred(t, "log", nil, "Trips", "Trip|Date|Skipper\n1|2026-06-03|Ansa\n2|2026-06-04|Orla", "Bites",
		strikes)
	if len(linked.Keys) != 0 {
		t.Errorf("a sheet of trips is no key to their bites")
	}
}

// TestDictionary holds that a sheet with a row for each heading of the others, and for each code
// of their columns, is their key: the codes of events and fates, days not gone, and what stands for nothing.
func TestDictionary(t *testing.T) {
	const book = "Missing values: -9|||\n|||\nSheet|Variable|Code|Meaning\ndays|status|0|scrubbed; did not leave " +
		"the dock\ndays|status|1|completed\ndays|crew||persons aboard\n" +
		"events|ev|1|lines in; a period begins\nevents|ev|3|a fish touched a trolled line\nevents|ev|4|all lines " +
		"out; the period ends\nevents|spd||knots over ground\n" +
		"events|outc|0|not hooked\nevents|outc|1|hooked and lost\nevents|outc|2|boated and " +
		"kept\nevents|wtm|1|certified dock scale\nevents|wtm|3|estimate only"
	const days = "trip|date|status|crew\n2301|2023-04-01|1|3\n2302|2023-04-09|1|3\n2303|2023-04-15|0|-9\n" +
		"2304|2023-04-23|1|2"
	const events = "seq|trip|time|ev|spd|lines|outc|wt|wtm\n1|2301|06:45|1|7|4|||\n2|2301|08:16|3|||2|19.2|1\n" +
		"3|2301|09:43|3|||1||\n4|2301|10:45|4|||||\n5|2302|07:00|1|-9|3|||\n" +
		"6|2302|07:14|3|||0||\n7|2302|09:56|3|||2|40|3\n8|2302|10:30|4|||||\n9|2304|07:00|1|7|4|||\n" +
		"10|2304|09:00|4|||||"
	l := inferred(t, "log", nil, "book", book, "days", days, "events", events)
	if len(l.Keys) != 1 || len(l.Data()) != 2 {
		t.Fatalf("%d key sheets, %d blocks with data: expected one and two", len(l.Keys), len(l.Data()))
	}
	d, e := l.Data()[0].Plan, l.Data()[1].Plan
	if len(d.Ashore) != 1 {
		t.Errorf("days not gone by their code: %v of %s, unknown %v", d.Ashore, summary(d), d.Unknown)
	}
	for name, want := range map[string]string{"event 4": "all lines out", "outcome 1": "hooked and lost",
		"weighed 3": "estimate only", "speed_kn -9": "-"} {
		name, code, _ := strings.Cut(name, " ")
		if b := e.Find(name); b == nil || b.Codes[code] != want {
			t.Errorf("%s: code %s is not %q: %v", name, code, want, b)
		}
	}
	// tables named like headings, two headings in one cell, and what is missing in any column
	const shared = "table|field|value|stands for\nrun|down / up||gear down, gear up\nrun|knots||over the " +
		"ground\nhit|end|a|touched, not hooked\nhit|end|b|hooked and lost\nhit|end|c|boated and kept\n" +
		"hit|kilos||weight in kg\nany||-1|not written down (or not asked)"
	const runs = "run|date|down|up|knots\nA1|2026-06-03|06:00|09:00|7\nA2|2026-06-04|06:00|-1|8\n" +
		"A3|2026-06-05|06:00|10:00|-1\nA4|2026-06-06|06:00|10:00|7"
	const hits = "hit|run|when|end|kilos\n1|A1|06:40|c|4.2\n2|A1|07:40|a|-1\n3|A3|08:10|b|-1\n4|A3|09:10|c|6.1\n" +
		"5|A4|09:10|c|5.1"
	l = inferred(t, "log", nil, "runs", runs, "hits", hits, "book", shared)
	if len(l.Keys) != 1 || len(l.Data()) != 2 {
		t.Fatalf("%d key sheets, %d blocks with data: expected one and two", len(l.Keys), len(l.Data()))
	}
	for name, want := range map[string]string{"outcome b": "hooked and lost", "scale_kg -1": "-"} {
		name, code, _ := strings.Cut(name, " ")
		if b := l.Data()[1].Plan.Find(name); b == nil || b.Codes[code] != want {
			t.Errorf("%s: code %s is not %q: %v of %s", name, code, want, b, summary(l.Data()[1].Plan))
		}
	}
	if b := l.Data()[0].Plan.Find("end_s"); b == nil || b.Codes["-1"] != "-" {
		t.Errorf("-1 under up is not missing: %s", summary(l.Data()[0].Plan))
	}
	records := inferred(t, "log", nil, "2026", "Date|wahoo|mahi|aku\n2026-06-03|1||\n2026-06-04||2|", "Bites",
		"Date|What|Fate|Note\n2026-06-03|wahoo|landed|jet\n2026-06-04|mahi|landed|plug\n2026-06-04|mahi|lost|plug\n"+
			"2026-06-05|aku|lost|jet\n2026-06-06|aku|lost|jet")
	if len(records.Keys) != 0 {
		t.Errorf("a table of bites with days is no key to columns of species")
	}
}

// TestSessionsOfARow holds that columns headed by the first and the second session are one
// meaning each, counts too.
func TestSessionsOfARow(t *testing.T) {
	p := planOf(t, "", "Date|1st session - lines in|1st session - lines up|1st session - bites|1st session - "+
		"landed|2nd session? - lines in|2nd session - lines up|2nd session - bites|2nd session - landed\n"+
		"2026-06-03|06:00|08:00|2|1|09:00|11:00|1|0\n2026-06-04|06:10|08:00|0|0|09:10|11:00|3|2\n"+
		"2026-06-05|06:10|08:00|0|0||||")
	want := "flat: date start_s start_s end_s end_s strikes_n strikes_n landed_n landed_n"
	if got := summary(p); got != want {
		t.Errorf("got %s, expected %s", got, want)
	}
}

// TestSessionsInOtherWords holds that what is asked of a second stretch in other words than of the
// first is the same: the columns stand in one order and hold the same kinds of cells.
func TestSessionsInOtherWords(t *testing.T) {
	p := planOf(t, "", "Day|Did we fish?|First spell: when did the lines go in?|First spell: when were they all "+
		"back aboard?|First spell: how many lines?|Second spell, if any: lines in at|Second spell: all lines aboard "+
		"at|Second spell: number of lines|How many trolled fish reached the boat?|Of those, how many were let go?\n"+
		"2026-06-03|Yes|06:00|08:00|5|09:00|11:00|4|2|0\n2026-06-04|Yes|06:10|08:00|5|09:10|11:00|4|0|0\n"+
		"2026-06-05|Yes|06:10|08:00|6||||3|1\n2026-06-06|No||||||||")
	const want = "flat: date ?Did we fish? start_s start_s end_s end_s lines_out lines_out landed_n released_n"
	if got := summary(p); got != want {
		t.Errorf("got %s, expected %s", got, want)
	}
}

// Cells that name ways of fishing say how it was fished, whatever their heading: the boat's way to the fish has other
// words.
func TestWaysOfFishing(t *testing.T) {
	const head = "Date|Start|End|Lines|Way\n"
	ways := inferred(t, "log", nil, "2026", head+"3/6/26|06:00|08:00|4|trolling\n4/6/26|06:00|08:00|4|bottom\n"+
		"5/6/26|06:00|08:00|4|trolling\n6/6/26|06:00|08:00|4|live bait").Data()[0].Plan
	if ways.Find("method") == nil || ways.Find("approach") != nil {
		t.Errorf("ways of fishing: %s", summary(ways))
	}
	other := inferred(t, "log", nil, "2026", head+"3/6/26|06:00|08:00|4|along the edge\n"+
		"4/6/26|06:00|08:00|4|circling\n"+
		"5/6/26|06:00|08:00|4|straight\n6/6/26|06:00|08:00|4|along the edge").Data()[0].Plan
	if other.Find("approach") == nil {
		t.Errorf("ways to come to the fish: %s", summary(other))
	}
}

// TestHeadingOnce holds that in a list of codes a heading that stands once holds for the codes under it, and that
// letters count as what their list says: L is landed there, whatever it is short for elsewhere.
func TestHeadingOnce(t *testing.T) {
	const key = "Letters in use||\nF|L|landed, in the bin\n|G|given back, swam off\n|P|pulled the hook\n" +
		"|N|no hook-up\nBy|SB|spring balance\n|Y|by eye"
	const rows = "Day|At|Kind|F|FL|Kg|By\n2026-06-03|06:40|kingfish|L|81|6.2|SB\n2026-06-03|07:10||N|||\n" +
		"2026-06-04|08:10|tuna|L|64|5|Y\n2026-06-05|08:10|tuna|P|||\n2026-06-05|09:10|tuna|L|71||\n" +
		"2026-06-05|09:40|tuna|G|66||"
	l := inferred(t, "log", nil, "Key", key, "Bites", rows)
	if len(l.Keys) != 1 || len(l.Data()) != 1 {
		t.Fatalf("%d key sheets, %d blocks with data: expected one each", len(l.Keys), len(l.Data()))
	}
	for name, want := range map[string]string{"outcome g": "given back, swam off", "weighed sb": "spring balance"} {
		name, code, _ := strings.Cut(name, " ")
		if b := l.Data()[0].Plan.Find(name); b == nil || b.Codes[code] != want {
			t.Errorf("%s: code %s is not %q: %v of %s", name, code, want, b, summary(l.Data()[0].Plan))
		}
	}
}

// TestPageIsNoKey holds that a sheet with a table of times under another sheet's headings is a page of the log, however
// many of its rows begin with a heading of other sheets.
func TestPageIsNoKey(t *testing.T) {
	form := "Date|%|\nSea|NE 2|\nCast off|7:15|\nBack|17:10|\nRemarks||\n\nLines in|Lines up|Rods\n7:45|11:30|5\n"
	bites := "\nTime|Result|Fish|Length|Weight\n8:32|missed|||\n8:56|lost|||\n9:40|landed|tuna|91|"
	page := func(day, rest string) string { return strings.Replace(form, "%", day, 1) + rest }
	l := inferred(t, "log", nil, "1", page("2024-06-12", bites), "2", page("2024-06-18", "\nAll bites|none|"),
		"3", page("2024-06-24", bites))
	if len(l.Keys) > 0 {
		t.Errorf("%d sheets read as keys", len(l.Keys))
	}
}

// TestLinesOfKey holds that a key is used whose lists stand below each other, some under their heading and some in a
// line of one cell.
func TestLinesOfKey(t *testing.T) {
	const rows = "Trip|Leg|Kind|FL (mm)|Mass (kg)|Mass by|Ended|Gear\n1|2|2|1076|21.2|1|1|1\n1|2|1|||||0|1\n" +
		"2|2|3|859|||2|1\n2|2|1|920|6.4|2|1|1\n2|3|2|1437|24.3|1|1|1\n3|2|3|910|||2|2\n3|2|1|830|5.1|1|1|1"
	rowsOf := strings.Replace(rows, "|||||0|1", "||||0|1", 1)
	for _, key := range []string{
		"One row per stretch, n lines = 0 is running\n" +
			"Kind\n1|mahi mahi\n2|yellowfin\n3|wahoo\n4|striped marlin\nMass by: 1 = steelyard scale, 2 = guess\n" +
			"Ended: 0 = lost, 1 = kept, 2 = released\nGear: 1 = trolled, 2 = jig",
		"Ended (0 lost, 1 kept, 2 released)\nGear: 1 trolled, 2 jig\nMass by: 1 scale; 2 guess\n\n" +
			"Kind|\n1|mahi mahi\n2|yellowfin\n3|wahoo\n4|striped marlin\n5|samson fish\n6|bluefin\n7|albacore",
	} {
		l := inferred(t, "log", nil, "Fish", rowsOf, "Codes", key)
		if len(l.Data()) != 1 {
			t.Fatalf("%d blocks with data, expected 1", len(l.Data()))
		}
		p := l.Data()[0].Plan
		for name, want := range map[string]string{"outcome 0": "lost", "outcome 2": "released", "species 3": "wahoo",
			"method 2": "jig", "weighed 2": "guess"} {
			name, code, _ := strings.Cut(name, " ")
			if b := p.Find(name); b == nil || b.Codes[code] != want {
				t.Errorf("%s: code %s is not %q: %s", name, code, want, summary(p))
			}
		}
	}
}
