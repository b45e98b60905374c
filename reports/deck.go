package reports

import (
	"fmt"
	"io"
	"math"
	"slices"
	"strings"
	"time"

	"wakeledger/pipeline/estimate"
	"wakeledger/pipeline/sentence"
	"wakeledger/pipeline/unit"
	"wakeledger/queries"
	"wakeledger/reports/page"
)

// DeckInput is what the printed page for the boat is made of.
type DeckInput struct {
	Title     string
	Generated time.Time
	Units     string // "metric" or "us"
	Boats     []string

	Plan      []queries.PlanDay
	Spread    []queries.SpreadPlace
	Species   []queries.SpeciesSeen
	Own       map[string]estimate.Own
	Catalogue *estimate.Catalogue
	Open      queries.Open
}

// deck is the input made ready.
type deck struct {
	DeckInput
	units
}

// How much fits on the page.
const (
	deckSpecies = 5
	deckRows    = 10 // of a table of girths
	deckLengths = 10 // of the table of lengths
	deckColumns = 14
	DeckTrips   = 4 // of the plan
	deckBlank   = 8 // rows to write strikes in
)

// Deck writes the printed page for the boat: weights by tape, setbacks and drags. It
// fails where Units is not known or w fails.
func Deck(w io.Writer, in DeckInput) error {
	u, err := unitsOf(in.Units)
	if err != nil {
		return fmt.Errorf("deck page: %w", err)
	}
	d := &deck{DeckInput: in, units: u}
	s := page.Sheet{Report: page.DeckReport, Title: in.Title, Subtitle: "Today on the front; weights, setbacks and " +
		"drags on the back. Every weight on this page is an estimate.", Lang: "en-GB", Generated: in.Generated,
		Open: notSettled(in.Open)}
	s.Panels = append(s.Panels, d.planPanel(), d.placesPanel(), blankPanel(d.length, d.weight),
		page.Panel{Heading: "Before you go", Wide: true, Notes: deckCautions})
	back := append(d.girthPanels(), d.lengthPanel(), d.setbackPanel(), d.dragPanel())
	back[0].Next = true
	s.Panels = append(s.Panels, back...)
	return page.RenderSheet(w, s)
}

var deckCautions = []string{
	"A tape weight is an estimate: not for records, sale or legal size. Size, bag and season rules are the local " +
		"authority's, in force that day.",
	"Read this ashore or hand it to someone not at the wheel: high-speed trolling needs a proper look-out at all " +
		"times (COLREGs rule 5) and distance from other boats.",
	"Heavy drag is set on a scale at the dock, with harness and a knife at hand. Large tuna, billfish and king " +
		"mackerel carry advisories on mercury; fish not chilled at once can cause histamine poisoning.",
}

// planPanel is what to compare on the next trips, with room to tick them off.
func (d *deck) planPanel() page.Panel {
	p := page.Panel{Heading: "Plan of the next trips", Wide: true, Blank: true}
	if len(d.Plan) == 0 {
		p.Blank, p.Notes = false, []string{"The season leaves nothing to compare: fish as you like, and log it."}
		return p
	}
	t := &page.Table{Caption: p.Heading, Columns: []page.Column{{Head: "Trip", Kind: page.Token}, {Head: "First half"},
		{Head: "Second half"}, {Head: "Port, at first"}, {Head: "Starboard, at first"}, {Head: "Date"}}}
	for _, x := range d.Plan {
		or := func(text string) page.Cell {
			if text == "" {
				text = "as you like"
			}
			return page.Words(text)
		}
		t.Rows = append(t.Rows, page.Row{Cells: []page.Cell{page.Words(fmt.Sprint(x.Trip)), or(x.FirstHalf),
			or(x.SecondHalf), or(x.Port), or(x.Starboard), blank}})
	}
	p.Table = t
	p.Notes = []string{"Over the same water with the same spread. At half time port and starboard change over. " +
		"Start a new stretch in the log at each change."}
	return p
}

// blank is a cell to write in.
var blank = page.Words("\u00a0")

// spreadSpeeds are let-out speeds, in knots.
var spreadSpeeds = []float64{6, 8, 10}

// placesPanel is the boat's own spread, as distance and as counts.
func (d *deck) placesPanel() page.Panel {
	p := page.Panel{Heading: "This boat's spread", Wide: true}
	if len(d.Spread) == 0 {
		p.Notes = []string{
			"No place in the spread has its setback logged three times. Log setbacks, and it stands here."}
		return p
	}
	t := &page.Table{Caption: p.Heading, Columns: []page.Column{{Head: "Place", Kind: page.Token},
		{Head: "Setback", Unit: d.far, Kind: page.Measure}}}
	for _, kn := range spreadSpeeds {
		t.Columns = append(t.Columns, page.Column{Head: "Count at " + page.Number(kn, 0),
			Unit: "kn", Kind: page.Measure})
	}
	t.Columns = append(t.Columns, page.Column{Head: "Today", Kind: page.Token})
	for _, s := range d.Spread {
		row := []page.Cell{page.Words(s.Position), page.Value(s.SetbackM * d.perM)}
		for _, kn := range spreadSpeeds {
			row = append(row, page.Value(s.SetbackM/(kn*unit.MetresPerNmi/3600)))
		}
		t.Rows = append(t.Rows, page.Row{Cells: append(row, page.Words("______"))})
	}
	p.Table = t
	p.Notes = []string{"The middle setback of the season at each place, and the seconds to count at a let-out speed " +
		"over ground."}
	return p
}

// blankPanel is room to write strikes in.
func blankPanel(length, weight string) page.Panel {
	p := page.Panel{Heading: "Strikes", Wide: true, Blank: true}
	t := &page.Table{Caption: p.Heading}
	for _, head := range []string{"Time", "Speed, kn", "Line and lure", "What became of it, and why lost", "Length, " +
		length, "Girth, " + length, "Scale, " + weight} {
		t.Columns = append(t.Columns, page.Column{Head: head})
	}
	for range deckBlank {
		row := make([]page.Cell, len(t.Columns))
		for i := range row {
			row[i] = blank
		}
		t.Rows = append(t.Rows, page.Row{Cells: row})
	}
	p.Table = t
	return p
}

// axis is round steps over a range in the unit shown, at most most of them.
func axis(lo, hi float64, most int) []float64 {
	if hi <= lo {
		hi = lo + 1
	}
	for _, step := range []float64{1, 2, 5, 10, 15, 20, 25, 50, 100} {
		from, to := math.Floor(lo/step)*step, math.Ceil(hi/step)*step
		if n := int(math.Round((to-from)/step)) + 1; n <= most {
			out := make([]float64, n)
			for i := range out {
				out[i] = from + float64(i)*step
			}
			return out
		}
	}
	return []float64{lo, hi}
}

// girthPanels are the tables of length by girth: by the own coefficient of the
// species with most fish that has one in use, and by the trade's rule.
func (d *deck) girthPanels() []page.Panel {
	common := estimate.LengthGirthKG(1, 1)
	var panels []page.Panel
	var rest []string
	lo, hi := 50.0, 200.0
	if len(d.Species) > 0 {
		lo, hi = d.lengths(d.Species)
	}
	for _, sp := range d.Species {
		o, ok := d.Own[sp.Species]
		switch {
		case !ok || !o.Used:
		case panels == nil:
			l, h := d.lengths([]queries.SpeciesSeen{sp})
			notes := []string{fmt.Sprintf("By the boat's own divisor, from %d fish with tape and scale; %s. Nine of "+
				"ten such fish are within %s %% either way.",
				o.N, kindWords(o.LengthKind), page.Number(100*(spread(o)-1), 0))}
			panels = append(panels, d.grid(sp.Name+": length × girth to "+d.weight, o.K, l, h, notes))
		default:
			rest = append(rest, fmt.Sprintf("%s %s", sp.Name, percentMore(o.K/common)))
		}
	}
	notes := []string{"L × G² / 800 (lb, in), common practice. On tarpon it read over 15 % light (Ault and Luo " +
		"2013); no test on tunas was found."}
	if len(rest) > 0 {
		notes = append(notes, "By the boat's own fish: "+sentence.List(rest)+" than this table.")
	}
	heading := "Any other fish: length × girth to " + d.weight
	if panels == nil {
		heading = "Any fish: length × girth to " + d.weight
	}
	rule := d.grid(heading, common, lo, hi, notes)
	return append(panels, rule)
}

// spread is the factor that 90 % of fish lie within by an own coefficient.
func spread(o estimate.Own) float64 {
	c := estimate.Catalogue{}
	es := c.Weigh(estimate.Fish{Species: o.Species, LengthCM: o.MinCM, LengthKind: o.LengthKind,
		GirthCM: o.MinCM * 0.7}, map[string]estimate.Own{o.Species: o})
	if len(es) == 0 || !es[0].HasInterval {
		return math.NaN()
	}
	return es[0].HiKG / es[0].WeightKG
}

func percentMore(ratio float64) string {
	p := 100 * (ratio - 1)
	if p < 0 {
		return page.Number(-p, 0) + " % less"
	}
	return page.Number(p, 0) + " % more"
}

// lengths is the range of lengths of species in the unit shown; what was not
// measured gives a range that fits most fish.
func (d *deck) lengths(species []queries.SpeciesSeen) (lo, hi float64) {
	lo, hi = math.Inf(1), 0
	for _, s := range species {
		if s.ShortestCM != nil && s.LongestCM != nil {
			lo, hi = min(lo, *s.ShortestCM*d.perCM), max(hi, *s.LongestCM*d.perCM)
		}
	}
	if hi == 0 {
		return 60 * d.perCM, 200 * d.perCM
	}
	return lo, hi
}

// grid is weights by length and girth with one coefficient (kg per cm cubed). Girths
// that no fish has at a length are left blank.
func (d *deck) grid(heading string, k, lo, hi float64, notes []string) page.Panel {
	const thin, stout = 0.4, 0.85 // girth over length of the fish this page is for
	lengths := axis(lo, hi, deckRows)
	girths := axis(lengths[0]*0.55, lengths[len(lengths)-1]*0.78, deckColumns)
	t := &page.Table{Caption: heading, Columns: []page.Column{{Head: "L \\ G", Unit: d.length, Kind: page.Measure}}}
	for _, g := range girths {
		t.Columns = append(t.Columns, page.Column{Head: page.Number(g, 0), Kind: page.Token})
	}
	for _, l := range lengths {
		row := []page.Cell{page.Value(l)}
		for _, g := range girths {
			cell := page.Words("·")
			if g >= thin*l && g <= stout*l {
				w := k * l * g * g / (d.perCM * d.perCM * d.perCM) * d.perKG
				cell = page.Words(page.Number(w, estimateDecimals(w)))
			}
			row = append(row, cell)
		}
		t.Rows = append(t.Rows, page.Row{Cells: row})
	}
	return page.Panel{Heading: heading, Wide: true, Table: t, Notes: notes}
}

// lengthPanel is weights by the length alone, with their intervals where known.
func (d *deck) lengthPanel() page.Panel {
	p := page.Panel{Heading: "Length alone to " + d.weight + ", 90 % interval where one is known", Wide: true}
	var species []queries.SpeciesSeen
	for _, s := range d.Species {
		if s.Relation != nil && len(species) < deckSpecies {
			species = append(species, s)
		}
	}
	if len(species) == 0 {
		p.Notes = []string{"No species of the season has a length and a relation."}
		return p
	}
	lo, hi := d.lengths(species)
	t := &page.Table{Caption: p.Heading, Columns: []page.Column{{Head: "L", Unit: d.length, Kind: page.Measure}}}
	for _, s := range species {
		t.Columns = append(t.Columns, page.Column{Head: s.Name, Kind: page.Token})
		p.Notes = append(p.Notes, d.relationNote(s))
	}
	p.Notes = []string{"Straight length to the fork, of billfish from the lower jaw; a curved one is some 4 % " +
		"longer, which makes the weight some 13 % too high. " +
		strings.Join(p.Notes, " ")}
	for _, l := range axis(lo, hi, deckLengths) {
		row := []page.Cell{page.Value(l)}
		for _, s := range species {
			row = append(row, d.lengthCell(s, l))
		}
		t.Rows = append(t.Rows, page.Row{Cells: row})
	}
	p.Table = t
	return p
}

// byRelation is a species' estimate at a length in the unit shown.
func (d *deck) byRelation(s queries.SpeciesSeen, l float64) (estimate.Estimate, bool) {
	f := estimate.Fish{Species: s.Species, Stock: *s.Relation, LengthCM: l / d.perCM, LengthKind: estimate.ForkLength}
	es := d.Catalogue.Weigh(f, d.Own)
	at := slices.IndexFunc(es, func(e estimate.Estimate) bool { return e.Relation == *s.Relation })
	if at < 0 {
		return estimate.Estimate{}, false
	}
	return es[at], true
}

func (d *deck) lengthCell(s queries.SpeciesSeen, l float64) page.Cell {
	// A quarter beyond the season's fish: further out the page would mislead.
	if s.ShortestCM == nil || l < *s.ShortestCM*d.perCM*0.75 || l > *s.LongestCM*d.perCM*1.25 {
		return page.Words("·")
	}
	e, ok := d.byRelation(s, l)
	if !ok {
		return page.Words("·")
	}
	show := func(kg float64) string { return page.Number(kg*d.perKG, estimateDecimals(kg*d.perKG)) }
	if !e.HasInterval {
		return page.Words(show(e.WeightKG))
	}
	return page.Words(fmt.Sprintf("%s (%s to %s)", show(e.WeightKG), show(e.LoKG), show(e.HiKG)))
}

// relationNote is one line a species: the relation, and what its interval rests on.
func (d *deck) relationNote(s queries.SpeciesSeen) string {
	for _, r := range d.Catalogue.Relations() {
		if r.ID != *s.Relation {
			continue
		}
		basis := "no interval is known"
		switch o := d.Own[s.Species]; {
		case r.ResidualS > 0:
			basis = "interval from the published spread"
		case o.Relation == r.ID && o.RelationN >= 5:
			basis = fmt.Sprintf("interval from the boat's %d fish on a scale", o.RelationN)
		}
		return fmt.Sprintf("%s: %s, %s; %s.", s.Name, r.ID, r.Stock, basis)
	}
	return s.Name + ": " + *s.Relation + "."
}

// setbackPanel is counts at let-out speeds to distances.
func (d *deck) setbackPanel() page.Panel {
	far, perM := "m", 1.0
	if d.length == "in" {
		far, perM = "yd", 1/unit.MetresPerYard
	}
	p := page.Panel{Heading: "Setback, " + far + ": count of seconds at a let-out speed", Notes: []string{
		"Count × speed × 1852 / 3600 m. Speed over ground: a current along the line makes the true distance longer " +
			"or shorter.",
	}}
	t := &page.Table{Caption: p.Heading, Columns: []page.Column{{Head: "Count", Unit: "s", Kind: page.Measure}}}
	speeds := []float64{5, 6, 7, 8, 9, 10, 12}
	for _, kn := range speeds {
		t.Columns = append(t.Columns, page.Column{Head: page.Number(kn, 0), Unit: "kn", Kind: page.Measure})
	}
	for _, count := range []float64{10, 20, 30, 40, 60, 80, 100, 120} {
		row := []page.Cell{page.Value(count)}
		for _, kn := range speeds {
			row = append(row, page.Value(count*kn*unit.MetresPerNmi/3600*perM))
		}
		t.Rows = append(t.Rows, page.Row{Cells: row})
	}
	p.Table = t
	return p
}

// dragShares are the parts of the line class that the trade sets.
var dragShares = []struct {
	head  string
	share float64
}{{"1/5", 0.2}, {"1/4", 0.25}, {"30 %", 0.3}, {"1/3", 1.0 / 3}, {"40 %", 0.4}}

// dragPanel is line classes to drags.
func (d *deck) dragPanel() page.Panel {
	classes := []float64{10, 15, 24, 37, 60}
	if d.weight == "lb" {
		classes = []float64{20, 30, 50, 80, 130}
	}
	p := page.Panel{Heading: "Drag, " + d.weight + ": part of the line class", Notes: []string{
		"Common practice, no source: strike drag a quarter to a third of the line class. Set it on a scale, pulled " +
			"straight off the rod tip or the reel as you mean to fish it.",
		"Knots, chafe and a full-speed strike take from the line's strength; less line on the spool raises the drag.",
	}}
	t := &page.Table{Caption: p.Heading, Columns: []page.Column{{Head: "Class", Unit: d.weight, Kind: page.Measure}}}
	for _, s := range dragShares {
		t.Columns = append(t.Columns, page.Column{Head: s.head, Kind: page.Measure, Decimals: 1})
	}
	for _, class := range classes {
		row := []page.Cell{page.Value(class)}
		for _, s := range dragShares {
			row = append(row, page.Value(class*s.share))
		}
		t.Rows = append(t.Rows, page.Row{Cells: row})
	}
	p.Table = t
	return p
}
