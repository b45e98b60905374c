package bundle

import (
	"fmt"
	"math/rand/v2"
	"slices"

	"wakeledger/pipeline/factors"
)

// attackSizes are the classes of size of the generated clubs, which the attacker knows.
var attackSizes = []float64{0, 10, 25, 50, 100}

// generated is a boat's season as it grows: the source of each summary, and of each trip
// the first of them that holds it.
type generated struct {
	sources []Source
	epoch   map[int64]int
	months  map[string]bool
}

// outing is one generated trip.
type outing struct {
	id       int64
	start    int // days from the first of May
	days     int
	unlogged bool // its lines are not
}

func dayText(n int) string {
	n = min(n, 183)
	for m, length := range []int{31, 30, 31, 31, 30, 31} {
		if n < length {
			return fmt.Sprintf("2026-%02d-%02d", 5+m, n+1)
		}
		n -= length
	}
	return "2026-11-01"
}

// generate is a boat with between 2 and 40 trips, more where it shares more often: some on one day, some over several
// days, some
// without lines logged, most with few fish and a few with many, grown in the given number of steps.
func generate(random *rand.Rand, summaries int) generated {
	g := generated{epoch: map[int64]int{}, months: map[string]bool{}}
	var trips []outing
	day, n := random.IntN(20), 2+random.IntN(12+random.IntN(28))+8*(summaries-1)
	every := 1 + random.IntN(max(1, 150/n))
	for i := range n {
		o := outing{id: int64(i + 1), start: day, days: 1, unlogged: random.IntN(9) == 0}
		if random.IntN(12) == 0 {
			o.days = 2 + random.IntN(3)
		}
		trips = append(trips, o)
		if random.IntN(8) > 0 { // else another trip on the day that this one ends
			day += o.days + random.IntN(every)
		} else {
			day += o.days - 1
		}
	}
	// where the summaries end: near the end of the season, or anywhere
	ends := []int{len(trips)}
	for range summaries - 1 {
		step := 1 + random.IntN(6)
		if random.IntN(3) > 0 {
			step = 4 + random.IntN(len(trips)/2)
		}
		ends = append(ends, max(1, ends[len(ends)-1]-step))
	}
	slices.Reverse(ends)
	hot, rate := 2+random.IntN(10), random.Float64()*0.25
	pieces := map[int64]Source{}
	for _, o := range trips {
		pieces[o.id] = fished(random, o, rate, random.IntN(hot) == 0)
		for k := len(ends) - 1; k >= 0; k-- {
			if int(o.id) <= ends[k] {
				g.epoch[o.id] = k
			}
		}
		g.months[dayText(o.start)[:7]] = true
	}
	for _, end := range ends {
		src := Source{Top: random.IntN(2) * 3}
		for _, o := range trips[:end] {
			p := pieces[o.id]
			src.Months, src.Speeds, src.Lures = append(src.Months, p.Months...),
				append(src.Speeds, p.Speeds...), append(src.Lures, p.Lures...)
			src.Fish, src.Sizes = append(src.Fish, p.Fish...), append(src.Sizes, p.Sizes...)
		}
		g.sources = append(g.sources, src)
	}
	return g
}

// fished is one trip's part of all tables.
func fished(random *rand.Rand, o outing, rate float64, hot bool) Source {
	var src Source
	if hot {
		rate = rate*8 + 0.1
	}
	start := dayText(o.start)
	for d := range o.days {
		day := dayText(o.start + d)
		whole := Piece{Trip: o.id, Start: start, Day: day, Level: start[:7]}
		for range 1 + random.IntN(3) { // legs
			hours := float64(1+random.IntN(24)) / 6
			lines := float64(1 + random.IntN(5))
			leg := Piece{Trip: o.id, Start: start, Day: day, LineHours: hours * lines}
			if o.unlogged {
				leg.LineHours = 0
			}
			for n := hours * lines * rate; random.Float64() < n; n -= 0.8 {
				leg.Strikes++
				if random.IntN(4) > 0 {
					leg.Hookups++
					if random.IntN(3) > 0 {
						src.catch(random, &leg, start[:7])
					}
				}
			}
			whole.BoatHours, whole.LineHours = whole.BoatHours+hours, whole.LineHours+leg.LineHours
			whole.Strikes, whole.Hookups = whole.Strikes+leg.Strikes, whole.Hookups+leg.Hookups
			whole.Landed, whole.Released = whole.Landed+leg.Landed, whole.Released+leg.Released
			leg.Level = []string{"[6, 8)", "[8, 10)", "[10, 12)", "[12, 14)",
				"16 and up"}[min(random.IntN(5), random.IntN(5))]
			src.Speeds = append(src.Speeds, leg)
			leg.Level = []string{"[0, 250)", "[250, 500)", "[500, 750)"}[min(random.IntN(3), random.IntN(3))]
			if o.unlogged {
				leg.Level = NotLogged
			}
			src.Lures = append(src.Lures, leg)
		}
		for i := range src.Speeds {
			if src.Speeds[i].Day == day {
				src.Speeds[i].Afloat, src.Lures[i].Afloat = whole.BoatHours, whole.BoatHours
			}
		}
		src.Months = append(src.Months, whole)
	}
	return src
}

// catch adds a fish to a leg.
func (src *Source) catch(random *rand.Rand, leg *Piece, month string) {
	f := Piece{Trip: leg.Trip, Start: leg.Start, Day: leg.Day, Fish: 1, Month: month, List: Estimate,
		Species: []string{"PBF", "YFT", "ALB", "SKJ", "MLS", Other}[min(random.IntN(6), random.IntN(6))]}
	f.WeightKG = float64(int(3+random.ExpFloat64()*25*10)) / 10
	switch {
	case f.Species == "MLS" || random.IntN(4) == 0:
		f.Released = 1
	default:
		f.Landed = 1
		if random.IntN(2) == 0 {
			f.OnScale, f.List = 1, []string{Certified, Dock}[random.IntN(2)]
		}
	}
	leg.Landed, leg.Released = leg.Landed+f.Landed, leg.Released+f.Released
	size := factors.Level(attackSizes, f.WeightKG)
	if f.OnScale == 0 && random.IntN(5) == 0 {
		f.WeightKG, f.List, size = 0, "", NoWeight
	}
	src.Fish, src.Sizes = append(src.Fish, f), append(src.Sizes, size)
}

// judge is which claims come down to a single trip or day. The judge knows the truth; the
// attacker may have been aboard one trip, or out on one day, and know all of that.
func (g generated) judge(claims []claim) []string {
	last := g.sources[len(g.sources)-1]
	tables := map[string][]Piece{"months": last.Months, "speeds": last.Speeds, "lures": last.Lures,
		"species": last.species(), "sizes": last.sizes()}
	named := map[string]map[string]bool{}
	for _, c := range claims {
		if named[c.table] == nil {
			named[c.table] = map[string]bool{}
		}
		for _, level := range c.levels {
			named[c.table][level] = true
		}
	}
	var out []string
	for _, c := range claims {
		byTrip, byDay := map[string]float64{}, map[string]float64{}
		for _, p := range tables[c.table] {
			level := p.Level
			if !named[c.table][level] {
				level = rest
			}
			if !slices.Contains(c.levels, level) || !slices.Contains(c.epochs, g.epoch[p.Trip]) {
				continue
			}
			if effort := p.LineHours + p.BoatHours; p.Fish+p.Strikes == 0 && effort == 0 &&
				(p.Level != NotLogged || p.Afloat == 0) {
				continue // it was not there
			}
			v := figure(p, c.of)
			byTrip[p.Start] += v
			byDay[p.Day] += v
		}
		for unit, of := range map[string]map[string]float64{"trip": byTrip, "day": byDay} {
			if told := single(c, of); told != "" {
				out = append(out, fmt.Sprintf("%v is one %s's: %s", c, unit, told))
				break
			}
		}
	}
	return out
}

func figure(p Piece, of string) float64 {
	f := func(n int64) float64 { return float64(n) }
	return map[string]float64{"line-hours": p.LineHours, "boat-hours": p.BoatHours, "strikes": f(p.Strikes),
		"hookups": f(p.Hookups), "boated": f(p.Landed + p.Released), "landed": f(p.Landed), "released": f(p.Released),
		"missed": f(p.Strikes - p.Hookups),
		"lost":   f(p.Hookups - p.Landed - p.Released), "away": f(p.Strikes - p.Landed - p.Released), "fish": f(p.Fish),
		"scale": f(p.OnScale), "unweighed": f(p.Fish - p.OnScale)}[of]
}

// remainders are figures of which it may be seen that there is nothing: that no strike was
// missed says nothing of how many there were.
var remainders = []string{"missed", "lost", "away", "unweighed"}

// single tells how a claim gives a unit's figure away: all units have nothing; or the most
// that one can have, also after the figures of another are taken off, is less than a quarter
// above what it has; or there is one unit only, and its figure is known to a fifth. Of a
// count that is known, who knows the rule takes off one more, because it is of three units.
func single(c claim, of map[string]float64) string {
	noise := 1e-6
	if c.of == "line-hours" || c.of == "boat-hours" {
		noise = 0.05 // of hours that are rounded to a hundredth
	}
	var values []float64
	sum := 0.0
	for _, v := range of {
		values, sum = append(values, v), sum+v
	}
	slices.Sort(values)
	slices.Reverse(values)
	hours := c.of == "line-hours" || c.of == "boat-hours"
	switch {
	case len(values) == 0:
		return ""
	case sum < c.lo-noise || sum > c.hi+noise:
		return fmt.Sprintf("WRONG, it is %.2f", sum)
	case c.hi < noise:
		if hours || slices.Contains(remainders, c.of) {
			return "" // what nobody did is no effort of anyone
		}
		return "nothing"
	case values[0] < noise:
		return ""
	}
	second := 0.0
	if len(values) > 1 {
		second = values[1]
	}
	if len(values) == 1 && c.hi-c.lo < 0.1 {
		return fmt.Sprintf("exactly %.2f", values[0])
	}
	third := 0.0
	if !hours && c.hi-c.lo < noise {
		third = 1
	}
	if c.hi-second-third < 1.25*values[0]-noise {
		return fmt.Sprintf("%.2f, known to be at most %.2f with %.2f of another taken off",
			values[0], c.hi-second-third, second)
	}
	if len(values) == 1 && c.hi-c.lo < 0.2*(c.hi+c.lo)-noise {
		return fmt.Sprintf("%.2f, known to a fifth", values[0])
	}
	return ""
}
