package reports

import (
	"context"
	"fmt"
	"io"
	"math"
	"time"

	"wakeledger/pipeline/store"
	"wakeledger/queries"
	"wakeledger/reports/page"
)

// TrackInput is what the page of the boat's track is made of. It shows where the
// boat fished: it is for the boat alone.
type TrackInput struct {
	Title     string
	Generated time.Time
	Points    []queries.TrackPoint
	Cells     []queries.Area
	Bands     []string // levels of speed-band, slowest first, worded
	Lower     []float64
}

// mostPoints are as many as a page draws without delay.
const mostPoints = 4000

// trackBands are the classes that the drawing tells apart.
var trackBands = []float64{0, 6, 8, 10, 12, 14}

// GatherTrack asks a season file all that the page of the track needs.
func GatherTrack(ctx context.Context, db *store.DB) (TrackInput, error) {
	in := TrackInput{Lower: trackBands}
	for i, lo := range trackBands {
		name := fmt.Sprintf("%g kn and up", lo)
		if i+1 < len(trackBands) {
			name = fmt.Sprintf("%g to <%g kn", lo, trackBands[i+1])
		}
		in.Bands = append(in.Bands, name)
	}
	var err error
	if in.Points, err = queries.AskTrackPath(ctx, db, mostPoints); err != nil {
		return in, err
	}
	in.Cells, err = queries.AskArea(ctx, db, queries.AreaMinutes)
	return in, err
}

// Track writes the page of the boat's track, as one HTML file.
func Track(w io.Writer, in TrackInput) error {
	p := page.Page{Title: in.Title, Kicker: "Track, for the boat alone", Lang: "en-GB", Generated: in.Generated,
		Footer: []string{"This page shows where the boat fished. It is no chart and not for navigation."}}
	drawn, err := in.drawing()
	if err != nil {
		return fmt.Errorf("track page: %w", err)
	}
	p.Sections = []page.Section{drawn, in.area()}
	return page.Render(w, p)
}

func (in *TrackInput) drawing() (page.Section, error) {
	section := page.Section{ID: "track", Heading: "Where the legs ran, by speed"}
	if len(in.Points) == 0 {
		section.Sentences = []string{"No leg has a track."}
		return section, nil
	}
	south, north, west, east := in.bounds()
	lat, lon := (south+north)/2, (west+east)/2
	classes := make([]page.TrackClass, len(in.Bands))
	for i, name := range in.Bands {
		classes[i].Name = name
	}
	var struck [][2]float64
	for _, p := range in.Points {
		at := [2]float64{round2((p.LonDeg - lon) * 60 * math.Cos(lat*math.Pi/180)), round2((p.LatDeg - lat) * 60)}
		if p.Strike {
			struck = append(struck, at)
			continue
		}
		c := &classes[in.class(p.SpeedKn)]
		c.Points = append(c.Points, at)
	}
	section.Sentences = []string{fmt.Sprintf("%s of track and %s, nautical miles about %.3f, %.3f.",
		page.Plural(int64(len(in.Points)-len(struck)), "point", "points"), page.Plural(int64(len(struck)), "strike", "strikes"), lat, lon)}
	chart, err := page.Track(page.Frame{Label: "Positions of the legs by speed, and of the strikes. " + section.Sentences[0] + " The table below holds effort and strikes by cells.",
		Axis: "nmi east; upwards nmi north"}, classes, struck)
	section.Chart = chart
	section.Notes = []string{"Points are evenly thinned pieces of ten seconds. Both axes have one scale; the page stretches the drawing to its width."}
	return section, err
}

func round2(v float64) float64 { return math.Round(100*v) / 100 }

func (in *TrackInput) class(kn float64) int {
	c := 0
	for i, lo := range in.Lower {
		if kn >= lo {
			c = i
		}
	}
	return c
}

// bounds are the ends of the points; a track across 180 degrees is laid out east
// of it.
func (in *TrackInput) bounds() (south, north, west, east float64) {
	first := in.Points[0]
	south, north, west, east = first.LatDeg, first.LatDeg, first.LonDeg, first.LonDeg
	for i := range in.Points {
		p := &in.Points[i]
		p.LonDeg = first.LonDeg + math.Remainder(p.LonDeg-first.LonDeg, 360)
		south, north = min(south, p.LatDeg), max(north, p.LatDeg)
		west, east = min(west, p.LonDeg), max(east, p.LonDeg)
	}
	return south, north, west, east
}

// area is effort and strikes by cells.
func (in *TrackInput) area() page.Section {
	section := page.Section{ID: "area", Heading: fmt.Sprintf("By cells of %d minutes of arc", queries.AreaMinutes)}
	if len(in.Cells) == 0 {
		section.Sentences = []string{"No leg has a track."}
		return section
	}
	most := in.Cells[0]
	t := &page.Table{Caption: "effort and strikes on legs with a track, by cell", Columns: []page.Column{
		{Head: "South edge", Unit: "degrees", Kind: page.Measure, Decimals: 3}, {Head: "West edge", Unit: "degrees", Kind: page.Measure, Decimals: 3},
		{Head: "Trips", Kind: page.Measure}, {Head: "Boat-hours", Unit: "h", Kind: page.Measure, Decimals: 1},
		{Head: "Line-hours", Unit: "h", Kind: page.Measure, Decimals: 1}, {Head: "Run", Unit: "nmi", Kind: page.Measure, Decimals: 1}, {Head: "Strikes", Kind: page.Measure}}}
	for _, c := range in.Cells {
		if c.LineHours > most.LineHours {
			most = c
		}
		t.Rows = append(t.Rows, page.Row{Cells: []page.Cell{page.Value(c.LatDeg), page.Value(c.LonDeg), page.Whole(c.Trips),
			page.Value(c.BoatHours), page.Value(c.LineHours), page.Value(c.DistanceNmi), page.Whole(c.Strikes)}})
	}
	section.Sentences = []string{fmt.Sprintf("Most line-hours in one cell: %s, with %s.", hours(most.LineHours), page.Plural(most.Strikes, "strike", "strikes"))}
	section.Table = t
	return section
}
