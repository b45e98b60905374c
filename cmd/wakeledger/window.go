package main

import (
	"context"
	"fmt"
	"io"
	"os"
	"path/filepath"
	"strings"

	"golang.org/x/term"
)

// A window of its own is what Windows gives the program where its icon is double-clicked, or
// logs are dropped on it. It closes with the program.

// howToStart is for who double-clicked the program.
const howToStart = `Wakeledger reads a boat's fishing logs and writes a report of the season.
Drop your logs (.xlsx, .ods, .csv, tracks too) on the icon of this program, all at once.
It reads them, asks what they leave open, and opens the report in your browser.
The season is kept in season.duckdb, beside the first log: drop next year's logs from that folder too.
To try it, drop demo-log.xlsx, which came with it. READ-ME.txt tells the rest.
`

// inWindow runs the program in a window of its own: logs are for season, and the window
// stays until somebody has read it.
func inWindow(ctx context.Context, args []string, out, notes io.Writer) int {
	code := done
	if len(args) == 0 {
		fmt.Fprint(out, howToStart)
	} else {
		code = run(ctx, dropped(args), out, notes)
	}
	if code == notSettled {
		fmt.Fprint(notes, "\nOr drop the same logs again: what is open is asked again.\n")
	}
	if ctx.Err() == nil {
		fmt.Fprint(notes, "\nPress any key to close this window.")
		awaitKey(os.Stdin)
	}
	return code
}

// dropped is the command for logs that were dropped on the program: a season, kept and
// reported beside the first of them.
func dropped(logs []string) []string {
	dir := filepath.Dir(logs[0])
	if st, err := os.Stat(logs[0]); err == nil && st.IsDir() {
		dir = logs[0]
	}
	return append([]string{"season", "--open", "--db", filepath.Join(dir, "season.duckdb"),
		"--out", filepath.Join(dir, "season.html"), "--"}, logs...)
}

// filesOnly tells words that all name what is there.
func filesOnly(args []string) bool {
	for _, w := range args {
		if _, err := os.Stat(w); err != nil || strings.HasPrefix(w, "-") {
			return false
		}
	}
	return true
}

// awaitKey waits for a key; for Enter where keys cannot be read one by one.
func awaitKey(in *os.File) {
	if was, err := term.MakeRaw(int(in.Fd())); err == nil {
		defer func() { _ = term.Restore(int(in.Fd()), was) }()
	}
	_, _ = in.Read(make([]byte, 1))
}
