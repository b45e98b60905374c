package stats

import (
	"math"
	"slices"

	"gonum.org/v1/gonum/mat"
)

// Dispersion is the sum of squared residuals over what it is expected to be
// without any extra variation: given the strata's totals, the variance of a sum of
// counts is that of multinomial shares, less what the fit takes up of it. So
// large counts, on which the ratios rest, weigh the most; Pearson's X2 weighs all
// alike. byCell takes it over the sums of cells. Its degrees of freedom are those of
// the chi-square law with the same spread (Satterthwaite 1946, Biometrics Bulletin
// 2:110-114), with a Poisson count's. 1 and 0 where it cannot be told.
func (f *Effects) Dispersion(byCell bool) (phi, df float64) {
	n := f.cells
	if !byCell {
		n = len(f.rows) * f.widest
	}
	k := len(f.index)
	off, variance := make([]float64, n), make([]float64, n) // events less expected, and their variance
	pull := make([]float64, n*k)                            // of beta on what is expected
	p, mean := make([]float64, f.widest), make([]float64, k)
	for s, rows := range f.rows {
		shares(rows, f.Beta, p)
		total := 0.0
		clear(mean)
		for i, o := range rows {
			total += float64(o.Events)
			for a, j := range f.index {
				mean[a] += p[i] * o.X[j]
			}
		}
		inCell := map[int]float64{}
		for i, o := range rows {
			c := s*f.widest + i
			if byCell {
				c = o.Cell
			}
			inCell[c] += p[i]
			off[c] += float64(o.Events) - total*p[i]
			for a, j := range f.index {
				pull[c*k+a] += total * p[i] * (o.X[j] - mean[a])
			}
		}
		for c, q := range inCell {
			variance[c] += total * q * (1 - q)
		}
	}
	var squares, all, taken, spread float64
	for c, v := range variance {
		squares += square(off[c])
		all += v
		spread += v + 2*v*v // the variance of a squared residual
		x := mat.NewVecDense(max(k, 1), nil)
		copy(x.RawVector().Data, pull[c*k:(c+1)*k])
		taken += mat.Inner(x, f.inverse, x)
	}
	return ratioOfSpread(squares, all, taken, spread)
}

// ratioOfSpread is the dispersion and its degrees of freedom, from sums of squared residuals,
// of their variances, of what the fit takes up of these, and of the variances of the squares.
func ratioOfSpread(squares, all, taken, spread float64) (phi, df float64) {
	left := all - taken
	if !(left > 0.1*all) || square(all)/spread < 0.5 {
		return 1, 0
	}
	return squares / left, 2 * all * left / spread
}

// Variance is that of Beta[j] without extra variation; infinite for a dropped
// column.
func (f *Effects) Variance(j int) float64 {
	if a := slices.Index(f.index, j); a >= 0 {
		return f.inverse.At(a, a)
	}
	return math.Inf(1)
}

// Inflation is how many times as large the variance of Beta[j] is as with the
// columns of own alone: what the others share with it.
func (f *Effects) Inflation(j int, own []int) float64 {
	var at []int
	place := -1
	for a, i := range f.index {
		if i == j {
			place = len(at)
		}
		if slices.Contains(own, i) {
			at = append(at, a)
		}
	}
	if place < 0 {
		return math.NaN()
	}
	sub := mat.NewSymDense(len(at), nil)
	for a := range at {
		for b := a; b < len(at); b++ {
			sub.SetSym(a, b, f.info.At(at[a], at[b]))
		}
	}
	return f.Variance(j) / inverse(sub).At(place, place)
}

// inverse is that of an information; where a column says nothing its variance is
// as good as infinite.
func inverse(info *mat.SymDense) *mat.SymDense {
	k := info.SymmetricDim()
	sub, out := mat.NewSymDense(k, nil), mat.NewSymDense(k, nil)
	sub.CopySym(info)
	for a := range k {
		sub.SetSym(a, a, sub.At(a, a)*(1+1e-12)+1e-12)
	}
	var c mat.Cholesky
	if !c.Factorize(sub) || c.InverseTo(out) != nil && out.IsEmpty() {
		for a := range k {
			out.SetSym(a, a, math.Inf(1))
		}
	}
	return out
}
