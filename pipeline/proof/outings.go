package proof

import (
	"fmt"
	"slices"
	"strconv"
	"strings"

	"wakeledger/pipeline/layout"
	"wakeledger/pipeline/plan"
)

// mostTwice is up to which share of the days with several stretches a column may be filled
// twice, where it is filled once on the others: more of them have no meaning.
const mostTwice = 0.3

// outings asks about days on which a column that stands once a day, such as the client, is
// filled twice: they may be two trips. Strikes of another table would not find such a trip.
func (q *inquiry) outings(s Subject) {
	if s.Plan.Binds("trip") || s.Plan.Outings || s.Plan.Trips != nil ||
		slices.ContainsFunc(q.subjects, func(o Subject) bool {
			return o.Plan.Kind == plan.Strikes || o.Plan.Kind == plan.Fish
		}) {
		return
	}
	days, names := map[string][]layout.Row{}, []string{}
	for _, w := range s.Stats.Worked {
		i := slices.IndexFunc(s.Block.Rows, func(r layout.Row) bool { return int64(r.Num) == w.Row })
		if i < 0 || w.Day == "" {
			continue
		}
		if days[w.Day] == nil {
			names = append(names, w.Day)
		}
		days[w.Day] = append(days[w.Day], s.Block.Rows[i])
	}
	for _, u := range s.Plan.Unknown {
		if u.Aside == "money" || among(s.Plan.Catch, u) || among(s.Plan.Rods, u) || among(s.Plan.Spread, u) {
			continue
		}
		once, keys := 0, []string{}
		trips := map[int64]string{}
		where := ""
		for _, name := range names {
			switch filled(days[name], u.Index) {
			case 0:
			case 1:
				if len(days[name]) > 1 {
					once++
				}
			default:
				n := 0
				for _, r := range days[name] {
					if cellAt(r, u.Index) != "" {
						n++
					}
					trips[int64(r.Num)] = name + " " + strconv.Itoa(max(1, n))
				}
				keys = append(keys, rowText(&s, int64(days[name][0].Num)))
				if where == "" {
					where = rowName(&s, int64(days[name][0].Num))
				}
			}
		}
		if len(keys) == 0 || once < 3 || float64(len(keys)) > mostTwice*float64(once) {
			continue
		}
		q.ask("two trips", s.Plan.Name, u.Heading, fmt.Sprintf("%q stands once for most days of several rows, and "+
			"twice for %s, the first from %s: two trips in a day?", u.Heading, plural(len(keys), "day", "days"), where),
			[]string{"one trip a day", "two trips"}, []string{"trips"}, keys...)
		x := q.last()
		x.Brief, x.Choices, x.trips = "A day may be of two trips.", []string{"one", "two"}, trips
		return
	}
}

// fewUnnumbered is up to which share of the days with stretches may name no trip, for the others to
// be the way of the log.
const fewUnnumbered = 0.4

// unnumbered asks about days whose stretches name no trip, where those of most days do: they are
// counted as trips of their own, and may be of the trip above.
func (q *inquiry) unnumbered(s Subject) {
	trip := s.Plan.Find("trip")
	if trip == nil || trip.Carried || trip.By != nil || !s.Plan.Binds("date") ||
		slices.ContainsFunc(q.subjects, func(o Subject) bool { return o.Plan != s.Plan && o.Plan.Binds("trip") }) {
		return // other tables may name the trip of such a day
	}
	named, without, first := map[string]bool{}, []string{}, map[string]int64{}
	for _, w := range s.Stats.Worked {
		i := slices.IndexFunc(s.Block.Rows, func(r layout.Row) bool { return int64(r.Num) == w.Row })
		if i < 0 || w.Day == "" {
			continue
		}
		if _, ok := first[w.Day]; !ok {
			first[w.Day] = w.Row
			without = append(without, w.Day)
		}
		named[w.Day] = named[w.Day] || cellOf(s.Block.Rows[i], trip) != ""
	}
	without = slices.DeleteFunc(without, func(day string) bool { return named[day] })
	if len(without) == 0 || float64(len(without)) > fewUnnumbered*float64(len(first)) {
		return
	}
	var keys []string
	for _, day := range without {
		keys = append(keys, rowText(&s, first[day]))
	}
	q.ask("unnumbered", s.Plan.Name, trip.Heading, fmt.Sprintf("%s nothing under %q, where the others name a "+
		"trip, the first: %s. %s a trip of its own?", daysSay(len(without)), trip.Heading,
		rowName(&s, first[without[0]]), isEach(len(without))),
		[]string{"a trip of its own", "of the trip above"}, []string{"trips"}, keys...)
	q.last().Choices = []string{"own", "above"}
}

// daysSay begins a sentence on what days say.
func daysSay(n int) string {
	if n == 1 {
		return "One day says"
	}
	return fmt.Sprintf("%d days say", n)
}

// isEach begins a question on each of n.
func isEach(n int) string {
	if n == 1 {
		return "Is it"
	}
	return "Is each"
}

func cellAt(r layout.Row, index int) string { return cellOf(r, &plan.Binding{Index: index}) }

// filled is how many of a day's rows have a cell of a column.
func filled(rows []layout.Row, index int) int {
	n := 0
	for _, r := range rows {
		if cellAt(r, index) != "" {
			n++
		}
	}
	return n
}

// longPause is from how many seconds without lines in the water on, between stretches of one lettered
// number, the boat may have been home meanwhile.
const longPause = 2 * 3600

// parts asks whether stretches of one number, a and b, are trips of their own where they lie far apart.
func (q *inquiry) parts(s Subject) {
	trip := s.Plan.Find("trip")
	if !s.Plan.Parts || trip == nil {
		return
	}
	last := map[string]span{} // by day and number
	for _, r := range s.Block.Rows {
		number := trip.By[strings.ToLower(cellAt(r, trip.Index))]
		at := slices.IndexFunc(s.Stats.Worked, func(w Worked) bool { return w.Row == int64(r.Num) })
		if at < 0 || number == cellAt(r, trip.Index) {
			continue
		}
		day := s.Stats.Worked[at].Day
		i := slices.IndexFunc(s.Stats.spans[day], func(x span) bool { return x.row == int64(r.Num) })
		if i < 0 {
			continue
		}
		x, key := s.Stats.spans[day][i], day+" "+number
		if before, ok := last[key]; ok && x.from-before.to >= longPause {
			q.ask("parts", s.Plan.Name, trip.Heading, fmt.Sprintf("Some numbers under %q have letters, and hours "+
				"lie between, the first: %s. Is each letter a trip?", trip.Heading, rowName(&s, x.row)),
				[]string{"one trip", "a trip for each letter"}, []string{"trips"})
			y := q.last()
			y.Brief, y.Choices = "Numbers with letters may be trips of their own.", []string{"one", "trips"}
			return
		}
		last[key] = x
	}
}

// among tells a column that is one of several whose meaning is known.
func among(of []plan.Unknown, u plan.Unknown) bool {
	return slices.ContainsFunc(of, func(x plan.Unknown) bool { return x.Index == u.Index })
}
