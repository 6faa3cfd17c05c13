package main

import (
	"context"
	"errors"
	"fmt"
	"io/fs"
	"os"
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
		to := &outlet{Writer: s.out}
		out := tabwriter.NewWriter(to, 0, 0, 2, ' ', 0)
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
			_, err := fmt.Fprintln(to, "No loads are in the book yet.")
			return to.trouble(err)
		}
		return to.trouble(out.Flush())
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
		out := &outlet{Writer: s.out}
		return out.trouble(write(ctx, kept, c.Room, out))
	})
}

// forgetCmd blanks a person.
type forgetCmd struct {
	where
	Person string `required:"" placeholder:"ID" help:"Who: a name of [people] in the configuration, or an id of a service."`
}

// whoIsCalledWhat helps to name a person, also one who never posted a load.
const whoIsCalledWhat = "give the name that they have in [people], else the service's id: like U0A1B2C3D on Slack (“Copy member ID” in their profile), " +
	"or @ana:example.org on Matrix; with --config all names of a person are tried, and “presshand export” shows in by_id who is in the load book"

// names returns all that the person is called.
func (c *forgetCmd) names() ([]string, error) {
	if c.Config == "" {
		return []string{c.Person}, nil
	}
	conf, err := readConfig(c.Config)
	if err != nil {
		return nil, err
	}
	person := conf.rules().person(c.Person, "").ID
	return append([]string{person}, conf.People[person]...), nil
}

// Run blanks a person under each of their names.
func (c *forgetCmd) Run(ctx context.Context, s streams) error {
	names, err := c.names()
	if err != nil {
		return err
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
			return hint(fmt.Errorf("nothing of %q is kept", c.Person), whoIsCalledWhat)
		}
		_, err := fmt.Fprintf(s.out, "%d entries and messages are blanked. Names that others typed into notes, and earlier backups, are not.\n", blanked)
		return err
	})
}
