package main

import (
	"context"
	"errors"
	"fmt"
	"io/fs"
	"os"
	"path/filepath"
	"sync"
	"time"

	"presshand/adapters/matrix"
	"presshand/adapters/sqlite"
	"presshand/bot/book"
)

// matrixConfig returns the adapter's settings, with the secrets read.
func (c *config) matrixConfig() (matrix.Config, error) {
	m := matrix.Config{
		Homeserver: c.Matrix.Homeserver, User: c.Matrix.User, Store: c.Matrix.Store, Name: c.Matrix.Name,
		Allow: c.Matrix.Allow, MaxAge: time.Duration(c.CatchUp),
	}
	for _, s := range []struct {
		to             *string
		what, variable string
		file           string
	}{
		{&m.Password, "matrix password", matrixPassword, c.Matrix.Password},
		{&m.Token, "matrix access token", matrixToken, c.Matrix.Token},
		{&m.RecoveryKey, "matrix recovery key", matrixRecoveryKey, c.Matrix.RecoveryKey},
		{&m.StoreKey, "matrix store key", matrixStoreKey, c.Matrix.StoreKey},
	} {
		var err error
		*s.to, err = secret(s.variable, s.file)
		switch {
		case s.to == &m.RecoveryKey && errors.Is(err, fs.ErrNotExist):
			return m, hint(fmt.Errorf("%s: file %s is not there", s.what, os.ExpandEnv(s.file)),
				"leave recovery_key_file out until “presshand matrix-setup” has printed the key, then make the file")
		case err != nil:
			return m, fmt.Errorf("%s: %w", s.what, err)
		}
	}
	if m.Password == "" && m.Token == "" {
		return m, hint(errors.New("matrix password is missing"), "set "+matrixPassword+", or name a file for it in the configuration")
	}
	if m.Store == "" {
		return m, hint(errors.New("matrix.store is not set"), "name a file for the account's keys")
	}
	if !onServer(m.Store) {
		if err := folderThere(filepath.Dir(m.Store)); err != nil {
			return m, fmt.Errorf("matrix store: %w", err)
		}
	}
	if c.Matrix.Avatar != "" {
		var err error
		if m.Avatar, err = os.ReadFile(c.Matrix.Avatar); err != nil {
			return m, hint(fmt.Errorf("matrix avatar cannot be read: %w", err), "mend avatar_file or leave it out")
		}
	}
	return m, nil
}

// readyForSetup returns the settings for the set-up, with the store's file made.
// The set-up is what tells the recovery key, so that the file for that need not
// be there yet.
func (c *config) readyForSetup() (matrix.Config, error) {
	without, account := *c, *c.Matrix
	if _, err := os.Stat(os.ExpandEnv(account.RecoveryKey)); errors.Is(err, fs.ErrNotExist) {
		account.RecoveryKey = ""
	}
	without.Matrix = &account
	m, err := without.matrixConfig()
	if err == nil {
		makeKeyStore(m.Store)
	}
	return m, err
}

func (c *config) matrixService() (service, error) {
	settings, err := c.matrixConfig()
	if err != nil {
		return nil, err
	}
	return func(p *process) func(context.Context) error { return p.matrix(settings) }, nil
}

// matrix serves the account while this process leads.
func (p *process) matrix(c matrix.Config) func(context.Context) error {
	var heard hearing
	c.Log = p.log
	c.Prefixes = func(room string) []string { return p.rules.Load().prefixes(room) }
	c.Person = func(user, name string) book.Person { return p.rules.Load().person(user, name) }
	c.Heard, c.Welcome = heard.hear, true
	p.monitor.Reconnects(matrix.Service, heard.reconnects)
	p.monitor.Ready(matrix.Service, heard.well)
	return func(ctx context.Context) error {
		makeKeyStore(c.Store)
		return matrix.Serve(ctx, c, p.desk(matrix.Service))
	}
}

// makeKeyStore makes the file of an account's keys, for its owner alone.
func makeKeyStore(name string) {
	if !onServer(name) {
		sqlite.MakePrivate(name)
	}
}

// A hearing is how the syncs of an account went. One that was never heard of
// is another process's, and well.
type hearing struct {
	mu     sync.Mutex
	last   error
	losses int64 // how often the connection came back
}

func (h *hearing) hear(err error) {
	h.mu.Lock()
	defer h.mu.Unlock()
	if h.last != nil && err == nil {
		h.losses++
	}
	h.last = err
}

func (h *hearing) reconnects() int64 {
	h.mu.Lock()
	defer h.mu.Unlock()
	return h.losses
}

func (h *hearing) well(context.Context) error {
	h.mu.Lock()
	defer h.mu.Unlock()
	return h.last
}
