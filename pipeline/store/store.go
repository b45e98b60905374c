package store

import (
	"context"
	"database/sql"
	"embed"
	"errors"
	"fmt"
	"io/fs"
	"net/url"
	"path"
	"time"

	"github.com/marcboeker/go-duckdb" // the driver; see also arrow.go
)

//go:embed schema derive sql
var files embed.FS

// step is one of the schema: a change that turns a season file of one version into one of
// the next. What was released is never changed; a new file is added.
type step struct{ name, text string }

// steps are all that this program knows, in their order.
var steps = schemaSteps()

func schemaSteps() (all []step) {
	names, err := fs.Glob(files, "schema/*.sql")
	for _, name := range names {
		b, e := files.ReadFile(name)
		err = errors.Join(err, e)
		all = append(all, step{path.Base(name), string(b)})
	}
	if err != nil {
		panic(err) // they are part of the program
	}
	return all
}

// version is that of the season files which this program makes: the number of steps.
func version() int { return len(steps) }

// ErrNewer is returned by Open for a season file that a later version made.
var ErrNewer = errors.New("the season file was made by a later version of wakeledger: open it with that one")

// DB is an open season file. It has one connection and is not safe for
// concurrent use.
type DB struct {
	pool   *sql.DB
	conn   *sql.Conn
	file   string
	older  string // Open: where the season file is as it was, of an earlier version; "": it was of this one
	behind bool   // OpenRead: its schema is of an earlier version
	writes bool   // openFile: what is in it may change
	told   bool   // the views that logs are compared by are made
	// within Together: what would be a transaction is part of one
	together bool
	repeated repeated
	unused   map[string]string // columns, with their types, that the table of entries has not yet; nil: not looked for
	atClose  func() error      // nil: nothing to do
}

// Open opens the season file at path, making it where there is none. An empty
// path is a season in memory. The error says what stands in the way.
func Open(ctx context.Context, file string) (*DB, error) {
	if file != "" {
		if err := prepare(ctx, file); err != nil {
			return nil, err
		}
	}
	return openFile(ctx, file)
}

// options are how the database is to work; to set them one by one later takes longer than
// most questions.
func options() url.Values {
	return url.Values{
		// Past this it works from files beside the season file.
		"memory_limit": {"1GB"},
		// What most boats log is worked out sooner by one thread than handed to two: see wide.
		"threads": {"1"},
		// Rows carry their places, so the order of insertion need not be kept: both cores can
		// then compress what comes in.
		"preserve_insertion_order": {"false"},
		// A season file may have been sent by somebody: nothing is fetched and nothing is
		// loaded that this program does not hold.
		"autoinstall_known_extensions": {"false"},
		"autoload_known_extensions":    {"false"},
		"allow_community_extensions":   {"false"},
	}
}

// connect opens the database in a file, or one in memory where file is "".
func connect(ctx context.Context, file string, o url.Values) (*DB, error) {
	pool, err := sql.Open("duckdb", file+"?"+o.Encode())
	if err != nil {
		return nil, err
	}
	pool.SetMaxOpenConns(1)
	conn, err := pool.Conn(ctx)
	if err != nil {
		return nil, errors.Join(err, pool.Close())
	}
	return &DB{pool: pool, conn: conn, file: file}, nil
}

// wide runs f with all threads: for many rows.
func (db *DB) wide(ctx context.Context, many bool, f func() error) error {
	if !many || db.together {
		return f()
	}
	if err := db.exec(ctx, "all_threads"); err != nil {
		return err
	}
	return errors.Join(f(), db.exec(context.WithoutCancel(ctx), "one_thread"))
}

// openFile opens a file that is a season file, or is to be one.
func openFile(ctx context.Context, file string) (*DB, error) {
	db, err := connect(ctx, file, options())
	if err != nil {
		return nil, trouble(file, err)
	}
	if again, err := db.keepOlder(ctx); err != nil || again {
		if err = errors.Join(err, db.Close()); err != nil {
			return nil, trouble(file, err)
		}
		older, err := CopyBeside(file, "as it was", time.Now())
		if err != nil {
			return nil, err
		}
		if db, err = openFile(context.WithValue(ctx, copied{}, true), file); err != nil {
			return nil, err
		}
		db.older = older
		return db, nil
	}
	if err := db.migrate(ctx); err != nil {
		db.Close()
		return nil, trouble(file, err)
	}
	db.writes = true
	return db, nil
}

// copied marks the opening of a season file of which there is a copy beside.
type copied struct{}

// keepOlder reports whether a season file of an earlier version must be copied before it
// is brought to this one, which cannot be undone.
func (db *DB) keepOlder(ctx context.Context) (bool, error) {
	if db.file == "" || ctx.Value(copied{}) != nil {
		return false, nil
	}
	have, err := db.schemaVersion(ctx)
	return have > 0 && have < version(), err
}

// Older names the copy of the season file as it was before Open brought it up to date; "" is none.
func (db *DB) Older() string { return db.older }

// Close closes the season file.
func (db *DB) Close() error {
	err := errors.Join(db.pressed(), db.conn.Close(), db.pool.Close())
	if db.atClose != nil {
		err = errors.Join(err, db.atClose())
	}
	return err
}

// pressed has the database write few rows as they are when it closes a season file that was
// opened for writing: to try how each column is best compressed takes longer than all else.
func (db *DB) pressed() error {
	if !db.writes {
		return nil
	}
	rows, pieces, err := db.rowsKept(context.Background())
	if err != nil || rows+pieces > fewRows {
		return nil // a season file that cannot be read closes as it can
	}
	return db.exec(context.Background(), "as_they_are")
}

// migrate brings the schema to this program's version in one transaction.
func (db *DB) migrate(ctx context.Context) error {
	have, err := db.schemaVersion(ctx)
	if err != nil || have == version() {
		return err
	}
	if have > version() {
		return ErrNewer
	}
	return db.transaction(ctx, func() error {
		for _, s := range steps[have:] {
			if err := db.runText(ctx, s.name, s.text); err != nil {
				return err
			}
		}
		return db.PutSetting(ctx, "schema", fmt.Sprint(version()))
	})
}

func (db *DB) schemaVersion(ctx context.Context) (int, error) {
	v, err := db.Setting(ctx, "schema")
	var missing *duckdb.Error
	if errors.As(err, &missing) && missing.Type == duckdb.ErrorTypeCatalog {
		return 0, nil // there is no table of settings yet
	}
	if err != nil {
		return 0, err
	}
	var n int
	if _, err := fmt.Sscan(v, &n); err != nil {
		return 0, ErrForeign
	}
	return n, nil
}

// statement returns the text of sql/NAME.sql; the names are this package's own.
func statement(name string) string {
	b, err := files.ReadFile("sql/" + name + ".sql")
	if err != nil {
		return "-- no statement " + name
	}
	return string(b)
}

func (db *DB) exec(ctx context.Context, name string, args ...any) error {
	if db.together && len(args) > 0 {
		return db.repeated.exec(ctx, db.conn, name, args)
	}
	if _, err := db.conn.ExecContext(ctx, statement(name), args...); err != nil {
		return fmt.Errorf("%s: %w", name, err)
	}
	return nil
}

func (db *DB) runText(ctx context.Context, name, text string) error {
	if _, err := db.conn.ExecContext(ctx, text); err != nil {
		return fmt.Errorf("%s: %w", name, err)
	}
	return nil
}

// transaction runs f and commits, or rolls back where f fails or the commit does.
func (db *DB) transaction(ctx context.Context, f func() error) error {
	if db.together {
		return f()
	}
	if err := db.begin(ctx); err != nil {
		return err
	}
	err := f()
	if err == nil {
		err = ctx.Err()
	}
	if err == nil {
		if err = db.exec(ctx, "commit"); err == nil {
			return nil
		}
		err = trouble(db.file, err)
	}
	db.unused = nil
	// the context may be the reason: the way back must not depend on it
	return errors.Join(err, db.exec(context.WithoutCancel(ctx), "rollback"))
}

// begin opens a transaction. One that is stopped midway might be open with nobody to know
// of it, so it is not stopped.
func (db *DB) begin(ctx context.Context) error {
	if err := ctx.Err(); err != nil {
		return err
	}
	return db.exec(context.WithoutCancel(ctx), "begin")
}

// Query runs a query that reads; the caller closes the rows.
func (db *DB) Query(ctx context.Context, query string, args ...any) (*sql.Rows, error) {
	return db.conn.QueryContext(ctx, query, args...)
}

// Setting is a value kept in the season file, "" where there is none.
func (db *DB) Setting(ctx context.Context, name string) (string, error) {
	var v string
	err := db.conn.QueryRowContext(ctx, statement("get_setting"), name).Scan(&v)
	if errors.Is(err, sql.ErrNoRows) {
		return "", nil
	}
	return v, err
}

// PutSetting keeps a value in the season file.
func (db *DB) PutSetting(ctx context.Context, name, value string) error {
	if err := db.exec(ctx, "set_setting", name); err != nil {
		return err
	}
	return db.exec(ctx, "add_setting", name, value)
}
