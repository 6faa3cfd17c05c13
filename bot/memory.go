package bot

import (
	"context"
	"slices"
	"sync"
	"time"

	"presshand/bot/book"
)

// maxThreads is how many threads a memory holds, so that an endless stream of
// them does not fill the machine.
const maxThreads = 20000

// memory is a store for as long as the process lives.
type memory struct {
	mu       sync.RWMutex
	threads  map[threadKey]book.Thread
	order    []threadKey // oldest first, from next on
	next     int
	profiles map[string]book.Profile
	loads    map[string][]book.Load // by room; load n at n-1
	acts     map[string][]book.Entry
}

type threadKey struct{ room, thread string }

// NewMemory returns a store that forgets everything at the end of the process,
// and the oldest threads when there are very many.
func NewMemory() Store {
	return &memory{
		threads: map[threadKey]book.Thread{}, profiles: map[string]book.Profile{},
		loads: map[string][]book.Load{}, acts: map[string][]book.Entry{},
	}
}

func (m *memory) Thread(_ context.Context, room, name string) (book.Thread, error) {
	m.mu.RLock()
	defer m.mu.RUnlock()
	if t, ok := m.threads[threadKey{room, name}]; ok {
		return t, nil
	}
	return book.Thread{Room: room, Name: name}, nil
}

func (m *memory) Profile(_ context.Context, room string) (book.Profile, error) {
	m.mu.RLock()
	defer m.mu.RUnlock()
	if p, ok := m.profiles[room]; ok {
		return p, nil
	}
	return book.Profile{Room: room}, nil
}

func (m *memory) Load(_ context.Context, room string, n int) (book.Load, error) {
	m.mu.RLock()
	defer m.mu.RUnlock()
	if loads := m.loads[room]; n >= 1 && n <= len(loads) {
		return loads[n-1], nil
	}
	return book.Load{}, book.ErrNotFound
}

func (m *memory) NextNumber(_ context.Context, room string) (int, error) {
	m.mu.RLock()
	defer m.mu.RUnlock()
	return len(m.loads[room]) + 1, nil
}

func (m *memory) Loads(_ context.Context, room string, q book.Query) ([]book.Load, error) {
	m.mu.RLock()
	defer m.mu.RUnlock()
	var out []book.Load
	for _, l := range slices.Backward(m.loads[room]) {
		if len(out) < q.Most() && q.Matches(l) {
			out = append(out, l)
		}
	}
	return out, nil
}

func (m *memory) Acts(_ context.Context, room, person string, limit int) ([]book.Entry, error) {
	m.mu.RLock()
	defer m.mu.RUnlock()
	var out []book.Entry
	for _, e := range slices.Backward(m.acts[room]) {
		if len(out) < limit && e.By.ID == person && e.Act != book.Undo {
			out = append(out, e)
		}
	}
	return out, nil
}

func (m *memory) Reply(context.Context, book.Place, string) (book.Outgoing, error) {
	return book.Outgoing{}, book.ErrNotFound
}

func (m *memory) Record(_ context.Context, o book.Outcome, _ time.Time) error {
	m.mu.Lock()
	defer m.mu.Unlock()
	if m.changed(o) {
		return book.ErrConflict
	}
	loads, err := m.after(o.Entries)
	if err != nil {
		return err
	}
	for _, l := range loads {
		m.file(l)
	}
	for _, e := range o.Entries {
		m.acts[e.Room] = append(m.acts[e.Room], e)
	}
	if o.Thread != nil {
		m.keepThread(*o.Thread)
	}
	if o.Profile != nil {
		p := *o.Profile
		p.Version++
		m.profiles[p.Room] = p
	}
	return nil
}

// changed reports whether what an outcome builds on is not as it was read.
func (m *memory) changed(o book.Outcome) bool {
	if t := o.Thread; t != nil && m.threads[threadKey{t.Room, t.Name}].Version != t.Version {
		return true
	}
	return o.Profile != nil && m.profiles[o.Profile.Room].Version != o.Profile.Version
}

// after returns the loads that entries change, as they are after them.
func (m *memory) after(entries []book.Entry) ([]book.Load, error) {
	var out []book.Load
	for _, e := range entries {
		i := slices.IndexFunc(out, func(l book.Load) bool { return l.Number == e.Load && l.Room == e.Room })
		if i < 0 {
			i = len(out)
			out = append(out, m.filed(e.Room, e.Load))
		}
		next, err := out[i].Apply(e)
		if err != nil {
			return nil, book.ErrConflict
		}
		out[i] = next
	}
	return out, nil
}

func (m *memory) filed(room string, n int) book.Load {
	if loads := m.loads[room]; n >= 1 && n <= len(loads) {
		return loads[n-1]
	}
	return book.Load{}
}

func (m *memory) file(l book.Load) {
	if n := l.Number; n <= len(m.loads[l.Room]) {
		m.loads[l.Room][n-1] = l
		return
	}
	m.loads[l.Room] = append(m.loads[l.Room], l)
}

func (m *memory) keepThread(t book.Thread) {
	key := threadKey{t.Room, t.Name}
	if _, known := m.threads[key]; !known {
		m.enter(key)
	}
	t.Version++
	m.threads[key] = t
}

// enter notes a new thread, in place of the oldest where there are too many.
func (m *memory) enter(key threadKey) {
	if len(m.order) < maxThreads {
		m.order = append(m.order, key)
		return
	}
	delete(m.threads, m.order[m.next])
	m.order[m.next] = key
	m.next = (m.next + 1) % maxThreads
}
