package adaptertest

import (
	"encoding/json"
	"fmt"
	"net/http"
	"net/http/httptest"
	"sync"
	"testing"
	"time"

	"presshand/bot/book"
)

// service is a chat service that outlives the bot: it delivers each message
// until it is acknowledged, and shows a reply once for each idempotency key.
type service struct {
	*httptest.Server
	mu      sync.Mutex
	waiting []book.Event             // not acknowledged
	shown   map[string]book.Outgoing // by idempotency key
	order   []string                 // keys, as they were first shown
	tried   int                      // how often a reply was sent
	leaders []string                 // in turn
	calls   chan string              // one for each call, after it was dealt with
}

// newService starts a service.
func newService(t testing.TB) *service {
	s := &service{shown: map[string]book.Outgoing{}, calls: make(chan string, 1000)}
	mux := http.NewServeMux()
	mux.HandleFunc("/deliver", s.deliver)
	mux.HandleFunc("/ack", s.ack)
	mux.HandleFunc("/send", s.send)
	mux.HandleFunc("/beat", s.beat)
	s.Server = httptest.NewServer(mux)
	t.Cleanup(s.Close)
	return s
}

// say has a person say something.
func (s *service) say(e book.Event) {
	s.mu.Lock()
	defer s.mu.Unlock()
	s.waiting = append(s.waiting, e)
}

func (s *service) deliver(w http.ResponseWriter, r *http.Request) {
	s.mu.Lock()
	some := append([]book.Event{}, s.waiting[:min(3, len(s.waiting))]...)
	s.mu.Unlock()
	if len(some) == 0 {
		time.Sleep(5 * time.Millisecond)
	}
	s.answer(w, r, some)
}

func (s *service) ack(w http.ResponseWriter, r *http.Request) {
	var key string
	if err := json.NewDecoder(r.Body).Decode(&key); err != nil {
		http.Error(w, err.Error(), http.StatusBadRequest)
		return
	}
	s.mu.Lock()
	for i, e := range s.waiting {
		if e.Key == key {
			s.waiting = append(s.waiting[:i:i], s.waiting[i+1:]...)
			break
		}
	}
	s.mu.Unlock()
	s.answer(w, r, true)
}

func (s *service) send(w http.ResponseWriter, r *http.Request) {
	var o book.Outgoing
	if err := json.NewDecoder(r.Body).Decode(&o); err != nil {
		http.Error(w, err.Error(), http.StatusBadRequest)
		return
	}
	s.mu.Lock()
	s.tried++
	if _, known := s.shown[o.Key]; !known {
		s.shown[o.Key] = o
		s.order = append(s.order, o.Key)
	}
	s.mu.Unlock()
	s.answer(w, r, o.Key)
}

// beat is a leader's; it notes who took over from whom.
func (s *service) beat(w http.ResponseWriter, r *http.Request) {
	who := r.URL.Query().Get("worker")
	s.mu.Lock()
	if n := len(s.leaders); n == 0 || s.leaders[n-1] != who {
		s.leaders = append(s.leaders, who)
	}
	s.mu.Unlock()
	_ = json.NewEncoder(w).Encode(true)
}

// leader returns who leads, "" before anyone does.
func (s *service) leader() string {
	s.mu.Lock()
	defer s.mu.Unlock()
	if len(s.leaders) == 0 {
		return ""
	}
	return s.leaders[len(s.leaders)-1]
}

func (s *service) answer(w http.ResponseWriter, r *http.Request, v any) {
	// an error means that the process was killed, which is what is tested
	_ = json.NewEncoder(w).Encode(v)
	select {
	case s.calls <- r.URL.Path:
	default: // nobody counts calls any more
	}
}

// counts returns how many messages wait and how many replies were shown.
func (s *service) counts() (waiting, shown int) {
	s.mu.Lock()
	defer s.mu.Unlock()
	return len(s.waiting), len(s.shown)
}

// people is how many threads of the crash test's room go on at once.
const people = 4

// A step is what is said in a thread, and what the load then is by the reply.
type step struct{ says, reply, state string }

// steps are said in each thread, by two people in turn.
var steps = []step{
	{"5 walnut strips 2 1/4 wide, 1/4 thick, 1 in bar, 25 inHg, epoxy, post it", "posted by", "posted"},
	{"checked, bar 1 in, strips 1/4, gauge 25", "agrees", "checked"},
	{"in", "went in at", "pressing"},
	{"out", "came out at", "out"},
}

// stepOf is the step that the i-th message of the crash test takes.
func stepOf(i int) step { return steps[i/people%len(steps)] }

// chatter returns the i-th message of the crash test.
func chatter(i int) book.Event {
	thread := i/len(steps)/people*people + i%people
	who := []book.Person{ann, ben}[i/people%2]
	return book.Event{
		Key: fmt.Sprintf("e%05d", i), Place: book.Place{Service: "test", Room: fmt.Sprint("room", thread%2), Thread: fmt.Sprint("t", thread)},
		Message: fmt.Sprintf("m%05d", i), From: who, Text: stepOf(i).says, At: noon.Add(time.Duration(i) * time.Second),
	}
}
