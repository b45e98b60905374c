package normalise

import (
	"fmt"
	"math"
	"regexp"
	"slices"
	"strconv"
	"strings"

	"wakeledger/pipeline/entry"
	"wakeledger/pipeline/phrase"
	"wakeledger/pipeline/plan"
	"wakeledger/pipeline/record"
	"wakeledger/pipeline/unit"
	"wakeledger/pipeline/words"
)

// several is a cell that holds what several cells would: two clock times, the speeds of two
// stretches, the fish that a count counts.
type several struct {
	t     *target
	text  string
	wrong error // what is wrong with it as one
	parts []string
}

// thens are words between what came one after the other.
var thens = strings.NewReplacer(" then ", ";", " luego ", ";", " puis ", ";", " poi ", ";",
	" depois ", ";", " dann ", ";")

// apart parts a cell of several clock times, hours, speeds or numbers of lines; nil where it
// holds one.
func apart(text string) []string {
	parts := strings.FieldsFunc(thens.Replace(text), func(c rune) bool { return strings.ContainsRune("/;&+\n", c) })
	if len(parts) < 2 || len(parts) > 4 {
		return nil
	}
	for i := range parts {
		parts[i] = strings.Trim(parts[i], " ,") // 5, then 4
	}
	return parts
}

// severally keeps a cell that cannot be read as one for the row's stretches. It reports
// whether it may be one of several.
func (r *Reader) severally(t *target, text string, wrong error) bool {
	if r.layout.Kind == plan.Events && r.whole(t, text) {
		return true
	}
	if r.spanCell(t, text, wrong) {
		return true
	}
	if t.Set > 0 || !slices.Contains([]string{"start_s", "end_s", "duration_s", "speed_kn", "lines_out"},
		t.Column.Name) {
		return false
	}
	if parts := apart(text); parts != nil && t.given == "" {
		r.several = append(r.several, several{t, text, wrong, parts})
		return true
	}
	return false
}

// ofStretches keeps the speeds and the numbers of lines of the stretches that the row tells in words,
// where it has one for each: "8 / 14" beside 6:00-8:30 / 8:45-11:15.
func (r *Reader) ofStretches() {
	n := 0
	for i := range r.targets {
		if t := &r.targets[i]; t.Column.Parse == "stretches" {
			n += len(phrase.Stretches(r.values[t.field].Text))
		}
	}
	r.several = slices.DeleteFunc(r.several, func(s several) bool {
		of := figures(s.parts, n)
		switch {
		case of == nil:
			return false
		case s.t.Column.Name == "speed_kn":
			r.paces = of
			return true
		case s.t.Column.Name == "lines_out":
			r.linesEach = of
			return true
		}
		return false
	})
}

// parted makes a stretch of each of several starts and ends that stand in one cell each
// ("6:30 / 11:55" and "11:00 / 1:45"). Cells of which nothing comes are set aside.
func (r *Reader) parted() {
	if len(r.several) == 0 {
		return
	}
	of := map[string]several{}
	for _, s := range r.several {
		of[s.t.Column.Name] = s
	}
	all, sure := r.partedClocks(of["start_s"].parts, of["end_s"].parts)
	speeds, lines := figures(of["speed_kn"].parts, len(all)), figures(of["lines_out"].parts, len(all))
	used := map[string]bool{"start_s": all != nil, "end_s": all != nil,
		"speed_kn": speeds != nil, "lines_out": lines != nil}
	if all == nil && r.partedHours(of["duration_s"], of["speed_kn"]) {
		used["duration_s"], used["speed_kn"] = true, true
	}
	if all == nil && !used["duration_s"] {
		used["duration_s"] = r.summedHours(of["duration_s"])
	}
	if all == nil {
		used["lines_out"] = r.linesChanged(of["lines_out"])
	}
	for _, s := range r.several {
		if !used[s.t.Column.Name] {
			r.unread(s.t, s.text, s.wrong.Error())
		}
	}
	for k := range all {
		start, end := int64(all[k].Start.Seconds), int64(all[k].End.Seconds)
		if !sure {
			r.twelve(&start, &end)
		} else if end < start {
			end += day
		}
		v := map[string]entry.Value{"start_s": entry.OfInt(start), "end_s": entry.OfInt(end),
			"leg": entry.OfText(strconv.Itoa(k + 1))}
		if speeds != nil {
			setFigure(v, "speed_kn", speeds[k])
		} else if x := r.value("speed_kn"); x.Known {
			v["speed_kn"] = x
		}
		if lines != nil {
			setFigure(v, "lines_out", lines[k])
		} else if x := r.value("lines_out"); x.Known {
			v["lines_out"] = x
		}
		if k > 0 || speeds != nil || lines != nil {
			r.beside(plan.Legs, v)
			continue
		}
		// of one speed: its counts are the row's
		r.values[r.index["start_s"]], r.values[r.index["end_s"]] = v["start_s"], v["end_s"]
	}
	if i, ok := r.index["duration_s"]; ok && all != nil {
		r.values[i] = entry.Value{} // of all of them
	}
}

// linesChanged parts the row's stretch where its number of lines was changed: "14 then 6 at 15:50", "14 until 1550 then
// 6". Its bites were at its speed; on which of its stretches is not known.
func (r *Reader) linesChanged(s several) bool {
	start, end := r.at(r.slots.start), r.at(r.slots.end)
	if len(s.parts) < 2 || !start.Known || !end.Known || r.value("stopped_s").Real > 0 || r.layout.Twelve {
		return false
	}
	at, lines := []int64{start.Int}, []int64{}
	for k, part := range r.withClock(untilClocks(s.parts), start.Int, end.Int) {
		number := leadingFigure.FindString(part)
		n, err := strconv.Atoi(number)
		clocks := phrase.Clocks(strings.TrimPrefix(part, number))
		if err != nil || float64(n) > s.t.Column.Max || len(clocks) != min(k, 1) {
			return false
		}
		lines = append(lines, int64(n))
		if k == 0 {
			continue
		}
		change := int64(clocks[0].Seconds)
		if change <= at[k-1] || change >= end.Int {
			return false
		}
		at = append(at, change)
	}
	at = append(at, end.Int)
	for k, n := range lines {
		v := map[string]entry.Value{"start_s": entry.OfInt(at[k]), "end_s": entry.OfInt(at[k+1]),
			"lines_out": entry.OfInt(n), "leg": entry.OfText(strconv.Itoa(k + 1))}
		if x := r.value("speed_kn"); x.Known {
			v["speed_kn"] = x
		}
		r.beside(plan.Legs, v)
	}
	for _, i := range []int{r.slots.start, r.slots.end, r.slots.duration} {
		if i >= 0 {
			r.values[i] = entry.Value{} // of all of them
		}
	}
	return true
}

var leadingFigure = regexp.MustCompile(`^\d+`)

// untilClocks puts the clock time until which a number of lines held behind the number that came then: "6 til 0850 then
// 4L" is "6" and "4L 0850".
func untilClocks(parts []string) []string {
	out := slices.Clone(parts)
	for k := len(out) - 1; k > 0; k-- {
		number := leadingFigure.FindString(out[k-1])
		until := strings.TrimPrefix(out[k-1], number)
		if number == "" || len(phrase.Clocks(strings.TrimPrefix(out[k], leadingFigure.FindString(out[k])))) > 0 ||
			len(phrase.Clocks(until)) != 1 {
			return parts
		}
		out[k-1], out[k] = number, out[k]+" "+until
	}
	return out
}

// withClock adds to two bare numbers of lines the one clock time within the stretch at which a remark that names both
// says that they were changed: "6 / 4" beside "6 rods to 9:40, then 4".
func (r *Reader) withClock(parts []string, start, end int64) []string {
	notes := r.value("notes").Text
	if len(parts) != 2 || !namesNumbers(notes, parts) {
		return parts
	}
	at := int64(-1)
	for _, c := range phrase.Clocks(notes) {
		if s := int64(c.Seconds); s > start && s < end {
			if at >= 0 {
				return parts // which of them is not said
			}
			at = s
		}
	}
	if at < 0 {
		return parts
	}
	return []string{parts[0], fmt.Sprintf("%s %02d:%02d", parts[1], at/3600, at/60%60)}
}

// namesNumbers tells a text that has the numbers among its words, in their order.
func namesNumbers(text string, numbers []string) bool {
	k := 0
	for _, t := range words.Scan(text) {
		if k < len(numbers) && t.Text == numbers[k] {
			k++
		}
	}
	return k == len(numbers)
}

// partedHours makes a stretch of each of several hours and speeds: "1.5 + 3" at "14 then 7".
// Which of them the row's bites were on is not known.
func (r *Reader) partedHours(hours, speeds several) bool {
	h := figures(hours.parts, len(speeds.parts))
	v := figures(speeds.parts, len(h))
	if h == nil || v == nil || slices.ContainsFunc(h, math.IsNaN) || hours.t.Unit != "" && hours.t.Unit != unit.Hour {
		return false
	}
	for k := range h {
		leg := map[string]entry.Value{"duration_s": entry.OfReal(h[k] * 3600), "leg": entry.OfText(strconv.Itoa(k + 1))}
		setFigure(leg, "speed_kn", v[k])
		if x := r.value("lines_out"); x.Known {
			leg["lines_out"] = x
		}
		r.beside(plan.Legs, leg)
	}
	r.aside = append(r.aside, r.problem(speeds.t, speeds.text, record.OfEither))
	return true
}

// summedHours takes hours that plus signs join, "3+2.5", for their sum, in a row of one speed and one number of lines.
func (r *Reader) summedHours(hours several) bool {
	h := figures(hours.parts, len(hours.parts))
	if h == nil || slices.ContainsFunc(h, math.IsNaN) || !strings.Contains(hours.text, "+") ||
		strings.ContainsAny(hours.text, "/;&\n") || hours.t.Unit != "" && hours.t.Unit != unit.Hour {
		return false
	}
	sum := 0.0
	for _, x := range h {
		sum += x
	}
	if sum <= 0 || sum > 24 {
		return false
	}
	r.values[hours.t.field] = entry.OfReal(sum * 3600)
	return true
}

// partedClocks are the stretches of as many starts as ends; nil where they are not. They are
// sure where no clock time is of twelve hours.
func (r *Reader) partedClocks(starts, ends []string) (all []phrase.Stretch, sure bool) {
	if len(starts) == 0 || len(starts) != len(ends) {
		return nil, false
	}
	sure = true
	clock := func(text string) (phrase.Clock, bool) {
		m, err := r.moment(text)
		half := strings.ContainsAny(text, "apAP") || strings.HasPrefix(text, "0") || m.Seconds >= 13*3600
		return phrase.Clock{Seconds: m.Seconds, Sure: half}, err == nil && m.HasTime && !m.HasDate
	}
	last := 0
	for k := range starts {
		from, okA := clock(starts[k])
		to, okB := clock(ends[k])
		if !okA || !okB {
			return nil, false
		}
		if from.Seconds < last || to.Seconds < from.Seconds {
			sure = false
		}
		last = to.Seconds
		all = append(all, phrase.Stretch{Start: from, End: to, HasStart: true, HasEnd: true})
	}
	return all, sure
}

// figures are n numbers; nil where there are not as many, or one is none. One that the cell says is not known,
// "7.5 / ?", is NaN.
func figures(parts []string, n int) []float64 {
	if n == 0 || len(parts) != n {
		return nil
	}
	var out []float64
	for _, p := range parts {
		v, err := unit.ParseNumber(p, unit.MarkOf(p))
		switch {
		case words.NotLogged(p):
			v = math.NaN()
		case err != nil:
			return nil
		}
		out = append(out, v)
	}
	if !slices.ContainsFunc(out, func(v float64) bool { return !math.IsNaN(v) }) {
		return nil
	}
	return out
}

// setFigure gives a stretch one of several figures, where it is known.
func setFigure(v map[string]entry.Value, name string, figure float64) {
	switch {
	case math.IsNaN(figure):
	case name == "lines_out":
		v[name] = entry.OfInt(int64(figure))
	default:
		v[name] = entry.OfReal(figure)
	}
}

// fishCounts are the counts under which fish may be named one by one.
var fishCounts = []string{"hooked_n", "landed_n", "kept_n", "released_n", "lost_n"}

// named takes the fish that a cell names for its count: "1 yellowfin 34#, 1 wahoo 20#" are two.
func (r *Reader) named(t *target, text string) (n int, ok bool) {
	if !slices.Contains(fishCounts, t.Column.Name) {
		return 0, false
	}
	if name, all := phrase.AllOf(text); all {
		return r.allOf(name)
	}
	if n, ok = phrase.CountFish(text); ok {
		r.worded = append(r.worded, several{t: t, text: text})
	}
	return n, ok
}

// allOf is how many of a species the row counts as boated, for "all the skippy".
func (r *Reader) allOf(name string) (n int, ok bool) {
	m := r.set.Species.Find(name, r.set.Ocean)
	for _, c := range r.layout.Catch {
		of := r.set.Species.Find(c.Heading, r.set.Ocean)
		if !m.Found || !of.Found || of.Species.Code != m.Species.Code || c.Fate != "" || c.Index >= len(r.row.Cells) {
			continue
		}
		text := trimmed(r.row.Cells[c.Index])
		if k := slices.Index(r.layout.Figures, "landed_n"); k >= 0 {
			figures, reason := r.figuresOf(text)
			if reason != "" {
				return 0, false
			}
			return int(figures[k]), true
		}
		v, number := plainNumber(text)
		return int(v), number && v == float64(int(v))
	}
	return 0, false
}

// measures are those of several fish in one cell: "9.3 + 8.7".
type measures struct {
	t    *target
	text string
	all  []float64
}

// likened makes one more strike or fish of each that a row tells with the one of its species:
// "albies x3", "2 germons". One measure is of the one, whichever it is; several are of each.
func (r *Reader) likened() {
	fish, kind := max(1, r.like), plan.Strikes
	if r.layout.Kind == plan.Fish {
		kind = plan.Fish
	}
	if r.counts() {
		fish, kind = 1, plan.Fish
	}
	for i, m := range r.each {
		of := max(fish, int(r.value("count").Int))
		if boated := int(r.value("landed_n").Int); r.counts() && len(m.all) > 1 && len(m.all) <= boated {
			of, fish = boated, max(fish, len(m.all)) // of those that the row counts
		}
		if len(m.all) > of {
			r.values[m.t.field] = entry.Value{}
			r.aside = append(r.aside, r.problem(m.t, m.text, fmt.Sprintf("%d measures for %d fish", len(m.all), of)))
			r.each[i].all = nil
		}
	}
	for k := 1; k < fish; k++ {
		v := map[string]entry.Value{}
		for _, name := range likeFields {
			if x := r.value(name); x.Known {
				v[name] = x
			}
		}
		if e := &r.events; e.open && e.speed.Known && !v["strike_speed_kn"].Known {
			v["strike_speed_kn"] = e.speed
		}
		r.measure(v, k)
		r.beside(kind, v)
	}
}

// measure gives the fish that is the k-th of several of a row, from 0, its measures.
func (r *Reader) measure(v map[string]entry.Value, k int) {
	for _, m := range r.each {
		if k < len(m.all) {
			v[m.t.Column.Name] = entry.OfReal(m.all[k])
		}
	}
}

// likeFields are what several fish of one row have in common.
var likeFields = []string{"leg", "time_s", "outcome", "species", "species_logged", "lure",
	"colour", "strike_speed_kn", "kept"}
