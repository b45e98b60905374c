package bundle

import (
	"bytes"
	"encoding/binary"
	"errors"
	"fmt"
	"reflect"
	"sync"

	"github.com/apache/arrow-go/v18/arrow/memory"
	"github.com/apache/arrow-go/v18/parquet"
	"github.com/apache/arrow-go/v18/parquet/compress"
	"github.com/apache/arrow-go/v18/parquet/file"
	"github.com/klauspost/compress/zstd"
)

// A bundle was sent by somebody. Parquet may say a great deal in few bytes: pages that
// unpack to gigabytes, one text repeated a million times. These bound what reading takes.
const (
	mostRows   = 10000   // more than a table of one boat ever has
	mostText   = 400     // bytes of a text
	mostPage   = 1 << 20 // bytes of a page, unpacked
	mostMemory = 16 << 20
	mostGroups = 16
)

var errTooLarge = errors.New("it unpacks to more than a club summary has")

// bounded is memory that ends. Its panic is taken up where the reading began.
type bounded struct {
	memory.Allocator
	left int
}

func (b *bounded) take(n int) {
	if b.left -= n; n > mostMemory || b.left < 0 {
		panic(errTooLarge)
	}
}

func (b *bounded) Allocate(n int) []byte {
	b.take(n)
	return b.Allocator.Allocate(n)
}

func (b *bounded) Reallocate(n int, old []byte) []byte {
	b.take(n - len(old))
	return b.Allocator.Reallocate(n, old)
}

// pageCodec unpacks Zstandard pages up to mostPage, whatever they hold.
type pageCodec struct {
	compress.Codec
	decoder *zstd.Decoder
}

func (c pageCodec) DecodeWithError(dst, src []byte) ([]byte, error) {
	return c.decoder.DecodeAll(src, dst[:0])
}

func (c pageCodec) Decode(dst, src []byte) []byte {
	out, err := c.DecodeWithError(dst, src)
	if err != nil {
		panic(err)
	}
	return out
}

var boundCodec = sync.OnceValue(func() error {
	codec, err := compress.GetCodec(compress.Codecs.Zstd)
	if err != nil {
		return err
	}
	d, err := zstd.NewReader(nil, zstd.WithDecoderConcurrency(1), zstd.WithDecoderMaxMemory(mostPage))
	if err != nil {
		return err
	}
	compress.RegisterCodec(compress.Codecs.Zstd, pageCodec{codec, d})
	return nil
})

// readParquet reads what writeParquet wrote into the slice that rows points to. A file that
// is broken in a way that its reader does not expect must not end the program.
func readParquet(b []byte, rows any) (err error) {
	defer func() {
		if r := recover(); r != nil {
			err = fmt.Errorf("broken Parquet: %v", r)
		}
	}()
	if err := boundCodec(); err != nil {
		return err
	}
	if err := checkFooter(b); err != nil {
		return err
	}
	props := parquet.NewReaderProperties(&bounded{memory.DefaultAllocator, mostMemory})
	r, err := file.NewParquetReader(bytes.NewReader(b), file.WithReadProps(props))
	if err != nil {
		return err
	}
	defer r.Close()
	if r.NumRows() < 0 || r.NumRows() > mostRows || r.NumRowGroups() > mostGroups {
		return fmt.Errorf("%d rows, more than %d", r.NumRows(), mostRows)
	}
	into := reflect.ValueOf(rows).Elem()
	if err := sameColumns(r, into.Type().Elem()); err != nil {
		return err
	}
	if r.NumRows() == 0 {
		return nil
	}
	into.Set(reflect.MakeSlice(into.Type(), int(r.NumRows()), int(r.NumRows())))
	first := 0
	for g := range r.NumRowGroups() {
		group := r.RowGroup(g)
		n := int(group.NumRows())
		if n < 0 || first+n > into.Len() {
			return errors.New("its parts hold more rows than it says")
		}
		for c := range group.NumColumns() {
			if err := readColumn(group, c, into.Slice(first, first+n)); err != nil {
				return fmt.Errorf("column %d: %w", c+1, err)
			}
		}
		first += n
	}
	if first != into.Len() {
		return errors.New("its parts hold fewer rows than it says")
	}
	return nil
}

// physical are the types in which writeParquet keeps a field.
var physical = map[reflect.Kind]parquet.Type{reflect.String: parquet.Types.ByteArray,
	reflect.Int64: parquet.Types.Int64, reflect.Float64: parquet.Types.Double}

func sameColumns(r *file.Reader, row reflect.Type) error {
	schema := r.MetaData().Schema
	if schema.NumColumns() != row.NumField() {
		return fmt.Errorf("%d columns, expected %d", schema.NumColumns(), row.NumField())
	}
	for i := range row.NumField() {
		f, c := row.Field(i), schema.Column(i)
		kind, most := f.Type.Kind(), int16(0)
		if kind == reflect.Pointer {
			kind, most = f.Type.Elem().Kind(), 1
		}
		if c.Path() != f.Tag.Get("json") || c.PhysicalType() != physical[kind] || c.MaxRepetitionLevel() != 0 ||
			c.MaxDefinitionLevel() != most {
			return fmt.Errorf("column %d is %s of %s, expected %s of %s", i+1, c.Path(), c.PhysicalType(),
				f.Tag.Get("json"), physical[kind])
		}
	}
	return nil
}

// readColumn reads column c of a group into its field of the rows.
func readColumn(group *file.RowGroupReader, c int, rows reflect.Value) error {
	chunk, err := group.MetaData().ColumnChunk(c)
	if err != nil {
		return err
	}
	if codec := chunk.Compression(); codec != compress.Codecs.Zstd && codec != compress.Codecs.Uncompressed {
		return fmt.Errorf("it is packed with %s", codec)
	}
	if err := checkPages(group, c); err != nil {
		return err
	}
	reader, err := group.Column(c)
	if err != nil {
		return err
	}
	n := rows.Len()
	levels := make([]int16, n)
	switch r := reader.(type) {
	case *file.ByteArrayColumnChunkReader:
		values := make([]parquet.ByteArray, n)
		return fillFrom(rows, c, levels, func() (int64, int, error) {
			return r.ReadBatch(int64(n), values, levels, nil)
		},
			func(i int, into reflect.Value) error {
				if len(values[i]) > mostText {
					return errTooLarge
				}
				into.SetString(string(values[i]))
				return nil
			})
	case *file.Int64ColumnChunkReader:
		values := make([]int64, n)
		return fillFrom(rows, c, levels, func() (int64, int, error) {
			return r.ReadBatch(int64(n), values, levels, nil)
		},
			func(i int, into reflect.Value) error { into.SetInt(values[i]); return nil })
	case *file.Float64ColumnChunkReader:
		values := make([]float64, n)
		return fillFrom(rows, c, levels, func() (int64, int, error) {
			return r.ReadBatch(int64(n), values, levels, nil)
		},
			func(i int, into reflect.Value) error { into.SetFloat(values[i]); return nil })
	}
	return fmt.Errorf("it is of %s", reader.Type())
}

// checkPages looks at each page of a column before any value of it is made.
func checkPages(group *file.RowGroupReader, c int) error {
	pages, err := group.GetColumnPageReader(c)
	if err != nil {
		return err
	}
	defer pages.Close()
	for pages.Next() {
		p := pages.Page()
		if p == nil || p.NumValues() < 0 || p.NumValues() > mostRows || len(p.Data()) > mostPage {
			return errTooLarge
		}
		if err := checkEncoding(group, c, p); err != nil {
			return err
		}
	}
	return pages.Err()
}

// checkEncoding: values stand as they are, or each as its number in a list of values, as
// writeParquet has them. Other encodings make a text of those before it. A list holds no
// text that is too long, which could be repeated ten thousand times.
func checkEncoding(group *file.RowGroupReader, c int, p file.Page) error {
	switch e := parquet.Encoding(p.Encoding()); e {
	case parquet.Encodings.Plain, parquet.Encodings.PlainDict, parquet.Encodings.RLEDict:
	default:
		return fmt.Errorf("its values are packed as %s", e)
	}
	if p.Type() != file.PageTypeDictionaryPage ||
		group.MetaData().Schema.Column(c).PhysicalType() != parquet.Types.ByteArray {
		return nil
	}
	for b := p.Data(); len(b) >= 4; {
		n := binary.LittleEndian.Uint32(b)
		if n > mostText || int(n) > len(b)-4 {
			return errTooLarge
		}
		b = b[4+n:]
	}
	return nil
}

// fillFrom reads a column's values and puts each into its row; a level of 0 is no value.
func fillFrom(rows reflect.Value, c int, levels []int16, read func() (int64, int, error),
	set func(i int, into reflect.Value) error) error {
	total, values, err := read()
	if err != nil {
		return err
	}
	if int(total) != rows.Len() {
		return fmt.Errorf("%d values in %d rows", total, rows.Len())
	}
	at := 0
	for i := range rows.Len() {
		into := rows.Index(i).Field(c)
		if into.Kind() == reflect.Pointer {
			if levels[i] == 0 {
				continue
			}
			into.Set(reflect.New(into.Type().Elem()))
			into = into.Elem()
		}
		if at >= values {
			return fmt.Errorf("row %d: no value", i+1)
		}
		if err := set(at, into); err != nil {
			return err
		}
		at++
	}
	return nil
}

// checkFooter looks at the list that describes a file before it is taken apart: a list in
// it may say that it is of more parts than bytes follow, and room is made for all of them.
// (Apache Parquet, file format: the length of the footer stands before the last four bytes.)
func checkFooter(b []byte) error {
	const ends = 8
	if len(b) < 2*ends || string(b[len(b)-4:]) != "PAR1" || string(b[:4]) != "PAR1" {
		return errors.New("it is no Parquet")
	}
	n := int(b[len(b)-8]) | int(b[len(b)-7])<<8 | int(b[len(b)-6])<<16 | int(b[len(b)-5])<<24
	if n <= 0 || n > len(b)-ends {
		return errors.New("it is no Parquet: its footer does not fit")
	}
	return walkCompact(b[len(b)-ends-n : len(b)-ends])
}
