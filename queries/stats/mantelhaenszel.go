package stats

import "math"

// Stratum is two counts to be compared with each other and with nothing
// outside the stratum: what one trip took at a level, and at its reference.
type Stratum struct {
	A, B Count
}

// informative reports whether the stratum says anything about A over B.
func (s Stratum) informative() bool {
	return s.A.usable() && s.B.usable() && s.A.Events+s.B.Events > 0
}

// MantelHaenszel returns the ratio of rates, A over B, common to the strata:
//
//	R = sum(a*tb/t) / sum(b*ta/t),  t = ta+tb
//
// with the variance of ln R by Greenland and Robins 1985 (Biometrics 41:55-68):
// sum((a+b)*ta*tb/t^2) / (sum(a*tb/t) * sum(b*ta/t)). The interval and the
// two-sided p-value are Wald's on the log scale and agree with each other.
//
// The estimate stays sound when strata are many and thin. Strata without
// events, or with effort on one side only, carry no information; they are left
// out and counted in Skipped. Where all events fall on one side the ratio is 0
// or +Inf, and there is neither interval nor p-value.
//
// ok is false where no stratum is informative or conf is not between 0 and 1.
func MantelHaenszel(strata []Stratum, conf float64) (RateRatio, bool) {
	return QuasiMantelHaenszel(strata, conf, 1)
}

// QuasiMantelHaenszel is MantelHaenszel with the variance multiplied by the
// dispersion phi (quasi-likelihood; McCullagh and Nelder 1989, from memory). A
// phi below 1 counts as 1. ok is false also where phi is not a positive finite
// number.
func QuasiMantelHaenszel(strata []Stratum, conf, phi float64) (RateRatio, bool) {
	r := RateRatio{Ratio: math.NaN(), Interval: unknown(), P: math.NaN(), LogSE: math.NaN(),
		Phi: math.Max(phi, 1), Conf: conf, Method: MethodMantelHaenszel}
	var forA, forB, v float64
	for _, s := range strata {
		if !s.informative() {
			r.Skipped++
			continue
		}
		r.add(s)
		t := s.A.Effort + s.B.Effort
		wa, wb := s.A.Effort/t, s.B.Effort/t
		forA += float64(s.A.Events) * wb
		forB += float64(s.B.Events) * wa
		v += float64(s.A.Events+s.B.Events) * wa * wb
	}
	if r.Skipped > 0 {
		r.Warnings = append(r.Warnings, WarnSkipped)
	}
	if r.Strata == 0 || !validLevel(conf) || !validEffort(phi) {
		return r, false
	}
	r.Ratio = forA / forB
	if forA == 0 || forB == 0 {
		r.Warnings = append(r.Warnings, WarnOneSided)
		return r, true
	}
	r.LogSE = math.Sqrt(r.Phi * v / (forA * forB))
	r.Interval = logInterval(r.Ratio, r.LogSE, math.Inf(1), conf)
	r.P = normalP(math.Log(r.Ratio) / r.LogSE)
	return r, true
}

// add counts a stratum in.
func (r *RateRatio) add(s Stratum) {
	r.Strata++
	r.Events[0] += s.A.Events
	r.Events[1] += s.B.Events
	r.Effort[0] += s.A.Effort
	r.Effort[1] += s.B.Effort
}
