package main

import (
	"os"
	"regexp"
	"strings"
	"testing"

	"presshand/adapters/slack/slackfake"
)

// What the set-up page for Slack has people write leads to a first answer.
func TestSetup_slackPageLeadsToAnAnswer(t *testing.T) {
	page, err := os.ReadFile("../slack/SETUP.md")
	if err != nil {
		t.Fatal(err)
	}
	block := regexp.MustCompile("(?s)```toml\n(.*?)```").FindSubmatch(page)
	if block == nil {
		t.Fatal("the page shows no settings")
	}
	s := &served{Server: slackfake.New(t, slackfake.Options{Scopes: scopes()}), t: t, listen: freeAddress(t), config: "presshand.toml"}
	s.room = s.Channel("press-room")
	t.Chdir(t.TempDir())
	t.Setenv(slackBotToken, "")
	t.Setenv(slackAppToken, "")
	t.Setenv(storeAddress, "")
	// the stand-in is not where Slack is, and the usual port may be taken here
	settings := "listen = \"" + s.listen + "\"\n" + string(block[1]) + "api = \"" + s.URL() + "\"\n"
	for name, text := range map[string]string{
		"presshand.toml": settings, "slack-bot-token": slackfake.BotToken + "\n", "slack-app-token": slackfake.AppToken + "\n",
	} {
		if !strings.Contains(string(page), name) {
			t.Errorf("the page does not name %s", name)
		}
		if err := os.WriteFile(name, []byte(text), 0o600); err != nil {
			t.Fatal(err)
		}
	}
	if code, out, errs := ran(t, "", "check", "--config", s.config); code != exitOK {
		t.Fatalf("check: code %d, %s%s", code, out, errs)
	}
	s.start()
	if got := s.ask("5 strips 2 1/4 wide, 1/4 thick, 1 in bar, 25 inHg, yellow glue"); !strings.Contains(got, "Read as 5 strips") {
		t.Errorf("the first answer is %q", got)
	}
	s.end()
}
