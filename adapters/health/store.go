package health

import (
	"context"
	"sync"
	"time"

	"github.com/prometheus/client_golang/prometheus"

	"presshand/bot"
	"presshand/bot/book"
)

// A counted store counts on the way.
type counted struct {
	book.Store
	monitor *Monitor

	mu      sync.Mutex
	claimed map[string]book.Outgoing // replies on their way
}

// Record counts an answer once it is kept: one that has to be worked out again
// counts once.
func (c *counted) Record(ctx context.Context, o book.Outcome, at time.Time) error {
	if err := c.Store.Record(ctx, o, at); err != nil {
		return err
	}
	switch {
	case o.Event == "":
	case len(o.Replies) == 0:
		c.monitor.silent.Inc()
	default:
		c.monitor.answered(o.Replies[0])
	}
	return nil
}

func (m *Monitor) answered(o book.Outgoing) {
	topic := "failed" // an apology is about nothing
	if s, err := bot.SheetOf(o); err == nil && s.About != "" {
		topic = string(s.About)
		m.unread.WithLabelValues(o.Place.Service).Add(float64(s.Unread))
	}
	m.messages.WithLabelValues(o.Place.Service, topic).Inc()
}

// ClaimOutgoing notes a reply that goes out.
func (c *counted) ClaimOutgoing(ctx context.Context, by book.Claim, services []string) (book.Outgoing, error) {
	o, err := c.Store.ClaimOutgoing(ctx, by, services)
	if err == nil {
		c.mu.Lock()
		defer c.mu.Unlock()
		c.claimed[o.Key] = book.Outgoing{Place: o.Place, Event: o.Event, At: o.At}
	}
	return o, err
}

// Sent notes how long an answer took.
func (c *counted) Sent(ctx context.Context, key, ref string, at time.Time) error {
	err := c.Store.Sent(ctx, key, ref, at)
	if o := c.back(key); err == nil && o.Event != "" {
		// the service's clock may be ahead of ours
		c.monitor.answer.WithLabelValues(o.Place.Service).Observe(max(at.Sub(o.At), 0).Seconds())
	}
	return err
}

// RetryOutgoing forgets a reply that did not go out.
func (c *counted) RetryOutgoing(ctx context.Context, key string, after time.Time, reason string) error {
	c.back(key)
	return c.Store.RetryOutgoing(ctx, key, after, reason)
}

func (c *counted) back(key string) book.Outgoing {
	c.mu.Lock()
	defer c.mu.Unlock()
	o := c.claimed[key]
	delete(c.claimed, key)
	return o
}

var (
	waiting = prometheus.NewDesc("presshand_waiting", "Messages and replies that wait in the store.", []string{"box"}, nil)
	givenUp = prometheus.NewDesc("presshand_given_up", "Messages and replies in the store that were given up.", []string{"box"}, nil)
)

// depth tells how much waits in a store; nothing while it cannot be reached.
type depth struct{ store book.Store }

func (depth) Describe(to chan<- *prometheus.Desc) {
	to <- waiting
	to <- givenUp
}

func (d depth) Collect(to chan<- prometheus.Metric) {
	ctx, done := context.WithTimeout(context.Background(), patience)
	defer done()
	n, err := d.store.Depth(ctx)
	if err != nil {
		return
	}
	for _, x := range []struct {
		what *prometheus.Desc
		box  string
		n    int
	}{{waiting, "inbox", n.Inbox}, {waiting, "outbox", n.Outbox}, {givenUp, "inbox", n.DeadInbox}, {givenUp, "outbox", n.DeadOutbox}} {
		to <- prometheus.MustNewConstMetric(x.what, prometheus.GaugeValue, float64(x.n), x.box)
	}
}
