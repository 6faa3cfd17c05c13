package main

import (
	"fmt"
	"io"
)

// An outlet remembers that what it writes to refused something: what reads a
// store and writes it out fails for either, and only one is the store's trouble.
type outlet struct {
	io.Writer
	refused error
}

// Write writes, and keeps why it could not.
func (o *outlet) Write(p []byte) (int, error) {
	n, err := o.Writer.Write(p)
	if err != nil && o.refused == nil {
		o.refused = err
	}
	return n, err
}

// trouble says whose failure err is: that of standard output or the store's.
func (o *outlet) trouble(err error) error {
	switch {
	case o.refused != nil:
		return hint(fmt.Errorf("standard output cannot be written: %w", o.refused), "check where it goes; a full disk refuses it")
	case err != nil:
		return storeTrouble(err)
	}
	return nil
}
