package pipeline

import (
	"context"
	"errors"
	"fmt"
	"os"
	"path/filepath"
	"runtime/debug"
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
		if st, err := os.Stat(paths[i]); err != nil || !st.Mode().IsRegular() ||
			st.Size() > smallLog || h.isTrack(paths[i]) {
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
func (s *Season) together(ctx context.Context, paths []string, group []int,
	reports []LogReport, errs []error) (bool, error) {
	// What a small log leaves behind is small: let some more of it lie before it is collected.
	defer debug.SetGCPercent(debug.SetGCPercent(400))
	s.grouped = true
	err := s.DB.Together(ctx, func() error {
		next := s.early(paths[group[0]])
		defer func() { next.close() }()
		for n, i := range group {
			now := next
			if next = nil; n+1 < len(group) {
				next = s.early(paths[group[n+1]])
			}
			reports[i], errs[i] = s.loadEarly(ctx, now)
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
	beside := s.shelf.beside
	if s.shelf, err = s.openShelf(ctx); err == nil {
		s.shelf.beside = beside
	}
	return false, err
}

// early is a log of a group that is understood while the one before it is stored.
type early struct {
	path string
	in   *incoming
	err  error
}

// early begins to understand a log, unless its bytes are known: then it need not be.
func (s *Season) early(path string) *early {
	in, err := s.incoming(path, false)
	if err != nil {
		return &early{path: path, err: err}
	}
	if sum, err := in.sum(); err != nil || len(in.shelf.known(sum)) > 0 {
		return &early{path: path, in: in}
	}
	t := *s
	t.cfg = s.cfg.under(in.given, in.log.Name)
	type result struct {
		log *filling
		err error
	}
	done := make(chan result, 1)
	go func() {
		f, err := t.toStore(path)
		done <- result{f, err}
	}()
	in.ahead = func() (*filling, error) { r := <-done; return r.log, r.err }
	return &early{path: path, in: in}
}

func (s *Season) loadEarly(ctx context.Context, e *early) (LogReport, error) {
	defer e.close()
	if e.err != nil {
		return LogReport{Path: e.path, Name: filepath.Base(e.path)}, e.err
	}
	return s.settle(ctx, e.in)
}

// close lets go of a log that was understood and is not to be stored.
func (e *early) close() {
	if e == nil || e.in == nil || e.in.ahead == nil {
		return
	}
	if f, err := e.in.ahead(); err == nil {
		f.close()
	}
	e.in.ahead = nil
}
