package main

import (
	"context"
	"os"
	"os/signal"
	"syscall"
)

func main() {
	// A reader that closes the pipe is an error of writing like any other: what was begun is
	// tidied up. So is a window that is closed, or a machine that is shut down.
	signal.Ignore(syscall.SIGPIPE)
	ctx, stop := signal.NotifyContext(context.Background(), os.Interrupt, syscall.SIGTERM, syscall.SIGHUP)
	code := run(ctx, os.Args[1:], os.Stdout, os.Stderr)
	stop()
	os.Exit(code)
}
