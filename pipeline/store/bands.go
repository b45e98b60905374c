package store

import (
	"context"
	"errors"
	"fmt"
	"math"
	"strings"
)

// Bands are the classes of the season file, in order.
func (db *DB) Bands(ctx context.Context) ([]Band, error) {
	rows, err := db.Query(ctx, statement("bands"))
	if err != nil {
		return nil, err
	}
	var bands []Band
	err = each(rows, func() error {
		b := Band{Hi: math.Inf(1)}
		var hi *float64
		if err := rows.Scan(&b.Factor, &b.Lo, &hi, &b.Level); err != nil {
			return err
		}
		if hi != nil {
			b.Hi = *hi
		}
		bands = append(bands, b)
		return nil
	})
	return bands, err
}

// WithBands runs f with other classes in the place of the season file's, of the
// factors that bands name: questions asked in f are answered by them. The season file
// is not changed.
func (db *DB) WithBands(ctx context.Context, bands []Band, f func() error) (err error) {
	if err := db.exec(ctx, "bands_aside"); err != nil {
		return fmt.Errorf("classes: %w", err)
	}
	defer func() { err = errors.Join(err, db.exec(context.WithoutCancel(ctx), "bands_back")) }()
	var values []any
	for i, row := range bandRows(bands) {
		if i == 0 || bands[i].Factor != bands[i-1].Factor {
			if err := db.exec(ctx, "bands_clear", row[0]); err != nil {
				return fmt.Errorf("classes: %w", err)
			}
		}
		values = append(values, row...)
	}
	if len(bands) > 0 {
		put := statement("bands_put") + strings.Repeat(",\n(?, ?, ?, ?, ?)", len(bands)-1)
		if _, err := db.conn.ExecContext(ctx, put, values...); err != nil {
			return fmt.Errorf("classes: %w", err)
		}
	}
	return f()
}

// bandRows are bands as rows of their table.
func bandRows(bands []Band) [][]any {
	rows := make([][]any, 0, len(bands))
	for i, b := range bands {
		var hi any
		if !math.IsInf(b.Hi, 1) {
			hi = b.Hi
		}
		rows = append(rows, []any{b.Factor, i, b.Lo, hi, b.Level})
	}
	return rows
}
