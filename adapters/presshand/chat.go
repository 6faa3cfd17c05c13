package main

import (
	"context"
	"errors"
	"fmt"
	"io"
	"os"

	"presshand/adapters/terminal"
)

// chatCmd talks to one person in the terminal.
type chatCmd struct {
	Units string `enum:"inch,metric" default:"inch" help:"What bare numbers are: inch or metric."`
	Store string `placeholder:"FILE" help:"Keep threads and loads in this file, or in postgres://…; in the home folder without it."`
}

// Run answers what is typed until the end of input.
func (c *chatCmd) Run(ctx context.Context, s streams) (err error) {
	store := c.Store
	if store == "" {
		if store, err = homeStore(); err != nil {
			return err
		}
	}
	b, done, err := newBot(ctx, store, c.Units)
	if err != nil {
		return err
	}
	defer func() { err = errors.Join(err, done()) }()
	room, err := terminal.Open(s.in, s.out)
	if err != nil {
		return hint(fmt.Errorf("terminal cannot be used: %w", err), "try “presshand ask” with the message behind it")
	}
	defer func() { err = errors.Join(err, room.Close()) }()
	for {
		m, err := room.Receive(ctx)
		if errors.Is(err, io.EOF) {
			return nil
		}
		if err != nil {
			return hint(fmt.Errorf("input cannot be read: %w", err), "try “presshand ask” with the message behind it")
		}
		done := whileWorking(quiet, room.Working)
		r, err := b.Handle(ctx, m)
		done()
		if err != nil {
			return storeTrouble(err)
		}
		if err := room.Send(ctx, m, r); err != nil {
			return hint(fmt.Errorf("reply cannot be written: %w", err), "check where standard output goes")
		}
	}
}

// homeStore is the file that the terminal keeps its loads in.
func homeStore() (string, error) {
	dir, err := os.UserConfigDir()
	if err != nil {
		return "", hint(fmt.Errorf("no folder to keep loads in: %w", err), "name a file with --store")
	}
	dir += string(os.PathSeparator) + "presshand"
	if err := os.MkdirAll(dir, 0o700); err != nil {
		return "", hint(fmt.Errorf("folder for loads cannot be made: %w", err), "name a file with --store")
	}
	return dir + string(os.PathSeparator) + "presshand.db", nil
}
