package bundle

import (
	"bytes"
	"errors"
	"fmt"
	"reflect"

	"github.com/apache/arrow-go/v18/parquet"
	"github.com/apache/arrow-go/v18/parquet/compress"
	"github.com/apache/arrow-go/v18/parquet/file"
	"github.com/apache/arrow-go/v18/parquet/schema"
)

// schemaOf is the columns of a struct: json tags are names, pointers may be NULL.
func schemaOf(row reflect.Type) (*schema.GroupNode, error) {
	var fields schema.FieldList
	for i := range row.NumField() {
		f := row.Field(i)
		kind, repeated := f.Type.Kind(), parquet.Repetitions.Required
		if kind == reflect.Pointer {
			kind, repeated = f.Type.Elem().Kind(), parquet.Repetitions.Optional
		}
		logical := schema.LogicalType(schema.NoLogicalType{})
		if kind == reflect.String {
			logical = schema.StringLogicalType{}
		}
		node, err := schema.NewPrimitiveNodeLogical(f.Tag.Get("json"), repeated, logical, physical[kind], -1, -1)
		if err != nil {
			return nil, err
		}
		fields = append(fields, node)
	}
	return schema.NewGroupNode("schema", parquet.Repetitions.Required, fields, -1)
}

// writeParquet writes a slice of structs of text, whole numbers and numbers.
func writeParquet(rows any) ([]byte, error) {
	v := reflect.ValueOf(rows)
	root, err := schemaOf(v.Type().Elem())
	if err != nil {
		return nil, err
	}
	var buf bytes.Buffer
	w := file.NewParquetWriter(&buf, root, file.WithWriterProps(
		parquet.NewWriterProperties(parquet.WithCompression(compress.Codecs.Zstd))))
	if v.Len() > 0 {
		var group file.SerialRowGroupWriter
		if group, err = w.AppendRowGroupChecked(); err == nil {
			err = writeGroup(group, v)
		}
	}
	if err := errors.Join(err, w.Close()); err != nil {
		return nil, err
	}
	return buf.Bytes(), nil
}

// writeGroup writes all rows as one group, column by column.
func writeGroup(group file.SerialRowGroupWriter, rows reflect.Value) error {
	for i := range rows.Type().Elem().NumField() {
		column, err := group.NextColumn()
		if err != nil {
			return err
		}
		if err := errors.Join(writeColumn(column, rows, i), column.Close()); err != nil {
			return err
		}
	}
	return group.Close()
}

// writeColumn writes field i of the rows. A NULL has level 0 and no value.
func writeColumn(column file.ColumnChunkWriter, rows reflect.Value, i int) error {
	var levels []int16
	var values []reflect.Value
	for n := range rows.Len() {
		v := rows.Index(n).Field(i)
		if v.Kind() == reflect.Pointer {
			if v.IsNil() {
				levels = append(levels, 0)
				continue
			}
			v = v.Elem()
		}
		levels, values = append(levels, column.Descr().MaxDefinitionLevel()), append(values, v)
	}
	var err error
	switch w := column.(type) {
	case *file.ByteArrayColumnChunkWriter:
		_, err = w.WriteBatch(each(values, func(v reflect.Value) parquet.ByteArray {
			return parquet.ByteArray(v.String())
		}), levels, nil)
	case *file.Int64ColumnChunkWriter:
		_, err = w.WriteBatch(each(values, reflect.Value.Int), levels, nil)
	case *file.Float64ColumnChunkWriter:
		_, err = w.WriteBatch(each(values, reflect.Value.Float), levels, nil)
	default:
		err = fmt.Errorf("column %d is of %s", i+1, column.Type())
	}
	return err
}

func each[T any](values []reflect.Value, of func(reflect.Value) T) []T {
	out := make([]T, len(values))
	for i, v := range values {
		out[i] = of(v)
	}
	return out
}
