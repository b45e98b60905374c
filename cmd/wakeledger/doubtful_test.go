package main

import (
	"html"
	"os"
	"path/filepath"
	"regexp"
	"slices"
	"strings"
	"testing"
)

// doubtfulLogs are of three trips with one doubt of each kind.
var doubtfulLogs = map[string]string{
	"legs.csv": "trip,boat,date,start,end,speed kn,lines out\n" +
		"T1,Bowline,2026-06-01,07:00,11:00,8.5,4\nT1,Bowline,2026-06-01,10:30,12:30,12.5,4\n" +
		"T2,Bowline,2026-06-03,07:00,11:00,24,4\nT2,Bowline,2026-06-03,11:00,14:00,9,4\n" +
		"T3,Bowline,2026-06-05,06:00,20:00,9,4\nT3,Bowline,2026-06-05,20:00,21:00,12.5,4\n",
	"strikes.csv": "trip,date,time,outcome,species,speed kn\nT1,2026-06-01,08:00,missed,,\n" +
		"T1,2026-06-01,15:00,missed,,\nT2,2026-06-03,12:00,missed,,13.5\n" +
		"T3,2026-06-05,08:00,landed,yellowfin tuna,9.5\n",
	"fish.csv": "trip,date,time,species,length cm,girth cm\nT3,2026-06-05,08:00,yellowfin " +
		"tuna,400,\nT2,2026-06-03,09:00,yellowfin tuna,100,65\n",
}

// TestDoubtfulSaysSo has what 'ask doubts' names marked on the season's page where it stands:
// with its reason in the row of its trip and of its fish, and beside the strikes and speeds.
func TestDoubtfulSaysSo(t *testing.T) {
	dir := t.TempDir()
	args := []string{"--db", filepath.Join(dir, "doubtful.duckdb"), "load"}
	for name, text := range doubtfulLogs {
		if err := os.WriteFile(filepath.Join(dir, name), []byte(text), 0o600); err != nil {
			t.Fatal(err)
		}
		args = append(args, filepath.Join(dir, name))
	}
	slices.Sort(args[3:])
	tell(t, args...)
	db := args[1]
	asked := tell(t, "--db", db, "ask", "doubts", "--format", "csv")
	page := html.UnescapeString(string(written(t,
		map[string][]string{"doubtful": {"--db", db, "report", "season"}})["doubtful"]))
	for _, c := range []struct{ doubt, section, row, mark string }{
		{"legs overlap", "trips", "T1", "legs overlap"},
		{"strike without a leg", "trips", "T1", "no leg at the time of a strike"},
		{"strike at another speed", "trips", "T2", "a strike at another speed than its leg"},
		{"odd speed", "trips", "T2", "unusual speed"},
		{"fish without a strike", "trips", "T2", "no strike row for a fish"},
		{"fish without a strike", "fish", "Yellowfin tuna", "doubtful: no strike row for a fish"},
		{"long leg", "trips", "T3", "a leg over 12 hours"},
		{"long fish", "trips", "T3", "longer than its kind grows"},
		{"long fish", "fish", "Yellowfin tuna", "doubtful: longer than its kind grows"},
	} {
		if !strings.Contains(asked, c.doubt+",") {
			t.Errorf("%q is no doubt of this season:\n%s", c.doubt, asked)
		}
		_, section, _ := strings.Cut(page, `<section id="`+c.section+`"`)
		section, _, _ = strings.Cut(section, "</section>")
		marked := slices.ContainsFunc(regexp.MustCompile(`(?s)<tr.*?</tr>`).FindAllString(section, -1),
			func(row string) bool {
				return strings.Contains(row, c.row) && strings.Contains(row, c.mark)
			})
		if !marked {
			t.Errorf("%s: no row of %s says %q", c.section, c.row, c.mark)
		}
	}
	for _, want := range []string{"2 doubtful</small>", "Doubtful, but counted: 1 leg at an unusual speed, 1 leg " +
		"over 12 hours, 1 leg that overlaps another and 1 strike when no leg was fished."} {
		if !strings.Contains(page, want) {
			t.Errorf("the page does not say %q", want)
		}
	}
	season := []string{"--db", plainSeason(t, 4, 2, true), "report", "season"}
	sound := string(written(t, map[string][]string{"sound": season})["sound"])
	sound, _, _ = strings.Cut(sound, `id="methods"`)
	for _, word := range []string{"doubtful</small>", "Doubtful, but counted", "(doubtful"} {
		if strings.Contains(sound, word) {
			t.Errorf("a sound season says %q", word)
		}
	}
}
