package queries_test

import (
	"errors"
	"fmt"
	"maps"
	"os"
	"path/filepath"
	"reflect"
	"slices"

	"wakeledger/pipeline"
	"wakeledger/pipeline/store"
	"wakeledger/queries"
)

// compare holds the season against a season file made anew from the logs that are in it:
// its tables, of which alone all answers are made, and in every tenth history the answers.
func (h *history) compare() {
	names, err := h.season.DB.BoatNames(h.t.Context())
	if err != nil {
		h.t.Fatal(err)
	}
	fresh := h.anew()
	h.sameBoats(fresh, names)
	if err := errors.Join(fresh.Derive(h.t.Context()), h.season.Derive(h.t.Context())); err != nil {
		h.t.Fatal(err)
	}
	got, want := h.answers(h.season), h.answers(fresh)
	for name := range want {
		if !reflect.DeepEqual(got[name], want[name]) {
			h.t.Errorf("%s: got\n%v\nwant\n%v", name, got[name], want[name])
		}
	}
}

// anew is a season file made of the logs that are in the season, in any order.
func (h *history) anew() *pipeline.Season {
	all := h.logs()
	fresh := open(h.t, historyConfig(""))
	quick(h.t, fresh)
	h.Shuffle(len(all), func(i, j int) { all[i], all[j] = all[j], all[i] })
	paths := map[string][]string{} // by the boat that is named for them
	var boats []string
	for _, l := range all {
		if l.State != store.In {
			continue
		}
		path := filepath.Join(h.dir, "anew", fmt.Sprint(l.ID), l.Folder, l.Name)
		changed := l.ChangedAt
		if err := errors.Join(os.MkdirAll(filepath.Dir(path), 0o755), os.WriteFile(path, h.bytes[l.SHA256], 0o644),
			os.Chtimes(path, changed, changed)); err != nil {
			h.t.Fatal(err)
		}
		said := h.of[l.SHA256].said
		if paths[said] == nil {
			boats = append(boats, said)
		}
		paths[said] = append(paths[said], path)
	}
	for _, boat := range boats {
		cfg := historyConfig(boat)
		cfg.Another = true
		under, err := fresh.Under(cfg)
		if err != nil {
			h.t.Fatal(err)
		}
		reports, err := under.Load(h.t.Context(), paths[boat])
		if err != nil {
			h.t.Fatal(err)
		}
		for _, r := range reports {
			if r.Known != pipeline.Unknown || len(r.Replaced) > 0 || r.Asked != nil {
				h.t.Fatalf("made anew, %s: %s", r.Path, h.outcome(r))
			}
		}
	}
	return fresh
}

// sameBoats shows boats as another season file does, by way of names that none has.
func (h *history) sameBoats(s *pipeline.Season, names map[string]string) {
	ctx := h.t.Context()
	for _, to := range []func(logged string) (string, string){
		func(logged string) (string, string) { return logged, "by way of " + logged },
		func(logged string) (string, string) { return "by way of " + logged, names[logged] },
	} {
		for _, logged := range slices.Sorted(maps.Keys(names)) {
			from, shown := to(logged)
			if err := s.RenameBoat(ctx, from, shown); err != nil && !errors.Is(err, pipeline.ErrNoBoat) {
				h.t.Fatal(err)
			}
		}
	}
}

func (h *history) answers(s *pipeline.Season) map[string]any {
	t := h.t
	out := map[string]any{"trips": answer(t, s, queries.AskTrips), "fish": answer(t, s, queries.AskFish),
		"set aside": answer(t, s, queries.AskSetAside), "doubts": answer(t, s, queries.AskDoubts)}
	var questions []queries.Question
	for _, q := range answer(t, s, queries.AskQuestions) {
		q.Log = 0
		questions = append(questions, q)
	}
	out["questions"] = questions
	for _, name := range tableNames {
		out["table "+name] = table(t, s, name)
	}
	out["tracks"] = answer(t, s, queries.AskTrackSpeed)
	if h.seed%10 != 0 {
		return out
	}
	for _, factor := range []string{"speed-band", "boat"} {
		out["effort by "+factor] = answerBy(t, s, queries.AskEffort, factor)
		out["strike rate by "+factor] = answerBy(t, s, queries.AskStrikeRate, factor)
	}
	return out
}
