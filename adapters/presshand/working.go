package main

import (
	"io"
	"os"
	"time"

	"golang.org/x/term"
)

// quiet is how long a reply may take before somebody at a terminal is told that
// it is being worked on.
const quiet = time.Second

// whileWorking has say called once where the work takes longer; the function that
// it returns ends the wait, and returns when say is done.
func whileWorking(after time.Duration, say func()) (done func()) {
	finished, gone := make(chan struct{}), make(chan struct{})
	timer := time.NewTimer(after)
	go func() {
		defer close(gone)
		defer timer.Stop()
		select {
		case <-finished:
		case <-timer.C:
			say()
		}
	}()
	return func() {
		close(finished)
		<-gone
	}
}

// watched reports whether somebody sees what is written to w.
func watched(w io.Writer) bool {
	f, ok := w.(*os.File)
	return ok && term.IsTerminal(int(f.Fd()))
}
