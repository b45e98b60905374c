package main

import (
	"errors"
	"fmt"
	"slices"

	"wakeledger/pipeline/estimate"
	"wakeledger/pipeline/species"
	"wakeledger/pipeline/unit"
)

// measuredFish is the fish of the command line.
type measuredFish struct {
	fish estimate.Fish
	name string          // what the species was understood as
	kind species.Species // zero where none is named
	us   bool            // shown in pounds and inches
}

// weight and length write a figure in the units shown.
func (m measuredFish) weight(kg float64) string {
	if m.us {
		return fmt.Sprintf("%.1f lb", kg/unit.KgPerPound)
	}
	return fmt.Sprintf("%.1f kg", kg)
}

func (m measuredFish) length(cm float64) string {
	if m.us {
		return fmt.Sprintf("%.0f in", cm/unit.CmPerInch)
	}
	return fmt.Sprintf("%.0f cm", cm)
}

// doubts are the reasons to doubt what was measured.
func (m measuredFish) doubts(cat *estimate.Catalogue) []estimate.Doubt {
	got := estimate.MeasuresOf(m.fish, cat.Weigh(m.fish, nil))
	got.Name, got.LongestCM, got.HeaviestKG = m.kind.Name, m.kind.MaxLengthCM, m.kind.MaxWeightKG
	return got.Doubts()
}

// read reads the flags; its errors are of usage.
func (w *weighFlags) read() (measuredFish, error) {
	m := measuredFish{fish: estimate.Fish{Stock: w.stock, LengthKind: w.kind,
		WeightState: w.state, Certified: w.certified}}
	switch {
	case w.units != "" && !slices.Contains(unitNames, w.units):
		return m, oneWord("units", w.units, unitNames...)
	case !estimate.KnowsLengthKind(w.kind):
		return m, usage("--length-kind %q is not known. %sFL is straight to the fork, CFL the same along the body, "+
			"TL to the tip of the tail; or LJFL, EFL, PCL, PCKL", w.kind, didYouMean(w.kind, lengthKinds))
	case !estimate.KnowsWeightState(w.state):
		return m, oneWord("weight-state", w.state, weightStates...)
	}
	var err error
	if m.fish.Ocean, err = species.ParseOcean(w.ocean); err != nil {
		return m, notOne("--ocean", w.ocean, species.Oceans())
	}
	if err := w.readSpecies(&m); err != nil {
		return m, err
	}
	return m, w.readMeasures(&m)
}

var (
	lengthKinds  = []string{"FL", "CFL", "TL", "LJFL", "EFL", "PCL", "PCKL"}
	weightStates = []string{"round", "bled", "gutted", "gilled-gutted", "dressed"}
)

// measure is one of the flags that take a figure with its unit.
type measure struct {
	flag, text string
	dim        unit.Dimension
	to         unit.Unit
	into       *float64
	what, such string  // in words, and examples
	most       float64 // no fish has more
	record     string  // of what is known
}

const (
	suchWeight = "187lb or 85kg"
	suchLength = `74in, 6'2" or 188cm`
	suchGirth  = "55in or 140cm"
)

// readMeasures reads length, girth and scale. The units shown are those of the scale,
// else of the length, else of the girth, unless --units names them.
func (w *weighFlags) readMeasures(m *measuredFish) error {
	longest, heaviest := mostLikely(m.kind)
	long, heavy := recordOf(m.kind, m.kind.MaxLengthCM, "cm long"), recordOf(m.kind, m.kind.MaxWeightKG, "kg")
	m.us = w.units == "us"
	settled := w.units != ""
	for _, q := range []measure{
		{"scale", w.scale, unit.Mass, unit.Kilogram, &m.fish.ScaleKG, "a weight", suchWeight, heaviest, heavy},
		{"length", w.length, unit.Length, unit.Centimetre, &m.fish.LengthCM, "a length", suchLength, longest, long},
		{"girth", w.girth, unit.Length, unit.Centimetre, &m.fish.GirthCM, "a girth", suchGirth, longest, long},
	} {
		if q.text == "" {
			continue
		}
		given, err := q.read()
		if err != nil {
			return err
		}
		if !settled {
			m.us, settled = isUS(given), true
		}
	}
	return nil
}

// Fish are refused over this share of the record: a slip of unit is, a new record is not.
const beyondRecord = 1.25

// mostLikely is the length (cm) and weight (kg) that no fish of a species has, or no fish
// at all that is trolled for (500 cm and 1,000 kg on record, FishBase 06/2018).
func mostLikely(s species.Species) (longest, heaviest float64) {
	longest, heaviest = 500*beyondRecord, 1000*beyondRecord
	if s.MaxLengthCM > 0 {
		longest = s.MaxLengthCM * beyondRecord
	}
	if s.MaxWeightKG > 0 {
		heaviest = s.MaxWeightKG * beyondRecord
	}
	return longest, heaviest
}

func recordOf(s species.Species, most float64, unit string) string {
	if most == 0 {
		return ""
	}
	return fmt.Sprintf(" (the largest %s on record: %.0f %s)", s.Name, most, unit)
}

// leastCM and leastKG are less than any fish that is trolled for.
const (
	leastCM = 5
	leastKG = 0.01
)

// read reads the figure and refuses one that no fish has.
func (q measure) read() (unit.Unit, error) {
	v, err := unit.ParseQuantity(q.text, q.dim, "", unit.MarkUnknown)
	if err == nil {
		*q.into, err = v.In(q.to)
	}
	least := float64(leastCM)
	if q.dim == unit.Mass {
		least = leastKG
	}
	switch {
	case errors.Is(err, unit.ErrNoUnit):
		return "", usage("--%s %s: %s what? Write the unit with it, such as %s", q.flag, q.text, q.text, q.such)
	case err != nil:
		return "", usage("--%s %s: wanted %s as one number with its unit, such as %s", q.flag, q.text, q.what, q.such)
	case *q.into < least:
		return "", usage("--%s %s is too small for a fish: wanted %s such as %s", q.flag, q.text, q.what, q.such)
	case *q.into > q.most:
		return "", usage("--%s %s is too much for any fish%s: is the unit right?", q.flag, q.text, q.record)
	}
	return v.Unit, nil
}

// isUS tells whether a unit is one of feet and pounds.
func isUS(u unit.Unit) bool {
	return u == unit.Inch || u == unit.Foot || u == unit.Yard || u == unit.Pound || u == unit.Ounce
}

// readSpecies finds the species that --species means.
func (w *weighFlags) readSpecies(m *measuredFish) error {
	if w.species == "" {
		m.name = "a fish of no named species"
		return nil
	}
	list, err := species.Default()
	if err != nil {
		return err
	}
	got := list.Find(w.species, m.fish.Ocean)
	switch {
	case got.Found:
		m.kind, m.fish.Species = got.Species, got.Species.Code
		m.name = fmt.Sprintf("%s, %s (%s)", got.Species.Name, got.Species.Scientific, got.Species.Code)
		return nil
	case len(got.Candidates) > 0:
		return usage("--species %q can be several: give %s, or --ocean", w.species, namesOf(list, got.Candidates))
	}
	return usage("--species %q is not known. %s'wakeledger weigh --list' shows those with a relation", w.species,
		didYouMean(w.species, speciesNames(list)))
}
