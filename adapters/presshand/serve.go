package main

import (
	"context"
	"errors"
	"fmt"
	"log/slog"
	"net"
	"net/http"
	"os"
	"os/signal"
	"sync"
	"sync/atomic"
	"syscall"
	"time"

	"presshand/adapters/health"
	"presshand/bot"
	"presshand/bot/book"
	"presshand/bot/desk"
)

// serveCmd serves chat services.
type serveCmd struct {
	Config string `required:"" placeholder:"FILE" help:"The configuration. The sample in the sources shows every key."`
}

// How long what is in hand may take once the process is told to stop. All
// together it is done, or given up, in less than ten seconds.
const (
	graceOfWork    = 7 * time.Second
	graceOfProcess = 9500 * time.Millisecond
)

// errLate says that something was still in hand when the grace was over. It is
// in the store, and is taken up again.
var errLate = errors.New("not all that was in hand could be finished in time; it is taken up at the next start")

// Run serves until the context is done, or until something is wrong that only
// people can mend.
func (c *serveCmd) Run(ctx context.Context, s streams) (err error) {
	conf, err := readConfig(c.Config)
	if err != nil {
		return err
	}
	services, err := conf.services()
	if err != nil {
		return err
	}
	name, err := conf.store()
	if err != nil {
		return err
	}
	kept, err := openStore(ctx, name)
	if err != nil {
		return storeTrouble(err)
	}
	p := newProcess(c.Config, conf, kept, s)
	done := make(chan error, 1)
	go func() { done <- errors.Join(p.run(ctx, services), kept.Close()) }()
	select {
	case err := <-done:
		return err
	case <-ctx.Done():
	}
	select {
	case err := <-done:
		return err
	case <-time.After(graceOfProcess):
		return errLate
	}
}

// A service gets ready in a process, and returns what runs until ctx is done.
// A process that is asked whether it is ready knows of all its services.
type service func(p *process) func(ctx context.Context) error

// services returns the services that a configuration turns on, with their
// secrets read.
func (c *config) services() ([]service, error) {
	var out []service
	if c.slack() {
		s, err := c.slackService()
		if err != nil {
			return nil, err
		}
		out = append(out, s)
	}
	if c.matrix() {
		s, err := c.matrixService()
		if err != nil {
			return nil, err
		}
		out = append(out, s)
	}
	if len(out) == 0 {
		return nil, hint(errors.New("configuration turns no chat service on"), "add a [slack] or a [matrix] table")
	}
	return out, nil
}

// A process is one run of serve.
type process struct {
	file    string
	conf    *config
	rules   atomic.Pointer[rules]
	name    string
	store   book.Store
	handler desk.Handler
	monitor *health.Monitor
	log     *slog.Logger
	level   *slog.LevelVar
}

func newProcess(file string, conf *config, kept book.Store, s streams) *process {
	p := &process{file: file, conf: conf, name: conf.Name, monitor: health.New()}
	if p.name == "" {
		host, _ := os.Hostname() // the number tells processes apart
		p.name = fmt.Sprintf("%s-%d", host, os.Getpid())
	}
	p.log, p.level = conf.Log.logger(s.err)
	p.rules.Store(conf.rules())
	p.store = p.monitor.Store(kept)
	b := bot.New(p.store)
	b.Settings = func(room string) bot.Settings { return p.rules.Load().in(room).Settings }
	clerk := bot.Clerk{
		Bot: b, Most: conf.Crowd, Log: p.log,
		Draw:     func(room string) bool { return p.rules.Load().in(room).pictures },
		Prefixes: func(room string) []string { return p.rules.Load().in(room).prefix },
	}
	p.handler = bot.StrictClerk{Clerk: clerk, Demands: func(room string) bool { return p.rules.Load().in(room).sealed }}
	return p
}

// run runs everything, and stops all when one of them cannot go on.
func (p *process) run(ctx context.Context, services []service) error {
	ctx, stop := context.WithCancelCause(ctx)
	defer stop(nil)
	var wg sync.WaitGroup
	start := func(f func(context.Context) error) {
		wg.Go(func() {
			if err := f(ctx); err != nil {
				stop(err)
			}
		})
	}
	var serving []func(context.Context) error
	for _, s := range services {
		serving = append(serving, s(p))
	}
	if p.conf.Listen != "" {
		l, err := net.Listen("tcp", p.conf.Listen)
		if err != nil {
			return hint(fmt.Errorf("health cannot be told: %w", err), `give listen another port, or "" to turn it off`)
		}
		start(func(ctx context.Context) error { return p.tell(ctx, l) })
	}
	start(p.reload)
	for _, s := range serving {
		start(s)
	}
	p.log.Info("presshand: serving", "version", version(), "name", p.name, "slack", p.conf.slack(), "matrix", p.conf.matrix())
	<-ctx.Done()
	p.log.Info("presshand: finishing what is in hand")
	wg.Wait()
	if err := context.Cause(ctx); !errors.Is(err, context.Canceled) {
		return err
	}
	return nil
}

// tell serves the health pages.
func (p *process) tell(ctx context.Context, l net.Listener) error {
	server := &http.Server{Handler: p.monitor.Handler(), ReadHeaderTimeout: 5 * time.Second}
	stop := context.AfterFunc(ctx, func() { server.Close() })
	defer stop()
	if err := server.Serve(l); !errors.Is(err, http.ErrServerClosed) {
		return fmt.Errorf("health cannot be told any more: %w", err)
	}
	return nil
}

// reload reads the configuration again at each SIGHUP.
func (p *process) reload(ctx context.Context) error {
	asked := make(chan os.Signal, 1)
	signal.Notify(asked, syscall.SIGHUP)
	defer signal.Stop(asked)
	for {
		select {
		case <-ctx.Done():
			return nil
		case <-asked:
			p.reread()
		}
	}
}

// reread takes in what can change while the process runs: rooms, people, the
// channels allowed on Slack and the level of the log.
func (p *process) reread() {
	c, err := readConfig(p.file)
	if err != nil {
		p.log.Error("presshand: configuration not taken in", "error", err)
		return
	}
	p.rules.Store(c.rules())
	level, _ := c.Log.level() // it was checked
	p.level.Set(level)
	p.log.Info("presshand: rooms, people and log level are read anew; the rest needs a restart")
}

// desk returns a desk for a service.
func (p *process) desk(service string) *desk.Desk {
	return &desk.Desk{
		Store: p.store, Handler: p.handler, Worker: p.name + "/" + service, Clock: time.Now, Log: p.log,
		Grace: graceOfWork, Keep: time.Duration(p.conf.KeepMessages), Most: p.conf.Crowd,
	}
}
