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
	"runtime/debug"
	"sync"

	"github.com/apache/arrow-go/v18/arrow/array"

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
	before, err := os.Stat(path)
	if err != nil {
		return rep, err
	}
	sum := s.startHash(path)
	l := store.Log{Name: rep.Name, Boat: s.cfg.Boat, Zone: s.cfg.Zone}
	known, err := s.DB.Find(ctx, l)
	if err != nil {
		return rep, err
	}
	if known.Found {
		if l.SHA256, err = sum(); err != nil {
			return rep, err
		}
		if known.SHA256 == l.SHA256 {
			rep.Unchanged, rep.Kept = true, known.Rows
			return rep, nil
		}
	}
	rep.Replaced, rep.Before = known.Found, known.Rows
	fill, closeLog, err := s.filler(ctx, path, &rep)
	if err != nil {
		return rep, err
	}
	defer closeLog()
	rep.Kept, err = s.DB.Replace(ctx, &l, s.cfg.Now(), func(load *store.Load) error {
		if err := fill(load); err != nil {
			return err
		}
		if l.SHA256, err = sum(); err != nil {
			return err
		}
		return unchanged(path, before)
	})
	return rep, err
}

// filler opens a log and gives what stores it: its sheets, or its tracks.
func (s *Season) filler(ctx context.Context, path string, rep *LogReport) (fill func(*store.Load) error, closeLog func(), err error) {
	if IsTrack(path) {
		return func(load *store.Load) error { return s.fillTracks(ctx, load, path, rep) }, func() {}, nil
	}
	book, err := sheet.Open(path, sheet.Options{})
	if err != nil {
		return nil, nil, err
	}
	return func(load *store.Load) error { return s.fill(ctx, load, path, book, rep) }, func() { book.Close() }, nil
}

// unchanged fails where a file is no longer the one that it was.
func unchanged(path string, before os.FileInfo) error {
	now, err := os.Stat(path)
	if err != nil {
		return err
	}
	if now.Size() != before.Size() || !now.ModTime().Equal(before.ModTime()) {
		return fmt.Errorf("%s: the file changed while it was read: load it again", filepath.Base(path))
	}
	return nil
}

// startHash takes the hash beside whatever else is done; the function that it
// returns waits for it.
func (s *Season) startHash(path string) func() (string, error) {
	return sync.OnceValues(func() func() (string, error) {
		type result struct {
			sum string
			err error
		}
		done := make(chan result, 1)
		go func() {
			sum, err := s.hash(path)
			done <- result{sum, err}
		}()
		return func() (string, error) { r := <-done; return r.sum, r.err }
	}())
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
	s.cfg.fingerprint(h, IsTrack(path))
	s.cfg.Mapping.fingerprint(h, filepath.Base(path))
	return hex.EncodeToString(h.Sum(nil)), nil
}

// filling is one log on its way in.
type filling struct {
	load     *store.Load
	book     sheet.Book
	evidence *normalise.Evidence
	settings normalise.Settings
	progress *progress
}

// fill stores the sheets of a book.
func (s *Season) fill(ctx context.Context, load *store.Load, path string, book sheet.Book, rep *LogReport) error {
	plans, ev, err := s.plan(book, path)
	if err != nil {
		return err
	}
	f := &filling{load: load, book: book, evidence: ev, settings: s.settings(), progress: s.newProgress(rep.Name)}
	for i := range plans {
		reports, err := f.sheet(ctx, s, &plans[i])
		if err != nil {
			return err
		}
		for _, r := range reports {
			rep.Sheets = append(rep.Sheets, r)
			rep.SetAside += r.SetAside
		}
	}
	f.progress.end()
	return nil
}

// sheet stores the tables of one sheet, and reports on each.
func (f *filling) sheet(ctx context.Context, s *Season, p *plan) ([]SheetReport, error) {
	if !p.known {
		err := f.unread(ctx, p)
		return []SheetReport{p.report}, err
	}
	rows, err := f.book.Rows(p.index)
	if err != nil {
		return nil, err
	}
	tables := normalise.NewTables(readAhead(rows), s.columns, p.layout, p.pos, p.headerRow+1)
	defer tables.Close()
	if !p.info.Workbook {
		// Text comes so fast that collecting its few megabytes of garbage at the
		// usual rate would take a twelfth of the time.
		defer debug.SetGCPercent(debug.SetGCPercent(400))
	}
	var reports []SheetReport
	for {
		if err := f.table(ctx, p, tables); err != nil {
			return nil, err
		}
		reports = append(reports, p.report)
		l, looked, ok := tables.Below()
		if !ok {
			return reports, nil
		}
		q, err := p.below(s, l, looked, tables.HeadRow)
		if err != nil {
			return nil, fmt.Errorf("%s: mapping: %w", p.pos, err)
		}
		f.evidence.First(s.columns, q.layout, p.pos, looked)
		p = &q
	}
}

// table stores one table of a sheet.
func (f *filling) table(ctx context.Context, p *plan, tables *normalise.Tables) error {
	reader, err := normalise.New(p.layout, p.info, p.pos, f.evidence, f.settings)
	if err != nil {
		return err
	}
	src := &source{rows: tables, reader: reader, skipped: map[normalise.Skip]int64{}, progress: f.progress}
	defer src.problems.close()
	defer src.doubts.close()
	batches := batch.NewReader(ctx, src)
	to := store.Sheet{No: p.index, Name: p.info.Name, Kind: string(p.layout.Kind), Slow: p.info.Workbook}
	p.report.Kept, err = f.load.Insert(ctx, to, batches)
	batches.Release()
	if err != nil {
		return fmt.Errorf("%s: %w", p.pos, err)
	}
	p.report.SetAside, p.report.Skipped = src.problems.n, src.skipped
	if err := f.found(ctx, &src.doubts, f.load.Doubt); err != nil {
		return err
	}
	return f.setAside(ctx, &src.problems)
}

// unread keeps a sheet that was not understood: as a problem, unless it is prose.
func (f *filling) unread(ctx context.Context, p *plan) error {
	if p.prose {
		p.report.Notes = append(p.report.Notes, "holds words alone, no table: not read")
		return nil
	}
	var problems spool
	defer problems.close()
	reason := "the sheet was not understood: none of its first rows has two headings that are known, such as date, start, end, speed or species"
	if p.layout.Refused != "" {
		reason = "the sheet was not read: " + p.layout.Refused
	}
	err := problems.add(record.Problem{Pos: p.pos, Reason: reason})
	if err != nil {
		return err
	}
	p.report.SetAside = problems.n
	return f.setAside(ctx, &problems)
}

func (f *filling) setAside(ctx context.Context, problems *spool) error {
	return f.found(ctx, problems, f.load.SetAside)
}

// found stores what was found wrong or doubtful in a table's rows.
func (f *filling) found(ctx context.Context, problems *spool, store func(context.Context, array.RecordReader) error) error {
	if problems.n == 0 {
		return nil
	}
	if err := problems.rewind(); err != nil {
		return err
	}
	r := batch.NewReader(ctx, &problemSource{problems: problems})
	defer r.Release()
	return store(ctx, r)
}
