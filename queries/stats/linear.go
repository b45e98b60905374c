package stats

import (
	"errors"
	"math"

	"gonum.org/v1/gonum/floats"
	"gonum.org/v1/gonum/mat"
)

// aliasTol is the share of a column's length that must be left over from the
// columns before it for the column to say something of its own.
const aliasTol = 1e-9

// vectors are the columns of a design.
type vectors [][]float64

// at picks rows out of every column.
func (v vectors) at(rows []int) vectors {
	out := make(vectors, len(v))
	for j, col := range v {
		out[j] = make([]float64, len(rows))
		for i, r := range rows {
			out[j][i] = col[r]
		}
	}
	return out
}

// pick keeps the columns with the given indices.
func (v vectors) pick(columns []int) vectors {
	out := make(vectors, len(columns))
	for i, j := range columns {
		out[i] = v[j]
	}
	return out
}

// independent returns the indices of the columns that are not a combination of
// the ones before them, and an orthonormal basis of what they span, by
// Gram-Schmidt taken twice.
func (v vectors) independent() (kept []int, basis vectors) {
	for j, col := range v {
		rest := append([]float64(nil), col...)
		for range 2 {
			for _, b := range basis {
				floats.AddScaled(rest, -floats.Dot(rest, b), b)
			}
		}
		size := floats.Norm(rest, 2)
		if !(size > aliasTol*floats.Norm(col, 2)) {
			continue
		}
		floats.Scale(1/size, rest)
		kept, basis = append(kept, j), append(basis, rest)
	}
	return kept, basis
}

// spannedByOthers reports whether column j is a combination of the rest.
func (v vectors) spannedByOthers(j int) bool {
	reordered := append(vectors{}, v[:j]...)
	reordered = append(reordered, v[j+1:]...)
	reordered = append(reordered, v[j])
	kept, _ := reordered.independent()
	return len(kept) == 0 || kept[len(kept)-1] != len(v)-1
}

// times is the product of the design and a coefficient vector.
func (v vectors) times(beta []float64) []float64 {
	out := make([]float64, len(v[0]))
	for j, col := range v {
		floats.AddScaled(out, beta[j], col)
	}
	return out
}

// dense is the design as a matrix, each row multiplied by its scale.
func (v vectors) dense(scale []float64) *mat.Dense {
	x := mat.NewDense(len(scale), len(v), nil)
	for j, col := range v {
		for i, s := range scale {
			x.Set(i, j, s*col[i])
		}
	}
	return x
}

// weightedFit solves weighted least squares by QR and returns with it the
// inverse of X'WX. ok is false where the columns are not independent.
func weightedFit(v vectors, y, w []float64) (beta []float64, inverse *mat.SymDense, ok bool) {
	n, k := len(y), len(v)
	if k == 0 || n < k {
		return nil, nil, false
	}
	root := make([]float64, n)
	z := mat.NewDense(n, 1, nil)
	for i := range n {
		root[i] = math.Sqrt(w[i])
		z.Set(i, 0, root[i]*y[i])
	}
	var qr mat.QR
	qr.Factorize(v.dense(root))
	var b, r mat.Dense
	if err := qr.SolveTo(&b, false, z); singular(err) {
		return nil, nil, false
	}
	qr.RTo(&r)
	inverse, ok = gramInverse(&r, k)
	return mat.Col(nil, 0, &b), inverse, ok
}

// gramInverse is (R'R)^-1 of the top k rows of R.
func gramInverse(r *mat.Dense, k int) (*mat.SymDense, bool) {
	upper := mat.NewTriDense(k, mat.Upper, nil)
	for i := range k {
		for j := i; j < k; j++ {
			upper.SetTri(i, j, r.At(i, j))
		}
	}
	var inv mat.TriDense
	if err := inv.InverseTri(upper); singular(err) {
		return nil, false
	}
	s := mat.NewSymDense(k, nil)
	s.SymOuterK(1, &inv)
	return s, true
}

// singular tells a matrix without an inverse from one that only loses digits.
func singular(err error) bool {
	if err == nil {
		return false
	}
	var c mat.Condition
	return !errors.As(err, &c) || math.IsInf(float64(c), 1)
}

// nullSpace returns an orthonormal basis of the vectors that all rows of the
// design send to 0.
func (v vectors) nullSpace() vectors {
	k := len(v)
	n := len(v[0])
	if n == 0 {
		return identity(k)
	}
	var svd mat.SVD
	if !svd.Factorize(v.dense(ones(n)), mat.SVDFullV) {
		return nil
	}
	values := svd.Values(nil)
	var right mat.Dense
	svd.VTo(&right)
	var basis vectors
	for j := range k {
		if j >= len(values) || values[j] <= aliasTol*values[0] {
			basis = append(basis, mat.Col(nil, j, &right))
		}
	}
	return basis
}

func ones(n int) []float64 {
	v := make([]float64, n)
	floats.AddConst(1, v)
	return v
}

func identity(k int) vectors {
	v := make(vectors, k)
	for j := range v {
		v[j] = make([]float64, k)
		v[j][j] = 1
	}
	return v
}
