package bundle

import (
	"bytes"
	"context"
	"errors"
	"fmt"
	"reflect"

	"github.com/apache/arrow-go/v18/arrow"
	"github.com/apache/arrow-go/v18/arrow/array"
	"github.com/apache/arrow-go/v18/arrow/memory"
	"github.com/apache/arrow-go/v18/parquet"
	"github.com/apache/arrow-go/v18/parquet/compress"
	"github.com/apache/arrow-go/v18/parquet/file"
	"github.com/apache/arrow-go/v18/parquet/pqarrow"
)

// schemaOf is the columns of a struct: json tags are names, pointers may be NULL.
func schemaOf(row reflect.Type) *arrow.Schema {
	var fields []arrow.Field
	for i := range row.NumField() {
		f := row.Field(i)
		t, nullable := f.Type, f.Type.Kind() == reflect.Pointer
		if nullable {
			t = t.Elem()
		}
		types := map[reflect.Kind]arrow.DataType{reflect.String: arrow.BinaryTypes.String, reflect.Int64: arrow.PrimitiveTypes.Int64, reflect.Float64: arrow.PrimitiveTypes.Float64}
		fields = append(fields, arrow.Field{Name: f.Tag.Get("json"), Type: types[t.Kind()], Nullable: nullable})
	}
	return arrow.NewSchema(fields, nil)
}

// writeParquet writes a slice of structs of text, whole numbers and numbers.
func writeParquet(rows any) ([]byte, error) {
	v := reflect.ValueOf(rows)
	schema := schemaOf(v.Type().Elem())
	b := array.NewRecordBuilder(memory.DefaultAllocator, schema)
	defer b.Release()
	for i := range v.Len() {
		for f := range v.Index(i).NumField() {
			put(b.Field(f), v.Index(i).Field(f))
		}
	}
	batch := b.NewRecordBatch()
	defer batch.Release()
	var buf bytes.Buffer
	w, err := pqarrow.NewFileWriter(schema, &buf, parquet.NewWriterProperties(parquet.WithCompression(compress.Codecs.Zstd)), pqarrow.DefaultWriterProps())
	if err != nil {
		return nil, err
	}
	if err := errors.Join(w.Write(batch), w.Close()); err != nil {
		return nil, err
	}
	return buf.Bytes(), nil
}

func put(b array.Builder, v reflect.Value) {
	if v.Kind() == reflect.Pointer {
		if v.IsNil() {
			b.AppendNull()
			return
		}
		v = v.Elem()
	}
	switch b := b.(type) {
	case *array.StringBuilder:
		b.Append(v.String())
	case *array.Int64Builder:
		b.Append(v.Int())
	case *array.Float64Builder:
		b.Append(v.Float())
	}
}

// mostRows is more than a table of one boat ever has.
const mostRows = 10000

// readParquet reads what writeParquet wrote into the slice that rows points to.
// A file that is broken in a way that its reader does not expect must not end
// the program.
func readParquet(b []byte, rows any) (err error) {
	defer func() {
		if r := recover(); r != nil {
			err = fmt.Errorf("broken Parquet: %v", r)
		}
	}()
	r, err := file.NewParquetReader(bytes.NewReader(b))
	if err != nil {
		return err
	}
	defer r.Close()
	if r.NumRows() > mostRows {
		return fmt.Errorf("%d rows, more than %d", r.NumRows(), mostRows)
	}
	fr, err := pqarrow.NewFileReader(r, pqarrow.ArrowReadProperties{}, memory.DefaultAllocator)
	if err != nil {
		return err
	}
	table, err := fr.ReadTable(context.Background())
	if err != nil {
		return err
	}
	defer table.Release()
	return scan(table, reflect.ValueOf(rows).Elem())
}

func scan(table arrow.Table, into reflect.Value) error {
	want := schemaOf(into.Type().Elem())
	if int(table.NumCols()) != want.NumFields() {
		return fmt.Errorf("%d columns, expected %d", table.NumCols(), want.NumFields())
	}
	if table.NumRows() == 0 {
		return nil
	}
	into.Set(reflect.MakeSlice(into.Type(), int(table.NumRows()), int(table.NumRows())))
	for c := range want.NumFields() {
		column, w := table.Column(c), want.Field(c)
		if column.Name() != w.Name || !arrow.TypeEqual(column.DataType(), w.Type) {
			return fmt.Errorf("column %d is %s of %s, expected %s of %s", c+1, column.Name(), column.DataType(), w.Name, w.Type)
		}
		row := 0
		for _, chunk := range column.Data().Chunks() {
			for i := range chunk.Len() {
				if chunk.IsNull(i) && !w.Nullable {
					return fmt.Errorf("column %s, row %d: no value", w.Name, row+1)
				}
				get(chunk, i, into.Index(row).Field(c))
				row++
			}
		}
	}
	return nil
}

func get(a arrow.Array, i int, into reflect.Value) {
	if a.IsNull(i) {
		return
	}
	if into.Kind() == reflect.Pointer {
		into.Set(reflect.New(into.Type().Elem()))
		into = into.Elem()
	}
	switch a := a.(type) {
	case *array.String:
		into.SetString(a.Value(i))
	case *array.Int64:
		into.SetInt(a.Value(i))
	case *array.Float64:
		into.SetFloat(a.Value(i))
	}
}
