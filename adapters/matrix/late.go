package matrix

import (
	"context"
	"errors"
	"time"

	"maunium.net/go/mautrix/event"
)

// How long the key of a message may be late.
const (
	askAfter  = 3 * time.Second  // then its sender is asked for it
	tellAfter = 30 * time.Second // then the room is told
	lookEvery = time.Second
)

// await tries again and again to read what waits for its key.
func (s *session) await(ctx context.Context) {
	for ctx.Err() == nil {
		pause(ctx, lookEvery)
		if err := s.openAgain(context.WithoutCancel(ctx)); err != nil {
			s.log.Warn("matrix: late messages not read", "error", err)
		}
	}
}

// openAgain is openWaiting where nothing else is taken in.
func (s *session) openAgain(ctx context.Context) error {
	s.mu.Lock()
	defer s.mu.Unlock()
	return s.openWaiting(ctx)
}

// openWaiting tries the events again whose keys had not arrived.
func (s *session) openWaiting(ctx context.Context) error {
	if s.cipher == nil {
		return nil
	}
	waiting, err := s.store.waiters(ctx)
	if err != nil {
		return err
	}
	for _, w := range waiting {
		if err := s.guarded(ctx, w.event.RoomID, w.event, func(ctx context.Context, _ *event.Event) error {
			return s.openLate(ctx, w)
		}); err != nil {
			return err
		}
	}
	return nil
}

// openLate reads an event whose key has come, or sees to it that it does.
func (s *session) openLate(ctx context.Context, w waiter) error {
	e := w.event
	e.Type.Class = event.MessageEventType
	if err := parse(e); err != nil {
		return errors.Join(err, s.store.stopWaiting(ctx, e.ID))
	}
	clear, err := s.decipher(ctx, e)
	if errors.Is(err, errNoKey) {
		return s.hurry(ctx, w)
	}
	if err == nil && clear.Type.Type == event.EventMessage.Type {
		err = s.said(ctx, clear)
	}
	if err != nil && passing(err) {
		return err
	}
	return errors.Join(err, s.store.stopWaiting(ctx, e.ID))
}

// hurry asks for a key that is late, tells the room when it is very late, and
// gives the message up when it is too old to be answered.
func (s *session) hurry(ctx context.Context, w waiter) error {
	switch late := time.Since(w.since); {
	case late > s.cfg.MaxAge:
		return errors.Join(errNoKey, s.store.stopWaiting(ctx, w.event.ID))
	case late > tellAfter:
		return s.tellUnread(ctx, w.event.RoomID)
	case late > askAfter && !w.asked:
		s.cipher.ask(ctx, w.event)
		return s.store.asked(ctx, w.event.ID)
	}
	return nil
}
