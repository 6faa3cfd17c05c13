package bot

import (
	"fmt"
	"sync"
	"time"
)

// A Crowd holds people to so many messages a minute. It counts in this process
// alone. It may be used from several goroutines at once.
type Crowd struct {
	perMinute int
	mu        sync.Mutex
	heard     map[string][]heard // by person, the oldest first
}

type heard struct {
	key string
	at  time.Time
	got turnout
}

// maxCrowd is how many people are kept in mind; beyond it those who said
// nothing for a minute are forgotten.
const maxCrowd = 1000

// NewCrowd returns a limit of so many messages a minute for each person.
func NewCrowd(perMinute int) *Crowd {
	return &Crowd{perMinute: perMinute, heard: map[string][]heard{}}
}

// A turnout is what becomes of a message in a crowd.
type turnout int

const (
	answered turnout = iota
	slowed           // one polite line
	silent           // nothing more until the minute is over
)

// takes counts a message. The same message, by its key, is counted once.
func (c *Crowd) takes(person, key string, at time.Time) turnout {
	if c == nil {
		return answered
	}
	c.mu.Lock()
	defer c.mu.Unlock()
	lately := c.lately(person, at)
	count := 0
	for _, h := range lately {
		if key != "" && h.key == key {
			return h.got
		}
		if h.got == answered {
			count++
		}
	}
	if count >= c.perMinute && len(lately) > count { // told already
		return silent
	}
	got := answered
	if count >= c.perMinute {
		got = slowed
	}
	c.heard[person] = append(lately, heard{key, at, got})
	c.forget(at)
	return got
}

// lately are the messages of a person in the minute before a time.
func (c *Crowd) lately(person string, at time.Time) []heard {
	all := c.heard[person]
	for len(all) > 0 && at.Sub(all[0].at) >= time.Minute {
		all = all[1:]
	}
	return all
}

func (c *Crowd) forget(at time.Time) {
	if len(c.heard) <= maxCrowd {
		return
	}
	for person := range c.heard {
		if len(c.lately(person, at)) == 0 {
			delete(c.heard, person)
		}
	}
}

// tooMany answers the first message over the limit.
func (c *Crowd) tooMany() Reply {
	r := Reply{About: Unknown}
	r.say(Question, fmt.Sprintf("That was more than %d messages in a minute. Give me a minute, then I go on.", c.perMinute))
	return r.finished()
}
