package slackfake

import (
	"slices"
	"strconv"
)

func (s *Server) history(c call) answer {
	s.mu.Lock()
	defer s.mu.Unlock()
	room, bad := s.place(c.get("channel"))
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
	room, bad := s.place(c.get("channel"))
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
	limit, _ := strconv.Atoi(c.get("limit"))
	if limit == 0 {
		limit = usual
	}
	from, _ := strconv.Atoi(c.get("cursor"))
	to := min(from+limit, len(found))
	list := []any{}
	for _, m := range found[min(from, to):to] {
		list = append(list, m.history(room, c.get("include_all_metadata") == "1"))
	}
	next := ""
	if to < len(found) {
		next = strconv.Itoa(to)
	}
	return answer{"messages": list, "has_more": next != "", "response_metadata": map[string]any{"next_cursor": next}}
}

func (s *Server) conversations(c call) answer {
	s.mu.Lock()
	defer s.mu.Unlock()
	list := []any{}
	for _, room := range s.channels {
		if !room.left {
			list = append(list, map[string]any{
				"id": room.ID, "name": room.Name, "is_channel": room.with == "", "is_im": room.with != "", "user": room.with, "is_member": true,
			})
		}
	}
	return answer{"channels": list, "response_metadata": map[string]any{"next_cursor": ""}}
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
