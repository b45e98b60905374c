package main

import (
	"fmt"
	"strconv"
	"strings"

	"github.com/spf13/cobra"

	"wakeledger/pipeline/unit"
)

func (a *app) setbackCmd() *cobra.Command {
	var counted, speed, units string
	c := &cobra.Command{
		Use:     "setback",
		Short:   "How far back a line is after a count, and the gaps between lines",
		Example: "  wakeledger setback --count 70,100 --speed 8kn",
		Args:    takesNothing,
		RunE: func(*cobra.Command, []string) error {
			if counted == "" || speed == "" {
				return usage("setback needs --count and --speed, such as --count 70,100 --speed 8kn")
			}
			if err := oneWord("units", units, unitNames...); err != nil {
				return err
			}
			counts, err := countsOf(counted)
			if err != nil {
				return err
			}
			q, err := unit.ParseQuantity(speed, unit.Speed, unit.Knot, unit.MarkUnknown)
			if err != nil {
				return usage("--speed %q: wanted the boat's speed as one number, such as 8kn, 9mph or 15km/h", speed)
			}
			kn, err := q.In(unit.Knot)
			if err != nil || kn <= 0 || kn > 40 {
				return usage("--speed %s: wanted more than 0 and up to 40 kn", speed)
			}
			return a.setbacks(counts, kn, units)
		},
	}
	c.Flags().StringVar(&counted, "count", "", "`counts` in seconds, the shortest line first, such as 70,100")
	c.Flags().StringVar(&speed, "speed", "", "the boat's `speed` while the line ran out, such as 8kn")
	c.Flags().StringVar(&units, "units", "metric", "`us` (yards) or metric (metres)")
	offers(c, "units", unitNames...)
	return c
}

// countsOf reads counts with commas or spaces between.
func countsOf(text string) ([]float64, error) {
	var counts []float64
	for _, word := range strings.FieldsFunc(text, func(r rune) bool { return r == ',' || r == ' ' || r == ';' }) {
		c, err := strconv.ParseFloat(word, 64)
		if err != nil || !(c >= 0 && c <= 3600) {
			return nil, usage("--count %q: %q is no count: wanted seconds from 0 to 3600, such as 70,100", text, word)
		}
		counts = append(counts, c)
	}
	if len(counts) == 0 {
		return nil, usage("--count %q: wanted seconds from 0 to 3600, such as 70,100", text)
	}
	return counts, nil
}

// setbackRow is one line of the answer; distances in the unit of their column.
type setbackRow struct {
	Count    string `json:"count_s"`
	Distance string `json:"setback"`
	Gap      string `json:"gap_to_the_line_before"`
}

func (a *app) setbacks(counts []float64, kn float64, units string) error {
	show := func(seconds float64) string {
		m := seconds * kn * unit.MetresPerNmi / 3600
		if units == "us" {
			return fmt.Sprintf("%.0f yd", m/unit.MetresPerYard)
		}
		return fmt.Sprintf("%.0f m", m)
	}
	var rows []setbackRow
	for i, c := range counts {
		r := setbackRow{Count: fmt.Sprintf("%g", c), Distance: show(c)}
		if i > 0 {
			r.Gap = show(max(c-counts[i-1], counts[i-1]-c))
		}
		rows = append(rows, r)
	}
	if err := a.writeAs("table", rows); err != nil {
		return err
	}
	_, err := fmt.Fprintf(a.out, "\nAt %g kn over the ground; a current along the line makes the true distance "+
		"through the water longer or shorter.\n", kn)
	return err
}
