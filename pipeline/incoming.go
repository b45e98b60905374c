package pipeline

import (
	"fmt"
	"os"
	"path/filepath"

	"wakeledger/pipeline/infile"
	"wakeledger/pipeline/store"
)

// incoming is a file on its way to be a log of the season.
type incoming struct {
	path    string
	log     store.Log
	track   bool
	alone   bool // the only log that is loaded
	sum     func() (string, error)
	ahead   func() (*filling, error) // waits for its being understood, which began early; nil: it did not
	stat    os.FileInfo
	given   manner
	shelf   *shelf
	same    int64            // the log of the season with the same bytes; 0: none
	drop    []int64          // logs with the same bytes that were
	forced  []int64          // those whose place it takes by its owner's word
	prints  map[uint64]int64 // what its rows say but for their day; nil: not asked for
	undated *store.Undated   // what it is found by where rows name no day; nil: not asked for
	better  []way            // ways that may show more than the one at hand
}

func (s *Season) incoming(path string, alone bool) (*incoming, error) {
	if err := infile.Check(path); err != nil {
		return nil, err
	}
	stat, err := os.Stat(path)
	if err != nil {
		return nil, err
	}
	in := &incoming{path: path, track: s.shelf.isTrack(path), alone: alone, stat: stat, sum: startHash(path)}
	in.log = store.Log{Name: filepath.Base(path), ChangedAt: stat.ModTime(), Large: stat.Size() > smallLog}
	if abs, err := filepath.Abs(path); err == nil {
		in.log.Folder = filepath.Base(filepath.Dir(abs))
	}
	in.given, in.shelf = s.cfg.manner(in.log.Name, in.track), s.shelf
	in.given.Beside = s.shelf.beside[path]
	in.given.BesideSums = sumsOf(filepath.Dir(path), in.given.Beside)
	return in, nil
}

// force takes the owner's word for the logs whose place this one takes. known is the log
// of the season with the same bytes, 0 where there is none: what it has replaced already
// is done.
func (in *incoming) force(names []string, known int64) error {
	for _, name := range names {
		l, err := FindLog(in.shelf.all, name)
		if err != nil {
			return err
		}
		switch {
		case l.State == store.In && l.ID != known:
			in.forced = append(in.forced, l.ID)
		case known == 0 || in.shelf.successor(l.ID).ID != known:
			return fmt.Errorf("%w: log %d, %s, is not in the season: it was %s", ErrNoLog, l.ID, l.Label, l.State)
		}
	}
	return nil
}

func (in *incoming) sameFile(l *store.Log) bool {
	return l.Name == in.log.Name && l.Folder == in.log.Folder
}
