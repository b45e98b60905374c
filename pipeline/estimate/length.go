package estimate

import (
	"fmt"
	"math"
	"slices"
	"strings"
)

// byLength is the chosen relation's weight, then those of the species' other
// relations: the fish's ocean first, those from memory last. None stands without a
// chosen one: a relation of males, say, is no answer for any fish.
func (c *Catalogue) byLength(f Fish) ([]Estimate, []string) {
	chosen := c.choose(f)
	var why reasons
	var out []Estimate
	rank := map[string]int{}
	memoryOnly := true
	for i := range c.relations {
		r := &c.relations[i]
		if r.Species != f.Species {
			continue
		}
		e, reason := c.byRelation(f, *r)
		if reason != "" {
			why.add(reason, r.ID)
			continue
		}
		if r == chosen {
			e.Notes = append(c.choiceNotes(f, *r), e.Notes...)
		}
		rank[r.ID] = c.rank(f, r, chosen)
		memoryOnly = memoryOnly && r.FromMemory()
		out = append(out, e)
	}
	unused := why.sentences()
	switch {
	case len(out) == 0 && len(unused) == 0 && f.Species != "":
		return nil, []string{"No published relation of length and weight for " + f.Species + " is at hand."}
	case memoryOnly && len(out) > 0:
		return nil, append(unused, "For this species only figures from memory are at hand: they are not used.")
	case chosen == nil && len(out) > 0:
		return nil, append(unused, "For a fish measured so, only relations of one sex or of other stocks are at hand ("+
			strings.Join(ids(out), ", ")+
			"): name the stock to use one.")
	}
	slices.SortStableFunc(out, func(a, b Estimate) int { return rank[b.Relation] - rank[a.Relation] })
	return out, unused
}

// ids are the relations of estimates.
func ids(es []Estimate) []string {
	var out []string
	for _, e := range es {
		out = append(out, e.Relation)
	}
	return out
}

// rank orders the relations of a species for one fish, best highest.
func (c *Catalogue) rank(f Fish, r, chosen *Relation) int {
	switch {
	case r == chosen:
		return 10
	case r.FromMemory():
		return -1
	}
	return oceanFit(r.Ocean, oceanWord(f.Ocean))
}

// choose is the relation that fits the fish best among those whose length kind
// can be reached: one that the fish's Stock names, else the default that fits its
// ocean, the earlier in the catalogue first. It is nil where there is none.
func (c *Catalogue) choose(f Fish) *Relation {
	var best *Relation
	score := -1
	for i := range c.relations {
		r := &c.relations[i]
		named := r.named(f.Stock)
		if r.Species != f.Species || !r.Default && !named {
			continue
		}
		if _, reason := c.byRelation(f, *r); reason != "" {
			continue
		}
		s := oceanFit(r.Ocean, oceanWord(f.Ocean))
		if named {
			s += 10
		}
		if s > score {
			best, score = r, s
		}
	}
	return best
}

// choiceNotes says what the choice of a relation rests on, where it is not plain.
func (c *Catalogue) choiceNotes(f Fish, r Relation) []string {
	ocean := oceanWord(f.Ocean)
	switch {
	case ocean == "" && f.Stock == "" && c.hasOtherStock(r):
		return []string{"No ocean is named, and the species has relations for several: the one for " + r.Stock +
			" was taken."}
	case ocean != "" && oceanFit(r.Ocean, ocean) == 0:
		return []string{fmt.Sprintf("No relation for the %s is at hand: the one for %s was taken.", oceanName(ocean),
			r.Stock)}
	}
	return nil
}

// hasOtherStock tells whether the species has a default for another ocean.
func (c *Catalogue) hasOtherStock(r Relation) bool {
	for _, o := range c.relations {
		if o.Species == r.Species && o.Default && o.Ocean != r.Ocean {
			return true
		}
	}
	return false
}

// byRelation is the fish's weight by one relation, or the reason why there is none.
func (c *Catalogue) byRelation(f Fish, r Relation) (Estimate, string) {
	m, ok := c.toKind(f, r.LengthKind)
	if !ok {
		return Estimate{}, fmt.Sprintf("it takes %s, and no published conversion from %s was found",
			kindName(r.LengthKind), kindName(m.kind))
	}
	factor, note, ok := c.toRound(r.Species, r.Ocean, r.WeightState)
	if !ok {
		return Estimate{}, fmt.Sprintf("it gives %s weight, and no published factor turns that into round weight",
			stateName(r.WeightState))
	}
	e := Estimate{Method: LengthAlone, WeightKG: factor * r.A * math.Pow(m.cm, r.B), Relation: r.ID,
		Source: r.Source(), Notes: m.notes}
	if note != "" {
		e.Notes = append(e.Notes, note)
	}
	e.Notes = append(e.Notes, c.curvedNote(f, m.cm, r.B)...)
	e.stretched(m.cm, outside(m.cm, r.MinCM, r.MaxCM, "the fish studied"))
	e.Notes = append(e.Notes, r.notes()...)
	if r.ResidualS > 0 {
		e.LoKG, e.HiKG = interval(e.WeightKG, r.ResidualS, r.N, r.N-2)
		e.HasInterval = true
	}
	return e, ""
}

const noSpread = "No interval: the source gives no spread. Five fish of this species with tape and scale give the " +
	"boat its own."

// notes says what a reader must know of a relation before leaning on it.
func (r Relation) notes() []string {
	out := []string{"The relation is for " + r.Stock + "."}
	switch {
	case r.FromMemory():
		out = append(out, "The figures are from memory and were not checked against the study.")
	case strings.HasPrefix(r.Seen, SeenQuoted):
		out = append(out, "The figures were "+r.Seen+"; the study itself was not at hand.")
	}
	if r.Note != "" {
		out = append(out, r.Note)
	}
	if r.ResidualS == 0 {
		return append(out, noSpread)
	}
	return append(out, fmt.Sprintf("The 90 %% interval is from the published residual spread (%.3f on the log scale).",
		r.ResidualS))
}

// reasons gathers the relations that gave no weight, by the reason.
type reasons struct {
	order []string
	ids   map[string][]string
}

func (r *reasons) add(why, id string) {
	if r.ids == nil {
		r.ids = map[string][]string{}
	}
	if len(r.ids[why]) == 0 {
		r.order = append(r.order, why)
	}
	r.ids[why] = append(r.ids[why], id)
}

// sentences is one sentence a reason, naming its relations.
func (r *reasons) sentences() []string {
	var out []string
	for _, why := range r.order {
		out = append(out, fmt.Sprintf("Not used: %s, because %s.", strings.Join(r.ids[why], ", "), why))
	}
	return out
}
