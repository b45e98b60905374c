package store

import (
	"context"
	"errors"
	"fmt"
	"slices"
	"strconv"
	"strings"
)

// Errors of opening a file that is no season file.
var (
	ErrForeign = errors.New("this is a database, but no season file of wakeledger: name another with --db")
	ErrEmpty   = errors.New("this season file holds nothing yet: 'wakeledger load LOG...' fills it")
)

// object is a thing that a database holds: a table, a view, a macro ...
type object struct{ kind, schema, name, madeBy string }

// objects are what a statement lists of all that the database of that name holds.
func (db *DB) objects(ctx context.Context, name, database string) ([]object, error) {
	rows, err := db.Query(ctx, statement(name), database)
	if err != nil {
		return nil, err
	}
	var all []object
	err = each(rows, func() error {
		var o object
		err := rows.Scan(&o.kind, &o.schema, &o.name, &o.madeBy)
		all = append(all, o)
		return err
	})
	return all, err
}

// expected are the objects of a season file after so many steps of the schema. They are
// made and taken back.
func (db *DB) expected(ctx context.Context, have int) (all []object, err error) {
	if err := db.begin(ctx); err != nil {
		return nil, err
	}
	defer func() { err = errors.Join(err, db.exec(context.WithoutCancel(ctx), "rollback")) }()
	for _, s := range steps[:have] {
		if err := db.runText(ctx, s.name, s.text); err != nil {
			return nil, err
		}
	}
	return db.objects(ctx, "shape", "memory") // no step makes a macro
}

// settingTable is made by these words in every version; the tables of entries grow.
const (
	settingTable = `CREATE TABLE setting("name" VARCHAR NOT NULL, "value" VARCHAR NOT NULL);`
	keptTable    = "entry_kept"
	pastTable    = "past_entry_kept"
	arrowView    = "incoming" // what is on its way in; earlier versions left one behind, which is never read
)

// verify tells a season file by the kinds and columns of all that it holds, and gives the
// number of its schema's steps. Nothing in it is run: a table with a rule that calculates,
// a view, a macro, a type of its own could do what no season file does. db must be in
// memory, with the file attached as season and not yet in use.
func (db *DB) verify(ctx context.Context) (have int, err error) {
	has, err := db.objects(ctx, "shape", "season")
	if err != nil {
		return 0, err
	}
	macros, err := db.objects(ctx, "macros", "season")
	if err != nil {
		return 0, err
	}
	has = append(has, macros...)
	has = slices.DeleteFunc(has, func(o object) bool { return o.kind == "view" && o.name == arrowView })
	if len(has) == 0 {
		return 0, ErrEmpty
	}
	if !slices.ContainsFunc(has, func(o object) bool {
		return o.kind == "table" && o.schema == "main" && o.name == "setting" && sameWords(o.madeBy, settingTable)
	}) {
		return 0, ErrForeign
	}
	if have, err = db.seasonVersion(ctx); err != nil {
		return 0, err
	}
	want, err := db.expected(ctx, have)
	if err != nil {
		return 0, err
	}
	return have, compareShapes(has, want)
}

func (db *DB) seasonVersion(ctx context.Context) (int, error) {
	var v string
	if err := db.conn.QueryRowContext(ctx, statement("season_version")).Scan(&v); err != nil {
		return 0, ErrForeign
	}
	n, err := strconv.Atoi(v)
	switch {
	case err != nil || n < 1:
		return 0, ErrForeign
	case n > version():
		return 0, ErrNewer
	}
	return n, nil
}

// compareShapes names the first object that a season file has not, or has otherwise.
func compareShapes(has, want []object) error {
	find := func(in []object, o object) int {
		return slices.IndexFunc(in, func(x object) bool {
			return x.kind == o.kind && x.schema == o.schema && x.name == o.name
		})
	}
	shape := slices.IndexFunc(want, func(o object) bool { return o.name == "entry_shape" })
	for _, o := range has {
		at := find(want, o)
		switch {
		case at < 0:
			return fmt.Errorf("%w: it holds a %s %q, which no season file does", ErrForeign, o.kind, o.name)
		case (o.name == keptTable || o.name == pastTable) && o.kind == "table":
			if !madeOf(o.madeBy, want[at].madeBy, want[shape].madeBy) {
				return fmt.Errorf("%w: its table %q is not made as it should be", ErrForeign, o.name)
			}
		case !sameWords(o.madeBy, want[at].madeBy):
			return fmt.Errorf("%w: its %s %q is not made as it should be", ErrForeign, o.kind, o.name)
		}
	}
	for _, o := range want {
		if find(has, o) < 0 {
			return fmt.Errorf("%w: its %s %q is missing", ErrForeign, o.kind, o.name)
		}
	}
	return nil
}

// sameWords compares two statements without their quotes, which the database sets as it
// likes. No name of ours holds one.
func sameWords(a, b string) bool {
	return strings.ReplaceAll(a, `"`, "") == strings.ReplaceAll(b, `"`, "")
}

// madeOf tells the table of entries: its first columns as at its birth, then any of the
// columns of the table that has them all, each once.
func madeOf(table, birth, shape string) bool {
	has, first, all := columnsOf(table), columnsOf(birth), columnsOf(shape)
	if len(has) < len(first) || !slices.Equal(has[:len(first)], first) {
		return false
	}
	seen := map[string]bool{}
	for _, c := range has[len(first):] {
		if seen[c] || slices.Contains(first, c) || !slices.Contains(all, c) {
			return false
		}
		seen[c] = true
	}
	return true
}

// columnsOf takes apart "CREATE TABLE t(a T, b T NOT NULL);". Types of ours hold no comma.
func columnsOf(statement string) []string {
	_, list, ok := strings.Cut(strings.ReplaceAll(statement, `"`, ""), "(")
	if !ok {
		return nil
	}
	return strings.Split(strings.TrimSuffix(list, ");"), ", ")
}
