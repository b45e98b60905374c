package reports

import (
	"fmt"
	"io"
	"math"
	"time"

	"wakeledger/pipeline/factors"
	"wakeledger/queries"
	"wakeledger/reports/page"
)

// TrackInput is what the page of the boat's track is made of. It shows where the
// boat fished: it is for the boat alone.
type TrackInput struct {
	Title     string
	Generated time.Time
	Points    []queries.TrackPoint
	Speeds    []queries.TrackHours
	Cells     []queries.Area
	Edges     []float64 // of the classes of speed that the drawing tells apart, the lower ends in knots
	Minutes   float64   // of arc, a cell's side
	Open      queries.Open
}

// Track writes the page of the boat's track, as one HTML file.
func Track(w io.Writer, in TrackInput) error {
	p := page.Page{Report: page.TrackReport, Title: in.Title, Kicker: "Track, for the boat alone", Lang: "en-GB",
		Generated: in.Generated, Open: notSettled(in.Open),
		Footer: []string{"This page shows where the boat fished. It is no chart and not for navigation."}}
	if len(in.Points) == 0 {
		p.Sections = []page.Section{{ID: "track", Heading: "Where the legs ran, by speed",
			Sentences: []string{"No leg has a track."}}}
		return page.Render(w, p)
	}
	drawn, err := in.drawing()
	if err != nil {
		return fmt.Errorf("track page: %w", err)
	}
	p.Sections = []page.Section{drawn, in.area()}
	return page.Render(w, p)
}

// trackTally is what the page tells of one class of speed.
type trackTally struct {
	hours, nmi    float64
	drawn, struck int64
}

func (in *TrackInput) tallies() (classes []trackTally, all trackTally) {
	classes = make([]trackTally, len(in.Edges))
	for _, s := range in.Speeds {
		c := &classes[factors.Within(in.Edges, s.SpeedKn)]
		c.hours, c.nmi = c.hours+s.Hours, c.nmi+s.DistanceNmi
	}
	for _, p := range in.Points {
		if c := &classes[factors.Within(in.Edges, p.SpeedKn)]; p.Strike {
			c.struck++
		} else {
			c.drawn++
		}
	}
	for _, c := range classes {
		all = trackTally{all.hours + c.hours, all.nmi + c.nmi, all.drawn + c.drawn, all.struck + c.struck}
	}
	return classes, all
}

func (in *TrackInput) drawing() (page.Section, error) {
	section := page.Section{ID: "track", Heading: "Where the legs ran, by speed"}
	tallies, all := in.tallies()
	south, north, west, east := in.bounds()
	lat, lon := (south+north)/2, (west+east)/2
	classes := make([]page.TrackClass, len(in.Edges))
	for i := range classes {
		classes[i].Name = in.className(i)
	}
	var struck [][2]float64
	for _, p := range in.Points {
		at := [2]float64{round2((p.LonDeg - lon) * 60 * math.Cos(lat*math.Pi/180)), round2((p.LatDeg - lat) * 60)}
		if p.Strike {
			struck = append(struck, at)
			continue
		}
		c := &classes[factors.Within(in.Edges, p.SpeedKn)]
		c.Points = append(c.Points, at)
	}
	section.Sentences = []string{fmt.Sprintf("%s of legs have a track: %s nmi over ground, and %s on it.",
		hours(all.hours)+" boat-hours", page.Number(all.nmi, 0), page.Plural(all.struck, "strike", "strikes"))}
	chart, err := page.Track(page.Frame{Label: "Positions of the legs by speed, and of the strikes. " +
		section.Sentences[0] + " The tables below hold hours by speed, and effort and strikes by cells.",
		Axis: "nmi east, upwards nmi north"}, classes, struck)
	section.Chart, section.Table = chart, in.speedTable(tallies, all)
	section.Notes = []string{fmt.Sprintf("The middle of the drawing is %s. Each point stands for %s of track. A "+
		"ring is where a strike was, as the log's time tells: to a minute of running at best.",
		position(lat, lon), seconds(all.hours*3600/float64(all.drawn)))}
	return section, err
}

// className is a class of speed as the drawing and its table name it.
func (in *TrackInput) className(i int) string {
	return factors.Text(factors.Speed, factors.Split(in.Edges)[i].String())
}

// speedTable is the table of what is drawn.
func (in *TrackInput) speedTable(tallies []trackTally, all trackTally) *page.Table {
	t := &page.Table{Caption: "legs with a track, by speed", Columns: []page.Column{{Head: "Speed", Kind: page.Token},
		{Head: "Boat-hours", Unit: "h", Kind: page.Measure, Decimals: 1},
		{Head: "Run", Unit: "nmi", Kind: page.Measure, Decimals: 1},
		{Head: "Points drawn", Kind: page.Measure}, {Head: "Strikes", Kind: page.Measure}}}
	row := func(name string, c trackTally) []page.Cell {
		return []page.Cell{page.Words(name), page.Value(c.hours), page.Value(c.nmi),
			page.Whole(c.drawn), page.Whole(c.struck)}
	}
	for i, c := range tallies {
		t.Rows = append(t.Rows, page.Row{Cells: row(in.className(i), c)})
	}
	t.Total = row("all", all)
	return t
}

// seconds is a time of seconds or minutes in words.
func seconds(s float64) string {
	if s < 90 {
		return page.Number(s, 0) + " s"
	}
	return page.Number(s/60, 0) + " min"
}

// position is one in degrees and minutes, as a plotter shows it.
func position(lat, lon float64) string {
	side := func(v float64, plus, minus string) string {
		if v < 0 {
			v, plus = -v, minus
		}
		tenths := math.Round(600 * v)
		return fmt.Sprintf("%d°%04.1f′ %s", int(tenths)/600, math.Mod(tenths, 600)/10, plus)
	}
	return side(lat, "N", "S") + " " + side(math.Remainder(lon, 360), "E", "W")
}

func round2(v float64) float64 { return math.Round(100*v) / 100 }

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
	size := page.Number(in.Minutes, decimals(in.Minutes))
	section := page.Section{ID: "area", Heading: "By cells of " + size + " minutes of arc"}
	if in.Minutes == 1 {
		section.Heading = "By cells of one minute of arc"
	}
	most := in.Cells[0]
	t := &page.Table{Caption: "effort and strikes on legs with a track, by cell", Columns: []page.Column{
		{Head: "South edge", Unit: "degrees", Kind: page.Measure, Decimals: 3},
		{Head: "West edge", Unit: "degrees", Kind: page.Measure, Decimals: 3},
		{Head: "Trips", Kind: page.Measure}, {Head: "Boat-hours", Unit: "h", Kind: page.Measure, Decimals: 1},
		{Head: "Line-hours", Unit: "h", Kind: page.Measure, Decimals: 1},
		{Head: "Run", Unit: "nmi", Kind: page.Measure, Decimals: 1}, {Head: "Strikes", Kind: page.Measure}}}
	for _, c := range in.Cells {
		if c.LineHours > most.LineHours {
			most = c
		}
		t.Rows = append(t.Rows, page.Row{Cells: []page.Cell{page.Value(float64(c.LatDeg)),
			page.Value(float64(c.LonDeg)), page.Whole(c.Trips),
			page.Value(c.BoatHours), page.Value(c.LineHours), page.Value(c.DistanceNmi), page.Whole(c.Strikes)}})
	}
	section.Sentences = []string{fmt.Sprintf("Most line-hours in one cell: %s, with %s, north-east of %s.",
		hours(most.LineHours), page.Plural(most.Strikes, "strike", "strikes"),
		position(float64(most.LatDeg), float64(most.LonDeg)))}
	section.Table = t
	return section
}

// decimals are those that a size of cells is printed with.
func decimals(v float64) int {
	if v == math.Trunc(v) {
		return 0
	}
	return 1
}
