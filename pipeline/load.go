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
	"slices"
	"sync"

	"github.com/apache/arrow-go/v18/arrow/array"

	"wakeledger/pipeline/batch"
	"wakeledger/pipeline/identity"
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
	Path      string
	Name      string // of its file
	Label     string // how the season file calls it
	ID        int64  // of the log that the season file has of it; 0 where it has none
	Known     Known
	KnownAs   store.Log   // the log that it is, by Known
	Replaced  []store.Log // whose place it took
	Changes   []identity.Day
	Asked     *Asked // it was not stored: this must be answered first
	Near      []NearBoat
	Before    int64 // rows kept by the earlier reading of the same bytes
	Kept      int64
	SetAside  int64
	Sheets    []SheetReport
	Questions []proof.Question // those that its rows alone leave open
	Passed    []Passed         // sheets that hold no record
	Agreed    []string         // what of the log agrees with its own sums
}

// Passed is a sheet that holds no record, and why it is passed over.
type Passed struct{ Sheet, Why string }

// Known says how the season file knows the bytes of a log already.
type Known int

// Not at all; read in the same way, so that there is nothing to do; read in another way,
// so that it was read again; as an earlier version of a log, so that there is nothing to
// do; as a log that was forgotten or replaced, which is back.
const (
	Unknown Known = iota
	Unchanged
	ReadAgain
	EarlierVersion
	Back
)

// Asked is what must be answered before a log can be stored.
type Asked struct {
	Why string // follows the names of the logs in Of
	Of  []store.Log
}

// NearBoat is a boat of a log whose name is nearly that of another boat.
type NearBoat struct{ Boat, Other string }

// Load reads logs and stores them, each in a transaction of its own, or many small ones in
// one, tracks last: the legs may tell how their days are to be read. A log that cannot be read at all
// leaves the season as it was before that log; the others are loaded, and the errors
// come back joined.
func (s *Season) Load(ctx context.Context, paths []string) ([]LogReport, error) {
	var err error
	if s.answers, err = s.kept(ctx); err != nil {
		return nil, err
	}
	if s.shelf, err = s.openShelf(ctx); err != nil {
		return nil, err
	}
	defer func() { s.shelf = nil }()
	paths = s.shelf.tracksLast(paths)
	s.shelf.beside = s.beside(paths, s.shelf.isTrack)
	reports := make([]LogReport, len(paths))
	errs := make([]error, len(paths))
	left := make([]int, len(paths))
	for i := range paths {
		left[i] = i
	}
	// What is asked of a log may be settled by one that is loaded after it, as when its
	// rows have no day but that of their trip.
	for n := len(left) + 1; len(left) > 0 && len(left) < n; {
		n = len(left)
		if err := s.loadAll(ctx, paths, left, reports, errs); err != nil {
			return couldRead(reports, errs), err
		}
		left = slices.DeleteFunc(left, func(i int) bool { return errs[i] != nil || reports[i].Asked == nil })
	}
	reports = couldRead(reports, errs)
	return reports, errors.Join(s.nameAll(ctx, reports), errors.Join(errs...))
}

// LoadAs loads a log by its owner's word: in the place of others, by number or name, or
// where there are none, as a log of its own.
func (s *Season) LoadAs(ctx context.Context, path string, replaces ...string) (LogReport, error) {
	t := *s
	t.cfg.Replaces, t.cfg.Another = replaces, len(replaces) == 0
	reports, err := t.Load(ctx, []string{path})
	if err != nil {
		return LogReport{Path: path}, err
	}
	return reports[0], nil
}

// nameAll has reports call the logs as the season file does, now that all are in.
func (s *Season) nameAll(ctx context.Context, reports []LogReport) error {
	all, err := s.DB.LogHeads(ctx)
	if err != nil {
		return err
	}
	labels := make(map[int64]string, len(all))
	for _, l := range all {
		labels[l.ID] = l.Label
	}
	name := func(label *string, id int64) {
		if l := labels[id]; l != "" {
			*label = l
		}
	}
	for i := range reports {
		r := &reports[i]
		r.Label = r.Name
		name(&r.Label, r.ID)
		name(&r.KnownAs.Label, r.KnownAs.ID)
		for j := range r.Replaced {
			name(&r.Replaced[j].Label, r.Replaced[j].ID)
		}
	}
	return nil
}

func (h *shelf) tracksLast(paths []string) []string {
	var logs, tracks []string
	for _, p := range paths {
		if h.isTrack(p) {
			tracks = append(tracks, p)
		} else {
			logs = append(logs, p)
		}
	}
	return append(logs, tracks...)
}

// couldRead are the reports of logs that could be read.
func couldRead(reports []LogReport, errs []error) []LogReport {
	var out []LogReport
	for i, r := range reports {
		if errs[i] == nil {
			out = append(out, r)
		}
	}
	return out
}

// filler opens a log and gives what stores it, read in a manner: its sheets, or its tracks.
func (s *Season) filler(ctx context.Context, in *incoming, m manner, l *store.Log,
	rep *LogReport) (fill func(*store.Load) error, closeLog func(), err error) {
	if in.track {
		fill, err := s.trackFiller(ctx, in.path, rep)
		return fill, func() {}, err
	}
	f, err := s.reading(in, m)
	if err != nil {
		return nil, nil, err
	}
	return func(load *store.Load) error { return s.fill(ctx, load, f, l, rep) }, f.close, nil
}

// reading opens a log and understands it, unless that was done ahead, in this manner.
func (s *Season) reading(in *incoming, m manner) (*filling, error) {
	if in.ahead == nil || m.String() != in.given.String() {
		return s.toStore(in.path)
	}
	next := in.ahead
	in.ahead = nil // a second way reads the file again
	return next()
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
func startHash(path string) func() (string, error) {
	return sync.OnceValues(func() func() (string, error) {
		type result struct {
			sum string
			err error
		}
		done := make(chan result, 1)
		go func() {
			sum, err := hash(path)
			done <- result{sum, err}
		}()
		return func() (string, error) { r := <-done; return r.sum, r.err }
	}())
}

// hash is of the file's bytes.
func hash(path string) (string, error) {
	f, err := os.Open(path)
	if err != nil {
		return "", err
	}
	defer f.Close()
	h := sha256.New()
	if _, err := io.Copy(h, f); err != nil {
		return "", fmt.Errorf("read %s: %w", path, err)
	}
	return hex.EncodeToString(h.Sum(nil)), nil
}

// filling is one log on its way in.
type filling struct {
	*understood
	path     string
	load     *store.Load
	settings normalise.Settings
	progress *progress
	subjects []proof.Subject
	told     []proof.Subject  // what files that are read beside this one come to
	presumed []proof.Question // open, and read as their first choice says
}

// few tells whether all rows were looked at and are few enough to be read once more.
func (f *filling) few() bool {
	rows := 0
	for _, b := range f.blocks {
		if rows += len(b.Block.Rows); b.Block.Open || rows > mostTried {
			return false
		}
	}
	return true
}

// openLog opens a log and understands it with some kept answers. The caller closes it.
func (s *Season) openLog(path string, kept map[string]store.Answer) (*filling, error) {
	book, err := sheet.Open(path, sheet.Options{Details: small(path)})
	if err != nil {
		return nil, err
	}
	u, err := s.understand(book, path, newAnswers(kept))
	if err != nil {
		return nil, errors.Join(err, book.Close())
	}
	return &filling{understood: u, path: path, settings: s.settings(), progress: &progress{}}, nil
}

// toStore is openLog with all that is done before a log's rows are stored.
func (s *Season) toStore(path string) (*filling, error) {
	f, err := s.openLog(path, s.answers)
	if err != nil || len(s.answers) == 0 && !f.few() {
		return f, err
	}
	if _, err := f.answer(); err != nil {
		return nil, errors.Join(err, f.book.Close())
	}
	return f, nil
}

func (f *filling) close() { f.book.Close() }

// fill stores the blocks of a book.
func (s *Season) fill(ctx context.Context, load *store.Load, f *filling, l *store.Log, rep *LogReport) error {
	u := f.understood
	l.Headings = u.headings()
	f.load, f.progress = load, s.newProgress(rep.Name)
	if err := f.found(ctx, u.problems); err != nil {
		return err
	}
	rep.SetAside += int64(len(u.problems))
	for _, b := range u.blocks {
		if err := f.table(ctx, b); err != nil {
			return err
		}
		for _, note := range b.Plan.Notes { // found when its rows were held against the others
			if !slices.Contains(b.report.Notes, note) {
				b.report.Notes = append(b.report.Notes, note)
			}
		}
		rep.Sheets = append(rep.Sheets, b.report)
		rep.SetAside += b.report.SetAside
	}
	f.progress.end()
	u.log.Agreed, rep.Passed = nil, u.passed
	f.subjects = append(f.subjects, f.told...)
	rep.Questions = u.answers.open(append(f.presumed, proof.Questions(u.log, f.subjects)...))
	rep.Agreed = u.log.Agreed
	all, err := s.outcomes(f, f.path, rep.Questions)
	if err != nil {
		return err
	}
	rep.Questions = slices.DeleteFunc(slices.Clone(all), func(q proof.Question) bool { return q.OfSeason() })
	return errors.Join(load.Questions(ctx, asked(all)), load.ReadWith(ctx, u.answers.used))
}

// asked are questions as the season file keeps them.
func asked(all []proof.Question) []store.Question {
	var out []store.Question
	for _, q := range all {
		out = append(out, store.Question{ID: q.ID, Kind: q.Kind, Sheet: q.Sheet, About: q.About, Text: q.Text,
			Brief: q.Brief, Options: q.Shown(), Effect: q.Effect})
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
	src := &source{rows: rows, reader: reader, skipped: map[normalise.Skip]int64{},
		progress: f.progress, kind: b.Plan.Kind}
	if !b.Block.Open {
		src.stats = &proof.Stats{}
	}
	return src, nil
}

// entries stores a block's own entries, then what its rows tell beside them.
func (f *filling) entries(ctx context.Context, b *table, src *source) error {
	to := store.Sheet{No: b.no, Name: b.info.Name, Kind: string(b.Plan.StoredAs(b.Plan.Kind)),
		Many: b.Block.Open && !b.info.Workbook}
	batches := batch.NewReader(ctx, src, batch.Rows)
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
		to.Kind = string(b.Plan.StoredAs(kind))
		batches := batch.NewReader(ctx, side, batch.Rows)
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
	return f.found(ctx, []record.Problem{{Pos: b.pos, Reason: "the table was not understood: none of its headings " +
		"is about hours, strikes or fish"}})
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
func (f *filling) stored(ctx context.Context, problems *spool,
	store func(context.Context, array.RecordReader) error) error {
	if problems.n == 0 {
		return nil
	}
	if err := problems.rewind(); err != nil {
		return err
	}
	r := batch.NewReader(ctx, &problemSource{problems: problems}, batch.Rows)
	defer r.Release()
	return store(ctx, r)
}

// detailed is up to which size in bytes a workbook's formulas and comments are looked at.
const detailed = 2 << 20

func small(path string) bool {
	st, err := os.Stat(path)
	return err == nil && st.Size() <= detailed
}
