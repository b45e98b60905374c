package stats

import (
	"math"

	"gonum.org/v1/gonum/floats"
)

// LogLog is the relation W = a L^b, fitted as a straight line in the logarithms.
type LogLog struct {
	LnA, B     float64
	LnASE, BSE float64 // standard errors
	S          float64 // residual standard deviation of ln W, on N-2
	R2         float64 // of the line in the logarithms
	N          int
	Dropped    int     // pairs with a value that is not finite and above 0
	Min, Max   float64 // range of the lengths fitted
	Warnings   []Warning

	line line
}

// Prediction is what a LogLog says of one length.
type Prediction struct {
	Median   float64  // exp of the line
	Mean     float64  // Median times Correction
	Interval Interval // prediction interval of one more weight
	OfMedian Interval // confidence interval of Median
	Outside  bool     // the length is outside the range fitted
	Warnings []Warning
}

// FitLogLog fits ln W = ln a + b ln L by least squares.
//
// ok is false with fewer than three pairs of values above 0, where all lengths
// are equal, or where the slices differ in length.
func FitLogLog(length, weight []float64) (LogLog, bool) {
	kept, weights, dropped := positivePairs(length, weight)
	x, y := logs(kept), logs(weights)
	nan := math.NaN()
	f := LogLog{LnA: nan, B: nan, LnASE: nan, BSE: nan, S: nan, R2: nan, Min: nan, Max: nan, N: len(x), Dropped: dropped}
	if dropped > 0 {
		f.Warnings = append(f.Warnings, WarnNotPositive)
	}
	l, ok := fitLine(x, y)
	if !ok {
		return f, false
	}
	f.line = l
	f.LnA, f.B, f.LnASE, f.BSE, f.S, f.R2 = l.intercept, l.slope, l.interceptSE(), l.slopeSE(), l.s, l.r2
	f.Min, f.Max = floats.Min(kept), floats.Max(kept)
	return f, true
}

// Correction is the factor exp(S^2/2) from the median weight, which the line
// gives, to the mean (Sprugel 1983, Ecology 64:209-210).
func (f LogLog) Correction() float64 { return math.Exp(f.S * f.S / 2) }

// At predicts the weight at a length. The prediction interval is
// exp(line -/+ t S sqrt(1 + 1/n + (x-mean)^2/Sxx)) with t on N-2; the correction
// for the mean does not belong on its ends, and is not there.
//
// ok is false where nothing was fitted, the length is not finite and above 0,
// or conf is not between 0 and 1. A length outside the range fitted is answered,
// and said to be outside.
func (f LogLog) At(length, conf float64) (Prediction, bool) {
	x := math.Log(length)
	if f.line.n < 3 || math.IsNaN(x) || math.IsInf(x, 0) || !validLevel(conf) {
		return Prediction{math.NaN(), math.NaN(), unknown(), unknown(), false, nil}, false
	}
	median := math.Exp(f.line.at(x))
	share := f.line.share(x)
	p := Prediction{
		Median:   median,
		Mean:     median * f.Correction(),
		Interval: logInterval(median, f.S*math.Sqrt(1+share), f.line.n-2, conf),
		OfMedian: logInterval(median, f.S*math.Sqrt(share), f.line.n-2, conf),
		Outside:  length < f.Min || length > f.Max,
	}
	if p.Outside {
		p.Warnings = []Warning{WarnOutside}
	}
	return p, true
}
