package normalise_test

import (
	"testing"

	"wakeledger/pipeline/plan"
)

// outcomes are the outcomes of the strikes beside the rows, in order.
func (g reading) outcomes() (all []any) {
	for _, s := range g.sides {
		if s.Kind == plan.Strikes {
			all = append(all, s.Values["outcome"].Text)
		}
	}
	return all
}

// Bites that are ticked off, counts in words and sums of lines are counts.
func TestWaysOfCounting(t *testing.T) {
	got := readText(t, "log.csv", "Date,Hours,Lines,Bites,Hooked,Landed\n2026-07-04,4,2+1,xxx,xx,x\n"+
		"2026-07-05,3,2+2,xx,x,\n2026-07-06,5,2+1,x,,\n2026-07-07,2,2+2,,,\n")
	expect(t, "lines", got.field("lines_out", 2, 3, 4, 5), int64(3), int64(4), int64(3), int64(4))
	expect(t, "bites", got.field("strikes_n", 2, 3, 4, 5), int64(3), int64(2), int64(1), nil)
	got = readText(t, "log.csv", "Date,Hours,Lines,Bites,Hooked\n2026-07-04,4,3,two,one\n2026-07-05,3,3,one,no\n"+
		"2026-07-06,5,3,none,no\n2026-07-07,5,3,three,two\n")
	expect(t, "hooked", got.field("hooked_n", 2, 3, 4, 5), int64(1), int64(0), int64(0), int64(2))
}

// Under the places of the spread a legend says what marks and blanks are: a line that was not out counts none, and a
// cell may tell several bites.
func TestMarksUnderPlaces(t *testing.T) {
	got := readText(t, "log.csv", "\"under each line: - = out, no bite; m missed bite, l hooked and lost, k landed "+
		"and kept; empty = line not out\"\nDate,Hours,Speed (kn),P1,S1,P2,S2\n2026-07-04,4,7,-,k,-,\n"+
		"2026-07-05,3,8,m l,-,,\n"+
		"2026-07-06,5,7,-,-,\"k,m\",-\n2026-07-07,5,8,-,l,-,-\n")
	expect(t, "lines", got.field("lines_out", 3, 4, 5, 6), int64(3), int64(2), int64(4), int64(4))
	expect(t, "bites", got.outcomes(), "landed", "missed", "lost", "landed", "missed", "lost")
}

// The hours of men on one boat are the boat's: they count once a day, and what each of them had is his.
func TestMenOnOneBoat(t *testing.T) {
	got := readText(t, "log.csv", "Date,Angler,Hours,Lines,Bites,Landed\n2026-07-04,Ann,4,5,1,1\n"+
		"2026-07-04,Ben,4,5,0,0\n"+
		"2026-07-04,Cy,4,5,2,1\n2026-07-08,Ann,3.5,5,1,0\n2026-07-08,Ben,3.5,5,1,1\n2026-07-12,Ann,6,4,0,0\n"+
		"2026-07-12,Cy,6,4,2,2\n")
	hours := got.field("duration_s", 2, 3, 4, 5, 6, 7, 8)
	expect(t, "hours", hours, 4*3600.0, nil, nil, 3.5*3600, nil, 6*3600.0, nil)
	expect(t, "bites", got.field("strikes_n", 2, 3, 4, 5, 6), int64(1), int64(0), int64(2), int64(1), int64(1))
}

// Fish kept on a row's second stretch are landed, and a third stretch on one row alone is read as the others are.
func TestKeptOnFurtherStretches(t *testing.T) {
	got := readText(t, "log.csv", "Date,Lines in - up 1,Bites / hooked / kept 1,Lines in - up 2,"+
		"Bites / hooked / kept 2,Lines in - up 3,Bites / hooked / kept 3\n"+
		"2026-07-04,06:00-08:00,3 / 2 / 1,09:00-11:00,2 / 1 / 1,12:00-13:00,4 / 2 / 2\n"+
		"2026-07-05,06:00-08:30,1 / 0 / 0,09:00-10:00,1 / 1 / 0,,\n"+
		"2026-07-06,05:00-08:00,2 / 2 / 2,09:00-12:00,3 / 2 / 1,,\n"+
		"2026-07-08,05:00-08:00,0 / 0 / 0,,,,\n")
	expect(t, "first", got.field("landed_n", 2, 3, 4, 5), int64(1), int64(0), int64(2), int64(0))
	expect(t, "further", got.beside([]plan.Kind{plan.Flat}, "landed_n"), int64(1), int64(2), int64(0), int64(1))
	expect(t, "strikes", got.beside([]plan.Kind{plan.Flat}, "strikes_n"), int64(2), int64(4), int64(1), int64(3))
}

// Line-hours over hours tell how many lines were out where they come to a whole number, and nothing where they do not.
func TestLinesOfLineHours(t *testing.T) {
	got := readText(t, "log.csv", "Date,Hours,Rod hours,Bites\n2026-07-04,4,12,1\n2026-07-05,3,9,0\n"+
		"2026-07-06,2.5,8.5,2\n")
	expect(t, "lines", got.field("lines_out", 2, 3, 4), int64(3), int64(3), nil)
}

// What a log says of blanks holds: as in the row above, or a usual number.
func TestWhatBlanksMean(t *testing.T) {
	const rows = "Date,Hours,Speed (kn),Rods out,Bites\n2026-07-04,4,8,5,1\n2026-07-05,3,,,0\n2026-07-06,2.5,7,,2\n"
	got := readText(t, "log.csv", "speed only written when changed\n"+rows)
	expect(t, "speed", got.field("speed_kn", 3, 4, 5), 8.0, 8.0, 7.0)
	expect(t, "lines", got.field("lines_out", 3, 4, 5), int64(5), nil, nil)
	got = readText(t, "log.csv", "lines: 6 if left empty\n"+rows)
	expect(t, "lines", got.field("lines_out", 3, 4, 5), int64(5), int64(6), int64(6))
}

// A heading that explains its units leaves bare numbers to the one it does not: "cm LCF, kg = scales". Metres behind a
// size are a length.
func TestUnitsSaidInHeadings(t *testing.T) {
	got := readText(t, "log.csv", "Date,In,Out,Lines,Hits,Kept,\"fish (cm LCF, kg = scales, abt = eye)\"\n"+
		"2026-07-04,0600,0800,4,2,2,SBT 95; SBT 102 21.3kg\n2026-07-05,0600,0800,4,1,1,SBT 110\n"+
		"2026-07-06,0600,0800,4,0,0,\n")
	var lengths []any
	for _, s := range got.sides {
		if v := s.Values["length_cm"]; v.Known {
			lengths = append(lengths, v.Real)
		}
	}
	expect(t, "lengths", lengths, 95.0, 102.0, 110.0)
	got = readText(t, "log.csv", "Date;Espécie;Tamanho m;Peso (kg);Resultado\n2026-07-04;patudo;1,29;39;a bordo\n"+
		"2026-07-05;patudo;0,92;14,3;a bordo\n2026-07-06;serra;1,1;8;a bordo\n")
	expect(t, "metres", got.field("length_cm", 2, 3, 4), 129.0, 92.0, 110.0)
}
