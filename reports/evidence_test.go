package reports

import (
	"bytes"
	"strings"
	"testing"

	"wakeledger/queries"
	"wakeledger/queries/evidence"
)

// workedSeason is the invented season with evidence on two factors, one of which
// leans: lures on twelve trips, and months.
func workedSeason() SeasonInput {
	in := demoSeason()
	lure := evidence.Factor{Name: "lure", ByLeg: true, Levels: []string{"<b>Awl</b>", "Bodkin", "Crochet"}}
	month := evidence.Factor{Name: "month", Levels: []string{"2026-06", "2026-07"}}
	for trip := range int64(12) {
		lure.Cells = append(lure.Cells, evidence.Cell{Trip: trip, Leg: trip + 1,
			Level: "<b>Awl</b>", LineHours: 10, Strikes: 4},
			evidence.Cell{Trip: trip, Leg: trip + 1, Level: "Bodkin", LineHours: 9, Strikes: 1})
		month.Cells = append(month.Cells, evidence.Cell{Trip: trip,
			Level: month.Levels[trip%2], LineHours: 19, Strikes: 5})
	}
	lure.Cells = append(lure.Cells, evidence.Cell{Trip: 3, Leg: 99, Level: "Crochet", LineHours: .5, Strikes: 2})
	var all []evidence.Comparison
	for _, f := range []evidence.Factor{lure, month} {
		e := queries.Evidence{Factor: f.Name, Comparison: evidence.Compare(f, nil)}
		for _, l := range e.Comparison.Levels {
			rate, lo, hi, shrunk := l.Rate, l.Interval.Lo, l.Interval.Hi, l.Shrunk
			e.Rows = append(e.Rows, queries.StrikeRate{Level: l.Level,
				LineHours: l.Count.Effort, Strikes: l.Count.Events,
				Rate: &rate, RateLo: &lo, RateHi: &hi, ShrunkRate: &shrunk, LittleEffort: l.Thin, Note: l.Why})
		}
		all = append(all, e.Comparison)
		in.Worked.Evidence = append(in.Worked.Evidence, e)
	}
	for i, f := range evidence.Find(all) {
		in.Worked.Evidence[i].Finding = f
	}
	in.Worked.Findings = queries.FindingsOf(in.Worked.Evidence)
	in.Worked.Next, in.Worked.Plan = queries.Outlook(in.Worked.Evidence, 1.5, 3)
	in.Worked.Methods = []queries.Method{{Method: "Rate", Words: "Strikes over hours.",
		Formula: "x / t", Source: "arithmetic"}}
	return in
}

func rendered(t *testing.T, in SeasonInput) string {
	t.Helper()
	var b bytes.Buffer
	if err := Season(&b, in); err != nil {
		t.Fatal(err)
	}
	return b.String()
}

func TestFindingsComeFirst(t *testing.T) {
	in := workedSeason()
	html := rendered(t, in)
	last := 0
	for _, id := range []string{"mattered", "days", "effort", "strikes", "by-lure", "by-month", "next", "mixed",
		"outcomes", "spread", "methods"} {
		at := strings.Index(html, `<section id="`+id+`"`)
		if at < last {
			t.Errorf("section %s is missing or out of its place", id)
		}
		last = at
	}
	for _, want := range []string{
		"Of 1 factor compared, lure settled; the rest may be luck.",
		"Lure: &lt;b&gt;Awl&lt;/b&gt; brought",
		"Lure, settled: &lt;b&gt;Awl&lt;/b&gt; brought",
		"Month, not settled: can&#39;t be compared: no trip fished two of them",
		"Crochet (little effort)",
		"Rate: Strikes over hours. Formula: x / t. Source: arithmetic.",
	} {
		if !strings.Contains(html, want) {
			t.Errorf("no %q on the page", want)
		}
	}
	if strings.Contains(html, "<b>Awl") {
		t.Error("a name from the log is not escaped")
	}
}

// A level with little effort is not put forward, whatever its rate.
func TestLittleEffortNeverLeads(t *testing.T) {
	in := workedSeason()
	rows := in.Worked.Evidence[0].Rows
	if best := ranked(rows); best == nil || best.Level != "<b>Awl</b>" {
		t.Errorf("ranked first: %+v", best)
	}
	if raw := rows[2]; *raw.Rate <= *rows[0].Rate || !raw.LittleEffort {
		t.Errorf("the level with half an hour should look best and be thin: %+v", raw)
	}
	for _, f := range in.Worked.Findings {
		if strings.Contains(f.Sentence, "Crochet") {
			t.Errorf("half an hour is put forward: %s", f.Sentence)
		}
	}
}

func TestLuck(t *testing.T) {
	for p, want := range map[float64]string{.0004: "less than 1 time in 100", .012: "1 time in 100",
		.31: "31 times in 100", 1: "half the time or more"} {
		if got := luckWords(p); got != want {
			t.Errorf("p %v: %q, want %q", p, got, want)
		}
	}
}

// A ratio without an interval says on the page why there is none.
func TestNoIntervalIsSaid(t *testing.T) {
	for note, want := range map[string]bool{evidence.WhyFewTrips: true, "": false} {
		ratio := 2.
		notes := strings.Join(evidenceNotes(queries.Evidence{Factor: "lure"},
			[]queries.StrikeRate{{Level: "Awl", Ratio: &ratio, Note: note}}), "\n")
		if strings.Contains(notes, "No interval side by side: too few trips") != want {
			t.Errorf("%q: %s", note, notes)
		}
	}
}
