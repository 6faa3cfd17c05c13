package bot

import (
	"context"
	"encoding/json"
	"errors"
	"fmt"
	"time"
	"unicode/utf8"

	"presshand/bot/book"
	"presshand/engine"
	"presshand/engine/unit"
	"presshand/grammar"
)

// maxMessage is how many characters a message may have.
const maxMessage = 4000

// Unknown is what a message is about that is none of the bot's business.
const Unknown grammar.Topic = "unknown"

// A Bot answers messages. It starts nothing and calls no network. Its methods
// may be called from several goroutines at once; the messages of one thread
// want answering in their order.
type Bot struct {
	Parse    func(text string, habit grammar.Habit) grammar.Phrase
	Engine   Engine
	Store    Store
	Settings func(room string) Settings // nil: inches, everyone may check but the poster
	Patience time.Duration              // how long a plan is looked for; 0: 3 s
}

// Engine is what the bot asks for figures.
type Engine struct {
	Compute  func(engine.Question) (engine.Answer, error)
	SolveFor func(engine.Question, unit.Field, unit.Facts) (engine.Answer, error)
}

// New returns a bot that reads with the grammar, computes with the engine and
// remembers in a store.
func New(s Store) *Bot {
	return &Bot{
		Parse:  grammar.Parse,
		Engine: Engine{Compute: engine.Compute, SolveFor: engine.SolveFor},
		Store:  s,
	}
}

// tries is how often a message is worked on again because someone else changed
// what it builds on.
const tries = 5

// Handle answers one message and records what it changes. What is wrong with a
// message is said in the reply; an error means that the store could not be
// used, and that the message may be tried again.
func (b *Bot) Handle(ctx context.Context, m Message) (Reply, error) {
	for try := 1; ; try++ {
		r, o, err := b.Consider(ctx, m)
		if err != nil || empty(o) {
			return r, err
		}
		// Who breaks off what is looked for gets the best so far, and it is kept.
		err = b.Store.Record(context.WithoutCancel(ctx), o, m.At)
		if err == nil {
			return r, nil
		}
		if try == tries || !errors.Is(err, book.ErrConflict) {
			return Reply{}, fmt.Errorf("answer is not recorded: %w", err)
		}
	}
}

func empty(o book.Outcome) bool {
	return len(o.Entries) == 0 && o.Thread == nil && o.Profile == nil
}

// Consider works a message out: the reply, and what is to be recorded with it.
// It reads the store and changes nothing.
func (b *Bot) Consider(ctx context.Context, m Message) (Reply, book.Outcome, error) {
	if n := utf8.RuneCountInString(m.Text); n > maxMessage {
		return tooLong(n).finished(), book.Outcome{}, nil
	}
	t := &turn{bot: b, m: m, settings: b.settings(m.Room), ledger: book.NewLedger(b.Store, m.Room)}
	if t.settings.Zone != nil {
		t.m.At = m.At.In(t.settings.Zone)
	}
	if err := t.recall(ctx); err != nil {
		return Reply{}, book.Outcome{}, err
	}
	looking, cancel := context.WithTimeout(ctx, b.patience())
	defer cancel()
	t.goOn = func() bool { return looking.Err() == nil }
	t.phrase = t.parse(withoutMarkup(m.Text))
	r, err := t.reply(ctx)
	if err != nil {
		return Reply{}, book.Outcome{}, err
	}
	t.outcome.Entries = t.ledger.Entries()
	return r.finished(), t.outcome, nil
}

// usualPatience is how long a plan is looked for. Nearly all take a few
// milliseconds.
const usualPatience = 3 * time.Second

func (b *Bot) patience() time.Duration {
	if b.Patience > 0 {
		return b.Patience
	}
	return usualPatience
}

func (b *Bot) settings(room string) Settings {
	if b.Settings == nil {
		return Settings{}
	}
	return b.Settings(room)
}

// A turn is the work on one message.
type turn struct {
	bot      *Bot
	m        Message
	settings Settings
	phrase   grammar.Phrase
	before   Thread
	kept     book.Thread // as the store has it
	profile  Profile
	stored   book.Profile // as the store has it
	ledger   *book.Ledger
	outcome  book.Outcome
	lacks    []unit.Field // what the message changes or builds on and the thread does not have
	looks    bool         // whether the message only looks at a load
	goOn     func() bool  // whether a plan may be looked for any longer
}

// recall reads what the thread and the room remember.
func (t *turn) recall(ctx context.Context) (err error) {
	if t.stored, err = t.bot.Store.Profile(ctx, t.m.Room); err != nil {
		return fmt.Errorf("room's profile is not to be had: %w", err)
	}
	if err := remembered(t.stored.State, &t.profile); err != nil {
		return fmt.Errorf("room's profile cannot be read: %w", err)
	}
	if t.m.Thread == "" {
		return nil
	}
	if t.kept, err = t.bot.Store.Thread(ctx, t.m.Room, t.m.Thread); err != nil {
		return fmt.Errorf("thread is not to be had: %w", err)
	}
	if err := remembered(t.kept.State, &t.before); err != nil {
		return fmt.Errorf("thread cannot be read: %w", err)
	}
	return nil
}

func remembered(state json.RawMessage, into any) error {
	if len(state) == 0 {
		return nil
	}
	return json.Unmarshal(state, into)
}

// keep has a thread remembered, where the message belongs to one.
func (t *turn) keep(thread Thread) error {
	if t.m.Thread == "" {
		return nil
	}
	thread.Looked = thread.Looked && t.looks
	state, err := json.Marshal(thread)
	if err != nil {
		return fmt.Errorf("thread cannot be kept: %w", err)
	}
	t.kept.State = state
	t.outcome.Thread = &t.kept
	return nil
}

// reply chooses what a message is: a word to the load book, a danger, a word
// explained, a profile, a question, or nothing of ours.
func (t *turn) reply(ctx context.Context) (Reply, error) {
	if r, is, err := t.severalResults(ctx); err != nil || is {
		return r, err
	}
	if r, is, err := t.toChecker(ctx); err != nil || is {
		return r, err
	}
	if r, is, err := t.correctsNamed(ctx); err != nil || is {
		return r, err
	}
	corrects, err := t.corrects(ctx)
	if err != nil {
		return Reply{}, fmt.Errorf("load book: %w", err)
	}
	if corrects {
		t.phrase.Command = &grammar.Command{Verb: grammar.Correct, Note: t.m.Text}
	}
	if tells, err := t.tellsResult(ctx); err != nil || tells {
		return t.judged(ctx, err)
	}
	if r, is, err := t.talksOfLoad(ctx); err != nil || is {
		return r, err
	}
	if _, plain := t.plainly(); plain {
		return t.explains()
	}
	switch {
	case t.phrase.Command != nil:
		return t.command(ctx)
	case t.asks(grammar.Profile):
		return t.setup()
	case t.asks(grammar.Safety):
		return t.danger()
	}
	if t.asksFigures() || t.amends() {
		return t.figures()
	}
	switch {
	case t.asks(grammar.Why) && t.before.empty() && t.before.Peril != "":
		t.phrase.Asks = []grammar.Ask{{About: grammar.Safety, Peril: t.before.Peril}}
		return t.danger()
	case t.asks(grammar.Why):
		return t.why(), nil
	case t.asks(grammar.Words):
		return t.explains()
	}
	if len(t.phrase.Perils) > 0 && (!t.before.empty() || t.before.Peril != "") { // of what the thread is about
		for _, p := range t.phrase.Perils {
			t.phrase.Asks = append(t.phrase.Asks, grammar.Ask{About: grammar.Safety, Peril: p})
		}
		return t.danger()
	}
	return t.unknown(), nil
}

func (t *turn) asks(about grammar.Topic) bool {
	for _, a := range t.phrase.Asks {
		if a.About == about {
			return true
		}
	}
	return false
}

// asksFigures reports whether the message asks something that is computed.
func (t *turn) asksFigures() bool {
	for _, a := range t.phrase.Asks {
		if computed(a.About) {
			return true
		}
	}
	return false
}

// amends reports whether the message states, changes or doubts anything about
// a load.
func (t *turn) amends() bool {
	p := &t.phrase
	if len(t.lacks)+len(p.Facts)+len(p.Choices)+len(p.Clashes)+len(p.Refused) > 0 {
		return true
	}
	return !t.before.empty() && (len(p.Drops) > 0 || len(p.In) > 0 || p.Covered || p.Uncovered)
}

// computed reports whether the engine answers questions about t.
func computed(t grammar.Topic) bool {
	switch t {
	case grammar.Face, grammar.Side, grammar.Flatten, grammar.Stack, grammar.Strips,
		grammar.Glue, grammar.Pump, grammar.Move, grammar.Load, grammar.Schedule:
		return true
	}
	return false
}
