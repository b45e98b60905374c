package main

import (
	"os"
	"path/filepath"
	"strings"
	"testing"
)

// planted are words and positions of a log that no page but the track's may hold, each with
// the door by which it might get out.
var planted = map[string]string{
	"Zebulon":      "the captain",
	"Quillfeather": "an angler",
	"Ottoline":     "an angler in a cell that could not be read",
	"Xanadu":       "the port",
	"Grumbleshoal": "the area",
	"hushnote":     "a note",
	"vexillum":     "a cell kept by name",
	"Hortensia":    "a heading kept by name",
	"Persimmon":    "a heading of a cell that could not be read",
	"Brannigan":    "a cell that could not be read",
	"hushfile":     "a log's file name",
	"hushtrack":    "a track's file name",
	"33.41":        "a latitude",
	"151.98":       "a longitude",
	"33° 24":       "a latitude",
	"151° 59":      "a longitude",
}

const hushed = `Boat,Captain,Anglers,Port,Area,Date,Start,End,Speed (kn),Lines out,Strikes,Landed,Lat,Lon,Length Persimmon (cm),Species,Angler,Notes,Fish for Hortensia
Tansy Reach,Zebulon,Quillfeather,Xanadu,Grumbleshoal,2026-01-03,06:00,07:45,8,2,1,1,-33.4127,151.9876,150,YFT,Quillfeather,hushnote,vexillum
Tansy Reach,Zebulon,Quillfeather,Xanadu,Grumbleshoal,2026-01-04,06:00,Brannigan,9,2,1,0,-33.4127,151.9876,,,,hushnote,vexillum
Tansy Reach,Zebulon,Quillfeather,Xanadu,Grumbleshoal,2026-01-05,06:00,07:45,9,2,Ottoline 3,0,-33.4127,151.9876,Ottoline's,YFT,Quillfeather,hushnote,vexillum
Tansy Reach,Zebulon,Quillfeather,Xanadu,Grumbleshoal,2026-01-06,06:00,23:45,7-8,2,1,0,-33.4127,151.9876,,,,hushnote,vexillum
Tansy Reach,Zebulon,Quillfeather,Xanadu,Grumbleshoal,2026-01-07,06:00,08:45,29,2,1,1,-33.4127,151.9876,900,YFT,Quillfeather,hushnote,vexillum
`

const hushedTrack = `time,lat,lon
2026-01-03T06:00:00Z,-33.4127,151.9876
2026-01-03T06:00:10Z,-33.4126,151.9876
2026-01-03T06:00:20Z,-33.4125,151.9876
2026-01-03T06:00:30Z,-33.4124,151.9876
`

// Nothing of where and who leaves by a side door: not with the rows set aside or doubtful,
// not by a file's name, a caption or the page's head.
func TestNoSideDoor(t *testing.T) {
	dir := t.TempDir()
	path := func(name string) string { return filepath.Join(dir, name) }
	for name, text := range map[string]string{"hushfile.csv": hushed, "hushtrack.csv": hushedTrack} {
		if err := os.WriteFile(path(name), []byte(text), 0o600); err != nil {
			t.Fatal(err)
		}
	}
	db := path("s.duckdb")
	summary := tell(t, "--db", db, "season", "--zone", "UTC", "--out", path("season.html"),
		path("hushfile.csv"), path("hushtrack.csv"))
	for _, kind := range []string{"scale", "deck"} {
		tell(t, "--db", db, "report", kind, "--out", path(kind+".html"))
	}
	tell(t, "report", "club", "--db", db, "--out", path("club.html"))
	tell(t, "--db", db, "report", "season", "--units", "us", "--compare", db, "--out", path("compare.html"))
	for _, page := range []string{"season.html", "scale.html", "deck.html", "club.html", "compare.html"} {
		b, err := os.ReadFile(path(page))
		if err != nil {
			t.Fatal(err)
		}
		text := withoutLibrary(string(b))
		for word, door := range planted {
			if at := strings.Index(strings.ToLower(text), strings.ToLower(word)); at >= 0 {
				t.Errorf("%s holds %s (%s): ...%s...", page, word, door, text[max(0, at-80):min(len(text), at+80)])
			}
		}
	}
	html, err := os.ReadFile(path("season.html"))
	if err != nil {
		t.Fatal(err)
	}
	// the rows are told all the same, and the captain's own screen names them
	for _, want := range []string{"rows set aside, and why", "rows that are doubtful, and why", "long leg", "row "} {
		if !strings.Contains(string(html), want) {
			t.Errorf("the season report says nothing of %q", want)
		}
	}
	for _, want := range []string{"set aside (wakeledger ask set-aside)",
		"in hushfile.csv: ", "Brannigan", "may change"} {
		if !strings.Contains(summary, want) {
			t.Errorf("the summary has no %q:\n%s", want, summary)
		}
	}
	if strings.Count(summary, "\n") > 60 {
		t.Errorf("the summary has %d lines", strings.Count(summary, "\n"))
	}
}
