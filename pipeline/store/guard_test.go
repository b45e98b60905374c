package store

import (
	"bytes"
	"context"
	"crypto/sha256"
	"database/sql"
	"errors"
	"fmt"
	"os"
	"path/filepath"
	"strings"
	"testing"

	"github.com/marcboeker/go-duckdb"
)

// season is a season file of one log, closed.
func season(t *testing.T) string {
	t.Helper()
	path := filepath.Join(t.TempDir(), "season.duckdb")
	db, err := Open(context.Background(), path)
	if err != nil {
		t.Fatal(err)
	}
	if _, err := bring(context.Background(), db, "a.csv", &legs{n: 3}); err != nil {
		t.Fatal(err)
	}
	if err := db.Close(); err != nil {
		t.Fatal(err)
	}
	return path
}

// spoil runs statements on a database of no matter what.
func spoil(t *testing.T, path string, statements ...string) {
	t.Helper()
	pool, err := sql.Open("duckdb", path)
	if err != nil {
		t.Fatal(err)
	}
	defer pool.Close()
	for _, s := range statements {
		if _, err := pool.Exec(s); err != nil {
			t.Fatalf("%s: %v", s, err)
		}
	}
}

func sum(t *testing.T, path string) string {
	t.Helper()
	b, err := os.ReadFile(path)
	if err != nil {
		t.Fatal(err)
	}
	return fmt.Sprintf("%x", sha256.Sum256(b))
}

// Somebody's season file may hold anything: what would be run in the place of a table of
// ours, or of a function that our questions use, is found before anything is asked.
func TestHostileSeasonFilesAreRefused(t *testing.T) {
	secret := filepath.Join(t.TempDir(), "secret.txt")
	if err := os.WriteFile(secret, []byte("the hidden bank"), 0o600); err != nil {
		t.Fatal(err)
	}
	read := "SELECT content FROM read_text('" + secret + "')"
	for name, statements := range map[string][]string{
		"a view for a table": {"DROP TABLE answer", "CREATE VIEW answer AS SELECT 'q' AS id, content AS " +
			"about, '' AS choice, '' AS said, now()::TIMESTAMP AS at FROM read_text('" + secret + "')"},
		"another text of our view": {"CREATE OR REPLACE VIEW open_question AS SELECT q.* REPLACE ((" + read +
			") AS brief) FROM question q"},
		"a macro for a function":  {"CREATE MACRO strftime(a, b) AS (" + read + ")"},
		"a macro for an operator": {`CREATE MACRO "||"(a, b) AS (` + read + ")"},
		"a table macro":           {"CREATE MACRO duckdb_tables() AS TABLE " + read},
		"a column that calculates": {"DROP TABLE answer", "CREATE TABLE answer (id VARCHAR NOT NULL, about " +
			"VARCHAR NOT NULL, choice VARCHAR NOT NULL, said VARCHAR AS (id || 'x'), at TIMESTAMP NOT NULL)"},
		"a default that calculates": {"ALTER TABLE answer ALTER COLUMN said SET DEFAULT current_user"},
		"a rule on a table": {"DROP TABLE answer", "CREATE TABLE answer (id VARCHAR NOT NULL CHECK " +
			"(length(id) > 0), about VARCHAR NOT NULL, choice VARCHAR NOT NULL, said VARCHAR NOT NULL, at TIMESTAMP " +
			"NOT NULL)"},
		"another type of a column":    {"ALTER TABLE answer ALTER COLUMN said TYPE BLOB"},
		"a column too many":           {"ALTER TABLE entry_kept ADD COLUMN secret VARCHAR"},
		"a column of another type":    {`ALTER TABLE entry_kept ADD COLUMN "Lure" BIGINT`},
		"a table that is missing":     {"DROP TABLE answer"},
		"a table too many":            {"CREATE TABLE more (x INTEGER)"},
		"a schema of its own":         {"CREATE SCHEMA evil", "CREATE VIEW evil.x AS " + read},
		"a type of its own":           {"CREATE TYPE mood AS ENUM ('a')"},
		"a sequence":                  {"CREATE SEQUENCE s"},
		"an index":                    {"CREATE INDEX i ON answer (id)"},
		"a version that is no figure": {"UPDATE setting SET value = 'x' WHERE name = 'schema'"},
	} {
		t.Run(name, func(t *testing.T) {
			path := season(t)
			spoil(t, path, statements...)
			before := sum(t, path)
			db, err := OpenRead(context.Background(), path, false)
			if db != nil && err == nil {
				db.Close()
			}
			if !errors.Is(err, ErrForeign) {
				t.Errorf("OpenRead: %v, want ErrForeign", err)
			}
			if w, err := Open(context.Background(), path); !errors.Is(err, ErrForeign) {
				if err == nil {
					w.Close()
				}
				t.Errorf("Open: %v, want ErrForeign", err)
			}
			if err != nil && strings.Contains(err.Error(), "hidden") {
				t.Error("the secret was read")
			}
			if sum(t, path) != before {
				t.Error("the file was changed")
			}
		})
	}
}

// A file that is opened to be read reads no other file, fetches nothing, writes nothing
// and cannot be told otherwise.
func TestOpenReadReadsTheSeasonFileAlone(t *testing.T) {
	path := season(t)
	before := sum(t, path)
	ctx := context.Background()
	db, err := OpenRead(ctx, path, false)
	if err != nil {
		t.Fatal(err)
	}
	second, err := OpenRead(ctx, path, false)
	if err != nil {
		t.Fatalf("a second reader beside the first: %v", err)
	}
	if n := count(t, second, entries); n != 3 {
		t.Errorf("%d entries, want 3", n)
	}
	for _, s := range []string{
		"SELECT * FROM read_text('" + path + "')",
		"COPY answer TO '" + path + ".csv'",
		"ATTACH '" + path + ".other' AS other",
		"INSTALL httpfs", "LOAD httpfs",
		"SET enable_external_access = true",
		"SET autoload_known_extensions = true",
		"CREATE TABLE x (i INTEGER)",
		"INSERT INTO setting VALUES ('a', 'b')",
		"DROP TABLE answer",
	} {
		if _, err := db.conn.ExecContext(ctx, s); err == nil {
			t.Errorf("%s: was done", s)
		}
	}
	if err := errors.Join(db.Close(), second.Close()); err != nil {
		t.Fatal(err)
	}
	if sum(t, path) != before {
		t.Error("the file was changed")
	}
	if _, err := os.Stat(path + ".other"); err == nil {
		t.Error("another file was made")
	}
}

// Another program's database stays as it is, whatever is asked of it.
func TestOpenMakesNothingInAnotherDatabase(t *testing.T) {
	for name, statements := range map[string][]string{
		"tables of its own": {"CREATE TABLE stock (x INTEGER)"},
		"a table of settings": {"CREATE TABLE setting (name VARCHAR, value VARCHAR)",
			"INSERT INTO setting VALUES ('schema', '3')"},
		"only a view": {"CREATE VIEW v AS SELECT 1 AS x"},
		"our settings and no more": {"CREATE TABLE setting (name VARCHAR NOT NULL, value VARCHAR NOT NULL)",
			"INSERT INTO setting VALUES ('schema', '3')"},
	} {
		path := filepath.Join(t.TempDir(), "other.duckdb")
		spoil(t, path, statements...)
		before := sum(t, path)
		if db, err := OpenRead(context.Background(), path, false); !errors.Is(err, ErrForeign) {
			t.Errorf("%s: OpenRead gives %v, %v; want ErrForeign", name, db, err)
		}
		if db, err := Open(context.Background(), path); !errors.Is(err, ErrForeign) {
			t.Errorf("%s: Open gives %v, %v; want ErrForeign", name, db, err)
		}
		if sum(t, path) != before {
			t.Errorf("%s: the file was changed", name)
		}
	}
}

// What a program leaves that was killed while it made a season file is made anew; a file
// that is anything else is not.
// What is left beside a season file that is gone is never taken into a new one.
func TestChangesOfASeasonFileThatIsGone(t *testing.T) {
	file := filepath.Join(t.TempDir(), "season.duckdb")
	if err := os.WriteFile(file+walEnding, []byte("x"), 0o600); err != nil {
		t.Fatal(err)
	}
	db, err := Open(t.Context(), file)
	if err == nil {
		db.Close()
	}
	if !errors.Is(err, ErrLeft) {
		t.Errorf("%v", err)
	}
	if _, err := os.Stat(file); !errors.Is(err, os.ErrNotExist) {
		t.Errorf("made: %v", err)
	}
}

func TestHalfMadeSeasonFilesAreMadeAnew(t *testing.T) {
	ctx := context.Background()
	born := filepath.Join(t.TempDir(), "born.duckdb")
	spoil(t, born) // a head, and no table yet
	head, err := os.ReadFile(born)
	if err != nil {
		t.Fatal(err)
	}
	for name, b := range map[string][]byte{"nothing": nil, "the first head": head[:4096],
		"half of a head": head[:700], "two heads": head[:2*4096]} {
		path := filepath.Join(t.TempDir(), "season.duckdb")
		if err := os.WriteFile(path, b, 0o600); err != nil {
			t.Fatal(err)
		}
		if _, err := OpenRead(ctx, path, false); !errors.Is(err, ErrEmpty) {
			t.Errorf("%s: OpenRead: %v, want ErrEmpty", name, err)
		}
		db, err := Open(ctx, path)
		if err != nil {
			t.Errorf("%s: %v", name, err)
			continue
		}
		if n := count(t, db, entries); n != 0 {
			t.Errorf("%s: %d entries, want none", name, n)
		}
		db.Close()
	}
	whole, err := os.ReadFile(season(t))
	if err != nil {
		t.Fatal(err)
	}
	for _, n := range []int{5000, 2 * 4096, 3 * 4096, 3*4096 + 100, len(whole) / 2, len(whole) - 1} {
		path := filepath.Join(t.TempDir(), "cut.duckdb")
		if err := os.WriteFile(path, whole[:n], 0o600); err != nil {
			t.Fatal(err)
		}
		if db, err := OpenRead(ctx, path, false); !errors.Is(err, ErrBroken) {
			if err == nil {
				db.Close()
			}
			t.Errorf("a season file cut off at %d: OpenRead: %v, want ErrBroken", n, err)
		}
		if db, err := Open(ctx, path); !errors.Is(err, ErrBroken) {
			if err == nil {
				db.Close()
			}
			t.Errorf("a season file cut off at %d: Open: %v, want ErrBroken", n, err)
		}
		if b, _ := os.ReadFile(path); !bytes.Equal(b, whole[:n]) {
			t.Errorf("a season file cut off at %d was changed", n)
		}
	}
	path := filepath.Join(t.TempDir(), "notes.txt")
	if err := os.WriteFile(path, []byte("what the captain wrote"), 0o600); err != nil {
		t.Fatal(err)
	}
	if _, err := Open(ctx, path); err == nil {
		t.Error("a text was taken for a half-made season file")
	}
	if b, _ := os.ReadFile(path); string(b) != "what the captain wrote" {
		t.Error("a text was written over")
	}
	empty := filepath.Join(t.TempDir(), "empty.duckdb")
	spoil(t, empty, "CREATE TABLE x (i INTEGER)", "DROP TABLE x")
	if db, err := Open(ctx, empty); err != nil {
		t.Errorf("a database without tables: %v", err)
	} else {
		db.Close()
	}
}

// A load that is killed leaves a file of changes beside the season file: reading takes it
// in and changes neither.
func TestOpenReadSeesWhatIsNotYetInTheFile(t *testing.T) {
	path := season(t)
	pool, err := sql.Open("duckdb", path)
	if err != nil {
		t.Fatal(err)
	}
	defer pool.Close()
	if _, err := pool.Exec("INSERT INTO setting VALUES ('planted', 'yes')"); err != nil {
		t.Fatal(err)
	}
	// as a kill leaves them
	dead := filepath.Join(t.TempDir(), "dead.duckdb")
	if err := errors.Join(copyFile(path, dead), copyFile(path+walEnding, dead+walEnding)); err != nil {
		t.Fatal(err)
	}
	before, changes := sum(t, dead), sum(t, dead+walEnding)
	db, err := OpenRead(context.Background(), dead, false)
	if err != nil {
		t.Fatal(err)
	}
	if v, err := db.Setting(context.Background(), "planted"); v != "yes" || err != nil {
		t.Errorf("setting %q, %v; want yes", v, err)
	}
	if err := db.Close(); err != nil {
		t.Fatal(err)
	}
	if sum(t, dead) != before || sum(t, dead+walEnding) != changes {
		t.Error("reading changed the file, or the changes beside it")
	}
}

func TestInWords(t *testing.T) {
	for _, c := range []struct{ err, want string }{
		{
			`duckdb error: IO Error: Could not set lock on file "/home/x/season.duckdb": Conflicting lock is held in /usr/bin/wakeledger (PID 17)`, "in use by another wakeledger (process 17)"},
		{"duckdb error: IO Error: Could not write file \"/x\": No space left on device", "no room left on the disk"},
		{"INTERNAL Error: Attempted to dereference unique_ptr that is NULL! 0x7f001", "may be damaged"},
	} {
		got := InWords(fmt.Errorf("insert: %w", &duckdb.Error{Msg: c.err})).Error()
		if !strings.Contains(got, c.want) {
			t.Errorf("%q is said as %q, want %q", c.err, got, c.want)
		}
		for _, leak := range []string{"duckdb error", "0x", "/home", "PID", "Error:"} {
			if strings.Contains(got, leak) {
				t.Errorf("%q comes through as %q", leak, got)
			}
		}
	}
	own := errors.New("log.csv: row 7: no date")
	if InWords(own) != own {
		t.Error("an error of our own is changed")
	}
}
