package stats

import "math"

// Interval is a closed interval [Lo, Hi]. Both ends are NaN where none is
// known; an end may be infinite.
type Interval struct {
	Lo, Hi float64
}

// Contains reports whether x lies in the interval, ends included. It is false
// for an unknown interval.
func (iv Interval) Contains(x float64) bool { return iv.Lo <= x && x <= iv.Hi }

// Known reports whether both ends of the interval are numbers.
func (iv Interval) Known() bool { return !math.IsNaN(iv.Lo) && !math.IsNaN(iv.Hi) }

// unknown is the interval about which nothing can be said.
func unknown() Interval { return Interval{math.NaN(), math.NaN()} }

// validLevel reports whether conf can be a confidence level.
func validLevel(conf float64) bool { return conf > 0 && conf < 1 }

// validEffort reports whether t can be divided by: positive and finite.
func validEffort(t float64) bool { return t > 0 && !math.IsInf(t, 1) }
