//go:build !windows

package main

import (
	"errors"
	"os"
	"os/exec"
	"runtime"
	"syscall"
)

// ownWindow: only Windows opens a window for a program alone.
func ownWindow() bool { return false }

func readyConsole() {}

// show opens a page in the browser. The file is named in full.
func show(file string) error {
	opener := "xdg-open"
	if runtime.GOOS == "darwin" {
		opener = "open"
	} else if os.Getenv("DISPLAY") == "" && os.Getenv("WAYLAND_DISPLAY") == "" {
		return errors.New("there is no desktop here")
	}
	c := exec.Command(opener, file)
	if err := c.Start(); err != nil {
		return errors.New("there is no program " + opener)
	}
	return c.Process.Release() // it may last as long as the browser
}

// closedBefore tells that the reader of a pipe wanted no more, which needs no message.
func closedBefore(err error) bool { return errors.Is(err, syscall.EPIPE) }
