package slack

import (
	"sync"
	"time"
)

// missed is since when an event was left that could not be kept. Slack sends
// such an event again a few times only; the history has it for longer.
type missed struct {
	mu    sync.Mutex
	since time.Time
}

// note keeps the earliest time.
func (m *missed) note(at time.Time) {
	m.mu.Lock()
	defer m.mu.Unlock()
	if !at.IsZero() && (m.since.IsZero() || at.Before(m.since)) {
		m.since = at
	}
}

// take returns the earliest time, which is zero for none, and forgets it: what
// is left from then on counts anew.
func (m *missed) take() time.Time {
	m.mu.Lock()
	defer m.mu.Unlock()
	since := m.since
	m.since = time.Time{}
	return since
}

func (m *missed) any() bool {
	m.mu.Lock()
	defer m.mu.Unlock()
	return !m.since.IsZero()
}
