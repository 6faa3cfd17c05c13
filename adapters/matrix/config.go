package matrix

import (
	"errors"
	"fmt"
	"log/slog"
	"strings"
	"time"

	"maunium.net/go/mautrix/id"

	"presshand/bot/book"
)

// Service is the name of this service in a [book.Place].
const Service = "matrix"

// A Config says which account to serve, and how. Homeserver, User, Store and
// one of Password and Token must be set.
type Config struct {
	Homeserver  string // its address, https://matrix.example.org
	User        string // @presshand:example.org
	Password    string
	Token       string // an access token, where there is no password to log in with
	RecoveryKey string // printed by the set-up; needed when the store was lost
	Store       string // file of keys, room states and sync token, or postgres://…
	StoreKey    string // keys are stored encrypted with this; changing it makes them unreadable

	Name   string // shown to people; "" leaves the account's name alone
	Avatar []byte // PNG shown to people; nil leaves the account's picture alone

	// Allow lists rooms (!id:server), people (@name:server) and servers whose
	// invitations are accepted; empty: none.
	Allow []string
	// Prefixes are what a message to the bot begins with, beside its name; nil:
	// “press,” and “press:” in every room.
	Prefixes func(room string) []string
	// Person tells who a user is on all services; nil: by their Matrix id.
	Person func(user, name string) book.Person

	// Welcome has the bot say in a room that it came into what it is for.
	Welcome bool

	// Heard is told how each sync and each log-in went; nil: nobody is.
	Heard func(err error)

	MaxAge time.Duration // older messages are not answered: 1 h
	Log    *slog.Logger
}

func (c *Config) check() error {
	_, _, err := id.UserID(c.User).ParseAndValidateRelaxed()
	switch {
	case !strings.HasPrefix(c.Homeserver, "http://") && !strings.HasPrefix(c.Homeserver, "https://"):
		return fmt.Errorf("homeserver is %q, want an address like https://matrix.example.org", c.Homeserver)
	case err != nil:
		return fmt.Errorf("user is %q, want a full name like @presshand:example.org", c.User)
	case c.Password == "" && c.Token == "":
		return errors.New("neither password nor access token given for " + c.User)
	case c.Store == "":
		return errors.New("no store named for the keys of " + c.User)
	}
	if c.MaxAge == 0 {
		c.MaxAge = time.Hour
	}
	if c.Log == nil {
		c.Log = slog.New(slog.DiscardHandler)
	}
	if c.Prefixes == nil {
		c.Prefixes = func(string) []string { return []string{"press,", "press:"} }
	}
	if c.Heard == nil {
		c.Heard = func(error) {}
	}
	if c.Person == nil {
		c.Person = func(user, name string) book.Person { return book.Person{ID: user, Name: name} }
	}
	return nil
}

// allowed reports whether an invitation may be accepted.
func (c *Config) allowed(room id.RoomID, inviter id.UserID) bool {
	for _, a := range c.Allow {
		if a == string(room) || a == string(inviter) || a == inviter.Homeserver() {
			return true
		}
	}
	return false
}

func (c *Config) storeKey() []byte {
	if c.StoreKey == "" {
		return []byte("presshand")
	}
	return []byte(c.StoreKey)
}
