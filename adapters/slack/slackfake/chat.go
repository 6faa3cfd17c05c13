package slackfake

import (
	"encoding/json"
	"net/http"
	"slices"
	"strconv"
	"strings"
	"time"
)

// place finds the channel of a call that writes; s.mu is held.
func (s *Server) place(id string) (*channel, answer) {
	c := s.channels[id]
	switch {
	case c == nil:
		return nil, failed("channel_not_found")
	case c.left:
		return nil, failed("not_in_channel")
	}
	return c, nil
}

// paced answers a message that comes too soon after the last one; s.mu is held.
func (s *Server) paced(c *channel) answer {
	wait := s.opt.Pace - time.Since(c.posted)
	if s.opt.Pace > 0 && wait > 0 {
		s.broken = append(s.broken, "rate of "+c.ID)
		return answer{"retry_after": strconv.Itoa(int(wait/time.Second) + 1)}
	}
	c.posted = time.Now()
	return nil
}

func (s *Server) postMessage(c call) answer {
	if bad := s.within(c); bad != nil {
		return bad
	}
	s.mu.Lock()
	room, bad := s.place(c.get("channel"))
	if bad == nil {
		bad = s.paced(room)
	}
	if bad != nil {
		s.mu.Unlock()
		return bad
	}
	m := &message{
		TS: s.ts(), Thread: c.get("thread_ts"), User: BotUser, Bot: true, Text: c.get("text"),
		Blocks: json.RawMessage(c.get("blocks")), Metadata: json.RawMessage(c.get("metadata")),
		unfurl: c.get("unfurl_links") + "," + c.get("unfurl_media"), mrkdwn: c.get("mrkdwn"),
	}
	if m.Thread != "" {
		if root := room.at(m.Thread); root == nil {
			m.Thread = "" // as Slack does where the root was deleted
		} else if root.Thread != "" && root.Thread != root.TS {
			s.broken = append(s.broken, "thread_ts of a reply")
		}
	}
	room.messages = append(room.messages, m)
	inner := s.told(room, m)
	s.mu.Unlock()
	s.tell(room.ID, m, inner)
	return answer{"channel": room.ID, "ts": m.TS, "message": inner[0]}
}

func (s *Server) postEphemeral(c call) answer {
	if bad := s.within(c); bad != nil {
		return bad
	}
	s.mu.Lock()
	defer s.mu.Unlock()
	room, bad := s.place(c.get("channel"))
	switch {
	case bad != nil:
		return bad
	case s.users[c.get("user")] == nil:
		return failed("user_not_in_channel")
	}
	m := &message{
		TS: s.ts(), Thread: c.get("thread_ts"), User: BotUser, Bot: true, Text: c.get("text"), private: c.get("user"),
		Blocks: json.RawMessage(c.get("blocks")), unfurl: c.get("unfurl_links") + "," + c.get("unfurl_media"), mrkdwn: c.get("mrkdwn"),
	}
	room.messages = append(room.messages, m)
	return answer{"message_ts": m.TS}
}

// respond takes an answer to a slash command at its own address, which works in
// channels that the app is not in.
func (s *Server) respond(w http.ResponseWriter, r *http.Request) {
	var in struct {
		Text   string          `json:"text"`
		Blocks json.RawMessage `json:"blocks"`
		Type   string          `json:"response_type"`
	}
	s.mu.Lock()
	defer s.mu.Unlock()
	room := s.channels[r.PathValue("channel")]
	if json.NewDecoder(r.Body).Decode(&in) != nil || room == nil || in.Type != "ephemeral" {
		http.Error(w, "invalid_payload", http.StatusBadRequest)
		return
	}
	room.messages = append(room.messages, &message{
		TS: s.ts(), User: BotUser, Bot: true, Text: in.Text, Blocks: in.Blocks, private: r.PathValue("user"), unfurl: "false,false"})
	w.Header().Set("Content-Type", "text/html")
	_, _ = w.Write([]byte("ok"))
}

func (s *Server) update(c call) answer {
	if bad := s.within(c); bad != nil {
		return bad
	}
	s.mu.Lock()
	room, bad := s.place(c.get("channel"))
	if bad != nil {
		s.mu.Unlock()
		return bad
	}
	m := room.at(c.get("ts"))
	switch {
	case m == nil || m.private != "":
		bad = failed("message_not_found")
	case m.User != BotUser:
		bad = failed("cant_update_message")
	}
	if bad != nil {
		s.mu.Unlock()
		return bad
	}
	if b := c.get("blocks"); b != "" {
		m.Blocks = json.RawMessage(b)
	}
	if d := c.get("metadata"); d != "" {
		m.Metadata = json.RawMessage(d)
	}
	m.mrkdwn = c.get("mrkdwn")
	e := s.changed(room, m, c.get("text"))
	s.mu.Unlock()
	s.emit(e)
	return answer{"channel": room.ID, "ts": m.TS, "text": m.Text}
}

func (s *Server) addReaction(c call) answer {
	s.mu.Lock()
	defer s.mu.Unlock()
	room, bad := s.place(c.get("channel"))
	if bad != nil {
		return bad
	}
	m := room.at(c.get("timestamp"))
	if m == nil {
		return failed("message_not_found")
	}
	if slices.ContainsFunc(m.Reactions, func(r reaction) bool { return r.Name == c.get("name") && slices.Contains(r.Users, BotUser) }) {
		return failed("already_reacted")
	}
	m.Reactions = append(m.Reactions, reaction{c.get("name"), []string{BotUser}})
	return answer{}
}

func (s *Server) removeReaction(c call) answer {
	s.mu.Lock()
	defer s.mu.Unlock()
	room, bad := s.place(c.get("channel"))
	if bad != nil {
		return bad
	}
	m := room.at(c.get("timestamp"))
	n := 0
	if m != nil {
		n = len(m.Reactions)
		m.Reactions = slices.DeleteFunc(m.Reactions, func(r reaction) bool { return r.Name == c.get("name") })
	}
	if m == nil || n == len(m.Reactions) {
		return failed("no_reaction")
	}
	return answer{}
}

func (s *Server) viewsOpen(c call) answer {
	var in struct {
		Trigger string          `json:"trigger_id"`
		View    json.RawMessage `json:"view"`
	}
	if json.Unmarshal(c.body, &in) != nil {
		return failed("invalid_arguments")
	}
	if bad := s.viewWithin(in.View); bad != nil {
		return bad
	}
	id := "V" + s.id()
	s.mu.Lock()
	defer s.mu.Unlock()
	given, known := s.triggers[in.Trigger]
	delete(s.triggers, in.Trigger)
	switch {
	case !known:
		return failed("invalid_trigger_id")
	case time.Since(given) > 3*time.Second:
		return failed("expired_trigger_id")
	}
	s.forms = append(s.forms, form{ID: id, View: in.View})
	return answer{"view": map[string]any{"id": id, "type": "modal"}}
}

func (s *Server) viewsPublish(c call) answer {
	var in struct {
		User string          `json:"user_id"`
		View json.RawMessage `json:"view"`
	}
	if json.Unmarshal(c.body, &in) != nil || in.User == "" {
		return failed("invalid_arguments")
	}
	if bad := s.viewWithin(in.View); bad != nil {
		return bad
	}
	s.mu.Lock()
	defer s.mu.Unlock()
	s.homes[in.User] = in.View
	return answer{"view": map[string]any{"id": "V0", "type": "home"}}
}

// TextOf returns the words that blocks show, in order.
func TextOf(blocks json.RawMessage) string {
	var any any
	if json.Unmarshal(blocks, &any) != nil {
		return ""
	}
	var out strings.Builder
	walk(any, func(m map[string]interface{}) {
		if t, ok := m["text"].(string); ok {
			out.WriteString(t)
		}
	})
	return out.String()
}

// walk calls f with each object, the outer before the inner, lists in order.
func walk(v any, f func(map[string]any)) {
	switch v := v.(type) {
	case []any:
		for _, x := range v {
			walk(x, f)
		}
	case map[string]any:
		f(v)
		for _, key := range []string{"blocks", "elements", "text", "fields", "element", "label", "placeholder", "hint", "accessory", "confirm", "title"} {
			walk(v[key], f)
		}
	}
}
