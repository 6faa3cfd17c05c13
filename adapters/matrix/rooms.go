package matrix

import (
	"context"
	"errors"
	"fmt"
	"net/http"
	"time"

	"maunium.net/go/mautrix"
	"maunium.net/go/mautrix/event"
	"maunium.net/go/mautrix/id"
)

// invited keeps an invitation until it is answered: that may take the help of
// another homeserver, for which the sync does not wait.
func (s *session) invited(ctx context.Context, room id.RoomID, r *mautrix.SyncInvitedRoom) error {
	var inviter id.UserID
	for _, e := range r.State.Events {
		switch {
		case e.Type.Type == event.StateEncryption.Type:
			if err := s.store.seal(ctx, room); err != nil {
				return err
			}
		case e.Type.Type != event.StateMember.Type || e.GetStateKey() != string(s.client.UserID):
		case e.Content.Raw["membership"] == "invite":
			inviter = e.Sender
		}
	}
	return s.store.invite(ctx, room, inviter)
}

const (
	knockAgain = 5 * time.Second
	knockFor   = 24 * time.Hour // then the invitation is given up
	joinFor    = time.Minute    // how long one join may take: another homeserver may be slow
)

// visit answers the invitations that are kept.
func (s *session) visit(ctx context.Context) {
	for ctx.Err() == nil {
		var again <-chan time.Time
		if err := s.answerAll(ctx); err != nil {
			held := retryAfter(err)
			s.log.Warn("matrix: invitation not answered", "error", err, "again_in", max(held, knockAgain))
			pause(ctx, held)
			again = time.After(knockAgain - held)
		}
		select {
		case <-ctx.Done():
		case <-s.asked:
		case <-again:
		}
	}
}

// answerAll answers each invitation. One that cannot be answered yet does not
// keep the others waiting, unless the homeserver is asked too often.
func (s *session) answerAll(ctx context.Context) error {
	invitations, err := s.store.invitations(ctx)
	if err != nil {
		return err
	}
	var failures []error
	for _, v := range invitations {
		joining, done := context.WithTimeout(ctx, joinFor)
		err := s.answer(joining, v)
		done()
		if err == nil {
			err = s.store.answered(ctx, v.room)
		}
		if err != nil {
			failures = append(failures, err)
		}
		if retryAfter(err) > 0 {
			break
		}
	}
	return errors.Join(failures...)
}

// answer accepts an invitation that the configuration allows, and declines any
// other.
func (s *session) answer(ctx context.Context, v invitation) error {
	sealed, err := s.store.isSealed(ctx, v.room)
	if err != nil {
		return err
	}
	switch {
	case !s.cfg.allowed(v.room, v.inviter):
		return s.leave(ctx, v.room, "invitation is not from where I am allowed to go")
	case sealed && s.cipher == nil:
		return s.leave(ctx, v.room, ErrNoEncryption.Error())
	}
	_, err = s.client.JoinRoomByID(ctx, v.room)
	switch {
	case refused(err), err != nil && time.Since(v.since) > knockFor:
		return s.leave(ctx, v.room, "room cannot be joined")
	case err != nil:
		return fmt.Errorf("room cannot be joined: %w", err)
	}
	s.log.Info("matrix: joined", "room", v.room, "inviter", v.inviter)
	return s.arrived(ctx, v)
}

// leave leaves a room, or declines to come. A room that is gone is left.
func (s *session) leave(ctx context.Context, room id.RoomID, why string) error {
	_, err := s.client.LeaveRoom(ctx, room, &mautrix.ReqLeave{Reason: why})
	if err != nil && !refused(err) {
		return fmt.Errorf("room cannot be left: %w", err)
	}
	s.log.Warn("matrix: left", "room", room, "reason", why)
	return nil
}

// refused reports whether the homeserver will say the same next time.
func refused(err error) bool {
	var e mautrix.HTTPError
	if !errors.As(err, &e) || e.Response == nil {
		return false
	}
	switch code := e.Response.StatusCode; code {
	case http.StatusUnauthorized, http.StatusRequestTimeout, http.StatusTooManyRequests:
		return false
	default:
		return code >= 400 && code < 500
	}
}

// leaveUnreadable leaves a room that is encrypted where the program cannot
// read it: it could not even say so there.
func (s *session) leaveUnreadable(ctx context.Context, room id.RoomID) error {
	if s.cipher != nil {
		return nil
	}
	sealed, err := s.store.isSealed(ctx, room)
	if err != nil || !sealed {
		return err
	}
	return s.leave(ctx, room, ErrNoEncryption.Error())
}
