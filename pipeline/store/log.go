package store

import (
	"context"
	"database/sql"
	"fmt"
	"strings"
	"time"
)

// Log is one log of the season file, or one that was.
type Log struct {
	ID        int64
	Name      string // of its file
	Folder    string // the last part of the folder that the file was in
	Label     string // how it is called: its name, or more where several have that
	Boat      string // the boat that the user named for it, "" where none; of Logs: the boats that it is of
	SHA256    string // of its file's bytes
	Zone      string // time zone where the log names none; ""
	Settings  string // JSON: what its owner said of reading it
	Headings  []string
	ChangedAt time.Time // when its file was last changed
	Large     bool      // of Bring: it comes in a stream, for which memory is kept free

	// as the season file has it
	Rows       int64
	State      string // In, Replaced or Forgotten
	ReplacedBy int64
	Track      bool

	// of Logs alone
	LoadedAt    time.Time
	First, Last string // days, as 2026-07-04; "" where they are not known
	SetAside    int64
	Questions   int64
	Replaced    string // the numbers of logs whose place it took
	LeftAt      time.Time
}

// States of a log.
const (
	In        = "in"
	Replaced  = "replaced"
	Forgotten = "forgotten"
)

func nullable(s string) any {
	if s == "" {
		return nil
	}
	return s
}

// Logs lists all logs: those of the season by boat and day, then those that were.
func (db *DB) Logs(ctx context.Context) ([]Log, error) {
	rows, err := db.Query(ctx, statement("logs"))
	if err != nil {
		return nil, fmt.Errorf("logs: %w", err)
	}
	var all []Log
	err = each(rows, func() error {
		var l Log
		var headings string
		var changed, left sql.NullTime
		err := rows.Scan(&l.ID, &l.Label, &l.Name, &l.Folder, &l.Boat, &l.SHA256, &l.Settings, &headings,
			&l.Rows, &l.LoadedAt, &changed,
			&l.First, &l.Last, &l.SetAside, &l.Questions, &l.Replaced, &l.State, &left, &l.ReplacedBy, &l.Track)
		l.ChangedAt, l.LeftAt = changed.Time, left.Time
		if headings != "" {
			l.Headings = strings.Split(headings, listMark)
		}
		all = append(all, l)
		return err
	})
	return all, err
}

// LogHeads lists all logs by number, with what Log has of them but for that of Logs alone.
func (db *DB) LogHeads(ctx context.Context) ([]Log, error) {
	rows, err := db.Query(ctx, statement("log_heads"))
	if err != nil {
		return nil, fmt.Errorf("log_heads: %w", err)
	}
	var all []Log
	err = each(rows, func() error {
		var l Log
		var headings string
		var changed sql.NullTime
		err := rows.Scan(&l.ID, &l.Label, &l.Name, &l.Folder, &l.Boat, &l.SHA256, &l.Settings, &headings, &l.Rows,
			&changed, &l.State, &l.ReplacedBy, &l.Track)
		if l.ChangedAt = changed.Time; headings != "" {
			l.Headings = strings.Split(headings, listMark)
		}
		all = append(all, l)
		return err
	})
	return all, err
}

// Leave takes logs out of the season, in one transaction. All that was read of them is kept.
func (db *DB) Leave(ctx context.Context, ids []int64, at time.Time) error {
	return db.transaction(ctx, func() error {
		for _, id := range ids {
			if err := db.leave(ctx, id, Forgotten, 0, at); err != nil {
				return err
			}
		}
		return db.changed(ctx)
	})
}

// succeed puts log id into the place of an earlier one.
func (db *DB) succeed(ctx context.Context, id, earlier int64, at time.Time) error {
	if err := db.exec(ctx, "inherit_apart", id, earlier); err != nil {
		return err
	}
	return db.leave(ctx, earlier, Replaced, id, at)
}

func (db *DB) leave(ctx context.Context, id int64, state string, by int64, at time.Time) error {
	missing, err := db.columns(ctx, "missing_past")
	if err != nil {
		return err
	}
	for name, typ := range missing {
		if err := db.addColumn(ctx, "add_past_column", name, typ); err != nil {
			return err
		}
	}
	if err := db.execAll(ctx, "leave", id); err != nil {
		return err
	}
	var successor any
	if by != 0 {
		successor = by
	}
	if err := db.exec(ctx, "left_state", id, state, at.UTC(), successor); err != nil {
		return err
	}
	return db.execAll(ctx, "forget_log", id)
}

// ComeBack brings a log that was back into the season, in one transaction. settle says
// where it goes among the others; it must not say Same or Drop.
func (db *DB) ComeBack(ctx context.Context, id int64, at time.Time, settle func() (Place, error)) error {
	if err := db.tellRows(ctx); err != nil {
		return err
	}
	return db.transaction(ctx, func() error {
		if err := db.execAll(ctx, "come_back", id); err != nil {
			return err
		}
		if err := db.execAll(ctx, "drop_past", id); err != nil {
			return err
		}
		p, err := settle()
		if err != nil {
			return err
		}
		return db.place(ctx, &Load{ID: id, db: db}, p, at)
	})
}

// Tidy removes all that is kept of logs that were.
func (db *DB) Tidy(ctx context.Context) error {
	all, err := db.LogHeads(ctx)
	if err != nil {
		return err
	}
	return db.transaction(ctx, func() error {
		for _, l := range all {
			if l.State == In {
				continue
			}
			if err := db.execAll(ctx, "drop_past", l.ID); err != nil {
				return err
			}
		}
		return nil
	})
}

// changed sets to rights what depends on which logs there are, within their transaction.
func (db *DB) changed(ctx context.Context) error {
	if db.together {
		return nil // Together does, once
	}
	res, err := db.conn.ExecContext(ctx, statement("labels"))
	if err != nil {
		return fmt.Errorf("labels: %w", err)
	}
	if n, err := res.RowsAffected(); err != nil || n > 0 {
		if err != nil {
			return err
		}
		if err := db.execAll(ctx, "label_rows"); err != nil {
			return err
		}
	}
	return db.PutSetting(ctx, "derived", "stale")
}

// Boats are those of the season, as they are shown.
func (db *DB) Boats(ctx context.Context) ([]string, error) {
	rows, err := db.Query(ctx, statement("boats"))
	if err != nil {
		return nil, fmt.Errorf("boats: %w", err)
	}
	var all []string
	err = each(rows, func() error {
		var b string
		err := rows.Scan(&b)
		all = append(all, b)
		return err
	})
	return all, err
}

// BoatNames are the names that are shown otherwise than they were logged.
func (db *DB) BoatNames(ctx context.Context) (map[string]string, error) {
	return db.columns(ctx, "boat_names")
}

// RenameBoat shows all rows of a boat under another name.
func (db *DB) RenameBoat(ctx context.Context, from, to string) error {
	return db.renaming(ctx, "rename_boat", from, to)
}

// PartBoat shows rows that were logged under a name under that name again.
func (db *DB) PartBoat(ctx context.Context, logged string) error {
	return db.renaming(ctx, "part_boat", logged)
}

func (db *DB) renaming(ctx context.Context, statement string, names ...any) error {
	return db.transaction(ctx, func() error {
		if err := db.execAll(ctx, statement, names...); err != nil {
			return err
		}
		if err := db.execAll(ctx, "relabel_boats"); err != nil {
			return err
		}
		return db.changed(ctx)
	})
}

// execAll runs the statements of a file one after another, each with those of the
// arguments that it asks for.
func (db *DB) execAll(ctx context.Context, name string, args ...any) error {
	for _, s := range strings.Split(statement(name), ";\n") {
		n := len(args)
		for n > 0 && !strings.Contains(s, fmt.Sprintf("$%d", n)) {
			n--
		}
		if _, err := db.conn.ExecContext(ctx, s, args[:n]...); err != nil {
			return fmt.Errorf("%s: %w", name, err)
		}
	}
	return nil
}
