package slack_test

import (
	"maps"
	"os"
	"slices"
	"strings"
	"testing"

	"go.yaml.in/yaml/v3"

	slackgo "github.com/slack-go/slack"

	"presshand/adapters/slack"
	"presshand/adapters/slack/slackfake"
)

func scopeNames() []string {
	var out []string
	for _, s := range slack.Scopes {
		out = append(out, s.Name)
	}
	return out
}

// findings returns what is not well.
func findings(t *testing.T, o slackfake.Options, change func(*slackfake.Server, *slack.Config)) []slack.Finding {
	t.Helper()
	s := slackfake.New(t, o)
	c := slack.Config{BotToken: slackfake.BotToken, AppToken: slackfake.AppToken, API: strings.TrimSuffix(s.URL(), "/")}
	change(s, &c)
	var bad []slack.Finding
	for _, f := range slack.Check(t.Context(), c) {
		if f.OK == (f.Todo != "") {
			t.Errorf("finding %+v wants a hint where it is not well, and only there", f)
		}
		if strings.Contains(f.What+f.Todo, "xoxb-f") || strings.Contains(f.What+f.Todo, "xapp-f") {
			t.Errorf("finding %+v shows a token", f)
		}
		if !f.OK {
			bad = append(bad, f)
		}
	}
	if n := s.Calls("chat.postMessage") + s.Traffic().Opened; n > 0 {
		t.Errorf("the check posted or opened %d times", n)
	}
	return bad
}

func TestCheck_wellAndNot(t *testing.T) {
	all := slackfake.Options{Scopes: scopeNames()}
	for name, c := range map[string]struct {
		change func(*slackfake.Server, *slack.Config)
		want   string
	}{
		"well":            {func(*slackfake.Server, *slack.Config) {}, ""},
		"no bot token":    {func(_ *slackfake.Server, c *slack.Config) { c.BotToken = "" }, "no bot token"},
		"no app token":    {func(_ *slackfake.Server, c *slack.Config) { c.AppToken = "" }, "no app token"},
		"swapped":         {func(_ *slackfake.Server, c *slack.Config) { c.BotToken = c.AppToken }, "does not begin with xoxb-"},
		"wrong bot token": {func(_ *slackfake.Server, c *slack.Config) { c.BotToken = "xoxb-other" }, "invalid_auth"},
		"wrong app token": {func(_ *slackfake.Server, c *slack.Config) { c.AppToken = "xapp-other" }, "invalid_auth"},
		"no connections:write": {func(s *slackfake.Server, _ *slack.Config) {
			s.Fail("apps.connections.open", slackfake.Fault{Error: "missing_scope"})
		}, "connections:write"},
		"no way out": {func(_ *slackfake.Server, c *slack.Config) { c.API, c.AppToken = "http://127.0.0.1:1/api/", "" }, "not reached"},
	} {
		bad := findings(t, all, c.change)
		switch {
		case c.want == "" && len(bad) > 0:
			t.Errorf("%s: %+v, want nothing wrong", name, bad)
		case c.want != "" && !slices.ContainsFunc(bad, func(f slack.Finding) bool { return strings.Contains(f.Todo, c.want) }):
			t.Errorf("%s: found %+v, want one that says %q", name, bad, c.want)
		}
	}
}

// Each scope that is missing is named, and nothing else.
func TestCheck_missingScope(t *testing.T) {
	for _, missing := range scopeNames() {
		some := slices.DeleteFunc(scopeNames(), func(s string) bool { return s == missing })
		bad := findings(t, slackfake.Options{Scopes: some}, func(*slackfake.Server, *slack.Config) {})
		if len(bad) != 1 || !strings.Contains(bad[0].What, missing) {
			t.Errorf("without %s found %+v, want that named", missing, bad)
		}
	}
}

// needed are the events that the adapter lives on, each with the scope that it
// takes by Slack's documentation.
var needed = map[string]string{
	"app_home_opened": "", "app_mention": "app_mentions:read", "message.channels": "channels:history", "message.groups": "groups:history",
	"message.im": "im:history", "message.mpim": "mpim:history", "reaction_added": "reactions:read", "member_joined_channel": "channels:read",
}

func TestManifest_isWhatTheAdapterNeeds(t *testing.T) {
	f, err := os.Open("manifest.yaml")
	if err != nil {
		t.Fatal(err)
	}
	defer f.Close()
	var m slackgo.Manifest
	d := yaml.NewDecoder(f)
	d.KnownFields(true)
	if err := d.Decode(&m); err != nil {
		t.Fatalf("manifest has what Slack does not know: %v", err)
	}
	if got, want := m.OAuthConfig.Scopes.Bot, scopeNames(); !slices.Equal(got, want) {
		t.Errorf("scopes are %v, want %v", got, want)
	}
	if len(m.OAuthConfig.Scopes.User) > 0 || len(m.Features.UnfurlDomains) > 0 {
		t.Error("the manifest asks for more than a bot needs")
	}
	if !m.Settings.SocketModeEnabled || m.Settings.Interactivity == nil || !m.Settings.Interactivity.IsEnabled {
		t.Error("socket mode and interactivity must be on")
	}
	if h := m.Features.AppHome; !h.HomeTabEnabled || !h.MessagesTabEnabled || h.MessagesTabReadOnlyEnabled {
		t.Errorf("home is %+v, want both tabs, and messages to be written", h)
	}
	if b := m.Features.BotUser; b != (slackgo.BotUser{DisplayName: "presshand", AlwaysOnline: true}) {
		t.Errorf("bot user is %+v, want presshand, which the adapter answers to, always online", b)
	}
	if m.Settings.TokenRotationEnabled || m.Settings.OrgDeployEnabled {
		t.Error("tokens that rotate, and a whole organisation, are not served")
	}
	// escaped, a command's text would hold ids for what people typed
	if c := m.Features.SlashCommands; len(c) != 1 || c[0].Command != "/press" || c[0].ShouldEscape || c[0].Url != "" {
		t.Errorf("slash commands are %+v, want /press, unescaped, over the socket", c)
	}
	events := slices.Collect(maps.Keys(needed))
	slices.Sort(events)
	if got := m.Settings.EventSubscriptions.BotEvents; !slices.Equal(got, events) {
		t.Errorf("events are %v, want %v", got, events)
	}
	for event, scope := range needed {
		if scope != "" && !slices.Contains(m.OAuthConfig.Scopes.Bot, scope) {
			t.Errorf("event %s needs scope %s, which is not asked for", event, scope)
		}
	}
	for what, n := range map[string][2]int{"name": {len(m.Display.Name), 35}, "description": {len(m.Display.Description), 140}} {
		if n[0] == 0 || n[0] > n[1] {
			t.Errorf("%s has %d characters, want 1 to %d", what, n[0], n[1])
		}
	}
}

// The set-up page names every scope with its reason.
func TestSetup_namesEachScope(t *testing.T) {
	page, err := os.ReadFile("SETUP.md")
	if err != nil {
		t.Fatal(err)
	}
	for _, s := range slack.Scopes {
		if row := "| `" + s.Name + "` | " + s.For + " |"; !strings.Contains(string(page), row) {
			t.Errorf("SETUP.md lacks the row %q", row)
		}
	}
	for _, step := range []string{"From a manifest", "xoxb-", "xapp-", "connections:write", "go build -tags goolm", "presshand.toml", "store =", "bot_token_file", "app_token_file",
		"PRESSHAND_SLACK_BOT_TOKEN", "PRESSHAND_SLACK_APP_TOKEN", "presshand check", "presshand serve", "/invite", "three days"} {
		if !strings.Contains(string(page), step) {
			t.Errorf("SETUP.md lacks %q", step)
		}
	}
}
