package main

import (
	"context"
	"errors"
	"fmt"
	"io"
	"slices"
	"strings"

	"wakeledger/pipeline"
	"wakeledger/queries"
)

// errOpen tells of open questions on which effort or strikes rest. They are printed where
// it is returned.
var errOpen = errors.New("questions are open")

// mostShown questions are printed; the rest are counted.
const mostShown = 5

// openOf are the open questions of the logs with these numbers, each once; of all logs
// where none is given.
func openOf(ctx context.Context, s *pipeline.Season, logs []int64) ([]queries.Question, error) {
	all, err := queries.AskQuestions(ctx, s.DB)
	if err != nil {
		return nil, err
	}
	var out []queries.Question
	for _, q := range all {
		mine := logs == nil || slices.Contains(logs, q.Log)
		if mine && !slices.ContainsFunc(out, func(o queries.Question) bool { return o.ID == q.ID }) {
			out = append(out, q)
		}
	}
	slices.SortStableFunc(out, func(x, y queries.Question) int {
		switch {
		case x.Weighty() == y.Weighty():
			return 0
		case x.Weighty():
			return -1
		}
		return 1
	})
	return out, nil
}

// tellOpen prints what is open after the results. Its error is errOpen where effort or
// strikes rest on any of it.
func (a *app) tellOpen(ctx context.Context, s *pipeline.Season) error {
	open, err := openOf(ctx, s, nil)
	if err != nil || len(open) == 0 {
		return err
	}
	fmt.Fprintf(a.notes, "\n%s\n", questionsOpen(int64(len(open))))
	for _, q := range open[:min(len(open), mostShown)] {
		fmt.Fprintf(a.notes, "\n%s  %s", q.ID, q.File)
		writeQuestion(a.notes, q)
	}
	if more := len(open) - mostShown; more > 0 {
		fmt.Fprintf(a.notes, "\nand %d more: wakeledger ask questions\n", more)
	}
	fmt.Fprintf(a.notes, "\nTo answer, give the same command with %s\n", howToAnswer(open[0]))
	if slices.ContainsFunc(open, func(q queries.Question) bool { return q.Weighty() }) {
		return errOpen
	}
	return nil
}

func questionsOpen(n int64) string {
	if n == 1 {
		return "1 question is open"
	}
	return fmt.Sprintf("%d questions are open", n)
}

// writeQuestion writes a question, what it may be and what rests on it.
func writeQuestion(w io.Writer, q queries.Question) {
	fmt.Fprintf(w, "\n  %s\n", q.Text)
	switch {
	case asksFigure(q):
		fmt.Fprintf(w, "  the figure itself, or \"leave\": %s\n", q.Options[len(q.Options)-1])
	case len(q.Options) == 0:
		fmt.Fprintln(w, "  mend it in the log, or \"leave\": read the rest as it is")
	}
	for i, o := range q.Options {
		if !asksFigure(q) {
			fmt.Fprintf(w, "  %d  %s\n", i+1, o)
		}
	}
	if len(q.Effect) > 0 {
		fmt.Fprintf(w, "  moves: %s\n", effectWords(q.Effect))
	}
}

// asksFigure tells a question that is answered with a figure.
func asksFigure(q queries.Question) bool {
	return len(q.Options) > 0 && strings.HasPrefix(q.Options[0], "a usual ")
}

func howToAnswer(q queries.Question) string {
	switch {
	case asksFigure(q):
		return "--answer " + q.ID + "=6"
	case len(q.Options) == 0:
		return "--answer " + q.ID + "=leave"
	}
	return "--answer " + q.ID + "=1"
}

// outcome is the error that an exit code is made of, the weightiest first.
func outcome(errs ...error) error {
	for _, err := range errs {
		if err != nil && !errors.Is(err, errOpen) && !errors.Is(err, errWhichLog) {
			return err
		}
	}
	for _, err := range errs {
		if err != nil {
			return err
		}
	}
	return nil
}
