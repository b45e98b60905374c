package meaning

import "math"

// Vote is one piece of evidence and how much it counts.
type Vote struct {
	Evidence string
	Weight   float64
}

// Reading is a meaning that a column may have, with what speaks for it.
type Reading struct {
	Means string // as users are told it
	Score float64
	Votes []Vote
}

// ColumnWhy is why a column was read as it was.
type ColumnWhy struct {
	Heading  string
	Readings []Reading // the one taken first, then the best of the others
	Gap      float64   // how much worse the best other reading of the block is
	Next     string    // what that takes the column for; "" where there is none
}

// Why is why the columns of a hand were read as they were.
type Why struct {
	Columns []ColumnWhy
	Between []Vote // what speaks for the columns together
}

// mostReadings of a column are told.
const mostReadings = 4

// Why tells it for the first block of each hand; the others are read like it.
func (l *Log) Why() map[*Understood]Why {
	all := map[*Understood]Why{}
	seen := map[*group]bool{}
	for _, u := range l.Blocks {
		g := u.b.group
		if seen[g] {
			continue
		}
		seen[g] = true
		w := Why{Between: g.between(u.choice)}
		score := g.score(u.choice)
		for i := range g.values {
			if len(g.values[i].cells) > 0 {
				w.Columns = append(w.Columns, g.why(u.choice, score, i))
			}
		}
		all[u] = w
	}
	return all
}

func (g *group) why(c choice, score float64, i int) ColumnWhy {
	w := ColumnWhy{Heading: headingOf(g.values[i].Label), Readings: []Reading{g.cands[i][c[i]].reading()}}
	for k := range g.cands[i] {
		if k != c[i] && len(w.Readings) < mostReadings {
			w.Readings = append(w.Readings, g.cands[i][k].reading())
		}
	}
	if gap, next, _ := g.gap(c, score, i); next >= 0 {
		w.Gap, w.Next = gap, Words(meaningOf(g.cands[i][next]))
	}
	return w
}

func (c *candidate) reading() Reading {
	r := Reading{Means: Words(meaningOf(*c)), Score: c.score}
	for _, v := range c.votes {
		r.Votes = append(r.Votes, Vote(v))
	}
	return r
}

// between are the relations that hold, or fail, between the columns as they are taken.
func (g *group) between(c choice) []Vote {
	var out []Vote
	a := g.assigned(c)
	for _, r := range relations {
		if s := worthOf(r.name) * r.score(g, a); math.Abs(s) > 0.05 && !g.off[r.name] && !g.off["relations"] {
			out = append(out, Vote{r.name, s})
		}
	}
	return out
}
