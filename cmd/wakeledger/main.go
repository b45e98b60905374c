package main

import (
	"context"
	"io"
	"os"
	"os/signal"
	"syscall"
)

func main() { os.Exit(start(os.Args[1:], ownWindow(), os.Stdout, os.Stderr)) }

// start runs the program and returns the exit code. window tells that it has a window of its
// own: then logs alone are logs that were dropped on it.
func start(args []string, window bool, out, notes io.Writer) int {
	ctx, stop := untilStopped()
	defer stop()
	readyConsole()
	if window && (len(args) == 0 || filesOnly(args)) {
		return inWindow(ctx, args, out, notes)
	}
	return run(ctx, args, out, notes)
}

// untilStopped ends with Ctrl-C, with the window that is closed and with the machine that is
// shut down. A reader that closes the pipe is an error of writing like any other, so that
// what was begun is tidied up.
func untilStopped() (context.Context, context.CancelFunc) {
	signal.Ignore(syscall.SIGPIPE)
	return signal.NotifyContext(context.Background(), os.Interrupt, syscall.SIGTERM, syscall.SIGHUP)
}
