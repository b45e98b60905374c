package normalise

import (
	"slices"

	"wakeledger/pipeline/entry"
	"wakeledger/pipeline/plan"
	"wakeledger/pipeline/record"
)

// fateNames are the counts of what became of bites.
var fateNames = []string{"landed_n", "released_n", "lost_n", "missed_n"}

// bitesOfSet are the bites of one stretch of a row, and their share of what became of all of them.
type bitesOfSet struct {
	room  int64
	speed float64
	to    map[string]entry.Value
}

// fatesOfSets parts what became of a row's bites among its stretches, where each of these counts its bites and one
// set of columns says what became of them all. The row does not say of which stretch each was: the first that have
// bites take them. That is asked about where it moves a class of speed.
func (r *Reader) fatesOfSets() {
	if r.layout.Kind != plan.Flat || r.sets > 0 || !r.fatesBesideSets() {
		return
	}
	left, gone := map[string]int64{}, int64(0)
	for _, name := range fateNames {
		left[name] = r.value(name).Int
		gone += left[name]
	}
	// of a fish that was hooked, and of which the row says no more
	hooked, more := r.value("hooked_n"), int64(0)
	if hooked.Known {
		more = max(0, hooked.Int-gone+left["missed_n"])
		gone += more
	}
	sets := r.bitesOfSets()
	all, with := int64(0), []float64(nil)
	for _, s := range sets {
		if all += s.room; s.room > 0 {
			with = append(with, s.speed)
		}
	}
	if len(sets) < 2 || gone == 0 || gone > all {
		return // more than its bites is a slip, which is named
	}
	for _, s := range sets {
		for _, name := range fateNames {
			n := min(s.room, left[name])
			s.room, left[name] = s.room-n, left[name]-n
			s.to[name] = entry.OfInt(n)
		}
		if hooked.Known {
			n := min(s.room, more)
			s.room, more = s.room-n, more-n
			s.to["hooked_n"] = entry.OfInt(n + s.to["landed_n"].Int + s.to["released_n"].Int + s.to["lost_n"].Int)
		}
	}
	for name, v := range sets[0].to {
		if i, ok := r.index[name]; ok && r.values[i].Known {
			r.values[i] = v
		}
	}
	if i := r.firstFate(); i >= 0 && len(with) > 1 {
		p := r.problem(&r.targets[i], r.targets[i].text, record.FateOfEither)
		if oneClass(with) {
			r.doubts = append(r.doubts, p)
		} else {
			r.aside = append(r.aside, p)
		}
	}
}

// bitesOfSets are the bites of each stretch of a row, that of its own columns first.
func (r *Reader) bitesOfSets() []*bitesOfSet {
	sets := []*bitesOfSet{{room: r.value("strikes_n").Int, speed: r.value("speed_kn").Real,
		to: map[string]entry.Value{}}}
	for _, s := range r.side {
		if n := s.Values["strikes_n"]; s.Kind == plan.Flat && n.Known {
			sets = append(sets, &bitesOfSet{room: n.Int, speed: s.Values["speed_kn"].Real, to: s.Values})
		}
	}
	return sets
}

// firstFate is the first column that says how many bites of the row ended in one way; -1 where none does.
func (r *Reader) firstFate() int {
	return slices.IndexFunc(r.targets, func(t target) bool {
		return (slices.Contains(fateNames, t.Column.Name) || t.Column.Name == "kept_n") && t.text != "" && t.text != "0"
	})
}

// fatesBesideSets tells a row that counts the bites of each of its stretches, and of them all, right or left of these,
// what became of them.
func (r *Reader) fatesBesideSets() bool {
	if !r.has("strikes_n") || !r.has("strikes_n#1") {
		return false
	}
	var fates, stretches []int // columns
	for i := range r.targets {
		t := &r.targets[i]
		fate := slices.Contains(fateNames, t.Column.Name) || t.Column.Name == "kept_n" || t.Column.Name == "hooked_n"
		switch {
		case t.given != "":
		case fate && t.Set > 0:
			return false
		case fate:
			fates = append(fates, t.Index)
		case t.Column.Name == "strikes_n" || slices.Contains(ownToStretch, t.Column.Name):
			stretches = append(stretches, t.Index)
		}
	}
	return len(fates) > 0 && (slices.Min(fates) > slices.Max(stretches) || slices.Max(fates) < slices.Min(stretches))
}
