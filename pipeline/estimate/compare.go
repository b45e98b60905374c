package estimate

import (
	"fmt"
	"math"
	"strings"
)

// curvedNote says by how much a weight that goes with the exponent b of the length
// comes out high because a length along the body was used as a straight one. It
// takes the species' own published ratio of the two, else that of Atlantic bluefin,
// which is from memory and says so. It is empty for a length that is not curved or
// was corrected: straight is then not the length as measured.
func (c *Catalogue) curvedNote(f Fish, straight, b float64) []string {
	if lengthKind(f.LengthKind) != CurvedFork || straight != f.LengthCM {
		return nil
	}
	v, found := c.curved(f.Species)
	if !found {
		v, found = c.curved("BFT")
	}
	s, ok := v.forward(f.LengthCM)
	if !found || !ok {
		return nil
	}
	ratio := f.LengthCM / s
	how := "seen in a table"
	if v.FromMemory() {
		how = "from memory"
	}
	return []string{fmt.Sprintf("A curved length was taken as straight: on %s it is some %.0f %% longer (%s; %s), "+
		"which makes this weight some %.0f %% too high.",
		v.Species, 100*(ratio-1), v.Source, how, 100*(math.Pow(ratio, b)-1))}
}

// curved is the conversion of a species' curved to its straight fork length that
// is more than taking the two as the same.
func (c *Catalogue) curved(species string) (Conversion, bool) {
	for _, v := range c.conversions {
		if v.Species == species && v.What == "length" && v.From == CurvedFork &&
			v.To == ForkLength && (v.C != 0 || v.M != 1) {
			return v, true
		}
	}
	return Conversion{}, false
}

// Compare says in sentences how far the estimates of one fish, as Weigh gave them,
// are apart: the girth rule from the chosen relation, and the published relations of
// the species, those from memory left out, from each other.
func Compare(es []Estimate) []string {
	var girth *Estimate
	var lengths []Estimate
	for i, e := range es {
		switch {
		case e.Method == LengthAndGirth:
			girth = &es[i]
		case e.Method == LengthAlone && !e.fromMemory():
			lengths = append(lengths, e)
		}
	}
	var out []string
	if girth != nil && len(lengths) > 0 {
		out = append(out, fmt.Sprintf("The girth rule gives %s length alone (%s).",
			apart(girth.WeightKG, lengths[0].WeightKG), lengths[0].Relation))
	}
	if len(lengths) > 1 {
		lo, hi := lengths[0], lengths[0]
		for _, e := range lengths {
			if e.WeightKG < lo.WeightKG {
				lo = e
			}
			if e.WeightKG > hi.WeightKG {
				hi = e
			}
		}
		out = append(out, fmt.Sprintf("The %d published relations for this species lie up to %.0f %% apart at this "+
			"length: %s gives the least, %s the most. None of them is truer than another.",
			len(lengths), 100*(hi.WeightKG/lo.WeightKG-1), lo.Relation, hi.Relation))
	}
	return out
}

// fromMemory tells whether a relation's estimate rests on coefficients from memory.
func (e Estimate) fromMemory() bool {
	for _, n := range e.Notes {
		if strings.Contains(n, "from memory and were not checked") {
			return true
		}
	}
	return false
}

// apart is "5 % more than" or "5 % less than".
func apart(a, b float64) string {
	p := 100 * (a/b - 1)
	if p < 0 {
		return fmt.Sprintf("%.0f %% less than", -p)
	}
	return fmt.Sprintf("%.0f %% more than", p)
}

// Choice is the relation that weighs f by its length alone and a sentence that says
// why that one; ok is false where no relation can.
func (c *Catalogue) Choice(f Fish) (r Relation, why string, ok bool) {
	f.Species = strings.ToUpper(strings.TrimSpace(f.Species))
	f.LengthCM = logged(f.LengthCM)
	chosen := c.choose(f)
	if chosen == nil {
		return Relation{}, "", false
	}
	ocean := oceanWord(f.Ocean)
	switch {
	case chosen.named(f.Stock):
		why = "it is the one asked for"
	case ocean != "" && oceanFit(chosen.Ocean, ocean) > 0:
		why = "it is the default for the " + oceanName(ocean)
	case ocean != "":
		why = "there is none for the " + oceanName(ocean)
	case c.hasOtherStock(*chosen):
		why = "no ocean is named, and it stands first of several"
	default:
		why = "it is the only one for the species"
	}
	return *chosen, why, true
}

// Stocks lists what Fish.Stock may name for a species: the identifiers of its
// relations that were checked against a text, in catalogue order.
func (c *Catalogue) Stocks(species string) []string {
	var out []string
	for _, r := range c.relations {
		if r.Species == strings.ToUpper(strings.TrimSpace(species)) && !r.FromMemory() {
			out = append(out, r.ID)
		}
	}
	return out
}

// HasStock tells whether stock names a checked relation of the species.
func (c *Catalogue) HasStock(species, stock string) bool {
	for _, r := range c.relations {
		if r.Species == strings.ToUpper(strings.TrimSpace(species)) && r.named(stock) {
			return true
		}
	}
	return false
}

// named tells whether stock means the relation, by its identifier or its stock.
func (r Relation) named(stock string) bool {
	stock = strings.TrimSpace(stock)
	return stock != "" && !r.FromMemory() && (strings.EqualFold(stock, r.Stock) || strings.EqualFold(stock, r.ID))
}
