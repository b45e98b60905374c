package recognise

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

// Kind is what a row of a sheet is.
type Kind string

// The kinds of sheet.
const (
	Trips   Kind = "trips"
	Legs    Kind = "legs"
	Lines   Kind = "lines"
	Strikes Kind = "strikes"
	FishRow Kind = "fish"
	Flat    Kind = "flat"
)

// Column is one column that a log may hold.
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
	Kinds     []Kind         // sheets in which it may stand
	Aliases   []string       // normalised headings

	doubtful map[string]bool // of Aliases: only where the cells state a unit, or what is counted
}

// In tells whether the column may stand in a sheet of kind k.
func (c *Column) In(k Kind) bool { return slices.Contains(c.Kinds, k) }

// Table is the columns understood, in the order of their data file.
type Table struct {
	Columns   []*Column
	Names     func(heading string) bool // whether a text is a species' name; nil where nobody says
	byAlias   map[string][]*Column
	byEssence map[string][]*Column
	words     map[string]string
	inHeads   map[string]bool // the words of all spellings
}

var dimensions = map[string]unit.Dimension{
	"length": unit.Length, "mass": unit.Mass, "speed": unit.Speed,
	"temperature": unit.Temperature, "duration": unit.Duration, "angle": unit.Angle,
}

// Default returns the embedded table. Its error names the row that is wrong.
func Default() (*Table, error) {
	rows, err := csv.NewReader(bytes.NewReader(columnsCSV)).ReadAll()
	if err != nil {
		return nil, fmt.Errorf("columns.csv: %w", err)
	}
	t := &Table{}
	if t.words, err = loadWords(); err != nil {
		return nil, err
	}
	for i, row := range rows[1:] {
		c, err := parseColumn(row)
		if err != nil {
			return nil, fmt.Errorf("columns.csv:%d: %w", i+2, err)
		}
		t.Columns = append(t.Columns, c)
	}
	t.index()
	return t, nil
}

func parseColumn(row []string) (*Column, error) {
	c := &Column{Name: row[0], Parse: row[1], Key: row[9] == "yes", doubtful: map[string]bool{}}
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
		if doubtful {
			c.doubtful[a] = true
		}
		if a != normalise(a) {
			return nil, fmt.Errorf("spelling %q is not in normal form", a)
		}
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
