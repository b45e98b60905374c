package pipeline

import (
	"context"
	"crypto/sha256"
	"encoding/hex"
	"errors"
	"fmt"
	"io"
	"os"
	"path/filepath"

	"wakeledger/pipeline/batch"
	"wakeledger/pipeline/normalise"
	"wakeledger/pipeline/record"
	"wakeledger/pipeline/sheet"
	"wakeledger/pipeline/store"
)

// LogReport is what came of one log.
type LogReport struct {
	Name      string
	Unchanged bool  // the same bytes under the same settings: nothing to do
	Replaced  bool  // an earlier load of it was replaced
	Before    int64 // rows kept by the earlier load
	Kept      int64
	SetAside  int64
	Sheets    []SheetReport
}

// SheetReport is what came of one sheet.
type SheetReport struct {
	Name     string
	Kind     string // "" where the sheet was not understood
	Why      string
	Kept     int64
	SetAside int64 // cells for which rows were set aside
	Skipped  map[normalise.Skip]int64
	Unknown  []string // headings that were not understood; their cells are kept by name
	Notes    []string
}

// Load reads logs and stores them, each in a transaction of its own. A log that
// cannot be read at all leaves the season as it was before that log; the others
// are loaded, and the errors come back joined.
func (s *Season) Load(ctx context.Context, paths []string) ([]LogReport, error) {
	var reports []LogReport
	var errs []error
	seen := map[string]string{}
	for _, p := range paths {
		name := filepath.Base(p)
		if first, ok := seen[name]; ok && first != p {
			errs = append(errs, fmt.Errorf("%s: a log of this name is loaded already in this run (%s): rename one, or load each with its --boat", p, first))
			continue
		}
		seen[name] = p
		r, err := s.loadLog(ctx, p)
		if ctx.Err() != nil {
			return reports, ctx.Err()
		}
		if err != nil {
			errs = append(errs, err)
			continue
		}
		reports = append(reports, r)
	}
	return reports, errors.Join(errs...)
}

func (s *Season) loadLog(ctx context.Context, path string) (LogReport, error) {
	rep := LogReport{Name: filepath.Base(path)}
	sum, err := s.hash(path)
	if err != nil {
		return rep, err
	}
	l := store.Log{Name: rep.Name, Boat: s.cfg.Boat, SHA256: sum, Zone: s.cfg.Zone}
	known, err := s.DB.Find(ctx, l)
	if err != nil {
		return rep, err
	}
	if known.Found && known.SHA256 == sum {
		rep.Unchanged, rep.Kept = true, known.Rows
		return rep, nil
	}
	rep.Replaced, rep.Before = known.Found, known.Rows
	book, err := sheet.Open(path, sheet.Options{})
	if err != nil {
		return rep, err
	}
	defer book.Close()
	rep.Kept, err = s.DB.Replace(ctx, l, s.cfg.Now(), func(load *store.Load) error {
		if err := s.fill(ctx, load, book, &rep); err != nil {
			return err
		}
		again, err := s.hash(path)
		if err == nil && again != sum {
			err = fmt.Errorf("%s: the file changed while it was read: load it again", rep.Name)
		}
		return err
	})
	return rep, err
}

// hash is of the file's bytes and of the settings under which it is read.
func (s *Season) hash(path string) (string, error) {
	f, err := os.Open(path)
	if err != nil {
		return "", err
	}
	defer f.Close()
	h := sha256.New()
	if _, err := io.Copy(h, f); err != nil {
		return "", fmt.Errorf("read %s: %w", path, err)
	}
	s.cfg.fingerprint(h)
	return hex.EncodeToString(h.Sum(nil)), nil
}

// fill stores the sheets of a book.
func (s *Season) fill(ctx context.Context, load *store.Load, book sheet.Book, rep *LogReport) error {
	plans, ev, err := s.plan(book, rep.Name)
	if err != nil {
		return err
	}
	for _, p := range plans {
		rep.Sheets = append(rep.Sheets, p.report)
		r := &rep.Sheets[len(rep.Sheets)-1]
		if p.known {
			err = s.fillSheet(ctx, load, book, &p, ev, r)
		} else {
			err = setAside(ctx, load, p.unread())
		}
		if err != nil {
			return err
		}
		rep.SetAside += r.SetAside
	}
	return nil
}

func (s *Season) fillSheet(ctx context.Context, load *store.Load, book sheet.Book, p *plan, ev *normalise.Evidence, rep *SheetReport) error {
	rows, err := book.Rows(p.index)
	if err != nil {
		return err
	}
	defer rows.Close()
	reader, err := normalise.New(p.layout, p.info, p.pos, ev, s.settings())
	if err != nil {
		return err
	}
	src := &source{rows: rows, reader: reader, header: p.headerRow, skipped: map[normalise.Skip]int64{}}
	batches := batch.NewReader(ctx, src)
	rep.Kept, err = load.Insert(ctx, p.index, p.info.Name, string(p.layout.Kind), batches)
	batches.Release()
	if err != nil {
		return fmt.Errorf("%s: %w", p.pos, err)
	}
	rep.SetAside, rep.Skipped = int64(len(src.problems)), src.skipped
	return setAside(ctx, load, src.problems)
}

func setAside(ctx context.Context, load *store.Load, problems []record.Problem) error {
	if len(problems) == 0 {
		return nil
	}
	r := batch.NewReader(ctx, &problemSource{problems: problems})
	defer r.Release()
	return load.SetAside(ctx, r)
}
