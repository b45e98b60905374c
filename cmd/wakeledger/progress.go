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
	f, ok := a.screen.(*os.File)
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
				_ = bar.Finish() // which clears it
			}
			bar, began = nil, time.Now()
		case bar == nil && time.Since(began) > patience:
			bar = newBar(f, shown(p.Log), sizes[p.Log])
			fallthrough
		case bar != nil:
			bar.Describe(describe(p, time.Since(began), sizes[p.Log]))
			_ = bar.Set64(min(p.Bytes, max(sizes[p.Log]-1, 0)))
		}
	}
}

// describe tells rows, their rate and, of a text file, the time left.
func describe(p pipeline.Progress, elapsed time.Duration, size int64) string {
	text := fmt.Sprintf("%s: %d rows, %.0f a second", shown(p.Log), p.Rows, float64(p.Rows)/elapsed.Seconds())
	if left := size - p.Bytes; left > 0 && p.Bytes > 0 && !packed(p.Log) {
		text += fmt.Sprintf(", %.0f s left", elapsed.Seconds()*float64(left)/float64(p.Bytes))
	}
	return text
}

// packed tells a workbook, whose size says little about its rows.
func packed(log string) bool {
	return filepath.Ext(log) == ".xlsx" || filepath.Ext(log) == ".xlsm"
}

// newBar is a bar over a text file's bytes. A workbook is packed, so that only
// its rows and their rate can be told: its bar turns without an end.
func newBar(f *os.File, log string, size int64) *progressbar.ProgressBar {
	if packed(log) {
		size = -1
	}
	return progressbar.NewOptions64(size, progressbar.OptionSetWriter(f), progressbar.OptionSetDescription(log),
		progressbar.OptionThrottle(100*time.Millisecond), progressbar.OptionSetPredictTime(false),
		progressbar.OptionSetElapsedTime(false), progressbar.OptionClearOnFinish(), progressbar.OptionFullWidth())
}
