package stats

import (
	"math"

	"gonum.org/v1/gonum/mat"
)

// SEKind chooses among the standard errors of a regression.
type SEKind int

// The standard errors, from the most to the least that is assumed.
const (
	ModelSE  SEKind = iota // counts are Poisson; normal quantiles
	QuasiSE                // variance is Phi times the mean, and Phi at least 1; t on DF
	RobustSE               // nothing within clusters; t on Clusters-1
)

// method names the standard error.
func (k SEKind) method() string {
	switch k {
	case QuasiSE:
		return MethodQuasiPoisson
	case RobustSE:
		return MethodClusterRobust
	}
	return MethodPoissonModel
}

// minClusters is the number of clusters below which a warning is due; a choice,
// on the low side of what Cameron and Miller 2015 discuss.
const minClusters = 10

// clusterRobust sets the sandwich covariance with clusters of rows that may
// hang together in any way: A (sum over clusters of s s') A with A the
// model-based covariance and s a cluster's sum of scores (Liang and Zeger 1986,
// Biometrika 73:13-22), times G/(G-1) * (n-1)/(n-k) for G clusters, n rows and k
// coefficients. That small-sample factor is Stata's for linear models and the
// one that statsmodels applies by default to cov_type='cluster', generalised
// linear models included.
func (f *PoissonFit) clusterRobust(clusters []string, y []int64, mu []float64) {
	k := len(f.kept)
	scores := map[string][]float64{}
	var order []string // sums of floats must not depend on the order of a map
	for i, g := range clusters {
		s, ok := scores[g]
		if !ok {
			s = make([]float64, k)
			scores[g] = s
			order = append(order, g)
		}
		for j, col := range f.design {
			s[j] += col[i] * (float64(y[i]) - mu[i])
		}
	}
	f.Clusters = len(order)
	f.warnIf(f.Clusters < 2, WarnOneCluster)
	f.warnIf(f.Clusters >= 2 && (f.Clusters < minClusters || f.Clusters <= k), WarnFewClusters)
	if f.Clusters < 2 || f.DF == 0 {
		return
	}
	g, n := float64(f.Clusters), float64(f.Rows)
	factor := g / (g - 1) * (n - 1) / float64(f.DF)
	f.robust = mat.NewSymDense(k, nil)
	for _, name := range order {
		var step mat.VecDense
		step.MulVec(f.cov, mat.NewVecDense(k, scores[name]))
		f.robust.SymRankOne(f.robust, factor, &step)
	}
}

// covariance is the one of a kind with the degrees of freedom of its t; ok is
// false where there is none.
func (f *PoissonFit) covariance(kind SEKind) (cov *mat.SymDense, df float64, ok bool) {
	switch {
	case kind == ModelSE && f.cov != nil:
		return f.cov, math.Inf(1), true
	case kind == QuasiSE && f.cov != nil && f.DF > 0:
		wide := mat.NewSymDense(len(f.kept), nil)
		wide.ScaleSym(math.Max(1, f.Phi), f.cov)
		return wide, float64(f.DF), true
	case kind == RobustSE && f.robust != nil:
		return f.robust, float64(f.Clusters - 1), true
	}
	return nil, 0, false
}
