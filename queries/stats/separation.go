package stats

import (
	"math"

	"gonum.org/v1/gonum/floats"
)

// The rounds of projection that settle whether rows are separated, and what
// is then still zero.
const (
	separationRounds = 5000
	separationTol    = 1e-6
)

// separated returns the rows whose fitted counts run off to 0, so that some
// coefficients have no finite estimate, and the direction in which they run:
// the linear predictor falls without end along -direction at just those rows.
// direction is nil where there are none.
//
// A maximum exists just where no combination z of the columns is 0 at all rows
// with events, at least 0 at all rows without, and not 0 everywhere (Correia,
// Guimaraes and Zylkin 2019, Verifying the existence of maximum likelihood
// estimates for generalized linear models, arXiv 1903.01633). As there, z is
// found by turns of projection on the columns and cutting off below 0; here
// only within the combinations that are 0 at the rows with events, which needs
// no large weights and is over at once in the usual case that there are none.
//
// The columns must be independent.
func separated(v vectors, events []int64) (rows []int, direction []float64) {
	var with, without []int
	for i, x := range events {
		if x > 0 {
			with = append(with, i)
		} else {
			without = append(without, i)
		}
	}
	free := v.at(with).nullSpace()
	if len(free) == 0 || len(without) == 0 {
		return nil, nil
	}
	moves := make(vectors, len(free))
	for j, gamma := range free {
		moves[j] = v.at(without).times(gamma)
	}
	u, settled := certificate(moves)
	if !settled {
		return nil, nil
	}
	target := make([]float64, len(events))
	for i, r := range without {
		if u[i] > separationTol {
			rows = append(rows, r)
			target[r] = u[i]
		}
	}
	if rows == nil {
		return nil, nil
	}
	direction, _, _ = weightedFit(v, target, ones(len(target)))
	return rows, direction
}

// certificate is a non-negative combination of the moves that is positive at
// as many rows as can be, or all 0. settled is false where the projections
// were still moving at the end, so that nothing can be said.
func certificate(moves vectors) (u []float64, settled bool) {
	_, basis := moves.independent()
	u = ones(len(moves[0]))
	for range separationRounds {
		fit := make([]float64, len(u))
		for _, b := range basis {
			floats.AddScaled(fit, floats.Dot(u, b), b)
		}
		apart := 0.0
		for i, f := range fit {
			apart = math.Max(apart, math.Abs(u[i]-f))
			u[i] = math.Max(f, 0)
		}
		if apart < separationTol*separationTol {
			return u, true
		}
	}
	return u, false
}
