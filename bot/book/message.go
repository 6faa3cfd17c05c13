package book

import (
	"encoding/json"
	"time"
)

// An Event is something said to the bot, as it is kept until it is answered.
type Event struct {
	Key     string // unique over all services; a redelivery has the same
	Place   Place
	Message string // the message's id at its service
	Edits   string // the id of the message that this one replaces, or ""
	From    Person
	Text    string
	At      time.Time
	Extra   json.RawMessage // what the adapter needs again; opaque here
	Turnout Turnout         // set when claimed
	Tries   int             // how often it was claimed before
}

// An Outgoing is something to be sent, as it is kept until the service took it.
type Outgoing struct {
	Key         string // idempotency key, the same at each try
	Place       Place
	Event       string // key of the event that it answers, or ""
	Message     string // the service's id of the message that it answers, or ""
	Replaces    string // key of the earlier reply to be edited in place, or ""
	Beside      bool   // a picture beside the words: it comes after what is said before it, and nothing said later waits for it
	ReplacesRef string // the service's id of that reply; set when claimed
	Text        string
	Body        json.RawMessage // what the adapter renders; opaque here
	At          time.Time
	Tries       int    // how often it was claimed before: if any, the service may have it already
	Ref         string // the service's id for it, once sent
}

// A Thread is what the bot remembers of a conversation.
type Thread struct {
	Room, Name string
	Version    int // 0 before it is first kept
	State      json.RawMessage
}

// A Profile is what a room keeps as its own defaults.
type Profile struct {
	Room    string
	Version int // 0 before it is first kept
	State   json.RawMessage
}

// An Outcome is all that an event or a reminder changes. It is recorded whole
// or not at all. Version in Thread and Profile is the one that was read.
type Outcome struct {
	Event    string // key of the event answered; "" in a conversation that keeps no inbox
	Reminder string // key of the reminder said, or ""
	Entries  []Entry
	Thread   *Thread
	Profile  *Profile
	Replies  []Outgoing
}

// A Depth is how much waits.
type Depth struct {
	Inbox, Outbox         int // open
	DeadInbox, DeadOutbox int // given up
}
