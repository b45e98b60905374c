package queries_test

import (
	"archive/zip"
	"errors"
	"math"
	"os"
	"path/filepath"
	"regexp"
	"strings"
	"testing"
	"time"

	"wakeledger/pipeline"
	"wakeledger/queries"
)

const clockLegs = "trip,leg,date,start,end,speed kn,lines " +
	"out\nT1,1,2026-02-14,07:00,08:00,12,4\nT1,2,2026-02-14,08:00,08:40,7,4\n"

var (
	clockRight = time.Date(2026, 2, 13, 18, 0, 0, 0, time.UTC) // 07:00 on the boat
	clockRun   = []stint{{60, 12.1, 0, 0}, {40, 6.8, 90, 0}, {30, 20, 180, 0}}
)

// tracksOf loads a log of legs with tracks and says what is found in each.
func tracksOf(t *testing.T, cfg pipeline.Config, legs string, files ...string) []queries.Track {
	t.Helper()
	cfg.Boat = "Petrel"
	s := open(t, cfg)
	defer s.DB.Close()
	load(t, s, append([]string{writeText(t, t.TempDir(), "legs.csv", legs)}, files...)...)
	return answer(t, s, queries.AskTracks)
}

var flagInNote = regexp.MustCompile(`--track-clock (-?[0-9hm]+)`)

// A clock on the wrong zone, day or year is found, and the value that the note
// names for the flag mends it.
func TestTrackClock(t *testing.T) {
	const day = 24 * time.Hour
	for off, want := range map[time.Duration]string{
		0: "",
		13 * time.Hour: "with --boat \"Petrel\" --track-clock -13h: the track fits 1.7 of 1.7 logged " +
			"hours",
		-2 * time.Hour:                "with --boat \"Petrel\" --track-clock 2h: ",
		-5*time.Hour - 30*time.Minute: "with --boat \"Petrel\" --track-clock 5h30m: ",
		12*time.Hour + 45*time.Minute: "with --boat \"Petrel\" --track-clock -12h45m: ",
		day:                           "with --boat \"Petrel\" --track-clock -24h (a day): ",
		-day:                          "with --boat \"Petrel\" --track-clock 24h (a day): ",
		-365 * day:                    "with --boat \"Petrel\" --track-clock 8760h (365 days): ",
		-7168 * day: "with --boat \"Petrel\" --track-clock 172032h (1024 weeks: receivers of some " +
			"age have lost count): ",
		-2 * 7168 * day: "with --boat \"Petrel\" --track-clock 344064h (2048 weeks: ",
	} {
		file := gpxTrack(t, t.TempDir(), "a.gpx", clockRight.Add(off), clockRun...)
		cfg := pipeline.Config{Zone: "UTC+13"}
		tracks := tracksOf(t, cfg, clockLegs, file)
		if len(tracks) != 1 || !strings.HasPrefix(tracks[0].Note, want) || (want == "") != (tracks[0].Note == "") {
			t.Errorf("off by %s: %+v, want %q", off, tracks, want)
			continue
		}
		if want != "" {
			if tracks[0].Legs != 0 && off != -2*time.Hour {
				t.Errorf("off by %s: %d legs met before the clock is right", off, tracks[0].Legs)
			}
			var err error
			if cfg.TrackClock, err = time.ParseDuration(flagInNote.FindStringSubmatch(tracks[0].Note)[1]); err != nil {
				t.Fatal(err)
			}
			tracks = tracksOf(t, cfg, clockLegs, file)
		}
		if tracks[0].Note != "" || tracks[0].Legs != 2 || math.Abs(tracks[0].LegHours-100.0/60) > 0.01 ||
			tracks[0].ClockS != -off.Seconds() {
			t.Errorf("off by %s and mended: %+v", off, tracks[0])
		}
	}
}

// A clock that was put on wrongly is suggested to be left alone.
func TestTrackClockPutOnWrongly(t *testing.T) {
	file := gpxTrack(t, t.TempDir(), "a.gpx", clockRight, clockRun...)
	tracks := tracksOf(t, pipeline.Config{Zone: "UTC+13", TrackClock: 3 * time.Hour}, clockLegs, file)
	if !strings.HasPrefix(tracks[0].Note, "with --boat \"Petrel\" and no --track-clock: the track fits 1.7 of 1.7 "+
		"logged hours") {
		t.Errorf("%+v", tracks[0])
	}
}

// An hour off on a long day at one speed: most of it still fits, but the run out
// falls into the legs.
func TestTrackClockAnHourOffOnALongDay(t *testing.T) {
	const legs = "trip,leg,date,start,end,speed kn,lines out\nT1,1,2026-02-14,07:00,15:00,9,4\n"
	run := []stint{{70, 20, 0, 0}, {480, 9, 90, 0}, {70, 20, 180, 0}}
	right := clockRight.Add(-70 * time.Minute)
	for want, off := range map[string]time.Duration{"": 0, "with --boat \"Petrel\" --track-clock 1h: the track fits " +
		"8.0 of 8.0 logged hours (as it is, 7.0)": -time.Hour,
		"with --boat \"Petrel\" --track-clock -1h: ": time.Hour} {
		tracks := tracksOf(t, pipeline.Config{Zone: "UTC+13"}, legs,
			gpxTrack(t, t.TempDir(), "a.gpx", right.Add(off), run...))
		if !strings.HasPrefix(tracks[0].Note, want) || (want == "") != (tracks[0].Note == "") {
			t.Errorf("off by %s: %q, want %q", off, tracks[0].Note, want)
		}
	}
}

// What tells nothing of a clock: a receiver that was turned on late on a slow
// boat; legs logged twenty minutes too early; a day not logged, like another that
// has its own track; no legs at all.
func TestTrackClockOfWhichNothingIsSaid(t *testing.T) {
	const early = "trip,leg,date,start,end,speed kn,lines out\nT1,1,2026-02-14,07:00,12:00,9,4\n"
	const noSpeed = "trip,leg,date,start,end,lines out\nT1,1,2026-02-14,07:00,12:00,4\n"
	const species = "species,length,date\nYFT,100 cm,2026-02-14\n"
	dir := t.TempDir()
	late := gpxTrack(t, dir, "late.gpx", clockRight.Add(30*time.Minute), stint{360, 9, 0, 0})
	sloppy := gpxTrack(t, dir, "sloppy.gpx", clockRight.Add(-40*time.Minute), stint{60, 20, 0, 0},
		stint{280, 9, 0, 0}, stint{60, 20, 180, 0})
	fights := gpxTrack(t, dir, "fights.gpx", clockRight.Add(-time.Hour), stint{85, 20, 0, 0}, stint{100, 9, 0, 0},
		stint{40, .2, 0, 0}, stint{175, 9, 0, 0}, stint{60, 20, 180, 0})
	a, b := gpxTrack(t, dir, "a.gpx", clockRight, clockRun...),
		gpxTrack(t, dir, "b.gpx", clockRight.AddDate(0, 0, 1), clockRun...)
	for _, c := range []struct {
		name, legs string
		files      []string
	}{{"late", early, []string{late}}, {"late, no speed", noSpeed, []string{late}}, {"sloppy", early, []string{sloppy}},
		{"lines in and out late, stopped by fights", early, []string{fights}},
		{"a day alike", clockLegs, []string{a, b}}, {"no legs", species, []string{a}}} {
		for _, k := range tracksOf(t, pipeline.Config{Zone: "UTC+13"}, c.legs, c.files...) {
			if k.Note != "" {
				t.Errorf("%s: %s: %s", c.name, k.File, k.Note)
			}
		}
	}
}

// Legs that name no zone: the zone is what is missing, and it is named.
func TestTrackClockOfLegsWithoutAZone(t *testing.T) {
	for want, off := range map[string]time.Duration{
		"on UTC+13 the track fits 1.7 of 1.7 logged hours":                  0,
		"the log gives no time zone, so the track fits no leg: give --zone": 13 * time.Hour,
		"--track-clock 172": -7168*24*time.Hour + 13*time.Hour,
	} {
		tracks := tracksOf(t, pipeline.Config{}, clockLegs,
			gpxTrack(t, t.TempDir(), "a.gpx", clockRight.Add(off), clockRun...))
		if !strings.Contains(tracks[0].Note, want) ||
			!strings.Contains(strings.ToLower(tracks[0].Note), "give --zone") {
			t.Errorf("off by %s: %q, want %q", off, tracks[0].Note, want)
		}
	}
}

// The files of one zip are judged each by itself: one is right, one a day off and
// so at the time of the first, one 1024 weeks off.
func TestTrackClockInAZip(t *testing.T) {
	const legs = clockLegs + "T2,1,2026-02-15,07:00,08:00,9,4\nT2,2,2026-02-15,08:00,08:40,11.5,4\n" +
		"T3,1,2026-03-01,07:00,08:00,8,4\nT3,2,2026-03-01,08:00,08:40,13,4\n"
	second := []stint{{60, 9, 0, 0}, {40, 11.5, 90, 0}, {30, 20, 180, 0}}
	third := []stint{{60, 8, 0, 0}, {40, 13, 90, 0}, {30, 20, 180, 0}}
	dir := t.TempDir()
	file := zipped(t, dir, gpxTrack(t, dir, "1.gpx", clockRight, clockRun...),
		gpxTrack(t, dir, "2.gpx", clockRight, second...),
		gpxTrack(t, dir, "3.gpx", clockRight.AddDate(0, 0, 15-7168), third...))
	tracks := tracksOf(t, pipeline.Config{Zone: "UTC+13"}, legs, file)
	if len(tracks) != 3 {
		t.Fatalf("%d tracks", len(tracks))
	}
	const byItself = "the flag is for all files of a zip: take this one out and load it by itself"
	for i, want := range []string{"", "with --boat \"Petrel\" --track-clock 24h (a day): the track fits 1.7 of 1.7 " +
		"logged hours", "with --boat \"Petrel\" --track-clock 172032h"} {
		k := tracks[i]
		if !strings.HasPrefix(k.Note, want) || (want == "") != (k.Note == "") ||
			(want != "") != strings.HasSuffix(k.Note, byItself) {
			t.Errorf("%s: %q, want %q", k.Member, k.Note, want)
		}
	}
	if tracks[0].Legs != 2 || tracks[1].Legs != 0 || tracks[2].Legs != 0 {
		t.Errorf("legs met: %+v", tracks)
	}
	// two files of one time count its hours once
	if math.Abs(tracks[0].LegHours-100.0/60) > 0.01 {
		t.Errorf("%.3f h of legs covered, want 1.667", tracks[0].LegHours)
	}
	// all of a zip off alike: the flag does for all
	all := zipped(t, t.TempDir(), gpxTrack(t, dir, "1.gpx", clockRight.Add(time.Hour*5), clockRun...),
		gpxTrack(t, dir, "2.gpx", clockRight.Add(29*time.Hour), second...))
	for _, k := range tracksOf(t, pipeline.Config{Zone: "UTC+13"}, legs, all) {
		if !strings.HasPrefix(k.Note, "with --boat \"Petrel\" --track-clock -5h") ||
			strings.HasSuffix(k.Note, byItself) {
			t.Errorf("%s: %q", k.Member, k.Note)
		}
	}
}

func zipped(t *testing.T, dir string, files ...string) string {
	t.Helper()
	name := filepath.Join(dir, "tracks.zip")
	out, err := os.Create(name)
	if err != nil {
		t.Fatal(err)
	}
	z := zip.NewWriter(out)
	for _, f := range files {
		b, err := os.ReadFile(f)
		if err != nil {
			t.Fatal(err)
		}
		w, err := z.Create(filepath.Base(f))
		if err == nil {
			_, err = w.Write(b)
		}
		if err != nil {
			t.Fatal(err)
		}
	}
	if err := errors.Join(z.Close(), out.Close()); err != nil {
		t.Fatal(err)
	}
	return name
}

// The same track in two files is one log, whatever the second is called.
func TestTrackGivenTwice(t *testing.T) {
	dir := t.TempDir()
	a, b := gpxTrack(t, dir, "a.gpx", clockRight, clockRun...), gpxTrack(t, dir, "b.gpx", clockRight, clockRun...)
	tracks := tracksOf(t, pipeline.Config{Zone: "UTC+13"}, clockLegs, a, b)
	if len(tracks) != 1 || tracks[0].File != "a.gpx" || tracks[0].Note != "" ||
		math.Abs(tracks[0].LegHours-100.0/60) > 0.01 {
		t.Errorf("%+v", tracks)
	}
}

// A track that is loaded again with its clock put right, but without its --boat, is the
// same log, of the boat that was named for it: it is read again, and its hours count once.
func TestTrackLoadedAgainWithoutItsBoat(t *testing.T) {
	season := filepath.Join(t.TempDir(), "season.duckdb")
	file := gpxTrack(t, t.TempDir(), "a.gpx", clockRight.Add(30*time.Minute), clockRun...)
	logs := []string{writeText(t, t.TempDir(), "legs.csv", clockLegs), file}
	for _, c := range []pipeline.Config{{Boat: "Petrel", Zone: "UTC+13"}, {TrackClock: -30 * time.Minute}} {
		s, err := pipeline.Open(t.Context(), season, c)
		if err != nil {
			t.Fatal(err)
		}
		_, err = s.Load(t.Context(), logs)
		if err = errors.Join(err, s.Derive(t.Context())); err != nil {
			t.Fatal(err)
		}
		tracks := answer(t, s, queries.AskTracks)
		if c.Boat == "" && (len(tracks) != 1 || tracks[0].Boat == nil ||
			*tracks[0].Boat != "Petrel" || tracks[0].ClockS != -1800 ||
			tracks[0].Note != "" || math.Abs(tracks[0].LegHours-100.0/60) > 0.01) {
			t.Errorf("%+v", tracks)
		}
		if err := s.DB.Close(); err != nil {
			t.Fatal(err)
		}
		logs = logs[1:]
	}
}

// The same bytes under another clock or another gap are read again; under the
// same they are not; and a longer gap is run over.
func TestTrackReadAgainUnderOtherSettings(t *testing.T) {
	dir := t.TempDir()
	file := writeText(t, dir, "a.csv",
		"time,lat,lon\n2026-02-13T18:00:00Z,-36.5,176.2\n2026-02-13T18:04:00Z,-36.51,176.2\n"+
			"2026-02-13T18:12:00Z,-36.53,176.2\n2026-02-13T18:16:00Z,-36.54,176.2\n")
	season := filepath.Join(dir, "season.duckdb")
	for i, c := range []struct {
		cfg       pipeline.Config
		unchanged bool
		hours     float64
		gaps      int64
		first     string
	}{
		{pipeline.Config{}, false, 8.0 / 60, 1, "2026-02-13T18:00:00Z"},
		{pipeline.Config{TrackGap: 5 * time.Minute}, true, 8.0 / 60, 1, "2026-02-13T18:00:00Z"},
		{pipeline.Config{TrackGap: 10 * time.Minute}, false, 16.0 / 60, 0, "2026-02-13T18:00:00Z"},
		{pipeline.Config{TrackGap: 10 * time.Minute, TrackClock: -24 * time.Hour}, false,
			16.0 / 60, 0, "2026-02-12T18:00:00Z"},
		{pipeline.Config{TrackGap: 10 * time.Minute, TrackClock: -24 * time.Hour}, true,
			16.0 / 60, 0, "2026-02-12T18:00:00Z"},
		{pipeline.Config{}, true, 16.0 / 60, 0, "2026-02-12T18:00:00Z"}, // what was said once holds
		{pipeline.Config{TrackGap: 5 * time.Minute, TrackClockSaid: true}, false, 8.0 / 60, 1, "2026-02-13T18:00:00Z"},
	} {
		s, err := pipeline.Open(t.Context(), season, c.cfg)
		if err != nil {
			t.Fatal(err)
		}
		reports, err := s.Load(t.Context(), []string{file})
		if err = errors.Join(err, s.Derive(t.Context())); err != nil {
			t.Fatal(err)
		}
		tracks := answer(t, s, queries.AskTracks)
		if (reports[0].Known == pipeline.Unchanged) != c.unchanged || math.Abs(tracks[0].Hours-c.hours) > 1e-6 ||
			tracks[0].Gaps != c.gaps || *tracks[0].FirstUTC != c.first {
			t.Errorf("load %d: unchanged %v, %+v; want %+v", i, (reports[0].Known == pipeline.Unchanged), tracks[0], c)
		}
		if err := s.DB.Close(); err != nil {
			t.Fatal(err)
		}
	}
}
