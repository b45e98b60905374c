package queries_test

import (
	"context"
	"encoding/json"
	"errors"
	"io/fs"
	"maps"
	"os"
	"os/exec"
	"path/filepath"
	"sync"
	"testing"
	"time"

	"wakeledger/pipeline"
)

// order is one step of the program.
type order struct {
	DB, Op, Arg, To, Boat string
}

// do carries out an order; where the history has kills, it is killed before, once or more.
// A killed order must leave the season as it was, or with may in it.
func (h *history) do(o order, may map[*diary]string) []pipeline.LogReport {
	h.t.Helper()
	o.DB = h.db
	for h.kills && h.IntN(3) == 0 {
		h.did["killed"] += h.kill(o)
		got := h.inSeason()
		if !maps.Equal(got, h.loaded) && !maps.Equal(got, may) {
			h.t.Fatalf("after a kill of %+v the season holds %v", o, h.show(got))
		}
		if o.Op == "forget" && !maps.Equal(got, h.loaded) || o.Op == "restore" && maps.Equal(got, may) &&
			!maps.Equal(may, h.loaded) || o.Op == "boat" || o.Op == "part" {
			o.Op = "derive" // it was done before it was killed, or cannot be done twice
		}
	}
	reports, err := o.carryOut(h.t.Context(), h.season)
	if err != nil {
		h.t.Fatalf("%+v: %v", o, err)
	}
	if len(reports) == 0 {
		reports = []pipeline.LogReport{{}}
	}
	return reports
}

// kill kills an order at a random time, and returns how many were killed, 0 or 1: it may
// have been done before. Most are stopped in this program, which is quick; some are
// programs of their own.
func (h *history) kill(o order) int {
	h.t.Helper()
	if h.real {
		h.close()
		defer h.open()
		return h.killProgram(o)
	}
	return h.stop(o)
}

// stop carries out an order and stops it at a random statement. What the disk holds then is
// what a killed program leaves: with it the history goes on; or, as after Ctrl-C, with the
// season that was told to stop.
func (h *history) stop(o order) int {
	h.t.Helper()
	ctx, cancel := context.WithCancel(h.t.Context())
	defer cancel()
	kill, left := h.IntN(3) > 0, filepath.Join(h.dir, "left")
	stopping := &stopping{Context: ctx, at: 1 + h.Int64N(max(h.waits[o.Op], 60)), stop: func() {
		if kill {
			h.keepDisk(left)
		}
		cancel()
	}}
	_, err := o.carryOut(stopping, h.season)
	if err == nil {
		err = h.season.Derive(stopping)
	}
	n, stopped := stopping.end()
	if !stopped {
		h.waits[o.Op] = max(h.waits[o.Op], n)
		if err != nil {
			h.t.Fatalf("%+v: %v", o, err)
		}
		return 0
	}
	if err != nil && !errors.Is(err, context.Canceled) {
		h.t.Fatalf("%+v: stopped, but: %v", o, err)
	}
	if kill {
		h.close()
		h.backOnDisk(left)
		h.open()
	}
	h.t.Logf("%s is stopped at statement %d: %v", o.Op, n, err)
	return 1
}

// stopping is a context that counts how often it is asked whether to stop, as at each
// statement, and stops at one of these times.
type stopping struct {
	context.Context
	sync.Mutex
	n, at int64
	stop  func()
}

// Done is context.Context's.
func (s *stopping) Done() <-chan struct{} {
	s.Lock()
	defer s.Unlock()
	if s.n++; s.n == s.at {
		s.stop()
	}
	return s.Context.Done()
}

// end is how often it was asked, and whether it stopped. It stops no more.
func (s *stopping) end() (n int64, stopped bool) {
	s.Lock()
	defer s.Unlock()
	n, stopped = s.n, s.n >= s.at
	s.at = 0
	return n, stopped
}

// keepDisk copies the season file and the file of changes beside it, of one moment: the
// first is written at a checkpoint alone, the second grows.
func (h *history) keepDisk(to string) {
	for range 100 {
		before, err := os.Stat(h.db)
		if err != nil {
			h.t.Error(err)
			return
		}
		for _, ext := range []string{"", ".wal"} {
			b, err := os.ReadFile(h.db + ext)
			if errors.Is(err, fs.ErrNotExist) {
				err = os.RemoveAll(to + ext)
			} else if err == nil {
				err = os.WriteFile(to+ext, b, 0o600)
			}
			if err != nil {
				h.t.Error(err)
			}
		}
		if after, err := os.Stat(h.db); err == nil && after.ModTime().Equal(before.ModTime()) {
			return
		}
	}
	h.t.Error("the season file is written all the time")
}

// backOnDisk puts the files that keepDisk copied into the place of the season file.
func (h *history) backOnDisk(from string) {
	for _, ext := range []string{"", ".wal"} {
		err := os.RemoveAll(h.db + ext)
		if _, missing := os.Stat(from + ext); missing == nil {
			err = errors.Join(err, os.Rename(from+ext, h.db+ext))
		}
		if err != nil {
			h.t.Fatal(err)
		}
	}
}

// killProgram runs an order in a program of its own, which is killed at a random time.
func (h *history) killProgram(o order) int {
	h.t.Helper()
	b, err := json.Marshal(o)
	if err != nil {
		h.t.Fatal(err)
	}
	c := exec.Command(os.Args[0], "-test.run=^TestHistoryStep$")
	c.Env = append(os.Environ(), "HISTORY_STEP="+string(b))
	if err := c.Start(); err != nil {
		h.t.Fatal(err)
	}
	time.Sleep(time.Duration(h.Int64N(int64(900 * time.Millisecond))))
	killed := c.Process.Kill() == nil
	if err := c.Wait(); killed && err != nil {
		return 1
	}
	return 0
}

// TestHistoryStep is the program that TestHistories kills.
func TestHistoryStep(t *testing.T) {
	text := os.Getenv("HISTORY_STEP")
	if text == "" {
		t.Skip("run by TestHistories alone")
	}
	var o order
	if err := json.Unmarshal([]byte(text), &o); err != nil {
		t.Fatal(err)
	}
	s, err := pipeline.Open(t.Context(), o.DB, historyConfig(""))
	if err != nil {
		t.Fatal(err)
	}
	_, err = o.carryOut(t.Context(), s)
	if err := errors.Join(err, s.Derive(t.Context()), s.DB.Close()); err != nil {
		t.Fatal(err)
	}
}

func historyConfig(boat string) pipeline.Config {
	return pipeline.Config{Boat: boat, Zone: "UTC-7",
		Now: func() time.Time { return time.Date(2028, 1, 1, 0, 0, 0, 0, time.UTC) }}
}

func (o order) carryOut(ctx context.Context, s *pipeline.Season) (reports []pipeline.LogReport, err error) {
	if s, err = s.Under(historyConfig(o.Boat)); err != nil {
		return nil, err
	}
	switch o.Op {
	case "load":
		return s.Load(ctx, []string{o.Arg})
	case "forget":
		_, err = s.Forget(ctx, []string{o.Arg})
	case "restore":
		r, err := s.Restore(ctx, o.Arg)
		return []pipeline.LogReport{r}, err
	case "boat":
		err = s.RenameBoat(ctx, o.Arg, o.To)
	case "part":
		err = s.PartBoat(ctx, o.Arg)
	case "derive":
		err = s.Derive(ctx)
	}
	return nil, err
}

func (h *history) open() {
	h.t.Helper()
	var err error
	if h.season, err = pipeline.Open(h.t.Context(), h.db, historyConfig("")); err != nil {
		h.t.Fatal(err)
	}
	quick(h.t, h.season)
}

// quick has a season use one thread: its logs are so small that a second only waits.
func quick(t *testing.T, s *pipeline.Season) {
	t.Helper()
	rows, err := s.DB.Query(t.Context(), "SET threads = 1")
	if err != nil {
		t.Fatal(err)
	}
	for rows.Next() {
	}
	if err := errors.Join(rows.Err(), rows.Close()); err != nil {
		t.Fatal(err)
	}
}

func (h *history) close() {
	if h.season == nil {
		return
	}
	if err := h.season.DB.Close(); err != nil {
		h.t.Error(err)
	}
	h.season = nil
}
