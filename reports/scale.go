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
	"wakeledger/queries"
	"wakeledger/reports/page"
)

// ScaleInput is what the report of the tape against the scale is made of.
type ScaleInput struct {
	Title     string
	Boats     []string
	Generated time.Time // printed in the foot
	Units     string    // "metric" or "us"

	Fish   []queries.ScaleFish
	Checks []queries.ScaleCheck
	Own    map[string]estimate.Own // of the boat, by species (estimate.FitOwn)
	Open   queries.Open
	Logs   Logs
}

// scaleReport is the input made ready.
type scaleReport struct {
	ScaleInput
	units
	used []queries.ScaleFish // in a comparison
}

// Scale writes the report of the tape against the scale as one HTML file. It fails
// where Units is not known or w fails; a season with no fish on a scale gives a page
// that says what it would take.
func Scale(w io.Writer, in ScaleInput) error {
	u, err := unitsOf(in.Units)
	if err != nil {
		return fmt.Errorf("scale report: %w", err)
	}
	r := &scaleReport{ScaleInput: in, units: u}
	r.used = slices.DeleteFunc(slices.Clone(in.Fish), func(f queries.ScaleFish) bool { return f.LeftOut != nil })
	p := page.Page{
		Report: page.ScaleReport, Title: in.Title, Kicker: "Tape against scale", Subtitle: sentence.List(in.Boats),
		Lang: "en-GB", Generated: in.Generated,
		Open: notSettled(in.Open), Tiles: r.tiles(),
		Footer: []string{"A weight from the tape is an estimate: not for records, sale or legal size."},
	}
	builders := []func() (page.Section, error){r.verdictSection, r.differenceSection, r.ownSection, r.missesSection,
		r.conditionSection, r.scaleFishSection, r.methodsCompared, r.scaleNotesSection}
	for _, build := range builders {
		section, err := build()
		if err != nil {
			return fmt.Errorf("scale report, %s: %w", section.ID, err)
		}
		p.Sections = append(p.Sections, section)
	}
	return page.Render(w, p)
}

// check is the comparison of a method over all fish.
func (r *scaleReport) check(method string) queries.ScaleCheck {
	for _, c := range r.Checks {
		if c.Method == method {
			return c
		}
	}
	return queries.ScaleCheck{Method: method}
}

// tape is the method that stands for "the tape": the girth rule, else, without a
// girth, length alone.
func (r *scaleReport) tape() queries.ScaleCheck {
	if c := r.check(queries.ByGirth); c.N > 0 {
		return c
	}
	return r.check(queries.ByLength)
}

func (r *scaleReport) tiles() []page.Tile {
	certified := 0
	for _, f := range r.used {
		if text(f.Scale) == estimate.CertifiedScale {
			certified++
		}
	}
	tiles := []page.Tile{{Label: "On a scale", Value: page.Count(int64(len(r.Fish))), Unit: "fish",
		Note: fmt.Sprintf("%d compared with the tape, %d of them on a certified scale", len(r.used), certified)}}
	c := r.tape()
	if c.Ratio == nil {
		return tiles
	}
	tiles = append(tiles, page.Tile{Label: sentence.Capital(queries.WeighedBy(c.Method)),
		Value: page.Number(100*math.Abs(1-*c.Ratio), 1), Unit: "% " + lightOrHeavy(*c.Ratio),
		Note: "on " + page.Plural(c.N, "fish", "fish")})
	tiles = append(tiles, page.Tile{Label: "Half of the fish within", Value: r.small(*c.MedianAbsKG), Unit: r.weight})
	if own := r.check(queries.ByOwn); own.MedianAbsKG != nil {
		tiles = append(tiles, page.Tile{Label: "By the boat's own divisor",
			Value: r.small(*own.MedianAbsKG), Unit: r.weight,
			Note: fmt.Sprintf("half of %d fish within, each weighed by the others", own.N)})
	}
	return tiles
}

// small prints a difference in kg in the unit shown, with one decimal.
func (r *scaleReport) small(kg float64) string { return page.Number(kg*r.perKG, 1) }

func lightOrHeavy(ratio float64) string {
	if ratio > 1 {
		return "heavy"
	}
	return "light"
}

// Verdict is the sentence that a boat can use: how far a tape method has been from
// the scale, with the interval of it, and how near half of the fish were.
func (r *scaleReport) verdict(c queries.ScaleCheck, who string) string {
	if c.Ratio == nil || c.MedianAbsKG == nil {
		return fmt.Sprintf("%s was compared with a scale on %s: too few to say how far it is off.", who,
			page.Plural(c.N, "fish", "fish"))
	}
	half := fmt.Sprintf("half of the fish within %s %s", r.small(*c.MedianAbsKG), r.weight)
	if c.RatioLo == nil {
		return fmt.Sprintf("%s has read %s %% %s on one fish.", who, off(*c.Ratio), lightOrHeavy(*c.Ratio))
	}
	lo, hi := *c.RatioLo, *c.RatioHi
	if lo <= 1 && hi >= 1 {
		return fmt.Sprintf("%s matches the scale on average: %s %% %s on %d fish (%s %% light to %s %% heavy); %s.",
			who, off(*c.Ratio), lightOrHeavy(*c.Ratio), c.N, off(lo), off(hi), half)
	}
	near, far := hi, lo
	if lo > 1 {
		near, far = lo, hi
	}
	return fmt.Sprintf("%s has read %s %% %s (%s to %s) on %d fish; %s.", who, off(*c.Ratio), lightOrHeavy(*c.Ratio),
		off(near), off(far), c.N, half)
}

// off is a ratio's distance from 1 in per cent.
func off(ratio float64) string { return page.Number(100*math.Abs(1-ratio), 1) }

func (r *scaleReport) verdictSection() (page.Section, error) {
	s := page.Section{ID: "verdict", Heading: "What the tape reads"}
	if len(r.used) == 0 {
		s.Sentences = []string{"No fish of this season has both a tape and a scale: how far the tape is off cannot " +
			"be told.",
			"Five fish of a species with length, girth and a scale weight give the boat a divisor of its own, with " +
				"an interval; ten or more tell how far the tape is off."}
		s.Notes = r.leftOutNotes()
		return s, nil
	}
	c := r.tape()
	who := "Your tape, by the girth rule,"
	if c.Method == queries.ByLength {
		who = "Your tape, by length alone,"
	}
	s.Sentences = []string{r.answer(c), r.verdict(c, who)}
	if own := r.check(queries.ByOwn); own.N > 0 {
		s.Sentences = append(s.Sentences, r.verdict(own, "With the boat's own divisor, each fish weighed by that of "+
			"the others, it"))
	}
	s.Sentences = append(s.Sentences, r.bySpecies(c.Method)...)
	chart, err := r.scatter(c)
	s.Chart, s.Table, s.Tables = chart, r.againstTable(c), []*page.Table{r.factorTable(c), r.speciesTable()}
	s.Notes = append([]string{
		"Light is under the scale. The per cent is the geometric mean over the fish with its 95 % interval; errors " +
			"of a weight grow with the fish.",
		"The dashed lines hold 95 in 100 fish: the limits of agreement as factors of the weight (Bland and Altman " +
			"1986, 1999). Numbers mark the worst misses, explained below.",
	}, r.leftOutNotes()...)
	return s, err
}

// trusted is how far off in per cent, on average, a tape is trusted. A choice.
const trusted = 5

// answer is what to do: trust the tape or divide by the boat's own number, and how near
// half of the fish then are.
func (r *scaleReport) answer(c queries.ScaleCheck) string {
	if c.Ratio == nil || c.RatioLo == nil || c.RatioHi == nil || c.MedianAbsKG == nil {
		return "Too few fish to say whether to trust the tape."
	}
	within := func(kg float64) string { return r.small(kg) + " " + r.weight }
	head := "Trust the tape"
	if 100*math.Abs(1-*c.Ratio) > trusted {
		head = "Do not trust the tape as it is"
	}
	divisors := r.divisors()
	own := r.check(queries.ByOwn)
	if len(divisors) == 0 || own.MedianAbsKG == nil {
		return fmt.Sprintf("%s: it was within %s of the scale on half the fish.", head, within(*c.MedianAbsKG))
	}
	word := "your own divisor"
	if len(divisors) > 1 {
		word = "your own divisors"
	}
	return fmt.Sprintf("%s; with %s, %s, it is within %s on half the fish.", head, word,
		sentence.List(divisors), within(*own.MedianAbsKG))
}

// divisors are the boat's own numbers that are in use, by species.
func (r *scaleReport) divisors() []string {
	var out []string
	for _, o := range r.Own {
		if o.Used {
			out = append(out, page.Number(divisor(o.K), 0)+" for "+withinSentence(r.speciesName(o.Species)))
		}
	}
	slices.Sort(out)
	return out
}

// bySpecies is a sentence for each species and way of measuring with 5 fish or more,
// where the season has several.
func (r *scaleReport) bySpecies(method string) []string {
	var out []string
	groups := r.groups()
	for _, g := range groups {
		if c := queries.CheckMethod(g.fish, method); len(groups) > 1 && c.N >= 5 && c.RatioLo != nil {
			out = append(out, r.verdict(c, g.words()+": the tape"))
		}
	}
	return out
}

// scaleGroup is the fish of one species measured in one way.
type scaleGroup struct {
	species, kind string
	fish          []queries.ScaleFish
}

func (g scaleGroup) words() string {
	if g.kind == "" {
		return g.species + ", length kind not logged"
	}
	return g.species + ", " + kindWords(g.kind)
}

// kindWords is a length kind as a captain says it.
func kindWords(kind string) string {
	words := map[string]string{"FL": "straight fork length", "CFL": "curved fork length", "TL": "total length",
		"LJFL": "lower jaw to fork", "EFL": "eye to fork", "PCL": "pre-caudal length", "PCKL": "pectoral fin to keel"}
	if w, ok := words[kind]; ok {
		return w
	}
	return kind
}

// groups are the compared fish by species and length kind, most fish first.
func (r *scaleReport) groups() []scaleGroup {
	var out []scaleGroup
	for _, f := range r.used {
		species, kind := text(f.Name), text(f.LengthKind)
		if species == "" {
			species = "species not logged"
		}
		at := slices.IndexFunc(out, func(g scaleGroup) bool { return g.species == species && g.kind == kind })
		if at < 0 {
			at = len(out)
			out = append(out, scaleGroup{species: species, kind: kind})
		}
		out[at].fish = append(out[at].fish, f)
	}
	slices.SortStableFunc(out, func(a, b scaleGroup) int {
		if len(a.fish) != len(b.fish) {
			return len(b.fish) - len(a.fish)
		}
		return strings.Compare(a.species+a.kind, b.species+b.kind)
	})
	return out
}

// speciesTable is every method by species and way of measuring.
func (r *scaleReport) speciesTable() *page.Table {
	t := &page.Table{Caption: "every method by species and way of measuring",
		Columns: append([]page.Column{{Head: "Fish"}, {Head: "Method"}}, r.checkColumns()...)}
	for _, g := range r.groups() {
		for _, method := range queries.ScaleMethods() {
			if c := queries.CheckMethod(g.fish, method); c.N > 0 {
				t.Rows = append(t.Rows, page.Row{Thin: c.N < 5,
					Cells: append([]page.Cell{page.Words(g.words()), page.Words(queries.WeighedBy(c.Method))},
						r.checkCells(c)...)})
			}
		}
	}
	return t
}

// leftOutNotes count the fish that were converted first and those left out, and say
// why.
func (r *scaleReport) leftOutNotes() []string {
	var out []string
	converted, unsaid := 0, 0
	reasons := map[string]int{}
	for _, f := range r.Fish {
		switch state := text(f.WeightState); {
		case f.LeftOut != nil:
			reasons[*f.LeftOut]++
		case state == "":
			unsaid++
		case state != "round":
			converted++
		}
	}
	if converted > 0 {
		out = append(out, fmt.Sprintf("%s not whole on the scale: the weight was converted to round weight by a "+
			"published factor first.", wasWere(converted)))
	}
	if unsaid > 0 {
		out = append(out, fmt.Sprintf("%s taken as whole, because the log does not say: a bled or gutted fish among "+
			"them would make the tape look heavy.", wasWere(unsaid)))
	}
	for _, why := range sorted(reasons) {
		out = append(out, fmt.Sprintf("%s left out: %s.", wasWere(reasons[why]), why))
	}
	return out
}

func wasWere(n int) string {
	if n == 1 {
		return "1 fish was"
	}
	return fmt.Sprintf("%d fish were", n)
}

func sorted(m map[string]int) []string {
	var keys []string
	for k := range m {
		keys = append(keys, k)
	}
	slices.Sort(keys)
	return keys
}
