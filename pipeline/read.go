package pipeline

import (
	"context"
	"errors"
	"fmt"
	"os"

	"wakeledger/pipeline/store"
)

// OpenRead opens the season file at path to be asked, its tables up to date. The season
// file is not changed: where it is of an earlier version, or the configuration asks for
// other settings than it keeps, a copy is made, asked and taken away at Close. Only the
// last step of a load that left its tables to the first question is done in the season
// file itself, where it can be written. exports: see store.OpenRead.
func OpenRead(ctx context.Context, path string, cfg Config, exports bool) (*Season, error) {
	s, err := newSeason(cfg)
	if err != nil {
		return nil, err
	}
	s.DB, err = store.OpenRead(ctx, path, exports)
	if err != nil {
		return nil, err
	}
	stale, other, err := s.behind(ctx)
	if err != nil {
		return nil, errors.Join(err, s.DB.Close())
	}
	switch {
	case !stale && !other:
		err = s.recall(ctx)
	case stale && !other && s.finish(ctx, path, cfg) == nil:
		if s.DB, err = store.OpenRead(ctx, path, exports); err != nil {
			return nil, err
		}
		err = s.recall(ctx)
	default:
		return s.aside(ctx, path, cfg, exports)
	}
	if err != nil {
		return nil, errors.Join(err, s.DB.Close())
	}
	return s, nil
}

// behind tells whether the tables wait to be made, and whether others are needed than the
// season file is to have.
func (s *Season) behind(ctx context.Context) (stale, other bool, err error) {
	if s.DB.Behind() {
		return false, true, nil
	}
	if stale, err = s.DB.Stale(ctx); err != nil {
		return false, false, err
	}
	if _, other, err = s.derivation(ctx); err != nil || !other {
		return stale, false, err
	}
	// a season file whose tables were never made keeps no settings yet
	made, err := s.DB.Setting(ctx, "trip_gap_s")
	asked := s.cfg.Edges != nil || s.cfg.TripGap > 0 || s.cfg.Ocean != ""
	return stale || made == "", asked, err
}

// finish makes the tables in the season file, which is closed meanwhile. Its error says only
// that this could not be.
func (s *Season) finish(ctx context.Context, path string, cfg Config) error {
	if f, err := os.OpenFile(path, os.O_RDWR, 0); err != nil {
		return err
	} else if err := f.Close(); err != nil {
		return err
	}
	if err := s.DB.Close(); err != nil {
		return err
	}
	w, err := Open(ctx, path, cfg)
	if err != nil {
		// back to where it was, for a copy to be made
		var again error
		s.DB, again = store.OpenRead(ctx, path, false)
		return errors.Join(err, again)
	}
	return errors.Join(w.Derive(ctx), w.DB.Close())
}

// aside asks a copy of the season file, made for this user alone.
func (s *Season) aside(ctx context.Context, path string, cfg Config, exports bool) (_ *Season, err error) {
	dir, err := os.MkdirTemp("", "wakeledger-*")
	if err != nil {
		return nil, errors.Join(err, s.DB.Close())
	}
	defer func() {
		if err != nil {
			err = errors.Join(err, os.RemoveAll(dir))
		}
	}()
	file, err := s.DB.CopyTo(dir)
	if err = errors.Join(err, s.DB.Close()); err != nil {
		return nil, err
	}
	w, err := Open(ctx, file, cfg)
	if err != nil {
		return nil, fmt.Errorf("a copy of %s: %w", path, err)
	}
	if err = errors.Join(w.Derive(ctx), w.DB.Close()); err != nil {
		return nil, err
	}
	if s.DB, err = store.OpenRead(ctx, file, exports); err != nil {
		return nil, err
	}
	s.DB.AtClose(func() error { return os.RemoveAll(dir) })
	return s, s.recall(ctx)
}
