package main

import (
	"fmt"
	"os"
	"path/filepath"
	"time"

	"github.com/schollz/progressbar/v3"
	"golang.org/x/term"

	"wakeledger/pipeline"
)

// patience is how long a log is read before a bar is shown.
const patience = time.Second

// watch returns what shows the progress of logs on a terminal; nil where the
// notes go elsewhere.
func (a *app) watch(logs []string) func(pipeline.Progress) {
	f, ok := a.notes.(*os.File)
	if !ok || !term.IsTerminal(int(f.Fd())) {
		return nil
	}
	sizes := map[string]int64{}
	for _, l := range logs {
		if info, err := os.Stat(l); err == nil {
			sizes[filepath.Base(l)] = info.Size()
		}
	}
	began := time.Now()
	var bar *progressbar.ProgressBar
	return func(p pipeline.Progress) {
		switch {
		case p.Done:
			if bar != nil {
				_ = bar.Clear()
			}
			bar, began = nil, time.Now()
		case bar == nil && time.Since(began) > patience:
			bar = newBar(f, p.Log, sizes[p.Log])
			fallthrough
		case bar != nil:
			bar.Describe(fmt.Sprintf("%s: %d rows", p.Log, p.Rows))
			_ = bar.Set64(min(p.Bytes, max(sizes[p.Log]-1, 0)))
		}
	}
}

// newBar is a bar over a text file's bytes. A workbook is packed, so that only
// its rows and their rate can be told: its bar turns without an end.
func newBar(f *os.File, log string, size int64) *progressbar.ProgressBar {
	if filepath.Ext(log) == ".xlsx" || filepath.Ext(log) == ".xlsm" {
		size = -1
	}
	return progressbar.NewOptions64(size, progressbar.OptionSetWriter(f), progressbar.OptionSetDescription(log),
		progressbar.OptionShowBytes(true), progressbar.OptionThrottle(100*time.Millisecond),
		progressbar.OptionSetPredictTime(true), progressbar.OptionClearOnFinish(), progressbar.OptionFullWidth())
}
