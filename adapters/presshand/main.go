// Command presshand answers press questions in a terminal, from a script, and
// in chat rooms.
package main

import (
	"context"
	"errors"
	"fmt"
	"io"
	"os"
	"os/signal"
	"strings"
	"syscall"
	_ "time/tzdata" // rooms have time zones, machines do not always
)

// Exit codes.
const (
	exitOK      = 0
	exitFailed  = 1
	exitUnknown = 2 // a single question that is not about the trade
	exitUsage   = 64
)

func main() {
	ctx, stop := signal.NotifyContext(context.Background(), os.Interrupt, syscall.SIGTERM)
	context.AfterFunc(ctx, stop) // a second Ctrl-C ends at once
	code := run(ctx, os.Args[1:], streams{os.Stdin, os.Stdout, os.Stderr})
	stop()
	os.Exit(code)
}

// streams are what a command reads and writes.
type streams struct {
	in       io.Reader
	out, err io.Writer
}

// An exitError is an exit code without anything more to say.
type exitError int

func (e exitError) Error() string { return fmt.Sprintf("exit code %d", int(e)) }

// A hintError is a failure with what to do next.
type hintError struct {
	err  error
	hint string
}

func (e *hintError) Error() string { return e.err.Error() + ": " + e.hint }
func (e *hintError) Unwrap() error { return e.err }

func hint(err error, todo string) error { return &hintError{err, todo} }

// exitCode says a failure on one line of stderr and returns the exit code.
func exitCode(err error, stderr io.Writer) int {
	var code exitError
	switch {
	case err == nil, errors.Is(err, context.Canceled):
		return exitOK
	case errors.As(err, &code):
		return int(code)
	}
	fmt.Fprintln(stderr, "presshand: "+oneLine(err.Error()))
	return exitFailed
}

// oneLine joins the lines of an error, which may be several errors.
func oneLine(s string) string {
	return strings.NewReplacer("\r\n", "; ", "\n", "; ", "\r", "; ").Replace(s)
}
