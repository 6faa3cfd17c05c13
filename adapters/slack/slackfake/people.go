package slackfake

import (
	"encoding/json"
	"fmt"
	"html"
	"strings"
	"time"
)

// Saying is something that a person says, in Slack's own markup.
type Saying struct {
	Channel, User, Text string
	Thread              string // ts of the root, or ""
	Blocks              string // as JSON, or ""
}

// Mention is how the app is named in a text.
const Mention = "<@" + BotUser + ">"

// Typed is what Slack makes of something typed.
func Typed(text string) string {
	return strings.NewReplacer("&", "&amp;", "<", "&lt;", ">", "&gt;").Replace(text)
}

// Plain is what people read of a text in Slack's markup that has no mentions
// or links.
func Plain(text string) string { return html.UnescapeString(text) }

// Say has a person say something, tells the app, and returns the ts.
func (s *Server) Say(p Saying) string {
	s.mu.Lock()
	c := s.channels[p.Channel]
	m := &message{TS: s.ts(), Thread: p.Thread, User: p.User, Text: p.Text, Blocks: json.RawMessage(p.Blocks)}
	if u := s.users[p.User]; u != nil {
		m.Bot = u.bot
	}
	c.messages = append(c.messages, m)
	inner := s.told(c, m)
	s.mu.Unlock()
	s.tell(c.ID, m, inner)
	return m.TS
}

// told is what the app is told of a new message; s.mu is held.
func (s *Server) told(c *channel, m *message) []map[string]any {
	e := m.json(c)
	e["channel"], e["channel_type"], e["event_ts"] = c.ID, c.told, m.TS
	out := []map[string]any{e}
	if c.kind != direct && strings.Contains(m.Text, Mention) && m.User != BotUser {
		a := m.json(c)
		a["type"], a["channel"], a["event_ts"] = "app_mention", c.ID, m.TS
		out = append(out, a)
	}
	return out
}

func (s *Server) tell(_ string, m *message, inner []map[string]any) {
	for _, e := range inner {
		id := "Ev" + s.id()
		s.mu.Lock()
		m.events, m.inner = append(m.events, id), append(m.inner, e)
		s.mu.Unlock()
		s.emitAs(id, e)
	}
}

// Redeliver sends the events that told of a message once more, under their
// own ids, as Slack does when an acknowledgement got lost.
func (s *Server) Redeliver(channel, ts string) {
	s.mu.Lock()
	m := s.channels[channel].at(ts)
	ids, inner := append([]string(nil), m.events...), append([]map[string]any(nil), m.inner...)
	s.mu.Unlock()
	for i := range ids {
		s.emitAs(ids[i], inner[i])
	}
}

// Edit has a person change a message.
func (s *Server) Edit(channel, ts, text string) {
	s.mu.Lock()
	c := s.channels[channel]
	e := s.changed(c, c.at(ts), text)
	s.mu.Unlock()
	s.emit(e)
}

// changed changes a message and returns what the app is told; s.mu is held.
func (s *Server) changed(c *channel, m *message, text string) map[string]any {
	before := m.json(c)
	m.Text, m.Edited = text, s.ts()
	return map[string]any{
		"type": "message", "subtype": "message_changed", "hidden": true, "channel": c.ID, "ts": m.Edited, "event_ts": m.Edited,
		"message": m.json(c), "previous_message": before,
	}
}

// React adds a person's reaction to a message, or takes it away.
func (s *Server) React(channel, ts, user, name string, add bool) string {
	s.mu.Lock()
	item := s.channels[channel].at(ts)
	at := s.ts()
	author := ""
	if item != nil {
		author = item.User
	}
	s.mu.Unlock()
	kind := "reaction_added"
	if !add {
		kind = "reaction_removed"
	}
	return s.emit(map[string]any{
		"type": kind, "user": user, "reaction": name, "item_user": author, "event_ts": at,
		"item": map[string]any{"type": "message", "channel": channel, "ts": ts},
	})
}

// OpenHome has a person look at the app's home.
func (s *Server) OpenHome(user string) {
	s.mu.Lock()
	at := s.ts()
	s.mu.Unlock()
	s.emit(map[string]any{"type": "app_home_opened", "user": user, "channel": "D0", "tab": "home", "event_ts": at})
}

// Home returns the view that a person sees there.
func (s *Server) Home(user string) json.RawMessage {
	s.mu.Lock()
	defer s.mu.Unlock()
	return s.homes[user]
}

// trigger returns an id with which a form can be opened for a while.
func (s *Server) trigger() string {
	id := "trigger." + s.id()
	s.mu.Lock()
	defer s.mu.Unlock()
	s.triggers[id] = time.Now()
	return id
}

// interact sends an interaction and waits for its acknowledgement.
func (s *Server) interact(kind string, payload map[string]any) (json.RawMessage, error) {
	e := &event{id: "In" + s.id(), kind: kind, payload: payload, once: true, done: make(chan json.RawMessage, 1)}
	s.sockets.deliver(e)
	select {
	case answer, ok := <-e.done:
		if !ok {
			return nil, fmt.Errorf("%s was not acknowledged", kind)
		}
		return answer, nil
	case <-time.After(2*s.opt.Ack + time.Second):
		return nil, fmt.Errorf("%s was not acknowledged", kind)
	}
}

// Command has a person type a slash command.
func (s *Server) Command(channel, user, command, text string) (json.RawMessage, error) {
	return s.interact("slash_commands", map[string]any{
		"token": "none", "team_id": Team, "channel_id": channel, "channel_name": "x", "user_id": user, "user_name": "x",
		"command": command, "text": text, "response_url": s.http.URL + "/response/" + channel + "/" + user, "trigger_id": s.trigger(), "api_app_id": "A1",
	})
}

// Click has a person press a button of a message.
func (s *Server) Click(channel, ts, user, actionID string) error {
	s.mu.Lock()
	m := s.channels[channel].at(ts)
	now := s.ts()
	s.mu.Unlock()
	value, block, ok := button(m.Blocks, actionID)
	if !ok {
		return fmt.Errorf("message %s has no button %q", ts, actionID)
	}
	return s.press(channel, m, user, block, actionID, value, now)
}

// Press has a person press a button that a message had before it was changed.
func (s *Server) Press(channel, ts, user, actionID, value string) error {
	s.mu.Lock()
	m := s.channels[channel].at(ts)
	now := s.ts()
	s.mu.Unlock()
	return s.press(channel, m, user, "load", actionID, value, now)
}

func (s *Server) press(channel string, m *message, user, block, actionID, value, now string) error {
	s.mu.Lock()
	shown := m.json(s.channels[channel])
	s.mu.Unlock()
	_, err := s.interact("interactive", map[string]any{
		"type": "block_actions", "team": map[string]any{"id": Team}, "user": map[string]any{"id": user, "username": "x", "team_id": Team},
		"api_app_id": "A1", "token": "none", "trigger_id": s.trigger(), "channel": map[string]any{"id": channel, "name": "x"}, "message": shown,
		"container": map[string]any{"type": "message", "message_ts": m.TS, "channel_id": channel, "thread_ts": m.Thread, "is_ephemeral": false},
		"actions": []any{map[string]any{
			"action_id": actionID, "block_id": block, "value": value, "type": "button", "action_ts": now,
			"text": map[string]any{"type": "plain_text", "text": "x"},
		}},
	})
	return err
}

// button finds a button in blocks.
func button(blocks json.RawMessage, actionID string) (value, block string, ok bool) {
	var all []struct {
		BlockID  string `json:"block_id"`
		Elements []struct {
			ActionID string `json:"action_id"`
			Value    string `json:"value"`
		} `json:"elements"`
	}
	if json.Unmarshal(blocks, &all) != nil {
		return "", "", false
	}
	for _, b := range all {
		for _, e := range b.Elements {
			if e.ActionID == actionID {
				return e.Value, b.BlockID, true
			}
		}
	}
	return "", "", false
}

// form is a view that is open before a person.
type form struct {
	ID   string
	User string
	View json.RawMessage
}

// Form returns the latest form opened.
func (s *Server) Form() (id string, view json.RawMessage) {
	s.mu.Lock()
	defer s.mu.Unlock()
	if len(s.forms) == 0 {
		return "", nil
	}
	f := s.forms[len(s.forms)-1]
	return f.ID, f.View
}

// Submit fills a form in, by the ids of its blocks, and sends it. The answer
// is what the app acknowledged with: errors, or nothing.
func (s *Server) Submit(id, user string, fields map[string]string) (json.RawMessage, error) {
	s.mu.Lock()
	var view map[string]any
	for _, f := range s.forms {
		if f.ID == id {
			if err := json.Unmarshal(f.View, &view); err != nil {
				s.mu.Unlock()
				return nil, err
			}
		}
	}
	s.mu.Unlock()
	if view == nil {
		return nil, fmt.Errorf("no form %q is open", id)
	}
	values := map[string]any{}
	blocks, _ := view["blocks"].([]any)
	for _, b := range blocks {
		input, _ := b.(map[string]any)
		element, ok := input["element"].(map[string]any)
		if !ok {
			continue
		}
		block, _ := input["block_id"].(string)
		action, _ := element["action_id"].(string)
		var value any
		if v, filled := fields[block]; filled {
			value = v
		}
		values[block] = map[string]any{action: map[string]any{"type": element["type"], "value": value}}
	}
	view["id"], view["state"], view["hash"] = id, map[string]any{"values": values}, "1.x"
	return s.interact("interactive", map[string]any{
		"type": "view_submission", "team": map[string]any{"id": Team}, "user": map[string]any{"id": user, "username": "x", "team_id": Team},
		"api_app_id": "A1", "token": "none", "trigger_id": s.trigger(), "view": view, "response_urls": []any{},
	})
}
