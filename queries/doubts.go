package queries

import (
	"context"

	"wakeledger/pipeline/store"
)

// Doubt is a row that is kept and counted, but may be wrong.
type Doubt struct {
	Check  string `json:"check"`
	File   string `json:"file"`
	Sheet  string `json:"sheet"`
	Row    int64  `json:"row"`
	Found  string `json:"found"`
	Reason string `json:"reason"`
}

// AskDoubts lists the rows that are kept with a warning.
func AskDoubts(ctx context.Context, db *store.DB) ([]Doubt, error) {
	return ask[Doubt](ctx, db, "doubts")
}
