package meaning

import (
	"testing"

	"wakeledger/pipeline/layout"
)

// TestWorkedOut holds that a table all of whose numbers are worked out is no data where some are of other
// sheets, and that numbers of its own, or formulas of its own rows alone, are.
func TestWorkedOut(t *testing.T) {
	number := func(formula string) layout.Cell { return layout.Cell{Text: "3", Look: layout.Number, Formula: formula} }
	for _, c := range []struct {
		what     string
		formulas [3]string
		want     bool
	}{
		{"sums and what is worked out from them", [3]string{"=SUMIF(Trips!$D$5:$D$51,\"T\",Trips!$H$5)", "=B4+C4",
			"=B6/B4"}, true},
		{"one number of its own", [3]string{"=SUM(B2:B9)", "=B4+C4", ""}, false},
		{"hours of its rows", [3]string{"=(C2-B2)*24", "=D2*E2", "=F2/G2"}, false},
	} {
		b := &layout.Block{}
		b.Rows = []layout.Row{{Cells: []layout.Cell{{Text: "hours", Look: layout.Text}, number(c.formulas[0]),
			number(c.formulas[1]), number(c.formulas[2])}}}
		if got := isProof(b); got != c.want {
			t.Errorf("%s: proof %v, expected %v", c.what, got, c.want)
		}
	}
}

// TestWorkedOutFor holds that a table is no data where one column alone is typed, what the sums of its rows
// are for, and that one with two such columns is.
func TestWorkedOutFor(t *testing.T) {
	for lines, want := range map[string]bool{"=COUNTIFS(Hits!A:A,A2)": true, "": false} {
		b := &layout.Block{}
		for range 2 {
			b.Rows = append(b.Rows, layout.Row{Cells: []layout.Cell{{Text: "7", Look: layout.Number},
				{Text: "12.5", Look: layout.Number, Formula: "=SUMPRODUCT(Sets!D2:D9*(Sets!F2:F9=A2))"},
				{Text: "4", Look: layout.Number, Formula: lines},
				{Text: "0.3", Look: layout.Number, Formula: "=C2/B2"}, {Text: "3", Look: layout.Number,
					Formula: "=C2/B2*10"}}})
		}
		if got := isProof(b); got != want {
			t.Errorf("hits %q: proof %v, expected %v", lines, got, want)
		}
	}
}

// TestSummed holds a table whose sums are those of the log's rows to be no data, and one that
// has sums of its own to be data.
func TestSummed(t *testing.T) {
	const rows = "Date|Start|End|Knots|Bites|Kept\n2026-06-03|06:00|08:00|8|3|2\n2026-06-04|06:00|08:00|9|4|1\n" +
		"2026-06-05|06:00|08:00|8|5|4\n2026-06-06|06:00|08:00|9|1|0\n2026-06-07|06:00|08:00|8|2|1\n" +
		"2026-06-08|06:00|08:00|9|3|2"
	for _, c := range []struct {
		what, table string
		want        bool
	}{
		{"sums by speed", "Knots|Bites|Kept\n8|10|7\n9|8|3", true},
		{"sums by speed, with their own", "Knots|Bites|Kept\n8|10|7\n9|8|3\nboth|18|10", true},
		{"a row a month, of what was weighed", "Month|Bites|Fish\nJune|9|2\nJuly|9|4\nAugust|9|1", true},
		{"a row a month, with hours", "Month|Hours trolled|Fish\nJune|12|2\nJuly|14|4\nAugust|9|1", false},
		{"other counts", "Knots|Bites|Kept\n8|11|7\n9|8|4", false},
	} {
		l := inferred(t, "log.xlsx", nil, "Trips", rows, "Best speeds", c.table)
		proof := false
		for _, u := range l.Blocks {
			proof = proof || u.Proof
			if u.Proof && dated(u.Block) {
				t.Errorf("%s: the rows themselves are held to be sums", c.what)
			}
		}
		if proof != c.want {
			t.Errorf("%s: held to be sums %v, expected %v", c.what, proof, c.want)
		}
	}
}

// TestSummedByTrip holds that hours of no day are sums where the log's stretches name trips, and no days.
func TestSummedByTrip(t *testing.T) {
	l := inferred(t, "log.xlsx", nil, "Outings", "Trip|Date|Wind\n1|2026-06-03|calm\n2|2026-06-04|NE 10\n"+
		"3|2026-06-05|calm", "Sets", "Trip|Start|End|Lines|Knots\n1|06:00|08:00|4|8\n1|08:00|09:00|4|9\n"+
		"2|06:00|08:00|4|8\n2|08:10|10:00|5|9\n3|06:00|08:30|5|8",
		"By speed", "Knots|Hours|Line hours|Bites\n8|6.5|28.5|4\n9|2.8|13.2|1")
	for _, u := range l.Data() {
		if u.Plan.Name == "By speed" {
			t.Errorf("the sums by speed are read as %s", summary(u.Plan))
		}
	}
}

// TestStatistics holds that the season's figures below its days are no trip, and how many trips
// there were is no trip's name; what the fish of a row weigh together is no one fish's weight.
func TestStatistics(t *testing.T) {
	const rows = "Nr|Date|Start|End|Hours|Rods|Bites|Caught on the " +
		"troll|Kg\n1|2026-05-03|06:00|08:10|2.17|4|2|albacore 12.1 kg; albacore 11.2 " +
		"kg|23.3\n2|2026-06-04|06:00|08:20|2.33|4|3|wahoo 8.1 kg; mahi 4.2 kg|12.3\n" +
		"3|2026-07-05|06:00|08:30|2.5|4|1|mahi 3.3 kg|3.3\n4|2026-08-06|06:00|08:45|2.75|4|0||"
	l := inferred(t, "log.xlsx", nil, "Season", rows+"\n||||||||\n|STATISTICS|||||||\n|Trips|4||||||\n|Hours "+
		"trolled|9.75||||||\n|Hours a fish|1.95||||||\n")
	for _, u := range l.Blocks {
		if u.Plan.Gives("trip") {
			t.Errorf("%s: the number of trips is taken for the name of one", u.Plan.Name)
		}
		if u.Block.Shape == layout.Form && u.Plan.Kind != "" && !u.Proof {
			t.Errorf("the season's statistics are read as %s", u.Plan.Kind)
		}
	}
	p := l.Data()[0].Plan
	if p.Binds("scale_kg") || !p.Reads("fishlist") {
		t.Errorf("got %s: expected the list of fish and no weight of a fish beside it", summary(p))
	}
}
