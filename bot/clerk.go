package bot

import (
	"context"
	"errors"
	"fmt"
	"log/slog"
	"time"

	"presshand/bot/book"
	"presshand/bot/picture"
	"presshand/engine"
	"presshand/grammar"
)

// A Clerk answers the events of an inbox with a bot. It is what a desk asks,
// and changes nothing itself.
type Clerk struct {
	Bot      *Bot
	Clock    Clock                      // for reminders; nil is the machine's
	Draw     func(room string) bool     // whether a room that says nothing of it wants pictures; nil: all do
	Prefixes func(room string) []string // words that may begin a message to the bot, beside its name; nil: none
	Most     int                        // how many messages of one person are answered within a minute, to name it
	Log      *slog.Logger               // nil: none is kept
}

// Answer works an event out. An edited message is answered anew, in the place
// of the earlier reply.
func (c Clerk) Answer(ctx context.Context, e book.Event) (book.Outcome, error) {
	if e.Turnout == book.Silenced {
		return book.Outcome{}, nil
	}
	if arrived(e) {
		return c.greet(ctx, e)
	}
	g, err := gesture(e)
	if err != nil {
		return book.Outcome{}, err
	}
	was, err := c.earlier(ctx, e)
	if err != nil {
		return book.Outcome{}, err
	}
	r, changed, err := c.outdated(ctx, e, g)
	if err != nil {
		return book.Outcome{}, err
	}
	switch {
	case changed:
		return c.outcome(ctx, e, r, r.sheetFor(g), book.Outcome{}, was)
	case was.sheet.Acted:
		r := bookStands(was)
		s := r.sheet()
		s.Acted = true
		was.picture = "" // it stands, as its words do
		return c.outcome(ctx, e, r, s, book.Outcome{}, was)
	}
	return c.consider(ctx, e, g, was)
}

// consider has the bot work a message out, in its thread as it was before the
// message was first said.
func (c Clerk) consider(ctx context.Context, e book.Event, g Gesture, was earlier) (book.Outcome, error) {
	b, thread := *c.Bot, &rewound{Store: c.Bot.Store, before: was.sheet.Before}
	b.Store = thread
	r, o := tooMany(c.Most), book.Outcome{}
	if e.Turnout != book.Slowed {
		var err error
		if r, o, err = b.Consider(ctx, messageOf(e)); err != nil {
			return book.Outcome{}, err
		}
	}
	if len(r.Lines) == 0 { // nothing to say
		return o, nil
	}
	s := r.sheetFor(g)
	if s.Acted = len(o.Entries) > 0; s.Acted {
		s.Private = ""
	}
	if o.Thread == nil && e.Place.Thread != "" {
		if err := c.joined(ctx, e, &o); err != nil {
			return book.Outcome{}, err
		}
	} else if o.Thread != nil {
		s.Before = &thread.seen
	}
	return c.outcome(ctx, e, r, s, o, was)
}

// joined keeps that the bot takes part in a thread, where nothing else is to
// be remembered of it.
func (c Clerk) joined(ctx context.Context, e book.Event, o *book.Outcome) error {
	t, err := c.Bot.Store.Thread(ctx, e.Place.Room, e.Place.Thread)
	if err != nil || t.Version > 0 {
		return err
	}
	t.State = []byte("{}")
	o.Thread = &t
	return nil
}

func messageOf(e book.Event) Message {
	return Message{
		Room: e.Place.Room, Thread: e.Place.Thread, ID: e.Key, From: e.From.ID, Name: e.From.Name,
		Via: e.Place.Service, Text: e.Text, At: e.At,
	}
}

// outdated answers a gesture that was bound to an earlier revision of a load.
func (c Clerk) outdated(ctx context.Context, e book.Event, g Gesture) (Reply, bool, error) {
	if g.Load == 0 || g.Revision == 0 || e.Turnout == book.Slowed {
		return Reply{}, false, nil
	}
	l, err := c.Bot.Store.Load(ctx, e.Place.Room, g.Load)
	if errors.Is(err, book.ErrNotFound) {
		return Reply{}, false, nil
	}
	if err != nil || l.Revision == g.Revision {
		return Reply{}, false, err
	}
	r := Reply{About: grammar.Book, Verdict: engine.Ask}
	r.loads(l)
	r.say(Headline, fmt.Sprintf("Load %d changed since: it is at revision %d now, and that was for revision %d. Nothing is changed.", l.Number, l.Revision, g.Revision))
	r.say(Question, fmt.Sprintf("“load %d” shows how it stands.", l.Number))
	return r.finished(), true, nil
}

// An earlier is the reply that an edited message got before.
type earlier struct {
	key, picture string // of the outbox; "" where there is none
	text         string
	sheet        Sheet
}

func (c Clerk) earlier(ctx context.Context, e book.Event) (earlier, error) {
	if e.Edits == "" {
		return earlier{}, nil
	}
	o, err := c.Bot.Store.Reply(ctx, e.Place, e.Edits)
	if errors.Is(err, book.ErrNotFound) {
		return earlier{}, nil
	}
	if err != nil {
		return earlier{}, err
	}
	was := earlier{key: o.Key, text: o.Text}
	if was.sheet, err = SheetOf(o); err != nil {
		return earlier{}, err
	}
	drawn, err := c.Bot.Store.Reply(ctx, e.Place, pictureOf(e.Edits))
	if err != nil && !errors.Is(err, book.ErrNotFound) {
		return earlier{}, err
	}
	if shown, err := SheetOf(drawn); err != nil || shown.Withdraw {
		return was, err
	}
	was.picture = drawn.Key
	return was, nil
}

// bookStands answers the edit of a message that wrote in the load book: the
// book keeps what was said.
func bookStands(was earlier) Reply {
	r := Reply{About: grammar.Book, Verdict: was.sheet.Verdict, Lines: was.sheet.Lines}
	if s := was.sheet; s.Load != 0 {
		r.Loads, r.States, r.Revision = []int{s.Load}, []string{string(s.State)}, s.Revision
	}
	if n := len(r.Lines); n == 0 || r.Lines[n-1].Text != editedSays {
		r.say(Notice, editedSays)
	}
	return r.finished()
}

const editedSays = "You changed your message since. The book keeps what was said; “undo” takes it back, or say it anew."

// outcome adds a reply to what it changes.
func (c Clerk) outcome(ctx context.Context, e book.Event, r Reply, s Sheet, o book.Outcome, was earlier) (book.Outcome, error) {
	body, err := s.body()
	if err != nil {
		return book.Outcome{}, err
	}
	message := e.Message
	if e.Edits != "" {
		message = e.Edits
	}
	o.Replies = []book.Outgoing{{Message: message, Replaces: was.key, Text: r.Text, Body: body, At: e.At}}
	if s.Private == "" {
		err = c.illustrate(ctx, &o, e, r, message, was.picture)
	}
	return o, err
}

// illustrate adds a picture where the room wants it and the reply has one. One
// of an earlier wording that has no successor is taken away.
func (c Clerk) illustrate(ctx context.Context, o *book.Outcome, e book.Event, r Reply, message, replaces string) error {
	title, p, drawn, err := c.draw(ctx, e.Place.Room, r)
	if err != nil {
		return err
	}
	if !drawn && replaces == "" {
		return nil
	}
	body, err := Sheet{Picture: p, Withdraw: !drawn}.body()
	if err != nil {
		return err
	}
	o.Replies = append(o.Replies, book.Outgoing{
		Message: pictureOf(message), Replaces: replaces, Beside: true, Text: title, Body: body, At: e.At,
	})
	return nil
}

// draw makes the picture of a reply, where the room wants it and the reply has
// one. A reply whose picture cannot be made goes without: the words are the
// answer.
func (c Clerk) draw(ctx context.Context, room string, r Reply) (title string, p *Picture, drawn bool, err error) {
	if len(r.Drawn) == 0 {
		return "", nil, false, nil
	}
	wanted, err := c.Bot.pictures(ctx, room, c.Draw == nil || c.Draw(room))
	if err != nil || !wanted {
		return "", nil, false, err
	}
	drawing, ok := r.Draw()
	if !ok {
		return "", nil, false, nil
	}
	p, drawn = c.picture(room, drawing)
	return drawing.Title, p, drawn, nil
}

func (c Clerk) picture(room string, d *picture.Drawing) (*Picture, bool) {
	png, err := d.Screen()
	if err != nil {
		if c.Log != nil {
			c.Log.Error("bot: picture not made, the words go without", "room", room, "error", err)
		}
		return nil, false
	}
	return &Picture{Alt: d.Alt, PNG: png}, true
}

// pictureOf is under which message's name the picture of its reply is kept.
func pictureOf(message string) string { return message + "/picture" }

// Remind words a reminder, in the thread where its load was posted.
func (c Clerk) Remind(ctx context.Context, x book.Reminder) (book.Outcome, error) {
	l, err := c.Bot.Store.Load(ctx, x.Room, x.Load)
	if err != nil {
		return book.Outcome{}, err
	}
	now := c.now()
	r, err := c.Bot.Remind(ctx, x, now)
	if err != nil {
		return book.Outcome{}, err
	}
	body, err := r.sheet().body()
	if err != nil {
		return book.Outcome{}, err
	}
	return book.Outcome{Replies: []book.Outgoing{{Place: l.Place, Message: x.Key, Text: r.Text, Body: body, At: now}}}, nil
}

func (c Clerk) now() time.Time {
	if c.Clock == nil {
		return time.Now()
	}
	return c.Clock.Now()
}

// Apologise answers an event that could not be worked on.
func (c Clerk) Apologise(e book.Event, err error) book.Outcome {
	r := Sorry(err)
	o := book.Outgoing{Text: r.Text, At: e.At}
	if g, err := gesture(e); err == nil && g.User != "" {
		s := Sheet{Lines: r.Lines, Private: g.User}
		if o.Body, err = s.body(); err != nil {
			o.Body = nil // the words are the apology
		}
	}
	return book.Outcome{Replies: []book.Outgoing{o}}
}

// A rewound store has one thread as it was before the message that is
// considered again, unless others said something in it since.
type rewound struct {
	Store
	before *book.Thread
	seen   book.Thread // as it was read last
}

func (s *rewound) Thread(ctx context.Context, room, name string) (book.Thread, error) {
	now, err := s.Store.Thread(ctx, room, name)
	if err == nil && s.before != nil && now.Version == s.before.Version+1 {
		now.State = s.before.State
	}
	s.seen = now
	return now, err
}
