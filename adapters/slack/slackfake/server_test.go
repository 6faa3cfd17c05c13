package slackfake_test

import (
	"errors"
	"fmt"
	"slices"
	"strings"
	"testing"
	"time"

	"github.com/slack-go/slack"

	"presshand/adapters/slack/slackfake"
)

func client(s *slackfake.Server, token string) *slack.Client {
	return slack.New(token, slack.OptionAPIURL(s.URL()), slack.OptionAppLevelToken(slackfake.AppToken))
}

func TestServer_historyInPages(t *testing.T) {
	s := slackfake.New(t, slackfake.Options{})
	room, ana := s.Channel("tops"), s.User("ana")
	var said []string
	for i := range 7 {
		said = append(said, s.Say(slackfake.Saying{Channel: room, User: ana, Text: fmt.Sprint(i)}))
	}
	s.Say(slackfake.Saying{Channel: room, User: ana, Text: "below", Thread: said[2]})
	api, cursor := client(s, slackfake.BotToken), ""
	var got []string
	for {
		h, err := api.GetConversationHistory(&slack.GetConversationHistoryParameters{ChannelID: room, Limit: 3, Cursor: cursor, Oldest: said[0]})
		if err != nil {
			t.Fatal(err)
		}
		for _, m := range h.Messages {
			got = append(got, m.Text)
			if m.Timestamp == said[2] && m.ReplyCount != 1 {
				t.Errorf("the root of a thread has %d replies, want 1", m.ReplyCount)
			}
		}
		if cursor = h.ResponseMetaData.NextCursor; cursor == "" {
			break
		}
	}
	if strings.Join(got, "") != "654321" { // the newest first, without the oldest and without replies
		t.Errorf("history is %v", got)
	}
	below, _, _, err := api.GetConversationReplies(&slack.GetConversationRepliesParameters{ChannelID: room, Timestamp: said[2]})
	if err != nil || len(below) != 2 || below[1].Text != "below" || below[1].ParentUserId != ana {
		t.Errorf("thread is %+v (%v), want root and reply", below, err)
	}
}

func TestServer_refuses(t *testing.T) {
	s := slackfake.New(t, slackfake.Options{Pace: time.Hour, Scopes: []string{"chat:write"}})
	room := s.Channel("tops")
	for name, c := range map[string]struct {
		call func(*slack.Client) error
		want string
	}{
		"no channel": {func(a *slack.Client) error {
			_, _, err := a.PostMessage("C0", slack.MsgOptionText("x", false))
			return err
		}, "channel_not_found"},
		"no scope": {func(a *slack.Client) error { return a.AddReaction("eyes", slack.NewRefToMessage(room, "1.2")) }, "missing_scope"},
		"no text":  {func(a *slack.Client) error { _, _, err := a.PostMessage(room); return err }, "no_text"},
		"too long an update": {func(a *slack.Client) error {
			_, _, _, err := a.UpdateMessage(room, "1.2", slack.MsgOptionText(strings.Repeat("x", 4001), false))
			return err
		}, "msg_too_long"},
		"too many blocks": {func(a *slack.Client) error {
			var blocks []slack.Block
			for range 51 {
				blocks = append(blocks, slack.NewDividerBlock())
			}
			_, _, err := a.PostMessage(room, slack.MsgOptionText("x", false), slack.MsgOptionBlocks(blocks...))
			return err
		}, "invalid_blocks"},
		"too long a section": {func(a *slack.Client) error {
			b := slack.NewSectionBlock(slack.NewTextBlockObject("plain_text", strings.Repeat("x", 3001), false, false), nil, nil)
			_, _, err := a.PostMessage(room, slack.MsgOptionText("x", false), slack.MsgOptionBlocks(b))
			return err
		}, "invalid_blocks"},
		"stale trigger": {func(a *slack.Client) error {
			_, err := a.OpenView("trigger.0", slack.ModalViewRequest{Type: slack.VTModal, Title: slack.NewTextBlockObject("plain_text", "x", false, false),
				Blocks: slack.Blocks{BlockSet: []slack.Block{slack.NewDividerBlock()}}})
			return err
		}, "invalid_trigger_id"},
	} {
		if err := c.call(client(s, slackfake.BotToken)); err == nil || err.Error() != c.want {
			t.Errorf("%s: %v, want %s", name, err, c.want)
		}
	}
	if _, err := client(s, "xoxb-other").AuthTest(); err == nil || err.Error() != "invalid_auth" {
		t.Errorf("a wrong token gives %v, want invalid_auth", err)
	}
	if _, _, err := client(s, slackfake.BotToken).PostMessage(room, slack.MsgOptionText("x", false)); err != nil {
		t.Fatal(err)
	}
	_, _, err := client(s, slackfake.BotToken).PostMessage(room, slack.MsgOptionText("x", false))
	var limited *slack.RateLimitedError
	if !errors.As(err, &limited) || limited.RetryAfter < time.Minute {
		t.Errorf("a second message at once gives %v, want to wait", err)
	}
}

// Conversations are listed by their kinds, in pages, where the token may.
func TestServer_conversations(t *testing.T) {
	s := slackfake.New(t, slackfake.Options{Page: 2, Scopes: []string{"channels:read", "groups:read", "im:read", "groups:history"}})
	public, private, direct := s.Channel("tops"), s.Private("office"), s.Direct(s.User("ana"))
	s.Group("us")
	more := []string{s.Channel("b"), s.Channel("c")}
	api := client(s, slackfake.BotToken)
	for types, want := range map[string][]string{
		"": {public, more[0], more[1]}, "public_channel": {public, more[0], more[1]}, "private_channel": {private}, "im,private_channel": {direct, private},
	} {
		var got []string
		cursor := ""
		for {
			p := &slack.GetConversationsForUserParameters{Cursor: cursor, Limit: 200}
			if types != "" {
				p.Types = strings.Split(types, ",")
			}
			rooms, next, err := api.GetConversationsForUser(p)
			if err != nil || len(rooms) > 2 {
				t.Fatalf("%q: page of %d (%v), want 2 at most", types, len(rooms), err)
			}
			for _, r := range rooms {
				got = append(got, r.ID)
			}
			if cursor = next; cursor == "" {
				break
			}
		}
		slices.Sort(got)
		slices.Sort(want)
		if !slices.Equal(got, want) {
			t.Errorf("%q lists %v, want %v", types, got, want)
		}
	}
	if _, _, err := api.GetConversationsForUser(&slack.GetConversationsForUserParameters{Types: []string{"mpim"}}); err == nil || err.Error() != "missing_scope" {
		t.Errorf("without mpim:read conversations are listed: %v", err)
	}
	for room, want := range map[string]bool{public: false, private: true} {
		if _, err := api.GetConversationHistory(&slack.GetConversationHistoryParameters{ChannelID: room}); (err == nil) != want {
			t.Errorf("history of %s is read with %v, by the scopes %v", room, err, want)
		}
	}
}

// An event that nobody acknowledges is sent again after each of the waits and
// then given up.
func TestServer_givesUp(t *testing.T) {
	s := slackfake.New(t, slackfake.Options{Retries: []time.Duration{0, 10 * time.Millisecond}})
	s.Say(slackfake.Saying{Channel: s.Channel("tops"), User: s.User("ana"), Text: "x"})
	for end := time.Now().Add(5 * time.Second); len(s.Traffic().Lost) == 0; time.Sleep(time.Millisecond) {
		if time.Now().After(end) {
			t.Fatal("the event is tried for ever")
		}
	}
	if at := s.Traffic(); at.Waiting != 0 || at.Acknowledged != 0 {
		t.Errorf("traffic is %+v, want one lost", at)
	}
}

func TestServer_uploadSize(t *testing.T) {
	s := slackfake.New(t, slackfake.Options{})
	_, err := client(s, slackfake.BotToken).UploadFile(slack.UploadFileParameters{Reader: strings.NewReader("abc"), FileSize: 4, Filename: "x.png", Channel: s.Channel("tops")})
	if err == nil || !strings.Contains(err.Error(), "400") {
		t.Errorf("a file shorter than announced gives %v, want to be refused", err)
	}
}
