package stats

import (
	"math"
	"testing"
)

// 200 random rates against R's qgamma (testdata/counts.R).
func TestQuasiPoissonRandom(t *testing.T) {
	for i, c := range loadRates(t) {
		_, iv, _ := QuasiPoisson(c.X, c.Effort, c.Conf, c.Phi)
		nearInterval(t, caseName("rate", i), iv, Interval{c.QLo, c.QHi}, oracleTol)
		if _, plain, _ := Poisson(c.X, c.Effort, c.Conf); iv.Hi <= plain.Hi || iv.Lo > plain.Lo {
			t.Errorf("case %d: phi %v gives %v, not wider than %v", i, c.Phi, iv, plain)
		}
	}
}

// Twelve events that come two at a time are six pairs: twice Garwood's
// interval of 6 (R: poisson.test(6) gives 2.201894 to 13.05948).
func TestQuasiPoissonPairs(t *testing.T) {
	rate, iv, ok := QuasiPoisson(12, 1, .95, 2)
	if !ok || rate != 12 {
		t.Errorf("rate %v, ok %v", rate, ok)
	}
	nearInterval(t, "pairs", iv, Interval{2 * 2.201894, 2 * 13.05948}, 1e-6)
}

// With many events the half-width grows by the root of phi.
func TestQuasiPoissonManyEvents(t *testing.T) {
	_, plain, _ := Poisson(1e6, 1, .95)
	_, wide, _ := QuasiPoisson(1e6, 1, .95, 4)
	near(t, "widening", (wide.Hi-wide.Lo)/(plain.Hi-plain.Lo), 2, 1e-3)
}

func TestQuasiPoissonEdges(t *testing.T) {
	_, none, _ := QuasiPoisson(0, 2, .95, 3)
	nearInterval(t, "no events", none, Interval{0, 3 * -math.Log(.025) / 2}, 1e-10)
	_, plain, _ := Poisson(5, 2, .95)
	_, under, _ := QuasiPoisson(5, 2, .95, .5)
	nearInterval(t, "phi below 1", under, plain, 0)
	for _, phi := range []float64{0, -1, math.NaN(), math.Inf(1)} {
		if _, iv, ok := QuasiPoisson(5, 2, .95, phi); ok || iv.Known() {
			t.Errorf("phi %v: %v %v, want nothing", phi, iv, ok)
		}
	}
}
