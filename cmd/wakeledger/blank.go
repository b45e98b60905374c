package main

import (
	"io"

	"github.com/spf13/cobra"

	"wakeledger/pipeline/logbook"
)

func (a *app) blankCmd() *cobra.Command {
	var units string
	c := &cobra.Command{
		Use:     "blank FILE.xlsx",
		Short:   "Write an empty logbook to fill in",
		Example: "  wakeledger blank --units us logbook-2027.xlsx",
		Args:    takes(cobra.ExactArgs(1)),
		RunE: func(_ *cobra.Command, args []string) error {
			if units != "us" && units != "metric" {
				return usage("--units %q: expected us or metric", units)
			}
			return a.target(args[0], logbookFile).Write(func(w io.Writer) error { return logbook.Blank(w, units) })
		},
	}
	c.Flags().StringVar(&units, "units", "metric", "us or metric: the units in the headings")
	a.forceFlag(c)
	return c
}
