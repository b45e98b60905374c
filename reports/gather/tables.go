package gather

import (
	"context"
	"errors"
	"io/fs"
	"os"
	"path/filepath"
	"slices"
	"strings"

	"wakeledger/pipeline/store"
	"wakeledger/reports/export"
)

// workTables hold what loading works with; they are no part of an export, nor are the
// tables past_... of logs that were forgotten or replaced.
var workTables = []string{"setting", "log_sheet", "entry_kept", "entry_shape"}

// Exported lists the tables of a season file that an export holds.
func Exported(ctx context.Context, db *store.DB) ([]store.TableColumns, error) {
	tables, err := db.Tables(ctx)
	return slices.DeleteFunc(tables, func(t store.TableColumns) bool {
		return strings.HasPrefix(t.Name, "past_") || slices.Contains(workTables, t.Name)
	}), err
}

// ExportTables writes every table of a season file into the empty folder dir: format is
// "parquet" or "csv". datapackage.json describes them.
func ExportTables(ctx context.Context, db *store.DB, dir, format string) error {
	tables, err := Exported(ctx, db)
	if err != nil {
		return err
	}
	var described []export.Table
	for _, t := range tables {
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
		d.Columns = append(d.Columns, export.Column{Name: "season", Type: "VARCHAR"},
			export.Column{Name: "boat", Type: "VARCHAR"})
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
