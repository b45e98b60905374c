package proof

import (
	"fmt"
	"maps"

	"wakeledger/pipeline/meaning"
)

// underDays asks whether the bites that rows of lines count under the row of a day are among those that the day counts,
// where the counts themselves do not say it; and about days that count fewer than the rows under them.
func (q *inquiry) underDays(s Subject) {
	x := s.Under
	if x == nil {
		return
	}
	switch {
	case x.Known && len(x.Over) > 0:
		q.ask("under off", s.Plan.Name, "bites", fmt.Sprintf("%s fewer bites or fish than the rows under it, the "+
			"first %s. The rows under it are counted: mend the one or the other.",
			subject(len(x.Over), "day", "count", s.Plan.Name), rowName(&s, x.Over[0])), nil, listing)
		q.last().Brief = "A day counts fewer bites than the rows under it."
	case !x.Known && (x.Same > 0 || len(x.Over) == 0):
		q.ask("under", s.Plan.Name, "bites", fmt.Sprintf("Rows without hours stand under %s with bites of their own. "+
			"Are these among the bites that the day counts? Until you say, both are counted.",
			plural(x.Days, "day", "days")), []string{"yes, they are among them", "no, they are beside them"}, listing)
		y := q.last()
		y.Brief, y.Choices = "Rows under a day count bites: are these among those of the day?",
			[]string{"among", "beside"}
	}
}

// underAmong takes the bites of rows under a day for some of those that the day counts.
func underAmong(_ *meaning.Log, q *Question, choice string) {
	for _, u := range q.of {
		if u.Under != nil && choice == "among" {
			u.Plan.Rest = maps.Clone(u.Under.Rest)
		}
	}
}
