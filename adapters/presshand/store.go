package main

import (
	"context"
	"errors"
	"fmt"
	"io/fs"
	"os"
	"path/filepath"

	"presshand/adapters/postgres"
	"presshand/adapters/sqlite"
	"presshand/bot"
	"presshand/bot/book"
)

// newBot returns a bot on a store, and what gives the store back.
func newBot(ctx context.Context, store, units string) (*bot.Bot, func() error, error) {
	kept, done := bot.NewMemory(), func() error { return nil }
	if store != "" {
		s, err := openStore(ctx, store)
		if err != nil {
			return nil, nil, storeTrouble(err)
		}
		kept, done = s, s.Close
	}
	b := bot.New(kept)
	settings := bot.Settings{Metric: units == "metric"}
	b.Settings = func(string) bot.Settings { return settings }
	return b, done, nil
}

// openStore opens the file, or the server where the name is an address.
func openStore(ctx context.Context, name string) (book.Store, error) {
	if onServer(name) {
		return postgres.Open(ctx, name)
	}
	if err := folderThere(filepath.Dir(name)); err != nil {
		return nil, err
	}
	return sqlite.Open(ctx, name)
}

// folderThere refuses a folder that is not there: of a file in it a database says
// no more than that it cannot be opened.
func folderThere(folder string) error {
	if _, err := os.Stat(folder); errors.Is(err, fs.ErrNotExist) {
		return hint(fmt.Errorf("folder %s is not there", folder), "make it")
	}
	return nil
}

// storeHints say what to do when a store fails.
var storeHints = []struct {
	is   error
	todo string
}{
	{book.ErrBusy, "another process has it locked; stop that one or wait"},
	{book.ErrReadOnly, "make the file and its folder writable, or name another with --store"},
	{book.ErrFull, "free some space, or name a store on another disk with --store"},
	{book.ErrLost, "see that its folder is there, or that the server runs and its address is right"},
	{book.ErrNewer, "update presshand; this store was made by a newer one"},
	{book.ErrDamaged, "restore it from a backup, or name another with --store"},
	{book.ErrConflict, "too many write to it at once; try again"},
}

// storeTrouble adds what to do next to a store's failure.
func storeTrouble(err error) error {
	for _, h := range storeHints {
		if errors.Is(err, h.is) {
			return hint(err, h.todo)
		}
	}
	var told *hintError
	if errors.Is(err, context.Canceled) || errors.As(err, &told) {
		return err
	}
	return hint(fmt.Errorf("store failed: %w", err), "check --store")
}
