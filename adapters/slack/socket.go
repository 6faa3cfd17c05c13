package slack

import (
	"context"
	"encoding/json"
	"hash/fnv"
	"sync"
	"sync/atomic"
	"time"

	"github.com/slack-go/slack"
	"github.com/slack-go/slack/socketmode"
)

// A stream takes what comes from the sockets of one client, one after the
// other. It always reads on, so that pings are seen and a dead socket is
// noticed, also while the store stands still: what waits too long is dropped
// unacknowledged and comes again, or is read from the history.
type stream struct {
	*Slack
	client *socketmode.Client
	socket atomic.Int64 // which socket is open, counted
	lanes  [lanes]chan job
	after  chan func(context.Context) // what follows an acknowledgement
}

// lanes is how many channels are written to the inbox side by side; one
// channel's messages keep their order. What follows an acknowledgement can be
// slow, and keeps to hands of its own.
const (
	lanes     = 8
	laneRoom  = 256
	hands     = 8
	handsRoom = 64
)

// A job ends with its acknowledgement, unless it fails.
type job struct {
	envelope string
	socket   int64
	event    bool // of the Events API: Slack sends it again, and the history has it
	do       func(context.Context) (payload any, err error)
	then     func(context.Context) // after the acknowledgement
}

func newStream(a *Slack, c *socketmode.Client) *stream {
	s := &stream{Slack: a, client: c, after: make(chan func(context.Context), handsRoom)}
	for i := range s.lanes {
		s.lanes[i] = make(chan job, laneRoom)
	}
	return s
}

func (s *stream) run(ctx context.Context) {
	var wg sync.WaitGroup
	for _, lane := range s.lanes {
		wg.Go(func() {
			for {
				select {
				case <-ctx.Done():
					return
				case j := <-lane:
					s.work(ctx, j)
				}
			}
		})
	}
	for range hands {
		wg.Go(func() { s.follow(ctx) })
	}
	wg.Go(func() { s.beat(ctx) })
	for ctx.Err() == nil {
		select {
		case <-ctx.Done():
		case e := <-s.client.Events:
			s.take(ctx, e, &wg)
		}
	}
	wg.Wait()
}

// follow does what follows acknowledgements, each for a while at most.
func (s *stream) follow(ctx context.Context) {
	for {
		select {
		case <-ctx.Done():
			return
		case then := <-s.after:
			brief, cancel := context.WithTimeout(ctx, callTimeout)
			then(brief)
			cancel()
		}
	}
}

// take looks at one event of the library; it must not wait.
func (s *stream) take(ctx context.Context, e socketmode.Event, wg *sync.WaitGroup) {
	switch e.Type {
	case socketmode.EventTypeConnected:
		s.socket.Add(1)
		s.reopens.Add(1)
	case socketmode.EventTypeHello:
		s.open.Store(true)
		wg.Go(func() { s.catchUp(ctx) })
	case socketmode.EventTypeConnecting:
		s.open.Store(false)
		s.behind.Store(true)
	case socketmode.EventTypeConnectionError:
		if f, ok := e.Data.(*slack.ConnectionErrorEvent); ok {
			s.Log.Warn("slack: socket not opened", "error", f.ErrorObj, "again_in", f.Backoff)
		}
	case socketmode.EventTypeEventsAPI:
		s.said(e.Request.EnvelopeID, e.Request.Payload)
	case socketmode.EventTypeInteractive:
		if c, ok := e.Data.(slack.InteractionCallback); ok {
			s.interaction(e.Request.EnvelopeID, c)
		}
	case socketmode.EventTypeSlashCommand:
		if c, ok := e.Data.(slack.SlashCommand); ok {
			s.enqueue(c.ChannelID, job{envelope: e.Request.EnvelopeID, do: func(ctx context.Context) (any, error) { return s.command(ctx, c) }})
		}
	case socketmode.EventTypeErrorBadMessage:
		if bad, ok := e.Data.(*socketmode.ErrorBadMessage); ok {
			s.unknown(bad)
		}
	case socketmode.EventTypeErrorWriteFailed:
		s.Log.Warn("slack: acknowledgement not sent; the event will come again")
	}
}

// unknown takes what the library cannot read: events it does not know, and
// messages with a part that it does not know, which are still to be answered.
func (s *stream) unknown(bad *socketmode.ErrorBadMessage) {
	var envelope struct {
		ID      string          `json:"envelope_id"`
		Type    string          `json:"type"`
		Payload json.RawMessage `json:"payload"`
	}
	if err := json.Unmarshal(bad.Message, &envelope); err != nil || envelope.ID == "" {
		s.Log.Warn("slack: unreadable message on the socket", "error", bad.Cause)
		return
	}
	switch envelope.Type {
	case socketmode.RequestTypeEventsAPI:
		s.said(envelope.ID, envelope.Payload)
		return
	case socketmode.RequestTypeInteractive:
		c, err := bareInteraction(envelope.Payload)
		if err != nil { // unacknowledged, so that who pressed is told that it failed
			s.Log.Warn("slack: button or form not understood", "error", err)
			return
		}
		s.interaction(envelope.ID, c)
		return
	}
	s.Log.Warn("slack: unknown envelope", "type", envelope.Type, "error", bad.Cause)
	s.enqueue("", job{envelope: envelope.ID})
}

// said brings an Events API event to its lane.
func (s *stream) said(envelope string, payload json.RawMessage) {
	var p struct {
		Event inner `json:"event"`
	}
	if err := json.Unmarshal(payload, &p); err != nil {
		s.Log.Warn("slack: event not understood", "error", err)
		s.enqueue("", job{envelope: envelope})
		return
	}
	j := job{envelope: envelope, event: true, do: func(ctx context.Context) (any, error) { return nil, s.event(ctx, p.Event) }}
	switch p.Event.Type {
	case "app_home_opened":
		j.do, j.then = nil, func(ctx context.Context) { s.home(ctx, p.Event.User) }
	case "reaction_added":
		early := false
		j.do = func(ctx context.Context) (_ any, err error) { early, err = s.reaction(ctx, p.Event); return nil, err }
		j.then = func(ctx context.Context) { s.reactionLater(ctx, early, p.Event) }
	}
	s.enqueue(p.Event.room(), j)
}

// enqueue puts a job behind the earlier ones of its channel.
func (s *stream) enqueue(room string, j job) {
	j.socket = s.socket.Load()
	h := fnv.New32a()
	h.Write([]byte(room))
	select {
	case s.lanes[h.Sum32()%lanes] <- j:
	default:
		s.Log.Warn("slack: too much waits for the store; an event is left to come again")
		s.leave(j)
	}
}

// leave notes that a job was left undone. Slack gives an event up after a few
// tries, however long the store stands still, so it is read later besides.
func (s *stream) leave(j job) {
	if j.event {
		s.missed.note(s.Clock())
		s.behind.Store(true)
	}
}

const (
	keepWithin = 2500 * time.Millisecond // Slack waits 3 s for an acknowledgement
	ackWithin  = 2 * time.Second
)

// work does a job and acknowledges it on the socket that it came on. On another
// socket Slack does not know the envelope; the event then comes again.
func (s *stream) work(ctx context.Context, j job) {
	var payload any
	if j.do != nil {
		keep, cancel := context.WithTimeout(ctx, keepWithin)
		var err error
		payload, err = j.do(keep)
		cancel()
		if err != nil {
			s.Log.Warn("slack: event not kept; it will come again", "error", err)
			s.leave(j)
			return
		}
	}
	if j.socket == s.socket.Load() {
		ack, cancel := context.WithTimeout(ctx, ackWithin)
		if err := s.client.AckCtx(ack, j.envelope, payload); err != nil {
			s.Log.Warn("slack: acknowledgement not sent; the event will come again", "error", err)
		}
		cancel()
	}
	if j.then == nil {
		return
	}
	select {
	case s.after <- j.then:
	default:
		s.Log.Warn("slack: too much waits for Slack; a form, a home or a reaction is left out")
	}
}
