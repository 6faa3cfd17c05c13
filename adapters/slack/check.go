package slack

import (
	"context"
	"errors"
	"fmt"
	"strings"

	"github.com/slack-go/slack"
)

// A Scope is a permission of the bot token and what it is for.
type Scope struct{ Name, For string }

// Scopes are the permissions that the bot token must have.
var Scopes = []Scope{
	{"app_mentions:read", "to hear when it is named"},
	{"channels:history", "to hear what goes on in its threads, and to read what it missed"},
	{"channels:read", "to know which public channels to read after an outage"},
	{"chat:write", "to answer"},
	{"commands", "for /press"},
	{"files:read", "to find a picture again before sending it twice"},
	{"files:write", "to put pictures into the thread"},
	{"groups:history", "the same as channels:history in private channels that it was invited to"},
	{"groups:read", "the same as channels:read for private channels"},
	{"im:history", "to hear direct messages to it"},
	{"im:read", "to know which direct messages to read after an outage"},
	{"metadata.message:read", "to find an answer again before sending it twice"},
	{"mpim:history", "the same as channels:history in group messages"},
	{"mpim:read", "the same as channels:read for group messages"},
	{"reactions:read", "to take reactions on a load: hold, clear, in and out"},
	{"reactions:write", "to mark a message as seen"},
	{"users:read", "to call people by their names"},
}

// A Finding is one thing that was looked at before serving.
type Finding struct {
	What string
	OK   bool
	Todo string // what to do about it where it is not OK
}

// Check looks whether the adapter would work, without posting anything. The
// tokens themselves are in no finding.
func Check(ctx context.Context, c Config) []Finding {
	found := []Finding{
		prefixed("bot token", c.BotToken, "xoxb-", "OAuth & Permissions"),
		prefixed("app token", c.AppToken, "xapp-", "Basic Information, App-Level Tokens"),
	}
	a := New(c, nil, nil)
	if found[0].OK {
		found = append(found, a.checkBot(ctx)...)
	}
	if found[1].OK {
		found = append(found, a.checkSocket(ctx))
	}
	return found
}

func prefixed(what, token, prefix, page string) Finding {
	f := Finding{What: "slack " + what + " is set"}
	switch {
	case token == "":
		f.Todo = fmt.Sprintf("no %s: copy the one that begins with %s from the app's page, %s", what, prefix, page)
	case !strings.HasPrefix(token, prefix):
		f.Todo = fmt.Sprintf("the %s does not begin with %s: copy the right one from the app's page, %s", what, prefix, page)
	default:
		f.OK = true
	}
	return f
}

// checkBot asks Slack who the bot is and what it may.
func (a *Slack) checkBot(ctx context.Context) []Finding {
	who, err := a.calm.AuthTestContext(ctx)
	if err != nil {
		return []Finding{{What: "slack takes the bot token", Todo: refusedTodo(err, "OAuth & Permissions, then reinstall the app")}}
	}
	found := []Finding{{What: fmt.Sprintf("slack takes the bot token, as %s in %s", who.User, who.Team), OK: true}}
	has := map[string]bool{}
	for scope := range strings.SplitSeq(who.Header.Get("X-OAuth-Scopes"), ",") {
		has[strings.TrimSpace(scope)] = true
	}
	missing := false
	for _, s := range Scopes {
		if !has[s.Name] {
			missing = true
			found = append(found, Finding{What: "slack scope " + s.Name, Todo: fmt.Sprintf("missing, wanted %s: add it under OAuth & Permissions, Bot Token Scopes, and reinstall the app", s.For)})
		}
	}
	if !missing {
		found = append(found, Finding{What: fmt.Sprintf("slack gives all %d scopes", len(Scopes)), OK: true})
	}
	return found
}

// checkSocket asks for the address of a socket and does not open it.
func (a *Slack) checkSocket(ctx context.Context) Finding {
	f := Finding{What: "slack opens a socket"}
	_, _, err := a.calm.StartSocketModeContext(ctx)
	var e slack.SlackErrorResponse
	switch {
	case err == nil:
		f.OK = true
	case errors.As(err, &e) && e.Err == "missing_scope":
		f.Todo = "the app token lacks connections:write: make a new one with it under Basic Information, App-Level Tokens"
	case errors.As(err, &e) && (e.Err == "not_allowed_token_type" || e.Err == "socket_mode_not_enabled"):
		f.Todo = "Socket Mode is off: turn it on under Socket Mode"
	default:
		f.Todo = refusedTodo(err, "Basic Information, App-Level Tokens")
	}
	return f
}

func refusedTodo(err error, page string) string {
	if code := codeOf(err); code != "" {
		return fmt.Sprintf("slack refuses it (%s): make a new one under %s", code, page)
	}
	return fmt.Sprintf("slack is not reached (%v): see that this machine may call out over https", err)
}
