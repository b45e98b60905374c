package pipeline

import (
	"context"
	"fmt"
	"strings"

	"wakeledger/pipeline/estimate"
	"wakeledger/pipeline/species"
	"wakeledger/pipeline/store"
)

// Derive makes the season's tables and weights where the entries have changed
// since they were made, or a setting has. A setting that is not asked for stays
// as the season file has it.
func (s *Season) Derive(ctx context.Context) error {
	stale, err := s.DB.Stale(ctx)
	if err != nil {
		return err
	}
	settings, changed, err := s.derivation(ctx)
	if err != nil || !stale && !changed {
		return err
	}
	edges, err := ParseEdges(strings.Fields(settings["edges"]))
	if err != nil {
		return err
	}
	s.ocean = settings["ocean"]
	return s.DB.Derive(ctx, settings, edges.bands(), func() error {
		if err := s.light(ctx, edges.margin()); err != nil {
			return err
		}
		return s.weigh(ctx)
	})
}

// derivation is what the tables depend on beside the entries: the values asked
// for, else those of the season file, else the defaults.
func (s *Season) derivation(ctx context.Context) (settings map[string]string, changed bool, err error) {
	asked := map[string]string{"trip_gap_s": "", "edges": "", "ocean": s.cfg.Ocean}
	if s.cfg.TripGap > 0 {
		asked["trip_gap_s"] = fmt.Sprint(int64(s.cfg.TripGap.Seconds()))
	}
	if s.cfg.Edges != nil {
		asked["edges"] = s.cfg.Edges.String()
	}
	defaults := map[string]string{"trip_gap_s": fmt.Sprint(int64(DefaultTripGap.Seconds())), "edges": Edges{}.String()}
	for name, value := range asked {
		had, err := s.DB.Setting(ctx, name)
		if err != nil {
			return nil, false, err
		}
		switch {
		case value == "" && had == "":
			value = defaults[name]
		case value == "":
			value = had
		}
		asked[name] = value
		changed = changed || value != had
	}
	return asked, changed, nil
}

// weigh keeps every estimate that each fish supports.
func (s *Season) weigh(ctx context.Context) error {
	measured, err := s.DB.MeasuredFish(ctx)
	if err != nil {
		return err
	}
	fish := make([]estimate.Fish, len(measured))
	var pairs []estimate.Pair
	for i, m := range measured {
		fish[i] = estimate.Fish{Species: m.Species, Ocean: s.oceanOf(m.Area), LengthCM: m.LengthCM, LengthKind: m.Kind,
			GirthCM: m.GirthCM, ScaleKG: m.ScaleKG, WeightState: m.State, Certified: m.Certified}
		if p, ok := s.catalogue.PairOf(fish[i]); ok {
			p.Doubted = s.doubted(fish[i])
			pairs = append(pairs, p)
		}
	}
	own := estimate.FitOwn(pairs)
	var weights []store.Weight
	for i, m := range measured {
		for rank, e := range s.catalogue.Weigh(fish[i], own) {
			weights = append(weights, weightOf(m.ID, rank+1, e))
		}
	}
	if err := s.DB.PutWeights(ctx, weights); err != nil {
		return err
	}
	return s.references(ctx)
}

// doubted tells whether the measures of a fish may be wrong.
func (s *Season) doubted(f estimate.Fish) bool {
	m := estimate.MeasuresOf(f, s.catalogue.Weigh(f, nil))
	if sp, ok := s.species.ByCode(f.Species); ok {
		m.Name, m.LongestCM, m.HeaviestKG = sp.Name, sp.MaxLengthCM, sp.MaxWeightKG
	}
	return len(m.Doubts()) > 0
}

// oceanOf is the ocean that settles the stock of a fish: the leg's area where that
// names one, else the season's.
func (s *Season) oceanOf(area string) string {
	if ocean, err := species.ParseOcean(area); err == nil && ocean != "" {
		return ocean
	}
	return s.ocean
}

func weightOf(id int64, rank int, e estimate.Estimate) store.Weight {
	w := store.Weight{FishID: id, Rank: rank, Method: e.Method, KG: e.WeightKG,
		Relation: e.Relation, Source: e.Source, Notes: strings.Join(e.Notes, " ")}
	if e.HasInterval {
		w.LoKG, w.HiKG = &e.LoKG, &e.HiKG
	}
	return w
}

func (s *Season) references(ctx context.Context) error {
	var rows [][]any
	for _, sp := range s.species.All() {
		rows = append(rows, []any{sp.Code, sp.Scientific, sp.Name, sp.Group,
			real(sp.MaxLengthCM), sp.MaxLengthKind, real(sp.MaxWeightKG)})
	}
	if err := s.DB.PutReference(ctx, "species", rows); err != nil {
		return err
	}
	rows = nil
	for _, r := range s.catalogue.Relations() {
		rows = append(rows, []any{r.ID, r.Species, r.Stock, r.A, r.B, r.LengthKind, r.WeightState,
			whole(r.N), real(r.MinCM), real(r.MaxCM), real(r.ResidualS), r.Default, r.Citation, r.Document})
	}
	return s.DB.PutReference(ctx, "relation", rows)
}

// whole and real are NULL for zero, which means not given.
func whole(v int) any {
	if v == 0 {
		return nil
	}
	return v
}

func real(v float64) any {
	if v == 0 {
		return nil
	}
	return v
}
