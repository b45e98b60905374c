// Package batch fills Arrow record batches from a stream of entries, one reader
// ahead of whoever takes them, so that reading and storing overlap.
package batch

import (
	"context"
	"sync/atomic"

	"github.com/apache/arrow-go/v18/arrow"
	"github.com/apache/arrow-go/v18/arrow/array"
	"github.com/apache/arrow-go/v18/arrow/memory"

	"wakeledger/pipeline/entry"
)

// Rows and Fixes are rows in a batch, of logs and of tracks: larger ones cost memory, smaller
// ones calls. Pieces of a track are quickly stored, and come by the hundred thousand.
const (
	Rows  = 8192
	Fixes = 2048
)

// fewRows have room from the start: most logs are short.
const fewRows = 64

// Source yields entries. Next's values are valid until the next call; it
// reports false at the end.
type Source interface {
	Fields() []entry.Field
	Next() ([]entry.Value, bool, error)
}

// Reader is an array.RecordReader over a Source.
type Reader struct {
	refs    atomic.Int64
	schema  *arrow.Schema
	batches chan arrow.RecordBatch
	current arrow.RecordBatch
	err     error // written before batches is closed
	cancel  context.CancelFunc
}

// NewReader starts reading src, rows in a batch, in a goroutine, which ends at the source's
// end, at its first error, or when the reader is released or ctx is done.
func NewReader(ctx context.Context, src Source, rows int) *Reader {
	ctx, cancel := context.WithCancel(ctx)
	r := &Reader{schema: schemaOf(src.Fields()), batches: make(chan arrow.RecordBatch, 2), cancel: cancel}
	r.refs.Store(1)
	go r.fill(ctx, src, rows)
	return r
}

func schemaOf(fields []entry.Field) *arrow.Schema {
	types := map[entry.Type]arrow.DataType{
		entry.Text: arrow.BinaryTypes.String, entry.Real: arrow.PrimitiveTypes.Float64,
		entry.Int: arrow.PrimitiveTypes.Int64, entry.Day: arrow.FixedWidthTypes.Date32,
		entry.Flag: arrow.FixedWidthTypes.Boolean,
	}
	fs := make([]arrow.Field, len(fields))
	for i, f := range fields {
		fs[i] = arrow.Field{Name: f.Name, Type: types[f.Type], Nullable: true}
	}
	return arrow.NewSchema(fs, nil)
}

func (r *Reader) fill(ctx context.Context, src Source, rows int) {
	defer close(r.batches)
	b := array.NewRecordBuilder(memory.DefaultAllocator, r.schema)
	defer b.Release()
	put := columnsOf(b)
	n, room := 0, fewRows
	b.Reserve(room)
	for {
		values, more, err := src.Next()
		if err != nil {
			r.err = err
			return
		}
		if more {
			for i, p := range put {
				p(&values[i])
			}
			if n++; n == room && room < rows {
				b.Reserve(room)
				room *= 2
			}
		}
		if n == rows || (!more && n > 0) {
			select {
			case r.batches <- b.NewRecordBatch():
				n, room = 0, rows
				b.Reserve(room)
			case <-ctx.Done():
				r.err = ctx.Err()
				return
			}
		}
		if !more {
			return
		}
	}
}

// columnsOf gives what appends a value to each column of b, which has room
// reserved for it.
func columnsOf(b *array.RecordBuilder) []func(*entry.Value) {
	put := make([]func(*entry.Value), len(b.Fields()))
	for i, f := range b.Fields() {
		switch col := f.(type) {
		case *array.StringBuilder:
			put[i] = func(v *entry.Value) {
				if v.Known {
					col.Append(v.Text)
				} else {
					col.AppendNull()
				}
			}
		case *array.Float64Builder:
			put[i] = fixed(col, func(v *entry.Value) float64 { return v.Real })
		case *array.Int64Builder:
			put[i] = fixed(col, func(v *entry.Value) int64 { return v.Int })
		case *array.Date32Builder:
			put[i] = fixed(col, func(v *entry.Value) arrow.Date32 { return arrow.Date32(v.Int) })
		case *array.BooleanBuilder:
			put[i] = fixed(col, func(v *entry.Value) bool { return v.Int != 0 })
		}
	}
	return put
}

// fixed appends values of one size.
func fixed[T any](col interface {
	UnsafeAppend(T)
	UnsafeAppendBoolToBitmap(bool)
}, of func(*entry.Value) T) func(*entry.Value) {
	return func(v *entry.Value) {
		if v.Known {
			col.UnsafeAppend(of(v))
		} else {
			col.UnsafeAppendBoolToBitmap(false)
		}
	}
}

// Retain adds a reference.
func (r *Reader) Retain() { r.refs.Add(1) }

// Release drops a reference; the last one stops the reading.
func (r *Reader) Release() {
	if r.refs.Add(-1) != 0 {
		return
	}
	r.cancel()
	if r.current != nil {
		r.current.Release()
		r.current = nil
	}
	for b := range r.batches {
		b.Release()
	}
}

// Schema has one nullable column for each of the source's fields.
func (r *Reader) Schema() *arrow.Schema { return r.schema }

// Next moves to the next batch.
func (r *Reader) Next() bool {
	if r.current != nil {
		r.current.Release()
		r.current = nil
	}
	b, ok := <-r.batches
	if ok {
		r.current = b
	}
	return ok
}

// RecordBatch is the current batch, valid until the next call of Next.
func (r *Reader) RecordBatch() arrow.RecordBatch { return r.current }

// Record is RecordBatch under its older name, which the interface still has.
func (r *Reader) Record() arrow.RecordBatch { return r.current }

// Err is the source's error, or the context's.
func (r *Reader) Err() error { return r.err }
