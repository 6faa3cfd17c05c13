package main

import (
	"context"
	"fmt"
	"io"
	"strings"

	"presshand/bot"
	"presshand/bot/bottest"
	"presshand/testdata/talk"
)

// demoScene is what the demo plays.
const demoScene = "boatyard-morning.txtar"

// demoCmd shows a conversation.
type demoCmd struct{}

// Run plays the scene with a bot of its own, which answers now as it did then.
func (demoCmd) Run(ctx context.Context, s streams) error {
	text, err := talk.Scenes.ReadFile(demoScene)
	if err != nil {
		return hint(fmt.Errorf("there is no demo: %w", err), "build the program from a whole checkout")
	}
	scene, err := bottest.Read(text)
	if err != nil {
		return hint(fmt.Errorf("demo cannot be read: %w", err), "build the program from a whole checkout")
	}
	return play(ctx, scene, s.out)
}

// play prints who says what and what the bot answers.
func play(ctx context.Context, scene bottest.Scene, to io.Writer) error {
	if _, err := fmt.Fprintf(to, "%s\n", scene.Heading); err != nil {
		return unwritable(err)
	}
	return bottest.Perform(ctx, scene, func(turn bottest.Turn, r bot.Reply) error {
		m := turn.Message
		_, err := fmt.Fprintf(to, "\n%s %s: %s\n%s\n", m.At.Format("15:04"), m.From, m.Text, indented(r.Text))
		if err != nil {
			return unwritable(err)
		}
		return nil
	})
}

func indented(text string) string {
	return "    " + strings.ReplaceAll(text, "\n", "\n    ")
}
