package queries

import (
	"context"
	"math"
	"slices"

	"wakeledger/pipeline/estimate"
	"wakeledger/pipeline/store"
	"wakeledger/queries/stats"
)

// ScaleFish is one fish that was on a scale, weighed by the tape as well. RoundKG is
// what the others are compared with: the scale's weight, converted to round weight
// where the fish was not whole.
type ScaleFish struct {
	Trip        *string  `json:"trip"`
	Date        *string  `json:"date"` // YYYY-MM-DD, the boat's day
	Species     *string  `json:"species"`
	Name        *string  `json:"name"` // the species in words, else the name as logged
	LengthCM    *float64 `json:"length_cm"`
	LengthKind  *string  `json:"length_kind"`
	GirthCM     *float64 `json:"girth_cm"`
	ScaleKG     float64  `json:"scale_kg"` // as read, in WeightState
	WeightState *string  `json:"weight_state"`
	Scale       *string  `json:"scale"` // "certified scale" or "dock scale"; nil without a round weight
	RoundKG     *float64 `json:"round_kg"`
	// OwnKG is by the boat's own coefficient of the species, fitted without this
	// fish; nil where fewer than 5 fish of the species were measured alike.
	OwnKG     *float64 `json:"own_kg"`
	GirthKG   *float64 `json:"girth_kg"`  // by L x G^2 / 800
	LengthKG  *float64 `json:"length_kg"` // by the relation, from the length alone
	Relation  *string  `json:"relation"`
	RelationA *float64 `json:"relation_a"` // kg and cm
	RelationB *float64 `json:"relation_b"`
	// RelationLoCM and RelationHiCM are the lengths of the fish studied, where given.
	RelationLoCM *float64 `json:"relation_lo_cm"`
	RelationHiCM *float64 `json:"relation_hi_cm"`
	LeftOut      *string  `json:"left_out"` // why the fish is in no comparison; nil where it is in one
	// Doubt is why its measures are doubted; such a fish is no part of the own coefficient.
	Doubt *string `json:"doubt"`
	Boat  *string `json:"boat"`
	File  string  `json:"file"`
	Sheet string  `json:"sheet"`
	Row   int64   `json:"row"`
}

// Names of the methods that ScaleCheck compares.
const (
	ByOwn    = estimate.OwnCoefficient
	ByGirth  = estimate.LengthAndGirth
	ByLength = estimate.LengthAlone
)

// ByMethod is the fish's weight by one of the methods, nil without one.
func (f ScaleFish) ByMethod(method string) *float64 {
	switch method {
	case ByOwn:
		return f.OwnKG
	case ByGirth:
		return f.GirthKG
	case ByLength:
		return f.LengthKG
	}
	return nil
}

// ScaleCheck is how far a method of the tape is from the scale; differences are
// estimate less scale. Values are nil where there are too few fish for them.
type ScaleCheck struct {
	Method      string   `json:"method"`
	N           int64    `json:"n"`
	BiasKG      *float64 `json:"bias_kg"`
	BiasPct     *float64 `json:"bias_pct"` // mean difference in per cent of the scale's weight
	MAEKG       *float64 `json:"mae_kg"`
	MAPEPct     *float64 `json:"mape_pct"`
	RMSEKG      *float64 `json:"rmse_kg"`
	LOALoKG     *float64 `json:"loa_lo_kg"` // limits of agreement, in the form that LOAForm names
	LOAHiKG     *float64 `json:"loa_hi_kg"`
	Concordance *float64 `json:"concordance"` // Lin 1989

	// LOAForm is LOALimits, or of fewer than 30 fish LOANext.
	LOAForm *string `json:"loa_form"`

	// 95 % intervals of the above; those of the limits with LOALimits only.
	BiasLoKG      *float64 `json:"bias_lo_kg"`
	BiasHiKG      *float64 `json:"bias_hi_kg"`
	LOALoLoKG     *float64 `json:"loa_lo_lo_kg"`
	LOALoHiKG     *float64 `json:"loa_lo_hi_kg"`
	LOAHiLoKG     *float64 `json:"loa_hi_lo_kg"`
	LOAHiHiKG     *float64 `json:"loa_hi_hi_kg"`
	ConcordanceLo *float64 `json:"concordance_lo"`
	ConcordanceHi *float64 `json:"concordance_hi"`

	// Errors of a weight grow with it: the same as factors of the scale's weight.
	Ratio      *float64 `json:"ratio"` // geometric mean of estimate / scale
	RatioLo    *float64 `json:"ratio_lo"`
	RatioHi    *float64 `json:"ratio_hi"`
	LOARatioLo *float64 `json:"loa_ratio_lo"`
	LOARatioHi *float64 `json:"loa_ratio_hi"`

	MedianAbsKG *float64 `json:"median_abs_kg"` // half of the fish are nearer
	SDKG        *float64 `json:"sd_kg"`         // of the differences
	Trend       *float64 `json:"trend"`         // slope of the difference on the mean of the two
	TrendP      *float64 `json:"trend_p"`
}

// Forms of the limits of agreement.
const (
	LOALimits = "1.96 standard deviations"
	LOANext   = "prediction of one more fish"
)

// Either kind of scale stands in a row of its own from this number of fish.
const fewestOnEitherScale = 5

// AskScaleFish lists the fish that were on a scale.
func AskScaleFish(ctx context.Context, db *store.DB) ([]ScaleFish, error) {
	fish, err := scaleFish(ctx, db)
	if err != nil {
		return nil, err
	}
	withOwn(fish)
	return fish, nil
}

// scaleFish are the fish that were on a scale, with their doubts.
func scaleFish(ctx context.Context, db *store.DB) ([]ScaleFish, error) {
	fish, err := ask[ScaleFish](ctx, db, "scale_fish")
	if err != nil {
		return nil, err
	}
	doubted, err := doubtedFish(ctx, db)
	for i, f := range fish {
		if d, ok := doubted[place{f.File, f.Sheet, f.Row}]; ok {
			fish[i].Doubt = &d.Reason
		}
	}
	return fish, err
}

// AskScaleCheck answers scale-check: every tape method against the scale, first over
// all fish that the method weighs, then over those that all methods weigh, then, where
// there are 5 or more of each, over certified and dock scales apart. The own coefficient is fitted without the fish
// that it weighs (leave-one-out).
func AskScaleCheck(ctx context.Context, db *store.DB) ([]ScaleCheck, error) {
	fish, err := AskScaleFish(ctx, db)
	if err != nil {
		return nil, err
	}
	return CheckScale(fish), nil
}

// AskOwnPairs lists the fish that a boat's own coefficient is fitted to.
func AskOwnPairs(ctx context.Context, db *store.DB) ([]estimate.Pair, error) {
	fish, err := scaleFish(ctx, db)
	return slices.DeleteFunc(pairsOf(fish), func(p estimate.Pair) bool { return p.ScaleKG == 0 }), err
}

// ScaleMethods are the methods that ScaleCheck compares, best first.
func ScaleMethods() []string { return []string{ByOwn, ByGirth, ByLength} }

// CheckScale is the answer of scale-check for the fish given.
func CheckScale(fish []ScaleFish) []ScaleCheck {
	out := checkAll(fish, "")
	same := SameFish(fish)
	if len(same) > 1 && len(same) < len(fish) {
		out = append(out, checkAll(same, ", fish that all three weigh")...)
	}
	certified, dock := onScale(fish, estimate.CertifiedScale), onScale(fish, estimate.DockScale)
	for _, method := range ScaleMethods() {
		c, d := CheckMethod(certified, method), CheckMethod(dock, method)
		if c.N < fewestOnEitherScale || d.N < fewestOnEitherScale {
			continue
		}
		c.Method, d.Method = method+", certified scales", method+", dock scales"
		out = append(out, c, d)
	}
	return out
}

func checkAll(fish []ScaleFish, which string) []ScaleCheck {
	var out []ScaleCheck
	for _, method := range ScaleMethods() {
		c := CheckMethod(fish, method)
		c.Method += which
		out = append(out, c)
	}
	return out
}

// SameFish are the fish that every method weighs: methods are fairly compared on
// the same fish only.
func SameFish(fish []ScaleFish) []ScaleFish {
	return slices.DeleteFunc(slices.Clone(fish), func(f ScaleFish) bool {
		return f.RoundKG == nil || f.OwnKG == nil || f.GirthKG == nil || f.LengthKG == nil
	})
}

func onScale(fish []ScaleFish, scale string) []ScaleFish {
	return slices.DeleteFunc(slices.Clone(fish), func(f ScaleFish) bool { return f.Scale == nil || *f.Scale != scale })
}

// CheckMethod compares one method with the scale on the fish that have both.
func CheckMethod(fish []ScaleFish, method string) ScaleCheck {
	var tape, scale, off []float64
	for _, f := range fish {
		if w := f.ByMethod(method); w != nil && f.RoundKG != nil {
			tape, scale, off = append(tape, *w), append(scale, *f.RoundKG), append(off, math.Abs(*w-*f.RoundKG))
		}
	}
	c := ScaleCheck{Method: method, N: int64(len(tape))}
	if a, ok := stats.Agree(tape, scale, confidence); ok {
		c.agreement(a)
	}
	if r, ok := stats.AgreeRatio(tape, scale, confidence); ok {
		c.Ratio, c.RatioLo, c.RatioHi = number(r.Ratio), number(r.Interval.Lo), number(r.Interval.Hi)
		within := r.Expected()
		c.LOARatioLo, c.LOARatioHi = number(within.Lo), number(within.Hi)
	}
	if m, ok := stats.Median(off, confidence); ok {
		c.MedianAbsKG = number(m.Median)
	}
	return c
}

func (c *ScaleCheck) agreement(a stats.Agreement) {
	c.BiasKG, c.BiasPct, c.MAEKG, c.MAPEPct, c.RMSEKG = number(a.Bias), number(a.MPE), number(a.MAE),
		number(a.MAPE), number(a.RMSE)
	within := a.Expected()
	c.LOALoKG, c.LOAHiKG, c.Concordance = number(within.Lo), number(within.Hi), number(a.Concordance.Rho)
	c.BiasLoKG, c.BiasHiKG = number(a.BiasInterval.Lo), number(a.BiasInterval.Hi)
	form := LOANext
	if a.N >= stats.FewPairs {
		form = LOALimits
		c.LOALoLoKG, c.LOALoHiKG = number(a.LoInterval.Lo), number(a.LoInterval.Hi)
		c.LOAHiLoKG, c.LOAHiHiKG = number(a.HiInterval.Lo), number(a.HiInterval.Hi)
	}
	if c.LOALoKG != nil {
		c.LOAForm = &form
	}
	c.ConcordanceLo, c.ConcordanceHi = number(a.Concordance.Interval.Lo), number(a.Concordance.Interval.Hi)
	c.SDKG, c.Trend, c.TrendP = number(a.SD), number(a.Trend), number(a.TrendP)
}

// number is nil for what is not a finite number.
func number(v float64) *float64 {
	if math.IsNaN(v) || math.IsInf(v, 0) {
		return nil
	}
	return &v
}

// withOwn weighs each fish by the own coefficient of the others, and says of each
// fish that no method weighed why.
func withOwn(fish []ScaleFish) {
	for i, w := range estimate.PredictEach(pairsOf(fish)) {
		if w > 0 {
			fish[i].OwnKG = &w
		}
	}
	for i := range fish {
		if why := fish[i].leftOut(); why != "" {
			fish[i].LeftOut = &why
		}
	}
}

func (f ScaleFish) leftOut() string {
	switch {
	case f.RoundKG == nil:
		return "the fish was not whole, and no published factor turns its weight into round weight"
	case f.LengthCM == nil:
		return "no length is logged"
	case f.OwnKG == nil && f.GirthKG == nil && f.LengthKG == nil:
		return "no tape method takes its length as measured"
	}
	return ""
}

// pairsOf is one pair a fish, in order; an empty one, which no fit uses, where a
// measure is not logged.
func pairsOf(fish []ScaleFish) []estimate.Pair {
	pairs := make([]estimate.Pair, len(fish))
	for i, f := range fish {
		if f.Species == nil || f.LengthCM == nil || f.GirthCM == nil || f.RoundKG == nil {
			continue
		}
		pairs[i] = estimate.Pair{Species: *f.Species, LengthCM: *f.LengthCM, GirthCM: *f.GirthCM,
			ScaleKG: *f.RoundKG, Doubted: f.Doubt != nil}
		if f.LengthKind != nil {
			pairs[i].LengthKind = *f.LengthKind
		}
		if f.Relation != nil && f.LengthKG != nil {
			pairs[i].Relation, pairs[i].RelationKG = *f.Relation, *f.LengthKG
		}
	}
	return pairs
}
