package main

import (
	"context"
	"errors"
	"fmt"
	"io"
	"slices"
	"strings"

	"github.com/spf13/cobra"

	"wakeledger/pipeline"
	"wakeledger/pipeline/sentence"
	"wakeledger/queries"
	"wakeledger/reports/terminal"
)

func (a *app) checkCmd() *cobra.Command {
	var write, legs, why string
	c := &cobra.Command{
		Use:   "check LOG...",
		Short: "Read logs and store nothing: how each column is read, and what could not be",
		Long: "Read logs and store nothing: how each sheet and column is read, in which unit and why that one, and " +
			"every row or " +
			"cell that would be set aside or is doubtful. The last line is for scripts.",
		Example: "  wakeledger check my-log.xlsx\n  wakeledger check --write-mapping mapping.toml my-log.xlsx\n" +
			"  wakeledger check --legs-from-track legs.csv --zone Pacific/Auckland track.gpx",
		Args: takesLogs,
		RunE: func(c *cobra.Command, args []string) error {
			cfg, err := a.config()
			if err != nil {
				return err
			}
			if args, err = a.files(args); err != nil {
				return err
			}
			if cfg.Why = c.Flags().Changed("why"); cfg.Why && why == everyColumn {
				why = ""
			}
			if write != "" {
				if err := a.target(write, mappingFile, args...).Check(); err != nil {
					return err
				}
			}
			if legs != "" {
				return a.proposeLegs(c.Context(), cfg, args, legs)
			}
			return a.check(c.Context(), cfg, args, write, why)
		},
	}
	a.readingFlags(c)
	completeReading(c)
	a.forceFlag(c)
	c.Flags().StringVar(&why, "why", "", "say why each column is read as it is, or only the one with this `heading`")
	c.Flags().Lookup("why").NoOptDefVal = everyColumn
	c.Flags().StringVar(&legs, "legs-from-track", "", "write the stretches of steady speed in the tracks to this "+
		"`file`, a log for you to confirm and load")
	c.Flags().StringVar(&write, "write-mapping", "", "write how the sheets were read to this `file`: edit it, and "+
		"give it back with --mapping")
	return c
}

// check loads into a season in memory, so that what is told is what load would do.
func (a *app) check(ctx context.Context, cfg pipeline.Config, logs []string, write, why string) (err error) {
	said, err := a.said()
	if err != nil {
		return err
	}
	cfg.Progress = a.watch(logs)
	s, err := a.rehearsal(ctx, cfg)
	if err != nil {
		return err
	}
	defer func() { err = errors.Join(err, s.DB.Close()) }()
	if err := answer(ctx, s, logs, said); err != nil {
		return err
	}
	reports, loadErr := s.Load(ctx, logs)
	if ctx.Err() != nil {
		return ctx.Err()
	}
	if reports, err = a.settle(ctx, s, logs, reports); err != nil {
		return err
	}
	found := why == ""
	for _, r := range reports {
		found = a.showLog(r, why) || found
	}
	if !found {
		a.note("--why: no column is headed %q. %s", why, nearHeading(why, reports))
	}
	kept, setAside, doubts, err := a.findings(ctx, s, reports)
	if err != nil {
		return err
	}
	if write != "" {
		to := a.target(write, mappingFile, logs...)
		if err := to.Write(func(w io.Writer) error { return pipeline.WriteMapping(w, reports) }); err != nil {
			return err
		}
		a.note("mapping: %s", write)
	}
	asked, err := openOf(ctx, s, nil)
	if err != nil {
		return err
	}
	fmt.Fprintf(a.out, "check: logs=%d kept=%d set-aside=%d doubts=%d questions=%d\n", len(reports),
		kept, setAside, doubts, len(asked))
	openErr := a.tellOpen(ctx, s)
	if err := a.tellUnkept(ctx, s, said); err != nil {
		return err
	}
	if a.strict && setAside > 0 {
		return outcome(loadErr, errSetAside, openErr)
	}
	return outcome(loadErr, openErr)
}

// nearHeading names the heading that was meant, or all.
func nearHeading(heading string, reports []pipeline.LogReport) string {
	var all []string
	for _, r := range reports {
		for _, s := range r.Sheets {
			for _, c := range s.Columns {
				if !slices.Contains(all, c.Heading) {
					all = append(all, c.Heading)
				}
			}
		}
	}
	if near := didYouMean(heading, all); near != "" {
		return strings.TrimSpace(near)
	}
	return "The headings are " + strings.Join(all, ", ")
}

func (a *app) showLog(r pipeline.LogReport, why string) (found bool) {
	fmt.Fprintf(a.out, "%s\n", r.Name)
	for i := range r.Sheets {
		a.showSheet(&r.Sheets[i])
		found = a.showWhy(r.Sheets[i].Votes, why) || found
	}
	for _, p := range r.Passed {
		fmt.Fprintf(a.out, "\n  %s: %s\n", sheetWord(p.Sheet), p.Why)
	}
	return found
}

func (a *app) showSheet(s *pipeline.SheetReport) {
	name := sheetWord(s.Name)
	if s.Kind == "" {
		fmt.Fprintf(a.out, "\n  %s: not understood; %s\n", name, placeOf(s))
	} else {
		fmt.Fprintf(a.out, "\n  %s: read as %s, because %s; %s%s kept%s\n", name, s.Kind, s.Why, placeOf(s),
			sentence.Count(s.Kept, "row", "rows"), passedOver(s.Skipped))
	}
	for _, n := range s.Notes {
		fmt.Fprintf(a.out, "    note: %s\n", n)
	}
	rows := make([]columnRow, len(s.Columns))
	for i, c := range s.Columns {
		rows[i] = columnRow{c.Heading, c.Column, c.Decided, c.From, strings.Join(c.Samples, " | ")}
		if c.As != "" {
			rows[i].Column = "(" + c.As + ")"
		} else if c.Column == "" {
			rows[i].Column = "(kept by name)"
			if s.Kind == "" {
				rows[i].Column = "(not known)"
			}
			if c.Nearest != "" {
				rows[i].Column = rows[i].Column[:len(rows[i].Column)-1] + "; is it " + c.Nearest + "?)"
			}
		}
	}
	if len(rows) > 0 {
		var b strings.Builder
		if err := terminal.Write(&b, rows, terminal.View{Width: widthFor(a.stdout) - 4}); err == nil {
			fmt.Fprint(a.out, indent(b.String()))
		}
	}
}

// placeOf is the rows of a block, and how it stands in its sheet; "" of a track.
func placeOf(s *pipeline.SheetReport) string {
	if s.From == 0 {
		return ""
	}
	rows := fmt.Sprintf("rows %d to %d; ", s.From, s.To)
	if s.To == 0 {
		rows = fmt.Sprintf("from row %d on; ", s.From)
	}
	switch {
	case s.Shape == "form":
		return "a form, " + rows
	case s.Shape == "records":
		return "labels beside each record, " + rows
	case s.HeaderRow > 0:
		return fmt.Sprintf("headings in row %d; ", s.HeaderRow) + rows
	}
	return rows
}

type columnRow struct {
	Heading string `json:"heading"`
	Column  string `json:"understood_as"`
	Unit    string `json:"unit"`
	From    string `json:"unit_from"`
	Samples string `json:"such_as"`
}

func indent(s string) string {
	return "    " + strings.ReplaceAll(strings.TrimRight(s, "\n"), "\n", "\n    ") + "\n"
}

// findings prints what would be set aside and what is doubtful, by reason.
func (a *app) findings(ctx context.Context, s *pipeline.Season, reports []pipeline.LogReport) (kept,
	setAside, doubts int64, err error) {
	if err := s.Derive(ctx); err != nil {
		return 0, 0, 0, err
	}
	for _, r := range reports {
		kept += r.Kept
	}
	aside, err := queries.AskSetAside(ctx, s.DB)
	if err != nil {
		return 0, 0, 0, err
	}
	var bad groups
	for _, p := range aside {
		what := p.Reason
		if p.Column != "" {
			what = p.Column + ": " + p.Reason
		}
		bad.add(what, place(p.File, p.Sheet, p.Row)+" "+short(p.Cell))
	}
	bad.print(a, "set aside")
	odd, err := queries.AskDoubts(ctx, s.DB)
	if err != nil {
		return 0, 0, 0, err
	}
	var doubtful groups
	for _, d := range odd {
		doubtful.add(d.Check, place(d.File, d.Sheet, d.Row)+" "+short(d.Found)+": "+d.Reason)
	}
	doubtful.print(a, "kept, but doubtful")
	if len(aside)+len(odd) == 0 {
		fmt.Fprintln(a.out)
	}
	if err := tellNames(ctx, s, reports, a.out); err != nil {
		return 0, 0, 0, err
	}
	if err := a.tellRead(ctx, s, reports, nil, a.out); err != nil {
		return 0, 0, 0, err
	}
	tracks, err := tellTracks(ctx, s, a.out)
	return kept, int64(len(aside)), int64(len(odd)) + tracks, err
}

func place(file, sheet string, row int64) string {
	if sheet != "" {
		file += " " + sheet
	}
	if row == 0 {
		return file
	}
	return fmt.Sprintf("%s row %d", file, row)
}

func short(s string) string {
	r := []rune(s)
	if len(r) > 60 {
		return string(r[:59]) + "…"
	}
	return s
}

// groups gathers findings by what they are, in order of appearance.
type groups struct {
	order []string
	of    map[string][]string
}

func (g *groups) add(what, where string) {
	if g.of == nil {
		g.of = map[string][]string{}
	}
	if _, ok := g.of[what]; !ok {
		g.order = append(g.order, what)
	}
	g.of[what] = append(g.of[what], where)
}

// examples of a group that are printed.
const examples = queries.MostExamples

func (g *groups) print(a *app, title string) {
	for _, what := range g.order {
		found := g.of[what]
		fmt.Fprintf(a.out, "\n  %s: %s (%d)\n", title, what, len(found))
		for i, where := range found {
			if i == examples {
				fmt.Fprintf(a.out, "    and %d more\n", len(found)-examples)
				break
			}
			fmt.Fprintf(a.out, "    %s\n", where)
		}
	}
	if len(g.order) > 0 {
		fmt.Fprintln(a.out)
	}
}
