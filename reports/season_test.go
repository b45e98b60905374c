package reports

import (
	"bytes"
	"errors"
	"regexp"
	"strings"
	"testing"

	"wakeledger/pipeline/factors"
	"wakeledger/pipeline/sentence"
	"wakeledger/queries"
	"wakeledger/reports/page"
)

func written(t *testing.T, in SeasonInput) string {
	t.Helper()
	var buf bytes.Buffer
	if err := Season(&buf, in); err != nil {
		t.Fatal(err)
	}
	return buf.String()
}

func made(t *testing.T, in SeasonInput) *season {
	t.Helper()
	s, err := newSeason(in)
	if err != nil {
		t.Fatal(err)
	}
	return s
}

func section(t *testing.T, build func() (page.Section, error)) page.Section {
	t.Helper()
	s, err := build()
	if err != nil {
		t.Fatal(err)
	}
	return s
}

func TestSeasonIsDeterministic(t *testing.T) {
	first, second := written(t, demoSeason()), written(t, demoSeason())
	if first != second {
		t.Error("two reports of one season differ")
	}
}

// demoCharts are five pictures and, folded, effort, strikes, outcomes, classes and trips.
const demoCharts = 5 + 5

func TestSeasonHasEverySection(t *testing.T) {
	html := written(t, demoSeason())
	last := -1
	for _, id := range []string{"days", "sizes", "fates", "pairs", "heaviest", "reading", "effort", "strikes",
		"outcomes", "classes", "fish", "trips", "set-aside", "methods", "cautions"} {
		at := strings.Index(html, `<section id="`+id+`"`)
		if at <= last {
			t.Errorf("section %s is missing or out of order", id)
		}
		last = at
	}
	if got := strings.Count(html, `class="chart"`); got != demoCharts {
		t.Errorf("%d charts, want %d", got, demoCharts)
	}
	// A chart is never without its table.
	for _, part := range strings.Split(html, "<section ")[1:] {
		if strings.Contains(part, `class="chart"`) && !strings.Contains(part, "<table") {
			t.Errorf("a chart without a table: %.60s", part)
		}
	}
}

func TestSeasonEscapes(t *testing.T) {
	bad := `</script><script>alert(1)</script>"'`
	in := demoSeason()
	in.Title, in.Boats, in.Methods = bad, []string{bad}, []string{bad}
	in.StrikeRate[1].Level, in.Effort[1].Level, in.Outcomes[1].Level = bad, bad, bad
	in.Fish[0].Species, in.Fish[0].SpeedBand, in.Fish[0].File, in.Fish[0].Method = &bad, bad, bad, &bad
	in.Trips[0].Trip, in.Trips[0].Date, in.Trips[0].Boat = bad, &bad, bad
	in.Troubles.Aside[0].Examples[0].Found, in.Troubles.Aside[0].Reason = bad, bad
	in.Sizes[0].Level = bad
	html := written(t, in)
	if strings.Contains(html, "<script>alert") || strings.Contains(html, bad) {
		t.Error("text from a log is in the page unescaped")
	}
	if got := len(regexp.MustCompile(`<script[ >]`).FindAllString(html, -1)); got != demoCharts+1+2 {
		t.Errorf("%d script elements, want the %d charts', the palette and our 2", got, demoCharts)
	}
}

func TestSeasonRefuses(t *testing.T) {
	in := demoSeason()
	in.Units = "stone"
	if err := Season(&bytes.Buffer{}, in); err == nil {
		t.Error("units stone: no error")
	}
	in.Units = "metric"
	if err := Season(failing{}, in); !errors.Is(err, errFull) {
		t.Errorf("error %v, want the writer's", err)
	}
}

var errFull = errors.New("disk full")

type failing struct{}

func (failing) Write([]byte) (int, error) { return 0, errFull }

func TestEmptySeason(t *testing.T) {
	html := written(t, SeasonInput{Title: "Nothing", Units: "us"})
	for _, want := range []string{"Not drawn: speed and what mattered", "no fish is logged", "of which none is logged",
		"No row of the logs was set aside.", "Log:"} {
		if !strings.Contains(html, want) {
			t.Errorf("the page of an empty season does not say %q", want)
		}
	}
	words := regexp.MustCompile(`(?s)<script.*?</script>`).ReplaceAllString(html, "")
	if strings.Contains(words, "NaN") || strings.Contains(words, "Inf") {
		t.Error("NaN in the page of an empty season")
	}
}

// The sums of the demo: line-hours 6.4+41.3+96.2+131.8+148.1+52.6+9.1+24.5 =
// 510.0; strikes 0+2+9+18+31+7+2+3 = 72; landed 1+2+4+7+1+1 = 16; released
// 1+5+9+1 = 16.
func TestTotals(t *testing.T) {
	s := made(t, demoSeason())
	if page.Number(s.lineHours, 1) != "510.0" || s.strikes != 72 || s.landed != 16 || s.released != 16 {
		t.Errorf("totals %+v", s.totals)
	}
	// Three strikes at 72/510.0 per hour: 21.25 h.
	if got := s.enough(); got < 21.249 || got > 21.251 {
		t.Errorf("a level needs %v line-hours, want 21.25", got)
	}
	want := map[string]bool{"0 to <6 kn": true, "16 kn and up": true}
	for level, thin := range s.thin {
		if thin != want[level] {
			t.Errorf("%s: thin %v", level, thin)
		}
	}
	if !IsScale(s.scale.Method) || IsScale(s.tape.Method) {
		t.Error("the heaviest on a scale and by tape are mixed")
	}
}

func TestDisagreementIsSaid(t *testing.T) {
	in := demoSeason()
	if got := made(t, in).disagreements(len(in.Trips)); len(got) != 0 {
		t.Errorf("the demo's sums disagree: %q", got)
	}
	in.Trips[0].Strikes++
	got := made(t, in).disagreements(len(in.Trips))
	if len(got) != 1 || !strings.Contains(got[0], "72 strikes, the trips to 73") {
		t.Errorf("one strike too many is said as %q", got)
	}
}

func TestStrikesSentences(t *testing.T) {
	s := made(t, demoSeason())
	got := section(t, s.strikesSection).Sentences
	want := []string{
		"12 to <14 kn: 31 strikes in 148 line-hours, 0.21 per line-hour (0.14 to 0.30).",
		"Its interval overlaps that of 6 to <8 kn, 8 to <10 kn, 10 to <12 kn and 14 to <16 kn: the season does not " +
			"settle which is better.",
		"The season: 72 strikes in 510 line-hours, 0.14 per line-hour.",
	}
	if strings.Join(got, "\n") != strings.Join(want, "\n") {
		t.Errorf("got\n%s\nwant\n%s", strings.Join(got, "\n"), strings.Join(want, "\n"))
	}
}

// 16 kn and up has the highest rate of the demo, 0.22, on 9.1 line-hours.
func TestThinLevelNeverLeads(t *testing.T) {
	s := made(t, demoSeason())
	lead, _, _ := leader(s.rates())
	if lead.level != "12 to <14 kn" {
		t.Errorf("%s leads", lead.level)
	}
}

func TestNoStrikes(t *testing.T) {
	in := demoSeason()
	in.StrikeRate = []queries.StrikeRate{{Level: "8 to <10 kn", LineHours: 40, Rate: p(0.0),
		RateLo: p(0.0), RateHi: p(0.0922)}}
	got := section(t, made(t, in).strikesSection)
	if len(got.Sentences) != 1 || got.Sentences[0] != "The season: 0 strikes in 40 line-hours, 0.000 per line-hour." {
		t.Errorf("a season without strikes is told as %q", got.Sentences)
	}
}

func TestVerdict(t *testing.T) {
	lead := estimateOf{"b", 0.3, 0.25, 0.35}
	above, touching, wide := estimateOf{"a", 0.1, 0.05, 0.15}, estimateOf{"c", 0.2, 0.15, 0.25},
		estimateOf{"d", 0.2, 0.0, 0.9}
	for _, c := range []struct {
		others []estimateOf
		want   string
	}{
		{nil, "No other speed band"},
		{[]estimateOf{above}, "lies above that of every other"},
		{[]estimateOf{touching}, "overlaps that of c: the season does not settle"},
		{[]estimateOf{above, touching, wide}, "lies above that of a but overlaps that of c and d: between those the " +
			"season does not settle"},
	} {
		if got := verdict(lead, c.others); !strings.Contains(got, c.want) {
			t.Errorf("%v: %q, want %q in it", c.others, got, c.want)
		}
	}
}

func TestNotLoggedIsShownLast(t *testing.T) {
	in := demoSeason()
	last := len(in.StrikeRate) - 1
	in.StrikeRate[0], in.StrikeRate[last] = in.StrikeRate[last], in.StrikeRate[0]
	s := made(t, in)
	if got := s.StrikeRate[last].Level; got != factors.NotLogged {
		t.Errorf("last is %s", got)
	}
	if s.StrikeRate[0].Level != "6 to <8 kn" {
		t.Errorf("first is %s: the order given is lost", s.StrikeRate[0].Level)
	}
	if in.StrikeRate[0].Level != factors.NotLogged {
		t.Error("the caller's rows were moved")
	}
}

func TestSizesTellScaleFromTape(t *testing.T) {
	in := demoSeason()
	g := made(t, in).sizeGrid()
	if g.scale == nil {
		t.Fatal("the fish of the demo do not add up to its classes")
	}
	if !g.classes[len(g.classes)-1].none() {
		t.Error("the fish without a weight are not last")
	}
	in.Sizes[0].Fish++
	s := made(t, in)
	if s.sizeGrid().scale != nil {
		t.Error("told apart although the fish do not add up")
	}
	notes := strings.Join(section(t, s.classesSection).Notes, " ")
	if !strings.Contains(notes, "counted together") {
		t.Errorf("not told apart, and not said: %s", notes)
	}
}

func TestUnits(t *testing.T) {
	in := demoSeason()
	in.Fish = []queries.Fish{{Species: p("x"), ScaleKG: p(45.359237), WeightKG: p(45.359237),
		Method: p("certified scale"), LengthCM: p(127.0)}}
	in.Units = "us"
	s := made(t, in)
	if got := s.weightText(&s.Fish[0]); got != "100" {
		t.Errorf("45.359237 kg is %s lb, want 100", got)
	}
	got := s.fishCells(s.Fish[0])[2]
	if got != page.Value(50) {
		t.Errorf("127 cm is %v in, want 50", got)
	}
	edges := weightClass{p(22.6796185), p(45.359237)}
	if got := s.className(edges); got != "50 to 100" {
		t.Errorf("class %s, want 50 to 100", got)
	}
}

func TestWeightMethodsAreNamed(t *testing.T) {
	in := demoSeason()
	in.Fish[1].Method = p("a new way")
	notes := strings.Join(made(t, in).weightNotes(), "\n")
	for _, want := range []string{"Dock scale:", "Girth rule:", "Length alone:", "Weight: a new way."} {
		if !strings.Contains(notes, want) {
			t.Errorf("methods do not say %q", want)
		}
	}
	if strings.Contains(notes, "Certified scale:") {
		t.Error("a method that no fish has is named")
	}
}

func TestWords(t *testing.T) {
	if got := sentence.Capital("élan"); got != "Élan" {
		t.Errorf("capital: %q", got)
	}
	if got := sentence.Capital(""); got != "" {
		t.Errorf("capital of nothing: %q", got)
	}
	if got := sentence.List([]string{"a", "b", "c"}); got != "a, b and c" {
		t.Errorf("list: %q", got)
	}
	if got := day("2026-07-14", "2 January 2006"); got != "14 July 2026" {
		t.Errorf("day: %q", got)
	}
	if got := day("midsummer", "2 January"); got != "midsummer" {
		t.Errorf("a day that is none: %q", got)
	}
	if got := halfOf([]int64{1, 5, 0, 2}); got != 1 {
		t.Errorf("half of the strikes on %d trips, want 1", got)
	}
}

// TestNoLineHours holds that a page without line-hours names these, not the speed, as what is missing.
func TestNoLineHours(t *testing.T) {
	s := made(t, demoSeason())
	if s.lineHours = 0; s.speedPart().less != "speed, because no line-hours are known" {
		t.Errorf("speed is not drawn: %q", s.speedPart().less)
	}
}
