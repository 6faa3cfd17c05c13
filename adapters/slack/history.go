package slack

import (
	"context"
	"encoding/json"
	"errors"
	"slices"
	"time"

	"github.com/slack-go/slack"
)

// Marks of the store about time.
const (
	aliveMark = "slack:alive" // when a socket was last seen open
	sinceMark = "slack:since" // when this workspace was first served
)

const (
	beatEvery   = 5 * time.Second
	longOutage  = 20 * time.Second // Slack sends again by itself what a shorter one missed
	overlap     = 2 * time.Minute  // read again before an outage, for what was not acknowledged
	threadsBack = 3 * 24 * time.Hour
	pageSize    = 200
	maxPages    = 20
)

// beat keeps that a socket is open and all is kept that came over it, so that
// after a death it is known since when that was not so. What could not be kept
// is read, since Slack may have given it up by the time that the store is well.
func (s *stream) beat(ctx context.Context) {
	for ctx.Err() == nil {
		rest(ctx, beatEvery)
		switch {
		case !s.open.Load() || ctx.Err() != nil:
		case s.missed.any():
			s.catchUp(ctx)
		case !s.behind.Load():
			s.alive(ctx)
		}
	}
}

func (s *stream) alive(ctx context.Context) {
	if err := s.store.SetMark(ctx, aliveMark, tsOf(s.Clock())); err != nil {
		s.Log.Warn("slack: time not kept", "error", err)
	}
}

// catchUp reads what was said while no socket was open, once after a start and
// after each outage that Slack's own redelivery does not cover, and what could
// not be kept. It tries until it is done.
func (s *stream) catchUp(ctx context.Context) {
	s.catching.Lock()
	defer s.catching.Unlock()
	failed := map[string]int{}
	for ctx.Err() == nil {
		missed := s.missed.take()
		err := s.readMissed(ctx, missed, failed)
		if err == nil {
			s.behind.Store(!s.open.Load() || s.missed.any())
			return
		}
		s.missed.note(missed)
		if ctx.Err() == nil {
			s.Log.Warn("slack: what was missed could not be read", "error", err, "again_in", s.Again)
			rest(ctx, s.Again)
		}
	}
}

// readMissed reads once, from before what was missed. Failed counts how often
// each channel could not be read.
func (s *stream) readMissed(ctx context.Context, missed time.Time, failed map[string]int) error {
	kept, err1 := s.store.Mark(ctx, aliveMark)
	first, err2 := s.store.Mark(ctx, sinceMark)
	if err := errors.Join(err1, err2); err != nil {
		return err
	}
	now, alive, since := s.Clock(), timeOf(kept), timeOf(first)
	if first == "" { // never here before: what is older is not for us
		since = earlierOf(now, missed)
		if err := s.store.SetMark(ctx, sinceMark, tsOf(since)); err != nil {
			return err
		}
	}
	switch {
	case !missed.IsZero():
		alive = earlierOf(alive, missed)
	case first == "":
		return s.caughtUp(ctx)
	case s.caught.Load() && now.Sub(alive) < longOutage:
		return nil
	}
	if err := s.readBack(ctx, latestOf(since, alive.Add(-overlap), now.Add(-s.MaxAge)), failed); err != nil {
		return err
	}
	return s.caughtUp(ctx)
}

// caughtUp keeps that all is kept up to now, unless something came meanwhile
// that is not.
func (s *stream) caughtUp(ctx context.Context) error {
	s.caught.Store(true)
	if !s.missed.any() {
		s.alive(ctx)
	}
	return nil
}

// earlierOf returns the earlier of two times; a zero time is none.
func earlierOf(a, b time.Time) time.Time {
	if a.IsZero() || !b.IsZero() && b.Before(a) {
		return b
	}
	return a
}

func latestOf(first time.Time, more ...time.Time) time.Time {
	for _, t := range more {
		if t.After(first) {
			first = t
		}
	}
	return first
}

// passing are Slack's own troubles.
var passing = map[string]bool{"fatal_error": true, "internal_error": true, "service_unavailable": true, "request_timeout": true, "ratelimited": true}

// triesOfChannel is how often a channel is read that Slack has trouble with.
const triesOfChannel = 5

// readBack takes in what was said in every channel since a time. What is wrong
// with one channel keeps no other from being read; it is returned where it is
// worth another try.
func (s *stream) readBack(ctx context.Context, from time.Time, failed map[string]int) error {
	found := 0
	var again error
	err := s.eachRoom(ctx, func(room string) error {
		n, err := s.readRoom(ctx, room, from)
		found += n
		code := codeOf(err)
		if code == "" && !garbled(err) {
			return err
		}
		s.Log.Warn("slack: channel could not be read", "channel", room, "error", err)
		if failed[room]++; passing[code] && failed[room] < triesOfChannel {
			again = err
		}
		return nil
	})
	if err := errors.Join(err, again); err != nil {
		return err
	}
	s.Log.Info("slack: read what was missed", "since", from, "found", found)
	return nil
}

// garbled reports whether Slack's answer has a part that the library cannot
// read, which no other try changes.
func garbled(err error) bool {
	var kind *json.UnmarshalTypeError
	var form *json.SyntaxError
	return errors.As(err, &kind) || errors.As(err, &form)
}

// eachRoom calls f with every conversation that the bot is in.
func (s *stream) eachRoom(ctx context.Context, f func(room string) error) error {
	for _, kind := range []string{"public_channel", "private_channel", "im", "mpim"} {
		for cursor := ""; ; {
			rooms, next, err := s.calm.GetConversationsForUserContext(ctx, &slack.GetConversationsForUserParameters{
				Types: []string{kind}, ExcludeArchived: true, Limit: pageSize, Cursor: cursor})
			if codeOf(err) == "missing_scope" {
				break // the check names it; what can be read is read
			}
			if err != nil {
				return err
			}
			for _, room := range rooms {
				if err := f(room.ID); err != nil {
					return err
				}
			}
			if cursor = next; cursor == "" {
				break
			}
		}
	}
	return nil
}

// readRoom takes in a channel's messages, and those of threads that go on, in
// their order.
func (s *stream) readRoom(ctx context.Context, room string, from time.Time) (found int, err error) {
	if !s.Allowed(room) {
		return 0, nil
	}
	var all []slack.Message
	cursor := ""
	for range maxPages {
		h, err := s.calm.GetConversationHistoryContext(ctx, &slack.GetConversationHistoryParameters{
			ChannelID: room, Oldest: tsOf(from.Add(-threadsBack)), Limit: pageSize, Cursor: cursor})
		if err != nil {
			return 0, err
		}
		all = append(all, h.Messages...)
		if cursor = h.ResponseMetaData.NextCursor; cursor == "" {
			break
		}
	}
	since := tsOf(from)
	for _, m := range slices.Backward(all) { // the oldest comes last
		n, err := s.readMessage(ctx, room, m, since)
		if err == nil && m.ReplyCount > 0 && m.LatestReply > since {
			var below int
			below, err = s.readThread(ctx, room, m, since)
			n += below
		}
		if err != nil {
			return found, err
		}
		found += n
	}
	return found, nil
}

// readThread takes in what was said in a thread from where the bot was first
// addressed in it.
func (s *stream) readThread(ctx context.Context, room string, root slack.Message, since string) (found int, err error) {
	own, joined, cursor := s.own.Load(), false, ""
	for range maxPages {
		page, _, next, err := s.calm.GetConversationRepliesContext(ctx, &slack.GetConversationRepliesParameters{
			ChannelID: room, Timestamp: root.Timestamp, Limit: pageSize, Cursor: cursor})
		if err != nil {
			return found, err
		}
		for _, m := range page {
			in := innerOf(room, m)
			if !joined {
				alone := in
				alone.Thread = "" // is it said to the bot whatever the thread is?
				to, err := s.addressed(ctx, alone)
				if err != nil {
					return found, err
				}
				joined = to || m.User == own.user
			}
			if !joined || m.Timestamp == root.Timestamp {
				continue
			}
			n, err := s.readMessage(ctx, room, m, since)
			if err != nil {
				return found, err
			}
			found += n
		}
		if cursor = next; cursor == "" {
			break
		}
	}
	return found, nil
}

// readMessage takes in one message of a history. One that was changed since it
// was answered is taken in as changed.
func (s *stream) readMessage(ctx context.Context, room string, m slack.Message, since string) (int, error) {
	in := innerOf(room, m)
	isNew := m.Timestamp > since
	changed := in.Edited != nil && in.Edited.TS > since
	if !isNew && !changed {
		return 0, nil
	}
	ctx, cancel := context.WithTimeout(ctx, callTimeout)
	defer cancel()
	if isNew {
		fresh, err := s.message(ctx, in)
		if err != nil || fresh {
			return 1, err
		}
	}
	if !changed {
		return 0, nil
	}
	to, err := s.addressed(ctx, in)
	if err != nil || !to {
		return 0, err
	}
	return 0, s.reworded(ctx, in)
}
