package queries_test

import (
	"context"
	"crypto/sha256"
	"encoding/hex"
	"encoding/json"
	"errors"
	"fmt"
	"maps"
	"math/rand/v2"
	"os"
	"os/exec"
	"path/filepath"
	"reflect"
	"slices"
	"strconv"
	"strings"
	"testing"
	"time"

	"wakeledger/pipeline"
	"wakeledger/pipeline/store"
	"wakeledger/queries"
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
		for _, what := range []string{"load", "edit", "copy", "rename", "move", "forget", "restore", "boat", "killed", "asked", "earlier version", "replaced"} {
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

// diary is one log over its life: the files that its versions lie in.
type diary struct {
	name  string
	boat  string // of its rows; "" where --boat names it
	said  string // the boat that --boat names
	head  string
	rows  []string
	files []string // paths, the latest version last
}

// history is a random history under way.
type history struct {
	*rand.Rand
	t       *testing.T
	dir, db string
	season  *pipeline.Season // open, but while another program is at the file
	kills   bool
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
	h := &history{Rand: rand.New(rand.NewPCG(seed, 0x1d)), t: t, dir: t.TempDir(), kills: seed%3 == 0,
		of: map[string]*diary{}, bytes: map[string][]byte{}, loaded: map[*diary]string{}, undone: map[*diary]bool{}, did: map[string]int{},
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

// logOf is a flat log of some trips. The boats go out on other days, so that they may be
// joined.
func (h *history) logOf(boat string, year, nth int) *diary {
	d := &diary{name: fmt.Sprint(boat, year), boat: boat, head: "Boat,Date,Start,End,Speed (kn),Lines,Strikes,Hooked,Landed"}
	if h.IntN(2) == 0 { // the log names no boat
		d.boat, d.said, d.head = "", boat, strings.TrimPrefix(d.head, "Boat,")
	}
	for trip := range 4 + h.IntN(4) {
		h.addTrip(d, time.Date(year, 6, 1+2*trip+nth, 0, 0, 0, 0, time.UTC))
	}
	d.files = []string{filepath.Join(h.dir, fmt.Sprint(boat, " ", year), "log.csv")}
	return d
}

func (h *history) addTrip(d *diary, day time.Time) {
	at := 6*60 + 5*h.IntN(12)
	for range 2 + h.IntN(2) {
		end := at + 45 + 5*h.IntN(20)
		strikes := h.IntN(4)
		hooked := h.IntN(strikes + 1)
		row := fmt.Sprintf("%s,%02d:%02d,%02d:%02d,%d.%d,%d,%d,%d,%d", day.Format("2006-01-02"), at/60, at%60, end/60, end%60,
			6+h.IntN(10), h.IntN(10), 3+h.IntN(4), strikes, hooked, h.IntN(hooked+1))
		if d.boat != "" {
			row = d.boat + "," + row
		}
		d.rows = append(d.rows, row)
		at = end + 10 + 5*h.IntN(6)
	}
}

// strikesOf is a log of the strikes of one of the other logs.
func (h *history) strikesOf(of *diary) *diary {
	d := &diary{name: of.name + " strikes", boat: of.boat, said: of.said, head: "Date,Time,Outcome,Species,Length (cm)"}
	for _, row := range of.rows {
		cells := strings.Split(strings.TrimPrefix(row, of.boat+","), ",")
		d.rows = append(d.rows, fmt.Sprintf("%s,%s,%s,wahoo,%d", cells[0], cells[1], []string{"landed", "lost", "missed"}[h.IntN(3)], 80+h.IntN(60)))
	}
	if d.boat != "" {
		d.head = "Boat," + d.head
		for i := range d.rows {
			d.rows[i] = d.boat + "," + d.rows[i]
		}
	}
	d.files = []string{filepath.Join(filepath.Dir(of.files[0]), "strikes.csv")}
	return d
}

// trackOf is the track of a day, of a receiver that counts its files anew.
func (h *history) trackOf(year int) *diary {
	d := &diary{name: fmt.Sprint("track ", year), said: "Tern", head: "time,lat,lon"}
	at := time.Date(year, 6, 1, 14, 0, 0, 0, time.UTC)
	for i := range 80 {
		d.rows = append(d.rows, fmt.Sprintf("%s,%.5f,%.5f", at.Add(time.Duration(i)*20*time.Second).Format(time.RFC3339), 30+0.0007*float64(i), -120+0.0001*float64(h.IntN(3)+i)))
	}
	d.files = []string{filepath.Join(h.dir, fmt.Sprint("tracks ", year), "TRACK003.csv")}
	return d
}

// write writes a diary as it is to a path, a minute after the file before.
func (h *history) write(d *diary, path string) {
	h.t.Helper()
	b := []byte(d.head + "\n" + strings.Join(d.rows, "\n") + "\n")
	h.clock = h.clock.Add(time.Minute)
	err := errors.Join(os.MkdirAll(filepath.Dir(path), 0o755), os.WriteFile(path, b, 0o644), os.Chtimes(path, h.clock, h.clock))
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
			h.step("rename", func() { h.relocate(d, filepath.Join(filepath.Dir(d.latest()), h.newName("log", ".csv"))) })
		case 8:
			h.step("move", func() { h.relocate(d, filepath.Join(h.dir, h.newName("folder", ""), filepath.Base(d.latest()))) })
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
		if h.IntN(6) == 0 {
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

func (d *diary) latest() string { return d.files[len(d.files)-1] }

func (h *history) newName(stem, ext string) string {
	h.names++
	return fmt.Sprint(stem, " ", h.names, ext)
}

// edit changes a cell, adds a trip or takes a row out.
func (h *history) edit(d *diary) {
	i := h.IntN(len(d.rows))
	switch n := h.IntN(3); {
	case strings.HasPrefix(d.name, "track"): // it goes on
		last := strings.Split(d.rows[len(d.rows)-1], ",")
		at, err := time.Parse(time.RFC3339, last[0])
		if err != nil {
			h.t.Fatal(err)
		}
		d.rows = append(d.rows, fmt.Sprintf("%s,%s,%s", at.Add(20*time.Second).Format(time.RFC3339), last[1], last[2]))
	case n == 0 && len(d.rows) > 8:
		d.rows = slices.Delete(d.rows, i, i+1)
	case n == 1 && !strings.HasSuffix(d.name, "strikes"):
		last, err := time.Parse("2006-01-02", strings.Split(strings.TrimPrefix(d.rows[len(d.rows)-1], d.boat+","), ",")[0])
		if err != nil {
			h.t.Fatal(err)
		}
		h.addTrip(d, last.AddDate(0, 0, 2))
	default: // the last but one cell of a row: strikes hooked, or a name
		cells := strings.Split(d.rows[i], ",")
		if strings.HasSuffix(d.name, "strikes") {
			cells[len(cells)-1] = fmt.Sprint(60 + h.IntN(100))
		} else {
			cells[len(cells)-5] = fmt.Sprintf("%d.%d", 6+h.IntN(10), h.IntN(10))
		}
		d.rows[i] = strings.Join(cells, ",")
	}
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
		h.close()
		h.did["killed"] += h.kill(o)
		h.open()
		got := h.inSeason()
		if !maps.Equal(got, h.loaded) && !maps.Equal(got, may) {
			h.t.Fatalf("after a kill of %+v the season holds %v", o, h.show(got))
		}
		if o.Op == "forget" && !maps.Equal(got, h.loaded) || o.Op == "restore" && maps.Equal(got, may) && !maps.Equal(may, h.loaded) || o.Op == "boat" || o.Op == "part" {
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

// kill runs an order in a program of its own, which is killed at a random time. It
// returns how many were killed, 0 or 1: it may have been done before.
func (h *history) kill(o order) int {
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
	time.Sleep(time.Duration(h.Int64N(int64(600 * time.Millisecond))))
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
	return pipeline.Config{Boat: boat, Zone: "UTC-7", Now: func() time.Time { return time.Date(2028, 1, 1, 0, 0, 0, 0, time.UTC) }}
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

func (h *history) logs() []store.Log {
	h.t.Helper()
	all, err := h.season.DB.Logs(h.t.Context())
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

// compare holds the season's answers against those of a season file made anew.
func (h *history) compare() {
	s := h.season
	names, err := s.DB.BoatNames(h.t.Context())
	if err != nil {
		h.t.Fatal(err)
	}
	all, err := s.DB.Logs(h.t.Context())
	if err != nil {
		h.t.Fatal(err)
	}
	anew := filepath.Join(h.dir, "anew")
	fresh := open(h.t, historyConfig(""))
	h.Shuffle(len(all), func(i, j int) { all[i], all[j] = all[j], all[i] })
	for _, l := range all {
		if l.State != store.In {
			continue
		}
		path := filepath.Join(anew, fmt.Sprint(l.ID), l.Folder, l.Name)
		changed := l.ChangedAt
		if err := errors.Join(os.MkdirAll(filepath.Dir(path), 0o755), os.WriteFile(path, h.bytes[l.SHA256], 0o644), os.Chtimes(path, changed, changed)); err != nil {
			h.t.Fatal(err)
		}
		cfg := historyConfig(h.of[l.SHA256].said)
		cfg.Another = true
		under, err := fresh.Under(cfg)
		if err != nil {
			h.t.Fatal(err)
		}
		if r, err := under.Load(h.t.Context(), []string{path}); err != nil || r[0].Known != pipeline.Unknown {
			h.t.Fatalf("%s: %+v, %v", path, r, err)
		}
	}
	h.sameBoats(fresh, names)
	if err := errors.Join(fresh.Derive(h.t.Context()), s.Derive(h.t.Context())); err != nil {
		h.t.Fatal(err)
	}
	got, want := h.answers(s), h.answers(fresh)
	for name := range want {
		if !reflect.DeepEqual(got[name], want[name]) {
			h.t.Errorf("%s: got\n%v\nwant\n%v", name, got[name], want[name])
		}
	}
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
	for _, factor := range []string{"speed-band", "boat"} {
		out["effort by "+factor] = answerBy(t, s, queries.AskEffort, factor)
		out["strike rate by "+factor] = answerBy(t, s, queries.AskStrikeRate, factor)
	}
	out["tracks"] = answer(t, s, queries.AskTrackSpeed)
	for _, name := range tableNames {
		out["table "+name] = table(t, s, name)
	}
	return out
}
