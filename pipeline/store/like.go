package store

import (
	"context"
	"database/sql"
	"fmt"
	"strconv"
	"strings"

	"wakeledger/pipeline/identity"
)

// Likenesses is what log id has in common with others of the season, by log, as far as it
// can be counted in the rows. The names, files and headings are for the caller to compare.
func (db *DB) Likenesses(ctx context.Context, id int64, track bool, others []int64) (map[int64]*identity.Likeness,
	error) {
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
	err := db.likeness(ctx, days, statement(days), id, []any{&log, &d.Day, &d.Before, &d.Now, &d.Found, &d.Equal},
		func() {
			x := of(all, log)
			x.Days = append(x.Days, d)
		})
	if err != nil || track {
		return all, err
	}
	var l identity.Likeness
	err = db.likeness(ctx, "told_legs", statement("told_legs"), id,
		[]any{&l.Log, &l.Legs, &l.NewLegs, &l.Same, &l.Differ, &l.Twin, &l.Overlaps, &l.Loose}, func() {
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
	err := db.likeness(ctx, "told_moved", ofLogs("told_moved", others), id,
		[]any{&log, &moved}, func() { all[log] = moved })
	return all, err
}

// Prints are, by log, what its rows say but for their day, as hashes, and how many say so.
func (db *DB) Prints(ctx context.Context, logs []int64) (map[int64]map[uint64]int64, error) {
	all := map[int64]map[uint64]int64{}
	var log, n int64
	var print uint64
	err := db.ofTold(ctx, "told_prints", logs, []any{&log, &print, &n}, func() {
		if all[log] == nil {
			all[log] = map[uint64]int64{}
		}
		all[log][print] = n
	})
	return all, err
}

// Undated is what the rows of a log are found by where some of them name no day.
type Undated struct {
	Days  []int64  // of its rows, also those that their labels have from other rows
	Keys  []uint64 // of rows that have no day
	Leans bool     // a row looks to other logs of its folder for its day
}

// Undated is of some logs, by log.
func (db *DB) Undated(ctx context.Context, logs []int64) (map[int64]*Undated, error) {
	all := map[int64]*Undated{}
	var log int64
	var day sql.NullInt64
	var key sql.Null[uint64]
	var leans bool
	err := db.ofTold(ctx, "told_undated", logs, []any{&log, &day, &key, &leans}, func() {
		if all[log] == nil {
			all[log] = &Undated{}
		}
		u := all[log]
		if u.Leans = u.Leans || leans; day.Valid {
			u.Days = append(u.Days, day.Int64)
		}
		if key.Valid {
			u.Keys = append(u.Keys, key.V)
		}
	})
	return all, err
}

// ofTold reads what a statement tells of the rows of some logs.
func (db *DB) ofTold(ctx context.Context, name string, logs []int64, into []any, row func()) error {
	if len(logs) == 0 {
		return nil
	}
	rows, err := db.Query(ctx, ofLogs(name, logs))
	if err != nil {
		return fmt.Errorf("%s: %w", name, err)
	}
	return each(rows, func() error {
		err := rows.Scan(into...)
		row()
		return err
	})
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
