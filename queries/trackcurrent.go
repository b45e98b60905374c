package queries

import (
	"context"
	"math"
	"slices"

	"gonum.org/v1/gonum/stat/distuv"

	"wakeledger/pipeline/store"
)

// Current is running both ways over the same ground in a trip. Half the
// difference of the speeds is the current along the way, if the boat was driven
// alike both ways.
type Current struct {
	Trip      string  `json:"trip"`
	Boat      string  `json:"boat"`
	Date      *string `json:"date"`
	CourseDeg int64   `json:"course_deg"` // over ground, of the way out: 0 to 179
	OutKn     float64 `json:"out_kn"`
	BackKn    float64 `json:"back_kn"`
	CurrentKn float64 `json:"current_kn"` // along the way
	// CurrentLo and CurrentHi are a 95 % interval of CurrentKn; below 0 is a set the
	// other way. nil: on no trip did the boat run there a second time, so that
	// nothing is known of how far one run is from the next.
	CurrentLo *float64 `json:"current_lo"`
	CurrentHi *float64 `json:"current_hi"`
	SetDeg    int64    `json:"set_deg"`   // where it sets
	OutRuns   int64    `json:"out_runs"`  // straight runs out
	BackRuns  int64    `json:"back_runs"` // and back
	Minutes   float64  `json:"minutes"`   // run over the shared ground, the lesser of out and back
}

// AskCurrent lists what running both ways tells of the current.
func AskCurrent(ctx context.Context, db *store.DB) ([]Current, error) {
	minutes, err := ask[runMinute](ctx, db, "current")
	if err != nil {
		return nil, err
	}
	return currents(minutes), nil
}

type runMinute struct {
	TripID   int64    `json:"trip_id"`
	Trip     string   `json:"trip"`
	Boat     string   `json:"boat"`
	Date     *string  `json:"date"`
	LegID    int64    `json:"leg_id"`
	LoggedKn *float64 `json:"logged_kn"`
	Minute   int64    `json:"minute"` // since 1970
	Seconds  float64  `json:"seconds"`
	Kn       float64  `json:"kn"`
	North    float64  `json:"north"` // of the course, times seconds
	East     float64  `json:"east"`
	LatDeg   float64  `json:"lat_deg"`
	LonDeg   float64  `json:"lon_deg"`
}

const (
	straightDeg   = 30.0 // off a run's mean course, to be still of it, and off the opposite, to be the way back
	runGap        = 3    // minutes without straight running that end a run
	alikeKn       = 0.5  // between logged speeds, for the throttle to be called the same
	sharedNmi     = 1.0  // between two ways, to be over the same ground
	sharedMinutes = 5.0  // of one run over the ground of another, to count
)

// wayRun is straight running on one course at one throttle.
type wayRun []runMinute

// course is a run's mean direction, as a vector of length 1.
func (r wayRun) course() (north, east float64) {
	for _, m := range r {
		north, east = north+m.North, east+m.East
	}
	length := math.Hypot(north, east)
	return north / length, east / length
}

// between is the cosine of the angle between two courses.
func between(a, b wayRun) float64 {
	n1, e1 := a.course()
	n2, e2 := b.course()
	return n1*n2 + e1*e2
}

func (r wayRun) means() (kn, minutes float64) {
	for _, m := range r {
		kn, minutes = kn+m.Seconds*m.Kn, minutes+m.Seconds
	}
	return kn / minutes, minutes / 60
}

// alike tells whether the throttle is taken to be the same: one leg, or legs
// logged at the same speed.
func (m runMinute) alike(o runMinute) bool {
	return m.LegID == o.LegID || (m.LoggedKn != nil && o.LoggedKn != nil &&
		math.Abs(*m.LoggedKn-*o.LoggedKn) <= alikeKn)
}

func straightCos() float64 { return math.Cos(straightDeg * math.Pi / 180) }

// wayRuns parts the minutes of straight running into runs. Their first and last
// minutes are left out: the boat is still coming about.
func wayRuns(minutes []runMinute) []wayRun {
	var all []wayRun
	end := func(r wayRun) {
		if len(r) > 2 {
			all = append(all, r[1:len(r)-1])
		}
	}
	var now wayRun
	for _, m := range minutes {
		if len(now) > 0 {
			last := now[len(now)-1]
			if last.TripID != m.TripID || m.Minute-last.Minute > runGap || !last.alike(m) ||
				between(now, wayRun{m}) < straightCos() {
				end(now)
				now = nil
			}
		}
		now = append(now, m)
	}
	end(now)
	return all
}

// over is the part of a run that is over the ground of another.
func (r wayRun) over(other wayRun) wayRun {
	var shared wayRun
	for _, m := range r {
		for _, o := range other {
			x := 60 * math.Remainder(m.LonDeg-o.LonDeg, 360) * math.Cos(m.LatDeg*math.Pi/180)
			if math.Hypot(60*(m.LatDeg-o.LatDeg), x) <= sharedNmi {
				shared = append(shared, m)
				break
			}
		}
	}
	return shared
}

// opposite tells whether two runs are a way there and back over the same ground.
func opposite(a, b wayRun) bool {
	if a[0].TripID != b[0].TripID || !a[0].alike(b[0]) || between(a, b) > -straightCos() {
		return false
	}
	out, back := a.over(b), b.over(a)
	if len(out) == 0 || len(back) == 0 {
		return false
	}
	_, there := out.means()
	_, home := back.means()
	return min(there, home) >= sharedMinutes
}

// line is the runs of a trip to and fro over the same ground.
type line struct{ out, back []wayRun }

// linesOf gathers the runs, which are in order of time: each belongs to the runs
// that it is opposite to, and with them to those opposite to them.
func linesOf(runs []wayRun) []line {
	side := make([]int, len(runs)) // 1 out, -1 back, 0 of no line yet
	var lines []line
	for first := range runs {
		if side[first] != 0 {
			continue
		}
		side[first] = 1
		members := []int{first}
		for n := 0; n < len(members); n++ {
			i := members[n]
			for j := first + 1; j < len(runs) && runs[j][0].TripID == runs[first][0].TripID; j++ {
				if side[j] == 0 && opposite(runs[i], runs[j]) {
					side[j] = -side[i]
					members = append(members, j)
				}
			}
		}
		if len(members) > 1 {
			lines = append(lines, lineOf(runs, members, side))
		}
	}
	return lines
}

// lineOf keeps of the runs what is over the ground of runs the other way. Runs one
// way with none back between them, as a gap leaves them, are one: the throttle
// was not set anew.
func lineOf(runs []wayRun, members, side []int) line {
	var l line
	sides := map[int]wayRun{}
	for _, i := range members {
		sides[side[i]] = append(sides[side[i]], runs[i]...)
	}
	slices.Sort(members)
	for n, i := range members {
		to := &l.out
		if side[i] < 0 {
			to = &l.back
		}
		r := runs[i].over(sides[-side[i]])
		if last := len(*to) - 1; n > 0 && side[members[n-1]] == side[i] {
			(*to)[last] = append((*to)[last], r...)
			continue
		}
		*to = append(*to, r)
	}
	return l
}

// course is the line's direction outwards, as a vector of length 1.
func (l line) course() (north, east float64) {
	add := func(runs []wayRun, sign float64) {
		for _, r := range runs {
			n, e := r.course()
			north, east = north+sign*n/float64(len(runs)), east+sign*e/float64(len(runs))
		}
	}
	add(l.out, 1)
	add(l.back, -1)
	length := math.Hypot(north, east)
	return north / length, east / length
}

// points are the line's runs: how far each is along the line, 1 straight out and
// -1 straight back, and its speed.
func (l line) points() []point {
	north, east := l.course()
	var all []point
	for _, runs := range [][]wayRun{l.out, l.back} {
		for _, r := range runs {
			n, e := r.course()
			kn, _ := r.means()
			all = append(all, point{n*north + e*east, kn})
		}
	}
	return all
}

// currents makes the answer of the minutes of straight running, in order of
// trips and time. The current of a line is the slope of its runs' speeds on
// their directions; runs of all the boat's lines are taken to scatter alike.
func currents(minutes []runMinute) []Current {
	lines := linesOf(wayRuns(minutes))
	scatter := map[string]pooled{}
	fits := make([]slope, len(lines))
	for i, l := range lines {
		fits[i] = fitSlope(l.points())
		boat := l.out[0][0].Boat
		scatter[boat] = scatter[boat].with(fits[i])
	}
	rows := []Current{}
	for i, l := range lines {
		rows = append(rows, l.row(fits[i], scatter[l.out[0][0].Boat]))
	}
	return rows
}

func (l line) row(fit slope, s pooled) Current {
	north, east := l.course()
	along := fit.value
	course := int64(math.Round(math.Atan2(east, north)*180/math.Pi)+360) % 360
	if course >= 180 { // out is towards the east
		l.out, l.back = l.back, l.out
		course, along = course-180, -along
	}
	first := l.out[0][0]
	c := Current{Trip: first.Trip, Boat: first.Boat, Date: first.Date, CourseDeg: course, SetDeg: course,
		CurrentKn: micro(math.Abs(along)), OutRuns: int64(len(l.out)), BackRuns: int64(len(l.back))}
	if along < 0 {
		c.SetDeg += 180
	}
	var there, home float64
	c.OutKn, there = meanOf(l.out)
	c.BackKn, home = meanOf(l.back)
	c.Minutes = micro(min(there, home))
	if half, ok := s.half(fit, confidence); ok {
		lo, hi := micro(c.CurrentKn-half), micro(c.CurrentKn+half)
		c.CurrentLo, c.CurrentHi = &lo, &hi
	}
	return c
}

// meanOf is the mean speed of runs, each counted once, and their minutes.
func meanOf(runs []wayRun) (kn, minutes float64) {
	for _, r := range runs {
		k, m := r.means()
		kn, minutes = kn+k/float64(len(runs)), minutes+m
	}
	return micro(kn), minutes
}

// micro rounds to a millionth, as the statements do.
func micro(v float64) float64 {
	if v = math.Round(1e6*v) / 1e6; v == 0 {
		return 0 // and not -0
	}
	return v
}

// point is one observation of a straight line.
type point struct{ x, y float64 }

// slope is a line's, by least squares.
type slope struct {
	value   float64
	sxx     float64 // sum of squares of x about its mean
	squares float64 // of what is left over
	df      int
}

func fitSlope(points []point) slope {
	var mx, my float64
	n := float64(len(points))
	for _, p := range points {
		mx, my = mx+p.x/n, my+p.y/n
	}
	s := slope{df: len(points) - 2}
	for _, p := range points {
		s.sxx += (p.x - mx) * (p.x - mx)
		s.value += (p.x - mx) * (p.y - my)
	}
	s.value /= s.sxx
	for _, p := range points {
		rest := p.y - my - s.value*(p.x-mx)
		s.squares += rest * rest
	}
	return s
}

// pooled is what several lines leave over, taken to scatter alike: the residual
// variance of one least squares with an intercept and a slope each.
type pooled struct {
	squares float64
	df      int
}

func (s pooled) with(f slope) pooled {
	if f.df > 0 {
		s.squares, s.df = s.squares+f.squares, s.df+f.df
	}
	return s
}

// half is half the width of the t interval of a slope; ok is false where the
// scatter is not known.
func (s pooled) half(f slope, conf float64) (half float64, ok bool) {
	if s.df < 1 || !(f.sxx > 0) {
		return 0, false
	}
	t := distuv.StudentsT{Sigma: 1, Nu: float64(s.df)}.Quantile((1 + conf) / 2)
	return t * math.Sqrt(s.squares/float64(s.df)/f.sxx), true
}
