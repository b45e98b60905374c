package normalise

import (
	"regexp"
	"slices"
	"strings"

	"wakeledger/pipeline/entry"
	"wakeledger/pipeline/phrase"
	"wakeledger/pipeline/plan"
	"wakeledger/pipeline/words"
)

// idle tells rows that are no entry because they say that there was nothing to enter:
// a day not gone, a test, a stretch's table under which nothing struck.
func (r *Reader) idle() Skip {
	own, begins := r.ownEffort(), r.value("date") != r.lain.date || r.value("trip") != r.lain.trip
	if r.layout.Kind == plan.Flat && (own || begins) {
		r.lain = lain{r.value("date"), r.value("trip"), own && (r.still() || r.otherWay() || r.bare()), false}
	}
	if r.lain.apart && (r.under || !own && !begins) && !r.value("time_s").Known {
		return Elsewise // more of a row that was not trolled
	}
	if r.layout.Kind == plan.Flat && begins && !own && (r.otherWay() || r.anyCell(words.NeverTrolled)) {
		r.lain.apart = r.has("start_s") || r.has("duration_s") // and the fish below it were caught drifting
	}
	if r.otherWay() {
		return Elsewise
	}
	if r.layout.Kind == plan.Flat && r.layout.Apart[int64(r.row.Num)] {
		return Elsewise
	}
	switch r.layout.Kind {
	case plan.Strikes, plan.Fish:
		if r.beyond || r.layout.Apart[int64(r.row.Num)] || r.untrolled() || r.elsewhere() {
			return Elsewise
		}
		r.blankFate()
		if r.nothing || !r.struck() && r.anyCell(words.Nothing) || r.saysNothing() {
			return NoStrike
		}
		return NotASkip
	case plan.Flat:
		if r.onlySeen() && !own {
			return NoStrike
		}
		if r.still() || own && r.bare() || r.lain.still {
			return Elsewise // a stretch that was not trolled, and the strikes on the lines beneath it
		}
		if !own && (r.struck() || len(r.side) > 0) && (r.untrolled() || r.otherDay()) {
			// a day that begins with "no trolling", where others have hours, was none, nor what it took below
			r.lain.still = r.lain.still || begins && r.has("start_s") && r.anyCell(words.NeverTrolled)
			r.lain.apart = begins && (r.has("start_s") || r.has("duration_s"))
			return Elsewise
		}
		if !own && r.anyCell(words.NeverTrolled) {
			return Elsewise
		}
		if r.has("speed_kn") && !r.value("speed_kn").Known && !r.struck() &&
			!slices.ContainsFunc(r.side, paced) && r.untrolled() {
			return Elsewise // hours without a speed or a bite, on the handline
		}
	case plan.Legs:
		if r.still() || r.noHours() || !own && r.otherDay() {
			return Elsewise
		}
	case plan.Trips:
		if r.layout.Apart[int64(r.row.Num)] {
			return Elsewise
		}
		if r.layout.Numbered && !r.value("trip").Known && !r.value("depart_s").Known && !r.value("return_s").Known ||
			r.layout.Ashore[int64(r.row.Num)] || r.onlyDay() {
			return NotGone
		}
	case plan.Events:
		if r.value("time_s").Known {
			r.notTrolled()
		} else if len(r.side) > 0 && r.untrolled() {
			return Elsewise // a day of bottom fishing among those with their times
		}
		return NotASkip
	default:
		return NotASkip
	}
	if r.linesUp() {
		return Elsewise
	}
	if r.layout.Kind == plan.Flat && !r.effort() && !r.struck() && len(r.side) == 0 &&
		r.anyCell(func(text string) bool { return words.Hourly(text) == "idle" }) {
		return Elsewise // an hour in which, as its remarks say, the lines were up
	}
	if r.anyCell(words.NotGone) && !r.effort() && !r.struck() && !slices.ContainsFunc(r.side, named) {
		return NotGone // "sat at the dock til ten and bagged it" boated nothing
	}
	if r.layout.Kind == plan.Flat && r.anyCell(words.Otherwise) && !r.effort() && !r.struck() && len(r.side) == 0 {
		return Elsewise // a day on the handline
	}
	if r.effort() || len(r.side) > 0 || r.struck() {
		if r.anyCell(isTest) {
			return Trial
		}
		return NotASkip
	}
	if r.empty() {
		return NotGone
	}
	return NotASkip
}

// saysNothing tells a row of strikes that says, whatever its column, nothing but that there were none: "no bites" under
// the places of the spread.
func (r *Reader) saysNothing() bool {
	own := -1
	for i, c := range r.row.Cells {
		if trimmed(c) == "" || slices.ContainsFunc(r.targets, func(t target) bool {
			return t.Index == i && (t.Column.Name == "date" || t.Column.Name == "trip" || t.Column.Name == "leg")
		}) {
			continue
		}
		if own >= 0 {
			return false
		}
		own = i
	}
	return own >= 0 && words.Nothing(r.row.Cells[own])
}

// notTrolled takes away the fish beside an event behind which the boat fishes in another way: "lines up, dropped on a
// wreck".
func (r *Reader) notTrolled() {
	if r.events.off {
		r.side = slices.DeleteFunc(r.side, func(s Side) bool { return s.Kind == plan.Strikes || s.Kind == plan.Fish })
	}
}

// noHours tells a stretch of no hours, as its row says, whose words tell of another way of fishing: "live bait only".
func (r *Reader) noHours() bool {
	hours := r.at(r.slots.duration)
	return hours.Known && hours.Real == 0 && !r.effort() && !r.struck() && len(r.side) == 0 &&
		(r.anyCell(words.Otherwise) || r.anyCell(words.OnlyOther))
}

// otherWay tells a row whose columns say that it was not trolled. A live bait of a stretch that the row names was,
// slowly.
func (r *Reader) otherWay() bool { return r.elsewise || r.livebait && !r.value("leg").Known }

// elsewhere tells a strike or fish of a stretch that was not trolled, as its own table says.
func (r *Reader) elsewhere() bool {
	if len(r.layout.Elsewise) == 0 {
		return false
	}
	texts := map[string]string{}
	for i := range r.targets {
		texts[r.targets[i].Column.Name] = r.targets[i].text
	}
	trip, ok := texts["trip"]
	if !ok && texts["leg"] != "" && r.layout.Elsewise[plan.Stretch("", texts["leg"])] {
		return true
	}
	if !ok {
		trip = texts["date"]
	}
	return trip != "" && texts["leg"] != "" && r.layout.Elsewise[plan.Stretch(trip, texts["leg"])]
}

// paced tells a stretch beside a row that has a speed: one of several of the row.
func paced(s Side) bool { return s.Kind == plan.Legs && s.Values["speed_kn"].Known }

// named tells an entry beside a row that names a fish or measures it, or has effort.
func named(s Side) bool {
	if s.Kind != plan.Strikes && s.Kind != plan.Fish {
		return true
	}
	return slices.ContainsFunc([]string{"species_logged", "length_cm", "girth_cm", "scale_kg"},
		func(name string) bool { return s.Values[name].Known })
}

// untrolled tells a row of a strike or a fish whose words say that it was not trolled, or whose
// line, stretch or tackle is another way of fishing.
func (r *Reader) untrolled() bool {
	if r.has("method") {
		return false // said by its own column
	}
	for i := range r.targets {
		t := &r.targets[i]
		if len(t.text) < len("jig") || t.text[0] >= '0' && t.text[0] <= '9' && len(t.text) < 8 {
			continue
		}
		m, way := words.Method(t.text)
		if name := t.Column.Name; (name == "line" || name == "leg") &&
			(way && m != "troll" && m != "kite" || words.NotTrolled(t.text)) {
			return true
		}
		if t.Column.Name == "lure" && m == "live bait" && r.value("leg").Known {
			continue
		}
		// which has no stretch here
		said := t.Column.Parse == "text" || t.Column.Parse == "outcome" || t.Column.Parse == "event" ||
			(t.Column.Parse == "story" || t.Column.Parse == "fishlist") && r.layout.Kind == plan.Flat
		if (said || t.Column.Parse == "species") && t.Column.Name != "notes" && bracketedMethod(t.text) {
			return true
		}
		if said && (words.Otherwise(t.text) ||
			t.Column.Name == "notes" && (words.AnotherMethod(t.text) || words.AsideOther(t.text))) {
			return true
		}
	}
	return slices.ContainsFunc(r.layout.Unknown, func(u plan.Unknown) bool {
		return u.Index < len(r.row.Cells) && words.Otherwise(r.row.Cells[u.Index])
	})
}

// otherDay tells a day told in words that speak of another way of fishing alone and name no fish that is
// trolled for, with no lines and no speed; or each of whose fish was taken in another way: "fundo: pargo".
func (r *Reader) otherDay() bool {
	if r.value("lines_out").Known || r.value("speed_kn").Known {
		return false
	}
	return slices.ContainsFunc(r.targets, func(t target) bool {
		if t.Column.Parse != "story" {
			return false
		}
		if told := phrase.Tell(t.text, phrase.Defaults{}); len(told.Bites) > 0 && len(told.Left) == 0 &&
			!slices.ContainsFunc(told.Bites,
				func(b phrase.Bite) bool { return b.Method == "" || b.Method == "troll" }) {
			return true
		}
		return words.OnlyOther(t.text) &&
			!slices.ContainsFunc(phrase.FishList(t.text, phrase.Defaults{}),
				func(f phrase.Fish) bool { return f.Name != "" })
	})
}

var bracketed = regexp.MustCompile(`\(([^()]{3,30})\)`)

// bracketedMethod tells a fish with another way of fishing in brackets behind it: "1 tuna (drifting)".
func bracketedMethod(text string) bool {
	for _, m := range bracketed.FindAllStringSubmatch(text, -1) {
		if how, ok := words.Method(m[1]); ok && how != "troll" && how != "kite" {
			return true
		}
	}
	return false
}

// lain is the stretch above: the boat lay still, or fished in another way, or it did not.
type lain struct {
	date, trip entry.Value
	still      bool
	apart      bool // the day begins without hours, fished in another way: so do its fish without a day or a time
}

// still tells a row whose speed is that the boat lay still, or whose lines or times are another way of
// fishing: "2 livebait drift", "bottom all day".
func (r *Reader) still() bool {
	return slices.ContainsFunc(r.targets, func(t target) bool {
		switch {
		case t.text == "" || r.anotherSet(t.Set):
			return false
		case t.Column.Name == "speed_kn":
			return words.Still(t.text)
		case t.Column.Name == "lines_out":
			return otherLines(t.text)
		case t.Column.Parse == "stretches":
			how, ok := words.Method(t.text)
			if words.NeverTrolled(t.text) && len(phrase.Stretches(t.text)) == 0 {
				return true
			}
			return ok && how != "troll" && how != "kite" && len(phrase.Stretches(t.text)) == 0 &&
				!phrase.TrolledBeside(t.text)
		}
		return false
	})
}

// quietTrip is the trip of a row of a table of strikes which says that nothing struck that day: no other table may
// tell of it.
func (r *Reader) quietTrip() {
	if r.layout.Kind == plan.Strikes && r.value("date").Known && !r.value("time_s").Known {
		r.tripAlone()
	}
}

// untimedTrip is the trip of a row whose hours are not known, "?", "half day", a start without an end, and which counts
// no bites: lines were out.
func (r *Reader) untimedTrip() {
	s := &r.slots
	timed := r.at(s.duration).Real > 0 || r.at(s.start).Known && r.at(s.end).Known
	told := slices.ContainsFunc(r.side, func(s Side) bool { return s.Kind != plan.Lines })
	if (r.layout.Kind == plan.Flat || r.layout.Kind == plan.Legs) && r.value("date").Known && !timed &&
		r.ownEffort() && !r.struck() && !told && (r.value("lines_out").Int > 0 || r.value("speed_kn").Known) {
		r.tripAlone()
	}
}

// tripAlone makes a trip of the row's day.
func (r *Reader) tripAlone() {
	v := map[string]entry.Value{}
	for _, name := range []string{"date", "trip", "boat"} {
		if x := r.value(name); x.Known {
			v[name] = x
		}
	}
	r.side = append(r.side, Side{Kind: plan.Trips, Row: int64(r.row.Num), Part: 1, Values: v})
}

// bare tells a row in which a table of speeds and counts has neither, while its words name another way of fishing:
// "bottom after lunch", "at anchor, 3 snapper". What a captain counts when trolling, he left out. So is one without a
// speed that says that nothing was trolled, whatever it counts.
func (r *Reader) bare() bool {
	if r.sets > 0 {
		return false
	}
	speeds, counts, counted, said, never := false, false, false, false, false
	for i := range r.targets {
		t := &r.targets[i]
		switch name := t.Column.Name; {
		case name == "speed_kn":
			if t.text != "" {
				return false
			}
			speeds = true
		case slices.Contains(countNames, name):
			counts, counted = true, counted || t.text != ""
		case name == "notes" || name == "area" || name == "lure":
			said, never = said || words.NamesOther(t.text), never || words.NeverTrolled(t.text)
		}
	}
	return speeds && counts && (said && !counted || never)
}

// anotherSet tells a row whose columns hold several stretches, of which another than set was trolled: the
// afternoon's "bottom" is not the morning's.
func (r *Reader) anotherSet(set int) bool {
	return slices.ContainsFunc(r.targets, func(t target) bool {
		name := t.Column.Name
		return t.Set != set && (name == "start_s" || name == "end_s" || name == "duration_s") && startsDigit(t.text)
	})
}

func startsDigit(s string) bool { return s != "" && s[0] >= '0' && s[0] <= '9' }

// otherLines tells a number of lines, or none, with nothing behind it but another way of fishing.
func otherLines(text string) bool {
	rest := strings.Fields(strings.TrimLeft(text, "0123456789 "))
	return len(rest) > 0 && !slices.ContainsFunc(rest, func(w string) bool { return !words.AnotherMethod(w) })
}

// onlySeen tells a row of a fish that is named, of which the column of outcomes says that it was no bite: "just
// looked". It takes what is said of a bite, so that of a stretch's own row the stretch stays.
func (r *Reader) onlySeen() bool {
	if !r.nothing || !r.has("outcome") || r.value("outcome").Known || !r.value("species_logged").Known || r.counts() ||
		len(r.side) > 0 {
		return false
	}
	for _, i := range r.slots.told {
		r.values[i] = entry.Value{}
	}
	return true
}

// linesUp tells a row of effort with no lines out, and no bites: the boat ran on, or lay still. A stretch
// with a name of its own may have bites in another table, unless it counts none itself.
func (r *Reader) linesUp() bool {
	n := r.value("lines_out")
	none := slices.ContainsFunc(countNames, func(name string) bool { return r.value(name).Known })
	return n.Known && n.Int == 0 && (r.layout.Kind == plan.Legs || r.layout.Kind == plan.Flat) &&
		!r.struck() && len(r.side) == 0 && (none || !r.value("leg").Known)
}

// onlyDay tells a row of trips in which the day alone is filled, of a table that numbers or names its trips: days
// written ahead.
func (r *Reader) onlyDay() bool {
	if !r.value("date").Known || !r.has("trip") || r.value("trip").Known {
		return false
	}
	filled := 0
	for _, c := range r.row.Cells {
		if strings.TrimSpace(c) != "" {
			filled++
		}
	}
	return filled == 1
}

// empty tells a row of effort in which no column of effort or strikes is filled, but with dashes: it has
// a day and remarks at the most.
func (r *Reader) empty() bool {
	if r.layout.Kind == plan.Trips || !r.value("date").Known && !r.value("trip").Known {
		return false
	}
	for i := range r.targets {
		t := &r.targets[i]
		switch t.Column.Parse {
		case "moment", "count", "stretches", "story", "fishlist", "outcome", "species":
			if !dashed(t.text) && !t.usual {
				return false
			}
		case "quantity":
			if !dashed(t.text) && !t.usual && t.Column.Name != "sea_temp_c" && t.Column.Name != "heading_deg" {
				return false
			}
		}
	}
	return len(r.aside) == 0
}

// dashed tells a cell of dashes, or a blank one.
func dashed(text string) bool { return strings.Trim(text, "-–— ") == "" }

func isTest(text string) bool {
	t := strings.ToLower(strings.TrimSpace(text))
	what, rest, more := strings.Cut(t, " ")
	if what != "test" && what != "testing" {
		return false
	}
	kind, _, _ := strings.Cut(rest, " ")
	return !more || slices.Contains([]string{"row", "entry", "record", "line", "data", "only"},
		strings.Trim(kind, ",.:"))
}

// anyCell tells whether one of the row's cells says something.
func (r *Reader) anyCell(test func(string) bool) bool {
	for _, c := range r.row.Cells {
		if c != "" && len(c) < 200 && test(c) {
			return true
		}
	}
	return false
}

// ownEffort tells whether the row's own cells, and not those above, say when or how long
// lines were out.
func (r *Reader) ownEffort() bool {
	return slices.ContainsFunc(r.targets, func(t target) bool {
		name := t.Column.Name
		return (name == "start_s" || name == "end_s" || name == "duration_s") && t.Index >= 0 &&
			t.Index < len(r.row.Cells) && trimmed(r.row.Cells[t.Index]) != ""
	})
}

// effort tells whether the row says when or how long lines were out; no hours are none.
func (r *Reader) effort() bool {
	s := &r.slots
	return r.at(s.duration).Real > 0 || r.at(s.start).Known || r.at(s.end).Known
}

// blankFate takes the fate that the log gives to blank cells, "blank = kept", from a row that says nothing else of a
// bite: it holds none.
func (r *Reader) blankFate() {
	i := slices.IndexFunc(r.targets, func(t target) bool { return t.Column.Parse == "outcome" && t.Codes[""] != "" })
	if i < 0 || r.logged(&r.targets[i]) != "" {
		return
	}
	for _, k := range r.slots.told {
		if k != r.targets[i].field && r.values[k].Known {
			return
		}
	}
	r.values[r.targets[i].field] = entry.Value{}
}

// struck tells whether the row says that something struck.
func (r *Reader) struck() bool {
	for _, i := range r.slots.told {
		if r.values[i].Known && !slices.ContainsFunc(r.targets, func(t target) bool {
			return t.field == i && words.NotGone(t.text) // no lure: "stayed home"
		}) {
			return true
		}
	}
	for _, name := range countNames {
		if r.value(name).Int > 0 {
			return true
		}
	}
	return false
}
