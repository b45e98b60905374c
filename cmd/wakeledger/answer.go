package main

import (
	"context"
	"errors"
	"fmt"
	"slices"
	"strings"

	"github.com/spf13/cobra"

	"wakeledger/pipeline"
	"wakeledger/pipeline/store"
)

// said is what the flags --answer say, by the id of the question.
func (a *app) said() (map[string]string, error) {
	said := map[string]string{}
	for _, s := range a.answers {
		id, choice, ok := strings.Cut(s, "=")
		id, choice = strings.TrimSpace(id), strings.TrimSpace(choice)
		if !ok || id == "" || choice == "" {
			return nil, usage("--answer %q: expected the question's id and the choice, such as q1a2b3c=1", s)
		}
		if _, twice := said[id]; twice {
			return nil, usage("--answer: %s is answered twice", id)
		}
		said[id] = choice
	}
	return said, nil
}

// answer keeps what was said in a season.
func answer(ctx context.Context, s *pipeline.Season, logs []string, said map[string]string) error {
	err := s.Answer(ctx, logs, said)
	if errors.Is(err, pipeline.ErrAnswer) {
		return usage("%s", strings.TrimPrefix(err.Error(), pipeline.ErrAnswer.Error()+": "))
	}
	return err
}

// given are the answers of the season file and of the flags. They are looked at in memory
// first, so that a slip of the pen changes no season file and makes none.
func (a *app) given(ctx context.Context, cfg pipeline.Config, logs []string) (all []store.Answer, err error) {
	said, err := a.said()
	if err != nil || len(said) == 0 {
		return nil, err
	}
	cfg.Progress = nil
	s, err := a.rehearsal(ctx, cfg)
	if err != nil {
		return nil, err
	}
	defer func() { err = errors.Join(err, s.DB.Close()) }()
	if err := answer(ctx, s, logs, said); err != nil {
		return nil, err
	}
	return s.DB.Answers(ctx)
}

// rehearsal is a season in memory with the season file's answers.
func (a *app) rehearsal(ctx context.Context, cfg pipeline.Config) (*pipeline.Season, error) {
	kept, err := pipeline.AnswersOf(ctx, a.db)
	if err != nil {
		a.note("the answers kept in %s are not taken: %v", a.db, err)
	}
	s, err := pipeline.Open(ctx, "", cfg)
	if err != nil {
		return nil, err
	}
	if err := s.DB.PutAnswers(ctx, kept); err != nil {
		return nil, errors.Join(err, s.DB.Close())
	}
	return s, nil
}

// tellUnkept says how to keep what was answered on a terminal: check stores nothing.
func (a *app) tellUnkept(ctx context.Context, s *pipeline.Season, said map[string]string) error {
	kept, err := pipeline.AnswersOf(ctx, a.db)
	if err != nil {
		kept = nil // said already
	}
	all, err := s.DB.Answers(ctx)
	if err != nil {
		return err
	}
	flags := ""
	for _, x := range all {
		_, flag := said[x.ID]
		if !flag && !slices.ContainsFunc(kept, func(k store.Answer) bool {
			return k.ID == x.ID && k.Choice == x.Choice
		}) {
			flags += fmt.Sprintf(" --answer %s=%q", x.ID, x.Said)
		}
	}
	if flags != "" {
		a.note("\nto keep these answers, load with%s", flags)
	}
	return nil
}

// answerRow is one kept answer as it is listed.
type answerRow struct {
	ID     string `json:"id"`
	About  string `json:"about"`
	Choice string `json:"choice"`
	When   string `json:"when"`
}

func (a *app) answersCmd() *cobra.Command {
	var format string
	c := &cobra.Command{
		Use:     "answers",
		Short:   "What you answered to questions about your logs",
		Example: "  wakeledger answers\n  wakeledger answers take-back q1a2b3c",
		Args:    takesNothing,
		RunE: func(c *cobra.Command, _ []string) (err error) {
			if err := oneWord("format", format, "table", "csv", "json"); err != nil {
				return err
			}
			s, err := a.openRead(c.Context(), a.db)
			if err != nil {
				return err
			}
			defer func() { err = errors.Join(err, s.DB.Close()) }()
			all, err := s.DB.Answers(c.Context())
			if err != nil {
				return err
			}
			rows := []answerRow{}
			for _, x := range all {
				rows = append(rows, answerRow{x.ID, x.About, x.Said, x.At.UTC().Format("2006-01-02 15:04")})
			}
			return a.writeAs(format, rows)
		},
	}
	c.Flags().StringVar(&format, "format", "table", "`one` of table, csv, json")
	c.AddCommand(a.takeBackCmd())
	return c
}

func (a *app) takeBackCmd() *cobra.Command {
	return &cobra.Command{
		Use:     "take-back ID...",
		Short:   "Take answers back: the questions are open again at the next load",
		Example: "  wakeledger answers take-back q1a2b3c",
		Args:    cobra.ArbitraryArgs,
		RunE: func(c *cobra.Command, ids []string) (err error) {
			if len(ids) == 0 {
				return usage("take back what? Name the ids that 'wakeledger answers' lists")
			}
			s, err := a.openExisting(c.Context())
			if err != nil {
				return err
			}
			defer func() { err = errors.Join(err, s.DB.Close()) }()
			for _, id := range ids {
				was, err := s.TakeBack(c.Context(), id)
				if err != nil {
					return err
				}
				if !was {
					return usage("no answer to %s is kept: 'wakeledger answers' lists them", id)
				}
				fmt.Fprintf(a.out, "%s: taken back; load its log again\n", id)
			}
			return nil
		},
	}
}
