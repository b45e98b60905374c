package estimate

import (
	"fmt"
	"strings"
)

const girthSource = "W(lb) = L(in) x G(in)^2 / 800, common practice; tested by Ault and Luo 2013, Fisheries " +
	"Research 139:110-117"

// Weigh returns every estimate that the fish supports, best first: certified
// scale, dock scale, own coefficient, length and girth, length alone by the chosen
// relation, then by the other relations of the species. It is empty where nothing
// usable was logged. Why a method or a relation gave nothing is said in the notes
// of the first estimate that is not a scale's, and by Unused where there is none.
//
// own is FitOwn's answer and may be nil.
func (c *Catalogue) Weigh(f Fish, own map[string]Own) []Estimate {
	out, unused := c.weigh(f, own)
	for i := range out {
		if !out[i].fromScale() || i == len(out)-1 {
			out[i].Notes = append(out[i].Notes, unused...)
			break
		}
	}
	return out
}

// fromScale tells whether the estimate is a scale's weight.
func (e Estimate) fromScale() bool { return e.Method == CertifiedScale || e.Method == DockScale }

// PairOf is the fish as a pair for FitOwn: tape and round scale weight. ok is
// false where the species, a measure or a factor to round weight is missing.
func (c *Catalogue) PairOf(f Fish) (p Pair, ok bool) {
	f.Species = strings.ToUpper(strings.TrimSpace(f.Species))
	f.LengthCM, f.GirthCM, f.ScaleKG = logged(f.LengthCM), logged(f.GirthCM), logged(f.ScaleKG)
	es, _ := c.byScale(f)
	if f.Species == "" || f.LengthCM == 0 || f.GirthCM == 0 || len(es) == 0 {
		return Pair{}, false
	}
	p = Pair{Species: f.Species, LengthCM: f.LengthCM, GirthCM: f.GirthCM,
		ScaleKG: es[0].WeightKG, LengthKind: f.LengthKind}
	if r := c.choose(f); r != nil {
		e, _ := c.byRelation(f, *r)
		p.Relation, p.RelationKG = r.ID, e.WeightKG
	}
	return p, true
}

// Unused returns one sentence for each method or relation that could have weighed
// the fish and did not, with the reason.
func (c *Catalogue) Unused(f Fish, own map[string]Own) []string {
	_, unused := c.weigh(f, own)
	return unused
}

func (c *Catalogue) weigh(f Fish, own map[string]Own) (out []Estimate, unused []string) {
	f.Species = strings.ToUpper(strings.TrimSpace(f.Species))
	f.LengthCM, f.GirthCM, f.ScaleKG = logged(f.LengthCM), logged(f.GirthCM), logged(f.ScaleKG)
	add := func(es []Estimate, whys []string) {
		for _, e := range es {
			if logged(e.WeightKG) > 0 {
				out = append(out, e)
			}
		}
		unused = append(unused, whys...)
	}
	add(c.byScale(f))
	if f.LengthCM > 0 && f.GirthCM > 0 {
		add(byOwn(f, ownFor(f, own)))
		es, whys := c.byGirth(f)
		if o := ownFor(f, own); forkOr(f.LengthKind) == forkOr(o.LengthKind) {
			spreadOf(es, o)
		}
		add(es, whys)
	}
	if f.LengthCM > 0 {
		es, whys := c.byLength(f)
		spreadOf(es, ownFor(f, own))
		add(es, whys)
	}
	return out, unused
}

// byScale is the round weight from a scale.
func (c *Catalogue) byScale(f Fish) ([]Estimate, []string) {
	if f.ScaleKG == 0 {
		return nil, nil
	}
	e := Estimate{Method: DockScale, Source: "scale on land, not certified"}
	if f.Certified {
		e.Method, e.Source = CertifiedScale, "certified scale"
	}
	state := weightState(f.WeightState)
	if state == "" {
		state = Round
		e.Notes = append(e.Notes, "The log does not say whether the fish was whole: taken as whole.")
	}
	factor, note, ok := c.toRound(f.Species, f.Ocean, state)
	if !ok {
		why := fmt.Sprintf("The scale read %.1f kg %s, and no published factor turns that into round weight for "+
			"this species.", f.ScaleKG, stateName(state))
		return nil, []string{why}
	}
	switch {
	case note == bledNote:
		e.Notes = append(e.Notes, note)
	case note != "":
		e.Notes = append(e.Notes, note, "The factor is an average: a converted weight is not what a scale read.")
	}
	e.WeightKG = f.ScaleKG * factor
	return []Estimate{e}, nil
}

// byOwn is by the boat's own coefficient, with its interval.
func byOwn(f Fish, o Own) ([]Estimate, []string) {
	if o.N == 0 {
		return nil, nil
	}
	if !o.Used {
		return nil, []string{"The boat's own divisor is not used. " + o.Why}
	}
	if kind := forkOr(f.LengthKind); kind != forkOr(o.LengthKind) {
		why := fmt.Sprintf(
			"The boat's own divisor is not used: it is from fish measured by %s, and this one's is the %s.",
			kindName(forkOr(o.LengthKind)), kindName(kind))
		return nil, []string{why}
	}
	e := Estimate{Method: OwnCoefficient, WeightKG: o.K * f.LengthCM * f.GirthCM * f.GirthCM,
		Source: fmt.Sprintf("geometric mean of L G^2 / W over the boat's own %d fish with tape and scale, drawn "+
			"towards 800", o.N),
		Notes: []string{o.Why}}
	if o.SLog > 0 && o.N > 1 {
		e.LoKG, e.HiKG = interval(e.WeightKG, ownSpread(o), o.N, o.N-1)
		e.HasInterval = true
		e.Notes = append(e.Notes, "The 90 % interval is from the spread of the boat's own fish, wider because the "+
			"divisor was chosen on them.")
	}
	e.stretched(f.LengthCM, outside(f.LengthCM, o.MinCM, o.MaxCM, "the boat's own fish"))
	return []Estimate{e}, nil
}

// byGirth is the trade's rule; it wants the straight length to the fork.
func (c *Catalogue) byGirth(f Fish) ([]Estimate, []string) {
	kind := lengthKind(f.LengthKind)
	m, ok := c.toKind(f, ForkLength)
	if !ok && kind == CurvedFork {
		m, ok = measure{cm: f.LengthCM, notes: []string{"The tape followed the body, and no published conversion to " +
			"a straight length was found: the weight is too high by as much as the tape is too long."}}, true
	}
	if !ok {
		why := fmt.Sprintf("The girth rule is not used: it takes the length to the fork, and no published "+
			"conversion from %s was found.", kindName(kind))
		return nil, []string{why}
	}
	e := Estimate{Method: LengthAndGirth, WeightKG: LengthGirthKG(m.cm, f.GirthCM), Source: girthSource, Notes: m.notes}
	e.Notes = append(e.Notes, c.curvedNote(f, m.cm, 1)...)
	e.Notes = append(e.Notes, noGirthSpread,
		"In the rule's one published test, on tarpon, it read more than 15 % light.")
	if r := f.GirthCM / m.cm; r < 0.3 || r > 0.8 {
		e.Notes = append(e.Notes, fmt.Sprintf("Girth is %.2f of the length, outside the usual 0.3 to 0.8: check "+
			"both tapes.", r))
	}
	return []Estimate{e}, nil
}

const noGirthSpread = "No interval: nobody published how far this rule is off. Five fish of this species with tape " +
	"and scale give the boat its own."

// stretched notes that the estimate was made for a length outside those that it rests on.
func (e *Estimate) stretched(l float64, of *Studied) {
	if e.Outside = of; of != nil {
		e.Notes = append(e.Notes, fmt.Sprintf("%s is outside the lengths of %s (%s): the estimate is stretched "+
			"beyond its data.", cm(l), of.Of, of.Words(cm)))
	}
}
