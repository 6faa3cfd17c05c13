package matrix

import (
	"context"
	"path/filepath"
	"sync"
	"sync/atomic"
	"testing"
	"time"

	"maunium.net/go/mautrix/id"

	"presshand/adapters/sqlite"
	"presshand/bot"
	"presshand/bot/book"
	"presshand/bot/desk"
)

// A stand is a bot process within the test: an account with its desk and
// store, which can be stopped and started again.
type stand struct {
	config Config
	store  book.Store
	strict bool // checks must come sealed
	draw   bool
	ahead  atomic.Int64 // how far the desk's clock is, in ns

	mu   sync.Mutex
	stop func() error
}

// newStand registers an account; it does not run yet.
func newStand(t testing.TB) *stand {
	t.Helper()
	c, err := server.Register(t.Context(), newName("press"), password)
	must(t, err)
	s := &stand{config: Config{
		Homeserver: server.URL, User: string(c.UserID), Password: password, Name: "Press Hand",
		Store: filepath.Join(t.TempDir(), "matrix.db"), Allow: []string{"localhost"}, Log: logOf(t),
		Person: func(user, name string) book.Person { return book.Person{ID: wordOf(user), Name: name} },
	}}
	s.store, err = sqlite.Open(t.Context(), filepath.Join(t.TempDir(), "book.db"))
	must(t, err)
	t.Cleanup(func() { must(t, s.store.Close()) })
	return s
}

func (s *stand) user() id.UserID { return id.UserID(s.config.User) }

// newDesk is the desk of a bot process.
func newDesk(store book.Store, worker string, strict, draw bool) *desk.Desk {
	clerk := bot.Clerk{Bot: bot.New(store), Draw: func(string) bool { return draw }}
	return &desk.Desk{
		Store: store, Handler: bot.StrictClerk{Clerk: clerk, Demands: func(string) bool { return strict }},
		Worker: worker, Clock: time.Now,
	}
}

// start serves until stopped. It fails the test if serving ends by itself.
func (s *stand) start(t testing.TB) {
	t.Helper()
	ctx, cancel := context.WithCancel(context.Background())
	ended := make(chan error, 1)
	d := newDesk(s.store, "bot", s.strict, s.draw)
	d.Clock = func() time.Time { return time.Now().Add(time.Duration(s.ahead.Load())) }
	go func() { ended <- Serve(ctx, s.config, d) }()
	var once sync.Once
	var err error
	stop := func() error {
		once.Do(func() { cancel(); err = <-ended })
		return err
	}
	s.mu.Lock()
	s.stop = stop
	s.mu.Unlock()
	t.Cleanup(func() {
		if err := stop(); err != nil {
			t.Errorf("serving ended: %v", err)
		}
	})
}

// shut stops serving.
func (s *stand) shut(t testing.TB) {
	t.Helper()
	s.mu.Lock()
	defer s.mu.Unlock()
	must(t, s.stop())
}

// dealtWith waits until nothing waits in the store.
func (s *stand) dealtWith(t testing.TB) {
	t.Helper()
	eventually(t, func() string {
		d, err := s.store.Depth(t.Context())
		must(t, err)
		if d.Inbox+d.Outbox > 0 {
			return "events or replies wait"
		}
		return ""
	})
}
