package main

import (
	"context"
	"fmt"
	"io"
	"slices"
	"time"

	"wakeledger/pipeline"
	"wakeledger/pipeline/sentence"
	"wakeledger/queries"
)

// tellRead says in a few lines, for each log that was read, what a captain can hold against
// memory; of the folded ones without a question only their sums. The season's tables must be made.
func (a *app) tellRead(ctx context.Context, s *pipeline.Season, reports []pipeline.LogReport,
	folded map[int]bool, w io.Writer) error {
	all, err := queries.AskLogRead(ctx, s.DB)
	if err != nil {
		return err
	}
	open, err := queries.AskQuestions(ctx, s.DB)
	if err != nil {
		return err
	}
	read, asked := map[int64]queries.LogRead{}, map[int64][]queries.Question{}
	for _, x := range all {
		read[x.Log] = x
	}
	for _, q := range open {
		asked[q.Log] = append(asked[q.Log], q)
	}
	var rest queries.LogRead
	n := int64(0)
	for i, r := range reports {
		x, ok := read[r.ID]
		if !ok || r.Known == pipeline.Unchanged || r.Known == pipeline.EarlierVersion || isTrack(r) {
			continue
		}
		if folded[i] && len(asked[r.ID]) == 0 {
			n++
			rest.BoatHours, rest.LineHours, rest.NoLines = rest.BoatHours+x.BoatHours, rest.LineHours+
				x.LineHours, rest.NoLines+x.NoLines
			rest.Strikes, rest.Untimed = rest.Strikes+x.Strikes, rest.Untimed+x.Untimed
			continue
		}
		lines := append(seasonLines(x), settledLines(r, asked[r.ID])...)
		if len(lines) > 0 {
			fmt.Fprintf(w, "%s: what was read\n", r.Label)
		}
		for _, line := range lines {
			fmt.Fprintf(w, "  %s\n", line)
		}
	}
	if n > 0 {
		fmt.Fprintf(w, "%s: %s, %s\n", sentence.Count(n, "log more", "logs more"), hoursLine(rest),
			sentence.Count(rest.Strikes, "strike", "strikes"))
	}
	return nil
}

// seasonLines are what the season has of a log. A log of hours alone says that it has no
// strikes, one of strikes that it has no hours; one of neither says nothing of them.
func seasonLines(x queries.LogRead) []string {
	var lines []string
	if x.Trips > 0 {
		lines = append(lines, sentence.Count(x.Trips, "trip", "trips")+days(x))
	}
	if x.BoatHours > 0 || x.Strikes > 0 {
		lines = append(lines, hoursLine(x), strikesLine(x))
	}
	if x.Taped+x.Weighed > 0 {
		lines = append(lines, fmt.Sprintf("%d fish taped, %d on a scale", x.Taped, x.Weighed))
	}
	return lines
}

func hoursLine(x queries.LogRead) string {
	switch {
	case x.BoatHours == 0 && x.Strikes > 0 && x.Missed+x.NotLogged == 0:
		return "no hours with lines in: a list of fish, without the bites that were missed"
	case x.BoatHours == 0:
		return "no hours with lines in"
	}
	line := fmt.Sprintf("%.1f hours with lines in, %.1f line-hours", x.BoatHours, x.LineHours)
	if x.NoLines > 0 {
		line += fmt.Sprintf(" (%.1f hours say no number of lines)", x.NoLines)
	}
	if x.Untimed > 0 {
		line += fmt.Sprintf("; %s without hours", sentence.Count(x.Untimed, "trip", "trips"))
	}
	return line
}

func strikesLine(x queries.LogRead) string {
	if x.Strikes == 0 {
		return "no strikes"
	}
	line := fmt.Sprintf("%s: %d missed, %d lost, %d landed, %d released",
		sentence.Count(x.Strikes, "strike", "strikes"),
		x.Missed, x.Lost, x.Landed, x.Released)
	if x.NotLogged > 0 {
		line += fmt.Sprintf(", %d not logged", x.NotLogged)
	}
	return line
}

func days(x queries.LogRead) string {
	switch {
	case x.First == nil || x.Last == nil:
		return ", without a date"
	case *x.First == *x.Last:
		return ", on " + dayWords(*x.First)
	}
	return ", " + dayWords(*x.First) + " to " + dayWords(*x.Last)
}

func dayWords(day string) string {
	t, err := time.Parse("2006-01-02", day)
	if err != nil {
		return day
	}
	return t.Format("2 January 2006")
}

// mostAgreed sums that agree are told; the rest are counted.
const mostAgreed = 3

// settledLines are what agreed, what is open and what could not be used.
func settledLines(r pipeline.LogReport, questions []queries.Question) []string {
	var lines []string
	for i, s := range r.Agreed {
		if i == mostAgreed {
			lines = append(lines, fmt.Sprintf("and %d more of its own sums agree", len(r.Agreed)-i))
			break
		}
		lines = append(lines, "agrees: "+s)
	}
	var open, aside []string
	for _, q := range questions {
		to := &open
		if q.Kind == "aside" {
			to = &aside
		}
		for _, e := range q.Effect {
			if !slices.Contains(*to, e) {
				*to = append(*to, e)
			}
		}
	}
	if n := len(questions); n > 0 {
		line := questionsOpen(int64(n))
		if len(open) > 0 {
			line += ", on " + effectWords(open)
		}
		lines = append(lines, line)
	}
	if r.SetAside > 0 {
		line := sentence.Count(r.SetAside, "cell or row", "cells or rows") + " set aside"
		if len(aside) > 0 {
			line += ", which may change " + effectWords(aside)
		}
		lines = append(lines, line)
	}
	return lines
}
