package pipeline

import (
	"context"
	"errors"
	"fmt"
	"os"
)

// Of many small logs, so many are stored in one transaction, and a log is small up to so
// many bytes. All of a group take a second or two.
const (
	groupOf  = 50
	smallLog = 64 << 10
)

// errOutOfGroup takes back a group, of which one log must be loaded by itself.
var errOutOfGroup = errors.New("to be loaded by itself")

// outOfGroup is an error that takes back all of a group, where there is one.
func (s *Season) outOfGroup(err error) error {
	if !s.grouped {
		return err
	}
	return fmt.Errorf("%w: %w", errOutOfGroup, err)
}

// groups parts logs, which are indexes of paths, in their order: small ones that follow one
// another in groups of the same size, all others by themselves.
func (h *shelf) groups(paths []string, of []int) [][]int {
	var out [][]int
	var group []int
	single := func(of ...int) {
		for _, i := range of {
			out = append(out, []int{i})
		}
	}
	for _, i := range of {
		if st, err := os.Stat(paths[i]); err != nil || !st.Mode().IsRegular() || st.Size() > smallLog || h.isTrack(paths[i]) {
			single(append(group, i)...)
			group = nil
			continue
		}
		if group = append(group, i); len(group) == groupOf {
			out, group = append(out, group), nil
		}
	}
	single(group...)
	return out
}

// loadAll loads some of the logs.
func (s *Season) loadAll(ctx context.Context, paths []string, some []int, reports []LogReport, errs []error) error {
	for _, group := range s.shelf.groups(paths, some) {
		if len(group) > 1 {
			if done, err := s.together(ctx, paths, group, reports, errs); done || err != nil {
				continue
			}
		}
		for _, i := range group {
			reports[i], errs[i] = s.loadLog(ctx, paths[i], len(paths) == 1)
			if ctx.Err() != nil {
				return ctx.Err()
			}
		}
	}
	return ctx.Err()
}

// together loads a group of logs in one transaction, and reports whether it could: not
// where a log is asked about or fails on its way in.
func (s *Season) together(ctx context.Context, paths []string, group []int, reports []LogReport, errs []error) (bool, error) {
	s.grouped = true
	err := s.DB.Together(ctx, func() error {
		for _, i := range group {
			reports[i], errs[i] = s.loadLog(ctx, paths[i], false)
			if errors.Is(errs[i], errOutOfGroup) || ctx.Err() != nil {
				return errors.Join(errs[i], ctx.Err())
			}
		}
		return nil
	})
	s.grouped = false
	if err == nil || ctx.Err() != nil {
		return err == nil, ctx.Err()
	}
	// what the group has put there is not in the season
	s.shelf, err = s.openShelf(ctx)
	return false, err
}
