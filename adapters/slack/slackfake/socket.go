package slackfake

import (
	"encoding/json"
	"fmt"
	"net/http"
	"slices"
	"strings"
	"sync"
	"time"

	"github.com/gorilla/websocket"
)

// sockets are the open websockets and what goes through them.
type sockets struct {
	server *Server
	up     websocket.Upgrader

	mu      sync.Mutex
	open    []*socket
	next    int
	serial  int
	closed  bool
	opened  int
	events  map[string]*event  // by envelope, while not acknowledged
	seen    int                // events acknowledged
	lost    []string           // events given up after all retries
	stray   int                // acknowledgements on another socket than the one that delivered
	delays  []time.Duration    // from delivery to acknowledgement
	refused bool               // no socket can be opened
	put     int                // events to be sent again later
	sentOn  map[string]*socket // by envelope
	acked   map[string]bool    // by envelope, whoever sent it
}

// An event is something to be delivered until it is acknowledged.
type event struct {
	id, kind string
	payload  map[string]any
	attempt  int
	reason   string
	envelope string
	on       *socket
	at       time.Time
	once     bool // interactions and commands are not sent again
	done     chan json.RawMessage
}

type socket struct {
	conn *websocket.Conn
	out  chan []byte
	gone chan struct{}
	once sync.Once
}

func (s *sockets) init(server *Server) {
	s.up.CheckOrigin = func(*http.Request) bool { return true } // the client names Slack as its origin
	s.sentOn, s.acked = map[string]*socket{}, map[string]bool{}
	s.server, s.events = server, map[string]*event{}
}

func (s *Server) connectionsOpen(call) answer {
	return answer{"url": strings.Replace(s.http.URL, "http://", "ws://", 1) + "/socket?ticket=1"}
}

// serve holds one websocket.
func (s *sockets) serve(w http.ResponseWriter, r *http.Request) {
	if s.server.fault("socket", "").before(w, r) {
		return
	}
	s.mu.Lock()
	refused := s.refused || s.closed
	s.mu.Unlock()
	if refused {
		w.WriteHeader(http.StatusServiceUnavailable)
		return
	}
	conn, err := s.up.Upgrade(w, r, nil)
	if err != nil {
		return
	}
	k := &socket{conn: conn, out: make(chan []byte, 1000), gone: make(chan struct{})}
	go k.write(s.server.opt)
	s.mu.Lock()
	s.opened++
	n := len(s.open) + 1
	k.send(map[string]any{
		"type": "hello", "num_connections": n, "connection_info": map[string]any{"app_id": "A1"},
		"debug_info": map[string]any{"host": "fake", "approximate_connection_time": 18060},
	})
	s.open = append(s.open, k)
	s.mu.Unlock()
	s.read(k)
	s.drop(k)
}

// read takes acknowledgements until the socket ends.
func (s *sockets) read(k *socket) {
	for {
		_, data, err := k.conn.ReadMessage()
		if err != nil {
			return
		}
		var ack struct {
			Envelope string          `json:"envelope_id"`
			Payload  json.RawMessage `json:"payload"`
		}
		if json.Unmarshal(data, &ack) != nil || len(data) >= 20*1024 {
			continue // dropped silently, as Slack does
		}
		s.acknowledge(k, ack.Envelope, ack.Payload)
	}
}

func (s *sockets) acknowledge(k *socket, envelope string, payload json.RawMessage) {
	s.mu.Lock()
	defer s.mu.Unlock()
	s.acked[envelope] = true
	e := s.events[envelope]
	switch {
	case s.sentOn[envelope] != k:
		s.stray++
		return
	case e == nil:
		return // too late
	}
	delete(s.events, envelope)
	s.seen++
	s.delays = append(s.delays, time.Since(e.at))
	if e.done != nil {
		e.done <- payload
	}
}

// write is the only one who writes to the connection, pings included.
func (k *socket) write(o Options) {
	ping := time.NewTicker(o.Ping)
	defer ping.Stop()
	if !o.Silent {
		_ = k.conn.WriteControl(websocket.PingMessage, []byte("ping"), time.Now().Add(time.Second))
	}
	for {
		select {
		case <-k.gone:
			return
		case m := <-k.out:
			_ = k.conn.SetWriteDeadline(time.Now().Add(time.Second))
			if k.conn.WriteMessage(websocket.TextMessage, m) != nil {
				k.end()
				return
			}
		case <-ping.C:
			if !o.Silent {
				_ = k.conn.WriteControl(websocket.PingMessage, []byte("ping"), time.Now().Add(time.Second))
			}
		}
	}
}

func (k *socket) send(v any) {
	b, err := json.Marshal(v)
	if err != nil {
		panic(err) // what is sent is made here
	}
	select {
	case k.out <- b:
	case <-k.gone:
	default: // as slow a reader gets nothing
	}
}

func (k *socket) end() {
	k.once.Do(func() { close(k.gone); k.conn.Close() })
}

// drop forgets a socket; what it had not acknowledged is sent again.
func (s *sockets) drop(k *socket) {
	k.end()
	s.mu.Lock()
	s.open = slices.DeleteFunc(s.open, func(o *socket) bool { return o == k })
	var again []*event
	for id, e := range s.events {
		if e.on == k {
			delete(s.events, id)
			again = append(again, e)
		}
	}
	slices.SortFunc(again, func(a, b *event) int { return strings.Compare(a.envelope, b.envelope) })
	for _, e := range again {
		s.retry(e, "connection_closed")
	}
	s.mu.Unlock()
}

// deliver sends an event to one of the sockets, or has it retried.
func (s *sockets) deliver(e *event) {
	s.mu.Lock()
	defer s.mu.Unlock()
	if e.attempt > 0 {
		s.put--
	}
	if s.closed {
		return
	}
	if len(s.open) == 0 {
		s.retry(e, "no_connection")
		return
	}
	k := s.open[s.next%len(s.open)]
	s.next++
	s.serial++
	e.envelope, e.on, e.at = fmt.Sprintf("env-%09d", s.serial), k, time.Now()
	s.events[e.envelope], s.sentOn[e.envelope] = e, k
	m := map[string]any{"type": e.kind, "envelope_id": e.envelope, "payload": e.payload, "accepts_response_payload": e.once}
	if e.kind == "events_api" {
		m["retry_attempt"], m["retry_reason"] = e.attempt, e.reason
	}
	k.send(m)
	time.AfterFunc(s.server.opt.Ack, func() { s.expire(e, e.envelope) })
}

// expire has an event sent again that was not acknowledged in time.
func (s *sockets) expire(e *event, envelope string) {
	s.mu.Lock()
	defer s.mu.Unlock()
	if _, waits := s.events[envelope]; waits {
		delete(s.events, envelope)
		s.retry(e, "timeout")
	}
}

// retry sends an event once more after its time; s.mu is held.
func (s *sockets) retry(e *event, reason string) {
	if e.once || e.attempt >= len(s.server.opt.Retries) {
		s.lost = append(s.lost, e.id)
		if e.done != nil {
			close(e.done)
		}
		return
	}
	wait := s.server.opt.Retries[e.attempt]
	next := &event{id: e.id, kind: e.kind, payload: e.payload, attempt: e.attempt + 1, reason: reason}
	s.put++
	time.AfterFunc(wait, func() { s.deliver(next) })
}

func (s *sockets) close() {
	s.mu.Lock()
	s.closed = true
	open := slices.Clone(s.open)
	s.mu.Unlock()
	for _, k := range open {
		k.end()
	}
}

// DropSockets ends every socket as a broken network does.
func (s *Server) DropSockets() {
	s.sockets.mu.Lock()
	open := slices.Clone(s.sockets.open)
	s.sockets.mu.Unlock()
	for _, k := range open {
		k.end()
	}
}

// Disconnect asks the app to open other sockets, as Slack does before it closes
// one.
func (s *Server) Disconnect(reason string) {
	s.sockets.mu.Lock()
	defer s.sockets.mu.Unlock()
	for _, k := range s.sockets.open {
		k.send(map[string]any{"type": "disconnect", "reason": reason, "debug_info": map[string]any{"host": "fake"}})
	}
}

// Refuse lets no socket be opened, and ends the open ones; with false all is
// well again.
func (s *Server) Refuse(refuse bool) {
	s.sockets.mu.Lock()
	s.sockets.refused = refuse
	s.sockets.mu.Unlock()
	if refuse {
		s.DropSockets()
	}
}

// Send puts a message of any shape on a socket.
func (s *Server) Send(v any) {
	s.sockets.mu.Lock()
	defer s.sockets.mu.Unlock()
	if len(s.sockets.open) > 0 {
		s.sockets.open[0].send(v)
	}
}

// Acked reports whether an envelope was acknowledged, also one made by hand.
func (s *Server) Acked(envelope string) bool {
	s.sockets.mu.Lock()
	defer s.sockets.mu.Unlock()
	return s.sockets.acked[envelope]
}

// Deliver sends an Events API event with any inner event, and returns its id.
func (s *Server) Deliver(inner map[string]any) string { return s.emit(inner) }

// Traffic is what went through the sockets so far.
type Traffic struct {
	Open, Opened int
	Waiting      int // delivered and not acknowledged
	Acknowledged int
	Stray        int             // acknowledgements that came on another socket than the event
	Lost         []string        // events that were given up
	Delays       []time.Duration // from delivery to acknowledgement
}

// Traffic returns what went through the sockets so far.
func (s *Server) Traffic() Traffic {
	k := &s.sockets
	k.mu.Lock()
	defer k.mu.Unlock()
	return Traffic{
		Open: len(k.open), Opened: k.opened, Waiting: len(k.events) + k.put, Acknowledged: k.seen, Stray: k.stray,
		Lost: slices.Clone(k.lost), Delays: slices.Clone(k.delays),
	}
}

// emit delivers an inner event under an id of its own.
func (s *Server) emit(inner map[string]any) string {
	id := "Ev" + s.id()
	s.emitAs(id, inner)
	return id
}

func (s *Server) emitAs(id string, inner map[string]any) {
	s.sockets.deliver(&event{id: id, kind: "events_api", payload: map[string]any{
		"type": "event_callback", "team_id": Team, "api_app_id": "A1", "event_id": id, "event": inner,
		"event_time": s.opt.Clock().Unix(), "token": "none", "authorizations": []any{},
	}})
}

// id returns a number that was not given before.
func (s *Server) id() string {
	s.mu.Lock()
	defer s.mu.Unlock()
	s.serial++
	return fmt.Sprintf("%08d", s.serial)
}
