package queries

import (
	"context"
	"fmt"
	"strings"

	"wakeledger/pipeline/store"
)

// Question is something that only the log's owner can settle.
type Question struct {
	ID      string `json:"id"`
	File    string `json:"file"`
	Sheet   string `json:"sheet"`
	About   string `json:"about"` // the heading, or the rows
	Text    string `json:"text"`
	Options List   `json:"options"` // what it may be
	// Effect is the totals that rest on it: trips, boat_hours, line_hours, strikes,
	// hooked, landed, released, bands, fish.
	Effect List `json:"effect"`
}

// List is several texts in one column.
type List []string

const listMark = "\x1f" // parts a list's texts where the database hands it over

// Scan reads a list as the database hands it over.
func (l *List) Scan(v any) error {
	s, ok := v.(string)
	if !ok {
		return fmt.Errorf("a list of texts was expected, not %T", v)
	}
	*l = List{}
	if s != "" {
		*l = strings.Split(s, listMark)
	}
	return nil
}

// String is the texts with semicolons between them.
func (l List) String() string { return strings.Join(l, "; ") }

// AskQuestions returns the open questions, those that move the totals most first.
func AskQuestions(ctx context.Context, db *store.DB) ([]Question, error) {
	return ask[Question](ctx, db, "questions")
}
