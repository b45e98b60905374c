package proof

import (
	"fmt"
	"slices"

	"wakeledger/pipeline/meaning"
)

// OfSeason tells a question that is open only where the season, once its tables are put together, leaves it so: see
// the view open_question.
func (q *Question) OfSeason() bool {
	return q.Kind == "told" || q.Kind == "no days" || q.Kind == "no leg days" || q.Kind == "only trips"
}

// Counted stands in the text of a question for how many bites the season has of the log.
const Counted = "{season}"

// told asks whether the bites that a log's rows tell are those that the season has of it, once its tables are put
// together. A table alone may count the bites of some rows and list those of others.
func (q *inquiry) told() {
	n, tables := max(TotalsOf(q.subjects).Bites, q.both), 0
	for _, s := range q.subjects {
		if s.Stats.ByCount+s.Stats.Listed > 0 {
			tables++
		}
	}
	if tables < 2 {
		return
	}
	q.ask("told", "", fmt.Sprint(n), fmt.Sprintf("The rows of this log tell %s, and its tables put together make %s. "+
		"Do the numbers of trips, the days and the lists of fish agree?", plural(n, "bite", "bites"), Counted), nil,
		append([]string{"trips"}, listing...), q.log.File, fmt.Sprint(n))
	q.last().Brief = "The rows of a log tell another number of bites than its tables put together."
}

// score asks about figures of one cell of which nothing says what they count.
func (q *inquiry) score() {
	s := q.log.Score
	if s == nil {
		return
	}
	meant := "bites, hooked and landed"
	if s.Figures > 3 {
		meant = "bites, hooked, landed and, of these, let go"
	}
	q.ask("score", "", s.Heading, fmt.Sprintf("%q has figures such as %q, and nothing says what they count. "+
		"I take them for %s. Is that so?", s.Heading, s.Cell, meant), nil, listing, s.Heading)
	q.last().Brief = "Nothing says what the figures of a column count."
}

// noDays asks where no table of the log says of which day or trip its bites, or its stretches, are.
func (q *inquiry) noDays() {
	worked, dayless := 0, 0
	for _, s := range q.subjects {
		if !s.Plan.NoEffort {
			worked, dayless = worked+len(s.Stats.Worked), dayless+len(s.Stats.Dayless)
		}
	}
	if worked > 0 && dayless == worked {
		q.ask("no leg days", "", "days", fmt.Sprintf("No row with hours says its day or its trip (%s): each was taken "+
			"for a trip of its own.", plural(worked, "row", "rows")), nil, []string{"trips", "bands"})
	}
	dated := slices.ContainsFunc(q.book, func(s Subject) bool {
		return len(s.Stats.First) > 0
	})
	if worked > dayless && !dated {
		q.ask("no leg days", "", "dates", "No row says its date. I go by the numbers of the trips: two of one number "+
			"are taken for one trip. Is that right?", nil, []string{"trips"})
	}
	if q.total.Strikes == 0 || slices.ContainsFunc(q.subjects, func(s Subject) bool {
		return s.Plan.Binds("date", "trip") || s.Plan.Gives("date") || s.Plan.Gives("trip") || s.Stats.Placed &&
			len(s.Stats.Days) > 0
	}) {
		return
	}
	q.ask("no days", "", "days", "I found nothing that says on which day or trip these bites were.", nil,
		[]string{"trips"})
}

// longDays asks about hours that add up to more than a day of fishing: a clock's hour, or those of the day again.
func (q *inquiry) longDays(s Subject) {
	n, most := 0, 0.0
	for _, h := range s.Stats.DayHours {
		if h > meaning.LongestDay {
			n, most = n+1, max(most, h)
		}
	}
	b := s.Plan.Find("duration_s")
	if n == 0 || b == nil || slices.ContainsFunc(q.out, func(x Question) bool {
		return (x.Kind == "hours again" || x.Kind == "lures together") && x.Sheet == s.Plan.Name
	}) {
		return
	}
	q.ask("long day", s.Plan.Name, b.Heading, fmt.Sprintf("The hours under %q add up to %.1f on one day%s. Are they "+
		"hours with lines in the water, each row's own?", b.Heading, most, daysSo(n)), nil, hours,
		fmt.Sprintf("%.1f %d", most, n))
}

func daysSo(n int) string {
	if n == 1 {
		return ""
	}
	return fmt.Sprintf(", the most of %d such days", n)
}

// toldAlready takes that question back where another one asks which of two tellings of the bites is right.
func (q *inquiry) toldAlready() {
	if slices.ContainsFunc(q.out, func(x Question) bool {
		return x.Kind == "two tellings" || x.Kind == "uncounted" || x.Kind == "beside"
	}) {
		q.out = slices.DeleteFunc(q.out, func(x Question) bool { return x.Kind == "told" })
	}
}
