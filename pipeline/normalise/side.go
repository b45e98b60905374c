package normalise

import (
	"strconv"
	"sync"

	"wakeledger/pipeline/entry"
	"wakeledger/pipeline/phrase"
	"wakeledger/pipeline/plan"
	"wakeledger/pipeline/words"
)

// Side is what a row tells beside its own entry: a further stretch, a strike or a fish
// of a phrase. Its values are by field of the season file.
type Side struct {
	Kind   plan.Kind
	Row    int64
	Part   int64 // which of its row, from 1
	Values map[string]entry.Value
}

// Sides are those of the row that Row read last; valid until the next call of Row.
func (r *Reader) Sides() []Side { return r.side }

// isOwn tells a binding whose cells are this reader's own, to be worked up: phrases,
// the second and further stretches of a row, and strikes or fish of which it has several.
func (r *Reader) isOwn(b plan.Binding) bool {
	switch b.Column.Parse {
	case "stretches", "story", "fishlist", "event", "method", "weighed":
		return true
	}
	return b.Set > 0 || b.Adds || b.OfStrike() && r.sets > 0 || r.listed(b) || b.Column.Name == "count" ||
		b.Column.Name == "kept_n" || b.Column.Name == "line_hours"
}

// listed tells a measure that stands in lists beside lists of fish.
func (r *Reader) listed(b plan.Binding) bool {
	return r.lists && (b.Column.Name == "length_cm" || b.Column.Name == "girth_cm" || b.Column.Name == "scale_kg")
}

func (r *Reader) ownName(b plan.Binding) string {
	switch b.Column.Parse {
	case "stretches", "story", "fishlist":
		return b.Column.Parse + "#" + strconv.Itoa(b.Index)
	}
	switch {
	case r.sets > 0 && b.OfStrike():
		return b.Column.Name + "#s" + strconv.Itoa(b.Set)
	case b.Set > 0:
		return b.Column.Name + "#" + strconv.Itoa(b.Set)
	case b.Adds:
		return b.Column.Name + "#also" + strconv.Itoa(b.Index)
	case r.listed(b):
		return b.Column.Name + "#list"
	}
	return b.Column.Name
}

// ownParser is how the reader's own cells are read: names and lists as they stand.
func (r *Reader) ownParser(b plan.Binding, p parser) parser {
	if r.listed(b) || r.sets > 0 && b.Column.Parse == "species" {
		return parsers["text"]
	}
	return p
}

// isEffort tells a binding that says when or how long lines were out.
func isEffort(b plan.Binding) bool {
	switch b.Column.Name {
	case "start_s", "end_s", "duration_s", "stopped_s", "line_hours":
		return true
	}
	return false
}

// sharedBySides are the fields that say of which day, trip and boat a row is.
var sharedBySides = []string{"trip", "boat", "zone", "date"}

// beside adds a side entry that shares the row's day and trip. A bite is at the row's one speed, where the row has
// several stretches or nobody wrote its hours down.
func (r *Reader) beside(kind plan.Kind, values map[string]entry.Value) {
	for _, name := range sharedBySides {
		if v := r.value(name); v.Known {
			if _, has := values[name]; !has {
				values[name] = v
			}
		}
	}
	_, paced := values["strike_speed_kn"]
	if speed := r.value("speed_kn"); (kind == plan.Strikes || kind == plan.Fish) && r.layout.Kind == plan.Flat &&
		speed.Known && !paced && !r.timed() {
		values["strike_speed_kn"] = speed
	}
	if r.layout.Kind == plan.Events && kind != plan.Legs {
		r.besideEvent(values)
	}
	r.side = append(r.side, Side{Kind: kind, Row: int64(r.row.Num), Part: r.parts +
		int64(len(r.side)+1), Values: values})
}

// besideEvent gives a fish or a bite beside an event that event's time and the speed from then on, also where the
// stretch before it ends with its row.
func (r *Reader) besideEvent(values map[string]entry.Value) {
	e := &r.events
	if _, timed := values["time_s"]; !timed && e.at.Known && e.row == r.row.Num {
		values["time_s"] = e.at
	}
	if _, paced := values["strike_speed_kn"]; !paced && e.open && e.speed.Known {
		values["strike_speed_kn"] = e.speed
	}
}

// copyOf is the row's own entry again, for a count of like strikes or fish.
func (r *Reader) copyOf() map[string]entry.Value {
	values := map[string]entry.Value{}
	for i, f := range r.fields[:r.public] {
		if v := r.values[i]; v.Known && f.Name != "row" && f.Name != "part" {
			values[f.Name] = v
		}
	}
	return values
}

// fishValues are a phrase's fish under the season file's names.
func (r *Reader) fishValues(f phrase.Fish) map[string]entry.Value {
	v := map[string]entry.Value{}
	if f.Name != "" {
		v["species_logged"] = entry.OfText(f.Name)
		if m := r.set.Species.Find(f.Name, r.set.Ocean); m.Found {
			v["species"] = entry.OfText(m.Species.Code)
		}
	}
	for name, x := range map[string]float64{"length_cm": f.LengthCm, "girth_cm": f.GirthCm} {
		if x > 0 {
			v[name] = entry.OfReal(x)
		}
	}
	switch {
	case f.Kg == 0 || f.Guess:
	case f.Scaled || f.Exact && !r.layout.Guesses:
		v["scale_kg"] = entry.OfReal(f.Kg)
	default:
		r.unweighed++
	}
	if f.Kn > 0 {
		v["strike_speed_kn"] = entry.OfReal(f.Kn)
	}
	if f.LengthKind != "" {
		v["length_kind"] = entry.OfText(f.LengthKind)
	}
	if f.Place != "" {
		v["line"] = entry.OfText(f.Place)
	}
	if f.At != nil {
		v["time_s"] = entry.OfInt(int64(r.onClock(*f.At)))
	}
	if o := outcomeOf(f.Fate); o != "" {
		v["outcome"] = entry.OfText(o)
	}
	return v
}

// outcomeOf is a fate in the season file's words; "" where it is not told.
func outcomeOf(f words.Fate) string {
	switch f {
	case words.Missed, words.Lost, words.Landed, words.Released, words.Hooked:
		return f.String()
	}
	return ""
}

// onClock is a phrase's clock time in seconds; one of twelve hours is the next after the
// row's start.
func (r *Reader) onClock(c phrase.Clock) int {
	s := c.Seconds
	if start := r.at(r.slots.start); !c.Sure && start.Known {
		for int64(s) < start.Int && s < day/2 {
			s += day / 2
		}
	}
	return s
}

// TypeOf is how the season file keeps a field that sides may have.
func TypeOf(name string) entry.Type {
	switch name {
	case "date":
		return entry.Day
	case "kept", "certified", "tangle":
		return entry.Flag
	case "species_logged", "loss_cause":
		return entry.Text
	case "start_s", "end_s":
		return entry.Int
	}
	return fieldTypes()[name]
}

// fieldTypes are the types of the season file's fields, from the ways of reading their columns.
var fieldTypes = sync.OnceValue(func() map[string]entry.Type {
	types := map[string]entry.Type{}
	columns, err := plan.Columns()
	if err != nil {
		return types // the same fault stops every reading before this
	}
	for _, c := range columns {
		if p, ok := parsers[c.Parse]; ok {
			if _, has := types[c.Name]; !has {
				types[c.Name] = p.typ
			}
		}
	}
	for _, also := range beside {
		types[also.Name] = also.Type
	}
	return types
})
