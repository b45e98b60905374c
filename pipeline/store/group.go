package store

import (
	"context"
	"errors"
)

// Together stores what f stores in one transaction, where each log would otherwise have one
// of its own: of many small logs, making a transaction lasting is most of the work. Where
// f fails, the season file is as it was before all of it.
func (db *DB) Together(ctx context.Context, f func() error) error {
	if err := errors.Join(db.exec(ctx, "frugal"), db.exec(ctx, "one_thread")); err != nil {
		return err
	}
	err := db.transaction(ctx, func() error {
		db.grouped = true
		defer func() { db.grouped = false }()
		if err := f(); err != nil {
			return err
		}
		return db.exec(ctx, "drop_incoming")
	})
	later := context.WithoutCancel(ctx)
	return errors.Join(err, db.exec(later, "all_threads"), db.exec(later, "roomy"))
}

// unlessGrouped runs a statement that Together has run for all of its logs.
func (db *DB) unlessGrouped(ctx context.Context, name string) error {
	if db.grouped {
		return nil
	}
	return db.exec(ctx, name)
}

// known is what need not be asked of the database again within a run. It is let go of with
// every transaction that fails.
type known struct {
	missing map[string]string // columns that entries may have and do not have yet, with their types; nil: not asked
	stale   bool              // "derived" is set to stale
}

// markStale says that the season's tables wait to be made anew.
func (db *DB) markStale(ctx context.Context) error {
	if db.known.stale {
		return nil
	}
	err := db.PutSetting(ctx, "derived", "stale")
	db.known.stale = err == nil
	return err
}

// missing are the columns that no log so far has used, with their types.
func (db *DB) missing(ctx context.Context) (map[string]string, error) {
	if db.known.missing != nil {
		return db.known.missing, nil
	}
	rows, err := db.Query(ctx, statement("missing_columns"))
	if err != nil {
		return nil, err
	}
	all := map[string]string{}
	err = each(rows, func() error {
		var name, typ string
		err := rows.Scan(&name, &typ)
		all[name] = typ
		return err
	})
	if err != nil {
		return nil, err
	}
	db.known.missing = all
	return all, nil
}
