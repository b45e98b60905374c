package stats

import (
	"math"
	"slices"

	"gonum.org/v1/gonum/floats"
	"gonum.org/v1/gonum/mat"
)

// RateRatio returns exp of the named coefficient, a ratio of rates, with Wald's
// interval and p-value on the log scale by the given standard error. With few
// clusters the t quantile on Clusters-1 degrees of freedom is the better one
// (Cameron and Miller 2015, Journal of Human Resources 50:317-372). Events and
// Effort are not filled in; Strata is the number of clusters.
//
// ok is false where there is no such coefficient, it is not fitted, the fit did
// not settle, or it has no such standard error; Ratio is then that of the
// Estimate, so 0 or +Inf where it runs off, and the rest NaN.
func (f *PoissonFit) RateRatio(name string, kind SEKind, conf float64) (RateRatio, bool) {
	r := RateRatio{Ratio: math.NaN(), Interval: unknown(), P: math.NaN(), LogSE: math.NaN(), Phi: 1,
		Conf: conf, Strata: f.Clusters, Method: kind.method(), Warnings: slices.Clone(f.Warnings)}
	j := slices.Index(f.names, name)
	if j < 0 {
		return r, false
	}
	c := f.Coefficients[j]
	r.Ratio = math.Exp(c.Estimate)
	cov, df, ok := f.covariance(kind)
	if c.Status != Fitted || !f.Converged || !ok || !validLevel(conf) {
		return r, false
	}
	if kind == QuasiSE {
		r.Phi = math.Max(1, f.Phi)
	}
	i := slices.Index(f.kept, j)
	r.LogSE = math.Sqrt(cov.At(i, i))
	r.Interval = logInterval(r.Ratio, r.LogSE, df, conf)
	r.P = tP(c.Estimate/r.LogSE, df)
	return r, true
}

// logInterval is Wald's interval on the log scale, by t on df.
func logInterval(estimate, logSE, df, conf float64) Interval {
	reach := tQuantile(1-(1-conf)/2, df) * logSE
	return Interval{estimate * math.Exp(-reach), estimate * math.Exp(reach)}
}

// StandardisedRate returns the rate that the fitted rows would have had with
// the given columns at the given values and all else as it was: the mean of the
// predictions over the rows, weighted by their effort (marginal or direct
// standardisation). With the columns of a factor all given, 1 for one level and
// 0 for the rest, that is the level's rate freed of the other columns. The
// interval is by the delta method on the log scale.
//
// ok is false where a name is unknown, a coefficient that it needs is not
// fitted, or as for RateRatio.
func (f *PoissonFit) StandardisedRate(set map[string]float64, kind SEKind, conf float64) (rate float64, iv Interval, ok bool) {
	cov, df, ok := f.covariance(kind)
	x, settable := f.withColumns(set)
	if !ok || !settable || !f.Converged || !validLevel(conf) {
		return math.NaN(), unknown(), false
	}
	eta := x.times(f.beta)
	total := floats.Sum(f.effort)
	slope := mat.NewVecDense(len(x), nil)
	for i, t := range f.effort {
		share := t / total * math.Exp(eta[i])
		rate += share
		for j := range x {
			slope.SetVec(j, slope.AtVec(j)+share*x[j][i])
		}
	}
	logSE := math.Sqrt(mat.Inner(slope, cov, slope)) / rate
	return rate, logInterval(rate, logSE, df, conf), true
}

// withColumns is the fitted design with some columns set to one value. A column
// whose coefficient runs off can only be set to 0. ok is false where it is set
// or left otherwise, and where a name is unknown or aliased.
func (f *PoissonFit) withColumns(set map[string]float64) (x vectors, ok bool) {
	found := 0
	for i, j := range f.kept {
		value, isSet := set[f.names[j]]
		col := f.design[i]
		if isSet {
			found++
			col = ones(len(f.effort))
			floats.Scale(value, col)
		}
		if f.Coefficients[j].Status != Fitted && floats.Norm(col, 1) > 0 {
			return nil, false
		}
		x = append(x, col)
	}
	for j, c := range f.Coefficients {
		value, isSet := set[f.names[j]]
		if isSet && value == 0 && c.Status == RunsOff && !slices.Contains(f.kept, j) {
			found++
		}
	}
	return x, found == len(set)
}
