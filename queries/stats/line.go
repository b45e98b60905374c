package stats

import "math"

// line is a least-squares line y = intercept + slope x with what its standard
// errors need.
type line struct {
	intercept, slope float64
	s                float64 // residual standard deviation on n-2
	n                float64
	meanX, sxx       float64
	r2               float64
}

// fitLine fits a line; ok is false with fewer than three points, or where all x
// are equal. x and y must be of one length.
func fitLine(x, y []float64) (line, bool) {
	l := line{n: float64(len(x))}
	if l.n < 3 {
		return l, false
	}
	var meanY, sxy, syy float64
	for i := range x {
		l.meanX += x[i] / l.n
		meanY += y[i] / l.n
	}
	for i := range x {
		l.sxx += square(x[i] - l.meanX)
		sxy += (x[i] - l.meanX) * (y[i] - meanY)
		syy += square(y[i] - meanY)
	}
	if l.sxx <= l.n*square(1e-12*l.meanX) {
		return l, false
	}
	l.slope = sxy / l.sxx
	l.intercept = meanY - l.slope*l.meanX
	var rss float64
	for i := range x {
		rss += square(y[i] - l.at(x[i]))
	}
	l.s = math.Sqrt(rss / (l.n - 2))
	l.r2 = 1 - rss/syy
	return l, true
}

// at is the line's y at x.
func (l line) at(x float64) float64 { return l.intercept + l.slope*x }

// slopeSE is the standard error of the slope.
func (l line) slopeSE() float64 { return l.s / math.Sqrt(l.sxx) }
