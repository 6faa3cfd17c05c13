package main

import (
	"context"
	"errors"
	"fmt"
	"slices"
	"strings"
	"sync"
	"time"

	"presshand/adapters/slack"
	"presshand/bot/book"
	"presshand/bot/desk"
)

// slackConfig returns the adapter's settings, with the tokens read. Every token
// that is not well is named.
func (c *config) slackConfig() (slack.Config, []error) {
	bot, noBot := slackToken("slack bot token", slackBotToken, c.Slack.BotToken, "xoxb-")
	app, noApp := slackToken("slack app token", slackAppToken, c.Slack.AppToken, "xapp-")
	wrong := slices.DeleteFunc([]error{noBot, noApp}, func(err error) bool { return err == nil })
	return slack.Config{BotToken: bot, AppToken: app, API: c.Slack.API, MaxAge: time.Duration(c.CatchUp)}, wrong
}

func slackToken(what, variable, file, prefix string) (string, error) {
	token, err := needed(what, variable, file)
	if err == nil && !strings.HasPrefix(token, prefix) {
		err = hint(fmt.Errorf("%s does not begin with %s", what, prefix), "copy it anew from the app's page")
	}
	return token, err
}

func (c *config) slackService() (service, error) {
	settings, wrong := c.slackConfig()
	if len(wrong) > 0 {
		return nil, errors.Join(wrong...)
	}
	return func(p *process) func(context.Context) error { return p.slack(settings) }, nil
}

// slackPosts is how many channels are sent to at once: Slack takes some tenths of
// a second to take a reply. More answers at once would only wait for the store,
// and acknowledgements with them.
const slackPosts = 8

// slack brings messages in and replies out.
func (p *process) slack(c slack.Config) func(context.Context) error {
	c.Log = p.log
	c.Prefix = func(room string) []string { return p.rules.Load().in(room).prefix }
	c.Metric = func(room string) bool { return p.rules.Load().in(room).Metric }
	c.Allowed = func(room string) bool { return p.rules.Load().served(room) }
	c.Person = func(user, name string) book.Person { return p.rules.Load().person(user, name) }
	d := p.desk(slack.Service)
	d.Posts = slackPosts
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
