package main

import (
	"bytes"
	"errors"
	"fmt"
	"io"
	"os"
	"os/exec"
	"path/filepath"
	"strings"
	"time"
)

// Other programs on Windows keep a file to themselves while they have it open.
const holder = `
#include <windows.h>
#include <stdio.h>

int wmain(int n, wchar_t **names) {
	if (CreateFileW(names[1], GENERIC_READ | GENERIC_WRITE, 0, 0, OPEN_EXISTING, 0, 0) == INVALID_HANDLE_VALUE) return 1;
	puts("held"); fflush(stdout);
	getchar();
	return 0;
}
`

// crlfLog is a log as Windows writes it, with letters that its old code pages had in
// other places.
const crlfLog = "Boat,Date,Start,End,Speed (kn),Lines,Strikes\r\nTörn,2026-07-04,07:00,09:00,8,4,1\r\n"

// oneTrip is how its trip begins in 'ask trips'.
const oneTrip = "2026-07-04,Törn,2026-07-04,1,2,8,1,"

// windowsTrial is a folder with one log, and its names on Windows.
type windowsTrial struct {
	trial
	drive  string // the folder's name with the drive and backslashes
	share  string // as a share of another computer
	holder string // the program that keeps a file to itself
	opened string // where the browser writes what it is to show
}

// tryWindows tries what only Windows has: backslashes, drives and shares, and files that
// another program keeps to itself.
func (t trial) tryWindows(of target, prefix string) error {
	t.folder = filepath.Join(filepath.Dir(t.folder), "Boote & Törns (2026), 'north'")
	w := windowsTrial{trial: t, drive: `Z:` + strings.ReplaceAll(t.folder, "/", `\`), share: `\\harbour\logs`,
		holder: filepath.Join(prefix, "holder.exe"), opened: filepath.Join(prefix, "opened")}
	shares := filepath.Join(prefix, "dosdevices", "unc", "harbour") // where Wine looks for \\harbour
	err := errors.Join(os.MkdirAll(t.folder, 0o755), os.MkdirAll(shares, 0o755),
		os.Symlink(t.folder, filepath.Join(shares, "logs")),
		os.WriteFile(filepath.Join(t.folder, "Törn 4.csv"), []byte(crlfLog), 0o644),
		compileC(w.holder, holder, "-municode"), w.setBrowser(prefix))
	if err != nil {
		return err
	}
	var failures []error
	for _, try := range []struct {
		name string
		run  func() error
	}{
		{"a drive, backslashes, spaces, letters with dots, CRLF", w.tryDrive},
		{"a pattern of names", w.tryPattern},
		{"a season file on a share", w.tryShare},
		{"the report in the browser", w.tryBrowser},
		{"a log dropped on the program", w.tryDropped},
		{"a double click on the program", w.tryDoubleClick},
		{"a log that another program has open", w.tryHeldLog},
		{"a season file that another program has open", w.tryHeldSeason},
		{"a report that another program has open", w.tryHeldReport},
	} {
		if err := try.run(); err != nil {
			failures = append(failures, fmt.Errorf("%s: %w", try.name, err))
			of.say("%s: FAIL", try.name)
			continue
		}
		of.say("%s: PASS", try.name)
	}
	return errors.Join(failures...)
}

// expect runs the program, which is to end with this exit code and to print this.
func (w windowsTrial) expect(code int, text string, args ...string) error {
	got, out, notes := w.end(args...)
	all := strings.ReplaceAll(string(out)+string(notes), "\r\n", "\n")
	if got != code || !strings.Contains(all, text) {
		return fmt.Errorf("%s: exit code %d, want %d and %q; it says\n%s",
			strings.Join(args, " "), got, code, text, all)
	}
	return nil
}

func (w windowsTrial) season(folder string) []string {
	return []string{"--db", folder + `\season.duckdb`, "season", "--zone", "UTC-9",
		"--out", folder + `\season.html`, folder + `\Törn 4.csv`}
}

func (w windowsTrial) tryDrive() error {
	return errors.Join(
		w.expect(0, "Törn 4.csv: what was read\n  1 trip, on 4 July 2026", w.season(w.drive)...),
		w.expect(0, oneTrip, "--db", "season.duckdb", "ask", "trips", "--format", "csv"))
}

func (w windowsTrial) tryPattern() error {
	return errors.Join(
		w.expect(0, "logs=1 kept=1 set-aside=0", "check", "--zone", "UTC-9", w.drive+`\t*.CSV`),
		w.expect(1, "there is no file that fits this name", "check", "--zone", "UTC-9", w.drive+`\*.ods`))
}

// A season that was made on a drive goes on where it is a share's.
func (w windowsTrial) tryShare() error {
	return errors.Join(
		w.expect(0, "Törn 4.csv: unchanged, 1 row as before", w.season(w.share)...),
		w.expect(0, oneTrip, "--db", w.share+`\season.duckdb`, "ask", "trips", "--format", "csv"))
}

// setBrowser has Wine open pages with a program that writes down which.
func (w windowsTrial) setBrowser(prefix string) error {
	browser := filepath.Join(prefix, "browser")
	err := os.WriteFile(browser, []byte("#!/bin/sh\necho \"$1\" >> '"+w.opened+"'\n"), 0o755)
	for _, key := range [][]string{
		{`HKCR\.html`, "/ve", "/d", "page"},
		{`HKCR\page\shell\open\command`, "/ve", "/d", `C:\windows\system32\winebrowser.exe -nohome "%1"`},
		{`HKCU\Software\Wine\WineBrowser`, "/v", "Browsers", "/d", browser},
	} {
		err = errors.Join(err, w.quietly("wine", append([]string{"reg", "add", key[0], "/f"}, key[1:]...)...))
	}
	return err
}

func (w windowsTrial) tryBrowser() error {
	if err := w.expect(0, "season file:", append(w.season(w.drive), "--open")...); err != nil {
		return err
	}
	return w.browserShows("/season.html")
}

// browserShows waits until the browser was asked for a page whose name ends so.
func (w windowsTrial) browserShows(name string) error {
	for range 1200 { // it is a program of its own, and Wine starts it slowly
		page, err := os.ReadFile(w.opened)
		if err == nil && strings.HasPrefix(string(page), "file://") && strings.HasSuffix(string(page), name+"\n") {
			return nil
		}
		time.Sleep(100 * time.Millisecond)
	}
	return errors.New("no browser was asked to show it")
}

// What the program says of a file that another one keeps to itself.
const (
	isOpen = "another program has it open: close it there, and give the command again"
	inUse  = "the season file is in use by another program: try again when that is done"
)

func (w windowsTrial) tryHeldLog() error {
	err := w.whileHeld("Törn 4.csv", func() error {
		return w.expect(1, "Törn 4.csv: "+isOpen, "--db", "none.duckdb", "load", "--zone", "UTC-9", "Törn 4.csv")
	})
	if _, there := os.Stat(filepath.Join(w.folder, "none.duckdb")); there == nil {
		err = errors.Join(err, errors.New("there is a season file all the same"))
	}
	return err
}

func (w windowsTrial) tryHeldSeason() error {
	return w.whileHeld("season.duckdb", func() error {
		return errors.Join(
			w.expect(1, inUse, "ask", "trips"),
			w.expect(1, inUse, "load", "--zone", "UTC-9", "Törn 4.csv"))
	})
}

func (w windowsTrial) tryHeldReport() error {
	return w.whileHeld("season.html", func() error {
		return w.expect(1, isOpen, "report", "season", "--out", "season.html")
	})
}

// whileHeld runs f while another program has the file, whose bytes stay as they are.
func (w windowsTrial) whileHeld(file string, f func() error) error {
	path := filepath.Join(w.folder, file)
	before, err := os.ReadFile(path)
	if err != nil {
		return err
	}
	c := exec.Command("wine", w.holder, file)
	c.Dir, c.Env = w.folder, append(os.Environ(), w.environment...)
	let, err := c.StdinPipe()
	if err != nil {
		return err
	}
	said, err := c.StdoutPipe()
	if err != nil {
		return err
	}
	if err := c.Start(); err != nil {
		return err
	}
	held := make([]byte, 4)
	_, err = io.ReadFull(said, held)
	if err == nil {
		err = f()
	}
	err = errors.Join(err, let.Close(), c.Wait())
	if after, e := os.ReadFile(path); e != nil || !bytes.Equal(before, after) {
		err = errors.Join(err, e, fmt.Errorf("%s changed meanwhile", file))
	}
	return err
}
