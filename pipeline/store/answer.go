package store

import (
	"context"
	"fmt"
	"strings"
	"time"
)

// Question is something that only a log's owner can settle.
type Question struct {
	ID, Kind, Sheet, About, Text string
	Brief                        string // the text without cells, files and sheets
	Options, Effect              []string
}

// Questions keeps what is open of the log, in the order in which it is to be asked.
func (l *Load) Questions(ctx context.Context, all []Question) error {
	for i, q := range all {
		if err := l.db.exec(ctx, "insert_question", l.ID, i+1, q.ID, q.Kind, l.name, q.Sheet, q.About, q.Text, q.Brief,
			strings.Join(q.Options, listMark), strings.Join(q.Effect, listMark)); err != nil {
			return err
		}
	}
	return nil
}

const listMark = "\x1f"

// Answer is what a log's owner said to a question.
type Answer struct {
	ID, About string
	Choice    string // as reading takes it
	Said      string // as the owner reads it
	At        time.Time
}

// Answers are those kept, the oldest first.
func (db *DB) Answers(ctx context.Context) ([]Answer, error) {
	rows, err := db.Query(ctx, statement("answers"))
	if err != nil {
		return nil, fmt.Errorf("answers: %w", err)
	}
	var all []Answer
	err = each(rows, func() error {
		var a Answer
		err := rows.Scan(&a.ID, &a.About, &a.Choice, &a.Said, &a.At)
		all = append(all, a)
		return err
	})
	return all, err
}

// PutAnswers keeps answers, in place of earlier ones to the same questions.
func (db *DB) PutAnswers(ctx context.Context, all []Answer) error {
	return db.transaction(ctx, func() error {
		for _, a := range all {
			if err := db.exec(ctx, "drop_answer", a.ID); err != nil {
				return err
			}
			if err := db.exec(ctx, "put_answer", a.ID, a.About, a.Choice, a.Said, a.At.UTC()); err != nil {
				return err
			}
		}
		return nil
	})
}

// TakeBack removes the answer to a question.
func (db *DB) TakeBack(ctx context.Context, id string) error { return db.exec(ctx, "drop_answer", id) }

// AnswersChanged tells whether a log would be read otherwise for what was answered or
// taken back since it was read.
func (db *DB) AnswersChanged(ctx context.Context, logID int64) (changed bool, err error) {
	err = db.conn.QueryRowContext(ctx, statement("answers_changed"), logID).Scan(&changed)
	return changed, err
}

// ReadWith keeps the answers that the log was read with, by question.
func (l *Load) ReadWith(ctx context.Context, choices map[string]string) error {
	for id, choice := range choices {
		if err := l.db.exec(ctx, "insert_log_answer", l.ID, id, choice); err != nil {
			return err
		}
	}
	return nil
}
