package queries_test

import (
	"crypto/sha256"
	"encoding/hex"
	"errors"
	"fmt"
	"maps"
	"math/rand/v2"
	"os"
	"path/filepath"
	"slices"
	"strconv"
	"strings"
	"testing"
	"time"

	"wakeledger/pipeline"
	"wakeledger/pipeline/store"
)

// Random histories of a season file: logs of two boats and two years, all of one name,
// with a log of strikes and a track beside them, are loaded, edited, saved under other
// names, moved, forgotten, restored, and their boats renamed; in every third history the
// program is killed in the midst of steps. After each step the season holds one version
// of each log that was loaded and not forgotten, and no other log has changed; at the end
// its answers are those of a season file made anew from the logs that are in it.
//
// HISTORIES is how many are run; FIRST_HISTORY the seed of the first.
func TestHistories(t *testing.T) {
	n, first := envInt(t, "HISTORIES", 3), envInt(t, "FIRST_HISTORY", 1)
	total := map[string]int{}
	for seed := first; seed < first+n; seed++ {
		ok := t.Run(fmt.Sprint(seed), func(t *testing.T) {
			h := newHistory(t, uint64(seed))
			h.run(6 + h.IntN(8))
			for what, k := range h.did {
				total[what] += k
			}
		})
		if !ok && n > 20 {
			t.Fatalf("history %d failed", seed)
		}
	}
	t.Logf("%d histories: %v", n, total)
	if n >= 100 {
		for _, what := range []string{"load", "edit", "copy", "rename", "move", "forget", "restore", "boat", "killed",
			"asked", "earlier version", "replaced"} {
			if total[what] == 0 {
				t.Errorf("no history has a step of kind %q", what)
			}
		}
	}
}

func envInt(t *testing.T, name string, otherwise int) int {
	t.Helper()
	text := os.Getenv(name)
	if text == "" {
		return otherwise
	}
	n, err := strconv.Atoi(text)
	if err != nil {
		t.Fatalf("%s=%s: expected a number", name, text)
	}
	return n
}

// history is a random history under way.
type history struct {
	*rand.Rand
	t       *testing.T
	dir, db string
	season  *pipeline.Season // open, but while another program is at the file
	seed    uint64
	kills   bool
	real    bool             // of programs of their own
	waits   map[string]int64 // by kind of order, the most statements that one of it took
	diaries []*diary
	of      map[string]*diary // by the bytes of each version that was written
	bytes   map[string][]byte
	loaded  map[*diary]string // the version that should be in the season
	undone  map[*diary]bool   // an earlier version was restored, and none loaded since
	clock   time.Time
	names   int
	did     map[string]int
}

func newHistory(t *testing.T, seed uint64) *history {
	h := &history{Rand: rand.New(rand.NewPCG(seed, 0x1d)), t: t, dir: t.TempDir(), seed: seed, kills: seed%3 == 0,
		real: seed%30 == 0, waits: map[string]int64{},
		of: map[string]*diary{}, bytes: map[string][]byte{}, loaded: map[*diary]string{},
		undone: map[*diary]bool{}, did: map[string]int{},
		clock: time.Date(2027, 1, 1, 0, 0, 0, 0, time.UTC)}
	if h.kills {
		h.db = filepath.Join(h.dir, "season.duckdb")
	}
	h.open()
	t.Cleanup(h.close)
	for i, boat := range []string{"Tern", "Petrel"} {
		for year := 2025; year <= 2026; year++ {
			h.diaries = append(h.diaries, h.logOf(boat, year, i))
		}
	}
	h.diaries = append(h.diaries, h.strikesOf(h.diaries[0]), h.trackOf(2025), h.trackOf(2026))
	for _, d := range h.diaries {
		h.write(d, d.files[0])
	}
	return h
}

// write writes a diary as it is to a path, a minute after the file before.
func (h *history) write(d *diary, path string) {
	h.t.Helper()
	b := []byte(d.head + "\n" + strings.Join(d.rows, "\n") + "\n")
	h.clock = h.clock.Add(time.Minute)
	err := errors.Join(os.MkdirAll(filepath.Dir(path), 0o755), os.WriteFile(path, b, 0o644),
		os.Chtimes(path, h.clock, h.clock))
	if err != nil {
		h.t.Fatal(err)
	}
	h.of[sum(b)], h.bytes[sum(b)] = d, b
}

func sum(b []byte) string {
	s := sha256.Sum256(b)
	return hex.EncodeToString(s[:])
}

// version is that of a file.
func (h *history) version(path string) string {
	h.t.Helper()
	b, err := os.ReadFile(path)
	if err != nil {
		h.t.Fatal(err)
	}
	return sum(b)
}

func (h *history) run(steps int) {
	h.step("load", func() { h.load(h.diaries[h.IntN(len(h.diaries))]) })
	for range steps {
		d := h.diaries[h.IntN(len(h.diaries))]
		switch h.IntN(14) {
		case 0, 1, 2, 12, 13:
			h.step("load", func() { h.load(d) })
		case 3:
			h.step("load all", h.loadAll)
		case 4, 5:
			h.step("edit", func() { h.edit(d); h.write(d, d.latest()); h.load(d) })
		case 6:
			h.step("copy", func() { h.copy(d) })
		case 7:
			h.step("rename", func() {
				h.relocate(d, filepath.Join(filepath.Dir(d.latest()),
					h.newName("log", ".csv")))
			})
		case 8:
			h.step("move", func() {
				h.relocate(d, filepath.Join(h.dir, h.newName("folder", ""),
					filepath.Base(d.latest())))
			})
		case 9:
			h.step("forget", func() { h.forget(d) })
		case 10:
			h.step("restore", h.restore)
		case 11:
			h.step("boat", h.renameBoat)
		}
		if h.t.Failed() {
			return
		}
		if h.IntN(12) == 0 {
			if err := h.season.Derive(h.t.Context()); err != nil {
				h.t.Fatal(err)
			}
		}
	}
	h.compare()
}

func (h *history) step(what string, do func()) {
	h.did[what]++
	do()
}

func (h *history) newName(stem, ext string) string {
	h.names++
	return fmt.Sprint(stem, " ", h.names, ext)
}

// load loads a file of a diary: mostly the latest.
func (h *history) load(d *diary) {
	path := d.latest()
	if h.IntN(4) == 0 {
		path = d.files[h.IntN(len(d.files))]
	}
	h.loadFile(d, path)
}

func (h *history) loadAll() {
	for _, i := range h.Perm(len(h.diaries)) {
		d := h.diaries[i]
		for _, j := range h.Perm(len(d.files)) {
			h.loadFile(d, d.files[j])
		}
	}
}

func (h *history) loadFile(d *diary, path string) {
	h.t.Helper()
	version := h.version(path)
	boat := d.said
	if h.loaded[d] != "" && h.IntN(2) == 0 { // what was said once holds
		boat = ""
	}
	may := maps.Clone(h.loaded)
	may[d] = version
	reports := h.do(order{Op: "load", Arg: path, Boat: boat}, may)
	r := reports[0]
	h.t.Logf("load %s of %s: %s", strings.TrimPrefix(path, h.dir), d.name, h.outcome(r))
	switch {
	case r.Asked != nil:
		h.did["asked"]++
		if path == d.latest() && !h.undone[d] {
			h.t.Errorf("the latest file of %s is asked about: %s", d.name, r.Asked.Why)
		}
	case r.Known == pipeline.EarlierVersion:
		h.did["earlier version"]++
		if path == d.latest() && !h.undone[d] {
			h.t.Errorf("the latest file of %s is taken for an earlier version", d.name)
		}
	default:
		h.did["replaced"] += len(r.Replaced)
		h.undone[d] = h.undone[d] && h.loaded[d] == version
		h.loaded[d] = version
	}
	h.holds()
}

func (h *history) outcome(r pipeline.LogReport) string {
	switch {
	case r.Asked != nil:
		return "asked, " + r.Asked.Why
	case len(r.Replaced) > 0:
		return fmt.Sprintf("known %d, log %d for %d", r.Known, r.ID, r.Replaced[0].ID)
	}
	return fmt.Sprintf("known %d, log %d", r.Known, r.ID)
}

// copy saves a corrected copy under another name; the old file stays.
func (h *history) copy(d *diary) {
	h.edit(d)
	path := filepath.Join(filepath.Dir(d.latest()), h.newName("log final", ".csv"))
	h.write(d, path)
	d.files = append(d.files, path)
	h.load(d)
}

// relocate gives the latest file another name or folder.
func (h *history) relocate(d *diary, path string) {
	if err := errors.Join(os.MkdirAll(filepath.Dir(path), 0o755), os.Rename(d.latest(), path)); err != nil {
		h.t.Fatal(err)
	}
	d.files[len(d.files)-1] = path
	h.load(d)
}

func (h *history) forget(d *diary) {
	id := h.number(h.loaded[d])
	if id == 0 {
		return
	}
	may := maps.Clone(h.loaded)
	delete(may, d)
	h.do(order{Op: "forget", Arg: fmt.Sprint(id)}, may)
	h.t.Logf("forget log %d of %s", id, d.name)
	delete(h.loaded, d)
	h.holds()
}

// restore has a log back that was forgotten or replaced.
func (h *history) restore() {
	var past []store.Log
	for _, l := range h.logs() {
		if l.State != store.In {
			past = append(past, l)
		}
	}
	if len(past) == 0 {
		return
	}
	l := past[h.IntN(len(past))]
	d := h.of[l.SHA256]
	may := maps.Clone(h.loaded)
	may[d] = l.SHA256
	r := h.do(order{Op: "restore", Arg: fmt.Sprint(l.ID)}, may)[0]
	h.t.Logf("restore log %d of %s, which was %s: %s", l.ID, d.name, l.State, h.outcome(r))
	if r.Asked == nil {
		h.loaded[d], h.undone[d] = l.SHA256, true
	} else if h.did["asked"]++; h.loaded[d] == "" {
		h.t.Errorf("log %d of %s is asked about, and none of its versions is there: %s", l.ID, d.name, r.Asked.Why)
	}
	h.holds()
}

// renameBoat gives a boat a new name, joins two, or parts them.
func (h *history) renameBoat() {
	boats, err := h.season.DB.Boats(h.t.Context())
	names, err2 := h.season.DB.BoatNames(h.t.Context())
	if err := errors.Join(err, err2); err != nil {
		h.t.Fatal(err)
	}
	if len(boats) == 0 {
		return
	}
	o := order{Op: "boat", Arg: boats[h.IntN(len(boats))], To: h.newName("Boat of name", "")}
	switch {
	case len(boats) > 1 && h.IntN(3) == 0:
		o.To = boats[h.IntN(len(boats))]
	case len(names) > 0 && h.IntN(3) == 0:
		o.Op, o.Arg = "part", slices.Sorted(maps.Keys(names))[0]
	}
	if o.Arg == o.To {
		return
	}
	h.do(o, h.loaded)
	h.t.Logf("%s %s %s", o.Op, o.Arg, o.To)
	h.holds()
}

func (h *history) logs() []store.Log {
	h.t.Helper()
	all, err := h.season.DB.LogHeads(h.t.Context())
	if err != nil {
		h.t.Fatal(err)
	}
	return all
}

// number is that of the log of the season with some bytes; 0 where there is none.
func (h *history) number(version string) int64 {
	for _, l := range h.logs() {
		if l.State == store.In && l.SHA256 == version {
			return l.ID
		}
	}
	return 0
}

// inSeason is the version of each diary that the season holds. Two of one are an error.
func (h *history) inSeason() map[*diary]string {
	h.t.Helper()
	got := map[*diary]string{}
	for _, l := range h.logs() {
		if l.State != store.In {
			continue
		}
		d := h.of[l.SHA256]
		if d == nil || got[d] != "" {
			h.t.Fatalf("log %d, %s, is in beside another version of it, or nobody wrote it", l.ID, l.Label)
		}
		got[d] = l.SHA256
	}
	return got
}

func (h *history) holds() {
	h.t.Helper()
	if got := h.inSeason(); !maps.Equal(got, h.loaded) {
		h.t.Fatalf("the season holds\n%v, want\n%v", h.show(got), h.show(h.loaded))
	}
}

func (h *history) show(in map[*diary]string) []string {
	var out []string
	for d, version := range in {
		out = append(out, d.name+" "+version[:6])
	}
	slices.Sort(out)
	return out
}
