package queries_test

import (
	"bytes"
	"context"
	"encoding/csv"
	"errors"
	"fmt"
	"math"
	"os"
	"path/filepath"
	"slices"
	"strconv"
	"strings"
	"testing"
	"time"

	"wakeledger/pipeline"
	"wakeledger/pipeline/zone"
	"wakeledger/queries"
)

// trackCase is a row of testdata/tracks/cases.csv: a folder with a log and tracks,
// the truth and its bound, and what must, or must not, be said.
type trackCase map[string]string

func trackCases(t *testing.T) []trackCase {
	t.Helper()
	f, err := os.Open("../testdata/tracks/cases.csv")
	if err != nil {
		t.Fatal(err)
	}
	defer f.Close()
	rows, err := csv.NewReader(f).ReadAll()
	if err != nil {
		t.Fatal(err)
	}
	var all []trackCase
	for _, r := range rows[1:] {
		c := trackCase{}
		for i, name := range rows[0] {
			c[name] = r[i]
		}
		all = append(all, c)
	}
	return all
}

// files are the case's log and its tracks.
func (c trackCase) files(t *testing.T) (log, tracks []string) {
	t.Helper()
	files, _, err := pipeline.Files([]string{filepath.Join("../testdata/tracks", c["case"])})
	if err != nil {
		t.Fatal(err)
	}
	for _, f := range files {
		if filepath.Base(f) == "legs.csv" {
			log = append(log, f)
		} else {
			tracks = append(tracks, f)
		}
	}
	return log, tracks
}

// near holds a figure against the truth of a column, within the case's share of it.
func (c trackCase) near(t *testing.T, what, column string, got float64) {
	t.Helper()
	if c[column] == "" {
		return
	}
	want, err1 := strconv.ParseFloat(c[column], 64)
	within, err2 := strconv.ParseFloat(c["within"], 64)
	if err1 != nil || err2 != nil {
		t.Fatal(err1, err2)
	}
	t.Logf("%s: %.3f, truth %.3f", what, got, want)
	if math.Abs(got-want) > within*want {
		t.Errorf("%s: %.3f, want %.3f within %g %%", what, got, want, 100*within)
	}
}

// Each simulated case of testdata/tracks, its tracks loaded in either order: hours and
// way measured, areas, speed band, proposed legs, and what is and is not said.
func TestTrackCases(t *testing.T) {
	for i, c := range trackCases(t) {
		t.Run(c["case"], func(t *testing.T) {
			if testing.Short() && i%3 > 0 {
				t.Skip("each third one; all in make prove")
			}
			log, tracks := c.files(t)
			c.loaded(t, append(log, tracks...))
			c.proposed(t, tracks)
			if len(tracks) > 1 {
				slices.Reverse(tracks)
				c.loaded(t, append(log, tracks...))
			}
		})
	}
}

func (c trackCase) loaded(t *testing.T, files []string) {
	t.Helper()
	s := open(t, pipeline.Config{Boat: "Petrel", Zone: c["zone"]})
	defer s.DB.Close()
	var said strings.Builder
	for _, r := range load(t, s, files...) {
		if r.SetAside > 0 {
			fmt.Fprintf(&said, "%d set aside\n", r.SetAside)
		}
		for _, sheet := range r.Sheets {
			fmt.Fprintln(&said, sheet.Name, strings.Join(sheet.Notes, "\n"))
		}
	}
	c.measured(t, s, &said)
	if !strings.Contains(said.String(), c["says"]) {
		t.Errorf("%q is not said:\n%s", c["says"], said.String())
	}
	if c["silent"] != "" && strings.Contains(said.String(), c["silent"]) {
		t.Errorf("%q is said:\n%s", c["silent"], said.String())
	}
}

func (c trackCase) measured(t *testing.T, s *pipeline.Season, said *strings.Builder) {
	t.Helper()
	measured, nmi := 0.0, 0.0
	for _, trip := range answer(t, s, queries.AskTrackSpeed) {
		measured += trip.MeasuredHours
		if trip.DistanceNmi != nil {
			nmi += *trip.DistanceNmi
		}
		fmt.Fprintln(said, trip.Note)
	}
	c.near(t, "measured hours", "hours", measured)
	c.near(t, "nautical miles", "nmi", nmi)
	cells, err := queries.AskArea(context.Background(), s.DB, queries.AreaMinutes)
	if err != nil {
		t.Fatal(err)
	}
	area := 0.0
	for _, cell := range cells {
		area += cell.BoatHours
	}
	c.near(t, "hours of the areas", "hours", area)
	if c["band"] != "" {
		hours := hoursAt(answerBy(t, s, queries.AskEffort, "speed-band"))
		if got := hours[c["band"]]; math.Abs(got-40.0/60) > 0.05*40/60+1e-5 {
			t.Errorf("%v, want all of 0.667 h within 5 %% at %s", hours, c["band"])
		}
	}
	for _, track := range answer(t, s, queries.AskTracks) {
		fmt.Fprintln(said, track.Note)
	}
	for _, q := range answer(t, s, queries.AskQuestions) {
		fmt.Fprintln(said, q.Text)
	}
	for _, p := range answer(t, s, queries.AskSetAside) {
		fmt.Fprintln(said, "set aside:", p.Reason)
	}
}

// proposed holds the number of legs proposed, and their hours: a leg begins and ends at
// whole minutes within it.
func (c trackCase) proposed(t *testing.T, tracks []string) {
	t.Helper()
	if c["legs"] == "" {
		return
	}
	var out bytes.Buffer
	n, _, err := pipeline.ProposeLegs(context.Background(), pipeline.Config{Zone: c["zone"]},
		tracks, pipeline.Trolling{}, &out)
	if err != nil || strconv.Itoa(n) != c["legs"] {
		t.Fatalf("%d legs proposed, want %s (%v):\n%s", n, c["legs"], err, out.String())
	}
	rows, err := csv.NewReader(strings.NewReader(out.String())).ReadAll()
	want, wantErr := strconv.ParseFloat(c["steady"], 64)
	clock, zoneErr := zone.Load(c["zone"])
	if err = errors.Join(err, wantErr, zoneErr); err != nil {
		t.Fatal(err)
	}
	hours := 0.0
	for _, r := range rows[1:] {
		from, err1 := time.ParseInLocation("2006-01-02 15:04", r[0]+" "+r[1], clock)
		to, err2 := time.ParseInLocation("2006-01-02 15:04", r[0]+" "+r[2], clock)
		if err1 != nil || err2 != nil {
			t.Fatal(err1, err2)
		}
		hours += to.Sub(from).Hours()
	}
	t.Logf("hours of the proposed legs: %.3f, truth %.3f", hours, want)
	if hours > want || hours < want-2*float64(n)/60 {
		t.Errorf("legs of %.3f h are proposed, want %.3f, or 2 min a leg less:\n%s", hours, want, out.String())
	}
}
