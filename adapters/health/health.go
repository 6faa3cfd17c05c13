// Package health tells machines how the bot fares: whether it lives, whether
// it is ready, and in numbers for Prometheus what it does. It knows what a
// reply was about and never what was said.
package health

import (
	"context"
	"fmt"
	"net/http"
	"sync"
	"time"

	"github.com/prometheus/client_golang/prometheus"
	"github.com/prometheus/client_golang/prometheus/collectors"
	"github.com/prometheus/client_golang/prometheus/promhttp"

	"presshand/bot/book"
)

// A Monitor counts. Its methods may be called from several goroutines at once.
type Monitor struct {
	registry *prometheus.Registry
	messages *prometheus.CounterVec
	answer   *prometheus.HistogramVec
	unread   *prometheus.CounterVec
	silent   prometheus.Counter

	mu     sync.Mutex
	checks []check
}

// A check is one thing that must be well for the bot to be ready.
type check struct {
	what string
	well func(context.Context) error
}

// New returns a monitor that has counted nothing yet.
func New() *Monitor {
	m := &Monitor{
		registry: prometheus.NewRegistry(),
		messages: prometheus.NewCounterVec(prometheus.CounterOpts{
			Name: "presshand_messages_total", Help: "Messages answered, by service and by what they were about.",
		}, []string{"adapter", "topic"}),
		answer: prometheus.NewHistogramVec(prometheus.HistogramOpts{
			Name: "presshand_answer_seconds", Help: "From a message, by its service's clock, until the service took the reply.",
			Buckets: []float64{.05, .1, .25, .5, 1, 2.5, 5, 10, 30, 60, 300},
		}, []string{"adapter"}),
		unread: prometheus.NewCounterVec(prometheus.CounterOpts{
			Name: "presshand_unread_words_total", Help: "Words and numbers in messages that were not used, by service.",
		}, []string{"adapter"}),
		silent: prometheus.NewCounter(prometheus.CounterOpts{
			Name: "presshand_unanswered_total", Help: "Messages that got no reply because one person sent too many.",
		}),
	}
	m.registry.MustRegister(m.messages, m.answer, m.unread, m.silent,
		collectors.NewGoCollector(), collectors.NewProcessCollector(collectors.ProcessCollectorOpts{}))
	return m
}

// Reconnects has a service say how often it had to connect anew.
func (m *Monitor) Reconnects(service string, count func() int64) {
	m.registry.MustRegister(prometheus.NewCounterFunc(prometheus.CounterOpts{
		Name: "presshand_reconnects_total", Help: "How often the connection to a service was opened anew.",
		ConstLabels: prometheus.Labels{"adapter": service},
	}, func() float64 { return float64(count()) }))
}

// Ready adds something that must be well for the bot to be ready.
func (m *Monitor) Ready(what string, well func(context.Context) error) {
	m.mu.Lock()
	defer m.mu.Unlock()
	m.checks = append(m.checks, check{what, well})
}

// patience is how long a store or a service may take to say that it is well.
const patience = 2 * time.Second

// Handler serves /healthz, /readyz and /metrics.
func (m *Monitor) Handler() http.Handler {
	mux := http.NewServeMux()
	mux.HandleFunc("GET /healthz", func(w http.ResponseWriter, _ *http.Request) { fmt.Fprintln(w, "ok") })
	mux.HandleFunc("GET /readyz", m.ready)
	mux.Handle("GET /metrics", promhttp.HandlerFor(m.registry, promhttp.HandlerOpts{}))
	return mux
}

func (m *Monitor) ready(w http.ResponseWriter, r *http.Request) {
	m.mu.Lock()
	checks := m.checks
	m.mu.Unlock()
	ctx, done := context.WithTimeout(r.Context(), patience)
	defer done()
	code, text := http.StatusOK, ""
	for _, c := range checks {
		if err := c.well(ctx); err != nil {
			code = http.StatusServiceUnavailable
			text += fmt.Sprintf("%s: %v\n", c.what, err)
			continue
		}
		text += c.what + ": ok\n"
	}
	w.WriteHeader(code)
	fmt.Fprint(w, text)
}

// Store returns a store that counts what is recorded and sent on the way, and
// has its depth told.
func (m *Monitor) Store(s book.Store) book.Store {
	m.registry.MustRegister(depth{s})
	m.Ready("store", func(ctx context.Context) error {
		_, err := s.Depth(ctx)
		return err
	})
	return &counted{Store: s, monitor: m, claimed: map[string]book.Outgoing{}}
}
