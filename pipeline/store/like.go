package store

import (
	"context"
	"fmt"
	"strconv"
	"strings"

	"wakeledger/pipeline/identity"
)

// Likenesses is what log id has in common with others of the season, by log, as far as it
// can be counted in the rows. The names, files and headings are for the caller to compare.
func (db *DB) Likenesses(ctx context.Context, id int64, track bool, others []int64) (map[int64]*identity.Likeness, error) {
	all := map[int64]*identity.Likeness{}
	days := "told_tracks"
	if !track {
		if _, err := db.conn.ExecContext(ctx, ofLogs("told", append([]int64{id}, others...))); err != nil {
			return nil, fmt.Errorf("told: %w", err)
		}
		days = "told_days"
	}
	var log int64
	var d identity.Day
	err := db.likeness(ctx, days, statement(days), id, []any{&log, &d.Day, &d.Before, &d.Now, &d.Found, &d.Equal}, func() {
		x := of(all, log)
		x.Days = append(x.Days, d)
	})
	if err != nil || track {
		return all, err
	}
	var l identity.Likeness
	err = db.likeness(ctx, "told_legs", statement("told_legs"), id, []any{&l.Log, &l.Legs, &l.NewLegs, &l.Same, &l.Differ, &l.Twin, &l.Overlaps, &l.Loose}, func() {
		x := of(all, l.Log)
		l.Days = x.Days
		*x = l
	})
	return all, err
}

// Moved is, by log, how many rows log id has too but for their day.
func (db *DB) Moved(ctx context.Context, id int64, others []int64) (map[int64]int64, error) {
	all := map[int64]int64{}
	var log, moved int64
	err := db.likeness(ctx, "told_moved", ofLogs("told_moved", others), id, []any{&log, &moved}, func() { all[log] = moved })
	return all, err
}

// ofLogs is a statement with the numbers of the logs that it is of.
func ofLogs(name string, logs []int64) string {
	texts := make([]string, len(logs))
	for i, id := range logs {
		texts[i] = strconv.FormatInt(id, 10)
	}
	return strings.ReplaceAll(statement(name), "LOG_IDS", strings.Join(texts, ", "))
}

func of(all map[int64]*identity.Likeness, log int64) *identity.Likeness {
	if all[log] == nil {
		all[log] = &identity.Likeness{Log: log}
	}
	return all[log]
}

func (db *DB) likeness(ctx context.Context, name, query string, id int64, into []any, row func()) error {
	rows, err := db.Query(ctx, query, id)
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
