package matrix

import (
	"context"
	"fmt"
	"time"

	"presshand/bot"
	"presshand/bot/book"
)

// ofTwo is how many are in a room where everything is said to the bot.
const ofTwo = 2

// arrived has the bot say in a room of several that it came into what it is for.
func (s *session) arrived(ctx context.Context, v invitation) error {
	if !s.cfg.Welcome {
		return nil
	}
	members, err := s.client.JoinedMembers(ctx, v.room)
	if err != nil {
		return fmt.Errorf("members of the room are not to be had: %w", err)
	}
	if len(members.Joined) <= ofTwo {
		return nil
	}
	_, err = s.inbox.Receive(ctx, book.Event{
		Key:   fmt.Sprintf("matrix:%s:arrived:%d", v.room, v.since.UnixMilli()),
		Place: book.Place{Service: Service, Room: string(v.room)}, From: book.Person{ID: s.cfg.User}, At: time.Now(), Extra: bot.Arrived(),
	})
	return err
}
