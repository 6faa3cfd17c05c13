package slack

import (
	"context"

	"presshand/bot"
	"presshand/bot/book"
)

// arrived has the bot say in a served channel that it came into what it is for.
func (a *Slack) arrived(ctx context.Context, e inner) error {
	if e.User != a.own.Load().user || !a.Allowed(e.Channel) {
		return nil
	}
	_, err := a.inbox.Receive(ctx, book.Event{
		Key: "slack:" + e.Channel + ":arrived:" + e.EventTS, Place: book.Place{Service: Service, Room: e.Channel},
		From: book.Person{ID: a.own.Load().user}, At: a.Clock(), Extra: bot.Arrived(),
	})
	return err
}
