package stats

import "gonum.org/v1/gonum/mat"

// Shared is the share of the spread of z within strata that the columns of x
// account for, less what as many columns of noise would: R squared adjusted for
// degrees of freedom, of the weighted least-squares fit with an effect of each
// stratum. 0 where z does not vary within strata.
func Shared(x [][]float64, z, weight []float64, stratum []int) float64 {
	if len(x) == 0 {
		return 0
	}
	k := len(x[0])
	type sums struct {
		w, z float64
		x    []float64
	}
	mean := map[int]*sums{}
	for i, s := range stratum {
		m := mean[s]
		if m == nil {
			m = &sums{x: make([]float64, k)}
			mean[s] = m
		}
		m.w += weight[i]
		m.z += weight[i] * z[i]
		for j := range k {
			m.x[j] += weight[i] * x[i][j]
		}
	}
	gram, right := mat.NewSymDense(max(k, 1), nil), mat.NewVecDense(max(k, 1), nil)
	total, d := 0.0, make([]float64, k)
	for i, s := range stratum {
		m := mean[s]
		dz := z[i] - m.z/m.w
		total += weight[i] * dz * dz
		for j := range k {
			d[j] = x[i][j] - m.x[j]/m.w
			right.SetVec(j, right.AtVec(j)+weight[i]*d[j]*dz)
		}
		for a := range k {
			for b := a; b < k; b++ {
				gram.SetSym(a, b, gram.At(a, b)+weight[i]*d[a]*d[b])
			}
		}
	}
	rank := 0
	for j := range k {
		if gram.At(j, j) > 1e-9 {
			rank++
		}
		gram.SetSym(j, j, gram.At(j, j)*(1+1e-9)+1e-9)
	}
	n := len(z) - len(mean)
	var c mat.Cholesky
	if total < 1e-9 || n <= rank || !c.Factorize(gram) {
		return 0
	}
	var beta mat.VecDense
	if c.SolveVecTo(&beta, right) != nil && beta.IsEmpty() {
		return 0
	}
	r2 := mat.Dot(&beta, right) / total
	return 1 - (1-r2)*float64(n)/float64(n-rank)
}
