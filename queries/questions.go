package queries

import (
	"context"
	"fmt"
	"slices"
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
	Effect List   `json:"effect"`
	Kind   string `json:"kind"` // what is asked: column, no lines, aside, ...
	Log    int64  `json:"log"`  // its number
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

// effectNames are totals as a captain says them, where their names are not that.
var effectNames = map[string]string{"boat_hours": "boat-hours", "line_hours": "line-hours",
	"hooked": "hook-ups", "bands": "speed bands"}

// EffectWords are the totals of an effect in words.
func EffectWords(effect []string) string {
	var words []string
	for _, e := range effect {
		if w, ok := effectNames[e]; ok {
			e = w
		}
		words = append(words, e)
	}
	return strings.Join(words, ", ")
}

// Weighty tells a question on which effort or strikes rest, or the year that all of them are of.
func (q *Question) Weighty() bool {
	return q.Kind == "no year" ||
		slices.ContainsFunc(q.Effect, func(e string) bool { return slices.Contains(weighty, e) })
}

var weighty = []string{"line_hours", "boat_hours", "strikes", "bands"}

// Open is how many questions on effort or strikes, or on the year, are open.
type Open struct {
	Questions int64  `json:"questions"`
	Brief     string `json:"brief"` // the first of them, without cells, files and sheets
}

// AskOpen counts the open questions on which effort or strikes rest.
func AskOpen(ctx context.Context, db *store.DB) (Open, error) {
	rows, err := ask[Open](ctx, db, "open")
	if err != nil || len(rows) == 0 {
		return Open{}, err
	}
	return rows[0], nil
}

// AskLogRead returns what was read of each log, by its number.
func AskLogRead(ctx context.Context, db *store.DB) ([]LogRead, error) {
	return ask[LogRead](ctx, db, "log_read")
}

// LogRead is what the season has of one log.
type LogRead struct {
	Log       int64   `json:"log"` // its number
	File      string  `json:"file"`
	Boat      string  `json:"boat"` // that the user named for it; "" where the log names its own
	Trips     int64   `json:"trips"`
	First     *string `json:"first"` // days
	Last      *string `json:"last"`
	BoatHours float64 `json:"boat_hours"`
	LineHours float64 `json:"line_hours"`
	NoLines   float64 `json:"no_lines_hours"`      // of BoatHours, those whose lines are not logged
	Untimed   int64   `json:"trips_without_hours"` // of Trips, those with no hours in any log
	Strikes   int64   `json:"strikes"`
	Missed    int64   `json:"missed"`
	Lost      int64   `json:"lost"`
	Landed    int64   `json:"landed"`
	Released  int64   `json:"released"`
	NotLogged int64   `json:"not_logged"` // of Strikes, those of which nobody wrote down what became
	Taped     int64   `json:"taped"`
	Weighed   int64   `json:"weighed"`
}
