package slack

import (
	"context"
	"errors"
	"sync"
	"time"

	"github.com/slack-go/slack"
)

// pace keeps messages apart: Slack takes about one a second in a channel.
type pace struct {
	mu    sync.Mutex
	least time.Duration
	next  map[string]time.Time // by channel: when the next may go
	tried map[string]int       // replies put off, by key: how often they were claimed without having been sent
	at    map[string]time.Time // of the last doubtful try of a reply, by key
	wrong map[string]time.Time // when Slack first answered a reply with an error, by key
	sent  int
}

func (p *pace) init(least time.Duration) {
	p.least, p.tried = least, map[string]int{}
	p.next, p.at, p.wrong = map[string]time.Time{}, map[string]time.Time{}, map[string]time.Time{}
}

// take takes a channel's turn, or returns how long it is until then.
func (p *pace) take(room string) time.Duration {
	p.mu.Lock()
	defer p.mu.Unlock()
	now := time.Now()
	if wait := p.next[room].Sub(now); wait > 0 {
		return wait
	}
	p.next[room] = now.Add(p.least)
	if p.sent++; p.sent%1000 == 0 {
		for room, at := range p.next {
			if at.Before(now) {
				delete(p.next, room)
			}
		}
	}
	return 0
}

// done starts a channel's interval anew: what counts is when Slack took the
// message.
func (p *pace) done(room string) {
	p.mu.Lock()
	defer p.mu.Unlock()
	p.next[room] = time.Now().Add(p.least)
}

// stop lets nothing into a channel for a while.
func (p *pace) stop(room string, wait time.Duration) {
	p.mu.Lock()
	defer p.mu.Unlock()
	p.next[room] = time.Now().Add(wait)
}

// putOff notes that a reply was claimed this time but surely not sent. If an
// earlier try left it doubtful, it stays so.
func (p *pace) putOff(key string, tries int) {
	p.mu.Lock()
	defer p.mu.Unlock()
	if p.tried[key] == tries {
		p.tried[key] = tries + 1
	}
}

// doubtful reports whether Slack may have a reply already: it was claimed
// before, not only to be put off.
func (p *pace) doubtful(key string, tries int) bool {
	p.mu.Lock()
	defer p.mu.Unlock()
	return tries != p.tried[key]
}

// tryNow notes that Slack may have got a reply just now.
func (p *pace) tryNow(key string) {
	p.mu.Lock()
	defer p.mu.Unlock()
	p.at[key] = time.Now()
}

// unsure returns how long it is until a try was so long ago. One of which
// nothing is known counts as made now.
func (p *pace) unsure(key string, long time.Duration) time.Duration {
	p.mu.Lock()
	defer p.mu.Unlock()
	now := time.Now()
	if p.at[key].IsZero() {
		p.at[key] = now
	}
	return p.at[key].Add(long).Sub(now)
}

// failing returns how long Slack has answered a reply with errors.
func (p *pace) failing(key string, now time.Time) time.Duration {
	p.mu.Lock()
	defer p.mu.Unlock()
	if p.wrong[key].IsZero() {
		p.wrong[key] = now
	}
	return now.Sub(p.wrong[key])
}

func (p *pace) settled(key string) {
	p.mu.Lock()
	defer p.mu.Unlock()
	delete(p.tried, key)
	delete(p.at, key)
	delete(p.wrong, key)
}

// seen marks messages that were kept, as a courtesy: never faster than Slack
// likes, and not at all where many come at once.
type seen struct {
	once sync.Once
	todo chan slack.ItemRef
}

const (
	seenEvery = 1200 * time.Millisecond // reactions.add: fifty a minute
	maxUnseen = 3
)

func (s *seen) queue() chan slack.ItemRef {
	s.once.Do(func() { s.todo = make(chan slack.ItemRef, maxUnseen) })
	return s.todo
}

func (s *seen) add(room, ts string) {
	select {
	case s.queue() <- slack.NewRefToMessage(room, ts):
	default:
	}
}

// see marks what was kept until ctx ends.
func (a *Slack) see(ctx context.Context) {
	for {
		select {
		case <-ctx.Done():
			return
		case ref := <-a.seen.queue():
			err := a.api.AddReactionContext(ctx, a.Seen, ref)
			if err != nil && codeOf(err) != "already_reacted" && ctx.Err() == nil {
				a.Log.Debug("slack: message not marked as seen", "error", err)
			}
			wait := seenEvery
			var limited *slack.RateLimitedError
			if errors.As(err, &limited) {
				wait = max(wait, limited.RetryAfter)
			}
			rest(ctx, wait)
		}
	}
}
