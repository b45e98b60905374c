package estimate

import "fmt"

// Measures is what is known of one fish that its doubts are told from. Zero is not known.
type Measures struct {
	Name       string  // of the species, in words
	LongestCM  float64 // the largest of the species on record
	HeaviestKG float64

	LengthCM, GirthCM, ScaleKG float64 // as logged

	RoundKG    float64 // the scale's weight as round weight
	TapeKG     float64 // by the best method of the tape that is not the boat's own
	TapeMethod string
}

// Doubt is why a fish's measures may be wrong. The fish is kept and counted, but takes no
// part in the boat's own coefficient.
type Doubt struct{ Check, Found, Reason string }

// Measures with a margin over the largest on record, and how far apart scale and tape may
// lie, before they are doubted.
const (
	OverRecord   = 1.05
	leastGirth   = 0.25 // of the length
	mostGirth    = 0.90
	leastOfTape  = 0.66 // scale over tape
	mostOfTape   = 1.5
	poundsLeast  = 1.85 // about 2.2
	poundsMost   = 2.65
	kilosLeast   = 0.38 // about 0.45
	kilosMost    = 0.54
	wrongTapeTop = 8 // the tape's unit is wrong: its weight goes with the cube
)

// MeasuresOf takes the measures of a fish and its estimates by Weigh without the boat's
// own coefficient.
func MeasuresOf(f Fish, es []Estimate) Measures {
	m := Measures{LengthCM: logged(f.LengthCM), GirthCM: logged(f.GirthCM), ScaleKG: logged(f.ScaleKG)}
	for _, e := range es {
		switch {
		case e.fromScale():
			m.RoundKG = e.WeightKG
		case m.TapeKG == 0 && e.Method != OwnCoefficient:
			m.TapeKG, m.TapeMethod = e.WeightKG, e.Method
		}
	}
	return m
}

// Doubts are the reasons to doubt the measures, none for a sound fish.
func (m Measures) Doubts() []Doubt {
	var out []Doubt
	add := func(check, found, reason string) { out = append(out, Doubt{check, found, reason}) }
	if m.LongestCM > 0 && m.LengthCM > OverRecord*m.LongestCM {
		add("long fish", fmt.Sprintf("%.1f cm", m.LengthCM),
			fmt.Sprintf("longer than any %s on record (%.0f cm): wrong unit or species?", m.Name, m.LongestCM))
	}
	if m.HeaviestKG > 0 && m.ScaleKG > OverRecord*m.HeaviestKG {
		add("heavy fish", fmt.Sprintf("%.1f kg", m.ScaleKG),
			fmt.Sprintf("heavier than any %s on record (%.0f kg): wrong unit or species?", m.Name, m.HeaviestKG))
	}
	if len(out) == 0 && m.HeaviestKG > 0 && m.ScaleKG == 0 && m.TapeKG > OverRecord*m.HeaviestKG {
		add("heavy fish", fmt.Sprintf("%.1f kg by the %s", m.TapeKG, Words(m.TapeMethod)),
			fmt.Sprintf("heavier than any %s on record (%.0f kg): wrong unit or species?", m.Name, m.HeaviestKG))
	}
	if m.LengthCM > 0 && m.GirthCM > 0 {
		if r := m.GirthCM / m.LengthCM; r < leastGirth || r > mostGirth {
			reason := fmt.Sprintf("the girth is %.2g of the length: expected some 0.3 to 0.85", r)
			if r > 1 {
				reason = "the girth is more than the length: swapped?"
			}
			add("girth and length", fmt.Sprintf("girth %.1f cm, length %.1f cm", m.GirthCM, m.LengthCM), reason)
		}
	}
	if m.RoundKG > 0 && m.TapeKG > 0 {
		if r := m.RoundKG / m.TapeKG; r < leastOfTape || r > mostOfTape {
			add("scale and tape", fmt.Sprintf("%.1f kg on the scale, %.1f kg by the %s", m.ScaleKG, m.TapeKG,
				Words(m.TapeMethod)), apartFor(r))
		}
	}
	return out
}

// apartFor guesses why scale over tape is far from 1.
func apartFor(ratio float64) string {
	switch {
	case ratio >= poundsLeast && ratio <= poundsMost:
		return "the scale is about 2.2 times the tape: pounds logged as kilograms?"
	case ratio >= kilosLeast && ratio <= kilosMost:
		return "the scale is about 0.45 of the tape: kilograms logged as pounds?"
	case ratio > wrongTapeTop:
		return "the tape is far too short: inches logged as centimetres?"
	case ratio < 1.0/wrongTapeTop:
		return "the tape is far too long: centimetres logged as inches?"
	}
	return "they differ by more than a third"
}
