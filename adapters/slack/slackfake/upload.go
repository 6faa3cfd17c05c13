package slackfake

import (
	"encoding/json"
	"fmt"
	"io"
	"net/http"
	"strconv"
	"strings"
	"time"
	"unicode/utf8"
)

// An upload is a file on its way, or there.
type upload struct {
	id, name, title, alt string
	size                 int
	got                  []byte
	shared               bool
}

func (u *upload) json() map[string]any {
	return map[string]any{"id": u.id, "name": u.name, "title": u.title, "alt_txt": u.alt, "size": len(u.got), "user": BotUser, "filetype": "png"}
}

func (s *Server) uploadURL(c call) answer {
	size, err := strconv.Atoi(c.get("length"))
	if err != nil || size <= 0 || c.get("filename") == "" {
		return failed("invalid_arguments")
	}
	if n := utf8.RuneCountInString(c.get("alt_txt")); n > maxAlt {
		return s.over("alt_txt_too_large", fmt.Sprintf("alt text of %d characters", n))
	}
	id := "F" + s.id()
	s.mu.Lock()
	defer s.mu.Unlock()
	s.uploads[id] = &upload{id: id, name: c.get("filename"), alt: c.get("alt_txt"), size: size}
	return answer{"upload_url": s.http.URL + "/upload/" + id, "file_id": id}
}

// uploadBytes takes the bytes of a file.
func (s *Server) uploadBytes(w http.ResponseWriter, r *http.Request) {
	s.mu.Lock()
	s.calls["upload"]++
	u := s.uploads[strings.TrimPrefix(r.URL.Path, "/upload/")]
	s.mu.Unlock()
	if s.fault("upload", "").before(w, r) {
		return
	}
	if u == nil {
		http.Error(w, "no such upload", http.StatusNotFound)
		return
	}
	f, _, err := r.FormFile("file")
	if err != nil {
		http.Error(w, err.Error(), http.StatusBadRequest)
		return
	}
	data, err := io.ReadAll(f)
	if err != nil || len(data) != u.size {
		http.Error(w, "got "+strconv.Itoa(len(data))+" bytes, want "+strconv.Itoa(u.size), http.StatusBadRequest)
		return
	}
	s.mu.Lock()
	u.got = data
	s.mu.Unlock()
	_, _ = io.WriteString(w, "OK - "+strconv.Itoa(len(data)))
}

// completeUpload shares a file; the message that shows it follows a moment
// later, as on Slack.
func (s *Server) completeUpload(c call) answer {
	var files []struct{ ID, Title string }
	if json.Unmarshal([]byte(c.get("files")), &files) != nil || len(files) != 1 {
		return failed("invalid_arguments")
	}
	s.mu.Lock()
	defer s.mu.Unlock()
	u := s.uploads[files[0].ID]
	switch {
	case u == nil || u.got == nil:
		return failed("file_not_found")
	case u.shared:
		return failed("file_already_shared")
	}
	u.title, u.shared = files[0].Title, true
	if id := c.get("channel_id"); id != "" {
		room, bad := s.place(id)
		if bad != nil {
			return bad
		}
		thread := c.get("thread_ts")
		time.AfterFunc(s.opt.ShareAfter, func() { s.share(room, thread, u) })
	}
	return answer{"files": []any{map[string]any{"id": u.id, "title": u.title}}}
}

func (s *Server) share(room *channel, thread string, u *upload) {
	s.mu.Lock()
	m := &message{TS: s.ts(), Thread: thread, User: BotUser, Bot: true, SubType: "file_share", File: u, unfurl: "false,false"}
	room.messages = append(room.messages, m)
	inner := s.told(room, m)
	s.mu.Unlock()
	s.tell(room.ID, m, inner)
	s.emit(map[string]any{"type": "file_shared", "file_id": u.id, "user_id": BotUser, "channel_id": room.ID, "file": map[string]any{"id": u.id}, "event_ts": m.TS})
}

func (s *Server) deleteFile(c call) answer {
	s.mu.Lock()
	defer s.mu.Unlock()
	id := c.get("file")
	if s.uploads[id] == nil {
		return failed("file_not_found")
	}
	delete(s.uploads, id)
	for _, room := range s.channels {
		kept := room.messages[:0]
		for _, m := range room.messages {
			if m.File == nil || m.File.id != id {
				kept = append(kept, m)
			}
		}
		room.messages = kept
	}
	return answer{}
}
