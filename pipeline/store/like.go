package store

import (
	"context"
	"fmt"
	"strings"

	"wakeledger/pipeline/identity"
)

// Likenesses is what log id has in common with each other log of the season that has
// anything in common with it, by log: what can be counted in the rows. The names, files
// and headings are for the caller to compare.
func (db *DB) Likenesses(ctx context.Context, id int64, track bool) (map[int64]*identity.Likeness, error) {
	all := map[int64]*identity.Likeness{}
	days := "told_tracks"
	if !track {
		if others, err := db.tell(ctx, id); err != nil || !others {
			return all, err
		}
		days = "told_days"
	}
	var log int64
	var d identity.Day
	err := db.likeness(ctx, days, id, []any{&log, &d.Day, &d.Before, &d.Now, &d.Found, &d.Equal}, func() {
		x := of(all, log)
		x.Days = append(x.Days, d)
	})
	if err != nil || track {
		return all, err
	}
	var l identity.Likeness
	err = db.likeness(ctx, "told_legs", id, []any{&l.Log, &l.Legs, &l.NewLegs, &l.Same, &l.Differ, &l.Twin, &l.Overlaps, &l.Loose}, func() {
		x := of(all, l.Log)
		l.Days = x.Days
		*x = l
	})
	return all, err
}

// Moved is, by log of the season, how many rows log id has too but for their day.
func (db *DB) Moved(ctx context.Context, id int64) (map[int64]int64, error) {
	all := map[int64]int64{}
	var log, moved int64
	err := db.likeness(ctx, "told_moved", id, []any{&log, &moved}, func() { all[log] = moved })
	return all, err
}

// tell makes the table of rows that log id is compared by, and reports whether it has any
// of another log.
func (db *DB) tell(ctx context.Context, id int64) (bool, error) {
	if _, err := db.conn.ExecContext(ctx, strings.ReplaceAll(statement("told"), "LOG_ID", fmt.Sprint(id))); err != nil {
		return false, fmt.Errorf("told: %w", err)
	}
	var others int64
	err := db.conn.QueryRowContext(ctx, statement("told_others"), id).Scan(&others)
	return others > 0, err
}

func of(all map[int64]*identity.Likeness, log int64) *identity.Likeness {
	if all[log] == nil {
		all[log] = &identity.Likeness{Log: log}
	}
	return all[log]
}

func (db *DB) likeness(ctx context.Context, name string, id int64, into []any, row func()) error {
	rows, err := db.Query(ctx, statement(name), id)
	if err != nil {
		return fmt.Errorf("%s: %w", name, err)
	}
	return each(rows, func() error {
		err := rows.Scan(into...)
		row()
		return err
	})
}

// tellRows makes the views that logs are compared by, once: outside of a transaction, which
// would take them back with it.
func (db *DB) tellRows(ctx context.Context) error {
	if db.told {
		return nil
	}
	rows, err := db.Query(ctx, statement("value_columns"))
	if err != nil {
		return fmt.Errorf("value_columns: %w", err)
	}
	var values []string
	err = each(rows, func() error {
		var name string
		err := rows.Scan(&name)
		values = append(values, "e."+identifier(name))
		return err
	})
	if err != nil {
		return err
	}
	views := strings.ReplaceAll(statement("told_rows"), "VALUE_COLUMNS", strings.Join(values, ", "))
	if _, err := db.conn.ExecContext(ctx, views); err != nil {
		return fmt.Errorf("told_rows: %w", err)
	}
	db.told = true
	return nil
}

// BoatsOfLogs are the boats that each log of the season is of.
func (db *DB) BoatsOfLogs(ctx context.Context) (map[int64][]string, error) {
	rows, err := db.Query(ctx, statement("told_boats"))
	if err != nil {
		return nil, fmt.Errorf("told_boats: %w", err)
	}
	boats := map[int64][]string{}
	err = each(rows, func() error {
		var log int64
		var boat string
		err := rows.Scan(&log, &boat)
		boats[log] = append(boats[log], boat)
		return err
	})
	return boats, err
}

// Apart are the logs that are different ones by their owner's word, by log.
func (db *DB) Apart(ctx context.Context) (map[int64][]int64, error) {
	rows, err := db.Query(ctx, statement("apart"))
	if err != nil {
		return nil, fmt.Errorf("apart: %w", err)
	}
	apart := map[int64][]int64{}
	err = each(rows, func() error {
		var log, other int64
		err := rows.Scan(&log, &other)
		apart[log] = append(apart[log], other)
		return err
	})
	return apart, err
}
