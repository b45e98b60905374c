package stats

import "math"

// ConcordanceResult is Lin's concordance correlation coefficient.
type ConcordanceResult struct {
	Rho           float64  // 1 where every pair is equal; NaN where neither side varies
	Interval      Interval // by Fisher's z; unknown with fewer than 4 pairs or a Rho of 0 or 1
	R             float64  // Pearson's correlation
	Accuracy      float64  // C_b = Rho/R, how near the line of best fit is to that of equality
	ScaleShift    float64  // standard deviation of the first over that of the second
	LocationShift float64  // first mean less second, over the root of the product of the deviations
	N             int
}

// Concordance returns Lin's coefficient for pairs of one length (Lin 1989,
// Biometrics 45:255-268) with variances and covariance divided by n, as there;
// division by n-1, as some programs do, gives slightly more. The interval is by
// Fisher's z with the standard error as corrected in 2000 (Biometrics
// 56:324-325).
//
// Everything is NaN without pairs, where lengths differ, or where a value is
// not finite.
func Concordance(x, y []float64, conf float64) ConcordanceResult {
	nan := math.NaN()
	c := ConcordanceResult{nan, unknown(), nan, nan, nan, nan, len(x)}
	if len(x) == 0 || len(x) != len(y) {
		return c
	}
	m := momentsOf(x, y)
	c.Rho = 2 * m.sxy / (m.sxx + m.syy + square(m.meanX-m.meanY))
	c.R = m.sxy / math.Sqrt(m.sxx*m.syy)
	c.Accuracy = c.Rho / c.R
	c.ScaleShift = math.Sqrt(m.sxx / m.syy)
	c.LocationShift = (m.meanX - m.meanY) / math.Pow(m.sxx*m.syy, .25)
	if c.N > 3 && validLevel(conf) {
		c.Interval = c.fisherInterval(normalQuantile(1 - (1-conf)/2))
	}
	return c
}

// fisherInterval is Lin's interval on the scale of Fisher's z.
func (c ConcordanceResult) fisherInterval(z float64) Interval {
	p, r, u := c.Rho, c.R, c.LocationShift
	v := (1-r*r)*p*p*(1-p*p)/(r*r) + 2*p*p*p*(1-p)*u*u/r - p*p*p*p*u*u*u*u/(2*r*r)
	se := math.Sqrt(v/float64(c.N-2)) / (1 - p*p)
	iv := Interval{math.Tanh(math.Atanh(p) - z*se), math.Tanh(math.Atanh(p) + z*se)}
	if !iv.Known() {
		return unknown()
	}
	return iv
}

// moments are means, variances and covariance with divisor n.
type moments struct {
	meanX, meanY, sxx, syy, sxy float64
}

func momentsOf(x, y []float64) moments {
	var m moments
	n := float64(len(x))
	for i := range x {
		m.meanX += x[i] / n
		m.meanY += y[i] / n
	}
	for i := range x {
		dx, dy := x[i]-m.meanX, y[i]-m.meanY
		m.sxx += dx * dx / n
		m.syy += dy * dy / n
		m.sxy += dx * dy / n
	}
	return m
}
