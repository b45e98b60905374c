package pipeline

import (
	"context"
	"time"

	"wakeledger/pipeline/sky"
	"wakeledger/pipeline/store"
)

// light keeps the light and the moon of every leg and strike that says when,
// and for the light where, it was.
func (s *Season) light(ctx context.Context, margin time.Duration) error {
	legs, err := s.DB.SkyLegs(ctx)
	if err != nil {
		return err
	}
	strikes, err := s.DB.SkyStrikes(ctx)
	if err != nil {
		return err
	}
	over := newSkies(legs, margin)
	var seen []store.StrikeSky
	for _, k := range strikes {
		seen = append(seen, over.strike(k))
	}
	return s.DB.PutSky(ctx, over.lights, over.moons, seen)
}

// skies are the lights and moons of the legs.
type skies struct {
	margin time.Duration
	lights []store.LegLight
	moons  []store.LegMoon
	legs   map[int64]store.Afloat
	only   map[int64]string // the light of a leg that has one only
	phase  map[int64]string
}

func newSkies(legs []store.Afloat, margin time.Duration) *skies {
	s := &skies{margin: margin, legs: map[int64]store.Afloat{}, only: map[int64]string{}, phase: map[int64]string{}}
	for _, l := range legs {
		lit, phase := sky.Moon(l.From.Add(l.To.Sub(l.From) / 2))
		s.legs[l.ID], s.phase[l.ID] = l, string(phase)
		s.moons = append(s.moons, store.LegMoon{Leg: l.ID, Lit: lit, Phase: string(phase)})
		if !l.Placed {
			continue
		}
		parts := sky.Split(l.From, l.To, l.Lat, l.Lon, margin)
		for _, p := range parts {
			s.lights = append(s.lights, store.LegLight{Leg: l.ID, Light: string(p.Light),
				Share: p.Share, FromTrip: l.FromTrip})
		}
		if len(parts) == 1 {
			s.only[l.ID] = string(parts[0].Light)
		}
	}
	return s
}

// strike is the sky over a strike: at its leg's place, where that has one.
func (s *skies) strike(k store.Afloat) store.StrikeSky {
	out := store.StrikeSky{Strike: k.ID, Phase: s.phase[k.Leg], Light: s.only[k.Leg]}
	if k.From.IsZero() {
		return out
	}
	if out.Phase == "" {
		_, phase := sky.Moon(k.From)
		out.Phase = string(phase)
	}
	if l := s.legs[k.Leg]; l.Placed {
		k.Placed, k.Lat, k.Lon = true, l.Lat, l.Lon
	}
	if out.Light == "" && k.Placed {
		out.Light = string(sky.LightAt(k.From, k.Lat, k.Lon, s.margin))
	}
	return out
}
