package normalise

import (
	"slices"

	"wakeledger/pipeline/entry"
	"wakeledger/pipeline/plan"
	"wakeledger/pipeline/record"
)

// ownToStretch are the fields of a row that are of one stretch.
var ownToStretch = []string{"start_s", "end_s", "duration_s", "stopped_s", "speed_kn", "lines_out"}

// sharedBites parts the counts of a row from its first stretch, where it has columns for further ones and the counts
// stand beside all of them: its bites may be of each. Stretches of one class of speed leave no doubt. A form that
// tells its strikes one by one says when they came.
func (r *Reader) sharedBites() {
	speed, paced := r.index["speed_kn"]
	if r.layout.Kind != plan.Flat || r.sets > 0 || !r.besideSets() || !slices.ContainsFunc(countNames,
		func(name string) bool { return r.value(name).Int > 0 }) {
		return
	}
	var paces []float64
	further := false
	for _, s := range r.side {
		if s.Kind == plan.Legs {
			further = true
			paces = append(paces, s.Values["speed_kn"].Real)
		}
	}
	if !further {
		return
	}
	own := map[string]entry.Value{}
	for _, name := range ownToStretch {
		if v := r.value(name); v.Known {
			own[name] = v
			r.values[r.index[name]] = entry.Value{}
		}
	}
	if len(own) > 0 { // else that half was not fished
		paces = append(paces, own["speed_kn"].Real)
		own["leg"] = entry.OfText("1")
		r.beside(plan.Legs, own)
	}
	switch {
	case !paced:
	case oneClass(paces):
		r.values[speed] = entry.OfReal(slices.Min(paces))
	default:
		i := slices.IndexFunc(r.targets, func(t target) bool { return t.Column.Name == "speed_kn" })
		if i < 0 { // told with the hours, in words
			i = max(0, slices.IndexFunc(r.targets, func(t target) bool { return t.Column.Parse == "stretches" }))
		}
		r.aside = append(r.aside, r.problem(&r.targets[i], r.targets[i].text, record.OfEither))
	}
}

// oneClass tells speeds that are all known, and of one class.
func oneClass(paces []float64) bool {
	for _, p := range paces {
		if p == 0 || speedClass(p) != speedClass(paces[0]) {
			return false
		}
	}
	return true
}

// speedClasses are the edges of the classes in which speeds are compared, in knots.
var speedClasses = []float64{6, 8, 10, 12, 14, 16}

func speedClass(kn float64) int {
	return len(speedClasses) - len(slices.DeleteFunc(slices.Clone(speedClasses), func(edge float64) bool {
		return kn >= edge
	}))
}

// besideSets tells a row whose counts are in columns of no one stretch: right of those of all its stretches, or left of
// them.
func (r *Reader) besideSets() bool {
	var counts, stretches []int // columns
	several := false
	for i := range r.targets {
		t := &r.targets[i]
		count := slices.Contains(countNames, t.Column.Name) || t.Column.Name == "kept_n"
		switch {
		case t.given != "":
		case count && t.Set > 0:
			return false
		case count:
			counts = append(counts, t.Index)
		case slices.Contains(ownToStretch, t.Column.Name):
			stretches, several = append(stretches, t.Index), several || t.Set > 0
		}
	}
	return several && len(counts) > 0 && (slices.Min(counts) > slices.Max(stretches) ||
		slices.Max(counts) < slices.Min(stretches))
}
