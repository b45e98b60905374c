package queries_test

import (
	"os"
	"path/filepath"
	"slices"
	"strings"
	"testing"

	"wakeledger/testdata/crossed"
)

// leastCrossed is the least share, in hundredths, of the crossed logs that must be read right with no answer; some
// leave open how many lines were out, or which hours are told again.
const leastCrossed = 80

// TestCrossed: a log in which one way of telling hours, lines, bites and days meets another is read right, or what is
// not is asked about.
func TestCrossed(t *testing.T) {
	n := uint64(300)
	if testing.Short() {
		n = 60 // 'make prove' tries them all
	}
	right, tried := 0, map[string]bool{}
	for i := range n {
		l := crossed.Write(*firstSeed*1000 + i)
		for _, way := range strings.SplitN(l.Name, " ", 2)[1:] {
			for _, w := range slices.Concat(crossed.Rows, crossed.Efforts, crossed.Lines, crossed.Bites) {
				tried[w] = tried[w] || strings.Contains(way, w)
			}
		}
		dir := t.TempDir()
		tr := truth{Ocean: "atlantic", Units: "us", Zone: "America/New_York", Fish: l.Fish,
			Totals: map[string]*float64{}}
		for name, text := range l.Files {
			if err := os.WriteFile(filepath.Join(dir, name), []byte(text), 0o600); err != nil {
				t.Fatal(err)
			}
			tr.Files = append(tr.Files, name)
		}
		slices.Sort(tr.Files)
		for name, v := range l.Totals {
			tr.Totals[name] = &v
		}
		for _, lo := range []float64{0, 6, 8, 10, 12} {
			b := l.Bands[lo]
			if b == nil {
				b = &crossed.Band{}
			}
			band := struct {
				Lo        float64
				LineHours *float64 `json:"line_hours"`
				Strikes   *float64
			}{Lo: lo, LineHours: &b.LineHours, Strikes: &b.Strikes}
			if b.Unplaced {
				band.Strikes = nil
			}
			tr.Bands = append(tr.Bands, band)
		}
		switch o := judge(t, dir, tr, tr.config(t), nil); o.verdict {
		case "right":
			right++
		case "wrong":
			t.Errorf("%s: wrong without a question: %s", l.Name, strings.Join(o.diffs, "; "))
		}
	}
	t.Logf("%d of %d right with no answer", right, n)
	if 100*right < leastCrossed*int(n) {
		t.Errorf("%d of %d right with no answer: expected %d in 100", right, n, leastCrossed)
	}
	for _, w := range slices.Concat(crossed.Rows, crossed.Efforts, crossed.Lines, crossed.Bites) {
		if !testing.Short() && !tried[w] {
			t.Errorf("no log was tried with %s", w)
		}
	}
}
