package bundle

import "math"

// program is what an attacker knows of figures that are nought or more: sums of some of
// them lie between two ends. It is solved exactly, by the simplex method on a dense
// tableau (Dantzig 1951; Bland's rule of 1977 against cycles), which is enough for tables
// of a few hundred figures.
type program struct {
	vars int
	rows []linear
}

// linear is lo <= sum of at[v] * v <= hi.
type linear struct {
	at     map[int]float64
	lo, hi float64
}

func (p *program) new() int { p.vars++; return p.vars - 1 }

func (p *program) add(lo, hi float64, at map[int]float64) {
	if len(at) > 0 {
		p.rows = append(p.rows, linear{at, lo, hi})
	}
}

// tableau is a program with a basis that fulfils it.
type tableau struct {
	a     [][]float64 // rows; the last column is the right-hand side
	basis []int
	n     int // columns without the right-hand side
	vars  int
}

const eps = 1e-9

// solve finds a first solution; false where there is none.
func (p *program) solve() (*tableau, bool) {
	type eq struct {
		at    map[int]float64
		slack float64
		b     float64
	}
	var eqs []eq
	for _, r := range p.rows {
		switch {
		case r.lo == r.hi:
			eqs = append(eqs, eq{r.at, 0, r.lo})
		default:
			if !math.IsInf(r.hi, 1) {
				eqs = append(eqs, eq{r.at, 1, r.hi})
			}
			if r.lo > 0 {
				eqs = append(eqs, eq{r.at, -1, r.lo})
			}
		}
	}
	slacks := 0
	for _, e := range eqs {
		if e.slack != 0 {
			slacks++
		}
	}
	m, n := len(eqs), p.vars+slacks+len(eqs)
	t := &tableau{n: n, vars: p.vars, basis: make([]int, m)}
	next := p.vars
	for i, e := range eqs {
		row := make([]float64, n+1)
		for v, c := range e.at {
			row[v] = c
		}
		if e.slack != 0 {
			row[next] = e.slack
			next++
		}
		row[n] = e.b
		if e.b < 0 {
			for j := range row {
				row[j] = -row[j]
			}
		}
		row[p.vars+slacks+i] = 1
		t.basis[i] = p.vars + slacks + i
		t.a = append(t.a, row)
	}
	cost := make([]float64, n)
	for j := p.vars + slacks; j < n; j++ {
		cost[j] = -1
	}
	if v := t.maximise(cost, n); v < -1e-6 {
		return nil, false
	}
	// an artificial figure that is left in the basis is nought: put another in its place
	for i := 0; i < len(t.a); i++ {
		if t.basis[i] < p.vars+slacks {
			continue
		}
		found := false
		for j := 0; j < p.vars+slacks; j++ {
			if math.Abs(t.a[i][j]) > 1e-7 {
				t.pivot(i, j)
				found = true
				break
			}
		}
		if !found { // the row says nothing new
			t.a = append(t.a[:i], t.a[i+1:]...)
			t.basis = append(t.basis[:i], t.basis[i+1:]...)
			i--
		}
	}
	// without the artificial ones
	for i, row := range t.a {
		t.a[i] = append(row[:p.vars+slacks:p.vars+slacks], row[n])
	}
	t.n = p.vars + slacks
	return t, true
}

// maximise goes on from the basis that it finds; the result is +Inf where there is no end.
func (t *tableau) maximise(cost []float64, n int) float64 {
	reduced := make([]float64, t.n+1)
	copy(reduced, cost)
	for i, b := range t.basis {
		if c := cost[b]; c != 0 {
			for j := range reduced {
				reduced[j] -= c * t.a[i][j]
			}
		}
	}
	for step := 0; ; step++ {
		in := -1
		for j := 0; j < n; j++ {
			if reduced[j] > eps && (in < 0 || step < 200 && reduced[j] > reduced[in]) {
				in = j
			}
		}
		if in < 0 {
			return -reduced[t.n]
		}
		out := -1
		for i := range t.a {
			if t.a[i][in] > 1e-8 {
				if out < 0 {
					out = i
					continue
				}
				d := t.a[i][t.n]/t.a[i][in] - t.a[out][t.n]/t.a[out][in]
				if d < -1e-12 || d < 1e-12 && t.basis[i] < t.basis[out] {
					out = i
				}
			}
		}
		if out < 0 {
			return math.Inf(1)
		}
		t.pivot(out, in)
		c := reduced[in]
		for j := range reduced {
			reduced[j] -= c * t.a[out][j]
		}
	}
}

func (t *tableau) pivot(r, c int) {
	d := t.a[r][c]
	for j := range t.a[r] {
		t.a[r][j] /= d
	}
	for i := range t.a {
		if f := t.a[i][c]; i != r && f != 0 {
			for j := range t.a[i] {
				t.a[i][j] -= f * t.a[r][j]
			}
		}
	}
	t.basis[r] = c
}

// bounds are the least and the most that a sum can be.
func (t *tableau) bounds(at map[int]float64) (lo, hi float64) {
	cost := make([]float64, t.n)
	for v, c := range at {
		cost[v] = c
	}
	hi = t.maximise(cost, t.n)
	for j := range cost {
		cost[j] = -cost[j]
	}
	return -t.maximise(cost, t.n), hi
}
