package adaptertest

import (
	"bufio"
	"context"
	"math/rand/v2"
	"os"
	"os/exec"
	"regexp"
	"strings"
	"testing"
	"time"

	"presshand/bot/book"
)

// process is a bot process that can be killed.
type process struct {
	cmd  *exec.Cmd
	gone chan struct{}
}

func start(t testing.TB, store, at, worker string) *process {
	t.Helper()
	cmd := exec.Command(os.Args[0])
	cmd.Env = append(os.Environ(), childStore+"="+store, childService+"="+at, childWorker+"="+worker)
	said, err := cmd.StderrPipe()
	must(t, err)
	must(t, cmd.Start())
	p := &process{cmd, make(chan struct{})}
	go func() {
		for lines := bufio.NewScanner(said); lines.Scan(); {
			t.Logf("%s: %s", worker, lines.Text())
		}
		_ = cmd.Wait() // killed: its exit tells nothing
		close(p.gone)
	}()
	return p
}

func (p *process) kill() {
	_ = p.cmd.Process.Kill() // gone already is as good
	<-p.gone
}

// Crash kills a bot process with SIGKILL at random points while messages flow,
// kills times, and checks that no load is lost, no message goes unanswered and
// none is answered twice.
func Crash(t *testing.T, name string, open Open, kills int) {
	svc := newService(t)
	const seed = 11
	r := rand.New(rand.NewPCG(seed, seed))
	said := 0
	for k := range kills {
		for range 1 + r.IntN(3) {
			svc.say(chatter(said))
			said++
		}
		svc.forgetCalls()
		p := start(t, name, svc.URL, "desk")
		// none kills it as it starts
		if moves := r.IntN(9); !svc.moved(moves, said) {
			p.kill()
			t.Fatalf("process %d did nothing for a minute", k)
		}
		time.Sleep(time.Duration(r.IntN(2000)) * time.Microsecond)
		p.kill()
	}
	_, amid := svc.counts()
	for said%(people*len(steps)) != 0 { // let every thread come to its end
		svc.say(chatter(said))
		said++
	}
	last := start(t, name, svc.URL, "desk")
	svc.settle(t, said)
	last.kill()
	s, err := open(t.Context(), name)
	must(t, err)
	defer s.Close()
	audit(t, svc, s, said)
	t.Logf("%d messages, %d answered amid %d kills, %d replies sent again", said, amid, kills, svc.tried-len(svc.shown))
	if amid < kills/4 {
		t.Errorf("only %d messages were answered amid %d kills: the kills hit nothing", amid, kills)
	}
}

// moved waits until messages were acknowledged, or replies sent, moves times, or
// everything said was answered. Beats and empty deliveries don't count: a slow
// machine makes many of them before a process has its first answer.
func (s *service) moved(moves, said int) bool {
	late := time.NewTimer(time.Minute)
	defer late.Stop()
	for moves > 0 {
		select {
		case path := <-s.calls:
			if path == "/ack" || path == "/send" {
				moves--
				late.Reset(time.Minute)
			} else if waiting, shown := s.counts(); waiting == 0 && shown == said {
				return true
			}
		case <-late.C:
			return false
		}
	}
	return true
}

// forgetCalls drops the calls of a process that is gone.
func (s *service) forgetCalls() {
	for len(s.calls) > 0 {
		<-s.calls
	}
}

// settle waits until everything said was answered.
func (s *service) settle(t testing.TB, said int) {
	t.Helper()
	for range 6000 {
		if waiting, shown := s.counts(); waiting == 0 && shown >= said {
			return
		}
		time.Sleep(20 * time.Millisecond)
	}
	waiting, shown := s.counts()
	t.Fatalf("%d of %d messages answered, %d not acknowledged", shown, said, waiting)
}

// loadNamed finds which load a reply is about.
var loadNamed = regexp.MustCompile(`Load \d+`)

// audit compares what the room sees, and what the book says, with what was
// said. Numbers are given in the order of posting, so the n-th load of a room
// is not known beforehand; that they are 1 to n, each in the state that its
// thread came to, is.
func audit(t *testing.T, svc *service, s book.Store, said int) {
	t.Helper()
	answers := map[string][]string{}
	loadOf := map[string]string{}
	for _, key := range svc.order {
		o := svc.shown[key]
		answers[o.Event] = append(answers[o.Event], o.Text)
	}
	posts := map[string]int{}
	for i := range said {
		e := chatter(i)
		got := answers[e.Key]
		if len(got) != 1 {
			t.Errorf("message %s (%s) was answered %d times, want once: %q", e.Key, e.Text, len(got), got)
			continue
		}
		number := loadNamed.FindString(got[0])
		step := stepOf(i)
		if step == steps[0] {
			posts[e.Place.Room]++
			loadOf[e.Place.Thread] = number
		}
		if !strings.Contains(got[0], step.reply) || number == "" || number != loadOf[e.Place.Thread] {
			t.Errorf("%s in %s: answered %q, want %q to be %s", e.Text, e.Place.Thread, got[0], loadOf[e.Place.Thread], step.state)
		}
	}
	for room, n := range posts {
		next, err := s.NextNumber(context.Background(), room)
		must(t, err)
		if next != n+1 {
			t.Errorf("%s holds loads up to %d, want %d", room, next-1, n)
		}
		for i := 1; i <= n; i++ {
			l, err := s.Load(context.Background(), room, i)
			if err != nil || l.State != book.Taken || len(l.Entries) != len(steps) {
				t.Errorf("%s load %d is %s with %d entries (%v), want out with %d", room, i, l.State, len(l.Entries), err, len(steps))
			}
		}
	}
}
