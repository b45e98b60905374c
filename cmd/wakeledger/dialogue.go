package main

import (
	"context"
	"errors"
	"fmt"
	"io"
	"os"
	"slices"

	"golang.org/x/term"

	"wakeledger/pipeline"
	"wakeledger/pipeline/store"
	"wakeledger/queries"
)

// dialogue asks on a terminal; nil where there is none.
type dialogue struct {
	in    *os.File
	notes *os.File
	say   io.Writer // the same, for text of logs
	line  *term.Terminal
}

func (a *app) dialogue() *dialogue {
	f, ok := a.screen.(*os.File)
	if !ok || !term.IsTerminal(int(f.Fd())) || !term.IsTerminal(int(os.Stdin.Fd())) {
		return nil
	}
	both := struct {
		io.Reader
		io.Writer
	}{os.Stdin, f}
	return &dialogue{os.Stdin, f, a.notes, term.NewTerminal(both, "answer, or Enter to leave it open: ")}
}

// read is one line, edited. io.EOF is the end of all asking.
func (d *dialogue) read() (line string, err error) {
	was, err := term.MakeRaw(int(d.in.Fd()))
	if err != nil {
		return "", err
	}
	defer func() { err = errors.Join(err, term.Restore(int(d.in.Fd()), was)) }()
	if w, h, e := term.GetSize(int(d.notes.Fd())); e == nil && w > 0 {
		_ = d.line.SetSize(w, h) // one that will not be told its size still reads lines
	}
	return d.line.ReadLine()
}

// settle asks which logs the files are where that is open, then what the logs leave open,
// one question after another, and loads again what was answered. What an answer opens is asked too.
func (a *app) settle(ctx context.Context, s *pipeline.Season, logs []string,
	reports []pipeline.LogReport) ([]pipeline.LogReport, error) {
	d := a.dialogue()
	if d == nil {
		return reports, nil
	}
	if stop, err := a.settleWhich(ctx, d, s, reports); stop || err != nil {
		return reports, err
	}
	passed := map[string]bool{}
	for {
		open, err := openOf(ctx, s, numbers(reports))
		if err != nil {
			return reports, err
		}
		open = slices.DeleteFunc(open, func(q queries.Question) bool { return passed[q.ID] })
		answered, stop, err := d.all(ctx, s, reports, open, passed)
		if err != nil {
			return reports, err
		}
		if answered {
			again, err := s.Load(ctx, logs)
			if err != nil {
				return reports, err
			}
			reports = merged(reports, again)
		}
		if stop || !answered {
			return reports, nil
		}
	}
}

// all asks questions until the last, or until the user has enough.
func (d *dialogue) all(ctx context.Context, s *pipeline.Season, logs []pipeline.LogReport, open []queries.Question,
	passed map[string]bool) (answered, stop bool, err error) {
	for i, q := range open {
		passed[q.ID] = true
		fmt.Fprintf(d.say, "\nquestion %d of %d, %s", i+1, len(open), q.File)
		writeQuestion(d.say, q)
		ok, err := d.one(ctx, s, logs, q)
		answered = answered || ok
		if errors.Is(err, io.EOF) {
			return answered, true, nil
		}
		if err != nil {
			return answered, true, err
		}
	}
	return answered, false, nil
}

// one asks until an answer fits, or is left open.
func (d *dialogue) one(ctx context.Context, s *pipeline.Season, logs []pipeline.LogReport,
	q queries.Question) (bool, error) {
	var of []string
	for _, r := range logs {
		if r.ID == q.Log {
			of = append(of, r.Path)
		}
	}
	for {
		text, err := d.read()
		if err != nil || text == "" {
			return false, err
		}
		err = s.Answer(ctx, of, map[string]string{q.ID: text})
		if err == nil {
			return true, nil
		}
		if !errors.Is(err, pipeline.ErrAnswer) {
			return false, err
		}
		fmt.Fprintln(d.say, store.InWords(err))
	}
}

// numbers are those of the logs of a run that are in the season file.
func numbers(reports []pipeline.LogReport) []int64 {
	ids := []int64{}
	for _, r := range reports {
		if r.ID != 0 {
			ids = append(ids, r.ID)
		}
	}
	return ids
}

// merged has the reports of what was read again in place of the first ones.
func merged(reports, again []pipeline.LogReport) []pipeline.LogReport {
	for _, r := range again {
		if i := slices.IndexFunc(reports, func(o pipeline.LogReport) bool { return o.Path == r.Path }); i >= 0 &&
			r.Known != pipeline.Unchanged {
			reports[i] = r
		}
	}
	return reports
}
