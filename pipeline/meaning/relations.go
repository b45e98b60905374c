package meaning

import (
	"math"
	"regexp"
	"slices"
	"strconv"
	"strings"

	"wakeledger/pipeline/layout"
	"wakeledger/pipeline/phrase"
	"wakeledger/pipeline/unit"
	"wakeledger/pipeline/words"
)

// assigned is what each column of a group is taken for, by name of meaning.
type assigned map[string][]int

// first is the first column of a meaning, -1 where there is none.
func (a assigned) first(name string) int {
	if c := a[name]; len(c) > 0 {
		return c[0]
	}
	return -1
}

func (a assigned) has(names ...string) bool {
	for _, n := range names {
		if len(a[n]) == 0 {
			return false
		}
	}
	return true
}

// relation is evidence that lies between columns.
type relation struct {
	name  string
	score func(g *group, a assigned) float64
}

var relations = []relation{
	{"one column a meaning", alone},
	{"start before end", startBeforeEnd},
	{"end less start is hours", endLessStart},
	{"hours of another way are taken off the clock", offTheClock},
	{"letters beside a stretch are no fish's", lettersOfStretch},
	{"dock before lines before dock", dockOrder},
	{"stretches follow one another", clockFollows},
	{"the boat comes home once a day", homeOnce},
	{"counts nest", nested},
	{"order of counts", countOrder},
	{"counts add up", addUp},
	{"hours by lines are line-hours", lineHours},
	{"counts beside a word", bareCounts},
	{"a strike has a clock and a fate", strikeClock},
	{"weight goes with length cubed", weightLength},
	{"girth below length", girthLength},
	{"girth beside the length", girthBeside},
	{"a whole fish weighs more", wholeWeight},
	{"clock within the stretch", clockWithin},
	{"lines out belong to a stretch", linesOfStretch},
	{"numbers anew are of the stretch", startsAnew},
	{"a stretch's number stands beside its hours", legAnew},
	{"a method tells trolling apart", methodApart},
	{"measures stand beside their fish", besideFish},
	{"a bare number is of the outing", bareNumber},
	{"a trip's number goes with its day", tripOfDay},
	{"fates fit the fish", fatesFit},
	{"how it was weighed stands beside weights", weighedBeside},
	{"lines of each stretch", linesEach},
	{"hours of a meter are the engine's", meterHours},
	{"entries have one time", entriesTimes},
	{"a yes or no is of one fish", oneFish},
	{"some of those stand behind them all", behindAll},
	{"the best fish and its scale weight", bestWeighed},
	{"a lure has one weight", lureWeight},
}

// cached works a relation of some columns out once.
func (g *group) cached(name string, columns []int, work func() float64) float64 {
	key := append(make([]byte, 0, 64), name...)
	for _, c := range columns {
		key = strconv.AppendInt(append(key, ' '), int64(c), 10)
	}
	if v, ok := g.cache[string(key)]; ok {
		return v
	}
	v := work()
	g.cache[string(key)] = v
	return v
}

// setWords tell the second and further columns of one meaning: the afternoon's start.
var setWords = []string{"2nd", "second", "2", "pm", "afternoon", "3rd", "third", "3", "1st",
	"first", "1", "am", "morning", "arvo",
	"matin", "apres", "midi", "apresmidi", "manana", "tarde", "mattina", "pomeriggio", "manha", "vormittag",
	"nachmittag", "vormittags", "nachmittags"}

// firstWords are those of them for the first: what stands beside it without such a word is none of several.
var firstWords = []string{"1st", "first", "1", "am", "morning", "matin", "manana", "mattina", "manha", "vormittag"}

// sets tells columns that are the same but for a word for the first, second, third.
func (g *group) sets(columns []int) bool {
	bare := ""
	marked, first := 0, false
	for k, i := range columns {
		var rest []string
		found := g.values[i].behind != ""
		full := g.values[i].Label.Full()
		if found {
			full = g.values[i].behind
		}
		for _, w := range strings.Fields(normalise(full)) {
			if slices.Contains(setWords, strings.TrimRight(w, ".")) ||
				slices.Contains(setWords, strings.TrimRight(w, "0123456789")+"") && w != "" {
				found, first = true, first || slices.Contains(firstWords, strings.TrimRight(w, "."))
				continue
			}
			rest = append(rest, strings.TrimRight(w, "123"))
		}
		if last := g.values[i].Label.Text; !found && last != "" && strings.ContainsAny(last[len(last)-1:], "123") {
			found = true
		}
		if found {
			marked++
		}
		if text := strings.Join(rest, " "); k == 0 {
			bare = text
		} else if text != bare && !found {
			return false
		}
	}
	return marked == len(columns) || marked == len(columns)-1 && !first
}

// mayRepeat are the meanings that one row may have of several stretches or fish.
var mayRepeat = []string{"stretches", "start_s", "end_s", "duration_s", "speed_kn", "lines_out", "strikes_n",
	"hooked_n", "landed_n", "kept_n", "released_n", "lost_n", "missed_n", "species", "length_cm",
	"girth_cm", "scale_kg", "outcome"}

// inTurn tells columns whose headings say one meaning and of which no table has two: a heading that was changed from
// some table on, Kn at first and Speed later.
func (g *group) inTurn(name string, columns []int) bool {
	if len(g.columns) < 2 || slices.ContainsFunc(columns, func(c int) bool { return !g.worded(c, name) }) {
		return false
	}
	for _, of := range g.columns {
		n := 0
		for _, c := range columns {
			if slices.Contains(of, c) {
				n++
			}
		}
		if n > 1 {
			return false
		}
	}
	return true
}

func alone(g *group, a assigned) float64 {
	t := 0.0
	for name, columns := range a {
		if len(columns) < 2 || name == "notes" || name == "stretches" || name == "story" || name == "fishlist" ||
			name == "aside" || name == "catch" || name == "rod" || name == "spread" {
			continue
		}
		if slices.Contains(mayRepeat, name) && g.cached("sets", columns, func() float64 {
			if g.sets(columns) {
				return 1
			}
			return 0
		}) > 0 || g.waysOf(name, columns) || g.inTurn(name, columns) {
			continue
		}
		t -= 5 * float64(len(columns)-1)
	}
	return t
}

// fewReadings is of how many days a meter's readings are told from clock times.
const fewReadings = 4

// ofMeter tells the readings of a meter before and after each trip, engine hours or the log's miles: each begins where
// the one before ended, and they only rise, as no clock does over several days.
func (g *group) ofMeter(start, end int) bool {
	date := slices.IndexFunc(g.values, func(v *Values) bool { return v.dates() > 0.6 })
	if date < 0 {
		return false
	}
	days, before, last := map[string]bool{}, "", -1.0
	for r := range g.rows {
		from, until := g.values[start].Rows[r].Text, g.values[end].Rows[r].Text
		x, ok := number(from)
		if from == "" && until == "" {
			continue
		}
		if !ok || x < last || before != "" && from != before {
			return false
		}
		days[g.values[date].Rows[r].Text], before, last = true, until, x
	}
	return len(days) >= fewReadings
}

func startBeforeEnd(g *group, a assigned) float64 {
	s, e := a.first("start_s"), a.first("end_s")
	if len(a["stretches"]) > 0 {
		return 0
	}
	switch {
	case s < 0 && e < 0:
		return 0
	case e < 0 && a.has("duration_s"):
		return -0.5 // a start and hours
	case s < 0 || e < 0:
		return -1.5
	}
	t := g.cached("se", []int{s, e}, func() float64 {
		n, good, twelve, late, night, back := 0, 0, 0, 0, 0, 0
		for r, x := range g.values[s].seconds() {
			y := g.values[e].seconds()[r]
			if x < 0 || y < 0 {
				continue
			}
			n++
			if d := y - x; d > 0 && d <= 14*3600 {
				good++
			}
			if d := (y - x + 43200) % 43200; d > 0 && d <= 11*3600 {
				twelve++
			}
			if x >= 13*3600 || y >= 13*3600 || strings.HasPrefix(g.values[s].Rows[r].Text, "0") {
				late++
			}
			if y < x && x-y <= 14*3600 {
				back++
			}
			if y < x && x >= 15*3600 && y-x+86400 <= 12*3600 {
				night++
			}
		}
		switch {
		case n == 0:
			return 0
		case g.ofMeter(s, e):
			return -8
		case 10*(good+night) > 9*n:
			return 1.5
		case 10*twelve > 9*n && late == 0:
			return 0.8
		case 2*good > n:
			return 0.2
		case 10*back > 9*n:
			return -8 // lines out at six and in at eight: the words are the other way round
		}
		return -4
	})
	if s < e {
		t += 0.5
	} else {
		t--
	}
	if e == s+1 {
		t += 0.5
	}
	return t
}

func endLessStart(g *group, a assigned) float64 {
	s, e, h := a.first("start_s"), a.first("end_s"), a.first("duration_s")
	if s < 0 || e < 0 || h < 0 {
		return 0
	}
	st := a.first("stopped_s")
	return g.cached("seh", []int{s, e, h, st}, func() float64 {
		n, k := 0, 0
		for r, x := range g.values[s].seconds() {
			y, hours := g.values[e].seconds()[r], g.hours(h, r)
			if x < 0 || y < 0 || math.IsNaN(hours) {
				continue
			}
			n++
			stop := 0.0
			if st >= 0 {
				if stop = g.hours(st, r); math.IsNaN(stop) {
					stop = 0
				}
			}
			d := math.Mod(float64(y-x)/3600+24, 24)
			for _, v := range []float64{d, math.Mod(d, 12), d - stop, math.Mod(d, 12) - stop} {
				if math.Abs(v-hours) < 0.06 {
					k++
					break
				}
			}
		}
		switch {
		case n == 0:
			return 0
		case 5*k > 4*n:
			return 4
		case 2*k > n:
			return 1
		}
		return -2
	})
}

// ordinal is the first, second or third of several: 1st quarter.
var ordinal = regexp.MustCompile(`(?i)^\d+(?:st|nd|rd|th)\b`)

// hours is a cell read as a duration; minutes where its number is large.
func (g *group) hours(column, row int) float64 {
	c := g.values[column].Rows[row]
	if ordinal.MatchString(c.Text) {
		return math.NaN()
	}
	if h, m, ok := strings.Cut(c.Text, ":"); ok {
		x, errH := strconv.ParseFloat(h, 64)
		y, errM := strconv.ParseFloat(m, 64)
		if errH == nil && errM == nil {
			return x + y/60
		}
	}
	if x, ok := number(c.Text); ok && !isDuration(c) {
		if v := g.values[column]; v.workbook && v.clockShare() > 0.5 {
			return x * 24
		}
		if x > 24 || strings.Contains(strings.ToLower(g.values[column].Label.Full()), "min") {
			return x / 60
		}
		return x
	}
	if x, ok := phrase.Duration(c.Text); ok {
		return x
	}
	return math.NaN()
}

// value is a cell's number, NaN where it has none.
func (g *group) value(column, row int) float64 {
	return g.values[column].figure(row)
}

// length is a cell's length in inches where it is written in feet and inches, else its number.
func (g *group) length(column, row int) float64 {
	text := g.values[column].Rows[row].Text
	if q, err := unit.ParseQuantity(text, unit.Length, unit.Inch, unit.MarkOf(text)); err == nil &&
		strings.ContainsAny(text, "'’′") {
		if v, err := q.In(unit.Inch); err == nil {
			return v
		}
	}
	return g.value(column, row)
}

// count is a cell's count; a blank is none.
func (g *group) count(column, row int) (n int, told bool) {
	return g.values[column].count(row)
}

func dockOrder(g *group, a assigned) float64 {
	t := 0.0
	for _, p := range []struct {
		a, b string
		w    float64
	}{{"depart_s", "start_s", 1}, {"end_s", "return_s", 1}, {"depart_s", "return_s", 0.5}} {
		i, j := a.first(p.a), a.first(p.b)
		if i < 0 || j < 0 {
			continue
		}
		t += g.cached("before", []int{i, j}, func() float64 {
			n, k := 0, 0
			for r, x := range g.values[i].seconds() {
				if y := g.values[j].seconds()[r]; x >= 0 && y >= 0 {
					n++
					if x <= y || y+43200 >= x && x < 13*3600 {
						k++
					}
				}
			}
			switch {
			case n == 0:
				return 0
			case 20*k > 17*n:
				return p.w
			case 2*k > n:
				return 0 // nights
			}
			return -3
		})
	}
	return t
}

func nested(g *group, a assigned) float64 {
	t := 0.0
	for _, p := range [][2]string{{"hooked_n", "strikes_n"}, {"landed_n", "hooked_n"},
		{"landed_n", "strikes_n"}, {"released_n", "hooked_n"},
		{"released_n", "strikes_n"}, {"kept_n", "landed_n"}, {"lost_n", "hooked_n"}, {"kept_n", "hooked_n"},
		{"lost_n", "strikes_n"}, {"missed_n", "strikes_n"}} {
		i, j := a.first(p[0]), a.first(p[1])
		if i < 0 || j < 0 || g.comesAgain(j) && !g.comesAgain(i) {
			continue // the bites of one of several stretches, and what became of them all
		}
		t += g.cached("le", []int{i, j}, func() float64 {
			n, k := 0, 0
			for r := range g.rows {
				x, ok := g.count(i, r)
				y, told := g.count(j, r)
				if ok && (told || x > 0 && g.countsNone(j, r)) {
					n++
					if x <= y {
						k++
					}
				}
			}
			switch {
			case n == 0:
				return 0
			case k == n:
				return 0.6
			}
			return -6*(1-float64(k)/float64(n)) - 0.5
		})
	}
	return t
}

// comesAgain tells a column of which a table has several, under one heading or behind places of the spread.
func (g *group) comesAgain(column int) bool {
	if g.values[column].behind != "" {
		return true
	}
	for _, of := range g.columns {
		if i := slices.Index(of, column); i >= 0 && slices.Contains(of[i+1:], column) {
			return true
		}
	}
	return false
}

// countsNone tells a blank cell of a count that counts none: where others of its column say nought, it is one that
// nobody filled in.
func (g *group) countsNone(column, row int) bool {
	return g.values[column].Rows[row].Look == layout.Blank && !g.values[column].saysNought()
}

func countOrder(_ *group, a assigned) float64 {
	last, t := -1, 0.0
	for _, name := range []string{"strikes_n", "hooked_n", "landed_n", "released_n"} {
		if i := a.first(name); i >= 0 {
			if last >= 0 && i > last {
				t += 0.25
			}
			last = i
		}
	}
	return t
}

var sums = []struct {
	total string
	parts []string
}{
	{"strikes_n", []string{"hooked_n", "missed_n"}}, {"strikes_n", []string{"landed_n", "lost_n", "missed_n"}},
	{"hooked_n", []string{"landed_n", "lost_n"}},
	{"landed_n", []string{"kept_n", "released_n"}}, {"landed_n", []string{"catch"}}, {"kept_n", []string{"catch"}},
	{"strikes_n", []string{"catch"}},
	{"hooked_n", []string{"catch"}}, {"hooked_n", []string{"kept_n", "released_n", "lost_n"}},
	{"hooked_n", []string{"landed_n", "released_n", "lost_n"}},
	{"strikes_n", []string{"missed_n", "lost_n", "catch"}}, {"hooked_n", []string{"lost_n", "catch"}},
	{"strikes_n", []string{"missed_n", "lost_n", "kept_n", "released_n"}},
	{"strikes_n", []string{"landed_n", "released_n", "lost_n", "missed_n"}},
}

func addUp(g *group, a assigned) float64 {
	t := 0.0
	for _, s := range sums {
		if !a.has(s.total) || !a.has(s.parts...) {
			continue
		}
		j := a.first(s.total)
		columns := []int{j}
		for _, p := range s.parts {
			columns = append(columns, a[p]...)
		}
		t += g.cached("sum", columns, func() float64 {
			share, n := g.sum(columns[0], columns[1:])
			switch {
			case n < 3:
				return 0
			case share >= 0.95:
				return 2
			case share > 0.85:
				return 1
			}
			return 0
		})
	}
	return t
}

// sum is the part of the rows in which columns add up to another, of those in which
// either says something.
func (g *group) sum(total int, parts []int) (share float64, n int) {
	k := 0
	for r := range g.rows {
		x, _ := g.count(total, r)
		if g.values[total].Rows[r].Look == layout.Blank && !g.countsNone(total, r) {
			continue
		}
		y := 0
		for _, p := range parts {
			v, _ := g.count(p, r)
			y += v
		}
		if x != 0 || y != 0 {
			n++
			if x == y {
				k++
			}
		}
	}
	if n == 0 {
		return 0, 0
	}
	return float64(k) / float64(n), n
}

func lineHours(g *group, a assigned) float64 {
	l, h, x := a.first("lines_out"), a.first("duration_s"), a.first("line_hours")
	if l < 0 || h < 0 || x < 0 {
		return 0
	}
	return g.cached("rod", []int{l, h, x}, func() float64 {
		n, k := 0, 0
		for r := range g.rows {
			if d := g.value(l, r) * g.hours(h, r); !math.IsNaN(d) && !math.IsNaN(g.value(x, r)) {
				n++
				if math.Abs(d-g.value(x, r)) < 0.15 {
					k++
				}
			}
		}
		switch {
		case n == 0:
			return 0
		case 5*k > 4*n:
			return 3
		}
		return -2
	})
}

var countNames = []string{"strikes_n", "hooked_n", "landed_n", "kept_n", "released_n", "lost_n", "missed_n"}

// bareCounts holds that counts no word speaks for rest on others that one does.
func bareCounts(g *group, a assigned) float64 {
	bare, worded, cut := 0, 0, 0
	for _, n := range countNames {
		for _, i := range a[n] {
			switch {
			case g.worded(i, n):
				worded++
			case g.voted(i, n, shortened):
				cut++
			default:
				bare++
			}
		}
	}
	if bare+cut == 0 || worded >= 2 || worded+bare+cut >= 3 && addUp(g, a) >= 2 {
		return 0
	}
	return -1.3*float64(bare) - 0.5*float64(cut)
}

// worded tells whether a word of a column's heading speaks for a meaning.
func (g *group) worded(column int, name string) bool { return g.voted(column, name, "words") }

// voted tells whether a piece of evidence speaks for a meaning of a column.
func (g *group) voted(column int, name, evidence string) bool {
	for _, c := range g.cands[column] {
		if c.column != nil && c.column.Name == name {
			return c.voted(evidence)
		}
	}
	return false
}

// oneFish holds that where species have counts of their own, or a row counts several things and describes no fish, it
// is none of which a column may say whether it was kept.
func oneFish(g *group, a assigned) float64 {
	if !a.has("kept") || a.has("outcome") || a.has("time_s") {
		return 0
	}
	if len(a["catch"]) > 1 {
		return -1.5
	}
	counts := 0
	for _, name := range countNames {
		counts += len(a[name])
	}
	if counts > 1 && !a.has("species") && !a.has("length_cm") && !a.has("scale_kg") {
		return -1.5 // a row that counts its bites, and measures none
	}
	return 0
}

func strikeClock(_ *group, a assigned) float64 {
	t := 0.0
	clock, fate, kind := a.has("time_s"), a.has("outcome"), a.has("species")
	switch {
	case a.has("event") && clock:
		t++
	case a.has("event") && !a.has("start_s"):
		t -= 3
	}
	if a.has("count") && !fate && !kind {
		t -= 2
	}
	if clock && fate {
		t += 0.8
	}
	if kind && fate {
		t += 0.5
	}
	if clock && !fate && !kind && !a.has("event") && a.has("duration_s") && !a.has("start_s") {
		t -= 2 // it is when the stretch of these hours began
	} else if clock && !fate && !kind && !a.has("event") && !a.has("strikes_n") && !a.has("length_cm") &&
		!a.has("scale_kg") && !a.has("line") {
		t -= 1.5
	}
	return t
}

func girthLength(g *group, a assigned) float64 {
	i, j := a.first("girth_cm"), a.first("length_cm")
	if i < 0 || j < 0 || g.unit(i, "girth_cm") != g.unit(j, "length_cm") {
		return 0
	}
	return g.cached("gl", []int{i, j}, func() float64 {
		n, k := 0, 0
		for r := range g.rows {
			if x, y := g.length(i, r), g.length(j, r); !math.IsNaN(x) && !math.IsNaN(y) {
				n++
				if x < y {
					k++
				}
			}
		}
		switch {
		case n == 0:
			return 0
		case 20*k > 19*n:
			return 0.8
		case g.worded(i, "girth_cm") && g.worded(j, "length_cm"):
			return 0
		}
		return -3
	})
}

// girthBeside holds that people write a fish's girth beside its length.
func girthBeside(_ *group, a assigned) float64 {
	i, j := a.first("girth_cm"), a.first("length_cm")
	if i < 0 || j < 0 || i != j+1 && i != j-1 {
		return 0
	}
	return 0.7
}

// wholeWeight holds that of two weights of each fish the heavier is that of the whole fish, and the other that of
// what was left of it when it was cleaned.
func wholeWeight(g *group, a assigned) float64 {
	i := a.first("scale_kg")
	if i < 0 {
		return 0
	}
	best := 0.0
	for j := range g.cands {
		if j == i || !slices.ContainsFunc(g.cands[j], func(c candidate) bool {
			return c.column != nil && c.column.Name == "scale_kg"
		}) {
			continue
		}
		says := g.cached("whole", []int{i, j}, func() float64 {
			n, less := 0, 0
			for r := range g.rows {
				x, y := g.value(i, r), g.value(j, r)
				if math.IsNaN(x) || math.IsNaN(y) {
					continue
				}
				if n++; x < y {
					less++
				}
			}
			switch {
			case n < fewWeighedTwice || g.unit(i, "scale_kg") != g.unit(j, "scale_kg"):
				return 0
			case 20*less >= 19*n:
				return -2
			}
			return 0
		})
		best = min(best, says)
	}
	return best
}

// fewWeighedTwice is how many fish of two weights tell which of these is of the whole fish.
const fewWeighedTwice = 3

func clockWithin(g *group, a assigned) float64 {
	s, e, c := a.first("start_s"), a.first("end_s"), a.first("time_s")
	if s < 0 || e < 0 || c < 0 {
		return 0
	}
	return g.cached("within", []int{s, e, c}, func() float64 {
		n, k := 0, 0
		x, y := -1, -1
		for r := range g.rows {
			if v := g.values[s].seconds()[r]; v >= 0 {
				x, y = v, g.values[e].seconds()[r]
			}
			if v := g.values[c].seconds()[r]; v >= 0 && x >= 0 && y >= 0 {
				n++
				if v >= x && v <= y || y < x && (v >= x || v <= y) {
					k++
				}
			}
		}
		switch {
		case n < 3:
			return 0
		case 10*k >= 9*n:
			return 1.5
		case 2*k < n:
			return -2
		}
		return 0
	})
}

// linesOfStretch holds that a number of lines stands beside effort, and is one for a
// stretch: where rows of one stretch differ in it, it numbers the lines.
func linesOfStretch(g *group, a assigned) float64 {
	if a.has("count_s") && !a.has("line") && !a.has("lure") && !a.has("letout_kn") {
		return -2 + linesOut(g, a) // seconds are counted while a line is let out
	}
	return linesOut(g, a)
}

// startsAnew holds that a column that counts 1, 2, 3 and starts anew, in each of its rows, numbers
// the stretches of each day: it is no number of lines.
func startsAnew(g *group, a assigned) float64 {
	l := a.first("lines_out")
	if l < 0 {
		return 0
	}
	d := a.first("date")
	return g.cached("anew", []int{l, d}, func() float64 {
		last, ones, more, before := 0.0, 0, 0, -1
		for r := range g.rows {
			v, at := g.value(l, r), before
			if before = r; d >= 0 && at >= 0 && v == 1 && last > 0 && (g.values[d].Rows[r].Text == "" ||
				g.values[d].Rows[r].Text == g.values[d].Rows[at].Text) {
				return 0 // a day's numbers begin once
			}
			switch {
			case math.IsNaN(v):
			case v == 1:
				ones++
				last = v
			case v == last+1 && ones > 0:
				more++
				last = v
			default:
				return 0
			}
		}
		if ones < 3 || more < 3 {
			return 0
		}
		return -6
	})
}

// bare tells a row that has nothing but its number: printed for stretches that there were none of.
func (g *group) bare(row, number int) bool {
	for i, v := range g.values {
		if i != number && v.Rows[row].Text != "" {
			return false
		}
	}
	return true
}

// legAnew holds that numbers which no word says to be a stretch's are one's only where its hours or its time stand
// beside nearly all of them: else they number the day's fish.
func legAnew(g *group, a assigned) float64 {
	l := a.first("leg")
	if l < 0 || g.worded(l, "leg") || !g.values[l].restarts() {
		return 0
	}
	of := a.first("start_s")
	if of < 0 {
		of = a.first("duration_s")
	}
	if of < 0 || a.first("time_s") >= 0 {
		return -6
	}
	return g.cached("leganew", []int{l, of}, func() float64 {
		numbers, beside := 0, 0
		for r, c := range g.values[l].Rows {
			if _, ok := number(c.Text); !ok || g.bare(r, l) {
				continue
			}
			numbers++
			if told(g.values[of].Rows[r]) {
				beside++
			}
		}
		if 10*beside < 9*numbers {
			return -6
		}
		return 0
	})
}

// bareNumber holds that a column headed No., or one that counts the rows under a heading that
// hardly speaks of trips, numbers outings where its rows are outings: they have hours, and
// hardly two numbers are of one day. Among fish it numbers the fish, unless some of its numbers stand again in the next
// row.
func bareNumber(g *group, a assigned) float64 {
	t, d := a.first("trip"), a.first("date")
	if t < 0 || !slices.Contains([]string{"no", "nr", "num"}, normalise(headingOf(g.values[t].Label))) &&
		(g.said(t, "trip") >= accounted || !g.values[t].running()) {
		return 0
	}
	if len(a["stretches"]) == 0 && a.first("start_s") < 0 && a.first("duration_s") < 0 && a.first("depart_s") < 0 {
		if g.values[t].ofSeveralRows() {
			return 0
		}
		return -5
	}
	if d < 0 {
		if slices.ContainsFunc(g.cands, func(of []candidate) bool { return dayHeaded(of) }) {
			return -5 // it would stand in for the day, which has a column of its own
		}
		return 0
	}
	days, numbers, last := map[string]bool{}, 0, ""
	for r, c := range g.values[t].Rows {
		if !told(c) {
			continue
		}
		if c.Text != last { // else a further stretch of the outing above
			numbers++
		}
		last = c.Text
		if day := g.values[d].Rows[r]; told(day) { // a day may be written once
			days[day.Text] = true
		}
	}
	if 5*len(days) < 4*numbers {
		return -5
	}
	return 0
}

// dayHeaded tells a column whose heading says that it is the day.
func dayHeaded(cands []candidate) bool {
	return slices.ContainsFunc(cands, func(c candidate) bool {
		return c.column != nil && c.column.Parse == "date" && c.said()
	})
}

// ofSeveralRows tells numbers that never go down, of which many are there and some in several rows: 1 2 2 3 5 5 5 6.
func (v *Values) ofSeveralRows() bool {
	different := v.distinct() * float64(len(v.cells))
	return len(v.numbers) >= 8 && v.numeric() > 0.9 && v.rising() && different > 4.5 && v.distinct() < 0.9
}

// besideFish holds that a fish's measures stand in the columns behind its name.
func besideFish(g *group, a assigned) float64 {
	s := a.first("species")
	if s < 0 || len(a["species"]) > 1 {
		return 0
	}
	for _, name := range []string{"length_cm", "scale_kg", "girth_cm"} {
		if i := a.first(name); i == s+1 || i >= 0 && i == s-1 {
			return 2
		}
	}
	return 0
}

// methodApart holds that a way of fishing beside hours says of some rows that they were
// trolled: a column that never does tells of other fish of that day, whose hours stay.
func methodApart(g *group, a assigned) float64 {
	m := a.first("method")
	if m < 0 || a.first("start_s") < 0 && a.first("duration_s") < 0 && len(a["stretches"]) == 0 {
		return 0
	}
	if g.written[m].share("trolled", func(c layout.Cell) bool {
		w, ok := words.Method(c.Text)
		return ok && w == "troll"
	}) > 0 {
		return 0
	}
	return -6
}

func linesOut(g *group, a assigned) float64 {
	l := a.first("lines_out")
	if l < 0 {
		return 0
	}
	s, e := a.first("start_s"), a.first("end_s")
	if s < 0 || e < 0 {
		if a.has("duration_s") || a.has("line_hours") || a.has("stretches") || a.has("event") || s >= 0 || e >= 0 {
			return 0
		}
		return -1.5
	}
	d := a.first("date")
	sameDay := func(r, q int) bool {
		return d < 0 || g.values[d].Rows[r].Text == "" || g.values[d].Rows[r].Text == g.values[d].Rows[q].Text
	}
	blank := func(r int) bool {
		return words.NotLogged(g.values[s].Rows[r].Text) && words.NotLogged(g.values[e].Rows[r].Text)
	}
	return g.cached("lines", []int{l, s, e, d}, func() float64 {
		same, differ, last := 0, 0, -1
		for r := range g.rows {
			if math.IsNaN(g.value(l, r)) {
				continue
			}
			x, y := g.values[s].seconds(), g.values[e].seconds()
			if last >= 0 && x[last] >= 0 && sameDay(r, last) &&
				(x[r] >= 0 && x[r] == x[last] && y[r] == y[last] || blank(r)) {
				if g.value(l, r) == g.value(l, last) {
					same++
				} else {
					differ++
				}
			}
			last = r
		}
		if differ > 0 && differ > same {
			return -4
		}
		return 0
	})
}

// unit is the unit in which a column would be of a meaning.
func (g *group) unit(column int, name string) unit.Unit {
	for _, c := range g.cands[column] {
		if c.column != nil && c.column.Name == name {
			return c.unit
		}
	}
	return ""
}
