package main

import (
	"context"
	"errors"
	"fmt"
	"strings"
	"sync"
	"time"

	"presshand/adapters/slack"
	"presshand/bot/book"
	"presshand/bot/desk"
)

// slackConfig returns the adapter's settings, with the tokens read.
func (c *config) slackConfig() (slack.Config, error) {
	bot, err := needed("slack bot token", slackBotToken, c.Slack.BotToken)
	if err != nil {
		return slack.Config{}, err
	}
	app, err := needed("slack app token", slackAppToken, c.Slack.AppToken)
	if err != nil {
		return slack.Config{}, err
	}
	for _, t := range []struct{ what, token, prefix string }{{"bot", bot, "xoxb-"}, {"app", app, "xapp-"}} {
		if !strings.HasPrefix(t.token, t.prefix) {
			return slack.Config{}, hint(fmt.Errorf("slack %s token does not begin with %s", t.what, t.prefix), "copy it anew from the app's page")
		}
	}
	return slack.Config{BotToken: bot, AppToken: app, API: c.Slack.API, MaxAge: time.Duration(c.CatchUp)}, nil
}

func (c *config) slackService() (service, error) {
	settings, err := c.slackConfig()
	if err != nil {
		return nil, err
	}
	return func(p *process) func(context.Context) error { return p.slack(settings) }, nil
}

// slack brings messages in and replies out.
func (p *process) slack(c slack.Config) func(context.Context) error {
	c.Log = p.log
	c.Prefix = func(room string) []string { return p.rules.Load().in(room).prefix }
	c.Metric = func(room string) bool { return p.rules.Load().in(room).Metric }
	c.Allowed = func(room string) bool { return p.rules.Load().served(room) }
	c.Person = func(user, name string) book.Person { return p.rules.Load().person(user, name) }
	d := p.desk(slack.Service)
	a := slack.New(c, d, p.store)
	d.Senders = map[string]desk.Sender{slack.Service: a}
	p.monitor.Reconnects(slack.Service, a.Reconnects)
	p.monitor.Ready(slack.Service, func(context.Context) error {
		if !a.Connected() {
			return errors.New("not connected")
		}
		return nil
	})
	return func(ctx context.Context) error {
		if err := d.Resume(ctx); err != nil {
			return storeTrouble(err)
		}
		var wg sync.WaitGroup
		defer wg.Wait()
		working, stop := context.WithCancel(ctx)
		defer stop()
		wg.Go(func() { d.Run(working) })
		return a.Run(ctx)
	}
}
