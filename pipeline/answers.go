package pipeline

import (
	"context"
	"errors"
	"fmt"
	"maps"
	"os"
	"slices"
	"strings"

	"wakeledger/pipeline/meaning"
	"wakeledger/pipeline/plan"
	"wakeledger/pipeline/proof"
	"wakeledger/pipeline/store"
)

// ErrAnswer is wrapped where an answer fits no question that the logs leave open.
var ErrAnswer = errors.New("an answer does not fit")

// answers are those kept, on their way into one log.
type answers struct {
	kept map[string]store.Answer
	used map[string]string // choices, by question
}

func newAnswers(kept map[string]store.Answer) *answers {
	return &answers{kept, map[string]string{}}
}

// take is the choice kept for a question; first tells that it was not taken before.
func (a *answers) take(id string) (choice string, ok, first bool) {
	k, ok := a.kept[id]
	_, before := a.used[id]
	if ok {
		a.used[id] = k.Choice
	}
	return k.Choice, ok, ok && !before
}

// beside has what was answered of headings said beside what a mapping says.
func (a *answers) beside(said func(string, int) meaning.Said) func(string, int) meaning.Said {
	if len(a.kept) == 0 {
		return said
	}
	return func(sheet string, row int) meaning.Said {
		s := said(sheet, row)
		s.Answers = func(heading string, nth int, labels []string) (string, bool) {
			choice, ok, _ := a.take(proof.ColumnID(heading, nth, labels))
			return choice, ok
		}
		return s
	}
}

// open are the questions that no kept answer settles.
func (a *answers) open(all []proof.Question) []proof.Question {
	return slices.DeleteFunc(all, func(q proof.Question) bool {
		choice, ok, _ := a.take(q.ID)
		return ok && q.Settles(choice)
	})
}

// answer puts kept answers into the plan, before rows are stored, and what is presumed until
// it is answered. Some questions come of
// the rows, and some of the answers to others: it reads until nothing new is answered.
func (f *filling) answer() ([]proof.Question, error) {
	for {
		subjects, err := f.rehearse()
		if err != nil {
			return nil, err
		}
		if proof.Restated(subjects) || proof.Twice(subjects) || proof.Otherwise(subjects) ||
			proof.OfUntrolled(subjects) {
			continue // to read them as they are now to be read
		}
		proof.Among(subjects)
		all := proof.Questions(f.log, subjects)
		again := false
		for i := range all {
			q := &all[i]
			switch choice, kept, first := f.answers.take(q.ID); {
			case first:
				proof.Settle(f.log, q, choice)
				again = true
			case !kept && q.Presumes() && !slices.ContainsFunc(f.presumed,
				func(p proof.Question) bool { return p.ID == q.ID }):
				proof.Settle(f.log, q, q.Choices[0])
				f.presumed = append(f.presumed, *q)
				again = true
			}
		}
		if !again {
			return f.answers.open(append(slices.Clone(f.presumed), all...)), nil
		}
	}
}

// rehearse reads the rows that were looked at without keeping them.
func (f *filling) rehearse() ([]proof.Subject, error) {
	var subjects []proof.Subject
	f.told = nil
	for i, b := range slices.Concat(f.blocks, f.others) {
		if b.Plan.Kind == "" || b.Proof || b.Block.Open {
			continue
		}
		rows, err := f.rows(b)
		if err != nil {
			return nil, err
		}
		src, err := f.source(b, rows)
		if err != nil {
			return nil, err
		}
		for more := true; more && err == nil; {
			_, more, err = src.Next()
		}
		src.problems.close()
		src.doubts.close()
		if err != nil {
			return nil, err
		}
		x := proof.Subject{Understood: b.Understood, Stats: src.stats, Beside: i >= len(f.blocks)}
		subjects = append(subjects, x)
		if x.Beside {
			f.told = append(f.told, x)
		}
	}
	return subjects, nil
}

// mostTried is how many rows a log may have to be read once more for what is presumed, and for
// each answer to be tried out on it.
const mostTried = 1000

// mostColumns is how many meanings of columns are tried out on a log: each reads it once more.
const mostColumns = 20

// outcomes works out what each answer to questions would make of the log's totals, and leaves
// out what is asked of columns that change none of them.
func (s *Season) outcomes(f *filling, path string, all []proof.Question) ([]proof.Question, error) {
	if !f.few() {
		return all, nil
	}
	var open []proof.Question
	tried := 0
	for _, q := range all {
		column := q.OfColumn() && tried+len(q.Choices) <= mostColumns
		if column {
			tried += len(q.Choices)
		}
		if !column && !q.Tries() {
			open = append(open, q)
			continue
		}
		var each []proof.Totals
		for _, choice := range q.Choices {
			var t proof.Totals
			var err error
			if column {
				t, err = s.tryColumn(f, path, q.ID, choice)
			} else {
				t, err = f.try(&q, choice)
			}
			if err != nil {
				return nil, err
			}
			each = append(each, t)
		}
		q.Totals = proof.Differences(each)
		q.RestsOn(each)
		if !column || slices.ContainsFunc(q.Totals, func(t string) bool { return t != "" }) {
			open = append(open, q)
		}
	}
	return open, nil
}

// tryColumn is what a log comes to where a column means what an answer says.
func (s *Season) tryColumn(f *filling, path, id, choice string) (proof.Totals, error) {
	kept := maps.Clone(f.answers.kept)
	if kept == nil {
		kept = map[string]store.Answer{}
	}
	kept[id] = store.Answer{ID: id, Choice: choice}
	u, err := s.understand(f.book, path, newAnswers(kept))
	if err != nil {
		return proof.Totals{}, err
	}
	with := &filling{understood: u, settings: f.settings, progress: &progress{}}
	if _, err := with.answer(); err != nil {
		return proof.Totals{}, err
	}
	subjects, err := with.rehearse()
	return proof.TotalsOf(subjects), err
}

// try is what the log comes to with an answer, which is taken back.
func (f *filling) try(q *proof.Question, choice string) (proof.Totals, error) {
	before := make([]plan.Block, len(f.blocks))
	for i, b := range f.blocks {
		before[i] = *b.Plan
		before[i].Bindings = slices.Clone(b.Plan.Bindings) // an answer may change them in place
	}
	proof.Settle(f.log, q, choice)
	subjects, err := f.rehearse()
	for i, b := range f.blocks {
		*b.Plan = before[i]
	}
	return proof.TotalsOf(subjects), err
}

// kept are the season file's answers, by question.
func (s *Season) kept(ctx context.Context) (map[string]store.Answer, error) {
	all, err := s.DB.Answers(ctx)
	kept := map[string]store.Answer{}
	for _, a := range all {
		kept[a.ID] = a
	}
	return kept, err
}

// inquire reads a log without storing it, and returns what it leaves open.
func (s *Season) inquire(path string, kept map[string]store.Answer) ([]proof.Question, error) {
	if IsTrack(path) {
		return s.trackQuestions(path, kept), nil
	}
	f, err := s.openLog(path, kept)
	if err != nil {
		return nil, err
	}
	defer f.close()
	return f.answer()
}

// Answer keeps what was said to questions of the logs, by id: the number or the text of an
// option, or the figure that is asked for. Nothing is kept where one does not fit: then
// the error wraps ErrAnswer. The logs are read anew when they are loaded next.
func (s *Season) Answer(ctx context.Context, paths []string, said map[string]string) error {
	kept, err := s.kept(ctx)
	if err != nil {
		return err
	}
	for id := range said {
		delete(kept, id)
	}
	var found []store.Answer
	beside := s.beside(paths, IsTrack)
	for left := len(said); left > 0; left = len(said) - len(found) {
		before := len(found)
		for _, p := range paths {
			if err := ctx.Err(); err != nil {
				return err
			}
			t := *s
			t.cfg.beside = beside[p]
			all, err := t.inquire(p, kept)
			if err != nil {
				continue // loading tells of it
			}
			for i := range all {
				q := &all[i]
				text, ok := said[q.ID]
				if _, done := kept[q.ID]; !ok || done {
					continue
				}
				a := store.Answer{ID: q.ID, About: about(q), At: s.cfg.Now()}
				if a.Choice, a.Said, err = q.Choose(text); err != nil {
					return fmt.Errorf("%w: %s=%s: %w", ErrAnswer, q.ID, text, err)
				}
				kept[q.ID], found = a, append(found, a)
			}
		}
		if len(found) == before {
			return fmt.Errorf("%w: %s is asked of none of these logs", ErrAnswer, unasked(said, kept))
		}
	}
	return s.DB.PutAnswers(ctx, found)
}

func about(q *proof.Question) string {
	if q.Sheet == "" || strings.Contains(q.About, q.Sheet) {
		return q.About
	}
	return q.Sheet + ": " + q.About
}

func unasked(said map[string]string, kept map[string]store.Answer) string {
	var ids []string
	for id := range said {
		if _, ok := kept[id]; !ok {
			ids = append(ids, id)
		}
	}
	slices.Sort(ids)
	return strings.Join(ids, ", ")
}

// TakeBack forgets the answer to a question, and tells whether there was one. The logs that
// were read with it are read again at the next load.
func (s *Season) TakeBack(ctx context.Context, id string) (bool, error) {
	kept, err := s.kept(ctx)
	if _, ok := kept[id]; !ok || err != nil {
		return false, err
	}
	return true, s.DB.TakeBack(ctx, id)
}

// AnswersOf are the answers kept in another season file; none where it is not there.
func AnswersOf(ctx context.Context, file string) (all []store.Answer, err error) {
	if _, err := os.Stat(file); err != nil {
		return nil, nil
	}
	db, err := store.OpenRead(ctx, file, false)
	if errors.Is(err, store.ErrEmpty) {
		return nil, nil
	}
	if err != nil {
		return nil, err
	}
	defer func() { err = errors.Join(err, db.Close()) }()
	return db.Answers(ctx)
}
