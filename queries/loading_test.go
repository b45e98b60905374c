package queries_test

import (
	"encoding/json"
	"fmt"
	"os"
	"path/filepath"
	"reflect"
	"slices"
	"strings"
	"testing"

	"wakeledger/pipeline"
	"wakeledger/queries"
	"wakeledger/testdata/seasons"
)

// demoTotals are those of truth.json that the questions answer.
type demoTotals struct {
	Trips     int     `json:"trips"`
	Legs      int64   `json:"legs"`
	Lined     int64   `json:"legs_with_lines_logged"`
	BoatHours float64 `json:"boat_hours"`
	LineHours float64 `json:"line_hours"`
	Strikes   int64   `json:"strikes"`
	Hookups   int64   `json:"hookups"`
	Missed    int64   `json:"missed"`
	Lost      int64   `json:"lost"`
	Landed    int64   `json:"landed"`
	Released  int64   `json:"released"`
	NotLogged int64   `json:"outcome_not_logged"`
	Scaled    int     `json:"fish_with_scale_weight"`
	Bands     []struct {
		Level     string  `json:"level"`
		Legs      int64   `json:"legs"`
		BoatHours float64 `json:"boat_hours"`
		LineHours float64 `json:"line_hours"`
		Strikes   int64   `json:"strikes"`
	} `json:"by_speed_band"`
}

type demoTruth struct {
	All     demoTotals            `json:"all"`
	Seasons map[string]demoTotals `json:"seasons"`
	Logs    map[string]demoTotals `json:"logs"`
	Aside   []struct {
		File   string `json:"file"`
		Sheet  string `json:"sheet"`
		Row    int64  `json:"row"`
		Column string `json:"column"`
		Cell   string `json:"cell"`
	} `json:"set_aside"`
}

func demo(t *testing.T) demoTruth {
	t.Helper()
	b, err := os.ReadFile("../testdata/demo/truth.json")
	if err != nil {
		t.Fatal(err)
	}
	var truth demoTruth
	if err := json.Unmarshal(b, &truth); err != nil {
		t.Fatal(err)
	}
	return truth
}

// demoLogs are the demo season's files whose names begin with a prefix.
func demoLogs(t *testing.T, prefix string) []string {
	t.Helper()
	files, err := filepath.Glob("../testdata/demo/logs/" + prefix + "*")
	if err != nil || len(files) == 0 {
		t.Fatalf("no demo logs %s* (%v)", prefix, err)
	}
	return files
}

// TestDemoSeason: each log, each year and all of the demo season are what its
// generator says, and what is set aside are the rows with its mistakes.
func TestDemoSeason(t *testing.T) {
	truth := demo(t)
	parts := map[string]demoTotals{"": truth.All, "2025": truth.Seasons["2025"], "2026": truth.Seasons["2026"]}
	for log, totals := range truth.Logs {
		parts[log] = totals
	}
	for prefix, want := range parts {
		t.Run("logs "+prefix, func(t *testing.T) {
			s := open(t, pipeline.Config{Ocean: "pacific", Zone: "America/Los_Angeles"})
			load(t, s, demoLogs(t, prefix)...)
			checkDemo(t, s, want)
			checkDemoAside(t, s, truth, prefix)
		})
	}
}

func checkDemo(t *testing.T, s *pipeline.Season, want demoTotals) {
	t.Helper()
	var got demoTotals
	got.Trips = len(answer(t, s, queries.AskTrips))
	for _, f := range answer(t, s, queries.AskFish) {
		if f.ScaleKG != nil {
			got.Scaled++
		}
	}
	effort := map[string]queries.Effort{}
	for _, e := range answerBy(t, s, queries.AskEffort, "speed-band") {
		effort[e.Level] = e
		got.Legs += e.Legs
		got.Lined += e.Legs - e.UnlinedLegs
		got.BoatHours += e.BoatHours
		got.LineHours += e.LineHours
	}
	rates := map[string]queries.StrikeRate{}
	for _, r := range answerBy(t, s, queries.AskStrikeRate, "speed-band") {
		rates[r.Level] = r
		got.Strikes += r.Strikes
		got.Hookups += r.Hookups
		got.Landed += r.Landed
		got.Released += r.Released
	}
	for _, o := range answerBy(t, s, queries.AskOutcomes, "speed-band") {
		got.NotLogged += o.NotLogged
	}
	got.Lost = got.Hookups - got.Landed - got.Released
	got.Missed = got.Strikes - got.Hookups - got.NotLogged
	for _, b := range want.Bands {
		e, r := effort[bandLevel(b.Level)], rates[bandLevel(b.Level)]
		if e.Legs != b.Legs || !rounded(e.BoatHours, b.BoatHours, 1) ||
			!rounded(e.LineHours, b.LineHours, 1) || r.Strikes != b.Strikes {
			t.Errorf("%s: %d legs, %v boat-hours, %v line-hours, %d strikes, want %+v", b.Level, e.Legs,
				e.BoatHours, e.LineHours, r.Strikes, b)
		}
	}
	for _, h := range []struct {
		name      string
		got, want *float64
	}{{"boat-hours", &got.BoatHours, &want.BoatHours}, {"line-hours", &got.LineHours, &want.LineHours}} {
		if !rounded(*h.got, *h.want, len(want.Bands)) {
			t.Errorf("%v %s, want %v", *h.got, h.name, *h.want)
		}
		*h.got = *h.want
	}
	want.Bands = nil
	if !reflect.DeepEqual(got, want) {
		t.Errorf("got  %+v\nwant %+v", got, want)
	}
}

// bandLevel turns truth.json's "6-8" and "16+" into the level's name.
func bandLevel(s string) string {
	if lo, ok := strings.CutSuffix(s, "+"); ok {
		return lo + " and up"
	}
	if lo, hi, ok := strings.Cut(s, "-"); ok {
		return "[" + lo + ", " + hi + ")"
	}
	return s
}

func checkDemoAside(t *testing.T, s *pipeline.Season, truth demoTruth, prefix string) {
	t.Helper()
	var got, want []string
	for _, a := range answer(t, s, queries.AskSetAside) {
		got = append(got, fmt.Sprintf("%s|%s|%d|%s|%s", a.File, a.Sheet, a.Row, a.Column, a.Cell))
	}
	for _, a := range truth.Aside {
		if strings.HasPrefix(a.File, prefix) {
			want = append(want, fmt.Sprintf("%s|%s|%d|%s|%s", a.File, a.Sheet, a.Row, a.Column, a.Cell))
		}
	}
	slices.Sort(got)
	slices.Sort(want)
	if !slices.Equal(got, want) {
		t.Errorf("set aside:\n%s\nwant:\n%s", strings.Join(got, "\n"), strings.Join(want, "\n"))
	}
}

var tableNames = []string{"trip", "leg", "line", "strike", "fish"}

// contents are all tables as they stand, row order included, and the lists of
// fish with their weights and of what was set aside, with their files and rows.
func contents(t *testing.T, s *pipeline.Season) []any {
	t.Helper()
	all := []any{answer(t, s, queries.AskFish), answer(t, s, queries.AskSetAside)}
	for _, name := range tableNames {
		all = append(all, table(t, s, name))
	}
	return all
}

// formats of the tests on loading: one of each shape.
var shapes = []seasons.Format{
	plain,
	{Layout: "dates", Container: "workbook", Units: "us", Dates: "real-1900", Clock: "real"},
	{Layout: "flat", Container: "text", Units: "headings", Separator: "semicolon", Encoding: "utf-8",
		Dates: "names", Clock: "24:00"},
}

// TestLoadingTwice: the same files again are nothing to do; the same rows under
// other bytes, and an edit that is taken back, leave the tables as they were.
func TestLoadingTwice(t *testing.T) {
	for i, f := range shapes {
		t.Run(f.String(), func(t *testing.T) {
			model := seasons.New(*firstSeed*100 + uint64(i))
			dir := t.TempDir()
			w := write(t, dir, "log", model, f)
			s := open(t, config(model, w))
			load(t, s, w.Files...)
			before := contents(t, s)
			for _, r := range load(t, s, w.Files...) {
				if r.Known != pipeline.Unchanged {
					t.Errorf("%s: not taken as unchanged", r.Name)
				}
			}
			if !reflect.DeepEqual(contents(t, s), before) {
				t.Error("loading the same files again changed the tables")
			}

			edited := seasons.New(*firstSeed*100 + uint64(i))
			edited.Trips = edited.Trips[:len(edited.Trips)-1]
			write(t, dir, "log", edited, f)
			replaced := 0
			for _, r := range load(t, s, w.Files...) {
				if r.Asked != nil {
					t.Errorf("%s: asked: %s", r.Name, r.Asked.Why)
				}
				if len(r.Replaced) > 0 {
					replaced++
				}
			}
			if replaced == 0 {
				t.Error("no edited file replaced its rows")
			}
			for _, want := range edited.Tables(f) {
				same(t, table(t, s, want.Name), want)
			}

			write(t, dir, "log", model, f)
			load(t, s, w.Files...)
			if !reflect.DeepEqual(contents(t, s), before) {
				t.Error("an edit taken back left a trace in the tables")
			}
		})
	}
}

func write(t *testing.T, dir, name string, s *seasons.Season, f seasons.Format) seasons.Written {
	t.Helper()
	w, err := seasons.Write(dir, name, s, f)
	if err != nil {
		t.Fatal(err)
	}
	return w
}

// TestOrderOfFilesDoesNotMatter: role sheets in any order of their files give
// the same tables.
func TestOrderOfFilesDoesNotMatter(t *testing.T) {
	layouts := []string{"roles", "dates", "undated"}
	if testing.Short() {
		layouts = layouts[:1] // 'make prove' has them all
	}
	for i, layout := range layouts {
		f := plain
		f.Layout = layout
		model := seasons.New(*firstSeed*100 + 10 + uint64(i))
		w := write(t, t.TempDir(), "log", model, f)
		for turn := range w.Files {
			files := slices.Concat(w.Files[turn:], w.Files[:turn])
			if turn%2 == 1 {
				slices.Reverse(files)
			}
			t.Run(fmt.Sprint(layout, turn), func(t *testing.T) {
				s := open(t, config(model, w))
				load(t, s, files...)
				for _, want := range model.Tables(f) {
					same(t, table(t, s, want.Name), want)
				}
			})
		}
	}
}

// TestTheSameLegsInTwoLogs: a season logged twice, in one shape or in two and in
// either order, is counted once. Two logs of one hand are the same log, of which the
// second is the same bytes or takes the first one's place; of two hands, the second
// log's rows are named.
func TestTheSameLegsInTwoLogs(t *testing.T) {
	roles, book, flat := shapes[0], shapes[1], shapes[2]
	roles.Units, book.Units, book.Layout = "headings", "headings", "roles" // both logs under the same settings
	for i, pair := range [][2]seasons.Format{{roles, roles}, {flat, flat}, {roles, book},
		{roles, flat}, {flat, roles}} {
		t.Run(fmt.Sprintf("%s and %s", pair[0], pair[1]), func(t *testing.T) {
			model := seasons.New(*firstSeed*100 + 20 + uint64(i))
			dir := t.TempDir()
			first, second := write(t, dir, "a", model, pair[0]), write(t, dir, "b", model, pair[1])
			s := open(t, config(model, first))
			load(t, s, first.Files...)
			reports := load(t, s, second.Files...)
			for _, want := range model.Tables(flat) { // without what a flat log lacks
				same(t, table(t, s, want.Name), want)
			}
			if pair[0] != pair[1] {
				checkNamed(t, s, model)
				return
			}
			for _, r := range reports {
				if r.Known != pipeline.Unchanged && len(r.Replaced) != 1 {
					t.Errorf("%s: neither the same bytes nor in place of one log: %+v", r.Name, r)
				}
			}
			if aside := answer(t, s, queries.AskSetAside); len(aside) > 0 {
				t.Errorf("%d rows set aside of a log that is there once, the first: %+v", len(aside), aside[0])
			}
		})
	}
}

// TestCountsAndStrikesInTwoLogs: a flat log that counts the strikes and sheets
// that list them tell the same strikes once, in either order. Strikes without a
// leg, and fish that the sheet of strikes leaves out, cannot be told apart there
// and are left out here.
func TestCountsAndStrikesInTwoLogs(t *testing.T) {
	roles, counts := shapes[0], shapes[2]
	roles.Units, counts.Layout = "headings", "counts"
	for i, pair := range [][2]seasons.Format{{roles, counts}, {counts, roles}} {
		t.Run(fmt.Sprintf("%s and %s", pair[0], pair[1]), func(t *testing.T) {
			model := seasons.New(*firstSeed*100 + 30 + uint64(i))
			for _, trip := range model.Trips {
				trip.Strikes = slices.DeleteFunc(trip.Strikes,
					func(k *seasons.Strike) bool { return k.Stray || k.FishOnly })
			}
			dir := t.TempDir()
			first, second := write(t, dir, "a", model, pair[0]), write(t, dir, "b", model, pair[1])
			s := open(t, config(model, first))
			load(t, s, first.Files...)
			load(t, s, second.Files...)
			for _, want := range model.Tables(shapes[2]) {
				same(t, table(t, s, want.Name), want)
			}
		})
	}
}

// checkNamed holds that what was set aside are rows of the second log that say
// where the first has them: for legs, or the lines that stand on them, at least
// as many as the season has legs.
func checkNamed(t *testing.T, s *pipeline.Season, model *seasons.Season) {
	t.Helper()
	legs := map[string]bool{}
	for _, a := range answer(t, s, queries.AskSetAside) {
		if !strings.Contains(a.Reason, "counted once") || !strings.HasPrefix(a.File, "b") ||
			!strings.Contains(a.Reason, " a") {
			t.Errorf("set aside: %+v", a)
		}
		if strings.HasPrefix(a.Reason, "the same leg") || strings.HasPrefix(a.Reason, "the same line") {
			legs[fmt.Sprint(a.File, a.Sheet, a.Row)] = true
		}
	}
	if season := model.Season(); len(legs) < season.Legs() {
		t.Errorf("%d rows named as legs that another log has, want at least the season's %d legs", len(legs),
			season.Legs())
	}
}
