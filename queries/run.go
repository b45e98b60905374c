package queries

import (
	"context"
	"embed"
	"fmt"
	"reflect"
	"strings"

	"wakeledger/pipeline/store"
)

//go:embed sql/*.sql
var files embed.FS

const (
	usesLevels     = "-- levels: yes"
	usesClubLevels = "-- levels: club"
)

// text is a question's statement, with the shared part before it where it
// asks for that in its first line.
func text(name string) (string, error) {
	b, err := files.ReadFile("sql/" + name + ".sql")
	if err != nil {
		return "", err
	}
	q := string(b)
	club := strings.HasPrefix(q, usesClubLevels)
	if !club && !strings.HasPrefix(q, usesLevels) {
		return q, nil
	}
	shared, err := files.ReadFile("sql/_levels.sql")
	if err != nil {
		return "", err
	}
	levels := string(shared)
	if club {
		levels, err = clubBands(levels)
	}
	return levels + q, err
}

// ask runs sql/NAME.sql and scans each row into a T by its columns' names.
func ask[T any](ctx context.Context, db *store.DB, name string, args ...any) ([]T, error) {
	q, err := text(name)
	if err != nil {
		return nil, err
	}
	rows, err := db.Query(ctx, q, args...)
	if err != nil {
		return nil, fmt.Errorf("%s: %w", name, err)
	}
	defer rows.Close()
	columns, err := rows.Columns()
	if err != nil {
		return nil, err
	}
	fields, err := fieldsOf(reflect.TypeFor[T](), columns)
	if err != nil {
		return nil, fmt.Errorf("%s: %w", name, err)
	}
	answer := []T{}
	into := make([]any, len(columns))
	for rows.Next() {
		var row T
		v := reflect.ValueOf(&row).Elem()
		for i, f := range fields {
			into[i] = v.Field(f).Addr().Interface()
		}
		if err := rows.Scan(into...); err != nil {
			return nil, fmt.Errorf("%s: %w", name, err)
		}
		answer = append(answer, row)
	}
	return answer, rows.Err()
}

// fieldsOf are the fields of a row that the columns go to.
func fieldsOf(row reflect.Type, columns []string) ([]int, error) {
	fields := make([]int, len(columns))
	for i, c := range columns {
		fields[i] = -1
		for f := range row.NumField() {
			if tag(row.Field(f)) == c {
				fields[i] = f
			}
		}
		if fields[i] < 0 {
			return nil, fmt.Errorf("column %q has no field in %s", c, row.Name())
		}
	}
	return fields, nil
}

func tag(f reflect.StructField) string {
	if t := f.Tag.Get("sql"); t != "" {
		return t
	}
	return f.Tag.Get("json")
}
