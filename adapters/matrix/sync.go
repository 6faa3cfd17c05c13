package matrix

import (
	"context"
	"errors"
	"fmt"
	"runtime/debug"
	"slices"
	"time"

	"maunium.net/go/mautrix"
	"maunium.net/go/mautrix/event"
	"maunium.net/go/mautrix/id"

	"presshand/bot/book"
)

const (
	pollFor      = 30 * time.Second // how long the homeserver holds a sync that has nothing
	pollGrace    = 15 * time.Second // how much longer it may take
	firstSyncFor = 2 * time.Minute
	timelineOf   = 50 // events of a room in one sync
)

// filter leaves out what nobody reads here. Members are never loaded lazily:
// keys are shared with the members that are stored.
const filter = `{"presence":{"not_types":["*"]},"room":{"ephemeral":{"not_types":["*"]},"timeline":{"limit":50}}}`

// follow syncs until ctx is done. The place in the stream is saved once all
// that stands before it is recorded; until then the same stretch comes again.
func (s *session) follow(ctx context.Context) error {
	place, err := s.store.place(ctx, s.client.UserID)
	if err != nil {
		return err
	}
	if err := s.openAgain(ctx); err != nil {
		return err
	}
	for failures := 0; ctx.Err() == nil; {
		next, err := s.step(ctx, place, failures > 0)
		if err == nil {
			s.cfg.Heard(nil)
			place, failures = next, 0
			continue
		}
		if ctx.Err() != nil {
			return nil
		}
		s.cfg.Heard(err)
		if errors.Is(err, mautrix.MUnknownToken) {
			return err
		}
		wait := max(backoff(failures), retryAfter(err))
		failures++
		s.log.Warn("matrix: sync failed", "error", brief(err), "again_in", wait)
		pause(ctx, wait)
	}
	return nil
}

// step takes one sync in and returns the place after it.
func (s *session) step(ctx context.Context, place string, failing bool) (string, error) {
	hold, limit := pollFor, pollFor+pollGrace
	if place == "" {
		hold, limit = 0, firstSyncFor
	} else if failing {
		hold = 0
	}
	asking, done := context.WithTimeout(ctx, limit)
	defer done()
	req := mautrix.ReqSync{
		Timeout: int(hold.Milliseconds()), Since: place, FilterID: filter, SetPresence: event.PresenceOffline,
	}
	r, err := fetch[mautrix.RespSync](asking, s, "", req.BuildQuery(), "sync")
	if err != nil {
		return place, err
	}
	// told to stop, it finishes what it has: a key half stored is a key lost
	ctx = context.WithoutCancel(ctx)
	if err := s.takeIn(ctx, r, place); err != nil {
		return place, err
	}
	return r.NextBatch, s.store.keepPlace(ctx, s.client.UserID, r.NextBatch)
}

// takeIn records all that a sync brings.
func (s *session) takeIn(ctx context.Context, r *mautrix.RespSync, since string) error {
	s.mu.Lock()
	defer s.mu.Unlock()
	if s.cipher != nil {
		s.keys(ctx, r, since)
	}
	for _, room := range sorted(r.Rooms.Join) {
		if err := s.joined(ctx, room, r.Rooms.Join[room], since); err != nil {
			return err
		}
	}
	for _, room := range sorted(r.Rooms.Invite) {
		if err := s.invited(ctx, room, r.Rooms.Invite[room]); err != nil {
			return err
		}
		nudge(s.asked)
	}
	if len(r.ToDevice.Events) > 0 {
		return s.openWaiting(ctx)
	}
	return nil
}

// keys takes in keys and devices; what the library cannot digest is logged.
func (s *session) keys(ctx context.Context, r *mautrix.RespSync, since string) {
	defer func() {
		if p := recover(); p != nil {
			s.log.Error("matrix: keys of a sync could not be read", "panic", p, "stack", string(debug.Stack()))
		}
	}()
	s.cipher.sync(ctx, r, since)
}

func sorted[T any](rooms map[id.RoomID]T) []id.RoomID {
	out := make([]id.RoomID, 0, len(rooms))
	for room := range rooms {
		out = append(out, room)
	}
	slices.Sort(out)
	return out
}

// joined takes in what happened in a room that the account is in.
func (s *session) joined(ctx context.Context, room id.RoomID, r *mautrix.SyncJoinedRoom, since string) error {
	for _, e := range r.State.Events {
		if err := s.guarded(ctx, room, e, s.stateOf); err != nil {
			return err
		}
	}
	timeline := r.Timeline.Events
	if r.Timeline.Limited && since != "" {
		missed, err := s.gap(ctx, room, r.Timeline.PrevBatch, since)
		if err != nil {
			return err
		}
		timeline = append(missed, timeline...)
	}
	arrived := s.arrival(timeline)
	for i, e := range timeline {
		e.RoomID = room
		take := s.stateOf
		if e.StateKey == nil {
			if i < arrived || since == "" && e.Timestamp < s.started.UnixMilli() {
				continue
			}
			take = s.take
		}
		if err := s.guarded(ctx, room, e, take); err != nil {
			return err
		}
	}
	return s.leaveUnreadable(ctx, room)
}

// arrival returns where in a timeline the account came into the room: what
// stands before was not said to it. A direct chat is with the account from its
// invitation on.
func (s *session) arrival(timeline []*event.Event) int {
	came := 0
	for i, e := range slices.Backward(timeline) {
		if e.Type.Type != event.StateMember.Type || e.GetStateKey() != string(s.client.UserID) {
			continue
		}
		switch now := membershipOf(&e.Content); {
		case came == 0 && now == event.MembershipJoin && membershipOf(e.Unsigned.PrevContent) != event.MembershipJoin:
			came = i // else it has a new name or picture
		case came > 0 && now == event.MembershipInvite && e.Content.Raw["is_direct"] == true:
			return i
		case came > 0:
			return came
		}
	}
	return came
}

func membershipOf(c *event.Content) event.Membership {
	if c == nil {
		return ""
	}
	m, _ := c.Raw["membership"].(string)
	return event.Membership(m)
}

const (
	gapPages = 20
	gapPage  = 100
)

// gap returns what a sync left out of a room, the oldest first, back to where
// the last one ended or to what is too old to be answered.
func (s *session) gap(ctx context.Context, room id.RoomID, from, since string) ([]*event.Event, error) {
	oldest := time.Now().Add(-s.cfg.MaxAge).UnixMilli()
	var missed []*event.Event
	for range gapPages {
		if from == "" {
			break
		}
		r, err := s.messages(ctx, room, from, since)
		if refused(err) {
			s.log.Error("matrix: messages left out of a sync are lost", "room", room, "error", err)
			break
		}
		if err != nil {
			return nil, fmt.Errorf("messages left out of the sync are not to be had: %w", err)
		}
		missed = append(missed, r.Chunk...)
		if len(r.Chunk) == 0 || r.Chunk[len(r.Chunk)-1].Timestamp < oldest {
			break
		}
		from = r.End
	}
	slices.Reverse(missed)
	return missed, nil
}

// guarded deals with one event. One that cannot be dealt with goes aside; the
// error is that of a store that may work again later, or of the homeserver.
func (s *session) guarded(ctx context.Context, room id.RoomID, e *event.Event, f func(context.Context, *event.Event) error) (err error) {
	e.RoomID = room
	defer func() {
		if p := recover(); p != nil {
			s.log.Error("matrix: event made the program panic", "event", e.ID, "panic", p, "stack", string(debug.Stack()))
			err = s.aside(ctx, e, fmt.Sprint("panic: ", p))
		}
	}()
	err = f(ctx, e)
	if err == nil || passing(err) {
		return err
	}
	return s.aside(ctx, e, err.Error())
}

func (s *session) aside(ctx context.Context, e *event.Event, reason string) error {
	s.log.Error("matrix: event put aside", "event", e.ID, "room", e.RoomID, "type", e.Type.Type, "reason", reason)
	return errors.Join(s.store.putAside(ctx, e.ID, e.RoomID, e.Type.Type, reason), s.store.stopWaiting(ctx, e.ID))
}

// passing reports whether an error may be gone when the event comes again.
func passing(err error) bool {
	var ours *storeError
	var theirs mautrix.HTTPError
	if errors.As(err, &ours) || errors.As(err, &theirs) {
		return true
	}
	return isAny(err, book.ErrBusy, book.ErrReadOnly, book.ErrFull, book.ErrLost, context.Canceled, context.DeadlineExceeded)
}

func isAny(err error, of ...error) bool {
	return slices.ContainsFunc(of, func(e error) bool { return errors.Is(err, e) })
}

// stateOf takes in the state of a room.
func (s *session) stateOf(ctx context.Context, e *event.Event) error {
	if e.StateKey == nil {
		return nil
	}
	e.Type.Class = event.StateEventType
	if e.Type == event.StateEncryption && *e.StateKey == "" {
		// whatever stands in it: a later event must not turn encryption off
		if err := s.store.seal(ctx, e.RoomID); err != nil {
			return err
		}
	}
	if err := parse(e); err != nil {
		return err
	}
	s.client.StateStoreSyncHandler(ctx, e)
	if s.cipher != nil {
		s.cipher.state(ctx, e)
	}
	return nil
}

// parse reads an event's content, if it is of a type that is known.
func parse(e *event.Event) error {
	err := e.Content.ParseRaw(e.Type)
	if errors.Is(err, event.ErrUnsupportedContentType) || errors.Is(err, event.ErrContentAlreadyParsed) {
		return nil
	}
	return err
}
