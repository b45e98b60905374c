package reports

import (
	"fmt"
	"io"
	"regexp"
	"slices"
	"strings"
	"time"

	"wakeledger/pipeline/sentence"
	"wakeledger/reports/bundle"
	"wakeledger/reports/page"
)

// ClubInput is what the club's summary is made of.
type ClubInput struct {
	Title     string
	Generated time.Time // printed in the foot
	Units     string    // "metric" or "us"
	Boats     []bundle.Boat
	Names     bool // show the names that boats share; else ids alone
	// lower edges of the classes by factor, some of those that boats share; else all of these
	Edges   map[string][]float64
	Repeats int // files that held what another held already
	TooFew  int // boats of fewer than 3 trips, which are not in it
}

// club is the input made ready.
type club struct {
	ClubInput
	units
	total clubSum // of all boats
	hours float64 // boat-hours
	boats []clubBoat
}

// clubBoat is one boat with its sums.
type clubBoat struct {
	bundle.Boat
	total  clubSum
	months int
}

// Club writes the club's summary as one HTML file. It fails where Units is not
// known, Edges are none that boats share or w fails; without boats it gives a page that says so.
func Club(w io.Writer, in ClubInput) error {
	c, err := newClub(in)
	if err != nil {
		return err
	}
	p := page.Page{
		Report: page.ClubReport, Title: in.Title, Kicker: "Club summary", Subtitle: c.subtitle(), Lang: "en-GB",
		Generated: in.Generated, Open: c.open(), Tiles: c.tiles(),
		Footer: []string{"A weight from the tape is an estimate: not for records, sale or legal size."},
	}
	builders := []func() (page.Section, error){c.participation, c.boatRates, c.monthsSection, c.speedSection,
		c.lureSection, c.sizesSection, c.speciesSection}
	for _, list := range bundle.Lists() {
		builders = append(builders, func() (page.Section, error) { return c.heaviestSection(list) })
	}
	pictures := len(builders)
	builders = append(builders, c.sharedSection, c.cautionsSection)
	for _, build := range builders {
		section, err := build()
		if err != nil {
			return fmt.Errorf("club summary, %s: %w", section.ID, err)
		}
		p.Sections = append(p.Sections, section)
	}
	if reading, some := readOnce(p.Sections[:pictures]); some {
		p.Sections = slices.Insert(p.Sections, pictures, reading)
	}
	return page.Render(w, p)
}

// readOnce takes the notes that stand under several pictures out from under them, into a section
// that says each of them once.
func readOnce(sections []page.Section) (page.Section, bool) {
	under := map[string]int{}
	for _, s := range sections {
		for _, n := range s.Notes {
			under[n]++
		}
	}
	reading := page.Section{ID: "reading", Heading: "To read the pictures"}
	for i := range sections {
		var own []string
		for _, n := range sections[i].Notes {
			switch {
			case under[n] == 1:
				own = append(own, n)
			case !slices.Contains(reading.Notes, n):
				reading.Notes = append(reading.Notes, n)
			}
		}
		sections[i].Notes = own
	}
	return reading, len(reading.Notes) > 0
}

// open names the boats whose logs leave questions open, and nothing of what is asked; then
// what the secretary is to look into.
func (c *club) open() []string {
	var boats []string
	c.each(func(_ int, id string, s bundle.Season) {
		if s.Open > 0 && !slices.Contains(boats, id) {
			boats = append(boats, id)
		}
	})
	switch len(boats) {
	case 0:
		return c.secretary()
	case 1:
		return append([]string{"The logs of boat " + boats[0] + " leave questions open: its figures may change."},
			c.secretary()...)
	}
	return append([]string{"The logs of boats " + sentence.List(boats) +
		" leave questions open: their figures may change."},
		c.secretary()...)
}

func newClub(in ClubInput) (*club, error) {
	u, err := unitsOf(in.Units)
	if err != nil {
		return nil, fmt.Errorf("club summary: %w", err)
	}
	if err := CheckClubEdges(in.Edges); err != nil {
		return nil, err
	}
	in.Boats = wider(in.Boats, in.Edges)
	c := &club{ClubInput: in, units: u}
	for _, b := range in.Boats {
		boat := clubBoat{Boat: b}
		for _, s := range b.Seasons {
			boat.total.addSeason(s.Total)
			boat.months += len(s.Span())
			c.hours += s.Total.BoatHours
		}
		c.total.plus(boat.total)
		c.boats = append(c.boats, boat)
	}
	slices.SortStableFunc(c.boats, func(a, b clubBoat) int {
		switch {
		case a.total.LineHours > b.total.LineHours:
			return -1
		case a.total.LineHours < b.total.LineHours:
			return 1
		}
		return 0
	})
	return c, nil
}

// each calls f for every season of every boat, the boats in the order of their ids.
func (c *club) each(f func(boat int, id string, s bundle.Season)) {
	for i, b := range c.Boats {
		for _, s := range b.Seasons {
			f(i, b.ID, s)
		}
	}
}

func (c *club) subtitle() string {
	var months []string
	c.each(func(_ int, _ string, s bundle.Season) { months = append(months, s.Span()...) })
	if len(months) == 0 {
		return page.Plural(int64(len(c.Boats)), "boat", "boats")
	}
	first, last := slices.Min(months), slices.Max(months)
	span := monthText(first)
	if last != first {
		span += " to " + monthText(last)
	}
	return page.Plural(int64(len(c.Boats)), "boat", "boats") + ", " + span
}

func monthText(month string) string {
	if t, err := time.Parse("2006-01", month); err == nil {
		return t.Format("January 2006")
	}
	return month
}

func (c *club) tiles() []page.Tile {
	t := c.total
	tiles := []page.Tile{
		{Label: "Boats", Value: page.Count(int64(len(c.Boats))), Note: page.Plural(t.Trips, "trip", "trips")},
		{Label: "Line-hours", Value: hours(t.LineHours), Unit: "h", Note: hours(c.hours) + " boat-hours"},
		{Label: "Strikes", Value: page.Count(t.strikes.n),
			Note: t.strikes.note(page.Count(t.hookups.n) + " came tight")},
		{Label: "Landed or released", Value: page.Count(t.boated.n), Note: t.boated.note("at the boat")},
	}
	for i, label := range []string{"Heaviest, certified scale", "Heaviest, dock scale", "Heaviest by tape"} {
		tile := page.Tile{Label: label, Value: page.Unknown, Note: "none"}
		list := slices.DeleteFunc(c.heaviest(bundle.Lists()[i]), heavyFish.doubtful)
		if len(list) > 0 {
			f := list[0]
			tile.Value, tile.Unit, tile.Note = c.weightOf(f), c.weight, joined(speciesWord(f.Species), "boat "+f.boat)
			if f.List == bundle.Estimate {
				tile.Note = joined("estimate", tile.Note)
			}
		}
		tiles = append(tiles, tile)
	}
	return tiles
}

// mostBars is how many boats are drawn one by one.
const mostBars = 24

func (c *club) participation() (page.Section, error) {
	section := page.Section{ID: "boats", Heading: "Who took part"}
	if len(c.boats) == 0 {
		section.Sentences = []string{"No boat with 3 trips or more has shared its season."}
		return section, nil
	}
	section.Sentences = []string{fmt.Sprintf("%s: %s, %s line-hours, %s.",
		sentence.Capital(page.Plural(int64(len(c.boats)), "boat", "boats")),
		page.Plural(c.total.Trips, "trip", "trips"), hours(c.total.LineHours),
		c.total.strikes.words("strike", "strikes"))}
	var tenths []int64
	var marks []page.EffortMark
	for _, b := range c.boats {
		tenths = append(tenths, int64(b.total.LineHours*10+0.5))
		marks = append(marks, page.EffortMark{Level: page.Level{Name: b.ID,
			Counts: page.Plural(b.total.Trips, "trip", "trips")}, Hours: b.total.LineHours})
	}
	if n := halfOf(tenths); n < len(tenths) && sum(tenths) > 0 {
		section.Sentences = append(section.Sentences, fmt.Sprintf("%s fished half or more of the line-hours.",
			sentence.Capital(page.Plural(int64(n), "boat", "boats"))))
	}
	var err error
	if len(marks) <= mostBars {
		section.Chart, err = page.Effort(page.Frame{Label: "Line-hours of each boat. " + section.Sentences[0] +
			" The table below holds the figures.",
			Axis: "line-hours", Counts: "trips"}, marks)
	}
	section.Table = c.boatsTable()
	if c.total.dark() > 0 {
		section.Notes = append(section.Notes, "A count of a boat that is not shown is one trip's or one day's for "+
			"the most part, or there was none. A sum that needs it is not shown either.")
	}
	if c.TooFew > 0 {
		section.Notes = append(section.Notes, page.Plural(int64(c.TooFew), "boat", "boats")+
			" of fewer than 3 trips on 3 days not shown and not counted: a summary would show a single trip.")
	}
	for _, b := range c.boats {
		if n := len(b.Seasons); n > 1 {
			section.Notes = append(section.Notes, fmt.Sprintf("Boat %s: %d summaries, each of other months, taken "+
				"for one boat's because they have one id. Two boats? One must choose another id.", b.ID, n))
		}
	}
	if c.Repeats > 0 {
		section.Notes = append(section.Notes, "Given twice and counted once: "+
			page.Plural(int64(c.Repeats), "summary", "summaries")+".")
	}
	return section, err
}

func (c *club) boatsTable() *page.Table {
	t := &page.Table{Caption: "every boat", Columns: []page.Column{{Head: "Boat", Kind: page.Token}}}
	if c.Names {
		t.Columns = append(t.Columns, page.Column{Head: "Name"},
			page.Column{Head: "Captain"}, page.Column{Head: "Crew"})
	}
	t.Columns = append(t.Columns, page.Column{Head: "Trips", Kind: page.Measure},
		page.Column{Head: "Months shown", Kind: page.Measure},
		page.Column{Head: "Line-hours", Unit: "h", Kind: page.Measure, Decimals: 1},
		page.Column{Head: "Strikes", Kind: page.Measure},
		page.Column{Head: "Hook-ups", Kind: page.Measure}, page.Column{Head: "Landed or released", Kind: page.Measure},
		page.Column{Head: "Landed", Kind: page.Measure},
		page.Column{Head: "Released", Kind: page.Measure})
	for _, b := range c.boats {
		cells := []page.Cell{page.Words(b.ID)}
		if c.Names {
			cells = append(cells, page.Words(b.people("boat")),
				page.Words(b.people("captain")), page.Words(b.people("crew")))
		}
		t.Rows = append(t.Rows, page.Row{Cells: append(cells, page.Whole(b.total.Trips), page.Whole(int64(b.months)),
			page.Value(b.total.LineHours),
			b.total.strikes.cell(), b.total.hookups.cell(), b.total.boated.cell(),
			b.total.landed.cell(), b.total.released.cell())})
	}
	t.Total = []page.Cell{page.Words("all boats")}
	for len(t.Total) < len(t.Columns)-8 {
		t.Total = append(t.Total, page.Cell{})
	}
	t.Total = append(t.Total, page.Whole(c.total.Trips), page.Cell{}, page.Value(c.total.LineHours),
		c.total.strikes.cell(), c.total.hookups.cell(),
		c.total.boated.cell(), c.total.landed.cell(), c.total.released.cell())
	return t
}

// people are the names of a role that the boat shares, each once. A log may name
// several in one cell.
func (b clubBoat) people(role string) string {
	var names []string
	for _, s := range b.Seasons {
		for _, p := range s.People {
			if p.Role != role {
				continue
			}
			cells := []string{p.Name}
			if role == "crew" {
				cells = severalNames.Split(p.Name, -1)
			}
			for _, name := range cells {
				if name = strings.TrimSpace(name); name != "" && !slices.Contains(names, name) {
					names = append(names, name)
				}
			}
		}
	}
	return sentence.List(names)
}

// severalNames is what stands between the names of a crew.
var severalNames = regexp.MustCompile(`[,;/&+]| and `)
