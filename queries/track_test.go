package queries_test

import (
	"context"
	"fmt"
	"math"
	"os"
	"path/filepath"
	"strings"
	"testing"
	"time"

	"wakeledger/pipeline"
	"wakeledger/pipeline/factors"
	"wakeledger/queries"
)

// stint is a part of a simulated track: minutes at a speed on a course that
// changes by so many degrees a minute.
type stint struct{ minutes, kn, course, turn float64 }

// gpxTrack writes a GPX of fixes each five seconds from an instant on.
func gpxTrack(t *testing.T, dir, name string, from time.Time, stints ...stint) string {
	t.Helper()
	lat, lon := -36.5, 176.2
	var b strings.Builder
	b.WriteString(`<gpx version="1.1" creator="test" xmlns="http://www.topografix.com/GPX/1/1"><trk><trkseg>` + "\n")
	for _, s := range stints {
		for i := range int(s.minutes * 12) {
			course := (s.course + s.turn*float64(i)/12) * math.Pi / 180
			fmt.Fprintf(&b, "<trkpt lat=\"%.7f\" lon=\"%.7f\"><time>%s</time></trkpt>\n", lat,
				lon, from.Format(time.RFC3339))
			step := s.kn * 5 / 3600 / 60 // degrees of latitude, about
			lat += step * math.Cos(course) * 1852 / 1849.5
			lon += step * math.Sin(course) / math.Cos(36.5*math.Pi/180) * 1852 / 1857.7
			from = from.Add(5 * time.Second)
		}
	}
	b.WriteString("</trkseg></trk></gpx>\n")
	return writeText(t, dir, name, b.String())
}

func writeText(t *testing.T, dir, name, text string) string {
	t.Helper()
	file := filepath.Join(dir, name)
	if err := os.WriteFile(file, []byte(text), 0o600); err != nil {
		t.Fatal(err)
	}
	return file
}

const trackedLegs = `trip,leg,date,start,end,speed kn,lines out
T1,1,2026-02-14,07:00,08:00,12,4
T1,2,2026-02-14,08:00,09:00,9,4
T2,1,2026-02-15,07:00,08:00,12,4
T3,1,2026-02-16,07:00,09:00,,3
`

const trackedStrikes = `trip,leg,date,time,outcome
T1,1,2026-02-14,07:10,lost
T1,1,2026-02-14,07:50,lost
T1,2,2026-02-14,08:45,landed
T1,2,2026-02-14,,missed
T2,1,2026-02-15,07:30,missed
T3,1,2026-02-16,07:30,missed
`

// tracked is a season of three trips: T1 with a track of all of leg 1, logged at
// 12 and run at 13.1 for 40 minutes, then at 9, and of the first half of leg 2,
// run at 9 with circles; T2 without; T3 with one of its first hour.
func tracked(t *testing.T) *pipeline.Season {
	t.Helper()
	dir := t.TempDir()
	s := open(t, pipeline.Config{Boat: "Petrel", Zone: "UTC+13"})
	first := time.Date(2026, 2, 13, 17, 30, 0, 0, time.UTC) // 06:30 on the boat
	load(t, s, writeText(t, dir, "legs.csv", trackedLegs), writeText(t, dir, "strikes.csv", trackedStrikes),
		gpxTrack(t, dir, "one.gpx", first, stint{30, 20, 45, 0}, stint{40, 13.1, 0, 0}, stint{20, 9, 90, 0},
			stint{10, 9, 90, 90}, stint{20, 9, 180, 0}),
		gpxTrack(t, dir, "three.gpx", first.AddDate(0, 0, 2).Add(30*time.Minute), stint{60, 8.4, 180, 0}))
	return s
}

func TestEffortByTheTrack(t *testing.T) {
	s := tracked(t)
	// T1: 40 min at 13.1; 20 + 30 min at 9, and the half of leg 2 that no track
	// covers at the logged 9; T2 at the logged 12; T3: an hour at 8.4, one unknown
	want := map[string][2]float64{"[12, 14)": {40.0/60 + 1, 4*40.0/60 + 4},
		"[8, 10)": {20.0/60 + 1 + 1, 4*(20.0/60+1) + 3}, "not logged": {1, 3}}
	var boat, line float64
	for _, e := range answerBy(t, s, queries.AskEffort, "speed-band") {
		boat, line = boat+e.BoatHours, line+e.LineHours
		w, ok := want[e.Level]
		// a change of speed is spread over some 20 s
		if !ok && e.BoatHours < 40.0/3600 {
			continue
		}
		if math.Abs(e.BoatHours-w[0]) > 40.0/3600 || math.Abs(e.LineHours-w[1]) > 4*40.0/3600 {
			t.Errorf("%s: %.3f boat-hours and %.3f line-hours, want %.3f and %.3f", e.Level,
				e.BoatHours, e.LineHours, w[0], w[1])
		}
	}
	for _, factor := range factors.Names() {
		b, l, n := 0.0, 0.0, int64(0)
		effort := answerBy(t, s, queries.AskEffort, factor)
		for _, e := range effort {
			b, l = b+e.BoatHours, l+e.LineHours
		}
		for _, r := range answerBy(t, s, queries.AskStrikeRate, factor) {
			n += r.Strikes
		}
		if math.Abs(b-5) > 1e-5 || math.Abs(l-18) > 1e-5 || n != 6 {
			t.Errorf("by %s: %.6f boat-hours, %.6f line-hours and %d strikes, want 5, 18 and 6", factor, b, l, n)
		}
	}
	if math.Abs(boat-5) > 1e-5 || math.Abs(line-18) > 1e-5 {
		t.Errorf("in all %.6f boat-hours and %.6f line-hours, want 5 and 18", boat, line)
	}
}

func TestStrikesAreAtTheSpeedBeforeThem(t *testing.T) {
	s := tracked(t)
	rates := map[string]int64{}
	for _, r := range answerBy(t, s, queries.AskStrikeRate, "speed-band") {
		rates[r.Level] = r.Strikes
	}
	if rates["[12, 14)"] != 2 || rates["[8, 10)"] != 4 {
		t.Errorf("%v, want 2 strikes at 12 to 14 kn (07:10 on the track, T2 by the log) and 4 at 8 to 10", rates)
	}
	turning := map[string]int64{}
	for _, r := range answerBy(t, s, queries.AskStrikeRate, "turning") {
		turning[r.Level] = r.Strikes
	}
	// 08:45 is after the track's end: its leg ran longest straight
	if turning["turning"] != 0 || turning["straight"] != 5 || turning["not logged"] != 1 {
		t.Errorf("turning: %v", turning)
	}
	strikes := answer(t, s, queries.AskStrikeSpeed)
	if len(strikes) != 5 {
		t.Fatalf("%d strikes with a track, want 5", len(strikes))
	}
	for _, k := range strikes {
		if k.At != nil && *k.At == "2026-02-14 07:10" && (math.Abs(*k.RanKn-13.1) > 0.05 || *k.LoggedKn != 12 ||
			k.Seconds != 60 || k.PlusMinusKn == nil || *k.PlusMinusKn > 0.1) {
			t.Errorf("%+v: want 13.1 kn over 60 s, logged 12", k)
		}
	}
}

func TestTurningEffort(t *testing.T) {
	s := tracked(t)
	for _, e := range answerBy(t, s, queries.AskEffort, "turning") {
		want := map[string]float64{"turning": 10.0 / 60, "straight": 1 + 20.0/60 + 1, "not logged": 1.5 + 1}[e.Level]
		if e.Level == "not logged" {
			want = 0.5 + 1 + 1
		}
		if math.Abs(e.BoatHours-want) > 60.0/3600 {
			t.Errorf("%s: %.3f boat-hours, want %.3f", e.Level, e.BoatHours, want)
		}
	}
}

func TestTrackSpeedByTrip(t *testing.T) {
	s := tracked(t)
	trips := answer(t, s, queries.AskTrackSpeed)
	if len(trips) != 3 {
		t.Fatalf("%d trips", len(trips))
	}
	a := trips[0]
	if a.LegsWithTrack != 2 || math.Abs(a.MeasuredHours-1.5) > 0.01 || math.Abs(a.RememberedHours-0.5) > 0.01 ||
		math.Abs(*a.LoggedKn-11) > 0.01 || math.Abs(*a.RanKn-(13.1*2+9)/3) > 0.05 {
		t.Errorf("%+v", a)
	}
	if a.Note != "logged 11.0, ran 11.7" || math.Abs(*a.DistanceNmi-(13.1*40/60+9*50.0/60)) > 0.1 {
		t.Errorf("note %q, %.2f nmi", a.Note, *a.DistanceNmi)
	}
	if trips[1].Note != "no track" || trips[1].RememberedHours != 1 || trips[2].Note != "no speed logged" ||
		math.Abs(trips[2].UnknownHours-1) > 0.01 {
		t.Errorf("%+v\n%+v", trips[1], trips[2])
	}
}

// The same track again, under another name or as another file, changes nothing; a track
// of another month is another log; one that is forgotten covers no leg until it is had
// back; and the levels stay the season.
func TestTracksLoadedAgain(t *testing.T) {
	s := tracked(t)
	ctx := context.Background()
	before := hoursAt(answerBy(t, s, queries.AskEffort, "speed-band"))
	unchanged := func(what string) {
		t.Helper()
		if after := hoursAt(answerBy(t, s, queries.AskEffort, "speed-band")); fmt.Sprint(before) != fmt.Sprint(after) {
			t.Errorf("%s: %v, before %v", what, after, before)
		}
	}
	dir := t.TempDir()
	first := time.Date(2026, 2, 13, 17, 30, 0, 0, time.UTC)
	again := []stint{{30, 20, 45, 0}, {40, 13.1, 0, 0}, {20, 9, 90, 0}, {10, 9, 90, 90}, {20, 9, 180, 0}}
	phone := gpxTrack(t, dir, "phone.gpx", first, again...)
	if r := load(t, s, phone)[0]; r.Known != pipeline.Unchanged || r.KnownAs.Name != "one.gpx" {
		t.Errorf("the same bytes under another name: %+v", r)
	}
	unchanged("the same bytes twice")
	bytes, err := os.ReadFile(phone)
	if err != nil {
		t.Fatal(err)
	}
	if err := os.WriteFile(phone, append(bytes, "<!-- saved again -->\n"...), 0o644); err != nil {
		t.Fatal(err)
	}
	r := load(t, s, phone)[0]
	if len(r.Replaced) != 1 || r.Replaced[0].Name != "one.gpx" || r.Kept == 0 || r.Sheets[0].Kind != "track" {
		t.Errorf("the same track in another file: %+v", r)
	}
	unchanged("the same track twice")
	phone = gpxTrack(t, t.TempDir(), "phone.gpx", first.AddDate(0, 1, 0), again...)
	if r := load(t, s, phone)[0]; r.Known != pipeline.Unknown || len(r.Replaced) > 0 || r.Asked != nil {
		t.Errorf("a track of another month: %+v", r)
	}
	unchanged("with a track of another month")
	if _, err := s.Forget(ctx, []string{fmt.Sprint(r.ID)}); err != nil {
		t.Fatal(err)
	}
	if err := s.Derive(ctx); err != nil {
		t.Fatal(err)
	}
	for _, r := range answer(t, s, queries.AskTrackSpeed)[:2] {
		if r.LegsWithTrack != 0 {
			t.Errorf("its track is forgotten: %+v", r)
		}
	}
	if _, err := s.Restore(ctx, fmt.Sprint(r.ID)); err != nil {
		t.Fatal(err)
	}
	if err := s.Derive(ctx); err != nil {
		t.Fatal(err)
	}
	unchanged("the track is back")
}

func hoursAt(effort []queries.Effort) map[string]float64 {
	all := map[string]float64{}
	for _, e := range effort {
		all[e.Level] = e.BoatHours
	}
	return all
}

// A current of 1.2 kn to the north: 9 kn through the water both ways, to and fro
// once on one trip and, with a throttle that differs a little, twice on another.
func TestCurrentFromBothWays(t *testing.T) {
	dir := t.TempDir()
	s := open(t, pipeline.Config{Boat: "Petrel", Zone: "UTC+13"})
	load(t, s, writeText(t, dir, "legs.csv", "trip,leg,date,start,end,speed kn,lines "+
		"out\nT1,1,2026-02-14,07:00,07:40,9,4\nT1,2,2026-02-14,07:45,08:30,9,4\nT2,1,2026-02-15,07:00,09:00,9,4\n"),
		gpxTrack(t, dir, "a.gpx", time.Date(2026, 2, 13, 18, 0, 0, 0, time.UTC),
			stint{42, 10.2, 0, 0}, stint{55, 7.8, 180, 0}))
	once := answer(t, s, queries.AskCurrent)
	if len(once) != 1 || math.Abs(once[0].CurrentKn-1.2) > 0.05 || once[0].SetDeg != 0 || once[0].Minutes < 20 ||
		once[0].OutRuns != 1 || once[0].BackRuns != 1 || once[0].CurrentLo != nil {
		t.Errorf("%+v, want 1.2 kn setting north, without an interval", once)
	}
	load(t, s, gpxTrack(t, dir, "b.gpx", time.Date(2026, 2, 14, 18, 0, 0, 0, time.UTC), stint{30, 10.3, 0, 0},
		stint{30, 7.8, 180, 0}, stint{30, 10.1, 0, 0}, stint{30, 7.8, 180, 0}))
	got := answer(t, s, queries.AskCurrent)
	if len(got) != 2 || got[1].OutRuns != 2 || got[1].BackRuns != 2 || math.Abs(got[1].CurrentKn-1.2) > 0.05 {
		t.Fatalf("%+v", got)
	}
	// T2's runs out are 0.1 kn off their mean, those back not: a variance of 0.02 on
	// 2 degrees of freedom, t 4.303
	for i, runs := range []float64{2, 4} {
		want := 4.303 * 0.1 / math.Sqrt(runs)
		if lo, hi := got[i].CurrentLo, got[i].CurrentHi; lo == nil || math.Abs((*hi-*lo)/2-want) > 0.05 || *lo > 1.2 ||
			*hi < 1.2 {
			t.Errorf("%+v, want ±%.2f", got[i], want)
		}
	}
}

func TestArea(t *testing.T) {
	s := tracked(t)
	cells, err := queries.AskArea(context.Background(), s.DB, queries.AreaMinutes)
	if err != nil {
		t.Fatal(err)
	}
	var hours, line float64
	var strikes int64
	for _, c := range cells {
		hours, line, strikes = hours+c.BoatHours, line+c.LineHours, strikes+c.Strikes
		if r := float64(c.LatDeg) * 6; math.Abs(r-math.Round(r)) > 1e-4 {
			t.Errorf("a cell begins at %v", c.LatDeg)
		}
	}
	// T1 an hour and a half with 4 lines, T3 an hour with 3; strikes on the track: 07:10, 07:50, 07:30
	if math.Abs(hours-2.5) > 0.01 || math.Abs(line-9) > 0.05 || strikes != 3 || len(cells) < 2 {
		t.Errorf("%d cells with %.3f boat-hours, %.3f line-hours and %d strikes", len(cells), hours, line, strikes)
	}
}
