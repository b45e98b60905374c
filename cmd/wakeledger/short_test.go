package main

import (
	"fmt"
	"os"
	"path/filepath"
	"strings"
	"testing"

	"wakeledger/testdata/browser"
)

// bounds are how long a season's page may be: screens of a desk (1280 x 900) and of a
// phone (390 x 844), printed sheets, visible words.
type bounds struct {
	desk, phone float64
	sheets      int
	words       int
}

// openingPhones is how many screens of a phone hold the title, the figures and the box.
const openingPhones = 1.5

// checkShort holds a page against its bounds and says what was measured.
func checkShort(t *testing.T, name string, html []byte, most bounds) {
	t.Helper()
	p := browser.Open(t, html)
	p.Resize(t, 1280, 900)
	got := bounds{desk: browser.Eval[float64](t, p, `document.documentElement.scrollHeight / 900`),
		words: browser.Eval[int](t, p, `document.body.innerText.split(/\s+/).filter(w => w).length`)}
	p.Resize(t, 390, 844)
	got.phone = browser.Eval[float64](t, p, `document.documentElement.scrollHeight / 844`)
	opening := browser.Eval[float64](t, p,
		`Math.max(...["h1", ".tiles", ".box"].map(s => document.querySelector(s).getBoundingClientRect().bottom + scrollY)) / 844`)
	for _, paper := range browser.Papers {
		got.sheets = max(got.sheets, p.Print(t, paper, "header").Pages)
	}
	t.Logf("%s: %.2f desk screens, %.2f phone screens, %d sheets, %d words; the opening ends at %.2f phone screens",
		name, got.desk, got.phone, got.sheets, got.words, opening)
	if got.desk > most.desk || got.phone > most.phone || got.sheets > most.sheets ||
		got.words > most.words || opening > openingPhones {
		t.Errorf("%s: %+v, at most %+v; the opening ends at %.2f phone screens, at most %v", name,
			got, most, opening, openingPhones)
	}
	if n := browser.Eval[int](t, p, `document.querySelectorAll(".tiles > div").length`); n != 4 {
		t.Errorf("%s: %d figures at the top, want 4", name, n)
	}
	if n := browser.Eval[int](t, p, `document.querySelectorAll(".box li").length`); n < 1 || n > 5 {
		t.Errorf("%s: %d lines of what to do, want 1 to 5", name, n)
	}
}

// The demo's season fits the sizes that a captain will read, and says nothing twice.
func pagesAreShort(t *testing.T, all map[string][]byte) {
	checkShort(t, "the demo", all["us"], bounds{desk: 9, phone: 16, sheets: 10, words: 2500})
	p := browser.Open(t, all["us"])
	if n := browser.Eval[int](t, p, `(document.body.innerText.match(/not settled/gi) || []).length`); n > 4 {
		t.Errorf("\"not settled\" stands %d times in what is shown", n)
	}
	for _, note := range browser.Eval[[]string](t, p, `(() => { const all = Array.from(document.querySelectorAll("main > section .notes li, main > section .keys li")).map(e => e.textContent);
		return all.filter((n, i) => n.length > 40 && all.indexOf(n) !== i); })()`) {
		t.Errorf("a note stands twice: %q", note)
	}
}

// Odd seasons get a short page that says what it leaves out.
func TestOddSeasonsAreShort(t *testing.T) {
	for name, c := range map[string]struct {
		trips, fish int // fish of each trip
		speeds      bool
		most        bounds
		want        []string
	}{
		"one trip": {1, 3, true, bounds{3, 6, 4, 700}, []string{"Not drawn: speed and what mattered, which one " +
			"trip can't show"}},
		"no fish":    {12, 0, true, bounds{5, 8, 6, 1200}, []string{"because no fish is logged"}},
		"no speeds":  {12, 3, false, bounds{7, 11, 8, 1600}, []string{"speed, which is not logged"}},
		"1,000 fish": {40, 25, true, bounds{9, 14, 10, 2200}, []string{"The heaviest fish"}},
	} {
		t.Run(name, func(t *testing.T) {
			if testing.Short() && c.trips*c.fish > 12 {
				t.Skip("a long season, in make prove")
			}
			db := plainSeason(t, c.trips, c.fish, c.speeds)
			html := written(t, map[string][]string{name: {"--db", db, "report", "season"}})[name]
			for _, w := range c.want {
				if !strings.Contains(strings.ReplaceAll(string(html), "&#39;", "'"), w) {
					t.Errorf("the page does not say %q", w)
				}
			}
			checkShort(t, name, html, c.most)
			p := browser.Open(t, html)
			checkFigures(t, p)
			p.CheckQuiet(t)
		})
	}
}

// plainSeason is a season of two legs a trip, at two speeds, a strike for each fish and
// two more that were missed.
func plainSeason(t *testing.T, trips, fish int, speeds bool) (db string) {
	t.Helper()
	dir := t.TempDir()
	legs, strikes, caught := "trip,boat,date,start,end,speed kn,lines out\n", "trip,date,time,outcome,species\n",
		"trip,date,time,species,length cm,girth cm,scale weight kg\n"
	for i := range trips {
		day := fmt.Sprintf("2026-%02d-%02d", 6+i/14, 1+2*(i%14))
		for leg, knots := range []string{"8.5", "12.5"} {
			if !speeds {
				knots = ""
			}
			legs += fmt.Sprintf("T%d,Bowline,%s,%02d:00,%02d:00,%s,4\n", i+1, day, 7+4*leg, 11+4*leg, knots)
		}
		for n := range fish + 2 {
			at := fmt.Sprintf("%02d:%02d", 7+(n*7+i)%8, (n*13+i)%60)
			if n >= fish {
				strikes += fmt.Sprintf("T%d,%s,%s,missed,\n", i+1, day, at)
				continue
			}
			strikes += fmt.Sprintf("T%d,%s,%s,landed,yellowfin tuna\n", i+1, day, at)
			length := 70 + (n*31+i*17)%60
			caught += fmt.Sprintf("T%d,%s,%s,yellowfin tuna,%d,%.0f,%.1f\n", i+1, day, at, length, 0.65*float64(length),
				float64(length*length*length)*0.65*0.65/27200)
		}
	}
	args := []string{"--db", filepath.Join(dir, "plain.duckdb"), "load"}
	for name, text := range map[string]string{"legs": legs, "strikes": strikes, "fish": caught} {
		file := filepath.Join(dir, name+".csv")
		if err := os.WriteFile(file, []byte(text), 0o600); err != nil {
			t.Fatal(err)
		}
		if strings.Count(text, "\n") > 1 {
			args = append(args, file)
		}
	}
	tell(t, args...)
	return args[1]
}
