package slack

import (
	"context"
	"fmt"
	"strconv"
	"strings"
	"sync"
	"time"

	"github.com/slack-go/slack"

	"presshand/bot/book"
)

// inner is what is read of an event; Slack's own types change with its client,
// and refuse a message for one part that they do not know.
type inner struct {
	Type     string `json:"type"`
	SubType  string `json:"subtype"`
	Channel  string `json:"channel"`
	Kind     string `json:"channel_type"`
	User     string `json:"user"`
	BotID    string `json:"bot_id"`
	Text     string `json:"text"`
	TS       string `json:"ts"`
	Thread   string `json:"thread_ts"`
	Parent   string `json:"parent_user_id"`
	Inviter  string `json:"inviter"`
	EventTS  string `json:"event_ts"`
	Reaction string `json:"reaction"`
	ItemUser string `json:"item_user"`
	Item     struct {
		Type    string `json:"type"`
		Channel string `json:"channel"`
		TS      string `json:"ts"`
	} `json:"item"`
	Edited *struct {
		TS string `json:"ts"`
	} `json:"edited"`
	Message  *inner `json:"message"`
	Previous *inner `json:"previous_message"`
}

// innerOf reads a message of a history.
func innerOf(room string, m slack.Message) inner {
	in := inner{
		Type: "message", SubType: m.SubType, Channel: room, User: m.User, BotID: m.BotID, Text: m.Text,
		TS: m.Timestamp, Thread: m.ThreadTimestamp, Parent: m.ParentUserId,
	}
	if m.Edited != nil {
		in.Edited = &struct {
			TS string `json:"ts"`
		}{m.Edited.Timestamp}
	}
	return in
}

func (e inner) room() string {
	if e.Channel == "" {
		return e.Item.Channel
	}
	return e.Channel
}

// root is the message in whose thread a reply belongs.
func (e inner) root() string {
	if e.Thread != "" {
		return e.Thread
	}
	return e.TS
}

// event brings what is said to the bot to the inbox.
func (a *Slack) event(ctx context.Context, e inner) error {
	switch {
	case e.Type == "member_joined_channel":
		a.invited(ctx, e)
		return a.arrived(ctx, e)
	case e.Type == "message" && e.SubType == "message_changed":
		return a.edited(ctx, e)
	case e.Type == "message" || e.Type == "app_mention":
		_, err := a.message(ctx, e)
		return err
	}
	return nil
}

// invited declines an invitation to a channel that is not served.
func (a *Slack) invited(ctx context.Context, e inner) {
	key := "slack:joined:" + e.Channel + ":" + e.EventTS
	if e.User != a.own.Load().user || a.Allowed(e.Channel) || a.kept.has(key) {
		return
	}
	a.kept.add(key)
	a.Log.Warn("slack: invited to a channel that is not served", "channel", e.Channel)
	if e.Inviter == "" {
		return
	}
	if _, err := a.api.PostEphemeralContext(ctx, e.Channel, e.Inviter, slack.MsgOptionText(notServed, false), slack.MsgOptionDisableMarkdown()); err != nil {
		a.Log.Warn("slack: note not shown", "error", err)
	}
}

// message keeps a message if it is said to the bot; fresh is false where it is
// not, or is known.
func (a *Slack) message(ctx context.Context, e inner) (fresh bool, err error) {
	if a.kept.has(keyOf(e)) {
		return false, nil
	}
	to, err := a.addressed(ctx, e)
	if err != nil || !to {
		return false, err
	}
	ev, err := a.eventOf(ctx, e)
	if err != nil {
		return false, err
	}
	if fresh, err = a.inbox.Receive(ctx, ev); err != nil {
		return false, err
	}
	a.kept.add(ev.Key)
	a.threads.add(e.Channel + ":" + e.root())
	if fresh {
		a.seen.add(e.Channel, e.TS)
	}
	return fresh, nil
}

// edited keeps the new wording of a message that is, or was, said to the bot.
func (a *Slack) edited(ctx context.Context, e inner) error {
	m := e.Message
	if m == nil || m.Edited == nil || e.Previous != nil && e.Previous.Text == m.Text {
		return nil // a preview was added, or a thread grew
	}
	m.Channel, m.Kind = e.Channel, e.Kind
	to, err := a.addressed(ctx, *m)
	if err == nil && !to && e.Previous != nil {
		was := *m
		was.Text = e.Previous.Text
		to, err = a.addressed(ctx, was)
	}
	if err != nil || !to {
		return err
	}
	return a.reworded(ctx, *m)
}

func (a *Slack) reworded(ctx context.Context, m inner) error {
	ev, err := a.eventOf(ctx, m)
	if err != nil {
		return err
	}
	ev.Key += ":" + m.Edited.TS
	ev.Edits = m.TS
	ev.At = timeOf(m.Edited.TS)
	_, err = a.inbox.Receive(ctx, ev)
	return err
}

// keyOf is a message's key. A mention comes twice, as itself and as a message,
// and each may come again, as an event of the same id or another: all are one.
func keyOf(e inner) string { return "slack:" + e.Channel + ":" + e.TS }

// eventOf is a message as the inbox keeps it.
func (a *Slack) eventOf(ctx context.Context, e inner) (book.Event, error) {
	thread, err := a.threadName(ctx, e)
	if err != nil {
		return book.Event{}, err
	}
	return book.Event{
		Key: keyOf(e), Place: book.Place{Service: Service, Room: e.Channel, Thread: thread}, Message: e.TS,
		From: a.person(ctx, e.User), Text: a.words(e.Channel, e.Text), At: timeOf(e.TS),
	}, nil
}

// threadName is under what name the store has a message's thread. Below the
// answer to a slash command, which has no message, it is the command's.
func (a *Slack) threadName(ctx context.Context, e inner) (string, error) {
	if e.Thread == "" || e.Thread == e.TS {
		return e.TS, nil
	}
	alias, err := a.store.Mark(ctx, rootMark(e.Channel, e.Thread))
	if err != nil || alias != "" {
		return alias, err
	}
	return e.Thread, nil
}

// answerable are the kinds of message that a person says something with.
var answerable = map[string]bool{"": true, "file_share": true, "thread_broadcast": true}

// addressed reports whether a message is said to the bot.
func (a *Slack) addressed(ctx context.Context, e inner) (bool, error) {
	own := a.own.Load()
	if e.BotID != "" || e.User == "" || e.User == own.user || e.TS == "" || !answerable[e.SubType] || !a.Allowed(e.Channel) {
		return false, nil
	}
	text := strings.TrimSpace(e.Text)
	switch {
	case e.Kind == "im" || strings.HasPrefix(e.Channel, "D"):
		return true, nil
	case strings.Contains(text, own.mention+">") || strings.Contains(text, own.mention+"|"):
		return true, nil
	case a.prefixOf(e.Channel, text) > 0:
		return true, nil
	case e.Thread == "" || e.Thread == e.TS || strings.HasPrefix(text, "<@"):
		return false, nil // the last one talks to somebody else
	}
	return a.joined(ctx, e)
}

// joined reports whether the bot takes part in the thread of a message.
func (a *Slack) joined(ctx context.Context, e inner) (bool, error) {
	if a.threads.has(e.Channel + ":" + e.Thread) {
		return true, nil
	}
	name, err := a.threadName(ctx, e)
	if err != nil {
		return false, err
	}
	t, err := a.store.Thread(ctx, e.Channel, name)
	if err != nil || t.Version == 0 {
		return false, err
	}
	a.threads.add(e.Channel + ":" + e.Thread)
	return true, nil
}

// timeOf reads a timestamp: seconds since 1970 with six decimals.
func timeOf(ts string) time.Time {
	s, frac, _ := strings.Cut(ts, ".")
	sec, err := strconv.ParseInt(s, 10, 64)
	if err != nil {
		return time.Time{}
	}
	micros, _ := strconv.ParseInt((frac + "000000")[:6], 10, 64)
	return time.Unix(sec, micros*1000).UTC()
}

// tsOf is the timestamp of a time.
func tsOf(t time.Time) string { return fmt.Sprintf("%d.%06d", t.Unix(), t.Nanosecond()/1000) }

// latest remembers the latest of some keys: threads that the bot was addressed
// in, before the store knows them, and events that the store has.
type latest struct {
	mu   sync.Mutex
	in   map[string]bool
	ring []string
	next int
}

const maxLatest = 10000

func (l *latest) init() { l.in, l.ring = map[string]bool{}, make([]string, maxLatest) }

func (l *latest) add(key string) {
	l.mu.Lock()
	defer l.mu.Unlock()
	if l.in[key] {
		return
	}
	delete(l.in, l.ring[l.next])
	l.ring[l.next], l.in[key] = key, true
	l.next = (l.next + 1) % maxLatest
}

func (l *latest) has(key string) bool {
	l.mu.Lock()
	defer l.mu.Unlock()
	return l.in[key]
}
