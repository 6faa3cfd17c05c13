package slackfake

import (
	"encoding/json"
	"fmt"
	"slices"
	"strings"
	"time"
)

// A kind is a kind of conversation: what it is called in a list of
// conversations, what events call it, and what the scopes for it begin with.
type kind struct{ listed, told, scope string }

var (
	public  = kind{"public_channel", "channel", "channels"}
	private = kind{"private_channel", "group", "groups"}
	direct  = kind{"im", "im", "im"}
	several = kind{"mpim", "mpim", "mpim"}
)

// A channel is a conversation of any kind.
type channel struct {
	kind
	ID, Name string
	with     string // the other person of a direct conversation
	messages []*message
	posted   time.Time // the app's latest message
	left     bool
}

type user struct {
	ID, Name string
	bot      bool
}

// A message as Slack keeps it.
type message struct {
	TS, Thread, User, Text string
	Bot                    bool
	SubType                string
	Edited                 string // ts of the latest edit
	Blocks                 json.RawMessage
	Metadata               json.RawMessage
	Reactions              []reaction
	File                   *upload
	events                 []string // ids of the events that told of it
	inner                  []map[string]any
	private                string // the only person who sees it
	unfurl, mrkdwn         string // as the app asked for
}

type reaction struct {
	Name  string
	Users []string
}

// Message is what people see of a message.
type Message struct {
	TS, Thread, User, Text string
	Blocks, Metadata       json.RawMessage
	Private                string // who alone sees it
	File, Alt, Title       string // id, alt text and title of a picture
	Bytes                  int    // size of the picture
	Unfurls                bool   // links would be previewed
	Mrkdwn                 bool   // the text is read as markup, where no blocks stand for it
	Reactions              []string
}

// ts returns the next timestamp; s.mu is held.
func (s *Server) ts() string {
	s.last = max(s.last+1, s.opt.Clock().UnixMicro())
	return fmt.Sprintf("%d.%06d", s.last/1e6, s.last%1e6)
}

// Time is when a timestamp was given.
func Time(ts string) time.Time {
	var sec, micro int64
	if _, err := fmt.Sscanf(ts, "%d.%06d", &sec, &micro); err != nil {
		return time.Time{}
	}
	return time.UnixMicro(sec*1e6 + micro).UTC()
}

// Channel opens a public channel with the app in it.
func (s *Server) Channel(name string) string {
	return s.add(&channel{kind: public, ID: "C" + s.id(), Name: name})
}

// Private opens a private channel with the app in it.
func (s *Server) Private(name string) string {
	return s.add(&channel{kind: private, ID: "C" + s.id(), Name: name})
}

// Group opens a conversation of several people with the app.
func (s *Server) Group(name string) string {
	return s.add(&channel{kind: several, ID: "G" + s.id(), Name: name})
}

// Direct opens the app's conversation with one person, or finds it.
func (s *Server) Direct(user string) string {
	s.mu.Lock()
	for _, c := range s.channels {
		if c.with == user {
			s.mu.Unlock()
			return c.ID
		}
	}
	s.mu.Unlock()
	return s.add(&channel{kind: direct, ID: "D" + s.id(), with: user})
}

// Leave has the app thrown out of a channel.
func (s *Server) Leave(channel string) {
	s.mu.Lock()
	defer s.mu.Unlock()
	s.channels[channel].left = true
}

func (s *Server) add(c *channel) string {
	s.mu.Lock()
	defer s.mu.Unlock()
	s.channels[c.ID] = c
	return c.ID
}

// User adds a person, or finds one of that name.
func (s *Server) User(name string) string { return s.person(name, false) }

// Bot adds another bot.
func (s *Server) Bot(name string) string { return s.person(name, true) }

func (s *Server) person(name string, bot bool) string {
	s.mu.Lock()
	defer s.mu.Unlock()
	id := "U" + strings.ToUpper(name)
	if s.users[id] == nil {
		s.users[id] = &user{ID: id, Name: name, bot: bot}
	}
	return id
}

// at returns a message of a channel; s.mu is held.
func (c *channel) at(ts string) *message {
	if c == nil {
		return nil
	}
	i := slices.IndexFunc(c.messages, func(m *message) bool { return m.TS == ts })
	if i < 0 {
		return nil
	}
	return c.messages[i]
}

// Thread returns what the app shows in a thread, the root included if it is
// the app's.
func (s *Server) Thread(channel, root string) []Message {
	return s.messages(channel, func(m *message) bool { return m.Bot && m.User == BotUser && (m.Thread == root || m.TS == root) })
}

// Messages returns all messages of a channel.
func (s *Server) Messages(channel string) []Message {
	return s.messages(channel, func(*message) bool { return true })
}

func (s *Server) messages(channel string, want func(*message) bool) []Message {
	s.mu.Lock()
	defer s.mu.Unlock()
	c := s.channels[channel]
	if c == nil {
		return nil
	}
	var out []Message
	for _, m := range c.messages {
		if want(m) {
			out = append(out, m.seen())
		}
	}
	return out
}

func (m *message) seen() Message {
	out := Message{
		TS: m.TS, Thread: m.Thread, User: m.User, Text: m.Text, Blocks: m.Blocks, Metadata: m.Metadata, Private: m.private,
		Unfurls: m.unfurl != "false,false", Mrkdwn: m.mrkdwn != "false",
	}
	for _, r := range m.Reactions {
		out.Reactions = append(out.Reactions, r.Name)
	}
	if m.File != nil {
		out.File, out.Alt, out.Title, out.Bytes = m.File.id, m.File.alt, m.File.title, len(m.File.got)
	}
	return out
}

// json is a message as events and histories show it.
func (m *message) json(c *channel) map[string]any {
	out := map[string]any{"type": "message", "user": m.User, "text": m.Text, "ts": m.TS, "team": Team}
	if m.Thread != "" {
		out["thread_ts"] = m.Thread
		if root := c.at(m.Thread); root != nil && root != m {
			out["parent_user_id"] = root.User
		}
	}
	if m.Bot {
		out["bot_id"], out["app_id"] = "B"+strings.TrimPrefix(m.User, "U"), "A1"
	}
	if m.SubType != "" {
		out["subtype"] = m.SubType
	}
	if m.Edited != "" {
		out["edited"] = map[string]any{"user": m.User, "ts": m.Edited}
	}
	if m.File != nil {
		out["files"] = []any{m.File.json()}
		out["upload"] = true
	}
	if len(m.Blocks) > 0 {
		out["blocks"] = m.Blocks
	}
	return out
}

// history is a message as histories show it, with what its thread holds.
func (m *message) history(c *channel, metadata bool) map[string]any {
	out := m.json(c)
	if metadata && len(m.Metadata) > 0 {
		out["metadata"] = m.Metadata
	}
	var replies []*message
	users := map[string]bool{}
	for _, x := range c.messages {
		if x.Thread == m.TS && x != m && x.private == "" {
			replies = append(replies, x)
			users[x.User] = true
		}
	}
	if len(replies) > 0 {
		names := []string{}
		for u := range users {
			names = append(names, u)
		}
		out["thread_ts"], out["reply_count"], out["reply_users"] = m.TS, len(replies), names
		out["latest_reply"] = replies[len(replies)-1].TS
	}
	return out
}
