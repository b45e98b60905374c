package reports

import (
	"bytes"
	"fmt"
	"math"
	"slices"
	"strings"
	"testing"

	"wakeledger/pipeline/estimate"
	"wakeledger/reports/bundle"
)

// shares is a boat's season of 12 trips: on each so many strikes in 20 line-hours at 8 to
// 10 kn, and so many in 20 at 10 to 12 kn.
func shares(t testing.TB, id string, slow, fast int64) bundle.Season {
	t.Helper()
	src := bundle.Source{Top: 3}
	for i := range int64(12) {
		day := fmt.Sprintf("2026-%02d-%02d", 6+i/4, 1+7*(i%4))
		p := bundle.Piece{Trip: i + 1, Start: day, Day: day, Level: day[:7], BoatHours: 8, LineHours: 40,
			Strikes: slow + fast, Hookups: 2, Landed: 1, Released: 1}
		src.Months = append(src.Months, p)
		low, high := p, p
		low.Level, low.LineHours, low.Strikes, low.BoatHours = "[8, 10)", 20, slow, 0
		high.Level, high.LineHours, high.Strikes, high.BoatHours = "[10, 12)", 20, fast, 0
		high.Hookups, high.Landed, high.Released = 0, 0, 0
		src.Speeds = append(src.Speeds, low, high)
		p.Level, p.BoatHours = "[0, 250)", 0
		src.Lures = append(src.Lures, p)
		fish := bundle.Piece{Trip: i + 1, Start: day, Day: day, Fish: 1, Species: "PBF", Month: day[:7]}
		back := fish
		back.Released = 1
		fish.Landed, fish.OnScale, fish.WeightKG, fish.List = 1, 1, 40+float64(i), bundle.Dock
		src.Fish = append(src.Fish, fish, back)
		src.Sizes = append(src.Sizes, bundle.SizeClass(40+float64(i)), bundle.NoWeight)
	}
	s, err := bundle.Make(id, src, nil)
	if err != nil {
		t.Fatal(err)
	}
	return s
}

func clubPage(t *testing.T, in ClubInput) string {
	t.Helper()
	in.Units, in.Title = "metric", "The club's season"
	var buf bytes.Buffer
	if err := Club(&buf, in); err != nil {
		t.Fatal(err)
	}
	return buf.String()
}

// By hand: three boats of 24 strikes in 240 line-hours at 8 to 10 kn are 72 in 720,
// 0.10 per line-hour; with 12 in 240 at 10 to 12 kn each, 36 in 720, half of it on
// the same boats.
func TestClubAddsUpBoats(t *testing.T) {
	in := ClubInput{}
	for _, id := range []string{"a", "b", "c"} {
		in.Boats = append(in.Boats, bundle.Boat{ID: id, Seasons: []bundle.Season{shares(t, id, 2, 1)}})
	}
	in.Units = "metric"
	c, err := newClub(in)
	if err != nil {
		t.Fatal(err)
	}
	f := clubFactor{"speed", "", "", "speed-band", func(s bundle.Season) []bundle.Cell { return s.Speeds }}
	levels := c.levels(f.rows, ratedOf)
	if len(levels) != 2 || levels[0].name != "[8, 10)" || levels[0].cell.strikes.n != 72 || levels[0].boats != 3 ||
		levels[1].cell.LineHours != 720 {
		t.Errorf("levels %+v", levels)
	}
	e := c.compare(f, levels)
	if e.Levels[0].Rate != 0.1 || e.Levels[1].Rate != 0.05 || math.Abs(e.Levels[1].Ratio.Ratio-0.5) > 1e-9 {
		t.Errorf("rates %v and %v, ratio on the same boats %v", e.Levels[0].Rate,
			e.Levels[1].Rate, e.Levels[1].Ratio.Ratio)
	}
	html := clubPage(t, in)
	for _, want := range []string{"3 boats: 36 trips", "8 to 10 kn: 0.10", "51 kg, Pacific bluefin tuna"} {
		if !strings.Contains(html, want) {
			t.Errorf("the page does not say %q", want)
		}
	}
}

// Fewer than 8 boats tell nothing apart, however clear their counts; nine that all
// agree do.
func TestClubVerdictNeedsBoats(t *testing.T) {
	for boats, want := range map[int]string{7: "is better is not settled", 9: "lies above that of every other"} {
		var in ClubInput
		for i := range boats {
			id := fmt.Sprint("b", i)
			in.Boats = append(in.Boats, bundle.Boat{ID: id, Seasons: []bundle.Season{shares(t, id, 9, 1)}})
		}
		if html := clubPage(t, in); !strings.Contains(html, want) {
			t.Errorf("%d boats: the page does not say %q", boats, want)
		}
	}
}

// The three lists are never mixed: a fish on the dock scale is on no other list.
func TestHeaviestListsAreApart(t *testing.T) {
	html := clubPage(t, ClubInput{Boats: []bundle.Boat{{ID: "a", Seasons: []bundle.Season{shares(t, "a", 2, 1)}}}})
	for id, want := range map[string]bool{"heaviest-certified-scale": false,
		"heaviest-dock-scale": true, "heaviest-estimate": false} {
		_, section, _ := strings.Cut(html, `<section id="`+id+`"`)
		section, _, _ = strings.Cut(section, "</section>")
		if section == "" || strings.Contains(section, "51.0") != want {
			t.Errorf("%s: the fish is on it: %v, want %v", id, !want, want)
		}
	}
}

// A fish that its own boat doubts is marked where it stands and is not among the first
// figures; so is one that is heavier than its kind grows (PBF: 450 kg).
func TestClubMarksDoubtfulFish(t *testing.T) {
	for _, c := range []struct {
		kg    float64
		doubt string
		want  string
	}{
		{51, "scale and tape",
			"Doubtful: 51 kg, Pacific bluefin tuna, boat a: scale and tape far apart. Ask the boat."},
		{540, "", "Doubtful: 540 kg, Pacific bluefin tuna, boat a: heavier than its kind grows. Ask the boat."},
	} {
		s := shares(t, "a", 2, 1)
		if s.Heaviest[0].WeightKG = c.kg; c.doubt != "" {
			s.Heaviest[0].Doubt = &c.doubt
		}
		html := clubPage(t, ClubInput{Boats: []bundle.Boat{{ID: "a", Seasons: []bundle.Season{s}}}})
		tiles, _, _ := strings.Cut(html, "</dl>")
		_, tiles, _ = strings.Cut(tiles, `<dl class="tiles">`)
		if !strings.Contains(html, c.want) || !strings.Contains(html, "Pacific bluefin tuna (doubtful)") {
			t.Errorf("%v kg, %q: not marked", c.kg, c.doubt)
		}
		if strings.Contains(tiles, fmt.Sprintf("<b>%v</b>", c.kg)) || !strings.Contains(tiles, "<b>50</b>") {
			t.Errorf("%v kg, %q: the first figures are %s", c.kg, c.doubt, tiles)
		}
	}
}

// The checks that doubt a fish are those that may travel, and the page has words for each.
func TestDoubtsHaveWords(t *testing.T) {
	for _, m := range []estimate.Measures{
		{LongestCM: 100, LengthCM: 200}, {HeaviestKG: 100, ScaleKG: 200}, {HeaviestKG: 100, TapeKG: 200},
		{LengthCM: 100, GirthCM: 150}, {RoundKG: 100, TapeKG: 50},
	} {
		d := m.Doubts()
		if len(d) != 1 || !slices.Contains(bundle.Doubts(), d[0].Check) || doubtText[d[0].Check] == "" {
			t.Errorf("%+v: %+v", m, d)
		}
	}
}

// Classes are put together to those asked for and parted to none: 0 to 8 kn, 8 to 12 kn.
func TestClubEdges(t *testing.T) {
	in := ClubInput{Units: "metric", Boats: []bundle.Boat{{ID: "a", Seasons: []bundle.Season{shares(t, "a", 2, 1)}}},
		Edges: map[string][]float64{"speed-band": {8, 12}}}
	c, err := newClub(in)
	if err != nil {
		t.Fatal(err)
	}
	levels := c.levels(func(s bundle.Season) []bundle.Cell { return s.Speeds }, ratedOf)
	if len(levels) != 1 || levels[0].name != "[8, 12)" || levels[0].cell.LineHours != 480 ||
		levels[0].cell.strikes.n != 36 || levels[0].boats != 1 {
		t.Errorf("levels %+v", levels)
	}
	if in.Boats[0].Seasons[0].Speeds[0].Level != "[8, 10)" {
		t.Error("what was given is changed")
	}
	for factor, lower := range map[string][]float64{"speed-band": {8, 11}, "setback": {0, 50}} {
		in.Edges = map[string][]float64{factor: lower}
		if _, err := newClub(in); err == nil {
			t.Errorf("%s %v: no error", factor, lower)
		}
	}
}

// By hand: 36 strikes in the season; July's are hidden, June's and August's are 12 each. The
// chart has all 36, of which 12 are of no month that is told.
func TestClubMonthsHoldEveryStrike(t *testing.T) {
	s := shares(t, "a", 2, 1)
	s.Months = slices.Clone(s.Months)
	s.Months[1].Strikes, s.Months[1].Hookups, s.Months[1].Boated = nil, nil, nil
	c, err := newClub(ClubInput{Units: "metric", Boats: []bundle.Boat{{ID: "a", Seasons: []bundle.Season{s}}}})
	if err != nil {
		t.Fatal(err)
	}
	if rest := c.inNoMonth(); rest.cell.strikes.n != 12 || rest.boats != 1 {
		t.Errorf("%+v, want 12 strikes of 1 boat", rest)
	}
	shown := c.inNoMonth().cell.strikes.n
	for _, l := range c.levels(func(s bundle.Season) []bundle.Cell { return s.Months }, classOf) {
		shown += l.cell.strikes.n
	}
	if shown != c.total.strikes.n || shown != 36 {
		t.Errorf("the months hold %d strikes, the season %d, want 36", shown, c.total.strikes.n)
	}
	if section, err := c.monthsSection(); err != nil || len(section.Table.Rows) != 4 {
		t.Errorf("%d rows, want those of three months and of no month; %v", len(section.Table.Rows), err)
	}
}

// The secretary is told of a boat of another year, of one whose rate stands far out, with
// what to check, and of two summaries under one id.
func TestClubTellsTheSecretary(t *testing.T) {
	var in ClubInput
	for _, id := range []string{"a", "b", "c"} {
		in.Boats = append(in.Boats, bundle.Boat{ID: id, Seasons: []bundle.Season{shares(t, id, 2, 1)}})
	}
	old := shares(t, "d", 9, 9) // 18 strikes a trip, of the others 3
	for i := range old.Months {
		old.Months[i].Level = "2024" + old.Months[i].Level[4:]
	}
	in.Boats = append(in.Boats, bundle.Boat{ID: "d", Seasons: []bundle.Season{old}})
	next := shares(t, "a", 2, 1)
	for i := range next.Months {
		next.Months[i].Level = "2025" + next.Months[i].Level[4:]
	}
	in.Boats[0].Seasons = append(in.Boats[0].Seasons, next)
	html := clubPage(t, in)
	for _, want := range []string{
		"Boat d shares 2024, most others 2026: ask for its season of 2026.",
		"Boat d has 6.0 times the strikes per line-hour of the others. Check its hours: are all stretches logged, " +
			"and all lines?",
		"Boat a: 2 summaries, each of other months, taken for one boat",
	} {
		if !strings.Contains(strings.ReplaceAll(html, "&#39;", "'"), want) {
			t.Errorf("the page does not say %q", want)
		}
	}
	if strings.Contains(html, "Boat b has") || strings.Contains(html, "Boat c shares") {
		t.Error("a boat like the others is asked about")
	}
}

func TestClubWithoutBoats(t *testing.T) {
	html := clubPage(t, ClubInput{TooFew: 2})
	if !strings.Contains(html, "No boat with 3 trips or more") {
		t.Error("a club without boats is not said so")
	}
	if err := Club(&bytes.Buffer{}, ClubInput{Units: "stone"}); err == nil {
		t.Error("units stone: no error")
	}
}

func TestClubLureClass(t *testing.T) {
	for level, want := range map[string]string{"[0, 250)": "0 to 9 oz", "[250, 500)": "9 to 18 oz",
		"[750, 1000)": "27 to 36 oz", "1500 and up": "53 oz or more"} {
		if got, ok := unitSets["us"].lureClass(level); !ok || got != want {
			t.Errorf("%s: %q", level, got)
		}
	}
	for units, level := range map[string]string{"us": "other", "metric": "[250, 500)"} {
		if got, ok := unitSets[units].lureClass(level); ok {
			t.Errorf("%s, %s: %q", units, level, got)
		}
	}
}
