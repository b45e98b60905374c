// Package factors is what strikes, effort and fish are compared by: each factor's name, its words,
// its classes, and how it stands to the others. All else asks here.
package factors

import (
	"slices"
	"strconv"
	"time"

	"wakeledger/pipeline/unit"
)

// Factor is one thing by which a season is parted into levels.
type Factor struct {
	Name    string // as --by takes it
	Noun    string // as a sentence names it
	Kin     string // of factors of one kin one follows from another by nature; "" for none
	Chosen  bool   // by the crew; the others come with the day
	ByLine  bool   // it differs between lines fished together, so that its levels are compared within legs
	Ordered bool   // its levels are numbers, so that a trend is tested
	Classes Scale  // of its number, in the season file's unit; none where its levels are words
	US      Scale  // for readers of pounds and yards; none where they read Classes
	Club    Scale  // that boats share: the same for every boat, never the user's; none where they share none
}

// Scale parts a number into classes: the first begins at Edges[0], the last is open above.
type Scale struct {
	Unit  string
	Edges []float64
	// A value in the season file's unit is Size * (shown - Zero). Size 0 is the file's own unit.
	Size, Zero float64
}

// NotLogged is the level of what a log does not say.
const NotLogged = "not logged"

// The names that code asks for; the others are only in the table.
const (
	Speed      = "speed-band"
	LureWeight = "lure-weight"
	Gap        = "gap"  // between two lines: no factor of --by
	Drag       = "drag" // as a share of the line's class: no factor of --by
)

// all is the table. Of its kin: dawn falls in the morning hours, a lure has its weight and colour, a
// place in the spread its setback.
var all = []Factor{
	{Name: Speed, Noun: "speed", Chosen: true, Ordered: true,
		Classes: Scale{Unit: "kn", Edges: []float64{0, 6, 8, 10, 12, 14, 16}},
		Club:    Scale{Unit: "kn", Edges: []float64{0, 6, 8, 10, 12, 14, 16}}},
	{Name: "lure", Noun: "lure", Kin: "lure", Chosen: true, ByLine: true},
	{Name: LureWeight, Noun: "lure weight", Kin: "lure", Chosen: true, ByLine: true, Ordered: true,
		Classes: Scale{Unit: "g", Edges: []float64{0, 250, 500, 750, 1000, 1250, 1500}},
		US:      Scale{Unit: "oz", Size: unit.GramsPerOunce, Edges: []float64{0, 8, 16, 24, 32, 40, 48}},
		Club:    Scale{Unit: "g", Edges: []float64{0, 250, 500, 750, 1000, 1250, 1500}}},
	{Name: "colour", Noun: "colour", Kin: "lure", Chosen: true, ByLine: true},
	{Name: "hooks", Noun: "hooks", Kin: "lure", Chosen: true, ByLine: true},
	{Name: "setback", Noun: "setback", Kin: "place", Chosen: true, ByLine: true, Ordered: true,
		Classes: Scale{Unit: "m", Edges: []float64{0, 50, 100, 150, 200, 250, 300, 350, 400, 450}},
		US: Scale{Unit: "yd", Size: unit.MetresPerYard,
			Edges: []float64{0, 50, 100, 150, 200, 250, 300, 350, 400, 450, 500}}},
	{Name: "position", Noun: "place in the spread", Kin: "place", Chosen: true, ByLine: true},
	{Name: "approach", Noun: "approach", Chosen: true},
	{Name: "month", Noun: "month", Kin: "season"},
	{Name: "hour", Noun: "hour of day", Kin: "day", Ordered: true},
	{Name: "light", Noun: "light", Kin: "day"},
	{Name: "moon", Noun: "moon", Kin: "season"},
	{Name: "sea-temp", Noun: "sea temperature", Ordered: true,
		Classes: Scale{Unit: "°C", Edges: []float64{-3, 10, 12, 14, 16, 18, 20, 22, 24, 26, 28, 30}},
		US: Scale{Unit: "°F", Size: unit.CelsiusPerF, Zero: unit.FreezingF,
			Edges: []float64{26, 50, 54, 58, 62, 66, 70, 74, 78, 82, 86}}},
	{Name: "sea-state", Noun: "sea state", Ordered: true},
	{Name: "turning", Noun: "turning"},
	{Name: "boat", Noun: "boat"},
	{Name: "angler", Noun: "angler"},
}

// beside are parted into classes as factors are, and nothing is compared by them.
var beside = []Factor{
	{Name: Gap, Noun: "gap",
		Classes: Scale{Unit: "m", Edges: []float64{0, 5, 10, 15, 20, 30, 50}},
		US:      Scale{Unit: "yd", Size: unit.MetresPerYard, Edges: []float64{0, 5, 10, 15, 20, 30, 50}}},
	// a quarter to a third is what the trade fishes (common practice, no source)
	{Name: Drag, Noun: "drag", Classes: Scale{Unit: "%", Edges: []float64{0, 15, 20, 25, 30, 35}}},
}

// All are the factors that --by takes, in the order of the documentation.
func All() []Factor { return slices.Clone(all) }

// Shown are all that have classes of their own for readers of pounds and yards.
func Shown() []Factor {
	return slices.DeleteFunc(slices.Concat(all, beside), func(f Factor) bool { return f.US.Unit == "" })
}

// Names are the names of All.
func Names() []string {
	names := make([]string, len(all))
	for i, f := range all {
		names[i] = f.Name
	}
	return names
}

// Is reports whether --by takes a name.
func Is(name string) bool { return slices.Contains(Names(), name) }

// Of is the factor of a name, one of All or beside them; of any other it has the name alone.
func Of(name string) Factor {
	for _, list := range [][]Factor{all, beside} {
		for _, f := range list {
			if f.Name == name {
				return f
			}
		}
	}
	return Factor{Name: name, Noun: name}
}

// Noun is a factor as a sentence names it.
func Noun(name string) string { return Of(name).Noun }

// Related reports whether one of two factors follows from the other by nature, or is the other:
// they are not held against each other.
func Related(a, b string) bool {
	kin := Of(a).Kin
	return a == b || kin != "" && kin == Of(b).Kin
}

// Text is a level as it is written in a sentence: "[12, 14)" of the speed is "12 to 14 kn".
// Levels that are words stay as they are.
func Text(name, level string) string {
	switch name {
	case "sea-state":
		if _, err := strconv.ParseFloat(level, 64); err == nil {
			return "sea state " + level
		}
	case "month":
		if t, err := time.Parse("2006-01", level); err == nil {
			return t.Format("January 2006")
		}
	case "hour":
		if t, err := time.Parse("15:04", level); err == nil {
			return level + " to " + t.Add(time.Hour).Format("15:04")
		}
	}
	if c, ok := Parse(level); ok {
		if u := Of(name).Classes.Unit; u != "" {
			return c.Words(u)
		}
	}
	return level
}

// Score is the number that a level of an ordered factor stands for: the middle of a class, the lower
// edge of the one that is open above. ok is false for other levels, and for other factors.
func Score(name, level string) (v float64, ok bool) {
	if !Of(name).Ordered {
		return 0, false
	}
	if t, err := time.Parse("15:04", level); err == nil && name == "hour" {
		return float64(t.Hour()), true
	}
	if c, ok := Parse(level); ok {
		return c.Middle(), true
	}
	v, err := strconv.ParseFloat(level, 64)
	return v, err == nil
}
