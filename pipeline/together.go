package pipeline

import (
	"context"
	"os"
	"path/filepath"
)

// Of many small logs, this many are stored in one transaction, and a log is small up to so
// many bytes. All of a group take a second or two.
const (
	groupOf  = 50
	smallLog = 64 << 10
)

// together loads small logs in groups, where there are many of them. A group of which any
// log fails is left to be loaded one by one, so that each fails for itself.
func (s *Season) together(ctx context.Context, paths []string) map[string]LogReport {
	ready := map[string]LogReport{}
	small := smallOnes(paths)
	for ; len(small) >= groupOf && ctx.Err() == nil; small = small[groupOf:] {
		group := map[string]LogReport{}
		err := s.DB.Together(ctx, func() error {
			for _, p := range small[:groupOf] {
				r, err := s.loadLog(ctx, p)
				if err != nil {
					return err
				}
				group[p] = r
			}
			return nil
		})
		if err != nil {
			continue
		}
		for p, r := range group {
			ready[p] = r
		}
	}
	return ready
}

// smallOnes are the small logs whose names are theirs alone in this run.
func smallOnes(paths []string) []string {
	names := map[string]int{}
	for _, p := range paths {
		names[filepath.Base(p)]++
	}
	var small []string
	for _, p := range paths {
		if st, err := os.Stat(p); err == nil && st.Mode().IsRegular() && st.Size() <= smallLog && names[filepath.Base(p)] == 1 {
			small = append(small, p)
		}
	}
	return small
}
