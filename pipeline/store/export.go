package store

import (
	"context"
	"fmt"
	"os"
	"path/filepath"
	"slices"
	"strings"
)

// TableColumns is one table of the season file with its columns in order.
type TableColumns struct {
	Name    string
	Columns []ColumnType
	// Home are the columns by which a row is given a season and a boat; "" for a
	// table whose rows belong to none.
	Home string

	view string // that tells season and boat by them
}

// ColumnType is a column with its type in the database's words.
type ColumnType struct{ Name, Type string }

// homeKeys lead to a trip; the first that a table has is taken.
var homeKeys = []string{"trip_id", "leg_id", "strike_id", "fish_id"}

// homes are the columns that give a row its season and boat where no trip does.
var homes = map[string]string{"entry": `log_id, sheet_no, "row"`, "track": "log_id, track_no",
	"fix": "log_id, track_no, at_ms", "track_piece": "log_id, track_no, at_utc"}

// Tables lists the tables of the season file.
func (db *DB) Tables(ctx context.Context) ([]TableColumns, error) {
	rows, err := db.Query(ctx, statement("export_columns"))
	if err != nil {
		return nil, err
	}
	var tables []TableColumns
	err = each(rows, func() error {
		var table string
		var c ColumnType
		if err := rows.Scan(&table, &c.Name, &c.Type); err != nil {
			return err
		}
		if len(tables) == 0 || tables[len(tables)-1].Name != table {
			tables = append(tables, TableColumns{Name: table})
		}
		t := &tables[len(tables)-1]
		t.Columns = append(t.Columns, c)
		return nil
	})
	for i := range tables {
		tables[i].findHome()
	}
	return tables, err
}

func (t *TableColumns) findHome() {
	if key, ok := homes[t.Name]; ok {
		t.Home, t.view = key, "home_"+t.Name
		return
	}
	for _, key := range homeKeys {
		if t.Has(key) {
			t.Home, t.view = key, "home_"+key
			return
		}
	}
}

// Has tells whether the table has the column.
func (t TableColumns) Has(column string) bool {
	return slices.ContainsFunc(t.Columns, func(c ColumnType) bool { return c.Name == column })
}

// CopyParquet writes a table into dir as Parquet: one whose rows have a home as
// dir/NAME/season=YEAR/boat=BOAT/*.parquet, any other as dir/NAME.parquet. An
// empty table has one file without rows, dir/NAME.parquet.
func (db *DB) CopyParquet(ctx context.Context, t TableColumns, dir string) error {
	rows := int64(0)
	if t.Home != "" {
		if err := db.conn.QueryRowContext(ctx, strings.ReplaceAll(statement("count_table"), "TABLE_NAME",
			identifier(t.Name))).Scan(&rows); err != nil {
			return fmt.Errorf("%s: %w", t.Name, err)
		}
	}
	if rows == 0 {
		return db.copyTable(ctx, t, false, filepath.Join(dir, t.Name+".parquet"), "FORMAT PARQUET, COMPRESSION ZSTD")
	}
	to := filepath.Join(dir, t.Name)
	if err := os.MkdirAll(to, 0o755); err != nil {
		return err
	}
	return db.copyTable(ctx, t, false, to, "FORMAT PARQUET, COMPRESSION ZSTD, PARTITION_BY (season, boat), "+
		"OVERWRITE_OR_IGNORE")
}

// CopyCSV writes a table as dir/NAME.csv: UTF-8, a header, commas, quotes where
// needed, clock times as YYYY-MM-DDThh:mm:ss. A text that a spreadsheet would
// take for a formula gets a ' in front (see escapeFormula).
func (db *DB) CopyCSV(ctx context.Context, t TableColumns, dir string) error {
	return db.copyTable(ctx, t, true, filepath.Join(dir, t.Name+".csv"),
		"FORMAT CSV, HEADER, TIMESTAMPFORMAT '%Y-%m-%dT%H:%M:%S'")
}

func (db *DB) copyTable(ctx context.Context, t TableColumns, formulas bool, to, options string) error {
	if err := db.exec(ctx, "export_home"); err != nil {
		return err
	}
	name, boat := "export_table", "coalesce(home_boat, 'unknown')"
	if formulas {
		boat = escapeFormula(boat, "boat")
	} else {
		boat += " AS boat"
	}
	if t.Home != "" {
		name = "export_at_home"
	}
	q := strings.NewReplacer("SELECT_LIST", exportList(t, formulas), "HOME_BOAT", boat, "TABLE_NAME",
		identifier(t.Name), "HOME_VIEW", t.view, "HOME_KEY", t.Home,
		"FILE_NAME", literal(to), "OPTIONS", options).Replace(statement(name))
	if _, err := db.conn.ExecContext(ctx, q); err != nil {
		return fmt.Errorf("write table %s: %w", t.Name, err)
	}
	return nil
}

// exportList is the columns of a table; a boat of its own gives way to the trip's.
func exportList(t TableColumns, formulas bool) string {
	var list []string
	for _, c := range t.Columns {
		if t.Home != "" && c.Name == "boat" {
			continue
		}
		if formulas && c.Type == "VARCHAR" {
			list = append(list, escapeFormula(identifier(c.Name), c.Name))
			continue
		}
		list = append(list, identifier(c.Name))
	}
	return strings.Join(list, ", ")
}

// escapeFormula puts a ' before a text that begins, after any ', with one of the
// characters by which spreadsheets tell a formula (OWASP, CSV Injection: = + - @,
// tab, carriage return; line feed and the full-width forms too). Taking one ' off a
// text that begins so gives back what was there. Numbers are not touched.
func escapeFormula(value, column string) string {
	return fmt.Sprintf("CASE WHEN regexp_matches(%[1]s, '^''*[-=+@\\t\\r\\n\uff1d\uff0b\uff0d\uff20]') THEN '''' || "+
		"%[1]s ELSE %[1]s END AS %[2]s", value, identifier(column))
}
