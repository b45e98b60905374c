package main

import (
	"io"
	"path/filepath"

	"github.com/spf13/cobra"

	"wakeledger/reports/bundle"
	"wakeledger/reports/output"
	"wakeledger/reports/page"
)

// Kinds of files that the commands write, beside pages.
var (
	summaryFile = output.Kind{Name: "club summary", Is: bundle.IsOne}
	logbookFile = output.Kind{Name: "empty logbook"}
	mappingFile = output.Kind{Name: "mapping"}
	legsFile    = output.Kind{Name: "log of proposed legs"}
	bookFile    = output.Kind{Name: "workbook"}
)

// pageFile is the kind of a report's file.
func pageFile(r page.Report) output.Kind {
	return output.Marked(string(r)+" report", `content="`+r.Mark()+`"`)
}

func (a *app) forceFlag(c *cobra.Command) {
	c.Flags().BoolVar(&a.force, "force", false, "write over the file that is there; never over a log that is read "+
		"or a season file")
}

// wholePath is where a file is, from the top of the disk, so that it is found from anywhere.
func wholePath(file string) string {
	if whole, err := filepath.Abs(file); err == nil {
		return whole
	}
	return file
}

// target is a file to be written; inputs are those that the command reads beside the
// season file.
func (a *app) target(path string, kind output.Kind, inputs ...string) output.Target {
	return output.Target{Path: path, Kind: kind, Inputs: append([]string{a.db, a.db + ".wal", a.mapping}, inputs...),
		Force: a.force}
}

// writePage writes a report, and says so.
func (a *app) writePage(t output.Target, write func(io.Writer) error) error {
	err := t.Write(write)
	if err == nil {
		a.note("report: %s (open it in a browser)", wholePath(t.Path))
	}
	return err
}
