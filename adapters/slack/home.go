package slack

import (
	"context"

	"github.com/slack-go/slack"

	"presshand/bot"
)

// home shows a person what can be said.
func (a *Slack) home(ctx context.Context, user string) {
	if _, err := a.calm.PublishViewContext(ctx, slack.PublishViewContextRequest{UserID: user, View: homeView(a.Metric(""))}); err != nil {
		a.Log.Warn("slack: home not shown", "error", err)
	}
}

// homeView stands outside any room: it shows the units that rooms have which
// nobody set.
func homeView(metric bool) slack.HomeTabViewRequest {
	section := func(text string) slack.Block {
		return slack.NewSectionBlock(slack.NewTextBlockObject(slack.MarkdownType, text, false, false), nil, nil)
	}
	blocks := []slack.Block{
		slack.NewHeaderBlock(slack.NewTextBlockObject(slack.PlainTextType, "Pressing wood under vacuum", false, false)),
		section("Write to me here, or name me in a channel that I am in: *@presshand* or *press,* and your question. I answer in the thread; go on there without my name."),
		slack.NewDividerBlock(),
	}
	for _, e := range bot.Examples(metric) {
		blocks = append(blocks, section("`"+escape.Replace(e)+"`"))
	}
	blocks = append(blocks, slack.NewDividerBlock(),
		section("*The load book.* Say *post it* in the thread of a load. Somebody else measures it and presses *Check …*, or says “"+bot.CheckExample(14, metric)+"”. Then *14 in*, *14 out*, *14 result: good*."),
		section("Buttons and reactions hold a load (:raised_hand:), clear it (:arrow_forward:), take it in (:inbox_tray:) and out (:outbox_tray:). No reaction checks a load: a check says what was measured."),
	)
	return slack.HomeTabViewRequest{Type: slack.VTHomeTab, Blocks: slack.Blocks{BlockSet: blocks}}
}
