package proof

import (
	"fmt"
	"maps"
	"regexp"
	"slices"
	"strings"

	"wakeledger/pipeline/layout"
	"wakeledger/pipeline/meaning"
	"wakeledger/pipeline/phrase"
	"wakeledger/pipeline/plan"
	"wakeledger/pipeline/words"
)

// tripRemarks asks about remarks on trips that tell of bites, where the trip has stretches and no row of strikes
// is of it: somebody was too tired to fill the other table.
func (q *inquiry) tripRemarks(s Subject) {
	notes := s.Plan.Find("notes")
	if s.Plan.Kind != plan.Trips || notes == nil || notes.Index < 0 || notes.Column.Parse != "text" ||
		len(q.struck) == 0 || s.Plan.Tells != nil {
		return
	}
	rows, n, first := map[int64]string{}, 0, ""
	for _, trip := range s.Stats.Rowwise {
		if !q.fishedUntold(trip.Keys) {
			continue
		}
		i := slices.IndexFunc(s.Block.Rows, func(r layout.Row) bool { return int64(r.Num) == trip.Row })
		if i < 0 {
			continue
		}
		text := ""
		if r := s.Block.Rows[i]; notes.Index < len(r.Cells) {
			text = strings.TrimSpace(r.Cells[notes.Index].Text)
		}
		if bites := bitesTold(text); bites > 0 {
			if n += bites; first == "" {
				first = text
			}
			rows[trip.Row] = q.stretchNamed(text)
		}
	}
	if n == 0 {
		return
	}
	q.ask("trip remarks", s.Plan.Name, notes.Heading, fmt.Sprintf("Remarks under %q tell of %s on trips of "+
		"which the rows of strikes say nothing, the first: %q. Count them?", notes.Heading,
		plural(n, "bite", "bites"), first),
		[]string{"count them", "leave them out"}, listing, first)
	x := q.last()
	x.Brief = "Remarks on trips tell of bites that no row of strikes has: they are not counted."
	x.Choices, x.trips = []string{"count", "leave"}, rows
}

// moreRemarks asks about remarks beside hours that tell of more bites than the rows of strikes have, in so many words:
// "3 more yellowfin in the box".
func (q *inquiry) moreRemarks(s Subject) {
	notes := s.Plan.Find("notes")
	if notes == nil || notes.Index < 0 || notes.Column.Parse != "text" || len(q.struck) == 0 || s.Plan.Tells != nil ||
		s.Plan.Kind == plan.Strikes || s.Plan.Kind == plan.Fish || s.Stats.ByCount+s.Stats.Listed > 0 {
		return
	}
	rows, n, first := map[int64]string{}, 0, ""
	for _, r := range s.Block.Rows {
		text := textOf(r, notes)
		if bites := bitesTold(phrase.Beside(text)); bites > 0 {
			if n += bites; first == "" {
				first = text
			}
			rows[int64(r.Num)] = q.stretchNamed(text)
		}
	}
	if n == 0 || slices.ContainsFunc(q.out, func(x Question) bool {
		return x.Kind == "trip remarks" && x.Sheet == s.Plan.Name
	}) {
		return
	}
	q.ask("trip remarks", s.Plan.Name, notes.Heading, fmt.Sprintf("Remarks under %q tell of %s more than the rows of "+
		"strikes, the first: %q. Count them?", notes.Heading, plural(n, "bite", "bites"), first),
		[]string{"count them", "leave them out"}, listing, first)
	x := q.last()
	x.Brief = "Remarks tell of more bites than the rows of strikes: they are not counted."
	x.Choices, x.trips = []string{"count", "leave"}, rows
}

// fishedUntold tells a trip with stretches of which no table tells a strike.
func (q *inquiry) fishedUntold(keys []string) bool {
	fished := false
	for _, key := range keys {
		if q.counted[key] != nil || q.struck[key] {
			return false
		}
		fished = fished || q.fished[key]
	}
	return fished
}

// bitesTold is how many bites a remark tells of that were trolled, each with what became of it.
func bitesTold(text string) int {
	if words.Otherwise(text) {
		return 0
	}
	n := 0
	for _, b := range phrase.Tell(text, phrase.Defaults{}).Bites {
		if b.Fate > words.FateUnknown {
			n += max(1, b.N)
		}
	}
	return n
}

// stretchNamed is the one stretch that a text names as the log's own tables do, "Pass B"; "" where there is none,
// or several.
func (q *inquiry) stretchNamed(text string) string {
	for _, s := range q.book {
		leg := s.Plan.Find("leg")
		if s.Plan.Kind != plan.Legs || leg == nil {
			continue
		}
		named := regexp.MustCompile(`(?i)\b` + regexp.QuoteMeta(leg.Heading) + `\s+(\w{1,4})\b`)
		if m := named.FindAllStringSubmatch(text, -1); len(m) == 1 {
			return m[0][1]
		}
	}
	return ""
}

// countRemarks has the bites that remarks on trips tell counted.
func countRemarks(_ *meaning.Log, q *Question, choice string) {
	if len(q.of) > 0 && choice == "count" {
		q.of[0].Plan.Tells = maps.Clone(q.trips)
	}
}
