package meaning

import (
	"math"
	"slices"
	"strings"

	"wakeledger/pipeline/layout"
	"wakeledger/pipeline/unit"
	"wakeledger/pipeline/words"
)

// Between these lies a fish's weight in kilograms over its length in centimetres cubed, from
// slender (wahoo, marlin) to stout (bluefin, opah): from memory, no source.
const leastShape, mostShape = 1.5e-6, 4.5e-5

// overGirth is what length times girth squared, in centimetres, is divided by for kilograms:
// the rule of 800 for inches and pounds.
const overGirth = 800 * 2.54 * 2.54 * 2.54 / 0.45359237

// weightLength holds that fish weigh as their length cubed, or as length times girth squared.
func weightLength(g *group, a assigned) float64 {
	l, w := a.first("length_cm"), a.first("scale_kg")
	if w >= 0 && g.ofRule(w) {
		return -6
	}
	if l < 0 || w < 0 || g.voted(w, "scale_kg", guessHeading) {
		return 0 // a good guess goes with the length too
	}
	gi, sp := a.first("girth_cm"), a.first("species")
	return g.cached("lw", []int{l, w, gi, sp}, func() float64 {
		if gi >= 0 {
			if s := g.byGirth(l, gi, w); s != 0 {
				return s
			}
		}
		k, of := g.shapes(l, w, sp)
		if len(k) < 4 {
			return 0
		}
		scales := g.scales(l, w)
		named := g.worded(l, "length_cm") && g.worded(w, "scale_kg")
		if possible := likeliest(k, scales); possible < 0.7 {
			if named {
				return 0 // what is named so is so, however odd the fish
			}
			return -3
		}
		q := min(spread(k), spread(of))
		switch {
		case q < 1.8 && g.growTogether(l, w):
			return 3.4
		case q < 1.8:
			return 1.8
		case q < 2.6:
			return 0.8
		case named:
			return 0
		}
		return -1
	})
}

// guessedCell tells a figure that is a guess: ~7.
func guessedCell(c layout.Cell) bool { return digits(c.Text) > 0 && words.Hedged(c.Text) }

// lureWeight holds that a lure weighs the same on each of its rows: a weight that is left out beside some, or is
// another, is a fish's. So is one that is guessed.
func lureWeight(g *group, a assigned) float64 {
	l, w := a.first("lure"), a.first("lure_weight_g")
	switch {
	case w < 0:
		return 0
	case g.values[w].share("guessed", guessedCell) > 0:
		return -3
	case l < 0:
		return 0
	}
	return g.cached("lure", []int{l, w}, func() float64 {
		of, rows, other := map[string]string{}, 0, 0
		for r := range g.rows {
			lure, weight := strings.ToLower(g.values[l].Rows[r].Text), g.values[w].Rows[r].Text
			if lure == "" {
				continue
			}
			if was, ok := of[lure]; ok {
				rows++
				if was != weight {
					other++
				}
			}
			of[lure] = weight
		}
		if rows > 0 && 2*other >= rows {
			return -3
		}
		return 0
	})
}

// growTogether tells two columns of eight fish or more of which the longer is nearly always the
// heavier: no other column of a fish goes so.
func (g *group) growTogether(l, w int) bool {
	var x, y []float64
	for r := range g.rows {
		a, b := math.Log(g.length(l, r)), math.Log(g.value(w, r))
		if !math.IsNaN(a) && !math.IsInf(a, 0) && !math.IsNaN(b) && !math.IsInf(b, 0) {
			x, y = append(x, a), append(y, b)
		}
	}
	return len(x) >= 8 && correlation(x, y) > 0.8
}

func correlation(x, y []float64) float64 {
	n := float64(len(x))
	var sx, sy, xx, yy, xy float64
	for i := range x {
		sx, sy = sx+x[i], sy+y[i]
		xx, yy, xy = xx+x[i]*x[i], yy+y[i]*y[i], xy+x[i]*y[i]
	}
	vx, vy := xx-sx*sx/n, yy-sy*sy/n
	if vx <= 0 || vy <= 0 {
		return 0
	}
	return (xy - sx*sy/n) / math.Sqrt(vx*vy)
}

// shapes are weight over length cubed of each fish that has both, in the numbers as they are
// written, and the same over what is usual of the fish's own kind where there are several.
func (g *group) shapes(l, w, species int) (all, ofKind []float64) {
	kinds := map[string][]float64{}
	for r := range g.rows {
		x := g.length(l, r)
		v := g.value(w, r) / (x * x * x)
		if math.IsNaN(v) || math.IsInf(v, 0) || v <= 0 {
			continue
		}
		all = append(all, v)
		if species >= 0 {
			name := normalise(g.values[species].Rows[r].Text)
			kinds[name] = append(kinds[name], v)
		}
	}
	for _, k := range kinds {
		if len(k) < 2 {
			continue
		}
		slices.Sort(k)
		for _, v := range k {
			ofKind = append(ofKind, v/k[len(k)/2])
		}
	}
	return all, ofKind
}

// spread is how much the third quarter of numbers is of the first; large where there are few.
func spread(k []float64) float64 {
	if len(k) < 4 {
		return 99
	}
	slices.Sort(k)
	return k[len(k)*3/4] / k[len(k)/4]
}

// scales are the factors that make kilograms over cubed centimetres of the numbers of two
// columns, in the units that these have or may have.
func (g *group) scales(length, weight int) []float64 {
	var out []float64
	for _, l := range g.units(length, "length_cm", unit.Inch, unit.Centimetre) {
		for _, w := range g.units(weight, "scale_kg", unit.Pound, unit.Kilogram) {
			x, errX := unit.Convert(1, l, unit.Centimetre)
			y, errY := unit.Convert(1, w, unit.Kilogram)
			if errX == nil && errY == nil {
				out = append(out, y/(x*x*x))
			}
		}
	}
	return out
}

// units are the unit of a column that is known, else the usual ones.
func (g *group) units(column int, name string, usual ...unit.Unit) []unit.Unit {
	if u := g.unit(column, name); u != "" {
		return []unit.Unit{u}
	}
	return usual
}

// likeliest is the part of the numbers that are a fish's shape in the units that suit most.
func likeliest(k, scales []float64) float64 {
	best := 0
	for _, s := range scales {
		n := 0
		for _, v := range k {
			if v*s >= leastShape && v*s <= mostShape {
				n++
			}
		}
		best = max(best, n)
	}
	return float64(best) / float64(len(k))
}

// byGirth holds three columns against the rule of length times girth squared: 0 where fewer
// than three fish have all three.
func (g *group) byGirth(l, girth, w int) float64 {
	var k []float64
	for r := range g.rows {
		x, y := g.length(l, r), g.length(girth, r)
		if v := g.value(w, r) / (x * y * y); !math.IsNaN(v) && !math.IsInf(v, 0) && v > 0 {
			k = append(k, v)
		}
	}
	if len(k) < 3 {
		return 0
	}
	slices.Sort(k)
	middle := k[len(k)/2]
	suits := slices.ContainsFunc(g.scales(l, w), func(s float64) bool {
		of := middle * s * overGirth
		return of > 0.65 && of < 1.5
	})
	switch q := k[len(k)*3/4] / k[len(k)/4]; {
	case suits && q < 1.6 && len(k) > 5:
		return 5
	case suits && q < 1.6:
		return 3.5
	case suits && q < 2.2:
		return 1.8
	case g.worded(l, "length_cm") && g.worded(w, "scale_kg") && g.worded(girth, "girth_cm"):
		return 0
	}
	return -2
}

// fewByRule is how many weights must be those of the girth rule to be no scale's.
const fewByRule = 5

// ofRule tells weights that were worked out from columns that are headed length and girth.
func (g *group) ofRule(w int) bool {
	return g.cached("rule", []int{w}, func() float64 {
		for l := range g.values {
			for girth := range g.values {
				if g.worded(l, "length_cm") && g.worded(girth, "girth_cm") && g.byRule(l, girth, w) {
					return 1
				}
			}
		}
		return 0
	}) == 1
}

// byRule tells weights that were worked out: each is of a fish with a length and a girth, and is what the girth rule
// makes of them, but for its last digit. Fish on a scale differ by some parts in a hundred.
func (g *group) byRule(l, girth, w int) bool {
	n := 0
	for r := range g.rows {
		weight := g.value(w, r)
		if math.IsNaN(weight) {
			continue
		}
		digits := 0
		if at := strings.IndexAny(g.values[w].Rows[r].Text, ".,"); at >= 0 {
			digits = min(2, len(g.values[w].Rows[r].Text)-at-1)
		}
		x, y := g.length(l, r), g.length(girth, r)
		half := 0.501 * math.Pow10(-digits)
		if math.IsNaN(x+y) || math.Abs(x*y*y/800-weight) > half && math.Abs(x*y*y/overGirth-weight) > half {
			return false
		}
		n++
	}
	return n >= fewByRule
}

// told tells a cell that says something: no blank, no dash, no NA.
func told(c layout.Cell) bool {
	return c.Look != layout.Blank && !words.NotLogged(c.Text) && strings.Trim(c.Text, "-–—. ") != ""
}

// fatesFit holds that fish that were missed have no species and no measures, and fish that
// were lost no measures, where those that came to the boat have them.
func fatesFit(g *group, a assigned) float64 {
	o, s := a.first("outcome"), a.first("species")
	var measures []int
	for _, name := range []string{"length_cm", "girth_cm", "scale_kg"} {
		if i := a.first(name); i >= 0 {
			measures = append(measures, i)
		}
	}
	if o < 0 || s < 0 && len(measures) == 0 {
		return 0
	}
	return g.cached("fates", append([]int{o, s}, measures...), func() float64 {
		var missed, away, aboard, named, taped, landedNamed, landedTaped float64
		for r, c := range g.written[o].Rows {
			fate, _, _, ok := words.FateOf(c.Text)
			if !ok {
				continue
			}
			name := s >= 0 && told(g.written[s].Rows[r])
			tape := slices.ContainsFunc(measures, func(i int) bool { return told(g.written[i].Rows[r]) })
			switch fate {
			case words.Missed, words.Lost:
				away++
				if fate == words.Missed {
					missed++
					named += one(name)
				}
				taped += one(tape)
			case words.Landed, words.Released:
				aboard++
				landedNamed += one(name)
				landedTaped += one(tape)
			}
		}
		t := 0.0
		switch {
		case away >= 2 && taped > 0.5*away && len(measures) > 0:
			t -= 4
		case away >= 3 && aboard >= 3 && taped <= 0.1*away && landedTaped > 0.4*aboard:
			t += 2
		}
		if s >= 0 && missed >= 3 && aboard >= 3 && named <= 0.3*missed && landedNamed >= 0.8*aboard {
			t += 1.5
		}
		return t
	})
}

func one(yes bool) float64 {
	if yes {
		return 1
	}
	return 0
}

// saysHow tells a cell that says in words how a fish was weighed, and not only yes or no.
func saysHow(c layout.Cell) bool {
	_, told := words.ByScale(c.Text)
	return told && !yesOrNo(c)
}

// weighedBeside holds that how a fish was weighed stands where a weight does and nowhere else,
// in a table some of whose rows have none. Codes that do not stand so are something else's.
func weighedBeside(g *group, a assigned) float64 {
	h, w := a.first("weighed"), a.first("scale_kg")
	if h < 0 {
		return 0
	}
	codes := g.values[h].coded()
	if w < 0 {
		return -2 * one(codes)
	}
	return g.cached("weighed", []int{h, w}, func() float64 {
		both, either, none := 0, 0, 0
		for r, c := range g.values[h].Rows {
			x, y := told(c), told(g.values[w].Rows[r])
			switch {
			case x && y:
				both++
				either++
			case x || y:
				either++
			default:
				none++
			}
		}
		switch {
		case both > 4 && none > 1 && 20*both >= 19*either:
			return 2.5
		case codes:
			return -2
		case both > 1 && none > 0 && both == either && g.values[h].share("how", saysHow) == 1: // few, and in words
			return 1.5
		}
		return 0
	})
}

// fishOver is the fish that the group above a heading names: "Wahoo" over "kept" and "lost".
func (t *Lexicon) fishOver(l layout.Label) string {
	if m := t.Species.Find(l.Group, ""); l.Group != "" && m.Found {
		return m.Species.Code
	}
	if !t.isSpecies(l.Group) {
		return ""
	}
	return normalise(l.Group)
}

// ofFishEach tells columns of one count, by their words, for each of several fish.
func (g *group) ofFishEach(name string, columns []int) bool {
	seen := map[string]bool{}
	for _, i := range columns {
		if g.ofFish == nil || g.ofFish[i] == "" || seen[g.ofFish[i]] || !g.wordedMost(i, name) {
			return false
		}
		seen[g.ofFish[i]] = true
	}
	return slices.Contains(countNames, name)
}

// answeredParts tells columns of one count by their words, and others of which the captain said that they are it too.
func (g *group) answeredParts(name string, columns []int) bool {
	said := 0
	for _, i := range columns {
		if slices.ContainsFunc(g.cands[i], func(c candidate) bool {
			return meaningOf(c) == name && c.voted("answered")
		}) {
			said++
		} else if !g.wordedMost(i, name) {
			return false
		}
	}
	return said > 0 && slices.Contains(countNames, name)
}

// waysOf tells columns that each count fish lost, or bites missed, in a way of its own: "pulled", "broke off",
// "sharked". Each says so by its heading, and none of them may be the sum of the others. Or each counts another fish.
func (g *group) waysOf(name string, columns []int) bool {
	if g.ofFishEach(name, columns) || g.answeredParts(name, columns) {
		return true
	}
	if name != "lost_n" && name != "missed_n" {
		return false
	}
	return g.cached("ways "+name, columns, func() float64 {
		for _, i := range columns {
			_, cause, _, _ := words.FateOf(g.values[i].Label.Text)
			if !g.wordedMost(i, name) || cause == "" && g.mayBeSum(i, columns) { // a cause is no sum of others
				return 0
			}
		}
		return 1
	}) > 0
}

// wordedMost tells whether words speak for a meaning of a column, and for no other as much.
func (g *group) wordedMost(column int, name string) bool {
	own, others := 0.0, 0.0
	for _, c := range g.cands[column] {
		for _, v := range c.votes {
			switch {
			case c.column == nil || v.Evidence != "words":
			case c.column.Name == name:
				own = max(own, v.Weight)
			default:
				others = max(others, v.Weight)
			}
		}
	}
	return own > others
}

// mayBeSum tells a count that in no row is less than the others of its columns together.
func (g *group) mayBeSum(of int, columns []int) bool {
	for r := range g.rows {
		sum := 0
		for _, i := range columns {
			if n, _ := g.count(i, r); i != of {
				sum += n
			}
		}
		if n, _ := g.count(of, r); n < sum {
			return false
		}
	}
	return true
}

// bestWeighed holds that what names a fish and says that its weight is from a scale, or a guess, is a fish's measure
// where its row counts the fish, though its heading speaks of the best one.
func bestWeighed(g *group, a assigned) float64 {
	if !a.has("landed_n") && !a.has("kept_n") {
		return 0
	}
	t := 0.0
	for _, i := range a["fishlist"] {
		best := ofSeveral[normalise(headingOf(g.values[i].Label))] || slices.ContainsFunc(g.cands[i],
			func(c candidate) bool { return c.column == asideColumn && c.aside == "best" })
		if best && g.values[i].share("weighed in words", func(c layout.Cell) bool {
			_, told := words.ByScale(c.Text)
			return told && strings.ContainsAny(c.Text, "0123456789") && c.Look == layout.Text
		}) >= 0.8 {
			t++
		}
	}
	return t
}

// behindAll holds that "of those let go" stands right behind the count of which they are: the fish boated.
func behindAll(g *group, a assigned) float64 {
	r, l := a.first("released_n"), a.first("landed_n")
	if r > 0 && l == r-1 && g.ofThose != nil && g.ofThose[r] && g.worded(l, "landed_n") &&
		g.values[l].numeric() > 0.6 && g.values[r].numeric() > 0.6 {
		return 1
	}
	return 0
}
