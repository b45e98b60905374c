package store

import (
	"context"
	"database/sql"
	"fmt"
	"strings"
	"time"

	"github.com/apache/arrow-go/v18/arrow"
	"github.com/apache/arrow-go/v18/arrow/array"
	"github.com/apache/arrow-go/v18/arrow/memory"
)

// Afloat is a leg or a strike with what the sky over it follows from.
type Afloat struct {
	ID       int64
	Leg      int64     // of a strike; 0 where it has none
	From, To time.Time // UTC; a strike has From alone, zero where its instant is not known
	Placed   bool      // Lat and Lon are known
	FromTrip bool      // they are the mean of the trip's
	Lat, Lon float64
}

// SkyLegs lists the legs whose instants are known.
func (db *DB) SkyLegs(ctx context.Context) ([]Afloat, error) {
	return db.afloat(ctx, "sky_legs", func(rows *sql.Rows, a *Afloat, lat, lon *sql.NullFloat64) error {
		return rows.Scan(&a.ID, &a.From, &a.To, &a.FromTrip, lat, lon)
	})
}

// SkyStrikes lists all strikes.
func (db *DB) SkyStrikes(ctx context.Context) ([]Afloat, error) {
	return db.afloat(ctx, "sky_strikes", func(rows *sql.Rows, a *Afloat, lat, lon *sql.NullFloat64) error {
		var leg sql.NullInt64
		var at sql.NullTime
		err := rows.Scan(&a.ID, &leg, &at, lat, lon)
		a.Leg, a.From, a.FromTrip = leg.Int64, at.Time, true
		return err
	})
}

func (db *DB) afloat(ctx context.Context, name string,
	scan func(*sql.Rows, *Afloat, *sql.NullFloat64, *sql.NullFloat64) error) ([]Afloat, error) {
	rows, err := db.Query(ctx, statement(name))
	if err != nil {
		return nil, fmt.Errorf("%s: %w", name, err)
	}
	var all []Afloat
	err = each(rows, func() error {
		var a Afloat
		var lat, lon sql.NullFloat64
		if err := scan(rows, &a, &lat, &lon); err != nil {
			return fmt.Errorf("%s: %w", name, err)
		}
		a.Placed, a.Lat, a.Lon = lat.Valid && lon.Valid, lat.Float64, lon.Float64
		all = append(all, a)
		return nil
	})
	return all, err
}

// LegLight is a part of a leg with one light.
type LegLight struct {
	Leg      int64
	Light    string
	Share    float64
	FromTrip bool
}

// LegMoon is the moon over a leg.
type LegMoon struct {
	Leg   int64
	Lit   float64
	Phase string
}

// StrikeSky is the light and the moon of a strike; "" is not known.
type StrikeSky struct {
	Strike       int64
	Light, Phase string
}

// PutSky replaces the light and the moon of all legs and strikes.
func (db *DB) PutSky(ctx context.Context, lights []LegLight, moons []LegMoon, strikes []StrikeSky) error {
	err := db.fill(ctx, "leg_light", lightFields, len(lights), func(b *array.RecordBuilder, i int) {
		l := lights[i]
		whole(b, 0, l.Leg)
		text(b, 1, l.Light)
		real(b, 2, l.Share)
		b.Field(3).(*array.BooleanBuilder).Append(l.FromTrip)
	})
	if err != nil {
		return err
	}
	err = db.fill(ctx, "leg_moon", moonFields, len(moons), func(b *array.RecordBuilder, i int) {
		whole(b, 0, moons[i].Leg)
		real(b, 1, moons[i].Lit)
		text(b, 2, moons[i].Phase)
	})
	if err != nil {
		return err
	}
	return db.fill(ctx, "strike_sky", strikeFields, len(strikes), func(b *array.RecordBuilder, i int) {
		whole(b, 0, strikes[i].Strike)
		text(b, 1, strikes[i].Light)
		text(b, 2, strikes[i].Phase)
	})
}

var (
	lightFields = []arrow.Field{
		{Name: "leg_id", Type: arrow.PrimitiveTypes.Int64}, {Name: "light", Type: arrow.BinaryTypes.String},
		{Name: "share", Type: arrow.PrimitiveTypes.Float64}, {Name: "from_trip", Type: arrow.FixedWidthTypes.Boolean},
	}
	moonFields = []arrow.Field{
		{Name: "leg_id", Type: arrow.PrimitiveTypes.Int64}, {Name: "lit", Type: arrow.PrimitiveTypes.Float64},
		{Name: "phase", Type: arrow.BinaryTypes.String},
	}
	strikeFields = []arrow.Field{
		{Name: "strike_id", Type: arrow.PrimitiveTypes.Int64},
		{Name: "light", Type: arrow.BinaryTypes.String, Nullable: true},
		{Name: "phase", Type: arrow.BinaryTypes.String, Nullable: true},
	}
)

// fill replaces a table's rows by n that add appends.
func (db *DB) fill(ctx context.Context, table string, fields []arrow.Field, n int,
	add func(b *array.RecordBuilder, i int)) error {
	if _, err := db.conn.ExecContext(ctx, strings.ReplaceAll(statement("empty_table"),
		"TABLE_NAME", table)); err != nil {
		return fmt.Errorf("%s: %w", table, err)
	}
	schema := arrow.NewSchema(fields, nil)
	b := array.NewRecordBuilder(memory.DefaultAllocator, schema)
	defer b.Release()
	for i := range n {
		add(b, i)
	}
	batch := b.NewRecordBatch()
	defer batch.Release()
	r, err := array.NewRecordReader(schema, []arrow.RecordBatch{batch})
	if err != nil {
		return fmt.Errorf("%s: %w", table, err)
	}
	defer r.Release()
	release, err := db.register(ctx, r)
	if err != nil {
		return fmt.Errorf("%s: %w", table, err)
	}
	defer release()
	if _, err := db.conn.ExecContext(ctx, strings.ReplaceAll(statement("fill_from"), "TABLE_NAME", table)); err != nil {
		return fmt.Errorf("%s: %w", table, err)
	}
	return nil
}

func whole(b *array.RecordBuilder, column int, v int64) {
	b.Field(column).(*array.Int64Builder).Append(v)
}

func real(b *array.RecordBuilder, column int, v float64) {
	b.Field(column).(*array.Float64Builder).Append(v)
}

// text appends a text; an empty one is NULL.
func text(b *array.RecordBuilder, column int, v string) {
	s := b.Field(column).(*array.StringBuilder)
	if v == "" {
		s.AppendNull()
		return
	}
	s.Append(v)
}
