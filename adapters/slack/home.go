package slack

import (
	"context"

	"github.com/slack-go/slack"
)

// examples are what the home shows to try.
var examples = []string{
	"5 strips 2 1/4 wide, 1/4 thick, 1 in bar, 25 inHg, yellow glue",
	"what bar for 50 psi at the far joint",
	"got 12 at 2 1/8, 9 at 3, 7 at 3 3/4; need 48 wide",
	"how much pva for 8 panels 24x48 of 2 1/4 strips 3/4 thick",
	"14 panels 24x48, two presses, start 7:30, pva at 65f",
	"our press is a 4x8, 4 in opening, 5 cfm, we're at 5280 ft",
}

// home shows a person what can be said.
func (a *Slack) home(ctx context.Context, user string) {
	if _, err := a.calm.PublishViewContext(ctx, slack.PublishViewContextRequest{UserID: user, View: homeView()}); err != nil {
		a.Log.Warn("slack: home not shown", "error", err)
	}
}

func homeView() slack.HomeTabViewRequest {
	section := func(text string) slack.Block {
		return slack.NewSectionBlock(slack.NewTextBlockObject(slack.MarkdownType, text, false, false), nil, nil)
	}
	blocks := []slack.Block{
		slack.NewHeaderBlock(slack.NewTextBlockObject(slack.PlainTextType, "Pressing wood under vacuum", false, false)),
		section("Write to me here, or name me in a channel that I am in: *@presshand* or *press,* and your question. I answer in the thread; go on there without my name."),
		slack.NewDividerBlock(),
	}
	for _, e := range examples {
		blocks = append(blocks, section("`"+escape.Replace(e)+"`"))
	}
	blocks = append(blocks, slack.NewDividerBlock(),
		section("*The load book.* Say *post it* in the thread of a load. Somebody else measures it and presses *Check …*, or says “14 checked, bar 1 in, strips 1/4, gauge 25”. Then *14 in*, *14 out*, *14 result: good*."),
		section("Buttons and reactions hold a load (:raised_hand:), clear it (:arrow_forward:), take it in (:inbox_tray:) and out (:outbox_tray:). No reaction checks a load: a check says what was measured."),
	)
	return slack.HomeTabViewRequest{Type: slack.VTHomeTab, Blocks: slack.Blocks{BlockSet: blocks}}
}
