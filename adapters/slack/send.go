package slack

import (
	"context"
	"errors"
	"fmt"
	"strings"
	"time"
	"unicode/utf8"

	"github.com/slack-go/slack"

	"presshand/bot"
	"presshand/bot/book"
	"presshand/bot/desk"
)

// eventType marks the metadata of the bot's messages.
const eventType = "presshand_reply"

// Send posts a reply in its thread and returns its timestamp. A channel takes
// one message at a time; until then the outbox has to wait.
func (a *Slack) Send(ctx context.Context, o book.Outgoing) (ref string, err error) {
	s, err := bot.SheetOf(o)
	if err != nil {
		return "", fmt.Errorf("%w: %w", desk.ErrRefused, err)
	}
	if a.own.Load() == nil {
		return "", a.later(o, time.Second, errors.New("slack was not reached yet"))
	}
	if wait := a.pace.take(o.Place.Room); wait > 0 {
		return "", a.later(o, wait, errors.New("channel takes one message at a time"))
	}
	thread, err := a.threadTS(ctx, o.Place)
	if err != nil {
		return "", err
	}
	switch {
	case s.Withdraw:
		ref, err = o.ReplacesRef, a.removePicture(ctx, o.ReplacesRef)
	case s.Picture != nil:
		ref, err = a.sendPicture(ctx, o, s, thread)
	case s.Private != "":
		ref, err = a.dressedOrPlain(s, func(s bot.Sheet) (string, error) {
			return a.api.PostEphemeralContext(ctx, o.Place.Room, s.Private, a.options(o, s, fallback(o.Text), thread)...)
		})
	default:
		ref, err = a.dressedOrPlain(s, func(s bot.Sheet) (string, error) { return a.sendText(ctx, o, s, thread) })
	}
	if err != nil && final[codeOf(err)] {
		if ref, err = a.answerAside(ctx, o, s, err); err == nil {
			return ref, nil
		}
	}
	if err != nil {
		return "", a.failed(o, err)
	}
	a.pace.done(o.Place.Room)
	if err := a.note(ctx, o, s, thread, ref); err != nil {
		return "", err
	}
	a.pace.settled(o.Key)
	return ref, nil
}

// later puts a reply off that was surely not sent.
func (a *Slack) later(o book.Outgoing, wait time.Duration, why error) error {
	a.pace.putOff(o.Key, o.Tries)
	return &desk.WaitError{After: wait, Err: why}
}

// threadTS is the root below which a reply goes; "" for the first answer to a
// slash command, which becomes the root.
func (a *Slack) threadTS(ctx context.Context, p book.Place) (string, error) {
	if !strings.HasPrefix(p.Thread, slashPrefix) {
		return p.Thread, nil
	}
	return a.store.Mark(ctx, slashMark(p.Room, p.Thread))
}

// dressedOrPlain sends a reply once more without blocks where Slack refuses
// them.
func (a *Slack) dressedOrPlain(s bot.Sheet, send func(bot.Sheet) (string, error)) (string, error) {
	ref, err := send(s)
	if code := codeOf(err); !strings.HasPrefix(code, "invalid_blocks") && code != "msg_blocks_too_long" {
		return ref, err
	}
	a.Log.Error("slack: blocks refused, sent plain", "error", err)
	s.Lines, s.Load = nil, 0
	return send(s)
}

// sendText posts a reply, or puts it in the place of an earlier one.
func (a *Slack) sendText(ctx context.Context, o book.Outgoing, s bot.Sheet, thread string) (string, error) {
	if o.ReplacesRef != "" {
		if ts, err := a.replace(ctx, o, s); err != nil || ts != "" {
			return ts, err
		}
	}
	if a.pace.doubtful(o.Key, o.Tries) {
		ts, err := a.sentBefore(ctx, o, thread)
		if err != nil || ts != "" {
			return ts, err
		}
	}
	_, ts, err := a.api.PostMessageContext(ctx, o.Place.Room, a.options(o, s, fallback(o.Text), thread)...)
	return ts, err
}

// irreplaceable are the errors of a message that cannot be changed any more.
var irreplaceable = map[string]bool{"message_not_found": true, "cant_update_message": true, "edit_window_closed": true}

// replace puts a reply in the place of an earlier one. Its words may be cut
// where blocks show them whole. Where it cannot be put there it returns no ts,
// and the reply is to be posted anew.
func (a *Slack) replace(ctx context.Context, o book.Outgoing, s bot.Sheet) (string, error) {
	words := fallback(o.Text)
	if utf8.RuneCountInString(words) <= maxUpdate || len(dressed(s)) > 0 {
		_, ts, _, err := a.api.UpdateMessageContext(ctx, o.Place.Room, o.ReplacesRef, a.options(o, s, shortened(words, maxUpdate), "")...)
		switch code := codeOf(err); {
		case irreplaceable[code]:
			return "", nil
		case code != "msg_too_long":
			return ts, err
		}
	}
	return "", a.empty(ctx, o)
}

// movedOn is what stays of a message that its new words do not fit into.
const movedOn = "The answer has grown and stands further down."

// empty takes the words out of an earlier reply.
func (a *Slack) empty(ctx context.Context, o book.Outgoing) error {
	_, _, _, err := a.api.UpdateMessageContext(ctx, o.Place.Room, o.ReplacesRef,
		slack.MsgOptionText(movedOn, false), slack.MsgOptionDisableMarkdown(), slack.MsgOptionBlocks())
	if irreplaceable[codeOf(err)] {
		return nil
	}
	return err
}

// options are what a message of the bot is: complete in plain text, nicer in
// blocks, without previews, with its key.
func (a *Slack) options(o book.Outgoing, s bot.Sheet, words, thread string) []slack.MsgOption {
	payload := map[string]any{"key": o.Key}
	if s.Load != 0 {
		payload["load"], payload["revision"] = s.Load, s.Revision
	}
	out := []slack.MsgOption{
		slack.MsgOptionText(words, false), slack.MsgOptionDisableMarkdown(), slack.MsgOptionDisableLinkUnfurl(), slack.MsgOptionDisableMediaUnfurl(),
		slack.MsgOptionMetadata(slack.SlackMetadata{EventType: eventType, EventPayload: payload}),
	}
	if blocks := dressed(s); len(blocks) > 0 {
		out = append(out, slack.MsgOptionBlocks(blocks...))
	} else if o.ReplacesRef != "" {
		out = append(out, slack.MsgOptionBlocks())
	}
	if thread != "" {
		out = append(out, slack.MsgOptionTS(thread))
	}
	return out
}

// sentBefore looks for a reply that an earlier try may have brought to Slack.
func (a *Slack) sentBefore(ctx context.Context, o book.Outgoing, thread string) (ts string, err error) {
	err = a.eachOwn(ctx, o, thread, func(m slack.Message) bool {
		if m.Metadata.EventType == eventType && m.Metadata.EventPayload["key"] == o.Key {
			ts = m.Timestamp
		}
		return ts == ""
	})
	return ts, err
}

// eachOwn calls f with the bot's messages since a reply was recorded, in its
// thread or, without one, in the channel, until f has enough.
func (a *Slack) eachOwn(ctx context.Context, o book.Outgoing, thread string, f func(slack.Message) bool) error {
	own, oldest, cursor := a.own.Load().user, tsOf(o.At.Add(-time.Minute)), ""
	for {
		var page []slack.Message
		var err error
		if thread != "" {
			page, _, cursor, err = a.api.GetConversationRepliesContext(ctx, &slack.GetConversationRepliesParameters{
				ChannelID: o.Place.Room, Timestamp: thread, Oldest: oldest, Limit: 200, Cursor: cursor, IncludeAllMetadata: true})
		} else {
			var h *slack.GetConversationHistoryResponse
			h, err = a.api.GetConversationHistoryContext(ctx, &slack.GetConversationHistoryParameters{
				ChannelID: o.Place.Room, Oldest: oldest, Limit: 200, Cursor: cursor, IncludeAllMetadata: true})
			if err == nil {
				page, cursor = h.Messages, h.ResponseMetaData.NextCursor
			}
		}
		if codeOf(err) == "thread_not_found" {
			return nil // it was deleted, with all that stood in it
		}
		if err != nil {
			return err
		}
		for _, m := range page {
			if m.User == own && !f(m) {
				return nil
			}
		}
		if cursor == "" {
			return nil
		}
	}
}

// final are the errors after which Slack will never take a message.
var final = map[string]bool{
	"channel_not_found": true, "not_in_channel": true, "is_archived": true, "restricted_action": true, "user_not_in_channel": true,
	"msg_too_long": true, "no_text": true, "cannot_reply_to_message": true, "restricted_action_thread_locked": true, "message_not_found": true,
	"restricted_action_read_only_channel": true, "restricted_action_non_threadable_channel": true, "invalid_blocks": true, "invalid_arguments": true,
	"cant_delete_file": true,
}

// patience is how long a reply is tried that Slack answers with an error that
// may pass: its channel waits for it.
const patience = time.Hour

// ofToken are the errors that say nothing of one reply: all wait until there is
// a better token.
var ofToken = map[string]bool{
	"invalid_auth": true, "not_authed": true, "account_inactive": true, "token_revoked": true, "token_expired": true, "missing_scope": true,
}

// failed says what the outbox is to do after a failure. A limit for files is
// none for words.
func (a *Slack) failed(o book.Outgoing, err error) error {
	var limited *slack.RateLimitedError
	if errors.As(err, &limited) {
		if !o.Beside {
			a.pace.stop(o.Place.Room, limited.RetryAfter)
		}
		return a.later(o, limited.RetryAfter, err)
	}
	code := codeOf(err)
	if final[code] || o.Beside && noPicture[code] || code != "" && !ofToken[code] && a.pace.failing(o.Key, a.Clock()) >= patience {
		a.pace.settled(o.Key)
		return fmt.Errorf("%w: %w", desk.ErrRefused, err)
	}
	return err
}
