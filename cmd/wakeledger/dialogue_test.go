package main

import (
	"bytes"
	"fmt"
	"io"
	"os"
	"os/exec"
	"path/filepath"
	"strings"
	"syscall"
	"testing"
	"time"

	"github.com/creack/pty"
)

const noLines = "Date,Start,End,Speed " +
	"(kn),Bites\n2026-07-04,07:00,09:00,8,1\n2026-07-05,07:00,09:00,8,0\n2026-07-06,07:00,08:00,8,2\n"

// onTerminal runs the program with a terminal for its input and messages, and types each
// of the lines at a prompt. It returns what went to standard output and to the terminal,
// and the exit code.
func onTerminal(t *testing.T, dir string, typed []string, args ...string) (out, screen string, code int) {
	t.Helper()
	master, tty, err := pty.Open()
	if err != nil {
		t.Fatal(err)
	}
	defer master.Close()
	c := exec.CommandContext(t.Context(), "wakeledger", args...)
	c.Dir, c.Stdin, c.Stderr = dir, tty, tty
	c.SysProcAttr = &syscall.SysProcAttr{Setsid: true, Setctty: true}
	var stdout bytes.Buffer
	c.Stdout = &stdout
	if err := c.Start(); err != nil {
		t.Fatal(err)
	}
	tty.Close()
	seen := make(chan string)
	go func() {
		var all bytes.Buffer
		part := make([]byte, 4096)
		for {
			n, err := master.Read(part)
			all.Write(part[:n])
			if strings.Count(all.String(), "leave it open: ") > 0 && len(typed) > 0 &&
				strings.HasSuffix(strings.TrimRight(all.String(), "\x1b[0123456789KC"), "leave it open: ") {
				_, _ = io.WriteString(master, typed[0]+"\r") // a program that is gone reads nothing
				typed = typed[1:]
			}
			if err != nil {
				seen <- all.String()
				return
			}
		}
	}()
	if err := c.Wait(); err != nil && c.ProcessState == nil {
		t.Fatal(err)
	}
	select {
	case screen = <-seen:
	case <-time.After(20 * time.Second):
		t.Fatal("the terminal stays open")
	}
	return stdout.String(), screen, c.ProcessState.ExitCode()
}

func TestQuestionsOnATerminal(t *testing.T) {
	dir := t.TempDir()
	if err := os.WriteFile(filepath.Join(dir, "log.csv"), []byte(noLines), 0o644); err != nil {
		t.Fatal(err)
	}
	out, screen, code := onTerminal(t, dir, []string{""}, "season", "log.csv")
	if code != 3 || !strings.Contains(out, " 0.0 line-hours") || !strings.Contains(screen, "How many lines were out?") {
		t.Errorf("left open: code %d, printed %q, on the terminal %q", code, out, screen)
	}
	out, screen, code = onTerminal(t, dir, []string{"plenty", "4"}, "season", "log.csv")
	if code != 0 || !strings.Contains(out, " 20.0 line-hours") || strings.Contains(out, "open") {
		t.Errorf("answered: code %d, printed %q, on the terminal %q", code, out, screen)
	}
	if !strings.Contains(screen, "expected the figure itself") || !strings.Contains(screen, "read again") {
		t.Errorf("on the terminal: %q", screen)
	}
	out, screen, code = onTerminal(t, t.TempDir(), []string{"4"}, "check", filepath.Join(dir, "log.csv"))
	if code != 0 || !strings.Contains(out, " 20.0 line-hours") ||
		!strings.Contains(screen, "to keep these answers, load with --answer q") {
		t.Errorf("check, answered: code %d, printed %q, on the terminal %q", code, out, screen)
	}
	out, screen, code = onTerminal(t, dir, nil, "check", "log.csv")
	if code != 0 || strings.Contains(screen, "How many lines") || !strings.Contains(out, "questions=0") {
		t.Errorf("with the answer kept: code %d, printed %q, on the terminal %q", code, out, screen)
	}
}

// Which log a file is, is asked on a terminal too; the answer holds for the next run.
func TestWhichLogOnATerminal(t *testing.T) {
	dir := t.TempDir()
	log := "Boat,Date,Start,End,Speed (kn),Lines,Strikes\n"
	for day := 4; day < 10; day++ {
		log += fmt.Sprintf("Sea Wren,2026-07-%02d,07:00,09:00,8,4,1\n", day)
	}
	for name, text := range map[string]string{"log.csv": log,
		"copy.csv": strings.ReplaceAll(log, "Sea Wren", "Sea Wrem")} {
		if err := os.WriteFile(filepath.Join(dir, name), []byte(text), 0o644); err != nil {
			t.Fatal(err)
		}
	}
	wakeledger(t, dir, "load", "log.csv")
	out, screen, code := onTerminal(t, dir, []string{""}, "season", "copy.csv")
	if code != 3 || !strings.Contains(out, "6 trips") ||
		!strings.Contains(screen, "the same legs stand there under another boat") ||
		!strings.Contains(screen, `boat "Sea Wrem" is nearly "Sea Wren"`) {
		t.Errorf("left open: code %d, printed %q, on the terminal %q", code, out, screen)
	}
	out, screen, code = onTerminal(t, dir, []string{"3", "2"}, "season", "copy.csv")
	if code != 0 || !strings.Contains(out, "12 trips") || !strings.Contains(screen, "expected a number from 1 to 2") {
		t.Errorf("another: code %d, printed %q, on the terminal %q", code, out, screen)
	}
	wakeledger(t, dir, "logs", "forget", "copy.csv")
	out, screen, code = onTerminal(t, dir, []string{"1"}, "season", "copy.csv")
	if code != 0 || !strings.Contains(out, "6 trips") || !strings.Contains(screen, "takes the place of log 1") {
		t.Errorf("replaced: code %d, printed %q, on the terminal %q", code, out, screen)
	}
}
