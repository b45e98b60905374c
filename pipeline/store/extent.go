package store

import (
	"context"
	"database/sql"
	"fmt"
	"slices"

	"github.com/apache/arrow-go/v18/arrow"
	"github.com/apache/arrow-go/v18/arrow/array"
)

// Extent is which days and boats a log names. Two logs that have no day in common have no
// row in common, but for rows that name none.
type Extent struct {
	Days    map[int64]bool // since 1970-01-01
	Undated bool           // a row names no day
	Labels  bool           // a row names its trip, and may so give other rows their day; of Bring alone
	Boats   []string       // that rows name, each once
}

func (e *Extent) day(d int64) {
	if e.Days == nil {
		e.Days = map[int64]bool{}
	}
	e.Days[d] = true
}

func (e *Extent) boat(name string) {
	if name != "" && !slices.Contains(e.Boats, name) {
		e.Boats = append(e.Boats, name)
	}
}

// Extents are those of the logs of the season, by log; of one alone where its number is
// not 0. Boats are as they are shown.
func (db *DB) Extents(ctx context.Context, log int64) (map[int64]*Extent, error) {
	rows, err := db.Query(ctx, statement("extents"), log)
	if err != nil {
		return nil, fmt.Errorf("extents: %w", err)
	}
	all := map[int64]*Extent{}
	err = each(rows, func() error {
		var id int64
		var day sql.NullInt64
		var boat string
		err := rows.Scan(&id, &day, &boat)
		if all[id] == nil {
			all[id] = &Extent{}
		}
		if all[id].boat(boat); day.Valid {
			all[id].day(day.Int64)
		} else {
			all[id].Undated = true
		}
		return err
	})
	return all, err
}

// noting is a reader that notes the days and boats, as logged, of the rows that pass.
type noting struct {
	array.RecordReader
	of         *Extent
	date, name int // columns; -1: there is none
	trip       int
}

func (e *Extent) noting(r array.RecordReader) array.RecordReader {
	n := &noting{RecordReader: r, of: e, date: -1, name: -1, trip: -1}
	for i, f := range r.Schema().Fields() {
		switch {
		case f.Name == "date" && f.Type.ID() == arrow.DATE32:
			n.date = i
		case f.Name == "boat" && f.Type.ID() == arrow.STRING:
			n.name = i
		case f.Name == "trip":
			n.trip = i
		}
	}
	return n
}

// Next notes the batch that it moves to.
func (n *noting) Next() bool {
	if !n.RecordReader.Next() {
		return false
	}
	b := n.RecordBatch()
	if n.date < 0 {
		n.of.Undated = n.of.Undated || b.NumRows() > 0
	} else if dates, ok := b.Column(n.date).(*array.Date32); ok {
		n.dates(dates)
	}
	if n.trip >= 0 && n.date >= 0 {
		n.of.Labels = n.of.Labels || b.Column(n.trip).NullN() < int(b.NumRows())
	}
	if n.name >= 0 {
		if boats, ok := b.Column(n.name).(*array.String); ok {
			n.boats(boats)
		}
	}
	return true
}

func (n *noting) dates(all *array.Date32) {
	n.of.Undated = n.of.Undated || all.NullN() > 0
	for i := range all.Len() {
		if !all.IsNull(i) && (i == 0 || all.IsNull(i-1) || all.Value(i) != all.Value(i-1)) {
			n.of.day(int64(all.Value(i)))
		}
	}
}

func (n *noting) boats(all *array.String) {
	for i := range all.Len() {
		if !all.IsNull(i) && (i == 0 || all.IsNull(i-1) || all.Value(i) != all.Value(i-1)) {
			n.of.boat(all.Value(i))
		}
	}
}
