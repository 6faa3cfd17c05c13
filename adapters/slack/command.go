package slack

import (
	"context"
	"encoding/json"
	"fmt"
	"slices"
	"strings"
	"sync"

	"github.com/slack-go/slack"

	"presshand/bot"
	"presshand/bot/book"
)

// command keeps a slash command. It has no message: the answer begins the
// thread, under the command's name. What cannot be answered is told to the asker
// alone.
func (a *Slack) command(ctx context.Context, c slack.SlashCommand) (any, error) {
	if !a.Allowed(c.ChannelID) {
		return map[string]string{"response_type": slack.ResponseTypeEphemeral, "text": notServed}, nil
	}
	text := strings.TrimSpace(plain(c.Text))
	if text == "" {
		text = "help"
	}
	extra, err := json.Marshal(bot.Gesture{User: c.UserID})
	if err != nil {
		return nil, err
	}
	id := slashPrefix + c.TriggerID
	a.urls.add(id, c.ResponseURL)
	_, err = a.inbox.Receive(ctx, book.Event{
		Key: fmt.Sprintf("slack:%s:%s", c.ChannelID, id), Place: book.Place{Service: Service, Room: c.ChannelID, Thread: id}, Message: id,
		From: a.person(ctx, c.UserID), Text: text, At: a.Clock(), Extra: extra,
	})
	return nil, err
}

// slashPrefix begins the name of a thread that a slash command began.
const slashPrefix = "slash-"

const notServed = "I am not set up for this channel and say nothing here. Whoever runs me can allow it."

// answerURLs are where the latest commands can be answered in a channel that
// the bot is not in. They hold for half an hour, so memory is enough.
type answerURLs struct {
	mu    sync.Mutex
	of    map[string]string
	order []string
}

const maxURLs = 200

func (u *answerURLs) init() { u.of = map[string]string{} }

func (u *answerURLs) add(id, url string) {
	u.mu.Lock()
	defer u.mu.Unlock()
	if u.of[id] != "" || url == "" {
		return
	}
	u.of[id] = url
	if u.order = append(u.order, id); len(u.order) > maxURLs {
		delete(u.of, u.order[0])
		u.order = u.order[1:]
	}
}

func (u *answerURLs) take(id string) string {
	u.mu.Lock()
	defer u.mu.Unlock()
	url := u.of[id]
	delete(u.of, id)
	return url
}

// answerAside answers a command, for the asker alone, where the bot may not
// post. Its text cannot be said to be without markup there, so blocks stand for
// it as far as they go; buttons would not work.
func (a *Slack) answerAside(ctx context.Context, o book.Outgoing, s bot.Sheet, err error) (string, error) {
	code := codeOf(err)
	if code != "not_in_channel" && code != "channel_not_found" || !strings.HasPrefix(o.Place.Thread, slashPrefix) {
		return "", err
	}
	url := a.urls.take(o.Place.Thread)
	if url == "" {
		return "", err
	}
	const goOn = "I am not in this channel; /invite me to go on here."
	s.Lines, s.Load = append(slices.Clip(s.Lines), bot.Line{Kind: bot.Notice, Text: goOn}), 0
	options := []slack.MsgOption{slack.MsgOptionText(fallback(o.Text+"\n"+goOn), false), slack.MsgOptionResponseURL(url, slack.ResponseTypeEphemeral)}
	if blocks := dressed(s); len(blocks) > 0 {
		options = append(options, slack.MsgOptionBlocks(blocks...))
	}
	if _, _, aside := a.api.PostMessageContext(ctx, o.Place.Room, options...); aside != nil {
		return "", err
	}
	return o.Key, nil
}
