package main

import (
	"io"
	"path/filepath"
	"strings"

	"github.com/spf13/cobra"

	"wakeledger/pipeline/logbook"
)

func (a *app) blankCmd() *cobra.Command {
	var units string
	c := &cobra.Command{
		Use:     "blank FILE.xlsx",
		Short:   "Write an empty logbook to fill in",
		Example: "  wakeledger blank --units us logbook-2027.xlsx",
		Args:    takesOne("the name of a workbook", "logbook.xlsx"),
		RunE: func(_ *cobra.Command, args []string) error {
			if err := oneWord("units", units, unitNames...); err != nil {
				return err
			}
			if end := filepath.Ext(args[0]); !strings.EqualFold(end, ".xlsx") {
				return usage("blank writes a workbook: name a file that ends in .xlsx, such as %s.xlsx",
					strings.TrimSuffix(args[0], end))
			}
			return a.target(args[0], logbookFile).Write(func(w io.Writer) error { return logbook.Blank(w, units) })
		},
	}
	c.Flags().StringVar(&units, "units", "metric", "`us` or metric: the units in the headings")
	offers(c, "units", unitNames...)
	a.forceFlag(c)
	return c
}
