package main

import (
	"errors"
	"fmt"
	"io"
	"os"
	"os/exec"
	"path/filepath"
	"regexp"
	"strings"
	"time"
)

// openLog is a log that leaves open how many lines were out.
const openLog = "Boat,Date,Start,End,Speed (kn),Strikes\r\nTörn,2026-07-04,07:00,09:00,8,1\r\n"

// turn is what somebody at a window waits for, and the key that is pressed then.
type turn struct{ until, key string }

// inWindow runs the program in a console of its own, whose code page is an old one, with
// one file dropped on it or none, and returns the exit code and all that the window showed.
func (w windowsTrial) inWindow(dropped string, turns []turn) (code int, shown string, err error) {
	command := `exec wine "$PROGRAM"`
	if dropped != "" {
		command += ` "$DROPPED"`
	}
	// script, of util-linux, gives it a terminal
	c := exec.Command("script", "--quiet", "--return", "--command", command, os.DevNull)
	c.Env = append(append(os.Environ(), w.environment...), "PROGRAM="+w.command[len(w.command)-1], "DROPPED="+dropped)
	c.Dir = w.folder
	keys, err := c.StdinPipe()
	if err != nil {
		return 0, "", err
	}
	screen, err := c.StdoutPipe()
	if err != nil {
		return 0, "", err
	}
	if err := c.Start(); err != nil {
		return 0, "", err
	}
	late := time.AfterFunc(10*time.Minute, func() { _ = c.Process.Kill() })
	defer late.Stop()
	var all strings.Builder
	piece := make([]byte, 4096)
	for {
		n, readErr := screen.Read(piece)
		all.Write(piece[:n])
		if len(turns) > 0 && strings.Contains(all.String(), turns[0].until) {
			if _, err := io.WriteString(keys, turns[0].key); err != nil {
				return 0, all.String(), err
			}
			turns = turns[1:]
		}
		if readErr != nil {
			break
		}
	}
	err = errors.Join(keys.Close(), c.Wait())
	var ended *exec.ExitError
	if errors.As(err, &ended) {
		err = nil // the exit code says it
	}
	if len(turns) > 0 {
		err = errors.Join(err, fmt.Errorf("the window closed before it showed %q", turns[0].until))
	}
	return c.ProcessState.ExitCode(), all.String(), err
}

const anyKey = "Press any key to close this window."

// drawing are what a window is told beside text.
var drawing = regexp.MustCompile("\x1b\\[[?0-9;]*[A-Za-z]|[\r\n]")

// unbroken is what a window shows without its line ends: it breaks a long path where it is full.
func unbroken(shown string) string { return drawing.ReplaceAllString(shown, "") }

// A log that is dropped on the program's icon is read and asked about, its season and report
// are kept beside it, the browser shows the report, and the window stays until a key.
func (w windowsTrial) tryDropped() error {
	dir := filepath.Join(w.folder, "Törn")
	err := errors.Join(os.Mkdir(dir, 0o755), os.RemoveAll(w.opened),
		os.WriteFile(filepath.Join(dir, "open.csv"), []byte(openLog), 0o644))
	if err != nil {
		return err
	}
	code, shown, err := w.inWindow(w.drive+`\Törn\open.csv`, []turn{{"Enter to leave it open", "\r"}, {anyKey, "x"}})
	if code != 3 {
		err = errors.Join(err, fmt.Errorf("exit code %d, want 3", code))
	}
	for _, want := range []string{"How many lines were out?", "1 trip, on 4 July 2026", "1 question is open",
		`\Törn\season.html`} {
		if !strings.Contains(unbroken(shown), want) {
			err = errors.Join(err, fmt.Errorf("the window does not show %q", want))
		}
	}
	if err != nil {
		return fmt.Errorf("%w\n%s", err, shown)
	}
	for _, name := range []string{"season.duckdb", "season.html"} {
		if _, err := os.Stat(filepath.Join(dir, name)); err != nil {
			return err
		}
	}
	return w.browserShows("/season.html")
}

// Who double-clicks the program is told what to do, and the window stays until a key.
func (w windowsTrial) tryDoubleClick() error {
	code, shown, err := w.inWindow("", []turn{{anyKey, "x"}})
	if err != nil || code != 0 || !strings.Contains(shown, "Drop your logs") {
		return fmt.Errorf("exit code %d, %v\n%s", code, err, shown)
	}
	return nil
}
