package reports

import (
	"context"
	"errors"
	"fmt"
	"io/fs"
	"os"
	"path/filepath"
	"slices"

	"wakeledger/pipeline/store"
	"wakeledger/reports/export"
)

// workTables hold what loading works with; they are no part of an export.
var workTables = []string{"setting", "log_sheet", "entry_kept", "entry_shape"}

// ExportTables writes every table of a season file into dir, which must be empty
// or not there: format is "parquet" or "csv". datapackage.json describes them.
// Where it fails, what it wrote is taken away again.
func ExportTables(ctx context.Context, db *store.DB, dir, format string) (err error) {
	made, err := freshDir(dir)
	if err != nil {
		return err
	}
	defer func() {
		if err != nil {
			err = errors.Join(err, clear(dir, made))
		}
	}()
	tables, err := db.Tables(ctx)
	if err != nil {
		return err
	}
	var described []export.Table
	for _, t := range tables {
		if slices.Contains(workTables, t.Name) {
			continue
		}
		write := db.CopyParquet
		if format == "csv" {
			write = db.CopyCSV
		}
		if err := write(ctx, t, dir); err != nil {
			return err
		}
		d, err := describe(t, dir, format)
		if err != nil {
			return err
		}
		described = append(described, d)
	}
	f, err := os.Create(filepath.Join(dir, "datapackage.json"))
	if err != nil {
		return err
	}
	return errors.Join(export.Package(f, format, described), f.Close())
}

// freshDir makes dir, or takes it where it is there and empty.
func freshDir(dir string) (made bool, err error) {
	there, err := os.ReadDir(dir)
	switch {
	case errors.Is(err, fs.ErrNotExist):
		return true, os.MkdirAll(dir, 0o755)
	case err != nil:
		return false, err
	case len(there) > 0:
		return false, fmt.Errorf("%s is not empty: name a new folder", dir)
	}
	return false, nil
}

// clear takes away what an export that failed has left.
func clear(dir string, made bool) error {
	if made {
		return os.RemoveAll(dir)
	}
	left, err := os.ReadDir(dir)
	for _, e := range left {
		err = errors.Join(err, os.RemoveAll(filepath.Join(dir, e.Name())))
	}
	return err
}

// describe is a table as it was written: its files, and its columns with season and
// boat where it belongs to trips.
func describe(t store.TableColumns, dir, format string) (export.Table, error) {
	d := export.Table{Name: t.Name}
	for _, c := range t.Columns {
		if t.Home == "" || c.Name != "boat" {
			d.Columns = append(d.Columns, export.Column(c))
		}
	}
	if t.Home != "" {
		d.Columns = append(d.Columns, export.Column{Name: "season", Type: "VARCHAR"}, export.Column{Name: "boat", Type: "VARCHAR"})
	}
	if one := t.Name + "." + format; exists(filepath.Join(dir, one)) {
		d.Paths = []string{one}
		return d, nil
	}
	err := filepath.WalkDir(filepath.Join(dir, t.Name), func(path string, e fs.DirEntry, err error) error {
		if err != nil || e.IsDir() {
			return err
		}
		within, err := filepath.Rel(dir, path)
		d.Paths = append(d.Paths, filepath.ToSlash(within))
		return err
	})
	return d, err
}

func exists(path string) bool {
	_, err := os.Stat(path)
	return err == nil
}
