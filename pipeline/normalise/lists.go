package normalise

import (
	"fmt"
	"maps"
	"regexp"
	"slices"
	"strings"

	"wakeledger/pipeline/entry"
	"wakeledger/pipeline/phrase"
	"wakeledger/pipeline/plan"
	"wakeledger/pipeline/unit"
	"wakeledger/pipeline/words"
)

// measured is the measures of a row's fish, one for each in their order.
type measured []map[string]entry.Value

func (m measured) fill(i int, v map[string]entry.Value) {
	if i < len(m) {
		for name, x := range m[i] {
			v[name] = x
		}
	}
}

var parted = regexp.MustCompile(`\s*[;/&+\n]\s*|,\s+|\s+-\s+|\s+(?:y|e|et|und|and)\s+`)

// measures parts the row's lists of measures among its fish. A list that is as long as
// the fish that were kept is theirs; one of another length is set aside.
func (r *Reader) measures(fish []phrase.Fish) measured {
	if !r.lists {
		return nil
	}
	var all []phrase.Fish // one by one
	var gone []bool       // of these and of those that were lost, in the order of the list
	for _, f := range fish {
		lost := f.Fate == words.Lost || f.Fate == words.Missed
		for range max(f.N, 1) {
			if gone = append(gone, lost); !lost {
				all = append(all, f)
			}
		}
	}
	m := make(measured, len(all))
	for i := range m {
		m[i] = map[string]entry.Value{}
	}
	for i := range r.targets {
		t := &r.targets[i]
		if text := r.values[t.field].Text; r.listed(t.Binding) && text != "" {
			r.deal(t, text, all, gone, m)
		}
	}
	return m
}

// deal gives the items of one list to the fish, those that name a fish each to the next of its name. A list that is as
// long as that of the fish with those that got away has an item for each of these too: "dorado / wahoo lost", "90 / ?".
func (r *Reader) deal(t *target, text string, fish []phrase.Fish, gone []bool, m measured) {
	items := parted.Split(strings.TrimSpace(text), -1)
	if len(items) == len(gone) && len(gone) > len(fish) {
		var kept []string
		for i, item := range items {
			if !gone[i] {
				kept = append(kept, item)
			}
		}
		items = kept
	}
	var to []int
	for i, f := range fish {
		if len(items) == len(fish) || f.Fate != words.Released {
			to = append(to, i)
		}
	}
	if len(items) != len(to) {
		if slices.ContainsFunc(items, figured) {
			r.aside = append(r.aside, r.problem(t, text, fmt.Sprintf("%d measures for %d fish", len(items),
				len(fish))))
		}
		return
	}
	for _, item := range items {
		k, figure := 0, item
		if name, rest, named := fishFirst(item); named {
			if k = slices.IndexFunc(to, func(i int) bool { return r.sameKind(name, fish[i].Name) }); k < 0 {
				r.aside = append(r.aside, r.problem(t, item, "it names a fish that the row does not list"))
				continue
			}
			figure = rest
		}
		at := to[k]
		to = slices.Delete(to, k, k+1)
		if weight := words.OnScale(figure); t.Column.Name == "scale_kg" && weight != "" {
			figure = weight
		}
		q, err := unit.ParseQuantity(figure, t.Column.Dimension, r.fallback(t), r.mark())
		if err != nil || words.Hedged(item) {
			if fate, _, _, ok := words.FateOf(item); ok && fate == words.Released {
				m[at]["outcome"] = entry.OfText("released")
			} else if figured(item) {
				r.aside = append(r.aside, r.problem(t, item, "no measure was read from it"))
			}
			continue
		}
		if v, err := q.In(t.Column.Unit); err == nil && v >= t.Column.Min && v <= t.Column.Max {
			m[at][t.Column.Name] = entry.OfReal(v)
		}
	}
}

// figured tells an item with a figure that is no guess.
func figured(item string) bool { return strings.ContainsAny(item, "0123456789") && !words.Hedged(item) }

// fishFirst parts an item of a list that begins with the name of a fish: "wahoo 12.5".
func fishFirst(item string) (name, rest string, ok bool) {
	digit := strings.IndexAny(item, "0123456789")
	if digit <= 0 {
		return "", item, false
	}
	fish := phrase.FishList(item[:digit], phrase.Defaults{})
	if len(fish) != 1 || fish[0].Name == "" {
		return "", item, false
	}
	return fish[0].Name, item[digit:], true
}

// sameKind tells two names of one kind of fish.
func (r *Reader) sameKind(a, b string) bool {
	one, other := r.set.Species.Find(a, r.set.Ocean), r.set.Species.Find(b, r.set.Ocean)
	return strings.EqualFold(a, b) || one.Found && other.Found && one.Species.Code == other.Species.Code
}

// strikeSets makes a strike of each set of columns that a row has for one. What they tell
// one by one is taken out of the row's count. Where the row counts what became of its strikes
// too, the sets are of fish that are counted already.
func (r *Reader) strikeSets() {
	kind, n := plan.Strikes, int64(0)
	if r.layout.Kind == plan.Flat && slices.ContainsFunc(fishCounts,
		func(name string) bool { return r.value(name).Known }) {
		kind = plan.Fish
	}
	again := map[string]bool{} // columns that stand once for each strike: a lure beside them tells of none
	for i := range r.targets {
		if t := &r.targets[i]; t.OfStrike() && t.Set > 0 {
			again[t.Column.Name] = true
		}
	}
	for k := range r.sets {
		v := map[string]entry.Value{}
		for i := range r.targets {
			t := &r.targets[i]
			x, of := r.values[t.field], t.Set == k || t.Column.Name == "lure" && !again["lure"]
			if t.OfStrike() && of && x.Known && t.Column.Name != "weighed" {
				v[t.Column.Name] = x
			}
		}
		if !slices.ContainsFunc(slices.Collect(maps.Keys(v)), func(name string) bool { return again[name] }) {
			continue
		}
		if name := v["species"].Text; name != "" {
			delete(v, "species")
			for field, x := range r.fishValues(phrase.Fish{Name: name}) {
				v[field] = x
			}
			if !again["outcome"] && !v["outcome"].Known {
				r.fateBehind(name, kind, v)
			}
		}
		if scale, told := words.ByScale(r.value(fmt.Sprintf("weighed#s%d", k)).Text); told && !scale {
			delete(v, "scale_kg")
		}
		r.numberedSpeed(k, v)
		n++
		r.beside(kind, v)
	}
	if i, ok := r.index["strikes_n"]; ok && kind == plan.Strikes && n > 0 && r.values[i].Known {
		r.values[i].Int = max(0, r.values[i].Int-n)
	}
}

// fateBehind gives a fish in columns that have no outcome the fate that stands behind its name, "wahoo (rel)". Fish
// that are named beside a count of all bites came to the boat.
func (r *Reader) fateBehind(name string, kind plan.Kind, v map[string]entry.Value) {
	list := phrase.FishList(name, phrase.Defaults{})
	switch {
	case len(list) == 1 && list[0].Name != "" && outcomeOf(list[0].Fate) != "":
		for field, x := range r.fishValues(list[0]) {
			v[field] = x
		}
	case kind == plan.Strikes && r.value("strikes_n").Known:
		v["outcome"] = entry.OfText(outcomeOf(words.Landed))
	}
}

// numberedSpeed gives a strike of a row without a speed the one that a remark tells of it by its number.
func (r *Reader) numberedSpeed(k int, v map[string]entry.Value) {
	if r.value("speed_kn").Known || v["strike_speed_kn"].Known {
		return
	}
	if speed := phrase.NumberedSpeeds(r.value("notes").Text)[k+1]; speed > 0 {
		v["strike_speed_kn"] = entry.OfReal(speed)
	}
}

// remarked gives the one fish of a name that the row lists the length, the girth and the weight on a scale that its
// remarks tell of a fish of that name ("wahoo, 142 cm to the fork"), where the list has none.
func (r *Reader) remarked() {
	for i := range r.targets {
		t := &r.targets[i]
		if t.Column.Name != "notes" || t.Column.Parse != "text" {
			continue
		}
		r.speedTold(r.values[t.field].Text)
		r.lengthTold(r.values[t.field].Text)
		r.girthTold(r.values[t.field].Text)
		for _, f := range phrase.FishList(r.values[t.field].Text, r.defaults(t)) {
			if f.Name == "" || f.N > 1 || f.Guess || f.Fate == words.Lost || f.Fate == words.Missed {
				continue
			}
			told := r.fishValues(f)
			of := r.listedFish(told["species_logged"].Text)
			for _, name := range []string{"length_cm", "girth_cm", "length_kind"} {
				if v, ok := told[name]; ok && of != nil && !of[name].Known {
					of[name] = v
				}
			}
			if v, ok := told["scale_kg"]; ok && f.Scaled && of != nil && !of["scale_kg"].Known {
				of["scale_kg"] = v // bft 37 lb dock scale
			}
		}
	}
}

// biteAt says that a speed is that of a bite: "8.1 kn at the bite", "hit at 9 kn".
var biteAt = regexp.MustCompile(`(?i)\b(?:bites?|bit|strike|struck|hit|hookup|came at|picada|touche|ferrata)\b`)

// speedTold gives a strike the one speed that its remark tells: "high speed pass, 15 kn"; the one bite that a row
// counts where the remark says that it is that of the bite, or where the row has no hours of its own.
func (r *Reader) speedTold(remark string) {
	if !r.has("strike_speed_kn") || r.value("speed_kn").Known ||
		r.counts() && (r.value("strikes_n").Int != 1 || r.ownEffort() && !biteAt.MatchString(remark)) {
		return
	}
	if speeds := phrase.Settings(remark).Speeds; len(speeds) == 1 {
		r.put("strike_speed_kn", entry.OfReal(speeds[0]))
	}
}

// lengthTold gives the one fish of a row that has no length the one that a remark says was taken:
// "midio 42 pulg", "measured 41 in to the fork". Of several fish it is one that has it: "best one taped 34".
func (r *Reader) lengthTold(remark string) {
	name := r.value("species_logged").Text
	if name == "" || r.sets > 0 || r.lists || r.like > 1 && !words.Glued(remark, "biggest") ||
		r.value("length_cm").Known ||
		r.layout.Kind == plan.Events || !words.Taped(remark) {
		return
	}
	said := tapedPart(remark)
	d := phrase.Defaults{}
	for i := range r.targets {
		if t := &r.targets[i]; t.Column.Name == "length_cm" {
			d.LengthUnit = string(t.Unit)
		}
	}
	fish := phrase.FishList(name+" "+said, d)
	if words.Hedged(said) || len(fish) != 1 || fish[0].N > 1 || fish[0].Guess || fish[0].LengthCm == 0 {
		return
	}
	told := r.fishValues(fish[0])
	r.put("length_cm", told["length_cm"])
	if kind, ok := told["length_kind"]; ok {
		r.put("length_kind", kind)
	}
}

// tapedPart is the part of a remark that says what the tape said, beside others that may guess a weight: "some 30 kg by
// eye, fork 105 cm". It is the whole remark where that part names no figure.
func tapedPart(remark string) string {
	for _, part := range betweenParts.Split(remark, -1) {
		if words.Taped(part) && strings.ContainsAny(part, "0123456789") {
			return part
		}
	}
	return remark
}

// betweenParts ends a part of a remark; a decimal comma does not.
var betweenParts = regexp.MustCompile(`[,;.]\s+`)

// girthTold gives the one fish of a row that has its length the girth that a remark tells, in the
// unit of the length where it states none.
func (r *Reader) girthTold(remark string) {
	i := slices.IndexFunc(r.targets, func(t target) bool { return t.Column.Name == "length_cm" && t.Set == 0 })
	if i < 0 || r.sets > 0 || r.like > 1 || !r.value("length_cm").Known || words.Hedged(remark) {
		return
	}
	t := &r.targets[i]
	q, err := unit.ParseQuantity(words.GirthTold(remark), t.Column.Dimension, r.fallback(t), r.mark())
	if err != nil {
		return
	}
	if cm, err := q.In(t.Column.Unit); err == nil && cm >= t.Column.Min && cm < r.value("length_cm").Real {
		r.put("girth_cm", entry.OfReal(cm))
	}
}

// listedFish is the one fish of a name that the row's lists tell of; nil where there is none
// or there are several.
func (r *Reader) listedFish(name string) map[string]entry.Value {
	var found map[string]entry.Value
	for _, x := range r.side {
		if x.Kind != plan.Fish || !strings.EqualFold(x.Values["species_logged"].Text, name) {
			continue
		}
		if found != nil {
			return nil
		}
		found = x.Values
	}
	return found
}
