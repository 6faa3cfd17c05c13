package slackfake

import (
	"io"
	"net/http"
	"strconv"
	"time"
)

// A Fault is how the next calls of a method go wrong.
type Fault struct {
	Times      int           // how many calls; 0 is one
	After      int           // how many calls go well before
	Status     int           // an HTTP status without a body
	RetryAfter time.Duration // 429, to be tried again after whole seconds
	Error      string        // an error of Slack's, as "fatal_error"
	Cut        bool          // the connection ends before anything is done
	Lost       bool          // the call is carried out, and the connection ends before the answer

	channel string // whose calls go wrong; "" for all
}

// Fail makes calls of a method go wrong; "upload" is the sending of a file's
// bytes, "socket" the opening of a websocket.
func (s *Server) Fail(method string, f Fault) {
	s.mu.Lock()
	defer s.mu.Unlock()
	f.Times = max(f.Times, 1)
	s.faults[method] = append(s.faults[method], &f)
}

// FailIn is Fail for the calls about one channel.
func (s *Server) FailIn(channel, method string, f Fault) {
	f.channel = channel
	s.Fail(method, f)
}

// A gathering holds calls of one method until enough wait.
type gathering struct {
	want int
	full chan struct{}
}

// Gather lets no call of a method go on until n of them wait side by side, as
// they do where Slack is slow to answer.
func (s *Server) Gather(method string, n int) {
	s.mu.Lock()
	defer s.mu.Unlock()
	s.gathers[method] = &gathering{want: n, full: make(chan struct{})}
}

// gathered waits for the others that are to be gathered with a call.
func (s *Server) gathered(method string, r *http.Request) {
	s.mu.Lock()
	g := s.gathers[method]
	if g != nil {
		if g.want--; g.want == 0 {
			close(g.full)
			delete(s.gathers, method)
		}
	}
	s.mu.Unlock()
	if g == nil {
		return
	}
	select {
	case <-g.full:
	case <-r.Context().Done():
	}
}

// fault returns how this call goes wrong, or nil.
func (s *Server) fault(method, channel string) *Fault {
	s.mu.Lock()
	defer s.mu.Unlock()
	for _, f := range s.faults[method] {
		switch {
		case f.channel != "" && f.channel != channel:
		case f.After > 0:
			f.After--
			return nil
		case f.Times > 0:
			f.Times--
			return f
		}
	}
	return nil
}

// before lets a call fail before it is carried out.
func (f *Fault) before(w http.ResponseWriter, r *http.Request) bool {
	switch {
	case f == nil:
		return false
	case f.Cut:
		_, _ = io.CopyN(io.Discard, r.Body, 512)
		hijack(w)
	case f.RetryAfter > 0:
		w.Header().Set("Retry-After", strconv.Itoa(int(f.RetryAfter.Seconds())))
		w.WriteHeader(http.StatusTooManyRequests)
	case f.Status != 0:
		w.WriteHeader(f.Status)
	default:
		return false
	}
	return true
}

// hijack ends the connection without an answer.
func hijack(w http.ResponseWriter) {
	if h, ok := w.(http.Hijacker); ok {
		if conn, _, err := h.Hijack(); err == nil {
			conn.Close()
		}
	}
}
