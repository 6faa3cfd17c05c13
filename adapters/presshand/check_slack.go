package main

import "context"

// slackAddress is that of Slack's Web API.
const slackAddress = "https://slack.com/api/"

// slack tries both tokens.
func (c *checking) slack(ctx context.Context) {
	s, err := c.config.slackConfig()
	if err != nil {
		c.say("slack", err, "")
		return
	}
	address := slackAddress
	if s.API != "" {
		address = s.API
	}
	c.clock(ctx, "slack", address+"api.test")
}
