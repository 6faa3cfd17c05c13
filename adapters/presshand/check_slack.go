package main

import (
	"context"
	"errors"
	"strings"

	"presshand/adapters/slack"
)

// slackAddress is that of Slack's Web API.
const slackAddress = "https://slack.com/api/"

// slack tries both tokens.
func (c *checking) slack(ctx context.Context) {
	s, wrong := c.config.slackConfig()
	for _, err := range wrong {
		c.say("slack", err, "")
	}
	if len(wrong) > 0 {
		return
	}
	address := slackAddress
	if s.API != "" {
		address = strings.TrimSuffix(s.API, "/") + "/"
	}
	c.clock(ctx, "slack", address+"api.test")
	for _, f := range slack.Check(ctx, s) {
		if f.OK {
			c.say("slack", nil, strings.TrimPrefix(f.What, "slack "))
			continue
		}
		c.say(strings.TrimSpace(f.What), errors.New(f.Todo), "")
	}
}
