package meaning

import (
	"slices"

	"wakeledger/pipeline/layout"
	"wakeledger/pipeline/plan"
)

// group is the blocks of a log that have the same labels, understood together.
type group struct {
	blocks  []*layout.Block
	columns map[*layout.Block][]int // of the group, of each label of a block
	values  []*Values
	written []*Values // with their codes written out
	cands   [][]candidate
	rows    int
	off     Switches
	cache   map[string]float64
	scratch assigned
	kind    plan.Kind // "" while it is open
	list    bool      // it lists gear: no record of any kind
	ofThose []bool    // of each column: its heading says that it counts some of those before it
	ofFish  []string  // of each column: the fish that the group above its heading names, "" where it names none
	timed   []int     // columns of words that tell bites and the times of trolling too
}

// choice is, for each column, which of its candidates it is taken for.
type choice []int

func (g *group) assigned(c choice) assigned {
	a := make(assigned, len(c))
	g.assign(a, c)
	return a
}

// assign adds the columns to what a choice takes them for.
func (g *group) assign(a assigned, c choice) {
	for i, k := range c {
		x := &g.cands[i][k]
		if x.column == nil {
			continue
		}
		name := x.column.Name
		switch x.column.Parse {
		case "stretches", "story", "fishlist":
			name = x.column.Parse
		}
		a[name] = append(a[name], i)
	}
}

// score is the evidence for a choice: of each column alone, and between them.
func (g *group) score(c choice) float64 {
	t := 0.0
	for i, k := range c {
		t += g.cands[i][k].score
	}
	if g.scratch == nil {
		g.scratch = assigned{}
	}
	a := g.scratch // thousands of choices are scored: their room is used again
	for name, columns := range a {
		a[name] = columns[:0]
	}
	g.assign(a, c)
	for _, r := range relations {
		if !g.off[r.name] && !g.off["relations"] {
			t += worthOf(r.name) * r.score(g, a)
		}
	}
	return t
}

// best climbs to the best choice: one column at a time, then two at once. fixed is a
// column that keeps its meaning, -1 for none.
func (g *group) best(start choice, fixed int) (choice, float64) {
	now := slices.Clone(start)
	score := g.score(now)
	if g.off["jointly"] {
		return now, score
	}
	for {
		next, better := g.step(now, score, fixed)
		if next == nil && fixed < 0 {
			next, better = g.swap(now, score)
		}
		if next == nil {
			return now, score
		}
		now, score = next, better
	}
}

func (g *group) step(now choice, score float64, fixed int) (choice, float64) {
	var best choice
	for i := range now {
		if i == fixed {
			continue
		}
		for k := range g.cands[i] {
			if k == now[i] {
				continue
			}
			was := now[i]
			now[i] = k
			if s := g.score(now); s > score+1e-9 {
				best, score = slices.Clone(now), s
			}
			now[i] = was
		}
	}
	return best, score
}

const (
	near  = 3.5 // columns whose two best meanings are nearer than this are changed in pairs
	pairs = 14  // of them
)

func (g *group) swap(now choice, score float64) (choice, float64) {
	var open []int
	for i, c := range g.cands {
		if len(c) > 1 && c[0].score-c[1].score < near && len(open) < pairs {
			open = append(open, i)
		}
	}
	var best choice
	for x, i := range open {
		for _, j := range open[x+1:] {
			a, b := now[i], now[j]
			for now[i] = range g.cands[i] {
				for now[j] = range g.cands[j] {
					if now[i] == a || now[j] == b {
						continue
					}
					if s := g.score(now); s > score+1e-9 {
						best, score = slices.Clone(now), s
					}
				}
			}
			now[i], now[j] = a, b
		}
	}
	return best, score
}

// restrict leaves only the candidates that may stand in a block of a kind.
func (g *group) restrict(kind plan.Kind) {
	g.kind = kind
	for i := range g.cands {
		g.cands[i] = slices.DeleteFunc(slices.Clone(g.cands[i]), func(c candidate) bool {
			return c.column != nil && len(c.column.Kinds) > 0 && !c.column.In(kind)
		})
	}
}

// gap is how much worse the evidence is for the next best reading of a column, and what
// that would take it for.
func (g *group) gap(c choice, score float64, column int) (float64, int, choice) {
	gap, next := 99.0, -1
	var other choice
	for k := range g.cands[column] {
		if k == c[column] {
			continue
		}
		d := slices.Clone(c)
		d[column] = k
		d, s := g.best(d, column)
		if score-s < gap {
			gap, next, other = score-s, k, d
		}
	}
	return gap, next, other
}
