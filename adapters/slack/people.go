package slack

import (
	"context"
	"sync"
	"time"

	"github.com/slack-go/slack"

	"presshand/bot/book"
)

// names remembers what people are called.
type names struct {
	mu   sync.Mutex
	of   map[string]string
	wait time.Time // no look-up before
}

func (n *names) init() { n.of = map[string]string{} }

func (n *names) set(u slack.User) string {
	n.mu.Lock()
	defer n.mu.Unlock()
	called := u.Profile.DisplayName
	if called == "" {
		called = u.RealName
	}
	if called == "" {
		called = u.Name
	}
	n.of[u.ID] = called
	return called
}

// load asks for everybody once, for a few seconds at most.
func (n *names) load(ctx context.Context, api *slack.Client) {
	ctx, cancel := context.WithTimeout(ctx, 5*time.Second)
	defer cancel()
	for p := api.GetUsersPaginated(slack.GetUsersOptionLimit(1000)); ; {
		var err error
		if p, err = p.Next(ctx); err != nil {
			return // the end, or never mind: names are looked up one by one too
		}
		for _, u := range p.Users {
			n.set(u)
		}
	}
}

// lookUpWithin is how long a name may hold up an acknowledgement.
const lookUpWithin = 500 * time.Millisecond

// person returns who a user is. A name that is not to be had in time is left
// out: it is only for show.
func (a *Slack) person(ctx context.Context, user string) book.Person {
	n := &a.names
	n.mu.Lock()
	called, known := n.of[user]
	wait := time.Now().Before(n.wait)
	n.mu.Unlock()
	if known || wait {
		return a.Person(user, called)
	}
	ctx, cancel := context.WithTimeout(ctx, lookUpWithin)
	defer cancel()
	u, err := a.api.GetUserInfoContext(ctx, user)
	if err != nil {
		n.mu.Lock()
		n.wait = time.Now().Add(10 * time.Second)
		n.mu.Unlock()
		return a.Person(user, "")
	}
	return a.Person(user, n.set(*u))
}
