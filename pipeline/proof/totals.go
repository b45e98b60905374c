package proof

import (
	"fmt"
	"maps"
	"slices"
	"strings"

	"wakeledger/pipeline/plan"
)

// Totals are what a log comes to, as far as its rows alone tell: stretches that two tables
// tell, and fish that belong to strikes of another, are put together in the season file.
type Totals struct {
	Days             int // with hours; of all rows where none has hours; trips of rows without a day
	Hours, LineHours float64
	Miles            float64 // hours times their speed
	Bites            int
	Hooked, Landed   int // of Bites
	Released         int // of Landed
	Lost             int // of counted Bites, lost or missed
	Measures         int // lengths, girths and scale weights
}

// TotalsOf adds up what blocks came to. Of counts, rows of strikes and lists of fish, which tell
// of the same strikes, the most count.
func TotalsOf(subjects []Subject) Totals {
	var t Totals
	var counts, strikes, fish, hooked, held, landed, boated, kept, released, freed, gone int
	days, dates := map[string]bool{}, map[int64]int64{}
	for _, s := range subjects {
		if s.Beside {
			continue
		}
		maps.Copy(days, s.Stats.Days)
		maps.Copy(dates, s.Stats.First)
		t.Miles += s.Stats.Miles
		t.Measures += s.Stats.Measures
		t.Lost += s.Stats.Lost
		hooked, released = hooked+s.Stats.Hooked, released+s.Stats.Released
		t.Hours += s.Stats.Hours
		t.LineHours += s.Stats.LineHours
		counts, landed = counts+s.Stats.ByCount, landed+s.Stats.Landed
		switch {
		case s.ofItsCounts():
			counts, hooked = counts+s.Stats.Listed, hooked+s.Stats.Held-len(s.Stats.Fateless)
			landed, released = landed+s.Stats.Boated, released+s.Stats.Freed
		case s.Plan.StoredAs(s.Plan.Kind) == plan.Fish:
			fish, kept, gone = fish+s.Stats.Listed, kept+s.Stats.Boated, gone+s.Stats.Freed
		default:
			strikes, held, boated, freed = strikes+s.Stats.Listed, held+s.Stats.Held-len(s.Stats.Fateless),
				boated+s.Stats.Boated, freed+s.Stats.Freed
		}
	}
	if t.Days = len(days); t.Days == 0 {
		t.Days = len(dates)
	}
	t.Bites, t.Hooked = max(counts, strikes, fish), max(hooked, held, fish)
	t.Landed, t.Released = max(landed, boated, kept), max(released, freed, gone)
	return t
}

// ofItsCounts tells a table whose rows count all bites and name the fish among them in columns of their own: what these
// tell one by one is taken off the counts.
func (s *Subject) ofItsCounts() bool {
	return s.Plan.StrikeSets() > 0 && s.Plan.Binds("strikes_n") && s.Plan.StoredAs(s.Plan.Kind) != plan.Fish
}

// words are the totals one by one.
func (t Totals) words() []string {
	return []string{plural(t.Days, "day", "days"), fmt.Sprintf("%.1f h", t.Hours),
		fmt.Sprintf("%.1f line-hours", t.LineHours),
		fmt.Sprintf("%.0f nm trolled", t.Miles),
		plural(t.Bites, "bite", "bites"), fmt.Sprintf("%d hooked", t.Hooked), fmt.Sprintf("%d landed", t.Landed),
		fmt.Sprintf("%d let go", t.Released),
		fmt.Sprintf("%d lost or missed", t.Lost), plural(t.Measures, "measure", "measures")}
}

// Differences are each of several totals in words, of what is not the same in all; empty
// where all come to the same.
func Differences(all []Totals) []string {
	words := [][]string{}
	for _, t := range all {
		words = append(words, t.words())
	}
	out := make([]string, len(all))
	for i := range all {
		var say []string
		for k, w := range words[i] {
			if slices.ContainsFunc(words, func(o []string) bool { return o[k] != w }) {
				say = append(say, w)
			}
		}
		out[i] = strings.Join(say, ", ")
	}
	return out
}

// named are what the totals in words are called, in their order.
var named = []string{"trips", "boat_hours", "line_hours", "bands", "strikes", "hooked", "landed",
	"released", "hooked", "fish"}

// RestsOn adds what differs between totals of a question's answers to what rests on it.
func (q *Question) RestsOn(all []Totals) {
	q.Effect = slices.Clone(q.Effect)
	for k, name := range named {
		if !slices.ContainsFunc(all, func(t Totals) bool { return t.words()[k] != all[0].words()[k] }) {
			continue
		}
		for _, e := range []string{name, "bands"} { // a band is of hours, lines and strikes
			if !slices.Contains(q.Effect, e) && (e == name || slices.Contains(bites[:1], name) ||
				slices.Contains(hours, name)) {
				q.Effect = append(q.Effect, e)
			}
		}
	}
}

// Tries tells a question whose answers can each be tried out on the log's plan.
func (q *Question) Tries() bool { return settles[q.Kind] != nil && len(q.Choices) > 1 }

// OfColumn tells a question about a heading whose answers each come to totals that are held
// against each other: not a day, a trip or what happened, on which more rests.
func (q *Question) OfColumn() bool {
	return q.Kind == "column" && !q.unread && len(q.Choices) > 1 &&
		!slices.ContainsFunc(q.Choices, func(c string) bool {
			return slices.Contains([]string{"date", "trip", "event", "strike_speed_kn"}, c)
		})
}
