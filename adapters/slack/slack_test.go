package slack_test

import (
	"context"
	"slices"
	"strings"
	"testing"
	"time"

	"presshand/adapters/adaptertest"
	"presshand/adapters/slack"
	"presshand/adapters/slack/slackfake"
	"presshand/adapters/sqlite"
	"presshand/bot/book"
)

// workspace is the stand-in as the conformance suite sees it.
type workspace struct {
	*slackfake.Server
	clock func() time.Time
}

func newWorkspace(t testing.TB) adaptertest.Service {
	w := &workspace{clock: time.Now}
	w.Server = slackfake.New(t, slackfake.Options{
		Clock: func() time.Time { return w.clock() }, Ping: 100 * time.Millisecond,
		Retries: []time.Duration{0, 300 * time.Millisecond, time.Second},
	})
	return w
}

func (w *workspace) Name() string { return slack.Service }

func (w *workspace) Timed() {}

func (w *workspace) At(_ testing.TB, _, id string) time.Time { return slackfake.Time(id) }

func (w *workspace) Connect(t testing.TB, in adaptertest.Inbox, s book.Store, clock func() time.Time) adaptertest.Chat {
	w.clock = clock
	return slack.New(w.config(clock), in, s)
}

func (w *workspace) config(clock func() time.Time) slack.Config {
	return slack.Config{
		BotToken: slackfake.BotToken, AppToken: slackfake.AppToken, API: w.URL(), Clock: clock, Pace: time.Millisecond,
		Person: func(_, name string) book.Person { return book.Person{ID: name, Name: name} },
	}
}

func (w *workspace) Room(testing.TB) string { return w.Channel("press-room") }
func (w *workspace) Direct(_ testing.TB, person string) string {
	return w.Server.Direct(w.User(person))
}

func typed(p adaptertest.Post) string {
	text := slackfake.Typed(p.Text)
	switch {
	case p.Prefixed:
		text = "press, " + text
	case p.Addressed:
		text = slackfake.Mention + " " + text
	}
	return text
}

func (w *workspace) Say(_ testing.TB, p adaptertest.Post) string {
	user := ""
	if p.Bot {
		user = w.Bot(p.Person)
	} else {
		user = w.User(p.Person)
	}
	return w.Server.Say(slackfake.Saying{Channel: p.Room, User: user, Text: typed(p), Thread: p.Thread})
}

func (w *workspace) Edit(_ testing.TB, p adaptertest.Post, id string) {
	w.Server.Edit(p.Room, id, typed(p))
}

var emoji = map[adaptertest.Sign]string{
	adaptertest.Hold: "raised_hand::skin-tone-3", adaptertest.Clear: "arrow_forward", adaptertest.In: "inbox_tray",
	adaptertest.Out: "outbox_tray", adaptertest.Approve: "white_check_mark",
}

func (w *workspace) React(_ testing.TB, room, id, person string, s adaptertest.Sign) {
	w.Server.React(room, id, w.User(person), emoji[s], true)
}

func (w *workspace) Redeliver(_ testing.TB, room, id string) { w.Server.Redeliver(room, id) }

func (w *workspace) Shown(_ testing.TB, room, root string) []adaptertest.Shown {
	var out []adaptertest.Shown
	for _, m := range w.Thread(room, root) {
		out = append(out, adaptertest.Shown{ID: m.TS, Text: slackfake.Plain(m.Text), Picture: m.Alt, Private: m.Private != ""})
	}
	return out
}

func memory(t testing.TB) book.Store {
	s, err := sqlite.Memory(context.Background())
	if err != nil {
		t.Fatal(err)
	}
	t.Cleanup(func() { s.Close() })
	return s
}

func TestSlack_conformance(t *testing.T) {
	var all []*workspace
	adaptertest.Room(t, adaptertest.Rooms{
		Service: func(t testing.TB) adaptertest.Service {
			w := newWorkspace(t)
			all = append(all, w.(*workspace))
			return w
		},
		Store: memory, Scenes: "../../testdata/talk/*.txtar",
	})
	for _, w := range all {
		if wrong := w.Overstepped(); len(wrong) > 0 {
			t.Errorf("oversteps Slack's limits: %s", strings.Join(slices.Compact(wrong), "; "))
		}
	}
}
