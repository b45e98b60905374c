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
	answer := []T{}
	for rows.Next() {
		var row T
		into, err := targets(&row, columns)
		if err != nil {
			return nil, fmt.Errorf("%s: %w", name, err)
		}
		if err := rows.Scan(into...); err != nil {
			return nil, fmt.Errorf("%s: %w", name, err)
		}
		answer = append(answer, row)
	}
	return answer, rows.Err()
}

// targets are the fields of row that the columns go to.
func targets(row any, columns []string) ([]any, error) {
	v := reflect.ValueOf(row).Elem()
	into := make([]any, len(columns))
	for i, c := range columns {
		for f := range v.NumField() {
			if tag(v.Type().Field(f)) == c {
				into[i] = v.Field(f).Addr().Interface()
			}
		}
		if into[i] == nil {
			return nil, fmt.Errorf("column %q has no field in %s", c, v.Type().Name())
		}
	}
	return into, nil
}

func tag(f reflect.StructField) string {
	if t := f.Tag.Get("sql"); t != "" {
		return t
	}
	return f.Tag.Get("json")
}
