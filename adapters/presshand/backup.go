package main

import (
	"context"
	"errors"
	"fmt"
	"io"
	"io/fs"
	"os"
	"path/filepath"

	"presshand/bot/book"
)

// backupCmd writes all that a store holds into a file.
type backupCmd struct {
	where
	File string `arg:"" help:"The file to write, or - for standard output. One that is there is replaced once the backup is whole."`
}

// Run writes the backup. Matrix keys are in a store of their own.
func (c *backupCmd) Run(ctx context.Context, s streams) error {
	name, err := c.name()
	if err != nil {
		return err
	}
	if sameFile(name, c.File) {
		return hint(errors.New("the backup would replace the store itself"), "give the backup another name")
	}
	return c.with(ctx, func(kept book.Store) error {
		if c.File == "-" {
			out := &outlet{Writer: s.out}
			return out.trouble(kept.Backup(ctx, out))
		}
		if err := written(c.File, 0o600, func(w io.Writer) error { return kept.Backup(ctx, w) }); err != nil {
			return err
		}
		_, err := fmt.Fprintf(s.out, "The store is backed up in %s. Matrix keys are not part of it: the recovery key makes new ones.\n", c.File)
		return err
	})
}

func sameFile(a, b string) bool {
	x, err := os.Stat(a)
	if err != nil {
		return false
	}
	y, err := os.Stat(b)
	return err == nil && os.SameFile(x, y)
}

// written has a file written beside its place and puts it there once it is
// whole and on the disk.
func written(file string, mode fs.FileMode, write func(io.Writer) error) (err error) {
	beside := func(err error) error {
		return hint(fmt.Errorf("%s cannot be written: %w", file, err), "name a file in a folder that you can write to")
	}
	f, err := os.CreateTemp(filepath.Dir(file), ".presshand-*")
	if err != nil {
		return beside(err)
	}
	defer func() {
		if err != nil {
			err = errors.Join(err, os.Remove(f.Name()))
		}
	}()
	out := &outlet{Writer: f}
	switch err := write(out); {
	case out.refused != nil:
		return errors.Join(beside(out.refused), f.Close())
	case err != nil:
		return errors.Join(storeTrouble(err), f.Close())
	}
	if err := errors.Join(f.Chmod(mode), f.Sync(), f.Close()); err != nil {
		return beside(err)
	}
	if err := os.Rename(f.Name(), file); err != nil {
		return beside(err)
	}
	return nil
}

// restoreCmd fills an empty store from a backup.
type restoreCmd struct {
	where
	File string `arg:"" help:"The backup to read, or - for standard input."`
}

// Run fills a store, which is made if it is not there.
func (c *restoreCmd) Run(ctx context.Context, s streams) (err error) {
	from := s.in
	if c.File != "-" {
		f, err := os.Open(c.File)
		if err != nil {
			return hint(fmt.Errorf("backup cannot be read: %w", err), "name a file that “presshand backup” wrote")
		}
		defer f.Close()
		from = f
	}
	name, err := c.name()
	if err != nil {
		return err
	}
	_, missing := os.Stat(name)
	kept, err := openStore(ctx, name)
	if err != nil {
		return storeTrouble(err)
	}
	defer func() {
		closed := kept.Close()
		if err != nil && errors.Is(missing, fs.ErrNotExist) && !onServer(name) {
			_ = os.Remove(name) // it is empty, and was not there before
		}
		err = errors.Join(err, closed)
	}()
	switch err := kept.Restore(ctx, from); {
	case errors.Is(err, book.ErrNotEmpty):
		return hint(err, "name a store that is not there yet with --store")
	case errors.Is(err, book.ErrBackup):
		return hint(err, "name a file that “presshand backup” wrote")
	case err != nil:
		return storeTrouble(err)
	}
	_, err = fmt.Fprintln(s.out, "The store is filled from the backup.")
	return err
}
