package main

import (
	"context"
	"errors"
	"fmt"
	"io"
	"os"
	"path/filepath"

	"github.com/spf13/cobra"

	"wakeledger/pipeline"
	"wakeledger/queries"
	"wakeledger/queries/evidence"
	"wakeledger/reports/export"
	"wakeledger/reports/gather"
	"wakeledger/reports/output"
)

func (a *app) exportCmd() *cobra.Command {
	var format string
	c := &cobra.Command{
		Use:   "export DIR",
		Short: "Write the season for other programs, or what to share with the club",
		Long: "Write the season for other programs: all tables as Parquet or CSV, or the questions as a workbook.\n" +
			"It holds positions, notes and names: keep it to yourself. 'export club' is what to share.",
		Example: "  wakeledger export tables\n  wakeledger export --format workbook season-2026",
		Args:    takesOne("the name of a folder", "tables"),
		RunE: func(c *cobra.Command, args []string) (err error) {
			if err := oneWord("format", format, exportFormats...); err != nil {
				return err
			}
			if err := thereIs(a.db); err != nil {
				return err
			}
			s, err := pipeline.OpenRead(c.Context(), a.db, a.cfg, format != "workbook")
			if err != nil {
				return err
			}
			defer func() { err = errors.Join(err, s.DB.Close()) }()
			to := args[0]
			if format == "workbook" {
				to = filepath.Join(args[0], "season.xlsx")
				err = a.exportWorkbook(c.Context(), s, to)
			} else {
				err = output.Folder(to, func(dir string) error {
					return gather.ExportTables(c.Context(), s.DB, dir, format)
				})
			}
			if err == nil {
				a.note("written: %s. It holds positions, notes and names: 'wakeledger export club' is what to share",
					to)
			}
			return err
		},
	}
	c.Flags().StringVar(&format, "format", "parquet", "`one` of parquet, csv, workbook")
	offers(c, "format", exportFormats...)
	a.forceFlag(c)
	c.AddCommand(a.exportClubCmd())
	return c
}

var exportFormats = []string{"parquet", "csv", "workbook"}

// bookSheet is a question as a sheet of the workbook.
type bookSheet struct {
	question, factor, about string
	chart                   *export.Chart
}

// sheets are the questions in the order of the workbook.
var sheets = []bookSheet{
	{"trips", "", "a trip", &export.Chart{Title: "Line-hours of each trip", Labels: "date",
		Values: []string{"line_hours"}, Axis: "line-hours"}},
	{"effort", "speed-band", "a speed band over ground: the effort in it",
		&export.Chart{Title: "Effort by speed band", Labels: "level",
			Values: []string{"line_hours"}, Axis: "line-hours"}},
	{"strike-rate", "speed-band", "a speed band: strikes per line-hour with the 95 % interval",
		rateChart("speed band")},
	{"strike-rate", "lure", "a lure: strikes per line-hour with the 95 % interval", rateChart("lure")},
	{"strike-rate", "lure-weight", "a class of lure weight in g: strikes per line-hour with the 95 % interval",
		rateChart("lure weight, g")},
	{"strike-rate", "setback", "a class of setback in m: strikes per line-hour with the 95 % interval",
		rateChart("setback, m")},
	{"outcomes", "speed-band", "a speed band: shares hooked up and boated, with Wilson intervals", nil},
	{"sizes", "speed-band", "a speed band and class of round weight: its fish", nil},
	{"fish", "", "a fish with its best weight; how that was found is in method", nil},
	{"findings", "", "a factor: what the season says of it, and how far that is settled", nil},
	{"scale-check", "", "a way to weigh by tape, against the scale", nil},
	{"gear", "", "a class of drag against the line's class", nil},
	{"failures", "", "a part of the gear that failed", nil},
	{"set-aside", "", "a row of a log that could not be used, and why", nil},
}

func rateChart(what string) *export.Chart {
	return &export.Chart{Title: "Strikes per line-hour by " + what + ", 95 % interval", Labels: "level",
		Values: []string{"rate_hi", "rate_lo", "rate"}, Interval: true, Axis: "strikes per line-hour"}
}

var workbookNotes = []string{
	"Empty is not known, never zero. The end of a heading names the unit: _kg, _cm, _kn, _nmi, _m, hours; rates are " +
		"strikes per line-hour; shares are of 1.",
	"Intervals of rates: Garwood 1936, widened where strikes cluster by trip; of shares: Wilson 1927; of weights: " +
		"90 % prediction intervals.",
	"A weight from the tape is an estimate: not for records, sale or legal size.",
}

func (a *app) exportWorkbook(ctx context.Context, s *pipeline.Season, name string) error {
	dir := filepath.Dir(name)
	if st, err := os.Stat(dir); err == nil && !st.IsDir() {
		return fmt.Errorf("%s: %w: it is a file: name a folder", dir, output.ErrRefused)
	}
	if err := os.MkdirAll(dir, 0o777); err != nil {
		return err
	}
	to := a.target(name, bookFile)
	if err := to.Check(); err != nil {
		return err
	}
	var all []export.Sheet
	for _, sh := range sheets {
		want := asked{factor: sh.factor, ratio: evidence.DefaultRatio, trips: queries.DefaultPlanTrips}
		rows, err := find(sh.question).answer(ctx, s.DB, want)
		if err != nil {
			return err
		}
		title := sh.question
		if sh.factor != "" {
			title += " by " + sh.factor
		}
		all = append(all, export.Sheet{Name: title, About: sh.about, Rows: rows, Chart: sh.chart})
	}
	return to.Write(func(w io.Writer) error { return export.Workbook(w, all, workbookNotes) })
}
