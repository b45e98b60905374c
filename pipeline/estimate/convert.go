package estimate

import (
	"fmt"
	"math"

	"wakeledger/pipeline/sentence"
)

// measure is a length of a known kind, with what was done to reach it.
type measure struct {
	cm    float64
	kind  string
	notes []string
}

// forward applies a conversion to a measure of From; ok is false where the
// result is no length.
func (v Conversion) forward(x float64) (float64, bool) {
	y := v.C + v.M*x
	if v.Form == "power" {
		y = v.C * math.Pow(x, v.M)
	}
	return y, logged(y) > 0
}

// inverse solves a conversion for From.
func (v Conversion) inverse(y float64) (float64, bool) {
	x := (y - v.C) / v.M
	if v.Form == "power" {
		x = math.Pow(y/v.C, 1/v.M)
	}
	return x, logged(x) > 0
}

// toKind turns the logged length of f into one of kind want: as it is, or by at
// most two published conversions. ok is false where no conversion leads there. A
// length of no logged kind is taken as straight, to the fork, and from the lower
// jaw of a billfish: never as an eye-fork or a total length, which would make the
// fish a third heavier or lighter.
func (c *Catalogue) toKind(f Fish, want string) (measure, bool) {
	m := measure{cm: f.LengthCM, kind: lengthKind(f.LengthKind)}
	if m.kind == "" {
		m.kind = ForkLength
		if want == LowerJaw || want == EyeFork {
			m.kind = LowerJaw
		}
		m.notes = []string{"The length kind is not logged: it was taken as " + kindName(m.kind) + "."}
	}
	if sameKind(m.kind, want) {
		return m, true
	}
	steps := c.lengthSteps(f.Species, m)
	for _, s := range steps {
		if sameKind(s.kind, want) {
			return s, true
		}
	}
	for _, s := range steps {
		for _, t := range c.lengthSteps(f.Species, s) {
			if sameKind(t.kind, want) {
				return t, true
			}
		}
	}
	return m, false
}

// lengthSteps are the lengths that one published conversion of the species leads
// to, in catalogue order; one that runs the other way is solved back.
func (c *Catalogue) lengthSteps(species string, m measure) []measure {
	var out []measure
	for _, v := range c.conversions {
		if v.Species != species || v.What != "length" || v.FromMemory() {
			continue
		}
		if sameKind(v.From, m.kind) {
			if y, ok := v.forward(m.cm); ok {
				out = append(out, m.step(y, v.To, v, ""))
			}
		}
		if sameKind(v.To, m.kind) {
			if x, ok := v.inverse(m.cm); ok {
				out = append(out, m.step(x, v.From, v, ", solved the other way round"))
			}
		}
	}
	return out
}

// step is m after one conversion, with its note.
func (m measure) step(cmTo float64, kind string, v Conversion, how string) measure {
	note := fmt.Sprintf("%s %s was converted to %s %s (%s%s).",
		sentence.Capital(kindName(m.kind)), cm(m.cm), kindName(kind), cm(cmTo), cite(v.Source, v.Document), how)
	notes := append(append([]string{}, m.notes...), note)
	if how == "" && (v.MinCM > 0 && m.cm < v.MinCM || v.MaxCM > 0 && m.cm > v.MaxCM) {
		notes = append(notes, fmt.Sprintf("That conversion was measured on fish of %s to %s only.", cm(v.MinCM),
			cm(v.MaxCM)))
	}
	if v.Note != "" {
		notes = append(notes, v.Note)
	}
	return measure{cmTo, kind, notes}
}

// FromMemory tells whether nobody has checked the row against a text.
func (v Conversion) FromMemory() bool { return fromMemory(v.Seen) }

// bledNote goes with a bled weight that stands as it was read.
const bledNote = "The fish was bled. No factor for its blood is published for this species, so the weight stands as " +
	"read, a little low: " +
	"sablefish lost 1.7 % of their weight with their blood (NOAA Technical Memorandum NMFS-AFSC-173, abstract), " +
	"Pacific cod some 1 % " +
	"(Gasper, Watson and Mondragon 2011, doi 10.7289/V5/F/AKR-10, abstract)."

// toRound is the factor that turns a weight in state into round weight, with the
// sentence to note. A bled weight without a factor stands as it is. ok is false where no
// factor is published for the species.
func (c *Catalogue) toRound(species, ocean, state string) (factor float64, note string, ok bool) {
	if state == Round {
		return 1, "", true
	}
	v, found := c.factor(species, ocean, state)
	loose := ""
	if !found && state == Gutted {
		v, found = c.factor(species, ocean, GilledGutted)
		loose = "The factor is for gilled and gutted fish: if the gills were left in, the weight comes out a little " +
			"high."
	}
	if !found && state == Bled {
		return 1, bledNote, true
	}
	if !found {
		return 0, "", false
	}
	note = fmt.Sprintf("The %s weight was multiplied by %g to give round weight (%s).", stateName(state),
		v.M, cite(v.Source, v.Document))
	for _, more := range []string{loose, v.Note} {
		if more != "" {
			note += " " + more
		}
	}
	return v.M, note, true
}

// factor is the weight factor of a species, the one for the fish's ocean before
// the one for any ocean.
func (c *Catalogue) factor(species, ocean, state string) (Conversion, bool) {
	var best Conversion
	found := false
	for _, v := range c.conversions {
		if v.Species != species || v.What != "weight" || v.From != state || v.FromMemory() {
			continue
		}
		local := v.Ocean != "" && oceanFit(v.Ocean, oceanWord(ocean)) >= 2
		if local {
			return v, true
		}
		if v.Ocean == "" && !found {
			best, found = v, true
		}
	}
	return best, found
}
