package main

import (
	"context"
	"fmt"
	"io"
	"slices"
	"strings"

	"wakeledger/pipeline"
	"wakeledger/queries"
)

// tellNames says, in a line for each log of a run, which names of its fish an ocean
// would settle. The season's tables must be made.
func tellNames(ctx context.Context, s *pipeline.Season, reports []pipeline.LogReport, w io.Writer) error {
	all, err := queries.AskUnsettled(ctx, s.DB)
	if err != nil {
		return err
	}
	for _, r := range reports {
		var names []string
		fish := int64(0)
		for _, u := range all {
			if u.File != r.Label || !s.NeedsOcean(u.Name) {
				continue
			}
			fish += u.Fish
			if name := strings.ToLower(u.Name); !slices.Contains(names, name) {
				names = append(names, name)
			}
		}
		if fish > 0 {
			fmt.Fprintf(w, "%s: %s may be several species: %s. Say which ocean, such as --ocean pacific\n",
				r.Label, strings.Join(names, ", "), fishText(fish))
		}
	}
	return nil
}

func fishText(n int64) string {
	if n == 1 {
		return "1 fish keeps the name as logged"
	}
	return fmt.Sprintf("%d fish keep the name as logged", n)
}
