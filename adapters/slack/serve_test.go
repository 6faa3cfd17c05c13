package slack_test

import (
	"context"
	"fmt"
	"sync"
	"testing"
	"time"

	"presshand/adapters/slack"
	"presshand/adapters/slack/slackfake"
	"presshand/bot"
	"presshand/bot/book"
	"presshand/bot/desk"
)

// A shop is the stand-in with the bot serving it, as a process would.
type shop struct {
	*slackfake.Server
	t            testing.TB
	store        book.Store
	slack        *slack.Slack
	desk         *desk.Desk
	inbox        slack.Inbox // what the adapter writes to; the desk
	conf         slack.Config
	draw         bool
	lanes, posts int
	poll         time.Duration
	upload       time.Duration // how long a picture is tried; 0 is as long as ever
	handler      desk.Handler  // the bot
	stop         func()
	room         string
	ana          string
	ben          string
}

// quick are options with which faults show soon.
func quick() slackfake.Options {
	return slackfake.Options{
		Ping: 50 * time.Millisecond, Ack: 400 * time.Millisecond,
		Retries: []time.Duration{0, 200 * time.Millisecond, 400 * time.Millisecond, time.Second, 2 * time.Second},
	}
}

// newShop makes a shop that is not open yet.
func newShop(t testing.TB, o slackfake.Options) *shop {
	s := &shop{Server: slackfake.New(t, o), t: t, store: memory(t), lanes: 2, poll: 20 * time.Millisecond, stop: func() {}}
	s.conf = slack.Config{
		BotToken: slackfake.BotToken, AppToken: slackfake.AppToken, API: s.URL(), Pace: time.Millisecond, Quiet: 400 * time.Millisecond,
	}
	s.room, s.ana, s.ben = s.Channel("press-room"), s.User("ana"), s.User("ben")
	t.Cleanup(func() { s.stop() })
	return s
}

// open starts the bot, and closes what ran before.
func (s *shop) open() *shop {
	s.stop()
	if s.handler == nil {
		s.handler = bot.Clerk{Bot: bot.New(s.store), Draw: func(string) bool { return s.draw }}
	}
	s.desk = &desk.Desk{
		Store: s.store, Handler: s.handler,
		Worker: "bot", Clock: time.Now, Poll: s.poll, Lanes: s.lanes, Posts: s.posts, Patience: s.upload,
	}
	inbox := s.inbox
	if inbox == nil {
		inbox = s.desk
	}
	s.slack = slack.New(s.conf, inbox, s.store)
	s.desk.Senders = map[string]desk.Sender{slack.Service: s.slack}
	if err := s.desk.Resume(context.Background()); err != nil {
		s.t.Fatal(err)
	}
	ctx, cancel := context.WithCancel(context.Background())
	var wg sync.WaitGroup
	wg.Go(func() { s.desk.Run(ctx) })
	wg.Go(func() {
		if err := s.slack.Run(ctx); err != nil {
			s.t.Errorf("adapter stopped: %v", err)
		}
	})
	var once sync.Once
	s.stop = func() { once.Do(func() { cancel(); wg.Wait() }) }
	return s
}

// connected waits until a socket is open.
func (s *shop) connected() *shop {
	s.t.Helper()
	s.eventually("socket is not open", s.slack.Connected)
	return s
}

// patience is for a machine that has much else to do.
const patience = 30 * time.Second

func (s *shop) eventually(what string, is func() bool) {
	s.t.Helper()
	for end := time.Now().Add(patience); time.Now().Before(end); time.Sleep(5 * time.Millisecond) {
		if is() {
			return
		}
	}
	s.t.Fatalf("after %v still: %s", patience, what)
}

// ask has ana mention the bot and returns the ts.
func (s *shop) ask(text string) string {
	return s.Say(slackfake.Saying{Channel: s.room, User: s.ana, Text: slackfake.Mention + " " + text})
}

// answers waits until a thread shows n messages of the bot, and until nothing
// waits any more.
func (s *shop) answers(root string, n int) []slackfake.Message {
	s.t.Helper()
	s.eventually(fmt.Sprintf("fewer than %d answers", n), func() bool { return len(s.Thread(s.room, root)) >= n })
	s.still()
	got := s.Thread(s.room, root)
	if len(got) != n {
		s.t.Fatalf("%d answers, want %d: %+v", len(got), n, got)
	}
	return got
}

// still waits until inbox, outbox and envelopes are empty.
func (s *shop) still() {
	s.t.Helper()
	s.eventually("something waits", s.idle)
}

// idle reports whether nothing waits. Envelopes are looked at first: one that is
// acknowledged is in the inbox by then.
func (s *shop) idle() bool {
	if s.Traffic().Waiting > 0 {
		return false
	}
	d, err := s.store.Depth(context.Background())
	return err == nil && d.Inbox+d.Outbox == 0
}

const strips = "5 strips 2 1/4 wide, 1/4 thick, 1 in bar, 25 inHg, yellow glue"
