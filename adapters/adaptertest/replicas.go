package adaptertest

import (
	"fmt"
	"slices"
	"testing"
	"time"
)

// Replicas runs three bot processes on one store, kills two of them in turn,
// the leader first, and restarts them, again and again while messages flow:
// every message is answered once, and one process at a time leads.
func Replicas(t *testing.T, name string, open Open, rounds int) {
	svc := newService(t)
	said := 0
	talk := func(n int) {
		for range n {
			svc.say(chatter(said))
			said++
		}
	}
	running := map[string]*process{}
	born := 0
	add := func() {
		worker := fmt.Sprint("w", born)
		born++
		running[worker] = start(t, name, svc.URL, worker)
	}
	for range 3 {
		add()
	}
	for range rounds {
		talk(5)
		first := svc.nextLeader(t, running)
		running[first].kill()
		delete(running, first)
		talk(5)
		for second, p := range running {
			p.kill()
			delete(running, second)
			break
		}
		talk(5)
		add()
		talk(5)
		add()
	}
	for said%(people*len(steps)) != 0 {
		talk(1)
	}
	svc.settle(t, said)
	svc.nextLeader(t, running)
	for _, p := range running {
		p.kill()
	}
	s, err := open(t.Context(), name)
	must(t, err)
	defer s.Close()
	audit(t, svc, s, said)
	if turns := slices.Compact(slices.Sorted(slices.Values(svc.leaders))); len(turns) != len(svc.leaders) || len(turns) < rounds {
		t.Errorf("led in turn: %v, want each once and %d or more", svc.leaders, rounds)
	}
	t.Logf("%d messages, %d processes, led by %v", said, born, svc.leaders)
}

// nextLeader waits until one of the running processes leads.
func (s *service) nextLeader(t testing.TB, running map[string]*process) string {
	t.Helper()
	for range 3000 {
		if who := s.leader(); running[who] != nil {
			return who
		}
		time.Sleep(20 * time.Millisecond)
	}
	who := s.leader()
	t.Fatalf("nobody took over from %q for a minute", who)
	return ""
}
