package bottest

import (
	"cmp"
	"context"
	"fmt"
	"slices"
	"strings"
	"time"

	"presshand/bot"
	"presshand/bot/book"
)

// Play plays a scene with a bot of its own and returns what went otherwise
// than it should, one line each.
func Play(ctx context.Context, s Scene) (wrong []string, err error) {
	err = Perform(ctx, s, func(turn Turn, r bot.Reply) error {
		for _, w := range missing(r, turn.Want) {
			wrong = append(wrong, fmt.Sprintf("%s %s: %q\n\t%s\n%s",
				turn.Message.At.Format("15:04"), turn.Message.From, turn.Message.Text, w, r.Text))
		}
		return nil
	})
	return wrong, err
}

// Perform plays a scene with a bot of its own and calls f with each turn and
// what came of it.
func Perform(ctx context.Context, s Scene, f func(Turn, bot.Reply) error) error {
	p := player{scene: s, store: bot.NewMemory(), reminded: map[string]bool{}}
	p.start()
	for _, turn := range s.Turns {
		if turn.Restart {
			p.start()
		}
		r, err := p.reply(ctx, turn)
		if err != nil {
			return fmt.Errorf("%s: %w", turn.Message.Text, err)
		}
		if err := f(turn, r); err != nil {
			return err
		}
	}
	return nil
}

// A player plays one scene.
type player struct {
	scene    Scene
	store    bot.Store
	bot      *bot.Bot
	reminded map[string]bool // as a store keeps it
}

// start makes a bot that knows nothing but what the store kept.
func (p *player) start() {
	p.bot = bot.New(p.store)
	p.bot.Settings = func(string) bot.Settings { return p.scene.Settings }
}

func (p *player) reply(ctx context.Context, turn Turn) (bot.Reply, error) {
	if turn.Clock {
		return p.remind(ctx, turn.Message.At)
	}
	return p.bot.Handle(ctx, turn.Message)
}

// remind says what is due at a time and was not said before.
func (p *player) remind(ctx context.Context, at time.Time) (bot.Reply, error) {
	loads, err := p.store.Loads(ctx, room, book.Query{Limit: book.MostLoads})
	if err != nil {
		return bot.Reply{}, err
	}
	var due []book.Reminder
	for _, l := range loads {
		for _, x := range l.Reminders() {
			if !x.Due.After(at) && !p.reminded[x.Key] {
				due = append(due, x)
			}
		}
	}
	slices.SortStableFunc(due, func(a, b book.Reminder) int { return cmp.Compare(a.Due.Unix(), b.Due.Unix()) })
	var texts []string
	for _, x := range due {
		r, err := p.bot.Remind(ctx, x, at)
		if err != nil {
			return bot.Reply{}, err
		}
		p.reminded[x.Key] = true
		texts = append(texts, r.Text)
	}
	if len(texts) == 0 {
		texts = []string{"silence"}
	}
	return bot.Reply{Text: strings.Join(texts, "\n")}, nil
}
