package main

import (
	"time"

	"presshand/bot"
	"presshand/bot/book"
)

// rules are a config made ready to be asked for each message.
type rules struct {
	every   settings
	rooms   map[string]settings
	persons map[string]string // who an id of a service is
	slack   map[string]bool   // rooms that are served; empty: all
}

// settings are all that is set for one room.
type settings struct {
	bot.Settings
	prefix   []string
	pictures bool
	sealed   bool // second checks count only from verified devices
}

// rules returns the rules of a config that was checked.
func (c *config) rules() *rules {
	r := &rules{rooms: map[string]settings{}, persons: map[string]string{}, slack: map[string]bool{}}
	for name, ids := range c.People {
		for _, id := range ids {
			r.persons[id] = name
		}
	}
	r.every = r.with(settings{prefix: []string{"press"}, pictures: true}, c.room)
	for id, own := range c.Rooms {
		r.rooms[id] = r.with(r.every, own)
	}
	if c.Slack != nil {
		for _, id := range c.Slack.Allow {
			r.slack[id] = true
		}
	}
	return r
}

// with returns settings with what a room has of its own.
func (r *rules) with(s settings, own room) settings {
	if own.Units != nil {
		s.Metric = *own.Units == "metric"
	}
	if own.Zone != nil {
		s.Zone, _ = time.LoadLocation(*own.Zone) // it was checked
	}
	if own.Prefix != nil {
		s.prefix = *own.Prefix
	}
	if own.Pictures != nil {
		s.pictures = *own.Pictures
	}
	if own.OwnCheck != nil {
		s.Policy.OwnCheck = *own.OwnCheck
	}
	if own.Sealed != nil {
		s.sealed = *own.Sealed
	}
	if own.Checkers != nil {
		s.Policy.Checkers = nil
		for _, id := range *own.Checkers {
			s.Policy.Checkers = append(s.Policy.Checkers, r.person(id, "").ID)
		}
	}
	return s
}

// in returns the settings of a room.
func (r *rules) in(room string) settings {
	if s, ok := r.rooms[room]; ok {
		return s
	}
	return r.every
}

// person returns who an id of a service is.
func (r *rules) person(id, name string) book.Person {
	p := book.Person{ID: id, Name: name}
	if known, ok := r.persons[id]; ok {
		p.ID = known
		if name == "" {
			p.Name = known
		}
	}
	return p
}

// served reports whether a room on Slack is served. Direct messages always are.
func (r *rules) served(room string) bool {
	return len(r.slack) == 0 || r.slack[room] || room != "" && room[0] == 'D'
}

// prefixes are what may stand before a message in a room: the words with a
// comma or a colon.
func (r *rules) prefixes(room string) []string {
	var out []string
	for _, word := range r.in(room).prefix {
		out = append(out, word+",", word+":")
	}
	return out
}
