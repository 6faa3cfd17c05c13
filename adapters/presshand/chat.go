package main

import (
	"context"
	"errors"
	"fmt"
	"io"
	"os"
	"os/signal"

	"presshand/adapters/terminal"
	"presshand/bot"
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
	signal.Reset(os.Interrupt) // ends the chat only while nothing is worked out
	for {
		m, err := room.Receive(ctx)
		if errors.Is(err, io.EOF) {
			return nil
		}
		if err != nil {
			return hint(fmt.Errorf("input cannot be read: %w", err), "try “presshand ask” with the message behind it")
		}
		r, err := handle(ctx, b, room, m)
		if err != nil {
			return storeTrouble(err)
		}
		if err := room.Send(ctx, m, r); err != nil {
			return hint(fmt.Errorf("reply cannot be written: %w", err), "check where standard output goes")
		}
	}
}

// handle works a reply out. Ctrl-C breaks off what it looks for, not the chat.
func handle(ctx context.Context, b *bot.Bot, room *terminal.Terminal, m bot.Message) (bot.Reply, error) {
	defer whileWorking(quiet, room.Working)()
	ctx, stop := signal.NotifyContext(ctx, os.Interrupt)
	defer stop()
	return b.Handle(ctx, m)
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
