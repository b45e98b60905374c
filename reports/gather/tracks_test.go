package gather

import (
	"bytes"
	"encoding/json"
	"fmt"
	"html"
	"math"
	"os"
	"path/filepath"
	"regexp"
	"strings"
	"testing"
	"time"

	"wakeledger/pipeline"
	"wakeledger/queries"
	"wakeledger/reports"
	"wakeledger/testdata/browser"
)

// sailedTrack is a season of one trip by the boat's track from 33°N 118°W: an hour
// north at 9 kn, an hour east at 12.5, and no track of the third hour. Strikes at
// 30 and 90 minutes, and one where there is no track.
func sailedTrack(t *testing.T) *pipeline.Season {
	t.Helper()
	dir := t.TempDir()
	write := func(name, text string) string {
		file := filepath.Join(dir, name)
		if err := os.WriteFile(file, []byte(text), 0o600); err != nil {
			t.Fatal(err)
		}
		return file
	}
	var fixes strings.Builder
	fixes.WriteString("utc,lat,lon\n")
	lat, lon := 33.0, -118.0
	for i := range 721 {
		fmt.Fprintf(&fixes, "%s,%.6f,%.6f\n", time.Date(2026, 7, 1, 13, 0, 10*i, 0, time.UTC).Format(time.RFC3339), lat,
			lon)
		// metres of a degree at 33 N on WGS84: 110 905 north, 93 453 east
		if i < 360 {
			lat += 9 * 1852 / 360.0 / 110905
		} else {
			lon += 12.5 * 1852 / 360.0 / 93453
		}
	}
	s, err := pipeline.Open(t.Context(), "", pipeline.Config{Boat: "Tern", Zone: "UTC-7"})
	if err != nil {
		t.Fatal(err)
	}
	t.Cleanup(func() { s.DB.Close() })
	if _, err := s.Load(t.Context(), []string{write("track.csv", fixes.String()),
		write("legs.csv", "trip,date,start,end,speed kn,lines "+
			"out\nA,2026-07-01,06:00,07:00,9,4\nA,2026-07-01,07:00,09:00,12,5\n"),
		write("strikes.csv",
			"trip,date,time,outcome\nA,2026-07-01,06:30,landed\nA,2026-07-01,07:30,lost\nA,2026-07-01,08:30,lost\n"),
	}); err != nil {
		t.Fatal(err)
	}
	if err := s.Derive(t.Context()); err != nil {
		t.Fatal(err)
	}
	return s
}

func trackHTML(t *testing.T, minutes float64) string {
	t.Helper()
	s := sailedTrack(t)
	in, err := Track(t.Context(), s.DB, minutes)
	if err != nil {
		t.Fatal(err)
	}
	in.Title, in.Generated = "Track, season 2026", time.Date(2026, 11, 1, 0, 0, 0, 0, time.UTC)
	var b bytes.Buffer
	if err := reports.Track(&b, in); err != nil {
		t.Fatal(err)
	}
	return b.String()
}

// The drawing and its table part speeds as the season does, the fastest together where there are
// more classes than marks. Running at 9 and at 12.5 knots, an hour each.
func TestTrackPageFollowsEdges(t *testing.T) {
	for edges, want := range map[string]string{
		"speed-band=0,5,9.5":           "0 to 5 kn, 5 to 9.5 kn, 9.5 kn and up, all",
		"speed-band=3,4,5,6,7,8,10,12": "0 to 3 kn, 3 to 4 kn, 4 to 5 kn, 5 to 6 kn, 6 to 7 kn, 7 kn and up, all",
		"speed-band=0,6,8,10,12,14,16": "0 to 6 kn, 6 to 8 kn, 8 to 10 kn, 10 to 12 kn, 12 to 14 kn, 14 kn and up, all",
	} {
		set, err := pipeline.ParseEdges([]string{edges})
		if err != nil {
			t.Fatal(err)
		}
		s := sailedTrack(t)
		if s, err = s.Under(pipeline.Config{Boat: "Tern", Zone: "UTC-7", Edges: set}); err != nil {
			t.Fatal(err)
		}
		if err := s.Derive(t.Context()); err != nil {
			t.Fatal(err)
		}
		in, err := Track(t.Context(), s.DB, 10)
		if err != nil {
			t.Fatal(err)
		}
		var b bytes.Buffer
		if err := reports.Track(&b, in); err != nil {
			t.Fatal(err)
		}
		var names []string
		for _, row := range rowsOf(t, b.String(), "track") {
			names = append(names, row[0])
		}
		if got := strings.Join(names, ", "); !strings.HasSuffix(got, want) {
			t.Errorf("%s: %s, want %s", edges, got, want)
		}
	}
}

// rowsOf are a section's table's rows, as printed.
func rowsOf(t *testing.T, doc, section string) [][]string {
	t.Helper()
	_, part, ok := strings.Cut(doc, `<section id="`+section+`"`)
	if !ok {
		t.Fatalf("no section %s", section)
	}
	part, _, _ = strings.Cut(part, "</section>")
	tags := regexp.MustCompile(`<[^>]*>`)
	var rows [][]string
	for _, row := range regexp.MustCompile(`(?s)<tr[^>]*>(.*?)</tr>`).FindAllStringSubmatch(part, -1) {
		var cells []string
		for _, c := range regexp.MustCompile(`(?s)<t[hd][^>]*>(.*?)</t[hd]>`).FindAllStringSubmatch(row[1], -1) {
			cells = append(cells, strings.TrimSpace(html.UnescapeString(tags.ReplaceAllString(c[1], ""))))
		}
		rows = append(rows, cells)
	}
	return rows[1:]
}

func wantRows(t *testing.T, what string, got [][]string, want ...string) {
	t.Helper()
	if len(got) != len(want) {
		t.Errorf("%s: %d rows, want %d: %q", what, len(got), len(want), got)
		return
	}
	for i, w := range want {
		if g := strings.Join(got[i], "|"); g != w {
			t.Errorf("%s, row %d: %q, want %q", what, i+1, g, w)
		}
	}
}

// The numbers, by hand: 9 nmi in the first hour, 12.5 in the second, 360 pieces of
// ten seconds each, of which the one at the corner is run across it. 9 nmi north of 33.000 is 33.150; 12.5 east is
// -117.752.
func TestTrackPageByHand(t *testing.T) {
	doc := trackHTML(t, 20)
	wantRows(t, "by speed", rowsOf(t, doc, "track"), "0 to 6 kn|0.0|0.0|0|0", "6 to 8 kn|0.0|0.0|0|0",
		"8 to 10 kn|1.0|9.0|360|1", "10 to 12 kn|0.0|0.0|1|0", "12 to 14 kn|1.0|12.5|359|1",
		"14 kn and up|0.0|0.0|0|0", "all|2.0|21.5|720|2")
	// cells of a third of a degree: the first hour and 5 minutes' worth of the second
	// are in one with 118 W as its west edge, and so is the rest, to 117.752 W
	wantRows(t, "by cell", rowsOf(t, doc, "area"), "33.000|−118.000|1|2.0|9.0|21.5|2")
	text := html.UnescapeString(doc)
	for _, want := range []string{"Track, for the boat alone", "2.0 boat-hours of legs have a track: 21 nmi over " +
		"ground, and 2 strikes on it.", "Each point stands for 10 s of track.",
		"The middle of the drawing is 33°04.5′ N 117°52.6′ W.", "By cells of 20 minutes of arc",
		"Most line-hours in one cell: 9.0, with 2 strikes, north-east of 33°00.0′ N 118°00.0′ W.",
		"no chart and not for navigation"} {
		if !strings.Contains(text, want) {
			t.Errorf("the page does not say %q", want)
		}
	}
	fine := rowsOf(t, trackHTML(t, 3), "area")
	hours, strikes := 0.0, 0.0
	for _, r := range fine {
		var h, n float64
		if _, err := fmt.Sscan(r[3]+" "+r[6], &h, &n); err != nil {
			t.Fatal(err)
		}
		hours, strikes = hours+h, strikes+n
	}
	if len(fine) < 7 || math.Abs(hours-2) > 0.05*float64(len(fine)) || strikes != 2 {
		t.Errorf("cells of 3 minutes: %q", fine)
	}
}

// pixels are a drawing's room; go-echarts writes them as text.
type pixels struct {
	Width, Height float64 `json:",string"`
}

// drawnTrack is what the page gives to its script for the chart.
type drawnTrack struct {
	Option struct {
		Series []struct {
			Name string
			Data []struct{ Value [2]float64 }
		}
		XAxis, YAxis []struct{ Min, Max float64 }
		Grid         []pixels
	}
	Narrow struct {
		Grid []pixels
	}
}

// The marks are where the boat was, as many as the table says, and a mile is as
// long east as north, on a phone too.
func TestTrackChartAgreesWithItsTable(t *testing.T) {
	doc := trackHTML(t, 10)
	raw := regexp.MustCompile(`(?s)<script type="application/json"[^>]*>(.*?)</script>`).FindAllStringSubmatch(doc, -1)
	var chart drawnTrack
	for _, r := range raw {
		var c drawnTrack
		if err := json.Unmarshal([]byte(r[1]), &c); err == nil && len(c.Option.Series) > 0 {
			chart = c
		}
	}
	drawn := map[string]int{}
	var ring [][2]float64
	for _, s := range chart.Option.Series {
		drawn[s.Name] = len(s.Data)
		for _, d := range s.Data {
			if s.Name == "strike" {
				ring = append(ring, d.Value)
			}
			// the middle is 4.5 nmi north of the start and 6.25 east of it
			along := d.Value[0] > -6.3 && d.Value[0] < 6.3 && d.Value[1] > -4.55 && d.Value[1] < 4.55
			onWay := math.Abs(d.Value[0]+6.25) < .04 || math.Abs(d.Value[1]-4.5) < .04
			if !along || !onWay {
				t.Errorf("%s: a mark at %v is not on the way", s.Name, d.Value)
			}
		}
	}
	rows := rowsOf(t, doc, "track")
	rings := 0
	for _, r := range rows[:len(rows)-1] {
		if fmt.Sprint(drawn[r[0]]) != r[3] {
			t.Errorf("%s: %d marks, the table says %s", r[0], drawn[r[0]], r[3])
		}
		var n int
		if _, err := fmt.Sscan(r[4], &n); err != nil {
			t.Fatal(err)
		}
		rings += n
	}
	if len(ring) != rings || rings != 2 || math.Hypot(ring[0][0]+6.25, ring[0][1]) > .05 ||
		math.Hypot(ring[1][0], ring[1][1]-4.5) > .05 {
		t.Errorf("rings at %v, the table says %d; want them half way along each hour", ring, rings)
	}
	o := chart.Option
	for _, g := range []pixels{o.Grid[0], chart.Narrow.Grid[0]} {
		if a, b := g.Width/(o.XAxis[0].Max-o.XAxis[0].Min),
			g.Height/(o.YAxis[0].Max-o.YAxis[0].Min); math.Abs(a/b-1) > .02 {
			t.Errorf("a mile is %.1f pixels east and %.1f north", a, b)
		}
	}
}

// The page is the boat's own and shows where it was; the season report of the same
// season, which may be shown around, has no position in any form.
func TestOnlyTheTrackPageShowsPositions(t *testing.T) {
	s := sailedTrack(t)
	in, err := Season(t.Context(), s.DB, "metric")
	if err != nil {
		t.Fatal(err)
	}
	var b bytes.Buffer
	if err := reports.Season(&b, in); err != nil {
		t.Fatal(err)
	}
	place := regexp.MustCompile(`33\.[01]\d|117\.[89]\d|118\.0|(?:^|[^.\d])(?:33|118|117)°`)
	if found := place.FindString(b.String()); found != "" {
		t.Errorf("the season report holds %q", found)
	}
	if doc := trackHTML(t, 10); !place.MatchString(doc) {
		t.Error("the track page holds no position: the pattern finds none")
	}
}

func TestTrackPageWithoutATrack(t *testing.T) {
	var b bytes.Buffer
	if err := reports.Track(&b, reports.TrackInput{Title: "Track", Minutes: 10}); err != nil ||
		!strings.Contains(b.String(), "No leg has a track.") {
		t.Errorf("%v\n%s", err, b.String())
	}
	// at anchor all day: one place, and no drawing
	in := reports.TrackInput{Title: "Track", Minutes: 1, Edges: []float64{0, 6},
		Points: []queries.TrackPoint{{LatDeg: 1, LonDeg: 2, N: 1}}, Speeds: []queries.TrackHours{{Hours: 1}},
		Cells: []queries.Area{{LatDeg: 1, LonDeg: 2}}}
	b.Reset()
	if err := reports.Track(&b, in); err != nil || !strings.Contains(b.String(), "By cells of one minute of arc") {
		t.Errorf("%v\n%s", err, b.String())
	}
}

// In a browser: all marks are drawn, and nothing is asked of a network.
func TestTrackPageInBrowser(t *testing.T) {
	p := browser.Open(t, []byte(trackHTML(t, 10)))
	if got := browser.Eval[int](t, p,
		`document.querySelectorAll("#chart-track svg path[fill]:not([fill=none])").length`); got < 720 {
		t.Errorf("%d marks drawn, want 720 and the legend's", got)
	}
	if !browser.Eval[bool](t, p, `!/NaN|undefined/.test(document.querySelector("#chart-track svg").outerHTML)`) {
		t.Error("NaN or undefined in the drawing")
	}
	p.CheckQuiet(t)
}
