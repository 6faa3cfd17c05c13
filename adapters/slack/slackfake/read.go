package slackfake

import (
	"maps"
	"slices"
	"strconv"
	"strings"
)

// readable finds the channel of a call that reads; s.mu is held.
func (s *Server) readable(id string) (*channel, answer) {
	room, bad := s.place(id)
	if bad == nil && !s.has(room.scope+":history") {
		bad = s.lacks(room.scope + ":history")
	}
	return room, bad
}

func (s *Server) history(c call) answer {
	s.mu.Lock()
	defer s.mu.Unlock()
	room, bad := s.readable(c.get("channel"))
	if bad != nil {
		return bad
	}
	var found []*message
	for _, m := range slices.Backward(room.messages) {
		if m.private == "" && (m.Thread == "" || m.Thread == m.TS) && between(m.TS, c) {
			found = append(found, m)
		}
	}
	return s.page(room, found, c, 100)
}

func (s *Server) replies(c call) answer {
	s.mu.Lock()
	defer s.mu.Unlock()
	room, bad := s.readable(c.get("channel"))
	if bad != nil {
		return bad
	}
	root := room.at(c.get("ts"))
	if root == nil {
		return failed("thread_not_found")
	}
	found := []*message{root}
	for _, m := range room.messages {
		if m.Thread == root.TS && m != root && m.private == "" && between(m.TS, c) {
			found = append(found, m)
		}
	}
	return s.page(room, found, c, 1000)
}

// between reports whether a timestamp lies in the window of a call.
func between(ts string, c call) bool {
	inclusive := c.get("inclusive") == "1" || c.get("inclusive") == "true"
	oldest, latest := c.get("oldest"), c.get("latest")
	if inclusive && (ts == oldest || ts == latest) {
		return true
	}
	return (oldest == "" || ts > oldest) && (latest == "" || ts < latest)
}

// page answers with one page of messages; s.mu is held.
func (s *Server) page(room *channel, found []*message, c call, usual int) answer {
	rows, next := cut(found, c, usual, s.opt.Page)
	list := []any{}
	for _, m := range rows {
		list = append(list, m.history(room, c.get("include_all_metadata") == "1"))
	}
	return answer{"messages": list, "has_more": next != "", "response_metadata": map[string]any{"next_cursor": next}}
}

// cut returns the rows of one page, and where the next begins.
func cut[T any](all []T, c call, usual, most int) (rows []T, next string) {
	limit, _ := strconv.Atoi(c.get("limit"))
	if limit == 0 {
		limit = usual
	}
	if most > 0 {
		limit = min(limit, most)
	}
	from, _ := strconv.Atoi(c.get("cursor"))
	to := min(from+limit, len(all))
	if to < len(all) {
		next = strconv.Itoa(to)
	}
	return all[min(from, to):to], next
}

// conversations lists what the app is in, of the kinds that are asked for.
func (s *Server) conversations(c call) answer {
	s.mu.Lock()
	defer s.mu.Unlock()
	wanted := strings.Split(c.get("types"), ",")
	if c.get("types") == "" {
		wanted = []string{public.listed}
	}
	for _, k := range []kind{public, private, direct, several} {
		if slices.Contains(wanted, k.listed) && !s.has(k.scope+":read") {
			return s.lacks(k.scope + ":read")
		}
	}
	var found []*channel
	for _, id := range slices.Sorted(maps.Keys(s.channels)) {
		if room := s.channels[id]; !room.left && slices.Contains(wanted, room.listed) {
			found = append(found, room)
		}
	}
	rows, next := cut(found, c, 100, s.opt.Page)
	list := []any{}
	for _, room := range rows {
		list = append(list, map[string]any{
			"id": room.ID, "name": room.Name, "is_channel": room.kind == public, "is_im": room.kind == direct,
			"is_mpim": room.kind == several, "is_private": room.kind != public, "user": room.with, "is_member": true,
		})
	}
	return answer{"channels": list, "response_metadata": map[string]any{"next_cursor": next}}
}

func (u *user) json() map[string]any {
	return map[string]any{
		"id": u.ID, "name": u.Name, "real_name": u.Name, "is_bot": u.bot, "team_id": Team,
		"profile": map[string]any{"display_name": u.Name, "real_name": u.Name},
	}
}

func (s *Server) userInfo(c call) answer {
	s.mu.Lock()
	defer s.mu.Unlock()
	u := s.users[c.get("user")]
	if u == nil {
		return failed("user_not_found")
	}
	return answer{"user": u.json()}
}

func (s *Server) userList(call) answer {
	s.mu.Lock()
	defer s.mu.Unlock()
	list := []any{}
	for _, u := range s.users {
		list = append(list, u.json())
	}
	return answer{"members": list, "response_metadata": map[string]any{"next_cursor": ""}}
}
