package store

import (
	"context"
	"errors"
	"fmt"
	"strings"
	"time"

	"github.com/apache/arrow-go/v18/arrow"
	"github.com/apache/arrow-go/v18/arrow/array"
)

// Load is one log on its way in.
type Load struct {
	ID     int64 // of the log
	Extent Extent
	Rows   int64

	db   *DB
	name string
}

// Place is where a log that was read goes in the season.
type Place struct {
	Same   int64   // the log is this one, read again; 0: it is not
	For    []int64 // it takes the place of these logs
	Drop   []int64 // logs with the same bytes that were replaced or forgotten: it stands for them
	Others []int64 // logs that it is not, by its owner's word
}

// Bring stores a log in one transaction and returns the number of its rows. fill inserts
// its sheets and completes l; settle says where it goes, when it can be held against the
// other logs. Where either fails, nothing has changed.
func (db *DB) Bring(ctx context.Context, l *Log, at time.Time, fill func(*Load) error,
	settle func(*Load) (Place, error)) (n int64, err error) {
	if !db.together {
		if err := db.tellRows(ctx); err != nil {
			return 0, err
		}
	}
	if l.Large {
		if err := db.exec(ctx, "frugal"); err != nil {
			return 0, err
		}
		defer func() { err = errors.Join(err, db.exec(context.WithoutCancel(ctx), "roomy")) }()
	}
	load := &Load{db: db, name: l.Name}
	err = db.transaction(ctx, func() error {
		if load.ID, err = db.nextNumber(ctx, "next_log"); err != nil {
			return err
		}
		if err := fill(load); err != nil {
			return err
		}
		err := db.exec(ctx, "insert_log", load.ID, l.Name, l.Folder, nullable(l.Boat),
			l.SHA256, nullable(l.Zone), l.Settings,
			strings.Join(l.Headings, listMark), load.Rows, at.UTC(), l.ChangedAt.UTC())
		if err != nil {
			return err
		}
		p, err := settle(load)
		if err != nil {
			return err
		}
		return db.place(ctx, load, p, at)
	})
	return load.Rows, err
}

// Together makes one transaction of all that f does. Where f fails, nothing has changed;
// it must fail where any part of it did.
func (db *DB) Together(ctx context.Context, f func() error) error {
	if err := db.tellRows(ctx); err != nil {
		return err
	}
	return db.transaction(ctx, func() error {
		db.together, db.repeated = true, repeated{}
		err := errors.Join(f(), db.repeated.close())
		if db.together = false; err != nil {
			return err
		}
		return db.changed(ctx)
	})
}

// place puts a log where it goes.
func (db *DB) place(ctx context.Context, load *Load, p Place, at time.Time) error {
	if p.Same != 0 || len(p.Drop) > 0 {
		db.repeated.numbers = nil // some are free again
	}
	for _, id := range p.Drop {
		if err := db.execAll(ctx, "drop_past", id); err != nil {
			return err
		}
	}
	for _, earlier := range p.For {
		if err := db.succeed(ctx, load.ID, earlier, at); err != nil {
			return err
		}
	}
	for _, other := range p.Others {
		if err := db.exec(ctx, "set_apart", load.ID, other); err != nil {
			return err
		}
	}
	if p.Same != 0 {
		if err := db.execAll(ctx, "forget_log", p.Same); err != nil {
			return err
		}
		if err := db.execAll(ctx, "renumber", load.ID, p.Same); err != nil {
			return err
		}
		load.ID = p.Same
	}
	return db.changed(ctx)
}

// Sheet is one sheet of a log.
type Sheet struct {
	No   int // from 0, in its file
	Name string
	Kind string
	Many bool // rows come in numbers, and faster than one thread stores them
}

// Insert stores the entries of one sheet as they come. The columns of r are
// columns of the table entry. It returns the number of rows.
func (l *Load) Insert(ctx context.Context, s Sheet, r array.RecordReader) (n int64, err error) {
	if err := l.db.widen(ctx, r.Schema()); err != nil {
		return 0, err
	}
	id, err := l.db.nextNumber(ctx, "next_sheet")
	if err != nil {
		return 0, err
	}
	if err := l.db.exec(ctx, "insert_sheet", id, l.ID, s.No, s.Name, s.Kind); err != nil {
		return 0, err
	}
	err = l.db.wide(ctx, s.Many, func() error {
		n, err = l.db.insertArrow(ctx, "entry_kept", fmt.Sprintf("%d AS sheet_id", id), l.Extent.noting(r))
		return err
	})
	l.Rows += n
	return n, err
}

// widen gives the table of entries the columns of a sheet that no log before had.
func (db *DB) widen(ctx context.Context, schema *arrow.Schema) (err error) {
	if db.unused == nil {
		if db.unused, err = db.columns(ctx, "missing_columns"); err != nil {
			return err
		}
	}
	for _, f := range schema.Fields() {
		if typ, ok := db.unused[f.Name]; ok {
			if err := db.addColumn(ctx, "add_column", f.Name, typ); err != nil {
				return err
			}
			delete(db.unused, f.Name)
		}
	}
	return nil
}

// columns are the types of the columns that a statement lists, by name.
func (db *DB) columns(ctx context.Context, name string) (map[string]string, error) {
	rows, err := db.Query(ctx, statement(name))
	if err != nil {
		return nil, fmt.Errorf("%s: %w", name, err)
	}
	types := map[string]string{}
	err = each(rows, func() error {
		var column, typ string
		err := rows.Scan(&column, &typ)
		types[column] = typ
		return err
	})
	return types, err
}

func (db *DB) addColumn(ctx context.Context, to, name, typ string) error {
	if _, err := db.conn.ExecContext(ctx, fmt.Sprintf(statement(to), identifier(name), typ)); err != nil {
		return fmt.Errorf("column %s: %w", name, err)
	}
	return nil
}

// SetAside keeps rows that could not be used. The columns of r are columns of
// the table set_aside.
func (l *Load) SetAside(ctx context.Context, r array.RecordReader) error {
	_, err := l.db.insertArrow(ctx, "set_aside", fmt.Sprintf("%d AS log_id, %s AS file, 'read' AS stage", l.ID,
		literal(l.name)), r)
	return err
}

// Doubt keeps what rows were kept with, but may be wrong. The columns of r are
// columns of the table reading_doubt.
func (l *Load) Doubt(ctx context.Context, r array.RecordReader) error {
	_, err := l.db.insertArrow(ctx, "reading_doubt", fmt.Sprintf("%d AS log_id, %s AS file", l.ID, literal(l.name)), r)
	return err
}
