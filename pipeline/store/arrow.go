package store

import (
	"context"
	"database/sql/driver"
	"errors"
	"fmt"
	"strings"

	"github.com/apache/arrow-go/v18/arrow/array"
	"github.com/marcboeker/go-duckdb"
)

// insertArrow inserts the batches of r into a table. The reader is registered as
// a view and read by one INSERT, so that no more than a few batches are in
// memory. extra is a select list of constants.
func (db *DB) insertArrow(ctx context.Context, table, extra string, r array.RecordReader) (int64, error) {
	release, err := db.register(ctx, r)
	if err != nil {
		return 0, err
	}
	defer release()
	columns := make([]string, len(r.Schema().Fields()))
	for i, f := range r.Schema().Fields() {
		columns[i] = identifier(f.Name)
	}
	res, err := db.conn.ExecContext(ctx, fmt.Sprintf(strings.TrimSpace(statement("insert_incoming")), table,
		extra, strings.Join(columns, ", ")))
	if readErr := r.Err(); readErr != nil {
		return 0, readErr // the cause, in its own words, not the database's report of it
	}
	if err != nil {
		return 0, fmt.Errorf("insert into "+table+": %w", err)
	}
	return res.RowsAffected()
}

func (db *DB) register(ctx context.Context, r array.RecordReader) (func(), error) {
	var release func()
	err := db.conn.Raw(func(c any) error {
		dc, ok := c.(driver.Conn)
		if !ok {
			return errors.New("not a database connection")
		}
		a, err := duckdb.NewArrowFromConn(dc)
		if err != nil {
			return err
		}
		release, err = a.RegisterView(r, arrowView)
		return err
	})
	if err != nil {
		return nil, err
	}
	return func() {
		// a view of memory that is let go of must not stay in the season file; where the
		// transaction has failed it goes with that
		_ = db.exec(context.WithoutCancel(ctx), "drop_incoming")
		release()
	}, nil
}

// appendRows adds rows to a table of the season file, in the transaction under way. A
// statement for each would be planned each time.
func (db *DB) appendRows(table string, rows [][]any) error {
	return db.conn.Raw(func(c any) error {
		dc, ok := c.(driver.Conn)
		if !ok {
			return errors.New("not a database connection")
		}
		a, err := duckdb.NewAppenderFromConn(dc, "", table)
		if err != nil {
			return err
		}
		values := []driver.Value{}
		for _, r := range rows {
			values = values[:0]
			for _, v := range r {
				values = append(values, v)
			}
			if err = a.AppendRow(values...); err != nil {
				break
			}
		}
		return errors.Join(err, a.Close())
	})
}

func identifier(s string) string { return `"` + strings.ReplaceAll(s, `"`, `""`) + `"` }

func literal(s string) string { return "'" + strings.ReplaceAll(s, "'", "''") + "'" }
