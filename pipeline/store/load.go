package store

import (
	"context"
	"database/sql"
	"errors"
	"fmt"
	"strings"
	"time"

	"github.com/apache/arrow-go/v18/arrow"
	"github.com/apache/arrow-go/v18/arrow/array"
)

// Log is a file of one boat's log.
type Log struct {
	Name   string
	Boat   string // the boat that the user named for it; "" where the log names its own
	SHA256 string // of its bytes and of the settings that it is read with
	Zone   string // time zone where the log names none; ""
}

// Known is a log that the season file holds already.
type Known struct {
	Found  bool
	ID     int64
	SHA256 string
	Rows   int64
}

// Find tells whether a log of this name and boat was loaded before.
func (db *DB) Find(ctx context.Context, l Log) (Known, error) {
	k := Known{Found: true}
	err := db.conn.QueryRowContext(ctx, statement("find_log"), l.Name, nullable(l.Boat)).Scan(&k.ID, &k.SHA256, &k.Rows)
	if errors.Is(err, sql.ErrNoRows) {
		return Known{}, nil
	}
	return k, err
}

func nullable(s string) any {
	if s == "" {
		return nil
	}
	return s
}

// Load is one log on its way in.
type Load struct {
	db   *DB
	id   int64
	log  Log
	rows int64
}

// Replace stores a log in one transaction, in place of what an earlier load of
// it left. fill inserts its sheets and sees to l.SHA256; where it fails, nothing
// has changed. It returns the rows stored.
func (db *DB) Replace(ctx context.Context, l *Log, at time.Time, fill func(*Load) error) (int64, error) {
	known, err := db.Find(ctx, *l)
	if err != nil {
		return 0, err
	}
	if err := db.unlessGrouped(ctx, "frugal"); err != nil {
		return 0, err
	}
	load := &Load{db: db, id: known.ID, log: *l}
	err = db.transaction(ctx, func() error {
		if known.Found {
			if err := db.forget(ctx, known.ID); err != nil {
				return err
			}
		} else if err := db.conn.QueryRowContext(ctx, statement("next_log")).Scan(&load.id); err != nil {
			return err
		}
		if err := fill(load); err != nil {
			return err
		}
		if err := db.exec(ctx, "insert_log", load.id, l.Name, nullable(l.Boat), l.SHA256, nullable(l.Zone), load.rows, at.UTC()); err != nil {
			return err
		}
		return db.markStale(ctx)
	})
	return load.rows, errors.Join(err, db.unlessGrouped(context.WithoutCancel(ctx), "roomy"))
}

func (db *DB) forget(ctx context.Context, id int64) error {
	for _, s := range strings.Split(statement("forget_log"), ";") {
		if _, err := db.conn.ExecContext(ctx, s, id); err != nil {
			return err
		}
	}
	return nil
}

// Sheet is one sheet of a log.
type Sheet struct {
	No   int // from 0, in its file
	Name string
	Kind string
	Slow bool // rows come no faster than one thread stores them: a second would only take memory
}

// Insert stores the entries of one sheet as they come. The columns of r are
// columns of the table entry. It returns the number of rows.
func (l *Load) Insert(ctx context.Context, s Sheet, r array.RecordReader) (n int64, err error) {
	if err := l.db.widen(ctx, r.Schema()); err != nil {
		return 0, err
	}
	var id int64
	if err := l.db.conn.QueryRowContext(ctx, statement("add_sheet"), l.id, s.No, s.Name, s.Kind).Scan(&id); err != nil {
		return 0, fmt.Errorf("add_sheet: %w", err)
	}
	insert := l.db.insertArrow
	if s.Slow {
		insert = l.db.insertSlow
	}
	n, err = insert(ctx, "entry_kept", fmt.Sprintf("%d AS sheet_id", id), r)
	l.rows += n
	return n, err
}

// insertSlow is insertArrow for rows that come no faster than one thread stores them.
func (db *DB) insertSlow(ctx context.Context, table, extra string, r array.RecordReader) (n int64, err error) {
	if !db.grouped {
		if err := db.exec(ctx, "one_thread"); err != nil {
			return 0, err
		}
		defer func() { err = errors.Join(err, db.exec(context.WithoutCancel(ctx), "all_threads")) }()
	}
	return db.insertArrow(ctx, table, extra, r)
}

// widen gives the table of entries the columns of a sheet that no log before had.
func (db *DB) widen(ctx context.Context, schema *arrow.Schema) error {
	missing, err := db.missing(ctx)
	if err != nil {
		return err
	}
	for _, f := range schema.Fields() {
		typ, ok := missing[f.Name]
		if !ok {
			continue
		}
		if _, err := db.conn.ExecContext(ctx, fmt.Sprintf(statement("add_column"), identifier(f.Name), typ)); err != nil {
			return fmt.Errorf("column %s: %w", f.Name, err)
		}
		delete(missing, f.Name)
	}
	return nil
}

// SetAside keeps rows that could not be used. The columns of r are columns of
// the table set_aside.
func (l *Load) SetAside(ctx context.Context, r array.RecordReader) error {
	_, err := l.db.insertArrow(ctx, "set_aside", fmt.Sprintf("%d AS log_id, %s AS file, 'read' AS stage", l.id, literal(l.log.Name)), r)
	return err
}

// Doubt keeps what rows were kept with, but may be wrong. The columns of r are
// columns of the table reading_doubt.
func (l *Load) Doubt(ctx context.Context, r array.RecordReader) error {
	_, err := l.db.insertArrow(ctx, "reading_doubt", fmt.Sprintf("%d AS log_id, %s AS file", l.id, literal(l.log.Name)), r)
	return err
}
