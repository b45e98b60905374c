package main

import (
	"fmt"

	"github.com/spf13/cobra"

	"wakeledger/pipeline/unit"
)

func (a *app) setbackCmd() *cobra.Command {
	var counts []float64
	var speed, units string
	c := &cobra.Command{
		Use:     "setback",
		Short:   "Turn counts at a let-out speed into distances and the gaps between them",
		Example: "  wakeledger setback --count 70,100 --speed 8kn",
		Args:    takes(cobra.NoArgs),
		RunE: func(*cobra.Command, []string) error {
			if len(counts) == 0 || speed == "" {
				return usage("setback needs --count and --speed, such as --count 70,100 --speed 8kn")
			}
			if units != "us" && units != "metric" {
				return usage("--units %q: expected us or metric", units)
			}
			q, err := unit.ParseQuantity(speed, unit.Speed, unit.Knot, unit.MarkUnknown)
			if err != nil {
				return usage("--speed %s: %v", speed, err)
			}
			kn, err := q.In(unit.Knot)
			if err != nil || kn <= 0 || kn > 40 {
				return usage("--speed %s: expected more than 0 and up to 40 kn", speed)
			}
			return a.setbacks(counts, kn, units)
		},
	}
	c.Flags().Float64SliceVar(&counts, "count", nil, "counts in seconds, the shortest line first")
	c.Flags().StringVar(&speed, "speed", "", "boat speed while the line was let out")
	c.Flags().StringVar(&units, "units", "metric", "us (yd) or metric (m)")
	return c
}

// setbackRow is one line of the answer; distances in the unit of their column.
type setbackRow struct {
	Count    string `json:"count_s"`
	Distance string `json:"setback"`
	Gap      string `json:"gap_to_the_one_before"`
}

func (a *app) setbacks(counts []float64, kn float64, units string) error {
	show := func(seconds float64) string {
		m := seconds * kn * 1852 / 3600
		if units == "us" {
			return fmt.Sprintf("%.0f yd", m/0.9144)
		}
		return fmt.Sprintf("%.0f m", m)
	}
	var rows []setbackRow
	for i, c := range counts {
		if c < 0 || c > 3600 {
			return usage("--count %g: expected 0 to 3600 seconds", c)
		}
		r := setbackRow{Count: fmt.Sprintf("%g", c), Distance: show(c)}
		if i > 0 {
			r.Gap = show(max(c-counts[i-1], counts[i-1]-c))
		}
		rows = append(rows, r)
	}
	if err := writeTable(a.out, rows); err != nil {
		return err
	}
	_, err := fmt.Fprintf(a.out, "\nAt %g kn over the ground; a current along the line makes the true distance through the water longer or shorter.\n", kn)
	return err
}
