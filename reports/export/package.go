package export

import (
	"encoding/json"
	"fmt"
	"io"
	"strings"
)

// Table is one table of an export.
type Table struct {
	Name    string
	Paths   []string // of its files, within the export
	Columns []Column
}

// Column is one column with its type in SQL's words (VARCHAR, BIGINT, DOUBLE ...).
type Column struct{ Name, Type string }

// keys are the columns that tell the rows of a table apart.
var keys = map[string][]string{"trip": {"trip_id"}, "leg": {"leg_id"}, "line": {"line_id"},
	"strike": {"strike_id"}, "fish": {"fish_id"},
	"log": {"log_id"}, "species": {"code"}, "relation": {"relation"}, "estimate": {"fish_id", "rank"}}

// parents are the tables that a column of another leads to.
var parents = map[string]string{"trip_id": "trip", "leg_id": "leg", "line_id": "line", "strike_id": "strike",
	"fish_id": "fish", "log_id": "log"}

// types are those of Table Schema by those of SQL.
var types = map[string]string{"VARCHAR": "string", "VARCHAR[]": "string", "INTEGER": "integer", "BIGINT": "integer",
	"DOUBLE": "number", "BOOLEAN": "boolean", "DATE": "date", "TIMESTAMP": "datetime"}

type descriptor struct {
	Profile     string     `json:"profile"`
	Name        string     `json:"name"`
	Title       string     `json:"title"`
	Description string     `json:"description"`
	Resources   []resource `json:"resources"`
}

type resource struct {
	Profile  string   `json:"profile,omitempty"`
	Name     string   `json:"name"`
	Path     any      `json:"path"` // one path, or several
	Format   string   `json:"format"`
	Encoding string   `json:"encoding,omitempty"`
	Dialect  *dialect `json:"dialect,omitempty"`
	Schema   schema   `json:"schema"`
}

type dialect struct {
	Delimiter   string `json:"delimiter"`
	DoubleQuote bool   `json:"doubleQuote"`
	Header      bool   `json:"header"`
}

type schema struct {
	Fields      []field      `json:"fields"`
	PrimaryKey  []string     `json:"primaryKey,omitempty"`
	ForeignKeys []foreignKey `json:"foreignKeys,omitempty"`
}

type field struct {
	Name        string `json:"name"`
	Type        string `json:"type"`
	Format      string `json:"format,omitempty"`
	Unit        string `json:"unit,omitempty"`
	Description string `json:"description,omitempty"`
}

type foreignKey struct {
	Fields    string    `json:"fields"`
	Reference reference `json:"reference"`
}

type reference struct {
	Resource string `json:"resource"`
	Fields   string `json:"fields"`
}

// Package writes the description of an export: a Data Package with a Table Schema
// for every table (Frictionless Data specifications, version 1), the unit of a
// field in its property unit. format is csv or parquet.
func Package(w io.Writer, format string, tables []Table) error {
	d, err := Fields()
	if err != nil {
		return err
	}
	p := descriptor{Profile: "data-package", Name: "season", Title: "A season's trolling log",
		Description: "All tables of one season file. Empty is not known, never zero. Clock times (*_at) are the " +
			"boat's, *_utc are instants." + inFormat(format)}
	names := map[string]bool{}
	for _, t := range tables {
		names[t.Name] = true
	}
	for _, t := range tables {
		r := resource{Name: strings.ReplaceAll(t.Name, "_", "-"), Format: format, Schema: schemaOf(t, d, names)}
		if r.Path = t.Paths; len(t.Paths) == 1 {
			r.Path = t.Paths[0]
		}
		if format == "csv" {
			r.Profile, r.Encoding, r.Dialect = "tabular-data-resource", "utf-8", &dialect{",", true, true}
		}
		p.Resources = append(p.Resources, r)
	}
	e := json.NewEncoder(w)
	e.SetIndent("", "  ")
	e.SetEscapeHTML(false)
	return e.Encode(p)
}

// inFormat is what must be known of a format.
func inFormat(format string) string {
	if format == "csv" {
		return " A text that begins with = + - @, a tab or a line end, or with ' before one of these, has one ' put " +
			"before it, so that no spreadsheet takes it for a formula: take one ' off to have it back. Numbers are " +
			"as they are."
	}
	return " Tables of trips are parted by season and boat: season=YEAR/boat=BOAT. Numbers of trips, legs, lines, " +
		"strikes and fish are those of one season file: together with season and boat they are a key."
}

func schemaOf(t Table, d Dictionary, names map[string]bool) schema {
	var s schema
	for _, c := range t.Columns {
		m, _ := d.Of(t.Name, c.Name)
		f := field{Name: c.Name, Type: types[c.Type], Unit: m.Unit, Description: m.Description}
		if f.Type == "" {
			f.Type = "any"
		}
		if f.Type == "datetime" {
			f.Format = "%Y-%m-%dT%H:%M:%S"
		}
		s.Fields = append(s.Fields, f)
		if parent := parents[c.Name]; parent != "" && parent != t.Name && names[parent] {
			s.ForeignKeys = append(s.ForeignKeys, foreignKey{c.Name,
				reference{strings.ReplaceAll(parent, "_", "-"), c.Name}})
		}
	}
	s.PrimaryKey = keys[t.Name]
	return s
}

// Missing lists the columns that the dictionary does not know, as table.column.
func Missing(tables []Table) ([]string, error) {
	d, err := Fields()
	if err != nil {
		return nil, err
	}
	var out []string
	for _, t := range tables {
		for _, c := range t.Columns {
			if _, ok := d.Of(t.Name, c.Name); !ok {
				out = append(out, fmt.Sprintf("%s.%s", t.Name, c.Name))
			}
		}
	}
	return out, nil
}
