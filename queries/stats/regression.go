package stats

import (
	"math"

	"gonum.org/v1/gonum/floats"
	"gonum.org/v1/gonum/mat"
	"gonum.org/v1/gonum/stat/distuv"
)

// Status says whether a coefficient could be estimated.
type Status string

// What can have become of a coefficient.
const (
	Fitted  Status = "fitted"
	Aliased Status = "aliased"  // its column is a combination of earlier ones
	RunsOff Status = "runs off" // the likelihood grows without end as it does
)

// Coefficient is one of a Poisson regression, on the log scale: exp(Estimate)
// is a ratio of rates. Standard errors are NaN where the coefficient is not
// fitted.
type Coefficient struct {
	Name     string
	Status   Status
	Estimate float64  // NaN where aliased; where it runs off, +Inf, -Inf or, if the side is not known, NaN
	SE       float64  // model-based: the counts are Poisson
	QuasiSE  float64  // SE times the root of Phi, also where Phi is below 1, as in R
	RobustSE float64  // cluster-robust; NaN without clusters, or with one
	With     []string // where aliased, the columns that add up to it
}

// PoissonFit is a fitted Poisson regression.
type PoissonFit struct {
	Coefficients []Coefficient // intercept first, then in the order of the columns
	Rows         int           // rows fitted
	NoEffort     int           // rows left out for want of effort
	Separated    []int         // rows left out because their fitted counts run off to 0
	Clusters     int           // clusters among the rows fitted; 0 without
	DF           int           // rows less fitted coefficients
	Deviance     float64
	X2           float64 // Pearson's statistic
	Phi          float64 // X2/DF; NaN where DF is 0
	LogLik       float64
	Iterations   int
	Converged    bool
	Warnings     []Warning

	names  []string
	kept   []int         // design columns fitted
	design vectors       // those columns, rows fitted
	effort []float64     // rows fitted
	beta   []float64     // their coefficients
	cov    *mat.SymDense // model-based
	robust *mat.SymDense // nil without clusters
}

// PoissonRegression fits log E(events) = log effort + columns by maximum
// likelihood, with iteratively reweighted least squares (McCullagh and Nelder
// 1989, from memory; for catch rates, Maunder and Punt 2004, Fisheries Research
// 70:141-159).
//
// A column that earlier columns add up to is left out and marked Aliased. A
// level without events has no finite estimate: the rows that make it run off
// (see separated) carry no information on the other coefficients and are left
// out, and every coefficient that cannot be told without them is marked
// RunsOff. Where the reference level itself has no events, that is all its
// fellows: take another reference.
//
// The error says where the data do not fit together: unequal lengths, negative
// counts, values that are not finite. Everything else comes back as data.
func PoissonRegression(d RegressionData) (*PoissonFit, error) {
	if err := d.check(); err != nil {
		return nil, err
	}
	rows := d.rowsWithEffort()
	f := &PoissonFit{names: d.names(), NoEffort: len(d.Events) - len(rows), Phi: math.NaN(),
		Deviance: math.NaN(), X2: math.NaN(), LogLik: math.NaN()}
	f.warnIf(f.NoEffort > 0, WarnNoEffort)
	f.blank()
	if len(rows) == 0 {
		return f, nil
	}
	all := d.design().at(rows)
	kept, _ := all.independent()
	f.markAliased(all, kept)
	rows, kept = f.dropSeparated(d, rows, kept)
	if len(rows) == 0 {
		return f, nil
	}
	f.kept = kept
	f.design = d.design().at(rows).pick(kept)
	f.effort = vectors{d.Effort}.at(rows)[0]
	f.fit(d, rows)
	return f, nil
}

// warnIf adds a warning.
func (f *PoissonFit) warnIf(cond bool, w Warning) {
	if cond {
		f.Warnings = append(f.Warnings, w)
	}
}

// blank starts every coefficient as not known.
func (f *PoissonFit) blank() {
	nan := math.NaN()
	for _, name := range f.names {
		f.Coefficients = append(f.Coefficients, Coefficient{name, RunsOff, nan, nan, nan, nan, nil})
	}
}

// markAliased marks the columns that were not kept, with what adds up to them.
func (f *PoissonFit) markAliased(all vectors, kept []int) {
	isKept := map[int]bool{}
	for _, j := range kept {
		isKept[j] = true
	}
	for j := range f.Coefficients {
		if isKept[j] {
			continue
		}
		c := &f.Coefficients[j]
		c.Status = Aliased
		parts, _, _ := weightedFit(all.pick(kept), all[j], ones(len(all[j])))
		for i, b := range parts {
			if math.Abs(b)*floats.Norm(all[kept[i]], 2) > 1e-7*floats.Norm(all[j], 2) {
				c.With = append(c.With, f.names[kept[i]])
			}
		}
	}
	f.warnIf(len(kept) < len(f.Coefficients), WarnAliased)
}

// dropSeparated leaves out the separated rows, marks the coefficients that go
// with them, and returns the rows and columns that are left to fit.
func (f *PoissonFit) dropSeparated(d RegressionData, rows, kept []int) (left, columns []int) {
	v := d.design().at(rows).pick(kept)
	off, direction := separated(v, pickCounts(d.Events, rows))
	f.warnIf(off != nil, WarnRunsOff)
	gone := map[int]bool{}
	for _, i := range off {
		gone[rows[i]] = true
		f.Separated = append(f.Separated, rows[i])
	}
	for _, r := range rows {
		if !gone[r] {
			left = append(left, r)
		}
	}
	rest := d.design().at(left).pick(kept)
	for i, j := range kept {
		if off != nil && (len(left) == 0 || rest.spannedByOthers(i)) {
			f.Coefficients[j].Estimate = runsTo(direction[i])
		} else {
			f.Coefficients[j].Status = Fitted
		}
	}
	again, _ := rest.independent()
	for _, i := range again {
		columns = append(columns, kept[i])
	}
	return left, columns
}

// runsTo is the infinity that a coefficient runs to, against its part in the
// direction of separation.
func runsTo(part float64) float64 {
	if math.Abs(part) < 1e-6 {
		return math.NaN()
	}
	return math.Inf(-int(math.Copysign(1, part)))
}

// fit iterates to the maximum and fills in the results.
func (f *PoissonFit) fit(d RegressionData, rows []int) {
	y := pickCounts(d.Events, rows)
	f.Rows, f.DF = len(rows), len(rows)-len(f.kept)
	mu, ok := f.iterate(y)
	f.warnIf(!ok || !f.Converged, WarnNotConverged)
	if !ok {
		return
	}
	f.goodness(y, mu)
	f.warnIf(f.DF == 0, WarnSaturated)
	if d.Clusters != nil {
		f.clusterRobust(pickNames(d.Clusters, rows), y, mu)
	}
	for i, j := range f.kept {
		c := &f.Coefficients[j]
		if c.Status != Fitted {
			continue
		}
		c.Estimate = f.beta[i]
		c.SE = math.Sqrt(f.cov.At(i, i))
		c.QuasiSE = c.SE * math.Sqrt(f.Phi)
		if f.robust != nil {
			c.RobustSE = math.Sqrt(f.robust.At(i, i))
		}
	}
}

// The fit has settled where the deviance changes by less than this share, and
// is given up after so many rounds.
const (
	fitTol    = 1e-12
	fitRounds = 100
)

// iterate runs the reweighted least squares from mu = y + 0.1, as R does, and
// returns the fitted counts. ok is false where a step could not be solved.
func (f *PoissonFit) iterate(y []int64) (mu []float64, ok bool) {
	n := len(y)
	mu, z, eta := make([]float64, n), make([]float64, n), make([]float64, n)
	for i := range mu {
		mu[i] = float64(y[i]) + .1
		eta[i] = math.Log(mu[i])
	}
	last := math.Inf(1)
	for f.Iterations = 1; f.Iterations <= fitRounds; f.Iterations++ {
		for i := range z {
			z[i] = eta[i] - math.Log(f.effort[i]) + (float64(y[i])-mu[i])/mu[i]
		}
		f.beta, f.cov, ok = weightedFit(f.design, z, mu)
		if !ok {
			return mu, false
		}
		copy(eta, f.design.times(f.beta))
		for i := range mu {
			eta[i] += math.Log(f.effort[i])
			mu[i] = math.Exp(eta[i])
		}
		f.Deviance = deviance(y, mu)
		if math.IsNaN(f.Deviance) || math.IsInf(f.Deviance, 0) {
			return mu, false
		}
		// Once settled, one more round brings the covariance up to the estimate.
		if f.Converged {
			return mu, true
		}
		f.Converged = math.Abs(last-f.Deviance) <= fitTol*(math.Abs(f.Deviance)+.1)
		last = f.Deviance
	}
	return mu, true
}

// deviance is that of Poisson counts.
func deviance(y []int64, mu []float64) float64 {
	var d float64
	for i, v := range y {
		x := float64(v)
		if v > 0 {
			d += 2 * x * math.Log(x/mu[i])
		}
		d -= 2 * (x - mu[i])
	}
	return d
}

// goodness sets X2, Phi and LogLik.
func (f *PoissonFit) goodness(y []int64, mu []float64) {
	f.X2, f.LogLik = 0, 0
	for i, v := range y {
		x := float64(v)
		f.X2 += square(x-mu[i]) / mu[i]
		f.LogLik += distuv.Poisson{Lambda: mu[i]}.LogProb(x)
	}
	if f.DF > 0 {
		f.Phi = f.X2 / float64(f.DF)
	}
}

func pickCounts(x []int64, rows []int) []int64 {
	out := make([]int64, len(rows))
	for i, r := range rows {
		out[i] = x[r]
	}
	return out
}

func pickNames(x []string, rows []int) []string {
	out := make([]string, len(rows))
	for i, r := range rows {
		out[i] = x[r]
	}
	return out
}
