package bot

import (
	"context"
	"fmt"
	"time"

	"presshand/bot/book"
	"presshand/grammar"
)

// Remind words a reminder that is due, at the time of the room's clock.
func (b *Bot) Remind(ctx context.Context, x book.Reminder, now time.Time) (Reply, error) {
	l, err := b.Store.Load(ctx, x.Room, x.Load)
	if err != nil {
		return Reply{}, fmt.Errorf("load %d is not to be had: %w", x.Load, err)
	}
	if zone := b.settings(x.Room).Zone; zone != nil {
		now = now.In(zone)
		l.InAt = l.InAt.In(zone)
	}
	r := Reply{About: grammar.Book}
	r.loads(l)
	switch x.Kind {
	case book.TimeUp:
		r.say(Headline, fmt.Sprintf("%s: the press time is up. It went in at %s, %s ago.", entitled(l), clockOf(l.InAt), duration(now.Sub(l.InAt).Seconds())))
		r.say(Question, fmt.Sprintf("When it comes out: “%d out”.", l.Number))
	case book.AskResult:
		r.say(Headline, fmt.Sprintf("%s: how did it come out?", entitled(l)))
		r.say(Question, fmt.Sprintf("Like “%d result: good” or “%d result: joint 3 open”.", l.Number, l.Number))
	}
	return r.finished(), nil
}
