package store

import (
	"context"
	"database/sql"
	"fmt"
	"math"
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
	spells  map[spell]bool // that rows tell
	many    bool           // more than are kept
}

// spell is when a row begins and ends: the day since 1970-01-01, the second of it, and the
// minute in which it ends.
type spell struct{ day, start, until int64 }

// mostSpells is how many of a log are kept in memory: those of any season.
const mostSpells = 5000

// spell notes a row's times, the end in seconds of its day.
func (e *Extent) spell(day, start, until int64) {
	if e.spells == nil {
		e.spells = map[spell]bool{}
	}
	if e.many = e.many || len(e.spells) == mostSpells; !e.many {
		e.spells[spell{day, start, until / 60}] = true
	}
}

// MayBeTwin reports whether rows of both logs may begin at the same time and end within a
// minute of one another: else no leg of one is a leg of the other under another boat.
func (e *Extent) MayBeTwin(o *Extent) bool {
	if e == nil || o == nil || e.Undated || o.Undated || e.many || o.many {
		return true
	}
	few, more := e.spells, o.spells
	if len(more) < len(few) {
		few, more = more, few
	}
	for s := range few {
		if more[s] || more[spell{s.day, s.start, s.until - 1}] || more[spell{s.day, s.start, s.until + 1}] {
			return true
		}
	}
	return false
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
		var day, start, until sql.NullInt64
		var boat string
		var many bool
		err := rows.Scan(&id, &day, &boat, &start, &until, &many)
		if all[id] == nil {
			all[id] = &Extent{}
		}
		if all[id].boat(boat); day.Valid {
			all[id].day(day.Int64)
		} else {
			all[id].Undated = true
		}
		if all[id].many = all[id].many || many; day.Valid && until.Valid {
			all[id].spell(day.Int64, start.Int64, until.Int64)
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
	start, end int
	hours      int
}

func (e *Extent) noting(r array.RecordReader) array.RecordReader {
	n := &noting{RecordReader: r, of: e, date: -1, name: -1, trip: -1, start: -1, end: -1, hours: -1}
	for i, f := range r.Schema().Fields() {
		switch {
		case f.Name == "date" && f.Type.ID() == arrow.DATE32:
			n.date = i
		case f.Name == "boat" && f.Type.ID() == arrow.STRING:
			n.name = i
		case f.Name == "trip":
			n.trip = i
		case f.Name == "start_s" && f.Type.ID() == arrow.INT64:
			n.start = i
		case f.Name == "end_s" && f.Type.ID() == arrow.INT64:
			n.end = i
		case f.Name == "duration_s" && f.Type.ID() == arrow.FLOAT64:
			n.hours = i
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
		if n.start >= 0 {
			n.spells(b, dates)
		}
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

// spells notes when rows begin and end, by their end or their hours.
func (n *noting) spells(b arrow.RecordBatch, dates *array.Date32) {
	start := b.Column(n.start).(*array.Int64)
	for i := range start.Len() {
		if dates.IsNull(i) || start.IsNull(i) {
			continue
		}
		switch {
		case n.end >= 0 && !b.Column(n.end).IsNull(i):
			n.of.spell(int64(dates.Value(i)), start.Value(i), b.Column(n.end).(*array.Int64).Value(i))
		case n.hours >= 0 && !b.Column(n.hours).IsNull(i):
			hours := math.RoundToEven(b.Column(n.hours).(*array.Float64).Value(i)) // as the database rounds
			n.of.spell(int64(dates.Value(i)), start.Value(i), start.Value(i)+int64(hours))
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
