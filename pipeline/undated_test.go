package pipeline

import (
	"fmt"
	"math/rand/v2"
	"os"
	"path/filepath"
	"reflect"
	"slices"
	"strings"
	"testing"
	"time"
)

// A log is held against those alone that may have something in common with it. What comes
// of random logs is the same where each is held against all: logs with and without days,
// labels that have their day in another log, copies with a cell changed or their dates put
// right, of two folders and two boats.
func TestSomeLogsAreEnough(t *testing.T) {
	asked, replaced := map[string]int{}, 0
	for seed := range uint64(2) {
		paths := randomLogs(t, rand.New(rand.NewPCG(seed, 12)))
		var outcomes [2][]string
		for i, exhaust := range []bool{false, true} {
			s, err := Open(t.Context(), "", Config{Boat: "Tern",
				Now: func() time.Time { return time.Date(2028, 1, 1, 0, 0, 0, 0, time.UTC) }})
			if err != nil {
				t.Fatal(err)
			}
			s.exhaust = exhaust
			for part := range slices.Chunk(paths, 7) { // some with those before them in the season file, some in memory
				reports, err := s.Load(t.Context(), part)
				if err != nil {
					t.Fatal(err)
				}
				for _, r := range reports {
					outcomes[i] = append(outcomes[i], outcomeOf(r))
					if r.Asked != nil && exhaust {
						asked[r.Asked.Why]++
					}
					replaced += len(r.Replaced)
				}
			}
			if err := s.DB.Close(); err != nil {
				t.Fatal(err)
			}
		}
		if !reflect.DeepEqual(outcomes[0], outcomes[1]) {
			t.Errorf("seed %d: got\n%s\nwant\n%s", seed, strings.Join(outcomes[0], "\n"),
				strings.Join(outcomes[1], "\n"))
		}
	}
	t.Logf("asked %v, replaced %d", asked, replaced)
	if len(asked) < 2 || replaced == 0 {
		t.Errorf("asked %v, replaced %d: the logs have too little in common", asked, replaced)
	}
}

func outcomeOf(r LogReport) string {
	out := fmt.Sprintf("%s: known %d, log %d", r.Label, r.Known, r.ID)
	for _, l := range r.Replaced {
		out += fmt.Sprintf(", for %d", l.ID)
	}
	if r.Asked != nil {
		out += ", asked: " + r.Asked.Why
		for _, l := range r.Asked.Of {
			out += fmt.Sprintf(", %d", l.ID)
		}
	}
	return out
}

// randomLogs writes logs of which many have something in common.
func randomLogs(t *testing.T, random *rand.Rand) []string {
	dir := t.TempDir()
	var paths []string
	var heads []string
	var rows [][]string
	for i := range 21 {
		head, log := newLog(random)
		if i > 0 && random.IntN(2) == 0 {
			k := random.IntN(i)
			head, log = heads[k], changed(random, rows[k])
		}
		heads, rows = append(heads, head), append(rows, log)
		path := filepath.Join(dir, string("ab"[random.IntN(2)]), fmt.Sprintf("log %d.csv", i))
		if err := os.MkdirAll(filepath.Dir(path), 0o700); err != nil {
			t.Fatal(err)
		}
		if random.IntN(4) == 0 { // another boat's, which may have the same legs
			head += ",Boat"
			log = slices.Clone(log)
			for i := range log {
				log[i] += ",Gull"
			}
		}
		if err := os.WriteFile(path, []byte(head+"\n"+strings.Join(log, "\n")+"\n"), 0o600); err != nil {
			t.Fatal(err)
		}
		paths = append(paths, path)
	}
	return paths
}

// newLog is a table of trips, or of legs with or without days.
func newLog(random *rand.Rand) (head string, rows []string) {
	label, day := 1+random.IntN(12), time.Date(2026, time.Month(1+random.IntN(6)),
		1+random.IntN(20), 0, 0, 0, 0, time.UTC)
	n := 2 + random.IntN(3)
	switch kind := random.IntN(3); kind {
	case 0:
		head = "Trip,Date,Depart,Return"
		for i := range n {
			rows = append(rows, fmt.Sprintf("%d,%s,06:00,15:%02d", label+i,
				day.AddDate(0, 0, 2*i).Format("2006-01-02"), random.IntN(60)))
		}
	default:
		head = []string{"", "Trip,Start,End,Speed (kn),Lines,Strikes",
			"Trip,Date,Start,End,Speed (kn),Lines,Strikes"}[kind]
		for i := range 3 * n {
			row := fmt.Sprintf("%02d:00,%02d:%02d,%d.%d,%d,%d", 6+i%3, 6+i%3, 30+random.IntN(25), 6+random.IntN(8),
				random.IntN(10), 3+random.IntN(3), random.IntN(3))
			if kind == 2 {
				row = day.AddDate(0, 0, 2*(i/3)).Format("2006-01-02") + "," + row
			}
			rows = append(rows, fmt.Sprintf("%d,%s", label+i/3, row))
		}
	}
	return head, rows
}

// changed is a log with a cell or its dates changed, or a part of it.
func changed(random *rand.Rand, rows []string) []string {
	rows = slices.Clone(rows)
	switch random.IntN(3) {
	case 0:
		i := random.IntN(len(rows))
		rows[i] = rows[i][:len(rows[i])-1] + fmt.Sprint(random.IntN(10))
	case 1:
		for i := range rows {
			rows[i] = strings.ReplaceAll(rows[i], "2026-", "2025-")
		}
	default:
		rows = rows[:1+random.IntN(len(rows))]
	}
	return rows
}
