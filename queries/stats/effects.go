package stats

import (
	"math"
	"slices"

	"gonum.org/v1/gonum/mat"
)

// Obs is one count of the model: what was caught with some effort in one
// stratum (a trip, or a leg), at X, one value a column.
type Obs struct {
	Stratum int // 0, 1, 2, ...
	Cell    int // 0, 1, 2, ...: counts of one cell are added up before the dispersion is taken
	X       []float64
	Count
}

// Effects is a Poisson regression with log effort as offset and an effect of
// each stratum:
//
//	E(events) = effort * exp(stratum's effect + beta . x)
//
// The strata's effects are not estimated: given its total, a stratum's counts
// are multinomial with shares proportional to effort*exp(beta . x), and the
// maximum of that likelihood is the beta of the regression with one indicator a
// stratum (Cameron and Trivedi 2013, Regression Analysis of Count Data, 2nd ed.,
// section 9.4, from memory; testdata holds R's glm on the same counts). A stratum
// without events, or with one count only, says nothing of beta.
type Effects struct {
	Beta []float64 // log ratio for one step of a column; 0 where dropped
	// Kept tells the columns that the strata can tell from those before them.
	Kept   []bool
	LogLik float64
	Events int64   // in strata that say something
	Strata int     // that do
	Theta  float64 // of the strata's gamma law; 0: each has its own effect

	rows    [][]row // by stratum
	widest  int     // most counts in one
	cells   int
	info    *mat.SymDense // of the kept columns
	inverse *mat.SymDense // of info
	index   []int         // of the kept columns
}

// row is a count with what its fit asks for again and again.
type row struct {
	Obs
	log float64 // of the effort
	on  []int   // the columns in which it is not 0: most are of one level of each factor
}

func newRow(o Obs) row {
	r := row{Obs: o, log: math.Log(o.Effort)}
	for j, v := range o.X {
		if v != 0 {
			r.on = append(r.on, j)
		}
	}
	return r
}

const (
	effectsTol    = 1e-8 // of a log ratio, where a fit has settled
	effectsRounds = 100
	effectsFar    = 25.0 // a log ratio at which nothing more can be gained: e^-25 of a strike
	aliased       = 1e-7 // share of a column left by those before it, below which it is dropped
)

// FitEffects fits the model to counts with k columns. ok is false where no
// stratum says anything of any column.
func FitEffects(obs []Obs, k int) (*Effects, bool) { return fitEffects(obs, k, 0) }

// FitLuck is FitEffects with what strata say by their totals added: their
// effects are draws from a gamma law with mean 1 and squared coefficient of
// variation 1/theta, which makes the totals negative binomial (Hausman, Hall
// and Griliches 1984, Econometrica 52:909-938, from memory). A column of ones is added
// after the k. Theta of 0 is estimated by maximum likelihood.
func FitLuck(obs []Obs, k int, theta float64) (*Effects, bool) {
	with := make([]Obs, len(obs))
	for i, o := range obs {
		o.X = append(slices.Clone(o.X), 1)
		with[i] = o
	}
	if theta > 0 {
		return fitEffects(with, k+1, theta)
	}
	f, ok := fitEffects(with, k+1, mostTheta)
	if !ok {
		return f, false
	}
	// golden section on the logarithm
	at := func(l float64) float64 {
		f.Theta = math.Exp(l)
		return f.maximise(f.Beta, -1)
	}
	lo, hi, g := math.Log(leastTheta), math.Log(mostTheta), (math.Sqrt(5)-1)/2
	a, b := hi-g*(hi-lo), lo+g*(hi-lo)
	va, vb := at(a), at(b)
	for hi-lo > 0.01 {
		if va > vb {
			hi, b, vb = b, a, va
			a = hi - g*(hi-lo)
			va = at(a)
		} else {
			lo, a, va = a, b, vb
			b = lo + g*(hi-lo)
			vb = at(b)
		}
	}
	f.Theta = math.Exp((lo + hi) / 2)
	f.finish()
	return f, true
}

const (
	leastTheta = 0.1
	mostTheta  = 1e4
)

func fitEffects(obs []Obs, k int, theta float64) (*Effects, bool) {
	f := &Effects{Beta: make([]float64, k), Kept: make([]bool, k), Theta: theta}
	f.group(obs)
	f.keep(k)
	if len(f.index) == 0 {
		return f, false
	}
	if theta > 0 {
		var events, effort float64
		for _, rows := range f.rows {
			for _, o := range rows {
				events, effort = events+float64(o.Events), effort+o.Effort
			}
		}
		f.Beta[k-1] = math.Log(events / effort)
	}
	f.finish()
	return f, true
}

func (f *Effects) finish() {
	f.LogLik = f.maximise(f.Beta, -1)
	f.info, _ = f.information(f.Beta, f.index)
	f.inverse = inverse(f.info)
}

// group puts the counts with effort by stratum and keeps the strata that say
// something.
func (f *Effects) group(obs []Obs) {
	var all [][]row
	for _, o := range obs {
		if !o.usable() {
			continue
		}
		for o.Stratum >= len(all) {
			all = append(all, nil)
		}
		all[o.Stratum] = append(all[o.Stratum], newRow(o))
		f.cells = max(f.cells, o.Cell+1)
	}
	for _, rows := range all {
		var events int64
		for _, o := range rows {
			events += o.Events
		}
		if len(rows) > 1 && events > 0 || len(rows) > 0 && f.Theta > 0 {
			f.rows = append(f.rows, rows)
			f.Events += events
			f.widest = max(f.widest, len(rows))
		}
	}
	f.Strata = len(f.rows)
}

// keep finds the columns that differ within strata and do not follow from those
// before them: by Gram and Schmidt's steps on the columns centred in each
// stratum by expected counts without any effect.
func (f *Effects) keep(k int) {
	all := make([]int, k)
	for j := range k {
		all[j] = j
	}
	start := make([]float64, k)
	gram, _ := f.information(start, all)
	var basis [][]float64 // rows of the Cholesky factor, in the order kept
	for _, j := range all {
		left := gram.At(j, j)
		l := make([]float64, 0, len(basis)+1)
		for i, b := range basis {
			v := gram.At(f.index[i], j)
			for m := range i {
				v -= b[m] * l[m]
			}
			l = append(l, v/b[i])
			left -= l[i] * l[i]
		}
		if gram.At(j, j) <= 1e-12 || left < aliased*gram.At(j, j) {
			continue
		}
		basis = append(basis, append(l, math.Sqrt(left)))
		f.index = append(f.index, j)
		f.Kept[j] = true
	}
}

// shares sets p to the stratum's shares at beta and returns what is expected of
// all of it.
func shares(rows []row, beta, p []float64) float64 {
	top := math.Inf(-1)
	for i := range rows {
		o := &rows[i]
		v := o.log
		for _, j := range o.on {
			v += beta[j] * o.X[j]
		}
		p[i] = v
		top = max(top, v)
	}
	sum := 0.0
	for i := range rows {
		p[i] = math.Exp(p[i] - top)
		sum += p[i]
	}
	for i := range rows {
		p[i] /= sum
	}
	return sum * math.Exp(top)
}

// logLik is the log-likelihood at beta, but for what does not hang on it.
func (f *Effects) logLik(beta []float64) float64 {
	sum := 0.0
	p := make([]float64, f.widest)
	for _, rows := range f.rows {
		all := shares(rows, beta, p)
		total := 0.0
		for i := range rows {
			if o := &rows[i]; o.Events > 0 {
				sum += float64(o.Events) * math.Log(p[i])
				total += float64(o.Events)
			}
		}
		if f.Theta > 0 {
			sum += negativeBinomial(total, all, f.Theta)
		}
	}
	return sum
}

// negativeBinomial is the log-likelihood of a count with mean m and variance
// m + m^2/theta, but for its factorial.
func negativeBinomial(y, m, theta float64) float64 {
	a, _ := math.Lgamma(y + theta)
	b, _ := math.Lgamma(theta)
	return a - b + y*math.Log(m/(m+theta)) - theta*math.Log1p(m/theta)
}

// information is that of some columns, in rising order, at beta, and their score.
func (f *Effects) information(beta []float64, columns []int) (info *mat.SymDense, score []float64) {
	k := len(columns)
	info = mat.NewSymDense(max(k, 1), nil)
	raw := info.RawSymmetric()
	score = make([]float64, k)
	mean := make([]float64, k)
	p := make([]float64, f.widest)
	at := make([]int, len(beta)) // of a column among those asked for, -1 where it is none
	for j := range at {
		at[j] = slices.Index(columns, j)
	}
	for _, rows := range f.rows {
		all := shares(rows, beta, p)
		clear(mean)
		total := 0.0
		for i := range rows {
			o := &rows[i]
			total += float64(o.Events)
			for _, j := range o.on {
				if a := at[j]; a >= 0 {
					mean[a] += p[i] * o.X[j]
				}
			}
		}
		for i := range rows {
			o := &rows[i]
			e := total * p[i]
			for n, j := range o.on {
				a := at[j]
				if a < 0 {
					continue
				}
				v := o.X[j]
				score[a] += (float64(o.Events) - e) * v
				for _, l := range o.on[n:] {
					if b := at[l]; b >= 0 {
						raw.Data[a*raw.Stride+b] += e * v * o.X[l]
					}
				}
			}
		}
		weight, off := -total, 0.0
		if f.Theta > 0 {
			share := f.Theta / (all + f.Theta)
			weight, off = weight+all*share, (total-all)*share
		}
		for a, m := range mean {
			score[a] += off * m
			for b := a; b < k && m != 0; b++ {
				raw.Data[a*raw.Stride+b] += weight * m * mean[b]
			}
		}
	}
	return info, score
}

// maximise moves the kept values of beta, but for the column held (-1: none), to
// the maximum by Newton's steps, halved where they do not rise, and returns the
// log-likelihood there.
func (f *Effects) maximise(beta []float64, held int) float64 {
	var free []int
	for _, j := range f.index {
		if j != held {
			free = append(free, j)
		}
	}
	at := f.logLik(beta)
	if len(free) == 0 {
		return at
	}
	next := make([]float64, len(beta))
	for range effectsRounds {
		step := f.step(beta, free)
		rise := math.Inf(-1)
		for half := 1.0; half > 1e-4; half /= 2 {
			copy(next, beta)
			for a, j := range free {
				next[j] = math.Max(-effectsFar, math.Min(effectsFar, beta[j]+half*step[a]))
			}
			if rise = f.logLik(next) - at; rise >= -1e-12*(1+math.Abs(at)) {
				break
			}
			rise = math.Inf(-1)
		}
		if math.IsInf(rise, -1) {
			break
		}
		moved := 0.0
		for _, j := range free {
			moved = math.Max(moved, math.Abs(next[j]-beta[j]))
		}
		copy(beta, next)
		at += rise
		if moved < effectsTol {
			break
		}
	}
	return at
}

// step is Newton's step at beta, no longer than 4 in any column.
func (f *Effects) step(beta []float64, columns []int) []float64 {
	info, score := f.information(beta, columns)
	k := len(score)
	for a := range k { // where a level runs off, its information does too
		info.SetSym(a, a, info.At(a, a)*(1+1e-12)+1e-12)
	}
	out := mat.NewVecDense(k, nil)
	var c mat.Cholesky
	if !c.Factorize(info) || c.SolveVecTo(out, mat.NewVecDense(k, score)) != nil && out.Len() != k {
		return make([]float64, k)
	}
	far := 0.0
	for a := range k {
		far = math.Max(far, math.Abs(out.AtVec(a)))
	}
	if far > 4 {
		out.ScaleVec(4/far, out)
	}
	return out.RawVector().Data
}

// Profile is the log-likelihood ratio 2*(maximum - maximum with Beta[j] = b).
func (f *Effects) Profile(j int, b float64) float64 {
	return f.profile(slices.Clone(f.Beta), j, b)
}

// profile starts at beta and leaves the values found there.
func (f *Effects) profile(beta []float64, j int, b float64) float64 {
	beta[j] = b
	return math.Max(0, 2*(f.LogLik-f.maximise(beta, j)))
}

// Within are the values of Beta[j] whose profile is at most limit: an end is
// infinite where the likelihood never falls by as much (Venzon and Moolgavkar
// 1988, Applied Statistics 37:87-94, from memory).
func (f *Effects) Within(j int, limit float64) Interval {
	return Interval{Lo: f.end(j, limit, -1), Hi: f.end(j, limit, 1)}
}

// end steps outwards until the profile passes limit and then closes in on it:
// its square root is nearly straight.
func (f *Effects) end(j int, limit, sign float64) float64 {
	target, beta := math.Sqrt(limit), slices.Clone(f.Beta)
	inside, low := f.Beta[j], 0.0
	step := math.Min(2, math.Max(0.05, math.Sqrt(limit*f.Variance(j))))
	outside, high := inside, 0.0
	for high < target {
		if math.Abs(outside) > effectsFar {
			return math.Inf(int(sign))
		}
		inside, low = outside, high
		outside += sign * step
		high = math.Sqrt(f.profile(beta, j, outside))
		step *= 1.5
	}
	for range 60 {
		share := (target - low) / (high - low)
		at := inside + (outside-inside)*math.Max(0.02, math.Min(0.98, share))
		v := math.Sqrt(f.profile(beta, j, at))
		if math.Abs(v-target) < 1e-8*target || math.Abs(outside-inside) < 1e-11 {
			return at
		}
		if v < target {
			inside, low = at, v
		} else {
			outside, high = at, v
		}
	}
	return (inside + outside) / 2
}
