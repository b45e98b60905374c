package reports

import (
	"bytes"
	"context"
	"math"
	"os"
	"os/exec"
	"path/filepath"
	"regexp"
	"strings"
	"testing"
	"time"

	"wakeledger/pipeline/estimate"
	"wakeledger/queries"
	"wakeledger/reports/page"
)

func demoDeck(t *testing.T) DeckInput {
	t.Helper()
	cat, err := estimate.Default()
	if err != nil {
		t.Fatal(err)
	}
	return DeckInput{Title: "Grey Heron, deck page", Plan: demoPlan(),
		Spread: []queries.SpreadPlace{{Position: "port short", SetbackM: 45.72, Legs: 9},
			{Position: "starboard long", SetbackM: 91.44, Legs: 9}}, Units: "us",
		Generated: time.Date(2026, 11, 2, 0, 0, 0, 0, time.UTC), Catalogue: cat,
		Own: demoScale().Own, Species: []queries.SpeciesSeen{
			{Species: "PBF", Name: "Pacific bluefin tuna", Fish: 20, ShortestCM: p(80.0), LongestCM: p(210.0),
				LeastGirthCM: p(55.0), MostGirthCM: p(150.0), Relation: p("PBF-NWPAC")},
			{Species: "YFT", Name: "Yellowfin tuna", Fish: 9, ShortestCM: p(60.0),
				LongestCM: p(150.0), Relation: p("YFT-WCPO")},
			{Species: "ZZQ", Name: "no relation", Fish: 1},
		}}
}

// demoPlan is four trips, speed by halves and two lures.
func demoPlan() []queries.PlanDay {
	var out []queries.PlanDay
	for i := range int64(DeckTrips) {
		out = append(out, queries.PlanDay{Trip: i + 1, FirstHalf: "12 to 14 kn", SecondHalf: "10 to 12 kn",
			Port: "Basting Iron", Starboard: "Treadle"})
	}
	return out
}

// 45.72 m are 50 yd; at 8 kn, 4.1156 m a second, 11.1 seconds to count.
func TestSpreadByHand(t *testing.T) {
	d := &deck{DeckInput: demoDeck(t), units: unitSets["us"]}
	tb := d.placesPanel().Table
	setback, kn := 45.72, 8.0
	if cellOf(t, tb, 0, "Setback") != page.Value(50) ||
		cellOf(t, tb, 0, "Count at 8") != page.Value(setback/(kn*1852/3600)) {
		t.Errorf("%+v", tb)
	}
}

// cellsOf are the texts of a panel's table, by column head.
func cellOf(t *testing.T, tb *page.Table, row int, column string) page.Cell {
	t.Helper()
	for i, c := range tb.Columns {
		if c.Head == column {
			return tb.Rows[row].Cells[i]
		}
	}
	t.Fatalf("no column %q", column)
	return page.Cell{}
}

// TestGridByHand: 60 x 40 in is 120 lb by the trade's rule, and girths that no fish
// has at a length are blank.
func TestGridByHand(t *testing.T) {
	d := &deck{DeckInput: demoDeck(t), units: unitSets["us"]}
	g := d.grid("", estimate.LengthGirthKG(1, 1), 30, 80, nil)
	row := -1
	for i, r := range g.Table.Rows {
		if r.Cells[0] == page.Value(60) {
			row = i
		}
	}
	if row < 0 || cellOf(t, g.Table, row, "40") != page.Words("120") {
		t.Errorf("%+v", g.Table)
	}
	if cellOf(t, g.Table, 0, g.Table.Columns[len(g.Table.Columns)-1].Head) != page.Words("·") {
		t.Error("a girth that no fish has is filled in")
	}
	if len(g.Table.Rows) > deckRows || len(g.Table.Columns) > deckColumns+1 {
		t.Errorf("%d by %d", len(g.Table.Rows), len(g.Table.Columns))
	}
}

// TestSetbackByHand: 60 s at 7 kn are 60 x 7 x 1852 / 3600 = 216.07 m, 236.30 yd.
func TestSetbackByHand(t *testing.T) {
	d := &deck{DeckInput: demoDeck(t), units: unitSets["us"]}
	tb := d.setbackPanel().Table
	for i, r := range tb.Rows {
		if r.Cells[0] == page.Value(60) {
			if got, want := cellOf(t, tb, i, "7"), page.Value(60*7*1852.0/3600/0.9144); got != want {
				t.Errorf("%v, want %v", got, want)
			}
		}
	}
}

func TestDeck(t *testing.T) {
	for _, u := range []string{"us", "metric"} {
		in := demoDeck(t)
		in.Units = u
		var buf bytes.Buffer
		if err := Deck(&buf, in); err != nil {
			t.Fatal(err)
		}
		html := buf.String()
		for _, want := range []string{"Pacific bluefin tuna: length × girth", "own divisor, from 12 fish",
			"Any other fish", "L × G² / 800", "Length alone",
			"PBF-NWPAC, the northwestern Pacific", "Setback", "Grey Heron", "Plan of the next trips", "12 to 14 kn",
			"This boat&#39;s spread", "Strikes", "Common practice, no source",
			"not for records, sale or legal size", "COLREGs"} {
			if !strings.Contains(html, want) {
				t.Errorf("%s: %q is not on the page", u, want)
			}
		}
		if strings.Contains(html, "<script") || strings.Contains(html, "NaN") {
			t.Errorf("%s: a script or NaN on the page", u)
		}
	}
	empty := DeckInput{Units: "metric", Catalogue: demoDeck(t).Catalogue}
	var buf bytes.Buffer
	if err := Deck(&buf, empty); err != nil || !strings.Contains(buf.String(), "Any fish: length × girth") {
		t.Errorf("an empty season: %v", err)
	}
	if err := Deck(&buf, DeckInput{Units: "stone"}); err == nil {
		t.Error("units that do not exist were taken")
	}
}

func TestDeckEscapes(t *testing.T) {
	bad := `</style><script>alert(1)</script>"'`
	in := demoDeck(t)
	in.Title, in.Species[0].Name, in.Species[1].Name = bad, bad, bad
	var buf bytes.Buffer
	if err := Deck(&buf, in); err != nil {
		t.Fatal(err)
	}
	if strings.Contains(buf.String(), "<script>") {
		t.Error("text from a log is on the page unescaped")
	}
}

func TestAxis(t *testing.T) {
	for _, tt := range []struct {
		lo, hi, first, last float64
		most                int
	}{{31, 84, 30, 85, 16}, {80, 210, 80, 210, 16}, {5, 5, 5, 6, 16}, {18, 90, 15, 90, 16}} {
		a := axis(tt.lo, tt.hi, tt.most)
		if len(a) > tt.most || a[0] != tt.first || a[len(a)-1] != tt.last {
			t.Errorf("%g to %g: %v", tt.lo, tt.hi, a)
		}
	}
	if s := spread(estimate.Own{}); !math.IsNaN(s) {
		t.Error(s)
	}
}

// TestDeckPrintsOnOneSheet, front and back, prints the page by a browser on A4 and on Letter and counts
// the pages of the PDF. The policy is taken off the copy that names its paper: its
// hash is that of the style as written.
func TestDeckPrintsOnOneSheet(t *testing.T) {
	browser, err := exec.LookPath("chromium")
	if err != nil {
		if os.Getenv("CI") != "" {
			t.Fatal("CI is set, but chromium is not installed")
		}
		t.Skip("chromium is not installed: nothing to print with")
	}
	pages := regexp.MustCompile(`/Type\s*/Page[^s]`)
	for _, u := range []string{"us", "metric"} {
		in := demoDeck(t)
		in.Units = u
		for i, name := range []string{"Skipjack tuna", "Common dolphinfish", "Albacore"} {
			code, relation := []string{"SKJ", "DOL", "ALB"}[i], []string{"SKJ-WCPO", "DOL-PANAMA", "ALB-NPAC-Q3"}[i]
			in.Species = append(in.Species, queries.SpeciesSeen{Species: code, Name: name, ShortestCM: p(40.0),
				LongestCM: p(120.0), Relation: p(relation)})
		}
		var buf bytes.Buffer
		if err := Deck(&buf, in); err != nil {
			t.Fatal(err)
		}
		for _, paper := range []string{"A4", "letter"} {
			html := strings.NewReplacer("@page{margin", "@page{size:"+paper+";margin",
				`http-equiv="Content-Security-Policy"`, `name="policy"`).Replace(buf.String())
			dir := t.TempDir()
			file, pdf := filepath.Join(dir, "deck.html"), filepath.Join(dir, "deck.pdf")
			if err := os.WriteFile(file, []byte(html), 0o600); err != nil {
				t.Fatal(err)
			}
			ctx, cancel := context.WithTimeout(context.Background(), time.Minute)
			out, err := exec.CommandContext(ctx, browser, "--headless", "--no-sandbox", "--disable-gpu",
				"--no-pdf-header-footer", "--print-to-pdf="+pdf, "file://"+file).CombinedOutput()
			cancel()
			if err != nil {
				t.Fatalf("%v: %s", err, out)
			}
			b, err := os.ReadFile(pdf)
			if err != nil {
				t.Fatal(err)
			}
			if n := len(pages.FindAll(b, -1)); n != 2 {
				t.Errorf("%s on %s: %d pages, want 2", u, paper, n)
			}
		}
	}
}
