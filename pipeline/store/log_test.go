package store

import (
	"context"
	"database/sql"
	"errors"
	"fmt"
	"path/filepath"
	"reflect"
	"slices"
	"strings"
	"testing"

	"wakeledger/pipeline/batch"
	"wakeledger/pipeline/entry"
)

// What left the season is out of every table that questions read, and comes back as it was.
func TestLeaveAndComeBack(t *testing.T) {
	ctx := context.Background()
	path := filepath.Join(t.TempDir(), "season.duckdb")
	db := open(t, path)
	for i, n := range []int64{10, 5} {
		if _, err := bring(ctx, db, []string{"a.csv", "b.csv"}[i], &legs{n: n}); err != nil {
			t.Fatal(err)
		}
	}
	number := func(name, state string) int64 {
		t.Helper()
		all, err := db.Logs(ctx)
		if err != nil {
			t.Fatal(err)
		}
		for _, l := range all {
			if l.Name == name && l.State == state {
				return l.ID
			}
		}
		t.Fatalf("no log %s that is %s among %+v", name, state, all)
		return 0
	}
	a := number("a.csv", In)
	if err := db.Leave(ctx, []int64{a}, noon); err != nil {
		t.Fatal(err)
	}
	if got := count(t, db, entries); got != 5 {
		t.Errorf("%d entries after a.csv left, want 5", got)
	}
	number("a.csv", Forgotten)
	back := func() (Place, error) { return Place{}, nil }
	if err := db.ComeBack(ctx, a, noon, back); err != nil {
		t.Fatal(err)
	}
	if got := count(t, db, entries); got != 15 || number("a.csv", In) != a {
		t.Errorf("%d entries after it came back, want 15", got)
	}
	if _, err := bring(ctx, db, "a.csv", &legs{n: 12}); err != nil {
		t.Fatal(err)
	}
	if got := count(t, db, entries); got != 17 || number("a.csv", Replaced) != a {
		t.Errorf("%d entries after a.csv was replaced, want 17", got)
	}
	if err := db.Tidy(ctx); err != nil {
		t.Fatal(err)
	}
	if got := count(t, db, "SELECT (SELECT count(*) FROM past_log) + (SELECT count(*) FROM past_entry_kept) + "+
		"(SELECT count(*) FROM past_log_sheet) ORDER BY 1"); got != 0 {
		t.Errorf("%d rows left of logs that were, want none", got)
	}
	if err := db.Close(); err != nil {
		t.Fatal(err)
	}
	if err := Compact(ctx, path); err != nil {
		t.Fatal(err)
	}
	if got := count(t, open(t, path), entries); got != 17 {
		t.Errorf("%d entries in the compacted file, want 17", got)
	}
}

// A label is the name alone where no other log has it.
func TestLabels(t *testing.T) {
	ctx := context.Background()
	db := open(t, "")
	for _, l := range []Log{{Name: "log.csv", Folder: "2025", SHA256: "a"},
		{Name: "log.csv", Folder: "2026", SHA256: "b"},
		{Name: "LOG.csv", Folder: "2026", SHA256: "c"}, {Name: "x.csv", Folder: "2026", SHA256: "d"}} {
		if _, err := db.Bring(ctx, &l, noon, func(*Load) error { return nil },
			func(*Load) (Place, error) { return Place{}, nil }); err != nil {
			t.Fatal(err)
		}
	}
	want := map[string]string{"a": "2025/log.csv", "b": "2026/log.csv (1)", "c": "2026/LOG.csv (2)", "d": "x.csv"}
	all, err := db.Logs(ctx)
	if err != nil {
		t.Fatal(err)
	}
	for _, l := range all {
		if l.Label != want[l.SHA256] {
			t.Errorf("%s/%s is called %q, want %q", l.Folder, l.Name, l.Label, want[l.SHA256])
		}
	}
	if len(all) != len(want) {
		t.Errorf("%d logs, want %d", len(all), len(want))
	}
}

// What two logs have in common is counted by day.
func TestLikenesses(t *testing.T) {
	ctx := context.Background()
	db := open(t, "")
	for i, n := range []int64{10, 4} {
		if _, err := bring(ctx, db, []string{"a.csv", "b.csv"}[i], &legs{n: n}); err != nil {
			t.Fatal(err)
		}
	}
	all, err := db.Likenesses(ctx, 2, false, []int64{1})
	if err != nil {
		t.Fatal(err)
	}
	x := all[1]
	if x == nil || x.Legs != 4 || x.NewLegs != 4 || x.Same != 4 || x.Differ+x.Twin+x.Overlaps+x.Loose != 0 {
		t.Fatalf("got %+v", x)
	}
	var found, equal int64
	for _, d := range x.Days {
		found, equal = found+d.Found, equal+d.Equal
	}
	if found != 4 || equal != 4 {
		t.Errorf("%d rows found again, %d equal, want 4 and 4: %+v", found, equal, x.Days)
	}
	if moved, err := db.Moved(ctx, 2, []int64{1}); err != nil || moved[1] != 4 {
		t.Errorf("moved: %v, %v, want 4 rows of log 1", moved, err)
	}
	if _, err := db.Likenesses(ctx, 2, true, []int64{1}); err != nil {
		t.Error(err)
	}
	extents, err := db.Extents(ctx, 0)
	if err != nil || len(extents) != 2 || !reflect.DeepEqual(extents[1], extents[2]) && len(extents[1].Days) == 0 {
		t.Errorf("extents %+v, %v", extents, err)
	}
	if _, err := db.Boats(ctx); err != nil {
		t.Error(err)
	}
	for _, f := range []func() error{
		func() error { return db.RenameBoat(ctx, "Tern", "Fulmar") }, func() error { return db.PartBoat(ctx, "Tern") },
	} {
		if err := f(); err != nil {
			t.Error(err)
		}
	}
}

// A season file of an earlier version is copied before it is brought to this one.
func TestOlderSeasonFileIsCopied(t *testing.T) {
	ctx := context.Background()
	dir := t.TempDir()
	path := filepath.Join(dir, "season.duckdb")
	older, err := sql.Open("duckdb", path)
	if err != nil {
		t.Fatal(err)
	}
	for _, step := range []string{"0001_season.sql", "0002_sky.sql", "0003_track.sql"} {
		b, err := files.ReadFile("schema/" + step)
		if err != nil {
			t.Fatal(err)
		}
		if _, err := older.Exec(string(b)); err != nil {
			t.Fatal(err)
		}
	}
	for _, q := range []string{"INSERT INTO setting VALUES ('schema', '3')",
		"INSERT INTO log VALUES (1, 'a.csv', 'Tern', 'x', NULL, 0, '2026-07-04')"} {
		if _, err := older.Exec(q); err != nil {
			t.Fatal(err)
		}
	}
	if err := older.Close(); err != nil {
		t.Fatal(err)
	}
	all, err := open(t, path).Logs(ctx)
	if err != nil || len(all) != 1 || all[0].Label != "a.csv" || all[0].Boat != "Tern" {
		t.Errorf("%+v, %v", all, err)
	}
	beside, err := filepath.Glob(filepath.Join(dir, "season, as it was *.duckdb"))
	if err != nil || len(beside) != 1 {
		t.Errorf("copies: %v, %v", beside, err)
	}
}

// A season file may have any name: none of what the database calls its own parts, nor of our
// tables, is taken for it.
func TestNamesOfSeasonFiles(t *testing.T) {
	ctx := context.Background()
	for _, name := range []string{"past", "main", "temp", "season", "memory", "system", "log", "past_log",
		"information_schema", "pg_catalog"} {
		db, err := Open(ctx, filepath.Join(t.TempDir(), name+".duckdb"))
		if err != nil {
			t.Errorf("%s: %v", name, err)
			continue
		}
		for _, n := range []int64{3, 4} { // the second takes the place of the first
			if _, err := bring(ctx, db, "a.csv", &legs{n: n}); err != nil {
				t.Errorf("%s: %v", name, err)
			}
		}
		settle := func() (Place, error) { return Place{For: []int64{2}}, nil }
		if err := errors.Join(db.ComeBack(ctx, 1, noon, settle), db.Leave(ctx, []int64{1}, noon), db.Tidy(ctx),
			db.Derive(ctx, nil, nil, func() error { return nil }), db.Close()); err != nil {
			t.Errorf("%s: %v", name, err)
		}
	}
}

// What a boat shared with its club goes with its name: of two summaries the later holds.
func TestClubGoesWithTheBoat(t *testing.T) {
	ctx := context.Background()
	db := open(t, "")
	set := func(name, value string) {
		t.Helper()
		if err := db.PutSetting(ctx, name, value); err != nil {
			t.Fatal(err)
		}
	}
	is := func(name, want string) {
		t.Helper()
		if got, err := db.Setting(ctx, name); got != want || err != nil {
			t.Errorf("%s: %q, %v, want %q", name, got, err, want)
		}
	}
	rename := func(from, to string) {
		t.Helper()
		if err := db.RenameBoat(ctx, from, to); err != nil {
			t.Fatal(err)
		}
	}
	set("club id of Tern", "blue-7")
	set("club summary of Tern", `{"On":"2026-07-01"}`)
	rename("Tern", "Fulmar")
	is("club id of Fulmar", "blue-7")
	is("club summary of Fulmar", `{"On":"2026-07-01"}`)
	set("club summary of Fulmar", `{"On":"2026-08-01"}`)
	rename("Fulmar", "Tern")
	is("club summary of Tern", `{"On":"2026-08-01"}`)
	set("club summary of Petrel", `{"On":"2026-05-01"}`)
	rename("Petrel", "Tern")
	is("club summary of Tern", `{"On":"2026-08-01"}`)
}

// named are rows that name some days and boats; 0 and "" are none.
type named struct {
	days  []int64
	boats []string
	at    int
}

func (n *named) Fields() []entry.Field {
	return []entry.Field{{Name: "row", Type: entry.Int}, {Name: "date", Type: entry.Day},
		{Name: "boat", Type: entry.Text}}
}

func (n *named) Next() ([]entry.Value, bool, error) {
	if n.at == len(n.days) {
		return nil, false, nil
	}
	n.at++
	values := []entry.Value{entry.OfInt(int64(n.at)), {}, {}}
	if d := n.days[n.at-1]; d != 0 {
		values[1] = entry.OfInt(d)
	}
	if b := n.boats[n.at-1]; b != "" {
		values[2] = entry.OfText(b)
	}
	return values, true, nil
}

// The days and boats that are noted while a log is stored are those that its rows have.
func TestExtents(t *testing.T) {
	ctx := context.Background()
	db := open(t, "")
	for i, rows := range []*named{
		{days: []int64{20000, 20000, 20001}, boats: []string{"Tern", "Tern", "Tern"}},
		{days: []int64{20005, 0, 20005, 20004}, boats: []string{"Tern", "Petrel", "", "Tern"}},
		{days: []int64{0}, boats: []string{""}},
	} {
		var noted Extent
		_, err := db.Bring(ctx, &Log{Name: "a.csv", SHA256: fmt.Sprint(i)}, noon, func(load *Load) error {
			r := batch.NewReader(ctx, rows, batch.Rows)
			defer r.Release()
			_, err := load.Insert(ctx, Sheet{Kind: "legs"}, r)
			return err
		}, func(load *Load) (Place, error) { noted = load.Extent; return Place{}, nil })
		if err != nil {
			t.Fatal(err)
		}
		all, err := db.Extents(ctx, int64(i+1))
		if err != nil || len(all) != 1 {
			t.Fatalf("%v, %v", all, err)
		}
		kept := all[int64(i+1)]
		slices.Sort(noted.Boats)
		slices.Sort(kept.Boats)
		if !reflect.DeepEqual(*kept, noted) {
			t.Errorf("noted %+v, kept %+v", noted, *kept)
		}
	}
}

// A season file of this version, opened by the next one: it holds what it held, a copy is
// kept as it was, and this version refuses it from then on, and the copy not.
func TestNextVersion(t *testing.T) {
	ctx := context.Background()
	dir := t.TempDir()
	path := filepath.Join(dir, "season.duckdb")
	db := open(t, path)
	if _, err := bring(ctx, db, "a.csv", &legs{n: 10}); err != nil {
		t.Fatal(err)
	}
	if err := db.Close(); err != nil {
		t.Fatal(err)
	}
	now := steps
	defer func() { steps = now }()
	steps = append(now[:len(now):len(now)], step{"next.sql", "ALTER TABLE log ADD COLUMN remark VARCHAR;"})
	next, err := Open(ctx, path)
	if err != nil {
		t.Fatal(err)
	}
	if got := count(t, next, entries); got != 10 {
		t.Errorf("%d entries, want 10", got)
	}
	older := next.Older()
	if filepath.Dir(older) != dir {
		t.Errorf("the copy is %q", older)
	}
	if err := next.Close(); err != nil {
		t.Fatal(err)
	}
	again, err := Open(ctx, path)
	if err != nil || again.Older() != "" {
		t.Fatalf("opened again: %v, a copy %q", err, again.Older())
	}
	if err := again.Close(); err != nil {
		t.Fatal(err)
	}
	steps = now
	for _, opened := range []func() error{
		func() error { _, err := Open(ctx, path); return err },
		func() error { _, err := OpenRead(ctx, path, false); return err },
	} {
		if err := opened(); !errors.Is(err, ErrNewer) || !strings.Contains(err.Error(), "later version of wakeledger") {
			t.Errorf("the next version's file: %v, want ErrNewer", err)
		}
	}
	kept := open(t, older)
	if got := count(t, kept, entries); got != 10 || kept.Older() != "" {
		t.Errorf("the copy holds %d entries, want 10; copied again: %q", got, kept.Older())
	}
}

// Of logs of two boats only those are held against each other that may tell the same legs.
func TestMayBeTwin(t *testing.T) {
	of := func(spells ...spell) *Extent {
		var e Extent
		for _, s := range spells {
			e.spell(s.day, s.start, s.until)
		}
		return &e
	}
	one := of(spell{20000, 25200, 36000})
	var many Extent
	for i := range int64(mostSpells + 1) {
		many.spell(i, 0, 3600)
	}
	for _, c := range []struct {
		name  string
		other *Extent
		want  bool
	}{
		{"the same", of(spell{1, 0, 3600}, spell{20000, 25200, 36000}), true},
		{"a minute later", of(spell{20000, 25200, 36060}), true},
		{"a minute earlier", of(spell{20000, 25200, 35940}), true},
		{"two minutes later", of(spell{20000, 25200, 36120}), false},
		{"another start", of(spell{20000, 25260, 36000}), false},
		{"another day", of(spell{20001, 25200, 36000}), false},
		{"no hours", of(), false},
		{"a row without a day", &Extent{Undated: true}, true},
		{"too many to keep", &many, true},
		{"not known", nil, true},
	} {
		if got := one.MayBeTwin(c.other); got != c.want || c.other != nil && c.other.MayBeTwin(one) != c.want {
			t.Errorf("%s: %v, want %v", c.name, got, c.want)
		}
	}
}
