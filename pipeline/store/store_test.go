package store

import (
	"context"
	"database/sql"
	"errors"
	"fmt"
	"path/filepath"
	"strings"
	"testing"
	"time"

	"wakeledger/pipeline/batch"
	"wakeledger/pipeline/entry"
)

var noon = time.Date(2026, 7, 4, 12, 0, 0, 0, time.UTC)

// legs yields n legs of one hour, then fails with err if there is one.
type legs struct {
	n, at  int64
	err    error
	before func(at int64)
}

func (l *legs) Fields() []entry.Field {
	return []entry.Field{{Name: "row", Type: entry.Int}, {Name: "date", Type: entry.Day},
		{Name: "start_s", Type: entry.Int},
		{Name: "end_s", Type: entry.Int}, {Name: "notes", Type: entry.Text}}
}

func (l *legs) Next() ([]entry.Value, bool, error) {
	if l.at == l.n {
		return nil, false, l.err
	}
	l.at++
	if l.before != nil {
		l.before(l.at)
	}
	return []entry.Value{entry.OfInt(l.at), entry.OfInt(20000 + l.at), entry.OfInt(7 * 3600), entry.OfInt(8 * 3600),
		entry.OfText(strings.Repeat("calm ", 10))}, true, nil
}

func open(t *testing.T, path string) *DB {
	t.Helper()
	db, err := Open(context.Background(), path)
	if err != nil {
		t.Fatal(err)
	}
	t.Cleanup(func() { db.Close() })
	return db
}

// bring stores legs as a log, in place of the log of the season that has its name.
func bring(ctx context.Context, db *DB, name string, l *legs) (int64, error) {
	all, err := db.Logs(ctx)
	if err != nil {
		return 0, err
	}
	return db.Bring(ctx, &Log{Name: name, SHA256: fmt.Sprint(name, l.n)}, noon, func(load *Load) error {
		r := batch.NewReader(ctx, l, batch.Rows)
		defer r.Release()
		_, err := load.Insert(ctx, Sheet{Name: "O'Brien's \"sheet\"", Kind: "legs", Many: true}, r)
		return err
	}, func(*Load) (p Place, err error) {
		for _, o := range all {
			if o.State == In && o.Name == name {
				p.For = []int64{o.ID}
			}
		}
		return p, nil
	})
}

func count(t *testing.T, db *DB, query string) int {
	t.Helper()
	rows, err := db.Query(context.Background(), query)
	if err != nil {
		t.Fatal(err)
	}
	defer rows.Close()
	n := -1
	for rows.Next() {
		if err := rows.Scan(&n); err != nil {
			t.Fatal(err)
		}
	}
	return n
}

const entries = "SELECT count(*) FROM entry ORDER BY 1"

func TestBringTakesThePlaceOfTheEarlierRows(t *testing.T) {
	path := filepath.Join(t.TempDir(), "season.duckdb")
	db := open(t, path)
	ctx := context.Background()
	for _, step := range []struct {
		log  string
		rows int64
		want int
	}{{"a.csv", 10, 10}, {"b.csv", 5, 15}, {"a.csv", 20000, 20005}, {"a.csv", 3, 8}, {"b.csv", 0, 3}} {
		n, err := bring(ctx, db, step.log, &legs{n: step.rows})
		if err != nil || n != step.rows {
			t.Fatalf("%s: %d rows, %v; want %d", step.log, n, err, step.rows)
		}
		if got := count(t, db, entries); got != step.want {
			t.Errorf("after %s with %d rows: %d entries, want %d", step.log, step.rows, got, step.want)
		}
	}
	if got := count(t, db, "SELECT count(DISTINCT log_id) FROM main.log ORDER BY 1"); got != 2 {
		t.Errorf("%d logs, want 2", got)
	}
	if err := db.Close(); err != nil {
		t.Fatal(err)
	}
	if got := count(t, open(t, path), entries); got != 3 {
		t.Errorf("after opening again: %d entries, want 3", got)
	}
}

// A reader that fails in mid-stream, or whose load is cancelled, must leave the
// season file as it was, and the file must stay usable.
func TestFailureInMidStreamChangesNothing(t *testing.T) {
	db := open(t, filepath.Join(t.TempDir(), "season.duckdb"))
	if _, err := bring(context.Background(), db, "a.csv", &legs{n: 10}); err != nil {
		t.Fatal(err)
	}
	cause := errors.New("the file ended in the middle")
	if _, err := bring(context.Background(), db, "a.csv", &legs{n: 30000, err: cause}); !errors.Is(err, cause) {
		t.Errorf("got %v, want the cause", err)
	}
	ctx, cancel := context.WithCancel(context.Background())
	_, err := bring(ctx, db, "a.csv", &legs{n: 1 << 40, before: func(at int64) {
		if at == 50000 {
			cancel()
		}
	}})
	if !errors.Is(err, context.Canceled) {
		t.Errorf("got %v, want the cancel", err)
	}
	if got := count(t, db, entries); got != 10 {
		t.Errorf("%d entries, want the 10 from before", got)
	}
	if _, err := bring(context.Background(), db, "a.csv", &legs{n: 7}); err != nil || count(t, db, entries) != 7 {
		t.Errorf("a later load: %v, %d entries, want 7", err, count(t, db, entries))
	}
}

func TestOpenRefusesWhatIsNoSeasonFile(t *testing.T) {
	ctx := context.Background()
	dir := t.TempDir()
	db := open(t, filepath.Join(dir, "newer.duckdb"))
	if err := db.PutSetting(ctx, "schema", "99"); err != nil {
		t.Fatal(err)
	}
	db.Close()
	if _, err := Open(ctx, filepath.Join(dir, "newer.duckdb")); !errors.Is(err, ErrNewer) {
		t.Errorf("a later version's file: %v, want ErrNewer", err)
	}

	foreign, err := sql.Open("duckdb", filepath.Join(dir, "foreign.duckdb"))
	if err != nil {
		t.Fatal(err)
	}
	if _, err := foreign.Exec("CREATE TABLE setting (name VARCHAR, value VARCHAR)"); err != nil {
		t.Fatal(err)
	}
	foreign.Close()
	if _, err := Open(ctx, filepath.Join(dir, "foreign.duckdb")); err == nil ||
		!strings.Contains(err.Error(), "no season file") {
		t.Errorf("a foreign database: %v", err)
	}
	if _, err := Open(ctx, filepath.Join(dir, "nowhere", "season.duckdb")); err == nil {
		t.Error("a folder that is not there: no error")
	}
}

// Every statement that answers with rows has a total order, or one row.
func TestStatementsAreOrdered(t *testing.T) {
	dir, err := files.ReadDir("sql")
	if err != nil {
		t.Fatal(err)
	}
	for _, f := range dir {
		b, err := files.ReadFile("sql/" + f.Name())
		if err != nil {
			t.Fatal(err)
		}
		text := strings.ToUpper(string(b))
		lines := strings.Split(text, "\n")
		first := ""
		for _, l := range lines {
			if l = strings.TrimSpace(l); l != "" && !strings.HasPrefix(l, "--") {
				first = l
				break
			}
		}
		if strings.HasPrefix(first, "SELECT") && !strings.Contains(text, "ORDER BY") {
			t.Errorf("%s has no ORDER BY", f.Name())
		}
	}
}

func TestZoneOffsets(t *testing.T) {
	loc, err := time.LoadLocation("Pacific/Auckland")
	if err != nil {
		t.Fatal(err)
	}
	rows := offsets("Pacific/Auckland", loc, 2026, 2027)
	// New Zealand left daylight time on 5 April 2026 at 03:00 and takes it up on
	// 27 September at 02:00 (Time (Daylight Time) Order 2007).
	want := []struct {
		local  string
		offset int
	}{{"2026-01-01 00:00", 13 * 3600}, {"2026-04-05 02:00", 12 * 3600}, {"2026-09-27 03:00", 13 * 3600}}
	if len(rows) != len(want) {
		t.Fatalf("%d offsets, want %d: %v", len(rows), len(want), rows)
	}
	for i, w := range want {
		if got := rows[i][1].(time.Time).Format("2006-01-02 15:04"); got != w.local || rows[i][2] != w.offset {
			t.Errorf("offset %d: from %s %v, want %s %d", i, got, rows[i][2], w.local, w.offset)
		}
	}
}
