package main

import (
	"context"
	"io"
	"os"
	"os/signal"
	"syscall"
)

func main() { os.Exit(start(os.Args[1:], os.Stdout, os.Stderr)) }

// start runs the program, in a window of its own where it was given one, and returns the
// exit code.
func start(args []string, out, notes io.Writer) int {
	ctx, stop := untilStopped()
	defer stop()
	readyConsole()
	if ownWindow() && (len(args) == 0 || filesOnly(args)) {
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
