package main

import (
	"context"
	"os"
	"os/signal"
	"syscall"
)

func main() {
	ctx, stop := untilStopped()
	code := run(ctx, os.Args[1:], os.Stdout, os.Stderr)
	stop()
	os.Exit(code)
}

// untilStopped ends with Ctrl-C, with the window that is closed and with the machine that is
// shut down. A reader that closes the pipe is an error of writing like any other, so that
// what was begun is tidied up.
func untilStopped() (context.Context, context.CancelFunc) {
	signal.Ignore(syscall.SIGPIPE)
	return signal.NotifyContext(context.Background(), os.Interrupt, syscall.SIGTERM, syscall.SIGHUP)
}
