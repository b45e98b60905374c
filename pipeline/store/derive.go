package store

import (
	"context"
	"database/sql"
	"fmt"
	"io/fs"
	"path"
	"slices"
	"strings"
	"time"

	"wakeledger/pipeline/spelling"
	"wakeledger/pipeline/zone"
)

// Band is one half-open class [Lo, Hi) of a factor that is a number; an infinite
// Hi is and up.
type Band struct {
	Factor string
	Lo, Hi float64
	Level  string
}

// Stale tells whether the entries have changed since the last Derive.
func (db *DB) Stale(ctx context.Context) (bool, error) {
	v, err := db.Setting(ctx, "derived")
	return v == "stale", err
}

// Derive makes the season's tables from its entries, in one transaction, and
// keeps the settings that they were made under. finish is called in it, with the
// tables made, to add what is not made by SQL.
func (db *DB) Derive(ctx context.Context, settings map[string]string, bands []Band, finish func() error) error {
	return db.transaction(ctx, func() error {
		for name, value := range settings {
			if err := db.PutSetting(ctx, name, value); err != nil {
				return err
			}
		}
		if err := db.putBands(ctx, bands); err != nil {
			return err
		}
		if err := db.putZones(ctx); err != nil {
			return err
		}
		if err := db.runSteps(ctx); err != nil {
			return err
		}
		if err := finish(); err != nil {
			return err
		}
		return db.PutSetting(ctx, "derived", "fresh")
	})
}

// fewRows of entries are put together with their boats and trips once, in a table; more than
// that would take too much memory, and are put together where they are needed, by a view.
const fewRows = 20_000

// rowsKept is how many rows of logs and pieces of tracks the season has.
func (db *DB) rowsKept(ctx context.Context) (rows, pieces int64, err error) {
	if err := db.conn.QueryRowContext(ctx, statement("rows_kept")).Scan(&rows, &pieces); err != nil {
		return 0, 0, fmt.Errorf("rows_kept: %w", err)
	}
	return rows, pieces, nil
}

// runSteps runs the numbered files in their order, but for those that this season has no need of,
// with KIND as it needs it: what the steps that many others read are made as. TRIP_WORD and TRIP_ZEROS
// are what spellings of a trip's label differ by.
func (db *DB) runSteps(ctx context.Context) error {
	steps, err := fs.Glob(files, "derive/*.sql")
	if err != nil {
		return err
	}
	rows, pieces, err := db.rowsKept(ctx)
	if err != nil {
		return err
	}
	few, kind := rows <= fewRows, "TABLE"
	if !few {
		kind = "VIEW"
	}
	steps = slices.DeleteFunc(steps, func(step string) bool {
		switch path.Base(step) {
		case "25_few.sql":
			return !few
		case "94_track_clock.sql", "95_track.sql":
			return pieces == 0
		}
		return false
	})
	return db.wide(ctx, !few, func() error { return db.runAs(ctx, steps, kind) })
}

func (db *DB) runAs(ctx context.Context, steps []string, kind string) error {
	of := strings.NewReplacer("TEMP KIND ", "TEMP "+kind+" ", "DROP KIND ", "DROP "+kind+" ",
		"TRIP_WORD", spelling.TripWord, "TRIP_ZEROS", spelling.TripZeros)
	for _, step := range steps {
		b, err := files.ReadFile(step)
		if err != nil {
			return err
		}
		text := of.Replace(string(b))
		if path.Base(step) == "85_pair_next.sql" {
			err = db.repeat(ctx, step, text)
		} else if _, err = db.conn.ExecContext(ctx, text); err != nil {
			err = fmt.Errorf("%s: %w", path.Base(step), err)
		}
		if err != nil {
			return err
		}
	}
	return nil
}

// repeat runs a step until it adds no more rows.
func (db *DB) repeat(ctx context.Context, step, text string) error {
	for {
		res, err := db.conn.ExecContext(ctx, text)
		if err != nil {
			return fmt.Errorf("%s: %w", step, err)
		}
		if n, err := res.RowsAffected(); err != nil || n == 0 {
			return err
		}
	}
}

func (db *DB) putBands(ctx context.Context, bands []Band) error {
	return db.refill(ctx, "band", bandRows(bands))
}

// putZones writes the offsets from UTC of each zone that a log names, for the
// years that the logs span and one on either side.
func (db *DB) putZones(ctx context.Context) error {
	rows, err := db.Query(ctx, statement("zones"))
	if err != nil {
		return err
	}
	var all [][]any
	err = each(rows, func() error {
		var name string
		var first, last int
		if err := rows.Scan(&name, &first, &last); err != nil {
			return err
		}
		loc, err := zone.Load(name)
		if err != nil {
			return err
		}
		all = append(all, offsets(name, loc, first-1, last+2)...)
		return nil
	})
	if err != nil {
		return err
	}
	return db.refill(ctx, "zone_offset", all)
}

func offsets(name string, loc *time.Location, first, last int) [][]any {
	var rows [][]any
	t := time.Date(first, 1, 1, 0, 0, 0, 0, loc)
	for t.Year() < last {
		_, offset := t.Zone()
		local := t.UTC().Add(time.Duration(offset) * time.Second)
		rows = append(rows, []any{name, local, offset})
		_, end := t.ZoneBounds()
		if end.IsZero() {
			break
		}
		t = end
	}
	return rows
}

// refill replaces a small table's rows.
func (db *DB) refill(ctx context.Context, table string, rows [][]any) error {
	if _, err := db.conn.ExecContext(ctx, strings.ReplaceAll(statement("empty_table"),
		"TABLE_NAME", table)); err != nil {
		return err
	}
	if err := db.appendRows(table, rows); err != nil {
		return fmt.Errorf("%s: %w", table, err)
	}
	return nil
}

// each calls f for each row and closes rows.
func each(rows *sql.Rows, f func() error) error {
	defer rows.Close()
	for rows.Next() {
		if err := f(); err != nil {
			return err
		}
	}
	return rows.Err()
}
