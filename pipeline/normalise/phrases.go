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

// phrases works up what a row says in words and in columns of its own.
func (r *Reader) phrases() {
	r.furtherSets()
	r.derived()
	for i := range r.targets { // before what is told of the fish takes its weight
		if t := &r.targets[i]; t.Column.Parse == "weighed" &&
			(r.values[t.field].Text != "" || words.Scaled(t.Heading)) {
			r.weighed(t, r.values[t.field].Text)
		}
	}
	r.guessNoted()
	var stretches []phrase.Stretch
	overnight := false
	for i := range r.targets {
		t := &r.targets[i]
		text := r.values[t.field].Text
		if text == "" && t.Column.Parse == "event" {
			r.quietEvent(t)
		}
		if text == "" {
			continue
		}
		switch t.Column.Parse {
		case "stretches":
			told := phrase.Stretches(text)
			if len(told) == 0 {
				told = r.endBeside(text)
			}
			overnight = overnight || words.Night(text, "next")
			if stretches = append(stretches, told...); len(stretches) == 0 {
				r.unread(t, text, "it has no times: expected some like 6:10 to 11:40")
			} else if unpaired(text, told) {
				r.aside = append(r.aside, r.problem(t, text, "it has more times than stretches were read from"))
			}
		case "event":
			r.event(t, text)
		case "method":
			r.method(t, text)
		case "text":
			if t.Column.Name == "lure" &&
				(r.layout.Kind == plan.Strikes || r.layout.Kind == plan.Flat && !r.ownEffort()) {
				r.bottom(text)
			} else if t.Column.Name == "lure" && r.layout.Kind == plan.Flat {
				r.otherBite(t, text)
			}
		}
	}
	if len(stretches) > 0 {
		r.stretched(stretches, overnight)
	}
	r.told(stretches)
	r.trolledFor()
	r.endTold()
	r.stretchTold()
	r.paused()
	r.turned()
	r.trolledTwice()
	r.remarked()
	r.strikeSets()
	r.alike()
	r.rods()
	r.times()
	r.fatesOfSets()
	r.sharedBites()
}

// paused takes off the row's hours what its remarks say of lines that were up meanwhile.
func (r *Reader) paused() {
	to, ok := r.index["stopped_s"]
	start, end := r.value("start_s"), r.value("end_s")
	r.stopIncluded()
	if !ok || r.values[to].Known || !start.Known || !end.Known {
		return
	}
	if off := r.layout.Off[int64(r.row.Num)]; off > 0 && off < float64(end.Int-start.Int) {
		r.values[to] = entry.OfReal(off)
		return
	}
	for i := range r.targets {
		t := &r.targets[i]
		if p := t.Column.Parse; t.withTimes || p != "story" && p != "fishlist" && t.Column.Name != "notes" {
			continue
		}
		for _, p := range phrase.Pauses(t.text) {
			from, until := int64(p.Start.Seconds), int64(p.End.Seconds)
			if from < start.Int && !p.Start.Sure {
				from, until = from+day/2, until+day/2
			}
			if from < start.Int || until > end.Int || until <= from {
				continue
			}
			r.values[to] = entry.OfReal(r.values[to].Real + float64(until-from))
			r.doubts = append(r.doubts, r.problem(t, t.text,
				fmt.Sprintf("lines up meanwhile: %.1f hours were taken off", float64(until-from)/3600)))
		}
		up := 60 * phrase.StoppedLinesUp(t.text)
		if !r.layout.Again && !r.values[to].Known && up > 0 && up < float64(end.Int-start.Int) {
			r.values[to] = entry.OfReal(up)
			r.doubts = append(r.doubts, r.problem(t, t.text,
				fmt.Sprintf("lines up meanwhile: %.1f hours were taken off", up/3600)))
		}
		off := phrase.Stopped(t.text)
		if r.values[to].Known || off == 0 || off*60 >= float64(end.Int-start.Int) {
			continue
		}
		r.aside = append(r.aside, r.problem(t, t.text,
			fmt.Sprintf(record.OfStop+" of %.0f minutes, not whether lines were up: nothing was taken off", off)))
	}
}

// stopIncluded takes a stop with the lines up off hours without clock times, where a remark says that these include it.
func (r *Reader) stopIncluded() {
	i, ok := r.index["duration_s"]
	if !ok || !r.values[i].Known || r.effortTimed() {
		return
	}
	for k := range r.targets {
		t := &r.targets[k]
		if t.Column.Name != "notes" || t.text == "" {
			continue
		}
		if off := 60 * phrase.StopIncluded(t.text); off > 0 && off < r.values[i].Real {
			r.values[i].Real -= off
			r.doubts = append(r.doubts, r.problem(t, t.text,
				fmt.Sprintf("lines up meanwhile: %.1f hours were taken off", off/3600)))
		}
	}
}

// effortTimed reports whether the row says by the clock when lines went in and came up.
func (r *Reader) effortTimed() bool { return r.at(r.slots.start).Known && r.at(r.slots.end).Known }

// clockTime is a time of day as it is mostly written.
var clockTime = regexp.MustCompile(`\b\d{1,2}[:.,h]\d{2}\b`)

// unpaired tells a cell with more times of day than its stretches begin and end with.
func unpaired(text string, told []phrase.Stretch) bool {
	n := len(clockTime.FindAllString(text, -1))
	for _, s := range told {
		if s.HasStart {
			n--
		}
		if s.HasEnd {
			n--
		}
		if s.Hours > 0 && !s.HasStart && !s.HasEnd {
			n-- // 1h20 is how long
		}
	}
	return n > 0
}

// ofOne are what a row of several strikes or fish says of one of them at most.
var ofOne = []string{"length_cm", "girth_cm", "scale_kg", "fight_s", "strike", "notes"}

// alike makes as many strikes or fish of a row as its own count says: "skipjack, kept, 3". What
// was measured is that of the first. Beside a stretch and its counts they are further fish below it.
func (r *Reader) alike() {
	kind := r.layout.Kind
	if kind != plan.Strikes && kind != plan.Fish && kind != plan.Flat || r.sets > 0 || r.like > 1 {
		return
	}
	r.lot()
	for k := 1; k < int(r.value("count").Int); k++ {
		v := r.copyOf()
		for _, name := range ofOne {
			delete(v, name)
		}
		if kind == plan.Flat {
			for _, name := range ofStretch {
				delete(v, name)
			}
		}
		r.measure(v, k)
		r.beside(kind, v)
	}
}

// lot takes the weight of several fish together for that of none of them, and says so where it may be one of one.
func (r *Reader) lot() {
	i := slices.IndexFunc(r.targets, func(t target) bool { return t.Column.Name == "scale_kg" && t.Lot != plan.OfOne })
	if i < 0 || r.value("count").Int < 2 || !r.value("scale_kg").Known {
		return
	}
	t := &r.targets[i]
	if slices.ContainsFunc(r.each, func(m measures) bool { return m.t == t }) || words.OfBest(t.text) != "" {
		return
	}
	r.values[t.field] = entry.Value{}
	if t.Lot == plan.OfAll {
		r.doubts = append(r.doubts, r.problem(t, t.text, "the weight of several fish together: taken for none of them"))
		return
	}
	r.aside = append(r.aside, r.problem(t, t.text, "the weight of one of several fish, or of all of them: not taken"))
}

// ofStretch are what a row says of its stretch, beyond which it is, and of all bites of it.
var ofStretch = []string{"lines_out", "speed_kn", "tangle", "tangled_lines", "strikes_n", "hooked_n",
	"landed_n", "released_n", "lost_n", "missed_n", "extra"}

// put puts a value into a field that the row has no other value for.
func (r *Reader) put(name string, v entry.Value) {
	if i, ok := r.index[name]; ok && !r.values[i].Known {
		r.values[i] = v
	}
}

// derived fills what follows from other cells of the row.
func (r *Reader) derived() {
	if kept := r.value("kept"); r.value("outcome").Text == "landed" && kept.Known && kept.Int == 0 && !r.counts() {
		r.values[r.index["outcome"]] = entry.OfText("released") // at the boat, and put back
	}
	if kept := r.value("kept_n"); kept.Known && !r.value("landed_n").Known {
		r.put("landed_n", kept)
	} else if rel := r.value("released_n"); kept.Known && rel.Known && r.value("landed_n").Int >= kept.Int {
		r.values[r.index["landed_n"]] = kept // landed said no more than these two
	}
	if i, ok := r.index["landed_n"]; ok && r.layout.Inclusive && r.values[i].Known {
		r.values[i].Int = max(0, r.values[i].Int-r.value("released_n").Int)
	}
	if name, ok := r.layout.Trips[int64(r.row.Num)]; ok {
		r.put("trip", entry.OfText(name))
	}
	r.answers()
	r.half()
	r.outing()
	lh, h := r.value("line_hours"), r.value("duration_s")
	if lh.Known && h.Known && h.Real > 0 && !r.value("lines_out").Known {
		// where lines went in and out between, no one number of lines tells it
		if n := lh.Real / h.Real; math.Abs(n-math.Round(n)) < nearlyWhole {
			r.put("lines_out", entry.OfInt(int64(math.Round(n))))
		} else if whole := math.Round(n); whole > 0 && math.Abs(lh.Real/whole-h.Real) <= halfTenth {
			r.put("lines_out", entry.OfInt(int64(whole)))
			r.values[r.index["duration_s"]] = entry.OfReal(lh.Real / whole) // of 8.75 line-hours 1.2 h are 7 times 1.25
		} else if i := r.targetOf("line_hours"); i >= 0 && r.has("lines_out") {
			r.aside = append(r.aside, r.problem(&r.targets[i], r.targets[i].text,
				"no whole number of lines times the hours of its row: its line-hours are left out"))
		}
	}
}

// answering tells a table of single bites that may answer of each whether it was hooked: no other column counts them,
// and none has hours.
func (r *Reader) answering() bool {
	return r.layout.Kind == plan.Flat && r.layout.Binds("hooked_n") && r.layout.Binds("species", "time_s") &&
		!r.layout.Binds("start_s", "duration_s", "strikes_n") && !r.layout.Reads("stretches", "event")
}

// answers counts the bite of a row that answers whether it was hooked: one that was not was missed, one that was landed
// and, as its own column says, let go was released.
func (r *Reader) answers() {
	if !r.answering() || !slices.ContainsFunc(r.targets, func(t target) bool {
		return t.Column.Name == "hooked_n" && t.text != "" && !startsDigit(t.text)
	}) {
		return
	}
	hooked, landed, kept := r.value("hooked_n"), r.value("landed_n"), r.value("kept")
	switch {
	case hooked.Known && hooked.Int == 0 && landed.Int == 0 && !r.value("missed_n").Known:
		r.values[r.index["missed_n"]] = entry.OfInt(1)
	case hooked.Int == 1 && landed.Int == 1 && kept.Known && kept.Int == 0 && !r.value("released_n").Known:
		r.values[r.index["released_n"]], r.values[r.index["landed_n"]] = entry.OfInt(1), entry.OfInt(0)
	}
}

// halfTenth is half of a tenth of an hour, to which hours are often rounded, in seconds.
const halfTenth = 181

// targetOf is the first column of a name that has a text in the row, -1 where none has.
func (r *Reader) targetOf(name string) int {
	return slices.IndexFunc(r.targets, func(t target) bool { return t.Column.Name == name && t.text != "" })
}

// nearlyWhole is how far line-hours over hours may be from a whole number of lines, as both are rounded.
const nearlyWhole = 0.15

// half names the trip of a row by its day and its half of the day.
func (r *Reader) half() {
	if i, date := r.layout.Half-1, r.value("date"); i >= 0 && i < len(r.row.Cells) && date.Known {
		if part, ok := words.HalfOfDay(r.row.Cells[i]); ok {
			r.put("trip", entry.OfText(unit.Date(date.Int).String()+" "+part))
		}
	}
}

// outing names the trip of a row by its day and when the boat left. After midnight the day may
// be the next one: such a row has no name, and is of the trip that its stretch goes on with.
func (r *Reader) outing() {
	date, left, back, start := r.value("date"), r.value("depart_s"), r.value("return_s"), r.value("start_s")
	if !r.layout.Outings || !date.Known || !left.Known {
		return
	}
	if night := back.Known && back.Int%day <= left.Int; night && (!start.Known || start.Int%day < left.Int) {
		return
	}
	r.put("trip", entry.OfText(outingName(date, left)))
}

// outingName is the name of the trip for which the boat left at a time of a day.
func outingName(date, left entry.Value) string {
	return fmt.Sprintf("%s %02d:%02d", unit.Date(date.Int), left.Int/3600, left.Int/60%60)
}

// furtherSets adds the second and further stretches of a row that has columns for them.
func (r *Reader) furtherSets() {
	for k := 1; ; k++ {
		n := "#" + strconv.Itoa(k)
		start, end, hours := r.value("start_s"+n), r.value("end_s"+n), r.value("duration_s"+n)
		if !r.has("start_s"+n) && !r.has("duration_s"+n) {
			return
		}
		if !start.Known && !end.Known && !hours.Known {
			continue
		}
		if start.Known && end.Known && end.Int < start.Int {
			end.Int += day
		}
		v := map[string]entry.Value{"leg": entry.OfText(strconv.Itoa(k + 1))}
		for name, x := range map[string]entry.Value{"start_s": start, "end_s": end, "duration_s": hours} {
			if x.Known {
				v[name] = x
			}
		}
		for _, name := range []string{"speed_kn", "lines_out"} {
			if x := r.value(name + n); x.Known {
				v[name] = x
			} else if x := r.value(name); x.Known && !r.has(name+n) {
				v[name] = x
			}
		}
		kind := plan.Legs
		for _, name := range countNames {
			if x := r.value(name + n); x.Known {
				kind, v[name] = plan.Flat, x
			}
		}
		if kept := r.value("kept_n" + n); kept.Known && !v["landed_n"].Known {
			kind, v["landed_n"] = plan.Flat, kept
		}
		if landed := v["landed_n"]; landed.Known && r.layout.Inclusive {
			v["landed_n"] = entry.OfInt(max(0, landed.Int-v["released_n"].Int))
		}
		if held, ok := r.held(v["strikes_n"], v["missed_n"], v["landed_n"].Int+v["released_n"].Int); ok {
			v["hooked_n"] = held
		}
		r.beside(kind, v)
	}
}

// lastLeg is where the stretch above ended, for clocks of twelve hours.
type lastLeg struct {
	date, trip entry.Value
	end        int64
	read       map[[2]int64][2]int64 // the starts and ends of its day, by how they are written
}

// twelve puts a start and an end of twelve hours after what went before on the same day. A stretch that is written
// again, on each row of a line or a bite, is the same one.
func (r *Reader) twelve(start, end *int64) {
	d, trip := r.value("date"), r.value("trip")
	if d != r.last.date || trip != r.last.trip || r.last.read == nil {
		r.last = lastLeg{date: d, trip: trip, read: map[[2]int64][2]int64{}}
	}
	said := [2]int64{*start, *end}
	if read, again := r.last.read[said]; again {
		*start, *end = read[0], read[1]
		return
	}
	for *start < r.last.end && *start < day/2 {
		*start += day / 2
	}
	for *end <= *start {
		*end += day / 2
	}
	r.last.end, r.last.read[said] = *end, [2]int64{*start, *end}
}

// times settles clock times of twelve hours that stand in columns.
func (r *Reader) times() {
	if k, ok := r.index["time_s"]; ok && r.values[k].Known && r.values[k].Int < int64(r.layout.Early) {
		r.values[k].Int += day / 2
	}
	i, j := r.slots.start, r.slots.end
	if !r.layout.Twelve || i < 0 || j < 0 || !r.values[i].Known || !r.values[j].Known || r.halvesSaid() {
		return
	}
	r.twelve(&r.values[i].Int, &r.values[j].Int)
	if k, ok := r.index["time_s"]; ok && r.values[k].Known {
		for r.values[k].Int < r.values[i].Int && r.values[k].Int < day/2 {
			r.values[k].Int += day / 2
		}
	}
}

// halvesSaid tells a row whose start and end both say am or pm.
func (r *Reader) halvesSaid() bool {
	said := 0
	for i := range r.targets {
		t := &r.targets[i]
		if (t.field == r.slots.start || t.field == r.slots.end) && saysHalf.MatchString(t.text) {
			said++
		}
	}
	return said == 2
}

// saysHalf tells a clock time with am or pm behind it.
var saysHalf = regexp.MustCompile(`(?i)\d\s*[ap]\.?\s?(?:m\.?)?$`)

// stretched makes the row's stretch, or stretches, from a phrase.
func (r *Reader) stretched(all []phrase.Stretch, overnight bool) {
	speed, lines := r.value("speed_kn"), r.value("lines_out")
	set := r.settings(len(all))
	var paces []entry.Value
	later := int64(0) // seconds of the nights before a stretch
	for k, s := range all {
		v := map[string]entry.Value{}
		start, end := int64(s.Start.Seconds), int64(s.End.Seconds)
		if overnight && k > 0 && nightBetween(all[k-1], s) {
			later += day
		}
		if s.HasStart && s.HasEnd {
			if !s.Start.Sure || !s.End.Sure {
				r.twelve(&start, &end)
			} else if end < start {
				end += day
			}
			v["start_s"], v["end_s"] = entry.OfInt(start+later), entry.OfInt(end+later)
		} else if s.HasStart && s.Open {
			v["start_s"] = entry.OfInt(start + later)
		} else if s.Hours > 0 {
			v["duration_s"] = entry.OfReal(s.Hours * 3600)
		}
		if s.StopMinutes > 0 {
			v["stopped_s"] = entry.OfReal(s.StopMinutes * 60)
		}
		switch {
		case r.paces != nil:
			setFigure(v, "speed_kn", r.paces[k])
		case s.SpeedLo > 0:
			v["speed_kn"] = entry.OfReal((s.SpeedLo + s.SpeedHi) / 2)
		case len(set.Speeds) > 0:
			v["speed_kn"] = entry.OfReal(set.Speeds[min(k, len(set.Speeds)-1)])
		case speed.Known:
			v["speed_kn"] = speed
		}
		switch {
		case r.linesEach != nil:
			setFigure(v, "lines_out", r.linesEach[k])
		case s.Lines >= 0:
			v["lines_out"] = entry.OfInt(int64(s.Lines))
		case len(set.Lines) > 0 && !slices.ContainsFunc(all, func(o phrase.Stretch) bool { return o.Lines >= 0 }):
			v["lines_out"] = entry.OfInt(int64(set.Lines[min(k, len(set.Lines)-1)]))
		case lines.Known:
			v["lines_out"] = lines
		}
		if len(all) == 1 && r.hasAll(v) {
			for name, x := range v {
				r.values[r.index[name]] = x
			}
			return
		}
		v["leg"] = entry.OfText(strconv.Itoa(k + 1))
		paces = append(paces, v["speed_kn"])
		r.beside(plan.Legs, v)
	}
	for _, name := range []string{"speed_kn", "lines_out"} {
		if i, ok := r.index[name]; ok {
			r.values[i] = entry.Value{} // they are its stretches'
		}
	}
	if i, ok := r.index["speed_kn"]; !ok {
		return
	} else if len(slices.Compact(paces)) == 1 {
		r.values[i] = paces[0] // whichever of them its bites were on
		return
	}
	r.ofEither()
}

// nightBetween tells a stretch that began before the one told before it ended, by clocks that say their half of the
// day: it was on the next day, where the text speaks of one.
func nightBetween(before, s phrase.Stretch) bool {
	return before.HasEnd && s.HasStart && before.End.Sure && s.Start.Sure && s.Start.Seconds < before.End.Seconds
}

// ofEither says of a row of several stretches of different speeds, with bites, that its bites may be of
// either.
func (r *Reader) ofEither() {
	i := slices.IndexFunc(r.targets, func(t target) bool { return t.Column.Name == "speed_kn" })
	if i < 0 || r.paces == nil || !slices.ContainsFunc(countNames,
		func(name string) bool { return r.value(name).Int > 0 }) {
		return
	}
	r.aside = append(r.aside, r.problem(&r.targets[i], r.targets[i].text, record.OfEither))
}

func (r *Reader) hasAll(v map[string]entry.Value) bool {
	for name := range v {
		if !r.has(name) {
			return false
		}
	}
	return true
}

// settings is what the row's prose says of speed and lines, for its n stretches.
func (r *Reader) settings(n int) phrase.Setting {
	var all phrase.Setting
	var by *target
	for i := range r.targets {
		t := &r.targets[i]
		if p := t.Column.Parse; p != "story" && p != "fishlist" && t.Column.Name != "notes" {
			continue
		}
		s := phrase.Settings(r.values[t.field].Text)
		all.Speeds, all.Lines = append(all.Speeds, s.Speeds...), append(all.Lines, s.Lines...)
		if s.By {
			by = t
		}
	}
	if by != nil && len(all.Lines) == 0 && r.value("lines_out").Known {
		r.aside = append(r.aside, r.problem(by, r.values[by.field].Text,
			"tells of lines more or fewer than usual, not how many were out: the usual number was taken"))
	}
	return all
}

// unitSign is a unit that a legend explains: cells write it themselves, and bare numbers are of another. kg = by scale
var unitSign = regexp.MustCompile(`(?i)\b(?:kgs?|lbs?|cm|in|inch)\s*=[^,;]*`)

// unitNamed is a unit of length or weight in a heading.
var unitNamed = regexp.MustCompile(`(?i)(?:^|[\s(,])(?:kgs?|kilos?|lbs?|pounds|cm|inch(?:es)?)(?:$|[\s),])`)

// defaults is what a phrase's heading says of its bare numbers, and the log of its tape and its scale.
func (r *Reader) defaults(t *target) phrase.Defaults {
	d := phrase.Defaults{Scaled: t.Scaled, ScaleUnit: string(r.scaleUnit()),
		TapeUnit: map[string]string{"us": "in", "metric": "cm"}[r.system()]}
	heading := t.Heading
	if rest := unitSign.ReplaceAllString(heading, " "); unitNamed.MatchString(rest) {
		heading = rest // "cm LCF, kg = scales": bare numbers are cm; "lb = dock scale" alone says what they are
	}
	said := words.Fold(heading + " " + unitSign.ReplaceAllString(withoutBrackets(t.Said), " "))
	head := " " + strings.NewReplacer("(", " ", ")", " ", ",", " ", "=", " ").Replace(said) + " "
	for unit, spellings := range map[string][]string{"lb": {" lb", " lbs", "#", "pounds"}, "kg": {" kg", " kilos"}} {
		for _, s := range spellings {
			if strings.Contains(head, s) {
				d.WeightUnit = unit
			}
		}
	}
	for unit, spellings := range map[string][]string{"in": {" in ", "inch"}, "cm": {" cm"}} {
		for _, s := range spellings {
			if strings.Contains(head, s) {
				d.LengthUnit = unit
			}
		}
	}
	return d
}

// scaleUnit is the unit of a weight beside a word for the scale, where it has none of its own; "" where the
// log does not tell pounds from kilograms.
func (r *Reader) scaleUnit() unit.Unit {
	switch r.system() {
	case "us":
		return unit.Pound
	case "metric":
		return unit.Kilogram
	}
	return ""
}

// boated is how many fish the row's counts bring to the boat, and whether it has any.
func (r *Reader) boated() (fish, strikes int, told bool) {
	all := map[string]int64{}
	for _, name := range countNames {
		v := r.value(name)
		told = told || v.Known
		all[name] = v.Int
		for k := 1; r.has(name + "#" + strconv.Itoa(k)); k++ { // of a further stretch
			all[name] += r.value(name + "#" + strconv.Itoa(k)).Int
		}
	}
	for k := 1; r.has("kept_n#" + strconv.Itoa(k)); k++ {
		if n := strconv.Itoa(k); !r.value("landed_n#" + n).Known {
			all["landed_n"] += r.value("kept_n#" + n).Int
		}
	}
	told = told || r.catch >= 0
	landed := all["landed_n"] + all["released_n"]
	hooked := max(all["hooked_n"], landed)
	strikes = int(max(all["strikes_n"], hooked))
	known := func(names ...string) bool {
		return !slices.ContainsFunc(names, func(name string) bool { return !r.value(name).Known })
	}
	switch {
	case known("strikes_n", "missed_n", "lost_n") && !known("landed_n") && !known("released_n") && !known("hooked_n"):
		return max(0, strikes-int(all["missed_n"]+all["lost_n"])), strikes, told // what is left came to the boat
	case all["landed_n"] > 0 || r.layout.Binds("landed_n", "kept_n") || r.catch >= 0 ||
		r.layout.Binds("released_n") && !r.layout.Reads("fishlist"):
		return int(landed), strikes, told
	case r.uncounted():
		return unbounded, strikes, told
	case r.layout.Binds("hooked_n"):
		return int(hooked - all["lost_n"]), strikes, told
	}
	return max(0, strikes-int(all["missed_n"]+all["lost_n"])), strikes, told
}

// unbounded is more fish than a row has, where nobody counted them.
const unbounded = 1 << 16

// uncounted tells a row that counts the bites that were lost or missed, and has words in place of the number of them
// all, "several": how many came to the boat is not counted.
func (r *Reader) uncounted() bool {
	if r.value("strikes_n").Known || r.value("hooked_n").Known ||
		!r.value("lost_n").Known && !r.value("missed_n").Known {
		return false
	}
	return slices.ContainsFunc(r.targets, func(t target) bool {
		return (t.Column.Name == "strikes_n" || t.Column.Name == "hooked_n") && t.text != ""
	})
}

// countNames are the counts of what struck that a season file keeps.
var countNames = []string{"strikes_n", "hooked_n", "landed_n", "released_n", "lost_n", "missed_n"}

// note keeps a cell's words, whatever was made of them, behind those of the row's other cells.
func (r *Reader) note(text string) {
	text = oneSpaced(text)
	if said := r.value("notes").Text; said != "" {
		text = said + "; " + text
	}
	r.values[r.index["notes"]] = entry.OfText(text)
}

// fishOf makes a fish of each that a text lists; never more than the row counts. A fish that an
// earlier list of the row names too is the same one: "1 wahoo" and, under the dock's weights,
// "wahoo 31.5". It returns the row's fish so far.
func (r *Reader) fishOf(t *target, text string, listed []map[string]entry.Value, most int,
	counted bool) []map[string]entry.Value {
	if counted {
		text = phrase.OfCount(text, int(r.value("landed_n").Int))
	}
	fish := phrase.FishList(text, r.defaults(t))
	all := slices.Concat(fish, r.fishOtherwise(t, text))
	if weightsIn(text) > weighed(all) && !words.Hedged(text) {
		r.aside = append(r.aside, r.problem(t, text, "it names a weight that was not read"))
	}
	if lengthsIn(text) > taped(all) && !words.Hedged(text) {
		r.aside = append(r.aside, r.problem(t, text, "it names a length that was not read"))
	}
	if r.layout.Freed && counted {
		most += r.freedIn(fish)
	}
	if !counted {
		r.unseen(t, text)
	} else if !r.layout.Binds("hooked_n", "landed_n", "kept_n", "released_n", "lost_n") {
		r.unknownFish(t, phrase.Tell(text, r.defaults(t)))
	}
	m, n := r.measures(fish), 0
	head := r.sisters(t)
	before, room := r.ofOtherColumns(head, listed), most-len(listed)
	said := eachFish(text, len(fish))
	for k, f := range fish {
		if f.Fate == words.Lost || f.Fate == words.Missed {
			if !counted {
				for range max(f.N, 1) {
					if v := r.fishValues(f); !r.names(v) {
						r.beside(plan.Strikes, v)
					}
				}
			}
			continue
		}
		for range max(f.N, 1) {
			v := r.fishValues(f)
			if said != nil && f.N <= 1 {
				r.struckAt(said[k], v)
			}
			if t.Kept && v["outcome"].Text != "released" {
				v["kept"] = entry.OfFlag(true)
			}
			if i := sameFish(before, v); i >= 0 {
				fillIn(before[i], v)
				before = slices.Delete(before, i, i+1)
				continue
			}
			if n++; counted && len(listed) >= most {
				continue
			}
			m.fill(n-1, v)
			if v["outcome"].Text == "hooked" {
				delete(v, "outcome")
			}
			r.beside(plan.Fish, v)
			listed, r.heads = append(listed, v), append(r.heads, head)
		}
	}
	if counted && n > max(0, room) {
		r.aside = append(r.aside, r.problem(t, text, fmt.Sprintf(
			"tells of %d fish where the row counts %d: the counts stand", n+most-room, most)))
	}
	return listed
}

// fishOtherwise are the fish that a text says were taken in another way than trolling: no list has them.
func (r *Reader) fishOtherwise(t *target, text string) (fish []phrase.Fish) {
	for _, b := range phrase.Tell(text, r.defaults(t)).Bites {
		if b.Method != "" && b.Method != "troll" {
			fish = append(fish, b.Fish)
		}
	}
	return fish
}

// eachFish is what a list says of each of its n fish, where semicolons part them all; of one fish the whole list.
func eachFish(text string, n int) []string {
	parts := []string{text}
	if n > 1 {
		parts = strings.Split(text, ";")
	}
	if len(parts) != n || n > 1 && slices.ContainsFunc(parts, func(part string) bool {
		return len(phrase.FishList(part, phrase.Defaults{})) != 1
	}) {
		return nil
	}
	return parts
}

// struckAt gives a fish the speed at which it bit, where its words say that and its row tells no speed.
func (r *Reader) struckAt(text string, v map[string]entry.Value) {
	if speed := phrase.BiteSpeed(text); speed > 0 && !r.value("speed_kn").Known {
		v["strike_speed_kn"] = entry.OfReal(speed)
	}
}

// unknownFish sets aside what a list says became of something that is no fish known.
func (r *Reader) unknownFish(t *target, told phrase.Story) {
	for _, left := range told.Left {
		if _, _, _, fate := words.FateOf(left); fate && len(phrase.FishList(left, r.defaults(t))) == 0 {
			r.aside = append(r.aside, r.problem(t, left, "it tells of fish or bites in words that are not understood"))
		}
	}
}

// unseen makes a strike of each bite of a list that was missed or lost and names no fish:
// "2 hoos, 1 knockdown no hookup". What became of something that is no fish known is left.
func (r *Reader) unseen(t *target, text string) {
	told := phrase.Tell(text, r.defaults(t))
	r.unknownFish(t, told)
	for _, b := range told.Bites {
		if b.Name != "" || b.Fate != words.Missed && b.Fate != words.Lost || b.Method != "" && b.Method != "troll" {
			continue
		}
		for range max(b.N, 1) {
			r.beside(plan.Strikes, r.fishValues(b.Fish))
		}
	}
}

// weightsIn is how many figures of a text have a unit of weight.
func weightsIn(text string) int { return len(weightIn.FindAllString(text, -1)) }

var weightIn = regexp.MustCompile(`(?i)\d\s*(?:kgs?|kilos?|lbs?|#|pounds)(?:[^\pL]|$)`)

// weighed is how many fish of a list have a weight, of a scale or not.
func weighed(fish []phrase.Fish) int {
	n := 0
	for _, f := range fish {
		if f.Kg > 0 {
			n += max(f.N, 1)
		}
	}
	return n
}

// lengthsIn is how many figures of a text have a unit of length that fish are measured in.
func lengthsIn(text string) int { return len(lengthIn.FindAllString(text, -1)) }

var lengthIn = regexp.MustCompile(`(?i)\d\s*(?:cms?|inch|inches|pulg|pulgadas|pouces|zoll)(?:[^\pL]|$)|\bcms?\s+\d`)

// taped is how many lengths and girths a list has.
func taped(fish []phrase.Fish) int {
	n := 0
	for _, f := range fish {
		for _, cm := range []float64{f.LengthCm, f.GirthCm} {
			if cm > 0 {
				n += max(f.N, 1)
			}
		}
	}
	return n
}

// freedIn adds the fish of a list that were let go to those that the row counts, as the log's
// owner said that they stand beside them.
func (r *Reader) freedIn(fish []phrase.Fish) int {
	n := 0
	for _, f := range fish {
		if f.Fate == words.Released {
			n += max(f.N, 1)
		}
	}
	r.letGoBeside(n)
	return n
}

// ofOtherColumns are the fish listed so far that a column may tell again: not those of its sisters, of the name head.
func (r *Reader) ofOtherColumns(head string, listed []map[string]entry.Value) []map[string]entry.Value {
	var out []map[string]entry.Value
	for i, v := range listed {
		if head == "" || r.heads[i] != head {
			out = append(out, v)
		}
	}
	return out
}

// sisters is what a column of fish is called with those that tell of other fish than it: "Fish 1" beside "Fish 2", the
// fish of the morning's stretch beside those of the afternoon's; "" where it has none.
func (r *Reader) sisters(t *target) string {
	if head := numbered(t.Heading); head != "" || !r.listEach() {
		return head
	}
	return t.Column.Parse
}

// listEach tells a row of several stretches each of which has a list of its fish between its own columns and those of
// the next.
func (r *Reader) listEach() bool {
	var lists, starts, hours []int
	for i := range r.targets {
		t := &r.targets[i]
		switch {
		case t.given != "":
		case t.Column.Parse == "fishlist":
			lists = append(lists, t.Index)
		case t.Column.Name == "start_s":
			starts = append(starts, t.Index)
		case t.Column.Name == "duration_s":
			hours = append(hours, t.Index)
		}
	}
	if len(starts) == 0 {
		starts = hours
	}
	slices.Sort(lists)
	slices.Sort(starts)
	if len(lists) < 2 || len(lists) != len(starts) {
		return false
	}
	for k, list := range lists {
		if list < starts[k] || k+1 < len(starts) && list > starts[k+1] {
			return false
		}
	}
	return true
}

// numbered is a heading that ends in a number without it; "" where it ends in none.
func numbered(heading string) string {
	if name := strings.TrimRight(heading, "0123456789"); name != heading {
		return strings.ToLower(name)
	}
	return ""
}

// sameFish finds a fish of an earlier list by its name, whose measures are not others; -1 where there is none.
func sameFish(listed []map[string]entry.Value, v map[string]entry.Value) int {
	return slices.IndexFunc(listed, func(o map[string]entry.Value) bool {
		return o["species_logged"].Known && strings.EqualFold(o["species_logged"].Text, v["species_logged"].Text) &&
			!slices.ContainsFunc(amendable, func(m measure) bool {
				return o[m.name].Known && v[m.name].Known && !near(o[m.name].Real, v[m.name].Real)
			})
	})
}

// fillIn gives a fish what another list says of it and its own does not.
func fillIn(fish, v map[string]entry.Value) {
	for name, x := range v {
		if name != "outcome" && !fish[name].Known {
			fish[name] = x
		}
	}
}

// biteFields are what a row says of one bite and its fish.
var biteFields = []string{"outcome", "species", "species_logged", "time_s", "length_cm", "girth_cm", "scale_kg", "kept",
	"loss_cause", "fight_s", "lure", "line", "strike"}

// otherBite leaves the bite out of a row that repeats its stretch's hours and speed and tells one bite, where its lure
// is another way of fishing: the hours are trolled, the bite was not.
func (r *Reader) otherBite(t *target, text string) {
	m, ok := words.Method(text)
	other := ok && (m == "bottom" || m == "chunk" || m == "drift" || m == "cast" || m == "spear") && !words.Lure(text)
	told := r.value("outcome").Known || r.value("species_logged").Known
	if !other || !told || r.counts() || !r.value("speed_kn").Known || r.value("speed_kn").Real < leastTrolled {
		return
	}
	for _, name := range biteFields {
		if i, ok := r.index[name]; ok {
			r.values[i] = entry.Value{}
		}
	}
	r.doubts = append(r.doubts, r.problem(t, text, "another way of fishing: the bite is left out, the hours count"))
}

// leastTrolled is the slowest that a boat trolls, in knots (common practice, no source).
const leastTrolled = 3

// bottom keeps what a bait took that was not trolled out of the strikes. A jig may be, and a live bait of one of
// the log's stretches.
func (r *Reader) bottom(text string) {
	switch m, ok := words.Method(text); {
	case !ok, words.Lure(text):
	case m == "live bait":
		r.livebait = true
	case m == "bottom", m == "chunk", m == "kite", m == "drift", m == "cast", m == "spear":
		r.elsewise = true
	}
}

// weighed takes a weight for none of a scale where the column beside it says that it was worked
// out or guessed, and sets a word aside that says neither.
func (r *Reader) weighed(t *target, text string) {
	i, has := r.index["scale_kg"]
	scale, told := words.ByScale(text)
	means, ok := r.words.find("bool", text) // Scale? yes
	if !ok {
		means, ok = r.words.find("mark", text) // Est.: x
	}
	if ok {
		if scale, told = means == "yes", true; words.Hedged(strings.Trim(t.Heading, "? ")) {
			scale = !scale // Guess? no
		}
	}
	switch {
	case r.sets > 0 || !has || !r.values[i].Known || scale:
	case told:
		r.values[i] = entry.Value{}
		r.doubts = append(r.doubts, r.problem(t, text, "the weight is not from a scale: not logged"))
	default:
		r.values[i] = entry.Value{}
		r.aside = append(r.aside, r.problem(t, text, "the log does not say whether a scale gave this weight: taken "+
			"as not logged"))
	}
}

// guessNoted takes a weight for none of a scale whose row's remark says nothing but that it was guessed.
func (r *Reader) guessNoted() {
	i, has := r.index["scale_kg"]
	if !has || r.sets > 0 || !r.values[i].Known {
		return
	}
	for k := range r.targets {
		if t := &r.targets[k]; t.Column.Name == "notes" && t.given == "" && words.OnlyGuess(t.text) {
			r.values[i] = entry.Value{}
			r.doubts = append(r.doubts, r.problem(t, t.text, "the weight is not from a scale: not logged"))
			return
		}
	}
}

// method keeps what was not trolled out of the strikes and the effort. Under a heading such
// as "If not trolling" whatever is written says so.
func (r *Reader) method(t *target, text string) {
	m, ok := words.Method(text)
	switch {
	case ok && m != "troll", !ok && !words.Nothing(text) && words.Negated(t.Heading),
		!ok && r.anyCell(words.NotTrolled):
		r.elsewise = true
	case !ok:
		r.aside = append(r.aside, r.problem(t, text, "it names no way of fishing: taken as trolled; the rest of the "+
			"row is kept"))
	}
}
