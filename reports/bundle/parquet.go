package bundle

import (
	"bytes"
	"errors"
	"reflect"

	"github.com/apache/arrow-go/v18/arrow"
	"github.com/apache/arrow-go/v18/arrow/array"
	"github.com/apache/arrow-go/v18/arrow/memory"
	"github.com/apache/arrow-go/v18/parquet"
	"github.com/apache/arrow-go/v18/parquet/compress"
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
