package store

import (
	"context"
	"database/sql"
	"errors"
	"fmt"
)

// repeated is what the logs of one transaction have in common, so that the database is not
// asked for it at each of them.
type repeated struct {
	made    map[string]*sql.Stmt
	numbers map[string]int64 // the last one given, by the statement that gave the first
}

// exec runs a statement that is understood once.
func (r *repeated) exec(ctx context.Context, conn *sql.Conn, name string, args []any) error {
	s := r.made[name]
	if s == nil {
		var err error
		if s, err = conn.PrepareContext(ctx, statement(name)); err != nil {
			return fmt.Errorf("%s: %w", name, err)
		}
		if r.made == nil {
			r.made = map[string]*sql.Stmt{}
		}
		r.made[name] = s
	}
	if _, err := s.ExecContext(ctx, args...); err != nil {
		return fmt.Errorf("%s: %w", name, err)
	}
	return nil
}

func (r *repeated) close() error {
	var errs []error
	for _, s := range r.made {
		errs = append(errs, s.Close())
	}
	return errors.Join(errs...)
}

// nextNumber is the first number that no log, or no sheet, of the season file has.
func (db *DB) nextNumber(ctx context.Context, name string) (n int64, err error) {
	if last := db.repeated.numbers[name]; db.together && last > 0 {
		n = last + 1
	} else if err := db.conn.QueryRowContext(ctx, statement(name)).Scan(&n); err != nil {
		return 0, fmt.Errorf("%s: %w", name, err)
	}
	if db.together {
		if db.repeated.numbers == nil {
			db.repeated.numbers = map[string]int64{}
		}
		db.repeated.numbers[name] = n
	}
	return n, nil
}
