package queries_test

import (
	"fmt"
	"os"
	"path/filepath"
	"reflect"
	"testing"

	"wakeledger/pipeline"
)

// Many small logs, of which some share a transaction, end as the same logs loaded one by
// one: among them one that is not there, a copy, a corrected copy, and one that is asked
// about, so that its fifty are loaded one by one.
func TestManySmallLogs(t *testing.T) {
	dir := t.TempDir()
	const head = "Boat,Date,Start,End,Speed (kn),Lines,Strikes\n"
	week := func(boat string, month int, speed string) string {
		text := head
		for day := 1; day < 5; day++ {
			text += fmt.Sprintf("%s,2026-%02d-%02d,07:00,09:00,%s,4,1\n", boat, month, day, speed)
		}
		return text
	}
	var paths []string
	put := func(name, text string) {
		paths = append(paths, filepath.Join(dir, name))
		if err := os.WriteFile(paths[len(paths)-1], []byte(text), 0o600); err != nil {
			t.Fatal(err)
		}
	}
	for i := range 101 {
		name := fmt.Sprintf("log %03d.csv", i)
		switch i {
		case 100:
			paths = append(paths, filepath.Join(dir, "not there.csv"))
		case 30:
			put(name, week("Tern", 1, "8"))
		case 45:
			put(name, week("Tern", 2, "8.5"))
		case 70:
			put(name, week("Petrel", 3, "8"))
		default:
			if i < 12 {
				put(name, week("Tern", i+1, "8"))
			} else {
				put(name, fmt.Sprintf("%sTern,2025-%02d-%02d,07:00,09:00,8,4,1\n", head, 1+i%12, 1+i/12))
			}
		}
	}
	outcome := func(s *pipeline.Season, loads ...[]string) (asked, replaced, same, failed int) {
		for _, paths := range loads {
			reports, err := s.Load(t.Context(), paths)
			if err != nil {
				failed++
			}
			for _, r := range reports {
				switch {
				case r.Asked != nil:
					asked++
				case r.Known == pipeline.Unchanged:
					same++
				}
				replaced += len(r.Replaced)
			}
		}
		return
	}
	together, single := open(t, pipeline.Config{}), open(t, pipeline.Config{})
	var each [][]string
	for _, p := range paths {
		each = append(each, []string{p})
	}
	for name, got := range map[string][]int{"together": list(outcome(together, paths)),
		"one by one": list(outcome(single, each...))} {
		if want := []int{1, 1, 1, 1}; !reflect.DeepEqual(got, want) {
			t.Errorf("%s: asked, replaced, the same, failed: %v, want %v", name, got, want)
		}
	}
	for _, s := range []*pipeline.Season{together, single} {
		if err := s.Derive(t.Context()); err != nil {
			t.Fatal(err)
		}
	}
	if got, want := contents(t, together), contents(t, single); !reflect.DeepEqual(got, want) {
		t.Errorf("together\n%v\none by one\n%v", got, want)
	}
}

func list(of ...int) []int { return of }
