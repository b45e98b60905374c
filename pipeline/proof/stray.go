package proof

import (
	"fmt"
	"maps"
	"math"
	"slices"
	"strings"

	"wakeledger/pipeline/layout"
	"wakeledger/pipeline/meaning"
	"wakeledger/pipeline/phrase"
	"wakeledger/pipeline/plan"
	"wakeledger/pipeline/words"
)

// stray asks about a table of fish or strikes that says of no row when it was, in a log whose
// other tables do: a key or a list of records looks like it.
func (q *inquiry) stray(s Subject) {
	t := s.Stats
	if t.Listed == 0 || t.ByCount > 0 || t.Stretches > 0 || t.Placed || q.total.Strikes == t.Strikes {
		return
	}
	q.ask("stray", s.Plan.Name, strings.Join(s.Hand(), ", "),
		fmt.Sprintf("A table in %q reads as %s with no day and no trip. Are they fish of this season?", s.Plan.Name,
			plural(t.Listed, "fish", "fish")),
		[]string{"no, leave the table out", "yes"}, listing)
	x := q.last()
	x.Brief, x.Choices = "A table tells of fish, and of no day: is it part of the season?", []string{"no", "yes"}
}

// dayless asks about hours of no day and no trip in a log whose other tables have such: they may be
// sums of these.
func (q *inquiry) dayless(s Subject) {
	rows := s.Stats.Dayless
	if len(rows) == 0 || len(q.fished) == 0 || inTotal(s, rows) {
		return
	}
	q.ask("dayless", s.Plan.Name, "hours", fmt.Sprintf("%s%s with hours and no day, the first: %s. Do these hours "+
		"count beside the others?", plural(len(rows), "row", "rows"), within(s.Plan.Name), rowName(&s, rows[0])),
		[]string{"no, leave them out", "yes, count them"}, all)
	x := q.last()
	x.Brief, x.Choices, x.left = "Some hours are of no day: do they count beside the others?",
		[]string{leaveOut, "yes"}, []left{{s.Understood, rows}}
}

// inTotal tells rows whose hours the log's own total counts beside the others.
func inTotal(s Subject, rows []int64) bool {
	b := s.Plan.Find("duration_s")
	if b == nil || b.Index < 0 {
		return false
	}
	all, own := 0.0, 0.0
	for _, r := range s.Block.Rows {
		if b.Index >= len(r.Cells) {
			continue
		}
		v, _ := amount(b, r.Cells[b.Index].Text)
		if all += v; slices.Contains(rows, int64(r.Num)) {
			own += v
		}
	}
	return slices.ContainsFunc(s.Block.Totals, func(t layout.Row) bool {
		if b.Index >= len(t.Cells) {
			return false
		}
		want, ok := amount(b, t.Cells[b.Index].Text)
		return ok && own > 0.1 && math.Abs(all-want) < 0.06
	})
}

// planned asks about stretches in a table whose sheet or title says that they were to be fished.
func (q *inquiry) planned(s Subject) {
	title := s.Plan.Name
	for _, text := range s.Block.Above {
		if !words.Planned(title) && len(text) <= longestTitle {
			title = text
		}
	}
	if !words.Planned(title) || len(s.Stats.Worked) == 0 {
		return
	}
	var rows []int64
	for _, w := range s.Stats.Worked {
		rows = append(rows, w.Row)
	}
	q.ask("planned", s.Plan.Name, "hours", fmt.Sprintf("%q has %s. Were these fished, or only planned?", title,
		plural(len(rows), "stretch", "stretches")), []string{"only planned, leave them out", "fished"}, all)
	x := q.last()
	x.Brief, x.Choices, x.left = "A table may be of what was only planned: were its stretches fished?",
		[]string{leaveOut, "yes"}, []left{{s.Understood, rows}}
}

// struckOut asks about rows whose cells are all struck through.
func (q *inquiry) struckOut(s Subject) {
	var rows []int64
	for _, r := range s.Block.Rows {
		if r.Struck {
			rows = append(rows, int64(r.Num))
		}
	}
	if len(rows) == 0 {
		return
	}
	say := fmt.Sprintf("%d rows%s are struck through, the first: %s. Are they", len(rows), within(s.Plan.Name),
		rowName(&s, rows[0]))
	if len(rows) == 1 {
		say = fmt.Sprintf("One row is struck through: %s. Is it", rowName(&s, rows[0]))
	}
	q.ask("struck", s.Plan.Name, "rows", say+" to be left out?", []string{"yes, leave out", "no, count"}, all)
	x := q.last()
	x.Brief, x.Choices, x.left = "Rows are struck through: are they to be left out?", []string{leaveOut, "no"},
		[]left{{s.Understood, rows}}
}

// longestTitle is how long a text above a table is at the most that is its title.
const longestTitle = 40

// cellOf is what a row says under a binding, in lower case.
func cellOf(r layout.Row, b *plan.Binding) string {
	if b == nil || b.Index < 0 || b.Index >= len(r.Cells) {
		return ""
	}
	return strings.ToLower(strings.TrimSpace(r.Cells[b.Index].Text))
}

// left are rows of a block that an answer leaves out.
type left struct {
	of   *meaning.Understood
	rows []int64
}

// untrolled asks about strikes, and their fish, of stretches that were fished otherwise.
func (q *inquiry) untrolled() {
	legs := map[string]bool{}
	for _, s := range q.subjects {
		how, leg := s.Plan.Find("method"), s.Plan.Find("leg")
		if how == nil || leg == nil {
			continue
		}
		for _, r := range s.Block.Rows {
			if m, ok := words.Method(cellOf(r, how)); ok && m != "troll" && cellOf(r, leg) != "" {
				legs[cellOf(r, leg)] = true
			}
		}
	}
	var out []left
	strikes, n := map[string]bool{}, 0
	for _, of := range []struct {
		key  string
		keys map[string]bool
	}{{"leg", legs}, {"strike", strikes}} {
		for _, s := range q.subjects {
			key := s.Plan.Find(of.key)
			if key == nil || s.Plan.Find("method") != nil || s.Stats.Listed == 0 ||
				of.key == "strike" && s.Plan.Binds("leg") {
				continue
			}
			l := left{of: s.Understood}
			for _, r := range s.Block.Rows {
				if of.keys[cellOf(r, key)] {
					l.rows = append(l.rows, int64(r.Num))
					if name := cellOf(r, s.Plan.Find("strike")); of.key == "leg" && name != "" {
						strikes[name] = true
					}
				}
			}
			if len(l.rows) > 0 {
				if out = append(out, l); of.key == "leg" {
					n += len(l.rows)
				}
			}
		}
	}
	if n == 0 {
		return
	}
	q.ask("untrolled", out[0].of.Plan.Name, "not trolled", fmt.Sprintf("%s in %q belong to stretches that were not "+
		"trolled. Do they count?", plural(n, "row", "rows"), out[0].of.Plan.Name),
		[]string{"no, leave them out", "yes, count them"}, listing)
	x := q.last()
	x.Brief, x.Choices, x.left = "Some bites belong to stretches that were not trolled: do they count?",
		[]string{leaveOut, "yes"}, out
}

// fewUnfished is up to which share of a list's rows may be of trips without a stretch, for the others
// to be the way of the log.
const fewUnfished = 0.25

// unfished asks about bites of trips, or else of days, of which no table tells a stretch, where they do of
// nearly all others: the boat may have fished in another way.
func (q *inquiry) unfished(s Subject) {
	if s.Stats.Stretches > 0 || s.Stats.ByCount > 0 || len(q.fished) == 0 || s.Plan.Binds("method") ||
		s.Plan.Kind == plan.Trips && !s.Plan.Binds("depart_s", "return_s") { // those: see idleDays
		return
	}
	for _, kind := range []string{"trip ", "day "} {
		var rows []int64
		known := 0
		names := map[string]bool{}
		for _, l := range s.Stats.Rowwise {
			for _, key := range l.Keys {
				name, ok := strings.CutPrefix(key, kind)
				switch {
				case !ok:
				case q.fished[key]:
					known++
				default:
					rows = append(rows, l.Row)
					names[name] = true
				}
			}
		}
		if len(rows) == 0 || float64(len(rows)) > fewUnfished*float64(known) {
			continue
		}
		keys := slices.Sorted(maps.Keys(names))
		of := plural(len(names), strings.TrimSpace(kind), strings.TrimSpace(kind)+"s")
		who := plural(len(rows), "bite", "bites") + fmt.Sprintf(" in %q belong", s.Plan.Name)
		if len(rows) == 1 {
			who = fmt.Sprintf("One bite in %q belongs", s.Plan.Name)
		}
		text := fmt.Sprintf("%s to %s without a stretch, the first: %s. Was this trolled?", who, of,
			rowName(&s, rows[0]))
		brief, effect := "Some bites are of trips or days without a stretch: were they trolled?",
			append([]string{"trips"}, listing...)
		if s.Plan.Kind == plan.Trips {
			text = fmt.Sprintf("I find no stretch for %s in %q, the first: %s. Were lines in the water?", of,
				s.Plan.Name, rowName(&s, rows[0]))
			brief, effect = "Some trips have no stretch: were lines in the water?", []string{"trips"}
		}
		q.ask("untrolled", s.Plan.Name, "no stretch", text, []string{"no, leave them out", "yes, count them"},
			effect, keys...)
		x := q.last()
		x.Brief, x.Choices, x.left = brief, []string{leaveOut, "yes"}, []left{{s.Understood, rows}}
		return
	}
}

// besideBites asks about fish of a list of its own in a log whose other table has its bites row by row, where a day or
// a trip lists more fish than these bites brought to the boat: they may have been caught in another way.
func (q *inquiry) besideBites(s Subject) {
	if s.Plan.Kind != plan.Fish || s.Stats.Listed == 0 || s.Plan.Binds("strike", "method", "time_s") {
		return
	}
	bites := map[string]*Told{}
	for _, o := range q.subjects {
		if o.Plan.Kind != plan.Strikes || o.Plan.Among {
			continue
		}
		for key, t := range o.Stats.Told {
			if bites[key] == nil {
				bites[key] = &Told{}
			}
			bites[key].Counted.add(t.Listed)
		}
	}
	for _, kind := range []string{"trip ", "day "} {
		listed, rows := map[string]int{}, map[string][]int64{}
		shared := false
		for _, l := range s.Stats.Rowwise {
			for _, key := range l.Keys {
				if strings.HasPrefix(key, kind) {
					listed[key] += l.Held
					rows[key] = append(rows[key], l.Row)
				}
			}
		}
		var over []int64
		var keys []string
		n := 0
		for _, key := range slices.Sorted(maps.Keys(listed)) {
			b := bites[key]
			shared = shared || b != nil
			if b == nil || listed[key] > b.Counted.Boated {
				over, keys, n = append(over, rows[key]...), append(keys, key), n+listed[key]
			}
		}
		if !shared || len(over) == 0 {
			continue // the bites may name their days, and the list its trips
		}
		slices.Sort(over)
		over = slices.Compact(over)
		q.ask("untrolled", s.Plan.Name, "beside the bites", fmt.Sprintf("%q lists %s on days whose bites brought "+
			"fewer to the boat, the first: %s. Were they trolled?", s.Plan.Name, plural(n, "fish", "fish"),
			rowName(&s, over[0])),
			[]string{"no, leave them out", "yes, count them"}, append([]string{"trips"}, listing...), keys...)
		x := q.last()
		x.Brief, x.Choices, x.left = "Some fish of a list have no bite: were they trolled?", []string{leaveOut, "yes"},
			[]left{{s.Understood, over}}
		return
	}
}

// idleDays asks about days or trips of a table that says hardly more than these, where no stretch, no bite and
// no trip of another table is of them: upkeep or fuel, and no trip. In a log without stretches a day
// without a bite is a trip where others of its table have one.
func (q *inquiry) idleDays(s Subject) {
	if s.Plan.Kind != plan.Trips || s.Plan.Binds("depart_s", "return_s") ||
		len(q.fished) == 0 && s.Plan.Binds("trip") {
		return
	}
	told := q.toldOutside(s)
	if len(told) == 0 && s.Plan.Binds("captain", "port", "anglers") {
		return
	}
	one, many := "day", "days"
	if s.Plan.Binds("trip") {
		one, many = "trip", "trips"
	}
	var rows []int64
	known, idle := 0, map[string]bool{}
	for _, l := range s.Stats.Rowwise {
		switch {
		case len(l.Keys) == 0:
		case slices.ContainsFunc(l.Keys, func(key string) bool { return told[key] }):
			known++
		default:
			rows = append(rows, l.Row)
			idle[l.Keys[len(l.Keys)-1]] = true
		}
	}
	if len(rows) == 0 || len(q.fished) == 0 && known > 0 ||
		one == "trip" && float64(len(rows)) > fewUnfished*float64(known) {
		return
	}
	who, have, first := plural(len(idle), one, many), "have", ", the first"
	if len(idle) == 1 {
		who, have, first = "One "+one, "has", ""
	}
	q.ask("untrolled", s.Plan.Name, "days", fmt.Sprintf("%s in %q %s neither a stretch nor a bite%s: %s. "+
		"Does this count as trolling?", who, s.Plan.Name, have, first,
		rowName(&s, rows[0])),
		[]string{"no, leave them out", "yes"}, []string{"trips"}, slices.Sorted(maps.Keys(idle))...)
	x := q.last()
	x.Brief, x.Choices, x.left = "Some days or trips have neither a stretch nor a bite: were they trips?",
		[]string{leaveOut, "yes"}, []left{{s.Understood, rows}}
}

// toldOutside are the days and trips of which other tables tell a stretch or a bite; in a log without
// stretches, or a trip.
func (q *inquiry) toldOutside(s Subject) map[string]bool {
	told := maps.Clone(q.fished)
	for _, o := range q.subjects {
		switch {
		case o.Plan == s.Plan:
			continue
		case o.Plan.Kind == plan.Strikes, o.Plan.Kind == plan.Fish:
		case o.Plan.Kind == plan.Trips && len(q.fished) == 0 &&
			o.Plan.Binds("depart_s", "return_s", "trip", "captain", "port"):
		default:
			continue
		}
		for _, l := range o.Stats.Rowwise {
			for _, key := range l.Keys {
				told[key] = true
			}
		}
	}
	return told
}

// jigged asks about bites of which another column has the word of another way of fishing: a jig
// may be trolled too.
func (q *inquiry) jigged(s Subject) {
	if s.Stats.Listed == 0 || s.Stats.Stretches > 0 || s.Plan.Binds("method") {
		return
	}
	for _, u := range s.Plan.Unknown {
		rows := map[string][]int64{}
		for _, r := range s.Block.Rows {
			text := cellAt(r, u.Index)
			if m, ok := words.Method(text); ok && m != "troll" && len(text) < 16 && !words.Otherwise(text) {
				rows[text] = append(rows[text], int64(r.Num))
			}
		}
		for _, text := range slices.Sorted(maps.Keys(rows)) {
			n := len(rows[text])
			if 3*n > s.Stats.Listed {
				continue // it is what this log trolls
			}
			q.ask("untrolled", s.Plan.Name, u.Heading, fmt.Sprintf("%s %q under %q. Were they trolled?",
				subject(n, "row", "say", s.Plan.Name), text, u.Heading),
				[]string{"no, leave them out", "yes, count them"}, append([]string{"trips"}, listing...), text)
			x := q.last()
			x.Brief, x.Choices, x.left = "Some bites may have come to another way of fishing: were they trolled?",
				[]string{leaveOut, "yes"}, []left{{s.Understood, rows[text]}}
		}
	}
}

// unnamed asks about fish that say a word where the others name the strike that they are of:
// it may be why they have none.
func (q *inquiry) unnamed(s Subject) {
	key := s.Plan.Find("strike")
	if key == nil || s.Plan.Kind != plan.Fish || s.Plan.Binds("method") || key.By != nil {
		return
	}
	rows, numbered := map[string][]int64{}, 0
	for _, r := range s.Block.Rows {
		switch text := cellOf(r, key); {
		case strings.ContainsAny(text, "0123456789"):
			numbered++
		case text != "" && !words.NotLogged(text) && !words.IsTotal(text) && told(r) > 2:
			rows[text] = append(rows[text], int64(r.Num))
		}
	}
	for _, text := range slices.Sorted(maps.Keys(rows)) {
		if 3*len(rows[text]) > numbered {
			continue // it is how this log names its strikes
		}
		q.ask("untrolled", s.Plan.Name, key.Heading, fmt.Sprintf("%s %q under %q, where the others name a strike. "+
			"Were they trolled?", subject(len(rows[text]), "row", "say", s.Plan.Name), text, key.Heading),
			[]string{"no, leave them out", "yes, count them"}, append([]string{"trips"}, listing...), text)
		x := q.last()
		x.Brief, x.Choices, x.left = "Some fish name no strike: were they trolled?", []string{leaveOut, "yes"},
			[]left{{s.Understood, rows[text]}}
	}
}

// leaveRows leaves out the rows that an answer says do not count.
func leaveRows(_ *meaning.Log, q *Question, choice string) {
	if choice != leaveOut {
		return
	}
	for _, l := range q.left {
		drop(l.of.Plan, l.rows...)
	}
}

// bitten asks whether a count of fish hooked is one of all bites: where it is never less than
// the bites missed, and is not the sum of what became of the fish.
func (q *inquiry) bitten(s Subject) {
	hooked, missed := s.Plan.Find("hooked_n"), s.Plan.Find("missed_n")
	if hooked == nil || missed == nil || s.Plan.Binds("strikes_n") {
		return
	}
	rows, without := 0, 0
	for _, r := range s.Block.Rows {
		h, ok := figure(cellOf(r, hooked))
		m, _ := figure(cellOf(r, missed))
		if !ok || m == 0 {
			continue
		}
		if m > h {
			return
		}
		became := 0.0
		for _, name := range []string{"lost_n", "landed_n", "kept_n", "released_n"} {
			n, _ := figure(cellOf(r, s.Plan.Find(name)))
			became += n
		}
		if rows++; h == became {
			without++
		}
	}
	if rows < 3 || 2*without >= rows {
		return
	}
	q.ask("bitten", s.Plan.Name, hooked.Heading, fmt.Sprintf(
		"Does %q count the bites under %q too? Until you say, it is read as no.", hooked.Heading, missed.Heading),
		[]string{"no", "yes"}, []string{"strikes", "hooked", "bands"}, missed.Heading)
}

// allBites makes a count of fish hooked one of all bites.
func allBites(l *meaning.Log, q *Question, choice string) {
	for _, u := range q.of {
		if b := u.Plan.Find("hooked_n"); b != nil && choice == "yes" {
			l.Means(u, b.Index, "strikes_n")
		}
	}
}

// surelyAmong is how many rows must count the fish that they say were let go, and half of those that name such, to
// answer whether a count has them.
const surelyAmong = 2

// freed asks whether the fish that a row's words say were let go are among those that it
// counts, where no count of them stands in the log.
func (q *inquiry) freed(s Subject) {
	kept := s.Plan.Find("kept_n", "landed_n")
	if kept == nil || s.Plan.Binds("released_n") || s.Plan.Freed {
		return
	}
	n, under := 0, ""
	among, more, rows := 0, 0, 0
	for _, r := range s.Block.Rows {
		gone, held, ofThem := 0, 0, false
		counted, ok := figure(cellOf(r, kept))
		for i := range s.Plan.Bindings {
			b := &s.Plan.Bindings[i]
			if b.Column.Parse != "fishlist" || b.Index < 0 || b.Index >= len(r.Cells) {
				continue
			}
			said := words.WrittenOut(r.Cells[b.Index].Text, b.Codes)
			text := phrase.OfCount(said, int(counted))
			_, some := phrase.OfThem(said)
			ofThem = ofThem || some || text != said
			for _, f := range phrase.FishList(text, phrase.Defaults{}) {
				switch f.Fate {
				case words.Released:
					gone, under = gone+max(f.N, 1), b.Heading
				case words.Lost, words.Missed:
				default:
					held += max(f.N, 1)
				}
			}
		}
		if n += gone; gone > 0 {
			rows++
			if ok && (counted == float64(gone+held) || ofThem && counted >= float64(gone)) {
				among++
			}
			if !ok || counted < float64(gone+held) {
				more++
			}
		}
	}
	if n < 2 || more == 0 && among >= surelyAmong && 2*among >= rows {
		return // rows count as many as they name, with those let go, or say that these are of them
	}
	q.ask("freed", s.Plan.Name, kept.Heading, fmt.Sprintf("%q tells of %d fish let go. Does %q count them?", under, n,
		kept.Heading),
		[]string{"yes, they are among them", "no, they are beside them"},
		[]string{"landed", "released", "hooked", "strikes", "bands", "fish"}, under)
	q.last().Choices = []string{"among", "beside"}
}

// subject is so many things of a sheet, in words, with what they do: "One row in "June" says", "3 remarks tell".
func subject(n int, thing, do, sheet string) string {
	who := plural(n, thing, thing+"s")
	if n == 1 {
		who, do = "One "+thing, does[do]
	}
	if sheet != "" {
		who += fmt.Sprintf(" in %q", sheet)
	}
	return who + " " + do
}

// does is what one thing does where several do.
var does = map[string]string{"count": "counts", "say": "says", "tell": "tells", "have": "has", "name": "names"}

// told is in how many cells a row says something.
func told(r layout.Row) (n int) {
	for _, c := range r.Cells {
		if c.Text != "" {
			n++
		}
	}
	return n
}
