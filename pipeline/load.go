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
	"wakeledger/pipeline/infile"
	"wakeledger/pipeline/layout"
	"wakeledger/pipeline/normalise"
	"wakeledger/pipeline/plan"
	"wakeledger/pipeline/proof"
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
	Questions []proof.Question
	Tableless []string // sheets in which no table was found
	Agreed    []string // what of the log agrees with its own sums
}

// Load reads logs and stores them, each in a transaction of its own, tracks last:
// the legs may tell how their days are to be read. A log that cannot be read at all
// leaves the season as it was before that log; the others are loaded, and the errors
// come back joined.
func (s *Season) Load(ctx context.Context, paths []string) ([]LogReport, error) {
	var reports []LogReport
	var errs []error
	seen := map[string]string{}
	var err error
	if s.answers, err = s.kept(ctx); err != nil {
		return nil, err
	}
	ready := s.together(ctx, paths)
	for _, p := range tracksLast(paths) {
		if r, ok := ready[p]; ok {
			reports = append(reports, r)
			continue
		}
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

func tracksLast(paths []string) []string {
	var logs, tracks []string
	for _, p := range paths {
		if IsTrack(p) {
			tracks = append(tracks, p)
		} else {
			logs = append(logs, p)
		}
	}
	return append(logs, tracks...)
}

func (s *Season) loadLog(ctx context.Context, path string) (LogReport, error) {
	rep := LogReport{Name: filepath.Base(path)}
	if err := infile.Check(path); err != nil {
		return rep, err
	}
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
		changed, err := s.DB.AnswersChanged(ctx, known.ID)
		if err != nil {
			return rep, err
		}
		if known.SHA256 == l.SHA256 && !changed {
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
		fill, err := s.trackFiller(ctx, path, rep)
		return fill, func() {}, err
	}
	book, err := sheet.Open(path, sheet.Options{Details: small(path)})
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
	*understood
	load     *store.Load
	settings normalise.Settings
	progress *progress
	subjects []proof.Subject
}

// fill stores the blocks of a book.
func (s *Season) fill(ctx context.Context, load *store.Load, path string, book sheet.Book, rep *LogReport) error {
	u, err := s.understand(book, path, newAnswers(s.answers))
	if err != nil {
		return err
	}
	f := &filling{understood: u, load: load, settings: s.settings(), progress: s.newProgress(rep.Name)}
	if len(s.answers) > 0 {
		if _, err := f.answer(); err != nil {
			return err
		}
	}
	if err := f.found(ctx, u.problems); err != nil {
		return err
	}
	rep.SetAside += int64(len(u.problems))
	for _, b := range u.blocks {
		if err := f.table(ctx, b); err != nil {
			return err
		}
		rep.Sheets = append(rep.Sheets, b.report)
		rep.SetAside += b.report.SetAside
	}
	f.progress.end()
	u.log.Agreed, rep.Tableless = nil, u.names
	rep.Questions = u.answers.open(proof.Questions(u.log, f.subjects))
	rep.Agreed = u.log.Agreed
	return errors.Join(load.Questions(ctx, asked(rep.Questions)), load.ReadWith(ctx, u.answers.used))
}

// asked are questions as the season file keeps them.
func asked(all []proof.Question) []store.Question {
	var out []store.Question
	for _, q := range all {
		out = append(out, store.Question{ID: q.ID, Kind: q.Kind, Sheet: q.Sheet, About: q.About, Text: q.Text, Brief: q.Brief, Options: q.Options, Effect: q.Effect})
	}
	return out
}

// table stores one block of a sheet.
func (f *filling) table(ctx context.Context, b *table) error {
	if b.Plan.Kind == "" || b.Proof {
		return f.unread(ctx, b)
	}
	rows, err := f.rows(b)
	if err != nil {
		return err
	}
	defer rows.Close()
	if !b.info.Workbook && b.Block.Open {
		// Text comes so fast that collecting its few megabytes of garbage at the
		// usual rate would take a twelfth of the time.
		defer debug.SetGCPercent(debug.SetGCPercent(400))
	}
	src, err := f.source(b, rows)
	if err != nil {
		return err
	}
	if src.stats != nil {
		f.subjects = append(f.subjects, proof.Subject{Understood: b.Understood, Stats: src.stats})
	}
	defer src.problems.close()
	defer src.doubts.close()
	if err := f.entries(ctx, b, src); err != nil {
		return err
	}
	b.report.SetAside, b.report.Skipped = src.problems.n, src.skipped
	if err := f.stored(ctx, &src.doubts, f.load.Doubt); err != nil {
		return err
	}
	return f.setAside(ctx, &src.problems)
}

// source reads a block's rows.
func (f *filling) source(b *table, rows sheet.Rows) (*source, error) {
	reader, err := normalise.New(b.Plan, b.info, b.pos, f.evidence, f.settings)
	if err != nil {
		return nil, err
	}
	src := &source{rows: rows, reader: reader, skipped: map[normalise.Skip]int64{}, progress: f.progress, kind: b.Plan.Kind}
	if !b.Block.Open {
		src.stats = &proof.Stats{}
	}
	return src, nil
}

// entries stores a block's own entries, then what its rows tell beside them.
func (f *filling) entries(ctx context.Context, b *table, src *source) error {
	to := store.Sheet{No: b.no, Name: b.info.Name, Kind: string(b.Plan.Kind), Slow: b.info.Workbook}
	batches := batch.NewReader(ctx, src)
	n, err := f.load.Insert(ctx, to, batches)
	batches.Release()
	if err != nil {
		return fmt.Errorf("%s: %w", b.pos, err)
	}
	b.report.Kept = n
	for _, kind := range plan.Kinds() {
		side := newSideSource(kind, src.sides)
		if side == nil {
			continue
		}
		to.Kind = string(kind)
		batches := batch.NewReader(ctx, side)
		n, err := f.load.Insert(ctx, to, batches)
		batches.Release()
		if err != nil {
			return fmt.Errorf("%s: %w", b.pos, err)
		}
		b.report.Beside += n
	}
	return nil
}

// unread keeps a block that was not understood: as a problem, where it holds numbers.
func (f *filling) unread(ctx context.Context, b *table) error {
	if b.Proof || b.Block.Shape == layout.Form || !hasNumbers(b.Block) {
		return nil
	}
	b.report.SetAside = 1
	return f.found(ctx, []record.Problem{{Pos: b.pos, Reason: "the table was not understood: none of its headings is about hours, strikes or fish"}})
}

func hasNumbers(b *layout.Block) bool {
	for _, r := range b.Rows {
		for _, c := range r.Cells {
			if c.Look == layout.Number || c.Look == layout.Clock {
				return true
			}
		}
	}
	return false
}

// found sets problems aside that are no rows of a block.
func (f *filling) found(ctx context.Context, problems []record.Problem) error {
	var s spool
	defer s.close()
	if err := s.add(problems...); err != nil {
		return err
	}
	return f.setAside(ctx, &s)
}

func (f *filling) setAside(ctx context.Context, problems *spool) error {
	return f.stored(ctx, problems, f.load.SetAside)
}

// stored keeps what was found wrong or doubtful in a block's rows.
func (f *filling) stored(ctx context.Context, problems *spool, store func(context.Context, array.RecordReader) error) error {
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

// detailed is up to which size in bytes a workbook's formulas and comments are looked at.
const detailed = 2 << 20

func small(path string) bool {
	st, err := os.Stat(path)
	return err == nil && st.Size() <= detailed
}
