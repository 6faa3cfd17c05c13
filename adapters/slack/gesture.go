package slack

import (
	"context"
	"encoding/json"
	"fmt"
	"strconv"
	"strings"
	"time"

	"github.com/slack-go/slack"

	"presshand/bot"
	"presshand/bot/book"
)

// deeds are what buttons and reactions say. None of them checks a load.
var deeds = map[string]string{"hold": "hold %d", "clear": "clear %d", "in": "%d in", "out": "%d out"}

// signs are the reactions that say something about a load, by Slack's names.
var signs = map[string]string{
	"raised_hand": "hold", "hand": "hold", "octagonal_sign": "hold", "double_vertical_bar": "hold",
	"arrow_forward": "clear", "vertical_traffic_light": "clear",
	"inbox_tray": "in", "outbox_tray": "out",
}

// How long a message may take to be known as a card after Slack showed it.
const (
	freshCard = 10 * time.Second
	cardAfter = 250 * time.Millisecond
)

// reaction keeps a reaction on a card as the words that it stands for. It is
// early where the message is not known as a card but may still be one: people
// see a message before it is known to be sent.
func (a *Slack) reaction(ctx context.Context, e inner) (early bool, err error) {
	own := a.own.Load()
	sign, _, _ := strings.Cut(e.Reaction, "::") // the tone of the skin follows
	deed := signs[sign]
	if deed == "" || e.Item.Type != "message" || e.ItemUser != own.user || e.User == own.user || !a.Allowed(e.Item.Channel) {
		return false, nil
	}
	c, err := a.cardAt(ctx, e.Item.Channel, e.Item.TS)
	if err != nil || c.Load == 0 {
		return err == nil && a.Clock().Sub(timeOf(e.Item.TS)) <= freshCard, err
	}
	key := fmt.Sprintf("slack:%s:%s:%s:%s:%s", e.Item.Channel, e.Item.TS, e.User, e.Reaction, e.EventTS)
	return false, a.gesture(ctx, key, e.Item.Channel, e.EventTS, e.User, deed, c)
}

// reactionLater keeps an early reaction once its message is known. It was
// acknowledged before: the wait would be too long for that.
func (a *Slack) reactionLater(ctx context.Context, early bool, e inner) {
	var err error
	for range 4 {
		if !early || err != nil {
			break
		}
		rest(ctx, cardAfter)
		early, err = a.reaction(ctx, e)
	}
	if err != nil {
		a.Log.Warn("slack: reaction not kept", "error", err)
	}
}

// gesture keeps what a button or a reaction says. It counts only for the
// revision that it was made on.
func (a *Slack) gesture(ctx context.Context, key, room, ts, user, deed string, c card) error {
	extra, err := json.Marshal(bot.Gesture{Load: c.Load, Revision: c.Revision, User: user})
	if err != nil {
		return err
	}
	at := timeOf(ts)
	if at.IsZero() {
		at = a.Clock()
	}
	_, err = a.inbox.Receive(ctx, book.Event{
		Key: key, Place: book.Place{Service: Service, Room: room, Thread: c.Thread}, Message: key,
		From: a.person(ctx, user), Text: fmt.Sprintf(deeds[deed], c.Load), At: at, Extra: extra,
	})
	return err
}

// bareInteraction reads a button or a form without the blocks that surround it,
// of which the library may not know one.
func bareInteraction(payload json.RawMessage) (slack.InteractionCallback, error) {
	var c slack.InteractionCallback
	var whole map[string]any
	if err := json.Unmarshal(payload, &whole); err != nil {
		return c, err
	}
	for _, part := range []string{"message", "view"} {
		if m, ok := whole[part].(map[string]any); ok {
			delete(m, "blocks")
			delete(m, "attachments")
		}
	}
	bare, err := json.Marshal(whole)
	if err != nil {
		return c, err
	}
	err = json.Unmarshal(bare, &c)
	return c, err
}

// interaction takes a button or a form.
func (s *stream) interaction(envelope string, c slack.InteractionCallback) {
	j := job{envelope: envelope}
	room := c.Channel.ID
	switch c.Type {
	case slack.InteractionTypeBlockActions:
		if len(c.ActionCallback.BlockActions) == 0 {
			break
		}
		action := c.ActionCallback.BlockActions[0]
		if action.ActionID == "check" {
			j.then = func(ctx context.Context) { s.openForm(ctx, c, action.Value) }
			break
		}
		j.do = func(ctx context.Context) (any, error) { return nil, s.pressed(ctx, c, action) }
	case slack.InteractionTypeViewSubmission:
		j.do = func(ctx context.Context) (any, error) { return s.submitted(ctx, c) }
		room = c.View.ID
	}
	s.enqueue(room, j)
}

// pressed keeps what a button says.
func (a *Slack) pressed(ctx context.Context, c slack.InteractionCallback, action *slack.BlockAction) error {
	if deeds[action.ActionID] == "" || !a.Allowed(c.Channel.ID) {
		return nil
	}
	on, err := a.cardOf(ctx, c, action.Value)
	if err != nil || on.Load == 0 {
		return err
	}
	key := fmt.Sprintf("slack:%s:%s:%s:%s:%s", c.Channel.ID, c.Container.MessageTs, c.User.ID, action.ActionID, action.ActionTs)
	return a.gesture(ctx, key, c.Channel.ID, action.ActionTs, c.User.ID, action.ActionID, on)
}

// cardOf is the load that a button belongs to: its value is "14:2", load and
// revision.
func (a *Slack) cardOf(ctx context.Context, c slack.InteractionCallback, value string) (card, error) {
	load, revision, _ := strings.Cut(value, ":")
	n, err1 := strconv.Atoi(load)
	rev, err2 := strconv.Atoi(revision)
	if err1 != nil || err2 != nil {
		return card{}, nil // not a button of ours
	}
	m := inner{Channel: c.Channel.ID, TS: c.Container.MessageTs, Thread: c.Message.ThreadTimestamp}
	if m.Thread == "" {
		m.Thread = c.Container.ThreadTs
	}
	if m.Thread == "" { // the card itself begins a thread: the answer to a slash command
		m.Thread, m.TS = m.TS, ""
	}
	thread, err := a.threadName(ctx, m)
	return card{Thread: thread, Load: n, Revision: rev}, err
}
