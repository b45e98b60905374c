package stats

import (
	"fmt"
	"math"
	"slices"
)

// Intercept is the name of the column of ones that every design has first.
const Intercept = "(intercept)"

// Column is one explanatory variable, a value for each row.
type Column struct {
	Name   string
	Values []float64
}

// Treatment turns a factor into columns of 0 and 1, one for each level but the
// reference, sorted by level and named factor=level. A reference that does not
// occur leaves every level its column, and the last is then aliased with the
// intercept.
func Treatment(factor string, levels []string, reference string) []Column {
	names := slices.Compact(slices.Sorted(slices.Values(levels)))
	var columns []Column
	for _, name := range names {
		if name == reference {
			continue
		}
		c := Column{factor + "=" + name, make([]float64, len(levels))}
		for i, l := range levels {
			if l == name {
				c.Values[i] = 1
			}
		}
		columns = append(columns, c)
	}
	return columns
}

// RegressionData is counts with the effort that each took and what may explain
// them. The intercept is added, and is not among the Columns.
type RegressionData struct {
	Events   []int64
	Effort   []float64 // its logarithm is the offset; a row without effort is left out
	Columns  []Column
	Clusters []string // the trip of each row; nil for no cluster-robust errors
}

// check returns an error where the data do not fit together.
func (d RegressionData) check() error {
	n := len(d.Events)
	if len(d.Effort) != n {
		return fmt.Errorf("regression: %d counts but %d efforts", n, len(d.Effort))
	}
	if d.Clusters != nil && len(d.Clusters) != n {
		return fmt.Errorf("regression: %d counts but %d clusters", n, len(d.Clusters))
	}
	for i, x := range d.Events {
		if x < 0 {
			return fmt.Errorf("regression: row %d has a negative count", i)
		}
	}
	for _, c := range d.Columns {
		if len(c.Values) != n {
			return fmt.Errorf("regression: %d counts but %d values of %s", n, len(c.Values), c.Name)
		}
		for i, v := range c.Values {
			if math.IsNaN(v) || math.IsInf(v, 0) {
				return fmt.Errorf("regression: %s in row %d is not a finite number", c.Name, i)
			}
		}
	}
	return nil
}

// rowsWithEffort are the rows that can enter the fit.
func (d RegressionData) rowsWithEffort() []int {
	var rows []int
	for i, t := range d.Effort {
		if validEffort(t) {
			rows = append(rows, i)
		}
	}
	return rows
}

// design is the intercept and the columns, all rows.
func (d RegressionData) design() vectors {
	v := vectors{ones(len(d.Events))}
	for _, c := range d.Columns {
		v = append(v, c.Values)
	}
	return v
}

// names are those of the design's columns.
func (d RegressionData) names() []string {
	names := []string{Intercept}
	for _, c := range d.Columns {
		names = append(names, c.Name)
	}
	return names
}
