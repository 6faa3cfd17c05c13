package slackfake

import (
	"encoding/json"
	"net/http"
	"net/http/httptest"
	"net/url"
	"strings"
	"sync"
	"testing"
	"time"
)

// Tokens and ids of the app.
const (
	BotToken = "xoxb-fake-bot"
	AppToken = "xapp-fake-app"
	BotUser  = "UBOT"
	BotID    = "BBOT"
	Team     = "T1"
)

// Options are how a server behaves. A zero value takes the default beside it.
type Options struct {
	Clock   func() time.Time // of messages: the machine's
	Ping    time.Duration    // between pings: 5 s
	Ack     time.Duration    // how long an envelope may wait for its acknowledgement: 3 s
	Retries []time.Duration  // when an event is sent again: at once, after 1 min, after 5 min
	Pace    time.Duration    // least time between two messages in a channel: none
	Scopes  []string         // of the bot token: all that the methods here want
	Silent  bool             // no pings are sent
	Page    int              // most rows of one page: as many as are asked for

	ShareAfter time.Duration // from the end of an upload to the message that shows it: 10 ms
}

// A Server is one workspace with one app, which the bot is.
type Server struct {
	opt  Options
	http *httptest.Server

	mu       sync.Mutex
	last     int64 // microseconds of the latest timestamp
	serial   int
	channels map[string]*channel
	users    map[string]*user
	uploads  map[string]*upload
	homes    map[string]json.RawMessage
	forms    []form
	triggers map[string]time.Time
	faults   map[string][]*Fault
	calls    map[string]int
	gathers  map[string]*gathering // by method
	broken   []string              // limits that a call overstepped

	sockets sockets
}

// New starts a server that is closed when the test ends.
func New(t testing.TB, o Options) *Server {
	s := &Server{
		opt: o.filled(), channels: map[string]*channel{}, users: map[string]*user{}, uploads: map[string]*upload{},
		homes: map[string]json.RawMessage{}, triggers: map[string]time.Time{}, faults: map[string][]*Fault{}, calls: map[string]int{}, gathers: map[string]*gathering{},
	}
	s.sockets.init(s)
	s.users[BotUser] = &user{ID: BotUser, Name: "presshand", bot: true}
	mux := http.NewServeMux()
	mux.HandleFunc("/api/", s.api)
	mux.HandleFunc("/socket", s.sockets.serve)
	mux.HandleFunc("/upload/", s.uploadBytes)
	mux.HandleFunc("/response/{channel}/{user}", s.respond)
	s.http = httptest.NewServer(mux)
	t.Cleanup(s.close)
	return s
}

func (o Options) filled() Options {
	if o.Clock == nil {
		o.Clock = time.Now
	}
	if o.Ping == 0 {
		o.Ping = 5 * time.Second
	}
	if o.Ack == 0 {
		o.Ack = 3 * time.Second
	}
	if o.ShareAfter == 0 {
		o.ShareAfter = 10 * time.Millisecond
	}
	if o.Retries == nil {
		o.Retries = []time.Duration{0, time.Minute, 5 * time.Minute}
	}
	if o.Scopes == nil {
		for _, m := range methods {
			if m.scope != "" {
				o.Scopes = append(o.Scopes, strings.Split(m.scope, ",")...)
			}
		}
	}
	return o
}

// URL is the address of the Web API, as the setting of the adapter wants it.
func (s *Server) URL() string { return s.http.URL + "/api/" }

func (s *Server) close() {
	s.sockets.close()
	s.http.CloseClientConnections()
	s.http.Close()
}

// Calls returns how often a method was called.
func (s *Server) Calls(method string) int {
	s.mu.Lock()
	defer s.mu.Unlock()
	return s.calls[method]
}

// Overstepped returns what calls did that Slack's limits forbid.
func (s *Server) Overstepped() []string {
	s.mu.Lock()
	defer s.mu.Unlock()
	return append([]string(nil), s.broken...)
}

// A method of the Web API.
type method struct {
	scope string // what the token must have; several where one of them per kind of channel is wanted
	app   bool   // takes the app-level token
	serve func(*Server, call) answer
}

type call struct {
	method string
	values url.Values
	body   json.RawMessage // where the call is made in JSON
}

func (c call) get(key string) string { return c.values.Get(key) }

// An answer is what is sent back besides "ok".
type answer map[string]any

func failed(code string) answer { return answer{"error": code} }

var methods map[string]method

func init() {
	methods = map[string]method{
		"auth.test":                    {serve: (*Server).authTest},
		"apps.connections.open":        {app: true, serve: (*Server).connectionsOpen},
		"chat.postMessage":             {scope: "chat:write", serve: (*Server).postMessage},
		"chat.postEphemeral":           {scope: "chat:write", serve: (*Server).postEphemeral},
		"chat.update":                  {scope: "chat:write", serve: (*Server).update},
		"reactions.add":                {scope: "reactions:write", serve: (*Server).addReaction},
		"reactions.remove":             {scope: "reactions:write", serve: (*Server).removeReaction},
		"conversations.history":        {scope: "channels:history,groups:history,im:history,mpim:history", serve: (*Server).history},
		"conversations.replies":        {scope: "channels:history,groups:history,im:history,mpim:history", serve: (*Server).replies},
		"users.conversations":          {scope: "channels:read,groups:read,im:read,mpim:read", serve: (*Server).conversations},
		"users.info":                   {scope: "users:read", serve: (*Server).userInfo},
		"users.list":                   {scope: "users:read", serve: (*Server).userList},
		"views.open":                   {serve: (*Server).viewsOpen},
		"views.publish":                {serve: (*Server).viewsPublish},
		"files.getUploadURLExternal":   {scope: "files:write", serve: (*Server).uploadURL},
		"files.completeUploadExternal": {scope: "files:write", serve: (*Server).completeUpload},
		"files.delete":                 {scope: "files:write", serve: (*Server).deleteFile},
	}
}

// api answers one call.
func (s *Server) api(w http.ResponseWriter, r *http.Request) {
	name := strings.TrimPrefix(r.URL.Path, "/api/")
	m, known := methods[name]
	c, err := read(name, r)
	if err != nil {
		http.Error(w, err.Error(), http.StatusBadRequest)
		return
	}
	s.mu.Lock()
	s.calls[name]++
	s.mu.Unlock()
	s.gathered(name, r)
	fault := s.fault(name, c.get("channel"))
	if fault.before(w, r) {
		return
	}
	a := failed("unknown_method")
	switch {
	case !known:
	case fault != nil && fault.Error != "":
		a = failed(fault.Error)
	default:
		a = s.allowed(m, token(r, c), c)
	}
	if fault != nil && fault.Lost {
		hijack(w)
		return
	}
	s.reply(w, a)
}

// allowed serves a call if its token may make it.
func (s *Server) allowed(m method, token string, c call) answer {
	want := BotToken
	if m.app {
		want = AppToken
	}
	switch {
	case token == "":
		return failed("not_authed")
	case token != want:
		return failed("invalid_auth")
	}
	if m.scope != "" && !s.has(m.scope) {
		return s.lacks(m.scope)
	}
	return m.serve(s, c)
}

func (s *Server) lacks(scope string) answer {
	return answer{"error": "missing_scope", "needed": scope, "provided": strings.Join(s.opt.Scopes, ",")}
}

// has reports whether the token has one of some scopes.
func (s *Server) has(any string) bool {
	for want := range strings.SplitSeq(any, ",") {
		for _, scope := range s.opt.Scopes {
			if scope == want {
				return true
			}
		}
	}
	return false
}

func (s *Server) reply(w http.ResponseWriter, a answer) {
	if after, limited := a["retry_after"].(string); limited {
		w.Header().Set("Retry-After", after)
		w.WriteHeader(http.StatusTooManyRequests)
		return
	}
	_, bad := a["error"]
	a["ok"] = !bad
	w.Header().Set("Content-Type", "application/json; charset=utf-8")
	w.Header().Set("X-OAuth-Scopes", strings.Join(s.opt.Scopes, ","))
	_ = json.NewEncoder(w).Encode(a) // the client may have gone
}

func read(name string, r *http.Request) (call, error) {
	c := call{method: name}
	if strings.HasPrefix(r.Header.Get("Content-Type"), "application/json") {
		c.values = url.Values{}
		if r.ContentLength == 0 {
			return c, nil
		}
		return c, json.NewDecoder(r.Body).Decode(&c.body)
	}
	err := r.ParseForm()
	c.values = r.Form
	return c, err
}

func token(r *http.Request, c call) string {
	if t, ok := strings.CutPrefix(r.Header.Get("Authorization"), "Bearer "); ok {
		return t
	}
	return c.get("token")
}

func (s *Server) authTest(call) answer {
	return answer{"url": s.http.URL, "team": "Boatyard", "user": "presshand", "team_id": Team, "user_id": BotUser, "bot_id": BotID}
}
