package stats

import (
	"math"

	"gonum.org/v1/gonum/mathext"
	"gonum.org/v1/gonum/stat/distuv"
)

// normalQuantile is the standard normal quantile.
func normalQuantile(p float64) float64 { return distuv.UnitNormal.Quantile(p) }

// normalP is the two-sided p-value of a standard normal deviate.
func normalP(z float64) float64 { return math.Erfc(math.Abs(z) / math.Sqrt2) }

// tQuantile is the quantile of Student's t; normal where df is infinite.
func tQuantile(p, df float64) float64 {
	if math.IsInf(df, 1) {
		return normalQuantile(p)
	}
	return distuv.StudentsT{Sigma: 1, Nu: df}.Quantile(p)
}

// tP is the two-sided p-value of Student's t; normal where df is infinite.
func tP(t, df float64) float64 {
	switch {
	case math.IsInf(df, 1):
		return normalP(t)
	case math.IsNaN(t):
		return math.NaN()
	}
	return mathext.RegIncBeta(df/2, .5, df/(df+t*t))
}

// chiSquareTail is the upper tail of chi-square at x.
func chiSquareTail(x, df float64) float64 { return distuv.ChiSquared{K: df}.Survival(x) }

func square(x float64) float64 { return x * x }
