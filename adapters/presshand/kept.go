package main

import (
	"context"
	"errors"
	"fmt"
	"io"
	"io/fs"
	"os"
	"path/filepath"
	"strings"
	"text/tabwriter"

	"presshand/bot/book"
)

// where says which store a command works on: the one named, else that of a
// configuration, else the one of the terminal.
type where struct {
	Store  string `placeholder:"FILE" help:"The store: a file, or postgres://…. Without it that of --config, else that of the chat in the terminal."`
	Config string `placeholder:"FILE" help:"Take the store from this configuration."`
}

// name returns the name of the store.
func (w where) name() (string, error) {
	switch {
	case w.Store != "":
		return w.Store, nil
	case w.Config == "":
		return homeStore()
	}
	c, err := readConfig(w.Config)
	if err != nil {
		return "", err
	}
	return c.store()
}

// store returns the name of the store that serve uses.
func (c *config) store() (string, error) {
	if c.Store != "" {
		return c.Store, nil
	}
	return needed("store", storeAddress, c.StoreFile)
}

// open opens a store that is there.
func (w where) open(ctx context.Context) (book.Store, error) {
	name, err := w.name()
	if err != nil {
		return nil, err
	}
	if !onServer(name) {
		if _, err := os.Stat(name); errors.Is(err, fs.ErrNotExist) {
			return nil, hint(fmt.Errorf("there is no store at %s", name), "name the right one with --store or --config")
		}
	}
	s, err := openStore(ctx, name)
	if err != nil {
		return nil, storeTrouble(err)
	}
	return s, nil
}

func onServer(store string) bool {
	return strings.HasPrefix(store, "postgres://") || strings.HasPrefix(store, "postgresql://")
}

// with runs f on a store that is there.
func (w where) with(ctx context.Context, f func(book.Store) error) (err error) {
	s, err := w.open(ctx)
	if err != nil {
		return err
	}
	defer func() { err = errors.Join(err, s.Close()) }()
	return f(s)
}

// loadsCmd lists the load book.
type loadsCmd struct {
	where
	Room string `placeholder:"ID" help:"Only the loads of this room."`
}

// Run prints the loads of each room, the newest first.
func (c *loadsCmd) Run(ctx context.Context, s streams) error {
	return c.with(ctx, func(kept book.Store) error {
		rooms := []string{c.Room}
		if c.Room == "" {
			var err error
			if rooms, err = kept.Rooms(ctx); err != nil {
				return storeTrouble(err)
			}
		}
		out := tabwriter.NewWriter(s.out, 0, 0, 2, ' ', 0)
		shown := 0
		fmt.Fprintln(out, "ROOM\tLOAD\tSTATE\tREVISION\tVERDICT\tPOSTED\tBY\tTITLE")
		for _, room := range rooms {
			loads, err := kept.Loads(ctx, room, book.Query{Limit: book.MostLoads})
			if err != nil {
				return storeTrouble(err)
			}
			for _, l := range loads {
				shown++
				fmt.Fprintf(out, "%s\t%d\t%s\t%d\t%s\t%s\t%s\t%s\n", l.Room, l.Number, l.State, l.Revision, l.Plan.Verdict,
					l.PostedAt.Format("2006-01-02 15:04"), called(l.Poster), printable(l.Title))
			}
			if len(loads) == book.MostLoads {
				fmt.Fprintf(out, "%s\t…\tolder ones: see presshand export\n", room)
			}
		}
		if shown == 0 {
			_, err := fmt.Fprintln(s.out, "No loads are in the book yet.")
			return err
		}
		return out.Flush()
	})
}

func called(p book.Person) string {
	if p.Name != "" {
		return printable(p.Name)
	}
	return printable(p.ID)
}

// printable takes out of what was typed all that a terminal would act on.
func printable(s string) string {
	return strings.Map(func(r rune) rune {
		if r < ' ' || r >= 0x7f && r < 0xa0 {
			return -1
		}
		return r
	}, s)
}

// exportCmd writes the load book for other programs.
type exportCmd struct {
	where
	Format string `enum:"csv,json" default:"csv" help:"csv for a spreadsheet, or json."`
	Room   string `placeholder:"ID" help:"Only the loads of this room."`
}

// Run writes a row for each entry of the book to standard output.
func (c *exportCmd) Run(ctx context.Context, s streams) error {
	write := book.ExportCSV
	if c.Format == "json" {
		write = book.ExportJSON
	}
	return c.with(ctx, func(kept book.Store) error {
		if err := write(ctx, kept, c.Room, s.out); err != nil {
			return storeTrouble(err)
		}
		return nil
	})
}

// forgetCmd blanks a person.
type forgetCmd struct {
	where
	Person string `required:"" placeholder:"ID" help:"Who: a name of [people] in the configuration, or an id of a service."`
}

// Run blanks a person under each of their names.
func (c *forgetCmd) Run(ctx context.Context, s streams) error {
	names := []string{c.Person}
	if c.Config != "" {
		conf, err := readConfig(c.Config)
		if err != nil {
			return err
		}
		names = append(names, conf.People[c.Person]...)
	}
	return c.with(ctx, func(kept book.Store) error {
		blanked := 0
		for _, name := range names {
			n, err := kept.Forget(ctx, name)
			if err != nil {
				return storeTrouble(err)
			}
			blanked += n
		}
		if blanked == 0 {
			return hint(fmt.Errorf("nothing of %q is kept", c.Person), "“presshand export” shows in by_id what people are called")
		}
		_, err := fmt.Fprintf(s.out, "%d entries and messages are blanked. Names that others typed into notes, and earlier backups, are not.\n", blanked)
		return err
	})
}

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
			return storeTroubleOf(kept.Backup(ctx, s.out))
		}
		if err := written(c.File, func(w io.Writer) error { return storeTroubleOf(kept.Backup(ctx, w)) }); err != nil {
			return err
		}
		_, err := fmt.Fprintf(s.out, "The store is backed up in %s. Matrix keys are not part of it: the recovery key makes new ones.\n", c.File)
		return err
	})
}

func storeTroubleOf(err error) error {
	if err == nil {
		return nil
	}
	return storeTrouble(err)
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
func written(file string, write func(io.Writer) error) (err error) {
	beside := func(err error) error {
		return hint(fmt.Errorf("%s cannot be written: %w", file, err), "name a file in a folder that you can write to")
	}
	f, err := os.CreateTemp(filepath.Dir(file), ".backup-*") // only its owner may read it
	if err != nil {
		return beside(err)
	}
	defer func() {
		if err != nil {
			err = errors.Join(err, os.Remove(f.Name()))
		}
	}()
	if err := write(f); err != nil {
		return errors.Join(err, f.Close())
	}
	if err := errors.Join(f.Sync(), f.Close()); err != nil {
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
	kept, err := openStore(ctx, name)
	if err != nil {
		return storeTrouble(err)
	}
	defer func() { err = errors.Join(err, kept.Close()) }()
	switch err := kept.Restore(ctx, from); {
	case errors.Is(err, book.ErrNotEmpty):
		return hint(err, "name a store that is not there yet with --store")
	case errors.Is(err, book.ErrDamaged):
		return hint(err, "name a file that “presshand backup” wrote")
	case err != nil:
		return storeTrouble(err)
	}
	_, err = fmt.Fprintln(s.out, "The store is filled from the backup.")
	return err
}
