package main

import (
	"bytes"
	"errors"
	"fmt"
	"math/rand/v2"
	"os"
	"os/exec"
	"path/filepath"
	"testing"
	"time"
)

// writeFlat writes a flat log of so many rows: four lines on each leg, one leg
// after another, a strike on every tenth row.
func writeFlat(t *testing.T, name string, rows int) {
	t.Helper()
	var b bytes.Buffer
	b.WriteString("Boat,Date,Start,End,Speed (kn),Line,Lure,Strikes,Hooked,Landed\n")
	day := time.Date(2020, 1, 1, 0, 0, 0, 0, time.UTC)
	for i := range rows {
		leg := i / 4
		date := day.AddDate(0, 0, leg/8)
		start := 6 + leg%8
		strike := 0
		if i%10 == 0 {
			strike = 1
		}
		fmt.Fprintf(&b, "Tansy Reach,%s,%02d:00,%02d:45,%.1f,line %d,Blue Ferrule,%d,%d,%d\n",
			date.Format("2006-01-02"), start, start, 6+float64(leg%90)/10, i%4, strike, strike, strike*(i/10%2))
	}
	if err := os.WriteFile(name, b.Bytes(), 0o644); err != nil {
		t.Fatal(err)
	}
}

func wakeledger(t *testing.T, dir string, args ...string) []byte {
	t.Helper()
	c := exec.Command("wakeledger", args...)
	c.Dir = dir
	var stderr bytes.Buffer
	c.Stderr = &stderr
	out, err := c.Output()
	if err != nil {
		t.Fatalf("wakeledger %v: %v\n%s", args, err, stderr.String())
	}
	return out
}

// A load that is killed leaves the season file as it was before that log: it
// opens, holds whole logs only, and loading again gives the answers of a run
// that nobody disturbed.
func TestKilledLoads(t *testing.T) {
	dir := t.TempDir()
	const rows = 16000
	writeFlat(t, filepath.Join(dir, "small.csv"), 400)
	writeFlat(t, filepath.Join(dir, "large.csv"), rows)

	ask := func(db string) []byte {
		return append(wakeledger(t, dir, "--db", db, "ask", "strike-rate", "--format", "json"),
			wakeledger(t, dir, "--db", db, "ask", "trips", "--format", "csv")...)
	}
	wakeledger(t, dir, "--db", "calm.duckdb", "load", "small.csv")
	small := ask("calm.duckdb")
	began := time.Now()
	wakeledger(t, dir, "--db", "calm.duckdb", "load", "large.csv")
	whole := time.Since(began)
	both := ask("calm.duckdb")
	if bytes.Equal(small, both) {
		t.Fatal("the second log changes nothing: the test could not tell")
	}

	wakeledger(t, dir, "--db", "killed.duckdb", "load", "small.csv")
	rng := rand.New(rand.NewPCG(20, 26))
	killed, kills := 0, 20
	if testing.Short() {
		kills = 4 // 'make prove' kills more
	}
	for i := range kills {
		c := exec.Command("wakeledger", "--db", "killed.duckdb", "load", "large.csv")
		c.Dir = dir
		if err := c.Start(); err != nil {
			t.Fatal(err)
		}
		time.Sleep(time.Duration(rng.Int64N(int64(whole))))
		if err := c.Process.Kill(); err == nil {
			killed++
		}
		_ = c.Wait()
		got := ask("killed.duckdb")
		if !bytes.Equal(got, small) && !bytes.Equal(got, both) {
			t.Fatalf("after kill %d the season holds part of a log", i+1)
		}
		if bytes.Equal(got, both) { // the load was over before the kill: take it out again
			if err := os.Remove(filepath.Join(dir, "killed.duckdb")); err != nil {
				t.Fatal(err)
			}
			// a kill before the changes were put into the season file leaves them beside it
			if err := os.Remove(filepath.Join(dir, "killed.duckdb.wal")); err != nil &&
				!errors.Is(err, os.ErrNotExist) {
				t.Fatal(err)
			}
			wakeledger(t, dir, "--db", "killed.duckdb", "load", "small.csv")
		}
	}
	if 2*killed < kills {
		t.Errorf("only %d of %d loads were killed", killed, kills)
	}
	wakeledger(t, dir, "--db", "killed.duckdb", "load", "large.csv")
	if !bytes.Equal(ask("killed.duckdb"), both) {
		t.Error("loading again after the kills gives other answers than an undisturbed run")
	}
}
