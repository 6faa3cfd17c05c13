package slack

import (
	"context"
	"errors"
	"fmt"
	"io"
	"log"
	"log/slog"
	"net/http"
	"strings"
	"sync"
	"sync/atomic"
	"time"

	"github.com/slack-go/slack"
	"github.com/slack-go/slack/socketmode"

	"presshand/bot/book"
	"presshand/bot/desk"
)

// Service is the name of Slack in a [book.Place].
const Service = "slack"

// Config is how the adapter is run. Only the tokens must be set; a zero value
// elsewhere takes the default beside it.
type Config struct {
	BotToken string // xoxb-…
	AppToken string // xapp-…, with connections:write
	API      string // address of the Web API: Slack's own

	Prefix  func(room string) []string          // words that address the bot at the start of a message: "press"
	Metric  func(room string) bool              // whether a bare length is millimetres there: inches
	Allowed func(room string) bool              // whether a room is served: all
	Person  func(user, name string) book.Person // who a user is on every service: the user
	Seen    string                              // the reaction that says "got it": eyes
	Pace    time.Duration                       // least time between two messages in a channel: 1 s
	MaxAge  time.Duration                       // how old a message may be to be answered after an outage: 1 h
	Quiet   time.Duration                       // how long without a ping until the socket counts as dead: 30 s
	Again   time.Duration                       // after what the library takes for final, or a history that could not be read: 10 s
	Clock   func() time.Time                    // the machine's
	Log     *slog.Logger                        // none
}

// An Inbox keeps what was said; a [desk.Desk] is one.
type Inbox interface {
	Receive(ctx context.Context, e book.Event) (fresh bool, err error)
}

// A Store is what the adapter looks up.
type Store interface {
	Mark(ctx context.Context, name string) (string, error)
	SetMark(ctx context.Context, name, place string) error
	Thread(ctx context.Context, room, name string) (book.Thread, error)
	Load(ctx context.Context, room string, n int) (book.Load, error)
}

// A Slack serves one workspace.
type Slack struct {
	Config
	inbox Inbox
	store Store
	api   *slack.Client // one try; the outbox tries again
	calm  *slack.Client // waits where Slack says so; for what has no outbox
	own   atomic.Pointer[identity]

	names   names
	threads latest // in which the bot takes part
	kept    latest // messages that the inbox has
	pace    pace
	seen    seen
	reopens atomic.Int64
	open    atomic.Bool
	caught  atomic.Bool // what was missed before the start is read
	behind  atomic.Bool // what was missed in the last outage is not read yet
	missed  missed
	urls    answerURLs

	catching sync.Mutex
	busy     sync.WaitGroup
}

type identity struct{ user, bot, mention string }

var _ desk.Sender = (*Slack)(nil)

// New returns an adapter that brings what is said to an inbox.
func New(c Config, in Inbox, s Store) *Slack {
	c = c.filled()
	a := &Slack{Config: c, inbox: in, store: s}
	transport := http.DefaultTransport.(*http.Transport).Clone()
	transport.MaxIdleConnsPerHost = 16
	client := &http.Client{Transport: transport, Timeout: callTimeout}
	options := []slack.Option{slack.OptionAppLevelToken(c.AppToken), slack.OptionHTTPClient(client), slack.OptionLog(log.New(io.Discard, "", 0))}
	if c.API != "" {
		options = append(options, slack.OptionAPIURL(strings.TrimSuffix(c.API, "/")+"/"))
	}
	a.api = slack.New(c.BotToken, options...)
	a.calm = slack.New(c.BotToken, append(options, slack.OptionRetry(3))...)
	a.names.init()
	a.urls.init()
	a.behind.Store(true)
	a.threads.init()
	a.kept.init()
	a.pace.init(c.Pace)
	return a
}

const callTimeout = 15 * time.Second

func (c Config) filled() Config {
	if c.Prefix == nil {
		c.Prefix = func(string) []string { return []string{"press"} }
	}
	if c.Allowed == nil {
		c.Allowed = func(string) bool { return true }
	}
	if c.Metric == nil {
		c.Metric = func(string) bool { return false }
	}
	if c.Person == nil {
		c.Person = func(user, name string) book.Person { return book.Person{ID: user, Name: name} }
	}
	if c.Clock == nil {
		c.Clock = time.Now
	}
	if c.Log == nil {
		c.Log = slog.New(slog.DiscardHandler)
	}
	if c.Seen == "" {
		c.Seen = "eyes"
	}
	for _, d := range []struct {
		at *time.Duration
		or time.Duration
	}{{&c.Pace, time.Second}, {&c.MaxAge, time.Hour}, {&c.Quiet, 30 * time.Second}, {&c.Again, 10 * time.Second}} {
		if *d.at == 0 {
			*d.at = d.or
		}
	}
	return c
}

// Reconnects returns how often the socket was opened anew.
func (a *Slack) Reconnects() int64 { return max(a.reopens.Load()-1, 0) }

// Connected reports whether a socket is open.
func (a *Slack) Connected() bool { return a.open.Load() }

// Run brings what is said to the inbox until ctx ends. It survives every
// failure of the network and of Slack, and says in the log what it waits for.
func (a *Slack) Run(ctx context.Context) error {
	if err := a.introduce(ctx); err != nil {
		return err
	}
	a.names.load(ctx, a.calm)
	a.busy.Go(func() { a.see(ctx) })
	defer a.busy.Wait()
	for ctx.Err() == nil {
		err := a.connect(ctx)
		if ctx.Err() == nil {
			a.Log.Error("slack: socket cannot be opened", "error", err, "again_in", a.Again)
			rest(ctx, a.Again)
		}
	}
	return nil
}

func rest(ctx context.Context, d time.Duration) {
	select {
	case <-ctx.Done():
	case <-time.After(d):
	}
}

// introduce finds out who the bot is, however long that takes.
func (a *Slack) introduce(ctx context.Context) error {
	for wait := time.Second; ; wait = min(2*wait, time.Minute) {
		who, err := a.calm.AuthTestContext(ctx)
		if err == nil {
			a.own.Store(&identity{user: who.UserID, bot: who.BotID, mention: "<@" + who.UserID})
			return nil
		}
		if ctx.Err() != nil {
			return nil
		}
		if code := codeOf(err); ofToken[code] {
			return fmt.Errorf("slack refuses the bot token (%s): make a new one on the app's page and put it where the settings say", code)
		}
		a.Log.Warn("slack: not reached", "error", err, "again_in", wait)
		rest(ctx, wait)
	}
}

// codeOf returns Slack's name of an error, or "".
func codeOf(err error) string {
	var e slack.SlackErrorResponse
	if errors.As(err, &e) {
		return e.Err
	}
	return ""
}

// connect serves sockets, one after the other, until ctx ends or the library
// gives up.
func (a *Slack) connect(ctx context.Context) error {
	ctx, cancel := context.WithCancel(ctx)
	defer cancel()
	client := socketmode.New(a.calm, socketmode.OptionPingInterval(a.Quiet), socketmode.OptionLog(log.New(io.Discard, "", 0)))
	s := newStream(a, client)
	var wg sync.WaitGroup
	wg.Go(func() { s.run(ctx) })
	err := client.RunContext(ctx)
	a.open.Store(false)
	cancel()
	wg.Wait()
	return err
}
