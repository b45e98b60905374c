package normalise_test

import (
	"fmt"
	"os"
	"path/filepath"
	"strings"
	"testing"

	"wakeledger/pipeline/entry"
	"wakeledger/pipeline/normalise"
	"wakeledger/pipeline/plan"
	"wakeledger/pipeline/record"
	"wakeledger/pipeline/sheet"
)

// readEvents reads a log of events, and shows the stretches and strikes that it tells and the
// reasons for which something was set aside.
func readEvents(t *testing.T, name, text string) (told, aside []string) {
	t.Helper()
	sides, aside := sidesOf(t, name, text)
	for _, s := range sides {
		told = append(told, showSide(s))
	}
	return told, aside
}

// sidesOf reads a log, and gives its side entries and the reasons for which something was set aside.
func sidesOf(t *testing.T, name, text string) (sides []normalise.Side, aside []string) {
	t.Helper()
	path := filepath.Join(t.TempDir(), name)
	if err := os.WriteFile(path, []byte(text), 0o600); err != nil {
		t.Fatal(err)
	}
	book, err := sheet.Open(path, sheet.Options{})
	if err != nil {
		t.Fatal(err)
	}
	defer book.Close()
	x, err := normalise.Take(name, book, 1000)
	if err != nil {
		t.Fatal(err)
	}
	reasons := func(ps []record.Problem) {
		for _, p := range ps {
			aside = append(aside, fmt.Sprintf("%d %s", p.Pos.Row, p.Reason))
		}
	}
	for _, u := range x.Log.Data() {
		r, err := x.Reader(u, normalise.Settings{})
		if err != nil {
			t.Fatal(err)
		}
		for _, row := range u.Block.Rows {
			_, _, problems := r.Row(normalise.RowOf(row))
			reasons(problems)
			sides = append(sides, r.Sides()...)
		}
		reasons(r.Finish())
	}
	return sides, aside
}

func showSide(s normalise.Side) string {
	v := s.Values
	clock := func(name string) string { return fmt.Sprintf("%d:%02d", v[name].Int/3600, v[name].Int/60%60) }
	var p []string
	if s.Kind == plan.Legs {
		p = append(p, clock("start_s")+"-"+clock("end_s"),
			fmt.Sprintf("%d at %g", v["lines_out"].Int, v["speed_kn"].Real))
	} else {
		p = append(p, clock("time_s"), v["outcome"].Text)
	}
	for _, name := range []string{"trip", "species_logged", "loss_cause"} {
		if v[name].Known {
			p = append(p, v[name].Text)
		}
	}
	for _, name := range []string{"length_cm", "girth_cm", "scale_kg"} {
		if x := v[name]; x != (entry.Value{}) {
			p = append(p, fmt.Sprintf("%.1f", x.Real))
		}
	}
	return strings.Join(p, " ")
}

func expectTold(t *testing.T, got []string, want string) {
	t.Helper()
	if g := strings.Join(got, "\n"); g != strings.TrimSpace(want) {
		t.Errorf("told:\n%s\nexpected:\n%s", g, strings.TrimSpace(want))
	}
}

// A row an event: what became of a bite stands in a later row, remarks beside a bite tell of
// the fish, and the figure in a column stands above what the words say.
func TestEventRows(t *testing.T) {
	told, aside := readEvents(t, "events.csv", `Date,Time,Event,Lines,Knots,Remarks
2025-06-14,05:50,left the dock,,,
,06:20,lines in,5,8.5,
,07:05,strike,,,short rigger - missed it
,08:10,hook up,,,long center
,08:32,boated,,,"bluefin 49 in, 71 lb on the dock scale"
,09:00,speed,,10,
,10:15,double,,,both riggers
,10:40,boated,,,bluefin 44 in
,10:45,pulled hook,,,the other one
,11:30,lines out,,,
2025-06-15,06:00,lines in,6,9,
,09:30,lines out,,,nothing doing
,10:15,lines in,6,9,moved west
,11:20,hook up,,,
,11:45,released,,,bluefin about 30 in
,12:00,two lines in because of weed,4,,
,13:30,lines out,,,weather
`)
	expectTold(t, told, `
7:05 missed
8:10 landed bluefin 124.5 32.2
6:20-9:00 5 at 8.5
10:15 landed bluefin 111.8
10:15 lost pulled hook
9:00-11:30 5 at 10
6:00-9:30 6 at 9
11:20 released bluefin 76.2
10:15-12:00 6 at 9
12:00-13:30 4 at 9`)
	expectTold(t, aside, "")
}

// The mate writes single words, in his own tongue, and what he hauls is not what was hooked.
func TestEventWords(t *testing.T) {
	told, aside := readEvents(t, "bitacora.csv", `Fecha,Hora,Qué pasó,Cañas,Nudos,Pez,Largo cm
2025-07-02,06:10,salimos,,,,
2025-07-02,06:45,líneas al agua,6,7.5,,
2025-07-02,08:05,"picada, no enganchó",,,,
2025-07-02,09:20,clavado,,,,
2025-07-02,09:35,a bordo,,,bonito del norte,74
2025-07-02,10:00,cambio de velocidad,,8.5,,
2025-07-02,11:15,doblete,,,,
2025-07-02,11:20,se soltó,,,,
2025-07-02,11:25,devuelto,,,bonito del norte,52
2025-07-02,11:30,quitamos una línea,,,,
2025-07-02,13:00,líneas arriba,,,,
2025-07-02,14:00,xarxa,,,,
`)
	expectTold(t, told, `
8:05 missed
9:20 landed bonito del norte 74.0
6:45-10:00 6 at 7.5
11:15 lost
11:15 released bonito del norte 52.0
10:00-11:30 6 at 8.5
11:30-13:00 5 at 8.5`)
	expectTold(t, aside, "13 not known: neither lines in or up, nor a change, nor a bite; read as a remark; the "+
		"rest of the row is kept")
}

// What became of a bite, and no more, may be told with a slip of the pen; the boat turns, and a fish is turned loose.
func TestMistypedBites(t *testing.T) {
	told, aside := readEvents(t, "log.csv", `Date,Time,What,Lines,Knots,Fish
2026-06-03,06:00,lines in,5,7,
2026-06-03,06:30,mised,,,
2026-06-03,07:00,in teh box,,,wahoo
2026-06-03,07:20,turned loose,,,white marlin
2026-06-03,07:40,turned,,,
2026-06-03,08:00,relesed,,,wahoo
2026-06-03,abt 9:10,lines up,,,
`)
	expectTold(t, told, `
6:30 missed
7:00 landed wahoo
7:20 released white marlin
8:00 released wahoo
6:00-9:10 5 at 7`)
	expectTold(t, aside, "")
}

// An entry at one clock time may tell of one bite in several sentences. Lines for the bottom are none.
func TestOneBiteOfAnEntry(t *testing.T) {
	told, aside := readEvents(t, "deck.txt", `RUN 1   Monday 4 May 2026
0600  Let go fore and aft.
0630  Streamed 4 lines, 7 kn.
0700  Strike, left outrigger. Fish on: wahoo.
0708  Leader parted. Wahoo lost.
0740  Strike, right rigger. Hooked.
0750  Pulled the hook. Fish lost.
0805  Strike, left rigger. Strike, right rigger.
0830  Strike, left rigger. Fish on.
0845  Boated one mahi, 9 kg by the scale.
0900  All lines inboard.
0930  Anchored. Bottom lines down.
1000  Alongside. All fast.

RUN 2   Tuesday 5 May 2026
0630  Streamed 4 lines, 7 kn.
0700  Handed all lines.
`)
	if len(aside) > 0 {
		t.Errorf("set aside: %v", aside)
	}
	expectTold(t, told, `
7:00 lost 1 wahoo broke off
7:40 lost 1 pulled hook
8:05  1
8:05  1
8:30 landed 1 mahi 9.0
6:30-9:00 4 at 7 1
6:30-7:00 4 at 7 2
`)
}

// What an event log leaves open is said at the row that opened it.
func TestEventsLeftOpen(t *testing.T) {
	told, aside := readEvents(t, "events.csv", `date,time,what,rods,kn,remarks
2025-03-01,05:30,left mooring,,,
,06:00,in,6,7,
,07:00,speed,6,,
,08:00,bite,,,"left flat, on"
,08:00,bite,,,dropped it
,09:00,less,4,7,
,10:00,up,0,,
,10:30,mooring,,,
2025-03-01,12:30,left mooring,,,afternoon party
,13:00,in,5,8,
,14:50,up,,,
,14:45,bite,,,missed
2025-03-02,07:00,up,,,
,08:00,in,6,7,
,15:00,mooring,,,
`)
	expectTold(t, told, `
6:00-7:00 6 at 7 2025-03-01 05:30
8:00 hooked 2025-03-01 05:30
8:00  2025-03-01 05:30
7:00-9:00 6 at 0 2025-03-01 05:30
9:00-10:00 4 at 7 2025-03-01 05:30
13:00-14:50 5 at 8 2025-03-01 12:30
14:45 missed 2025-03-01 12:30`)
	expectTold(t, aside, `
4 the speed changes, and to what is not said: not logged from here; the rest of the row is kept
6 dropped: was it hooked and lost, or never hooked? Its outcome is not logged; the rest of the row is kept
14 lines up, and nobody said when they went in: that stretch is left out; the rest of the row is kept
15 the lines of that day were never said to be up: the stretch from here is left out`)
}

// A mate mails his notes: times before the words or behind them, without half of the day, what
// holds on from the stretch before, and the scale's weights at the day's end.
func TestEventMails(t *testing.T) {
	mail := func(sent, text string) string {
		return "From: Ansa\nTo: me\nDate: " + sent + "\nSubject: log\n\n" + text + "\n\n"
	}
	told, aside := readEvents(t, "notes.txt", mail("Sat, May 9, 2026 at 7:27 PM", `sat 5/9
the boys, slick calm
off the dock 4:25
633 lines in on the color change, pulling 5 at 15
7:49 gaffed a wahoo off the left long
813 left rigger went down, never came tight
8:40 picked up and ran
back in 9:30, same spread same speed
10:05 wahoo off
1120 bumped up to 16
1:10 double on mahi, gaffed one and pulled the hook on the other
reeled up 1:30 (only had 4 out, not 5)
fuel 90 gal
weighed wahoo 31 lb`)+mail("Sun, 17 May 2026 09:10 +1000", "in 1300 off the point 4 line 8kt\n1340 bite miss\n1402 mahi box\nup 1500")+
		mail("Wed, 13 May 2026 20:10 +1000", "no go. boss sick"))
	expectTold(t, told, `
7:49 landed wahoo 14.1
8:13 missed
6:33-8:40 5 at 15
10:05 lost wahoo
9:30-11:20 5 at 15
13:10 landed mahi
13:10 lost mahi pulled hook
11:20-13:30 4 at 16
13:40 missed
14:02 landed mahi
13:00-15:00 4 at 8`)
	expectTold(t, aside, "")
}

// A boat that leaves on one day and is home on the next was out once.
func TestEventsOverNight(t *testing.T) {
	told, _ := readEvents(t, "events.csv", `date,time,what,lines,kn
2025-03-01,06:00,cast off,,
2025-03-01,07:00,lines in,4,7
2025-03-01,09:00,lines up,,
2025-03-01,12:00,back at dock,,
2025-03-08,13:00,cast off,,
2025-03-08,14:00,lines in,4,7
2025-03-08,18:00,lines up,,
2025-03-09,06:30,lines in,4,7
2025-03-09,08:00,lines up,,
2025-03-09,09:00,back at dock,,
`)
	expectTold(t, told, `
7:00-9:00 4 at 7 2025-03-01 06:00
14:00-18:00 4 at 7 2025-03-08 13:00
6:30-8:00 4 at 7 2025-03-08 13:00`)
}

// A hand in a hurry writes a whole stretch on one row of a log of events: its span, its bites in
// words, the weights of the fish boated in their order.
func TestWholeStretchesAmongEvents(t *testing.T) {
	told, aside := readEvents(t, "book.csv", `Date,Time,Lines,Knots,What,Fish,Lbs
2022-05-07,0640,7,7,lines in,,
,0652,,,"hit, gaffed",blackfin,8
,0928,,,"knockdown, missed",,
,1005,8,8,up a bit faster,,
,1020,,,"hit, on 5 min and off",,
,1235,,,lines up,,
2022-05-11,0710-1345,6,7,"1 blackfin and 1 wahoo in the box, lost 1 wahoo",,"9, 23"
2022-05-15,,,,"storm, doubled up the lines and stayed ashore",,
2022-05-22,0700-1335,?,7,"2 yellowfin in the box, missed 1",,"32.5, 14, 9"
`)
	expectTold(t, told, `
6:52 landed blackfin 3.6
9:28 missed
6:40-10:05 7 at 7
10:20 lost
10:05-12:35 8 at 8
7:10-13:45 6 at 7
0:00 landed blackfin 4.1
0:00 landed wahoo 10.4
0:00 lost wahoo
7:00-13:35 0 at 7
0:00 landed yellowfin
0:00 landed yellowfin
0:00 missed`)
	expectTold(t, aside, "10 not as many weights as fish boated; the rest of the row is kept")
}

// Engines, pots and meals are known and say nothing of the lines or of fish; a second fish of an entry struck at
// the speed of the first, though nobody wrote down when the lines came up.
func TestEventsOfNoFishing(t *testing.T) {
	told, aside := readEvents(t, "events.csv", `Date,Time,Event,Lines,Knots,Fish,Result
2025-06-12,06:20,lines in,5,8,,
,07:20,strike,,,wahoo,lost
,07:50,strike,,,mahi,landed
,08:30,lines up,,,,
2025-06-14,05:30,engines started,,,,
,06:20,lines in,5,8.5,,
,06:50,pulled the pots,,,,
,07:05,strike,,,skipjack x2,landed
,08:00,desayuno,,,,
,08:20,motori spenti,,,,
,08:40,hauled crab pots,,,,
,09:00,mains off,,,,
`)
	expectTold(t, told, "7:20 lost wahoo\n7:50 landed mahi\n6:20-8:30 5 at 8\n7:05 landed skipjack\n7:05 landed "+
		"skipjack")
	expectTold(t, aside, "7 the lines of that day were never said to be up: the stretch from here is left out")
}

// What was lost or broken of the boat is no bite: it is asked about.
func TestEventsOfTheBoat(t *testing.T) {
	told, aside := readEvents(t, "events.csv", `Date,Time,Event,Lines,Knots,Fish,Result
2025-06-12,06:20,lines in,5,8,,
,07:20,strike,,,wahoo,lost
,07:30,"lost the port engine, restarted",,,,
,07:40,broke off a fender,,,,
,07:45,lost fish at the prop,,,,
,07:50,strike,,,mahi,landed
,08:30,lines up,,,,
`)
	expectTold(t, told, "7:20 lost wahoo\n7:45 lost\n7:50 landed mahi\n6:20-8:30 5 at 8")
	const unclear = "speaks of fish or bites in words that were not understood; the rest of the row is kept"
	expectTold(t, aside, "4 "+unclear+"\n5 "+unclear)
}

// TestLinesInByTheirColumn holds that lines are in again where their column says so after it said that none was, and
// that a bite while they are up is told, but for what takes place where the boat is tied up.
func TestLinesInByTheirColumn(t *testing.T) {
	const head = "Date,Time,Rods,Speed,What happened,Inches\n2025-05-03,06:30,5,7,Lines in,\n" +
		"2025-05-03,07:10,,,\"King, left short, boxed\",36\n2025-05-03,08:00,0,,\"%s\",\n" +
		"2025-05-03,08:40,,,\"%s\",\n2025-05-03,09:00,4,6,Back out,\n" +
		"2025-05-03,09:30,,,\"Wahoo, shotgun, boxed\",50\n2025-05-03,10:00,0,,\"Lines up, home\",\n"
	const legs = "7:10 landed King 91.4\n6:30-8:00 5 at 7\n%s9:30 landed Wahoo 127.0\n9:00-10:00 4 at 6"
	for _, c := range []struct{ up, then, bite, aside string }{
		{"Sailfish ate the left rigger. Cleared all to fight him", "Sailfish turned loose",
			"8:00 released Sailfish\n", ""},
		{"Lines up, tied to the platform for snapper", "4 snapper, best 22 in", "", ""},
		{"Lines up", "Boxed a snapper", "8:40 landed snapper\n",
			"5 the lines were up by then, as the log says: was it trolled?; the rest of the row is kept"},
	} {
		told, aside := readEvents(t, "book.csv", fmt.Sprintf(head, c.up, c.then))
		expectTold(t, told, fmt.Sprintf(legs, c.bite))
		expectTold(t, aside, c.aside)
	}
}

// TestLinesInByTheirFigures holds that words which tell lines and a speed at a time are lines in where the lines were
// up, and that a line of notes without a clock is no part of the entry above it.
func TestLinesInByTheirFigures(t *testing.T) {
	told, aside := readEvents(t, "notes.txt", "23/05/2025\n0630 Lines in, all around the boat, 4 rods, 7 kts\n"+
		"0710 King, left short, boxed\n0800 Sailfish ate. Cleared everything to fight him\n0815 Sailfish let go\n"+
		"0840 Back out, 4 rods, 6 kts\n0930 Wahoo, boxed\nLines up. Did not look\nThe king was 39 in, I put 36\n\n"+
		"24/05/2025\n0700 Lines in, 4 rods, 6 kts\n0730 Wahoo, boxed, 36 in\n0800 Lines up\nIt was 39 in, I put 36\n")
	expectTold(t, told, "7:10 landed King\n6:30-8:00 4 at 7\n8:00 released Sailfish\n9:30 landed Wahoo\n"+
		"7:30 landed Wahoo 99.1\n7:00-8:00 4 at 6")
	expectTold(t, aside, "8 no time: when the lines went in or came up is not known; the rest of the row is kept\n"+
		"9 seems to mend what another row says: mend it there; the rest of the row is kept\n"+
		"6 the lines of that day were never said to be up: the stretch from here is left out; the rest of the "+
		"row is kept")
}

// TestAmendedMeasures holds that a line below a day that says which figure of it was wrong mends the fish that has
// that figure, and that one which no fish of the day has is told.
func TestAmendedMeasures(t *testing.T) {
	const log = "Date,Time,Rods,Speed,What happened,Inches\n2025-05-03,06:30,5,7,Lines in,\n" +
		"2025-05-03,07:10,,,\"King, left short, boxed\",36\n2025-05-03,08:00,0,,\"Lines up\",\n,,,,\"%s\",\n"
	for said, want := range map[string][2]string{
		"Checked the tape: the king was 39 inches, I wrote 36": {"7:10 landed King 99.1", ""},
		"I put 36 for the king, it was 39 in":                  {"7:10 landed King 99.1", ""},
		"The king was 39 inches, I wrote 31": {"7:10 landed King 91.4",
			"5 seems to mend what another row says: mend it there; the rest of the row is kept"},
		"36 miles run, put 40 gallons in": {"7:10 landed King 91.4", ""},
	} {
		told, aside := readEvents(t, "book.csv", fmt.Sprintf(log, said))
		expectTold(t, told[:1], want[0])
		expectTold(t, aside, want[1])
	}
}

// TestLinesOfBites holds that a fish on another line is not the one hooked before, and that one kind of fish is that
// of both of a double.
func TestLinesOfBites(t *testing.T) {
	told, aside := readEvents(t, "book.csv", "Date,Time,Rods,Speed,What happened\n2025-05-03,06:30,5,7,Lines in\n"+
		"2025-05-03,07:00,,,\"Good fish on left long, wire bit through\"\n"+
		"2025-05-03,07:05,,,\"Two on at once, mahi. Boxed one, other one came off\"\n"+
		"2025-05-03,07:10,,,\"Hooked up left long\"\n2025-05-03,07:20,,,\"King, shotgun, boxed\"\n"+
		"2025-05-03,07:50,,,\"Kept on, squall to the north\"\n2025-05-03,08:00,0,,Lines up\n")
	expectTold(t, told, "7:00 lost cut off\n7:05 landed mahi\n7:05 lost mahi\n7:10 hooked\n7:20 landed King\n"+
		"6:30-8:00 5 at 7")
	expectTold(t, aside, "")
}

// A speed or a number of lines that is not said as lines go in again is not that of before, where a mark stands in its
// place or the log says it each other time. A bite with its own outcome is no end of an earlier one.
func TestEventsAfresh(t *testing.T) {
	told, aside := readEvents(t, "diario.csv", `Fecha,Hora,Suceso,Cañas,Nudos,Pez,Resultado
2025-07-02,06:10,suelto cabos,,,,
,06:45,líneas al agua,4,7,,
,07:10,picada,,,,algo raro
,07:20,picada,,,dorado,perdido
,08:00,líneas arriba,,,,
,08:20,líneas al agua,4,7,,
,09:00,líneas arriba,,,,
,09:20,líneas al agua,?,7,,
,10:00,líneas arriba,,,,
,10:30,amarro,,,,
2025-07-04,06:20,largo amarras,,,,
,06:45,líneas al agua,3,9,,
,08:00,líneas arriba,,,,
,08:30,líneas al agua,igual,igual,,
,09:00,líneas arriba,,,,
2025-07-05,06:20,largo amarras,,,,
,06:45,líneas al agua,3,12,,
,08:00,líneas arriba,,,,
,08:30,líneas al agua,3,12,,
,09:00,líneas arriba,,,,
,09:20,líneas al agua,4,6,,
,10:00,líneas arriba,,,,
,10:20,líneas al agua,4,,,
,11:00,líneas arriba,,,,
,11:30,echo el ancla,,,,
`)
	expectTold(t, told, "7:10 "+`
7:20 lost dorado
6:45-8:00 4 at 7
8:20-9:00 4 at 7
9:20-10:00 0 at 7
6:45-8:00 3 at 9
8:30-9:00 3 at 9
6:45-8:00 3 at 12
8:30-9:00 3 at 12
9:20-10:00 4 at 6
10:20-11:00 4 at 0`)
	if len(aside) != 1 || !strings.HasPrefix(aside[0], "4 not understood") {
		t.Errorf("told of: %q", aside)
	}
}

// TestSeveralAtOnce holds that a row of a log of events is as many bites as its column counts, of which each has
// its own weight.
func TestSeveralAtOnce(t *testing.T) {
	told, aside := readEvents(t, "events.csv", `Date,Time,Event,Lines,Knots,Fish,How many,kg
2025-06-14,06:20,lines in,5,8,,,
,07:05,boated,,,albacore,2,8 + 9
,07:40,boated,,,albacore,1,7
,08:00,lost,,,albacore,2,
,09:00,lines up,,,,,
`)
	expectTold(t, told, `
7:05 landed albacore 8.0
7:05 landed albacore 9.0
7:40 landed albacore 7.0
8:00 lost albacore
8:00 lost albacore
6:20-9:00 5 at 8`)
	if len(aside) > 0 {
		t.Errorf("set aside: %q", aside)
	}
}

// Several of one kind beside one event came to one end, and a girth that stands alone beside a bite is its fish's.
func TestEventsOfSeveral(t *testing.T) {
	told, aside := readEvents(t, "events.csv", `Date,Time,Event,Lines,Knots,Fish,cm,Remarks
2026-06-03,06:30,lines in,4,7,,,
2026-06-03,07:10,on deck,,,3 skipjack,,all at once
2026-06-03,08:20,on deck,,,bigeye,95,girth 69 cm
2026-06-03,09:30,lines up,,,,,
2026-06-04,06:30,lines in,4,7,,,
2026-06-04,09:30,lines up,,,,,
`)
	expectTold(t, told, `
7:10 landed skipjack
7:10 landed skipjack
7:10 landed skipjack
8:20 landed bigeye 95.0 69.0
6:30-9:30 4 at 7
6:30-9:30 4 at 7
`)
	if len(aside) > 0 {
		t.Errorf("set aside: %v", aside)
	}
}

// TestUpToldLater holds that a line without a time ends the stretch of its day, or of the day before, whose end it says
// that somebody forgot, and that one whose time is before that day's last entry does not.
func TestUpToldLater(t *testing.T) {
	const log = `Date,Time,Event,Lines,Knots,Remarks
2025-06-14,06:20,lines in,5,8,grey and flat
,07:05,strike,,,king kept
%s
2025-06-16,06:20,lines in,4,7,birds far off
,08:20,lines up,,,home
`
	for line, legs := range map[string]string{
		"2025-06-15,,remark,,,\"did not log lines up yesterday, they were in at 1:30p\"": "6:20-13:30 5 at 8\n",
		"2025-06-14,,remark,,,\"forgot to note when we were done, 10:45\"":               "6:20-10:45 5 at 8\n",
		"2025-06-15,,remark,,,\"did not log lines up yesterday\"":                        "",
		"2025-06-15,,remark,,,\"forgot to log lines up yesterday, 06:50\"":               "",
	} {
		told, aside := readEvents(t, "events.csv", fmt.Sprintf(log, line))
		expectTold(t, told, "7:05 landed king\n"+legs+"6:20-8:20 4 at 7")
		if (len(aside) == 0) != (legs != "") {
			t.Errorf("%s: set aside %q", line, aside)
		}
	}
}

// TestSeveralBitesBeside holds that a bare bite whose remark tells of several is as many, and that a lure which the
// remark names is no second fish.
func TestSeveralBitesBeside(t *testing.T) {
	told, aside := readEvents(t, "events.csv", `Date,Time,Event,Lines,Knots,Remarks
2025-06-14,06:20,lines in,5,8,
,07:05,bite,,,"double king, both boxed, 18 and 12.5 lb on the scale"
,07:30,bite,,,"king boxed 20 lb scale, blue jet"
,07:50,bite,,,king lost at the gaff
,08:20,lines up,,,
`)
	expectTold(t, told, "7:05 landed king 8.2\n7:05 landed king 5.7\n7:30 landed king 9.1\n7:50 lost king at the "+
		"boat\n6:20-8:20 5 at 8")
	expectTold(t, aside, "")
}

// TestCodeOfADayAtHome holds that an entry in a word that nobody knows needs none where the remark beside it says that
// nobody went, and that one without such a remark is asked about.
func TestCodeOfADayAtHome(t *testing.T) {
	_, aside := readEvents(t, "log.csv", `Date,Time,Event,Lines,Knots,Notes
2025-07-02,06:45,lines in,6,7.5,
2025-07-02,08:05,bite,,,
2025-07-02,11:15,lines up,,,
2025-07-04,08:00,zz,,,"did not go out, blowing"
2025-07-06,08:00,zz,,,glassy
2025-07-08,06:45,lines in,6,7.5,
2025-07-08,11:15,lines up,,,
`)
	expectTold(t, aside, "6 not known: neither lines in or up, nor a change, nor a bite; read as a remark; the "+
		"rest of the row is kept")
}
