package plan

import (
	"bytes"
	_ "embed"
	"encoding/csv"
	"fmt"
	"math"
	"slices"
	"strconv"
	"strings"

	"wakeledger/pipeline/unit"
)

//go:embed columns.csv
var columnsCSV []byte

// Kind is what a record of a block is.
type Kind string

// The kinds of block.
const (
	Trips   Kind = "trips"
	Legs    Kind = "legs"
	Lines   Kind = "lines"
	Strikes Kind = "strikes"
	Fish    Kind = "fish"
	Flat    Kind = "flat"
	Events  Kind = "events"
)

// Kinds are all kinds, in the order in which they are told to users.
func Kinds() []Kind { return []Kind{Trips, Legs, Lines, Strikes, Fish, Flat, Events} }

// Column is one meaning that a column of a log may have.
type Column struct {
	Name      string         // the season file's name for it
	Parse     string         // how a cell is read: text, date, moment, quantity, count, ...
	HasUnit   bool           // whether Dimension and Unit mean something
	Dimension unit.Dimension // of a quantity
	Unit      unit.Unit      // the season file's unit, into which cells are converted
	Bare      unit.Unit      // of a cell and heading that state none, where the trade has only one
	US        unit.Unit      // of the same in a log kept in US units, "" where several are usual
	Metric    unit.Unit      // of the same in a metric log
	Min, Max  float64        // what is possible, in Unit; NaN without a bound
	Key       bool           // filled down from merged cells
	Kinds     []Kind         // blocks in which it may stand
	Aliases   []string       // headings in normal form that mean it

	Doubtful map[string]bool // of Aliases: only where the cells state a unit, or what is counted
}

// In tells whether the column may stand in a block of kind k. An event is told by
// what strikes and legs are told by.
func (c *Column) In(k Kind) bool {
	if k == Events && !slices.Contains(c.Kinds, Events) {
		return slices.Contains(c.Kinds, Strikes) || slices.Contains(c.Kinds, Legs)
	}
	return slices.Contains(c.Kinds, k)
}

// Possible tells whether v in unit u is within the column's bounds.
func (c *Column) Possible(v float64, u unit.Unit) bool {
	w, err := unit.Convert(v, u, c.Unit)
	return err == nil && !(w < c.Min) && !(w > c.Max)
}

var dimensions = map[string]unit.Dimension{
	"length": unit.Length, "mass": unit.Mass, "speed": unit.Speed,
	"temperature": unit.Temperature, "duration": unit.Duration, "angle": unit.Angle,
}

// Columns returns the embedded catalogue, in the order of its file. Its error
// names the row that is wrong.
func Columns() ([]*Column, error) {
	rows, err := csv.NewReader(bytes.NewReader(columnsCSV)).ReadAll()
	if err != nil {
		return nil, fmt.Errorf("columns.csv: %w", err)
	}
	var all []*Column
	for i, row := range rows[1:] {
		c, err := parseColumn(row)
		if err != nil {
			return nil, fmt.Errorf("columns.csv:%d: %w", i+2, err)
		}
		all = append(all, c)
	}
	return all, nil
}

func parseColumn(row []string) (*Column, error) {
	c := &Column{Name: row[0], Parse: row[1], Key: row[9] == "yes", Doubtful: map[string]bool{}}
	var err error
	if c.Min, err = bound(row[7]); err != nil {
		return nil, err
	}
	if c.Max, err = bound(row[8]); err != nil {
		return nil, err
	}
	if row[2] != "" {
		d, ok := dimensions[row[2]]
		if !ok {
			return nil, fmt.Errorf("unknown dimension %q", row[2])
		}
		c.HasUnit, c.Dimension, c.Unit = true, d, unit.Unit(row[3])
		c.Bare, c.US, c.Metric = unit.Unit(row[4]), unit.Unit(row[5]), unit.Unit(row[6])
		for i, u := range []unit.Unit{c.Unit, c.Bare, c.US, c.Metric} {
			if (u != "" || i == 0) && u.Dimension() != d {
				return nil, fmt.Errorf("unit %q is no %s", u, row[2])
			}
		}
	}
	for _, k := range strings.Fields(row[10]) {
		c.Kinds = append(c.Kinds, Kind(k))
	}
	for _, a := range strings.Split(row[11], "|") {
		a, doubtful := strings.CutPrefix(a, "?")
		if a == "" {
			continue
		}
		c.Doubtful[a] = doubtful
		c.Aliases = append(c.Aliases, a)
	}
	return c, nil
}

func bound(s string) (float64, error) {
	if s == "" {
		return math.NaN(), nil
	}
	return strconv.ParseFloat(s, 64)
}
