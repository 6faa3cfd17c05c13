package main

import (
	"context"
	"errors"
	"fmt"
	"io"
	"io/fs"
	"maps"
	"net/http"
	"os"
	"path/filepath"
	"slices"
	"strings"
	"time"

	"presshand/adapters/matrix"
)

// checkCmd tries what serve needs.
type checkCmd struct {
	Config string `required:"" placeholder:"FILE" help:"The configuration that serve would use."`
}

// A checking says line by line what is well and what is not.
type checking struct {
	out    io.Writer
	wrong  int
	config *config
}

// say prints a line; without an error all is well.
func (c *checking) say(what string, err error, well string) {
	if err != nil {
		c.wrong++
		fmt.Fprintf(c.out, "wrong  %s: %s\n", what, oneLine(err.Error()))
		return
	}
	fmt.Fprintf(c.out, "ok     %s: %s\n", what, well)
}

// Run says whether serve would work. Nothing is posted; a Matrix account is
// logged in, as its first start would.
func (c *checkCmd) Run(ctx context.Context, s streams) error {
	conf, err := readConfig(c.Config)
	if err != nil {
		return err
	}
	k := &checking{out: s.out, config: conf}
	k.say("configuration", nil, c.Config+" is read")
	k.store(ctx)
	k.listen(ctx)
	k.secretFiles()
	k.rooms()
	if !conf.slack() && !conf.matrix() {
		k.say("services", errors.New("no chat service is turned on: add a [slack] or a [matrix] table"), "")
	}
	if conf.slack() {
		k.slack(ctx)
	}
	if conf.matrix() {
		k.matrix(ctx)
	}
	switch {
	case ctx.Err() != nil:
		return ctx.Err()
	case k.wrong == 1:
		return hint(errors.New("one thing is wrong"), "mend the line above that begins with “wrong”")
	case k.wrong > 1:
		return hint(fmt.Errorf("%d things are wrong", k.wrong), "mend the lines above that begin with “wrong”")
	}
	return nil
}

// store opens the store. A file that is not there is not made, since serve may
// run as another user.
func (c *checking) store(ctx context.Context) {
	name, err := c.config.store()
	if err != nil {
		c.say("store", err, "")
		return
	}
	if !onServer(name) {
		if _, err := os.Stat(name); errors.Is(err, fs.ErrNotExist) {
			c.say("store", writable(filepath.Dir(name)), "not there yet, can be made")
			return
		}
	}
	kept, err := openStore(ctx, name)
	if err != nil {
		c.say("store", storeTrouble(err), "")
		return
	}
	d, err := kept.Depth(ctx)
	err = errors.Join(err, kept.Close())
	c.say("store", err, fmt.Sprintf("opens, %d messages and %d replies wait in it", d.Inbox, d.Outbox))
}

func writable(folder string) error {
	if err := folderThere(folder); err != nil {
		return err
	}
	f, err := os.CreateTemp(folder, ".presshand-check-*")
	if err != nil {
		return hint(fmt.Errorf("folder %s cannot be written to: %w", folder, err), "run check as the user that serves, or name another store")
	}
	return errors.Join(f.Close(), os.Remove(f.Name()))
}

// rooms shows what the rooms are set to.
func (c *checking) rooms() {
	r := c.config.rules()
	c.say("every room", nil, r.every.String())
	for _, id := range slices.Sorted(maps.Keys(r.rooms)) {
		c.say("room "+id, nil, r.in(id).String())
	}
}

// String tells the settings of a room on one line.
func (s settings) String() string {
	units, zone, checkers := "inch", "UTC", "everyone but the poster checks"
	if s.Metric {
		units = "metric"
	}
	if s.Zone != nil {
		zone = s.Zone.String()
	}
	if len(s.Policy.Checkers) > 0 {
		checkers = "checked by " + strings.Join(s.Policy.Checkers, ", ")
	}
	if s.Policy.OwnCheck {
		checkers += ", own loads too"
	}
	if s.sealed {
		checkers += ", from verified devices only"
	}
	words := "no prefix"
	if len(s.prefix) > 0 {
		words = "prefix " + strings.Join(s.prefix, ", ")
	}
	return fmt.Sprintf("%s, %s, %s, %s, pictures %t", units, zone, words, checkers, s.pictures)
}

// matrix logs in and opens the keys.
func (c *checking) matrix(ctx context.Context) {
	m, err := c.config.matrixConfig()
	if err != nil {
		c.say("matrix", err, "")
		return
	}
	c.clock(ctx, "matrix", m.Homeserver+"/_matrix/client/versions")
	if !onServer(m.Store) {
		if _, err := os.Stat(m.Store); errors.Is(err, fs.ErrNotExist) {
			c.noKeys(m)
			return
		}
	}
	how := "logged in, keys open"
	if !matrix.Encrypts {
		how = "logged in; this program was built without -tags goolm, so it leaves encrypted rooms"
	}
	c.say("matrix account", matrix.Check(ctx, m), how)
	if len(m.Allow) == 0 {
		c.say("matrix invitations", nil, "none are accepted, as allow is empty")
	} else {
		c.say("matrix invitations", nil, "accepted from "+strings.Join(m.Allow, ", "))
	}
}

// noKeys says what becomes of an account whose store is not there. It is not
// made, since serve may run as another user.
func (c *checking) noKeys(m matrix.Config) {
	none := fmt.Sprintf("there are no keys at %s yet", m.Store)
	if m.RecoveryKey == "" {
		c.say("matrix account", hint(errors.New(none), "run “presshand matrix-setup” once, as the user that serves"), "")
		return
	}
	c.say("matrix account", writable(filepath.Dir(m.Store)), none+"; serve begins as a new device, which the recovery key has vouched for")
}

// astray is how far this machine's clock may be from a service's: an answer to
// a message from the future or from long ago would be wrong.
const astray = time.Minute

// clock compares this machine's clock with that of a service.
func (c *checking) clock(ctx context.Context, service, address string) {
	ctx, done := context.WithTimeout(ctx, 15*time.Second)
	defer done()
	req, err := http.NewRequestWithContext(ctx, http.MethodGet, address, nil)
	if err != nil {
		c.say(service+" clock", err, "")
		return
	}
	r, err := http.DefaultClient.Do(req)
	if err != nil {
		c.say(service+" clock", hint(fmt.Errorf("service cannot be reached: %w", err), "check the network and the address"), "")
		return
	}
	r.Body.Close()
	theirs, err := http.ParseTime(r.Header.Get("Date"))
	if err != nil {
		c.say(service+" clock", nil, "reached, but tells no time to compare with")
		return
	}
	off := time.Since(theirs).Round(time.Second)
	if off.Abs() > astray {
		err = hint(fmt.Errorf("this machine's clock is off by %v", off), "set it, over NTP best")
	}
	c.say(service+" clock", err, fmt.Sprintf("within %v of this machine's", max(off.Abs(), time.Second)))
}
