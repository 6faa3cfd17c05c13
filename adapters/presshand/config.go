package main

import (
	"errors"
	"fmt"
	"slices"
	"strings"
	"time"

	"github.com/BurntSushi/toml"
)

// A config is the file that serve reads. presshand.toml shows every key.
type config struct {
	room // what holds in every room

	Store        string          `toml:"store"`
	StoreFile    string          `toml:"store_file"`
	Name         string          `toml:"name"`
	KeepMessages span            `toml:"keep_messages"`
	CatchUp      span            `toml:"catch_up"`
	Crowd        int             `toml:"messages_a_minute"`
	Listen       string          `toml:"listen"`
	Log          logConfig       `toml:"log"`
	People       people          `toml:"people"`
	Rooms        map[string]room `toml:"rooms"`
	Slack        *slackConfig    `toml:"slack"`
	Matrix       *matrixConfig   `toml:"matrix"`
}

// people are the names that one person has on the services.
type people map[string][]string

type logConfig struct {
	Level  string `toml:"level"`
	Format string `toml:"format"`
}

// A room is how one room is run; what is not set is as in every room.
type room struct {
	Units    *string   `toml:"units"`
	Zone     *string   `toml:"zone"`
	Prefix   *[]string `toml:"prefix"`
	Pictures *bool     `toml:"pictures"`
	Checkers *[]string `toml:"checkers"`
	OwnCheck *bool     `toml:"own_check"`
	Sealed   *bool     `toml:"sealed_checks"`
}

type slackConfig struct {
	Enabled  *bool    `toml:"enabled"`
	BotToken string   `toml:"bot_token_file"`
	AppToken string   `toml:"app_token_file"`
	API      string   `toml:"api"`
	Allow    []string `toml:"allow"`
}

type matrixConfig struct {
	Enabled     *bool    `toml:"enabled"`
	Homeserver  string   `toml:"homeserver"`
	User        string   `toml:"user"`
	Password    string   `toml:"password_file"`
	Token       string   `toml:"token_file"`
	RecoveryKey string   `toml:"recovery_key_file"`
	Store       string   `toml:"store"`
	StoreKey    string   `toml:"store_key_file"`
	Name        string   `toml:"name"`
	Avatar      string   `toml:"avatar_file"`
	Allow       []string `toml:"allow"`
}

// usual is what holds where the file says nothing.
func usual() config {
	return config{
		KeepMessages: span(90 * 24 * time.Hour), CatchUp: span(time.Hour), Crowd: 20,
		Listen: "127.0.0.1:9417", Log: logConfig{Level: "info", Format: "text"},
	}
}

// readConfig reads the file and says what is wrong with it.
func readConfig(file string) (*config, error) {
	c := usual()
	meta, err := toml.DecodeFile(file, &c)
	var wrong toml.ParseError
	decoded := len(meta.Keys()) > 0 // it is TOML, so that what is wrong is a value
	switch {
	case errors.As(err, &wrong) && decoded:
		return nil, hint(fmt.Errorf("%s line %d: %s: %s", file, wrong.Position.Line, wrong.LastKey, oneLine(wrong.Message)), "mend that line")
	case errors.As(err, &wrong):
		return nil, hint(fmt.Errorf("%s line %d: %s", file, wrong.Position.Line, oneLine(wrong.Message)), "mend that line")
	case err != nil && decoded:
		return nil, wrongValue(file, meta, err)
	case err != nil:
		return nil, hint(fmt.Errorf("configuration cannot be read: %w", err), "name the file with --config")
	}
	if err := noTable(file, meta); err != nil {
		return nil, err
	}
	if unknown := meta.Undecoded(); len(unknown) > 0 {
		return nil, unknownKey(file, unknown[0])
	}
	if err := c.check(); err != nil {
		return nil, hint(fmt.Errorf("%s: %w", file, err), "mend it; presshand.toml beside the sources shows every key")
	}
	return &c, nil
}

// check refuses what no server could be run with.
func (c *config) check() error {
	switch {
	case c.Crowd < 1:
		return fmt.Errorf("messages_a_minute is %d, want 1 or more", c.Crowd)
	case c.KeepMessages < 0 || c.CatchUp < 0:
		return errors.New("keep_messages and catch_up must not be negative")
	case c.Store != "" && c.StoreFile != "":
		return errors.New("store and store_file are both set, want one")
	}
	if _, err := c.Log.level(); err != nil {
		return err
	}
	if c.Log.Format != "text" && c.Log.Format != "json" {
		return fmt.Errorf("log.format is %q, want text or json", c.Log.Format)
	}
	if err := c.checkPeople(); err != nil {
		return err
	}
	if err := c.room.check("every room"); err != nil {
		return err
	}
	for id, r := range c.Rooms {
		if err := r.check(fmt.Sprintf("rooms.%q", id)); err != nil {
			return err
		}
	}
	return nil
}

func (c *config) checkPeople() error {
	owner := map[string]string{}
	for name, ids := range c.People {
		for _, id := range ids {
			if other, taken := owner[id]; taken && other != name {
				return fmt.Errorf("people has %q under two names, want one person for each", id)
			}
			owner[id] = name
		}
	}
	return nil
}

func (r room) check(where string) error {
	if r.Units != nil && *r.Units != "inch" && *r.Units != "metric" {
		return fmt.Errorf("%s: units is %q, want inch or metric", where, *r.Units)
	}
	if r.Zone != nil {
		if _, err := time.LoadLocation(*r.Zone); err != nil {
			return fmt.Errorf("%s: zone is %q, want a name like Europe/Oslo", where, *r.Zone)
		}
	}
	if r.Prefix != nil && slices.ContainsFunc(*r.Prefix, func(p string) bool { return p == "" || strings.ContainsAny(p, " ,:\n") }) {
		return fmt.Errorf("%s: prefix is %q, want words without blanks, commas and colons", where, *r.Prefix)
	}
	return nil
}

// slack and matrix report whether the service is turned on: its table is
// there, and does not say otherwise.
func (c *config) slack() bool  { return c.Slack != nil && on(c.Slack.Enabled) }
func (c *config) matrix() bool { return c.Matrix != nil && on(c.Matrix.Enabled) }

func on(b *bool) bool { return b == nil || *b }

// A span is a duration that may be told in days: "90d", "36h".
type span time.Duration

// UnmarshalText reads a span.
func (s *span) UnmarshalText(text []byte) error {
	word := strings.TrimSpace(string(text))
	if days, ok := strings.CutSuffix(word, "d"); ok {
		hours, err := time.ParseDuration(days + "h")
		if err != nil {
			return fmt.Errorf("got %q, want a time like 90d or 12h", word)
		}
		*s = span(hours * 24)
		return nil
	}
	d, err := time.ParseDuration(word)
	if err != nil {
		return fmt.Errorf("got %q, want a time like 90d or 12h", word)
	}
	*s = span(d)
	return nil
}
