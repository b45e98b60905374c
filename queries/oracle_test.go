package queries_test

import (
	"flag"
	"math"
	"strconv"
	"strings"
	"testing"

	"wakeledger/queries"
)

// oracle has the questions of each log of the corpus answered from its truth (minutes more).
var oracle = flag.Bool("oracle", false, "answer the questions of the corpus from the truth")

// answersTo are the answers that a captain may give to a question: its options, or where a usual
// figure is asked for, the one that his totals come to.
func answersTo(q queries.Question, tr truth) []string {
	var all []string
	for k := range q.Options {
		all = append(all, strconv.Itoa(k+1))
	}
	if strings.HasPrefix(q.Options[0], "a usual ") {
		all = []string{"leave"}
		if boat, line := tr.Totals["boat_hours"], tr.Totals["line_hours"]; q.Options[0] == "a usual number" &&
			boat != nil && line != nil && *boat > 0 {
			all = append(all, strconv.Itoa(int(math.Round(*line / *boat))))
		}
	}
	return all
}

// answered is what comes of a log once an oracle has answered up to five of its questions,
// in the order in which they are asked: each with the option that brings the season nearest
// to the truth, with none where no option does.
func answered(t testing.TB, dir string, tr truth, o outcome) *outcome {
	said, passed := map[string]string{}, map[string]bool{}
	for len(said)+len(passed) < 5 && o.off > 0 {
		at := -1
		for i, q := range o.asked {
			if !passed[q.ID] && said[q.ID] == "" && len(q.Options) > 0 {
				at = i
				break
			}
		}
		if at < 0 {
			break
		}
		q, best, choice := o.asked[at], o, ""
		for _, text := range answersTo(q, tr) {
			said[q.ID] = text
			if x := judge(t, dir, tr, tr.config(t), said); x.off < best.off {
				best, choice = x, said[q.ID]
			}
		}
		if delete(said, q.ID); choice == "" {
			passed[q.ID] = true
			continue
		}
		said[q.ID], o = choice, best
	}
	return &o
}
