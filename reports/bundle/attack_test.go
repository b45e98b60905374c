package bundle

import (
	"fmt"
	"math"
	"slices"

	"wakeledger/pipeline/factors"
)

// An attacker has the summaries of one boat, in the order in which they were shared, and
// stood at the dock: it knows the day of every trip, and which summary was the first to
// hold it. Nothing else: no figure of a trip. What it may know besides of a single trip,
// from having been aboard, comes in when its claims are judged.
type attacker struct {
	summaries []Season
	months    map[string]bool // in which the boat was out
	lo, hi    map[sumOf]float64
}

// sumOf is a figure of the trips that a summary was the first to hold.
type sumOf struct {
	epoch int
	of    string
}

// claim is what an attacker says of a sum over trips: those of some levels of a table,
// which some of the summaries were the first to hold.
type claim struct {
	table  string
	levels []string
	epochs []int
	of     string
	lo, hi float64
}

func (c claim) String() string {
	return fmt.Sprintf("%s of %s %v, first in summaries %v: %.2f to %.2f", c.of, c.table,
		c.levels, c.epochs, c.lo, c.hi)
}

// rest is all levels that an attacker knows no name of.
const rest = "all other levels"

// sight is one table as the attacker sees it, over all summaries. Its unknowns are the
// atoms of each level and epoch: figures that are parts of no other.
type sight struct {
	*attacker
	name   string
	levels []string
	sums   map[string]map[string]float64 // what is published, as a sum of atoms
	said   []map[string]row              // by summary and level
	exact  float64                       // how far a published figure may be from the true one
	program
	at map[unknown]int
}

// unknown is what one unknown is the figure of.
type unknown struct {
	level string
	epoch int
	atom  string
}

type row map[string]float64

// counts as sums of atoms: what became of a strike.
var (
	countSums = map[string]map[string]float64{
		"strikes": {"missed": 1, "lost": 1, "landed": 1, "released": 1},
		"hookups": {"lost": 1, "landed": 1, "released": 1},
		"boated":  {"landed": 1, "released": 1}, "landed": {"landed": 1}, "released": {"released": 1},
		"missed": {"missed": 1}, "lost": {"lost": 1},
		"away": {"missed": 1, "lost": 1},
	}
	hourSums = map[string]map[string]float64{"line-hours": {"line": 1}, "boat-hours": {"boat": 1}}
	fishSums = map[string]map[string]float64{"fish": {"landed": 1, "released": 1},
		"boated": {"landed": 1, "released": 1},
		"landed": {"landed": 1}, "released": {"released": 1}, "scale": {"scale": 1},
		"unweighed": {"landed": 1, "released": 1, "scale": -1}}
	sizeSums = map[string]map[string]float64{"fish": {"fish": 1}, "boated": {"fish": 1}}
)

func fill(r row, name string, n *int64) {
	if n != nil {
		r[name] = float64(*n)
	}
}

func countRow(c Cell) row {
	r := row{}
	for name, n := range map[string]*int64{"strikes": c.Strikes, "hookups": c.Hookups, "boated": c.Boated} {
		fill(r, name, n)
	}
	return r
}

func totalRow(t Total) row {
	r := countRow(Cell{Strikes: t.Strikes, Hookups: t.Hookups, Boated: t.Boated})
	fill(r, "landed", t.Landed)
	fill(r, "released", t.Released)
	return r
}

func hourRow(c Cell) row {
	r := row{"line-hours": c.LineHours}
	if c.BoatHours != nil {
		r["boat-hours"] = *c.BoatHours
	}
	return r
}

func fishRow(c FishCell) row {
	r := row{"fish": float64(c.Fish)}
	fill(r, "scale", c.OnScale)
	fill(r, "landed", c.Landed)
	fill(r, "released", c.Released)
	return r
}

func rowsOf[C any](rows []C, level func(C) string, of func(C) row) map[string]row {
	out := map[string]row{}
	for _, c := range rows {
		out[level(c)] = of(c)
	}
	return out
}

// attack is all that the attacker can say; an error where the summaries contradict each other.
func attack(summaries []Season, months map[string]bool) ([]claim, error) {
	a := &attacker{summaries: summaries, months: months, lo: map[sumOf]float64{}, hi: map[sumOf]float64{}}
	cell := func(c Cell) string { return c.Level }
	var sights []func() *sight
	for name, rows := range map[string]func(Season) []Cell{"months": func(s Season) []Cell { return s.Months },
		"speeds": func(s Season) []Cell { return s.Speeds }, "lures": func(s Season) []Cell { return s.Lures }} {
		sights = append(sights, func() *sight {
			return a.sight(name, countSums, 0, func(s Season) map[string]row { return rowsOf(rows(s), cell, countRow) },
				func(s Season) row { return totalRow(s.Total) })
		}, func() *sight {
			sums := hourSums
			if name != "months" { // an hour of the boat is at no one level of them
				sums = map[string]map[string]float64{"line-hours": hourSums["line-hours"]}
			}
			return a.sight(name, sums, 0.00501, func(s Season) map[string]row { return rowsOf(rows(s), cell, hourRow) },
				func(s Season) row { return row{"line-hours": s.Total.LineHours, "boat-hours": s.Total.BoatHours} })
		})
	}
	total := func(s Season) row {
		r := totalRow(s.Total)
		delete(r, "strikes")
		delete(r, "hookups")
		return r
	}
	sights = append(sights, func() *sight {
		return a.sight("species", fishSums, 0, func(s Season) map[string]row {
			return rowsOf(s.Species, func(c FishCell) string { return c.Level }, fishRow)
		}, total)
	}, func() *sight {
		return a.sight("sizes", sizeSums, 0, func(s Season) map[string]row {
			return rowsOf(s.Sizes, func(c SizeCell) string { return c.Level },
				func(c SizeCell) row { return row{"fish": float64(c.Fish)} })
		}, func(s Season) row {
			r := row{}
			fill(r, "fish", s.Total.Boated)
			return r
		})
	})
	var out []claim
	for _, last := range []bool{false, true} { // first what each table says of all trips, then all with that
		for _, build := range sights {
			s := build()
			t, ok := s.solve()
			if !ok {
				return nil, fmt.Errorf("table %s contradicts itself", s.name)
			}
			if last {
				out = append(out, s.claims(t)...)
			} else {
				s.tell(t)
			}
		}
	}
	return out, nil
}

// sight sets up what the attacker knows of a table.
func (a *attacker) sight(name string, sums map[string]map[string]float64, exact float64,
	rows func(Season) map[string]row, total func(Season) row) *sight {
	s := &sight{attacker: a, name: name, sums: sums, exact: exact, at: map[unknown]int{}}
	known := map[string]bool{}
	if name == "months" {
		known = a.months
	}
	for _, season := range a.summaries {
		s.said = append(s.said, rows(season))
		for level := range s.said[len(s.said)-1] {
			if level != Merged {
				known[level] = true
			}
		}
		for _, f := range season.Heaviest {
			if name == "sizes" {
				known[factors.Level(attackSizes, f.WeightKG)] = true
			}
		}
	}
	for level := range known {
		s.levels = append(s.levels, level)
	}
	slices.Sort(s.levels)
	if name != "months" {
		s.levels = append(s.levels, rest)
	}
	for of := range sums { // every unknown has its place before the first row is set up
		s.sum(of, s.levels, upTo(len(a.summaries)-1))
	}
	for k := range a.summaries {
		s.published(k, total(a.summaries[k]))
	}
	for e := range a.summaries {
		s.nesting(e)
		for of := range sums {
			key := sumOf{e, of}
			if hi, told := a.hi[key]; told {
				s.add(max(0, a.lo[key]-0.001), hi+0.001, s.sum(of, s.levels, []int{e}))
			}
		}
	}
	s.singles()
	return s
}

// sum is a figure over levels and epochs as a sum of unknowns.
func (s *sight) sum(of string, levels []string, epochs []int) map[int]float64 {
	at := map[int]float64{}
	for _, level := range levels {
		for _, e := range epochs {
			for atom, c := range s.sums[of] {
				key := unknown{level, e, atom}
				v, known := s.at[key]
				if !known {
					v = s.new()
					s.at[key] = v
				}
				at[v] += c
			}
		}
	}
	return at
}

func upTo(k int) []int {
	var out []int
	for e := range k + 1 {
		out = append(out, e)
	}
	return out
}

// merged is the levels that summary k does not show a row of.
func (s *sight) merged(k int) []string {
	return slices.DeleteFunc(slices.Clone(s.levels),
		func(level string) bool { _, shown := s.said[k][level]; return shown })
}

// published is what summary k says: each row, and the season as the sum of all levels.
func (s *sight) published(k int, total row) {
	say := func(r row, levels []string, rows int) {
		for of, v := range r {
			if _, known := s.sums[of]; !known {
				continue
			}
			d := s.exact * float64(rows)
			lo := max(0, v-d)
			if d == 0 {
				lo = v
			}
			s.add(lo, v+d, s.sum(of, levels, upTo(k)))
		}
	}
	for level, r := range s.said[k] {
		if level == Merged {
			say(r, s.merged(k), 1)
		} else {
			say(r, []string{level}, 1)
		}
	}
	if _, merged := s.said[k][Merged]; !merged && len(s.said[k]) > 0 {
		for of := range s.sums {
			if of != "unweighed" {
				s.add(0, 0, s.sum(of, s.merged(k), upTo(k)))
			}
		}
	}
	say(total, s.levels, 1)
}

// nesting: fish on a scale are fish.
func (s *sight) nesting(e int) {
	if _, known := s.sums["unweighed"]; !known {
		return
	}
	for _, level := range s.levels {
		at := map[int]float64{}
		for v, c := range s.sum("unweighed", []string{level}, []int{e}) {
			at[v] = -c
		}
		s.add(math.Inf(-1), 0, at)
	}
}

// singles is what the lists of the heaviest add: a fish that is not on the lists of an
// earlier summary that has any is one of the trips since.
func (s *sight) singles() {
	type about struct{ levels, epochs, of string }
	least, levels, epochs := map[about]float64{}, map[string][]string{}, map[string][]int{}
	said := map[Heavy]bool{}
	from := 0
	for k, season := range s.summaries {
		for _, f := range season.Heaviest {
			fish := Heavy{List: f.List, WeightKG: f.WeightKG}
			if said[fish] {
				continue
			}
			said[fish] = true
			l, e := s.levelsOf(k, f), upTo(k)[from:]
			key := about{levels: fmt.Sprint(l), epochs: fmt.Sprint(e)}
			levels[key.levels], epochs[key.epochs] = l, e
			for _, of := range map[bool][]string{true: {"strikes", "hookups", "boated", "fish", "unweighed"},
				false: {"landed", "scale", "boated", "fish", "hookups", "strikes"}}[f.List == Estimate] {
				key.of = of
				least[key]++
			}
		}
		if len(season.Heaviest) > 0 {
			from = k + 1
		}
	}
	for key, n := range least {
		if _, known := s.sums[key.of]; known && s.exact == 0 {
			s.add(n, math.Inf(1), s.sum(key.of, levels[key.levels], epochs[key.epochs]))
		}
	}
}

// levelsOf is the levels of the table that a fish of a list can be of.
func (s *sight) levelsOf(k int, f Heavy) []string {
	told := map[string]string{"months": f.When, "species": f.Species,
		"sizes": factors.Level(attackSizes, f.WeightKG)}[s.name]
	if slices.Contains(s.levels, told) && !(s.name == "species" && told == Other) {
		return []string{told}
	}
	if s.name != "months" && s.name != "species" {
		return s.levels
	}
	told = map[string]string{"months": Untold, "species": Other}[s.name]
	if !slices.ContainsFunc(s.summaries[k].Heaviest, func(o Heavy) bool {
		return s.name == "months" && slices.Contains(s.levels, o.When) || s.name == "species" && o.Species != told
	}) {
		return s.levels // of none is it told, whatever is shown
	}
	// what is shown whole would have been told
	return slices.DeleteFunc(slices.Clone(s.levels), func(level string) bool {
		whole := map[string]int{"months": 3, "species": 4}[s.name]
		return level != Other && len(s.said[k][level]) == whole
	})
}

// tell is what the table says of all trips of an epoch, for the other tables.
func (s *sight) tell(t *tableau) {
	for e := range s.summaries {
		for of := range s.sums {
			lo, hi := t.bounds(s.sum(of, s.levels, []int{e}))
			key := sumOf{e, of}
			if was, told := s.hi[key]; !told || hi < was {
				s.hi[key] = hi
			}
			s.lo[key] = max(s.lo[key], lo)
			if math.IsInf(s.hi[key], 1) {
				delete(s.hi, key)
			}
		}
	}
}

// claims are the bounds of every level and epoch, and of what is not shown together.
func (s *sight) claims(t *tableau) []claim {
	var out []claim
	say := func(of string, levels []string, epochs []int) {
		lo, hi := t.bounds(s.sum(of, levels, epochs))
		if !math.IsInf(hi, 1) {
			out = append(out, claim{s.name, levels, epochs, of, max(0, lo), hi})
		}
	}
	all := upTo(len(s.summaries) - 1)
	for of := range s.sums {
		var sets [][]string
		for _, level := range s.levels {
			sets = append(sets, []string{level})
		}
		for k := range s.summaries {
			dark := slices.DeleteFunc(slices.Clone(s.levels),
				func(level string) bool { _, shown := s.said[k][level][of]; return shown })
			for _, set := range [][]string{dark, s.merged(k)} {
				if len(set) > 1 {
					sets = append(sets, set)
				}
			}
		}
		sets = append(sets, s.levels)
		for _, set := range sets {
			for _, e := range all {
				say(of, set, []int{e})
			}
			if len(all) > 1 {
				say(of, set, all)
			}
		}
	}
	return out
}
