package estimate

import (
	"bytes"
	_ "embed"
	"errors"
	"fmt"
	"io"
	"regexp"
	"slices"
	"strings"
)

//go:embed relations.csv
var relationsCSV []byte

//go:embed conversions.csv
var conversionsCSV []byte

var relationColumns = []string{"id", "species", "sex", "stock", "ocean", "a", "b", "length_kind", "weight_state",
	"n", "min_cm", "max_cm", "residual_s", "default", "citation", "document", "seen", "note"}

var conversionColumns = []string{"species", "ocean", "what", "from", "to", "form", "c", "m",
	"n", "min_cm", "max_cm", "source", "document", "seen", "note"}

var code = regexp.MustCompile(`^[A-Z]{3}$`)

// Catalogue holds the published relations and conversions.
type Catalogue struct {
	relations   []Relation
	conversions []Conversion
}

// Default returns the embedded catalogue. It fails only if the embedded tables
// are at fault, with every fault found.
func Default() (*Catalogue, error) {
	return Parse(bytes.NewReader(relationsCSV), bytes.NewReader(conversionsCSV))
}

// Parse reads a catalogue from two CSV files in the layout of the embedded ones.
// The error names file, row and column of every cell at fault.
func Parse(relations, conversions io.Reader) (*Catalogue, error) {
	rt, err := readTable(relations, "relations.csv", relationColumns)
	if err != nil {
		return nil, err
	}
	ct, err := readTable(conversions, "conversions.csv", conversionColumns)
	if err != nil {
		return nil, err
	}
	c := &Catalogue{}
	var errs []error
	ids := map[string]bool{}
	for i := range rt.rows {
		cur := &cursor{table: rt, row: i}
		r := parseRelation(cur)
		if ids[r.ID] {
			cur.fail("id", "%q stands twice", r.ID)
		}
		ids[r.ID] = true
		c.relations, errs = append(c.relations, r), append(errs, cur.errs...)
	}
	for i := range ct.rows {
		cur := &cursor{table: ct, row: i}
		c.conversions = append(c.conversions, parseConversion(cur))
		errs = append(errs, cur.errs...)
	}
	if len(errs) > 0 {
		return nil, fmt.Errorf("reading the catalogue: %w", errors.Join(errs...))
	}
	return c, nil
}

// Relations returns all relations in catalogue order.
func (c *Catalogue) Relations() []Relation { return slices.Clone(c.relations) }

// Conversions returns all length and weight conversions in catalogue order.
func (c *Catalogue) Conversions() []Conversion { return slices.Clone(c.conversions) }

func parseRelation(c *cursor) Relation {
	r := Relation{
		ID: c.need("id"), Species: parseCode(c), Sex: c.oneOf("sex", "both", "female", "male"),
		Stock: c.need("stock"), Ocean: parseOceans(c), A: c.positive("a"), B: c.positive("b"),
		LengthKind:  c.oneOf("length_kind", ForkLength, CurvedFork, TotalLength, LowerJaw, EyeFork),
		WeightState: c.oneOf("weight_state", Round, Bled, Gutted, GilledGutted, Dressed),
		N:           c.count("n"), MinCM: c.optional("min_cm"), MaxCM: c.optional("max_cm"),
		ResidualS: c.optional("residual_s"), Default: c.oneOf("default", "yes", "no") == "yes",
		Citation: c.need("citation"), Document: c.text("document"), Seen: parseSeen(c), Note: c.text("note"),
	}
	checkRange(c, r.MinCM, r.MaxCM)
	if r.B < 2 || r.B > 4.2 {
		c.fail("b", "%g is no exponent of a length-weight relation", r.B)
	}
	if r.ResidualS >= 1 {
		c.fail("residual_s", "%g is no standard deviation of a log weight", r.ResidualS)
	}
	if r.Default && r.FromMemory() {
		c.fail("default", "a relation from memory cannot be a default")
	}
	return r
}

func parseConversion(c *cursor) Conversion {
	v := Conversion{
		Species: parseCode(c), What: c.oneOf("what", "length", "weight"), Form: c.oneOf("form", "linear", "power"),
		C: c.number("c"), M: c.positive("m"), N: c.count("n"), MinCM: c.optional("min_cm"), MaxCM: c.optional("max_cm"),
		Source: c.need("source"), Document: c.text("document"), Seen: parseSeen(c), Note: c.text("note"),
	}
	if c.text("ocean") != "" {
		v.Ocean = parseOceans(c)
	}
	kinds := []string{ForkLength, CurvedFork, TotalLength, LowerJaw, EyeFork, PreCaudal, PectoralKL, PectoralCFL}
	if v.What == "weight" {
		kinds = []string{Round, Bled, Gutted, GilledGutted, Dressed}
		if v.C != 0 || v.Form != "linear" || v.M < 1 {
			c.fail("m", "a weight factor is linear, without constant and at least 1")
		}
	}
	v.From, v.To = c.oneOf("from", kinds...), c.oneOf("to", kinds...)
	if v.Form == "power" && v.C <= 0 {
		c.fail("c", "a power needs a factor above zero")
	}
	checkRange(c, v.MinCM, v.MaxCM)
	return v
}

func parseCode(c *cursor) string {
	s := c.need("species")
	if !code.MatchString(s) {
		c.fail("species", "%q is not a code of three capitals", s)
	}
	return s
}

func parseOceans(c *cursor) string {
	s := c.need("ocean")
	for _, o := range strings.Split(s, ";") {
		if !slices.Contains(oceans, o) {
			c.fail("ocean", "%q is none of %q", o, oceans)
		}
	}
	return s
}

func parseSeen(c *cursor) string {
	s := c.need("seen")
	for _, way := range []string{SeenSource, SeenQuoted, SeenMemory} {
		if strings.HasPrefix(s, way) {
			return s
		}
	}
	c.fail("seen", "%q begins with none of %q, %q, %q", s, SeenSource, SeenQuoted, SeenMemory)
	return s
}

func checkRange(c *cursor, lo, hi float64) {
	if lo > 0 && hi > 0 && lo >= hi {
		c.fail("max_cm", "%g is not above min_cm %g", hi, lo)
	}
}

// FromMemory tells whether nobody has checked the coefficients against a text.
func (r Relation) FromMemory() bool { return fromMemory(r.Seen) }

func fromMemory(seen string) bool { return strings.HasPrefix(seen, SeenMemory) }

// Source is the citation with its document number.
func (r Relation) Source() string { return cite(r.Citation, r.Document) }

// cite joins a citation and its document number.
func cite(citation, document string) string {
	if document == "" {
		return citation
	}
	return citation + ", " + document
}
